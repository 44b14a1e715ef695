package box

import (
	"math"

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

// toPanel carries a contour from the feature frame to the panel.
func toPanel(c outline.Contour, side CutSide) outline.Contour {
	if side == FromOuter {
		return c
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
		e.Bevel = Deg(-math.Asin(up) * 180 / math.Pi)
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

// jointOp is what a joint's cutter asks of the bench.
func (p *part) jointOp(c *cutter, fr solid.Frame, grain [2]float64) Op {
	t := p.face.t
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, f := range c.cell.Faces {
		for _, q := range f.Loop {
			w := -fr.In(q).Z
			lo, hi = math.Min(lo, w), math.Max(hi, w)
		}
	}
	lo, hi = clean(lo), clean(hi)
	const touch = 1e-6
	atTop, atBottom := lo < touch, hi > t-touch
	op := Op{From: MM(lo), To: MM(hi), InSolid: true, Source: c.edge.sec.Name + " with " + string(c.guest.part), Guest: c.guest.part}
	switch {
	case atTop && atBottom:
		op.Side = SideThrough
	case atTop:
		op.Side = SideMachined
	case atBottom:
		op.Side = SideFar
	default:
		op.Side = SideEdge
	}
	op.Region = cellAt(c.cell, fr, lo, 1)
	if low := cellAt(c.cell, fr, hi, -1); low != nil && op.Region != nil && !sameRegion(op.Region, low) {
		op.Bottom = low
	}
	if op.Region == nil {
		op.Region = cellShadow(c.cell, fr)
	}
	op.Tilt = tilts(c, fr)
	switch c.zone.Work {
	case joints.Housed:
		op.Kind = OpHousing
		along := outline.Point{X: c.edge.dir.Dot(fr.U), Y: c.edge.dir.Dot(fr.V)}
		if math.Abs(float64(along.X*grain[0])+float64(along.Y*grain[1])) > math.Sqrt2/2 {
			op.Kind = OpGroove
		}
	case joints.Notching:
		op.Kind = OpNotch
	default:
		op.Kind = OpRebate
		if op.Side == SideThrough {
			op.Kind = OpNotch
		}
	}
	return op
}

// clean drops what is left of zero after rotation.
func clean(x float64) float64 {
	if math.Abs(x) < 1e-9 {
		return 0
	}
	return x
}

// cellAt is the face of a cell that lies at the depth d, facing the tool (up =
// 1) or away from it.
func cellAt(c solid.Convex, fr solid.Frame, d, up float64) outline.Region {
	for k := range c.Faces {
		f := &c.Faces[k]
		if f.N.Dot(fr.W)*up < 1-1e-9 || math.Abs(fr.In(f.Loop[0]).Z+d) > 1e-6 {
			continue
		}
		o := outline.Polygon(flat(f.Loop, fr)...)
		if up < 0 {
			o = o.Reverse()
		}
		return outline.Region{o.Simplify(1e-7)}
	}
	return nil
}

func cellShadow(c solid.Convex, fr solid.Frame) outline.Region {
	var all []outline.Point
	for k := range c.Faces {
		all = append(all, flat(c.Faces[k].Loop, fr)...)
	}
	return outline.Region{outline.Hull(all).Simplify(1e-7)}
}

// sameRegion compares single convex contours, from any starting vertex.
func sameRegion(a, b outline.Region) bool {
	if len(a) != len(b) || len(a) != 1 || len(a[0]) != len(b[0]) {
		return false
	}
	n := len(a[0])
	for s := 0; s < n; s++ {
		same := true
		for i := 0; i < n && same; i++ {
			p, q := a[0][i], b[0][(i+s)%n]
			same = math.Abs(p.X-q.X) < 1e-6 && math.Abs(p.Y-q.Y) < 1e-6
		}
		if same {
			return true
		}
	}
	return false
}

// tilts are the angles from square of a cutter's own side walls.
func tilts(c *cutter, fr solid.Frame) []Deg {
	var ts []Deg
	slanted := false
	for _, h := range c.planes {
		up := h.N.Dot(fr.W)
		if math.Abs(up) > 1-1e-9 {
			continue
		}
		t := 0.0
		if math.Abs(up) > 1e-9 {
			t, slanted = math.Asin(up)*180/math.Pi, true
		}
		ts = append(ts, Deg(t))
	}
	if !slanted {
		return nil
	}
	return ts
}

// within is what a pocket that is open to the edge takes of its face.
func (p *part) within(f *feat, side CutSide) outline.Region {
	top, bottom, _ := p.outlines(side, p.face.panelFrame(side))
	if f.from != side {
		top = bottom
	}
	in, err := outline.Intersect(top, outline.Region{toPanel(f.outline, side)})
	if err != nil {
		return outline.Region{toPanel(f.outline, side)}
	}
	return in
}

// featOp is a feature as an operation.
func (p *part) featOp(f *feat, side CutSide) Op {
	o := f.outline
	if f.split {
		o = f.shown
	}
	o = toPanel(o, side)
	op := Op{Use: f.use, Region: outline.Region{o}, Source: f.source, InSolid: true, InOutline: f.inLine, Tool: f.tool}
	t := p.face.t
	_, _, round := o.IsCircle(1e-9)
	switch {
	case f.open:
		op.Region = p.within(f, side)
		op.Side, op.To, op.Kind = SideMachined, MM(f.depth), OpPocket
		if f.from != side {
			op.Side, op.From, op.To = SideFar, MM(t-f.depth), MM(t)
		}
	case f.depth == 0:
		op.Side, op.To, op.Kind = SideThrough, MM(t), OpOpening
		if round {
			op.Kind = OpBore
		}
		if f.inLine {
			op.Kind = OpNotch
		}
	case f.from == side:
		op.Side, op.To, op.Kind = SideMachined, MM(f.depth), OpPocket
	default:
		op.Side, op.From, op.To, op.Kind = SideFar, MM(t-f.depth), MM(t), OpPocket
	}
	if f.depth > 0 && round {
		op.Kind = OpBore
	}
	if f.use == UseMark {
		op.Kind = OpMark
	}
	return op
}
