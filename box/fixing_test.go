package box_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// screwed is a small box of 14.6 boards, its front screwed to its left side by
// hand: the middle of the side's edge is 60 + 7.3 = 67.3 from the middle.
func screwed() box.Design {
	return box.Design{
		Name: "screwed", Board: box.Board{Thickness: 15, Measured: 14.6}, Size: box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof: box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}}, Floor: box.FloorBetween{},
		Fixings: []box.Fixing{{Over: box.Front, Under: box.Left, What: "screw", Metal: "stainless steel", Diameter: 3.5, Length: 40, Hole: 4, Pilot: 2.5,
			At: []box.Anchor{{Right: -67.3, Up: 50}, {Right: -67.3, Up: 150}}}},
	}
}

// holesFor are the operations of a part for fixings.
func holesFor(t *testing.T, plan *box.Plan, part box.Part) (out []box.Op) {
	t.Helper()
	p, ok := plan.Piece(part)
	require.True(t, ok, part)
	for _, op := range p.Panel.Ops {
		if op.Use == box.UseFixing {
			out = append(out, op)
		}
	}
	return out
}

// TestFixingByHand: the screw starts on the outer face of the front, at y = -60 -
// 14.6, passes through its 14.6 and is 40 - 14.6 = 25.4 in the side; the hole in
// the front is 4, that in the edge of the side 2.5, in its middle: 7.3 less and
// more 1.25 below its face (geometry).
func TestFixingByHand(t *testing.T) {
	plan := screwed().MustResolve()
	rows := plan.Fixings()
	require.Len(t, rows, 1)
	r := rows[0]
	assert.Equal(t, box.Direction{Y: 1}, r.Into)
	assert.False(t, r.Together)
	for k, z := range []box.MM{50, 150} {
		assert.InDelta(t, -67.3, float64(r.Places[k].X), 1e-9)
		assert.InDelta(t, -74.6, float64(r.Places[k].Y), 1e-9)
		assert.InDelta(t, float64(z), float64(r.Places[k].Z), 1e-9)
		assert.InDelta(t, 14.6, float64(r.Held[k]), 1e-9)
		assert.InDelta(t, 25.4, float64(r.In[k]), 1e-9)
	}
	front := holesFor(t, plan, box.Front)
	require.Len(t, front, 2)
	for _, op := range front {
		_, d, ok := op.Region[0].IsCircle(1e-6)
		assert.True(t, ok && math.Abs(d-4) < 1e-6 && op.Kind == box.OpBore && op.Side == box.SideThrough && op.Source == "screw", "%+v", op)
	}
	left := holesFor(t, plan, box.Left)
	require.Len(t, left, 2)
	for _, op := range left {
		e := op.Region[0].Extents()
		assert.Equal(t, box.SideEdge, op.Side)
		assert.InDelta(t, 6.05, float64(op.From), 1e-9)
		assert.InDelta(t, 8.55, float64(op.To), 1e-9)
		assert.InDelta(t, 25.4, math.Max(e.Width(), e.Height()), 1e-6)
		assert.InDelta(t, 2.5, math.Min(e.Width(), e.Height()), 1e-6)
	}
	assert.Empty(t, holesFor(t, plan, box.Right))
	var found bool
	for _, f := range plan.Fittings() {
		if f.What == "screw, stainless steel" {
			found = true
			assert.Equal(t, box.Fitting{What: "screw, stainless steel", Count: 2, Size: "3.5 x 40", Length: 40, Width: 3.5,
				Where: []box.Part{box.Front, box.Left}, Why: "through front into left"}, f)
		}
	}
	assert.True(t, found)
	for _, m := range plan.Seams() {
		if m.Over == box.Front && m.Under == box.Left {
			require.Len(t, m.Holds, 1)
			assert.Equal(t, joints.Hold{Kind: "screw", Note: "through front into left", Count: 2, Diameter: 3.5, Length: 40, Spacing: 100}, m.Holds[0])
		}
	}
}

