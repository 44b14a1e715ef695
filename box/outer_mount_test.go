package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

func outer(base box.Design, os ...box.Outer) box.Design {
	return base.With(func(d *box.Design) { d.Outer = os })
}

// laidOn is the contact of the seam between two parts.
func laidOn(t *testing.T, p *box.Plan, over, under box.Part) box.Seam {
	t.Helper()
	for _, s := range p.Seams() {
		if s.Over == over && s.Under == under {
			return s
		}
	}
	t.Errorf("no seam of %s and %s", over, under)
	return box.Seam{}
}

// The back of the stand is 180 wide and 215 high, from -15 to 200.
func TestBatten(t *testing.T) {
	// Upright, past both ends by 50: 315 long, with a hole of 7 in each end.
	up := outer(stand, box.Batten{Name: "b", Right: 20, Width: 40, Past: 50, Hole: box.Round{Diameter: 7}, Screws: 3})
	p := measures(t, up, []is{{"free/b", 315, 40, 40*315*15 - 2*math.Pi*12.25*15}})
	lo, hi := bounds(t, p, "free/b")
	assert.InDelta(t, -65, lo.Z, 1e-6)
	assert.InDelta(t, 250, hi.Z, 1e-6)
	assert.InDelta(t, 90, lo.Y, 1e-6)
	// Right is seen from outside: from behind, to the left of the box.
	assert.InDelta(t, -40, lo.X, 1e-6)
	assert.InDelta(t, 40*215, laidOn(t, p, box.Back, "free/b").Contact, 1e-3) // holes are not counted
	// Three holes of 4.5 in the back, on the face of the cavity: at 15, 100 and 185.
	var heights []float64
	for _, op := range piece(t, p, box.Back).Panel.Ops {
		if op.Source == "screw hole" {
			heights = append(heights, op.Region[0].Extents().Centre().Y)
			assert.InDelta(t, math.Pi*4.5*4.5/4, op.Region.Area(), 1e-9)
		}
	}
	assert.InDeltaSlice(t, []float64{15, 100, 185}, heights, 1e-6)
	fs := p.Fittings()
	require.Len(t, fs, 2)
	assert.Equal(t, "screw", fs[1].What)
	assert.Equal(t, "4 x 25", fs[1].Size) // 15 + 15 - 3 = 27, down to 25
	assert.Equal(t, []box.Part{box.Back, "free/b"}, fs[1].Where)

	// Level: 45 high, past both sides by 60.
	level := outer(stand, box.Batten{Name: "b", Above: 100, Height: 45, Past: 60})
	p = measures(t, level, []is{{"free/b", 300, 45, 300 * 45 * 15}})
	assert.InDelta(t, 180*45, laidOn(t, p, box.Back, "free/b").Contact, 1e-3)
	assert.Equal(t, "glue", laidOn(t, p, box.Back, "free/b").Holds[0].Kind)
	lo, _ = bounds(t, p, "free/b")
	assert.InDelta(t, 100, lo.Z, 1e-6)
}

