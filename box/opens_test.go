package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
)

// shut is the box of these tests: boards measured 14.6, a cavity of 120 x 120 x
// 240 under a flat roof.
var shut = box.Design{
	Name:  "shut",
	Board: box.Board{Thickness: 15, Measured: 14.6},
	Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
	Roof:  box.Flat{},
	Floor: box.FloorBetween{},
}

// longBack is the orchard's form: a pent roof of 12 degrees against a long back.
func longBack(d *box.Design) {
	d.Roof = box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}}
	d.Walls = []box.Wall{{On: box.Back, Above: 80, Below: 60}}
	d.Floor = box.FloorBetween{Raise: 20}
}

// opens is the base with openings, changed before by f.
func opens(f func(*box.Design), os ...box.Opening) box.Design {
	return shut.With(func(d *box.Design) {
		if f != nil {
			f(d)
		}
		d.Opens = os
	})
}

func opened(t *testing.T, f func(*box.Design), os ...box.Opening) *box.Plan {
	t.Helper()
	p, err := opens(f, os...).Resolve()
	require.NoError(t, err)
	for _, q := range p.Pieces() {
		m, err := p.Mesh(q.Part)
		require.NoError(t, err, q.Part)
		require.NoError(t, m.Check(), q.Part)
		require.InDelta(t, q.Volume, m.Volume(), 1e-3, q.Part)
	}
	return p
}

// opsOf are the operations of a part with the given source.
func opsOf(t *testing.T, p *box.Plan, part box.Part, source string) []box.Op {
	t.Helper()
	q, ok := p.Piece(part)
	require.True(t, ok, part)
	var out []box.Op
	for _, o := range q.Panel.Ops {
		if o.Source == source {
			out = append(out, o)
		}
	}
	return out
}

func fittingsOf(p *box.Plan, what string) []box.Fitting {
	var out []box.Fitting
	for _, f := range p.Fittings() {
		if f.What == what {
			out = append(out, f)
		}
	}
	return out
}

// The gap is 1.5 (common practice), and across the grain half of what a width of
// 120 swells: 120 x 0.25 % x 6 / 2 = 0.9 (EN 1313-1).
func TestPlayOfWhatOpens(t *testing.T) {
	width := func(d box.Design) float64 {
		p, err := d.Resolve()
		require.NoError(t, err)
		q, _ := p.Piece(box.Front)
		return float64(q.Width)
	}
	for _, x := range []struct {
		grain box.Grain
		play  box.MM
		want  float64
	}{
		{box.GrainAuto, 0, 120 - 2*2.4},
		{box.GrainNone, 0, 120 - 2*1.5},
		{box.GrainAuto, 0.7, 120 - 2*0.7},
	} {
		d := opens(nil, box.Pivoted{Part: box.Front, Play: x.play})
		d.Board.Grain = x.grain
		assert.InDelta(t, x.want, width(d), 1e-6, x)
	}
	// A front with the grain across swells in its height of 240: 240 x 1.5 % / 2 =
	// 1.8 under the roof and 1.5 at its sides. It is 117 long then.
	d := opens(nil, box.Pivoted{Part: box.Front})
	d.Board.Grain = box.GrainAcross
	p, err := d.Resolve()
	require.NoError(t, err)
	q, _ := p.Piece(box.Front)
	assert.InDelta(t, 117, float64(q.Length), 1e-6)
	assert.InDelta(t, 254.6-(1.5+1.8), float64(q.Width), 1e-6)
	// Hung at its left edge by a strip, 0.5 there and the whole swelling at the
	// other: 1.5 + 1.8.
	assert.InDelta(t, 120-0.5-3.3, width(opens(func(d *box.Design) { d.Corners.Laps = box.Sides }, box.Hinged{Part: box.Front})), 1e-6)
	// The gaps are declared, and belong to the opening: two of 2.4 and one of 1.6
	// under the roof, over a front 253 high that stands 14.6 thick between the walls.
	p = opened(t, nil, box.Pivoted{Part: box.Front})
	got := 0.0
	for _, v := range p.Voids() {
		if v.Owner == "opening front" {
			assert.Equal(t, "play", v.Kind)
			got += v.Volume
		}
	}
	assert.InDelta(t, 14.6*(2*2.4*254.6+1.6*115.2), got, 1e-2)
	for _, s := range p.Seams() {
		if s.Over == box.Left && s.Under == box.Front {
			assert.InDelta(t, 2.4, float64(s.Least), 1e-9)
			assert.InDelta(t, 2.4, float64(s.Greatest), 1e-9)
			assert.Greater(t, s.Contact, 0.0)
		}
	}
}

