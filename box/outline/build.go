package outline

import "math"

// Slot is the anticlockwise slot of the given overall size, in mm, its two
// shorter sides half circles; a circle if both are equal. A size that is not
// positive gives nil.
func Slot(centre Point, width, height float64) Contour {
	return RoundedRectangle(centre.X-width/2, centre.Y-height/2, centre.X+width/2, centre.Y+height/2, math.Min(width, height)/2)
}

// RoundedRectangle is the anticlockwise rectangle between two opposite corners,
// its corners quarter circles of radius r; r from 0 (sharp) to half the shorter
// side, to which a larger one is cut (a slot, or a circle). A rectangle without
// area gives nil.
func RoundedRectangle(x0, y0, x1, y1, r float64) Contour {
	x0, x1 = math.Min(x0, x1), math.Max(x0, x1)
	y0, y1 = math.Min(y0, y1), math.Max(y0, y1)
	w, h := x1-x0, y1-y0
	if !(w > 0 && h > 0) {
		return nil
	}
	if !(r > 0) {
		return Rectangle(x0, y0, x1, y1)
	}
	r = math.Min(r, math.Min(w, h)/2)
	flatX, flatY := float64(2*r) < w-SideTest, float64(2*r) < h-SideTest
	switch {
	case !flatX && !flatY:
		return Circle(Point{(x0 + x1) / 2, (y0 + y1) / 2}, w)
	case !flatX:
		r = w / 2
		return Contour{{x1, y0 + r, 0}, {x1, y1 - r, 1}, {x0, y1 - r, 0}, {x0, y0 + r, 1}}
	case !flatY:
		r = h / 2
		return Contour{{x0 + r, y0, 0}, {x1 - r, y0, 1}, {x1 - r, y1, 0}, {x0 + r, y1, 1}}
	}
	q := math.Sqrt2 - 1 // tan(90/4): a quarter circle
	return Contour{
		{x0 + r, y0, 0}, {x1 - r, y0, q}, {x1, y0 + r, 0}, {x1, y1 - r, q},
		{x1 - r, y1, 0}, {x0 + r, y1, q}, {x0, y1 - r, 0}, {x0, y0 + r, q},
	}
}

// RegularPolygon is the anticlockwise polygon of n equal sides, its corners on
// the circle of the given radius, the first in the direction turn, degrees from
// the x axis. Fewer than three corners or no radius give nil.
func RegularPolygon(centre Point, n int, radius, turn float64) Contour {
	if n < 3 || !(radius > 0) {
		return nil
	}
	out := make(Contour, n)
	for i := range out {
		p := Turn(turn + 360*float64(i)/float64(n)).Apply(Point{radius, 0})
		out[i] = Vertex{centre.X + p.X, centre.Y + p.Y, 0}
	}
	return out
}

// Oval is the anticlockwise four-centred oval of the given overall size: arcs
// that meet without a corner, as drawn with compasses (take the difference of
// the half axes off the line that joins their ends; the perpendicular through
// the middle of the rest meets the axes in the centres). A circle if both sizes
// are equal, nil if one is not positive. It is not an ellipse.
func Oval(centre Point, width, height float64) Contour {
	if !(width > 0 && height > 0) {
		return nil
	}
	if width < height {
		up := Oval(Point{}, height, width)
		return up.Transform(Turn(90).Then(Shift(centre.X, centre.Y)))
	}
	a, b := width/2, height/2
	if !(a-b > SideTest) {
		return Circle(centre, width)
	}
	l := math.Sqrt(float64(a*a) + float64(b*b))
	half := (l - (a - b)) / 2 // half of what is left of the joining line
	small := float64(half*l) / a
	large := float64((a-b+half)*l) / b
	// The circles touch where the line of their centres, square to the joining
	// line and so along (b, a)/l, leaves the small one.
	x, y := a-small+float64(small*b)/l, float64(small*a)/l
	s := Contour{{x, -y, 0}, {x, y, 0}, {-x, y, 0}, {-x, -y, 0}}
	for i := range s {
		p, q := s[i].At(), s[(i+1)%4].At()
		r := large
		if i%2 == 0 {
			r = small
		}
		// tan(t/4) with sin(t/2) = chord/2r, the sweep less than a half circle.
		k := gap(p, q) / (2 * r)
		s[i].Bulge = k / (1 + math.Sqrt(math.Max(0, 1-float64(k*k))))
	}
	return s.Transform(Shift(centre.X, centre.Y))
}
