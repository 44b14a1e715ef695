package layout

import (
	"context"
	"math"
	"sort"

	"holt.example/box/outline"
)

// layOut constructs, improves, checks and writes.
func (n *nester) layOut(ctx context.Context, l *Layout) {
	effort := n.job.Effort
	if effort == 0 {
		effort = defaultFree
	}
	done := 0
	var best *plan
	if len(n.copies) > 0 {
		if n.rules.Objective == ShortestLength {
			best, done = n.strip(ctx, effort)
		} else {
			best, done = n.cheapest(ctx, effort)
		}
	}
	bound := n.write(l, best)
	n.account(l, squareMetres)
	l.Report.Done = done
	dear := 0.0
	for s := range n.job.Stock {
		if n.stock[s] {
			dear = math.Max(dear, n.job.Stock[s].price(n.priced, squareMetres))
		}
	}
	l.Report.settle(bound, dear)
	if n.rules.Objective == ShortestLength && len(l.Pieces) == 1 {
		l.Report.Length = l.Pieces[0].Used
		l.Report.Floor = n.floor(l.Pieces[0].Stock)
		l.Report.Optimal = len(l.Problems) == 0 && l.Report.Length <= l.Report.Floor+1e-6
	}
}

// floor is the least length there can be: by area, and by the longest part.
func (n *nester) floor(stock int) float64 {
	if len(n.frames[stock]) == 0 {
		return 0
	}
	f := n.frames[stock][0]
	area, long := 0.0, 0.0
	for _, c := range n.copies {
		area += n.job.Parts[c.part].Outline.Area()
		least := inf
		for _, s := range n.choices[c.part][stock] {
			sh := n.fits.shapes[s]
			least = math.Min(least, sh.x1-sh.x0)
		}
		if least < inf {
			long = math.Max(long, least)
		}
	}
	return f.Min.X + math.Max(area/f.Height(), long)
}

// strip puts everything on one piece of the first stock that takes it all and
// shortens the length used.
func (n *nester) strip(ctx context.Context, effort int) (*plan, int) {
	for s := range n.job.Stock {
		if !n.stock[s] || len(n.frames[s]) == 0 {
			continue
		}
		any := false
		for _, c := range n.copies {
			any = any || len(n.choices[c.part][s]) > 0
		}
		if !any {
			continue
		}
		only := *n
		ck := *n.checked
		only.checked = &ck
		ck.stock = make([]bool, len(n.stock))
		ck.stock[s] = true
		stocks := append([]Stock(nil), n.job.Stock...)
		stocks[s].Count = 1
		job := *n.job
		job.Stock = stocks
		ck.job = &job
		var best *plan
		if only.boxes() {
			best, _, _ = only.rects().start(true, s)
		} else {
			for how := 0; how < 4; how++ {
				if p := only.construct(ctx, only.order(how), true, s); only.better(p, best) {
					best = p
				}
			}
		}
		if len(best.bins) != 1 || effort <= 0 {
			return best, 0
		}
		if only.boxes() {
			r := only.rects()
			streams := max(1, n.job.Streams)
			got := make([]*plan, streams)
			done := make([]int, streams)
			together(streams, func(k int) {
				got[k], done[k] = r.shortenRects(ctx, best, effort/streams, stream(n.job.Seed, k), 0)
			})
			sum := 0
			for k := range got {
				sum += done[k]
				if n.better(got[k], best) {
					best = got[k]
				}
			}
			return best, sum
		}
		streams := max(1, n.job.Streams)
		got := make([]*plan, streams)
		done := make([]int, streams)
		floor := n.floor(s) - n.frames[s][0].Min.X
		together(streams, func(k int) {
			f := newField(n.fits, n.choices, stream(n.job.Seed, k))
			f.load(best.spots, best.bins)
			f.shorten(ctx, floor, effort/streams)
			q := *best
			q.spots = append([]spot(nil), f.spots...)
			got[k], done[k] = &q, f.done
		})
		sum := 0
		for k := range got {
			sum += done[k]
			if n.clean(got[k]) && n.better(got[k], best) {
				best = got[k]
			}
		}
		return best, sum
	}
	p := &plan{}
	for i := range n.copies {
		p.out = append(p.out, int32(i))
	}
	return p, 0
}

