package layout

import (
	"slices"
	"sort"
)

// blankKind is blanks that are alike.
type blankKind struct {
	size   blankSize
	pieces []int32
}

// rasterItem is a kind of blank as it lies in a strip: a along the strip, b
// across it.
type rasterItem struct {
	kind   int
	a, b   int64
	turned bool
}

// raster makes patterns for one kind of sheet: strips from edge to edge, each
// strip cut into segments, each segment into a stack of blanks, and those
// trimmed to their length. Places are sums of sizes (normal patterns) or, where
// those are too many, a grid.
type raster struct {
	sheet       int // kind of sheet
	along       bool
	strip, over int64 // the length of a strip, and what the strips share
	least       int64
	items       []rasterItem // by a
	as, heights []int64      // lengths of segments and heights of strips
	xs, ys      []int64      // places in a strip, and over strips and stacks
	first       []int        // per length of segment: its first item
	stack       [][]float64  // per length of segment: the worth of a stack over ys
	long        [][]float64  // the same of what may lie in longer segments
	how, howL   [][]int32    // and how it is reached: see stackBack
	row         []float64    // of a strip, over xs
	rowHow      []int32
	worth       []float64 // of strips, by height
	work        int       // steps of one pricing
}

// The most places in one direction, and steps in one pricing.
const (
	mostPlaces = 6000
	mostSteps  = 60_000_000
)

// newRaster is nil if the sizes are too many for it.
func newRaster(sheet int, kd *sheetKind, kinds []blankKind, along bool, least int64) *raster {
	r := &raster{sheet: sheet, along: along, least: least, strip: kd.roots[0][0], over: kd.roots[0][1]}
	if !along {
		r.strip, r.over = r.over, r.strip
	}
	for k := range kinds {
		q := &kinds[k].size
		for _, way := range []uint8{wayUp, waySide} {
			if q.ways[sheet]&way == 0 || way == waySide && q.w == q.h && q.ways[sheet]&wayUp != 0 {
				continue
			}
			it := rasterItem{kind: k, a: q.w, b: q.h, turned: way == waySide}
			if it.turned == along {
				it.a, it.b = it.b, it.a
			}
			if it.a <= r.strip && it.b <= r.over {
				r.items = append(r.items, it)
			}
		}
	}
	sort.SliceStable(r.items, func(i, j int) bool { return r.items[i].a < r.items[j].a })
	var sizeA, sizeB []int64
	for i, it := range r.items {
		sizeA, sizeB = append(sizeA, it.a), append(sizeB, it.b)
		if i == 0 || it.a != r.items[i-1].a {
			r.as = append(r.as, it.a)
			r.first = append(r.first, i)
		}
	}
	r.first = append(r.first, len(r.items))
	if len(r.items) == 0 {
		return nil
	}
	r.xs, r.ys = places(sizeA, r.strip), places(sizeB, r.over)
	r.heights = r.ys[1:]
	steps := func() float64 { return float64(len(r.heights)) * float64(len(r.as)) * float64(len(r.xs)) }
	if steps() > mostSteps/10 {
		r.heights = nil
		sort.Slice(sizeB, func(i, j int) bool { return sizeB[i] < sizeB[j] })
		for i, b := range sizeB {
			if i == 0 || b != sizeB[i-1] {
				r.heights = append(r.heights, b)
			}
		}
	}
	if steps() > mostSteps {
		return nil
	}
	r.work = int(steps()) + len(r.ys)*(len(r.items)+2*len(r.as)+len(r.heights))
	for range r.as {
		r.stack = append(r.stack, make([]float64, len(r.ys)))
		r.long = append(r.long, make([]float64, len(r.ys)))
		r.how = append(r.how, make([]int32, len(r.ys)))
		r.howL = append(r.howL, make([]int32, len(r.ys)))
	}
	r.row, r.rowHow = make([]float64, len(r.xs)), make([]int32, len(r.xs))
	r.worth = make([]float64, len(r.heights))
	return r
}

