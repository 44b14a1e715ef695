package solid

import (
	"math"

	"holt.example/box/outline"
)

// cutters are the prism as convex cutters, its outline flattened.
func (p Prism) cutters(chord float64) []Cutter {
	pts := anticlockwise(p.Outline.Flatten(chord))
	var out []Cutter
	for _, piece := range convexPieces(pts) {
		k := make(Cutter, 0, len(piece)+2)
		for i, q := range piece {
			r := piece[(i+1)%len(piece)]
			// Not rounded as declared planes are: neighbouring facets meet at small
			// angles, which would magnify it.
			n := p.Frame.U.Scale(r.Y - q.Y).Add(p.Frame.V.Scale(q.X - r.X)).Unit()
			k = append(k, Plane{n, n.Dot(p.Frame.Out(Vec{q.X, q.Y, 0}))})
		}
		k = append(k, p.caps()...)
		out = append(out, k)
	}
	return out
}

// caps are the finite ends of the prism.
func (p Prism) caps() []Plane {
	var out []Plane
	w := p.Frame.W
	o := w.Dot(p.Frame.O)
	if !math.IsInf(p.From, -1) {
		out = append(out, Plane{w.Scale(-1), -(o + p.From)})
	}
	if !math.IsInf(p.To, 1) {
		out = append(out, Plane{w, o + p.To})
	}
	return out
}

// anticlockwise turns a polygon round if need be.
func anticlockwise(p []outline.Point) []outline.Point {
	if area2(p) >= 0 {
		return p
	}
	q := make([]outline.Point, len(p))
	for i := range p {
		q[i] = p[len(p)-1-i]
	}
	return q
}

// area2 is twice the signed area of a polygon.
func area2(p []outline.Point) float64 {
	a := 0.0
	for i := range p {
		j := (i + 1) % len(p)
		a += float64((p[i].X-p[0].X)*(p[j].Y-p[0].Y)) - float64((p[j].X-p[0].X)*(p[i].Y-p[0].Y))
	}
	return a
}

func convexPieces(p []outline.Point) [][]outline.Point { return [][]outline.Point{p} }
