package box_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
)

// upright is a rectangular box on paper: everything that its sizes follow from.
type upright struct {
	w, d, h                float64
	front, right, back     float64 // thicknesses
	left, floor, roof      float64
	laps, corner, bottom   int     // box.Laps; butt, mitre, rebate, comb; between, housed, rebated, under, none
	in                     float64 // a rebate's depth
	raise, sink            float64 // of the floor: how far raised, how deep let in
	cover                  int     // flat, pent, gable left to right
	tan                    float64 // of the pitch
	oFront, oBack, oL, oR  float64
	fFront, fBack, fL, fRt float64 // of a floor under the walls
}

func randomUpright(r *rand.Rand) upright {
	f := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	x := upright{w: f(100, 260), d: f(100, 260), h: f(120, 300), front: f(12, 22), right: f(12, 22), back: f(12, 22), left: f(12, 22),
		floor: f(9, 20), roof: f(9, 20), laps: r.IntN(3), corner: r.IntN(4), bottom: r.IntN(5), in: f(2, 6), sink: f(2, 5),
		cover: r.IntN(3), tan: f(0.05, 0.9), oFront: f(0, 40), oBack: f(0, 40), oL: f(0, 40), oR: f(0, 40),
		fFront: f(0, 20), fBack: f(0, 20), fL: f(0, 20), fRt: f(0, 20)}
	if x.corner == 1 { // no mitre reverses
		x.right, x.back, x.left = x.front, x.front, x.front
	}
	if x.bottom < 3 {
		x.raise = f(8, 25)
	}
	if x.bottom == 2 {
		x.raise = 0
	}
	return x
}

func (x upright) design() box.Design {
	mm := func(v float64) box.MM { return box.MM(v) }
	d := box.Design{Name: "upright", Board: thick(15), Size: box.Cavity{Width: mm(x.w), Depth: mm(x.d), Height: mm(x.h)},
		Boards: map[box.Part]box.Board{box.Front: thick(mm(x.front)), box.Right: thick(mm(x.right)), box.Back: thick(mm(x.back)),
			box.Left: thick(mm(x.left)), box.Floor: thick(mm(x.floor)), box.AllRoof: thick(mm(x.roof))},
		Corners: box.Corners{Laps: box.Laps(x.laps), Joint: []joints.Joint{nil, joints.Mitre{}, joints.Rebate{Depth: mm(x.in)}, joints.Comb{}}[x.corner]},
		Floor: []box.FloorForm{box.FloorBetween{Raise: mm(x.raise)},
			box.FloorBetween{Raise: mm(x.raise), Joint: joints.Housing{Depth: mm(x.sink)}},
			box.FloorBetween{Joint: joints.Rebate{Depth: mm(x.sink)}},
			box.FloorUnder{Over: box.Overhangs{Front: mm(x.fFront), Back: mm(x.fBack), Left: mm(x.fL), Right: mm(x.fRt)}},
			box.NoFloor{}}[x.bottom]}
	if x.bottom == 4 {
		delete(d.Boards, box.Floor)
	}
	over := box.Overhangs{Front: mm(x.oFront), Back: mm(x.oBack), Left: mm(x.oL), Right: mm(x.oR)}
	pitch := box.Deg(math.Atan(x.tan) * 180 / math.Pi)
	d.Roof = []box.RoofForm{box.Flat{Over: over}, box.Pent{Pitch: pitch, Over: over},
		box.Gable{Pitch: pitch, Run: box.LeftToRight, Ridge: joints.Mitre{}, Over: over}}[x.cover]
	return d
}

// ends are how far the walls reach past the cavity face: the first index is
// the wall as in fourWalls, the second its end towards the wall before it in
// that ring and towards the one after it.
func (x upright) ends() [4][2]float64 {
	t := [4]float64{x.front, x.right, x.back, x.left}
	in := 0.0
	if x.corner == 2 {
		in = x.in
	}
	var e [4][2]float64
	for i := range e {
		before, after := t[(i+3)%4], t[(i+1)%4]
		switch {
		case x.corner == 1 || x.corner == 3: // both go to the corner
			e[i] = [2]float64{before, after}
		case x.laps == int(box.Pinwheel): // over the next, under the one before
			e[i] = [2]float64{in, after}
		case (i%2 == 0) == (x.laps == int(box.FrontBack)):
			e[i] = [2]float64{before, after}
		default:
			e[i] = [2]float64{in, in}
		}
	}
	return e
}

