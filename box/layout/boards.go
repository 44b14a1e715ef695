package layout

import (
	"context"
	"fmt"
	"math"
	"sort"
)

const defaultLengths = 20000 // patterns priced

// board is a kind of stock as one group of parts may use it.
type board struct {
	stock  int
	runs   []stretch
	width  float64
	tastes string // what the parts tolerate
}

// how is an option in the words of the job.
type how struct {
	row   int     // the kind of blank, for single ones and equal ones side by side
	side  int     // how many side by side
	long  int     // and how many in a row
	pair  pairing // if paired
	pairs bool
}

// cutter turns a job into a cutting problem and back.
type cutter struct {
	*checked
	rules  LengthRules
	boards []board
	rows   [][]int   // parts of each row, in order
	rowOf  []int     // row of each part, -1 if it cannot be placed
	lie    [][]*pose // per part and stock: how it lies, nil if it does not
	hows   []how
	cut    cutting
}

func metres(s *Stock) float64 { return s.Length / 1000 }

func lengths(ctx context.Context, job Job, rules LengthRules) (Layout, error) {
	return lay(ctx, &job, mostSheds, metres, func(c *checked) func(*Layout) {
		k := &cutter{checked: c, rules: rules}
		if !c.lengthRules(&k.rules) {
			return nil
		}
		return func(l *Layout) {
			k.lies()
			k.layOut(ctx, l)
		}
	})
}

func (c *checked) lengthRules(r *LengthRules) bool {
	n := len(c.problems)
	c.within("Kerf", r.Kerf, 0, 100, "kerf out of range")
	c.within("Keep", r.Keep, 0, mostSize, "least offcut out of range")
	if !(r.LeastRip <= mostSize) {
		c.add("LeastRip", CodeRange, num(r.LeastRip), -inf, mostSize, "least rip out of range", "")
	}
	if r.Keep == 0 {
		r.Keep = defaultKeep
	}
	if r.LeastRip == 0 {
		r.LeastRip = defaultLeast
	}
	return len(c.problems) == n
}

// layOut solves the job.
func (k *cutter) layOut(ctx context.Context, l *Layout) {
	effort := k.job.Effort
	if effort == 0 {
		effort = defaultLengths
	}
	r := k.solve(ctx, effort)
	k.write(l, r)
	l.Report.Done = r.done
	dear := 0.0
	for _, b := range k.cut.bars {
		dear = math.Max(dear, b.cost)
	}
	k.account(l, metres)
	l.Report.settle(r.bound, dear)
}

func hasOffcut(c *checked) bool {
	for s := range c.job.Stock {
		if c.stock[s] && c.job.Stock[s].Offcut {
			return true
		}
	}
	return false
}

// lies finds how each part lies on each stock, and refuses what lies on none.
func (k *cutter) lies() {
	k.lie = make([][]*pose, len(k.job.Parts))
	for i := range k.job.Parts {
		k.lie[i] = make([]*pose, len(k.job.Stock))
		if !k.part[i] {
			continue
		}
		p := &k.job.Parts[i]
		if e := k.ext[i]; k.rules.Kerf > math.Min(e.Width(), e.Height()) {
			k.add(fmt.Sprintf("Parts[%d]", i), CodeRange, p.name(), -inf, inf, "the kerf is wider than the part", "")
			k.part[i] = false
			continue
		}
		any, defect := false, false
		for s := range k.job.Stock {
			if !k.stock[s] {
				continue
			}
			if _, ok := suits(p, &k.job.Stock[s]); !ok {
				continue
			}
			t := k.lieOn(i, s, poses(p, &k.job.Stock[s]), p)
			if t == nil {
				clear := *p
				for _, d := range k.job.Stock[s].Defects {
					clear.Tolerates = append(clear.Tolerates[:len(clear.Tolerates):len(clear.Tolerates)], d.Kind)
				}
				defect = defect || k.lieOn(i, s, poses(p, &k.job.Stock[s]), &clear) != nil
			}
			k.lie[i][s] = t
			any = any || t != nil
		}
		if any {
			continue
		}
		k.part[i] = false
		code := CodeDefect
		switch bare := (&cutter{checked: k.checked, rules: LengthRules{Kerf: k.rules.Kerf, NoRip: k.rules.NoRip, LeastRip: -1}}); {
		case defect:
		case bare.liesSomewhere(i):
			code = CodeLeast
		default:
			code = k.why(i, func(s int, ps []pose) bool { return k.lieOn(i, s, ps, p) != nil })
		}
		k.refuse(i, p.quantity(), code)
	}
}

// liesSomewhere says whether a part fits any stock.
func (k *cutter) liesSomewhere(part int) bool {
	p := &k.job.Parts[part]
	for s := range k.job.Stock {
		st := &k.job.Stock[s]
		if _, ok := suits(p, st); ok && k.stock[s] && k.lieOn(part, s, poses(p, st), p) != nil {
			return true
		}
	}
	return false
}

// lieOn is the pose of least length of a part on a stock, nil if it does not
// fit.
func (k *cutter) lieOn(part, stock int, ps []pose, taste *Part) *pose {
	s := &k.job.Stock[stock]
	width := s.Width - 2*s.Edge
	room := 0.0
	for _, r := range stretches(s, taste, k.rules.Kerf) {
		room = math.Max(room, r.to-r.from)
	}
	var best *pose
	least := inf
	for i := range ps {
		if ok, _ := quarter(ps[i].turn); !ok {
			continue
		}
		x, y := k.size(part, ps[i])
		if y > width+sameWidth || x > room+sameWidth || k.rules.NoRip && y < width-1e-3 {
			continue
		}
		if s.Edge > 0 && s.Length < k.rules.LeastRip || y < width-1e-3 && room < k.rules.LeastRip {
			continue
		}
		if x < least-1e-9 {
			least, best = x, &ps[i]
		}
	}
	return best
}

