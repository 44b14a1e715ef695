package box_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// The worked example: a long back 80 above and 60 below under a pent roof. No
// overlap, the gap between roof and back at most 0.5, the cover strip there.
func TestLongBackWithCoverStrip(t *testing.T) {
	d := outer(hung, box.CoverStrip{Name: "strip", Height: 30})
	tan, cos := math.Tan(deg(12)), math.Cos(deg(12))
	p := measures(t, d, []is{
		// From -15 - 60 to 200 + 150 tan 12 + 15/cos 12 + 80.
		{box.Back, 75 + 200 + 150*tan + 15/cos + 80, 180, 180 * 15 * (75 + 200 + 150*tan + 15/cos + 80)},
		// 30 high on the back, 15 tan 12 more where it reaches forward.
		{"free/strip", 180, 30 + 15*tan, 180 * 15 * (30 + 7.5*tan)},
	})
	seam := laidOn(t, p, box.Back, box.Roof)
	assert.LessOrEqual(t, float64(seam.Greatest), 0.5)
	assert.GreaterOrEqual(t, float64(seam.Least), 0.0)
	// The roof's end has the strip's foot over it, and touches the back all along.
	assert.InDelta(t, 180*15/cos, seam.Contact, 1e-3)
	roof, strip := piece(t, p, box.Roof), piece(t, p, "free/strip")
	assert.InDelta(t, 180*15/cos, solid.Contact(roof.Body, strip.Body, 1e-6), 1e-3)
	assert.InDelta(t, 180*30, laidOn(t, p, box.Back, "free/strip").Contact, 1e-3)
	bevelled := 0
	for _, e := range strip.Panel.Edges {
		if e.Neighbour == box.Roof {
			bevelled++
			assert.InDelta(t, 12, math.Abs(float64(e.Bevel)), 1e-6)
			assert.InDelta(t, 15*tan, math.Abs(float64(e.Run)), 1e-6)
		}
	}
	assert.Equal(t, 1, bevelled)
	require.Len(t, p.Fittings(), 1)
	assert.Equal(t, 2, p.Fittings()[0].Count) // 180 / 150, rounded up
	// Boards that differ leave a gap no greater either.
	uneven := d.With(func(d *box.Design) { d.Board = box.Board{Thickness: 15, Least: 14.6, Most: 15.2} })
	assert.LessOrEqual(t, float64(laidOn(t, resolve(t, uneven), box.Back, box.Roof).Greatest), 0.5)
	// Over a roof that is narrower than the back it ends with the roof; and on a
	// back that leans it still lies on both.
	lean := d.With(func(d *box.Design) { d.Walls[0].Lean = 5 })
	q := resolve(t, lean)
	boxtest.Sound(t, q)
	assert.Greater(t, solid.Contact(piece(t, q, box.Roof).Body, piece(t, q, "free/strip").Body, 1e-6), 180*15.0)
}

// At the end of a gable of 45 degrees there are two strips, mirror images that
// meet in the middle. Each is a parallelogram 30 sqrt(2) high, plumb, over half of
// 180 at its foot on the back, so 90 x 30 sqrt(2) in area there, and grows by its
// bevel: none, since the gable's slopes run square to the back.
func TestCoverStripsOfAGable(t *testing.T) {
	d := box.Design{Name: "gable", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{},
		Roof: box.Gable{Pitch: 45, Over: box.Overhangs{Left: 30, Right: 30}}, Walls: []box.Wall{{On: box.Back, Above: 120}},
		Outer: []box.Outer{box.CoverStrip{Name: "s", Height: 30}}}
	p := boxtest.Resolve(t, d)
	boxtest.Sound(t, p)
	for _, n := range []box.Part{"free/s/1", "free/s/2"} {
		assert.InDelta(t, 90*30*math.Sqrt2*15, piece(t, p, n).Volume, 0.02, n)
	}
	a, b := piece(t, p, "free/s/1"), piece(t, p, "free/s/2")
	assert.InDelta(t, 30*math.Sqrt2*15, solid.Contact(a.Body, b.Body, 1e-6), 1e-3)
	// They lie on the roof all along, at the ridge on the end of the lapping slope.
	on := 0.0
	for _, r := range []box.Part{box.RoofLeft, box.RoofRight} {
		on += solid.Contact(piece(t, p, r).Body, a.Body, 1e-6) + solid.Contact(piece(t, p, r).Body, b.Body, 1e-6)
	}
	assert.InDelta(t, 2*90*math.Sqrt2*15, on, 1e-3)
}

