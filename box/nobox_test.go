package box_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/outline"
)

// lone is a board of 160 x 110 x 15 and nothing else.
var lone = box.Design{Name: "lone", Board: thick(15), Free: []box.Free{{Name: "b", Outline: outline.Rectangle(-80, -55, 80, 55)}}}

// Features go onto free parts without a box too, each with its own volume.
func TestFeaturesWithoutABox(t *testing.T) {
	const whole = 160 * 110 * 15
	b := box.FreePart("b")
	cross := []outline.Path{{{X: -10}, {X: 10}}}
	for _, x := range []struct {
		f     box.Feature
		taken float64
	}{
		{box.Cut{On: b, Shape: box.Round{Diameter: 40}}, 400 * math.Pi * 15},
		{box.Cut{On: b, Shape: box.Rect{Width: 30, Height: 20}, Depth: 6, At: box.Anchor{Right: 40}, Mirror: true}, 2 * 30 * 20 * 6},
		{box.Pattern{On: b, Motif: box.Rect{Width: 10, Height: 10}, Repeat: box.Repeat{Columns: 3, Rows: 2, StepRight: 20, StepUp: 20}}, 6 * 100 * 15},
		{box.Rail{On: b, Width: 100, Height: 60, Balusters: 4, Baluster: 12}, (100 - 4*12) * 60 * 15}, // five openings side by side
		{box.RoundCorners{On: b, Radius: 20}, (4 - math.Pi) * 400 * 15},
		{box.Scallops{On: b, Count: 4, Depth: 10, Form: box.Steps}, 4 * 160 / 9.0 * 10 * 15}, // four notches, five teeth
		{box.Engrave{On: b, Lines: cross}, 0},
		{box.Text{On: b, Text: "A 1"}, 0},
		{box.PartMarks{On: []box.Part{b}}, 0},
		{box.Edging{Round: 2}, 0},
	} {
		p, err := lone.With(func(d *box.Design) { d.Features = []box.Feature{x.f} }).Resolve()
		if !assert.NoError(t, err, "%T", x.f) {
			continue
		}
		q, _ := p.Piece(b)
		assert.InDelta(t, whole-x.taken, q.Volume, 1e-6*whole, "%T", x.f)
		assert.NoError(t, boxtest.CheckOutlines(p), "%T", x.f)
		assert.NoError(t, boxtest.CheckMeshes(p), "%T", x.f)
		if _, edges := x.f.(box.Edging); !edges {
			assert.NotEmpty(t, len(q.Panel.Ops)+len(q.Panel.Silhouette[0])-4, "%T", x.f)
		}
	}
}

// Without a size nothing that needs a box is left out silently.
func TestWhatNeedsABox(t *testing.T) {
	for _, x := range []struct {
		set        func(*box.Design)
		path, code string
	}{
		{func(d *box.Design) { d.Footprint = box.Regular{Sides: 6, Across: 100} }, "Footprint", "no-box"},
		{func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front}} }, "Walls", "no-box"},
		{func(d *box.Design) { d.Roof = box.Flat{} }, "Roof", "no-box"},
		{func(d *box.Design) { d.Floor = box.FloorUnder{} }, "Floor", "no-box"},
		{func(d *box.Design) { d.Joints = []box.Between{{}} }, "Joints", "no-box"},
		{func(d *box.Design) { d.Inner = []box.Inner{box.Shelf{Name: "s"}} }, "Inner", "no-box"},
		{func(d *box.Design) { d.Outer = []box.Outer{box.Felt{}} }, "Outer", "no-box"},
		{func(d *box.Design) { d.Opens = []box.Opening{box.Hinged{Part: box.Roof}} }, "Opens", "no-box"},
		{func(d *box.Design) { d.MadeUp = []box.MadeUp{{Of: box.Front}} }, "MadeUp", "no-box"},
		{func(d *box.Design) { d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}}} }, "Features[0].Entrance", "no-box"},
		{func(d *box.Design) { d.Features = []box.Feature{box.Drains{}} }, "Features[0].Drains", "no-box"},
		{func(d *box.Design) { d.Features = []box.Feature{box.GripGrooves{}} }, "Features[0].GripGrooves", "no-box"},
		{func(d *box.Design) { d.Features = []box.Feature{box.PartMarks{}} }, "Features[0].PartMarks.On", "missing"},
		{func(d *box.Design) {
			d.Features = []box.Feature{box.Cut{On: box.Front, Shape: box.Round{Diameter: 32}}}
			d.Footprint = box.Regular{Sides: 6, Across: 100}
		}, "Features[0].Cut.On", "unknown-part"},
		{func(d *box.Design) {
			d.Features = []box.Feature{box.Cut{On: box.FreePart("b"), Shape: box.Round{Diameter: -3}}}
		}, "Features[0].Cut.Shape.Round.Diameter", "range"},
		{func(d *box.Design) {
			d.Features = []box.Feature{box.Cut{On: box.FreePart("b"), Shape: box.Round{Diameter: 200}}}
		}, "Features[0].Cut", "off-part"},
	} {
		_, err := lone.With(x.set).Resolve()
		var ps box.Problems
		require.True(t, errors.As(err, &ps), x.path)
		found := false
		for _, p := range ps {
			found = found || p.Path == x.path && p.Code == x.code
		}
		assert.True(t, found, "%s %s: %v", x.path, x.code, ps)
	}
	d := lone
	d.Roof, d.Floor = box.NoRoof{}, box.NoFloor{}
	_, err := d.Resolve()
	assert.NoError(t, err, "none of both may be said")
}