// tastes is what a part tolerates, as a key.
func tastes(p *Part) string {
	t := append([]string(nil), p.Tolerates...)
	sort.Strings(t)
	return fmt.Sprintf("%q", t)
}

// solve sets the cutting problem up and solves it.
func (k *cutter) solve(ctx context.Context, effort int) result {
	k.layBoards()
	k.layRows()
	k.layOptions()
	streams := max(1, k.job.Streams)
	prices := make([]float64, len(k.cut.bars))
	for i, b := range k.cut.bars {
		prices[i] = b.cost
	}
	k.cut.unit = costUnit(prices)
	want := append([]int(nil), k.cut.demand...)
	var best result
	var bestDemand []int
	for try := 0; ; try++ {
		r := k.cut.solve(ctx, k.job.Seed, effort, streams)
		if try > 0 && !k.moreOf(k.cut.demand, bestDemand) {
			break
		}
		best, bestDemand = r, append([]int(nil), k.cut.demand...)
		if r.whole || try >= 100 || ctx.Err() != nil || !k.yield(want, r.left) {
			break
		}
		k.cut.demand = append([]int(nil), want...)
	}
	k.cut.demand = bestDemand
	if k.mixed() {
		best.bound = math.Min(best.bound, k.cut.roundUp(k.cut.material()))
	}
	return best
}

// moreOf says whether a places more of what has the highest priority, than b.
func (k *cutter) moreOf(a, b []int) bool {
	diff := map[int]int{}
	top, found := 0, false
	for r := range a {
		p := k.job.Parts[k.rows[r][0]].Priority
		diff[p] += a[r] - b[r]
	}
	for p, d := range diff {
		if d != 0 && (!found || p > top) {
			top, found = p, true
		}
	}
	return found && diff[top] > 0
}

// mixed says whether parts of different tastes could share a board, which the
// patterns leave out: the bound of the program then says too much.
func (k *cutter) mixed() bool {
	seen := map[int]bool{}
	for _, b := range k.boards {
		if seen[b.stock] {
			return true
		}
		seen[b.stock] = true
	}
	return false
}

// yield gives up pieces of the lowest priority when others were left over, and
// reports whether it did.
func (k *cutter) yield(want, left []int) bool {
	prio := func(r int) int { return k.job.Parts[k.rows[r][0]].Priority }
	high, low, n := math.MinInt, math.MaxInt, 0
	for r := range want {
		if left[r] > 0 {
			high = max(high, prio(r))
			n += left[r]
		}
		if want[r] > 0 {
			low = min(low, prio(r))
		}
	}
	if high <= low {
		return false
	}
	for r := range want {
		if prio(r) == low && n > 0 {
			d := min(n, want[r])
			want[r] -= d
			n -= d
		}
	}
	return true
}

func (k *cutter) layBoards() {
	limit := map[int]int{}
	for s := range k.job.Stock {
		st := &k.job.Stock[s]
		if !k.stock[s] {
			continue
		}
		seen := map[string]bool{}
		for i := range k.job.Parts {
			p := &k.job.Parts[i]
			if !k.part[i] || k.lie[i][s] == nil {
				continue
			}
			key := ""
			if len(st.Defects) > 0 {
				key = tastes(p)
			}
			if seen[key] {
				continue
			}
			seen[key] = true
			b := board{stock: s, runs: stretches(st, p, k.rules.Kerf), width: st.Width - 2*st.Edge, tastes: key}
			out := bar{cost: st.price(k.priced, metres), limit: -1}
			for _, r := range b.runs {
				out.segs = append(out.segs, ticksDown(r.to-r.from+k.rules.Kerf))
			}
			if n := st.count(); n > 0 {
				if _, ok := limit[s]; !ok {
					limit[s] = len(k.cut.limits)
					k.cut.limits = append(k.cut.limits, n)
				}
				out.limit = limit[s]
			}
			k.boards = append(k.boards, b)
			k.cut.bars = append(k.cut.bars, out)
		}
	}
}

// layRows gathers parts of one size and one taste, slanted ones by themselves.
func (k *cutter) layRows() {
	k.rowOf = make([]int, len(k.job.Parts))
	byKey := map[string]int{}
	for i := range k.job.Parts {
		k.rowOf[i] = -1
		if !k.part[i] {
			continue
		}
		p := &k.job.Parts[i]
		key := fmt.Sprint(p.Priority, tastes(p))
		for s := range k.job.Stock {
			t := k.lie[i][s]
			if t == nil {
				key += ";"
				continue
			}
			x, y := k.size(i, *t)
			key += fmt.Sprint(";", ticksUp(x), ",", ticksUp(y))
			if e, ok := leans(p, *t); ok && (e.left != 0 || e.right != 0) {
				key += fmt.Sprint("#", i)
			}
		}
		r, ok := byKey[key]
		if !ok {
			r = len(k.rows)
			byKey[key] = r
			k.rows = append(k.rows, nil)
			k.cut.demand = append(k.cut.demand, 0)
		}
		k.rowOf[i] = r
		k.rows[r] = append(k.rows[r], i)
		k.cut.demand[r] += p.quantity()
	}
}

func (k *cutter) fitsBoard(part int, b *board) bool {
	return k.lie[part][b.stock] != nil && (b.tastes == "" || b.tastes == tastes(&k.job.Parts[part]))
}
