package layout

import (
	"context"
	"math"
	"sort"
)

// fillItem is a blank of the exact program, in ticks with one kerf.
type fillItem struct {
	w, h  int64
	value float64
	piece int32
	side  bool
}

// filler is the exact program for one rectangle, any number of each blank:
// F(x, y) is the best of one blank and of every division into two rectangles,
// over the sums of widths and of heights (normal patterns; Herz 1972, Beasley
// 1985, from memory).
type filler struct {
	items  []fillItem
	xs, ys []int64 // the patterns, 0 first and the whole side last
	least  int64   // rips need this x
	f      []float64
	how    []int32 // 0 nothing; item+1; or a split: <0, see below
}

// patterns lists the sums of sizes up to side, and side itself.
func patterns(sizes []int64, side int64, most int) ([]int64, bool) {
	seen := map[int64]bool{0: true}
	list := []int64{0}
	sort.Slice(sizes, func(i, j int) bool { return sizes[i] < sizes[j] })
	for i, s := range sizes {
		if i > 0 && s == sizes[i-1] || s > side {
			continue
		}
		for k := 0; k < len(list); k++ { // grows as it runs: any number of s
			if v := list[k] + s; v <= side && !seen[v] {
				seen[v] = true
				list = append(list, v)
				if len(list) > most {
					return nil, false
				}
			}
		}
	}
	if !seen[side] {
		list = append(list, side)
	}
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	return list, true
}

// run fills the table and returns the best value; false if it was cancelled.
func (p *filler) run(ctx context.Context) (float64, bool) {
	nx, ny := len(p.xs), len(p.ys)
	p.f = make([]float64, nx*ny)
	p.how = make([]int32, nx*ny)
	down := func(list []int64) [][]int32 { // largest pattern within list[i]-list[k]
		out := make([][]int32, len(list))
		for i := range list {
			out[i] = make([]int32, 0, i+1)
			j := i
			for k := 0; k <= i; k++ {
				for list[j] > list[i]-list[k] {
					j--
				}
				out[i] = append(out[i], int32(j))
			}
		}
		return out
	}
	restX, restY := down(p.xs), down(p.ys)
	for i := 1; i < nx; i++ {
		if ctx.Err() != nil {
			return 0, false
		}
		x := p.xs[i]
		for j := 1; j < ny; j++ {
			y := p.ys[j]
			best, how := 0.0, int32(0)
			for k := range p.items {
				it := &p.items[k]
				if it.w > x || it.h > y || it.value <= best {
					continue
				}
				if it.h < y && max(x, it.w) < p.least {
					continue
				}
				best, how = it.value, int32(k+1)
			}
			for k := 1; 2*p.xs[k] <= x && k < i; k++ {
				if v := p.f[k*ny+j] + p.f[int(restX[i][k])*ny+j]; v > best+1e-9 {
					best, how = v, -int32(2*k)
				}
			}
			if x >= p.least {
				row := p.f[i*ny : i*ny+ny]
				for k := 1; 2*p.ys[k] <= y && k < j; k++ {
					if v := row[k] + row[restY[j][k]]; v > best+1e-9 {
						best, how = v, -int32(2*k+1)
					}
				}
			}
			p.f[i*ny+j], p.how[i*ny+j] = best, how
		}
	}
	return p.f[nx*ny-1], true
}

// build puts the best layout of the table into node n of a slicing tree, whose
// size is at least xs[i] x ys[j].
func (p *filler) build(s *slicing, n int32, i, j int) {
	ny := len(p.ys)
	how := p.how[i*ny+j]
	switch {
	case how > 0:
		it := &p.items[how-1]
		across := it.w >= p.least // a rip after the crosscut, else before it
		s.insert(n, it.piece, it.w, it.h, it.side, across)
	case how < 0:
		k := int(-how / 2)
		kind, size := nodeAcross, p.xs[k]
		if -how&1 == 1 {
			kind, size = nodeAlong, p.ys[k]
		}
		first := s.cut(n, kind, size)
		// cut leaves the rest either in n or, if n was divided, beside first
		rest := n
		if s.nodes[n].kind == kind {
			rest = s.nodes[first].next
		}
		if kind == nodeAcross {
			r := sort.Search(len(p.xs), func(q int) bool { return p.xs[q] > p.xs[i]-size }) - 1
			p.build(s, first, k, j)
			p.build(s, rest, r, j)
		} else {
			r := sort.Search(len(p.ys), func(q int) bool { return p.ys[q] > p.ys[j]-size }) - 1
			p.build(s, first, i, k)
			p.build(s, rest, i, r)
		}
	}
}

func fill(ctx context.Context, job Job, rules SawRules) (Layout, error) {
	c, ok := check(&job)
	var l Layout
	if ok = c.sawRules(&rules) && ok; ok {
		y := &sawyer{checked: c, rules: rules}
		y.lies()
		y.fillOne(ctx, &l)
	} else {
		c.account(&l, squareMetres)
	}
	l.Report.Cancelled = ctx.Err() != nil
	l.Problems = c.problems
	return l, c.problems.err()
}

