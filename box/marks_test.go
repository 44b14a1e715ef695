package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// plain is a box of 15 with a cavity of 120 by 120 by 240, its front and back
// butted over the sides: the front is 150 by 240 and covers a face of 120.
var plain = box.Design{
	Name:  "plain",
	Board: thick(15),
	Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
	Roof:  box.Flat{Over: box.Overhangs{All: 40}},
	Floor: box.FloorBetween{},
}

func with(fs ...box.Feature) box.Design {
	return plain.With(func(d *box.Design) { d.Features = fs })
}

// ops are the operations of a source on a part.
func ops(t *testing.T, p *box.Plan, part box.Part, source string) []box.Op {
	t.Helper()
	var out []box.Op
	for _, op := range piece(t, p, part).Panel.Ops {
		if op.Source == source {
			out = append(out, op)
		}
	}
	return out
}

// outside is a point of a panel in the feature frame: the inner face is
// machined, so u changes sign.
func outside(q box.Piece, p outline.Point) outline.Point {
	if q.Panel.Face == box.FromInner {
		p.X = -p.X
	}
	return p
}

func gone(t *testing.T, fs ...box.Feature) float64 {
	t.Helper()
	part := box.Front
	bare, cut := piece(t, resolve(t, with()), part), piece(t, resolve(t, with(fs...)), part)
	return bare.Volume - cut.Volume
}

// Each shape against its area by a formula, twice: from the panel, and from the
// solid's volume over the thickness of 15. Flattened arcs are area-true.
func TestShapes(t *testing.T) {
	for name, c := range map[string]struct {
		s    box.Shape
		want float64
		w, h float64
	}{
		"round":        {box.Round{Diameter: 32}, 256 * math.Pi, 32, 32},
		"round-headed": {box.Arch{Width: 40, Height: 60}, 40*40 + 200*math.Pi, 40, 60}, // 40 straight under a half circle of radius 20
		// A segment of rise 8 over 40: r = (400+64)/16 = 29, half angle asin(20/29);
		// r^2 a - 20*21.
		"segmental":    {box.Arch{Width: 40, Height: 60, Rise: 8}, 40*52 + 841*math.Asin(20.0/29) - 420, 40, 60},
		"segment only": {box.Arch{Width: 40, Height: 8, Rise: 8}, 841*math.Asin(20.0/29) - 420, 40, 8},
		// Four centres: half axes 30 and 20, l = sqrt(1300), half = (l-10)/2; the
		// radii half*l/30 and (10+half)*l/20; areas of four sectors less the
		// rhombus between the centres (geometry).
		"oval": {box.Oval{Width: 60, Height: 40}, ovalArea(30, 20), 60, 40},
		// A hexagon 40 across the flats: 2 sqrt 3 * 20^2; corners 40/sqrt 3 from the middle.
		"hexagon": {box.Regular{Sides: 6, Across: 40}, 800 * math.Sqrt(3), 80 / math.Sqrt(3), 40},
		"arrow":   {box.Polygon{Points: []box.Point{{X: -20, Y: -10}, {X: 0, Y: 0}, {X: 20, Y: -10}, {X: 0, Y: 20}}}, 400, 40, 30}, // 40*30/2 less 40*10/2
	} {
		f := box.Cut{On: box.Front, At: box.Anchor{Up: 120}, Shape: c.s}
		op := ops(t, resolve(t, with(f)), box.Front, "opening")[0]
		assert.InDelta(t, c.want, op.Region.Area(), 1e-6, name)
		e := op.Region.Extents()
		assert.InDelta(t, c.w, e.Width(), 1e-9, name)
		assert.InDelta(t, c.h, e.Height(), 1e-9, name)
		assert.InDelta(t, 15*c.want, gone(t, f), 1e-3, name)
	}
}

func ovalArea(a, b float64) float64 {
	l := math.Hypot(a, b)
	half := (l - (a - b)) / 2
	small, large := half*l/a, (a-b+half)*l/b
	phi := math.Atan2(b, a) // of the line of the centres, off the minor axis
	// The rhombus has the half diagonals a-small and large-b.
	return 2*(large*large*phi+small*small*(math.Pi/2-phi)) - 2*(a-small)*(large-b)
}

