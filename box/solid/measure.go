package solid

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Volume is the enclosed volume, mm3.
func (m *Mesh) Volume() float64 {
	v, o := 0.0, m.origin()
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]].Sub(o), m.Vertices[t[1]].Sub(o), m.Vertices[t[2]].Sub(o)
		v += a.Dot(b.Cross(c))
	}
	return v / 6
}

// Area is the area of the surface, mm2.
func (m *Mesh) Area() float64 {
	a := 0.0
	for _, t := range m.Triangles {
		a += m.cross(t).Len()
	}
	return a / 2
}

// Centroid is the centre of mass of an even material. That of an empty mesh is
// the origin.
func (m *Mesh) Centroid() Vec {
	var s Vec
	v, o := 0.0, m.origin()
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]].Sub(o), m.Vertices[t[1]].Sub(o), m.Vertices[t[2]].Sub(o)
		k := a.Dot(b.Cross(c))
		v += k
		s = s.Add(a.Add(b).Add(c).Scale(k))
	}
	if v == 0 {
		return o
	}
	return o.Add(s.Scale(1 / (4 * v)))
}

// Bounds is the axis-parallel box around the mesh; of an empty one lo is above
// hi.
func (m *Mesh) Bounds() (lo, hi Vec) {
	if len(m.Vertices) == 0 {
		return Convex{}.Bounds()
	}
	return boundsOf(m.Vertices)
}

// origin is a place near the mesh, from which sums lose less to rounding.
func (m *Mesh) origin() Vec {
	if len(m.Vertices) == 0 {
		return Vec{}
	}
	lo, hi := m.Bounds()
	return lo.Lerp(hi, 0.5)
}

// cross is twice the area of a triangle times its outward normal.
func (m *Mesh) cross(t [3]int32) Vec {
	a := m.Vertices[t[0]]
	return m.Vertices[t[1]].Sub(a).Cross(m.Vertices[t[2]].Sub(a))
}

// Moved is the mesh carried from one frame to another, as a board from the box
// to the bench: what lies at a place in from lies at the same place in to. Both
// frames must be right-handed.
func (m *Mesh) Moved(from, to Frame) *Mesh {
	out := &Mesh{
		Vertices:  make([]Vec, len(m.Vertices)),
		Triangles: slices.Clone(m.Triangles),
		Surface:   slices.Clone(m.Surface),
		Surfaces:  slices.Clone(m.Surfaces),
	}
	for i, p := range m.Vertices {
		out.Vertices[i] = to.Out(from.In(p))
	}
	from.O, to.O = Vec{}, Vec{}
	for i := range out.Surfaces {
		out.Surfaces[i].N = to.Out(from.In(out.Surfaces[i].N))
	}
	return out
}

// Faults that Check finds.
var (
	ErrNumber = errors.New("solid: a corner is not a finite number")
	ErrIndex  = errors.New("solid: a triangle has no such corner")
	// ErrNotManifold says that more than two triangles have an edge in common.
	ErrNotManifold = errors.New("solid: more than two triangles meet in an edge")
	ErrDegenerate  = errors.New("solid: a triangle has no area")
	ErrJunction    = errors.New("solid: a corner lies in the middle of an edge")
	ErrInsideOut   = errors.New("solid: the mesh is inside out")
)

// Check proves the mesh a solid: corners finite, every edge used once in each
// direction, no triangle lower than 1e-9 mm, no corner in the middle of an edge
// (within 1e-7 mm), volume above 0. It gives the first fault as one of the
// Err... values, wrapped with the place.
func (m *Mesh) Check() error {
	for i, p := range m.Vertices {
		if s := p.X + p.Y + p.Z; math.IsNaN(s) || math.IsInf(s, 0) {
			return fmt.Errorf("%w: corner %d is %v", ErrNumber, i, p)
		}
	}
	n := int32(len(m.Vertices))
	for i, t := range m.Triangles {
		for _, v := range t {
			if v < 0 || v >= n {
				return fmt.Errorf("%w: triangle %d, corner %d of %d", ErrIndex, i, v, n)
			}
		}
		l := 0.0
		for k := range t {
			l = max(l, m.Vertices[t[(k+1)%3]].Sub(m.Vertices[t[k]]).Len())
		}
		if !(m.cross(t).Len() > flatHeight*l) {
			return fmt.Errorf("%w: triangle %d at %v", ErrDegenerate, i, m.Vertices[t[0]])
		}
	}
	edges := m.halfEdges()
	for lo := 0; lo < len(edges); {
		hi, sum := lo, 0
		for ; hi < len(edges) && edges[hi].a == edges[lo].a && edges[hi].b == edges[lo].b; hi++ {
			sum += edges[hi].sense()
		}
		switch at := m.Vertices[edges[lo].a]; {
		case sum != 0:
			return fmt.Errorf("%w: edge at %v has %d triangles", ErrOpen, at, hi-lo)
		case hi-lo != 2:
			return fmt.Errorf("%w: edge at %v has %d triangles", ErrNotManifold, at, hi-lo)
		}
		lo = hi
	}
	lines := newLiners(m.Vertices, SideTest)
	for i := 0; i < len(edges); i += 2 {
		for _, h := range lines.between(edges[i].a, edges[i].b) {
			// The corners of the edge's own triangles have been measured above.
			if !slices.Contains(m.Triangles[edges[i].tri][:], h.v) && !slices.Contains(m.Triangles[edges[i+1].tri][:], h.v) {
				return fmt.Errorf("%w: %v", ErrJunction, m.Vertices[h.v])
			}
		}
	}
	if !(m.Volume() > 0) {
		return fmt.Errorf("%w: volume %g", ErrInsideOut, m.Volume())
	}
	return nil
}

// halfEdge is a side of a triangle, a < b; it runs from a to b if up.
type halfEdge struct {
	a, b, tri int32
	up        bool
}

func (h halfEdge) sense() int {
	if h.up {
		return 1
	}
	return -1
}

// halfEdges are all sides of triangles, sorted by their ends.
func (m *Mesh) halfEdges() []halfEdge {
	out := make([]halfEdge, 0, 3*len(m.Triangles))
	for i, t := range m.Triangles {
		for k := range t {
			h := halfEdge{t[k], t[(k+1)%3], int32(i), true}
			if h.a > h.b {
				h.a, h.b, h.up = h.b, h.a, false
			}
			out = append(out, h)
		}
	}
	slices.SortFunc(out, func(x, y halfEdge) int {
		switch {
		case x.a != y.a:
			return int(x.a - y.a)
		case x.b != y.b:
			return int(x.b - y.b)
		}
		return int(x.tri - y.tri)
	})
	return out
}
