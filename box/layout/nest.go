package layout

import (
	"context"
	"fmt"
	"math"

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
	most := 0 // with the offcuts and without: more would take too long
	if rules.Objective != LeastCost {
		most = -1
	}
	return lay(ctx, &job, most, squareMetres, func(c *checked) func(*Layout) {
		n := &nester{checked: c, rules: rules}
		if !c.freeRules(&n.rules) {
			return nil
		}
		return func(l *Layout) {
			n.layBins()
			n.layShapes()
			n.layOut(ctx, l)
		}
	})
}

// mostBeds is the number of set-ups on one piece of stock beyond which a slip is
// more likely than a plan.
const mostBeds = 10_000

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
		if cols*rows > mostBeds {
			n.add("BedLength", CodeLimit, num(n.rules.BedLength), -inf, inf,
				fmt.Sprintf("stock of %s x %s would be cut into %s blanks for the bed, and %d is the most", num(st.Length), num(st.Width), num(cols*rows), mostBeds), "a larger bed, or smaller stock")
			continue
		}
		// the gap holds across the cut between two set-ups too
		from := func(before float64) float64 {
			if before > 0 {
				return math.Max(n.rules.Clamp, n.rules.Gap/2)
			}
			return n.rules.Clamp
		}
		for x := 0.0; x < cols; x++ {
			for y := 0.0; y < rows; y++ {
				bed := rect(float64(x*n.rules.BedLength), float64(y*n.rules.BedWidth),
					math.Min(float64((x+1)*n.rules.BedLength), st.Length), math.Min(float64((y+1)*n.rules.BedWidth), st.Width))
				in := rect(math.Max(bed.Min.X+from(x), full.Min.X), math.Max(bed.Min.Y+from(y), full.Min.Y),
					math.Min(bed.Max.X-from(cols-1-x), full.Max.X), math.Min(bed.Max.Y-from(rows-1-y), full.Max.Y))
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
					for u, o := range made {
						// A square part looks the same after a quarter turn; its grain does not.
						along := p.Grain == NoGrain || math.Mod(u.turn-t.turn, 180) == 0
						if o >= 0 && along && sameShape(n.fits.shapes[o], sh) && (k < 0 || o < k) {
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
