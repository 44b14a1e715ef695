package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// Three boxes that equal none of their mirror images, worked on paper: four
// thicknesses of wall, holes off centre, one wall leaning. Angles come from
// right triangles in whole numbers, so that every figure is exact.
//
// Frames: x right and y away seen from the front, z up. A feature is placed as
// seen from outside: right is +x on the front, +y on the right, -x on the back
// and -y on the left. A panel is seen by the tool: from outside where the
// outer face is machined, else from inside, where right is the other way.

// paper is what was worked out for a part.
type paper struct {
	part          box.Part
	length, width float64
	volume        float64
	face          box.CutSide
	lo, hi        solid.Vec // corners of the box of the world round it
}

func checkPaper(t *testing.T, p *box.Plan, rows []paper) {
	t.Helper()
	require.Len(t, p.Pieces(), len(rows))
	for _, x := range rows {
		q := piece(t, p, x.part)
		assert.InDelta(t, x.length, float64(q.Length), 1e-6, "length of %s", x.part)
		assert.InDelta(t, x.width, float64(q.Width), 1e-6, "width of %s", x.part)
		assert.InDelta(t, x.volume, q.Volume, 1e-3, "volume of %s", x.part)
		assert.Equal(t, x.face, q.Panel.Face, "machined face of %s", x.part)
		m, err := p.Mesh(x.part)
		if !assert.NoError(t, err) {
			continue
		}
		assert.InDelta(t, x.volume, m.Volume(), 1e-3, "mesh of %s", x.part)
		lo, hi := m.Bounds()
		near(t, x.lo, lo, 1e-6, "least corner of %s", x.part)
		near(t, x.hi, hi, 1e-6, "largest corner of %s", x.part)
	}
}

func near(t *testing.T, want, got solid.Vec, within float64, args ...any) {
	t.Helper()
	assert.InDeltaSlice(t, []float64{want.X, want.Y, want.Z}, []float64{got.X, got.Y, got.Z}, within, args...)
}

// bore is a cut worked out by hand: where it lies on the panel, how deep, and
// where its middle lies in the world at its two depths.
type bore struct {
	part     box.Part
	u, v     float64
	side     box.OpSide
	from, to float64
	top, end solid.Vec
	radius   float64 // 0: not round
}

func checkBore(t *testing.T, p *box.Plan, x bore) {
	t.Helper()
	q := piece(t, p, x.part)
	var op *box.Op
	for i := range q.Panel.Ops {
		if q.Panel.Ops[i].Guest == "" {
			require.Nil(t, op, "one cut on %s", x.part)
			op = &q.Panel.Ops[i]
		}
	}
	require.NotNil(t, op, "no cut on %s", x.part)
	c := op.Region.Centroid()
	assert.InDelta(t, x.u, c.X, 1e-9, "u of the cut on %s", x.part)
	assert.InDelta(t, x.v, c.Y, 1e-9, "v of the cut on %s", x.part)
	assert.Equal(t, x.side, op.Side, "%s", x.part)
	assert.InDelta(t, x.from, float64(op.From), 1e-12, "%s", x.part)
	assert.InDelta(t, x.to, float64(op.To), 1e-12, "%s", x.part)
	near(t, x.top, q.Home.Out(solid.Vec{X: c.X, Y: c.Y, Z: -x.from}), 1e-6, "start of the cut on %s", x.part)
	near(t, x.end, q.Home.Out(solid.Vec{X: c.X, Y: c.Y, Z: -x.to}), 1e-6, "end of the cut on %s", x.part)
	// The frame is right-handed and the mesh has its hole in that very place.
	near(t, q.Home.W, q.Home.U.Cross(q.Home.V), 1e-12)
	if x.radius == 0 {
		return
	}
	m, err := p.Mesh(x.part)
	require.NoError(t, err)
	axis, on := x.end.Sub(x.top).Unit(), 0
	for _, v := range m.Vertices {
		d := v.Sub(x.top)
		along := axis.Dot(d)
		if r := d.Sub(axis.Scale(along)).Len(); r < x.radius+1 {
			// Area-true facets: vertices outside by r p^2/12, under the chord of 0.01.
			assert.InDelta(t, x.radius+0.005, r, 0.005+1e-9, "%s", x.part)
			assert.True(t, math.Abs(along) < 1e-6 || math.Abs(along-x.end.Sub(x.top).Len()) < 1e-6, "%s: %v along the hole", x.part, along)
			on++
		}
	}
	assert.GreaterOrEqual(t, on, 40, "vertices round the hole in %s", x.part)
}

