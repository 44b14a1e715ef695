package stl

import (
	"encoding/binary"
	"math"
	"math/rand/v2"
	"testing"

	"holt.example/box/solid"
)

// cuboid is a box as twelve triangles.
func cuboid(lo, hi solid.Vec) *solid.Mesh {
	m := &solid.Mesh{}
	for i := range 8 {
		v := lo
		if i&1 != 0 {
			v.X = hi.X
		}
		if i&2 != 0 {
			v.Y = hi.Y
		}
		if i&4 != 0 {
			v.Z = hi.Z
		}
		m.Vertices = append(m.Vertices, v)
	}
	for _, q := range [][4]int32{{0, 4, 6, 2}, {1, 3, 7, 5}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}} {
		m.Triangles = append(m.Triangles, [3]int32{q[0], q[1], q[2]}, [3]int32{q[0], q[2], q[3]})
	}
	return m
}

// split puts a new corner on the edge that starts corner j of triangle i, a
// part f of its length from there, and moves it by off: both triangles at the
// edge are divided.
func split(m *solid.Mesh, i, j int, f float64, off solid.Vec) {
	k := m.Triangles[i]
	a, b, c := k[j], k[(j+1)%3], k[(j+2)%3]
	p := int32(len(m.Vertices))
	m.Vertices = append(m.Vertices, m.Vertices[a].Lerp(m.Vertices[b], f).Add(off))
	m.Triangles[i] = [3]int32{a, p, c}
	m.Triangles = append(m.Triangles, [3]int32{p, b, c})
	for n, q := range m.Triangles {
		for e := range q {
			if q[e] == b && q[(e+1)%3] == a {
				d := q[(e+2)%3]
				m.Triangles[n] = [3]int32{b, p, d}
				m.Triangles = append(m.Triangles, [3]int32{p, a, d})
				return
			}
		}
	}
}

// ear is split on one side only: triangle i stays, and between it and the new
// corner there is a triangle as flat as off is small.
func ear(m *solid.Mesh, i, j int, f float64, off solid.Vec) {
	k := m.Triangles[i]
	split(m, i, j, f, off)
	p := int32(len(m.Vertices) - 1)
	m.Triangles[i] = k
	// split put the second half of triangle i before that of its neighbour.
	m.Triangles[len(m.Triangles)-2] = [3]int32{k[j], p, k[(j+1)%3]}
}

// read is a binary file as this test understands it.
func read(t *testing.T, b []byte) []facet {
	t.Helper()
	if len(b) < 84 {
		t.Fatalf("%d bytes: want 84 at least", len(b))
	}
	n := int(binary.LittleEndian.Uint32(b[80:]))
	if len(b) != 84+50*n {
		t.Fatalf("%d bytes for %d triangles: want %d", len(b), n, 84+50*n)
	}
	fs := make([]facet, n)
	for i := range fs {
		at := 84 + 50*i
		num := func() float64 {
			x := math.Float32frombits(binary.LittleEndian.Uint32(b[at:]))
			at += 4
			return float64(x)
		}
		vec := func() solid.Vec {
			x, y, z := num(), num(), num()
			return solid.Vec{X: x, Y: y, Z: z}
		}
		fs[i] = facet{vec(), vec(), vec(), vec()}
		if b[at] != 0 || b[at+1] != 0 {
			t.Fatalf("triangle %d: its last two bytes are not 0", i)
		}
	}
	return fs
}

// volume is the sum of the tetrahedra below the triangles, and surface their
// area.
func volume(fs []facet) (v, surface float64) {
	for _, f := range fs {
		o := fs[0].a
		n := f.b.Sub(f.a).Cross(f.c.Sub(f.a))
		v += n.Dot(f.a.Sub(o)) / 6
		surface += n.Len() / 2
	}
	return v, surface
}

// checkFacets fails unless the triangles are one or more closed surfaces with
// area everywhere and with unit normals that face outward by the right hand.
func checkFacets(t *testing.T, fs []facet) {
	t.Helper()
	type edge [2]solid.Vec
	n := map[edge]int{}
	for i, f := range fs {
		cross := f.b.Sub(f.a).Cross(f.c.Sub(f.a))
		if cross.Len() == 0 {
			t.Fatalf("triangle %d has no area: %v", i, f)
		}
		// Single precision rounds each component by 6e-8, four decimals by 5e-5.
		if d := cross.Unit().Sub(f.n).Len(); !(d < 1e-4) {
			t.Fatalf("triangle %d: normal %v, want %v", i, f.n, cross.Unit())
		}
		for _, e := range []edge{{f.a, f.b}, {f.b, f.c}, {f.c, f.a}} {
			n[e]++
			n[edge{e[1], e[0]}]--
		}
	}
	for e, k := range n {
		if k != 0 {
			t.Fatalf("the edge %v is used %d times more in one direction", e, k)
		}
	}
}

// A cuboid of 120 x 240 x 14.6: 420,480 mm3, surface
// 2(120*240 + 120*14.6 + 240*14.6) = 68,112 mm2.
func plank() *solid.Mesh {
	return cuboid(solid.Vec{X: -60}, solid.Vec{X: 60, Y: 240, Z: 14.6})
}

func TestRoundKeepsACuboid(t *testing.T) {
	for _, single := range []bool{true, false} {
		fs, err := round(plank(), single)
		if err != nil {
			t.Fatal(err)
		}
		if len(fs) != 12 {
			t.Errorf("%d triangles, want 12", len(fs))
		}
		checkFacets(t, fs)
		v, s := volume(fs)
		// 14.6 in single precision is 14.6000004: 3e-8 of the volume.
		if math.Abs(v-420480) > 420480*5e-8 || math.Abs(s-68112) > 0.01 {
			t.Errorf("volume %v and surface %v, want 420480 and 68112", v, s)
		}
	}
}

