package outline

import "math"

// between is the least distance between two segments, in closed form. Unless
// they cross it is taken at an end of one, or where the line through both
// points is square to both: through the centre of every arc.
func between(s, t *seg) float64 {
	var buf [4]Point
	if len(crossings(buf[:0], s, t, 0)) > 0 {
		return 0
	}
	d := math.Min(math.Min(t.distance(s.a), t.distance(s.b)), math.Min(s.distance(t.a), s.distance(t.b)))
	switch {
	case s.r == 0 && t.r == 0:
		return d
	case s.r == 0:
		return math.Min(d, lineArc(s, t))
	case t.r == 0:
		return math.Min(d, lineArc(t, s))
	}
	o := sub(t.c, s.c)
	l := norm(o)
	if l == 0 {
		return d // one centre: the gap is constant, so some end has it
	}
	u := scale(o, 1/l)
	for _, i := range [2]float64{-s.r, s.r} {
		p := along(s.c, u, i)
		if !s.faces(p) {
			continue
		}
		for _, j := range [2]float64{-t.r, t.r} {
			if q := along(t.c, u, j); t.faces(q) {
				d = math.Min(d, math.Abs(l+j-i))
			}
		}
	}
	return d
}

// lineArc is the distance along the perpendicular from the centre of t to s.
func lineArc(s, t *seg) float64 {
	e := sub(s.b, s.a)
	v := sub(t.c, s.a)
	l := dot(e, e)
	k := dot(v, e)
	if !(k >= 0 && k <= l) || l == 0 {
		return math.Inf(1)
	}
	n := scale(left(e), 1/math.Sqrt(l))
	h := dot(n, v) // the centre stands h beyond the line, along n
	d := math.Inf(1)
	for _, i := range [2]float64{-t.r, t.r} {
		if t.faces(along(t.c, n, i)) {
			d = math.Min(d, math.Abs(h+i))
		}
	}
	return d
}

// apart is a lower bound of the distance between anything in the boxes.
func (b Box) apart(d Box) float64 {
	x := math.Max(0, math.Max(b.Min.X-d.Max.X, d.Min.X-b.Max.X))
	y := math.Max(0, math.Max(b.Min.Y-d.Max.Y, d.Min.Y-b.Max.Y))
	return math.Sqrt(float64(x*x) + float64(y*y))
}

// DistanceTo is the exact least distance between two boundaries: 0 if they
// cross or touch, the width of the ring between them if one lies in the other,
// +Inf if one is empty.
func (c Contour) DistanceTo(d Contour) float64 { return distanceSides(c.sides(), d.sides()) }

// DistanceTo is the least distance between a boundary of r and one of s; see
// Contour.DistanceTo.
func (r Region) DistanceTo(s Region) float64 { return distanceSides(r.sides(), s.sides()) }

func (r Region) sides() []seg {
	var out []seg
	for _, c := range r {
		out = append(out, c.sides()...)
	}
	return out
}

func distanceSides(a, b []seg) float64 {
	if len(a) == 0 || len(b) == 0 {
		return math.Inf(1)
	}
	d := search{a, b, boxTree(a), boxTree(b), math.Inf(1)}
	d.descend(span{0, len(a), 1}, span{0, len(b), 1})
	return d.best
}

// boxTree holds the boxes of ever halved stretches of the sides: node 1 is all
// of them, node k has 2k and 2k+1 below it. Neighbours in a contour are
// neighbours in the plane, so no sorting is needed.
func boxTree(s []seg) []Box {
	size := 1
	for size < len(s) {
		size *= 2
	}
	t := make([]Box, 2*size)
	var fill func(n span) Box
	fill = func(n span) Box {
		if n.hi-n.lo == 1 {
			t[n.node] = s[n.lo].box()
		} else {
			l, r := n.halves()
			t[n.node] = fill(l).Join(fill(r))
		}
		return t[n.node]
	}
	fill(span{0, len(s), 1})
	return t
}

type span struct{ lo, hi, node int }

func (s span) halves() (l, r span) {
	m := (s.lo + s.hi + 1) / 2
	return span{s.lo, m, 2 * s.node}, span{m, s.hi, 2*s.node + 1}
}

// search is a descent into two trees for the nearest pair.
type search struct {
	a, b         []seg
	treeA, treeB []Box
	best         float64
}

func (d *search) apart(x, y span) float64 { return d.treeA[x.node].apart(d.treeB[y.node]) }

func (d *search) descend(x, y span) {
	if !(d.apart(x, y) < d.best) {
		return
	}
	one, other := x.hi-x.lo, y.hi-y.lo
	if one == 1 && other == 1 {
		d.best = math.Min(d.best, between(&d.a[x.lo], &d.b[y.lo]))
		return
	}
	// Halve the longer stretch, the nearer half first.
	if one >= other {
		l, r := x.halves()
		if d.apart(r, y) < d.apart(l, y) {
			l, r = r, l
		}
		d.descend(l, y)
		d.descend(r, y)
		return
	}
	l, r := y.halves()
	if d.apart(x, r) < d.apart(x, l) {
		l, r = r, l
	}
	d.descend(x, l)
	d.descend(x, r)
}
