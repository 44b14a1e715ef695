package solid

import (
	"cmp"
	"math"
	"slices"
)

// Where two hollows touch along an edge, or a corner of one lies in a face, four
// sheets of the surface meet in one line: seen as corners and triangles it is no
// surface there. The sheets are parted: each wedge of material gets corners of
// its own, in the same places.

// slits finds the edges between two surfaces that lie in the middle of a third:
// an edge of a hollow touches a face from inside and leaves material without
// thickness. The third surface gets the edge in both directions, so that it ends
// there on both sides. The net must be closed; normals are by surface, weld is
// the distance within which a corner lies in a plane.
func (n *net) slits(surfs []Surface, weld float64) (found [][2]int32) {
	first, list := n.fanOut()
	// Corners along a skew direction: a surface looks only at those that its own
	// stand among.
	order, key := make([]int32, 0, len(n.at)), make([]float64, len(n.at))
	for v, p := range n.at {
		if first[v] < first[v+1] {
			order = append(order, int32(v))
			key[v] = skew.Dot(p)
		}
	}
	sortByKey(order, key)
	on := make([]int32, len(n.at)) // the last surface in whose plane the corner lies, plus 1
	var more []edge
	for lo := 0; lo < len(n.edges); {
		s := n.edges[lo].surf
		hi, kl, kh := lo, math.Inf(1), math.Inf(-1)
		for ; hi < len(n.edges) && n.edges[hi].surf == s; hi++ {
			a := n.edges[hi].a
			kl, kh = min(kl, key[a]), max(kh, key[a])
			on[a] = s + 1
		}
		own := n.edges[lo:hi]
		h := Plane{surfs[s].N, surfs[s].N.Dot(n.at[own[0].a])}
		i, _ := slices.BinarySearchFunc(order, kl, func(v int32, k float64) int { return cmp.Compare(key[v], k) })
		from := i
		for ; i < len(order) && key[order[i]] <= kh; i++ {
			v := order[i]
			if on[v] != s+1 && math.Abs(h.At(n.at[v])) <= weld && n.within(n.at[v], own, h.N) {
				on[v] = s + 1
			}
		}
		for _, a := range order[from:i] {
			if on[a] != s+1 {
				continue
			}
			for _, k := range list[first[a]:first[a+1]] {
				b := n.edges[k].b
				if a > b || on[b] != s+1 || n.runs(list[first[a]:first[a+1]], b, s) || n.runs(list[first[b]:first[b+1]], a, s) ||
					slices.Contains(more, edge{a, b, s}) || !n.within(n.at[a].Lerp(n.at[b], 0.5), own, h.N) {
					continue
				}
				more = append(more, edge{a, b, s}, edge{b, a, s})
				found = append(found, [2]int32{a, b})
			}
		}
		lo = hi
	}
	if len(more) > 0 {
		n.edges = append(n.edges, more...)
		slices.SortStableFunc(n.edges, func(x, y edge) int { return int(x.surf - y.surf) })
	}
	return found
}

// runs reports whether one of the edges goes to b along the surface.
func (n *net) runs(edges []int32, b, surf int32) bool {
	for _, i := range edges {
		if n.edges[i].b == b && n.edges[i].surf == surf {
			return true
		}
	}
	return false
}

// within tells whether a place in the plane of a surface lies on the surface,
// given its edges.
func (n *net) within(p Vec, own []edge, normal Vec) bool {
	x, y := dropAxis(normal)
	px, py := coord(p, x), coord(p, y)
	in := false
	for _, e := range own {
		a, b := n.at[e.a], n.at[e.b]
		ay, by := coord(a, y), coord(b, y)
		if (ay > py) != (by > py) && px < coord(a, x)+float64((py-ay)*(coord(b, x)-coord(a, x)))/(by-ay) {
			in = !in
		}
	}
	return in
}

// crowded reports whether more than two triangles have an edge in common, of the
// first n corners, those of the net: those of columns keep clear.
func (m *Mesh) crowded(n int32) bool {
	each := func(do func(a, b int32)) {
		for _, t := range m.Triangles {
			for i, a := range t {
				if b := t[(i+1)%3]; a < n && b < n {
					do(a, b)
				}
			}
		}
	}
	first := make([]int32, n+1)
	each(func(a, _ int32) { first[a+1]++ })
	for v := range n {
		first[v+1] += first[v]
	}
	to, fill := make([]int32, first[n]), slices.Clone(first)
	each(func(a, b int32) {
		to[fill[a]] = b
		fill[a]++
	})
	seen := make([]int32, n) // by corner, the last one that has an edge to it, plus 1
	for v := range n {
		for _, w := range to[first[v]:first[v+1]] {
			if seen[w] == v+1 {
				return true
			}
			seen[w] = v + 1
		}
	}
	return false
}

// pinched reports whether the surfaces around some corner may be more than one
// sheet. Every edge must run once in each direction.
func (n *net) pinched() bool {
	first, list := n.fanOut()
	into := make([]int32, len(n.edges)) // by edge: the edge of its surface that ends where it starts
	for v := range n.at {
		out := list[first[v]:first[v+1]]
		for _, i := range out {
			into[i] = -1
		}
		for k, i := range out {
			for _, j := range out[:k] {
				if n.edges[j].surf == n.edges[i].surf {
					return true
				}
			}
			// The twin of the edge to w starts at w; it ends here.
			w := n.edges[i].b
			for _, j := range list[first[w]:first[w+1]] {
				if n.edges[j].b != int32(v) {
					continue
				}
				for _, o := range out {
					if n.edges[o].surf == n.edges[j].surf {
						into[o] = i
					}
				}
			}
		}
		if len(out) == 0 {
			continue
		}
		k, i := 0, out[0]
		for ; k == 0 || i != out[0] && k < len(out) && i >= 0; k++ {
			i = into[i]
		}
		if k != len(out) {
			return true
		}
	}
	return false
}

