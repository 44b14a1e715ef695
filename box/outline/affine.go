package outline

import "math"

// Shift moves by (dx, dy).
func Shift(dx, dy float64) Affine { return Affine{1, 0, dx, 0, 1, dy} }

// Turn turns anticlockwise about the origin, in degrees. Multiples of 90 are
// exact, and so is the symmetry of angles that differ by them.
func Turn(deg float64) Affine {
	deg = math.Remainder(deg, 360)
	q := math.Floor(deg/90 + 0.5)
	s, c := sincos(float64((deg - float64(q*90)) * (math.Pi / 180)))
	switch int(q) & 3 {
	case 1:
		s, c = c, -s
	case 2:
		s, c = -s, -c
	case 3:
		s, c = -c, s
	}
	// Zero has no sign here, so that a quarter turn prints and compares as such.
	return Affine{c + 0, 0 - s, 0, s + 0, c + 0, 0}
}

// Scale enlarges by k about the origin, the same both ways, k > 0.
func Scale(k float64) Affine { return Affine{k, 0, 0, 0, k, 0} }

// MirrorX turns x into -x: left and right change places.
func MirrorX() Affine { return Affine{-1, 0, 0, 0, 1, 0} }

// MirrorY turns y into -y: top and bottom change places.
func MirrorY() Affine { return Affine{1, 0, 0, 0, -1, 0} }

// Then is a first and b after it.
func (a Affine) Then(b Affine) Affine {
	row := func(x, y, o float64) (float64, float64, float64) {
		return float64(x*a.XX) + float64(y*a.YX), float64(x*a.XY) + float64(y*a.YY), float64(x*a.X0) + float64(y*a.Y0) + o
	}
	var r Affine
	r.XX, r.XY, r.X0 = row(b.XX, b.XY, b.X0)
	r.YX, r.YY, r.Y0 = row(b.YX, b.YY, b.Y0)
	return r
}

// Inverse undoes a, which must not squash the plane: the determinant of the
// result of a singular map is not finite.
func (a Affine) Inverse() Affine {
	d := a.det()
	r := Affine{XX: a.YY / d, XY: -a.XY / d, YX: -a.YX / d, YY: a.XX / d}
	r.X0 = -(float64(r.XX*a.X0) + float64(r.XY*a.Y0))
	r.Y0 = -(float64(r.YX*a.X0) + float64(r.YY*a.Y0))
	return r
}

func (a Affine) det() float64 { return float64(a.XX*a.YY) - float64(a.XY*a.YX) }

// Mirrors reports whether the map turns the plane over.
func (a Affine) Mirrors() bool { return a.det() < 0 }

// Apply maps a point.
func (a Affine) Apply(p Point) Point {
	return Point{float64(a.XX*p.X) + float64(a.XY*p.Y) + a.X0, float64(a.YX*p.X) + float64(a.YY*p.Y) + a.Y0}
}

// Reverse is the same boundary run the other way: the first vertex stays first,
// the area changes sign.
func (c Contour) Reverse() Contour {
	n := len(c)
	out := make(Contour, n)
	for i := range c {
		v := c[(n-i)%n]
		out[i] = Vertex{v.X, v.Y, -c[n-1-i].Bulge + 0}
	}
	return out
}

// Transform maps the contour by a similarity. The first vertex stays first and
// the sense stays: after a mirror the contour is also run the other way, so an
// anticlockwise one is still anticlockwise and a hole still a hole. Maps that
// stretch one way only would need ellipses: they give a wrong shape if the
// contour has arcs.
func (c Contour) Transform(a Affine) Contour {
	out := make(Contour, len(c))
	for i, v := range c {
		p := a.Apply(v.At())
		out[i] = Vertex{p.X, p.Y, v.Bulge}
	}
	if !a.Mirrors() {
		return out
	}
	for i := range out {
		out[i].Bulge = -out[i].Bulge
	}
	return out.Reverse()
}

// Transform maps every contour; see Contour.Transform.
func (r Region) Transform(a Affine) Region {
	if r == nil {
		return nil
	}
	out := make(Region, len(r))
	for i, c := range r {
		out[i] = c.Transform(a)
	}
	return out
}

// Reverse runs every contour the other way.
func (r Region) Reverse() Region {
	if r == nil {
		return nil
	}
	out := make(Region, len(r))
	for i, c := range r {
		out[i] = c.Reverse()
	}
	return out
}
