// Oneboard is cut from a single width of board, 145 x 14.6, without ripping a
// wall: the cavity follows from the board.
package main

import (
	"holt.example/box"
	"holt.example/examples/internal/show"
)

// Design lets every wall and the floor be cross-cut; only the roof is ripped.
var Design = box.Design{
	Name:  "one board box",
	Board: box.Board{Thickness: 15, Measured: 14.6, Width: 145, Material: "spruce"},
	Size:  box.BoardWidth{Width: 145, Height: 230},
	Roof:  box.Pent{Pitch: 10, Over: box.Overhangs{Front: 40}},
	Walls: []box.Wall{{On: box.Back, Above: 60, Below: 50}},
	Floor: box.FloorBetween{},
	Features: []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 28}, Above: 175},
		box.CornerCuts{Size: 9},
	},
}

func main() { show.Main("oneboard", Design) }
