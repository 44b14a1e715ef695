package box_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/solid"
)

// facesOf are the two large planes of a part, found among the planes of its
// body and nowhere else: the one that looks at the cavity and the one that
// looks away from it.
func facesOf(t *testing.T, p *box.Plan, name box.Part) (inner, outer solid.Plane) {
	t.Helper()
	q := piece(t, p, name)
	var ok [2]bool
	for _, h := range q.Body.Base {
		if math.Abs(h.N.Dot(q.Home.W)) < 1-1e-9 {
			continue
		}
		if h.At(solid.Vec{Z: 1}) > 0 { // this place is in every cavity
			inner, ok[0] = h, true
		} else {
			outer, ok[1] = h, true
		}
	}
	require.Equal(t, [2]bool{true, true}, ok, "faces of %s", name)
	return inner, outer
}

// across solves for the place on a wall's plane at height z, along the
// horizontal direction in which the wall faces.
func across(h solid.Plane, z float64) float64 {
	return (h.D - h.N.Z*z) / math.Hypot(h.N.X, h.N.Y)
}

// meeting is the height at which a wall's plane and the plane of the roof
// above it meet: both read nh*x + nz*z = d along the wall's horizontal
// direction.
func meeting(wall, roof solid.Plane) float64 {
	wh := math.Hypot(wall.N.X, wall.N.Y)
	rh := (roof.N.X*wall.N.X + roof.N.Y*wall.N.Y) / wh
	return (wh*roof.D - rh*wall.D) / (wh*roof.N.Z - rh*wall.N.Z)
}

// eavesOf lists the walls under eaves and the slopes over them.
func eavesOf(r box.RoofForm) map[box.Part]box.Part {
	switch r := r.(type) {
	case box.Pent:
		return map[box.Part]box.Part{box.Front: box.Roof}
	case box.Gable:
		if r.Run == box.LeftToRight {
			return map[box.Part]box.Part{box.Front: box.RoofFront, box.Back: box.RoofBack}
		}
		return map[box.Part]box.Part{box.Left: box.RoofLeft, box.Right: box.RoofRight}
	case box.Hip:
		return map[box.Part]box.Part{box.Front: box.RoofFront, box.Back: box.RoofBack, box.Left: box.RoofLeft, box.Right: box.RoofRight}
	}
	return map[box.Part]box.Part{box.Front: box.Roof, box.Back: box.Roof, box.Left: box.Roof, box.Right: box.Roof}
}

// measureOutside puts a tape to the planes of the pieces: width and depth at
// the walls' lower edge, height from there to the lowest outer eaves.
func measureOutside(t *testing.T, p *box.Plan, roof box.RoofForm, raise float64) (w, d, h float64) {
	t.Helper()
	_, under := facesOf(t, p, box.Floor)
	lower := -under.D - raise // the plane reads -z = D
	out := func(name box.Part) solid.Plane { _, o := facesOf(t, p, name); return o }
	w = across(out(box.Left), lower) + across(out(box.Right), lower)
	d = across(out(box.Front), lower) + across(out(box.Back), lower)
	h = math.Inf(1)
	for wall, slope := range eavesOf(roof) {
		h = math.Min(h, meeting(out(wall), out(slope)))
	}
	return w, d, h - lower
}

