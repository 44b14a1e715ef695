// Tested is a box with its tests beside it, in main_test.go: what the orchard's
// ringing group asserts of the box before anybody cuts one.
package main

import (
	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/joints"
)

// Design is a box whose floor drops out for the autumn cleaning: it stands in a
// rebate round the lower edge of the walls and is held by screws.
var Design = box.Design{
	Name:    "orchard, floor to clean by",
	Board:   box.Board{Thickness: 18, Least: 17.6, Most: 18.1, Width: 175, Material: "larch"},
	Size:    box.Cavity{Width: 125, Depth: 125, Height: 250},
	Roof:    box.Pent{Pitch: 10, Over: box.Overhangs{Front: 45, Left: 15, Right: 15}},
	Corners: box.Corners{Joint: joints.Rebate{}},
	Floor:   box.FloorBetween{Joint: joints.Rebate{}},
	Features: []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 32}, Above: 180},
		box.Vents{},
		box.Drains{},
	},
}

// Stock is the design in every board that the group has had so far.
var Stock = box.Variants{Base: Design, Axes: []box.Axis{{Name: "board", Values: []box.Value{
	{Name: "larch 18", Set: func(*box.Design) {}},
	{Name: "larch 20", Set: func(d *box.Design) { d.Board = box.Board{Thickness: 20, Measured: 19.5, Width: 175} }},
	{Name: "spruce 15", Set: func(d *box.Design) { d.Board = box.Board{Thickness: 15, Measured: 14.6, Width: 175} }},
}}}}

func main() { show.Main("tested", Design) }
