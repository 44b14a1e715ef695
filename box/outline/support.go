package outline

import "math"

// Support is the greatest x*p.X + y*p.Y over the points p of the contour: how
// far it reaches in the direction (x, y), of length 1, arcs exact. -Inf for an
// empty contour.
func (c Contour) Support(x, y float64) float64 {
	far := math.Inf(-1)
	n := Point{x, y}
	for i := range c {
		if d := dot(n, c[i].At()); d > far {
			far = d
		}
		if c[i].Bulge == 0 {
			continue
		}
		s := c.side(i)
		if s.r == 0 {
			continue
		}
		top := along(s.c, n, s.r)
		if d := dot(n, top); d > far && s.faces(top) {
			far = d
		}
	}
	return far
}
