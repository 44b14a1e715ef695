package layout

import (
	"context"
	"fmt"
	"math"
	"sort"

	"holt.example/box/outline"
)

const defaultFree = 2000 // rounds

// nester turns a job into shapes and bins and back.
type nester struct {
	*checked
	rules   FreeRules
	fits    *nofits
	choices [][][]int32     // per part and stock: the shapes it may take
	frames  [][]outline.Box // per stock: its clear rectangles
	beds    [][]outline.Box // per stock: the bed set-ups, one a clear rectangle
	copies  []copyOf
	bars    [][]int32 // per stock: shapes of its defects
}

// sheet is a piece of stock in the layout under way.
type sheet struct {
	stock int
	bins  []int32
}

// plan is a layout under way: pieces in bins, bins on sheets.
type plan struct {
	spots  []spot
	who    []int32 // the copy of each spot, -1 for a defect
	bins   []bin
	sheets []sheet
	out    []int32 // copies not placed
	cost   float64
}

func (c *checked) freeRules(r *FreeRules) bool {
	n := len(c.problems)
	c.within("Gap", r.Gap, 0, 1000, "gap out of range")
	c.within("Margin", r.Margin, 0, 10000, "margin out of range")
	c.within("Clamp", r.Clamp, 0, 10000, "clamp margin out of range")
	c.within("Keep", r.Keep, 0, mostSize, "least offcut out of range")
	c.within("BedLength", r.BedLength, 0, mostSize, "bed out of range")
	c.within("BedWidth", r.BedWidth, 0, mostSize, "bed out of range")
	if r.Objective != LeastCost && r.Objective != ShortestLength {
		c.add("Objective", CodeRange, fmt.Sprint(int(r.Objective)), -inf, inf, "no such objective", "")
	}
	if r.BedLength > 0 != (r.BedWidth > 0) {
		c.add("BedWidth", CodeRange, num(r.BedWidth), -inf, inf, "a bed has both a length and a width", "")
	}
	if len(c.problems) == n {
		widest := 0.0
		for s := range c.job.Stock {
			if c.stock[s] {
				widest = math.Max(widest, math.Min(c.job.Stock[s].Length, c.job.Stock[s].Width))
			}
		}
		if r.Gap > widest {
			c.add("Gap", CodeRange, num(r.Gap), 0, widest, "the gap is wider than any stock", "")
		}
	}
	if r.Keep == 0 {
		r.Keep = defaultKeep
	}
	return len(c.problems) == n
}

func free(ctx context.Context, job Job, rules FreeRules) (Layout, error) {
	c, ok := check(&job)
	var l Layout
	if ok = ok && c.freeRules(&rules); ok {
		n := &nester{checked: c, rules: rules}
		n.layBins()
		n.layShapes()
		n.layOut(ctx, &l)
	} else {
		c.account(&l, squareMetres)
	}
	l.Report.Cancelled = ctx.Err() != nil
	l.Problems = c.problems
	return l, c.problems.err()
}

// layBins finds the clear rectangles of each stock: one, or one for each
// set-up on the bed.
func (n *nester) layBins() {
	n.frames = make([][]outline.Box, len(n.job.Stock))
	n.beds = make([][]outline.Box, len(n.job.Stock))
	for s := range n.job.Stock {
		if !n.stock[s] {
			continue
		}
		st := &n.job.Stock[s]
		m := n.rules.Margin
		full := rect(st.End+m, st.Edge+m, st.Length-st.End-m, st.Width-st.Edge-m)
		if n.rules.BedLength <= 0 {
			if full.Width() > 0 && full.Height() > 0 {
				n.frames[s] = []outline.Box{full}
			}
			continue
		}
		cols, rows := math.Ceil(st.Length/n.rules.BedLength-1e-9), math.Ceil(st.Width/n.rules.BedWidth-1e-9)
		if cols*rows > 10000 {
			continue
		}
		k := n.rules.Clamp
		for x := 0.0; x < cols; x++ {
			for y := 0.0; y < rows; y++ {
				bed := rect(float64(x*n.rules.BedLength), float64(y*n.rules.BedWidth),
					math.Min(float64((x+1)*n.rules.BedLength), st.Length), math.Min(float64((y+1)*n.rules.BedWidth), st.Width))
				in := rect(math.Max(bed.Min.X+k, full.Min.X), math.Max(bed.Min.Y+k, full.Min.Y), math.Min(bed.Max.X-k, full.Max.X), math.Min(bed.Max.Y-k, full.Max.Y))
				if in.Width() > 0 && in.Height() > 0 {
					n.frames[s] = append(n.frames[s], in)
					n.beds[s] = append(n.beds[s], bed)
				}
			}
		}
	}
}

