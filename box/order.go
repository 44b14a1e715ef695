package box

// order is who laps over whom between every two faces: 2 over, 1 mitred, 0
// under. r[i][j] belongs to i.
type order [][]int

// said is what a relation says of a pair.
type said int

const (
	silent said = iota
	over
	under
	mitred
	contradictory
)

func newOrder(n int) order {
	r := make(order, n)
	cells := make([]int, n*n)
	for i := range r {
		r[i] = cells[i*n : (i+1)*n]
	}
	return r
}

func (r order) say(i, j int) said {
	switch [2]int{r[i][j], r[j][i]} {
	case [2]int{0, 0}:
		return silent
	case [2]int{2, 0}:
		return over
	case [2]int{0, 2}:
		return under
	case [2]int{1, 1}:
		return mitred
	}
	return contradictory
}

func (r order) put(i, j int, s said) {
	switch s {
	case over:
		r[i][j], r[j][i] = 2, 0
	case under:
		r[i][j], r[j][i] = 0, 2
	case mitred:
		r[i][j], r[j][i] = 1, 1
	}
}

// close adds what follows: i over k and k over j is i over j.
func (r order) close(in []int) {
	for _, k := range in {
		for _, i := range in {
			if r[i][k] == 0 {
				continue
			}
			for _, j := range in {
				if r[k][j] != 0 {
					r[i][j] = max(r[i][j], r[i][k], r[k][j])
				}
			}
		}
	}
}

// setOrder decides every pair of faces. A joint says it on its edge; a pair
// that meets only in a vertex takes what the joints there imply; any other
// pair what all joints together imply; where nothing is implied, the usual
// ranks, which from then on count as said. Where all joints together are a
// weak order this divides the shell exactly: the face of the highest rank
// owns each point, and among equals the one with the largest s/t.
func (s *shell) setOrder() order {
	n := len(s.faces)
	var all []int
	for i := range s.faces {
		if !s.faces[i].open {
			all = append(all, i)
		}
	}
	e := newOrder(n)
	byEdge := map[[2]int]bool{}
	for _, x := range s.edges {
		if !x.ok {
			continue
		}
		byEdge[[2]int{x.i, x.j}] = true
		e.put(x.over, x.under, x.relation(0))
	}
	g := newOrder(n)
	for i := range e {
		copy(g[i], e[i])
	}
	g.close(all)
	final := newOrder(n)
	for _, x := range s.edges {
		if x.ok {
			final.put(x.over, x.under, x.relation(0))
		}
	}
	settle := func(i, j int, r said) {
		final.put(i, j, r)
		if g.say(i, j) == silent {
			g.put(i, j, r)
			g.close(all)
		}
	}
	usual := func(i, j int) said {
		a, b := s.faces[i].rank, s.faces[j].rank
		switch {
		case a > b:
			return over
		case a < b:
			return under
		}
		return mitred
	}
	done := map[[2]int]bool{}
	for k, v := range s.verts {
		at := s.vertexOrder(k, n)
		at.close(v)
		ring := false
		for _, i := range v {
			ring = ring || at[i][i] == 2
		}
		if ring {
			s.reportRing(v)
			continue
		}
		for x, i := range v {
			for _, j := range v[x+1:] {
				key := [2]int{i, j}
				if byEdge[key] || done[key] {
					continue
				}
				r := at.say(i, j)
				if r == silent {
					if r = g.say(i, j); r == silent || r == contradictory {
						r = usual(i, j)
					}
				}
				done[key] = true
				at.put(i, j, r)
				at.close(v)
				settle(i, j, r)
			}
		}
	}
	var meet func(i, j int) bool
	for x, i := range all {
		for _, j := range all[x+1:] {
			key := [2]int{i, j}
			if byEdge[key] || done[key] {
				continue
			}
			r := g.say(i, j)
			if r == silent {
				r = usual(i, j)
			}
			if r == contradictory {
				if meet == nil {
					meet = s.slabsMeet()
				}
				r = usual(i, j)
				if meet(i, j) {
					q := []int{i, j}
					for _, k := range all {
						if k != i && k != j && meet(i, k) && meet(j, k) {
							q = append(q, k)
						}
					}
					l := newOrder(n)
					for a := range final {
						copy(l[a], final[a])
					}
					l.close(q)
					if t := l.say(i, j); t == over || t == under || t == mitred {
						r = t
					}
				}
			}
			settle(i, j, r)
		}
	}
	return final
}

// relation is what the joint says at one end of its edge: 0 the start, 1 the
// end. Between two parts as a whole the start decides.
func (e *edge) relation(end int) said {
	switch e.sec.Ends[end] {
	case 1: // joints.BLaps
		return under
	case 2: // joints.Mitred
		return mitred
	}
	return over
}

// vertexOrder is the relation that the joints at one vertex state, each by its
// nearer end.
func (s *shell) vertexOrder(k, n int) order {
	r := newOrder(n)
	at := s.vertAt[k]
	for _, e := range s.edges {
		if !e.ok {
			continue
		}
		in := 0
		for _, f := range s.verts[k] {
			if f == e.i || f == e.j {
				in++
			}
		}
		if in < 2 {
			continue
		}
		end := 0
		if e.b.Sub(at).Len() < e.a.Sub(at).Len() {
			end = 1
		}
		r.put(e.over, e.under, e.relation(end))
	}
	return r
}

// reportRing names the parts that lap over one another in a ring.
func (s *shell) reportRing(v []int) {
	names := ""
	for k, i := range v {
		if k > 0 {
			names += ", "
		}
		names += string(s.faces[i].part)
	}
	s.c.addf("Joints", "ring", "%s lap over one another in a ring where they meet, which leaves a hole in the corner: turn one of the joints round", names)
}

// slabsMeet finds which slabs share a place inside the outer planes.
func (s *shell) slabsMeet() func(i, j int) bool {
	n := len(s.faces)
	m := make([]bool, n*n)
	outer := s.outer()
	for i := range s.faces {
		if s.faces[i].open {
			continue
		}
		a := outer.Clip(s.faces[i].in.Flip(), -10)
		for j := i + 1; j < n; j++ {
			if s.faces[j].open || a.Empty() {
				continue
			}
			b := a.Clip(s.faces[j].in.Flip(), -11)
			hit := !b.Empty() && b.Volume() > 1e-9
			m[i*n+j], m[j*n+i] = hit, hit
		}
	}
	return func(i, j int) bool { return m[i*n+j] }
}

// checkRings looks at every three faces whose slabs meet in one place: under
// the final order they must lap without a ring.
func (s *shell) checkRings(r order) {
	outer := s.outer()
	n := len(s.faces)
	for i := 0; i < n; i++ {
		for j := i + 1; j < n; j++ {
			for k := j + 1; k < n; k++ {
				if s.faces[i].open || s.faces[j].open || s.faces[k].open {
					continue
				}
				t := newOrder(n)
				in := []int{i, j, k}
				for _, a := range in {
					for _, b := range in {
						if a != b {
							t[a][b] = r[a][b]
						}
					}
				}
				t.close(in)
				if t[i][i] != 2 && t[j][j] != 2 && t[k][k] != 2 {
					continue
				}
				c := outer
				for _, a := range in {
					c = c.Clip(s.faces[a].in.Flip(), -10-a)
				}
				if !c.Empty() && c.Volume() > 1e-6 {
					s.reportRing(in)
				}
			}
		}
	}
}