// At 45 degrees the slopes are square to one another: the lapping board is 60 + 15
// wide, the other 60; both as long as the roof, 180 + 20 + 20, and 10 past it.
func TestRidgeCap(t *testing.T) {
	gable := box.Design{Name: "gable", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{},
		Roof: box.Gable{Pitch: 45, Over: box.Overhangs{All: 20}}}
	d := outer(gable, box.RidgeCap{Name: "cap", Width: 60, Past: 10})
	p := measures(t, d, []is{{"free/cap/1", 240, 75, 240 * 75 * 15}, {"free/cap/2", 240, 60, 240 * 60 * 15}})
	assert.InDelta(t, 240*15, laidOn(t, p, "free/cap/1", "free/cap/2").Contact, 1e-3)
	// At 10 degrees a butt cannot be sawn; mitred, each is 60 + 15/2 tan 10 wide in
	// its middle.
	low := outer(gable.With(func(d *box.Design) { d.Roof = box.Gable{Pitch: 10, Over: box.Overhangs{All: 20}} }), box.RidgeCap{Name: "cap", Width: 60, Past: 10})
	tan := math.Tan(deg(10))
	measures(t, low, []is{{"free/cap/1", 240, 60 + 15*tan, 240 * 15 * (60 + 7.5*tan)}, {"free/cap/2", 240, 60 + 15*tan, 240 * 15 * (60 + 7.5*tan)}})
	// A strip of sheet is listed only: 240 x 120.
	q := resolve(t, outer(gable, box.RidgeCap{Width: 60, Past: 10, Sheet: "felt"}))
	assert.Len(t, q.Pieces(), 7)
	require.Len(t, q.Fittings(), 1)
	f := q.Fittings()[0]
	assert.Equal(t, "240.0 x 120.0", f.Size)
	assert.InDelta(t, 240*120, f.Area, 1e-6)
}

func TestFelt(t *testing.T) {
	// The worked example's roof: 240 wide; from -75 - 15 - 50 to the back's inner face
	// at 75, 215 / cos 12 up the slope. Turned down 30 at three edges, up 40.
	p := resolve(t, outer(hung, box.Felt{Turn: 30, Up: 40}))
	require.Len(t, p.Fittings(), 1)
	f := p.Fittings()[0]
	assert.InDelta(t, 300, float64(f.Length), 1e-6)
	assert.InDelta(t, 215/math.Cos(deg(12))+70, float64(f.Width), 1e-6)
	assert.InDelta(t, 300*(215/math.Cos(deg(12))+70), f.Area, 1e-3)
	assert.InDelta(t, f.Area, f.Cut.Area(), 1e-9)
	assert.Equal(t, "roofing felt", f.What)

	// A gable of 30 degrees, 20 over all round: from the ridge over the middle each
	// slope's upper face runs 75 + 15 + 20 = 110 out, 110 / cos 30; both in one piece.
	gable := box.Design{Name: "gable", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{},
		Roof: box.Gable{Pitch: 30, Over: box.Overhangs{All: 20}}}
	for _, run := range []box.RidgeRun{box.FrontToBack, box.LeftToRight} {
		g := gable.With(func(d *box.Design) { d.Roof = box.Gable{Pitch: 30, Run: run, Over: box.Overhangs{All: 20}} })
		f = resolve(t, outer(g, box.Felt{Turn: 25, What: "sheet"})).Fittings()[0]
		along, across := 220+50.0, 2*110/math.Cos(deg(30))+50
		assert.InDelta(t, along*across, f.Area, 1e-3)
		assert.InDelta(t, math.Max(along, across), float64(f.Length), 1e-6)
		assert.Len(t, f.Where, 2)
	}

	// A hip over a square: four triangles with base 220 and height 110 / cos 30. With
	// no turn-down their area is that of the roof's upper face.
	hip := gable.With(func(d *box.Design) { d.Roof = box.Hip{Pitch: 30, Over: box.Overhangs{All: 20}} })
	fs := resolve(t, outer(hip, box.Felt{})).Fittings()
	require.Len(t, fs, 4)
	h := 110 / math.Cos(deg(30))
	for _, f := range fs {
		assert.InDelta(t, 110*h, f.Area, 1e-3)
	}
	// Offset lines: the eaves go down by 10; a hip, at the angle a = atan(h/110) to
	// the eaves, moves out by 20. The triangle stays similar: its height grows by 10
	// + 20 / cos a.
	fs = resolve(t, outer(hip, box.Felt{Turn: 10, Lap: 20})).Fittings()
	grown := h + 10 + 20*math.Sqrt(h*h+110*110)/110
	assert.InDelta(t, 110*h*(grown/h)*(grown/h), fs[0].Area, 1e-3)

	flat := resolve(t, outer(stand, box.Felt{Turn: 30})).Fittings()[0]
	assert.InDelta(t, 240*240, flat.Area, 1e-6)
}