// layShapes makes the shapes of every part and refuses what fits nowhere.
func (n *nester) layShapes() {
	n.fits = &nofits{gap: n.rules.Gap, known: map[[2]int32]*nofit{}}
	n.choices = make([][][]int32, len(n.job.Parts))
	n.bars = make([][]int32, len(n.job.Stock))
	small := inf // the narrowest part there is
	for i := range n.job.Parts {
		if n.part[i] {
			e := n.ext[i]
			small = math.Min(small, math.Min(e.Width(), e.Height())+2*n.job.Parts[i].Allowance)
		}
	}
	for i := range n.job.Parts {
		n.choices[i] = make([][]int32, len(n.job.Stock))
		if !n.part[i] {
			continue
		}
		p := &n.job.Parts[i]
		e := n.ext[i]
		tol := math.Max(leastError, float64(shapeError*math.Max(e.Width(), e.Height())))
		pocket := float64(2.5 * (n.rules.Gap + p.Allowance))
		pieces := convexCover(p.Outline, tol, pocket, small+2*n.rules.Gap+2*p.Allowance)
		made := map[pose]int32{}
		any := false
		for s := range n.job.Stock {
			st := &n.job.Stock[s]
			if _, ok := suits(p, st); !ok || !n.stock[s] {
				continue
			}
			for _, t := range poses(p, st) {
				if !n.fitsIn(i, s, t, n.frames[s]) {
					continue
				}
				k, ok := made[t]
				if !ok {
					sh := n.shapeOf(i, t, pieces)
					k = int32(-1)
					for _, o := range made {
						if o >= 0 && sameShape(n.fits.shapes[o], sh) && (k < 0 || o < k) {
							k = o
						}
					}
					if k < 0 {
						k = int32(len(n.fits.shapes))
						n.fits.shapes = append(n.fits.shapes, sh)
					}
					made[t] = k
				}
				has := false
				for _, o := range n.choices[i][s] {
					has = has || o == k
				}
				if !has {
					n.choices[i][s] = append(n.choices[i][s], k)
				}
				any = true
			}
		}
		if !any {
			n.part[i] = false
			code := n.why(i, func(s int, ps []pose) bool {
				for _, t := range ps {
					if n.fitsIn(i, s, t, n.frames[s]) {
						return true
					}
				}
				return false
			})
			if code == CodeTooLarge && n.rules.BedLength > 0 && n.fitsUncut(i) {
				code = CodeBed
			}
			n.refuse(i, p.quantity(), code)
			continue
		}
		for k := 0; k < p.quantity(); k++ {
			n.copies = append(n.copies, copyOf{i, k})
		}
	}
	for s := range n.job.Stock {
		st := &n.job.Stock[s]
		for d := range st.Defects {
			b := st.Defects[d].Box
			if n.stock[s] && b.Width() > 0 && b.Height() > 0 {
				n.bars[s] = append(n.bars[s], int32(len(n.fits.shapes)))
				n.fits.shapes = append(n.fits.shapes, &shape{part: -1, defect: &st.Defects[d], x0: b.Min.X, y0: b.Min.Y, x1: b.Max.X, y1: b.Max.Y, box: true,
					pieces: [][]outline.Point{{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}}})
			}
		}
	}
	n.fits.clear = func(a, b *shape) bool {
		if b.defect != nil {
			a, b = b, a
		}
		return a.defect != nil && (b.defect != nil || !avoids(&n.job.Parts[b.part], a.defect))
	}
}

func (n *nester) fitsIn(part, stock int, t pose, frames []outline.Box) bool {
	w, h := n.size(part, t)
	for _, b := range frames {
		if w <= b.Width()+1e-9 && h <= b.Height()+1e-9 {
			return true
		}
	}
	return false
}

// fitsUncut says whether a part would fit without the bed.
func (n *nester) fitsUncut(part int) bool {
	p := &n.job.Parts[part]
	for s := range n.job.Stock {
		st := &n.job.Stock[s]
		if _, ok := suits(p, st); !ok || !n.stock[s] {
			continue
		}
		m := n.rules.Margin
		full := []outline.Box{rect(st.End+m, st.Edge+m, st.Length-st.End-m, st.Width-st.Edge-m)}
		for _, t := range poses(p, st) {
			if n.fitsIn(part, s, t, full) {
				return true
			}
		}
	}
	return false
}

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
