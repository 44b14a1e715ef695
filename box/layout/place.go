package layout

import (
	"math"
	"sort"

	"holt.example/box/outline"
)

// posed is the extents of a part in a pose about its own origin, allowance
// not included.
func (c *checked) posed(part int, t pose) outline.Box {
	e := c.ext[part]
	if ok, _ := quarter(t.turn); ok {
		m := t.turnMap()
		a, b := m.Apply(e.Min), m.Apply(e.Max)
		return outline.Box{Min: outline.Point{X: math.Min(a.X, b.X), Y: math.Min(a.Y, b.Y)}, Max: outline.Point{X: math.Max(a.X, b.X), Y: math.Max(a.Y, b.Y)}}
	}
	return c.job.Parts[part].Outline.Transform(t.turnMap()).Extents()
}

// size is the blank of a part in a pose, allowance included.
func (c *checked) size(part int, t pose) (x, y float64) {
	e, a := c.posed(part, t), c.job.Parts[part].Allowance
	return e.Width() + 2*a, e.Height() + 2*a
}

// put places a part with the lower left corner of its blank at x, y.
func (c *checked) put(part, copyNo int, t pose, x, y float64) Placement {
	e, a := c.posed(part, t), c.job.Parts[part].Allowance
	return Placement{Part: part, Copy: copyNo, Over: t.over, Turn: t.turn, X: x + a - e.Min.X, Y: y + a - e.Min.Y,
		Blank: outline.Box{Min: outline.Point{X: x, Y: y}, Max: outline.Point{X: x + e.Width() + 2*a, Y: y + e.Height() + 2*a}}}
}

// why finds the reason why a part fits no stock: fit says whether it would in
// one of the poses.
func (c *checked) why(part int, fit func(stock int, ps []pose) bool) string {
	p := c.job.Parts[part]
	material, thick, some := false, false, false
	var good []int
	for s := range c.job.Stock {
		if !c.stock[s] {
			continue
		}
		some = true
		code, ok := suits(&p, &c.job.Stock[s])
		material = material || ok || code == CodeThickness
		thick = thick || ok
		if ok {
			good = append(good, s)
		}
	}
	switch {
	case !some:
		return CodeNoStock
	case !material:
		return CodeMaterial
	case !thick:
		return CodeThickness
	}
	try := func(q Part) bool {
		for _, s := range good {
			if fit(s, poses(&q, &c.job.Stock[s])) {
				return true
			}
		}
		return false
	}
	q := p
	q.Grain = NoGrain
	if p.Grain != NoGrain && try(q) {
		return CodeGrain
	}
	if p.Turns != nil {
		q.Turns = nil
		if try(q) {
			return CodeTurns
		}
	}
	return CodeTooLarge
}

// keeps filters rectangles worth keeping and sorts them, the largest first.
func keeps(list []outline.Box, keep, keepY float64) []outline.Box {
	var out []outline.Box
	for _, b := range list {
		if b.Width() >= keep && b.Height() >= keepY {
			out = append(out, b)
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		return float64(out[i].Width()*out[i].Height()) > float64(out[j].Width()*out[j].Height())
	})
	return out
}

// account fills in the figures of the report that follow from the pieces.
func (c *checked) account(l *Layout, unit func(*Stock) float64) {
	r := &l.Report
	r.Priced = c.priced
	r.Seed, r.Effort = c.job.Seed, c.job.Effort
	for i := range c.job.Parts {
		if q := c.job.Parts[i].quantity(); q > 0 {
			r.Wanted += q
		}
	}
	n := make([]int, len(c.job.Stock))
	for i := range l.Pieces {
		p := &l.Pieces[i]
		s := &c.job.Stock[p.Stock]
		n[p.Stock]++
		p.Number = n[p.Stock]
		r.Pieces++
		r.StockArea += float64(s.Length * s.Width)
		r.Length += p.Used
		r.Placed += len(p.Placements)
		for _, q := range p.Placements {
			r.PartArea += c.job.Parts[q.Part].Outline.Area()
		}
	}
	for s, k := range n {
		if k > 0 {
			cost := float64(float64(k) * c.job.Stock[s].price(c.priced, unit))
			r.Buy = append(r.Buy, Buy{s, k, cost})
			r.Cost += cost
		}
	}
	if r.StockArea > 0 {
		r.Yield = r.PartArea / r.StockArea
	}
}

// settle ends the report with the bound that was proved.
func (r *Report) settle(bound, dearest float64) {
	// Bounds are taken a hair low, so that rounding proves nothing; to the user
	// that hair is noise.
	if whole := math.Round(bound*1e4) / 1e4; math.Abs(whole-bound) <= 2e-9*whole {
		bound = whole
	}
	r.Bound = math.Min(bound, r.Cost)
	if r.Cost-r.Bound <= 1e-9*r.Cost {
		r.Bound = r.Cost
		r.Optimal = r.Placed > 0
	}
	if dearest > 0 {
		r.LeastBound = int(math.Ceil(r.Bound/dearest - 1e-6))
	}
}

// costUnit is the largest amount of which every price is a multiple, 0 if
// there is none above a millionth.
func costUnit(prices []float64) float64 {
	g := int64(0)
	for _, p := range prices {
		if p == 0 {
			continue
		}
		k := math.Round(p * 1e6)
		if !(math.Abs(float64(p*1e6)-k) <= 1e-4 && k > 0 && k < 1e15) {
			return 0
		}
		g = gcd(int64(k), g)
	}
	return float64(g) / 1e6
}
