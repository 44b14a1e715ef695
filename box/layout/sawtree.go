package layout

import (
	"math"
	"sort"

	"holt.example/box/outline"
)

// write turns slicing trees into pieces of stock.
func (y *sawyer) write(l *Layout, best *sawBest) {
	short := make([]int, len(y.job.Parts))
	for i := range y.job.Parts {
		if y.part[i] {
			short[i] = y.job.Parts[i].quantity()
		}
	}
	if best != nil {
		bins := append([]slicing(nil), best.bins...)
		sort.SliceStable(bins, func(a, b int) bool {
			if ka, kb := y.kinds[bins[a].kind], y.kinds[bins[b].kind]; ka != kb {
				return ka < kb
			}
			return bins[a].used > bins[b].used
		})
		next := make([]int, len(y.job.Parts)) // copies in the order they are laid down
		for b := range bins {
			l.Pieces = append(l.Pieces, y.piece(&bins[b], next))
		}
		for i, n := range next {
			short[i] -= n
		}
	}
	for i, n := range short {
		if n > 0 {
			y.refuse(i, n, CodeNoneLeft)
		}
	}
}

func (y *sawyer) piece(t *slicing, next []int) Piece {
	s := y.kinds[t.kind]
	st := &y.job.Stock[s]
	p := Piece{Stock: s}
	w := &sawWriter{y: y, t: t, p: &p, stock: s, next: next}
	root := w.copyFrame(&y.frames[s])
	root = widen(root, st)
	p.Cuts = &root
	p.Offcuts = keeps(w.left, y.rules.Keep, y.rules.Keep)
	for _, q := range p.Placements {
		p.Used = math.Max(p.Used, q.Blank.Max.X)
	}
	p.Steps = steps(p.Cuts, y.rules.Kerf)
	return p
}

// widen makes the root the whole stock where trims are only dust.
func widen(c Cut, st *Stock) Cut {
	full := rect(0, 0, st.Length, st.Width)
	if c.Box == full {
		return c
	}
	return Cut{Box: full, Into: []Cut{c}}
}

type sawWriter struct {
	y     *sawyer
	t     *slicing
	p     *Piece
	stock int
	next  []int
	root  int32
	left  []outline.Box
}

// copyFrame copies the frame and puts a slicing tree into each clear
// rectangle.
func (w *sawWriter) copyFrame(c *Cut) Cut {
	if c.Place == -1 {
		out := w.node(w.root, c.Box)
		w.root++
		return out
	}
	out := *c
	out.Into = nil
	for i := range c.Into {
		out.Into = append(out.Into, w.copyFrame(&c.Into[i]))
	}
	return out
}

// node is node i of the tree in its place; the box is exact along the cuts
// that made it.
func (w *sawWriter) node(i int32, b outline.Box) Cut {
	n := &w.t.nodes[i]
	switch n.kind {
	case nodeFree:
		w.left = append(w.left, b)
		return Cut{Box: b}
	case nodePiece:
		c := w.y.copies[n.piece]
		t := w.y.poseUp[c.part][w.stock]
		if n.turned {
			t = w.y.poseOn[c.part][w.stock]
		}
		k := w.next[c.part]
		w.next[c.part]++
		q := w.y.put(c.part, k, *t, b.Min.X, b.Min.Y)
		q.Blank = b
		w.p.Placements = append(w.p.Placements, q)
		return Cut{Box: b, Place: len(w.p.Placements)}
	}
	out := Cut{Box: b, Rip: n.kind == nodeAlong}
	var kids []int32
	for j := n.first; j >= 0; j = w.t.nodes[j].next {
		kids = append(kids, j)
	}
	size := func(j int32) int64 {
		if out.Rip {
			return w.t.nodes[j].h
		}
		return w.t.nodes[j].w
	}
	sort.SliceStable(kids, func(a, b int) bool {
		fa, fb := w.t.nodes[kids[a]].kind == nodeFree, w.t.nodes[kids[b]].kind == nodeFree
		if fa != fb {
			return fb
		}
		return size(kids[a]) > size(kids[b])
	})
	kerf := w.y.rules.Kerf
	at, end := b.Min.X, b.Max.X
	if out.Rip {
		at, end = b.Min.Y, b.Max.Y
	}
	ticks := int64(0)
	for k, j := range kids {
		lo := at + float64(float64(ticks)*tick)
		ticks += size(j)
		hi := math.Min(at+float64(float64(ticks)*tick)-kerf, end)
		if k == len(kids)-1 && (w.t.nodes[j].kind == nodeFree || end-hi <= 2*tick) {
			hi = end
		}
		if hi-lo <= sameWidth {
			continue // dust
		}
		box := rect(lo, b.Min.Y, hi, b.Max.Y)
		if out.Rip {
			box = rect(b.Min.X, lo, b.Max.X, hi)
		}
		out.Into = append(out.Into, w.node(j, box))
	}
	return out
}
