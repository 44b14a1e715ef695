package batch

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/box/layout"
	"holt.example/box/outline"
)

// bench is a job at work.
type bench struct {
	job    *Job
	result *Result
	first  []int // of each order, in Result.Boxes
	all    []*want
	known  map[[3]string]bool // problems by path, code and value
}

func (b *bench) add(path, code, got, why, try string) {
	b.keep(Problem{Path: path, Code: code, Got: got, Lo: math.Inf(-1), Hi: math.Inf(1), Why: why, Try: try})
}

// keep adds a problem unless it is known: every group finds the same fault in
// the rules.
func (b *bench) keep(p Problem) {
	what := [3]string{p.Path, p.Code, p.Got}
	if b.known[what] {
		return
	}
	b.known[what] = true
	b.result.Problems = append(b.result.Problems, p)
}

// Lay lays out a batch. The error is Problems, or nil if every part was placed;
// the result holds all that could be placed in either case, and is never nil.
// The context only stops the search early.
func Lay(ctx context.Context, job Job) (*Result, error) {
	job.Orders, job.Stock = slices.Clone(job.Orders), slices.Clone(job.Stock)
	b := &bench{job: &job, result: &Result{}, first: make([]int, len(job.Orders)), known: map[[3]string]bool{}}
	switch {
	case job.By == nil:
		b.add("By", CodeNoWay, "", "no way of cutting is given", "batch.Router{}, batch.Saw{} or batch.Lengths{}")
	case len(job.Orders) == 0:
		b.add("Orders", layout.CodeNoParts, "", "nothing is wanted", "")
	case len(job.Orders) > layout.MostParts:
		b.add("Orders", layout.CodeLimit, fmt.Sprint(len(job.Orders)), fmt.Sprintf("a job has at most %d orders", layout.MostParts), "lay out in several jobs")
	case len(job.Stock) == 0:
		b.add("Stock", layout.CodeNoStock, "", "there is nothing to cut from", "")
	case job.Rough < NoFace || job.Rough > InnerFace:
		b.add("Rough", layout.CodeRange, fmt.Sprint(int(job.Rough)), "no such face", "")
	case !(job.Allowance >= 0 && job.Allowance <= 1000):
		b.keep(Problem{Path: "Allowance", Code: layout.CodeRange, Got: fmt.Sprint(float64(job.Allowance)), Lo: 0, Hi: 1000, Unit: "mm", Why: "allowance out of range"})
	default:
		b.wants()
		b.checkStock(ctx)
		for _, g := range b.groups() {
			b.lay(ctx, g)
		}
		b.report()
	}
	b.result.Job = job
	if len(b.result.Problems) == 0 {
		return b.result, nil
	}
	return b.result, b.result.Problems
}

// checkStock finds what is wrong with the stock, whether a part needs it or not.
func (b *bench) checkStock(ctx context.Context) {
	dot := layout.Part{Outline: outline.Region{outline.Rectangle(0, 0, 1, 1)}}
	_, err := layout.Saw(ctx, layout.Job{Parts: []layout.Part{dot}, Stock: b.job.Stock, Effort: -1}, layout.SawRules{LeastRip: -1})
	var ps layout.Problems
	if errors.As(err, &ps) {
		for _, p := range ps {
			if strings.HasPrefix(p.Path, "Stock") {
				b.keep(p)
			}
		}
	}
}

// group is a set of wants with the stock that they compete for.
type group struct {
	wants []*want
	stock []int
	none  bool // nothing fits: the stock is only there to say why
}

// groups parts the wants so that no two groups share stock: then each can be
// laid out by itself, and nothing is used twice.
func (b *bench) groups() []group {
	n := len(b.all)
	up := make([]int, n+len(b.job.Stock)) // union and find over wants and stock
	for i := range up {
		up[i] = i
	}
	find := func(i int) int {
		for up[i] != i {
			up[i] = up[up[i]]
			i = up[i]
		}
		return i
	}
	fits := make([]bool, n)
	for i, w := range b.all {
		for k := range b.job.Stock {
			if suits(&w.part, &b.job.Stock[k]) {
				fits[i] = true
				x, y := find(i), find(n+k)
				up[max(x, y)] = min(x, y)
			}
		}
	}
	at := map[int]int{}
	var gs []group
	var lost group
	for i, w := range b.all {
		if !fits[i] {
			lost.wants = append(lost.wants, w)
			continue
		}
		root := find(i)
		k, ok := at[root]
		if !ok {
			k = len(gs)
			at[root] = k
			gs = append(gs, group{})
		}
		gs[k].wants = append(gs[k].wants, w)
	}
	for k := range b.job.Stock {
		if g, ok := at[find(n+k)]; ok {
			gs[g].stock = append(gs[g].stock, k)
		}
		lost.stock = append(lost.stock, k)
	}
	if len(lost.wants) > 0 {
		lost.none = true
		gs = append(gs, lost)
	}
	return gs
}