// A front of 120 by 240 over the cavity; a slot of 30 by 10: where its middle
// comes to lie, (u, v) from the middle of the lower edge.
func TestAnchors(t *testing.T) {
	slot := box.Slot{Width: 30, Height: 10}
	for name, c := range map[string]struct {
		at   box.Anchor
		u, v float64
	}{
		"as ever":      {box.Anchor{Right: 10, Up: 50}, 10, 50},
		"from left":    {box.Anchor{Right: 25, Up: 50, Datum: box.FromLeft}, -60 + 25, 50},
		"from right":   {box.Anchor{Right: 25, Up: 50, Datum: box.FromRight}, 60 - 25, 50},
		"lowest":       {box.Anchor{Up: 50, Level: box.LowestAbove}, 0, 55},
		"centre":       {box.Anchor{Up: 50, Level: box.CentreAbove}, 0, 50},
		"below top":    {box.Anchor{Up: 50, Level: box.BelowTop}, 0, 190},
		"on end":       {box.Anchor{Up: 50, Level: box.LowestAbove, Turn: 90}, 0, 65},
		"turned by 30": {box.Anchor{Up: 50, Level: box.LowestAbove, Turn: 30}, 0, 50 + 10*math.Sin(math.Pi/6) + 5}, // half straights of 10 and round ends of 5
	} {
		p := resolve(t, with(box.Cut{On: box.Front, At: c.at, Shape: slot}))
		q := outside(piece(t, p, box.Front), ops(t, p, box.Front, "opening")[0].Region.Centroid())
		assert.InDelta(t, c.u, q.X, 1e-9, name)
		assert.InDelta(t, c.v, q.Y, 1e-9, name)
	}
}

// On a front that leans out by 20 degrees a height of 50 is 50/cos 20 along it;
// under a pent of 12 degrees the side 20 to the front of its middle is 240 +
// (60-20) tan 12 high less what is said; the left wall's right is to the front.
func TestAnchorsOnSlopes(t *testing.T) {
	d := plain.With(func(d *box.Design) {
		d.Walls = []box.Wall{{On: box.Front, Lean: 20}}
		d.Features = []box.Feature{box.Cut{On: box.Front, At: box.Anchor{Up: 50, Level: box.LowestAbove}, Shape: box.Round{Diameter: 20}}}
	})
	p := resolve(t, d)
	assert.InDelta(t, 50/math.Cos(20*math.Pi/180)+10, ops(t, p, box.Front, "opening")[0].Region.Centroid().Y, 1e-9)
	d = plain.With(func(d *box.Design) {
		d.Roof = box.Pent{Pitch: 12}
		d.Features = []box.Feature{box.Cut{On: box.Left, At: box.Anchor{Right: 20, Up: 30, Level: box.BelowTop}, Shape: box.Round{Diameter: 20}}}
	})
	p = resolve(t, d)
	assert.InDelta(t, 240+40*math.Tan(12*math.Pi/180)-30, ops(t, p, box.Left, "opening")[0].Region.Centroid().Y, 1e-8)
}

// Rows, grids, bonds and mirror images: how many, and where the last one is.
func TestRepeat(t *testing.T) {
	at := box.Anchor{Right: -40, Up: 60}
	for name, c := range map[string]struct {
		r      box.Repeat
		at     box.Anchor
		mirror bool
		n      int
		last   outline.Point
	}{
		"one":             {box.Repeat{}, at, false, 1, outline.Point{X: -40, Y: 60}},
		"row":             {box.Repeat{Columns: 4, StepRight: 25}, at, false, 4, outline.Point{X: 35, Y: 60}},
		"grid":            {box.Repeat{Columns: 3, Rows: 4, StepRight: 25, StepUp: 30}, at, false, 12, outline.Point{X: 10, Y: 150}},
		"down":            {box.Repeat{Rows: 2, StepUp: -30}, at, false, 2, outline.Point{X: -40, Y: 30}},
		"brick":           {box.Repeat{Columns: 3, Rows: 2, StepRight: 25, StepUp: 30, Brick: true}, at, false, 6, outline.Point{X: 22.5, Y: 90}},
		"centred":         {box.Repeat{Columns: 4, StepRight: 25, Centred: true}, box.Anchor{Up: 60}, false, 4, outline.Point{X: 37.5, Y: 60}},
		"mirrored":        {box.Repeat{Columns: 2, StepRight: 15}, at, true, 4, outline.Point{X: 25, Y: 60}}, // -40, -25, then 40, 25
		"its own image":   {box.Repeat{}, box.Anchor{Up: 60}, true, 1, outline.Point{Y: 60}},
		"a centred row":   {box.Repeat{Columns: 3, StepRight: 25, Centred: true}, box.Anchor{Up: 60}, true, 3, outline.Point{X: 25, Y: 60}},
		"lowest of a row": {box.Repeat{Rows: 2, StepUp: -30}, box.Anchor{Up: 60, Level: box.LowestAbove}, false, 2, outline.Point{Y: 65}},
	} {
		p := resolve(t, with(box.Cut{On: box.Front, At: c.at, Shape: box.Round{Diameter: 10}, Repeat: c.r, Mirror: c.mirror}))
		os := ops(t, p, box.Front, "opening")
		require.Len(t, os, c.n, name)
		q := outside(piece(t, p, box.Front), os[len(os)-1].Region.Centroid())
		assert.InDelta(t, c.last.X, q.X, 1e-9, name)
		assert.InDelta(t, c.last.Y, q.Y, 1e-9, name)
	}
}