// Corners nearer than a step fall together, and both triangles at the edge
// between them go.
func TestRoundJoinsCorners(t *testing.T) {
	for _, off := range []float64{0, 1e-7, 1e-6, 4e-6} {
		m := plank()
		split(m, 0, 0, off/14.6, solid.Vec{})
		if off == 0 {
			m.Vertices[len(m.Vertices)-1] = m.Vertices[m.Triangles[0][0]]
		}
		if len(m.Triangles) != 14 {
			t.Fatal("the test's own mesh is wrong")
		}
		// At 14.6 the steps of single precision are 9.5e-7, at 240 1.5e-5; the
		// edge runs along z from 0, where they are far smaller, so only text
		// joins all of these.
		fs, err := round(m, false)
		if err != nil {
			t.Fatal(err)
		}
		if len(fs) != 12 {
			t.Errorf("off %g: %d triangles, want 12", off, len(fs))
		}
		checkFacets(t, fs)
	}
}

// A corner on an edge, but off it by less than can be written: one of its
// triangles falls flat when it is rounded onto the edge, and must be turned.
func TestRoundTurnsFlatTriangles(t *testing.T) {
	m := plank()
	// A corner on the diagonal of a face, a hair off it, makes two slivers...
	split(m, 0, 2, 0.5, solid.Vec{})
	// ...and another between those two corners makes one of no height.
	n := len(m.Triangles)
	split(m, n-1, 0, 0.5, solid.Vec{X: 1e-9})
	for _, single := range []bool{true, false} {
		fs, err := round(m, single)
		if err != nil {
			t.Fatal(err)
		}
		checkFacets(t, fs)
	}
}

// Corners put on the edges of a turned cuboid, off them by anything from far
// below to just above a step, one or a row of them on an edge, as a flat
// triangle or several on one side of it or as none; never within 2e-4 of each
// other, since the kernel welds at 1e-4. The result is closed, has area
// everywhere, and its volume is that of the mesh to half a step times the
// surface.
func TestRoundRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	fallen := 0
	for try := range 1000 {
		m := plank()
		s, c := math.Sincos(r.Float64() * 7)
		for i, v := range m.Vertices {
			m.Vertices[i] = solid.Vec{X: v.X*c - v.Y*s + 100, Y: v.X*s + v.Y*c, Z: v.Z}
		}
		size := math.Pow(10, -8+4*r.Float64())
		for i := range 12 {
			if m.Triangles[i][0] >= 8 || m.Triangles[i][1] >= 8 || m.Triangles[i][2] >= 8 {
				continue // its neighbour was divided
			}
			at, j := i, r.IntN(3)
			for n := range r.IntN(4) {
				off := solid.Vec{X: r.NormFloat64() * size, Y: r.NormFloat64() * size, Z: r.NormFloat64() * size}
				a, b := m.Vertices[m.Triangles[at][j]], m.Vertices[m.Triangles[at][(j+1)%3]]
				f := 0.1 + 0.8*r.Float64()
				if crowded(m, a.Lerp(b, f).Add(off)) {
					break
				}
				if n == 0 && r.IntN(3) == 0 {
					split(m, at, j, f, off)
					break
				}
				ear(m, at, j, f, off)
				at, j = len(m.Triangles)-2, 1 // on in the flat triangle
			}
		}
		var exact []facet
		for _, k := range m.Triangles {
			exact = append(exact, facet{a: m.Vertices[k[0]], b: m.Vertices[k[1]], c: m.Vertices[k[2]]})
		}
		want, surface := volume(exact)
		for _, single := range []bool{true, false} {
			w, err := weld(m, single)
			if err != nil {
				t.Fatal(err)
			}
			for _, k := range w.tri {
				if w.fallen(k) {
					fallen++
				}
			}
			fs, err := round(m, single)
			if err != nil {
				t.Fatalf("try %d, single %v: %v", try, single, err)
			}
			checkFacets(t, fs)
			got, _ := volume(fs)
			// A corner moves by at most half a step in each of three directions:
			// 240 + 100 lies below 512, where single precision has steps of 3.1e-5.
			step := 1e-4
			if single {
				step = 3.1e-5
			}
			if math.Abs(got-want) > step/2*math.Sqrt(3)*surface {
				t.Fatalf("try %d: volume %v, want %v", try, got, want)
			}
		}
	}
	if fallen < 1000 {
		t.Errorf("only %d triangles fell flat: the test does not reach what it is for", fallen)
	}
}

func crowded(m *solid.Mesh, p solid.Vec) bool {
	for _, v := range m.Vertices {
		if v.Sub(p).Len() < 2e-4 {
			return true
		}
	}
	return false
}

func TestRoundRefuses(t *testing.T) {
	open := plank()
	open.Triangles = open.Triangles[1:]
	if _, err := round(open, true); err != errOpen {
		t.Errorf("open mesh: %v", err)
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), 1e6} {
		bad := plank()
		bad.Vertices[3].Y = x
		if _, err := round(bad, true); err != errRange {
			t.Errorf("%v: %v", x, err)
		}
	}
	bad := plank()
	bad.Triangles[0][1] = 8
	if _, err := round(bad, false); err != errIndex {
		t.Errorf("corner 8 of 8: %v", err)
	}
}
