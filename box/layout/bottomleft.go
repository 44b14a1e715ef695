package layout

import "math"

// lowest finds the place of a piece of this kind nearest to the left of a bin,
// then to the bottom, clear of everything there: one of the corners where it
// touches the bin or its neighbours.
func (f *field) lowest(kind int32, b int32) (place, bool) {
	best := place{v: inf}
	bestX, bestY := inf, inf
	const eps = 1e-7
	for _, s := range f.choices[kind][f.bins[b].stock] {
		x0, y0, x1, y1, ok := f.room(s, b)
		if !ok {
			continue
		}
		sh := f.shapes[s]
		try := func(x, y float64) {
			if x < x0-eps || x > x1+eps || y < y0-eps || y > y1+eps {
				return
			}
			x, y = min(max(x, x0), x1), min(max(y, y0), y1)
			fx, fy := x+sh.x1, y+sh.y0
			if fx > bestX+eps || fx > bestX-eps && fy >= bestY-eps {
				return
			}
			if f.blocked(s, b, x, y) {
				return
			}
			best = place{s, b, x, y, 0}
			bestX, bestY = fx, fy
		}
		try(x0, y0)
		try(x0, y1)
		for _, j := range f.members[b] {
			o := &f.spots[j]
			nf := f.get(o.shape, s)
			if o.x+nf.x0 > x1 || o.x+nf.x1 < x0 || o.y+nf.y0 > y1 || o.y+nf.y1 < y0 {
				continue
			}
			for _, c := range nf.corners {
				try(o.x+c.X, o.y+c.Y)
			}
			// where its outermost sides meet the sides of the bin
			f.meets(nf, o, x0, x1, y0, y1, try)
		}
	}
	return best, !math.IsInf(bestX, 1)
}

// meets tries the places where the sides of a no-fit piece cross the edges of
// the room.
func (f *field) meets(nf *nofit, o *spot, x0, x1, y0, y1 float64, try func(x, y float64)) {
	for i := range nf.sides {
		s := &nf.sides[i]
		if s.nx > 1e-9 { // faces right: a piece may stand to the right of it
			for _, y := range [2]float64{y0, y1} {
				try(o.x+(s.c-float64(s.ny*(y-o.y)))/s.nx, y)
			}
		}
		if math.Abs(s.ny) > 1e-9 {
			try(x0, o.y+(s.c-float64(s.nx*(x0-o.x)))/s.ny)
		}
	}
}

// blocked says whether a shape would touch anything in the bin.
func (f *field) blocked(s, b int32, x, y float64) bool {
	for _, j := range f.members[b] {
		o := &f.spots[j]
		nf := f.get(o.shape, s)
		dx, dy := x-o.x, y-o.y
		if dx <= nf.x0 || dx >= nf.x1 || dy <= nf.y0 || dy >= nf.y1 {
			continue
		}
		if nf.depth(dx, dy) > 0 {
			return true
		}
	}
	return false
}
