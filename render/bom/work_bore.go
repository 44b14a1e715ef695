package bom

import (
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/box/outline"
)

// endBore describes a hole into an edge, of which the panel shows the shadow: as
// wide as the hole, between two depths that are its diameter apart. Its place is
// that of its mouth along the edge: of an upright edge up, of a level one from the
// left.
func (d *describer) endBore(w *Work) {
	dia := float64(d.op.To - d.op.From)
	w.Width = box.MM(nearest(dia, math.Min(d.step, fine)))
	edge := "edge"
	for _, r := range d.op.Region {
		w.Depth = box.MM(nearest(r.Area()/dia, math.Min(d.step, fine)))
		mouth, k := d.mouth(r, dia)
		w.Where = d.place(mouth.Y-d.v0) + " up, " + d.across(mouth.X)
		if k < 0 {
			continue
		}
		edge = d.names[k] + " edge" + d.slant(r, mouth, k)
		e := d.p.Panel.Edges[k]
		switch u, v := math.Abs(e.To.X-e.From.X), math.Abs(e.To.Y-e.From.Y); {
		case v < near:
			w.Where = d.across(mouth.X)
		case u < near:
			w.Where = d.place(mouth.Y-d.v0) + " up"
		}
	}
	w.What = fmt.Sprintf("hole %s, %s deep into the %s", mm(w.Width), mm(w.Depth), edge)
	if d.op.Source != "" && d.op.Use != box.UseFixing {
		w.Where = d.op.Source + listed(w.Where)
	}
}

// slant says by how much a bore runs from square to its edge.
func (d *describer) slant(r outline.Contour, mouth outline.Point, k int) string {
	c := r.Centroid()
	x, y := mouth.X-c.X, mouth.Y-c.Y
	l := math.Hypot(x, y)
	if !(l > near) {
		return ""
	}
	u, v := outward(d.p.Panel.Edges[k])
	a := math.Abs(math.Atan2(float64(x*v)-float64(y*u), float64(x*u)+float64(y*v))) * 180 / math.Pi
	if a < 0.05 {
		return ""
	}
	return ", " + tenth(a) + " deg from square"
}

// mouth is where a bore enters the part, and the edge that it enters: of the middles
// of its two ends the one nearest to an edge. -1 where the part has no edges.
func (d *describer) mouth(r outline.Contour, dia float64) (at outline.Point, edge int) {
	e := r.Extents()
	at, edge = e.Centre(), -1
	best := math.Inf(1)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if math.Abs(math.Hypot(b.X-a.X, b.Y-a.Y)-dia) > 1e-3 {
			continue // one of its sides
		}
		mid := outline.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
		for k, x := range d.p.Panel.Edges {
			if gap := toLine(mid, x.From, x.To); gap < best-near {
				best, at, edge = gap, mid, k
			}
		}
	}
	return at, edge
}

// toLine is the distance of a point from a segment.
func toLine(p, a, b outline.Point) float64 {
	x, y := b.X-a.X, b.Y-a.Y
	t := (float64((p.X-a.X)*x) + float64((p.Y-a.Y)*y)) / math.Max(1e-12, float64(x*x)+float64(y*y))
	t = math.Max(0, math.Min(1, t))
	return math.Hypot(a.X+float64(t*x)-p.X, a.Y+float64(t*y)-p.Y)
}
