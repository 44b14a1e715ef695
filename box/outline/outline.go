package outline

import "math"

// Point is a place in the plane, in millimetres.
type Point struct{ X, Y float64 }

// Vertex is a corner of a contour together with the segment that leaves it.
// Bulge is tan(sweep/4) of that segment: 0 is a straight line, positive turns
// anticlockwise, 1 is a half circle. This is the arc form of the open DXF
// format (group code 42), so contours reach a file without conversion.
type Vertex struct{ X, Y, Bulge float64 }

// At returns the place of the vertex.
func (v Vertex) At() Point { return Point{v.X, v.Y} }

// Contour is a closed run of lines and arcs; the last vertex joins the first
// and is not repeated. An anticlockwise contour encloses material, a clockwise
// one a hole.
type Contour []Vertex

// Region is a flat area: outer contours anticlockwise, holes clockwise, none
// of them crossing.
type Region []Contour

// Box is an axis-parallel rectangle. The zero Box is the point at the origin.
type Box struct{ Min, Max Point }

// Width is the extent along x.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height is the extent along y.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// HalfPlane is the set of points with A*x + B*y <= C.
type HalfPlane struct{ A, B, C float64 }

// Affine maps (x, y) to (XX*x + XY*y + X0, YX*x + YY*y + Y0). Contours are
// mapped only by similarities (turn, mirror, shift, equal scale), which keep
// arcs circular.
type Affine struct{ XX, XY, X0, YX, YY, Y0 float64 }

// Polygon is the contour through the points, all its sides straight.
func Polygon(p ...Point) Contour {
	c := make(Contour, len(p))
	for i, q := range p {
		c[i] = Vertex{q.X, q.Y, 0}
	}
	return c
}

// Rectangle is the anticlockwise rectangle between two opposite corners.
func Rectangle(x0, y0, x1, y1 float64) Contour {
	x0, x1 = math.Min(x0, x1), math.Max(x0, x1)
	y0, y1 = math.Min(y0, y1), math.Max(y0, y1)
	return Contour{{x0, y0, 0}, {x1, y0, 0}, {x1, y1, 0}, {x0, y1, 0}}
}

// Circle is the anticlockwise circle of the given diameter: two half circles.
func Circle(centre Point, diameter float64) Contour {
	r := diameter / 2
	return Contour{{centre.X + r, centre.Y, 1}, {centre.X - r, centre.Y, 1}}
}
