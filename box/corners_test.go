package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
)

// A round of radius r takes (1 - pi/4) r^2 off a square corner, a clip of c takes
// c^2/2; off a corner of 60 degrees a round takes r^2 (1/tan 30 - pi/3). Worked on
// the panel and, times the thickness of 15, on the solid.
func TestRoundCorners(t *testing.T) {
	board := func(o outline.Contour, f box.RoundCorners) (area, volume, length float64) {
		f.On = "free/board"
		p := resolve(t, with(f).With(func(d *box.Design) {
			d.Free = []box.Free{{Name: "board", Outline: o, At: box.Place{Y: -400}}}
		}))
		q := piece(t, p, f.On)
		require.NoError(t, q.Panel.Machined.Check())
		m, err := p.Mesh(f.On)
		require.NoError(t, err)
		require.NoError(t, m.Check())
		assert.InDelta(t, q.Volume, m.Volume(), 1e-6)
		return q.Panel.Machined.Area(), q.Volume, q.Panel.Machined.Length()
	}
	rect := outline.Rectangle(-50, -30, 50, 30)
	triangle := outline.RegularPolygon(outline.Point{}, 3, 40, 90)
	whole := 30 * math.Sqrt(3) * 40 // sides 40 sqrt 3, height 60
	for name, c := range map[string]struct {
		o            outline.Contour
		f            box.RoundCorners
		area, length float64
	}{
		"all":      {rect, box.RoundCorners{Radius: 12}, 6000 - (4-math.Pi)*144, 320 - 96 + 24*math.Pi},
		"two":      {rect, box.RoundCorners{Radius: 12, Corners: []box.Corner{box.UpperLeft, box.LowerRight}}, 6000 - (2-math.Pi/2)*144, 320 - 48 + 12*math.Pi},
		"half end": {rect, box.RoundCorners{Radius: 30, Corners: []box.Corner{box.UpperLeft, box.LowerLeft}}, 6000 - (2-math.Pi/2)*900, 320 - 120 + 30*math.Pi},
		"clipped":  {rect, box.RoundCorners{Radius: 12, Clip: true}, 6000 - 4*72, 320 - 8*12 + 4*12*math.Sqrt2},
		"triangle": {triangle, box.RoundCorners{Radius: 5}, whole - 3*25*(math.Sqrt(3)-math.Pi/3), 120*math.Sqrt(3) - 3*10*math.Sqrt(3) + 10*math.Pi},
	} {
		area, volume, length := board(c.o, c.f)
		assert.InDelta(t, c.area, area, 1e-5, name)
		assert.InDelta(t, 15*c.area, volume, 1e-3, name)
		assert.InDelta(t, c.length, length, 1e-4, name)
	}
}

