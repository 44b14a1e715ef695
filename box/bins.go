package box

import (
	"math"
	"slices"

	"holt.example/box/outline"
)

// bins sorts boxes into squares of a grid, so that neighbours are found among
// thousands in a few steps each.
type bins struct {
	boxes  []outline.Box
	x0, y0 float64
	step   float64
	nx, ny int
	cells  [][]int32
	seen   []int32 // by box: the query that met it last
	query  int32
	hits   []int
}

// boxes are the extents of the features of a part.
func (p *part) boxes() []outline.Box {
	bs := make([]outline.Box, len(p.feats))
	for i := range p.feats {
		bs[i] = p.feats[i].outline.Extents()
	}
	return bs
}

func newBins(boxes []outline.Box) *bins {
	b := &bins{boxes: boxes, seen: make([]int32, len(boxes)), nx: 1, ny: 1, step: 1}
	if len(boxes) == 0 {
		b.cells = make([][]int32, 1)
		return b
	}
	all := boxes[0]
	for _, x := range boxes {
		all = all.Join(x)
	}
	// About one box a square, and no more squares than 512 either way.
	area := all.Width() * all.Height()
	b.step = math.Max(math.Sqrt(area/float64(len(boxes))), math.Max(all.Width(), all.Height())/512)
	if !(b.step > 1e-3) {
		b.step = 1e-3
	}
	b.x0, b.y0 = all.Min.X, all.Min.Y
	b.nx, b.ny = min(int(all.Width()/b.step), 512)+1, min(int(all.Height()/b.step), 512)+1
	b.cells = make([][]int32, b.nx*b.ny)
	for i, x := range boxes {
		b.each(x, func(c int) { b.cells[c] = append(b.cells[c], int32(i)) })
	}
	return b
}

func (b *bins) each(x outline.Box, do func(c int)) {
	at := func(v float64, n int) int { return int(math.Max(0, math.Min(math.Floor(v/b.step), float64(n-1)))) }
	i0, i1 := at(x.Min.X-b.x0, b.nx), at(x.Max.X-b.x0, b.nx)
	j0, j1 := at(x.Min.Y-b.y0, b.ny), at(x.Max.Y-b.y0, b.ny)
	for j := j0; j <= j1; j++ {
		for i := i0; i <= i1; i++ {
			do(j*b.nx + i)
		}
	}
}

// near calls do for every box that overlaps x, in their order.
func (b *bins) near(x outline.Box, do func(k int)) {
	b.query++
	b.hits = b.hits[:0]
	b.each(x, func(c int) {
		for _, k := range b.cells[c] {
			if b.seen[k] != b.query {
				b.seen[k] = b.query
				if !apart(b.boxes[k], x, 0) {
					b.hits = append(b.hits, int(k))
				}
			}
		}
	})
	hits := b.hits
	slices.Sort(hits)
	for _, k := range hits {
		do(k)
	}
}
