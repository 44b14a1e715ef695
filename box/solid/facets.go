package solid

import (
	"fmt"
	"math"
	"slices"
)

// triangulate fills every surface of the mesh but the columns' walls.
func (m *mesher) triangulate() error {
	// All edges by surface.
	count := make([]int32, len(m.mesh.Surfaces)+1)
	for _, e := range m.net.edges {
		count[e.surf+1]++
	}
	for _, e := range m.extra {
		count[e.surf+1]++
	}
	for i := 1; i < len(count); i++ {
		count[i] += count[i-1]
	}
	all := make([][2]int32, count[len(count)-1])
	fill := append([]int32(nil), count...)
	put := func(e edge) {
		all[fill[e.surf]] = [2]int32{e.a, e.b}
		fill[e.surf]++
	}
	for _, e := range m.net.edges {
		put(e)
	}
	for _, e := range m.extra {
		put(e)
	}
	m.local = make([]int32, len(m.mesh.Vertices))
	for i := range m.local {
		m.local[i] = -1
	}
	for i := range m.mesh.Surfaces {
		edges := all[count[i]:count[i+1]]
		if len(edges) == 0 || m.again(int32(i), edges) {
			continue
		}
		if len(edges) >= manyEdges {
			m.note(int32(i), edges)
		}
		if err := m.fill(int32(i), edges); err != nil {
			return fmt.Errorf("%w (in the plane with normal %.4g %.4g %.4g)", err,
				m.mesh.Surfaces[i].N.X, m.mesh.Surfaces[i].N.Y, m.mesh.Surfaces[i].N.Z)
		}
	}
	return nil
}

// fill triangulates one surface; it renumbers the edges.
func (m *mesher) fill(surf int32, edges [][2]int32) error {
	n := m.mesh.Surfaces[surf].N
	s := &m.sweep
	s.x, s.y, m.back = s.x[:0], s.y[:0], m.back[:0]
	// The sweep drops the axis along which the surface faces most, so that equal
	// coordinates stay equal.
	ax, ay := dropAxis(n)
	for i := range edges {
		for k, v := range edges[i] {
			if m.local[v] < 0 {
				m.local[v] = int32(len(m.back))
				m.back = append(m.back, v)
				p := m.mesh.Vertices[v]
				s.x, s.y = append(s.x, coord(p, ax)), append(s.y, coord(p, ay))
			}
			edges[i][k] = m.local[v]
		}
	}
	slits := m.slitsIn(edges)
	err := s.run(edges)
	if err != nil && len(slits) > 0 {
		// The slit meets something else of the surface: do without.
		edges = slices.DeleteFunc(edges, func(e [2]int32) bool {
			return slices.Contains(slits, [2]int32{min(e[0], e[1]), max(e[0], e[1])})
		})
		slits = nil
		err = s.run(edges)
	}
	if err == nil {
		m.flips.fixed = slits
		if len(s.tri) > 1 {
			if p := coord(n, 3-ax-ay); math.Abs(p) < 1-1e-12 {
				m.trueShape(n)
			}
			m.flips.run(s.tri, s.x, s.y)
		}
		if m.flips.needle(s.tri, s.x, s.y) {
			err = ErrDegenerate
		}
		for _, t := range s.tri {
			m.mesh.Triangles = append(m.mesh.Triangles, [3]int32{m.back[t[0]], m.back[t[1]], m.back[t[2]]})
			m.mesh.Surface = append(m.mesh.Surface, surf)
		}
	}
	m.forget()
	return err
}

// forget makes the local numbers of the surface at hand free again.
func (m *mesher) forget() {
	for _, v := range m.back {
		m.local[v] = -1
	}
}

// slitsIn are the slits among the edges of a surface, low corner first.
func (m *mesher) slitsIn(edges [][2]int32) (out [][2]int32) {
	for _, s := range m.slits {
		a, b := m.local[s[0]], m.local[s[1]]
		if slices.Contains(edges, [2]int32{a, b}) && slices.Contains(edges, [2]int32{b, a}) {
			out = append(out, [2]int32{min(a, b), max(a, b)})
		}
	}
	return out
}

// dropAxis gives the two axes to look at a surface along, anticlockwise kept.
func dropAxis(n Vec) (x, y int) {
	ax, ay, az := math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)
	switch {
	case az >= ax && az >= ay:
		x, y = 0, 1
		ax = n.Z
	case ax >= ay:
		x, y = 1, 2
		ax = n.X
	default:
		x, y = 2, 0
		ax = n.Y
	}
	if ax < 0 {
		x, y = y, x
	}
	return x, y
}

// trueShape replaces the sweep's coordinates by such of the plane itself.
func (m *mesher) trueShape(n Vec) {
	u := Vec{n.Y, -n.X, 0}
	if math.Abs(n.Z) > 0.9 {
		u = Vec{0, n.Z, -n.Y}
	}
	u = u.Unit()
	v := n.Cross(u)
	s := &m.sweep
	o := m.mesh.Vertices[m.back[0]]
	for i, g := range m.back {
		d := m.mesh.Vertices[g].Sub(o)
		s.x[i], s.y[i] = u.Dot(d), v.Dot(d)
	}
}

// compact drops the corners and surfaces that no triangle uses.
func (m *Mesh) compact() {
	used := make([]int32, len(m.Vertices))
	for _, t := range m.Triangles {
		for _, v := range t {
			used[v] = 1
		}
	}
	n := int32(0)
	for v, u := range used {
		if u > 0 {
			m.Vertices[n] = m.Vertices[v]
			used[v] = n
			n++
		}
	}
	m.Vertices = m.Vertices[:n]
	for i := range m.Triangles {
		for k, v := range m.Triangles[i] {
			m.Triangles[i][k] = used[v]
		}
	}
	live := make([]int32, len(m.Surfaces))
	for _, s := range m.Surface {
		live[s] = 1
	}
	n = 0
	for s, u := range live {
		if u > 0 {
			m.Surfaces[n] = m.Surfaces[s]
			live[s] = n
			n++
		}
	}
	m.Surfaces = m.Surfaces[:n]
	for i, s := range m.Surface {
		m.Surface[i] = live[s]
	}
}