// drips are the drip grooves of a plan, as their ends in the world.
func drips(t *testing.T, p *box.Plan, part box.Part) (ends [][2]solid.Vec, removed float64) {
	t.Helper()
	q := piece(t, p, part)
	for _, op := range q.Panel.Ops {
		if op.Use != box.UseDrip {
			continue
		}
		assert.Equal(t, box.OpEngrave, op.Kind)
		for _, s := range op.Strokes {
			w := 0.0
			if op.Side == box.SideFar {
				w = -float64(q.Thickness)
			}
			ends = append(ends, [2]solid.Vec{q.Home.Out(solid.Vec{X: s[0].X, Y: s[0].Y, Z: w}), q.Home.Out(solid.Vec{X: s[1].X, Y: s[1].Y, Z: w})})
		}
		removed += op.Removed
	}
	return ends, removed
}

// Under the front edge of the worked example, 12 up the slope from the lower
// arris at y = -140: at -140 + 12 cos 12, 240 long, on the roof's inner plane,
// which rises from 200 at y = -75. It takes 240 x 3 x 4.
func TestDripGroove(t *testing.T) {
	drip := func(d *box.Design, f box.DripGroove) box.Design {
		return d.With(func(d *box.Design) { d.Features = append(d.Features, f) })
	}
	p := measures(t, drip(&hung, box.DripGroove{}), nil)
	ends, removed := drips(t, p, box.Roof)
	require.Len(t, ends, 1)
	y := -140 + 12*math.Cos(deg(12))
	for _, e := range ends[0] {
		assert.InDelta(t, 120, math.Abs(e.X), 1e-6)
		assert.InDelta(t, y, e.Y, 1e-6)
		assert.InDelta(t, 200+(y+75)*math.Tan(deg(12)), e.Z, 1e-6)
	}
	assert.InDelta(t, 240*3*4, removed, 1e-3)
	// Along the sides too: three, of which two run up the slope, 18 past the walls.
	ends, _ = drips(t, resolve(t, drip(&hung, box.DripGroove{Sides: true, Width: 4, Depth: 5})), box.Roof)
	require.Len(t, ends, 3)
	for _, e := range ends {
		if math.Abs(e[0].Y-e[1].Y) > 1 {
			assert.InDelta(t, 120-12, math.Abs(e[0].X), 1e-6)
			assert.InDelta(t, 215/math.Cos(deg(12)), e[0].Sub(e[1]).Len(), 1e-6)
		}
	}
	// Both eaves of a gable; all edges of a level roof; none where it is flush.
	gable := hung.With(func(d *box.Design) {
		d.Walls, d.Roof = nil, box.Gable{Pitch: 30, Over: box.Overhangs{All: 30}}
	})
	p = resolve(t, drip(&gable, box.DripGroove{}))
	for _, r := range []box.Part{box.RoofLeft, box.RoofRight} {
		ends, _ = drips(t, p, r)
		assert.Len(t, ends, 1, r)
		assert.InDelta(t, 120-12*math.Cos(deg(30)), math.Abs(ends[0][0].X), 1e-6)
	}
	level := stand.With(func(d *box.Design) { d.Roof = box.Flat{Over: box.Overhangs{All: 30}} })
	ends, _ = drips(t, resolve(t, drip(&level, box.DripGroove{})), box.Roof)
	assert.Len(t, ends, 4)
	assert.Equal(t, "Features[0].DripGroove", problems(t, drip(&stand, box.DripGroove{}))[0].Path)
	// With 20 of overhang a groove 12 + 1.5 from the edge, 20 - 12 - 1.5 clear of the
	// wall; with 12 it would be over it.
	near := hung.With(func(d *box.Design) { d.Roof = box.Pent{Pitch: 12, Over: box.Overhangs{Front: 12}} })
	ps := problems(t, drip(&near, box.DripGroove{}))
	assert.Equal(t, "Features[1].DripGroove.Inset", ps[0].Path)
	// Clear of the wall's outer face, at y = -90, by 12 cos 12 - 12 less than nothing:
	// the groove's middle lies at -102 + 12 cos 12.
	clear := -(-102 + 12*math.Cos(deg(12))) - 90
	assert.InDelta(t, 12-(1.5+0.5-clear), ps[0].Hi, 1e-6)
}