// cheapest constructs in several ways, then tries to do without one sheet
// after another, and at last shortens the sheet that is used least.
func (n *nester) cheapest(ctx context.Context, effort int) (*plan, int) {
	if n.boxes() {
		return n.cheapestRects(ctx, effort)
	}
	var best *plan
	favours := []int{-1}
	if len(n.job.Stock) <= 8 {
		for s := range n.job.Stock {
			if n.stock[s] && !n.job.Stock[s].Offcut && len(n.job.Stock) > 1 {
				favours = append(favours, s)
			}
		}
	}
	// the bounding rectangles by themselves, which is quick and often as good
	plain := true
	for _, s := range n.fits.shapes {
		plain = plain && s.part >= 0
	}
	if plain {
		r := n.rects()
		for _, fav := range favours {
			for _, off := range []bool{true, false} {
				if !off && !hasOffcut(n.checked) {
					continue
				}
				if p, _, _ := r.start(off, fav); n.better(p, best) && n.clean(p) {
					best = p
				}
			}
		}
	}
	orders := 4
	if len(n.copies) > 1500 {
		orders = 1
	}
	for how := 0; how < orders; how++ {
		order := n.order(how)
		for _, fav := range favours {
			if p := n.construct(ctx, order, true, fav); n.better(p, best) {
				best = p
			}
			if hasOffcut(n.checked) {
				if p := n.construct(ctx, order, false, fav); n.better(p, best) {
					best = p
				}
			}
		}
	}
	if effort <= 0 || len(best.sheets) == 0 {
		return best, 0
	}
	streams := max(1, n.job.Streams)
	got := make([]*plan, streams)
	done := make([]int, streams)
	together(streams, func(k int) {
		got[k], done[k] = n.improve(ctx, best, effort/streams, stream(n.job.Seed, k))
	})
	sum := 0
	for k := range got {
		sum += done[k]
		if n.better(got[k], best) && n.clean(got[k]) {
			best = got[k]
		}
	}
	return best, sum
}

// mostTogether is the most pieces searched at once.
const mostTogether = 120

// improve empties sheets one by one, with a few others as room, and then
// shortens the one that is used least.
func (n *nester) improve(ctx context.Context, p *plan, effort int, rng source) (*plan, int) {
	f := newField(n.fits, n.choices, rng)
	cur := *p
	last := effort / 5 // for the shortening
	bound := n.areaBound()
	for f.done < effort-last && ctx.Err() == nil && cur.cost > bound+1e-9 && len(cur.sheets) > 1 {
		before := f.done
		if q, ok := n.without(ctx, &cur, f, min(effort-last-f.done, 400)); ok {
			cur = *q
			continue
		}
		if f.done == before {
			f.done++
		}
	}
	if q, ok := n.shortenLast(ctx, &cur, f, effort-f.done); ok {
		cur = *q
	}
	return &cur, f.done
}

