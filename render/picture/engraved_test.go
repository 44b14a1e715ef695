package picture

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

func carved(features ...box.Feature) *box.Plan {
	return box.Design{
		Name: "carved", Board: box.Board{Thickness: 15},
		Size: box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof: box.Flat{Over: box.Overhangs{All: 30}}, Floor: box.FloorBetween{},
		Features: features,
	}.MustResolve()
}

func engravedOn(p *Picture, part box.Part) (out []Line) {
	for _, l := range p.Lines {
		if l.Class == Engraved && l.Part == part {
			out = append(out, l)
		}
	}
	return out
}

func lengthOf(ls []Line) (n float64) {
	for _, l := range ls {
		n += l.Length()
	}
	return n
}

// A line of 60 from 30 left of the middle to 30 right of it, 100 above the floor, on
// the front's outer face (y = -60 - 15): it is drawn from where its ends are in the
// world to there, in the box as it stands and where its part has been moved to.
func TestEngravedLinesAreDrawn(t *testing.T) {
	line := box.Engrave{On: box.Front, At: box.Anchor{Up: 100}, Lines: []outline.Path{outline.Line(outline.Point{X: -30}, outline.Point{X: 30})}}
	for _, o := range []Options{{}, {Exploded: true}, {Unseen: true, Tint: true}} {
		p, err := New(carved(line), o)
		require.NoError(t, err)
		ls := engravedOn(p, box.Front)
		require.Len(t, ls, 1)
		want := [2]Point{p.At(box.Front, solid.Vec{X: -30, Y: -75, Z: 100}), p.At(box.Front, solid.Vec{X: 30, Y: -75, Z: 100})}
		if dist(ls[0].From, want[0]) > 1e-6 {
			ls[0].From, ls[0].To = ls[0].To, ls[0].From
		}
		assert.InDelta(t, 0, dist(ls[0].From, want[0]), 1e-6)
		assert.InDelta(t, 0, dist(ls[0].To, want[1]), 1e-6)
		found := false
		for _, s := range p.Strokes() {
			found = found || s.Class == Engraved
		}
		assert.True(t, found, "painters get it")
	}
}

// What is engraved where nobody sees it is left out, dashed lines or not: on the
// back, on inner faces, in the underside of the roof. Apart, the floor's upper face
// is in sight, and so is what is engraved there.
func TestEngravedLinesOutOfSight(t *testing.T) {
	plan := carved(box.Text{On: box.Back, Text: "B", At: box.Anchor{Up: 100}},
		box.Text{On: box.Front, Text: "IN", From: box.FromInner, At: box.Anchor{Up: 100}},
		box.Text{On: box.Floor, Text: "F", Height: 10, From: box.FromInner, At: box.Anchor{Up: 12}}, box.DripGroove{})
	for _, o := range []Options{{}, {Unseen: true}} {
		p, err := Assembled(plan, o)
		require.NoError(t, err)
		for _, l := range p.Lines {
			assert.NotEqual(t, Engraved, l.Class, "%v", l)
		}
	}
	p, err := Exploded(plan, Options{})
	require.NoError(t, err)
	assert.NotEmpty(t, engravedOn(p, box.Floor))
	assert.Empty(t, engravedOn(p, box.Back))
}

// An upright line on the front, from 100 to 230 over the floor, goes up behind the
// roof's overhang of 30, whose underside is at 240. Seen from above by an angle e and
// turned by r from the front, the roof's lower front arris hides what lies less than
// 30 tan e / cos r below it.
func TestEngravedLinesBehindTheEaves(t *testing.T) {
	view := View{Name: "v", Round: 20, Up: 40}
	line := box.Engrave{On: box.Front, At: box.Anchor{Up: 100}, Lines: []outline.Path{outline.Line(outline.Point{}, outline.Point{Y: 130})}}
	p, err := Assembled(carved(line), Options{Views: []View{view}})
	require.NoError(t, err)
	deg := math.Pi / 180
	top := 240 - 30*math.Tan(40*deg)/math.Cos(20*deg)
	want := dist(p.At(box.Front, solid.Vec{Y: -75, Z: 100}), p.At(box.Front, solid.Vec{Y: -75, Z: top}))
	assert.InDelta(t, want, lengthOf(engravedOn(p, box.Front)), 0.01)
}

// A full circle of 40 is drawn as one: pi 40 long when looked at squarely, 0.1 % less
// for its chords at most (sagitta 0.03 on a radius of 20: angles of 0.11, 1 - 0.11^2/24).
func TestEngravedArcs(t *testing.T) {
	ring := outline.Circle(outline.Point{}, 40).Path()
	plan := carved(box.Engrave{On: box.Front, At: box.Anchor{Up: 120}, Lines: []outline.Path{ring}})
	p, err := Assembled(plan, Options{Views: []View{{Name: "front", Round: 0, Up: 0}}})
	require.NoError(t, err)
	got := lengthOf(engravedOn(p, box.Front)) / p.Scale
	assert.InDelta(t, 40*math.Pi, got, 40*math.Pi*0.001)
}
