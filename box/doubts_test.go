package box_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
)

// strange has an edge joint inside that is nil: its methods are there and cannot run.
type strange struct{ box.EdgeJoint }

// An edge joint is one of the four; a type that has one inside is told, not run.
func TestEdgeJointOfAnotherType(t *testing.T) {
	p := only(t, "strange", madeOf(strange{}))
	assert.Equal(t, "MadeUp[0].Joint", p.Path)
	assert.Equal(t, "unknown-value", p.Code)
	assert.Equal(t, "box_test.strange is not an edge joint", p.Why)
	resolve(t, madeOf(&box.Shiplap{Lap: 12}).With(func(d *box.Design) { d.MadeUp[0].Width = 150 }))
}

// Lines and their copies are counted together: 150 x 134 = 20,100 are too many, 150 x
// 133 = 19,950 are not, whoever repeats them.
func TestTooManyStrokes(t *testing.T) {
	lines := make([]outline.Path, 150)
	for i := range lines {
		lines[i] = outline.Line(outline.Point{X: float64(i) / 3}, outline.Point{X: float64(i) / 3, Y: 0.5})
	}
	for n, want := range map[int]int{133: 0, 134: 1} {
		for name, f := range map[string]box.Feature{
			"Engrave": box.Engrave{On: box.Front, Lines: lines, At: box.Anchor{Right: -25, Up: 20}, Width: 0.2, Repeat: box.Repeat{Rows: n, StepUp: 1}},
			"Pattern": box.Pattern{On: box.Front, Lines: lines, At: box.Anchor{Right: -25, Up: 20}, Width: 0.2, Repeat: box.Repeat{Columns: 1, Rows: n, StepUp: 1}},
		} {
			_, ps := tryResolve(t, name, with(f))
			require.Len(t, ps, want, "%s: %d", name, n)
			if want > 0 {
				assert.Equal(t, "Features[0]."+name+".Repeat", ps[0].Path)
				assert.Equal(t, "20100", ps[0].Got)
				assert.Equal(t, 20000.0, ps[0].Hi)
			}
		}
	}
}

// A part that a feature names twice is told, in every list.
func TestOnTwice(t *testing.T) {
	for name, f := range map[string]box.Feature{
		"Vents":      box.Vents{On: []box.Part{box.Left, box.Right, box.Left}},
		"DripGroove": box.DripGroove{On: []box.Part{box.Roof, box.Roof, box.Roof}},
		"EavesVents": box.EavesVents{On: []box.Part{box.Left, box.Right, box.Left}},
		"Edging":     box.Edging{On: []box.Part{box.Left, box.Right, box.Left}, Round: 2},
		"PartMarks":  box.PartMarks{On: []box.Part{box.Front, box.Back, box.Front}},
	} {
		_, ps := tryResolve(t, name, with(f))
		found := false
		for _, p := range ps {
			found = found || p.Path == "Features[0]."+name+".On[2]" && p.Code == "twice"
		}
		assert.True(t, found, "%s: %v", name, ps)
	}
}

// An opening larger than its face has no place: a round of 130 in a face of 120 by 240
// stands 5 past it on both sides, and nothing is tried.
func TestEntranceLargerThanItsFace(t *testing.T) {
	for _, right := range []box.MM{0, 4.9, -4.9} {
		p := only(t, "too wide", with(box.Entrance{Shape: box.Round{Diameter: 130}, Above: 60, Right: right}))
		assert.Equal(t, "off-cavity", p.Code)
		assert.Equal(t, "130 across", p.Got)
		assert.Contains(t, p.Why, "larger than the cavity's face, which is 120 wide and 240 high")
		assert.Empty(t, p.Try)
	}
	// Walls that lean in by 10 degrees leave 120 - 2 x 200 tan 10 = 49.5 of it at 200: one
	// of 55 has no place there, and none is tried, though the face is 120 wide below.
	p := only(t, "too wide up there", plain.With(func(d *box.Design) {
		d.Walls = []box.Wall{{On: box.Left, Lean: -10}, {On: box.Right, Lean: -10}}
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 55}, Above: 172.5, Right: 1}}
	}))
	assert.Empty(t, p.Try)
}