// without tries to lay out the pieces of one sheet on others.
func (n *nester) without(ctx context.Context, p *plan, f *field, rounds int) (*plan, bool) {
	area := make([]float64, len(p.bins))
	count := make([]int, len(p.bins))
	room := make([]float64, len(p.bins))
	for i, w := range p.who {
		if w >= 0 {
			s := &p.spots[i]
			area[s.bin] += n.fits.shapes[s.shape].area
			count[s.bin]++
		}
	}
	sum := func(sh *sheet) (a, r float64, c int) {
		for _, b := range sh.bins {
			a += area[b]
			c += count[b]
			r += float64((p.bins[b].x1 - p.bins[b].x0) * (p.bins[b].y1 - p.bins[b].y0))
		}
		return
	}
	_ = room
	// the victim: mostly the emptiest that costs anything
	victim := -1
	least := inf
	for k := range p.sheets {
		if n.job.Stock[p.sheets[k].stock].price(n.priced, squareMetres) <= 0 {
			continue
		}
		a, r, _ := sum(&p.sheets[k])
		if v := float64(a/r) + float64(0.15*f.rng.f()); v < least {
			victim, least = k, v
		}
	}
	if victim < 0 {
		return nil, false
	}
	need, _, total := sum(&p.sheets[victim])
	if total > mostTogether {
		return nil, false
	}
	// others, the emptier ones more likely, until there is room enough
	var others []int
	spare := 0.0
	perm := make([]int, 0, len(p.sheets))
	key := make([]float64, len(p.sheets))
	for k := range p.sheets {
		if k == victim {
			continue
		}
		a, r, _ := sum(&p.sheets[k])
		key[k] = float64(a/r) + float64(0.3*f.rng.f())
		perm = append(perm, k)
	}
	sort.SliceStable(perm, func(i, j int) bool { return key[perm[i]] < key[perm[j]] })
	for _, k := range perm {
		a, r, c := sum(&p.sheets[k])
		if total+c > mostTogether || len(others) >= 4 {
			break
		}
		total += c
		spare += r - a
		others = append(others, k)
		if spare > float64(2*need) && len(others) >= 2 {
			break
		}
	}
	if spare < need {
		return nil, false
	}
	var bins []bin
	to := map[int32]int32{}
	for _, k := range others {
		for _, b := range p.sheets[k].bins {
			to[b] = int32(len(bins))
			bins = append(bins, p.bins[b])
		}
	}
	var spots []spot
	var index []int
	gone := map[int32]bool{}
	for _, b := range p.sheets[victim].bins {
		gone[b] = true
	}
	for i := range p.spots {
		s := p.spots[i]
		if b, ok := to[s.bin]; ok {
			s.bin = b
		} else if gone[s.bin] && p.who[i] >= 0 {
			placed := false
			for try := 0; try < 20 && !placed; try++ {
				b := int32(f.rng.n(len(bins)))
				ch := n.choices[s.kind][bins[b].stock]
				if len(ch) == 0 {
					continue
				}
				sh := n.fits.shapes[ch[0]]
				if sh.x1-sh.x0 <= bins[b].x1-bins[b].x0 && sh.y1-sh.y0 <= bins[b].y1-bins[b].y0 {
					s.shape, s.bin = ch[0], b
					s.x = bins[b].x0 - sh.x0 + float64(f.rng.f()*(bins[b].x1-bins[b].x0-sh.x1+sh.x0))
					s.y = bins[b].y0 - sh.y0 + float64(f.rng.f()*(bins[b].y1-bins[b].y0-sh.y1+sh.y0))
					placed = true
				}
			}
			if !placed {
				return nil, false
			}
		} else {
			continue
		}
		spots = append(spots, s)
		index = append(index, i)
	}
	f.load(spots, bins)
	if !f.separate(ctx, 60, 2, rounds) {
		return nil, false
	}
	back := map[int32]int32{}
	for b, k := range to {
		back[k] = b
	}
	q := *p
	q.spots = append([]spot(nil), p.spots...)
	for k, i := range index {
		q.spots[i] = f.spots[k]
		q.spots[i].bin = back[f.spots[k].bin]
	}
	q.sheets = append([]sheet(nil), p.sheets...)
	q.who = append([]int32(nil), p.who...)
	q.bins = append([]bin(nil), p.bins...)
	n.tidy(&q)
	if !n.clean(&q) {
		return nil, false
	}
	return &q, true
}

// shortenLast shortens the sheet that is used least, if it is one bin.
func (n *nester) shortenLast(ctx context.Context, p *plan, f *field, rounds int) (*plan, bool) {
	used := make([]float64, len(p.bins))
	for i, w := range p.who {
		if s := &p.spots[i]; w >= 0 {
			used[s.bin] = math.Max(used[s.bin], s.x+n.fits.shapes[s.shape].x1)
		}
	}
	at, least := -1, inf
	for k := range p.sheets {
		if len(p.sheets[k].bins) == 1 && used[p.sheets[k].bins[0]] < least {
			at, least = k, used[p.sheets[k].bins[0]]
		}
	}
	if at < 0 || rounds <= 0 {
		return nil, false
	}
	b := p.sheets[at].bins[0]
	var spots []spot
	var index []int
	area := 0.0
	for i := range p.spots {
		if s := p.spots[i]; s.bin == b {
			s.bin = 0
			spots = append(spots, s)
			index = append(index, i)
			if p.who[i] >= 0 {
				area += n.fits.shapes[s.shape].area
			}
		}
	}
	if len(spots) > 2*mostTogether {
		return nil, false
	}
	bn := p.bins[b]
	f.load(spots, []bin{bn})
	f.shorten(ctx, area/(bn.y1-bn.y0), rounds)
	q := *p
	q.spots = append([]spot(nil), p.spots...)
	for k, i := range index {
		q.spots[i] = f.spots[k]
		q.spots[i].bin = b
	}
	if !n.clean(&q) {
		return nil, false
	}
	return &q, true
}