// fillOne fills one piece of the first stock that is good for anything.
func (y *sawyer) fillOne(ctx context.Context, l *Layout) {
	y.set()
	if len(y.kinds) == 0 {
		y.account(l, squareMetres)
		return
	}
	stock := y.kinds[0]
	for s := range y.stock {
		y.stock[s] = s == stock
	}
	// any number of a part: as many as the area holds
	room := 0.0
	for _, b := range clears(&y.frames[stock], nil) {
		room += float64(b.Width() * b.Height())
	}
	free := true
	parts := append(y.job.Parts[:0:0], y.job.Parts...)
	total := 0
	for i := range parts {
		if !y.part[i] || y.poseUp[i][stock] == nil && y.poseOn[i][stock] == nil {
			y.part[i] = false
			continue
		}
		if parts[i].Worth == 0 {
			parts[i].Worth = parts[i].Outline.Area()
		}
		if parts[i].Quantity == 0 {
			w, h := y.size(i, pose{})
			parts[i].Quantity = int(math.Min(room/float64(w*h)+1e-9, 2000))
			total += parts[i].Quantity
		} else {
			free = false
		}
	}
	job := *y.job
	job.Parts = parts
	y.job = &job
	y.set()
	y.saw.kinds[0].count, y.saw.kinds[0].first = 1, true
	y.saw.prepare()
	best, bound, exact := y.exact(ctx)
	if !exact || !free {
		effort := job.Effort
		if effort == 0 {
			effort = defaultSaw
		}
		first := y.saw.construct(ctx)
		got, done := y.saw.improve(ctx, first, 0, 0, max(effort, 0), stream(job.Seed, 0))
		l.Report.Done = done
		if got.better(first) {
			first = got
		}
		if best == nil || y.worthOf(first) > y.worthOf(best) {
			best = first
		}
	}
	said := len(y.problems)
	y.write(l, best)
	y.problems = y.problems[:said] // what is left out of a filling is no problem
	y.account(l, squareMetres)
	l.Report.Wanted = l.Report.Placed
	for i := range l.Pieces {
		for _, q := range l.Pieces[i].Placements {
			l.Report.Worth += parts[q.Part].Worth
		}
	}
	l.Report.WorthBound = math.Max(bound, l.Report.Worth)
	l.Report.Optimal = l.Report.WorthBound <= l.Report.Worth*(1+1e-12)
	l.Report.Bound, l.Report.LeastBound = 0, 0
}

func (y *sawyer) worthOf(b *sawBest) float64 {
	v := 0.0
	for i := range b.bins {
		for _, p := range b.bins[i].pieces(nil) {
			v += y.saw.pieces[p].worth
		}
	}
	return v
}

// exact solves the filling without regard to quantities. The layout is nil if
// it takes more than is wanted; the value is a bound all the same. It reports
// false if there are too many patterns or a rule that the program cannot keep.
func (y *sawyer) exact(ctx context.Context) (best *sawBest, bound float64, ok bool) {
	total := 0.0
	perArea := 0.0
	p := &filler{least: y.saw.least}
	var ws, hs []int64
	first := map[int]int32{}
	for i := range y.saw.pieces {
		q := &y.saw.pieces[i]
		total += q.worth
		perArea = math.Max(perArea, q.worth/float64(float64(q.w)*float64(q.h)))
		part := y.copies[i].part
		if _, seen := first[part]; seen {
			continue
		}
		first[part] = int32(i)
		if q.ways[0]&wayUp != 0 {
			p.items = append(p.items, fillItem{q.w, q.h, q.worth, int32(i), false})
			ws, hs = append(ws, q.w), append(hs, q.h)
		}
		if q.ways[0]&waySide != 0 {
			p.items = append(p.items, fillItem{q.h, q.w, q.worth, int32(i), true})
			ws, hs = append(ws, q.h), append(hs, q.w)
		}
	}
	kd := &y.saw.kinds[0]
	bound = math.Min(total, perArea*kd.area)
	if y.saw.stages > 0 || len(kd.roots) == 0 {
		return nil, bound, false
	}
	const most = 20000
	ok = true
	sum := 0.0
	out := &sawBest{}
	var tree slicing
	tree.reset(0, kd.roots)
	for r, size := range kd.roots {
		var okX, okY bool
		p.xs, okX = patterns(ws, size[0], most)
		p.ys, okY = patterns(hs, size[1], most)
		if !okX || !okY || float64(len(p.xs))*float64(len(p.ys))*float64(max(len(p.xs), len(p.ys))) > MostPatterns || len(p.xs)*len(p.ys) > 50_000_000 {
			return nil, bound, false
		}
		v, fine := p.run(ctx)
		if !fine {
			return nil, bound, false
		}
		sum += v
		p.build(&tree, int32(r), len(p.xs)-1, len(p.ys)-1)
	}
	bound = math.Min(bound, sum)
	// give each blank a copy of its own, if there are enough
	used := map[int]int{}
	for i := range tree.nodes {
		n := &tree.nodes[i]
		if n.kind == nodePiece {
			part := y.copies[n.piece].part
			n.piece = first[part] + int32(used[part])
			used[part]++
			if used[part] > y.job.Parts[part].quantity() {
				return nil, bound, true
			}
		}
	}
	out.bins = []slicing{tree}
	if tree.used == 0 {
		out.bins = nil
	}
	return out, bound, true
}