// The board that is too thick is told by the field that says so.
func TestThickFieldIsNamed(t *testing.T) {
	for field, b := range map[string]box.Board{
		"Thickness": {Thickness: 178},
		"Measured":  {Thickness: 18, Measured: 178},
		"Most":      {Thickness: 18, Measured: 150, Most: 178},
	} {
		_, ps := tryResolve(t, field, plain.With(func(d *box.Design) { d.Board = b }))
		require.NotEmpty(t, ps)
		assert.Equal(t, "Board."+field, ps[0].Path)
		assert.Equal(t, "178", ps[0].Got)
	}
}

// A plan that is asked to open what does not says how it would, and then it does.
func TestWhatWouldOpen(t *testing.T) {
	p := resolve(t, plain)
	for _, part := range []box.Part{box.Front, box.Back, box.Left, box.Right, box.Floor, box.Roof} {
		_, err := p.Opened(part, 10)
		assert.Equal(t, fmt.Sprintf("Opens: []box.Opening{box.Hinged{Part: %q}}", part), err.(box.Problem).Try)
		q := resolve(t, shut.With(func(d *box.Design) { d.Opens = []box.Opening{box.Hinged{Part: part}} }))
		_, err = q.Opened(part, 10)
		assert.NoError(t, err)
	}
	_, err := p.Drawn(box.Roof, 10)
	assert.Equal(t, `Opens: []box.Opening{box.Removable{Part: "roof"}}`, err.(box.Problem).Try)
	_, err = p.Opened("rooof", 10)
	assert.Empty(t, err.(box.Problem).Try)
}

// Motifs of 24 every 20 run into one another: told once, by the step.
func TestStepLessThanTheMotif(t *testing.T) {
	for field, r := range map[string]box.Repeat{
		"StepRight": {StepRight: 20, StepUp: 30},
		"StepUp":    {StepRight: 30, StepUp: 20},
	} {
		across := map[string]string{"StepRight": "across", "StepUp": "high"}[field]
		p := only(t, field, with(box.Pattern{On: box.Front, Motif: box.Round{Diameter: 24}, At: box.Anchor{Up: 120}, Depth: 2, Margin: 5, Repeat: r}))
		assert.Equal(t, "Features[0].Pattern.Repeat."+field, p.Path)
		assert.Equal(t, "20", p.Got)
		assert.Equal(t, 24.0, p.Lo)
		assert.Contains(t, p.Why, "less than the motif, 24 "+across)
	}
	// At 24 they touch, at 24.1 they do not.
	resolve(t, with(box.Pattern{On: box.Front, Motif: box.Round{Diameter: 24}, At: box.Anchor{Up: 120}, Depth: 2, Margin: 5, Repeat: box.Repeat{StepRight: 24.1, StepUp: 24.1}}))
}

// A pattern over an entrance is one problem, the worst of nine and more, and what it
// tries does.
func TestPatternOverAnEntrance(t *testing.T) {
	hole := box.Entrance{Shape: box.Round{Diameter: 40}, Above: 100}
	pattern := box.Pattern{On: box.Front, Motif: box.Round{Diameter: 8}, At: box.Anchor{Up: 120}, Depth: 2, Margin: 5, Repeat: box.Repeat{StepRight: 16, StepUp: 16}}
	p := only(t, "over it", with(hole, pattern))
	assert.Equal(t, "Features[1].Pattern", p.Path)
	assert.Equal(t, "Clear: 3, which leaves out what would come nearer", p.Try)
	p = only(t, "before it", with(pattern, hole))
	assert.Equal(t, "to list Features[0].Pattern after it, with Clear: 3, which leaves out what would come nearer", p.Try)
	pattern.Clear = 3
	resolve(t, with(hole, pattern))
}

