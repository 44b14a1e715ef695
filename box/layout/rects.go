package layout

import (
	"context"
	"fmt"
	"math"
)

// boxes says whether every part is a rectangle and no stock has defects: then
// the search is over orders of rectangles.
func (n *nester) boxes() bool {
	for _, s := range n.fits.shapes {
		if !s.box || s.part < 0 {
			return false
		}
	}
	return true
}

// rectJob is a job of rectangles: types and bins in ticks with one gap, x
// along and y across.
type rectJob struct {
	*nester
	types []rectType
	of    []int32
}

func (n *nester) rects() *rectJob {
	r := &rectJob{nester: n}
	known := map[string]int32{}
	g := n.rules.Gap
	for _, c := range n.copies {
		x, y := n.size(c.part, pose{})
		t := rectType{w: ticksUp(y + g), h: ticksUp(x + g), ways: make([]uint8, len(n.job.Stock))}
		key := fmt.Sprint(t.w, " ", t.h, " ", n.job.Parts[c.part].Priority)
		for s := range n.job.Stock {
			if k := n.boxShape(c.part, s, false); k >= 0 {
				t.ways[s] |= wayUp
			}
			if k := n.boxShape(c.part, s, true); k >= 0 {
				t.ways[s] |= waySide
			}
			key += fmt.Sprint(" ", t.ways[s])
		}
		k, ok := known[key]
		if !ok {
			k = int32(len(r.types))
			known[key] = k
			r.types = append(r.types, t)
		}
		r.of = append(r.of, k)
	}
	return r
}

// boxShape is the shape of a part that lies as drawn, or turned by a quarter;
// -1 if there is none.
func (n *nester) boxShape(part, stock int, side bool) int32 {
	x, y := n.size(part, pose{})
	if side {
		x, y = y, x
	}
	for _, k := range n.choices[part][stock] {
		s := n.fits.shapes[k]
		if math.Abs(s.x1-s.x0-x) < 1e-7 && math.Abs(s.y1-s.y0-y) < 1e-7 {
			return k
		}
	}
	return -1
}

func (r *rectJob) bin(stock, frame int) rectBin {
	b := r.frames[stock][frame]
	return rectBin{w: ticksDown(b.Height() + r.rules.Gap), h: ticksDown(b.Width() + r.rules.Gap)}
}

// plan turns the places of a skyline into a plan on the given sheets.
func (r *rectJob) plan(at []laid, stocks []int) *plan {
	p := &plan{}
	for _, s := range stocks {
		sh := sheet{stock: s}
		for _, b := range r.frames[s] {
			sh.bins = append(sh.bins, int32(len(p.bins)))
			p.bins = append(p.bins, bin{b.Min.X, b.Min.Y, b.Max.X, b.Max.Y, int32(s)})
		}
		p.sheets = append(p.sheets, sh)
	}
	for c, l := range at {
		if l.bin < 0 {
			p.out = append(p.out, int32(c))
			continue
		}
		bn := p.bins[l.bin]
		part := r.copies[c].part
		k := r.boxShape(part, int(bn.stock), l.side)
		sh := r.fits.shapes[k]
		p.spots = append(p.spots, spot{shape: k, bin: l.bin, kind: int32(part),
			x: math.Min(bn.x0+float64(float64(l.y)*tick), bn.x1-(sh.x1-sh.x0)) - sh.x0,
			y: math.Min(bn.y0+float64(float64(l.x)*tick), bn.y1-(sh.y1-sh.y0)) - sh.y0})
		p.who = append(p.who, int32(c))
	}
	r.tidy(p)
	return p
}

// decode lays an order out on sheets, opening further ones as next says.
func (r *rectJob) decode(s *skyline, stocks []int, next func(s *skyline) int) []int {
	s.begin()
	used := append([]int(nil), stocks...)
	b := int32(0)
	for k := 0; len(s.live) > 0; k++ {
		if k == len(used) {
			if next == nil {
				break
			}
			n := next(s)
			if n < 0 {
				break
			}
			used = append(used, n)
		}
		for f := range r.frames[used[k]] {
			s.fill(b, used[k], r.bin(used[k], f), 0, 0)
			b++
		}
	}
	return used
}

