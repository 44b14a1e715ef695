package flat

import (
	"math"

	"holt.example/box/outline"
)

// Circle is a full circle: its centre and radius in mm.
type Circle struct{ X, Y, R float64 }

// roundTolerance is how far, in mm, the arcs of a contour may disagree about
// centre and radius and still be one circle: a tenth of what is written.
const roundTolerance = Step / 10

// ArcOf is the centre and radius of the arc from p to q with bulge b, which is
// not 0. With b = tan(sweep/4) the half chord h is r sin(sweep/2) and the
// centre lies r cos(sweep/2) to the left of the chord, so r = h(1+b*b)/(2b)
// and the distance is h(1-b*b)/(2b).
func ArcOf(p, q outline.Point, b float64) (c outline.Point, r float64) {
	dx, dy := q.X-p.X, q.Y-p.Y
	bb := float64(b * b)
	k := (1 - bb) / (4 * b)
	c = outline.Point{
		X: (p.X+q.X)/2 - float64(dy*k),
		Y: (p.Y+q.Y)/2 + float64(dx*k),
	}
	return c, math.Hypot(dx, dy) * (1 + bb) / (4 * math.Abs(b))
}

// onGrid puts the corners of a contour on the grid and drops those that
// thereby fall on their neighbour. Bulges stay: an end moved by half a step
// moves its arc by no more.
func onGrid(c outline.Contour) outline.Contour {
	d := make(outline.Contour, 0, len(c))
	for _, v := range c {
		v.X, v.Y = Grid(v.X), Grid(v.Y)
		if n := len(d); n > 0 && d[n-1].At() == v.At() {
			d[n-1].Bulge = v.Bulge // the segment between them has gone
			continue
		}
		d = append(d, v)
	}
	for len(d) > 1 && d[0].At() == d[len(d)-1].At() {
		d = d[:len(d)-1]
	}
	return d
}

// shift moves a contour and keeps it on the grid.
func shift(c outline.Contour, by outline.Point) outline.Contour {
	if c == nil {
		return nil
	}
	d := make(outline.Contour, len(c))
	for i, v := range c {
		d[i] = outline.Vertex{X: Grid(v.X + by.X), Y: Grid(v.Y + by.Y), Bulge: v.Bulge}
	}
	return d
}

// around is the box around some boxes; the zero Box if there are none.
func around(bs ...outline.Box) outline.Box {
	var b outline.Box
	for i, c := range bs {
		if i == 0 {
			b = c
		}
		b = b.Join(c)
	}
	return b
}
