package layout

import (
	"context"
	"math"
	"sort"
)

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
		if effort > 0 && best != nil && best.cost > n.areaBound()+1e-9 {
			if p := r.sliced(ctx); p != nil && n.better(p, best) && n.clean(p) {
				best = p
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
	last := effort / 5 // for the shortening, and no more: a longer offcut is worth less than a quick answer
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
	if q, ok := n.shortenLast(ctx, &cur, f, min(effort-f.done, last)); ok {
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
