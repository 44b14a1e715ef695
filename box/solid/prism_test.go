package solid

import (
	"encoding/binary"
	"errors"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"testing"

	"holt.example/box/outline"
)

// byPieces is the volume of a body with its prisms by convex decomposition
// alone, the second way to every mesh's volume.
func byPieces(b Body, chord float64) float64 {
	return VolumeOf(lessPrisms(b.Pieces(), b.Prisms, chord))
}

func rectOutline(x0, y0, x1, y1 float64) outline.Contour { return outline.Rectangle(x0, y0, x1, y1) }

func circleAt(x, y, d float64) outline.Contour { return outline.Circle(outline.Point{X: x, Y: y}, d) }

// slot is a rectangle with half-round ends along x.
func slot(x, y, l, w float64) outline.Contour {
	a, r := l/2-w/2, w/2
	return outline.Contour{{X: x - a, Y: y - r}, {X: x + a, Y: y - r, Bulge: 1}, {X: x + a, Y: y + r}, {X: x - a, Y: y + r, Bulge: 1}}
}

// heart is concave, of arcs and lines, its notch at (x, y+4).
func heart(x, y float64) outline.Contour {
	return outline.Contour{{X: x, Y: y - 12}, {X: x + 12, Y: y + 4, Bulge: 1}, {X: x, Y: y + 4, Bulge: 1}, {X: x - 12, Y: y + 4}}
}

// star is a five-pointed star.
func star(x, y, r float64) outline.Contour {
	var c outline.Contour
	for i := 0; i < 10; i++ {
		a, q := float64(i)*math.Pi/5, r
		if i%2 == 1 {
			q = r / 2.5
		}
		c = append(c, outline.Vertex{X: x + q*math.Sin(a), Y: y + q*math.Cos(a)})
	}
	return c
}

func under(c outline.Contour, depth float64) Prism {
	f := Frame{Vec{}, Vec{1, 0, 0}, Vec{0, -1, 0}, Vec{0, 0, -1}}
	var m outline.Contour
	for i := len(c) - 1; i >= 0; i-- { // mirrored in v
		v := c[i]
		v.Y = -v.Y
		v.Bulge = c[(i+len(c)-1)%len(c)].Bulge
		m = append(m, v)
	}
	return Prism{f, m, -depth, math.Inf(1)}
}

func across(x, z, d float64) Prism { // a bore along y
	f := Frame{Vec{x, 0, z}, Vec{1, 0, 0}, Vec{0, 0, 1}, Vec{0, -1, 0}}
	return Prism{f, outline.Circle(outline.Point{}, d), math.Inf(-1), math.Inf(1)}
}

