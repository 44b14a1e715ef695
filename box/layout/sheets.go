package layout

import (
	"context"
	"fmt"
	"math"
)

const defaultSaw = 20000 // iterations

func squareMetres(s *Stock) float64 { return float64(s.Length*s.Width) / 1e6 }

// sawyer turns a job into a sawing problem and back.
type sawyer struct {
	*checked
	rules  SawRules
	kinds  []int // stock of each kind
	kindOf []int // kind of each stock, -1 if it is not used
	frames []Cut // per kind: trims and defects, the clear rectangles marked
	copies []copyOf
	poseUp [][]*pose // per part and stock: how it lies w x h of its first pose
	poseOn [][]*pose // and turned by a quarter
	saw    sawing
}

func (c *checked) sawRules(r *SawRules) bool {
	n := len(c.problems)
	c.within("Kerf", r.Kerf, 0, 100, "kerf out of range")
	c.within("Keep", r.Keep, 0, mostSize, "least offcut out of range")
	if !(r.LeastRip <= mostSize) {
		c.add("LeastRip", CodeRange, num(r.LeastRip), -inf, mostSize, "least rip out of range", "")
	}
	if !(r.Stages >= 0 && r.Stages <= 1000) {
		c.add("Stages", CodeRange, fmt.Sprint(r.Stages), -inf, inf, "stages out of range", "")
	}
	if r.Keep == 0 {
		r.Keep = defaultKeep
	}
	if r.LeastRip == 0 {
		r.LeastRip = defaultLeast
	}
	return len(c.problems) == n
}

func saw(ctx context.Context, job Job, rules SawRules) (Layout, error) {
	return lay(ctx, &job, mostSheds, squareMetres, func(c *checked) func(*Layout) {
		y := &sawyer{checked: c, rules: rules}
		if !c.sawRules(&y.rules) {
			return nil
		}
		return func(l *Layout) {
			y.lies()
			y.layOut(ctx, l)
		}
	})
}

// layOut solves the job.
func (y *sawyer) layOut(ctx context.Context, l *Layout) {
	effort := y.job.Effort
	if effort == 0 {
		effort = defaultSaw
	}
	y.set()
	best, done, bound := y.solve(ctx, effort)
	y.write(l, best)
	dear := 0.0
	for k := range y.saw.kinds {
		dear = math.Max(dear, y.saw.kinds[k].cost)
	}
	y.account(l, squareMetres)
	l.Report.Done = done
	if best != nil && len(best.out) > 0 {
		bound = 0
	}
	l.Report.settle(bound, dear)
}

// solve searches in as many streams as the job asks for.
func (y *sawyer) solve(ctx context.Context, effort int) (best *sawBest, done int, bound float64) {
	p := &y.saw
	p.prepare()
	if len(p.pieces) == 0 || len(p.kinds) == 0 {
		return nil, 0, 0
	}
	return p.search(ctx, y.job.Seed, effort, max(1, y.job.Streams))
}

// search constructs a layout, looks for repeated patterns with up to half of
// the effort, and improves the best with the rest.
func (p *sawing) search(ctx context.Context, seed uint64, effort, streams int) (best *sawBest, done int, bound float64) {
	best = p.construct(ctx)
	bound = p.bound()
	reached := func() bool { return best.lost == 0 && best.cost <= bound+1e-9 }
	if effort <= 0 || reached() {
		return best, 0, bound
	}
	if best.lost == 0 {
		if y := newPlanner(p); y != nil {
			best, done = y.plan(ctx, best, bound, effort/2, stream(seed, streams))
			if reached() {
				return best, done, bound
			}
		}
	}
	var prices []float64
	for k := range p.kinds {
		prices = append(prices, p.kinds[k].cost)
	}
	unit := costUnit(prices)
	got := make([]*sawBest, streams)
	n := make([]int, streams)
	share := max(0, effort-done) / streams
	together(streams, func(i int) {
		got[i], n[i] = p.improve(ctx, best, bound, unit, share, stream(seed, i))
	})
	for i := range got {
		done += n[i]
		if got[i].better(best) {
			best = got[i]
		}
	}
	return best, done, bound
}

