package batch

import (
	"math"

	"holt.example/box"
	"holt.example/box/outline"
)

// TurnOver is a panel as it looks when it is turned over like the page of a
// book: left and right change places, the far face is up, and depths count
// from there. Turning it over twice gives the panel back.
func TurnOver(p box.Panel) box.Panel {
	m := outline.MirrorX()
	q := p
	q.Face = box.FromOuter + box.FromInner - p.Face
	q.Machined, q.Far, q.Silhouette = p.Far.Transform(m), p.Machined.Transform(m), p.Silhouette.Transform(m)
	q.Grain[0] = 0 - p.Grain[0]
	q.Edges = turnEdges(p.Edges)
	q.Ops = make([]box.Op, len(p.Ops))
	q.SecondFace = false
	for i, o := range p.Ops {
		q.Ops[i] = turnOp(o, p.Thickness)
		q.SecondFace = q.SecondFace || q.Ops[i].Side == box.SideFar
	}
	return q
}

func turnOp(o box.Op, t box.MM) box.Op {
	m := outline.MirrorX()
	first, last := o.Region, o.Bottom
	if last != nil {
		first, last = last, first
	}
	o.Region, o.Bottom = nil, nil
	if first != nil {
		o.Region = first.Transform(m)
	}
	if last != nil {
		o.Bottom = last.Transform(m)
	}
	o.From, o.To = t-o.To, t-o.From
	switch o.Side {
	case box.SideMachined:
		o.Side = box.SideFar
	case box.SideFar:
		o.Side = box.SideMachined
	}
	var tilt []box.Deg
	for i := len(o.Tilt) - 1; i >= 0; i-- {
		tilt = append(tilt, 0-o.Tilt[i])
	}
	o.Tilt = tilt
	strokes := o.Strokes
	o.Strokes = nil
	for _, s := range strokes {
		o.Strokes = append(o.Strokes, s.Transform(m))
	}
	return o
}

// turnEdges are the edges on the far face, mirrored. Where the machined face
// overhangs by the run, the far edge lies that much further in; corners are
// where neighbouring edges meet.
func turnEdges(es []box.PanelEdge) []box.PanelEdge {
	n := len(es)
	type line struct{ p, d outline.Point }
	far := make([]line, n)
	for i, e := range es {
		dx, dy := e.To.X-e.From.X, e.To.Y-e.From.Y
		l := math.Hypot(dx, dy)
		if l > 0 {
			dx, dy = dx/l, dy/l
		}
		run := float64(e.Run)
		far[i] = line{outline.Point{X: e.From.X - float64(run*dy), Y: e.From.Y + float64(run*dx)}, outline.Point{X: dx, Y: dy}}
	}
	// corner is where edge i ends on the far face.
	corner := func(i int) outline.Point {
		a, b := far[i], far[(i+1)%n]
		e, f := es[i], es[(i+1)%n]
		end := outline.Point{X: a.p.X + float64(a.d.X*float64(e.Length)), Y: a.p.Y + float64(a.d.Y*float64(e.Length))}
		if math.Hypot(e.To.X-f.From.X, e.To.Y-f.From.Y) > 1e-6 {
			return end
		}
		det := float64(a.d.X*b.d.Y) - float64(a.d.Y*b.d.X)
		if math.Abs(det) < 1e-9 {
			return end
		}
		s := (float64((b.p.X-a.p.X)*b.d.Y) - float64((b.p.Y-a.p.Y)*b.d.X)) / det
		return outline.Point{X: a.p.X + float64(s*a.d.X), Y: a.p.Y + float64(s*a.d.Y)}
	}
	out := make([]box.PanelEdge, 0, n)
	for i := n - 1; i >= 0; i-- {
		e := es[i]
		from := corner((i + n - 1) % n)
		if prev := es[(i+n-1)%n]; math.Hypot(prev.To.X-e.From.X, prev.To.Y-e.From.Y) > 1e-6 {
			from = far[i].p
		}
		to := corner(i)
		e.From, e.To = outline.Point{X: 0 - to.X, Y: to.Y}, outline.Point{X: 0 - from.X, Y: from.Y}
		e.Length = box.MM(math.Hypot(e.To.X-e.From.X, e.To.Y-e.From.Y))
		e.Bevel, e.Run = 0-e.Bevel, 0-e.Run
		out = append(out, e)
	}
	return out
}

// oneFace reports whether a panel has work that is done from one face.
func oneFace(p box.Panel) bool {
	for _, o := range p.Ops {
		if o.Side == box.SideMachined || o.Side == box.SideFar || o.Side == box.SideThrough && o.Bottom != nil {
			return true
		}
	}
	return false
}
