package layout

import (
	"context"
	"math"
)

// spot is a piece in the search: which shape lies where.
type spot struct {
	shape int32
	bin   int32
	x, y  float64
	fixed bool
	kind  int32 // of the piece: what shapes it may take
}

// bin is a clear rectangle of a piece of stock that parts lie in.
type bin struct {
	x0, y0, x1, y1 float64
	stock          int32
}

// field is a set of pieces in bins, which may overlap while the search lasts.
type field struct {
	fits    *nofits
	table   []*nofit // of this stream: shape a, that stays, by shape b
	ns      int32
	shapes  []*shape
	choices [][][]int32 // per kind and stock: the shapes it may take
	spots   []spot
	bins    []bin
	members [][]int32 // per bin
	weight  []float64 // per pair
	rng     source
	done    int // rounds
	busy    []int32
	depths  []float64
}

func newField(fits *nofits, choices [][][]int32, rng source) *field {
	n := int32(len(fits.shapes))
	f := &field{fits: fits, ns: n, shapes: fits.shapes, choices: choices, rng: rng}
	f.table = make([]*nofit, int(n)*int(n))
	return f
}

func (f *field) get(a, b int32) *nofit {
	k := int(a)*int(f.ns) + int(b)
	if n := f.table[k]; n != nil {
		return n
	}
	n := f.fits.get(a, b)
	f.table[k] = n
	return n
}

// load sets the pieces and bins.
func (f *field) load(spots []spot, bins []bin) {
	f.spots = append(f.spots[:0], spots...)
	f.bins = append(f.bins[:0], bins...)
	f.members = make([][]int32, len(bins))
	for i := range f.spots {
		b := f.spots[i].bin
		f.members[b] = append(f.members[b], int32(i))
	}
	n := len(spots)
	if cap(f.weight) < n*n {
		f.weight = make([]float64, n*n)
		f.depths = make([]float64, n*n)
	}
	f.weight, f.depths = f.weight[:n*n], f.depths[:n*n]
	f.rest()
}

// rest sets all weights to one.
func (f *field) rest() {
	for i := range f.weight {
		f.weight[i] = 1
	}
}

// room is where the origin of a shape may lie in a bin; false if nowhere.
func (f *field) room(s int32, b int32) (x0, y0, x1, y1 float64, ok bool) {
	sh, bn := f.shapes[s], &f.bins[b]
	x0, y0 = bn.x0-sh.x0, bn.y0-sh.y0
	x1, y1 = bn.x1-sh.x1, bn.y1-sh.y1
	if x1 < x0 {
		if x1 < x0-1e-9 {
			return 0, 0, 0, 0, false
		}
		x1 = x0
	}
	if y1 < y0 {
		if y1 < y0-1e-9 {
			return 0, 0, 0, 0, false
		}
		y1 = y0
	}
	return x0, y0, x1, y1, true
}

// overlap is the weighted overlap of piece i if it lay there; it stops at
// limit.
func (f *field) overlap(i int32, s, b int32, x, y, limit float64) float64 {
	sum := 0.0
	n := len(f.spots)
	row := f.weight[int(i)*n : int(i)*n+n]
	for _, j := range f.members[b] {
		if j == i {
			continue
		}
		o := &f.spots[j]
		nf := f.get(o.shape, s)
		dx, dy := x-o.x, y-o.y
		if dx <= nf.x0 || dx >= nf.x1 || dy <= nf.y0 || dy >= nf.y1 {
			continue
		}
		if d := nf.depth(dx, dy); d > 0 {
			sum += float64(d * row[j])
			if sum >= limit {
				return sum
			}
		}
	}
	return sum
}

// move puts piece i elsewhere.
func (f *field) move(i int32, s, b int32, x, y float64) {
	p := &f.spots[i]
	if p.bin != b {
		m := f.members[p.bin]
		for k, j := range m {
			if j == i {
				m[k] = m[len(m)-1]
				f.members[p.bin] = m[:len(m)-1]
				break
			}
		}
		f.members[b] = append(f.members[b], i)
	}
	p.shape, p.bin, p.x, p.y = s, b, x, y
}

// measure finds all overlaps; it returns their sum without weights and the
// pieces concerned, in order.
func (f *field) measure() float64 {
	n := len(f.spots)
	f.busy = f.busy[:0]
	hit := make([]bool, n)
	total := 0.0
	for b := range f.members {
		m := f.members[b]
		for k, i := range m {
			p := &f.spots[i]
			for _, j := range m[:k] {
				q := &f.spots[j]
				d := f.get(q.shape, p.shape).depth(p.x-q.x, p.y-q.y)
				if d > 0 {
					hit[i], hit[j] = true, true
					total += d
				}
				f.depths[int(i)*n+int(j)], f.depths[int(j)*n+int(i)] = d, d
			}
		}
	}
	for i, h := range hit {
		if h && !f.spots[i].fixed {
			f.busy = append(f.busy, int32(i))
		}
	}
	return total
}

// reweigh raises the weights of pairs that overlap, the deepest most, and
// lowers the others slowly.
func (f *field) reweigh() {
	n := len(f.spots)
	deepest := 0.0
	for b := range f.members {
		for k, i := range f.members[b] {
			for _, j := range f.members[b][:k] {
				deepest = math.Max(deepest, f.depths[int(i)*n+int(j)])
			}
		}
	}
	for i := range f.weight {
		if w := f.weight[i]; w > 1 {
			f.weight[i] = math.Max(1, float64(w*0.95))
		}
	}
	for b := range f.members {
		for k, i := range f.members[b] {
			for _, j := range f.members[b][:k] {
				d := f.depths[int(i)*n+int(j)]
				if d <= 0 {
					continue
				}
				a, z := int(i)*n+int(j), int(j)*n+int(i)
				w := float64(f.weight[a] / 0.95)
				if w < 1 {
					w = 1
				}
				w = float64(w * (1.2 + float64(0.8*d)/deepest))
				f.weight[a], f.weight[z] = w, w
			}
		}
	}
}

// separate moves overlapping pieces until none is left. It gives up after
// strikes times patience rounds without progress, or when rounds are done.
func (f *field) separate(ctx context.Context, patience, strikes, rounds int) bool {
	best := f.measure()
	if best == 0 {
		return true
	}
	saved := append([]spot(nil), f.spots...)
	end := f.done + rounds
	for s := 0; s < strikes; s++ {
		start := best
		for idle := 0; idle < patience; idle++ {
			if f.done >= end || f.done&15 == 0 && ctx.Err() != nil {
				return false
			}
			f.done++
			for k := len(f.busy) - 1; k > 0; k-- {
				j := f.rng.n(k + 1)
				f.busy[k], f.busy[j] = f.busy[j], f.busy[k]
			}
			for _, i := range f.busy {
				f.seek(i)
			}
			v := f.measure()
			if v == 0 {
				return true
			}
			if v < best {
				if v < float64(best*0.98) {
					idle = -1
				}
				best = v
				copy(saved, f.spots)
			}
			f.reweigh()
		}
		if best < float64(start*0.98) {
			s = -1
		}
		f.back(saved)
		f.measure()
	}
	f.back(saved)
	return false
}

// back returns to saved places.
func (f *field) back(saved []spot) {
	copy(f.spots, saved)
	for b := range f.members {
		f.members[b] = f.members[b][:0]
	}
	for i := range f.spots {
		b := f.spots[i].bin
		f.members[b] = append(f.members[b], int32(i))
	}
}
