package outline

import "math"

// distance from p to the nearest of the segments; +Inf if there is none.
func distance(segs []seg, p Point) float64 {
	d := math.Inf(1)
	for i := range segs {
		if e := segs[i].distance(p); e < d {
			d = e
		}
	}
	return d
}

// distance from p to the segment: to the foot if that is on it, else to the
// nearer end.
func (s *seg) distance(p Point) float64 {
	if s.r == 0 {
		d := sub(s.b, s.a)
		v := sub(p, s.a)
		l := dot(d, d)
		t := dot(v, d)
		if t <= 0 || l == 0 {
			return norm(v)
		}
		if t >= l {
			return gap(p, s.b)
		}
		return math.Abs(cross(d, v)) / math.Sqrt(l)
	}
	v := sub(p, s.c)
	l := norm(v)
	if l == 0 {
		return s.r
	}
	if s.faces(along(s.c, v, s.r/l)) {
		return math.Abs(l - s.r)
	}
	return math.Min(gap(p, s.a), gap(p, s.b))
}

// Distance is the least distance from p to the boundary, arcs exact, never
// negative; +Inf for an empty contour.
func (c Contour) Distance(p Point) float64 { return distance(c.sides(), p) }

// Distance is the least distance from p to any boundary; +Inf if there is none.
func (r Region) Distance(p Point) float64 {
	d := math.Inf(1)
	for _, c := range r {
		d = math.Min(d, c.Distance(p))
	}
	return d
}
