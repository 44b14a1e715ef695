package layout

import (
	"context"
	"math"
	"sort"
)

// artificial is a multiple of the dearest bar that no sensible price exceeds.
const artificial = 1e3

// stepsPattern is how many steps of a knapsack count as one iteration more.
const stepsPattern = 100_000

// relax solves the linear program of p by generating columns, at most rounds
// of them and within the effort, and returns the value and the best bound on
// the way.
func (c *cutting) relax(ctx context.Context, p *program, stop float64, rounds, effort int, done *int) (value, bound float64, ok bool) {
	bound = math.Inf(-1)
	p.duals()
	most := p.moves + 50*p.m + 10*rounds + 1000 // against circles on degenerate bases
	for n := 0; n < rounds && *done < effort && ctx.Err() == nil && p.moves < most; {
		col := p.fromPool()
		if col == nil {
			var b float64
			col, b = c.price(p)
			*done += 1 + c.work/stepsPattern
			c.work %= stepsPattern
			n++
			if b > bound {
				bound = b
			}
			if col == nil || c.roundUp(bound) >= stop-1e-9 {
				break
			}
			p.pool = append(p.pool, col)
		}
		if !p.enter(col) {
			break
		}
		p.duals()
	}
	ok = true
	for i, b := range p.basis {
		value += float64(b.cost * max(p.x[i], 0))
		if b.pat == nil && b.cost > 0 && p.x[i] > 1e-6 {
			ok = false
		}
	}
	return value, bound, ok
}

func (p *program) clone() *program {
	q := &program{m: p.m, d: append([]float64(nil), p.d...), inv: append([]float64(nil), p.inv...), basis: append([]*column(nil), p.basis...),
		x: append([]float64(nil), p.x...), y: append([]float64(nil), p.y...), u: make([]float64, p.m), pool: append([]*column(nil), p.pool...), in: map[*column]bool{}}
	for _, b := range q.basis {
		q.in[b] = true
	}
	return q
}

// fresh is a copy that shares nothing which a stream changes.
func (c *cutting) fresh() *cutting {
	d := *c
	d.knaps = make([][]*knapsack, len(c.knaps))
	for b := range c.knaps {
		for _, k := range c.knaps[b] {
			d.knaps[b] = append(d.knaps[b], &knapsack{lens: k.lens, bound: k.bound})
		}
	}
	return &d
}

// solve covers the demand at least cost: a greedy answer, the linear program
// for the bound, then dives from its fractions to whole numbers.
func (c *cutting) solve(ctx context.Context, seed uint64, effort, streams int) result {
	c.prepare()
	var r result
	left := append([]int(nil), c.demand...)
	r.pats, r.cost = c.greedy(ctx, left, append([]int(nil), c.limits...))
	r.left = left
	r.whole = covered(left)
	if !r.whole {
		for i := range c.demand {
			c.demand[i] -= left[i]
		}
		c.prepare()
	}
	r.bound = c.roundUp(c.material())
	if r.bound >= r.cost-1e-9 || effort <= 0 || len(c.demand) == 0 {
		return r
	}
	dear := 0.0
	for _, b := range c.bars {
		dear = max(dear, b.cost)
	}
	d := make([]float64, len(c.demand)+len(c.limits))
	for i, v := range c.demand {
		d[i] = float64(v)
	}
	for i, v := range c.limits {
		d[len(c.demand)+i] = float64(v)
	}
	p := newProgram(d, len(c.demand), artificial*dear)
	seen := 0
	for i := range r.pats {
		if i > 0 && samePattern(&r.pats[i], &r.pats[i-1]) {
			continue
		}
		p.pool = append(p.pool, c.columnOf(&r.pats[i]))
		if seen++; seen > 1000 {
			break
		}
	}
	_, b, ok := c.relax(ctx, p, r.cost, effort, effort, &r.done)
	r.bound = max(r.bound, c.roundUp(b))
	if !ok || r.bound >= r.cost-1e-9 || ctx.Err() != nil {
		return r
	}
	share := (effort - r.done) / streams
	best := make([]result, streams)
	together(streams, func(s int) {
		rng := stream(seed, s)
		mine := c.fresh()
		best[s] = result{pats: r.pats, cost: r.cost}
		for trial := 0; best[s].done < share && best[s].cost > r.bound+1e-9 && ctx.Err() == nil; trial++ {
			before := best[s].done
			mine.dive(ctx, p.clone(), r.bound, share, s+trial, &rng, &best[s])
			if best[s].done == before {
				best[s].done++
			}
		}
	})
	for s := range best {
		r.done += best[s].done
		if best[s].cost < r.cost-1e-9 {
			r.pats, r.cost = best[s].pats, best[s].cost
		}
	}
	return r
}

