package layout

import "sort"

// knapsack finds the most valuable choice of items of whole lengths within a
// capacity, each up to its bound. It is built once and asked with many values.
type knapsack struct {
	lens  []int64
	bound []int
	take  []uint64 // scratch of the table: one bit a split item and fill
	best  []float64
	split []splitItem
	order []int
	work  int // steps taken so far
}

type splitItem struct {
	item, n int
	len     int64
	val     float64
}

// tableLight and tableHeavy are the sizes, in steps, up to which the table is
// filled at once, and up to which it is filled when the search gets stuck.
const (
	tableLight = 2_000_000
	tableHeavy = 20_000_000
	knapNodes  = 200_000
)

// solve returns how many of each item to take, their value, and an upper bound
// of the value, which is the same unless the search was given up.
func (k *knapsack) solve(vals []float64, capacity int64) (counts []int, value, upper float64) {
	counts = make([]int, len(k.lens))
	steps := int64(0)
	for i, l := range k.lens {
		if b := k.most(i, capacity); vals[i] > 0 && b > 0 && l > 0 {
			for s := 1; b > 0; s *= 2 {
				b -= s
				steps += capacity
			}
		}
	}
	if steps == 0 {
		return counts, 0, 0
	}
	if steps <= tableLight {
		value = k.table(vals, capacity, counts)
		return counts, value, value
	}
	value, upper = k.search(vals, capacity, counts)
	if upper > value && steps <= tableHeavy {
		value = k.table(vals, capacity, counts)
		upper = value
	}
	return counts, value, upper
}

func (k *knapsack) most(i int, capacity int64) int {
	if k.lens[i] > capacity {
		return 0
	}
	return int(min(int64(k.bound[i]), capacity/k.lens[i]))
}

// table is dynamic programming over every fill from 0 to the capacity; bounds
// by binary splitting.
func (k *knapsack) table(vals []float64, capacity int64, counts []int) float64 {
	for i := range counts {
		counts[i] = 0
	}
	k.split = k.split[:0]
	for i := range k.lens {
		if vals[i] <= 0 {
			continue
		}
		for b, s := k.most(i, capacity), 1; b > 0; s *= 2 {
			n := min(s, b)
			k.split = append(k.split, splitItem{i, n, k.lens[i] * int64(n), vals[i] * float64(n)})
			b -= n
		}
	}
	w := int(capacity) + 1
	k.work += w * len(k.split)
	words := (w + 63) / 64
	if need := words * len(k.split); cap(k.take) < need {
		k.take = make([]uint64, need)
	}
	k.take = k.take[:words*len(k.split)]
	clear(k.take)
	if cap(k.best) < w {
		k.best = make([]float64, w)
	}
	best := k.best[:w]
	clear(best)
	for s := range k.split {
		it := &k.split[s]
		bits := k.take[s*words : (s+1)*words]
		l := int(it.len)
		for c := w - 1; c >= l; c-- {
			if v := best[c-l] + it.val; v > best[c]+1e-12 {
				best[c] = v
				bits[c>>6] |= 1 << (c & 63)
			}
		}
	}
	c := w - 1
	for s := len(k.split) - 1; s >= 0; s-- {
		if k.take[s*words+c>>6]&(1<<(c&63)) != 0 {
			counts[k.split[s].item] += k.split[s].n
			c -= int(k.split[s].len)
		}
	}
	return best[w-1]
}

// search is branch and bound, the item of most value for its length first.
func (k *knapsack) search(vals []float64, capacity int64, counts []int) (value, upper float64) {
	k.order = k.order[:0]
	for i := range k.lens {
		if vals[i] > 0 && k.most(i, capacity) > 0 {
			k.order = append(k.order, i)
		}
	}
	dens := func(i int) float64 { return vals[i] / float64(k.lens[i]) }
	sort.SliceStable(k.order, func(a, b int) bool { return dens(k.order[a]) > dens(k.order[b]) })
	n := len(k.order)
	cur := make([]int, n)
	nodes := 0
	best := -1.0
	bestCur := make([]int, n)
	root := 0.0
	left := float64(capacity)
	for _, i := range k.order { // the fractional optimum
		use := min(float64(k.most(i, capacity)), left/float64(k.lens[i]))
		root += float64(use * vals[i])
		left -= float64(use * float64(k.lens[i]))
	}
	var down func(d int, room int64, v float64)
	down = func(d int, room int64, v float64) {
		nodes++
		if v > best+1e-12 {
			best = v
			copy(bestCur, cur)
		}
		if d == n || nodes > knapNodes {
			return
		}
		i := k.order[d]
		if v+float64(float64(room)*dens(i)) <= best+1e-12 {
			return
		}
		for c := k.most(i, room); c >= 0; c-- {
			cur[d] = c
			down(d+1, room-int64(c)*k.lens[i], v+float64(float64(c)*vals[i]))
			if nodes > knapNodes {
				break
			}
		}
		cur[d] = 0
	}
	down(0, capacity, 0)
	k.work += 10 * nodes
	for i := range counts {
		counts[i] = 0
	}
	for d, i := range k.order {
		counts[i] = bestCur[d]
	}
	if best < 0 {
		best = 0
	}
	if nodes > knapNodes {
		return best, root
	}
	return best, best
}
