// Fourboards uses up what lay in the shed: four boards of four thicknesses,
// each measured. No size of the cavity changes for it.
package main

import (
	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
)

// Design gives each part the board it is cut from.
var Design = box.Design{
	Name:  "shed offcuts box",
	Board: box.Board{Thickness: 18, Measured: 17.6, Material: "pine"},
	Boards: map[box.Part]box.Board{
		box.Front: {Thickness: 22, Measured: 21.4, Material: "larch"},
		box.Back:  {Thickness: 15, Least: 14.3, Most: 14.9, Material: "spruce"},
		box.Floor: {Thickness: 12, Measured: 12.2, Material: "birch plywood", Grain: box.GrainNone},
	},
	Size:    box.Cavity{Width: 125, Depth: 140, Height: 225},
	Roof:    box.Gable{Pitch: 35, Run: box.LeftToRight, Over: box.Overhangs{Front: 35, Left: 25, Right: 25}},
	Corners: box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
	Floor:   box.FloorBetween{Raise: 15, Joint: joints.Rebate{}},
	Features: []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 32}, Above: 165, Right: 12},
		box.Drains{Diameter: 8},
	},
}

func main() { show.Main("fourboards", Design) }