// A mirrored cut is the mirror image: every feature with Mirror gives the same
// panel as the design with left and right exchanged.
func TestMirrorMirrors(t *testing.T) {
	flag := box.Polygon{Points: []box.Point{{X: -8, Y: -12}, {X: 8, Y: -5}, {X: -2, Y: 12}}}
	hook := []outline.Path{{{X: -8, Y: 0, Bulge: 0.4}, {X: 5, Y: 6}, {X: 8, Y: -3}}}
	region := func(right box.MM, mirror bool) (float64, outline.Box, float64, outline.Box) {
		p := resolve(t, with(
			box.Cut{On: box.Front, At: box.Anchor{Right: right, Up: 60, Turn: 17}, Shape: flag, Mirror: mirror},
			box.Engrave{On: box.Front, At: box.Anchor{Right: right, Up: 120, Turn: -31}, Lines: hook, Mirror: mirror}))
		var r outline.Region
		for _, op := range ops(t, p, box.Front, "opening") {
			r = append(r, op.Region...)
		}
		e := ops(t, p, box.Front, "mark")[0]
		l, b := 0.0, e.Strokes[0].Extents()
		for _, s := range e.Strokes {
			l, b = l+s.Length(), b.Join(s.Extents())
		}
		return r.Area(), r.Extents(), l, b
	}
	a, e, l, b := region(30, false)
	a2, e2, l2, b2 := region(30, true)
	assert.InDelta(t, 2*a, a2, 1e-9)
	assert.InDelta(t, 2*l, l2, 1e-9)
	for _, x := range [][2]outline.Box{{e, e2}, {b, b2}} {
		far := math.Max(math.Abs(x[0].Min.X), math.Abs(x[0].Max.X))
		assert.InDelta(t, far, x[1].Max.X, 1e-9)
		assert.InDelta(t, -far, x[1].Min.X, 1e-9)
		assert.InDelta(t, x[0].Min.Y, x[1].Min.Y, 1e-9)
		assert.InDelta(t, x[0].Max.Y, x[1].Max.Y, 1e-9)
	}
}

// One axis through the front, a plate before it and a partition behind it: all
// three holes lie on the axis, and the volumes are those of their thicknesses.
func TestThrough(t *testing.T) {
	d := plain.With(func(d *box.Design) {
		d.Inner = []box.Inner{box.Partition{Name: "lobby", Across: box.RunLeftToRight, At: -20, Joint: joints.Butt{}}}
		d.Free = []box.Free{{Name: "plate", Board: thick(3), Outline: outline.Rectangle(-30, -30, 30, 30), At: box.Place{X: 0, Y: -75, Z: 170}}}
	})
	hole := box.Cut{On: box.Front, At: box.Anchor{Right: 12, Up: 160, Level: box.LowestAbove}, Shape: box.Round{Diameter: 28},
		Through: []box.Part{"free/plate", "inner/lobby"}, Use: box.UseEntrance}
	bare := resolve(t, d)
	p := resolve(t, d.With(func(d *box.Design) { d.Features = []box.Feature{hole} }))
	for part, thick := range map[box.Part]float64{box.Front: 15, "free/plate": 3, "inner/lobby": 15} {
		q := piece(t, p, part)
		require.Len(t, ops(t, p, part, "entrance"), 1, part)
		c := ops(t, p, part, "entrance")[0].Region.Centroid()
		at := q.Home.O.Add(q.Home.U.Scale(c.X)).Add(q.Home.V.Scale(c.Y))
		assert.InDelta(t, 12, at.X, 1e-9, part)
		assert.InDelta(t, 174, at.Z, 1e-9, part)
		assert.InDelta(t, 196*math.Pi*thick, piece(t, bare, part).Volume-q.Volume, 1e-3, part)
	}
}