// The long back is rounded above and clipped below, where it is free; the roof
// at its corners. Where a wall stands under the roof it may not be.
func TestCornersOfTheBox(t *testing.T) {
	d := orchard.With(func(d *box.Design) {
		d.Roof = box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}, Ends: box.SquareEnds}
		d.Features = append(d.Features,
			box.RoundCorners{On: box.Back, Corners: []box.Corner{box.UpperLeft, box.UpperRight}, Radius: 30},
			box.RoundCorners{On: box.Back, Corners: []box.Corner{box.LowerLeft, box.LowerRight}, Radius: 20, Clip: true},
			box.RoundCorners{On: box.Roof, Corners: []box.Corner{box.LowerLeft, box.LowerRight}, Radius: 25})
	})
	p := resolve(t, d)
	bare := resolve(t, orchard.With(func(e *box.Design) { e.Roof = d.Roof }))
	taken := func(part box.Part) float64 { return piece(t, bare, part).Volume - piece(t, p, part).Volume }
	assert.InDelta(t, 14.6*((2-math.Pi/2)*900+400), taken(box.Back), 1e-2)
	assert.InDelta(t, 14.6*(2-math.Pi/2)*625, taken(box.Roof), 1e-2)
	for _, q := range p.Pieces() {
		m, err := p.Mesh(q.Part)
		require.NoError(t, err, q.Part)
		require.NoError(t, m.Check(), q.Part)
	}
	checkRefusals(t, plain, []refusal{
		{"longer than the edge", func(d *box.Design) {
			d.Features = []box.Feature{box.RoundCorners{On: box.Roof, Corners: []box.Corner{box.LowerLeft}, Radius: 240}}
		}, "Features[0].RoundCorners.Radius", "range", "no longer", 1, 230}, // 120 + 2*15 + 2*40
		{"a joint", func(d *box.Design) {
			d.Features = []box.Feature{box.RoundCorners{On: box.Front, Corners: []box.Corner{box.UpperLeft}, Radius: 10}}
		}, "Features[0].RoundCorners", "feature-meets-joint", "touches", 0, 0},
		// The corner of the cavity stands 40 + 15 in from the roof's, so a clip of 90
		// along both edges crosses the walls' corner at 40 + 40 < 90.
		{"a wall under the roof", func(d *box.Design) {
			d.Features = []box.Feature{box.RoundCorners{On: box.Roof, Corners: []box.Corner{box.LowerLeft}, Radius: 90, Clip: true}}
		}, "Features[0].RoundCorners", "feature-meets-joint", "touches", 0, 0},
	})
	_, err := with(box.RoundCorners{On: box.Roof, Corners: []box.Corner{box.LowerLeft}, Radius: 79, Clip: true}).Resolve()
	assert.NoError(t, err, "79 stays clear of the walls at 80")
}

// Scallops on a board of 180 by 60. Five hollows 36 apart and 8 deep, less 0.05 at
// either end: r = (17.95^2+64)/16, segment r^2 a - 17.95 (r-8). Six steps of 10
// deep: pitch 180/13. Lobes: what stays is the sum of segments over the depth.
func TestScallops(t *testing.T) {
	segment := func(half, rise float64) float64 {
		r := (half*half + rise*rise) / (2 * rise)
		return r*r*math.Asin(half/r) - half*(r-rise)
	}
	for name, c := range map[string]struct {
		f     box.Scallops
		gone  float64
		slack float64
	}{
		"hollows": {box.Scallops{Count: 5, Depth: 8}, 5 * segment(17.95, 8), 1e-6},
		"steps":   {box.Scallops{Count: 6, Depth: 10, Form: box.Steps, Edge: box.UpperEdge}, 6 * 180.0 / 13 * 10, 1e-6},
		// The crests are blunted by 0.05 either way, where the arc is flat.
		"lobes": {box.Scallops{Count: 5, Depth: 8, Form: box.Lobes}, 180*8 - 5*segment(18, 8), 5 * 0.1 * 8},
		"inset": {box.Scallops{Count: 2, Depth: 6, Edge: box.LeftEdge, Inset: 10}, 2 * segment(9.95, 6), 1e-6},
	} {
		c.f.On = "free/board"
		p := resolve(t, with(c.f).With(func(d *box.Design) {
			d.Free = []box.Free{{Name: "board", Outline: outline.Rectangle(-90, -30, 90, 30), At: box.Place{Y: -400}}}
		}))
		q := piece(t, p, c.f.On)
		assert.InDelta(t, 180*60-c.gone, q.Panel.Machined.Area(), c.slack, name)
		assert.InDelta(t, 15*q.Panel.Machined.Area(), q.Volume, 1e-3, name)
		m, err := p.Mesh(c.f.On)
		require.NoError(t, err, name)
		require.NoError(t, m.Check(), name)
		e := q.Panel.Machined.Extents()
		assert.InDelta(t, 180, e.Width(), 1e-9, name)
		assert.InDelta(t, 60, e.Height(), 1e-9, name)
	}
	// Of a roof whose lower edge is bevelled too.
	p := resolve(t, orchard.With(func(d *box.Design) {
		d.Features = append(d.Features, box.Scallops{On: box.Roof, Count: 6, Depth: 8})
	}))
	m, err := p.Mesh(box.Roof)
	require.NoError(t, err)
	require.NoError(t, m.Check())
}