// randomOutside draws a rectangular box that fixes its outside, and says how
// far the floor is raised: leans, four thicknesses, a pitch of 5 to 60.
func randomOutside(r *rand.Rand, kind int) (box.Design, float64) {
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	mm := func(lo, hi float64) box.MM { return box.MM(between(lo, hi)) }
	pitch := box.Deg(between(5, 60))
	over := box.Overhangs{Front: mm(0, 40), Back: mm(0, 40), Left: mm(0, 40), Right: mm(0, 40)}
	raise := mm(0, 25)
	d := box.Design{
		Name:  "outside",
		Board: thick(mm(8, 20)),
		Boards: map[box.Part]box.Board{box.Front: thick(mm(8, 20)), box.Right: thick(mm(8, 20)), box.Back: thick(mm(8, 20)),
			box.Left: thick(mm(8, 20)), box.Floor: thick(mm(8, 20)), box.AllRoof: thick(mm(8, 20))},
		Size:  box.Outside{Width: mm(200, 320), Depth: mm(200, 320), Height: mm(220, 400)},
		Floor: box.FloorBetween{Raise: raise},
		Roof: []box.RoofForm{box.Flat{Over: over}, box.Pent{Pitch: pitch, Over: over}, box.Gable{Pitch: pitch, Over: over},
			box.Gable{Pitch: pitch, Run: box.LeftToRight, Over: over}, box.Hip{Pitch: pitch, Over: box.Overhangs{All: mm(0, 40)}}}[kind],
	}
	for _, w := range []box.Part{box.Front, box.Right, box.Back, box.Left} {
		if r.IntN(2) == 0 {
			d.Walls = append(d.Walls, box.Wall{On: w, Lean: box.Deg(between(-10, 20))})
		}
	}
	return d, float64(raise)
}

// A box made to an outside has that outside, and the cavity found, given as a
// cavity, has it too. Planes are rounded to 2^-30 = 9.3e-10 mm, two for each
// size; where roof and wall meet at an angle of 20 degrees (pitch 60, lean 10
// in) that shifts their line by up to 3 times as much. So 1e-6 is ample, and
// what a wrong formula does is larger by far.
func TestOutsideOfTheSolvedBoxIsTheInput(t *testing.T) {
	t.Parallel()
	const wanted = 100
	r := rand.New(rand.NewPCG(4, 1))
	for kind := range 5 {
		got, tries := 0, 0
		for ; got < wanted && tries < 4*wanted; tries++ {
			d, raise := randomOutside(r, kind)
			p, err := d.Resolve()
			if err != nil {
				continue // steep roofs on leaning walls: some cannot be sawn
			}
			got++
			want := d.Size.(box.Outside)
			tape := func(w, dp, h, within float64, how string) {
				require.InDelta(t, float64(want.Width), w, within, "width %s of %+v", how, d)
				require.InDelta(t, float64(want.Depth), dp, within, "depth %s of %+v", how, d)
				require.InDelta(t, float64(want.Height), h, within, "height %s of %+v", how, d)
			}
			w, dp, h := measureOutside(t, p, d.Roof, raise)
			tape(w, dp, h, 1e-6, "by tape")
			tw, td, th := p.Outside()
			tape(float64(tw), float64(td), float64(th), 1e-9, "as told")
			cw, cd, ch := p.Inside()
			q := resolve(t, d.With(func(d *box.Design) { d.Size = box.Cavity{Width: cw, Depth: cd, Height: ch} }))
			tw, td, th = q.Outside()
			tape(float64(tw), float64(td), float64(th), 1e-9, "of its cavity")
		}
		assert.Equal(t, wanted, got, "roof %d: %d tries", kind, tries)
	}
}