// lean16 has the triangle 7, 24, 25: tan 7/24, cos 24/25, sin 7/25.
var lean16 = box.Deg(math.Atan2(7, 24) * 180 / math.Pi)

// Flat roof, butted, front and back lapping; the right wall leans out by 7/24.
//
// Cavity 120 x 100 x 240; front 15, right 12, back 20, left 9, floor 10 raised
// by 6, roof 18 over front 30, left 10, right 5. Walls go from z = -16 to 240.
// The right wall's inner plane is x = 60 + 7z/24, its outer one 12 x 25/24 =
// 12.5 further out: 72.5 + 7z/24, that is 67.833333 at -16 and 142.5 at 240.
//
//	front  x -69 to the outer plane, 256 high: 211.5 wide at the top, 136.833333
//	       at the bottom; (211.5 + 136.833333)/2 x 256 = 44586.666667; x 15 =
//	       668800, less the pocket 6 x 100 pi = 1884.955592
//	back   the same outline x 20 = 891733.333333
//	left   100 x 256 x 9 = 230400
//	right  100 wide, 256 x 25/24 = 266.666667 on each face, shifted by 12 x
//	       7/24 = 3.5: 270.166667; 100 x 12.5 x 256 = 320000 less 225 pi x 12
//	floor  120 x 100 at the top, its right edge at 60 - 70/24 = 57.083333
//	       below: 100 x 10 x (120 - 1.458333) = 118541.666667
//	roof   x -79 to 77.5 + 7z/24 (parallel to the wall): 147.5 at 240, 152.75
//	       at 258; y -95 to 70: 165 x (79 + 150.125) x 18 = 680501.25
func TestChiralFlat(t *testing.T) {
	p := resolve(t, box.Design{Name: "chiral flat", Board: thick(9),
		Boards: map[box.Part]box.Board{box.Front: thick(15), box.Right: thick(12), box.Back: thick(20), box.Floor: thick(10), box.Roof: thick(18)},
		Size:   box.Cavity{Width: 120, Depth: 100, Height: 240},
		Walls:  []box.Wall{{On: box.Right, Lean: lean16}},
		Floor:  box.FloorBetween{Raise: 6},
		Roof:   box.Flat{Over: box.Overhangs{Front: 30, Left: 10, Right: 5}},
		Features: []box.Feature{
			box.Entrance{On: box.Right, Shape: box.Round{Diameter: 30}, Above: 150, Right: 12},
			box.Cut{On: box.Front, At: box.Anchor{Right: -25, Up: 60}, Shape: box.Round{Diameter: 20}, Depth: 6},
		}})
	assert.Empty(t, voidOf(p, "play", "")+voidOf(p, "square", "")+voidOf(p, "run-out", ""))
	in, out := box.FromInner, box.FromOuter
	checkPaper(t, p, []paper{
		{box.Front, 256, 211.5, 668800 - 600*math.Pi, out, solid.Vec{X: -69, Y: -65, Z: -16}, solid.Vec{X: 142.5, Y: -50, Z: 240}},
		{box.Back, 256, 211.5, 891733.333333, in, solid.Vec{X: -69, Y: 50, Z: -16}, solid.Vec{X: 142.5, Y: 70, Z: 240}},
		{box.Left, 256, 100, 230400, in, solid.Vec{X: -69, Y: -50, Z: -16}, solid.Vec{X: -60, Y: 50, Z: 240}},
		{box.Right, 270.166666667, 100, 320000 - 2700*math.Pi, in, solid.Vec{X: 60 - 14./3, Y: -50, Z: -16}, solid.Vec{X: 142.5, Y: 50, Z: 240}},
		{box.Floor, 120, 100, 118541.666667, in, solid.Vec{X: -60, Y: -50, Z: -10}, solid.Vec{X: 60, Y: 50, Z: 0}},
		{box.Roof, 165, 231.75, 680501.25, in, solid.Vec{X: -79, Y: -95, Z: 240}, solid.Vec{X: 152.75, Y: 70, Z: 258}},
	})
	// The entrance: 150 up is 150 x 25/24 = 156.25 along the wall, its middle
	// at 171.25; seen from inside 12 to the left. In the world y 12, x 60 +
	// 171.25 x 7/25 = 107.95, z 171.25 x 24/25 = 164.4; the outer end 12 x
	// (24/25, 0, -7/25) further on.
	checkBore(t, p, bore{box.Right, -12, 171.25, box.SideThrough, 0, 12,
		solid.Vec{X: 107.95, Y: 12, Z: 164.4}, solid.Vec{X: 119.47, Y: 12, Z: 161.04}, 15})
	// The pocket makes the outer face the machined one: not mirrored.
	checkBore(t, p, bore{box.Front, -25, 60, box.SideMachined, 0, 6,
		solid.Vec{X: -25, Y: -65, Z: 60}, solid.Vec{X: -25, Y: -59, Z: 60}, 10})
	// Bevels of the leaning wall: cut level at both ends, its outer face goes
	// up 3.5 further at the top, its inner, machined one down at the bottom.
	for _, e := range piece(t, p, box.Right).Panel.Edges {
		want := map[box.Part]float64{box.Roof: -1, box.Floor: 1}[e.Neighbour]
		assert.InDelta(t, want*float64(lean16), float64(e.Bevel), 1e-9, "%s", e.Neighbour)
		assert.InDelta(t, want*3.5, float64(e.Run), 1e-9, "%s", e.Neighbour)
	}
	// Outside at the lower edge 69 + 67.833333, 15 + 100 + 20; 240 + 16 + 18.
	w, d, h := p.Outside()
	assert.InDelta(t, 136.833333, float64(w), 1e-6)
	assert.InDelta(t, 135, float64(d), 1e-9)
	assert.InDelta(t, 274, float64(h), 1e-9)
}

