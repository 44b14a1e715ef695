package solid

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box/outline"
)

// farthest is the largest coordinate, mm, that makes sense.
const farthest = 1e9

// Triangulate divides the region inside plane rings into triangles,
// anticlockwise. A place is inside when an odd number of rings surround it, so
// the sense of the rings and their order do not matter. The numbers in the
// result count the points of all rings in a row.
//
// Rings may touch and share sides; points that lie in the middle of a side
// become corners of triangles. Points within tol of each other count as one and
// a point within tol of a side as lying on it; 0 stands for 1e-9 of the extent
// of the rings. The triangles are Delaunay within the rings. Rings that cross
// give ErrCrossing, numbers that are not finite or beyond 1e9 mm ErrNumber. What encloses nothing
// gives no triangles and no error. It takes n log n time.
func Triangulate(rings [][]outline.Point, tol float64) ([][3]int, error) {
	n := 0
	lo, hi := Vec{math.Inf(1), math.Inf(1), 0}, Vec{math.Inf(-1), math.Inf(-1), 0}
	for i, r := range rings {
		for k, p := range r {
			if !(math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest) {
				return nil, fmt.Errorf("%w: ring %d, point %d is %v", ErrNumber, i, k, p)
			}
			lo.X, lo.Y = min(lo.X, p.X), min(lo.Y, p.Y)
			hi.X, hi.Y = max(hi.X, p.X), max(hi.Y, p.Y)
		}
		n += len(r)
	}
	size := max(hi.X-lo.X, hi.Y-lo.Y)
	if n < 3 || !(size > 0) {
		return nil, nil
	}
	// Work at the size 1: the extent may be anything.
	if !(tol > 0) {
		tol = 1e-9 * size
	}
	w := newWelder(n, max(tol/size, 1e-15))
	ids := make([]int32, 0, n)
	for _, r := range rings {
		for _, p := range r {
			ids = append(ids, w.add(Vec{(p.X - lo.X) / size, (p.Y - lo.Y) / size, 0}))
		}
	}
	cluster, at := w.finish()
	point := make([]int, len(at)) // a point of each cluster
	for i := len(ids) - 1; i >= 0; i-- {
		ids[i] = cluster[ids[i]]
		point[ids[i]] = i
	}
	edges := oddEdges(rings, ids, newLiners(at, w.r))
	s := sweeper{evenOdd: true, x: make([]float64, len(at)), y: make([]float64, len(at))}
	for i, p := range at {
		s.x[i], s.y[i] = p.X, p.Y
	}
	if err := s.run(edges); err != nil {
		return nil, err
	}
	var f flipper
	f.run(s.tri, s.x, s.y)
	out := make([][3]int, 0, len(s.tri))
	for _, t := range s.tri {
		out = append(out, [3]int{point[t[0]], point[t[1]], point[t[2]]})
	}
	return out, nil
}

// oddEdges are the sides of the rings between neighbouring points, those left
// out that occur an even number of times.
func oddEdges(rings [][]outline.Point, ids []int32, lines *liners) [][2]int32 {
	var all [][2]int32
	add := func(a, b int32) {
		if a > b {
			a, b = b, a
		}
		all = append(all, [2]int32{a, b})
	}
	k := 0
	for _, r := range rings {
		loop := ids[k : k+len(r)]
		k += len(r)
		for i, b := range loop {
			a := loop[(i+len(loop)-1)%len(loop)]
			if a == b {
				continue
			}
			last := min(a, b)
			for _, h := range lines.between(a, b) {
				add(last, h.v)
				last = h.v
			}
			add(last, max(a, b))
		}
	}
	slices.SortFunc(all, func(x, y [2]int32) int {
		if x[0] != y[0] {
			return int(x[0] - y[0])
		}
		return int(x[1] - y[1])
	})
	out := all[:0]
	for lo := 0; lo < len(all); {
		hi := lo + 1
		for hi < len(all) && all[hi] == all[lo] {
			hi++
		}
		if e := all[lo]; (hi-lo)%2 == 1 {
			out = append(out, e)
		}
		lo = hi
	}
	return out
}
