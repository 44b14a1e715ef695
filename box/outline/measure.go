package outline

import "math"

// Area is the enclosed area in square millimetres, arcs exact: positive for an
// anticlockwise contour, negative for a clockwise one, 0 for an empty one.
// Shoelace sum about the first vertex plus the caps between chords and arcs.
func (c Contour) Area() float64 {
	if len(c) == 0 {
		return 0
	}
	o := c[0].At()
	sum, caps := 0.0, 0.0
	for i := range c {
		s := c.side(i)
		sum += cross(sub(s.a, o), sub(s.b, o))
		caps += s.cap()
	}
	return sum/2 + caps
}

// Length is the length of the boundary in millimetres, arcs exact.
func (c Contour) Length() float64 {
	sum := 0.0
	for i := range c {
		sum += c.side(i).length()
	}
	return sum
}

// Extents is the least axis-parallel box round the contour, arcs exact. An
// empty contour has the zero Box.
func (c Contour) Extents() Box {
	var b Box
	for i := range c {
		if i == 0 {
			b = c.side(0).box()
			continue
		}
		b = b.Join(c.side(i).box())
	}
	return b
}

// Join is the least box round both.
func (b Box) Join(d Box) Box {
	return Box{
		Point{math.Min(b.Min.X, d.Min.X), math.Min(b.Min.Y, d.Min.Y)},
		Point{math.Max(b.Max.X, d.Max.X), math.Max(b.Max.Y, d.Max.Y)},
	}
}

// Overlaps reports whether the boxes come within tol of each other.
func (b Box) Overlaps(d Box, tol float64) bool {
	return b.Min.X <= d.Max.X+tol && d.Min.X <= b.Max.X+tol && b.Min.Y <= d.Max.Y+tol && d.Min.Y <= b.Max.Y+tol
}

// Centre is the middle of the box.
func (b Box) Centre() Point { return Point{(b.Min.X + b.Max.X) / 2, (b.Min.Y + b.Max.Y) / 2} }

// moments are area and first moments about o.
func (c Contour) moments(o Point) (area, mx, my float64) {
	for i := range c {
		s := c.side(i)
		a, b := sub(s.a, o), sub(s.b, o)
		k := cross(a, b) / 2
		area += k
		mx += float64(k*(a.X+b.X)) / 3
		my += float64(k*(a.Y+b.Y)) / 3
		if s.r == 0 {
			continue
		}
		// The cap's centroid lies l^3/(12 cap) from the circle's centre
		// towards the arc (geometry: 4 r sin^3(t/2) / (3 (t - sin t)) with
		// l = 2 r sin(t/2)), so its moment needs no division.
		k = s.cap()
		d := sub(s.b, s.a)
		m := add(scale(sub(s.c, o), k), scale(left(d), -dot(d, d)/12))
		area += k
		mx += m.X
		my += m.Y
	}
	return area, mx, my
}

// Centroid is the centre of gravity of the enclosed area, arcs exact. A contour
// without area has the centre of its extents.
func (c Contour) Centroid() Point {
	if len(c) == 0 {
		return Point{}
	}
	return Region{c}.Centroid()
}

// Area is the sum of the signed areas: material less holes.
func (r Region) Area() float64 {
	sum := 0.0
	for _, c := range r {
		sum += c.Area()
	}
	return sum
}

// Length is the length of all boundaries, holes included.
func (r Region) Length() float64 {
	sum := 0.0
	for _, c := range r {
		sum += c.Length()
	}
	return sum
}

// Extents is the least box round the region; the zero Box if it is empty.
func (r Region) Extents() Box {
	var b Box
	first := true
	for _, c := range r {
		if len(c) == 0 {
			continue
		}
		if first {
			b, first = c.Extents(), false
			continue
		}
		b = b.Join(c.Extents())
	}
	return b
}

// Centroid is the centre of gravity, holes left out. A region without area has
// the centre of its extents.
func (r Region) Centroid() Point {
	o := r.Extents().Centre()
	var area, mx, my float64
	for _, c := range r {
		a, x, y := c.moments(o)
		area, mx, my = area+a, mx+x, my+y
	}
	if area == 0 || !finite(area, mx, my) {
		return o
	}
	return Point{o.X + mx/area, o.Y + my/area}
}
