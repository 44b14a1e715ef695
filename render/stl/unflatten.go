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
	for tries := 4*len(t.tri) + 16; len(todo) > 0 && tries > 0; tries-- {
		i := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		if !t.fallen(t.tri[i]) {
			continue
		}
		if n, ok := t.turn(i, e); ok {
			for _, j := range [...]int{i, n} {
				if t.fallen(t.tri[j]) {
					todo = append(todo, j)
				}
			}
		}
	}
	for _, k := range t.tri {
		if n, l := t.area(k); n.Len() <= nothing*l {
			return errNoArea
		}
	}
	return nil
}

// turn replaces the longest edge of triangle i by the other diagonal of the
// four-sided figure that it makes with its neighbour, whose number is
// returned. It reports false where that would give an edge that is there
// already.
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
	d := a
	for _, v := range t.tri[n].v {
		if v != a && v != b {
			d = v
		}
	}
	if d == c || len(e[[2]int32{c, d}]) > 0 || len(e[[2]int32{d, c}]) > 0 {
		return 0, false
	}
	e.remove(i, k)
	e.remove(n, t.tri[n].v)
	faced := t.tri[n].faced
	t.tri[i] = triangle{[3]int32{a, d, c}, faced}
	t.tri[n] = triangle{[3]int32{d, b, c}, faced}
	e.add(i, t.tri[i].v)
	e.add(n, t.tri[n].v)
	return n, true
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
