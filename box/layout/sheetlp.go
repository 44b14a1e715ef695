package layout

import (
	"context"
	"fmt"
	"math"
	"sort"
)

// planner fills sheets with repeated patterns: the linear program over
// patterns of [raster] says which, and how often; it is rounded down, solved
// again for the rest, and the last pieces go where there is room.
type planner struct {
	*sawing
	types   []blankKind
	rasters []*raster
	limit   []int // row of each kind of sheet, -1 if there is no limit
	rows    int
	work    int // steps not yet counted as iterations
}

// stepsIteration is how many steps of a table count as one iteration of the
// search: about as many as take the time of one.
const stepsIteration = 10_000

// newPlanner is nil if patterns are no help: few pieces of each kind, sheets
// in several clear parts, a short limit of stages, or sizes too many.
func newPlanner(p *sawing) *planner {
	if p.stages > 0 && p.stages < 4 {
		return nil
	}
	for k := range p.kinds {
		if len(p.kinds[k].roots) != 1 {
			return nil
		}
	}
	y := &planner{sawing: p}
	known := map[string]int{}
	for i := range p.pieces {
		q := &p.pieces[i]
		key := fmt.Sprint(q.w, " ", q.h, " ", q.ways)
		k, ok := known[key]
		if !ok {
			k = len(y.types)
			known[key] = k
			y.types = append(y.types, blankKind{size: *q})
		}
		y.types[k].pieces = append(y.types[k].pieces, int32(i))
	}
	if len(p.pieces) < 3*len(y.types) || len(y.types) > 200 {
		return nil
	}
	y.rows = len(y.types)
	for k := range p.kinds {
		y.limit = append(y.limit, -1)
		if p.kinds[k].count > 0 {
			y.limit[k] = y.rows
			y.rows++
		}
		for _, along := range []bool{true, false} {
			if r := newRaster(k, &p.kinds[k], y.types, along, p.least); r != nil {
				y.rasters = append(y.rasters, r)
			}
		}
	}
	if len(y.rasters) == 0 {
		return nil
	}
	return y
}

func (y *planner) column(s *sheetPattern) *column {
	c := &column{cost: y.kinds[s.sheet].cost, sheet: s}
	sum := make([]int, len(y.types))
	s.count(sum)
	for t, n := range sum {
		if n > 0 {
			c.row = append(c.row, t)
			c.val = append(c.val, float64(n))
		}
	}
	if l := y.limit[s.sheet]; l >= 0 {
		c.row = append(c.row, l)
		c.val = append(c.val, 1)
	}
	return c
}

// price adds the best pattern of each raster that helps, and reports whether
// there was one.
func (y *planner) price(p *program, left []int, done *int) bool {
	vals := make([]float64, len(y.types))
	for t := range vals {
		if left[t] > 0 {
			vals[t] = max(p.y[t], 0)
		}
	}
	some := false
	for _, r := range y.rasters {
		s, v := r.best(vals)
		y.work += r.work
		red := y.kinds[s.sheet].cost - v
		if l := y.limit[s.sheet]; l >= 0 {
			red -= p.y[l]
		}
		if red < -1e-7 {
			p.pool = append(p.pool, y.column(s))
			some = true
		}
	}
	*done += 1 + y.work/stepsIteration
	y.work %= stepsIteration
	return some
}

// relax solves the linear program, in at most the given iterations.
func (y *planner) relax(ctx context.Context, p *program, left []int, effort int, done *int) (value float64, ok bool) {
	p.duals()
	most := p.moves + 20*p.m + 200 // against circles on degenerate bases
	for ctx.Err() == nil && p.moves < most {
		c := p.fromPool()
		if c == nil {
			if *done >= effort || !y.price(p, left, done) {
				break
			}
			continue
		}
		if !p.enter(c) {
			break
		}
		p.duals()
		y.work += p.m*p.m + 8*len(p.pool)
	}
	ok = true
	for i, b := range p.basis {
		value += float64(b.cost * max(p.x[i], 0))
		if b.sheet == nil && b.cost > 0 && p.x[i] > 1e-4 {
			ok = false
		}
	}
	return value, ok
}