// sizes are length along the grain and width across it, part by part.
func (x upright) sizes() map[box.Part][2]float64 {
	e := x.ends()
	low := []float64{x.floor + x.raise, x.floor + x.raise, x.floor, 0, 0}[x.bottom] // below the cavity floor
	// How high a wall is: as the roof's inner plane over its highest place, y
	// counted from the front's inner face.
	roof := func(y float64) float64 {
		switch x.cover {
		case 1:
			return x.h + y*x.tan
		case 2:
			return x.h + math.Min(y, x.d-y)*x.tan
		}
		return x.h
	}
	atBack, leftAtBack := e[1][1], e[3][0]
	if x.corner == 3 { // the topmost finger there belongs to the part that laps over
		if x.laps == int(box.FrontBack) {
			atBack = 0
		}
		if x.laps != int(box.Sides) {
			leftAtBack = 0
		}
	}
	sideTop, leftTop := roof(x.d+atBack), roof(x.d+leftAtBack)
	if x.cover == 2 {
		sideTop, leftTop = roof(x.d/2), roof(x.d/2)
	}
	backTop := math.Max(roof(x.d), roof(x.d+x.back))
	s := map[box.Part][2]float64{
		box.Front: {low + x.h, x.w + e[0][0] + e[0][1]},
		box.Back:  {low + backTop, x.w + e[2][0] + e[2][1]},
		box.Right: {low + sideTop, x.d + e[1][0] + e[1][1]},
		box.Left:  {low + leftTop, x.d + e[3][0] + e[3][1]},
	}
	switch x.bottom {
	case 0:
		s[box.Floor] = [2]float64{x.w, x.d}
	case 1, 2:
		s[box.Floor] = [2]float64{x.w + 2*x.sink, x.d + 2*x.sink}
	case 3:
		s[box.Floor] = [2]float64{x.w + x.left + x.right + x.fL + x.fRt, x.d + x.front + x.back + x.fFront + x.fBack}
	}
	wide, deep := x.w+x.left+x.right+x.oL+x.oR, x.d+x.front+x.back+x.oFront+x.oBack
	sec := math.Sqrt(1 + x.tan*x.tan)
	switch x.cover {
	case 0:
		s[box.Roof] = [2]float64{deep, wide}
	case 1: // both ends plumb: the faces are shifted by t tan p
		s[box.Roof] = [2]float64{deep*sec + x.roof*x.tan, wide}
	case 2: // plumb at the eaves and at the mitred ridge
		s[box.RoofFront] = [2]float64{(x.d/2+x.front+x.oFront)*sec + x.roof*x.tan, wide}
		s[box.RoofBack] = [2]float64{(x.d/2+x.back+x.oBack)*sec + x.roof*x.tan, wide}
	}
	return s
}

// Every part of an upright box by the arithmetic of the bench (geometry).
// Planes are rounded to 2^-30 mm and 2^-40: over 400 mm 1e-9, six of them.
func TestSizesByBenchArithmetic(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(6, 1))
	var covered [3][4][5][3]int
	for range 500 {
		x := randomUpright(r)
		p, err := x.design().Resolve()
		require.NoError(t, err, "%+v", x)
		want := x.sizes()
		require.Len(t, p.Pieces(), len(want), "%+v", x)
		for _, q := range p.Pieces() {
			s, ok := want[q.Part]
			require.True(t, ok, "%s of %+v", q.Part, x)
			require.InDelta(t, s[0], float64(q.Length), 1e-7, "length of %s of %+v", q.Part, x)
			require.InDelta(t, s[1], float64(q.Width), 1e-7, "width of %s of %+v", q.Part, x)
		}
		covered[x.laps][x.corner][x.bottom][x.cover]++
	}
	missing := 0
	for _, a := range covered {
		for _, b := range a {
			for _, c := range b {
				for _, n := range c {
					if n == 0 {
						missing++
					}
				}
			}
		}
	}
	assert.Less(t, missing, 18, "of 180 kinds") // 180 x e^(-500/180) = 11 expected
}

