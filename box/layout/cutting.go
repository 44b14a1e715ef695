package layout

import (
	"context"
	"math"
	"sort"
)

// option is a way to use a stretch of a board: one piece, equal pieces side by
// side, or a pair head to tail.
type option struct {
	row  []int   // the kinds of pieces it yields
	cnt  []int   // and how many of each
	lens []int64 // its length with kerf, per bar; 0 where it does not fit
}

// bar is a kind of board to cut: its clear stretches, with kerf.
type bar struct {
	cost  float64
	segs  []int64
	limit int // index of its limit, -1 if there are as many as wanted
}

// use is an option taken n times in one stretch.
type use struct{ opt, n int }

// pattern is what is cut from one bar.
type pattern struct {
	bar  int
	segs [][]use
}

// cutting is the problem of covering the demand with patterns at least cost.
type cutting struct {
	demand []int
	opts   []option
	bars   []bar
	limits []int
	unit   float64 // every cost is a multiple of this; 0 if there is none

	knaps   [][]*knapsack // per bar and stretch; bounds as of the demand
	kopts   [][]int       // per bar: the options that fit it
	scaled  [][]int64     // per bar: stretches divided by the common divisor
	lengths []float64     // per row: its least length, the worth of a piece when filling
	work    int           // steps of pricing not yet counted as iterations
}

// result is what solve finds.
type result struct {
	pats  []pattern
	cost  float64
	bound float64
	done  int
	whole bool // the demand is covered
	left  []int
}

func (c *cutting) prepare() {
	c.knaps = make([][]*knapsack, len(c.bars))
	c.kopts = make([][]int, len(c.bars))
	c.scaled = make([][]int64, len(c.bars))
	c.lengths = make([]float64, len(c.demand))
	for b := range c.bars {
		g := int64(0)
		for o := range c.opts {
			if l := c.opts[o].lens[b]; l > 0 {
				g = gcd(g, l)
				c.kopts[b] = append(c.kopts[b], o)
			}
		}
		if g == 0 {
			g = 1
		}
		for _, s := range c.bars[b].segs {
			k := &knapsack{}
			for _, o := range c.kopts[b] {
				k.lens = append(k.lens, c.opts[o].lens[b]/g)
				k.bound = append(k.bound, c.most(o, c.demand))
			}
			c.knaps[b] = append(c.knaps[b], k)
			c.scaled[b] = append(c.scaled[b], s/g)
		}
		for _, o := range c.kopts[b] {
			op := &c.opts[o]
			for i, r := range op.row {
				if l := float64(op.lens[b]) / float64(op.cnt[i]*len(op.row)); c.lengths[r] == 0 || l < c.lengths[r] {
					c.lengths[r] = l
				}
			}
		}
	}
}

// most is how often an option helps with the demand left.
func (c *cutting) most(o int, left []int) int {
	n := 0
	for i, r := range c.opts[o].row {
		n = max(n, (left[r]+c.opts[o].cnt[i]-1)/c.opts[o].cnt[i])
	}
	return n
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// roundUp raises a bound to the next cost there can be.
func (c *cutting) roundUp(b float64) float64 {
	if c.unit <= 0 {
		return b
	}
	return max(float64(math.Ceil(b/c.unit-1e-6)*c.unit), 0)
}

// apply takes a pattern once from the demand left and reports whether any
// piece of it was needed.
func (c *cutting) apply(p *pattern, left []int) bool {
	any := false
	for _, s := range p.segs {
		for _, u := range s {
			op := &c.opts[u.opt]
			for i, r := range op.row {
				if left[r] > 0 {
					any = true
				}
				left[r] = max(0, left[r]-u.n*op.cnt[i])
			}
		}
	}
	return any
}

func covered(left []int) bool {
	for _, v := range left {
		if v > 0 {
			return false
		}
	}
	return true
}

// fill is the fullest pattern for a bar: with the given piece in it (row, -1
// for none), then as full as the demand left allows.
func (c *cutting) fill(b, row int, left []int) (pattern, float64) {
	p := pattern{bar: b, segs: make([][]use, len(c.bars[b].segs))}
	rest := append([]int(nil), left...)
	total := 0.0
	take := func(seg, o, n int) {
		op := &c.opts[o]
		p.segs[seg] = append(p.segs[seg], use{o, n})
		for i, r := range op.row {
			got := min(rest[r], n*op.cnt[i])
			total += float64(float64(got) * c.lengths[r])
			rest[r] -= got
		}
	}
	done := row < 0
	for s := range c.bars[b].segs {
		k := c.knaps[b][s]
		room := c.scaled[b][s]
		if !done {
			best, gain := -1, -1.0
			for i, o := range c.kopts[b] {
				if k.lens[i] > room || k.lens[i] == 0 {
					continue
				}
				v, has := 0.0, false
				for j, r := range c.opts[o].row {
					has = has || r == row
					v += float64(float64(min(rest[r], c.opts[o].cnt[j])) * c.lengths[r])
				}
				if has && v > gain {
					best, gain = i, v
				}
			}
			if best >= 0 {
				done = true
				room -= k.lens[best]
				take(s, c.kopts[b][best], 1)
			}
		}
		saved := k.bound
		k.bound = make([]int, len(saved))
		vals := make([]float64, len(saved))
		for i, o := range c.kopts[b] {
			k.bound[i] = c.most(o, rest)
			for j, r := range c.opts[o].row {
				vals[i] += float64(float64(min(rest[r], c.opts[o].cnt[j])) * c.lengths[r])
			}
		}
		before := k.work
		counts, _, _ := k.solve(vals, room)
		c.work += k.work - before
		k.bound = saved
		for i, n := range counts {
			if n > 0 {
				take(s, c.kopts[b][i], n)
			}
		}
	}
	if !done {
		return p, -1
	}
	return p, total
}

// greedy covers the demand bar by bar, the longest piece first and the rest of
// the bar as full as possible. free counts what is left of each limit.
func (c *cutting) greedy(ctx context.Context, left, free []int) (pats []pattern, cost float64) {
	order := make([]int, len(left))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return c.lengths[order[a]] > c.lengths[order[b]] })
	dead := make([]bool, len(left))
	for ctx.Err() == nil {
		row := -1
		for _, r := range order {
			if left[r] > 0 && !dead[r] {
				row = r
				break
			}
		}
		if row < 0 {
			break
		}
		var best pattern
		rate := math.Inf(1)
		for b := range c.bars {
			if l := c.bars[b].limit; l >= 0 && free[l] == 0 {
				continue
			}
			p, got := c.fill(b, row, left)
			if got <= 0 {
				continue
			}
			if v := c.bars[b].cost / got; v < rate {
				rate, best = v, p
			}
		}
		if math.IsInf(rate, 1) {
			dead[row] = true
			continue
		}
		// the same bar again as long as all of it is wanted
		n := math.MaxInt
		need := map[int]int{}
		for _, s := range best.segs {
			for _, u := range s {
				for i, r := range c.opts[u.opt].row {
					need[r] += u.n * c.opts[u.opt].cnt[i]
				}
			}
		}
		for r, k := range need {
			n = min(n, left[r]/k)
		}
		n = max(n, 1)
		if l := c.bars[best.bar].limit; l >= 0 {
			n = min(n, free[l])
			free[l] -= n
		}
		for ; n > 0; n-- {
			pats = append(pats, best)
			cost += c.bars[best.bar].cost
			c.apply(&best, left)
		}
	}
	return pats, cost
}

