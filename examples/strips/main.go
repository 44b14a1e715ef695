// Strips is a deep box for the owls of the orchard's barn: no board is as wide as
// its walls, so that each is made up. The front and the other walls are tongue
// and groove boarding, the roof is shiplap with its boards across the slope, and
// the floor is glued up.
package main

import (
	"fmt"

	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
)

// Design is the whole box. The boards were sold as 145 x 20 and measured 19.4
// thick; the roof is of boards 120 wide.
var Design = box.Design{
	Name:    "barn owl box",
	Board:   box.Board{Thickness: 20, Measured: 19.4, Width: 145, Material: "larch"},
	Boards:  map[box.Part]box.Board{box.AllRoof: {Thickness: 18, Width: 120, Material: "larch", Grain: box.GrainAcross}},
	Size:    box.Cavity{Width: 497.2, Depth: 300, Height: 450}, // 536 over the sides
	Corners: box.Corners{Joint: joints.Butt{}},
	Roof:    box.Pent{Pitch: 10, Over: box.Overhangs{Front: 60, Left: 30, Right: 30}},
	Floor:   box.FloorBetween{Raise: 15},
	MadeUp: []box.MadeUp{
		{Of: box.AllWalls, Joint: box.TongueGroove{Tongue: 8}, Least: 60},
		{Of: box.AllRoof, Joint: box.Shiplap{Lap: 15}},
		{Of: box.Floor, Joint: box.EdgeGlued{}},
	},
	Features: []box.Feature{
		box.Entrance{Shape: box.Rect{Width: 130, Height: 130, Corner: 20}, Above: 290},
		box.Drains{Diameter: 10, Inset: 30},
	},
}

func main() {
	var notes []string
	if plan, err := Design.Resolve(); err == nil {
		for _, w := range plan.Wholes() {
			notes = append(notes, fmt.Sprintf("%s: %.1f wide, %d strips of which %.1f shows (%s, boards of %.0f)", w.Part, w.Width, len(w.Strips), w.Cover, w.Joint, w.Boards))
		}
	}
	show.Main("strips", Design, notes...)
}
