package outline

import (
	"cmp"
	"math"
	"slices"
)

// piece is a stretch of boundary between two nodes that nothing crosses. Where
// boundaries run along each other they share one piece; net counts, for either
// operand, the sides that run with it less those that run against it.
type piece struct {
	u, v        int32
	s           seg
	net         [2]int8
	left, right [2]int8 // windings of both operands beside it
	known       bool
}

// arrangement is the plane parted by the boundaries of two regions.
type arrangement struct {
	at     []Point
	pieces []piece
	stars  [][]int32 // the pieces at each node
}

// arrange splits all sides at all common points. Places within eps are one.
func arrange(a, b []seg, eps float64) *arrangement {
	all := append(append(make([]seg, 0, len(a)+len(b)), a...), b...)
	boxes := make([]Box, len(all))
	w := newWeld(eps, 2*len(all))
	for i := range all {
		boxes[i] = all[i].box()
		w.add(all[i].a)
	}
	for i := range all {
		w.add(all[i].b)
	}
	cuts := make([][]int32, len(all))
	var buf []Point
	pairs(boxes, eps, nil, func(i, j int) bool {
		buf = meet(buf[:0], &all[i], &all[j], eps)
		for _, p := range buf {
			k := w.add(p)
			cuts[i] = append(cuts[i], k)
			cuts[j] = append(cuts[j], k)
		}
		return true
	})
	g := &arrangement{at: w.at, stars: make([][]int32, len(w.at))}
	for i := range all {
		own := 0
		if i >= len(a) {
			own = 1
		}
		g.split(all[i], w.find(all[i].a), w.find(all[i].b), cuts[i], own, eps)
	}
	g.drop()
	return g
}

// split adds the pieces of one side.
func (g *arrangement) split(s seg, from, to int32, cuts []int32, own int, eps float64) {
	type cut struct {
		t float64
		n int32
	}
	var list []cut
	for _, n := range cuts {
		if n == from || n == to {
			continue
		}
		p := g.at[n]
		t := 0.0
		if s.r == 0 {
			t = dot(sub(p, s.a), sub(s.b, s.a))
		} else {
			t = math.Abs(s.bulgeTo(s.a, p))
		}
		list = append(list, cut{t, n})
	}
	slices.SortFunc(list, func(x, y cut) int {
		return cmp.Or(cmp.Compare(x.t, y.t), cmp.Compare(x.n, y.n))
	})
	last, whole := from, true
	for _, c := range list {
		if c.n == last {
			continue
		}
		g.add(last, c.n, s.bulgeTo(g.at[last], g.at[c.n]), own, eps)
		last, whole = c.n, false
	}
	b := s.bulge
	if s.r == 0 {
		b = 0
	} else if !whole {
		b = s.bulgeTo(g.at[last], g.at[to])
	}
	g.add(last, to, b, own, eps)
}

// add counts a piece, on one that is there already if they run together.
func (g *arrangement) add(u, v int32, bulge float64, own int, eps float64) {
	if u == v {
		return
	}
	s := newSeg(g.at[u], g.at[v], bulge)
	for _, i := range g.stars[u] {
		p := &g.pieces[i]
		if (p.u == u && p.v == v || p.u == v && p.v == u) && gap(p.s.mid(), s.mid()) <= 2*eps {
			if p.u == u {
				p.net[own]++
			} else {
				p.net[own]--
			}
			return
		}
	}
	p := piece{u: u, v: v, s: s}
	p.net[own] = 1
	i := int32(len(g.pieces))
	g.pieces = append(g.pieces, p)
	g.stars[u] = append(g.stars[u], i)
	g.stars[v] = append(g.stars[v], i)
}