// Two halves of a batten 90 high, 180 wide and 18 thick, split at 45 degrees in the
// middle: 180 x 18 x 45 each, 45 + 9 high; they touch over 180 x 18 sqrt(2), dry.
// The upper one's hook hangs down on the far side from the box.
func TestSplitBatten(t *testing.T) {
	d := outer(stand, box.SplitBatten{Name: "split", Above: 60, Height: 90, Screws: 4, Hole: box.Round{Diameter: 5}, Board: thick(18)})
	p := measures(t, d, []is{
		{"free/split box", 180, 54, 180 * 18 * 45},
		{"free/split wall", 180, 54, 180*18*45 - 2*math.Pi*6.25*18},
	})
	s := laidOn(t, p, "free/split wall", "free/split box")
	assert.InDelta(t, 180*18*math.Sqrt2, s.Contact, 1e-3)
	assert.Empty(t, s.Holds)
	m, err := p.Mesh("free/split box")
	require.NoError(t, err)
	for _, v := range m.Vertices {
		if v.Z < 105-1e-6 { // below the split's middle: only away from the box
			assert.Greater(t, v.Y, 99.0-1e-6)
		}
	}
	// The two lie in one layer, 18 behind the back at 90.
	lo, hi := bounds(t, p, "free/split wall")
	assert.InDelta(t, 90, lo.Y, 1e-6)
	assert.InDelta(t, 108, hi.Y, 1e-6)
	assert.InDelta(t, 60, lo.Z, 1e-6)
	assert.InDelta(t, 60+54, hi.Z, 1e-6)
	for _, e := range piece(t, p, "free/split box").Panel.Edges {
		if b := math.Abs(float64(e.Bevel)); b > 1e-6 {
			assert.InDelta(t, 45, b, 1e-6)
			assert.InDelta(t, 18, math.Abs(float64(e.Run)), 1e-6)
		}
	}
	// At 30 degrees the hook is 18 tan 30 deep.
	flat := outer(stand, box.SplitBatten{Name: "split", Above: 60, Height: 90, Bevel: 30, Board: thick(18)})
	measures(t, flat, []is{{"free/split box", 180, 45 + 9*math.Tan(deg(30)), 180 * 18 * 45}})
}

// pi x 300 + 200 = 1142.48, up to 1143; slots of 28 x 6 with half-round ends.
func TestStrap(t *testing.T) {
	d := outer(stand, box.Strap{Trunk: 300, Width: 25, Heights: []box.MM{60, 140}, Spare: 200})
	p := resolve(t, d)
	assert.Equal(t, []box.Fitting{{What: "strap", Count: 2, Size: "25 x 1143", Length: 1143, Width: 25, Where: []box.Part{box.Back}, Why: "around the trunk; loosen it as the tree grows"}}, p.Fittings())
	slot := 6*22 + math.Pi*9
	assert.InDelta(t, 4*slot*15, piece(t, resolve(t, stand), box.Back).Volume-piece(t, p, box.Back).Volume, 0.05)
}

func TestFeet(t *testing.T) {
	// Runners from front to back: 180 less 2 x 10 long, under the walls at -15.
	p := measures(t, outer(stand, box.Feet{Name: "r", Width: 30, Inset: 10}), []is{{"free/r/1", 160, 30, 160 * 30 * 15}, {"free/r/2", 160, 30, 160 * 30 * 15}})
	lo, hi := bounds(t, p, "free/r/1")
	assert.InDelta(t, -80, lo.X, 1e-6)
	assert.InDelta(t, -30, lo.Z, 1e-6)
	assert.InDelta(t, -15, hi.Z, 1e-6)
	// From side to side, and four blocks.
	measures(t, outer(stand, box.Feet{Name: "r", Run: box.RunLeftToRight, Width: 30}), []is{{"free/r/2", 180, 30, 180 * 30 * 15}})
	p = measures(t, outer(stand, box.Feet{Name: "r", Width: 30, Length: 40, Board: thick(50)}), []is{{"free/r/4", 40, 30, 30 * 40 * 50}})
	assert.Len(t, p.Pieces(), 10)
	lo, hi = bounds(t, p, "free/r/4") // right, behind
	assert.InDelta(t, 60, lo.X, 1e-6)
	assert.InDelta(t, 90, hi.Y, 1e-6)
	// The back that runs on below keeps them in front of it: 75 + 80 long.
	p = measures(t, outer(hung, box.Feet{Name: "r", Width: 30, Inset: 10}), []is{{"free/r/1", 155, 30, 155 * 30 * 15}})
	assert.InDelta(t, 25*150, laidOn(t, p, box.Floor, "free/r/1").Contact, 1e-3) // 5 of its width lie under the side
	// Under a floor that lies under the walls they stand on that.
	under := stand.With(func(d *box.Design) { d.Floor = box.FloorUnder{Over: box.Overhangs{All: 10}} })
	p = measures(t, outer(under, box.Feet{Name: "r", Width: 30}), []is{{"free/r/1", 200, 30, 200 * 30 * 15}})
	assert.InDelta(t, 200*30, laidOn(t, p, box.Floor, "free/r/1").Contact, 1e-3)
	// 15 + 15 - 3 = 27, down to 25: no point comes up through the floor.
	assert.Equal(t, "4 x 25", p.Fittings()[0].Size)
	// And without a floor, or above one that is raised, on the walls.
	for _, f := range []box.FloorForm{box.NoFloor{}, box.FloorBetween{Raise: 20}} {
		d := outer(stand.With(func(d *box.Design) { d.Floor = f }), box.Feet{Name: "r", Width: 30})
		p = measures(t, d, []is{{"free/r/1", 180, 30, 180 * 30 * 15}})
		// Into edges: 2.5 x 15 = 37.5, down to 35.
		assert.Equal(t, "4 x 35", p.Fittings()[0].Size)
	}
}

