package picture

import "math"

// bands finds, among many things with an extent in y, those that a given
// extent can touch: the height is divided into bands, each with the numbers of
// the things that reach into it.
type bands struct {
	lo, k float64
	cell  [][]int32
}

// newBands sorts n things into count bands; ext gives the extent of one.
func newBands(n, count int, ext func(int) (lo, hi float64)) *bands {
	b := &bands{cell: make([][]int32, max(count, 1))}
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range n {
		l, h := ext(i)
		lo, hi = math.Min(lo, l), math.Max(hi, h)
	}
	b.lo = lo
	if hi > lo {
		b.k = float64(len(b.cell)) / (hi - lo)
	}
	for i := range n {
		l, h := ext(i)
		for c, e := b.span(l, h); c <= e; c++ {
			b.cell[c] = append(b.cell[c], int32(i))
		}
	}
	return b
}

// span is the range of bands that an extent touches, widened a little so that
// nothing on a border is missed.
func (b *bands) span(lo, hi float64) (first, last int) {
	at := func(y, e float64) int {
		t := float64((y-b.lo)*b.k) + e
		return int(math.Max(0, math.Min(t, float64(len(b.cell)-1))))
	}
	return at(lo, -1e-6), at(hi, 1e-6)
}

// seen marks numbers as done, without clearing between rounds.
type seen struct {
	mark  []int32
	round int32
}

func (s *seen) next(n int) {
	if len(s.mark) < n {
		s.mark = append(s.mark, make([]int32, n-len(s.mark))...)
	}
	s.round++
}

func (s *seen) first(i int32) bool {
	if s.mark[i] == s.round {
		return false
	}
	s.mark[i] = s.round
	return true
}
