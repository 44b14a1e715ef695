package outline

import "math"

// maxSteps bounds the corners of a flattened circle, whatever is asked.
const maxSteps = 1 << 16

// CircleSteps is the least number of corners, 3 or more, of the area-true
// polygon of a circle of radius r that stays within tol of it, both in mm.
// Area-true: n corners at r sqrt(p/sin p), p = 2 pi/n, enclose pi r^2. The
// corners overreach by r (sqrt(p/sin p) - 1), about r p^2/12, the chords fall
// short by half of that. A radius or tolerance that is not positive gives 3
// corners or the most there are, 65536.
func CircleSteps(r, tol float64) int {
	if !(r > 0) {
		return 3
	}
	if !(tol > 0) {
		return maxSteps
	}
	over := func(n int) float64 { return float64(r * (areaTrue(n) - 1)) }
	return least(3, int(math.Min(maxSteps, math.Pi*math.Sqrt(r/(3*tol)))), func(n int) bool { return over(n) <= tol })
}

// least is the smallest n from lo to maxSteps that is ok, searched from a
// guess; ok must not turn false again.
func least(lo, guess int, ok func(int) bool) int {
	n := max(lo, min(guess, maxSteps))
	for n > lo && ok(n-1) {
		n--
	}
	for n < maxSteps && !ok(n) {
		n++
	}
	return n
}

// areaTrue is sqrt(p/sin p), p = 2 pi/n: the corner radius of the regular
// polygon with the area of the unit circle.
func areaTrue(n int) float64 {
	p := 2 * math.Pi / float64(n)
	s, _ := sincos(p)
	return math.Sqrt(p / s)
}

// arcTrue is the radius, of a unit arc, of the inner corners of m chords over
// the angle phi that enclose the area of the sector with both ends kept:
// (m-2) q^2 + 2 q = phi/sin p, p = phi/m.
func arcTrue(phi float64, m int) float64 {
	s, _ := sincos(phi / float64(m))
	k := float64(m - 2)
	// (-1 + sqrt(1 + k phi/s))/k, written without the difference.
	x := phi / s
	return x / (1 + math.Sqrt(1+float64(k*x)))
}

func arcSteps(r, phi, tol float64) int {
	if !(tol > 0) {
		return maxSteps
	}
	over := func(m int) float64 { return float64(r * (arcTrue(phi, m) - 1)) }
	return least(3, int(math.Min(maxSteps, phi/2*math.Sqrt(r/(3*tol)))), func(m int) bool { return over(m) <= tol })
}

// Flatten is the contour as a polygon with the same area and sense, within tol
// mm of it. A full circle gets CircleSteps corners, the first in the direction
// of its first vertex. Any other arc keeps its ends and gets three chords at
// least; its inner corners lie on a slightly larger circle. Straight sides are
// unchanged. A contour that is not finite gives nil.
//
// Ask distances of the contour, not of the polygon: that overreaches by tol.
func (c Contour) Flatten(tol float64) []Point {
	for _, v := range c {
		if !finite(v.X, v.Y, v.Bulge) {
			return nil
		}
	}
	if centre, d, ok := c.IsCircle(SideTest); ok {
		r := d / 2
		n := CircleSteps(r, tol)
		k := float64(r * areaTrue(n))
		u := sub(c[0].At(), centre)
		u = scale(u, 1/norm(u))
		turn := 2 * math.Pi / float64(n)
		if c[0].Bulge < 0 {
			turn = -turn
		}
		out := make([]Point, n)
		for i := range out {
			s, co := sincos(float64(turn * float64(i)))
			out[i] = along(centre, add(scale(u, co), scale(left(u), s)), k)
		}
		return out
	}
	var out []Point
	for i := range c {
		s := c.side(i)
		out = append(out, s.a)
		if s.r == 0 || !finite(s.r, s.c.X, s.c.Y) {
			continue
		}
		phi := float64(4 * atan(math.Abs(s.bulge)))
		m := arcSteps(s.r, phi, tol)
		k := arcTrue(phi, m)
		turn := math.Copysign(phi/float64(m), s.bulge)
		u := sub(s.a, s.c)
		for j := 1; j < m; j++ {
			sn, co := sincos(float64(turn * float64(j)))
			out = append(out, along(s.c, add(scale(u, co), scale(left(u), sn)), k))
		}
	}
	return out
}

// Flatten is the region in straight sides; see Contour.Flatten.
func (r Region) Flatten(tol float64) Region {
	if r == nil {
		return nil
	}
	out := make(Region, len(r))
	for i, c := range r {
		out[i] = Polygon(c.Flatten(tol)...)
	}
	return out
}
