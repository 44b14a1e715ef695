// Tit is a box for great tits of the orchard's ringing group: it prints what
// the published rules say of it with their sources, its screws, and a care sheet.
package main

import (
	"fmt"
	"io"
	"log"
	"os"

	"holt.example/box"
	"holt.example/species"
	"holt.example/species/timber"
)

// Design is of planed boards, so grooves help the young out. Straps hold it to
// the tree, and the roof opens for cleaning.
var Design = box.Design{
	Name:   "orchard tit box",
	Board:  box.Board{Thickness: 18, Measured: 17.6, Width: 195, Material: "Douglas fir"},
	Boards: map[box.Part]box.Board{box.Floor: ply, box.AllRoof: ply},
	Size:   box.Cavity{Width: 130, Depth: 130, Height: 250},
	Walls:  []box.Wall{{On: box.Back, Above: 70, Below: 50}},
	Roof:   box.Pent{Pitch: 10, Over: box.Overhangs{Front: 60, Left: 30, Right: 30}},
	Floor:  box.FloorBetween{Raise: 8},
	Outer:  []box.Outer{box.Strap{Trunk: 220, Width: 40, Heights: []box.MM{60, 190}, Spare: 150}},
	Opens:  []box.Opening{box.Hinged{Part: box.Roof}, box.HookAndEye{Part: box.Roof, At: box.Left}},
	Features: []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 32}, Above: 180}, box.GripGrooves{}, box.Drains{},
	},
}

var ply = box.Board{Thickness: 18, Measured: 17.7, Material: "exterior plywood", Grain: box.GrainNone}

// Site is an apple tree, how the box is finished, and what hangs on the workshop
// wall.
var Site = species.Site{Place: species.OnTree, Above: 2.5, Faces: species.NorthEast, Lean: 3,
	Planed: true, Inside: species.NoCoat, Outside: species.WaterBased, Glue: timber.D4,
	Shop: species.Workshop{Bits: []box.MM{2, 2.5, 3, 4.5, 8, 25, 28, 30, 32}, SawTilt: 45, Boards: []box.MM{145, 195}}}

func main() {
	if err := run(os.Stdout); err != nil {
		log.Fatal(err)
	}
}

func run(w io.Writer) error {
	steel := species.MetricScrews() // Douglas fir attacks plain steel
	for i := range steel {
		steel[i].Stainless = true
	}
	design, screws, err := species.Fasten(Design, species.FixWith{Fasteners: steel})
	if err != nil {
		return err
	}
	plan, tit := design.MustResolve(), species.MustGet("great_tit")
	findings, err := species.Review(plan, tit, Site)
	if err != nil {
		return err
	}
	for _, s := range screws {
		fmt.Fprintln(w, s)
	}
	if err := species.WriteFindings(w, findings); err != nil {
		return err
	}
	return species.WriteCare(w, tit, Site)
}
