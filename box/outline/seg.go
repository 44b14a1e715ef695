package outline

import "math"

// flat is the bulge below which intersections and distances take an arc as its
// chord: the centre is then so far off (25 million chords) that its rounding
// exceeds the sagitta, 5e-9 of the chord. Areas and lengths keep such arcs.
const flat = 1e-8

// seg is one side of a contour with its circle worked out; r = 0 if straight.
type seg struct {
	a, b  Point
	bulge float64
	c     Point
	r     float64
}

func newSeg(a, b Point, bulge float64) seg {
	s := seg{a: a, b: b, bulge: bulge}
	if math.Abs(bulge) < flat || !finite(bulge) || a == b {
		return s
	}
	d := sub(b, a)
	q := float64(bulge * bulge)
	s.c = along(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, left(d), (1-q)/(4*bulge))
	s.r = float64(norm(d)*(1+q)) / (4 * math.Abs(bulge))
	return s
}

// side is the segment leaving vertex i.
func (c Contour) side(i int) seg {
	j := i + 1
	if j == len(c) {
		j = 0
	}
	return newSeg(c[i].At(), c[j].At(), c[i].Bulge)
}

// sides lists the segments, arcs longer than a half circle in halves, so that
// everything that asks for a place on an arc meets half circles at most.
func (c Contour) sides() []seg {
	out := make([]seg, 0, len(c)+2)
	for i := range c {
		s := c.side(i)
		if s.r > 0 && math.Abs(s.bulge) > 1+1e-9 {
			m := s.mid()
			h := halfBulge(s.bulge)
			out = append(out, newSeg(s.a, m, h), newSeg(m, s.b, h))
			continue
		}
		out = append(out, s)
	}
	return out
}

// halfBulge is the bulge of half the sweep: tan(x/2) from tan x.
func halfBulge(b float64) float64 { return b / (1 + math.Sqrt(1+float64(b*b))) }

// mid is the point half way along.
func (s seg) mid() Point {
	d := sub(s.b, s.a)
	return Point{(s.a.X+s.b.X)/2 + float64(s.bulge*d.Y)/2, (s.a.Y+s.b.Y)/2 - float64(s.bulge*d.X)/2}
}

// length of the segment.
func (s seg) length() float64 {
	l := gap(s.a, s.b)
	if s.bulge == 0 {
		return l
	}
	return float64(l*(1+float64(s.bulge*s.bulge))) * (atan(s.bulge) / s.bulge)
}

// cap is the signed area between chord and arc, positive to the right of the
// chord. With chord l and bulge b it is r^2 (t - sin t)/2 =
// l^2 ((1+b^2)^2 atan b - b (1-b^2)) / (8 b^2), for small b by its power series
// l^2 (b/3 + b^3/15 - b^5/105 + ...), where the difference would cancel.
func (s seg) cap() float64 {
	b := s.bulge
	if b == 0 {
		return 0
	}
	d := sub(s.b, s.a)
	q := float64(b * b)
	if math.Abs(b) < 0.125 {
		// b/3 + b^3/15 - b^5/105 + ...: the signs alternate from the second on.
		t, p := 0.0, b
		for k := 1; k <= 8; k++ {
			t += p / float64((2*k+1)*(2*k-1)*(2*k-3))
			p = float64(p * -q)
		}
		return float64(-t * dot(d, d))
	}
	return float64(dot(d, d)*(float64((1+q)*(1+q)*atan(b))-float64(b*(1-q)))) / (8 * q)
}

// faces reports whether a point of the circle lies on the arc, not on the rest
// of it: the chord parts the two.
func (s seg) faces(p Point) bool {
	k := cross(sub(s.b, s.a), sub(p, s.a))
	return s.bulge > 0 && k <= 0 || s.bulge < 0 && k >= 0
}

// box is the exact extent.
func (s seg) box() Box {
	b := Box{Point{math.Min(s.a.X, s.b.X), math.Min(s.a.Y, s.b.Y)}, Point{math.Max(s.a.X, s.b.X), math.Max(s.a.Y, s.b.Y)}}
	if s.r == 0 {
		return b
	}
	// An extreme that passes an end by rounding only is that end.
	e := float64(s.r * 1e-14)
	if p := (Point{s.c.X + s.r, s.c.Y}); p.X > b.Max.X+e && s.faces(p) {
		b.Max.X = p.X
	}
	if p := (Point{s.c.X - s.r, s.c.Y}); p.X < b.Min.X-e && s.faces(p) {
		b.Min.X = p.X
	}
	if p := (Point{s.c.X, s.c.Y + s.r}); p.Y > b.Max.Y+e && s.faces(p) {
		b.Max.Y = p.Y
	}
	if p := (Point{s.c.X, s.c.Y - s.r}); p.Y < b.Min.Y-e && s.faces(p) {
		b.Min.Y = p.Y
	}
	return b
}

// reversed runs the other way.
func (s seg) reversed() seg { return seg{s.b, s.a, -s.bulge, s.c, s.r} }

// tangents are the directions, of the chord's length, at both ends: the chord
// turned by half the sweep either way.
func (s seg) tangents() (atA, atB Point) {
	d := sub(s.b, s.a)
	if s.r == 0 {
		return d, d
	}
	q := float64(s.bulge * s.bulge)
	cos, sin := (1-q)/(1+q), 2*s.bulge/(1+q)
	x, y := scale(d, cos), scale(left(d), sin)
	return sub(x, y), add(x, y)
}

// bulgeTo is the bulge of the part of the arc from p to q, both on it and in
// its direction: tan(t/4) = sin(t/2)/(1+cos(t/2)), no angle needed.
func (s seg) bulgeTo(p, q Point) float64 {
	if s.r == 0 {
		return 0
	}
	u, v := sub(p, s.c), sub(q, s.c)
	b := norm(sub(v, u)) / (2*s.r + norm(add(u, v)))
	return math.Copysign(math.Min(b, 1), s.bulge)
}