// The roof hangs at the long back by a strip that is its flashing. The axis lies
// in its upper face, in the middle of the gap of 0.5: 0.25 before the back. The
// back runs on by 80 over the place where that face meets it, which is 80 + 0.25
// tan 12 = 80.0531 over the axis; the roof lies 90 + 12 degrees from upright, and
// its face meets the back's upper arris atan(0.25/80.0531) = 0.1789 later.
func TestRoofHingedAtALongBack(t *testing.T) {
	want := 102 + math.Atan(0.25/(80+0.25*math.Tan(12*math.Pi/180)))*180/math.Pi
	_, ps := tryResolve(t, "103", opens(longBack, box.Hinged{Part: box.Roof, Angle: 103}))
	require.Len(t, ps, 1)
	assert.Equal(t, "strikes", ps[0].Code)
	assert.Equal(t, "Opens[0].Hinged.Angle", ps[0].Path)
	assert.Contains(t, ps[0].Why, "roof strikes back")
	assert.InDelta(t, math.Floor(want*100)/100, ps[0].Hi, 1e-9)

	p := opened(t, longBack, box.Hinged{Part: box.Roof, Angle: 102})
	// The strip is as long as the roof is wide: 120 + 2 x 14.6 + 2 x 20.
	s := fittingsOf(p, "rubber strip, 3 thick")
	require.Len(t, s, 1)
	assert.Equal(t, "189.2 x 60.0", s[0].Size)
	assert.InDelta(t, 189.2*60, s[0].Area, 1e-6)
	assert.Equal(t, []box.Part{box.Roof, box.Back}, s[0].Where)
	assert.Contains(t, s[0].Why, "rain")
	// 189.2/40 = 4.73: 6 in the roof's row; the back is 120 + 2 x 14.6 = 149.2 wide, 3.73: 5
	// in its own.
	nails := fittingsOf(p, "clout nail")[0]
	assert.Equal(t, 11, nails.Count)
	assert.Equal(t, "for the strip, in two rows: 6 into roof, 5 into back", nails.Why)
	// The gap at the back: 0.5 wide, 14.6/cos 12 high, 149.2 long.
	for _, v := range p.Voids() {
		if v.Owner == "opening roof" {
			assert.InDelta(t, 0.5*14.6/math.Cos(12*math.Pi/180)*149.2, v.Volume, 1e-2)
		}
	}
}

// A front that swings out under a sloping overhang: its inner upper arris, h/cos
// 12 under the roof's inner eaves line at the front's inner face, comes out to the
// roof's edge, 14.6 + 40 before it, where the roof is 54.6 tan 12 lower: h = 54.6
// sin 12 = 11.352. Before that its own bevelled top is lower still.
func TestHeadroomUnderAnOverhang(t *testing.T) {
	need := 54.6 * math.Sin(12*math.Pi/180)
	try := func(h float64) error {
		_, err := opens(longBack, box.Hinged{Part: box.Front, Headroom: box.MM(h)}).Resolve()
		return err
	}
	assert.Error(t, try(need-0.01))
	assert.NoError(t, try(need+0.01))
	_, ps := tryResolve(t, "no headroom", opens(longBack, box.Hinged{Part: box.Front}))
	require.Len(t, ps, 1)
	assert.Equal(t, "strikes", ps[0].Code)
	assert.Contains(t, ps[0].Try, "Headroom")
}

