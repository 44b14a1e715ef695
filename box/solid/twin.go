package solid

import "slices"

// manyEdges is how many edges a surface must have for a look whether the one
// opposite has the same.
const manyEdges = 200

// faceOf is a large surface: the other face of a board with through holes alone
// has the same edges, shifted square to it, and need not be triangulated again.
type faceOf struct {
	n     Vec
	drop  int // the axis that n is nearest to
	surf  int32
	from  int           // its first triangle
	edges [][2]int32    // first those of the net, sorted, then those of columns
	at    map[Vec]int32 // the corners of the net
}

// netEdges is how many of the edges of a surface are of the net; they come first.
func (m *mesher) netEdges(edges [][2]int32) int {
	n := 0
	for n < len(edges) && int(edges[n][0]) < len(m.net.at) {
		n++
	}
	return n
}

// flatten puts a place on the plane square to an axis.
func flatten(p Vec, axis int) Vec {
	switch axis {
	case 0:
		p.X = 0
	case 1:
		p.Y = 0
	default:
		p.Z = 0
	}
	return p
}

func byEnds(x, y [2]int32) int {
	if x[0] != y[0] {
		return int(x[0] - y[0])
	}
	return int(x[1] - y[1])
}

// note remembers a surface that is about to be triangulated.
func (m *mesher) note(surf int32, edges [][2]int32) {
	n := m.mesh.Surfaces[surf].N
	x, y := dropAxis(n)
	f := &faceOf{n: n, drop: 3 - x - y, surf: surf, from: len(m.mesh.Triangles), edges: slices.Clone(edges), at: map[Vec]int32{}}
	own := f.edges[:m.netEdges(edges)]
	slices.SortFunc(own, byEnds)
	for _, e := range own {
		f.at[flatten(m.mesh.Vertices[e[0]], f.drop)] = e[0]
	}
	m.face = f
}

// again gives a surface the triangles of the last large one, turned over, if
// every corner lies exactly opposite one of that and the edges are the same.
func (m *mesher) again(surf int32, edges [][2]int32) bool {
	f := m.face
	if f == nil || len(edges) != len(f.edges) || !opposite(m.mesh.Surfaces[surf].N, f.n) {
		return false
	}
	n := m.netEdges(edges)
	if n != m.netEdges(f.edges) {
		return false
	}
	// local is the opposite corner, here, both ways.
	m.back = m.back[:0]
	defer m.forget()
	link := func(v, o int32) bool {
		if m.local[v] < 0 && m.local[o] < 0 && flatten(m.mesh.Vertices[v], f.drop) == flatten(m.mesh.Vertices[o], f.drop) {
			m.local[v], m.local[o] = o, v
			m.back = append(m.back, v, o)
		}
		return m.local[v] == o
	}
	own := make([][2]int32, n)
	for i, e := range edges[:n] {
		a, ok := f.at[flatten(m.mesh.Vertices[e[0]], f.drop)]
		b, too := f.at[flatten(m.mesh.Vertices[e[1]], f.drop)]
		if !ok || !too || !link(e[0], a) || !link(e[1], b) {
			return false
		}
		own[i] = [2]int32{b, a}
	}
	slices.SortFunc(own, byEnds)
	if !slices.Equal(own, f.edges[:n]) {
		return false
	}
	// Columns come in the same order on all surfaces.
	for i, e := range edges[n:] {
		if o := f.edges[n+i]; !link(e[0], o[1]) || !link(e[1], o[0]) {
			return false
		}
	}
	for i := f.from; m.mesh.Surface[i] == f.surf; i++ {
		t := m.mesh.Triangles[i]
		m.mesh.Triangles = append(m.mesh.Triangles, [3]int32{m.local[t[0]], m.local[t[2]], m.local[t[1]]})
		m.mesh.Surface = append(m.mesh.Surface, surf)
	}
	return true
}
