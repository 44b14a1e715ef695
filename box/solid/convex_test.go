package solid

import (
	"testing"
)

// checkConvex proves a convex solid well formed: loops plane and convex, every
// edge met by the face that Next names, in the other direction.
func checkConvex(t *testing.T, c Convex) {
	t.Helper()
	for _, f := range c.Faces {
		if len(f.Loop) < 3 || len(f.Next) != len(f.Loop) {
			t.Fatalf("face %d: %d corners, %d neighbours", f.ID, len(f.Loop), len(f.Next))
		}
		n := len(f.Loop)
		for k, p := range f.Loop {
			near(t, "corner off its plane", f.N.Dot(p.Sub(f.Loop[0])), 0, 1e-6)
			q, r := f.Loop[(k+1)%n], f.Loop[(k+2)%n]
			if q.Sub(p).Cross(r.Sub(q)).Dot(f.N) < -1e-6 {
				t.Errorf("face %d is not convex at corner %d", f.ID, k)
			}
			g, ok := c.FaceOf(f.Next[k])
			if !ok {
				t.Fatalf("face %d edge %d: neighbour %d is missing", f.ID, k, f.Next[k])
			}
			found := false
			for j, s := range g.Loop {
				if e := g.Loop[(j+1)%len(g.Loop)]; s.Sub(q).Len() < 1e-6 && e.Sub(p).Len() < 1e-6 {
					found = found || g.Next[j] == f.ID
				}
			}
			if !found && q.Sub(p).Len() > 1e-5 {
				t.Errorf("face %d edge %d: face %d does not have it", f.ID, k, g.ID)
			}
		}
	}
}

// byTetrahedra is the volume by tetrahedra from the mean corner: another sum
// than Volume's, which uses heights and areas.
func byTetrahedra(c Convex) float64 {
	v, o := 0.0, c.Centroid()
	for _, f := range c.Faces {
		for k := 1; k+1 < len(f.Loop); k++ {
			a, b, d := f.Loop[0].Sub(o), f.Loop[k].Sub(o), f.Loop[k+1].Sub(o)
			v += a.Cross(b).Dot(d) / 6
		}
	}
	return v
}

func TestClipRandomPolyhedra(t *testing.T) {
	r := random(1)
	for i := 0; i < 300; i++ {
		c := Intersect(randomPolyhedron(r, Vec{}, 50, 12))
		checkConvex(t, c)
		v := c.Volume()
		near(t, "volume by tetrahedra", byTetrahedra(c), v, 1e-9*v)
		// A plane divides the volume.
		n := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
		h := NewPlane(n, 60*r.Float64()-30)
		a, b := c.Clip(h, 100), c.Clip(h.Flip(), 100)
		checkConvex(t, a)
		checkConvex(t, b)
		near(t, "two halves", a.Volume()+b.Volume(), v, 1e-9*v)
	}
}

func TestClipMonteCarlo(t *testing.T) {
	r := random(2)
	for i := 0; i < 5; i++ {
		planes := randomPolyhedron(r, Vec{}, 50, 6)
		c := Intersect(planes)
		in, n := 0, 40000
		for k := 0; k < n; k++ {
			p := Vec{100*r.Float64() - 50, 100*r.Float64() - 50, 100*r.Float64() - 50}
			if ok, _ := (Body{Base: planes}).holds(p, 0); ok {
				in++
			}
		}
		// The standard error is at most 1e6 * sqrt(1/4/40000) = 2500; five of them.
		near(t, "volume", c.Volume(), 1e6*float64(in)/float64(n), 12500)
	}
}

func TestClipTouching(t *testing.T) {
	c := Cuboid(Vec{0, 0, 0}, Vec{10, 20, 30})
	checkConvex(t, c)
	near(t, "cuboid", c.Volume(), 6000, 1e-9)
	// Planes through a face, an edge and a corner cut nothing off.
	for _, h := range []Plane{
		NewPlane(Vec{1, 0, 0}, 10), NewPlane(Vec{1, 1, 0}, 30), NewPlane(Vec{1, 1, 1}, 60),
	} {
		if d := c.Clip(h, 1); len(d.Faces) != 6 {
			t.Errorf("%v: %d faces", h, len(d.Faces))
		}
		if d := c.Clip(h.Flip(), 1); !d.Empty() {
			t.Errorf("%v flipped: volume %g left", h, d.Volume())
		}
	}
	// Diagonally through four corners: half.
	d := c.Clip(NewPlane(Vec{2, -1, 0}, 0), 1)
	checkConvex(t, d)
	near(t, "half", d.Volume(), 3000, 1e-9)
	if len(d.Faces) != 5 {
		t.Errorf("prism has %d faces, want 5", len(d.Faces))
	}
}

func TestPiecesAndSplit(t *testing.T) {
	r := random(3)
	for i := 0; i < 200; i++ {
		b := randomBody(r)
		pieces := b.Pieces()
		for _, c := range pieces {
			checkConvex(t, c)
		}
		base := b.Convex()
		// Void: what the cutters hold of the base, by subtracting the body from it.
		void := VolumeOf(Subtract([]Convex{base}, b))
		near(t, "body and void", VolumeOf(pieces)+void, base.Volume(), 1e-9*base.Volume())
		for k := 0; k < 200; k++ {
			p := Vec{100*r.Float64() - 50, 100*r.Float64() - 50, 100*r.Float64() - 50}
			in, ok := b.holds(p, 1e-6)
			if !ok {
				continue
			}
			n := 0
			for _, c := range pieces {
				if c.holds(p) {
					n++
				}
			}
			if (n == 1) != in || n > 1 {
				t.Fatalf("body %d: %v is in %d pieces, inside %v", i, p, n, in)
			}
		}
	}
}

func TestOverlap(t *testing.T) {
	r := random(4)
	for i := 0; i < 200; i++ {
		a, b := randomBody(r), turned(randomBody(r), anyFrame(r))
		want := pairwise(a, b)
		got := Overlap(a, b)
		near(t, "overlap", got, want, 1e-9*want+1e-6)
		near(t, "the other way", Overlap(b, a), got, 1e-9*got+1e-6)
	}
	// Neighbours that touch hold nothing in common.
	a, b := Body{Base: cuboid(0, 0, 0, 10, 10, 10)}, Body{Base: cuboid(10, 0, 0, 20, 10, 10)}
	if v := Overlap(a, b); v != 0 {
		t.Errorf("touching: %g", v)
	}
	// A tongue 4 x 5 in a groove 4 x 5: nothing; with the groove 1 shallower,
	// 1 x 5 x 10.
	for _, depth := range []float64{4, 3} {
		host := Body{Base: cuboid(0, 0, 0, 10, 10, 15), Cutters: []Cutter{{
			NewPlane(Vec{0, 0, -1}, depth-15), NewPlane(Vec{0, -1, 0}, -2), NewPlane(Vec{0, 1, 0}, 7)}}}
		guest := Body{Base: cuboid(0, 2, 11, 10, 7, 40)}
		near(t, "tongue", Overlap(host, guest), (4-depth)*50, 1e-9)
	}
}

// pairwise is the overlap by all pairs of pieces.
func pairwise(a, b Body) float64 {
	v := 0.0
	for _, p := range a.Pieces() {
		for _, q := range b.Pieces() {
			x := p
			for k, f := range q.Faces {
				if x = x.Clip(Plane{f.N, f.N.Dot(f.Loop[0])}, 1000+k); x.Empty() {
					break
				}
			}
			v += x.Volume()
		}
	}
	return v
}
