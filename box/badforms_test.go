package box_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// Each kind of bad input that forms, openings and marks invite, once: a problem of
// its kind at its place, with the range or the distance. Other tables have many more
// of each kind.
func TestBadInputOfForms(t *testing.T) {
	features := func(fs ...box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = append(d.Features, fs...) }
	}
	line := []outline.Path{{{X: -20}, {X: 20}}}
	// plain is 120 x 120 x 240 inside, of boards 15 thick, butted.
	checkRefusals(t, plain, []refusal{
		// Outside the part: 105 + 5 less 75, half the front with what it laps over.
		{"outside the part", features(box.Cut{On: box.Front, Shape: box.Round{Diameter: 10}, At: box.Anchor{Right: 105, Up: 100}}), "Features[0].Cut", "off-part", "reaches 35 past the edge of front", 0, 0},
		{"an entrance outside its wall", features(box.Entrance{Shape: box.Round{Diameter: 32}, Above: 100, Right: 70}), "Features[0].Entrance", "off-cavity", "reaches 26 past", 0, 0}, // 70 + 16 - 60
		{"on no part", features(box.Cut{On: "fornt", Shape: box.Round{Diameter: 10}}), "Features[0].Cut.On", "unknown-part", "front", 0, 0},
		{"on no inner part", features(box.Cut{On: box.InnerPart("shlef"), Shape: box.Round{Diameter: 10}}), "Features[0].Cut.On", "unknown-part", "shlef", 0, 0},
		// Two of 10 with their middles 8 apart: 10 - 8.
		{"into each other", features(box.Cut{On: box.Front, Shape: box.Round{Diameter: 10}, At: box.Anchor{Up: 50}}, box.Cut{On: box.Front, Shape: box.Round{Diameter: 10}, At: box.Anchor{Right: 8, Up: 50}}),
			"Features[1].Cut", "feature-meets-feature", "by 2", 0, 0},
		{"twice the same", features(box.Cut{On: box.Front, Shape: box.Round{Diameter: 10}, At: box.Anchor{Up: 50}}, box.Cut{On: box.Front, Shape: box.Round{Diameter: 10}, At: box.Anchor{Up: 50}}),
			"Features[1].Cut", "feature-meets-feature", "by 5", 0, 0},
		// The rebate begins at 60, and the hole reaches 55 + 8.
		{"into a joint", func(d *box.Design) {
			d.Corners.Joint = joints.Rebate{Depth: 6}
			d.Features = []box.Feature{box.Cut{On: box.Front, Shape: box.Round{Diameter: 16}, At: box.Anchor{Right: 55, Up: 100}}}
		}, "Features[0].Cut", "feature-meets-joint", "rebate with right, by 3", 0, 0},
		// A line 2 wide along the upper edge of a hole of 20: half of 2, and 10 - 9.5.
		{"a line into a hole", features(box.Cut{On: box.Front, Shape: box.Round{Diameter: 20}, At: box.Anchor{Up: 50}}, box.Engrave{On: box.Front, Lines: line, At: box.Anchor{Up: 60.5}}),
			"Features[1].Engrave", "feature-meets-feature", "by 0.5", 0, 0},
		{"deeper than the board", features(box.Cut{On: box.Front, Shape: box.Round{Diameter: 10}, At: box.Anchor{Up: 50}, Depth: 15}), "Features[0].Cut.Depth", "range", "15", 0.1, 14.5},
		{"bees deeper than their block", func(d *box.Design) {
			d.Walls = []box.Wall{{On: box.Front, Open: true}}
			d.Inner = []box.Inner{box.BeeBlock{Name: "b", Board: thick(90), Rows: []box.BeeRow{{Diameter: 8, Depth: 95}}}}
		}, "Inner[0].BeeBlock.Rows[0].Depth", "range", "95", 0.1, 89.5},
		{"narrower than the cutter", features(box.Cut{On: box.Front, Shape: box.Slot{Width: 30, Height: 5}, At: box.Anchor{Up: 50}, Tool: box.Tool{Diameter: 6}}), "Features[0].Cut.Tool.Diameter", "narrow", "narrower", 0.1, 5},
		{"ten thousand vents", features(box.Vents{Count: 10000}), "Features[0].Vents.Count", "range", "10000", 1, 100},
		{"ten thousand drains", features(box.Drains{Count: 10000}), "Features[0].Drains.Count", "range", "10000", 0, 4},
		{"a curve with one point", features(box.Cut{On: box.Front, Shape: box.Freeform{Outline: outline.Contour{{X: 1, Y: 1}}}}), "Features[0].Cut.Shape.Freeform.Outline", "outline", "vertices", 0, 0},
		{"a line with one point", features(box.Engrave{On: box.Front, Lines: []outline.Path{{{X: 1}}}}), "Features[0].Engrave.Lines[0]", "outline", "vertices", 0, 0},
		{"unknown letters", features(box.Text{On: box.Front, Text: "ÅÄÖ 7", At: box.Anchor{Up: 50}}), "Features[0].Text.Text", "unknown-letter", "'Å' 'Ä' 'Ö'", 0, 0},
		{"an angle of 400", func(d *box.Design) { d.Opens = []box.Opening{box.Hinged{Part: box.Roof, Angle: 400}} }, "Opens[0].Hinged.Angle", "range", "400", 1, 270},
		{"a shelf deeper than its wall", func(d *box.Design) {
			d.Inner = []box.Inner{box.Shelf{Name: "s", Above: 50, Joint: joints.Housing{Depth: 14}}}
		}, "Inner[0].Shelf.Joint.Depth", "joint", "too deep", 0, 0},
		{"strips of no width", func(d *box.Design) { d.MadeUp = []box.MadeUp{{Of: box.Front, Width: 100, Least: 90}} }, "MadeUp[0].Least", "narrow-strip", "2 strips", 90, 10000},
	})
	// A plan is not opened by 400 either, and a smooth curve needs three points.
	p := resolve(t, plain.With(func(d *box.Design) { d.Opens = []box.Opening{box.Hinged{Part: box.Roof}} }))
	_, err := p.Opened(box.Roof, 400)
	require.Error(t, err)
	pr := err.(box.Problem)
	assert.Equal(t, "range", pr.Code)
	assert.InDelta(t, p.Ways()[0].Most, pr.Hi, 1e-9)
	_, err = outline.Fit([]outline.Point{{X: 1, Y: 1}}, 0.1)
	assert.Error(t, err)
	_, err = outline.FitClosed([]outline.Point{{X: 1, Y: 1}}, 0.1)
	assert.Error(t, err)
}
