package batch

import (
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/box/layout"
	"holt.example/box/outline"
)

// want is a part that is wanted in some number: equal parts of one order that
// lie with the same face up.
type want struct {
	order int
	item  int
	names []box.Part
	piece []box.Piece // one for each name
	base  box.Panel   // as it lies when the layout does not turn it over
	over  bool        // base is the plan's panel turned over
	part  layout.Part
}

// copyOf says which box of its order, and which of its names, a copy is.
func (w *want) copyOf(n int) (box, name int) { return n / len(w.names), n % len(w.names) }

// wants lists the parts of all orders.
func (b *bench) wants() {
	total := 0
	for i, o := range b.job.Orders {
		path := fmt.Sprintf("Orders[%d]", i)
		switch {
		case o.Plan == nil:
			b.add(path+".Plan", CodeNoPlan, "", "there is no plan", "")
			continue
		case o.Count < 0:
			b.add(path+".Count", layout.CodeRange, fmt.Sprint(o.Count), "a negative number", "")
			continue
		}
		groups := o.Plan.Groups()
		n := max(o.Count, 1)
		parts := 0
		for _, g := range groups {
			parts += len(g.Parts)
		}
		if parts == 0 {
			b.add(path+".Plan", CodeNoPlan, o.Plan.Name(), "the plan has no parts", "")
			continue
		}
		if n > (layout.MostParts-total)/parts {
			b.add(path+".Count", layout.CodeLimit, fmt.Sprint(o.Count), fmt.Sprintf("a batch has at most %d parts", layout.MostParts), "several batches")
			continue
		}
		total += n * parts
		b.first[i] = len(b.result.Boxes)
		for c := range n {
			b.result.Boxes = append(b.result.Boxes, Box{Number: len(b.result.Boxes) + 1, Order: i, Copy: c})
		}
		for _, g := range groups {
			b.wantGroup(i, n, o, g)
		}
	}
}

// wantGroup adds the equal parts of a plan: as one want, or as two where a
// rough face makes those that lie turned over another part.
func (b *bench) wantGroup(order, count int, o Order, g box.Group) {
	var ws [2]*want
	for _, name := range g.Parts {
		q, ok := o.Plan.Piece(name)
		if !ok {
			continue
		}
		over := b.mustTurn(q.Panel)
		k := 0
		if over {
			k = 1
		}
		w := ws[k]
		if w == nil {
			w = &want{order: order, item: g.Number, over: over, base: q.Panel}
			if over {
				w.base = TurnOver(q.Panel)
			}
			ws[k] = w
		}
		w.names = append(w.names, name)
		w.piece = append(w.piece, q)
	}
	for _, w := range ws {
		if w == nil {
			continue
		}
		q := w.piece[0]
		w.part = layout.Part{
			ID:        o.Plan.Name() + "/" + string(w.names[0]),
			Label:     fmt.Sprint(w.item),
			Outline:   b.outline(w.base),
			Quantity:  count * len(w.names),
			Thickness: float64(q.Thickness),
			Material:  q.Board.Material,
			Grain:     grainOf(w.base.Grain),
			TurnOver:  b.job.Rough == NoFace && !oneFace(w.base),
			Allowance: float64(b.job.Allowance),
			Priority:  o.Priority,
		}
		b.all = append(b.all, w)
	}
}

// mustTurn reports whether the panel has its rough face up.
func (b *bench) mustTurn(p box.Panel) bool {
	switch b.job.Rough {
	case OuterFace:
		return p.Face == box.FromOuter
	case InnerFace:
		return p.Face == box.FromInner
	}
	return false
}

// grainOf is the direction of the grain in a drawing: that of the axis it is
// nearer to.
func grainOf(g [2]float64) layout.Grain {
	x, y := math.Abs(g[0]), math.Abs(g[1])
	switch {
	case x == 0 && y == 0:
		return layout.NoGrain
	case x >= y:
		return layout.AlongX
	}
	return layout.AlongY
}

// leastOpening is the size in mm, both ways, from which on an opening is kept
// for other parts: smaller ones only make the search slow.
const leastOpening = 50

// outline is what is laid out: the silhouette, and with a router the large
// openings that go straight through.
func (b *bench) outline(p box.Panel) outline.Region {
	if _, ok := b.job.By.(Router); !ok {
		return p.Silhouette
	}
	r := append(outline.Region(nil), p.Silhouette...)
	for _, o := range p.Ops {
		if o.Side != box.SideThrough || o.InOutline || o.Bottom != nil || !o.InSolid || len(o.Region) != 1 {
			continue
		}
		e := o.Region[0].Extents()
		if !(e.Width() >= leastOpening && e.Height() >= leastOpening) {
			continue
		}
		hole := o.Region[0]
		if hole.Area() > 0 {
			hole = hole.Reverse()
		}
		// Only what is a hole in the silhouette and meets nothing else.
		if with := append(r[:len(r):len(r)], hole); with.Check() == nil {
			r = with
		}
	}
	return r
}