// Two layers of 90 x 80 x 15 with a square of 40 through them and the floor.
func TestPoleSocket(t *testing.T) {
	d := outer(stand, box.PoleSocket{Name: "s", Hole: box.Rect{Width: 40, Height: 40}, Width: 90, Deep: 80, Layers: 2, Floor: true})
	p := measures(t, d, []is{{"free/s/1", 90, 80, (7200 - 1600) * 15}, {"free/s/2", 90, 80, (7200 - 1600) * 15}})
	assert.InDelta(t, (150*150-1600)*15, piece(t, p, box.Floor).Volume, 1e-3)
	lo, hi := bounds(t, p, "free/s/2")
	assert.InDelta(t, -45, lo.Z, 1e-6)
	assert.InDelta(t, -30, hi.Z, 1e-6)
	assert.InDelta(t, -40, lo.Y, 1e-6)
	assert.InDelta(t, 45, hi.X, 1e-6)
}

// An entrance plate inside and one outside a leaning front: three holes on one
// axis, square to the wall.
func TestPlatesOnOneAxis(t *testing.T) {
	d := stand.With(func(d *box.Design) {
		d.Walls = []box.Wall{{On: box.Front, Lean: 6}}
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 120, Right: 10}}
		d.Inner = []box.Inner{box.EntrancePlate{Name: "in", Width: 70, Height: 60, Board: thick(25)}}
		d.Outer = []box.Outer{box.EntrancePlate{Name: "out", Hole: box.Round{Diameter: 28}, Width: 60, Height: 80, Screws: 4}}
	})
	p := measures(t, d, []is{
		{"inner/in", 70, 60, (4200 - math.Pi*256) * 25},
		{"free/out", 80, 60, (4800 - math.Pi*196 - 4*math.Pi*4.5*4.5/4) * 15},
	})
	axis := func(part box.Part) (at, dir solid.Vec) {
		q := piece(t, p, part)
		for _, op := range q.Panel.Ops {
			if op.Use == box.UseEntrance {
				c := op.Region[0].Extents().Centre()
				dir = q.Home.W
				if q.Panel.Face == box.FromInner {
					dir = dir.Scale(-1)
				}
				return q.Home.Out(solid.Vec{X: c.X, Y: c.Y}), dir
			}
		}
		t.Fatalf("no entrance in %s", part)
		return
	}
	at, dir := axis(box.Front)
	assert.InDelta(t, math.Cos(deg(6)), -dir.Y, 1e-9)
	for _, part := range []box.Part{"inner/in", "free/out"} {
		b, e := axis(part)
		assert.InDelta(t, 1, e.Dot(dir), 1e-9, part)
		assert.Less(t, b.Sub(at).Cross(dir).Len(), 1e-6, part)
	}
	assert.InDelta(t, 60*80, laidOn(t, p, box.Front, "free/out").Contact, 1e-3) // holes are not counted
	assert.InDelta(t, 4200, laidOn(t, p, box.Front, "inner/in").Contact, 1e-3)
}

