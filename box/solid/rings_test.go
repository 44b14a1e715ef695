package solid

import (
	"errors"
	"math"
	"testing"

	"holt.example/box/outline"
)

func flatArea(r outline.Region) float64 {
	v := 0.0
	for _, c := range r {
		v += c.Area()
	}
	return v
}

// board is 200 x 150 x 15 with a rebate 20 x 7 along x = 0, a groove 6 x 5 in
// its top, and a notch 30 x 12 through its far edge.
func board() Body {
	return Body{Base: cuboid(0, 0, 0, 200, 150, 15), Cutters: []Cutter{
		{NewPlane(Vec{1, 0, 0}, 20), NewPlane(Vec{0, 0, -1}, -8)},
		{NewPlane(Vec{0, -1, 0}, -60), NewPlane(Vec{0, 1, 0}, 66), NewPlane(Vec{0, 0, -1}, -10)},
		{NewPlane(Vec{-1, 0, 0}, -100), NewPlane(Vec{1, 0, 0}, 130), NewPlane(Vec{0, -1, 0}, -138)},
	}}
}

func TestRingsOfABoard(t *testing.T) {
	b := board()
	top := Frame{Vec{0, 0, 15}, Vec{1, 0, 0}, Vec{0, 1, 0}, Vec{0, 0, 1}}
	// The top is cut in two by the groove: 180 x 60 and 180 x 84 less the notch.
	r := b.Rings(top)
	if len(r) != 2 {
		t.Fatalf("%d contours: %v", len(r), r)
	}
	near(t, "top", flatArea(r), 180*60+180*84-30*12, 1e-9)
	if len(r[0])+len(r[1]) != 4+8 {
		t.Errorf("corners %d and %d", len(r[0]), len(r[1]))
	}
	// The floors of rebate and groove are surfaces too. The groove, 10 high,
	// ends at the rebate, whose floor is at 8.
	near(t, "rebate floor", flatArea(b.Rings(Frame{Vec{0, 0, 8}, top.U, top.V, top.W})), 20*150, 1e-9)
	near(t, "groove floor", flatArea(b.Rings(Frame{Vec{0, 0, 10}, top.U, top.V, top.W})), 180*6, 1e-9)
	far := Frame{Vec{0, 0, 0}, Vec{1, 0, 0}, Vec{0, -1, 0}, Vec{0, 0, -1}}
	near(t, "far face", flatArea(b.Rings(far)), 200*150-30*12, 1e-9)
	shadow := b.Shadow(top)
	if len(shadow) != 1 || len(shadow[0]) != 8 {
		t.Fatalf("shadow: %v", shadow)
	}
	near(t, "shadow", flatArea(shadow), 200*150-30*12, 1e-9)
}

func TestRingsTurned(t *testing.T) {
	r := random(5)
	for i := 0; i < 50; i++ {
		f := anyFrame(r)
		b := turned(board(), f)
		top := Frame{f.Out(Vec{0, 0, 15}), f.U, f.V, f.W}
		near(t, "top", flatArea(b.Rings(top)), 180*60+180*84-30*12, 1e-4)
		s := b.Shadow(top)
		near(t, "shadow", flatArea(s), 200*150-30*12, 1e-4)
		if len(s) != 1 || len(s[0]) != 8 {
			t.Fatalf("shadow: %v", s)
		}
	}
}

func TestRingsWithHoles(t *testing.T) {
	// Two square windows touching at a corner, one of them touching the edge of
	// the board at a corner too: still three simple contours.
	b := Body{Base: cuboid(0, 0, 0, 100, 100, 10), Cutters: []Cutter{
		Cutter(cuboid(20, 20, -1, 40, 40, 11)), Cutter(cuboid(40, 40, -1, 60, 60, 11))}}
	top := Frame{Vec{0, 0, 10}, Vec{1, 0, 0}, Vec{0, 1, 0}, Vec{0, 0, 1}}
	for name, r := range map[string]outline.Region{"rings": b.Rings(top), "shadow": b.Shadow(top)} {
		if len(r) != 3 {
			t.Fatalf("%s: %v", name, r)
		}
		near(t, name, flatArea(r), 1e4-800, 1e-9)
		holes := 0
		for _, c := range r {
			if len(c) != 4 {
				t.Errorf("%s: contour of %d corners", name, len(c))
			}
			if c.Area() < 0 {
				holes++
			}
		}
		if holes != 2 {
			t.Errorf("%s: %d holes", name, holes)
		}
	}
}

