package box

import (
	"math"
	"slices"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// machinedFace is the face with most work on it: the inner one on a tie.
func (p *part) machinedFace() CutSide {
	if p.strip != nil && !p.strip.tongue {
		return p.strip.whole.part.machinedFace()
	}
	inner, outer := 0, 0
	for i := range p.cutters {
		if p.cutters[i].edge != nil && p.cutters[i].zone.Work != joints.Notching {
			inner++
		}
	}
	for i := range p.feats {
		switch f := &p.feats[i]; {
		case f.depth == 0:
		case f.from == FromInner:
			inner++
		default:
			outer++
		}
	}
	for i := range p.engraved {
		if p.engraved[i].from == FromInner {
			inner++
		} else {
			outer++
		}
	}
	if outer > inner {
		return FromOuter
	}
	return FromInner
}

// panelFrame is the frame of the machined face: v up, w towards the tool.
func (f *face) panelFrame(side CutSide) solid.Frame {
	g := f.frame
	if side == FromOuter {
		g.O = g.O.Add(g.W.Scale(f.t))
		return g
	}
	g.U, g.W = g.U.Scale(-1), g.W.Scale(-1)
	return g
}

// toPanel carries a contour from the feature frame to the panel. It never is the
// contour itself, which may be the caller's.
func toPanel(c outline.Contour, side CutSide) outline.Contour {
	if side == FromOuter {
		return slices.Clone(c)
	}
	return c.Transform(outline.MirrorX())
}

// panel draws a part flat.
func (s *shell) panel(p *part) (Panel, solid.Frame) {
	side := p.machinedFace()
	fr := p.face.panelFrame(side)
	pn := Panel{Face: side, Thickness: MM(p.face.t)}
	pn.Grain = p.grain(side)
	top, bottom, shadow := p.outlines(side, fr)
	for i := range p.cutters {
		if p.cutters[i].edge == nil { // a pocket of a free part's outline
			continue
		}
		op := p.jointOp(&p.cutters[i], fr, pn.Grain)
		if op.Side == SideThrough {
			op.InOutline = true
			top = s.less(p, top, op.Region)
			low := op.Bottom
			if low == nil {
				low = op.Region
			}
			bottom = s.less(p, bottom, low)
			if gone, err := outline.Intersect(op.Region, low); err == nil {
				shadow = s.less(p, shadow, gone)
			}
		}
		pn.Ops = append(pn.Ops, op)
	}
	for i := range p.feats {
		op := p.featOp(&p.feats[i], side)
		if op.InOutline {
			top, bottom, shadow = s.less(p, top, op.Region), s.less(p, bottom, op.Region), s.less(p, shadow, op.Region)
		}
		pn.Ops = append(pn.Ops, op)
	}
	for i := range p.engraved {
		pn.Ops = append(pn.Ops, p.lineOp(&p.engraved[i], side))
	}
	for _, b := range p.ends {
		pn.Ops = append(pn.Ops, b.op(fr))
	}
	for i := range pn.Ops {
		if pn.Ops[i].Side == SideFar {
			pn.SecondFace = true
		}
	}
	pn.Machined, pn.Far, pn.Silhouette = top, bottom, shadow
	if p.free == nil {
		pn.Edges = s.panelEdges(p, side, fr)
	}
	return pn, fr
}

// less takes b out of a.
func (s *shell) less(p *part, a, b outline.Region) outline.Region {
	r, err := outline.Subtract(a, b)
	if err != nil {
		s.c.addf(p.path, "outline", "the outline could not be worked out: %v", err)
		return a
	}
	return r
}

// outlines are the contours of the base at both faces and its shadow.
func (p *part) outlines(side CutSide, fr solid.Frame) (top, bottom, shadow outline.Region) {
	if p.lines[side] == nil {
		top, bottom, shadow = p.trace(side, fr)
		p.lines[side] = &[3]outline.Region{top, bottom, shadow}
	}
	l := p.lines[side]
	return l[0], l[1], l[2]
}

func (p *part) trace(side CutSide, fr solid.Frame) (top, bottom, shadow outline.Region) {
	if p.free != nil {
		r := outline.Region{toPanel(p.free.Outline, side)}
		return r, r, r
	}
	near, far := fromOuter, fromInner
	if side == FromInner {
		near, far = far, near
	}
	for k := range p.convex.Faces {
		f := &p.convex.Faces[k]
		switch p.from[f.ID] {
		case near:
			top = outline.Region{outline.Polygon(flat(f.Loop, fr)...).Simplify(1e-7)}
		case far:
			bottom = outline.Region{outline.Polygon(flat(f.Loop, fr)...).Reverse().Simplify(1e-7)}
		}
	}
	var all []outline.Point
	for k := range p.convex.Faces {
		all = append(all, flat(p.convex.Faces[k].Loop, fr)...)
	}
	return top, bottom, outline.Region{outline.Hull(all).Simplify(1e-7)}
}

// grain is the direction of the grain in the panel.
func (p *part) grain(side CutSide) [2]float64 {
	g := p.face.grain
	if g == GrainAuto {
		g = GrainUp
		if p.face.kind == floorFace {
			g = GrainAcross
		}
	}
	switch g {
	case GrainUp:
		return [2]float64{0, 1}
	case GrainAcross:
		return [2]float64{1, 0}
	}
	return [2]float64{}
}

// panelEdges are the straight edges of the base, anticlockwise.
func (s *shell) panelEdges(p *part, side CutSide, fr solid.Frame) []PanelEdge {
	near, far := fromOuter, fromInner
	if side == FromInner {
		near, far = far, near
	}
	seen := make([]bool, len(p.base))
	p.edgeIDs = p.edgeIDs[:0]
	var es []PanelEdge
	for _, want := range []int{near, far} {
		for k := range p.convex.Faces {
			f := &p.convex.Faces[k]
			if p.from[f.ID] != want {
				continue
			}
			ps := flat(f.Loop, fr)
			n := len(ps)
			for m, id := range f.Next {
				if id < 0 || seen[id] || p.from[id] == near || p.from[id] == far {
					continue
				}
				seen[id] = true
				a, b := ps[m], ps[(m+1)%n]
				if want == far {
					a, b = b, a
				}
				es = append(es, s.panelEdge(p, id, fr, a, b))
				p.edgeIDs = append(p.edgeIDs, id)
			}
		}
	}
	return es
}

func (s *shell) panelEdge(p *part, id int, fr solid.Frame, a, b outline.Point) PanelEdge {
	up := p.base[id].N.Dot(fr.W)
	flatN := math.Sqrt(math.Max(0, 1-float64(up*up)))
	e := PanelEdge{From: a, To: b, Length: MM(math.Hypot(b.X-a.X, b.Y-a.Y))}
	if math.Abs(up) > 1e-9 {
		e.Bevel = plainAngle(-math.Asin(up) * 180 / math.Pi)
		e.Run = MM(-p.face.t * up / flatN)
	}
	j := p.from[id]
	if j == fromEnd {
		e.Why = "runs on above the roof"
		return e
	}
	if j == fromLow || j == fromHigh {
		p.stripEdge(j, &e)
		return e
	}
	if j < 0 || j >= len(s.faces) {
		return e
	}
	f := &s.faces[j]
	if f.open {
		e.Why = "ends at the open side"
		return e
	}
	x := s.meet(p, j)
	if x == nil {
		e.Neighbour = f.part
		return e
	}
	e.Neighbour, e.Joint = f.part, x.sec.Name
	share := x.sec.A
	if x.under == p.at {
		share = x.sec.B
	}
	e.Why = share.Why
	if w := s.wayOf(p.at); w != nil && w.room[j] > 0 {
		e.Why += ", less " + num(math.Round(w.room[j]*100)/100) + " so that it can open"
	}
	e.Why += s.floorWords(x)
	if p.at < 0 { // reckoned from the wall's inner plane, along the partition
		e.Adds = MM(p.base[id].D - f.in.D)
		return e
	}
	out := f.in.N.Sub(p.face.in.N.Scale(f.in.N.Dot(p.face.in.N))).Unit()
	if d := p.base[id].N.Dot(out); math.Abs(d) > 1e-9 {
		e.Adds = MM(-p.base[id].At(x.a) / d)
	}
	return e
}

// meet is the edge at which a part meets face j, nil if there is none.
func (s *shell) meet(p *part, j int) *edge {
	if p.at >= 0 {
		if x := s.pair[[2]int{min(p.at, j), max(p.at, j)}]; x != nil && x.ok {
			return x
		}
		return nil
	}
	for _, x := range s.inner {
		if x.guest == p.face && x.over == j {
			return x
		}
	}
	return nil
}
