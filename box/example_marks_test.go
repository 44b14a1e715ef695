package box_test

import (
	"fmt"

	"holt.example/box"
	"holt.example/box/outline"
)

// A box of a ringing group: its number on the front, a ladder of grooves behind
// it, a bond of leaves on the roof, and a mark on every hidden face.
func Example_marks() {
	leaf := []outline.Path{{{X: -8, Bulge: -0.6}, {X: 8, Bulge: -0.6}, {X: -8}}}
	plan := box.Design{
		Name:  "orchard 27",
		Board: box.Board{Thickness: 15},
		Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:  box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
		Floor: box.FloorBetween{},
		Features: []box.Feature{
			box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170},
			box.Text{On: box.Front, Text: "27", At: box.Anchor{Up: 100}},
			box.GripGrooves{},
			box.Pattern{On: box.Roof, Lines: leaf, Repeat: box.Repeat{StepRight: 24, StepUp: 16, Brick: true}, Margin: 8},
			box.PartMarks{},
		},
	}.MustResolve()
	front, _ := plan.Piece(box.Front)
	for _, op := range front.Panel.Ops {
		fmt.Printf("%s, %s: %d strokes %.1f wide, %.1f deep, %.0f mm3\n", op.Source, op.Side, len(op.Strokes), op.Width, op.To-op.From, op.Removed)
	}
	// Output:
	// entrance, through: 0 strokes 0.0 wide, 15.0 deep, 0 mm3
	// text 27, far: 2 strokes 3.0 wide, 2.6 deep, 528 mm3
	// grip groove, machined: 9 strokes 3.0 wide, 2.0 deep, 3205 mm3
	// part mark, machined: 31 strokes 0.6 wide, 0.5 deep, 50 mm3
}
