package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// nail is one screw or nail of a row, from its head to its point.
type nail struct {
	place       string // in the design
	f           *Fixing
	over, under *part
	head, tip   solid.Vec
	at          outline.Point // of the head, in the feature frame of over
}

// sides are the faces of a part over which a nail's circle must lie: both, but of
// one that is driven on the slant only that of its head.
func (f *Fixing) sides(p *part) []outline.Region {
	top, bottom, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	switch {
	case !f.Slant:
		return []outline.Region{top, bottom}
	case f.From == FromOuter:
		return []outline.Region{top}
	}
	return []outline.Region{bottom}
}

// offEdge is how far a nail's shank comes past the edge of the part that it goes
// through, 0 if it lies on it.
func (f *Fixing) offEdge(p *part, at outline.Point) float64 {
	off := 0.0
	for _, r := range f.sides(p) {
		if len(r) > 0 {
			off = math.Max(off, -inside(r[0], outline.Circle(at, float64(f.Diameter))))
		}
	}
	return off
}

// gapOf is the most that the joint of two parts, and the play of what opens or
// swells, leave open between them.
func (s *shell) gapOf(a, b *part) float64 {
	gap := s.roomBetween(a.at, b.at)
	most := gap
	for _, e := range append(append([]*edge(nil), s.edges...), s.inner...) {
		if !e.ok {
			continue
		}
		over, under := &s.faces[e.over], e.second(s)
		if over == a.face && under == b.face || over == b.face && under == a.face {
			most = math.Max(most, gap+math.Max(float64(e.sec.Greatest), float64(e.sec.Play)))
		}
	}
	return most
}

// checkBare sees that screws and nails without a hole of their own go through no
// opening: not that through which the head would fall, nor, square to its face, one
// in what they go into.
func (s *shell) checkBare(nails []nail) {
	grids := map[*part]*bins{}
	look := func(n nail, p *part, at outline.Point, from CutSide) {
		if grids[p] == nil {
			grids[p] = newBins(p.boxes())
		}
		f, c := n.f, outline.Circle(at, float64(n.f.Diameter))
		grids[p].near(c.Extents(), func(k int) {
			g := &p.feats[k]
			if g.use == UseFixing || (f.Slant || p == n.under) && g.depth > 0 && g.from != from || !clash(g.outline, c) {
				return // screws are held against one another as they go
			}
			s.c.add(Problem{Path: n.place, Code: "feature-meets-feature", Got: size(c),
				Why: fmt.Sprintf("the %s through %s into %s runs into the %s of %s, by %s", f.What, f.Over, f.Under, g.source, g.path, num(round1(runsInto(g.outline, c))))})
		})
	}
	for _, n := range nails {
		f := n.f
		if f.Hole == 0 || f.Slant { // else the hole is looked at with the other features
			look(n, n.over, n.at, f.From)
		}
		fr := n.under.face.frame
		if c := fr.W.Dot(n.tip.Sub(n.head).Unit()); f.Pilot == 0 && math.Abs(c) > 1-1e-6 {
			from := FromOuter
			if c > 0 {
				from = FromInner
			}
			q := fr.In(n.head)
			look(n, n.under, outline.Point{X: q.X, Y: q.Y}, from)
		}
	}
}

// checkNails sees that no two screws or nails meet.
func (s *shell) checkNails(nails []nail) {
	// Seen askew, so that rows along any axis of the box are rows there too. A
	// distance grows by less than half on the way.
	const askewX, askewY, grows = 0.37, 0.53, 1.2
	skew := func(v solid.Vec) outline.Point {
		return outline.Point{X: v.X - float64(askewX*v.Z), Y: v.Y - float64(askewY*v.Z)}
	}
	boxes := make([]outline.Box, len(nails))
	for i, n := range nails {
		a, b := skew(n.head), skew(n.tip)
		boxes[i] = grow(outline.Box{Min: outline.Point{X: math.Min(a.X, b.X), Y: math.Min(a.Y, b.Y)}, Max: outline.Point{X: math.Max(a.X, b.X), Y: math.Max(a.Y, b.Y)}},
			grows*float64(n.f.Diameter)/2)
	}
	grid := newBins(boxes)
	for k, n := range nails {
		told := false // one for each is enough
		grid.near(boxes[k], func(i int) {
			m := nails[i]
			if i >= k || told {
				return
			}
			least := float64(m.f.Diameter+n.f.Diameter) / 2
			d := segments(n.head, n.tip, m.head, m.tip)
			if !(d < least-1e-6) {
				return
			}
			told = true
			s.c.add(Problem{Path: n.place, Code: "fixing-meets-fixing", Got: num(round1(d)) + " apart", Lo: least, Hi: math.Inf(1), Unit: "mm",
				Why: fmt.Sprintf("the %s through %s into %s runs into the %s of %s", n.f.What, n.f.Over, n.f.Under, m.f.What, m.place)})
		})
	}
}

// segments is the least distance between the segments ab and cd.
func segments(a, b, c, d solid.Vec) float64 {
	u, v, w := b.Sub(a), d.Sub(c), a.Sub(c)
	uu, uv, vv, uw, vw := u.Dot(u), u.Dot(v), v.Dot(v), u.Dot(w), v.Dot(w)
	out := math.Min(math.Min(toSegment(a, c, d), toSegment(b, c, d)), math.Min(toSegment(c, a, b), toSegment(d, a, b)))
	den := float64(uu*vv) - float64(uv*uv)
	if !(den > 1e-9*uu*vv) { // they run the same way
		return out
	}
	s, t := (float64(uv*vw)-float64(vv*uw))/den, (float64(uu*vw)-float64(uv*uw))/den
	if s > 0 && s < 1 && t > 0 && t < 1 {
		out = math.Min(out, w.Add(u.Scale(s)).Sub(v.Scale(t)).Len())
	}
	return out
}

// toSegment is the distance of p from the segment ab.
func toSegment(p, a, b solid.Vec) float64 {
	u := b.Sub(a)
	t := math.Max(0, math.Min(1, p.Sub(a).Dot(u)/u.Dot(u)))
	return p.Sub(a.Add(u.Scale(t))).Len()
}