// areaBound is the least cost by area: the stock that costs least for its
// area first.
func (n *nester) areaBound() float64 {
	need := 0.0
	for _, c := range n.copies {
		need += n.job.Parts[c.part].Outline.Area()
	}
	return n.areaCost(need)
}

func (n *nester) areaCost(need float64) float64 {
	type offer struct{ rate, room float64 }
	var os []offer
	var prices []float64
	for s := range n.job.Stock {
		st := &n.job.Stock[s]
		room := 0.0
		for _, b := range n.frames[s] {
			room += float64(b.Width() * b.Height())
		}
		if room <= 0 || !n.stock[s] {
			continue
		}
		cost := st.price(n.priced, squareMetres)
		prices = append(prices, cost)
		k := inf
		if st.count() > 0 {
			k = float64(st.count())
		}
		os = append(os, offer{cost / room, float64(room * k)})
	}
	sort.SliceStable(os, func(i, j int) bool { return os[i].rate < os[j].rate })
	cost := 0.0
	for _, o := range os {
		take := math.Min(need, o.room)
		if take > 0 {
			cost += float64(take * o.rate)
			need -= take
		}
	}
	if u := costUnit(prices); u > 0 {
		cost = math.Ceil(cost/u-1e-6) * u
	}
	return float64(cost * (1 - 1e-12))
}

// regions are the true outlines of a plan, per bin, in place.
func (n *nester) placed(p *plan, i int) Placement {
	s := &p.spots[i]
	sh := n.fits.shapes[s.shape]
	c := n.copies[p.who[i]]
	// the shape may stand for another pose or part of the same form
	return Placement{Part: c.part, Copy: c.n, Turn: sh.pose.turn, Over: sh.pose.over, X: s.x, Y: s.y,
		Blank: rect(s.x+sh.x0, s.y+sh.y0, s.x+sh.x1, s.y+sh.y1)}
}

// clean checks the true outlines of a plan, arcs and all: every distance at
// least the gap, nothing outside, nothing on a defect.
func (n *nester) clean(p *plan) bool { return n.dirty(p) < 0 }

// dirty is the index of a spot that breaks a rule, -1 if none does.
func (n *nester) dirty(p *plan) int {
	const slack = 9e-7
	by := make([][]int, len(p.bins))
	for i := range p.spots {
		by[p.spots[i].bin] = append(by[p.spots[i].bin], i)
	}
	for b, list := range by {
		regs := make([]outline.Region, len(list))
		ext := make([]outline.Box, len(list))
		allow := make([]float64, len(list))
		for k, i := range list {
			if p.who[i] < 0 {
				continue
			}
			q := n.placed(p, i)
			regs[k] = n.job.Parts[q.Part].Outline.Transform(q.Map())
			ext[k] = regs[k].Extents()
			allow[k] = n.job.Parts[q.Part].Allowance
			e, a, bn := ext[k], allow[k], p.bins[b]
			if !(e.Min.X-a >= bn.x0-slack && e.Max.X+a <= bn.x1+slack && e.Min.Y-a >= bn.y0-slack && e.Max.Y+a <= bn.y1+slack) {
				return i
			}
		}
		for k, i := range list {
			if p.who[i] < 0 {
				continue
			}
			for j := 0; j < k; j++ {
				if p.who[list[j]] < 0 {
					d := n.fits.shapes[p.spots[list[j]].shape].defect
					if avoids(&n.job.Parts[n.copies[p.who[i]].part], d) {
						r := outline.Region{outline.Rectangle(d.Box.Min.X, d.Box.Min.Y, d.Box.Max.X, d.Box.Max.Y)}
						if !apart(regs[k], r, ext[k], d.Box, allow[k]-slack) {
							return i
						}
					}
					continue
				}
				if !apart(regs[k], regs[j], ext[k], ext[j], n.rules.Gap+allow[k]+allow[j]-slack) {
					return i
				}
			}
		}
	}
	return -1
}