// wedge is two half-edges between whose triangles there is material: up runs
// from the corner with the lower number to the other, down back. Half-edge 3t+i
// runs from corner i of triangle t to the next.
type wedge struct{ up, down int32 }

// part gives each wedge of material corners of its own where more than one meet
// in an edge or a corner.
func (m *Mesh) part() {
	n := int32(3 * len(m.Triangles))
	class := make([]int32, n) // union-find over the corners of triangles
	for i := range class {
		class[i] = int32(i)
	}
	find := func(i int32) int32 {
		for class[i] != i {
			class[i] = class[class[i]]
			i = class[i]
		}
		return i
	}
	join := func(i, j int32) {
		i, j = find(i), find(j)
		class[max(i, j)] = min(i, j)
	}
	edges := m.halfEdges()
	var crowded [][]wedge
	for lo := 0; lo < len(edges); {
		hi := lo
		for hi < len(edges) && edges[hi].a == edges[lo].a && edges[hi].b == edges[lo].b {
			hi++
		}
		pairs := m.wedges(edges[lo:hi])
		for _, w := range pairs {
			join(w.up, after(w.down))
			join(after(w.up), w.down)
		}
		if len(pairs) > 1 {
			crowded = append(crowded, pairs)
		}
		lo = hi
	}
	owner := make([]int32, len(m.Vertices)) // the class that keeps the number, plus 1
	number := make(map[int32]int32)
	for i := int32(0); i < n; i++ {
		v := m.at(i)
		switch c := find(i); owner[*v] {
		case 0:
			owner[*v] = c + 1
		case c + 1:
		default:
			k, ok := number[c]
			if !ok {
				k = int32(len(m.Vertices))
				number[c] = k
				m.Vertices = append(m.Vertices, m.Vertices[*v])
			}
			*v = k
		}
	}
	m.halve(crowded)
}

// at is the corner that a half-edge starts from.
func (m *Mesh) at(h int32) *int32 { return &m.Triangles[h/3][h%3] }

// half is the half-edge of a triangle that starts at v.
func (m *Mesh) half(t, v int32) int32 {
	return 3*t + int32(slices.Index(m.Triangles[t][:], v))
}

// wedges pairs the triangles around one edge so that material lies between the
// two of each pair.
func (m *Mesh) wedges(around []halfEdge) []wedge {
	// The angle of each triangle around the edge, from any direction on, growing
	// anticlockwise about the way up. Material lies beyond a triangle whose edge
	// runs down, and before one whose edge runs up.
	type spoke struct {
		h, up int32 // up is 1 or -1
		angle float64
	}
	a, b := around[0].a, around[0].b
	axis := m.Vertices[b].Sub(m.Vertices[a]).Unit()
	spokes := make([]spoke, len(around))
	var x, y Vec
	for i, e := range around {
		d := axis.Cross(m.Surfaces[m.Surface[e.tri]].N)
		s := spoke{h: m.half(e.tri, b), up: -1}
		if e.up {
			d, s.h, s.up = d.Scale(-1), m.half(e.tri, a), 1
		}
		if i == 0 {
			x, y = d, axis.Cross(d)
		}
		s.angle = pseudoTurn(d.Dot(x), d.Dot(y))
		spokes[i] = s
	}
	slices.SortFunc(spokes, func(p, q spoke) int {
		return cmp.Or(cmp.Compare(p.angle, q.angle), cmp.Compare(p.up, q.up), cmp.Compare(p.h, q.h))
	})
	// Begin where no material is open.
	start, depth, low := 0, int32(0), int32(0)
	for i, s := range spokes {
		if depth -= s.up; depth < low {
			start, low = i+1, depth
		}
	}
	var out []wedge
	var open []int32
	for i := range spokes {
		s := spokes[(start+i)%len(spokes)]
		if s.up < 0 {
			open = append(open, s.h)
		} else if k := len(open) - 1; k >= 0 {
			out = append(out, wedge{s.h, open[k]})
			open = open[:k]
		}
	}
	return out
}

// halve puts corners in the middle of crowded edges of which two wedges still
// have both ends in common: hollows that touch along part of an edge only.
func (m *Mesh) halve(crowded [][]wedge) {
	moved := map[int32]int32{} // half-edges that went to a new triangle
	now := func(h int32) int32 {
		for {
			g, ok := moved[h]
			if !ok {
				return h
			}
			h = g
		}
	}
	cut := func(h, mid int32) {
		h = now(h)
		t := int32(len(m.Triangles))
		g := 3*t + h%3
		m.Triangles = append(m.Triangles, m.Triangles[h/3])
		m.Surface = append(m.Surface, m.Surface[h/3])
		*m.at(after(h)) = mid
		*m.at(g) = mid
		moved[after(h)] = after(g)
	}
	for _, pairs := range crowded {
		shared := false
		for i, w := range pairs {
			for _, o := range pairs[:i] {
				shared = shared || *m.at(now(w.up)) == *m.at(now(o.up)) && *m.at(now(w.down)) == *m.at(now(o.down))
			}
		}
		if !shared {
			continue
		}
		for _, w := range pairs {
			mid := int32(len(m.Vertices))
			m.Vertices = append(m.Vertices, m.Vertices[*m.at(now(w.up))].Lerp(m.Vertices[*m.at(now(w.down))], 0.5))
			cut(w.up, mid)
			cut(w.down, mid)
		}
	}
}