func samePattern(a, b *pattern) bool {
	if a.bar != b.bar || len(a.segs) != len(b.segs) {
		return false
	}
	for i := range a.segs {
		if len(a.segs[i]) != len(b.segs[i]) {
			return false
		}
		for j := range a.segs[i] {
			if a.segs[i][j] != b.segs[i][j] {
				return false
			}
		}
	}
	return true
}

// material is the bound from length alone.
func (c *cutting) material() float64 {
	need := 0.0
	for r, n := range c.demand {
		need += float64(float64(n) * c.lengths[r])
	}
	type offer struct {
		rate, room, cost float64
		limit            int
	}
	var os []offer
	for b := range c.bars {
		room := 0.0
		for _, s := range c.bars[b].segs {
			room += float64(s)
		}
		if room > 0 {
			os = append(os, offer{c.bars[b].cost / room, room, c.bars[b].cost, c.bars[b].limit})
		}
	}
	sort.SliceStable(os, func(i, j int) bool { return os[i].rate < os[j].rate })
	cost := 0.0
	for _, o := range os {
		if need <= 0 {
			break
		}
		room := need
		if o.limit >= 0 {
			room = min(need, float64(float64(c.limits[o.limit])*o.room))
		}
		cost += float64(room * o.rate)
		need -= room
	}
	return float64(cost * (1 - 1e-12))
}