// prismCases lie in board(): 200 x 150 x 15, its rebate over x < 20 down from 8,
// groove 60 < y < 66 down from 15 to 10, notch 100 < x < 130, y > 138.
var prismCases = []struct {
	name    string
	prisms  []Prism
	columns bool // all prisms go in as columns
	genus   int
}{
	{"clear hole", []Prism{through(circleAt(60, 30, 32))}, true, 1},
	{"slot", []Prism{through(slot(60, 30, 40, 10))}, true, 1},
	{"heart", []Prism{through(heart(60, 30))}, true, 1},
	{"star pocket", []Prism{pocket(star(60, 30, 14), 15, 5)}, true, 0},
	{"pocket", []Prism{pocket(circleAt(60, 30, 32), 15, 5)}, true, 0},
	{"pockets on both sides", []Prism{pocket(circleAt(60, 30, 32), 15, 5), under(circleAt(64, 32, 32), 4)}, true, 0},
	{"pockets on both sides that meet", []Prism{pocket(circleAt(60, 30, 32), 15, 9), under(circleAt(64, 32, 32), 8)}, false, 1},
	{"counterbore", []Prism{pocket(circleAt(60, 30, 32), 15, 5), through(circleAt(61, 30, 10))}, true, 1},
	{"counterbore of three steps", []Prism{through(circleAt(61, 30, 10)), pocket(circleAt(60, 30, 32), 15, 5), pocket(circleAt(60, 30, 20), 15, 9)}, true, 1},
	{"counterbore from below", []Prism{through(circleAt(61, 30, 10)), under(circleAt(60, 30, 32), 5)}, true, 1},
	{"pocket as deep as the board", []Prism{pocket(circleAt(60, 30, 32), 15, 15)}, true, 1},
	{"hole within a hole", []Prism{through(circleAt(60, 30, 32)), through(circleAt(60, 31, 10))}, true, 1},
	{"pocket meets a hole", []Prism{pocket(rectOutline(50, 20, 80, 40), 15, 6), through(circleAt(80, 30, 16))}, false, 1},
	{"two holes crossing", []Prism{through(circleAt(60, 30, 20)), through(circleAt(70, 30, 20))}, false, 1},
	{"hole in the rebate", []Prism{through(circleAt(10, 30, 12))}, true, 1},
	{"hole across the shoulder", []Prism{through(circleAt(20, 30, 12))}, false, 1},
	{"hole in the groove", []Prism{through(circleAt(60, 63, 4))}, true, 1},
	{"hole across the groove", []Prism{through(circleAt(60, 63, 14))}, false, 1},
	{"pocket across the groove", []Prism{pocket(circleAt(60, 63, 14), 15, 3)}, false, 0},
	{"pocket under the groove", []Prism{under(circleAt(60, 63, 14), 4)}, true, 0},
	{"pocket under the groove that meets it", []Prism{under(circleAt(60, 63, 14), 12)}, false, 1},
	{"hole across the notch", []Prism{through(circleAt(100, 138, 20))}, false, 0},
	{"hole in the notch alone", []Prism{through(circleAt(115, 144, 6))}, true, 0},
	{"hole over the edge", []Prism{through(circleAt(200, 30, 20))}, false, 0},
	{"hole touching the edge", []Prism{through(rectOutline(180, 20, 200, 40))}, false, 0},
	{"hole near the edge", []Prism{through(rectOutline(180, 20, 199.99, 40))}, true, 1},
	{"hole outside", []Prism{through(circleAt(300, 30, 20))}, true, 0},
	{"bore along y", []Prism{across(160, 4, 5)}, true, 1},
	{"bore through hole", []Prism{across(160, 4, 5), through(circleAt(160, 30, 12))}, false, 3},
	{"many", []Prism{through(circleAt(40, 30, 10)), through(circleAt(52, 30, 10)), pocket(heart(90, 30), 15, 4), through(circleAt(90, 30, 4)), across(160, 4, 5), through(slot(160, 100, 30, 8))}, false, 6},
}

func TestMeshPrisms(t *testing.T) {
	r := random(21)
	for _, c := range prismCases {
		t.Run(c.name, func(t *testing.T) {
			b := board()
			b.Prisms = c.prisms
			want := byPieces(b, 0.01)
			for turn := 0; turn < 6; turn++ {
				tb := b
				if turn > 0 {
					tb = turned(b, anyFrame(r))
				}
				m := mustMesh(t, tb, 0.01)
				// Turning rounds the planes to 2^-30 mm, on faces of 3e4 mm2.
				tol := 1e-9 * want
				near(t, "volume", m.Volume(), want, tol)
				v, err := tb.Volume(0.01)
				if err != nil {
					t.Fatal(err)
				}
				near(t, "Volume", v, want, tol)
				if g := m.Genus(); g != c.genus {
					t.Errorf("genus %d, want %d", g, c.genus)
				}
				base, _ := tb.bounded()
				var groups int32
				all := true
				cols, err := tb.newShell(base, weldRadii[0]).solveColumns(tb.Prisms, 0.01, &groups)
				if err != nil {
					t.Fatal(err)
				}
				for _, k := range cols {
					all = all && !k.slow
				}
				if c.name != "many" && all != c.columns {
					t.Errorf("taken as columns: %v", all)
				}
				probe(t, r, tb, m)
			}
		})
	}
}