// A pattern keeps clear of what was engraved before it, motifs and lines alike: of an
// upright stroke in the middle, 2 wide, by 3, so that motifs of 4 stay 1 + 3 + 2 = 6
// from it, and strokes of 1 wide 1 + 3 + 0.5 = 4.5.
func TestPatternClearOfLines(t *testing.T) {
	stroke := box.Engrave{On: box.Front, Width: 2, At: box.Anchor{Up: 120}, Lines: []outline.Path{outline.Line(outline.Point{Y: -40}, outline.Point{Y: 40})}}
	bond := box.Repeat{StepRight: 7, StepUp: 7}
	motif := box.Pattern{On: box.Front, Motif: box.Round{Diameter: 4}, At: box.Anchor{Up: 120}, Depth: 1, Margin: 5, Clear: 3, Repeat: bond}
	p := resolve(t, with(stroke, motif))
	least, n := math.Inf(1), 0
	for _, op := range ops(t, p, box.Front, "ornament") {
		c := op.Region.Centroid()
		if math.Abs(c.Y-120) < 40 {
			least, n = math.Min(least, math.Abs(c.X)), n+1
		}
	}
	assert.Greater(t, n, 50)
	assert.InDelta(t, 7, least, 1e-6, "those at 0 are left out, those at 7 are not")
	bond.StepRight = 5.9
	for _, op := range ops(t, resolve(t, with(stroke, func() box.Pattern { m := motif; m.Repeat = bond; return m }())), box.Front, "ornament") {
		if c := op.Region.Centroid(); math.Abs(c.Y-120) < 40 {
			assert.GreaterOrEqual(t, math.Abs(c.X), 6.0)
		}
	}
	// From the other face, 2 deep of 15, it is no hindrance.
	stroke.From = box.FromInner
	near := 0
	for _, op := range ops(t, resolve(t, with(stroke, motif)), box.Front, "ornament") {
		if math.Abs(op.Region.Centroid().X) < 1 {
			near++
		}
	}
	assert.Greater(t, near, 10)
	stroke.From = box.FromOuter

	dash := []outline.Path{outline.Line(outline.Point{Y: -1}, outline.Point{Y: 1})}
	for step, want := range map[box.MM]float64{4.4: 8.8, 4.6: 4.6} {
		lines := box.Pattern{On: box.Front, Lines: dash, At: box.Anchor{Up: 120}, Width: 1, Margin: 5, Clear: 3, Repeat: box.Repeat{StepRight: step, StepUp: 7}}
		least = math.Inf(1)
		for _, s := range ops(t, resolve(t, with(stroke, lines)), box.Front, "ornament")[0].Strokes {
			if c := s.Extents().Centre(); math.Abs(c.Y-120) < 39 {
				least = math.Min(least, math.Abs(c.X))
			}
		}
		assert.InDelta(t, want, least, 1e-6)
	}
}

// Lines across letters are told, whatever draws them; under the letters they are not.
// The 17 is 30 high around 120: it reaches down to 105, and half of its own 3 more; a
// line of 2 keeps clear of it from 105 - 1.5 - 1 = 102.5 down.
func TestLinesAcrossLetters(t *testing.T) {
	text := box.Text{On: box.Front, Text: "17", At: box.Anchor{Up: 120}}
	at := func(up box.MM) box.Feature {
		return box.Engrave{On: box.Front, At: box.Anchor{Up: up}, Lines: []outline.Path{outline.Line(outline.Point{X: -40}, outline.Point{X: 40})}}
	}
	p := only(t, "struck through", with(text, at(120)))
	assert.Equal(t, "Features[1].Engrave", p.Path)
	assert.Contains(t, p.Why, "runs into the text 17 of Features[0].Text")
	only(t, "written over", with(at(120), text))
	only(t, "too near", with(text, at(102.6)))
	resolve(t, with(text, at(102.4)))
	// A pattern of lines over it is told, and what it tries does.
	lines := box.Pattern{On: box.Front, Lines: []outline.Path{outline.Line(outline.Point{X: -3}, outline.Point{X: 3})}, At: box.Anchor{Up: 120}, Width: 1, Margin: 5, Repeat: box.Repeat{StepRight: 9, StepUp: 9}}
	p = only(t, "lines over it", with(text, lines))
	assert.Equal(t, "Clear: 3, which leaves out what would come nearer", p.Try)
	lines.Clear = 3
	resolve(t, with(text, lines))
}