// TestFixingOutward: a board that stands on the outside takes its screws from
// within. The landing board stands out from the front, which is 14.6 thick; a
// screw from the inner face, at y = -60, goes towards the viewer and is 40 - 14.6
// in its edge.
func TestFixingOutward(t *testing.T) {
	d := screwed().With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}}
		d.Outer = []box.Outer{box.LandingBoard{Name: "landing", Below: 10, Width: 80, Deep: 60}}
	})
	plain := d.With(func(d *box.Design) { d.Fixings = nil }).MustResolve()
	landing, ok := plain.Piece(box.FreePart("landing"))
	require.True(t, ok)
	m, err := plain.Mesh(landing.Part)
	require.NoError(t, err)
	lo, hi := m.Bounds()
	d.Fixings = []box.Fixing{{Over: box.Front, Under: landing.Part, What: "screw", Diameter: 3.5, Length: 40, Hole: 4, Pilot: 2.5, From: box.FromInner,
		At: []box.Anchor{{Right: -30, Up: box.MM(lo.Z+hi.Z) / 2, Level: box.CentreAbove}, {Right: 30, Up: box.MM(lo.Z+hi.Z) / 2, Level: box.CentreAbove}}}}
	plan := d.MustResolve()
	r := plan.Fixings()[0]
	assert.Equal(t, box.Direction{Y: -1}, r.Into)
	assert.InDelta(t, -60, float64(r.Places[0].Y), 1e-9)
	assert.InDelta(t, 14.6, float64(r.Held[0]), 1e-9)
	assert.InDelta(t, 25.4, float64(r.In[0]), 1e-9)
	assert.Len(t, holesFor(t, plan, landing.Part), 2)
	assert.Len(t, holesFor(t, plan, box.Front), 2)
}

// TestFixingIntoFace: a batten lies flat on the back, so the pilot is a hole in its
// face: 25 - 14.6 = 10.4 of its 14.6 deep.
func TestFixingIntoFace(t *testing.T) {
	d := screwed().With(func(d *box.Design) {
		d.Outer = []box.Outer{box.Batten{Name: "batten", Above: 100, Height: 60}}
		d.Fixings = []box.Fixing{{Over: box.Back, Under: box.FreePart("batten"), What: "screw", Diameter: 3, Length: 25, Hole: 3.5, Pilot: 2, From: box.FromInner, At: []box.Anchor{{Up: 130}}}}
	})
	plan := d.MustResolve()
	ops := holesFor(t, plan, box.FreePart("batten"))
	require.Len(t, ops, 1)
	assert.InDelta(t, 10.4, float64(ops[0].To-ops[0].From), 1e-9)
	assert.Equal(t, box.OpBore, ops[0].Kind)
	// It is in the solid too: 10.4 pi 1 squared, and 14.6 pi 1.75 squared in the back.
	bare := d.With(func(d *box.Design) { d.Fixings = nil }).MustResolve()
	for part, want := range map[box.Part]float64{box.FreePart("batten"): 10.4 * math.Pi, box.Back: 14.6 * math.Pi * 1.75 * 1.75} {
		a, _ := bare.Piece(part)
		b, _ := plan.Piece(part)
		assert.InDelta(t, want, a.Volume-b.Volume, 1e-6, part)
	}
}

// TestFixingSlant: in line with the side, at a roof of 12 degrees: upright, down
// into its end grain, and no hole square to the roof.
func TestFixingSlant(t *testing.T) {
	d := screwed().With(func(d *box.Design) {
		d.Fixings = []box.Fixing{{Over: box.Roof, Under: box.Front, What: "nail", Diameter: 2.5, Length: 50, Hole: 2, Pilot: 2, Slant: true, At: []box.Anchor{{Right: 0, Up: -7.3 / 1}}}}
	})
	plan := d.MustResolve()
	r := plan.Fixings()[0]
	assert.InDelta(t, -1, r.Into.Z, 1e-9)
	// 14.6 / cos 12 = 14.926 upright through the roof.
	assert.InDelta(t, 14.6/math.Cos(12*math.Pi/180), float64(r.Held[0]), 1e-6)
	assert.True(t, r.Together)
	assert.Equal(t, "through roof into front, in line with it; drilled when they are together", plan.Fittings()[0].Why)
	assert.Empty(t, holesFor(t, plan, box.Roof))
	assert.Len(t, holesFor(t, plan, box.Front), 1)
}

// TestFixingsListed: what the design lists comes after the rows, as it is given.
func TestFixingsListed(t *testing.T) {
	d := screwed().With(func(d *box.Design) {
		d.Fittings = []box.Fitting{{What: "nail, aluminium", Count: 2, Size: "6 x 100", Length: 100, Width: 6, Proud: 20, Where: []box.Part{box.Back}, Why: "hangs the box"},
			{What: "felt", Count: 1, Size: "30 x 20", Cut: outline.Region{outline.Rectangle(0, 0, 30, 20)}, Area: 600}}
	})
	plan := d.MustResolve()
	fs := plan.Fittings()
	require.Len(t, fs, 3)
	assert.Equal(t, d.Fittings, fs[1:])
	fs[2].Cut[0][0].X = 7 // a copy is given out
	plan.Fixings()[0].At[0].Right = 7
	assert.Equal(t, 0.0, d.Fittings[1].Cut[0][0].X)
	assert.Equal(t, box.MM(-67.3), plan.Fixings()[0].At[0].Right)
}