// Around an entrance of 60 x 50, 120 long, of 12: top and bottom 60 + 24 wide.
func TestTunnel(t *testing.T) {
	tunnel := box.Tunnel{Name: "t", Long: 120, Board: thick(12)}
	d := outer(stand, tunnel).With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Rect{Width: 60, Height: 50}, Above: 80}}
	})
	want := []is{{"free/t top", 120, 84, 120 * 84 * 12}, {"free/t bottom", 120, 84, 120 * 84 * 12}, {"free/t left", 120, 50, 120 * 50 * 12}, {"free/t right", 120, 50, 120 * 50 * 12}}
	p := measures(t, d, want)
	lo, hi := bounds(t, p, "free/t left")
	assert.InDelta(t, -90-120, lo.Y, 1e-6)
	assert.InDelta(t, -90, hi.Y, 1e-6)
	assert.InDelta(t, -30, hi.X, 1e-6) // left seen from the front
	assert.InDelta(t, 80, lo.Z, 1e-6)
	assert.InDelta(t, 130, hi.Z, 1e-6)
	assert.InDelta(t, 84*12, laidOn(t, p, box.Front, "free/t top").Contact, 1e-3)
	// Inside, wider than the entrance and without a bottom.
	in := d.With(func(d *box.Design) {
		d.Outer = nil
		d.Inner = []box.Inner{box.Tunnel{Name: "t", Width: 70, Height: 60, Long: 100, Open: true, Board: thick(12)}}
	})
	p = measures(t, in, []is{{"inner/t top", 100, 94, 100 * 94 * 12}, {"inner/t left", 100, 60, 100 * 60 * 12}})
	lo, hi = bounds(t, p, "inner/t top")
	assert.InDelta(t, -75, lo.Y, 1e-6)
	assert.InDelta(t, 25, hi.Y, 1e-6)
	assert.InDelta(t, 135, lo.Z, 1e-6)
	_, ok := p.Piece("inner/t bottom")
	assert.False(t, ok)
}

// Sloping 10 degrees, 60 out and 15 thick: its back edge is upright, so that the
// section is 60 x 15 less 15^2 tan(10)/2.
func TestLandingBoard(t *testing.T) {
	d := stand.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 120, Right: 15}}
		d.Outer = []box.Outer{box.LandingBoard{Name: "l", Below: 40, Width: 100, Deep: 60, Slope: 10, Grooves: 15}}
	})
	p := measures(t, d, []is{{"free/l", 100, 60, 100 * (900 - 112.5*math.Tan(deg(10)))}})
	lo, hi := bounds(t, p, "free/l")
	assert.InDelta(t, 80, hi.Z, 1e-6) // its upper arris at the wall: 120 - 40
	assert.InDelta(t, -90, hi.Y, 1e-6)
	assert.InDelta(t, -35, lo.X, 1e-6)
	s := laidOn(t, p, box.Front, "free/l")
	assert.InDelta(t, 100*15/math.Cos(deg(10)), s.Contact, 1e-3)
	// The seam runs along its lower arris at the wall, 15 / cos 10 down.
	assert.InDelta(t, 100, math.Abs(float64(s.To.X-s.From.X)), 1e-6)
	assert.InDelta(t, 80-15/math.Cos(deg(10)), float64(s.From.Z), 1e-6)
	assert.InDelta(t, -90, float64(s.From.Y), 1e-6)
	assert.InDelta(t, 100, float64(s.Theta), 1e-6)
	var grooves *box.Op
	for _, op := range piece(t, p, "free/l").Panel.Ops {
		if op.Kind == box.OpEngrave {
			grooves = &op
		}
	}
	require.NotNil(t, grooves)
	assert.Len(t, grooves.Strokes, 3) // at 15, 30 and 45 from the wall; the next would be on the edge
	// Flat on the wall, for bats, from 70 down to 10.
	d.Outer[0] = box.LandingBoard{Name: "l", Below: 50, Width: 100, Deep: 60, Flat: true, Grooves: 12}
	p = measures(t, d, []is{{"free/l", 100, 60, 100 * 60 * 15}})
	lo, hi = bounds(t, p, "free/l")
	assert.InDelta(t, 10, lo.Z, 1e-6)
	assert.InDelta(t, 70, hi.Z, 1e-6)
	assert.InDelta(t, 6000, laidOn(t, p, box.Front, "free/l").Contact, 1e-3)
}

