package box_test

import (
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
