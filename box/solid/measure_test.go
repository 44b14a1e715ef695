package solid

import (
	"errors"
	"math"
	"testing"

	"holt.example/box/outline"
)

// tetrahedron has the volume 1/6.
func tetrahedron() *Mesh {
	return &Mesh{
		Vertices:  []Vec{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
		Triangles: [][3]int32{{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}},
	}
}

func TestMeasures(t *testing.T) {
	m := tetrahedron()
	if err := m.Check(); err != nil {
		t.Fatal(err)
	}
	near(t, "volume", m.Volume(), 1.0/6, 1e-15)
	near(t, "area", m.Area(), 1.5+math.Sqrt(3)/2, 1e-15)
	if c := m.Centroid(); c.Sub(Vec{0.25, 0.25, 0.25}).Len() > 1e-15 {
		t.Errorf("centroid %v", c)
	}
	lo, hi := m.Bounds()
	if lo != (Vec{}) || hi != (Vec{1, 1, 1}) {
		t.Errorf("bounds %v %v", lo, hi)
	}
	if m.Genus() != 0 || m.Components() != 1 || len(m.Edges()) != 6 {
		t.Errorf("genus %d, components %d, edges %d", m.Genus(), m.Components(), len(m.Edges()))
	}
	var none Mesh
	if none.Volume() != 0 || none.Area() != 0 || none.Centroid() != (Vec{}) {
		t.Error("the empty mesh has a size")
	}
}

func TestCheckFinds(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(m *Mesh)
		want  error
	}{
		{"a number", func(m *Mesh) { m.Vertices[2].Y = math.NaN() }, ErrNumber},
		{"an index", func(m *Mesh) { m.Triangles[1][2] = 4 }, ErrIndex},
		{"a hole", func(m *Mesh) { m.Triangles = m.Triangles[:3] }, ErrOpen},
		{"a flipped triangle", func(m *Mesh) { t := &m.Triangles[3]; t[0], t[1] = t[1], t[0] }, ErrOpen},
		{"all flipped", func(m *Mesh) {
			for i := range m.Triangles {
				t := &m.Triangles[i]
				t[0], t[1] = t[1], t[0]
			}
		}, ErrInsideOut},
		{"no area", func(m *Mesh) { m.Vertices[3] = Vec{0.5, 1e-10, 0} }, ErrDegenerate},
		{"two sheets", func(m *Mesh) {
			// A second tetrahedron on the edge from 0 to 3.
			m.Vertices = append(m.Vertices, Vec{-1, 0, 0}, Vec{0, -1, 0})
			m.Triangles = append(m.Triangles, [3]int32{0, 5, 4}, [3]int32{0, 4, 3}, [3]int32{0, 3, 5}, [3]int32{4, 5, 3})
		}, ErrNotManifold},
		{"a junction", func(m *Mesh) {
			// A second tetrahedron stands with its tip on the middle of an edge.
			m.Vertices = append(m.Vertices, Vec{0.5, 0.5, 0}, Vec{2, 2, 0}, Vec{2, 3, 0}, Vec{2, 2, 1})
			for _, t := range m.Triangles[:4:4] {
				m.Triangles = append(m.Triangles, [3]int32{t[0] + 4, t[1] + 4, t[2] + 4})
			}
		}, ErrJunction},
	} {
		m := tetrahedron()
		c.spoil(m)
		if err := m.Check(); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}

func TestEdges(t *testing.T) {
	n := outline.CircleSteps(16, 0.01)
	b := Body{Base: cuboid(0, 0, 0, 200, 150, 15)}
	b.Prisms = []Prism{through(circleAt(90, 70, 32))}
	count := func(m *Mesh) (hard, smooth int) {
		for _, e := range m.Edges() {
			if e.Smooth {
				smooth++
			} else {
				hard++
			}
			l, r := m.Triangles[e.Left], m.Triangles[e.Right]
			if !runs(l, e.A, e.B) || !runs(r, e.B, e.A) {
				t.Errorf("edge %v: triangles %v %v", e, l, r)
			}
		}
		return hard, smooth
	}
	// 12 arrises and the two rims of the hole; its facets' sides are smooth.
	m := mustMesh(t, b, 0.01)
	if hard, smooth := count(m); hard != 12+2*n || smooth != n {
		t.Errorf("hole: %d hard, %d smooth, want %d, %d", hard, smooth, 12+2*n, n)
	}
	// The same when the hole is cut into facets, as where it crosses a notch of
	// another prism: hole and slot of equal width.
	for _, c := range []struct {
		name string
		o    outline.Contour
		want int // sharp edges along the wall
	}{
		{"slot", slot(90, 70, 40, 16), 0},
		{"square", rectOutline(80, 60, 100, 80), 4},
		// The heart is sharp at its point and its notch; the arcs run on from
		// the lines at an angle.
		{"heart", heart(90, 70), 4},
		{"half round", outline.Contour{{X: 80, Y: 70}, {X: 100, Y: 70, Bulge: 1}}, 2},
	} {
		for _, o := range []outline.Contour{c.o, c.o.Reverse()} {
			b.Prisms = []Prism{through(o)}
			m := mustMesh(t, b, 0.01)
			walls := 0
			for _, e := range m.Edges() {
				d := m.Vertices[e.B].Sub(m.Vertices[e.A])
				if p := m.Vertices[e.A]; !e.Smooth && math.Abs(d.Z) > 1 && p.X > 1 && p.X < 199 {
					walls++
				}
			}
			if walls != c.want {
				t.Errorf("%s: %d sharp edges, want %d", c.name, walls, c.want)
			}
		}
	}
	// Without surfaces, by angle: a cuboid has 12.
	m = mustMesh(t, Body{Base: cuboid(0, 0, 0, 200, 150, 15)}, 0.01)
	m.Surface, m.Surfaces = nil, nil
	if hard, smooth := count(m); hard != 12 || smooth != 0 {
		t.Errorf("bare cuboid: %d, %d", hard, smooth)
	}
}

func runs(t [3]int32, a, b int32) bool {
	return t[0] == a && t[1] == b || t[1] == a && t[2] == b || t[2] == a && t[0] == b
}

func TestSurfaces(t *testing.T) {
	// Every triangle lies in its surface and faces its way.
	b := board()
	b.Prisms = prismCases[len(prismCases)-1].prisms
	r := random(41)
	for i := 0; i < 10; i++ {
		m := mustMesh(t, turned(b, anyFrame(r)), 0.01)
		at := make([]Vec, len(m.Surfaces))
		seen := make([]bool, len(m.Surfaces))
		for k, tri := range m.Triangles {
			s := m.Surface[k]
			n := m.Surfaces[s].N
			p := m.Vertices[tri[0]]
			if !seen[s] {
				seen[s], at[s] = true, p
			}
			for _, v := range tri {
				near(t, "off its surface", n.Dot(m.Vertices[v].Sub(at[s])), 0, 1e-6)
			}
			if d := m.cross(tri).Unit().Dot(n); d < 0.999 {
				t.Errorf("triangle %d faces %g of its surface", k, d)
			}
		}
		for s, ok := range seen {
			if !ok {
				t.Errorf("surface %d has no triangles", s)
			}
		}
	}
}

func TestMoved(t *testing.T) {
	r := random(42)
	m := mustMesh(t, board(), 0.01)
	from, to := anyFrame(r), anyFrame(r)
	k := m.Moved(from, to)
	if err := k.Check(); err != nil {
		t.Fatal(err)
	}
	near(t, "volume", k.Volume(), m.Volume(), 1e-6)
	near(t, "surface", k.Area(), m.Area(), 1e-6)
	if d := to.In(k.Centroid()).Sub(from.In(m.Centroid())); d.Len() > 1e-9 {
		t.Errorf("centroid off by %v", d)
	}
	n := k.Moved(to, from)
	for i := range n.Vertices {
		if n.Vertices[i].Sub(m.Vertices[i]).Len() > 1e-10 {
			t.Fatalf("corner %d: %v", i, n.Vertices[i])
		}
	}
}