// A slot 60 x 10 at the top of a side wall under a level roof leaves 60 x 10 x 15
// out of it, open to the roof, and nothing else changes.
func TestEavesVents(t *testing.T) {
	d := stand.With(func(d *box.Design) { d.Features = []box.Feature{box.EavesVents{Width: 60, Height: 10, Right: 5}} })
	p := measures(t, d, []is{{box.Left, 215, 150, 15 * (150*215 - 600)}, {box.Right, 215, 150, 15 * (150*215 - 600)}})
	op := piece(t, p, box.Left).Panel.Ops[0]
	assert.Equal(t, box.OpNotch, op.Kind)
	assert.Equal(t, box.UseVent, op.Use)
	assert.True(t, op.InOutline)
	assert.InDelta(t, 150*215-600, piece(t, p, box.Left).Panel.Machined.Area(), 1e-6)
	m, err := p.Mesh(box.Left)
	require.NoError(t, err)
	assert.Equal(t, 0, m.Genus())
	assert.InDelta(t, 2*600*15, voidOf(p, "feature", "slot under the eaves left")+voidOf(p, "feature", "slot under the eaves right"), 1e-3)
	// Under a pent, in a side: 10 below the lower end of the slot's stretch of top.
	pent := hung.With(func(d *box.Design) { d.Features = []box.Feature{box.EavesVents{Width: 60, Height: 10}} })
	p = measures(t, pent, nil)
	// A trapezium: 10 at its lower end and 60 tan 12 more at the upper.
	bare := resolve(t, hung.With(func(d *box.Design) { d.Features = nil }))
	assert.InDelta(t, 15*60*(10+30*math.Tan(deg(12))), piece(t, bare, box.Left).Volume-piece(t, p, box.Left).Volume, 1e-3)
}

