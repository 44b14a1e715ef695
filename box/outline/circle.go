package outline

import "math"

// SideTest is the distance, in mm, within which two places count as one. Twice
// the rounding of coordinates of ten metres is 4e-12, so there is room above
// and below.
const SideTest = 1e-7

// IsCircle reports whether the contour is one full circle, however many arcs it
// is made of and in whichever sense, with centres and radii equal within tol.
func (c Contour) IsCircle(tol float64) (centre Point, diameter float64, ok bool) {
	if len(c) < 2 {
		return Point{}, 0, false
	}
	var best seg
	long, sweep := -1.0, 0.0
	for i := range c {
		s := c.side(i)
		if s.r == 0 || !(float64(s.bulge*c[0].Bulge) > 0) || !finite(s.r, s.c.X, s.c.Y) {
			return Point{}, 0, false
		}
		sweep += 4 * atan(math.Abs(s.bulge))
		// The longest chord knows its centre best.
		if l := gap(s.a, s.b); l > long {
			best, long = s, l
		}
	}
	if !(math.Abs(sweep-2*math.Pi) < 1e-3) {
		return Point{}, 0, false
	}
	for i := range c {
		if !(math.Abs(gap(c[i].At(), best.c)-best.r) <= tol) || !(math.Abs(gap(c.side(i).mid(), best.c)-best.r) <= tol) {
			return Point{}, 0, false
		}
	}
	return best.c, 2 * best.r, true
}