// dive rounds the program down and then up, column by column, until the demand
// is covered or the bound of the rest says that it cannot beat the best.
func (c *cutting) dive(ctx context.Context, p *program, bound float64, share, trial int, rng *source, best *result) {
	left := append([]int(nil), c.demand...)
	free := append([]int(nil), c.limits...)
	var pats []pattern
	cost, first := 0.0, -1.0
	d := make([]float64, p.m)
	fix := func(col *column, n int) bool {
		if l := c.bars[col.pat.bar].limit; l >= 0 {
			n = min(n, free[l])
			free[l] -= n
		}
		some := false
		for ; n > 0; n-- {
			if !c.apply(col.pat, left) {
				break
			}
			pats = append(pats, *col.pat)
			cost += c.bars[col.pat.bar].cost
			some = true
		}
		return some
	}
	type cand struct {
		col *column
		x   float64
	}
	for ctx.Err() == nil {
		var cs []cand
		moved := false
		for i, b := range p.basis {
			if b.pat == nil {
				continue
			}
			x := p.x[i]
			if n := math.Floor(x + 1e-6); n >= 1 {
				moved = fix(b, int(n)) || moved
				x -= n
			}
			if x > 1e-6 {
				cs = append(cs, cand{b, x})
			}
		}
		if !covered(left) && len(cs) > 0 {
			// the fraction nearest to one that fits the demand left; trials
			// after the first choose among the best few at random
			for i := range cs {
				waste := 0.0
				for k, r := range cs[i].col.row {
					if r < len(left) {
						waste += float64(max(0, cs[i].col.val[k]-float64(left[r])) * c.lengths[r])
					}
				}
				cs[i].x -= waste / float64(c.bars[cs[i].col.pat.bar].segs[0]+1) * 2
				if trial > 0 {
					cs[i].x += float64(0.25 * rng.f())
				}
			}
			sort.SliceStable(cs, func(a, b int) bool { return cs[a].x > cs[b].x })
			for i := range cs {
				if i > 0 && cs[i].x < 0.9 {
					break
				}
				moved = fix(cs[i].col, 1) || moved
			}
		}
		if covered(left) {
			if cost < best.cost-1e-9 {
				best.pats, best.cost = pats, cost
			}
			return
		}
		best.done++
		if best.done >= share || !moved && len(cs) == 0 {
			return
		}
		if !moved {
			return
		}
		for i, v := range left {
			d[i] = float64(v)
		}
		for i, v := range free {
			d[len(left)+i] = float64(v)
		}
		if !p.setRight(d) {
			q := newProgram(d, len(left), artificial*c.dearest())
			for _, col := range p.pool {
				if col.pat != nil {
					q.pool = append(q.pool, col)
				}
			}
			p = q
		}
		v, _, ok := c.relax(ctx, p, math.Inf(1), 60+p.m, share, &best.done)
		if !ok || c.roundUp(cost+v-1e-7) >= best.cost-1e-9 {
			c.finish(ctx, left, free, pats, cost, best)
			return
		}
		if first < 0 {
			first = v + cost
		}
		if v <= float64(first/2) {
			// half is done: the rest is a smaller problem of the same kind
			c.finish(ctx, left, free, pats, cost, best)
			if best.cost > bound+1e-9 && v > 2*c.dearest() {
				c.halve(ctx, left, free, pats, cost, share/8, rng, best)
			}
			return
		}
	}
}

func (c *cutting) dearest() float64 {
	dear := 0.0
	for _, b := range c.bars {
		dear = max(dear, b.cost)
	}
	return dear
}

// finish covers the rest greedily and keeps the answer if it is better.
func (c *cutting) finish(ctx context.Context, left, free []int, pats []pattern, cost float64, best *result) {
	rest := append([]int(nil), left...)
	more, extra := c.greedy(ctx, rest, append([]int(nil), free...))
	best.done += c.work / stepsPattern
	c.work %= stepsPattern
	if covered(rest) && cost+extra < best.cost-1e-9 {
		best.pats = append(append([]pattern(nil), pats...), more...)
		best.cost = cost + extra
	}
}

// halve solves the rest by itself, without the rows that are covered, and
// keeps the answer if it is better.
func (c *cutting) halve(ctx context.Context, left, free []int, pats []pattern, cost float64, effort int, rng *source, best *result) {
	s := &cutting{bars: c.bars, limits: append([]int(nil), free...), unit: c.unit}
	to := make([]int, len(left))
	for r, n := range left {
		to[r] = -1
		if n > 0 {
			to[r] = len(s.demand)
			s.demand = append(s.demand, n)
		}
	}
	var from []int
next:
	for o := range c.opts {
		op := option{cnt: c.opts[o].cnt, lens: c.opts[o].lens}
		for _, r := range c.opts[o].row {
			if to[r] < 0 {
				continue next
			}
			op.row = append(op.row, to[r])
		}
		s.opts = append(s.opts, op)
		from = append(from, o)
	}
	q := s.solve(ctx, rng.next(), effort, 1)
	best.done += q.done
	if !q.whole || cost+q.cost >= best.cost-1e-9 {
		return
	}
	best.pats, best.cost = append([]pattern(nil), pats...), cost+q.cost
	for _, p := range q.pats {
		n := pattern{bar: p.bar, segs: make([][]use, len(p.segs))}
		for i := range p.segs {
			for _, u := range p.segs[i] {
				n.segs[i] = append(n.segs[i], use{from[u.opt], u.n})
			}
		}
		best.pats = append(best.pats, n)
	}
}