// The head's circle less the cap above the slot's corners, the slot's sides down
// to those corners, and its half-round end; and as a union of circle and slot.
func TestKeyhole(t *testing.T) {
	const head, slot, drop = 12.0, 6.0, 14.0
	r, h := head/2, slot/2
	a := math.Asin(h / r)
	want := math.Pi*r*r - r*r/2*(2*a-math.Sin(2*a)) + slot*(drop-r*math.Cos(a)) + math.Pi*h*h/2
	d := stand.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Hang{Shape: box.Keyhole{Head: head, Slot: slot, Drop: drop}, Heights: []box.MM{170}}}
	})
	p := measures(t, d, nil)
	op := piece(t, p, box.Back).Panel.Ops[0]
	assert.InDelta(t, want, op.Region.Area(), 1e-7)
	round := outline.Region{outline.Circle(outline.Point{Y: -drop}, head)}
	long := outline.Region{outline.Slot(outline.Point{Y: -drop / 2}, slot, drop+slot)}
	both, err := outline.Union(round, long)
	require.NoError(t, err)
	assert.InDelta(t, want, both.Area(), 1e-6)
	assert.InDelta(t, want*15, piece(t, resolve(t, stand), box.Back).Volume-piece(t, p, box.Back).Volume, 0.05)
	// The shank sits at 170; the head's hole ends 14 + 6 below it.
	e := op.Region[0].Extents()
	assert.InDelta(t, 173, e.Max.Y, 1e-6)
	assert.InDelta(t, 150, e.Min.Y, 1e-6)
}

// The middles of the strips: the back of the worked example ends 80 above the
// roof's upper face, at 200 + 150 tan 12 + 15 / cos 12, and at -15 - 60.
func TestHang(t *testing.T) {
	d := hung.With(func(d *box.Design) { d.Features = append(d.Features, box.Hang{Apart: 60}) })
	p := measures(t, d, nil)
	top := 200 + 150*math.Tan(deg(12)) + 15/math.Cos(deg(12))
	var got [][2]float64
	for _, op := range piece(t, p, box.Back).Panel.Ops {
		if op.Source == "hanging hole" {
			c := op.Region[0].Extents().Centre()
			got = append(got, [2]float64{math.Abs(c.X), c.Y})
			assert.InDelta(t, math.Pi*9, op.Region.Area(), 1e-9)
		}
	}
	require.Len(t, got, 4)
	for i, y := range []float64{top + 40, top + 40, -45, -45} {
		assert.InDelta(t, 30, got[i][0], 1e-6)
		assert.InDelta(t, y, got[i][1], 1e-6)
	}
	assert.Equal(t, 4, p.Fittings()[0].Count)
}

// A front that opens takes along what is fixed to it, a plate and a ledge; without
// that the swing would strike them.
func TestWhatIsFixedMovesAlong(t *testing.T) {
	d := stand.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 120}}
		d.Outer = []box.Outer{box.EntrancePlate{Name: "plate", Width: 60, Height: 60}, box.LandingBoard{Name: "ledge", Below: 40, Width: 80, Deep: 40}}
		d.Opens = []box.Opening{box.Hinged{Part: box.Front}}
	})
	p := resolve(t, d)
	require.Len(t, p.Ways(), 1)
	assert.ElementsMatch(t, []box.Part{box.Front, "free/plate", "free/ledge"}, p.Ways()[0].Moves)
	assert.GreaterOrEqual(t, float64(p.Ways()[0].Most), 90.0)
}