// TestHoldsSaid: an edge may say how it is held, whatever its joint says.
func TestHoldsSaid(t *testing.T) {
	for name, hs := range map[string][]joints.Hold{"dry": {{Kind: "dry"}}, "glue": {{Kind: "glue"}}, "nails": {{Kind: "glue"}, {Kind: "nail", Count: 3}}} {
		plan := screwed().With(func(d *box.Design) {
			d.Fixings = nil
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Holds: hs}}
		}).MustResolve()
		for _, m := range plan.Seams() {
			if m.Over == box.Front && m.Under == box.Left {
				want := hs
				if name == "dry" {
					want = nil
				}
				assert.Equal(t, want, m.Holds, name)
			}
		}
	}
}

// TestGlueListed: the glue of a box with rebates, with the area of the seams that
// say they are glued, and its name in them; an inner seam has its own.
func TestGlueListed(t *testing.T) {
	d := screwed().With(func(d *box.Design) { d.Fixings, d.Corners.Joint = nil, joints.Rebate{} })
	assert.Empty(t, d.MustResolve().Fittings())
	plan := d.With(func(d *box.Design) { d.Glue = "class D3" }).MustResolve()
	area, n := 0.0, 0
	for _, m := range plan.Seams() {
		if m.Glued() {
			area += m.Contact
			n++
			assert.Equal(t, joints.Hold{Kind: "glue", Note: "class D3"}, m.Holds[0])
		}
	}
	require.Len(t, plan.Fittings(), 1)
	f := plan.Fittings()[0]
	assert.Equal(t, "glue, class D3", f.What)
	assert.InDelta(t, area, f.Area, 1e-9)
	assert.Equal(t, 4, n) // four corners; floor and roof are screwed
	assert.Equal(t, []box.Part{box.Front, box.Right, box.Left, box.Back}, f.Where)
	// The corners' rebates are 7 deep and 14.6 wide: 21.6 a millimetre of height, and
	// the walls are 254.6 high in front and behind to the roof at 12 degrees.
	assert.Greater(t, f.Area, 4*240*21.6)
	assert.Less(t, f.Area, 4*300*(21.6+7.6))
}

// TestDryFloorIsFree: a dry floor of solid wood has room before the front and behind
// the back, and no screws there: those of the sides, into its ends, hold it. One of
// sheet stock, or with a play that is said, is held all round.
func TestDryFloorIsFree(t *testing.T) {
	for name, c := range map[string]struct {
		floor box.FloorBetween
		grain box.Grain
		want  int
	}{"solid": {box.FloorBetween{Dry: true}, box.GrainAuto, 2}, "sheet": {box.FloorBetween{Dry: true}, box.GrainNone, 4}, "fast": {box.FloorBetween{}, box.GrainAuto, 4}, "play": {box.FloorBetween{Dry: true, Play: 1}, box.GrainAuto, 4}} {
		plan := screwed().With(func(d *box.Design) {
			d.Fixings, d.Floor = nil, c.floor
			d.Boards = map[box.Part]box.Board{box.Floor: {Thickness: 15, Grain: c.grain}}
		}).MustResolve()
		n := 0
		for _, m := range plan.Seams() {
			if m.Under == box.Floor && len(m.Holds) > 0 {
				n++
				if name == "solid" {
					assert.Contains(t, []box.Part{box.Left, box.Right}, m.Over)
				}
			}
		}
		assert.Equal(t, c.want, n, name)
	}
}