func (c *cutting) columnOf(p *pattern) *column {
	need := make([]int, len(c.demand))
	for _, s := range p.segs {
		for _, u := range s {
			for i, r := range c.opts[u.opt].row {
				need[r] += u.n * c.opts[u.opt].cnt[i]
			}
		}
	}
	col := &column{cost: c.bars[p.bar].cost, pat: p}
	for r, n := range need {
		if n > 0 {
			col.row = append(col.row, r)
			col.val = append(col.val, float64(n))
		}
	}
	if l := c.bars[p.bar].limit; l >= 0 {
		col.row = append(col.row, len(c.demand)+l)
		col.val = append(col.val, 1)
	}
	return col
}

// price finds the pattern that helps most, or nil, and the bound that the dual
// prices prove (Farley's: prices scaled until no pattern is worth more than it
// costs).
func (c *cutting) price(p *program) (*column, float64) {
	var best *pattern
	least := -1e-7
	worth := make([]float64, len(c.bars))
	for b := range c.bars {
		kopts := c.kopts[b]
		vals := make([]float64, len(kopts))
		for i, o := range kopts {
			for j, r := range c.opts[o].row {
				vals[i] += float64(max(p.y[r], 0) * float64(c.opts[o].cnt[j]))
			}
		}
		pat := &pattern{bar: b, segs: make([][]use, len(c.bars[b].segs))}
		z := 0.0
		for s, k := range c.knaps[b] {
			before := k.work
			counts, v, up := k.solve(vals, c.scaled[b][s])
			c.work += k.work - before
			z += v
			worth[b] += up
			for i, n := range counts {
				if n > 0 {
					pat.segs[s] = append(pat.segs[s], use{kopts[i], n})
				}
			}
		}
		r := c.bars[b].cost - z
		if l := c.bars[b].limit; l >= 0 {
			r -= p.y[len(c.demand)+l]
		}
		if r < least {
			least, best = r, pat
		}
	}
	// the bound
	theta := 1.0
	sigma := make([]float64, len(c.limits))
	for l := range sigma {
		sigma[l] = max(0, -p.y[len(c.demand)+l])
	}
	for b := range c.bars {
		if l := c.bars[b].limit; l >= 0 && c.bars[b].cost == 0 {
			sigma[l] = max(sigma[l], worth[b])
		}
	}
	for b := range c.bars {
		w := worth[b]
		if l := c.bars[b].limit; l >= 0 {
			w -= sigma[l]
		}
		if w > c.bars[b].cost && w > 0 {
			theta = min(theta, c.bars[b].cost/w)
		}
	}
	bound := 0.0
	for r := range c.demand {
		bound += float64(max(p.y[r], 0) * p.d[r])
	}
	for l := range sigma {
		bound -= float64(sigma[l] * p.d[len(c.demand)+l])
	}
	bound = float64(bound * theta)
	if best == nil {
		return nil, bound
	}
	return c.columnOf(best), bound
}
