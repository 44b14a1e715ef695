// Orchard is the box that the orchard's ringing group hangs most: a cavity of
// 120 x 120 x 240 under a pent roof, hung by its long back.
package main

import (
	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
)

// Design is the whole box. The boards were sold as 15 thick and measured 14.6.
var Design = box.Design{
	Name:    "orchard pent",
	Board:   box.Board{Thickness: 15, Measured: 14.6, Material: "larch"},
	Size:    box.Cavity{Width: 120, Depth: 120, Height: 240},
	Roof:    box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
	Walls:   []box.Wall{{On: box.Back, Above: 80, Below: 60}}, // runs on past roof and floor, to hang it by
	Corners: box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
	Floor:   box.FloorBetween{Raise: 20},
	Features: []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170},
		box.Vents{Diameter: 8},
		box.Drains{Diameter: 8},
		box.Cut{On: box.Back, Shape: box.Round{Diameter: 6}, At: box.Anchor{Up: 320}, Use: box.UseOpening, Name: "upper screw"},
		box.Cut{On: box.Back, Shape: box.Round{Diameter: 6}, At: box.Anchor{Up: -55}, Use: box.UseOpening, Name: "lower screw"},
	},
}

func main() { show.Main("orchard", Design) }