// Pent of 5/12 (triangle 5, 12, 13), rebates of 5, front and back lapping; the
// left wall leans out by 7/24.
//
// Cavity 110 x 130 x 200; front 16, right 11, back 13, left 18, floor 12, roof
// 14 over front 24, back 3, left 6, right 9. Roof plane z = 200 + (y+65) 5/12;
// walls from z = -12. Left inner plane x = -55 - 7z/24, outer 18.75 further.
//
// A slab of the front or back at one y is 139.75 (zt+12) + 7/48 (zt^2-144)
// large, zt the roof's height there; over the slab zt is linear.
//
//	front  zt 200 to 193.333333, mean 196.666667, mean square 38681.481481:
//	       34781.216049 x 16 = 556499.456790, less the rebates 5 x 11 x
//	       210.958333 and 5 x 18.75 x 210.958333 (mean height in y -70..-65):
//	       525119.404707, less the hole 169 pi x 16. 212 high, 198.083333 wide
//	       as a blank; the rebate takes its topmost corner: what is left begins
//	       at y = -70, z = 197.916667, x = -73.75 - 57.725694
//	back   zt 254.166667 to 259.583333: mean square 65987.210648; 47177.416136
//	       x 13 = 613306.409770 less (55 + 93.75) x 267.208333 =
//	       573559.170187, less the slot 30 x 12 x 13. 271.583333 high; at the
//	       top x = -73.75 - 75.711806: 215.461806 wide
//	right  140 wide, z -12 to 256.25 at y = 70; 11 x 140 x (12 + 227.083333) =
//	       368188.333333
//	left   140 wide; along the wall the inner face starts at -12.5, the outer
//	       one ends at (256.25 + 5.04) 25/24 = 272.177083: 284.677083; volume
//	       18.75 x 140 x 239.083333 = 627593.75
//	floor  110 at the top, 3.5 less below: 130 x 12 x 108.25 = 168870
//	roof   y -105 to 81: 186 x 13/12 = 201.5 on each face, 14 x 5/12 apart:
//	       207.333333; x from -79.75 - 7z/24, at the top z = 276: -160.25, to
//	       75: 235.25; mean z 229.666667: 186 x 15.166667 x 221.736111 =
//	       625517.569444
func TestChiralPent(t *testing.T) {
	p := resolve(t, box.Design{Name: "chiral pent", Board: thick(18),
		Boards:  map[box.Part]box.Board{box.Front: thick(16), box.Right: thick(11), box.Back: thick(13), box.Floor: thick(12), box.Roof: thick(14)},
		Size:    box.Cavity{Width: 110, Depth: 130, Height: 200},
		Walls:   []box.Wall{{On: box.Left, Lean: lean16}},
		Corners: box.Corners{Joint: joints.Rebate{Depth: 5}},
		Floor:   box.FloorBetween{},
		Roof:    box.Pent{Pitch: box.Deg(math.Atan2(5, 12) * 180 / math.Pi), Over: box.Overhangs{Front: 24, Back: 3, Left: 6, Right: 9}},
		Features: []box.Feature{
			box.Entrance{Shape: box.Round{Diameter: 26}, Above: 120, Right: -14},
			box.Cut{On: box.Back, At: box.Anchor{Right: 20, Up: 90}, Shape: box.Rect{Width: 30, Height: 12}},
		}})
	assert.Empty(t, voidOf(p, "play", "")+voidOf(p, "square", "")+voidOf(p, "run-out", ""))
	in := box.FromInner
	checkPaper(t, p, []paper{
		{box.Front, 212, 198.083333333, 525119.404707 - 2704*math.Pi, in, solid.Vec{X: -131.475694444, Y: -81, Z: -12}, solid.Vec{X: 66, Y: -65, Z: 200}},
		{box.Back, 271.583333333, 215.461805556, 573559.170187 - 4680, in, solid.Vec{X: -149.461805556, Y: 65, Z: -12}, solid.Vec{X: 66, Y: 78, Z: 259.583333333}},
		{box.Left, 284.677083333, 140, 627593.75, in, solid.Vec{X: -73.75 - 7*256.25/24, Y: -70, Z: -12}, solid.Vec{X: -51.5, Y: 70, Z: 256.25}},
		{box.Right, 268.25, 140, 368188.333333, in, solid.Vec{X: 55, Y: -70, Z: -12}, solid.Vec{X: 66, Y: 70, Z: 256.25}},
		{box.Floor, 110, 130, 168870, in, solid.Vec{X: -55, Y: -65, Z: -12}, solid.Vec{X: 55, Y: 65, Z: 0}},
		{box.Roof, 207.333333333, 235.25, 625517.569444, in, solid.Vec{X: -160.25, Y: -105, Z: 200 - 40*5./12}, solid.Vec{X: 75, Y: 81, Z: 276}},
	})
	// Seen from inside the hole 14 left of the middle is 14 right of it.
	checkBore(t, p, bore{box.Front, 14, 133, box.SideThrough, 0, 16,
		solid.Vec{X: -14, Y: -65, Z: 133}, solid.Vec{X: -14, Y: -81, Z: 133}, 13})
	// 20 to the right of the back is x = -20, and 20 left on its inner face.
	checkBore(t, p, bore{box.Back, -20, 90, box.SideThrough, 0, 13,
		solid.Vec{X: -20, Y: 65, Z: 90}, solid.Vec{X: -20, Y: 78, Z: 90}, 0})
	// The rebates of the front on its panel, seen from inside, so that the
	// left wall's lies on the right: between x = -55 and -73.75 at z = 0, both
	// shifting by 7/24 up the wall, from the front's inner face 5 deep.
	for _, op := range piece(t, p, box.Front).Panel.Ops {
		if op.Guest == "" {
			continue
		}
		assert.Equal(t, box.OpRebate, op.Kind)
		assert.Equal(t, [2]box.MM{0, 5}, [2]box.MM{op.From, op.To})
		e, area := op.Region.Extents(), op.Region.Area()
		if op.Guest == box.Right {
			assert.InDeltaSlice(t, []float64{-66, -55}, []float64{e.Min.X, e.Max.X}, 1e-6)
			assert.InDelta(t, 11*212, area, 1e-6)
			continue
		}
		assert.Equal(t, box.Left, op.Guest)
		assert.InDeltaSlice(t, []float64{51.5, 132.083333}, []float64{e.Min.X, e.Max.X}, 1e-6)
		assert.InDelta(t, 18.75*212, area, 1e-6)
		assert.Equal(t, outline.Inside, op.Region.Contains(outline.Point{X: 60, Y: 3}, 1e-6))
	}
}

