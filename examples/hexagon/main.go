// Hexagon is the six-sided box in the old pear tree: mitred walls under a
// roof of six hips.
package main

import (
	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
)

// Design measures 140 across the cavity, from one wall to the opposite one.
var Design = box.Design{
	Name:      "pear tree hexagon",
	Board:     box.Board{Thickness: 16, Measured: 15.7, Material: "oak"},
	Footprint: box.Regular{Sides: 6, Across: 140},
	Size:      box.Cavity{Height: 230},
	Roof:      box.Hip{Pitch: 30, Over: box.Overhangs{Front: 30, All: 30}},
	Corners:   box.Corners{Joint: joints.Mitre{}},
	Floor:     box.FloorBetween{Raise: 10},
	Features: []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 28}, Above: 175},
		box.Drains{Diameter: 6, Inset: 14},
	},
}

func main() { show.Main("hexagon", Design) }
