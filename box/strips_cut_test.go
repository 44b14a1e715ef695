package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/outline"
)

// A hole across the joint of two strips: what each loses is the segment of a
// circle, r2 acos(d/r) - d sqrt(r2 - d2), on its side of the plane.
func TestHoleAcrossStrips(t *testing.T) {
	const r, right = 30.0, 10.0 // of the plane at x = 0, between front/2 and front/3
	segment := func(d float64) float64 { return r*r*math.Acos(d/r) - d*math.Sqrt(r*r-d*d) }
	d := wide.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 2 * r}, Above: 120, Right: right}}
	})
	p := resolve(t, d)
	boxtest.Sound(t, p)
	blank := 134.0 * 335 * 15
	// The outlines of both halves are area-true: nothing is lost to the chord.
	assert.InDelta(t, blank-15*segment(right), piece(t, p, "front/2").Volume, 1e-2)
	assert.InDelta(t, blank-15*(math.Pi*r*r-segment(right)), piece(t, p, "front/3").Volume, 1e-2)
	assert.InDelta(t, 15*math.Pi*r*r, voidOf(p, "feature", "entrance front"), 1e-6)
	found := false
	for _, f := range p.Findings() {
		assert.NotEqual(t, "thin-web", f.Code)
		if f.Code == "crosses-strips" {
			found = true
			assert.Equal(t, "the entrance crosses the joint between front/2 and front/3: cut it once the strips are together", f.Why)
			assert.InDelta(t, r-right, f.Got, 1e-9)
		}
	}
	assert.True(t, found)
	for name, area := range map[box.Part]float64{"front/2": segment(right), "front/3": math.Pi*r*r - segment(right)} {
		q := piece(t, p, name)
		require.Len(t, q.Panel.Ops, 1)
		assert.Equal(t, box.OpNotch, q.Panel.Ops[0].Kind)
		assert.InDelta(t, area, q.Panel.Ops[0].Region.Area(), 1e-6)
		assert.InDelta(t, 134*335-area, q.Panel.Machined.Area(), 1e-3)
		// The panel's origin is the middle of the strip's own lower edge on the cavity
		// face, 35 over the end of the board.
		e := q.Panel.Machined.Extents()
		for _, x := range [][2]float64{{-67, e.Min.X}, {67, e.Max.X}, {-35, e.Min.Y}, {300, e.Max.Y}} {
			assert.InDelta(t, x[0], x[1], 1e-6, name)
		}
		// What is cut from the solid runs out 1 past the edge: no two faces coincide.
		c := q.Body.Prisms[0].Outline.Extents()
		assert.InDelta(t, 68, math.Max(-c.Min.X, c.Max.X), 1e-6, name)
	}
	assert.Equal(t, box.OpBore, piece(t, p, box.Front).Panel.Ops[0].Kind, "in the whole part it is a bore")

	// Across a tongue the first strip loses the piece of its tongue too: the slice
	// of the circle from the plane to the tongue's end, by the same formula.
	p = resolve(t, madeOf(box.TongueGroove{Tongue: 8}).With(func(e *box.Design) { e.Features = d.Features }))
	boxtest.Sound(t, p)
	tongue := segment(right-8) - segment(right)
	groove := segment(right-8.2) - segment(right)
	blank2 := blank + 335*(8*5-5.2*8.2) // front/2: a tongue and a groove
	// The facets of the arcs lie up to 0.01 off: over 2 x 8.2 mm of arc and 5 mm of
	// thickness, twice, under 2 mm3.
	assert.InDelta(t, blank2-15*segment(right)-5*tongue, piece(t, p, "front/2").Volume, 2)
	assert.InDelta(t, blank2-15*(math.Pi*r*r-segment(right))+5.2*groove, piece(t, p, "front/3").Volume, 2)
	assert.InDelta(t, 15*math.Pi*r*r, voidOf(p, "feature", "entrance front"), 1e-6)

	// A loose tongue loses its share.
	p = resolve(t, madeOf(box.LooseTongue{}).With(func(e *box.Design) { e.Features = d.Features }))
	boxtest.Sound(t, p)
	slice := segment(right-7.5) - segment(right+7.5)
	assert.InDelta(t, 4*(15*335-slice), piece(t, p, "front/tongue/2").Volume, 1e-2)
	assert.InDelta(t, 4*15*335, piece(t, p, "front/tongue/1").Volume, 1e-2)
}