// probe compares the mesh with the definition of the body at random places, by
// the solid angle that the mesh fills seen from there: 4 pi inside, 0 outside.
func probe(t *testing.T, r *rand.Rand, b Body, m *Mesh) {
	t.Helper()
	lo, hi := m.Bounds()
	for k := 0; k < 25; k++ {
		p := Vec{lo.X + r.Float64()*(hi.X-lo.X), lo.Y + r.Float64()*(hi.Y-lo.Y), lo.Z + r.Float64()*(hi.Z-lo.Z)}
		want, ok := b.holds(p, 1e-3)
		for _, q := range b.Prisms {
			x := q.Frame.In(p)
			at := outline.Point{X: x.X, Y: x.Y}
			// The facets lie within the chord of the true outline.
			if q.Outline.Distance(at) < 0.02 || math.Abs(x.Z-q.From) < 1e-3 || math.Abs(x.Z-q.To) < 1e-3 {
				ok = false
			} else if x.Z > q.From && x.Z < q.To && q.Outline.Contains(at, 0) == outline.Inside {
				want = false
			}
		}
		if !ok {
			continue
		}
		got := solidAngle(m, p) / (4 * math.Pi)
		if math.Abs(got-math.Round(got)) > 1e-6 || (math.Round(got) == 1) != want || math.Round(got) < 0 {
			t.Errorf("%v: inside %v, winding %g", p, want, got)
		}
	}
}

// solidAngle sums the solid angles of the triangles (van Oosterom and Strackee
// 1983: tan(a/2) = a.(b x c) / (abc + (a.b)c + (b.c)a + (c.a)b)).
func solidAngle(m *Mesh, p Vec) float64 {
	sum := 0.0
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]].Sub(p), m.Vertices[t[1]].Sub(p), m.Vertices[t[2]].Sub(p)
		la, lb, lc := a.Len(), b.Len(), c.Len()
		sum += 2 * math.Atan2(a.Dot(b.Cross(c)), la*lb*lc+a.Dot(b)*lc+b.Dot(c)*la+c.Dot(a)*lb)
	}
	return sum
}

func TestMeshThinWebs(t *testing.T) {
	// Webs from far above to far below the weld radius: the mesh is sound.
	for e := 1e-9; e < 0.1; e *= 1.3 {
		b := Body{Base: cuboid(0, 0, 0, 100, 100, 15)}
		b.Prisms = []Prism{through(circleAt(30, 50, 20)), through(rectOutline(40+e, 40, 60, 60))}
		m, err := b.Mesh(0.01)
		if err != nil {
			t.Errorf("web %g: %v", e, err)
			continue
		}
		if err := m.Check(); err != nil {
			t.Errorf("web %g: %v", e, err)
		}
	}
}

// TestWeldSweep is the trap of welding by cells or by the first point within
// r: a pocket's edge e off a rebate's shoulder, its depth off by e.
func TestWeldSweep(t *testing.T) {
	for i := 0; i < 400; i++ {
		e := 1e-9 * math.Pow(1e8, float64(i)/399)
		for _, s := range []float64{1, -1} {
			b := Body{Base: cuboid(0, 0, 0, 200, 150, 15), Cutters: []Cutter{
				{NewPlane(Vec{1, 0, 0}, 20), NewPlane(Vec{0, 0, -1}, -8)},
				cuboid(20+s*e, 40, 8+e, 60, 80, 16)[:5]}}
			m, err := b.Mesh(0.01)
			if err != nil {
				t.Fatalf("e = %g: %v", e, err)
			}
			if err := m.Check(); err != nil {
				t.Fatalf("e = %g: %v", e, err)
			}
			b.Prisms = []Prism{pocket(rectOutline(20+s*e, 90, 60, 120), 15, 7-e)}
			m, err = b.Mesh(0.01)
			if err == nil {
				err = m.Check()
			}
			if err != nil {
				t.Fatalf("prism, e = %g: %v", e, err)
			}
		}
	}
}

func TestMeshNearDegenerateEdges(t *testing.T) {
	// A hip solid on 100 x (100+e): its ridge is e long. Turned by any frame it
	// stays closed, and so with a cutter across the ridge.
	r := random(23)
	for e := 1e-2; e > 5e-10; e /= 10 {
		b := Body{Base: []Plane{NewPlane(Vec{0, 0, -1}, 0),
			NewPlane(Vec{1, 0, 1}, 100), NewPlane(Vec{-1, 0, 1}, 0),
			NewPlane(Vec{0, 1, 1}, 100+e), NewPlane(Vec{0, -1, 1}, 0)}}
		b.Cutters = []Cutter{{NewPlane(Vec{1, 0, 0}, 50), NewPlane(Vec{0, 0, -1}, -40), NewPlane(Vec{0, 1, 0}, 50)}}
		for turn := 0; turn < 5; turn++ {
			tb := turned(b, anyFrame(r))
			m := mustMesh(t, tb, 0.01)
			// Welding moves corners by up to e or 1e-4, on faces under 1e4 mm2.
			near(t, "volume", m.Volume(), VolumeOf(tb.Pieces()), 1)
		}
	}
}

