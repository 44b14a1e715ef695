package box_test

import (
	"fmt"
	"testing"

	"holt.example/box"
	"holt.example/joints"
)

var orchard = box.Design{
	Name:     "orchard pent",
	Board:    box.Board{Thickness: 15, Measured: 14.6},
	Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
	Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
	Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
	Corners:  box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
	Floor:    box.FloorBetween{Raise: 20},
	Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}},
}

func TestDump(t *testing.T) {
	p, err := orchard.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range p.Pieces() {
		fmt.Printf("%-10s %.6f x %.6f vol %.4f\n", q.Part, q.Width, q.Length, q.Volume)
		for _, e := range q.Panel.Edges {
			fmt.Printf("    edge %v-%v len %.3f bevel %.3f run %.3f %s %s adds %.3f %s\n", e.From, e.To, e.Length, e.Bevel, e.Run, e.Neighbour, e.Joint, e.Adds, e.Why)
		}
		for _, o := range q.Panel.Ops {
			fmt.Printf("    op %s %s %s %v-%v %s %v\n", o.Kind, o.Use, o.Side, o.From, o.To, o.Source, o.Region.Extents())
		}
		for _, w := range p.Explain(q.Part) {
			fmt.Println("   ", w)
		}
	}
	fmt.Println(p.Groups(), p.Voids(), p.Findings(), p.Diagonals())
	fmt.Println(p.Inside())
	fmt.Println(p.Outside())
	for _, s := range p.Seams() {
		fmt.Printf("%s/%s %s theta %.2f contact %.2f gap %v..%v\n", s.Over, s.Under, s.Joint, s.Theta, s.Contact, s.Least, s.Greatest)
	}
}
