package solid

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Errors of Mesh.
var (
	// ErrOpen says that the surface could not be closed.
	ErrOpen = errors.New("solid: surface does not close")
	// ErrUnbounded says that the base has no end.
	ErrUnbounded = errors.New("solid: base is not bounded")
	// ErrEmpty says that nothing is left of the body.
	ErrEmpty = errors.New("solid: nothing is left")
)

// mesher builds one mesh.
type mesher struct {
	s     *shell
	cols  []column
	of    []int32 // surface of the mesh by surface of the shell
	net   net
	slits [][2]int32
	extra []edge // edges of the columns' rings
	mesh  *Mesh
	sweep sweeper
	flips flipper
	local []int32 // local number of a corner in the surface at hand
	back  []int32 // corner by local number
	face  *faceOf
}

// Mesh triangulates the surface of the body. Round outlines become facets that
// lie within chord mm of the true curve and enclose its true area. Nothing is
// rounded; triangles of a plane are Delaunay within its outlines.
//
// Where material meets along an edge or in a corner only, as between two through
// holes that touch, it is parted: several corners lie in the same place then. A
// board that hangs together by such an edge alone is two pieces: see Islands.
//
// Errors are ErrUnbounded, ErrEmpty, and ErrCrossing for outlines that cross
// themselves; test with errors.Is. Where many surfaces come within some 1e-5 mm of
// each other without being parallel, ErrOpen and ErrDegenerate are possible too.
func (b Body) Mesh(chord float64) (*Mesh, error) {
	base, err := b.bounded()
	if err != nil {
		return nil, err
	}
	// A short edge is an edge: what need not be welded is not, and keeps its
	// volume. Where planes meet at small angles corners scatter more.
	var m *Mesh
	for _, r := range weldRadii {
		if m, err = b.mesh(b.newShell(base, r), chord); err == nil || errors.Is(err, ErrEmpty) {
			break
		}
	}
	return m, err
}

// mesh is the mesh of b over its shell.
func (b Body) mesh(s *shell, chord float64) (*Mesh, error) {
	m := &mesher{s: s, mesh: &Mesh{}}
	var groups int32
	var err error
	if m.cols, err = m.s.solveColumns(b.Prisms, chord, &groups); err != nil {
		return nil, err
	}
	m.s.build(nil)
	m.merge()
	m.net = gather(m.s.frags, m.of, s.weld)
	touch, err := m.net.closed()
	if err != nil {
		return nil, err
	}
	m.net.straighten()
	touch = touch || m.net.pinched()
	m.slits = m.net.slits(m.mesh.Surfaces, s.weld)
	m.mesh.Vertices = m.net.at
	m.columns()
	if err := m.triangulate(); err != nil {
		return nil, err
	}
	touch = touch || len(m.slits) > 0 || m.mesh.crowded(int32(len(m.net.at)))
	m.mesh.compact()
	if len(m.mesh.Triangles) == 0 {
		return nil, ErrEmpty
	}
	if touch {
		m.mesh.part()
	}
	return m.mesh, nil
}

// bounded is the base, or why there is none.
func (b Body) bounded() (Convex, error) {
	for i, p := range b.Prisms {
		if !p.valid() {
			return Convex{}, fmt.Errorf("solid: prism %d: frame not right-handed and square, or numbers out of range", i)
		}
	}
	if r := b.kept(); r != nil {
		return r.solid, r.err
	}
	base := b.Convex()
	return base, b.fault(base)
}

// fault tells why there is no body of this base, or nil; prisms are not looked at.
func (b Body) fault(base Convex) error {
	for i, h := range b.Base {
		if !h.valid() {
			return fmt.Errorf("solid: base plane %d is not a plane: %v", i, h)
		}
	}
	for k, c := range b.Cutters {
		for i, h := range c {
			if !h.valid() {
				return fmt.Errorf("solid: plane %d of cutter %d is not a plane: %v", i, k, h)
			}
		}
	}
	if base.Empty() {
		return ErrEmpty
	}
	for _, f := range base.Faces {
		if f.ID < 0 {
			return ErrUnbounded
		}
	}
	return nil
}

func (h Plane) valid() bool {
	l := h.N.Dot(h.N)
	return l > 0.99 && l < 1.01 && math.Abs(h.D) < 1e9
}

// valid: a right-handed frame, square and to scale within 1e-6, and numbers.
func (p Prism) valid() bool {
	f := p.Frame
	for _, d := range [3]Vec{f.U.Cross(f.V).Sub(f.W), f.V.Cross(f.W).Sub(f.U), {f.W.Len() - 1, 0, 0}} {
		if !(d.Dot(d) < 1e-12) {
			return false
		}
	}
	for _, v := range p.Outline {
		if !(math.Abs(v.X) <= farthest && math.Abs(v.Y) <= farthest && math.Abs(v.Bulge) <= farthest) {
			return false
		}
	}
	return f.O.Dot(f.O) < 1e18 && p.From <= p.To
}