// lies finds how each part may lie on each stock, and refuses what lies on
// none.
func (y *sawyer) lies() {
	y.kindOf = make([]int, len(y.job.Stock))
	y.frames = make([]Cut, len(y.job.Stock))
	for s := range y.job.Stock {
		if y.stock[s] {
			y.frames[s] = y.frame(s)
		}
	}
	y.poseUp = make([][]*pose, len(y.job.Parts))
	y.poseOn = make([][]*pose, len(y.job.Parts))
	for i := range y.job.Parts {
		y.poseUp[i] = make([]*pose, len(y.job.Stock))
		y.poseOn[i] = make([]*pose, len(y.job.Stock))
		if !y.part[i] {
			continue
		}
		p := &y.job.Parts[i]
		if e := y.ext[i]; y.rules.Kerf > math.Min(e.Width(), e.Height()) {
			y.add(fmt.Sprintf("Parts[%d]", i), CodeRange, p.name(), -inf, inf, "the kerf is wider than the part", "")
			y.part[i] = false
			continue
		}
		any, rule := false, ""
		for s := range y.job.Stock {
			if _, ok := suits(p, &y.job.Stock[s]); !ok || !y.stock[s] {
				continue
			}
			ps := poses(p, &y.job.Stock[s])
			for j := range ps {
				ok, upright := quarter(ps[j].turn)
				if !ok {
					continue
				}
				fits, r := y.fits(i, s, ps[j])
				if r != "" {
					rule = r
				}
				if !fits || r != "" {
					continue
				}
				any = true
				if upright && y.poseOn[i][s] == nil {
					y.poseOn[i][s] = &ps[j]
				}
				if !upright && y.poseUp[i][s] == nil {
					y.poseUp[i][s] = &ps[j]
				}
			}
		}
		if any {
			continue
		}
		y.part[i] = false
		code := rule
		if code == "" {
			code = y.why(i, func(s int, ps []pose) bool {
				for _, t := range ps {
					if ok, _ := quarter(t.turn); ok {
						if fits, _ := y.fits(i, s, t); fits {
							return true
						}
					}
				}
				return false
			})
			if code == CodeTooLarge && y.fitsBare(i) {
				code = CodeDefect
			}
		}
		y.refuse(i, p.quantity(), code)
	}
}

// fits says whether a part fits a clear rectangle of the stock, and which rule
// forbids to cut it from every one that it fits.
func (y *sawyer) fits(part, stock int, t pose) (ok bool, rule string) {
	w, h := y.size(part, t)
	k := y.rules.Kerf
	tw, th := ticksUp(w+k), ticksUp(h+k)
	one := sawing{least: y.leastTicks(), stages: int16(y.rules.Stages)}
	var st sawState
	st.sawing = &one
	for _, b := range clears(&y.frames[stock], nil) {
		rw, rh := ticksDown(b.Width()+k), ticksDown(b.Height()+k)
		if tw > rw || th > rh {
			continue
		}
		ok = true
		st.bins = []slicing{{}}
		st.bins[0].reset(0, [][2]int64{{rw, rh}})
		rm := &st.bins[0].rooms[0]
		if st.allowed(0, rm, tw, th, true) || st.allowed(0, rm, tw, th, false) {
			return true, ""
		}
		rule = CodeStages
		if one.stages = 0; !st.allowed(0, rm, tw, th, true) && !st.allowed(0, rm, tw, th, false) {
			rule = CodeLeast
		}
		one.stages = int16(y.rules.Stages)
	}
	return ok, rule
}

// fitsBare says whether a part would fit some stock without its defects.
func (y *sawyer) fitsBare(part int) bool {
	p := &y.job.Parts[part]
	for s := range y.job.Stock {
		st := &y.job.Stock[s]
		if _, ok := suits(p, st); !ok || !y.stock[s] {
			continue
		}
		for _, t := range poses(p, st) {
			if ok, _ := quarter(t.turn); !ok {
				continue
			}
			if w, h := y.size(part, t); w <= st.Length-2*st.End+sameWidth && h <= st.Width-2*st.Edge+sameWidth {
				return true
			}
		}
	}
	return false
}

func (y *sawyer) leastTicks() int64 {
	if y.rules.LeastRip <= 0 {
		return 0
	}
	return ticksUp(y.rules.LeastRip + y.rules.Kerf)
}

// set builds the sawing problem.
func (y *sawyer) set() {
	y.saw = sawing{least: y.leastTicks(), stages: int16(y.rules.Stages)}
	y.kinds, y.copies = nil, nil
	k := y.rules.Kerf
	y.kindOf = make([]int, len(y.job.Stock))
	for s := range y.job.Stock {
		y.kindOf[s] = -1
		st := &y.job.Stock[s]
		if !y.stock[s] {
			continue
		}
		some := false
		for i := range y.job.Parts {
			some = some || y.part[i] && (y.poseUp[i][s] != nil || y.poseOn[i][s] != nil)
		}
		if !some {
			continue
		}
		kd := sheetKind{cost: st.price(y.priced, squareMetres), count: st.count(), first: st.Offcut}
		for _, b := range clears(&y.frames[s], nil) {
			kd.roots = append(kd.roots, [2]int64{ticksDown(b.Width() + k), ticksDown(b.Height() + k)})
		}
		if kd.first && kd.count > 1000 {
			kd.count = 1000
		}
		y.kindOf[s] = len(y.kinds)
		y.kinds = append(y.kinds, s)
		y.saw.kinds = append(y.saw.kinds, kd)
	}
	for i := range y.job.Parts {
		if !y.part[i] {
			continue
		}
		p := &y.job.Parts[i]
		w, h := y.size(i, pose{})
		q := blankSize{w: ticksUp(w + k), h: ticksUp(h + k), prio: p.Priority, ways: make([]uint8, len(y.kinds)), worth: p.Worth}
		for j, s := range y.kinds {
			if y.poseUp[i][s] != nil {
				q.ways[j] |= wayUp
			}
			if y.poseOn[i][s] != nil {
				q.ways[j] |= waySide
			}
		}
		for n := 0; n < p.quantity(); n++ {
			y.copies = append(y.copies, copyOf{i, n})
			y.saw.pieces = append(y.saw.pieces, q)
		}
	}
}
