package joints

import "math"

// This file cuts convex polygons in the plane of a and b. Products are wrapped
// in float64, so that no processor fuses them and all find the same digits.

type point struct{ a, b float64 }

// cell is a convex polygon, anticlockwise, of three points or more.
type cell []point

// maxCells is where a section counts as nonsense: the joints here need six.
const maxCells = 4096

// bench is scratch space for the points of cells, so that a check of a common
// section asks for memory only a few times.
type bench struct {
	block []point
	tiny  float64 // areas not worth keeping
}

func (w *bench) room(n int) []point {
	if cap(w.block)-len(w.block) < n {
		w.block = make([]point, 0, max(256, n))
	}
	k := len(w.block)
	w.block = w.block[:k+n]
	return w.block[k : k : k+n]
}

func (l Line) over(p point) float64 {
	return float64(l.A*p.a) + float64(l.B*p.b) - l.K
}

func (l Line) flip() Line { return Line{A: -l.A, B: -l.B, K: -l.K} }

// cut is the part of p on the kept side of l, nil if nothing remains.
func (w *bench) cut(p cell, l Line) cell {
	in, out := false, false
	for _, q := range p {
		if v := l.over(q); v < 0 {
			in = true
		} else if v > 0 {
			out = true
		}
	}
	if !out {
		return p
	}
	if !in {
		return nil
	}
	kept := cell(w.room(len(p) + 2))
	last := p[len(p)-1]
	u := l.over(last)
	for _, q := range p {
		v := l.over(q)
		if (u < 0 && v > 0) || (u > 0 && v < 0) {
			t := u / (u - v)
			kept = append(kept, point{last.a + float64(t*(q.a-last.a)), last.b + float64(t*(q.b-last.b))})
		}
		if v <= 0 {
			kept = append(kept, q)
		}
		last, u = q, v
	}
	if len(kept) < 3 {
		return nil
	}
	return kept
}

func (w *bench) cutAll(p cell, lines []Line) cell {
	for _, l := range lines {
		if p = w.cut(p, l); p == nil {
			return nil
		}
	}
	return p
}

// less appends to into what remains of p when the zone is taken away.
func (w *bench) less(into []cell, p cell, zone []Line) []cell {
	if q := w.cutAll(p, zone); q == nil || !(q.area() > w.tiny) {
		return append(into, p)
	}
	for _, l := range zone {
		if q := w.cut(p, l.flip()); q != nil && q.area() > w.tiny {
			into = append(into, q)
		}
		if p = w.cut(p, l); p == nil {
			break
		}
	}
	return into
}

// common is the area of both p and q.
func (w *bench) common(p, q cell) float64 {
	last := q[len(q)-1]
	for _, next := range q {
		// The inner side of an edge walked anticlockwise is on its left.
		da, db := next.a-last.a, next.b-last.b
		if p = w.cut(p, Line{A: db, B: -da, K: float64(db*last.a) - float64(da*last.b)}); p == nil {
			return 0
		}
		last = next
	}
	return p.area()
}

// overlap is the area that two sets of cells have in common.
func (w *bench) overlap(ps, qs []cell) float64 {
	sum := 0.0
	for _, p := range ps {
		for _, q := range qs {
			sum += w.common(p, q)
		}
	}
	return sum
}

func (p cell) area() float64 {
	sum := 0.0
	for i := 2; i < len(p); i++ {
		u, v := point{p[i-1].a - p[0].a, p[i-1].b - p[0].b}, point{p[i].a - p[0].a, p[i].b - p[0].b}
		sum += float64(u.a*v.b) - float64(u.b*v.a)
	}
	return sum / 2
}

func area(ps []cell) float64 {
	sum := 0.0
	for _, p := range ps {
		sum += p.area()
	}
	return sum
}

// sound reports whether the line has a direction and finite numbers, also when
// it is given a direction of length 1.
func (l Line) sound() bool {
	h := math.Hypot(l.A, l.B)
	return h > 0 && finite(h) && finite(l.K/h)
}
