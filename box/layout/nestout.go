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