// Butts, 1.2 thick in each leaf: on a flush lid there is no gap, and 2.4 are let
// into the lid; round an inset front the gap is 1.5, and 0.9 are let into the side.
// Leaves are 40 x 12.6 (14.6 - 2), their middles at 1/6 and 5/6 of the seam.
func TestButtsAndTheirRecesses(t *testing.T) {
	for _, x := range []struct {
		name      string
		part, in  box.Part // where the recess is
		laps      box.Laps
		deep      float64
		middle    float64 // of the recesses along the seam, from its middle
		faced     box.CutSide
		endsPart  box.Part
		otherSide float64
	}{
		{name: "lid", part: box.Roof, in: box.Roof, deep: 2.4, middle: 40, endsPart: box.Back},
		{name: "inset front", part: box.Front, in: box.Left, laps: box.Sides, deep: 0.9, middle: 80, endsPart: box.Front},
	} {
		p := opened(t, func(d *box.Design) { d.Corners.Laps = x.laps }, box.Hinged{Part: x.part, Hinge: box.Butts{}})
		ops := opsOf(t, p, x.in, "hinge recess")
		require.Len(t, ops, 2, x.name)
		for _, o := range ops {
			assert.Equal(t, box.OpPocket, o.Kind)
			assert.Equal(t, box.SideMachined, o.Side)
			assert.InDelta(t, x.deep, float64(o.To), 1e-6, x.name)
			assert.InDelta(t, 40*12.6, o.Region.Area(), 1e-6, x.name)
		}
		a, b := ops[0].Region.Extents(), ops[1].Region.Extents()
		dx, dy := a.Min.X-b.Min.X, a.Min.Y-b.Min.Y
		assert.InDelta(t, 2*x.middle, math.Hypot(dx, dy), 1e-6, x.name)
		// Two screws in each leaf, in both parts.
		assert.Len(t, opsOf(t, p, x.in, "pilot of the hinge"), 4, x.name)
		ends := opsOf(t, p, x.endsPart, "pilot of the hinge")
		require.Len(t, ends, 4, x.name)
		for _, o := range ends {
			assert.Equal(t, box.SideEdge, o.Side)
			assert.InDelta(t, 2, float64(o.To-o.From), 1e-9)
		}
		assert.Equal(t, "40 x 25.2", fittingsOf(p, "butt hinge, brass or stainless steel")[0].Size)
		assert.Equal(t, 8, fittingsOf(p, "screw")[0].Count)
		// What the recess takes, of the solid: the same box with thin leaves less that.
		thin := opened(t, func(d *box.Design) { d.Corners.Laps = x.laps }, box.Hinged{Part: x.part, Hinge: box.Butts{Thickness: 0.7}})
		q, _ := p.Piece(x.in)
		r, _ := thin.Piece(x.in)
		// 1.4 less the gap is let in there; pilots start at the bottom of both.
		rest := math.Max(0, 1.4-(2.4-x.deep))
		less := 2 * (40*12.6 - 2*math.Pi) * (x.deep - rest)
		assert.InDelta(t, less, r.Volume-q.Volume, 130, x.name) // pilots: 4 x pi x up to 2.4 deeper
		assert.Greater(t, r.Volume-q.Volume, less/2, x.name)
	}
}