// places are the sums of sizes or, if those are too many, the sizes and a grid:
// what is placed after another then loses up to a step of it.
func places(sizes []int64, side int64) []int64 {
	if list, ok := patterns(sizes, side, mostPlaces); ok {
		return list
	}
	list := append([]int64{side}, sizes...)
	for k := int64(0); k < mostPlaces/2; k++ {
		list = append(list, side*k/(mostPlaces/2))
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// How a table is reached: by an item or segment (0 and up), from the place
// before, from the next shorter segment.
const (
	hereBefore  int32 = -1
	hereShorter int32 = -2
)

// stacks fills the tables of stacks for the given values of the kinds.
func (r *raster) stacks(vals []float64) {
	for ai := range r.as {
		for _, t := range []struct {
			val []float64
			how []int32
			all bool
		}{{r.long[ai], r.howL[ai], false}, {r.stack[ai], r.how[ai], true}} {
			if ai == 0 {
				clear(t.val)
				for i := range t.how {
					t.how[i] = hereBefore
				}
			} else {
				copy(t.val, r.long[ai-1])
				for i := range t.how {
					t.how[i] = hereShorter
				}
			}
			for k := r.first[ai]; k < r.first[ai+1]; k++ {
				it := &r.items[k]
				v := vals[it.kind]
				// what lies in a longer segment is trimmed: by a rip if the
				// strips are columns
				if v <= 0 || !t.all && !r.along && it.b < r.least {
					continue
				}
				carry(t.val, t.how, r.ys, it.b, v, int32(k))
			}
		}
	}
}

// carry is one item of an unbounded knapsack over places.
func carry(val []float64, how []int32, at []int64, size int64, v float64, mark int32) {
	j := 0
	for i := 1; i < len(at); i++ {
		if val[i-1] > val[i] {
			val[i], how[i] = val[i-1], hereBefore
		}
		room := at[i] - size
		if room < 0 {
			continue
		}
		for j+1 < len(at) && at[j+1] <= room {
			j++
		}
		if w := val[j] + v; w > val[i]+1e-12 {
			val[i], how[i] = w, mark
		}
	}
}

// segment is the worth of the best segment of length as[ai] in a strip of the
// given height, at place yi; item is -1 if it is a stack.
func (r *raster) segment(vals []float64, ai, yi int, height int64) (v float64, item int32) {
	if r.least > 0 && r.along && r.as[ai] < r.least {
		item = -2
		for k := r.first[ai]; k < r.first[ai+1]; k++ { // no rips here: it must fit exactly
			if it := &r.items[k]; it.b == height && vals[it.kind] > v {
				v, item = vals[it.kind], int32(k)
			}
		}
		return v, item
	}
	if r.least > 0 && !r.along && height < r.least && r.as[ai] != r.strip {
		return 0, -2
	}
	return r.stack[ai][yi], -1
}

// fillRow fills the table of one strip.
func (r *raster) fillRow(vals []float64, yi int, height int64) float64 {
	clear(r.row)
	for i := range r.rowHow {
		r.rowHow[i] = hereBefore
	}
	most := 0.0
	for ai := range r.as {
		if v, _ := r.segment(vals, ai, yi, height); v > most+1e-12 {
			most = v
			carry(r.row, r.rowHow, r.xs, r.as[ai], v, int32(ai))
		}
	}
	for i := 1; i < len(r.row); i++ {
		if r.row[i-1] > r.row[i] {
			r.row[i], r.rowHow[i] = r.row[i-1], hereBefore
		}
	}
	return r.row[len(r.row)-1]
}

// placeOf is the last place at or below v.
func placeOf(at []int64, v int64) int {
	return sort.Search(len(at), func(i int) bool { return at[i] > v }) - 1
}

// best is the pattern of most worth.
func (r *raster) best(vals []float64) (*sheetPattern, float64) {
	r.stacks(vals)
	sum := make([]float64, len(r.ys))
	how := make([]int32, len(r.ys))
	for i := range how {
		how[i] = hereBefore
	}
	for h, y := range r.heights {
		r.worth[h] = r.fillRow(vals, placeOf(r.ys, y), y)
		if r.worth[h] > 0 {
			carry(sum, how, r.ys, y, r.worth[h], int32(h))
		}
	}
	last := len(r.ys) - 1
	for i := 1; i <= last; i++ {
		if sum[i-1] > sum[i] {
			sum[i], how[i] = sum[i-1], hereBefore
		}
	}
	p := &sheetPattern{sheet: r.sheet, r: r}
	for i := last; i > 0; {
		h := how[i]
		if h < 0 {
			i--
			continue
		}
		p.strips = append(p.strips, r.stripBack(vals, r.heights[h], len(r.xs)-1))
		i = placeOf(r.ys, r.ys[i]-r.heights[h])
	}
	return p, sum[last]
}

// stripBack is the best strip of a height and the length xs[to].
func (r *raster) stripBack(vals []float64, height int64, to int) stripCut {
	yi := placeOf(r.ys, height)
	r.fillRow(vals, yi, height)
	s := stripCut{height: height}
	for i := to; i > 0; {
		ai := r.rowHow[i]
		if ai < 0 {
			i--
			continue
		}
		g := segCut{a: r.as[ai]}
		if _, item := r.segment(vals, int(ai), yi, height); item >= 0 {
			g.items = []int32{item}
		} else {
			g.items = r.stackBack(int(ai), yi)
		}
		s.segs = append(s.segs, g)
		i = placeOf(r.xs, r.xs[i]-r.as[ai])
	}
	return s
}

// stackBack is the best stack of a segment.
func (r *raster) stackBack(ai, yi int) (items []int32) {
	how := r.how
	for yi > 0 {
		switch k := how[ai][yi]; k {
		case hereBefore:
			yi--
		case hereShorter:
			ai--
			how = r.howL
		default:
			items = append(items, k)
			yi = placeOf(r.ys, r.ys[yi]-r.items[k].b)
		}
	}
	return items
}
