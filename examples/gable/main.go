// Gable is the box by the cider barn: a ridge from front to back, the slopes
// mitred, the floor housed in all four walls.
package main

import (
	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
)

// Design has a wide hole and a lap of roof on every side.
var Design = box.Design{
	Name:  "cider barn gable",
	Board: box.Board{Thickness: 18, Measured: 17.8, Material: "larch"},
	Size:  box.Cavity{Width: 150, Depth: 150, Height: 220},
	Roof: box.Gable{Pitch: 40, Ridge: joints.Mitre{},
		Over: box.Overhangs{Front: 45, Left: 30, Right: 30, Back: 15}},
	Corners: box.Corners{Joint: joints.Rebate{}},
	Floor:   box.FloorBetween{Raise: 18, Joint: joints.Housing{}},
	Features: []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 45}, Above: 180},
		box.Vents{Diameter: 10, Below: 25},
		box.Drains{Diameter: 8, Inset: 20},
	},
}

func main() { show.Main("gable", Design) }
