package box_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
	"holt.example/box/outline"
)

// What cannot be cut or drawn, each with its place in the design and its range.
func TestMarksThatCannotBeMade(t *testing.T) {
	up := box.Anchor{Up: 100}
	stroke := []outline.Path{outline.Line(outline.Point{X: -20}, outline.Point{X: 20})}
	one := func(f box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = []box.Feature{f} }
	}
	two := func(f, g box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = []box.Feature{f, g} }
	}
	hole := box.Entrance{Shape: box.Round{Diameter: 32}, Above: 90}
	checkRefusals(t, plain, []refusal{
		{"no such part", one(box.Text{On: "frnot", Text: "1", At: up}), "Features[0].Text.On", "unknown-part", "(try front)", 0, 0},
		{"no such part behind", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: up, Through: []box.Part{"free/plate"}}), "Features[0].Cut.Through[0]", "unknown-part", "front", 0, 0},
		{"not parallel", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: up, Through: []box.Part{box.Left}}), "Features[0].Cut.Through[0]", "not-parallel", "slanted", 0, 0.001},
		{"through itself", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: up, Through: []box.Part{box.Front}}), "Features[0].Cut.Through[0]", "same-part", "already", 0, 0},
		{"through to a depth", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: up, Depth: 3, Through: []box.Part{box.Back}}), "Features[0].Cut.Depth", "contradiction", "each", 0, 0},
		{"no room on the axis", one(box.Cut{On: box.Back, Shape: box.Round{Diameter: 9}, At: box.Anchor{Up: -8}, Through: []box.Part{box.Left}}), "Features[0].Cut.Through[0]", "not-parallel", "left", 0, 0.001},
		{"a height on a floor", one(box.Cut{On: box.Floor, Shape: box.Round{Diameter: 9}, At: box.Anchor{Level: box.LowestAbove}}), "Features[0].Cut.At.Level", "no-height", "level", 0, 0},
		{"a turn of 400", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: box.Anchor{Up: 100, Turn: 400}}), "Features[0].Cut.At.Turn", "range", "400", -360, 360},
		{"too many", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: up, Repeat: box.Repeat{Columns: 1000, Rows: 1000, StepRight: 1, StepUp: 1}}), "Features[0].Cut.Repeat.Rows", "range", "1000", 0, 20},
		{"no step", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: up, Repeat: box.Repeat{Columns: 2}}), "Features[0].Cut.Repeat.StepRight", "range", "on one another", 0.1, 10000},
		{"on one another", one(box.Cut{On: box.Front, Shape: box.Round{Diameter: 9}, At: up, Repeat: box.Repeat{Columns: 2, StepRight: 8}}), "Features[0].Cut.Repeat.StepRight", "feature-meets-feature", "8: the step is less than the motif, 9 across", 0, 0},
		{"narrower than the cutter", one(box.Cut{On: box.Front, Shape: box.Slot{Width: 30, Height: 4}, At: up, Tool: box.Tool{Diameter: 6}}), "Features[0].Cut.Tool.Diameter", "narrow", "narrower", 0.1, 4},
		// The arms of the L are 5 wide; the largest disc in its corner touches the inner
		// corner: d = 10/(1+1/sqrt 2) = 5.857.
		{"an L narrower than the cutter", one(box.Cut{On: box.Front, At: up, Tool: box.Tool{Diameter: 6}, Shape: box.Polygon{Points: []box.Point{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 5}, {X: 5, Y: 5}, {X: 5, Y: 30}, {X: 0, Y: 30}}}}),
			"Features[0].Cut.Tool.Diameter", "narrow", "narrower", 0.1, 5.85},
		{"deeper than the board", one(box.Engrave{On: box.Front, Lines: stroke, At: up, Depth: 14.6}), "Features[0].Engrave.Depth", "range", "front", 0.1, 14.5},
		{"width against depth", one(box.Engrave{On: box.Front, Lines: stroke, At: up, Width: 5, Depth: 3, Tool: box.Tool{VAngle: 90}}), "Features[0].Engrave.Width", "contradiction", "one of the two", 6, 6},
		{"wider than its cutter", one(box.Engrave{On: box.Front, Lines: stroke, At: up, Width: 9, Tool: box.Tool{VAngle: 90, Diameter: 8}}), "Features[0].Engrave.Width", "range", "9", 0.01, 8},
		{"a tip on a flat cutter", one(box.Engrave{On: box.Front, Lines: stroke, At: up, Tool: box.Tool{Diameter: 8, Tip: 1}}), "Features[0].Engrave.Tool.Tip", "contradiction", "V-cutter", 0, 0},
		{"a blunt V", one(box.Engrave{On: box.Front, Lines: stroke, At: up, Tool: box.Tool{VAngle: 179}}), "Features[0].Engrave.Tool.VAngle", "range", "179", 10, 170},
		{"no lines", one(box.Engrave{On: box.Front, At: up}), "Features[0].Engrave.Lines", "missing", "which lines", 0, 0},
		{"a line of one point", one(box.Engrave{On: box.Front, At: up, Lines: []outline.Path{{{X: 1}}}}), "Features[0].Engrave.Lines[0]", "outline", "vertices", 0, 0},
		// 55 + 20 = 75 is the edge of the front: half of 2 comes past it.
		{"off the part", one(box.Engrave{On: box.Front, Lines: stroke, At: box.Anchor{Right: 55, Up: 100}}), "Features[0].Engrave", "off-part", "comes 1 past", 0, 0},
		{"over the entrance", two(hole, box.Engrave{On: box.Front, Lines: stroke, At: up}), "Features[1].Engrave", "feature-meets-feature", "entrance", 0, 0},
		{"beside the entrance", two(hole, box.Engrave{On: box.Front, Lines: stroke, At: box.Anchor{Up: 89.5}}), "Features[1].Engrave", "feature-meets-feature", "entrance", 0, 0},
		{"unknown letters", one(box.Text{On: box.Front, Text: "ŁÓDŹ 7", At: up}), "Features[0].Text.Text", "unknown-letter", "'Ł' 'Ó' 'Ź'", 0, 0},
		{"no text", one(box.Text{On: box.Front, Text: " ", At: up}), "Features[0].Text.Text", "missing", "nothing", 0, 0},
		{"text too long", one(box.Text{On: box.Front, Text: "ORCHARD 17", At: up}), "Features[0].Text", "off-part", "past the edge", 0, 0},
		{"unknown letters in the name", one(box.PartMarks{Box: "Größe"}), "Features[0].PartMarks.Box", "unknown-letter", "'ö' 'ß'", 0, 0},
		{"no room for marks", two(box.Cut{On: box.Left, Shape: box.Rect{Width: 110, Height: 230}, At: box.Anchor{Up: 120}, Depth: 2, From: box.FromInner}, box.PartMarks{}), "Features[1].PartMarks.On", "no-room", "left", 0, 0},
		{"a ladder to nowhere", one(box.GripGrooves{}), "Features[0].GripGrooves.On", "no-entrance", "front", 0, 0},
		{"too many rungs", two(hole, box.GripGrooves{Count: 9}), "Features[1].GripGrooves.Count", "no-room", "room", 0, 4}, // 75, 60, 45, 30
		{"a motif and lines", one(box.Pattern{On: box.Front, Motif: box.Round{Diameter: 5}, Lines: stroke}), "Features[0].Pattern.Lines", "twice", "not both", 0, 0},
		{"no motif", one(box.Pattern{On: box.Front}), "Features[0].Pattern.Motif", "missing", "shape", 0, 0},
		{"a margin that leaves nothing", one(box.Pattern{On: box.Front, Motif: box.Round{Diameter: 5}, Repeat: box.Repeat{StepRight: 9, StepUp: 9}, Margin: 80}), "Features[0].Pattern.Margin", "no-room", "front", 0, 0},
		{"steps that never end", one(box.Pattern{On: box.Front, Motif: box.Round{Diameter: 5}, Repeat: box.Repeat{StepRight: 0.5, StepUp: 0.5}}), "Features[0].Pattern.Repeat", "range", "steps larger", 1, 20000},
		{"rings and rows", one(box.Pattern{On: box.Front, Motif: box.Round{Diameter: 5}, At: up, Rings: box.Rings{Count: 2, First: 9, Step: 9}, Repeat: box.Repeat{Rows: 2, StepUp: 9}}), "Features[0].Pattern.Repeat", "contradiction", "not both", 0, 0},
		{"rings on one another", one(box.Pattern{On: box.Front, Motif: box.Round{Diameter: 5}, At: up, Rings: box.Rings{Count: 2, First: 9}}), "Features[0].Pattern.Rings.Step", "range", "on one another", 0.1, 10000},
		{"balusters wider than the rail", one(box.Rail{On: box.Front, Width: 60, Height: 40, At: up, Baluster: 20}), "Features[0].Rail.Baluster", "range", "20", 1, 13.7}, // (60-5)/4 = 13.75
		{"an arch too low", one(box.Cut{On: box.Front, Shape: box.Arch{Width: 40, Height: 15}, At: up}), "Features[0].Cut.Shape.Arch.Height", "range", "15", 20, 10000},
		{"an arch too high", one(box.Cut{On: box.Front, Shape: box.Arch{Width: 40, Height: 50, Rise: 21}, At: up}), "Features[0].Cut.Shape.Arch.Rise", "range", "21", 0.1, 20},
		{"scallops deeper than round", one(box.Scallops{On: box.Roof, Count: 10, Depth: 20}), "Features[0].Scallops.Depth", "range", "half circles", 0.5, 11.45}, // 230/20 - 0.05
		{"scallops at a joint", one(box.Scallops{On: box.Front, Edge: box.LeftEdge, Count: 3, Depth: 5}), "Features[0].Scallops", "feature-meets-joint", "left", 0, 0},
	})
}

// Equal parts may carry marks and stay equal; another line, or the same on the
// other side, makes them two.
func TestEngravedPartsAreEqualOrNot(t *testing.T) {
	groups := func(fs ...box.Feature) int { return len(resolve(t, with(fs...)).Groups()) }
	line := func(on box.Part, right box.MM, from box.CutSide) box.Feature {
		return box.Engrave{On: on, At: box.Anchor{Right: right, Up: 100}, From: from, Lines: []outline.Path{outline.Line(outline.Point{X: -20}, outline.Point{X: 20, Y: 7})}}
	}
	bare := groups()
	assert.Equal(t, bare, groups(line(box.Left, 5, box.FromOuter), line(box.Right, 5, box.FromOuter)))
	assert.Equal(t, bare+1, groups(line(box.Left, 5, box.FromOuter)))
	assert.Equal(t, bare+1, groups(line(box.Left, 5, box.FromOuter), line(box.Right, 6, box.FromOuter)))
	assert.Equal(t, bare+1, groups(line(box.Left, 5, box.FromOuter), line(box.Right, 5, box.FromInner)))
}
