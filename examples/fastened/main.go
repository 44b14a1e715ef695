// Fastened is the orchard's tit box with its screws, its glue and what it hangs by,
// weighed and priced at the prices of the ringing group's shop.
package main

import (
	"fmt"
	"io"

	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
	"holt.example/render/bom"
	"holt.example/species"
	"holt.example/species/timber"
)

// Design is one board cross-cut. Its roof opens, and it hangs on a living tree: the
// heads of the nails stand 20 off the wood, so that the tree can grow.
var Design = box.Design{
	Name: "orchard, fastened", Board: box.Board{Thickness: 15, Measured: 14.6, Width: 175, Material: "European larch"},
	Size:    box.Cavity{Width: 120, Depth: 120, Height: 240},
	Walls:   []box.Wall{{On: box.Back, Above: 80, Below: 60}},
	Corners: box.Corners{Joint: joints.Rebate{}},
	Roof:    box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 10, Right: 10}},
	Floor:   box.FloorBetween{Raise: 20},
	Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}, box.Drains{},
		box.Hang{By: box.Hanger{What: "nail, aluminium", Diameter: 6, Length: 100, Proud: 20}}},
	Opens: []box.Opening{box.Hinged{Part: box.Roof, Hinge: box.Leather{}}, box.HookAndEye{Part: box.Roof, At: box.Left}},
}

// Prices are the shop's, boards by the length of 2.4 m. What it does not sell stays
// unpriced.
var Prices = []bom.Price{
	{Of: "European larch", Thickness: 15, Cost: 9.60, Pack: 2.4},
	{Of: "screw, stainless steel", Cost: 0.12},
	{Of: "nail, aluminium", Cost: 0.85}, {Of: "hook and eye", Cost: 1.20},
}

func run(w io.Writer, dir string) error {
	d, _, err := species.Fasten(Design, species.FixWith{Fasteners: species.Stainless(species.MetricScrews())})
	if err != nil {
		return err
	}
	plan := d.MustResolve()
	list := bom.Options{Bill: &bom.Terms{Density: timber.DensityOf, Near: timber.NamesNear, Waste: 0.15, Prices: Prices, Currency: "EUR"}}
	for _, s := range species.PlanSources(plan) {
		list.Bill.Sources = append(list.Bill.Sources, bom.Source{Key: s.Key, Text: s.String()})
	}
	h, err := species.Mounting{Into: "Scots pine"}.Hang(plan)
	if err != nil {
		return err
	}
	return show.Plan(w, dir, plan, list, fmt.Sprintf("It weighs %.2f kg: the upper nail is drawn by %.1f N, and holds %.0f N in a test.", h.Mass, h.Pull, h.Withdrawal))
}

func main() { show.With("fastened", run) }