// Pockets across joints: each strip takes its share, a loose tongue only what
// reaches it, to the depth that reaches it.
func TestPocketAcrossStrips(t *testing.T) {
	pocket := func(depth box.MM, from box.CutSide) []box.Feature {
		return []box.Feature{box.Cut{On: box.Front, At: box.Anchor{Right: 10, Up: 100}, Shape: box.Rect{Width: 60, Height: 40}, Depth: depth, From: from}}
	}
	for _, from := range []box.CutSide{box.FromOuter, box.FromInner} {
		for _, x := range []struct {
			depth  box.MM
			tongue float64 // its depth in the tongue, which is 5.5 to 9.5 from either face
		}{{3, 0}, {7, 1.5}, {12, 4}} {
			p := resolve(t, madeOf(box.LooseTongue{}).With(func(d *box.Design) { d.Features = pocket(x.depth, from) }))
			boxtest.Sound(t, p)
			// 20 x 40 in front/2, and 40 x 40 in front/3.
			q := piece(t, p, "front/2")
			var op box.Op
			for _, o := range q.Panel.Ops {
				if o.Source == "pocket" {
					op = o
				}
			}
			assert.Equal(t, box.OpPocket, op.Kind)
			assert.InDelta(t, 20*40, op.Region.Area(), 1e-6)
			assert.Equal(t, x.depth, op.To-op.From)
			assert.InDelta(t, 4*15*335-15*40*x.tongue, piece(t, p, "front/tongue/2").Volume, 1e-2, "%v deep", x.depth)
			assert.InDelta(t, 60*40*float64(x.depth), voidOf(p, "feature", ""), 1e-6)
		}
	}
	// In shiplap a shallow pocket from outside leaves the inner lip alone, one from
	// inside is the first strip's up to the end of its lip.
	for from, x := range map[box.CutSide][2]float64{box.FromOuter: {20, 40}, box.FromInner: {32, 28}} {
		p := resolve(t, madeOf(box.Shiplap{Lap: 12}).With(func(d *box.Design) {
			d.MadeUp[0].Width = 150 // four strips
			d.Features = pocket(3, from)
		}))
		boxtest.Sound(t, p)
		plain := resolve(t, madeOf(box.Shiplap{Lap: 12}).With(func(d *box.Design) { d.MadeUp[0].Width = 150 }))
		for k, name := range []box.Part{"front/2", "front/3"} {
			assert.InDelta(t, piece(t, plain, name).Volume-x[k]*40*3, piece(t, p, name).Volume, 1e-2, name)
		}
	}
}

// Lines are divided where strips meet on the face that they are drawn on.
func TestLinesAcrossStrips(t *testing.T) {
	line := outline.Line(outline.Point{X: -250}, outline.Point{X: 250})
	for from, first := range map[box.CutSide]float64{box.FromOuter: 250 - 134, box.FromInner: 250 - 134 + 12} {
		p := resolve(t, madeOf(box.Shiplap{Lap: 12}).With(func(d *box.Design) {
			d.MadeUp[0].Width = 150
			d.Features = []box.Feature{box.Engrave{On: box.Front, Lines: []outline.Path{line}, At: box.Anchor{Up: 50}, From: from}}
		}))
		total := 0.0
		for k, name := range p.Wholes()[0].Strips {
			ops := piece(t, p, name).Panel.Ops
			l := 0.0
			for _, o := range ops {
				for _, s := range o.Strokes {
					l += s.Length()
				}
			}
			if k == 0 {
				assert.InDelta(t, first, l, 1e-6)
			}
			total += l
		}
		assert.InDelta(t, 500, total, 1e-6)
	}
}
