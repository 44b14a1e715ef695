package layout

import (
	"context"
	"sort"
)

// mostSheds is the number of kinds of offcuts up to which every choice of them
// is tried.
const mostSheds = 3

// lay checks a job and lays it out by one way of cutting. ready adds the problems of
// the rules, and gives what solves the job, or nil if they will not do.
func lay(ctx context.Context, job *Job, most int, unit func(*Stock) float64, ready func(*checked) func(*Layout)) (Layout, error) {
	l := sheds(ctx, job, most, unit, func(skip []bool) Layout {
		c, ok := check(job)
		c.leaveOut(skip)
		var l Layout
		if solve := ready(c); ok && solve != nil {
			solve(&l)
		} else {
			c.account(&l, unit)
		}
		l.Problems = c.problems
		return l
	})
	l.Report.Cancelled = ctx.Err() != nil
	return l, l.Problems.err()
}

// sheds lays a job out with all its offcuts and, unless the cost is proved
// least, again with some of them left out, so that one offcut more never
// raises the cost: each choice of up to most kinds; of more, the largest ones, as
// many as most, one less and so on. The offcuts that a run must not use are marked in skip.
func sheds(ctx context.Context, job *Job, most int, unit func(*Stock) float64, lay func(skip []bool) Layout) Layout {
	var off []int
	for s := range job.Stock {
		if st := &job.Stock[s]; st.Offcut && st.Length > 0 && st.Width > 0 {
			off = append(off, s)
		}
	}
	skip := make([]bool, len(job.Stock))
	best := lay(skip)
	if len(off) == 0 || len(off) > 1000 {
		return best
	}
	size := func(s int) float64 { return float64(job.Stock[s].Length * job.Stock[s].Width) }
	sort.SliceStable(off, func(a, b int) bool { return size(off[a]) > size(off[b]) })
	var choices []uint64 // bit k: off[k] is left out
	all := uint64(1)<<min(len(off), 63) - 1
	if len(off) <= most {
		for c := uint64(1); c <= all; c++ {
			choices = append(choices, c)
		}
	} else {
		for k := most; k >= 0; k-- {
			choices = append(choices, all&^(uint64(1)<<k-1))
		}
	}
	proved := best.Report.Bound
	for _, c := range choices {
		if best.Report.Optimal || best.Report.Placed == 0 || ctx.Err() != nil {
			break
		}
		for k, s := range off {
			skip[s] = k > 62 || c>>k&1 != 0
		}
		l := lay(skip)
		done := best.Report.Done + l.Report.Done
		if a, b := &l.Report, &best.Report; a.Placed > b.Placed || a.Placed == b.Placed && a.Cost < b.Cost-1e-9 {
			// what it proves holds without the offcuts left out; the first proof stands
			a.Optimal, a.LeastBound = false, 0
			bound := 0.0
			if a.Placed == b.Placed {
				bound = proved
			}
			a.settle(bound, dearest(job, a.Priced, unit))
			best = l
		}
		best.Report.Done = done
	}
	return best
}

// dearest is the highest price of one piece of what may be bought.
func dearest(job *Job, priced bool, unit func(*Stock) float64) float64 {
	dear := 0.0
	for s := range job.Stock {
		if p := job.Stock[s].price(priced, unit); p > dear {
			dear = p
		}
	}
	return dear
}