// A front in grooves of its sides: a third of 14.6, to the half millimetre, is 5
// deep; the grooves are 0.5 + 0.9 deeper and 0.5 wider; the sides run on by 14.6 +
// 0.5 past the front.
func TestSlidingFront(t *testing.T) {
	p := opened(t, nil, box.Sliding{Part: box.Front})
	front, _ := p.Piece(box.Front)
	assert.InDelta(t, 130, float64(front.Width), 1e-6)
	left, _ := p.Piece(box.Left)
	assert.InDelta(t, 120+14.6+15.1, float64(left.Width), 1e-6)
	groove := opsOf(t, p, box.Left, "housing with front")
	require.Len(t, groove, 1)
	assert.Equal(t, box.OpGroove, groove[0].Kind)
	assert.InDelta(t, 6.4, float64(groove[0].To), 1e-6)
	assert.InDelta(t, 15.1, groove[0].Region.Extents().Width(), 1e-6)
	w := p.Ways()[0]
	assert.False(t, w.Turns)
	assert.Equal(t, box.Direction{Z: -1}, w.Along)
	// It is free all its length: 254.6 less 1.5 of play under the roof.
	assert.InDelta(t, 253.1, w.Most, 1e-6)
	drawn, err := p.Drawn(box.Front, 100)
	require.NoError(t, err)
	q, _ := drawn.Piece(box.Front)
	assert.InDelta(t, q.Home.O.Z-100, q.Pose.O.Z, 1e-9)
	// Up is barred by the roof, and free without one.
	_, ps := tryResolve(t, "up", opens(nil, box.Sliding{Part: box.Front, Up: true}))
	require.Len(t, ps, 1)
	assert.Equal(t, "1.5", ps[0].Got)
	opened(t, func(d *box.Design) { d.Roof = box.NoRoof{} }, box.Sliding{Part: box.Front, Up: true})
}

// A roof on four screws of 4, 40 long (2.5 times 14.6, up to 5): through it into
// the ends of front and back, a quarter of the seam from its ends.
func TestRemovableParts(t *testing.T) {
	p := opened(t, nil, box.Removable{Part: box.Roof})
	holes := opsOf(t, p, box.Roof, "screw of roof")
	require.Len(t, holes, 4)
	for _, o := range holes {
		c, d, ok := o.Region[0].IsCircle(1e-9)
		require.True(t, ok)
		assert.InDelta(t, 4.5, d, 1e-9)
		assert.InDelta(t, 30, math.Abs(c.X), 1e-6)
	}
	for _, w := range []box.Part{box.Front, box.Back} {
		ends := opsOf(t, p, w, "screw of roof")
		require.Len(t, ends, 2, w)
		assert.InDelta(t, 2.8, float64(ends[0].To-ends[0].From), 1e-9)
		assert.InDelta(t, 40-14.6, ends[0].Region.Extents().Height(), 1e-6)
	}
	assert.Equal(t, "4 x 40", fittingsOf(p, "screw")[0].Size)
	for _, s := range p.Seams() {
		if s.Over == box.Roof {
			assert.Equal(t, s.Under == box.Front || s.Under == box.Back, len(s.Holds) > 0, s.Under)
		}
	}
	// A front cannot come straight off under a sloping overhang: it goes along it.
	p = opened(t, longBack, box.Removable{Part: box.Front})
	a := 12 * math.Pi / 180
	along := p.Ways()[0].Along
	assert.InDelta(t, -math.Cos(a), along.Y, 1e-9)
	assert.InDelta(t, -math.Sin(a), along.Z, 1e-9)
}

// Parts that open meet their neighbours in butts, unless Joints says otherwise.
func TestPlainJointsWhereSomethingOpens(t *testing.T) {
	p := opened(t, func(d *box.Design) {
		d.Corners.Joint = joints.Comb{}
		d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{}}
	}, box.Hinged{Part: box.Front, At: box.Left})
	for _, s := range p.Seams() {
		switch {
		case s.Over == box.Front || s.Under == box.Front:
			assert.Equal(t, "butt", s.Joint, "%s over %s", s.Over, s.Under)
			if s.Under == box.Left || s.Over == box.Left {
				assert.Equal(t, "hinge", s.Holds[0].Kind)
			} else {
				assert.Empty(t, s.Holds)
			}
		case s.Under == box.Floor:
			assert.Equal(t, "housing", s.Joint)
		case s.Over != box.Roof:
			assert.Equal(t, "comb", s.Joint)
		}
	}
}
