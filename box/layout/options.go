package layout

import (
	"math"
)

// layOptions lists the ways to use a board: one part or several equal ones
// side by side, and pairs.
func (k *cutter) layOptions() {
	kerf := k.rules.Kerf
	add := func(h how, rows, cnt []int, lens []int64) {
		k.hows = append(k.hows, h)
		k.cut.opts = append(k.cut.opts, option{row: rows, cnt: cnt, lens: lens})
	}
	for r, parts := range k.rows {
		at := map[[2]int]int{} // side by side and in a row -> option
		for b := range k.boards {
			if !k.fitsBoard(parts[0], &k.boards[b]) {
				continue
			}
			x, y := k.size(parts[0], *k.lie[parts[0]][k.boards[b].stock])
			side := max(1, int((k.boards[b].width+kerf+sameWidth)/(y+kerf)))
			for _, l := range k.inRow(x, y < k.boards[b].width-1e-3) {
				if l.n > 1 && (l.n-1)*side >= k.cut.demand[r] {
					break // fewer will do
				}
				o, ok := at[[2]int{side, l.n}]
				if !ok {
					o = len(k.hows)
					at[[2]int{side, l.n}] = o
					add(how{row: r, side: side, long: l.n}, []int{r}, []int{side * l.n}, make([]int64, len(k.boards)))
				}
				k.cut.opts[o].lens[b] = ticksUp(l.length + kerf)
			}
		}
	}
	var lean []int
	for r := range k.rows {
		if len(lean) < 40 && k.canLean(k.rows[r][0]) {
			lean = append(lean, r)
		}
	}
	for i, r := range lean {
		for _, q := range lean[i:] {
			for b := range k.boards {
				pa, pb := k.rows[r][0], k.rows[q][0]
				if !k.fitsBoard(pa, &k.boards[b]) || !k.fitsBoard(pb, &k.boards[b]) || r == q && k.cut.demand[r] < 2 {
					continue
				}
				pr, ok := k.pair(pa, pb, k.boards[b].stock, kerf)
				if back, good := k.pair(pb, pa, k.boards[b].stock, kerf); good && (!ok || back.length < pr.length-1e-9) {
					pr, ok = back, true
				}
				if !ok {
					continue
				}
				lens := make([]int64, len(k.boards))
				lens[b] = ticksUp(pr.length + kerf)
				if r == q {
					add(how{pair: pr, pairs: true}, []int{r}, []int{2}, lens)
				} else {
					add(how{pair: pr, pairs: true}, []int{r, q}, []int{1, 1}, lens)
				}
			}
		}
	}
}

// rowLength is a number of equal parts in a row and the length that they take.
type rowLength struct {
	n      int
	length float64
}

// inRow lists how many parts of length x are cut in a row. If they are ripped
// and shorter than the least rip, a row must reach it: a shorter one takes the
// least length all the same, and every longer one is a sum of those listed.
func (k *cutter) inRow(x float64, ripped bool) []rowLength {
	least, kerf := k.rules.LeastRip, k.rules.Kerf
	if !ripped || x >= least-sameWidth {
		return []rowLength{{1, x}}
	}
	n := int(math.Ceil((least + kerf - sameWidth) / (x + kerf)))
	n = min(n, 100)
	var out []rowLength
	for i := 1; i < 2*n; i++ {
		out = append(out, rowLength{i, math.Max(least, float64(float64(i)*x)+float64(float64(i-1)*kerf))})
	}
	return out
}

func (k *cutter) canLean(part int) bool {
	for _, t := range k.lie[part] {
		if t == nil {
			continue
		}
		if e, ok := leans(&k.job.Parts[part], *t); ok && (math.Abs(e.left) >= 1 || math.Abs(e.right) >= 1) {
			return true
		}
	}
	return false
}
