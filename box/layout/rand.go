package layout

import (
	"math/bits"
	"sort"
)

// source is a small random source (SplitMix64): the same numbers on every
// machine and in every version of Go.
type source uint64

func (s *source) next() uint64 {
	*s += 0x9e3779b97f4a7c15
	z := uint64(*s)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// n is a whole number from 0 to k-1, k > 0.
func (s *source) n(k int) int {
	hi, _ := bits.Mul64(s.next(), uint64(k))
	return int(hi)
}

// f is a number from 0 to 1, 1 excluded.
func (s *source) f() float64 { return float64(s.next()>>11) / (1 << 53) }

// stream is the source of one of several streams.
func stream(seed uint64, k int) source {
	s := source(seed ^ uint64(k+1)*0xd1342543de82ef95)
	s.next()
	return s
}

// stableSort sorts by a comparison of the values.
func stableSort(list []int32, less func(a, b int32) bool) {
	sort.SliceStable(list, func(i, j int) bool { return less(list[i], list[j]) })
}
