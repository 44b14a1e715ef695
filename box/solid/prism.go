package solid

import (
	"math"

	"holt.example/box/outline"
)

// cutters are the prism as convex cutters, its outline flattened.
func (p Prism) cutters(chord float64) []Cutter {
	pts := p.flatten(chord)
	foot := make([]Vec, len(pts))
	for i, q := range pts {
		foot[i] = p.Frame.Out(Vec{q.X, q.Y, 0})
	}
	cutters, _, _ := p.split(pts, foot, nil)
	return cutters
}

// flatten is the outline as a polygon, without points that weld together.
func (p Prism) flatten(chord float64) []outline.Point {
	pts := p.Outline.Flatten(chord)
	out := pts[:0]
	for _, q := range pts {
		if n := len(out); n == 0 || !welds(q, out[n-1]) {
			out = append(out, q)
		}
	}
	for len(out) > 1 && welds(out[0], out[len(out)-1]) {
		out = out[:len(out)-1]
	}
	return out
}

func welds(p, q outline.Point) bool {
	dx, dy := p.X-q.X, p.Y-q.Y
	return float64(dx*dx)+float64(dy*dy) <= weldRadius*weldRadius
}

// split parts the flattened outline into convex pieces and makes each a cutter.
// smooth are the smoothing groups of the sides of pts, or nil; each cutter's
// planes get theirs, a side between two pieces 0. It is false for an outline that
// crosses itself.
func (p Prism) split(pts []outline.Point, foot []Vec, smooth []int32) ([]Cutter, [][]int32, bool) {
	if len(pts) < 3 {
		return nil, nil, true
	}
	index := make(map[outline.Point]int, len(pts))
	for i, q := range pts {
		index[q] = i
	}
	var out []Cutter
	var groups [][]int32
	left := math.Abs(area2(pts))
	slack := 1e-9 * left
	for _, piece := range outline.ConvexPieces(pts) {
		piece = anticlockwise(piece)
		left -= area2(piece)
		k := make(Cutter, 0, len(piece)+2)
		g := make([]int32, len(piece), len(piece)+2)
		for i, q := range piece {
			r := piece[(i+1)%len(piece)]
			// Not rounded as declared planes are: neighbouring facets meet at small
			// angles, which would magnify it.
			n := p.Frame.U.Scale(r.Y - q.Y).Add(p.Frame.V.Scale(q.X - r.X)).Unit()
			k = append(k, Plane{n, n.Dot(foot[index[q]])})
			if smooth != nil && (index[q]+1)%len(pts) == index[r] {
				g[i] = smooth[index[q]]
			}
		}
		k = append(k, p.caps()...)
		out = append(out, k)
		groups = append(groups, append(g, 0, 0)[:len(k)])
	}
	return out, groups, math.Abs(left) <= slack
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