// What is rounded: free arrises, never the lower one of a roof. What is blunted:
// feather edges. A pent of 60 degrees has its front wall bevelled to 30.
func TestEdging(t *testing.T) {
	d := hung.With(func(d *box.Design) {
		d.Roof = box.Pent{Pitch: 60, Over: box.Overhangs{Front: 50, Left: 30, Right: 30}}
		d.Features = []box.Feature{box.Edging{Round: 3, Blunt: 1}}
	})
	p := measures(t, d, nil)
	roof := piece(t, p, box.Roof)
	lower := 0
	if roof.Panel.Face == box.FromOuter {
		lower = 1
	}
	free := 0
	for _, e := range roof.Panel.Edges {
		a := e.Arrises[lower]
		assert.Zero(t, a.Round, "the lower arris of the roof stays sharp")
		if a.Free {
			assert.Zero(t, a.Blunt, "and whole")
		}
		if e.Arrises[1-lower].Free {
			free++
		}
		assert.InDelta(t, 180, float64(e.Arrises[0].Angle+e.Arrises[1].Angle), 1e-9)
	}
	assert.Equal(t, 3, free) // all but the one at the back
	front := piece(t, p, box.Front)
	feathers := 0
	for _, e := range front.Panel.Edges {
		for _, a := range e.Arrises {
			if e.Neighbour == box.Roof && a.Blunt > 0 {
				feathers++
				assert.InDelta(t, 30, float64(a.Angle), 1e-6)
				assert.EqualValues(t, 1, a.Blunt)
			}
		}
		if e.Neighbour == box.Roof {
			continue
		}
		// The sides' inner arrises meet the side walls, the outer ones are free.
		if e.Neighbour == box.Left || e.Neighbour == box.Right {
			assert.EqualValues(t, 3, e.Arrises[0].Round+e.Arrises[1].Round)
		}
	}
	assert.Equal(t, 1, feathers)
	// Nothing of it is in the solid.
	bare := resolve(t, d.With(func(d *box.Design) { d.Features = nil }))
	for _, q := range bare.Pieces() {
		assert.Equal(t, q.Volume, piece(t, p, q.Part).Volume)
		for _, e := range q.Panel.Edges {
			assert.Zero(t, e.Arrises[0].Round+e.Arrises[1].Round+e.Arrises[0].Blunt+e.Arrises[1].Blunt)
		}
	}
	// On one part only.
	one := resolve(t, d.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Edging{On: []box.Part{box.Roof}, Round: 3}}
	}))
	for _, e := range piece(t, one, box.Front).Panel.Edges {
		assert.Zero(t, e.Arrises[0].Round+e.Arrises[1].Round)
	}
}

// The same design, resolved twice, gives the same bytes; and With never changes the
// original.
func TestElementsAreValues(t *testing.T) {
	d := hung.With(func(d *box.Design) {
		d.Inner = []box.Inner{box.BeeBlock{Name: "b", Height: 100, Rows: []box.BeeRow{{Diameter: 8, Depth: 10}}}, box.Lobby{Name: "l", Deep: 30, Shape: box.Freeform{Outline: outline.Rectangle(-10, -10, 10, 10)}, At: box.Anchor{Up: 40}}}
		d.Outer = []box.Outer{box.Strap{Trunk: 200, Width: 20, Heights: []box.MM{50}}, box.Batten{Name: "a", Hole: box.Polygon{Points: []box.Point{{X: -2, Y: -2}, {X: 2, Y: -2}, {X: 0, Y: 2}}}}}
		d.Features = append(d.Features, box.Hang{Heights: []box.MM{100}}, box.DripGroove{On: []box.Part{box.Roof}}, box.Edging{On: []box.Part{box.Front}})
	})
	d.With(func(d *box.Design) {
		d.Inner[0].(box.BeeBlock).Rows[0].Diameter = 99
		d.Inner[1].(box.Lobby).Shape.(box.Freeform).Outline[0].X = 99
		d.Outer[0].(box.Strap).Heights[0] = 99
		d.Outer[1].(box.Batten).Hole.(box.Polygon).Points[0].X = 99
		d.Features[1].(box.Hang).Heights[0] = 99
		d.Features[2].(box.DripGroove).On[0] = "x"
		d.Features[3].(box.Edging).On[0] = "x"
		d.Inner[0], d.Outer[0] = nil, nil
	})
	assert.EqualValues(t, 8, d.Inner[0].(box.BeeBlock).Rows[0].Diameter)
	assert.InDelta(t, -10, d.Inner[1].(box.Lobby).Shape.(box.Freeform).Outline[0].X, 0)
	assert.EqualValues(t, 50, d.Outer[0].(box.Strap).Heights[0])
	assert.EqualValues(t, -2, d.Outer[1].(box.Batten).Hole.(box.Polygon).Points[0].X)
	assert.EqualValues(t, 100, d.Features[1].(box.Hang).Heights[0])
	assert.Equal(t, box.Roof, d.Features[2].(box.DripGroove).On[0])
	assert.Equal(t, box.Front, d.Features[3].(box.Edging).On[0])
	a, b := boxtest.Drawing(resolve(t, d)), boxtest.Drawing(resolve(t, d))
	assert.True(t, bytes.Equal([]byte(a), []byte(b)))
	assert.True(t, strings.Contains(a, "inner/l"))
}
