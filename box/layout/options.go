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
		at := map[int]int{} // side by side -> option
		for b := range k.boards {
			if !k.fitsBoard(parts[0], &k.boards[b]) {
				continue
			}
			x, y := k.size(parts[0], *k.lie[parts[0]][k.boards[b].stock])
			side := max(1, int((k.boards[b].width+kerf+sameWidth)/(y+kerf)))
			o, ok := at[side]
			if !ok {
				o = len(k.hows)
				at[side] = o
				add(how{row: r, side: side}, []int{r}, []int{side}, make([]int64, len(k.boards)))
			}
			k.cut.opts[o].lens[b] = ticksUp(x + kerf)
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
