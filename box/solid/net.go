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
// the edges inside a surface. of maps surfaces to the surface they belong to;
// weld is the radius.
func gather(frags []frag, of []int32, weld float64) net {
	n := 0
	for _, f := range frags {
		n += len(f.loop)
	}
	w := newWelder(n, weld)
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
	lines := newLiners(at, weld)
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

func sortByKey(order []int32, key []float64) {
	slices.SortFunc(order, func(i, j int32) int {
		switch a, b := key[i], key[j]; {
		case a < b:
			return -1
		case a > b:
			return 1
		}
		return int(i - j)
	})
}

// fanOut lists the edges by the corner they start from.
func (n *net) fanOut() (first, list []int32) {
	first = make([]int32, len(n.at)+1)
	for _, e := range n.edges {
		first[e.a+1]++
	}
	for i := 1; i < len(first); i++ {
		first[i] += first[i-1]
	}
	list = make([]int32, len(n.edges))
	fill := make([]int32, len(n.at))
	for i, e := range n.edges {
		list[first[e.a]+fill[e.a]] = int32(i)
		fill[e.a]++
	}
	return first, list
}

// closed reports whether every edge runs as often in one direction as in the
// other, and whether any runs more than once: there sheets of the surface touch.
func (n *net) closed() (touch bool, err error) {
	first, list := n.fanOut()
	count := func(a, b int32) int {
		k := 0
		for _, i := range list[first[a]:first[a+1]] {
			if n.edges[i].b == b {
				k++
			}
		}
		return k
	}
	for _, e := range n.edges {
		there, back := count(e.a, e.b), count(e.b, e.a)
		if there != back {
			return touch, ErrOpen
		}
		touch = touch || there != 1
	}
	return touch, nil
}

// straighten drops corners in the middle of a straight edge, where both
// surfaces of the edge agree on the neighbours. The net must be closed.
func (n *net) straighten() {
	type links struct {
		in, out [2]int32
		k       [2]int
	}
	at := make([]links, len(n.at))
	for i, e := range n.edges {
		if l := &at[e.a]; l.k[0] < 2 {
			l.out[l.k[0]] = int32(i)
		}
		at[e.a].k[0]++
		if l := &at[e.b]; l.k[1] < 2 {
			l.in[l.k[1]] = int32(i)
		}
		at[e.b].k[1]++
	}
	dropped := false
	for v := range at {
		l := &at[v]
		if l.k != [2]int{2, 2} {
			continue
		}
		i, o := l.in, l.out // i[0] goes on as o[0], i[1] as o[1]
		if n.edges[i[0]].a == n.edges[o[0]].b {
			o[0], o[1] = o[1], o[0]
		}
		a, b := n.edges[i[0]].a, n.edges[i[1]].a
		if n.edges[o[0]].b != b || n.edges[o[1]].b != a || a == b ||
			n.edges[i[0]].surf != n.edges[o[0]].surf || n.edges[i[1]].surf != n.edges[o[1]].surf {
			continue
		}
		d, q := n.at[b].Sub(n.at[a]), n.at[v].Sub(n.at[a])
		x, t := d.Cross(q), d.Dot(q)
		if dd := d.Dot(d); x.Dot(x) > SideTest*SideTest*dd || t <= 0 || t >= dd {
			continue
		}
		n.edges[i[0]].b, n.edges[i[1]].b = b, a
		n.edges[o[0]].surf, n.edges[o[1]].surf = -1, -1
		relink(&at[b].in, o[0], i[0])
		relink(&at[a].in, o[1], i[1])
		dropped = true
	}
	if dropped {
		n.edges = slices.DeleteFunc(n.edges, func(e edge) bool { return e.surf < 0 })
	}
}

func relink(in *[2]int32, from, to int32) {
	for i := range in {
		if in[i] == from {
			in[i] = to
		}
	}
}