// What 0.1 mm of one board does to every part, and to nothing else (geometry).
// Gable left to right, pitch 45, butted, front and back lapping, the back slope
// lapping at the ridge; the box of geometry.md, section 1.
func TestTenthOfAMillimetre(t *testing.T) {
	gable := box.Design{Name: "tenth", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 220},
		Floor: box.FloorBetween{Raise: 6}, Roof: box.Gable{Pitch: 45, Run: box.LeftToRight, Over: box.Overhangs{Front: 25, Left: 20, Right: 20}}}
	const root2 = 0.14142135623730951
	const c12 = 0.10223405948650293 // 0.1/cos 12
	type change struct {
		part          box.Part
		length, width float64
	}
	for _, x := range []struct {
		d     box.Design
		thick box.Part
		want  []change
	}{
		{gable, box.Right, []change{{box.Front, 0, 0.1}, {box.Back, 0, 0.1}, {box.RoofFront, 0, 0.1}, {box.RoofBack, 0, 0.1}}},
		{gable, box.Left, []change{{box.Front, 0, 0.1}, {box.Back, 0, 0.1}, {box.RoofFront, 0, 0.1}, {box.RoofBack, 0, 0.1}}},
		{gable, box.Front, []change{{box.RoofFront, root2, 0}}}, // 0.1/cos 45
		{gable, box.Back, []change{{box.RoofBack, root2, 0}}},
		// The slopes meet at 90 degrees: the back one, lapping, grows as the
		// front one does. Neither grows by its own: the plumb eaves draw the
		// outer face back, at the lower end, and the inner one is the longer.
		{gable, box.RoofFront, []change{{box.RoofBack, 0.1, 0}}},
		{gable, box.RoofBack, nil},
		{gable, box.Floor, []change{{box.Front, 0.1, 0}, {box.Back, 0.1, 0}, {box.Left, 0.1, 0}, {box.Right, 0.1, 0}}},
		// The orchard box: rebates of 7 whatever the board, so the sides keep
		// their width; the back ends 80 over the roof.
		{orchard, box.Left, []change{{box.Front, 0, 0.1}, {box.Back, 0, 0.1}, {box.Roof, 0, 0.1}}},
		{orchard, box.Front, []change{{box.Roof, c12, 0}}},
		{orchard, box.Back, nil}, // the roof butts against its inner face
		{orchard, box.Floor, []change{{box.Front, 0.1, 0}, {box.Back, 0.1, 0}, {box.Left, 0.1, 0}, {box.Right, 0.1, 0}}},
		{orchard, box.Roof, []change{{box.Back, c12, 0}, {box.Roof, 0.021255656167002213, 0}}}, // 0.1 tan 12
	} {
		p := resolve(t, x.d)
		b := piece(t, p, x.thick).Board
		b.Thickness, b.Measured = b.Thickness+0.1, 0
		if m := piece(t, p, x.thick).Board.Measured; m != 0 {
			b.Measured = m + 0.1
		}
		q := resolve(t, x.d.With(func(d *box.Design) { d.Boards = map[box.Part]box.Board{x.thick: b} }))
		assert.Equal(t, inside(p), inside(q))
		for _, a := range p.Pieces() {
			want := change{part: a.Part}
			for _, c := range x.want {
				if c.part == a.Part {
					want = c
				}
			}
			c := piece(t, q, a.Part)
			assert.InDelta(t, want.length, float64(c.Length-a.Length), 1e-8, "length of %s when %s grows", a.Part, x.thick)
			assert.InDelta(t, want.width, float64(c.Width-a.Width), 1e-8, "width of %s when %s grows", a.Part, x.thick)
		}
	}
	// A mitred ridge halves between the slopes: with both 0.1 thicker each
	// grows by 0.1 tan 45 alone.
	m := gable.With(func(d *box.Design) {
		d.Roof = box.Gable{Pitch: 45, Run: box.LeftToRight, Ridge: joints.Mitre{}}
	})
	a := piece(t, resolve(t, m), box.RoofFront)
	b := piece(t, resolve(t, m.With(func(d *box.Design) { d.Boards = map[box.Part]box.Board{box.AllRoof: thick(15.1)} })), box.RoofFront)
	assert.InDelta(t, 0.1, float64(b.Length-a.Length), 1e-8)
}