// Published: woodworkerb, as recorded in facts/checks.csv, rows v-depth-30 to
// v-depth-120 and v-width-60-tip.
func TestVGrooves(t *testing.T) {
	for angle, depth := range map[box.Deg]float64{30: 11.1962, 60: 5.1962, 90: 3, 120: 1.7321} {
		tool := box.Tool{VAngle: angle}
		assert.InDelta(t, depth, float64(tool.DepthFor(6)), 6e-5)
		assert.InDelta(t, 6, float64(tool.WidthAt(tool.DepthFor(6))), 1e-12)
	}
	assert.InDelta(t, 1.9321, float64(box.Tool{VAngle: 60, Tip: 0.2}.WidthAt(1.5)), 1e-4)
	assert.Equal(t, box.MM(3), box.Tool{Diameter: 3}.WidthAt(7))
	assert.True(t, math.IsNaN(float64(box.Tool{Diameter: 3}.DepthFor(3))))
}

// A line of 60, 6 wide with 60 degrees: 5.1962 deep. Its prism has the area 6 *
// 5.1962 / 2, its two half cones together a cone: pi 9 * 5.1962 / 3. Cut by a
// flat cutter of 6 to 2 deep: (60*6 + 9 pi) * 2. The solid keeps its volume.
func TestEngrave(t *testing.T) {
	line := []outline.Path{outline.Line(outline.Point{X: -30}, outline.Point{X: 30})}
	depth := 3 * math.Sqrt(3)
	for name, c := range map[string]struct {
		tool               box.Tool
		width, depth       box.MM
		wide, deep, volume float64
	}{
		"by width":   {box.Tool{}, 6, 0, 6, depth, 60*3*depth + 3*math.Pi*depth},
		"by depth":   {box.Tool{VAngle: 90}, 0, 3, 6, 3, 60*9 + 9*math.Pi},
		"as usual":   {box.Tool{}, 0, 0, 2, math.Sqrt(3), 60*math.Sqrt(3) + math.Pi*math.Sqrt(3)/3},
		"with a tip": {box.Tool{VAngle: 90, Tip: 2}, 0, 2, 6, 2, 60*8 + 2*math.Pi*(9+3+1)/3}, // a frustum of radii 3 and 1
		"flat":       {box.Tool{Diameter: 6}, 0, 2, 6, 2, (360 + 9*math.Pi) * 2},
	} {
		f := box.Engrave{On: box.Front, Lines: line, At: box.Anchor{Up: 60}, Tool: c.tool, Width: c.width, Depth: c.depth}
		p := resolve(t, with(f))
		os := ops(t, p, box.Front, "mark")
		require.Len(t, os, 1, name)
		op := os[0]
		assert.Equal(t, box.OpEngrave, op.Kind, name)
		assert.InDelta(t, c.wide, float64(op.Width), 1e-9, name)
		assert.InDelta(t, c.deep, float64(op.To-op.From), 1e-9, name)
		assert.InDelta(t, c.volume, op.Removed, 1e-6, name)
		assert.False(t, op.InSolid, name)
		assert.Zero(t, gone(t, f), name)
	}
}

// The volume of a bent line two ways: by the formula, and by the union of the
// slots that a V-cutter of 90 degrees leaves at five depths, Simpson's rule over
// them, which is exact for squares of the depth.
func TestEngraveTwoWays(t *testing.T) {
	bent := outline.Line(outline.Point{X: -20, Y: 0}, outline.Point{X: 5, Y: 10}, outline.Point{X: 30, Y: -10})
	p := resolve(t, with(box.Engrave{On: box.Front, Lines: []outline.Path{bent}, At: box.Anchor{Up: 60}, Tool: box.Tool{VAngle: 90}, Depth: 2}))
	at := func(r float64) float64 {
		if r == 0 {
			return 0
		}
		var all outline.Region
		for i := 0; i+1 < len(bent); i++ {
			a, b := bent[i], bent[i+1]
			l := math.Hypot(b.X-a.X, b.Y-a.Y)
			s := outline.Slot(outline.Point{X: l / 2}, l+2*r, 2*r).
				Transform(outline.Turn(math.Atan2(b.Y-a.Y, b.X-a.X) * 180 / math.Pi).Then(outline.Shift(a.X, a.Y)))
			u, err := outline.Union(all, outline.Region{s})
			require.NoError(t, err)
			all = u
		}
		return all.Area()
	}
	want := 2.0 / 12 * (at(2) + 4*at(1.5) + 2*at(1) + 4*at(0.5) + at(0))
	assert.InDelta(t, want, ops(t, p, box.Front, "mark")[0].Removed, 1e-5)
}
