package layout

import (
	"context"
	"math"
	"sort"
)

// order lists the copies by priority and then by size, in one of several
// senses of size.
func (n *nester) order(how int) []int32 {
	out := make([]int32, len(n.copies))
	key := make([]float64, len(n.copies))
	for i, c := range n.copies {
		out[i] = int32(i)
		e := n.ext[c.part]
		switch how {
		case 0:
			key[i] = float64(e.Width() * e.Height())
		case 1:
			key[i] = math.Max(e.Width(), e.Height())
		case 2:
			key[i] = math.Min(e.Width(), e.Height())
		case 3:
			key[i] = e.Width() + e.Height()
		}
	}
	sort.SliceStable(out, func(a, b int) bool {
		if pa, pb := n.job.Parts[n.copies[out[a]].part].Priority, n.job.Parts[n.copies[out[b]].part].Priority; pa != pb {
			return pa > pb
		}
		return key[out[a]] > key[out[b]]
	})
	return out
}

// construct lays the copies down one by one, each in the first sheet that has
// room; a new sheet is of the kind that costs least for its area among those
// that suit, or of the kind favoured if that suits.
func (n *nester) construct(ctx context.Context, order []int32, offcuts bool, favour int) *plan {
	p := &plan{}
	f := newField(n.fits, n.choices, 1)
	left := make([]int, len(n.job.Stock))
	for s := range left {
		left[s] = n.job.Stock[s].count()
		if left[s] == 0 {
			left[s] = math.MaxInt
		}
		if !n.stock[s] || len(n.frames[s]) == 0 || n.job.Stock[s].Offcut && !offcuts {
			left[s] = 0
		}
	}
	open := func(s int) {
		left[s]--
		sh := sheet{stock: s}
		for _, b := range n.frames[s] {
			sh.bins = append(sh.bins, int32(len(f.bins)))
			f.bins = append(f.bins, bin{b.Min.X, b.Min.Y, b.Max.X, b.Max.Y, int32(s)})
			f.members = append(f.members, nil)
			for _, d := range n.bars[s] {
				k := len(f.bins) - 1
				f.members[k] = append(f.members[k], int32(len(f.spots)))
				f.spots = append(f.spots, spot{shape: d, bin: int32(k), fixed: true, kind: -1})
				p.who = append(p.who, -1)
			}
		}
		p.sheets = append(p.sheets, sh)
		p.cost += n.job.Stock[s].price(n.priced, squareMetres)
	}
	full := map[[2]int32]bool{} // kind and bin without room
	place := func(c int32, bins []int32) bool {
		kind := int32(n.copies[c].part)
		for _, b := range bins {
			if full[[2]int32{kind, b}] {
				continue
			}
			q, ok := f.lowest(kind, b)
			if !ok {
				full[[2]int32{kind, b}] = true
				continue
			}
			f.members[b] = append(f.members[b], int32(len(f.spots)))
			f.spots = append(f.spots, spot{shape: q.shape, bin: b, x: q.x, y: q.y, kind: kind})
			p.who = append(p.who, c)
			return true
		}
		return false
	}
	for s := range n.job.Stock {
		if n.job.Stock[s].Offcut {
			for k := min(left[s], 200); k > 0; k-- {
				open(s)
			}
		}
	}
	for _, c := range order {
		if ctx.Err() != nil && len(p.who) > 0 {
			p.out = append(p.out, c)
			continue
		}
		done := false
		for i := range p.sheets {
			if done = place(c, p.sheets[i].bins); done {
				break
			}
		}
		for !done {
			best, rate := -1, inf
			for s := range n.job.Stock {
				if left[s] == 0 || len(n.choices[n.copies[c].part][s]) == 0 || full[[2]int32{int32(n.copies[c].part), int32(-1 - s)}] {
					continue
				}
				st := &n.job.Stock[s]
				r := st.price(n.priced, squareMetres) / float64(st.Length*st.Width)
				if s == favour {
					r = -1
				}
				if r < rate {
					best, rate = s, r
				}
			}
			if best < 0 {
				p.out = append(p.out, c)
				break
			}
			open(best)
			if done = place(c, p.sheets[len(p.sheets)-1].bins); !done {
				// the defects leave no room for it
				full[[2]int32{int32(n.copies[c].part), int32(-1 - best)}] = true
				n.drop(p, f, len(p.sheets)-1)
				left[best]++
			}
		}
	}
	p.spots, p.bins = f.spots, f.bins
	n.tidy(p)
	return p
}

// drop takes the last sheet, which holds nothing, out again.
func (n *nester) drop(p *plan, f *field, k int) {
	sh := p.sheets[k]
	p.sheets = p.sheets[:k]
	p.cost -= n.job.Stock[sh.stock].price(n.priced, squareMetres)
	first := sh.bins[0]
	f.bins, f.members = f.bins[:first], f.members[:first]
	m := len(f.spots)
	for m > 0 && f.spots[m-1].bin >= first {
		m--
	}
	f.spots, p.who = f.spots[:m], p.who[:m]
}

// tidy drops sheets that hold nothing and numbers the bins anew.
func (n *nester) tidy(p *plan) {
	used := make([]bool, len(p.bins))
	for i, w := range p.who {
		if w >= 0 {
			used[p.spots[i].bin] = true
		}
	}
	to := make([]int32, len(p.bins))
	var bins []bin
	var sheets []sheet
	p.cost = 0
	for _, sh := range p.sheets {
		any := false
		for _, b := range sh.bins {
			any = any || used[b]
		}
		ns := sheet{stock: sh.stock}
		for _, b := range sh.bins {
			to[b] = -1
			if any {
				to[b] = int32(len(bins))
				ns.bins = append(ns.bins, to[b])
				bins = append(bins, p.bins[b])
			}
		}
		if any {
			sheets = append(sheets, ns)
			p.cost += n.job.Stock[sh.stock].price(n.priced, squareMetres)
		}
	}
	var spots []spot
	var who []int32
	for i, s := range p.spots {
		if s.bin = to[s.bin]; s.bin >= 0 {
			spots = append(spots, s)
			who = append(who, p.who[i])
		}
	}
	p.bins, p.sheets, p.spots, p.who = bins, sheets, spots, who
}

// better compares plans: more placed, less cost, less used of the last sheet.
func (n *nester) better(a, b *plan) bool {
	if b == nil || len(a.out) != len(b.out) {
		return b == nil || len(a.out) < len(b.out)
	}
	if math.Abs(a.cost-b.cost) > 1e-9 {
		return a.cost < b.cost
	}
	return n.tail(a) < n.tail(b)-1e-9
}

// tail is the length used of the sheet least used.
func (n *nester) tail(p *plan) float64 {
	far := make([]float64, len(p.bins))
	for i, w := range p.who {
		if s := &p.spots[i]; w >= 0 {
			far[s.bin] = math.Max(far[s.bin], s.x+n.fits.shapes[s.shape].x1)
		}
	}
	least := inf
	for _, sh := range p.sheets {
		x := 0.0
		for _, b := range sh.bins {
			x = math.Max(x, far[b])
		}
		least = math.Min(least, x)
	}
	return least
}