// drop forgets pieces that cancel.
func (g *arrangement) drop() {
	kept := g.pieces[:0]
	for _, p := range g.pieces {
		if p.net != [2]int8{} {
			kept = append(kept, p)
		}
	}
	g.pieces = kept
	for i := range g.stars {
		g.stars[i] = g.stars[i][:0]
	}
	for i := range g.pieces {
		p := &g.pieces[i]
		g.stars[p.u] = append(g.stars[p.u], int32(i))
		g.stars[p.v] = append(g.stars[p.v], int32(i))
	}
}

// wind finds the windings beside every piece: by a ray from one of every chain,
// handed on through the nodes where just two pieces meet.
func (g *arrangement) wind() {
	boxes := make([]Box, len(g.pieces))
	for i := range g.pieces {
		boxes[i] = g.pieces[i].s.box()
	}
	var queue []int32
	for i := range g.pieces {
		if g.pieces[i].known {
			continue
		}
		g.shoot(i, boxes)
		queue = append(queue[:0], int32(i))
		for len(queue) > 0 {
			p := &g.pieces[queue[len(queue)-1]]
			queue = queue[:len(queue)-1]
			for _, n := range [2]int32{p.u, p.v} {
				if len(g.stars[n]) != 2 {
					continue
				}
				for _, j := range g.stars[n] {
					q := &g.pieces[j]
					if q.known {
						continue
					}
					q.known = true
					q.left, q.right = p.left, p.right
					if p.v == n && q.v == n || p.u == n && q.u == n {
						q.left, q.right = p.right, p.left
					}
					queue = append(queue, j)
				}
			}
		}
	}
}

// shoot counts what a ray to the right from the middle of piece i crosses. The
// piece itself is not asked about that point, which lies on it, but taken on
// the side the count belongs to.
func (g *arrangement) shoot(i int, boxes []Box) {
	self := &g.pieces[i]
	p := self.s.mid()
	var sum [2]int
	for j := range g.pieces {
		b := &boxes[j]
		if p.Y < b.Min.Y || p.Y > b.Max.Y || p.X > b.Max.X || j == i {
			continue
		}
		q := &g.pieces[j]
		if k := q.s.winds(p); k != 0 {
			sum[0] += k * int(q.net[0])
			sum[1] += k * int(q.net[1])
		}
	}
	right := self.beside(p)
	for o := range sum {
		n := int(self.net[o])
		r := sum[o] + right*n
		self.right[o], self.left[o] = int8(r), int8(r+n)
	}
	self.known = true
}

// beside is what the piece itself adds to the winding of the place just to the
// right of its middle p; to the left it is one more.
func (q *piece) beside(p Point) int {
	s := &q.s
	up, down := s.a.Y <= p.Y && p.Y < s.b.Y, s.b.Y <= p.Y && p.Y < s.a.Y
	if s.r == 0 {
		// The ray starts beside the piece at its right-hand end in x, so an
		// upward piece is left of it; a level one lies below the ray.
		if up || !down && s.b.X < s.a.X {
			return 0
		}
		return -1
	}
	// An arc is its chord, which p is well off, and the cap.
	k, w := cross(sub(s.b, s.a), sub(p, s.a)), 0
	if up && k > 0 {
		w = 1
	} else if down && k < 0 {
		w = -1
	}
	if s.bulge < 0 {
		w-- // the right of a clockwise arc is in its cap
	}
	return w
}

// sound reports whether both operands are regions: everywhere wound once or
// not at all.
func (g *arrangement) sound() bool {
	for i := range g.pieces {
		p := &g.pieces[i]
		for o := range p.left {
			if l, r := p.left[o], p.right[o]; l < 0 || l > 1 || r < 0 || r > 1 || l-r != p.net[o] {
				return false
			}
		}
	}
	return true
}

// shared reports whether sides ran together: fewer or cancelled pieces.
func (g *arrangement) shared(segs []seg) bool {
	sum := 0.0
	for i := range segs {
		sum += segs[i].length()
	}
	for i := range g.pieces {
		sum -= g.pieces[i].s.length()
	}
	return math.Abs(sum) > 1e-5
}
