package species

import (
	"math"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// behind is how deep the wood of a part goes from the inner face of another.
func (p *piece) behind(q *piece) float64 {
	out := 0.0
	for _, v := range p.corners {
		out = math.Max(out, q.inner-q.outward.Dot(v))
	}
	return out
}

// wood is behind for what goes inward, and for what goes outward how deep the wood
// of the part goes from the outer face of the other.
func (p *piece) wood(q *piece, from box.CutSide) float64 {
	if from == box.FromOuter {
		return p.behind(q)
	}
	out := 0.0
	for _, v := range p.corners {
		out = math.Max(out, q.outward.Dot(v)-q.inner-float64(q.Thickness))
	}
	return out
}

// apart is the least wood, in mm, between two fasteners, and round a fastener to
// an opening (common practice).
const apart = 3

// blocked says that a fastener would meet an earlier one, or an opening of either
// part, or would miss the part it should hold.
func (f *Fixing) blocked(a, b *piece, p, into solid.Vec, pass float64, before []Fixing) bool {
	in := float64(f.With.Length) - pass
	tip := p.Add(into.Scale(in))
	head := p.Sub(into.Scale(pass))
	for i := range before {
		o := &before[i]
		w := solid.Vec{X: o.Into.X, Y: o.Into.Y, Z: o.Into.Z}
		for _, at := range o.Places {
			h := vecOf(at)
			if between(head, tip, h, h.Add(w.Scale(float64(o.With.Length)))) < float64(f.With.Diameter+o.With.Diameter)/2+apart {
				return true
			}
		}
	}
	r := float64(f.With.Diameter)/2 + apart
	for _, v := range []solid.Vec{head, p} {
		at := a.Home.In(v)
		if a.opens(at, r) || a.misses(at, float64(f.With.Diameter)/2+1) || a.jointed(at, float64(f.With.Diameter)/2+0.5, b.Part) {
			return true
		}
	}
	for _, k := range []float64{0.05, 0.35, 0.7, 1} {
		at := b.Home.In(p.Add(into.Scale(in * k)))
		if b.Panel.Silhouette.Contains(outline.Point{X: at.X, Y: at.Y}, 1e-6) == outline.Outside || b.opens(at, r) {
			return true
		}
	}
	return false
}

// opens says that an opening or a pocket of the part, other than a joint's, comes
// within r of a place.
func (p *piece) opens(at solid.Vec, r float64) bool {
	q := outline.Point{X: at.X, Y: at.Y}
	for _, op := range p.Panel.Ops {
		if op.Guest == "" && len(op.Region) > 0 && (op.Region.Contains(q, 1e-6) != outline.Outside || op.Region.Distance(q) < r) {
			return true
		}
	}
	return false
}

// jointed says that a hole of a radius would run into the joint of the part with
// any other than the one named.
func (p *piece) jointed(at solid.Vec, r float64, but box.Part) bool {
	q := outline.Point{X: at.X, Y: at.Y}
	for _, op := range p.Panel.Ops {
		if op.Guest != "" && op.Guest != but && len(op.Region) > 0 && (op.Region.Contains(q, 1e-6) != outline.Outside || op.Region.Distance(q) < r) {
			return true
		}
	}
	return false
}

// misses says that a hole of a radius is not all in the wood on both faces.
func (p *piece) misses(at solid.Vec, r float64) bool {
	q := outline.Point{X: at.X, Y: at.Y}
	for _, g := range []outline.Region{p.Panel.Machined, p.Panel.Far} {
		if len(g) > 0 && (g.Contains(q, 1e-6) != outline.Inside || g.Distance(q) < r) {
			return true
		}
	}
	return false
}

// between is the least distance of two segments: of each end to the other one,
// or of the lines where they pass one another.
func between(a, b, c, d solid.Vec) float64 {
	out := math.Min(math.Min(toSegment(a, c, d), toSegment(b, c, d)), math.Min(toSegment(c, a, b), toSegment(d, a, b)))
	u, v, w := b.Sub(a), d.Sub(c), a.Sub(c)
	uu, uv, vv, uw, vw := u.Dot(u), u.Dot(v), v.Dot(v), u.Dot(w), v.Dot(w)
	den := float64(uu*vv) - float64(uv*uv)
	if !(den > 1e-9*uu*vv) {
		return out
	}
	s, t := (float64(uv*vw)-float64(vv*uw))/den, (float64(uu*vw)-float64(uv*uw))/den
	if s > 0 && s < 1 && t > 0 && t < 1 {
		out = math.Min(out, a.Add(u.Scale(s)).Sub(c.Add(v.Scale(t))).Len())
	}
	return out
}

func toSegment(p, a, b solid.Vec) float64 {
	u := b.Sub(a)
	t := math.Max(0, math.Min(1, p.Sub(a).Dot(u)/u.Dot(u)))
	return p.Sub(a.Add(u.Scale(t))).Len()
}
