package bom

import (
	"math"

	"holt.example/box/outline"
)

// reach is the interval that a region covers in the direction (u, v), a unit
// vector. An empty region covers 0 to 0.
func reach(r outline.Region, u, v float64) (lo, hi float64) {
	if len(r) == 0 {
		return 0, 0
	}
	e := r.Transform(outline.Affine{XX: u, XY: v, YX: -v, YY: u}).Extents()
	return e.Min.X, e.Max.X
}

// circle reports whether a region is one full circle.
func circle(r outline.Region) (centre outline.Point, diameter float64, ok bool) {
	if len(r) != 1 {
		return centre, 0, false
	}
	return r[0].IsCircle(near)
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
