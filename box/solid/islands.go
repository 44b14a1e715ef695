package solid

// crumb is the area, mm2, under which two pieces do not hang together.
const crumb = 1e-3

// Islands is the number of separate pieces of material that the body is; above
// 1 a board falls apart. What meets along an edge or in a corner only is
// separate, as in the mesh. Prisms are not taken out.
func (b Body) Islands() int {
	cells := b.Pieces()
	if len(cells) < 2 {
		return len(cells)
	}
	lo, hi := make([]Vec, len(cells)), make([]Vec, len(cells))
	up := make([]int, len(cells)) // union-find
	for i := range cells {
		lo[i], hi[i] = cells[i].Bounds()
		up[i] = i
	}
	find := func(i int) int {
		for up[i] != i {
			up[i] = up[up[i]]
			i = up[i]
		}
		return i
	}
	n := len(cells)
	var s shell
	for i := range cells {
		for j := range i {
			p, q := find(i), find(j)
			if p == q || apart(lo[i], hi[i], lo[j], hi[j]) || !s.hang(cells[i], cells[j]) {
				continue
			}
			up[max(p, q)] = min(p, q)
			n--
		}
	}
	return n
}

// hang reports whether two disjoint solids have part of a face in common.
func (s *shell) hang(a, b Convex) bool {
	for i := range a.Faces {
		f := &a.Faces[i]
		for k := range b.Faces {
			g := &b.Faces[k]
			if !opposite(f.N, g.N) {
				continue
			}
			d := f.N.Dot(g.Loop[0].Sub(f.Loop[0]))
			if !(d >= -planeGap && d <= planeGap) {
				continue
			}
			s.mem = s.mem[:0]
			if s.shared(f.Loop, g.Loop, f.N) > crumb {
				return true
			}
		}
	}
	return false
}
