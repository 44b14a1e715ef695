package solid

import (
	"errors"
	"slices"
)

// ErrCrossing says that rings cross, overlap or do not close.
var ErrCrossing = errors.New("solid: rings cross or do not close")

// sweeper triangulates flat regions given as directed edges with the region on
// the left. The edges may meet in corners only. It goes up through the corners
// in the order of (y, x) and takes at each the whole bundle of edges that end
// and begin there: that makes touching rings and corners of any degree ordinary.
// Between the edges that cross the sweep line it keeps the part of the region
// seen so far as monotone chains, which it triangulates as it goes.
//
// All its memory is kept from one region to the next.
type sweeper struct {
	x, y    []float64 // the corners
	evenOdd bool      // the region is where the winding is odd, not where it is 1

	order  []int32 // corners by (y, x)
	rank   []int32
	lo, hi []int32 // ends of edges by rank
	dir    []int8  // change of the winding across the edge, from left to right
	from   []int32 // first edge that begins at a corner, in begin
	begin  []int32
	ends   []int32 // number of edges that end at a corner

	line []int32 // edges across the sweep line, left to right
	wind []int32 // winding to the right of an edge
	poly []int32 // chain to the right of an edge: of the part at its left ...
	pend []int32 // ... and of that at its right, after two parts met; or -1

	chains []chainTop
	nodes  []chainNode
	free   int32
	tri    [][3]int32
}

// chainTop is a part of the region being triangulated: a stack of corners on
// one of its sides, over which the other side has not passed yet.
type chainTop struct {
	top  int32
	side int8
}

type chainNode struct{ v, below int32 }

const (
	leftSide  int8 = 1
	rightSide int8 = 2
)

// flatHeight is the height, mm, under which three corners count as in line.
const flatHeight = 1e-9

// turn is twice the area of the triangle a, b, c: above 0 when it turns left.
func (s *sweeper) turn(a, b, c int32) float64 {
	ax, ay := s.x[a], s.y[a]
	return float64((s.x[b]-ax)*(s.y[c]-ay)) - float64((s.x[c]-ax)*(s.y[b]-ay))
}

// run triangulates; the triangles are in s.tri until the next run.
func (s *sweeper) run(edges [][2]int32) error {
	s.sort()
	s.load(edges)
	s.line, s.chains, s.nodes, s.tri, s.free = s.line[:0], s.chains[:0], s.nodes[:0], s.tri[:0], -1
	for _, v := range s.order {
		if err := s.event(v); err != nil {
			return err
		}
	}
	if len(s.line) > 0 {
		return ErrCrossing
	}
	return s.weigh(edges)
}

func (s *sweeper) sort() {
	n := len(s.x)
	s.order, s.rank = resize(s.order, n), resize(s.rank, n)
	for i := range s.order {
		s.order[i] = int32(i)
	}
	x, y := s.x, s.y
	slices.SortFunc(s.order, func(i, j int32) int {
		switch {
		case y[i] < y[j]:
			return -1
		case y[i] > y[j]:
			return 1
		case x[i] < x[j]:
			return -1
		case x[i] > x[j]:
			return 1
		}
		return int(i - j)
	})
	for i, v := range s.order {
		s.rank[v] = int32(i)
	}
}

func (s *sweeper) load(edges [][2]int32) {
	n, m := len(s.x), len(edges)
	s.lo, s.hi, s.dir = resize(s.lo, m), resize(s.hi, m), resize(s.dir, m)
	s.wind, s.poly, s.pend = resize(s.wind, m), resize(s.poly, m), resize(s.pend, m)
	s.from, s.ends, s.begin = resize(s.from, n+1), resize(s.ends, n), resize(s.begin, m)
	clear(s.from)
	clear(s.ends)
	for i, e := range edges {
		a, b, d := e[0], e[1], int8(-1)
		if s.rank[a] > s.rank[b] {
			a, b, d = b, a, 1
		}
		s.lo[i], s.hi[i], s.dir[i] = a, b, d
		s.from[a]++
		s.ends[b]++
	}
	sum := int32(0)
	for v := range s.from {
		sum, s.from[v] = sum+s.from[v], sum
	}
	for i := range edges {
		a := s.lo[i]
		s.begin[s.from[a]] = int32(i)
		s.from[a]++
	}
	// from[v] is now the end of v's edges and, as that of v+1 did not move below
	// its begin, from[v-1] their begin.
}

