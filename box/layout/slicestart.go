package layout

import (
	"context"
	"math"
)

// sliceEffort is the most iterations that a start by straight cuts takes.
const sliceEffort = 20_000

// sliced lays the bounding rectangles out as the saw would, with the gap for a
// kerf: for many parts of few kinds that wastes less than placing them one by
// one. It is nil if no sheet suits.
func (r *rectJob) sliced(ctx context.Context) *plan {
	p := &sawing{}
	var kinds []int
	g := r.rules.Gap
	for s := range r.job.Stock {
		st := &r.job.Stock[s]
		if !r.stock[s] || len(r.frames[s]) == 0 {
			continue
		}
		kd := sheetKind{cost: st.price(r.priced, squareMetres), count: st.count(), first: st.Offcut}
		for _, b := range r.frames[s] {
			kd.roots = append(kd.roots, [2]int64{ticksDown(b.Width() + g), ticksDown(b.Height() + g)})
		}
		if kd.first {
			kd.count = min(kd.count, 200)
		}
		kinds = append(kinds, s)
		p.kinds = append(p.kinds, kd)
	}
	if len(kinds) == 0 {
		return nil
	}
	for _, c := range r.copies {
		x, y := r.size(c.part, pose{})
		q := blankSize{w: ticksUp(x + g), h: ticksUp(y + g), ways: make([]uint8, len(kinds)), prio: r.job.Parts[c.part].Priority}
		for k, s := range kinds {
			if r.boxShape(c.part, s, false) >= 0 {
				q.ways[k] |= wayUp
			}
			if r.boxShape(c.part, s, true) >= 0 {
				q.ways[k] |= waySide
			}
		}
		p.pieces = append(p.pieces, q)
	}
	p.prepare()
	best, _, _ := p.search(ctx, r.job.Seed, min(sliceEffort, 200*len(r.copies)), 1)
	return r.unsliced(best, kinds)
}

// unsliced is the plan of slicing trees.
func (r *rectJob) unsliced(best *sawBest, kinds []int) *plan {
	out := &plan{out: append([]int32(nil), best.out...)}
	for b := range best.bins {
		t := &best.bins[b]
		s := kinds[t.kind]
		sh := sheet{stock: s}
		for root, f := range r.frames[s] {
			at := int32(len(out.bins))
			sh.bins = append(sh.bins, at)
			out.bins = append(out.bins, bin{f.Min.X, f.Min.Y, f.Max.X, f.Max.Y, int32(s)})
			var walk func(i int32, x, y int64)
			walk = func(i int32, x, y int64) {
				switch n := &t.nodes[i]; n.kind {
				case nodePiece:
					part := r.copies[n.piece].part
					k := r.boxShape(part, s, n.turned)
					e := r.fits.shapes[k]
					out.spots = append(out.spots, spot{shape: k, bin: at, kind: int32(part),
						x: math.Min(f.Min.X+float64(float64(x)*tick), f.Max.X-(e.x1-e.x0)) - e.x0,
						y: math.Min(f.Min.Y+float64(float64(y)*tick), f.Max.Y-(e.y1-e.y0)) - e.y0})
					out.who = append(out.who, n.piece)
				case nodeAcross, nodeAlong:
					for j := n.first; j >= 0; j = t.nodes[j].next {
						walk(j, x, y)
						if n.kind == nodeAcross {
							x += t.nodes[j].w
						} else {
							y += t.nodes[j].h
						}
					}
				}
			}
			walk(int32(root), 0, 0)
		}
		out.sheets = append(out.sheets, sh)
	}
	r.tidy(out)
	return out
}