// Gable of 3/4 (triangle 3, 4, 5), ridge front to back and butted, the right
// slope lapping; sides lapping over front and back; floor under the walls; the
// back leans in by 11/60 (triangle 11, 60, 61).
//
// Cavity 144 x 100 x 180; front 14, right 10, back 12, left 15, floor 11 over
// front 8, back 6 and left 4; roof left 16 and right 20, over front 25, left 12, right
// 6. Back inner plane y = 50 - 11z/60, outer 12 x 61/60 = 12.2 further. Slopes
// z = 180 + 3/4 (72 - |x|), apex 234; 20 and 25 thick upright.
//
//	front  144 x 180 and a gable of 54: 29808 x 14 = 417312
//	back   29808 x 12.2 = 363657.6 less 196 pi x 12; up the wall 234 x 61/60 =
//	       237.9 on each face, 12 x 11/60 = 2.2 apart: 240.1
//	left   y -64 to 62.2 - 11z/60: a slab is 126.2 zt - 11/120 zt^2, zt 180 to
//	       168.75: 19217.882813 x 15 = 288268.242188, less the pocket 800
//	right  zt 180 to 172.5: 19394.78125 x 10 = 193947.8125
//	floor  x -91 to 82, y -72 to 68.2, below 70.216667: 11 x 173 x 141.208333
//	       = 268719.458333; 173 x 142.216667
//	roof/left   section (-99, 159.75), (0, 234), (-13.333, 244), (-99, 179.75):
//	       area 1846.666667, moment of z 377079.166667; 151.2 x area - 11/60 x
//	       moment = 210084.819444; 99/0.8 = 123.75 long, y -89 to 62.2 - 11/60
//	       x 159.75 = 32.9125: 121.9125 wide
//	roof/right  section (88, 168), (88, 193), (3.333, 256.5), (-13.333, 244):
//	       2325, 500095.833333: 259855.763889; 101.333333/0.8 = 126.666667
//	       long, y -89 to 31.4: 120.4 wide
func TestChiralGable(t *testing.T) {
	p := resolve(t, box.Design{Name: "chiral gable", Board: thick(15),
		Boards: map[box.Part]box.Board{box.Front: thick(14), box.Right: thick(10), box.Back: thick(12), box.Floor: thick(11),
			box.RoofLeft: thick(16), box.RoofRight: thick(20)},
		Size:    box.Cavity{Width: 144, Depth: 100, Height: 180},
		Walls:   []box.Wall{{On: box.Back, Lean: box.Deg(-math.Atan2(11, 60) * 180 / math.Pi)}},
		Corners: box.Corners{Laps: box.Sides},
		Floor:   box.FloorUnder{Over: box.Overhangs{Front: 8, Back: 6, Left: 4}},
		Roof:    box.Gable{Pitch: box.Deg(math.Atan2(3, 4) * 180 / math.Pi), Over: box.Overhangs{Front: 25, Left: 12, Right: 6}},
		Features: []box.Feature{
			box.Entrance{On: box.Back, Shape: box.Round{Diameter: 28}, Above: 90, Right: 9},
			box.Cut{On: box.Left, At: box.Anchor{Right: 10, Up: 50}, Shape: box.Rect{Width: 20, Height: 8}, Depth: 5, From: box.FromInner},
		}})
	assert.Empty(t, voidOf(p, "play", "")+voidOf(p, "square", "")+voidOf(p, "run-out", ""))
	in := box.FromInner
	checkPaper(t, p, []paper{
		{box.Front, 234, 144, 417312, in, solid.Vec{X: -72, Y: -64, Z: 0}, solid.Vec{X: 72, Y: -50, Z: 234}},
		{box.Back, 240.1, 144, 363657.6 - 2352*math.Pi, in, solid.Vec{X: -72, Y: 50 - 42.9, Z: 0}, solid.Vec{X: 72, Y: 62.2, Z: 234}},
		{box.Left, 180, 126.2, 288268.242188 - 800, in, solid.Vec{X: -87, Y: -64, Z: 0}, solid.Vec{X: -72, Y: 62.2, Z: 180}},
		{box.Right, 180, 126.2, 193947.8125, in, solid.Vec{X: 72, Y: -64, Z: 0}, solid.Vec{X: 82, Y: 62.2, Z: 180}},
		{box.Floor, 173, 142.216666667, 268719.458333, in, solid.Vec{X: -91, Y: -72, Z: -11}, solid.Vec{X: 82, Y: 70.216666667, Z: 0}},
		{box.RoofLeft, 123.75, 121.9125, 210084.819444, in, solid.Vec{X: -99, Y: -89, Z: 159.75}, solid.Vec{X: 0, Y: 32.9125, Z: 244}},
		{box.RoofRight, 126.666666667, 120.4, 259855.763889, in, solid.Vec{X: -40. / 3, Y: -89, Z: 168}, solid.Vec{X: 88, Y: 31.4, Z: 256.5}},
	})
	// The entrance 90 up is 91.5 along the wall, its middle at 105.5; 9 to the
	// right of the back is x = -9, on its inner face to the left. y 50 - 105.5
	// x 11/61, z 105.5 x 60/61; outward 12 x (0, 60/61, 11/61).
	checkBore(t, p, bore{box.Back, -9, 105.5, box.SideThrough, 0, 12,
		solid.Vec{X: -9, Y: 50 - 1160.5/61, Z: 6330. / 61}, solid.Vec{X: -9, Y: 50 - 440.5/61, Z: 6462. / 61}, 14})
	// 10 to the right of the left wall is y = -10, to the left on its inner
	// face; 5 deep from there is x = -77.
	checkBore(t, p, bore{box.Left, -10, 50, box.SideMachined, 0, 5,
		solid.Vec{X: -72, Y: -10, Z: 50}, solid.Vec{X: -77, Y: -10, Z: 50}, 0})
	// The ridge: right over left; both bevelled by 90 - 106.26 = -16.26, their
	// inner faces overhanging by t x 7/24: 4.666667 and 5.833333.
	for _, x := range []struct {
		part, other box.Part
		run, length float64
	}{{box.RoofLeft, box.RoofRight, 16 * 7. / 24, 0}, {box.RoofRight, box.RoofLeft, 20 * 7. / 24, 40. / 3 / 0.8}} {
		for _, e := range piece(t, p, x.part).Panel.Edges {
			if e.Neighbour == x.other {
				assert.InDelta(t, float64(lean16), float64(e.Bevel), 1e-9, "%s", x.part)
				assert.InDelta(t, x.run, float64(e.Run), 1e-9, "%s", x.part)
				assert.InDelta(t, x.length, float64(e.Adds), 1e-6, "%s", x.part) // past the cavity's ridge, on its face
			}
		}
	}
}