// start lays the rectangles out in several orders and takes the best.
func (r *rectJob) start(offcuts bool, favour int) (*plan, []int, []int32) {
	var best *plan
	var bestStocks []int
	var bestOrder []int32
	var shed []int
	for s := range r.job.Stock {
		if r.job.Stock[s].Offcut && offcuts && r.stock[s] && len(r.frames[s]) > 0 {
			for k := min(r.job.Stock[s].count(), 200); k > 0; k-- {
				shed = append(shed, s)
			}
		}
	}
	for how := 0; how < sortOrders; how++ {
		s := newSkyline(r.types, r.of)
		s.sortBy(how)
		r.byPriority(s.order)
		left := make([]int, len(r.job.Stock))
		for i := range left {
			left[i] = r.job.Stock[i].count()
			if left[i] == 0 {
				left[i] = math.MaxInt
			}
			if r.job.Stock[i].Offcut || !r.stock[i] || len(r.frames[i]) == 0 {
				left[i] = 0
			}
		}
		next := func(s *skyline) int {
			// what comes first in the order decides on the kind of stock
			first := int32(math.MaxInt32)
			var t int32
			for a := range s.live {
				if s.live[a].pos < first {
					suits := false
					for k := range left {
						suits = suits || left[k] > 0 && r.types[s.live[a].t].ways[k] != 0
					}
					if suits {
						first, t = s.live[a].pos, s.live[a].t
					}
				}
			}
			if first == math.MaxInt32 {
				return -1
			}
			k, rate := -1, inf
			for i := range left {
				if left[i] == 0 || r.types[t].ways[i] == 0 {
					continue
				}
				st := &r.job.Stock[i]
				v := st.price(r.priced, squareMetres) / float64(st.Length*st.Width)
				if i == favour {
					v = -1
				}
				if v < rate {
					k, rate = i, v
				}
			}
			left[k]--
			return k
		}
		used := r.decode(s, shed, next)
		p := r.plan(s.at, used)
		if r.better(p, best) {
			best = p
			bestOrder = append([]int32(nil), s.order...)
			bestStocks = nil
			for _, sh := range p.sheets {
				bestStocks = append(bestStocks, sh.stock)
			}
		}
	}
	return best, bestStocks, bestOrder
}

// byPriority brings what has priority to the front and keeps the order else.
func (r *rectJob) byPriority(order []int32) {
	prio := func(i int32) int { return r.job.Parts[r.copies[i].part].Priority }
	same := true
	for _, i := range order {
		same = same && prio(i) == prio(order[0])
	}
	if same {
		return
	}
	stableSort(order, func(a, b int32) bool { return prio(a) > prio(b) })
}

// search tries to do without one sheet after another: two rectangles change
// places in the order, and the change stays if no more area is left out.
func (r *rectJob) search(ctx context.Context, best *plan, stocks []int, order []int32, effort int, rng source) (*plan, int) {
	done := 0
	bound := r.areaBound()
	s := newSkyline(r.types, r.of)
	n := len(order)
	for done < effort-effort/5 && len(best.out) == 0 && best.cost > bound+1e-9 && len(stocks) > 1 && n > 1 && ctx.Err() == nil {
		// do without the last sheet that costs anything, or another at random
		drop := len(stocks) - 1
		if rng.n(3) == 0 {
			drop = rng.n(len(stocks))
		}
		for k := 0; k < len(stocks) && r.job.Stock[stocks[drop]].price(r.priced, squareMetres) <= 0; k++ {
			drop = (drop + 1) % len(stocks)
		}
		few := append(append([]int(nil), stocks[:drop]...), stocks[drop+1:]...)
		copy(s.order, order)
		cur := inf
		ok := false
		for idle := 0; idle < 3000 && done < effort-effort/5 && ctx.Err() == nil; idle++ {
			i, j := rng.n(n), rng.n(n)
			s.order[i], s.order[j] = s.order[j], s.order[i]
			r.decode(s, few, nil)
			done++
			v := s.leftOut()
			if v > cur {
				s.order[i], s.order[j] = s.order[j], s.order[i]
				continue
			}
			if v < cur {
				cur, idle = v, 0
			}
			if v == 0 {
				ok = true
				break
			}
		}
		if !ok {
			continue
		}
		if p := r.plan(s.at, few); p.cost < best.cost-1e-9 && r.clean(p) {
			best = p
			stocks = stocks[:0]
			for _, sh := range p.sheets {
				stocks = append(stocks, sh.stock)
			}
			copy(order, s.order)
		}
	}
	return r.shortenRects(ctx, best, effort-done, rng, done)
}

