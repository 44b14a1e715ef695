package main

import (
	"holt.example/box"
	"holt.example/box/outline"
)

var (
	larch = box.Board{Thickness: 18, Measured: 17.6, Material: "larch"}
	thin  = box.Board{Thickness: 12, Material: "larch"}
)

// What the elements stand on.
var (
	// board is a single board, which most openings and marks are shown on.
	board = box.Design{
		Name: "board", Board: larch,
		Floor: box.NoFloor{}, Roof: box.NoRoof{},
		Free: []box.Free{{Name: "board", Outline: outline.Rectangle(-80, -55, 80, 55)}},
	}
	// plain is a hole box against a tree.
	plain = box.Design{
		Name: "plain", Board: larch,
		Size:     box.Cavity{Width: 130, Depth: 130, Height: 220},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 15, Right: 15}},
		Floor:    box.FloorBetween{Raise: 12},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}},
	}
	// blind is the same without an entrance.
	blind = plain.With(func(d *box.Design) { d.Features = nil })
	// long is the same with a back that runs on above and below.
	long = plain.With(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Back, Above: 80, Below: 60}} })
	// flush has walls that end with their roof, for what hangs at its edge.
	flush = plain.With(func(d *box.Design) { d.Roof = box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}} })
	// gable has a ridge from front to back.
	gable = plain.With(func(d *box.Design) { d.Roof = box.Gable{Pitch: 40, Over: box.Overhangs{All: 25}} })
	// wide is low and wide, for what stands inside.
	wide = box.Design{
		Name: "wide", Board: larch,
		Size:     box.Cavity{Width: 260, Depth: 180, Height: 150},
		Roof:     box.Flat{Over: box.Overhangs{All: 15}},
		Floor:    box.FloorBetween{},
		Features: []box.Feature{box.Entrance{Shape: box.Rect{Width: 60, Height: 50}, Above: 20, Right: -60}},
	}
	// corner is two walls that meet.
	corner = box.Design{
		Name: "corner", Board: larch,
		Size: box.Cavity{Width: 90, Depth: 90, Height: 90},
		Roof: box.NoRoof{}, Floor: box.NoFloor{},
		Walls: []box.Wall{{On: box.Back, Open: true}, {On: box.Left, Open: true}},
	}
	// broad is one wall, 200 wide, of boards 80 wide.
	broad = box.Design{
		Name: "broad", Board: box.Board{Thickness: 20, Width: 80, Material: "larch"},
		Size: box.Cavity{Width: 200, Depth: 90, Height: 90},
		Roof: box.NoRoof{}, Floor: box.NoFloor{},
		Walls: []box.Wall{{On: box.Back, Open: true}, {On: box.Left, Open: true}, {On: box.Right, Open: true}},
	}
)
