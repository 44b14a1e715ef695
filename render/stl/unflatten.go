package stl

// unflatten turns the longest edge of every triangle that has fallen flat: its
// middle corner lies on that edge, as near as can be written, so it and the
// neighbour there become two triangles in the neighbour's plane. A row of flat
// ones is undone one by one. What cannot be turned may stay as long as it has
// an area.
func (t *surface) unflatten() error {
	var todo []int
	for i, k := range t.tri {
		if t.fallen(k) {
			todo = append(todo, i)
		}
	}
	if len(todo) == 0 {
		return nil
	}
	e := newEdges(t)
	before := len(todo) + 1
	for tries := 4*len(t.tri) + 16; len(todo) > 0 && len(todo) < before && tries > 0; {
		before = len(todo)
		var later []int // perhaps when their neighbours have been turned
		for ; len(todo) > 0 && tries > 0; tries-- {
			i := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			if t.tri[i].gone || !t.fallen(t.tri[i]) {
				continue
			}
			if n, ok := t.turn(i, e); ok {
				todo = append(todo, i, n)
			} else {
				later = append(later, i)
			}
		}
		todo = later
	}
	kept := t.tri[:0]
	for _, k := range t.tri {
		if k.gone {
			continue
		}
		if n, l := t.area(k); n.Len() <= nothing*l {
			return errNoArea
		}
		kept = append(kept, k)
	}
	t.tri = kept
	return nil
}

// turn replaces the longest edge of triangle i by the other diagonal of the
// four-sided figure that it makes with its neighbour, whose number is
// returned. Where that edge is there already, the figure must be the side of a
// flat fold: then what comes to lie back to back goes. Else it reports false.
func (t *surface) turn(i int, e edges) (int, bool) {
	k := t.tri[i].v
	best, at := -1.0, 0
	for j := range k {
		if l := t.at[k[j]].Sub(t.at[k[(j+1)%3]]).Len(); l > best {
			best, at = l, j
		}
	}
	a, b, c := k[at], k[(at+1)%3], k[(at+2)%3]
	n, ok := e.only(b, a)
	if _, once := e.only(a, b); !ok || !once {
		return 0, false
	}
	d := third(t.tri[n].v, b, a)
	if d == c {
		return 0, false
	}
	x, y := triangle{v: [3]int32{a, d, c}}, triangle{v: [3]int32{d, b, c}}
	backX, foldX := e.has(t, [3]int32{a, c, d})
	backY, foldY := e.has(t, [3]int32{d, c, b})
	if (len(e[[2]int32{c, d}]) > 0 || len(e[[2]int32{d, c}]) > 0) && !foldX && !foldY {
		return 0, false
	}
	x.faced, y.faced = t.tri[n].faced, t.tri[n].faced
	e.remove(i, k)
	e.remove(n, t.tri[n].v)
	t.tri[i], t.tri[n] = x, y
	e.add(i, x.v)
	e.add(n, y.v)
	for _, f := range [...]struct {
		own, back int
		is        bool
	}{{i, backX, foldX}, {n, backY, foldY}} {
		if f.is {
			for _, g := range [...]int{f.own, f.back} {
				e.remove(g, t.tri[g].v)
				t.tri[g].gone = true
			}
		}
	}
	return n, true
}

// third is the corner of k after a and b.
func third(k [3]int32, a, b int32) int32 {
	for _, v := range k {
		if v != a && v != b {
			return v
		}
	}
	return a
}

// edges are the triangles by directed edge: one, but for surfaces that touch.
type edges map[[2]int32][]int

func newEdges(t *surface) edges {
	e := make(edges, 3*len(t.tri))
	for i, k := range t.tri {
		e.add(i, k.v)
	}
	return e
}

func (e edges) add(i int, k [3]int32) {
	for j := range k {
		d := [2]int32{k[j], k[(j+1)%3]}
		e[d] = append(e[d], i)
	}
}

func (e edges) remove(i int, k [3]int32) {
	for j := range k {
		d := [2]int32{k[j], k[(j+1)%3]}
		l := e[d]
		for x, o := range l {
			if o == i {
				l = append(l[:x], l[x+1:]...)
				break
			}
		}
		if len(l) == 0 {
			delete(e, d)
		} else {
			e[d] = l
		}
	}
}

// only is the triangle with the directed edge a-b, if there is just one.
func (e edges) only(a, b int32) (int, bool) {
	l := e[[2]int32{a, b}]
	if len(l) != 1 {
		return 0, false
	}
	return l[0], true
}

// has is the number of the triangle with the corners k in that order.
func (e edges) has(t *surface, k [3]int32) (int, bool) {
	for _, i := range e[[2]int32{k[0], k[1]}] {
		if third(t.tri[i].v, k[0], k[1]) == k[2] {
			return i, true
		}
	}
	return 0, false
}
