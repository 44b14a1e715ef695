package box

import (
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// fill gives a piece its share of the joints, openings and marks of the part.
func (w *whole) fill(q *part) {
	p := w.part
	for i := range p.cutters {
		c := p.cutters[i]
		hs := c.planes
		c.planes = nil
		q.cut(hs, c)
	}
	o := q.face.frame.In(p.face.frame.O)
	for i := range p.feats {
		w.share(q, p.feats[i], o)
	}
	if q.strip.tongue { // inside the part: nothing is marked on it
		return
	}
	for _, b := range p.ends { // to the strip that it enters
		if _, _, ok := q.stretch(b.at, b.at); ok {
			q.ends = append(q.ends, b)
		}
	}
	for i := range p.engraved {
		l := p.engraved[i]
		from, to := 0.0, 0.1
		if l.from == FromOuter {
			from, to = p.face.t-0.1, p.face.t
		}
		lo, hi := w.span(q.strip.number, from, to)
		var kept []outline.Path
		r := outline.Region{w.band(lo, hi)}
		for _, t := range l.strokes {
			for _, x := range t.Within(r) {
				kept = append(kept, x.Transform(outline.Shift(o.X, o.Y)))
			}
		}
		if l.strokes = kept; len(kept) > 0 {
			q.engraved = append(q.engraved, l)
		}
	}
}

// band is the strip of the plane between two places across the grain, in the
// feature frame of the part.
func (w *whole) band(lo, hi float64) outline.Contour {
	const far = 4 * maxLength
	lo, hi = math.Max(lo, -far), math.Min(hi, far)
	if w.part.grain(FromOuter)[0] != 0 {
		return outline.Rectangle(-far, lo, far, hi)
	}
	return outline.Rectangle(lo, -far, hi, far)
}

// share gives a piece its part of a feature; o is where the part's own origin
// lies in the frame of the piece.
func (w *whole) share(q *part, f feat, o solid.Vec) {
	t := w.part.face.t
	from, to := 0.0, t // of the feature, over the inner plane
	if f.depth > 0 && f.from == FromInner {
		to = f.depth
	} else if f.depth > 0 {
		from = t - f.depth
	}
	lo, hi := w.span(q.strip.number, from, to)
	if q.strip.tongue {
		x := w.prof.tongue
		lo, hi = w.his[q.strip.number]-x.width/2, w.his[q.strip.number]+x.width/2
		if from >= x.from+x.t || to <= x.from {
			return
		}
		switch {
		case from <= x.from && to >= x.from+x.t:
			f.depth = 0
		case f.from == FromInner:
			f.depth -= x.from
		default:
			f.depth -= t - x.from - x.t
		}
	}
	across := func(v outline.Point) float64 { return v.X }
	n := outline.Point{X: 1}
	if w.part.grain(FromOuter)[0] != 0 {
		across = func(v outline.Point) float64 { return v.Y }
		n = outline.Point{Y: 1}
	}
	e := f.outline.Extents()
	a, b := across(e.Min), across(e.Max)
	if b <= lo || a >= hi {
		return
	}
	pieces := outline.Region{f.outline}
	if a < lo || b > hi {
		f.split = true
		f.inLine = f.inLine || f.depth == 0
		if a < lo {
			pieces = pieces.Clip(outline.HalfPlane{A: -n.X, B: -n.Y, C: -lo})
		}
		if b > hi {
			pieces = pieces.Clip(outline.HalfPlane{A: n.X, B: n.Y, C: hi})
		}
	}
	for _, c := range pieces {
		g := f
		g.shown = settled(c.Transform(outline.Shift(o.X, o.Y)))
		if f.split {
			c = outward(c, n, lo, hi)
		}
		g.outline = settled(c.Transform(outline.Shift(o.X, o.Y)))
		q.feats = append(q.feats, g)
	}
}

// outward moves the straight sides of a contour that lie on the ends of a strip
// beyond them, so that the cut and the strip have no face in common.
func outward(c outline.Contour, n outline.Point, lo, hi float64) outline.Contour {
	const beyond = 1.0
	var out outline.Contour
	for i, v := range c {
		next := c[(i+1)%len(c)]
		x, y := float64(n.X*v.X)+float64(n.Y*v.Y), float64(n.X*next.X)+float64(n.Y*next.Y)
		out = append(out, v)
		by := 0.0
		switch {
		case v.Bulge != 0:
		case math.Abs(x-lo) < 1e-6 && math.Abs(y-lo) < 1e-6:
			by = -beyond
		case math.Abs(x-hi) < 1e-6 && math.Abs(y-hi) < 1e-6:
			by = beyond
		}
		if by != 0 {
			out = append(out,
				outline.Vertex{X: v.X + float64(by*n.X), Y: v.Y + float64(by*n.Y)},
				outline.Vertex{X: next.X + float64(by*n.X), Y: next.Y + float64(by*n.Y)})
		}
	}
	return out
}

// showing is what of the outline of a strip shows on its outer face: tongues do
// not.
func (x *strip) showing(p *part, top outline.Region) outline.Region {
	if x.tongue {
		return top
	}
	w := x.whole
	o := p.face.frame.In(w.part.face.frame.O)
	t := w.part.face.t
	lo, hi := w.span(x.number, t-0.1, t)
	across, n := o.X, outline.Point{X: 1}
	if w.part.grain(FromOuter)[0] != 0 {
		across, n = o.Y, outline.Point{Y: 1}
	}
	if !math.IsInf(lo, 0) {
		top = top.Clip(outline.HalfPlane{A: -n.X, B: -n.Y, C: -lo - across})
	}
	if !math.IsInf(hi, 0) {
		top = top.Clip(outline.HalfPlane{A: n.X, B: n.Y, C: hi + across})
	}
	return top
}