func TestMeshSameBytes(t *testing.T) {
	b := board()
	b.Prisms = prismCases[len(prismCases)-1].prisms
	m, n := mustMesh(t, b, 0.01), mustMesh(t, b, 0.01)
	if len(m.Vertices) != len(n.Vertices) || len(m.Triangles) != len(n.Triangles) {
		t.Fatal("sizes differ")
	}
	for i := range m.Vertices {
		if m.Vertices[i] != n.Vertices[i] {
			t.Fatal("corners differ")
		}
	}
	for i := range m.Triangles {
		if m.Triangles[i] != n.Triangles[i] || m.Surface[i] != n.Surface[i] {
			t.Fatal("triangles differ")
		}
	}
}

func randomPrisms(r *rand.Rand, i int) Body {
	b := randomBody(r)
	f := anyFrame(r)
	if i%2 == 0 {
		f = World()
	}
	for k := r.IntN(4); k >= 0; k-- {
		var c outline.Contour
		x, y := r.Float64()*80-40, r.Float64()*80-40
		switch r.IntN(4) {
		case 0:
			c = circleAt(x, y, 2+10*r.Float64())
		case 1:
			c = slot(x, y, 30, 8)
		case 2:
			c = heart(x, y)
		default:
			c = star(x, y, 12)
		}
		p := Prism{f, c, math.Inf(-1), math.Inf(1)}
		p.Frame.O = Vec{}
		if r.IntN(2) == 0 {
			p.From = r.Float64()*60 - 30
		}
		b.Prisms = append(b.Prisms, p)
	}
	return b
}

// TestMeshBits pins the raw bits of meshes: they must be the same on every
// processor, fused multiply-add or not (GOAMD64=v3, arm64). A deliberate change
// of the algorithm changes the number; then put the new one here.
func TestMeshBits(t *testing.T) {
	h := fnv.New64a()
	word := func(x uint64) {
		var b [8]byte
		binary.LittleEndian.PutUint64(b[:], x)
		h.Write(b[:])
	}
	// A frame of the angles 3-4-5 and 5-12-13: nothing here is from a sine.
	u, v := Vec{0.6, 0.8, 0}, Vec{-0.8 * 12 / 13, 0.6 * 12 / 13, 5.0 / 13}
	f := Frame{Vec{7, -3, 11}, u, v, u.Cross(v)}
	for _, c := range prismCases {
		b := board()
		b.Prisms = c.prisms
		m := mustMesh(t, turned(b, f), 0.01)
		for _, p := range m.Vertices {
			word(math.Float64bits(p.X))
			word(math.Float64bits(p.Y))
			word(math.Float64bits(p.Z))
		}
		for i, k := range m.Triangles {
			word(uint64(k[0])<<40 | uint64(k[1])<<20 | uint64(k[2]))
			word(uint64(m.Surface[i]))
		}
		word(math.Float64bits(Overlap(b, turned(b, f))))
		word(math.Float64bits(Contact(b, turned(b, Frame{Vec{0, 0, 15}, Vec{1, 0, 0}, Vec{0, 1, 0}, Vec{0, 0, 1}}), 0)))
	}
	if got := h.Sum64(); got != 0x3f9b431e8c270e15 {
		t.Errorf("bits %#x", got)
	}
}

func TestMeshRandomPrisms(t *testing.T) {
	r := random(24)
	for i := 0; i < 250; i++ {
		b := randomPrisms(r, i)
		want := byPieces(b, 0.05)
		m, err := b.Mesh(0.05)
		if want < 1e-3 && errors.Is(err, ErrEmpty) {
			continue
		}
		if err != nil {
			t.Errorf("body %d: %v", i, err)
			continue
		}
		if err := m.Check(); err != nil {
			t.Errorf("body %d: %v", i, err)
			continue
		}
		near(t, "volume", m.Volume(), want, 1e-9*b.Convex().Volume())
	}
}
