// Leaning is a box for the wall of the bothy: front and sides lean outward, so
// that it is wider at the top and rain drips clear.
package main

import (
	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
)

// Design leans by 8 and 5 degrees; the compound angles follow from that.
var Design = box.Design{
	Name:  "bothy wall box",
	Board: box.Board{Thickness: 15, Measured: 14.8, Material: "Douglas fir"},
	Size:  box.Cavity{Width: 130, Depth: 110, Height: 210},
	Walls: []box.Wall{
		{On: box.Front, Lean: 8},
		{On: box.Left, Lean: 5},
		{On: box.Right, Lean: 5},
	},
	Roof:    box.Pent{Pitch: 15, Over: box.Overhangs{Front: 35, Left: 15, Right: 15}},
	Corners: box.Corners{Joint: joints.Butt{}, Laps: box.FrontBack},
	Floor:   box.FloorBetween{Raise: 8},
	Features: []box.Feature{
		box.Entrance{Shape: box.Slot{Width: 32, Height: 46}, Above: 130},
		box.Drains{Count: 4, Diameter: 8},
	},
}

func main() { show.Main("leaning", Design) }