// apart says whether two regions are clear of each other by at least gap; one
// in a hole of the other is. A gap of zero or less lets them touch.
func apart(a, b outline.Region, ea, eb outline.Box, gap float64) bool {
	if !ea.Overlaps(eb, math.Max(gap, 0)) {
		return true
	}
	if gap > 0 {
		if a.DistanceTo(b) < gap {
			return false
		}
	} else if !touching(a, b) {
		return false
	}
	for _, c := range a {
		if b.Contains(c[0].At(), 1e-6) == outline.Inside {
			return false
		}
	}
	for _, c := range b {
		if a.Contains(c[0].At(), 1e-6) == outline.Inside {
			return false
		}
	}
	return true
}

// touching says that no side of one region runs through the material of the
// other by more than rounding.
func touching(a, b outline.Region) bool {
	const deep = 2e-6
	in := func(r, s outline.Region) bool {
		for _, c := range s {
			poly := c.Flatten(0.01)
			for i, p := range poly {
				q := poly[(i+1)%len(poly)]
				for _, k := range [3]float64{0, 0.5, 0.77} {
					m := outline.Point{X: p.X + float64(k*(q.X-p.X)), Y: p.Y + float64(k*(q.Y-p.Y))}
					if r.Contains(m, deep) == outline.Inside && r.Distance(m) > 0.011 {
						return true
					}
				}
			}
		}
		return false
	}
	return !in(a, b) && !in(b, a)
}

// write turns a plan into pieces of stock, checked once more, and returns the
// bound of the cost.
func (n *nester) write(l *Layout, p *plan) float64 {
	short := make([]int, len(n.job.Parts))
	for i := range n.job.Parts {
		if n.part[i] {
			short[i] = n.job.Parts[i].quantity()
		}
	}
	area := 0.0
	if p != nil {
		for k := n.dirty(p); k >= 0; k = n.dirty(p) {
			// never on any input: rather leave a part out
			p.out = append(p.out, p.who[k])
			p.spots = append(p.spots[:k:k], p.spots[k+1:]...)
			p.who = append(p.who[:k:k], p.who[k+1:]...)
		}
		n.tidy(p)
		order := make([]int, len(p.sheets))
		for i := range order {
			order[i] = i
		}
		sort.SliceStable(order, func(a, b int) bool { return p.sheets[order[a]].stock < p.sheets[order[b]].stock })
		next := make([]int, len(n.job.Parts))
		for _, k := range order {
			sh := &p.sheets[k]
			piece := Piece{Stock: sh.stock}
			for bi, b := range sh.bins {
				bed := Bed{}
				for i := range p.spots {
					if p.spots[i].bin != b || p.who[i] < 0 {
						continue
					}
					q := n.placed(p, i)
					q.Copy = next[q.Part]
					next[q.Part]++
					area += n.job.Parts[q.Part].Outline.Area()
					bed.Placements = append(bed.Placements, len(piece.Placements))
					piece.Placements = append(piece.Placements, q)
					piece.Used = math.Max(piece.Used, q.Blank.Max.X)
				}
				if len(n.beds[sh.stock]) > 0 && len(bed.Placements) > 0 {
					bed.Box = n.beds[sh.stock][bi]
					piece.Beds = append(piece.Beds, bed)
				}
			}
			piece.Offcuts = n.offcuts(&piece)
			l.Pieces = append(l.Pieces, piece)
		}
		for i, k := range next {
			short[i] -= k
		}
	}
	for i, k := range short {
		if k > 0 {
			n.refuse(i, k, CodeNoneLeft)
		}
	}
	return n.areaCost(area)
}

// offcuts is what is left beyond the last part along the stock, or above the
// highest, whichever keeps the larger piece, the gap taken off.
func (n *nester) offcuts(p *Piece) []outline.Box {
	st := &n.job.Stock[p.Stock]
	x, y := 0.0, 0.0
	for _, q := range p.Placements {
		x, y = math.Max(x, q.Blank.Max.X), math.Max(y, q.Blank.Max.Y)
	}
	x1, y1 := st.Length-st.End, st.Width-st.Edge
	x, y = x+n.rules.Gap, y+n.rules.Gap
	right, above := rect(x, st.Edge, x1, y1), rect(st.End, y, x1, y1)
	if right.Width()*right.Height() >= above.Width()*above.Height() {
		above.Max.X = math.Min(above.Max.X, x-n.rules.Gap)
	} else {
		right.Max.Y = math.Min(right.Max.Y, y-n.rules.Gap)
	}
	return keeps([]outline.Box{right, above}, n.rules.Keep, n.rules.Keep)
}
