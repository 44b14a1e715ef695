package solid

// Edge is an edge of a mesh between two of its flat surfaces: a line to draw.
type Edge struct {
	A, B        int32 // corners
	Left, Right int32 // triangles, seen from outside on the way from A to B
	// Smooth is set between two facets of one curved wall: a line that is not
	// there on the true solid.
	Smooth bool
}

// Edges are all edges between different surfaces, A < B, in the order of A and
// B. Edges inside a surface, which only part its triangles, are left out. In a
// mesh without surfaces every edge between triangles that are not coplanar
// counts. The mesh must be closed.
func (m *Mesh) Edges() []Edge {
	var out []Edge
	h := m.halfEdges()
	for i := 0; i+1 < len(h); i += 2 {
		l, r := h[i], h[i+1]
		if !l.up {
			l, r = r, l
		}
		e := Edge{A: l.a, B: l.b, Left: l.tri, Right: r.tri}
		if len(m.Surface) == len(m.Triangles) {
			s, t := m.Surface[l.tri], m.Surface[r.tri]
			if s == t {
				continue
			}
			g := m.Surfaces[s].Smooth
			e.Smooth = g != 0 && g == m.Surfaces[t].Smooth
		} else {
			n, k := m.cross(m.Triangles[l.tri]).Unit(), m.cross(m.Triangles[r.tri]).Unit()
			if n.Sub(k).Len() <= parallelGap {
				continue
			}
		}
		out = append(out, e)
	}
	return out
}

// Components is the number of separate pieces of the mesh.
func (m *Mesh) Components() int {
	up := make([]int32, len(m.Vertices))
	for i := range up {
		up[i] = int32(i)
	}
	find := func(i int32) int32 {
		for up[i] != i {
			up[i] = up[up[i]]
			i = up[i]
		}
		return i
	}
	n := len(up)
	for _, t := range m.Triangles {
		for _, v := range t[1:] {
			if a, b := find(t[0]), find(v); a != b {
				up[max(a, b)] = min(a, b)
				n--
			}
		}
	}
	return n
}

// Genus is the number of through holes of a closed mesh, over all its pieces,
// by Euler's formula: V - E + F = 2 (pieces - genus).
func (m *Mesh) Genus() int {
	f := len(m.Triangles)
	return m.Components() - (len(m.Vertices)-f*3/2+f)/2
}