// solveColumns finds the spans of the prisms that are columns, and makes the
// others cutters of the shell.
func (s *shell) solveColumns(prisms []Prism, chord float64, groups *int32) ([]column, error) {
	if len(prisms) == 0 {
		return nil, nil
	}
	cols := s.newColumns(prisms, chord, groups)
	relate(cols)
	v := solver{s: s, cols: cols, base: s.planes()[:len(s.base.Faces)]}
	for k := range cols {
		if !cols[k].slow && !v.solve(k) {
			cols[k].slow = true
		}
		if cols[k].slow {
			cols[findGroup(cols, int32(k))].slow = true
		}
	}
	for k := range cols {
		c := &cols[k]
		if !cols[findGroup(cols, int32(k))].slow {
			continue
		}
		c.slow, c.spans = true, nil
		cutters, smooth, ok := c.p.split(c.pts, c.foot, c.smooth)
		if !ok {
			return nil, fmt.Errorf("%w (prism %d)", ErrCrossing, k)
		}
		for i := range cutters {
			s.addCut(cutters[i], smooth[i])
		}
	}
	return cols, nil
}

// merge gives coplanar surfaces of the shell one surface in the mesh.
func (m *mesher) merge() {
	s := m.s
	d := make([]float64, len(s.surfs))
	seen := make([]bool, len(s.surfs))
	var order []int32
	for _, f := range s.frags {
		if !seen[f.surf] {
			seen[f.surf] = true
			d[f.surf] = s.surfs[f.surf].N.Dot(f.loop[0])
			order = append(order, f.surf)
		}
	}
	m.of = make([]int32, len(s.surfs))
	for i := range m.of {
		m.of[i] = -1
	}
	for _, i := range order {
		m.of[i] = int32(len(m.mesh.Surfaces))
		m.mesh.Surfaces = append(m.mesh.Surfaces, s.surfs[i])
	}
	sortByKey(order, d)
	for k, i := range order {
		for j := k - 1; j >= 0 && d[order[j]] >= d[i]-planeGap; j-- {
			n := s.surfs[i].N.Sub(s.surfs[order[j]].N)
			if n.Dot(n) <= parallelGap*parallelGap {
				m.of[i] = m.of[order[j]]
				break
			}
		}
	}
}

// columns adds the corners, walls and rings of the columns.
func (m *mesher) columns() {
	n := 0
	for k := range m.cols {
		n += 2 * len(m.cols[k].foot) * len(m.cols[k].spans)
	}
	m.mesh.Vertices = slices.Grow(m.mesh.Vertices, n)
	m.mesh.Surfaces = slices.Grow(m.mesh.Surfaces, n/2+len(m.cols))
	m.extra = make([]edge, 0, n)
	// The walls, and about as many triangles as edges on the surfaces.
	n += n + len(m.net.edges) + 2*len(m.cols) + 16
	m.mesh.Triangles = make([][3]int32, 0, n)
	m.mesh.Surface = make([]int32, 0, n)
	for k := range m.cols {
		c := &m.cols[k]
		if len(c.spans) == 0 {
			continue
		}
		n := int32(len(c.foot))
		wall := int32(len(m.mesh.Surfaces))
		for i, p := range c.foot {
			d := c.foot[(i+1)%len(c.foot)].Sub(p)
			m.mesh.Surfaces = append(m.mesh.Surfaces, Surface{N: c.p.Frame.W.Cross(d).Unit(), Smooth: c.smooth[i]})
		}
		for _, s := range c.spans {
			at := int32(len(m.mesh.Vertices))
			for i, p := range c.foot {
				m.mesh.Vertices = append(m.mesh.Vertices, p.Add(c.p.Frame.W.Scale(s.lo[i])))
			}
			for i, p := range c.foot {
				m.mesh.Vertices = append(m.mesh.Vertices, p.Add(c.p.Frame.W.Scale(s.hi[i])))
			}
			bottom, top := m.surface(s.bottom), m.surface(s.top)
			for i := int32(0); i < n; i++ {
				j := i + 1
				if j == n {
					j = 0
				}
				m.extra = append(m.extra, edge{at + i, at + j, bottom}, edge{at + n + j, at + n + i, top})
				m.mesh.Triangles = append(m.mesh.Triangles,
					[3]int32{at + j, at + i, at + n + i}, [3]int32{at + j, at + n + i, at + n + j})
				m.mesh.Surface = append(m.mesh.Surface, wall+i, wall+i)
			}
		}
	}
}

// surface is the surface of the mesh for the label of a span's end.
func (m *mesher) surface(label int32) int32 {
	if label >= 0 {
		return m.of[label]
	}
	k := (-2 - label) / 2
	c := &m.cols[k]
	id, n := &c.capFrom, c.p.Frame.W
	if label == toLabel(k) {
		id, n = &c.capTo, n.Scale(-1)
	}
	if *id < 0 {
		*id = int32(len(m.mesh.Surfaces))
		m.mesh.Surfaces = append(m.mesh.Surfaces, Surface{N: n})
	}
	return *id
}
