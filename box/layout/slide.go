package layout

import (
	"math"
	"sort"
)

// slideAll moves everything in a bin to the left and to the bottom as far as
// it goes, the leftmost first, until little moves. A clean layout stays clean.
func (f *field) slideAll(b int32) {
	order := append([]int32(nil), f.members[b]...)
	for round := 0; round < 20; round++ {
		moved := 0.0
		sort.SliceStable(order, func(i, j int) bool {
			p, q := &f.spots[order[i]], &f.spots[order[j]]
			return p.x+f.shapes[p.shape].x0 < q.x+f.shapes[q.shape].x0
		})
		for _, i := range order {
			p := &f.spots[i]
			if p.fixed {
				continue
			}
			x0, y0, _, _, ok := f.room(p.shape, b)
			if !ok {
				continue
			}
			if d := f.slide(i, p.x-x0, -1, 0); d > 0 {
				p.x -= d
				moved += d
			}
			if d := f.slide(i, p.y-y0, 0, -1); d > 0 {
				p.y -= d
			}
		}
		if moved < 1e-6*(f.bins[b].x1-f.bins[b].x0) {
			return
		}
	}
}

// slide is how far piece i can move in a direction along an axis, most at
// most, before it touches another.
func (f *field) slide(i int32, most, ux, uy float64) float64 {
	if most <= 0 {
		return 0
	}
	p := &f.spots[i]
	for _, j := range f.members[p.bin] {
		if j == i {
			continue
		}
		o := &f.spots[j]
		nf := f.get(o.shape, p.shape)
		x, y := p.x-o.x, p.y-o.y
		if ux != 0 && (y <= nf.y0 || y >= nf.y1 || x <= nf.x0 || x-most >= nf.x1) {
			continue
		}
		if uy != 0 && (x <= nf.x0 || x >= nf.x1 || y <= nf.y0 || y-most >= nf.y1) {
			continue
		}
		for k := 0; k+1 < len(nf.first); k++ {
			in, out := math.Inf(-1), math.Inf(1) // the way along which it lies inside
			for _, s := range nf.sides[nf.first[k]:nf.first[k+1]] {
				gap := s.c - float64(s.nx*x) - float64(s.ny*y) // positive inside
				v := float64(s.nx*ux) + float64(s.ny*uy)       // gap shrinks by v t
				switch {
				case v > 1e-12:
					out = math.Min(out, gap/v)
				case v < -1e-12:
					in = math.Max(in, gap/v)
				case gap <= touch/2:
					in, out = 1, 0
				}
				if in >= out {
					break
				}
			}
			if out-in > 1e-9 && out > touch*2 {
				most = math.Min(most, math.Max(0, in))
			}
		}
		if most <= 0 {
			return 0
		}
	}
	x, y := p.x+float64(ux*most), p.y+float64(uy*most)
	if f.blockedBut(i, x, y) {
		return 0
	}
	return most
}

// blockedBut says whether piece i would overlap anything at x, y.
func (f *field) blockedBut(i int32, x, y float64) bool {
	p := &f.spots[i]
	for _, j := range f.members[p.bin] {
		if j == i {
			continue
		}
		o := &f.spots[j]
		if f.get(o.shape, p.shape).depth(x-o.x, y-o.y) > 0 {
			return true
		}
	}
	return false
}