// shortenRects lays the sheet that is used least out again, as short as it
// goes.
func (r *rectJob) shortenRects(ctx context.Context, p *plan, effort int, rng source, done int) (*plan, int) {
	at, least := -1, inf
	used := make([]float64, len(p.bins))
	for i := range p.spots {
		s := &p.spots[i]
		used[s.bin] = math.Max(used[s.bin], s.x+r.fits.shapes[s.shape].x1)
	}
	for k, sh := range p.sheets {
		if len(sh.bins) == 1 && used[sh.bins[0]] < least {
			at, least = k, used[sh.bins[0]]
		}
	}
	if at < 0 || effort <= 0 {
		return p, done
	}
	stock, b := p.sheets[at].stock, p.sheets[at].bins[0]
	var of []int32
	var who []int
	for i := range p.spots {
		if p.spots[i].bin == b {
			of = append(of, r.of[p.who[i]])
			who = append(who, i)
		}
	}
	types := make([]rectType, len(r.types))
	need := 0.0
	for i := range types {
		types[i] = rectType{r.types[i].w, r.types[i].h, r.types[i].ways[stock : stock+1]}
	}
	for _, t := range of {
		need += float64(float64(types[t].w) * float64(types[t].h))
	}
	s := newSkyline(types, of)
	bn := r.bin(stock, 0)
	floor := int64(math.Ceil(need/float64(bn.w) - 1e-6))
	far, n := s.strip(bn, floor, effort, 20000, &rng, func() bool { return ctx.Err() != nil })
	done += n
	q := *p
	q.spots = append([]spot(nil), p.spots...)
	if far > bn.h {
		return p, done
	}
	for k, i := range who {
		l := s.at[k]
		part := r.copies[p.who[i]].part
		id := r.boxShape(part, stock, l.side)
		sh := r.fits.shapes[id]
		b := p.bins[p.spots[i].bin]
		q.spots[i].shape = id
		q.spots[i].x = math.Min(b.x0+float64(float64(l.y)*tick), b.x1-(sh.x1-sh.x0)) - sh.x0
		q.spots[i].y = math.Min(b.y0+float64(float64(l.x)*tick), b.y1-(sh.y1-sh.y0)) - sh.y0
	}
	if r.better(&q, p) && r.clean(&q) {
		return &q, done
	}
	return p, done
}

// cheapestRects is cheapest for rectangles.
func (n *nester) cheapestRects(ctx context.Context, effort int) (*plan, int) {
	r := n.rects()
	type start struct {
		p      *plan
		stocks []int
		order  []int32
	}
	var best start
	favours := []int{-1}
	if len(n.job.Stock) <= 8 {
		for s := range n.job.Stock {
			if n.stock[s] && !n.job.Stock[s].Offcut && len(n.job.Stock) > 1 {
				favours = append(favours, s)
			}
		}
	}
	for _, off := range []bool{true, false} {
		if !off && !hasOffcut(n.checked) {
			continue
		}
		for _, fav := range favours {
			if p, st, o := r.start(off, fav); n.better(p, best.p) {
				best = start{p, st, o}
			}
		}
	}
	if effort <= 0 || len(best.p.sheets) == 0 {
		return best.p, 0
	}
	streams := max(1, n.job.Streams)
	got := make([]*plan, streams)
	done := make([]int, streams)
	together(streams, func(k int) {
		got[k], done[k] = r.search(ctx, best.p, append([]int(nil), best.stocks...), append([]int32(nil), best.order...), effort/streams, stream(n.job.Seed, k))
	})
	sum := 0
	out := best.p
	if out.cost > n.areaBound()+1e-9 {
		if p := r.sliced(ctx); p != nil && n.better(p, out) && n.clean(p) {
			out = p
		}
	}
	for k := range got {
		sum += done[k]
		if n.better(got[k], out) {
			out = got[k]
		}
	}
	return out, sum
}
