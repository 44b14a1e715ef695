package bom

import (
	"math"

	"holt.example/box/outline"
)

// reach is the interval that a region covers in the direction (u, v), a unit
// vector, its arcs included. An empty region covers 0 to 0.
func reach(r outline.Region, u, v float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	take := func(x, y float64) {
		d := float64(x*u) + float64(y*v)
		lo, hi = math.Min(lo, d), math.Max(hi, d)
	}
	for _, c := range r {
		for i, a := range c {
			take(a.X, a.Y)
			if a.Bulge == 0 {
				continue
			}
			m, radius, ok := arc(a, c[(i+1)%len(c)])
			if !ok {
				continue
			}
			for _, s := range [2]float64{1, -1} {
				x, y := float64(s*radius*u), float64(s*radius*v)
				if onArc(a, c[(i+1)%len(c)], m, x, y) {
					take(m.X+x, m.Y+y)
				}
			}
		}
	}
	if lo > hi {
		return 0, 0
	}
	return lo, hi
}

// arc is the centre and radius of the segment from a to b. With c the chord
// and k the bulge, the rise is c*k/2, the radius c(1+k^2)/(4k) and the centre
// lies c(1-k^2)/(4k) to the left of the middle of the chord.
func arc(a, b outline.Vertex) (m outline.Point, radius float64, ok bool) {
	dx, dy, k := b.X-a.X, b.Y-a.Y, a.Bulge
	if k == 0 || dx == 0 && dy == 0 {
		return m, 0, false
	}
	h := (1 - float64(k*k)) / (4 * k)
	m = outline.Point{X: (a.X+b.X)/2 - float64(dy*h), Y: (a.Y+b.Y)/2 + float64(dx*h)}
	return m, math.Hypot(a.X-m.X, a.Y-m.Y), true
}

// onArc reports whether the point at (x, y) from the centre m lies on the arc:
// on the arc's side of its chord.
func onArc(a, b outline.Vertex, m outline.Point, x, y float64) bool {
	px, py := m.X+x-a.X, m.Y+y-a.Y
	side := float64((b.X-a.X)*py) - float64((b.Y-a.Y)*px)
	return side*a.Bulge < 0 // a positive bulge lies to the right of its chord
}

// circle reports whether a region is one full circle.
func circle(r outline.Region) (centre outline.Point, diameter float64, ok bool) {
	if len(r) != 1 || len(r[0]) < 2 {
		return centre, 0, false
	}
	c := r[0]
	sweep := 0.0
	for i, a := range c {
		m, radius, arced := arc(a, c[(i+1)%len(c)])
		if !arced {
			return centre, 0, false
		}
		if i == 0 {
			centre, diameter = m, 2*radius
		} else if math.Hypot(m.X-centre.X, m.Y-centre.Y) > near || math.Abs(2*radius-diameter) > near {
			return centre, 0, false
		}
		sweep += 4 * math.Atan(a.Bulge)
	}
	return centre, diameter, math.Abs(math.Abs(sweep)-2*math.Pi) < near
}

// direction is the direction of the longest straight side of a region, turned
// to point right, or up where it is upright; (1, 0) if there is none.
func direction(r outline.Region) (u, v float64) {
	u, v = 1, 0
	best := 0.0
	for _, c := range r {
		for i, a := range c {
			b := c[(i+1)%len(c)]
			dx, dy := b.X-a.X, b.Y-a.Y
			l := math.Hypot(dx, dy)
			if a.Bulge != 0 || !(l > best+near) {
				continue
			}
			best, u, v = l, dx/l, dy/l
		}
	}
	if u < -near || math.Abs(u) <= near && v < 0 {
		u, v = -u, -v
	}
	if math.Abs(u) <= near {
		u, v = 0, 1
	}
	if math.Abs(v) <= near {
		u, v = 1, 0
	}
	return u, v
}