// The table of outer sizes, worked by hand (geometry: the outer eaves of a
// wall lie (t_roof/cos p - t_w tan p/cos l) / (1 + tan l tan p) above the inner
// ones, the walls' lower edge t_floor + raise below zero).
func TestOuterSizes(t *testing.T) {
	// 120 + 2 x 14.6 = 149.2 both ways; 240 + 34.6 + 14.6/cos 12 - 14.6 tan 12
	// = 274.6 + 14.926173 - 3.103326 = 286.422847.
	//
	// Front leaning 5, back 3: at z = -34.6 the inner planes stand at 60 -
	// 34.6 tan 5 = 56.972892 and 60 - 34.6 tan 3 = 58.186691; with 14.6/cos 5 =
	// 14.655770 and 14.6/cos 3 = 14.620036 that is 144.435389. And the height:
	// 274.6 + (14.926173 - 14.655770 x 0.2125566) / (1 + 0.0874887 x 0.2125566)
	// = 274.6 + 11.810993/1.018596 = 286.195362.
	for _, x := range []struct {
		name    string
		walls   []box.Wall
		w, d, h float64
	}{
		{"orchard", orchard.Walls, 149.2, 149.2, 286.422847},
		{"leaning", []box.Wall{{On: box.Back, Above: 80, Below: 60, Lean: 3}, {On: box.Front, Lean: 5}}, 149.2, 144.435389, 286.195362},
	} {
		p := resolve(t, orchard.With(func(d *box.Design) { d.Walls = x.walls }))
		w, d, h := p.Outside()
		assert.InDelta(t, x.w, float64(w), 1e-6, x.name)
		assert.InDelta(t, x.d, float64(d), 1e-6, x.name)
		assert.InDelta(t, x.h, float64(h), 1e-6, x.name)
		tw, td, th := measureOutside(t, p, orchard.Roof, 20)
		assert.InDeltaSlice(t, []float64{x.w, x.d, x.h}, []float64{tw, td, th}, 1e-6, x.name)
	}
	// Hip 150 x 130 x 180, pitch 40, all four walls and their leans unlike:
	// 171.424535 x 165.408732 x 196.800693 (geometry; the lowest eaves are the
	// back's: 180 + 12 + (18/cos 40 - 22 tan 40/cos 3)/(1 + tan 3 tan 40)).
	hip := box.Design{Name: "hip", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 130, Height: 180},
		Boards: map[box.Part]box.Board{box.Right: thick(12), box.Back: thick(22), box.Left: thick(9), box.AllRoof: thick(18), box.Floor: thick(12)},
		Walls:  []box.Wall{{On: box.Front, Lean: 5}, {On: box.Back, Lean: 3}, {On: box.Left, Lean: -2}},
		Floor:  box.FloorBetween{}, Roof: box.Hip{Pitch: 40}}
	p := resolve(t, hip)
	w, d, h := p.Outside()
	assert.InDelta(t, 171.424535, float64(w), 1e-6)
	assert.InDelta(t, 165.408732, float64(d), 1e-6)
	assert.InDelta(t, 196.800693, float64(h), 1e-6)
	tw, td, th := measureOutside(t, p, hip.Roof, 0)
	assert.InDeltaSlice(t, []float64{171.424535, 165.408732, 196.800693}, []float64{tw, td, th}, 1e-6)
	// And back: made to that outside it has this cavity.
	q := resolve(t, hip.With(func(d *box.Design) { d.Size = box.Outside{Width: w, Depth: box.MM(td), Height: h} }))
	iw, id, ih := q.Inside()
	assert.InDelta(t, 150, float64(iw), 1e-6)
	assert.InDelta(t, 130, float64(id), 1e-6)
	assert.InDelta(t, 180, float64(ih), 1e-6)
}

// An outside never moves: thicker boards take from the cavity.
func TestThicknessLeavesTheOutside(t *testing.T) {
	d := orchard.With(func(d *box.Design) { d.Size = box.Outside{Width: 150, Depth: 160, Height: 280} })
	for _, th := range []box.MM{10, 14.6, 18.3} {
		p := resolve(t, d.With(func(d *box.Design) { d.Board = thick(th) }))
		w, dp, h := measureOutside(t, p, d.Roof, 20)
		assert.InDeltaSlice(t, []float64{150, 160, 280}, []float64{w, dp, h}, 1e-6)
		// 150 - 2t, 160 - 2t, and the height 280 - 20 - t - (t/cos 12 - t tan 12).
		iw, id, ih := p.Inside()
		f := float64(th)
		want := []float64{150 - 2*f, 160 - 2*f, 260 - f - f*(1/math.Cos(12*math.Pi/180)-math.Tan(12*math.Pi/180))}
		assert.InDeltaSlice(t, want, []float64{float64(iw), float64(id), float64(ih)}, 1e-9)
	}
}
