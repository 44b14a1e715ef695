package box

import (
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

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
		ts = append(ts, plainAngle(t))
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