// plan looks for a layout of repeated patterns that is better than best.
func (y *planner) plan(ctx context.Context, best *sawBest, bound float64, effort int, rng source) (*sawBest, int) {
	d := make([]float64, y.rows)
	left := make([]int, len(y.types))
	dear := 0.0
	for k := range y.kinds {
		dear = max(dear, y.kinds[k].cost)
		if l := y.limit[k]; l >= 0 {
			d[l] = float64(y.kinds[k].count)
		}
	}
	for t := range y.types {
		left[t] = len(y.types[t].pieces)
		d[t] = float64(left[t]) + y.nudge(t)
	}
	p := newProgram(d, len(y.types), artificial*dear)
	done := 0
	_, ok := y.relax(ctx, p, left, effort/2, &done)
	for trial := 0; ok && ctx.Err() == nil; trial++ {
		got := y.round(ctx, p.clone(), effort, trial, &rng, &done)
		if got != nil && got.better(best) {
			best = got
		}
		if done >= effort || best.cost <= bound+1e-9 {
			break
		}
	}
	return best, done
}

// nudge moves the right sides off each other, so that bases are not degenerate.
func (y *planner) nudge(t int) float64 { return 1e-6 * float64(t+1) / float64(len(y.types)) }

// round takes the patterns of the program as often as whole numbers allow,
// one more of the largest fraction, and so on with the rest.
func (y *planner) round(ctx context.Context, p *program, effort, trial int, rng *source, done *int) *sawBest {
	s := y.state(*rng)
	left := make([]int, len(y.types))
	for t := range left {
		left[t] = len(y.types[t].pieces)
	}
	take := func(t int) int32 {
		if left[t] == 0 {
			return -1
		}
		left[t]--
		return y.types[t].pieces[left[t]]
	}
	fix := func(c *column, n int) bool {
		k := c.sheet.sheet
		some := false
		for ; n > 0 && s.left[k] != 0; n-- {
			any := false
			for i, t := range c.row {
				any = any || t < len(left) && c.val[i] > 0 && left[t] > 0
			}
			if !any {
				break
			}
			some = true
			s.bins = append(s.bins, slicing{})
			s.touched = append(s.touched, false)
			b := &s.bins[len(s.bins)-1]
			b.reset(int32(k), y.kinds[k].roots)
			c.sheet.deal(take).sawn(b)
			if s.left[k] > 0 {
				s.left[k]--
			}
			s.cost += y.kinds[k].cost
		}
		return some
	}
	type cand struct {
		col *column
		x   float64
	}
	d := make([]float64, y.rows)
	for ctx.Err() == nil && !covered(left) {
		var cs []cand
		moved := false
		for i, b := range p.basis {
			if b.sheet == nil {
				continue
			}
			// as often as every piece of it is wanted
			n := int(math.Floor(p.x[i] + 1e-5))
			for k, t := range b.row {
				if t < len(left) {
					n = min(n, left[t]/int(b.val[k]))
				}
			}
			moved = fix(b, n) || moved
			if x := p.x[i] - float64(n); x > 1e-5 {
				cs = append(cs, cand{b, x})
			}
		}
		if !moved {
			for i := range cs {
				c := cs[i].col
				waste, full := 0.0, 0.0
				for k, t := range c.row {
					if t < len(left) {
						a := float64(y.types[t].size.w) * float64(y.types[t].size.h)
						waste += float64(max(0, c.val[k]-float64(left[t])) * a)
						full += float64(c.val[k] * a)
					}
				}
				cs[i].x -= 2 * waste / full
				if trial > 0 {
					cs[i].x += float64(0.3 * rng.f())
				}
			}
			sort.SliceStable(cs, func(a, b int) bool { return cs[a].x > cs[b].x })
			if len(cs) == 0 || cs[0].x < 0.2 {
				break // the search does better with what is left
			}
			moved = fix(cs[0].col, 1)
		}
		if !moved || covered(left) {
			break
		}
		for t, n := range left {
			d[t] = float64(n) + y.nudge(t)
		}
		for k, l := range y.limit {
			if l >= 0 {
				d[l] = float64(s.left[k])
			}
		}
		if !p.setRight(d) {
			break
		}
		if _, ok := y.relax(ctx, p, left, effort, done); !ok {
			break
		}
	}
	for t, n := range left {
		s.out = append(s.out, y.types[t].pieces[:n]...)
	}
	*done += 1 + len(s.out)/4 // the search puts back about four pieces at a time
	s.order(0)
	s.openFirst()
	s.recreate(0, inf)
	return s.snapshot()
}
