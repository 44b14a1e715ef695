package box

import (
	"math"

	"holt.example/box/outline"
)

// room is where a pattern may lie on a part: both its faces less a margin.
// Where the part is convex and straight its sides come as half-planes too.
func (s *shell) room(path string, p *part, margin float64) (outline.Region, []outline.HalfPlane, bool) {
	top, bottom, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	var hs []outline.HalfPlane
	for _, r := range []outline.Region{top, bottom} {
		for _, c := range r {
			if !c.IsConvex() || !straight(c) {
				in, err := shrink(c, margin)
				if err != nil {
					s.c.addf(path+".Margin", "outline", "the margin inside %s could not be worked out: %v", p.face.part, err)
					return nil, nil, false
				}
				return in, nil, len(in) > 0
			}
			for i, a := range c {
				b := c[(i+1)%len(c)]
				x, y := b.Y-a.Y, a.X-b.X
				l := math.Sqrt(float64(x*x) + float64(y*y))
				x, y = x/l, y/l
				hs = append(hs, outline.HalfPlane{A: x, B: y, C: float64(x*a.X) + float64(y*a.Y) - margin})
			}
		}
	}
	in := top
	for _, h := range hs {
		in = in.Clip(h)
	}
	if len(in) == 0 {
		s.c.add(Problem{Path: path + ".Margin", Code: "no-room", Got: num(margin), Why: "nothing is left of " + string(p.face.part) + " inside the margin"})
	}
	return in, hs, len(in) > 0
}

// clipTo is what of an outline lies in the room, and whether any does not.
func clipTo(o outline.Contour, room outline.Region, convex []outline.HalfPlane) (outline.Region, bool, error) {
	if convex != nil {
		in, cut := outline.Region{o}, false
		for _, h := range convex {
			if o.Support(h.A, h.B) > h.C+outline.SideTest {
				in, cut = in.Clip(h), true
			}
		}
		return in, cut, nil
	}
	in, err := outline.Intersect(outline.Region{o}, room)
	if err != nil {
		return nil, true, err
	}
	cut := math.Abs(in.Area()-o.Area()) > 1e-6*(1+o.Area())
	if !cut {
		return outline.Region{o}, false, nil
	}
	return in, true, nil
}

// shrink is the contour less all that lies within d of its boundary: a band as
// wide on both sides is taken off along every side of it, arcs kept.
func shrink(c outline.Contour, d float64) (outline.Region, error) {
	in := outline.Region{c}
	if !(d > 0) {
		return in, nil
	}
	var err error
	for i, v := range c {
		w := c[(i+1)%len(c)]
		for _, b := range bandOf(v, w, d) {
			if in, err = outline.Subtract(in, outline.Region{b}); err != nil {
				return nil, err
			}
		}
	}
	return in, nil
}

// bandOf is all that lies within d of a side: a slot, or a bent one round an
// arc. An arc tighter than d is followed by short slots.
func bandOf(v, w outline.Vertex, d float64) []outline.Contour {
	if v.Bulge == 0 {
		x, y := w.X-v.X, w.Y-v.Y
		l := math.Sqrt(float64(x*x) + float64(y*y))
		x, y = float64(x/l*d), float64(y/l*d)
		return []outline.Contour{{{X: v.X + y, Y: v.Y - x}, {X: w.X + y, Y: w.Y - x, Bulge: 1}, {X: w.X - y, Y: w.Y + x}, {X: v.X - y, Y: v.Y + x, Bulge: 1}}}
	}
	b := v.Bulge
	k := (1 - float64(b*b)) / (4 * b)
	cx, cy := (v.X+w.X)/2-float64((w.Y-v.Y)*k), (v.Y+w.Y)/2+float64((w.X-v.X)*k)
	r := math.Sqrt(float64((v.X-cx)*(v.X-cx)) + float64((v.Y-cy)*(v.Y-cy)))
	if r <= d+1e-6 {
		ps := outline.Contour{v, {X: w.X, Y: w.Y}}.Flatten(1e-3)
		var out []outline.Contour
		for i := 0; i+1 < len(ps) && ps[i] != w.At(); i++ {
			out = append(out, bandOf(outline.Vertex{X: ps[i].X, Y: ps[i].Y}, outline.Vertex{X: ps[i+1].X, Y: ps[i+1].Y}, d+1e-3)...)
		}
		return out
	}
	at := func(p outline.Vertex, r2, bulge float64) outline.Vertex {
		return outline.Vertex{X: cx + float64((p.X-cx)*(r2/r)), Y: cy + float64((p.Y-cy)*(r2/r)), Bulge: bulge}
	}
	if b < 0 {
		v, w, b = w, v, -b
	}
	return []outline.Contour{{at(v, r+d, b), at(w, r+d, 1), at(w, r-d, -b), at(v, r-d, 1)}}
}
