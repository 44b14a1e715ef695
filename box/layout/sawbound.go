package layout

import (
	"math"
	"sort"
)

// bound is a lower bound of the cost. For one kind of sheet without limit: the
// number of sheets by dual feasible functions (a size above W - p counts as
// the whole W, one below p as nothing; for every pair of such functions the
// products add up to no more sheets than there are), times the price. For
// several kinds: the area.
func (p *sawing) bound() float64 {
	if len(p.kinds) != 1 || len(p.kinds[0].roots) != 1 {
		return p.areaBound()
	}
	r := p.kinds[0].roots[0]
	n := 0
	xs, ys := p.steps(0), p.steps(1)
	for _, a := range xs {
		for _, b := range ys {
			sum := 0.0
			for i := range p.pieces {
				q := &p.pieces[i]
				v := inf
				if q.ways[0]&wayUp != 0 {
					v = float64(shrunk(q.w, r[0], a) * shrunk(q.h, r[1], b))
				}
				if q.ways[0]&waySide != 0 {
					v = math.Min(v, float64(shrunk(q.h, r[0], a)*shrunk(q.w, r[1], b)))
				}
				sum += v
			}
			n = max(n, int(math.Ceil(sum-1e-7)))
		}
	}
	return float64(n) * p.kinds[0].cost
}

// shrunk is the dual feasible function: 1, 0 or the share of the side.
func shrunk(x, side, p int64) float64 {
	switch {
	case x > side-p:
		return 1
	case x < p:
		return 0
	}
	return float64(x) / float64(side)
}

// steps are up to 40 of the sizes from 0 to half the side at which the
// function changes.
func (p *sawing) steps(axis int) []int64 {
	side := p.kinds[0].roots[0][axis]
	seen := map[int64]bool{0: true}
	out := []int64{0}
	add := func(x int64) {
		for _, v := range []int64{x, side - x + 1} {
			if v > 0 && 2*v <= side && !seen[v] {
				seen[v] = true
				out = append(out, v)
			}
		}
	}
	for i := range p.pieces {
		q := &p.pieces[i]
		if w := q.ways[0]; axis == 0 && w&wayUp != 0 || axis == 1 && w&waySide != 0 {
			add(q.w)
		}
		if w := q.ways[0]; axis == 1 && w&wayUp != 0 || axis == 0 && w&waySide != 0 {
			add(q.h)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i] < out[j] })
	for len(out) > 40 {
		for i := 1; i < len(out)/2; i++ {
			out[i] = out[2*i]
		}
		out = out[:len(out)/2]
	}
	return out
}

// areaBound fills the sheets that cost least for their area first; whole sheets
// are bought, so that the cost is a multiple of the unit of all prices.
func (p *sawing) areaBound() float64 {
	need := 0.0
	for i := range p.pieces {
		need += float64(float64(p.pieces[i].w) * float64(p.pieces[i].h))
	}
	ks := make([]int, len(p.kinds))
	for i := range ks {
		ks[i] = i
	}
	sort.SliceStable(ks, func(a, b int) bool {
		return p.kinds[ks[a]].cost*p.kinds[ks[b]].area < p.kinds[ks[b]].cost*p.kinds[ks[a]].area
	})
	cost := 0.0
	prices := make([]float64, len(p.kinds))
	for k := range p.kinds {
		prices[k] = p.kinds[k].cost
	}
	for _, k := range ks {
		if need <= 0 {
			break
		}
		kd := &p.kinds[k]
		room := need
		if kd.count > 0 {
			room = math.Min(need, float64(float64(kd.count)*kd.area))
		}
		cost += float64(room * (kd.cost / kd.area))
		need -= room
	}
	if u := costUnit(prices); u > 0 {
		cost = math.Ceil(cost/u-1e-6) * u
	}
	return float64(cost * (1 - 1e-9))
}