// suits says whether a part may be cut from a stock, as far as material and
// thickness go. It is the rule of package layout.
func suits(p *layout.Part, s *layout.Stock) bool {
	if p.Material != "" && s.Material != "" && !strings.EqualFold(p.Material, s.Material) {
		return false
	}
	return !(p.Thickness > 0 && s.Thickness > 0) || math.Abs(p.Thickness-s.Thickness) <= layout.ThicknessMatch
}

// lay lays out one group.
func (b *bench) lay(ctx context.Context, g group) {
	lj := layout.Job{Seed: b.job.Seed, Effort: b.job.Effort, Streams: b.job.Streams}
	for _, w := range g.wants {
		lj.Parts = append(lj.Parts, w.part)
	}
	for _, k := range g.stock {
		lj.Stock = append(lj.Stock, b.job.Stock[k])
	}
	l, _ := b.job.By.lay(ctx, lj)
	for _, p := range l.Problems {
		b.keep(b.rename(p, g))
	}
	r := l.Report
	r.Buy = slices.Clone(r.Buy)
	for i := range r.Buy {
		r.Buy[i].Stock = g.stock[r.Buy[i].Stock]
	}
	out := Group{Report: r}
	for _, w := range g.wants {
		out.Wanted += w.part.Quantity
		if m := w.part.Material; !slices.Contains(out.Materials, m) {
			out.Materials = append(out.Materials, m)
		}
		if t := box.MM(w.part.Thickness); !slices.Contains(out.Thickness, t) {
			out.Thickness = append(out.Thickness, t)
		}
	}
	slices.Sort(out.Thickness)
	if !g.none {
		out.Stock = g.stock
	}
	for _, p := range l.Pieces {
		s := Sheet{Number: len(b.result.Sheets) + 1, Group: len(b.result.Groups), Piece: p}
		s.Piece.Stock = g.stock[p.Stock]
		for _, q := range p.Placements {
			s.Placed = append(s.Placed, b.placed(g.wants[q.Part], q))
		}
		b.result.Sheets = append(b.result.Sheets, s)
	}
	b.result.Groups = append(b.result.Groups, out)
}

// placed is a part in its place, from the placement of its outline.
func (b *bench) placed(w *want, q layout.Placement) Placed {
	copyNo, name := w.copyOf(q.Copy)
	at := b.first[w.order] + copyNo
	p := Placed{
		Box: at, Item: w.item, Label: fmt.Sprintf("%d/%d", w.item, b.result.Boxes[at].Number),
		Piece: w.piece[name], Over: w.over != q.Over, Blank: q.Blank,
		Outline: w.part.Outline.Transform(q.Map()),
	}
	p.Panel = p.Piece.Panel
	if p.Over {
		p.Panel = TurnOver(p.Panel)
	}
	p.Lay = outline.Turn(q.Turn).Then(outline.Shift(q.X, q.Y))
	return p
}

// rename gives a problem of a layout its path in the job.
func (b *bench) rename(p Problem, g group) Problem {
	var k int
	if n, _ := fmt.Sscanf(p.Path, "Parts[%d]", &k); n == 1 && k >= 0 && k < len(g.wants) {
		w := g.wants[k]
		_, rest, _ := strings.Cut(p.Path, "]")
		p.Path = fmt.Sprintf("Orders[%d].Plan.Piece(%s)%s", w.order, w.names[0], rest)
		return p
	}
	if n, _ := fmt.Sscanf(p.Path, "Stock[%d]", &k); n == 1 && k >= 0 && k < len(g.stock) {
		_, rest, _ := strings.Cut(p.Path, "]")
		p.Path = fmt.Sprintf("Stock[%d]%s", g.stock[k], rest)
		return p
	}
	switch p.Path {
	case "Streams", "Stock", "Parts":
		return p
	}
	p.Path = "By." + p.Path
	return p
}

// report adds up the groups.
func (b *bench) report() {
	r := &b.result.Report
	r.Optimal = true
	for _, g := range b.result.Groups {
		r.Priced = r.Priced || g.Report.Priced
	}
	for _, g := range b.result.Groups {
		q := g.Report
		r.Wanted += g.Wanted
		r.Placed += q.Placed
		r.StockArea += q.StockArea
		r.PartArea += q.PartArea
		r.Done += q.Done
		r.Cancelled = r.Cancelled || q.Cancelled
		if q.Placed == 0 {
			continue
		}
		r.Optimal = r.Optimal && q.Optimal
		for _, y := range q.Buy {
			if r.Priced && !q.Priced {
				y.Cost = 0 // its stock has no price
			}
			r.Buy = append(r.Buy, y)
		}
		if q.Priced == r.Priced {
			r.Cost += q.Cost
			r.Bound += q.Bound
		}
	}
	slices.SortStableFunc(r.Buy, func(a, c layout.Buy) int { return a.Stock - c.Stock })
	r.Optimal = r.Optimal && r.Placed > 0
	if r.StockArea > 0 {
		r.Yield = r.PartArea / r.StockArea
	}
}
