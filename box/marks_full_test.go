package box_test

import (
	"holt.example/box"
	"holt.example/box/outline"
)

// markedDesign sets every field of features that shape, repeat and mark.
func markedDesign(rect box.Design, board box.Board) box.Design {
	tool := box.Tool{Diameter: 8, VAngle: 60, Tip: 0.1}
	grid := box.Repeat{Columns: 2, Rows: 2, StepRight: 9, StepUp: 8}
	stroke := []outline.Path{{{X: -3, Bulge: 0.2}, {X: 3}}}
	return rect.With(func(d *box.Design) {
		d.Inner, d.Walls, d.Joints, d.Name = nil, nil, nil, "marked"
		d.Corners = box.Corners{}
		d.Free = []box.Free{{Name: "board", Board: board, Outline: outline.Rectangle(-80, -40, 80, 40), At: box.Place{X: 1, Y: 500, Z: 2}}}
		d.Features = []box.Feature{
			box.Entrance{Shape: box.Oval{Width: 30, Height: 36}, Above: 160},
			box.GripGrooves{Count: 3, Spacing: 14, Depth: 2, Length: 50, Below: 12, Floor: 25, Tool: box.Tool{Diameter: 3}},
			box.GripGrooves{Width: 2.5, Below: 90, Count: 1},
			box.Text{On: box.Back, Text: "17", Height: 30, At: box.Anchor{Right: 5, Up: 120, Turn: 5}, Tool: tool, Width: 3},
			box.Engrave{On: box.Back, Lines: stroke, At: box.Anchor{Right: 70, Up: 60, Datum: box.FromLeft, Level: box.CentreAbove}, Tool: tool, Depth: 1.5, Repeat: grid},
			box.Cut{On: box.Left, At: box.Anchor{Right: 5, Up: 90, Turn: 3}, Shape: box.Arch{Width: 6, Height: 7, Rise: 2}, Depth: 4, Repeat: grid, Tool: box.Tool{Diameter: 3}},
			box.Pattern{On: box.Left, Motif: box.Regular{Sides: 6, Across: 6}, At: box.Anchor{Right: 4, Up: 150}, Repeat: grid, Margin: 3, Clear: 2, Depth: 3, Tool: box.Tool{Diameter: 2}},
			box.Pattern{On: box.Right, Lines: stroke, At: box.Anchor{Up: 120}, Rings: box.Rings{Count: 2, Each: 7, First: 12, Step: 13}, Margin: 3, Width: 1.5, Tool: tool},
			box.Pattern{On: box.Right, Motif: box.Polygon{Points: []box.Point{{X: -3, Y: -3}, {X: 3, Y: -2}, {X: 0, Y: 4}}}, At: box.Anchor{Up: 50}, Repeat: grid, Depth: 3},
			box.Rail{On: box.Left, At: box.Anchor{Right: 2, Up: 45}, Width: 70, Height: 30, Balusters: 3, Baluster: 9, Corner: 3, Depth: 3, Tool: box.Tool{Diameter: 4}},
			box.Rail{On: box.Right, At: box.Anchor{Up: 190}, Width: 70, Height: 30, Waist: 3, Depth: 3},
			box.RoundCorners{On: "free/board", Corners: []box.Corner{box.UpperLeft}, Radius: 12},
			box.Scallops{On: "free/board", Edge: box.LowerEdge, Count: 4, Depth: 7, Form: box.Lobes, Inset: 6},
			box.PartMarks{On: []box.Part{box.Front}, Height: 5, Tool: tool},
		}
	})
}
