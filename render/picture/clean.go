package picture

import (
	"math"
	"sort"
)

// near is the distance on the page, in mm, within which lines count as one: a
// tenth of the finest pen.
const near = 0.02

// clean drops what would be drawn twice: parts that touch have the same edge,
// or a piece of it, each for itself, and printed twice it would look darker.
// Bolder lines win over finer ones, then longer over shorter; of the others
// only what reaches beyond remains.
func clean(lines []Line) []Line {
	order := make([]int, len(lines))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool {
		a, b := lines[order[i]], lines[order[j]]
		if a.Class != b.Class {
			return a.Class < b.Class
		}
		return a.Length() > b.Length()
	})
	index := newBands(len(lines), len(lines)/2+1, func(i int) (float64, float64) {
		a, b := lines[i].From.Y, lines[i].To.Y
		return math.Min(a, b) - near, math.Max(a, b) + near
	})
	kept := make([][]Line, len(lines))
	var done seen
	for _, i := range order {
		l := lines[i]
		n := l.Length()
		if n < 0.01 {
			continue
		}
		done.next(len(lines))
		var taken []span
		for c, e := index.span(math.Min(l.From.Y, l.To.Y), math.Max(l.From.Y, l.To.Y)); c <= e; c++ {
			for _, j := range index.cell[c] {
				if !done.first(j) {
					continue
				}
				for _, k := range kept[j] {
					if v, ok := shared(l, k, n); ok {
						taken = append(taken, v)
					}
				}
			}
		}
		if len(taken) == 0 {
			kept[i] = []Line{l}
			continue
		}
		for _, v := range without(span{0, 1}, union(taken, near/n)) {
			if (v.b-v.a)*n >= 2*near {
				m := l
				m.From, m.To = along(l, v.a), along(l, v.b)
				kept[i] = append(kept[i], m)
			}
		}
	}
	out := make([]Line, 0, len(lines))
	for _, k := range kept {
		out = append(out, k...)
	}
	return out
}

func along(l Line, t float64) Point {
	return Point{l.From.X + float64(t*(l.To.X-l.From.X)), l.From.Y + float64(t*(l.To.Y-l.From.Y))}
}

// shared is the range of l, n long, that k lies on. The longer of the two
// gives the direction: a short one says little about it.
func shared(l, k Line, n float64) (span, bool) {
	if math.Max(k.From.X, k.To.X) < math.Min(l.From.X, l.To.X)-near ||
		math.Min(k.From.X, k.To.X) > math.Max(l.From.X, l.To.X)+near {
		return span{}, false
	}
	long, short := l, k
	m := n
	if kn := k.Length(); kn > n {
		long, short, m = k, l, kn
	}
	dx, dy := (long.To.X-long.From.X)/m, (long.To.Y-long.From.Y)/m
	for _, p := range [2]Point{short.From, short.To} {
		if math.Abs(float64(dx*(p.Y-long.From.Y))-float64(dy*(p.X-long.From.X))) > near {
			return span{}, false
		}
	}
	dx, dy = (l.To.X-l.From.X)/n, (l.To.Y-l.From.Y)/n
	at := func(p Point) float64 {
		return (float64(dx*(p.X-l.From.X)) + float64(dy*(p.Y-l.From.Y))) / n
	}
	v := span{at(k.From), at(k.To)}
	if v.a > v.b {
		v.a, v.b = v.b, v.a
	}
	v.a, v.b = math.Max(v.a, 0), math.Min(v.b, 1)
	return v, (v.b-v.a)*n > near/2
}
