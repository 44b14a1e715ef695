package solid

import "slices"

// edge runs from a to b with its surface on the left.
type edge struct{ a, b, surf int32 }

// net is the edges in which surfaces meet, after welding: each runs once along
// each of its two surfaces.
type net struct {
	at    []Vec
	edges []edge
}

// gather welds the polygons, puts in the corners that lie on edges, and cancels
// the edges inside a surface. of maps surfaces to the surface they belong to.
func gather(frags []frag, of []int32) net {
	n := 0
	for _, f := range frags {
		n += len(f.loop)
	}
	w := newWelder(n)
	ids := make([]int32, 0, n)
	for _, f := range frags {
		for _, p := range f.loop {
			ids = append(ids, w.add(p))
		}
	}
	cluster, at := w.finish()
	for i := range ids {
		ids[i] = cluster[ids[i]]
	}
	lines := newLiners(at)
	edges := make([]edge, 0, n+n/4)
	k := 0
	for _, f := range frags {
		loop := ids[k : k+len(f.loop)]
		k += len(f.loop)
		surf := f.surf
		if of != nil {
			surf = of[surf]
		}
		a := loop[len(loop)-1]
		for _, b := range loop {
			if a == b {
				continue
			}
			hits := lines.between(a, b)
			last := a
			for i := range hits {
				v := hits[i].v
				if a > b {
					v = hits[len(hits)-1-i].v
				}
				edges = append(edges, edge{last, v, surf})
				last = v
			}
			edges = append(edges, edge{last, b, surf})
			a = b
		}
	}
	return net{at, cancel(edges, len(at))}
}

// cancel takes out pairs of opposite edges of one surface, and returns the
// others sorted by surface, otherwise in the order they came.
func cancel(edges []edge, points int) []edge {
	slices.SortStableFunc(edges, func(x, y edge) int { return int(x.surf - y.surf) })
	head := make([]int32, points)
	for i := range head {
		head[i] = -1
	}
	next := make([]int32, len(edges))
	gone := make([]bool, len(edges))
	for lo := 0; lo < len(edges); {
		hi := lo
		for hi < len(edges) && edges[hi].surf == edges[lo].surf {
			hi++
		}
	each:
		for i := lo; i < hi; i++ {
			a, b := edges[i].a, edges[i].b
			for prev, j := int32(-1), head[b]; j >= 0; prev, j = j, next[j] {
				if edges[j].b != a {
					continue
				}
				gone[i], gone[j] = true, true
				if prev < 0 {
					head[b] = next[j]
				} else {
					next[prev] = next[j]
				}
				continue each
			}
			next[i] = head[a]
			head[a] = int32(i)
		}
		for i := lo; i < hi; i++ {
			head[edges[i].a] = -1
		}
		lo = hi
	}
	out := edges[:0]
	for i, e := range edges {
		if !gone[i] {
			out = append(out, e)
		}
	}
	return out
}