// event handles a corner.
func (s *sweeper) event(v int32) error {
	first := int32(0)
	if v > 0 {
		first = s.from[v-1]
	}
	begin := s.begin[first:s.from[v]]
	k := int(s.ends[v])
	if len(begin)+k == 0 {
		return nil
	}
	i0, n := 0, len(s.line)
	for j := n; i0 < j; {
		m := int(uint(i0+j) >> 1)
		if e := s.line[m]; s.hi[e] != v && s.turn(s.lo[e], s.hi[e], v) < 0 {
			i0 = m + 1
		} else {
			j = m
		}
	}
	i1 := i0
	for i1 < n && s.hi[s.line[i1]] == v {
		i1++
	}
	if i1-i0 != k {
		return ErrCrossing
	}
	if i1 < n {
		if e := s.line[i1]; !(s.turn(s.lo[e], s.hi[e], v) > 0) {
			return ErrCrossing
		}
	}
	if err := s.fan(v, begin); err != nil {
		return err
	}
	left, right := int32(-1), int32(-1) // edges left of the gaps beside v
	wl := int32(0)
	if i0 > 0 {
		left = s.line[i0-1]
		wl = s.wind[left]
	}
	wr := wl
	if k > 0 {
		right = s.line[i1-1]
		wr = s.wind[right]
	}
	w := wl
	for _, e := range begin {
		w += int32(s.dir[e])
		if w < 0 || w > 1 {
			if !s.evenOdd {
				return ErrCrossing
			}
		}
		s.wind[e] = w
	}
	if s.evenOdd && (w-wr)&1 == 0 {
		w = wr
	}
	if w != wr {
		return ErrCrossing
	}
	s.parts(v, i0, i1, left, right, begin)
	s.replace(i0, i1, begin)
	return nil
}

// inside tells whether a winding belongs to the region.
func inside(w int32) bool { return w&1 != 0 }

// parts brings the corner v to all parts of the region that it touches.
func (s *sweeper) parts(v int32, i0, i1 int, left, right int32, begin []int32) {
	l := len(begin)
	if i0 == i1 { // nothing ends here
		if left >= 0 && inside(s.wind[left]) {
			last := begin[l-1]
			s.poly[left], s.poly[last] = s.divide(left, v)
			s.pend[left], s.pend[last] = -1, -1
		}
	} else {
		lin := left >= 0 && inside(s.wind[left])
		if lin {
			if s.pend[left] >= 0 {
				s.finish(s.pend[left], v)
				s.pend[left] = -1
			}
			s.push(s.poly[left], v, rightSide)
		}
		for i := i0; i < i1-1; i++ {
			if e := s.line[i]; inside(s.wind[e]) {
				s.finish(s.poly[e], v)
				if s.pend[e] >= 0 {
					s.finish(s.pend[e], v)
				}
			}
		}
		if inside(s.wind[right]) {
			p := s.poly[right]
			if s.pend[right] >= 0 {
				s.finish(p, v)
				p = s.pend[right]
			}
			s.push(p, v, leftSide)
			if l > 0 {
				s.poly[begin[l-1]], s.pend[begin[l-1]] = p, -1
			} else {
				s.pend[left] = p // two parts met in v
			}
		}
	}
	for i := 0; i+1 < l; i++ {
		if e := begin[i]; inside(s.wind[e]) {
			s.poly[e], s.pend[e] = s.start(v), -1
		}
	}
}

// divide splits the part right of the edge left at v, which no edge reaches
// from below, and returns the parts at the left and the right of v.
func (s *sweeper) divide(left, v int32) (a, b int32) {
	p := s.poly[left]
	if q := s.pend[left]; q >= 0 {
		s.push(p, v, rightSide)
		s.push(q, v, leftSide)
		return p, q
	}
	// A diagonal from the last corner of the part to v.
	c := s.start(s.nodes[s.chains[p].top].v)
	if s.chains[p].side == leftSide {
		s.push(p, v, leftSide)
		s.push(c, v, rightSide)
		return c, p
	}
	s.push(p, v, rightSide)
	s.push(c, v, leftSide)
	return p, c
}

// fan sorts the edges that begin at v from left to right.
func (s *sweeper) fan(v int32, begin []int32) error {
	for i := 1; i < len(begin); i++ {
		e := begin[i]
		j := i
		for ; j > 0; j-- {
			t := s.turn(v, s.hi[begin[j-1]], s.hi[e])
			if t == 0 {
				// The two sides of a slit: the region ends, and begins again.
				d := begin[j-1]
				if s.hi[d] != s.hi[e] || s.dir[d] == s.dir[e] {
					return ErrCrossing
				}
				t = float64(s.dir[d] - s.dir[e])
			}
			if t < 0 {
				break
			}
			begin[j] = begin[j-1]
		}
		begin[j] = e
	}
	return nil
}

// replace puts begin in the place of line[i0:i1].
func (s *sweeper) replace(i0, i1 int, begin []int32) {
	if d := len(begin) - (i1 - i0); d > 0 {
		n := len(s.line)
		s.line = slices.Grow(s.line, d)[:n+d]
		copy(s.line[i1+d:], s.line[i1:n])
	} else if d < 0 {
		copy(s.line[i1+d:], s.line[i1:])
		s.line = s.line[:len(s.line)+d]
	}
	copy(s.line[i0:], begin)
}

func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/4)
	}
	return s[:n]
}