func TestShadowOfALeaningBoard(t *testing.T) {
	// A cube of 10 along its space diagonal: a regular hexagon of area
	// 100 sqrt 3 (geometry: three faces, each foreshortened by 1/sqrt 3).
	w := Vec{1, 1, 1}.Unit()
	u := Vec{1, -1, 0}.Unit()
	s := Body{Base: cuboid(0, 0, 0, 10, 10, 10)}.Shadow(Frame{Vec{}, u, w.Cross(u), w})
	if len(s) != 1 || len(s[0]) != 6 {
		t.Fatalf("%v", s)
	}
	near(t, "hexagon", flatArea(s), 100*math.Sqrt(3), 1e-9)
}

func TestContact(t *testing.T) {
	a := Body{Base: cuboid(0, 0, 0, 100, 100, 10)}
	b := Body{Base: cuboid(50, 20, 10, 150, 80, 30)}
	near(t, "resting", Contact(a, b, 0), 50*60, 1e-9)
	near(t, "the other way", Contact(b, a, 0), 50*60, 1e-9)
	up := Body{Base: cuboid(50, 20, 10.3, 150, 80, 30)}
	near(t, "above the gap", Contact(a, up, 0.2), 0, 0)
	near(t, "within the gap", Contact(a, up, 0.3), 50*60, 1e-9)
	// A tongue in a groove with no play: floor 10 x 6, two cheeks 10 x 5, and the
	// shoulders do not touch.
	host := Body{Base: cuboid(0, 0, 0, 10, 20, 15), Cutters: []Cutter{{
		NewPlane(Vec{0, 0, -1}, -10), NewPlane(Vec{0, -1, 0}, -5), NewPlane(Vec{0, 1, 0}, 11)}}}
	guest := Body{Base: cuboid(0, 5, 10, 10, 11, 40)}
	near(t, "tongue", Contact(host, guest, 0), 10*6+2*10*5, 1e-9)
	r := random(6)
	for i := 0; i < 20; i++ {
		f := anyFrame(r)
		near(t, "turned", Contact(turned(host, f), turned(guest, f), 0), 160, 1e-4)
	}
}

// frameOn has its plane w = 0 through p with the normal n.
func frameOn(p, n Vec) Frame {
	u := n.Cross(Vec{0.3, 0.5, 0.7}).Unit()
	return Frame{p, u, n.Cross(u), n}
}

func TestRingsAgainstMesh(t *testing.T) {
	// Every surface of the mesh, by area, is what Rings finds in its plane.
	r := random(7)
	for i := 0; i < 60; i++ {
		b := randomBody(r)
		m, err := b.Mesh(0.01)
		if errors.Is(err, ErrEmpty) {
			continue // the cutters took it all
		}
		if err != nil {
			t.Fatal(err)
		}
		area := make([]float64, len(m.Surfaces))
		at := make([]Vec, len(m.Surfaces))
		for k, tri := range m.Triangles {
			s := m.Surface[k]
			area[s] += m.cross(tri).Len() / 2
			at[s] = m.Vertices[tri[0]]
		}
		for s, want := range area {
			near(t, "area", flatArea(b.Rings(frameOn(at[s], m.Surfaces[s].N))), want, 1e-6*(1+want))
		}
	}
}

func TestShadowAgainstLines(t *testing.T) {
	// A place lies in the shadow when a line along W through it meets a piece.
	r := random(8)
	tested := 0
	for i := 0; i < 60; i++ {
		b := randomBody(r)
		f := anyFrame(r)
		shadow := b.Shadow(f)
		pieces := b.Pieces()
		for k := 0; k < 60; k++ {
			at := outline.Point{X: 160*r.Float64() - 80, Y: 160*r.Float64() - 80}
			if shadow.Distance(at) < 1e-3 {
				continue
			}
			p := f.Out(Vec{at.X, at.Y, 0})
			want := false
			for _, c := range pieces {
				lo, hi := math.Inf(-1), math.Inf(1)
				for _, g := range c.Faces {
					d, h := g.N.Dot(f.W), g.N.Dot(p.Sub(g.Loop[0]))
					if d > 0 {
						hi = math.Min(hi, -h/d)
					} else {
						lo = math.Max(lo, -h/d)
					}
				}
				want = want || lo < hi
			}
			tested++
			if got := shadow.Contains(at, 1e-9) == outline.Inside; got != want {
				t.Errorf("body %d at %v: in the shadow %v, want %v", i, at, got, want)
			}
		}
		for _, c := range shadow {
			if err := c.Check(); err != nil {
				t.Errorf("body %d: %v", i, err)
			}
		}
	}
	if tested < 3000 {
		t.Errorf("only %d places tested", tested)
	}
}