func TestFixingsRefused(t *testing.T) {
	nan := box.MM(math.NaN())
	row := func(f func(*box.Fixing)) func(*box.Design) {
		return func(d *box.Design) { f(&d.Fixings[0]) }
	}
	list := func(f box.Fitting) func(*box.Design) {
		return func(d *box.Design) { d.Fittings = []box.Fitting{f} }
	}
	hold := func(h ...joints.Hold) func(*box.Design) {
		return func(d *box.Design) { d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Holds: h}} }
	}
	for _, c := range []struct {
		path, code string
		change     func(*box.Design)
	}{
		{"Fixings[0].What", "unknown-value", row(func(f *box.Fixing) { f.What = "rivet" })},
		{"Fixings[0].Metal", "control-character", row(func(f *box.Fixing) { f.Metal = "a\nb" })},
		{"Fixings[0].Diameter", "range", row(func(f *box.Fixing) { f.Diameter = -3.5 })},
		{"Fixings[0].Diameter", "range", row(func(f *box.Fixing) { f.Diameter = nan })},
		{"Fixings[0].Length", "range", row(func(f *box.Fixing) { f.Length = 0 })},
		{"Fixings[0].Hole", "range", row(func(f *box.Fixing) { f.Hole = 40 })},
		{"Fixings[0].Pilot", "range", row(func(f *box.Fixing) { f.Pilot = 4 })},
		{"Fixings[0].From", "unknown-value", row(func(f *box.Fixing) { f.From = 7 })},
		{"Fixings[0].At", "range", row(func(f *box.Fixing) { f.At = nil })},
		{"Fixings[0].At", "range", row(func(f *box.Fixing) { f.At = make([]box.Anchor, 10000) })},
		{"Fixings[0].At[1].Up", "range", row(func(f *box.Fixing) { f.At[1].Up = nan })},
		{"Fixings[0].At[1]", "misses", row(func(f *box.Fixing) { f.At[1].Right = 0 })},
		{"Fixings[0].At[0]", "misses", row(func(f *box.Fixing) { f.Length = 14 })},
		{"Fixings[0].At[0]", "misses", row(func(f *box.Fixing) { f.From = box.FromInner })},
		{"Fixings[0].Under", "same-part", row(func(f *box.Fixing) { f.Under = box.Front })},
		{"Fixings[0].Under", "unknown-part", row(func(f *box.Fixing) { f.Under = "lefft" })},
		{"Fixings[0].Slant", "parallel", row(func(f *box.Fixing) { f.Slant, f.Under = true, box.Back })},
		{"Fixings[0]", "holds-shut", func(d *box.Design) { d.Opens = []box.Opening{box.Hinged{Part: box.Left}} }},
		{"Glue", "control-character", func(d *box.Design) { d.Glue = "a\x07" }},
		{"Fixings", "range", func(d *box.Design) { d.Fixings = make([]box.Fixing, 10000) }},
		{"Fittings", "range", func(d *box.Design) { d.Fittings = make([]box.Fitting, 10000) }},
		{"Fittings[0].What", "no-name", list(box.Fitting{Count: 1})},
		{"Fittings[0].Size", "control-character", list(box.Fitting{What: "x", Count: 1, Size: "\x00"})},
		{"Fittings[0].Count", "range", list(box.Fitting{What: "screw"})},
		{"Fittings[0].Count", "range", list(box.Fitting{What: "screw", Count: 10001})},
		{"Fittings[0].Length", "range", list(box.Fitting{What: "screw", Count: 1, Length: -1})},
		{"Fittings[0].Area", "range", list(box.Fitting{What: "felt", Count: 1, Area: math.Inf(1)})},
		{"Fittings[0].Proud", "range", list(box.Fitting{What: "nail", Count: 1, Proud: nan})},
		{"Fittings[0].Where[0]", "unknown-part", list(box.Fitting{What: "nail", Count: 1, Where: []box.Part{"bakc"}})},
		{"Fittings[0].Cut[0]", "outline", list(box.Fitting{What: "felt", Count: 1, Cut: outline.Region{{}}})},
		{"Joints[0].Holds[0].Kind", "unknown-value", hold(joints.Hold{Kind: "hope"})},
		{"Joints[0].Holds[0].Kind", "contradiction", hold(joints.Hold{Kind: "dry"}, joints.Hold{Kind: "glue"})},
		{"Joints[0].Holds[0].Count", "range", hold(joints.Hold{Kind: "screw", Count: -1})},
		{"Joints[0].Holds[0].Spacing", "range", hold(joints.Hold{Kind: "screw", Spacing: nan})},
	} {
		_, err := screwed().With(c.change).Resolve()
		var ps box.Problems
		require.True(t, errors.As(err, &ps), "%s: %v", c.path, err)
		found := false
		for _, p := range ps {
			found = found || p.Path == c.path && p.Code == c.code
		}
		assert.True(t, found, "%s %s: %v", c.path, c.code, err)
	}
}
