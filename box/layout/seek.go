package layout

import (
	"math"
)

// The numbers of places tried when a piece looks for a better one.
const (
	wideSamples   = 40
	nearSamples   = 16
	cornerSamples = 40 // where it would touch a corner of a neighbour
	descents      = 3
)

type place struct {
	shape, bin int32
	x, y       float64
	v          float64
}

// seek finds a place of less overlap for piece i and moves it there.
func (f *field) seek(i int32) bool {
	p := f.spots[i]
	now := f.overlap(i, p.shape, p.bin, p.x, p.y, inf)
	if now == 0 {
		return false
	}
	var top [descents]place
	n := 0
	keep := func(q place) {
		k := n
		if n < descents {
			n++
		} else if q.v >= top[descents-1].v {
			return
		} else {
			k = descents - 1
		}
		for k > 0 && top[k-1].v > q.v {
			top[k] = top[k-1]
			k--
		}
		top[k] = q
	}
	limit := func() float64 {
		if n < descents {
			return inf
		}
		return top[descents-1].v
	}
	keep(place{p.shape, p.bin, p.x, p.y, now})
	for k := 0; k < wideSamples; k++ {
		b := int32(0)
		if len(f.bins) > 1 {
			b = int32(f.rng.n(len(f.bins)))
		}
		ch := f.choices[p.kind][f.bins[b].stock]
		if len(ch) == 0 {
			continue
		}
		s := ch[0]
		if len(ch) > 1 {
			s = ch[f.rng.n(len(ch))]
		}
		x0, y0, x1, y1, ok := f.room(s, b)
		if !ok {
			continue
		}
		x, y := x0+float64((x1-x0)*f.rng.f()), y0+float64((y1-y0)*f.rng.f())
		if v := f.overlap(i, s, b, x, y, limit()); v < limit() {
			keep(place{s, b, x, y, v})
		}
	}
	sh := f.shapes[p.shape]
	rx, ry := float64(0.25*(sh.x1-sh.x0)), float64(0.25*(sh.y1-sh.y0))
	ch := f.choices[p.kind][f.bins[p.bin].stock]
	for k := 0; k < nearSamples; k++ {
		s := p.shape
		if len(ch) > 1 {
			s = ch[f.rng.n(len(ch))]
		}
		x0, y0, x1, y1, ok := f.room(s, p.bin)
		if !ok {
			continue
		}
		t := f.shapes[s] // about the same middle
		x := p.x + (sh.x0+sh.x1)/2 - (t.x0+t.x1)/2 + float64(rx*(2*f.rng.f()-1))
		y := p.y + (sh.y0+sh.y1)/2 - (t.y0+t.y1)/2 + float64(ry*(2*f.rng.f()-1))
		x, y = min(max(x, x0), x1), min(max(y, y0), y1)
		if v := f.overlap(i, s, p.bin, x, y, limit()); v < limit() {
			keep(place{s, p.bin, x, y, v})
		}
	}
	for k := 0; k < cornerSamples; k++ {
		b := p.bin
		if len(f.bins) > 1 {
			b = int32(f.rng.n(len(f.bins)))
		}
		ch := f.choices[p.kind][f.bins[b].stock]
		m := f.members[b]
		if len(ch) == 0 || len(m) == 0 {
			continue
		}
		s := ch[f.rng.n(len(ch))]
		j := m[f.rng.n(len(m))]
		x0, y0, x1, y1, ok := f.room(s, b)
		if j == i || !ok {
			continue
		}
		o := &f.spots[j]
		nf := f.get(o.shape, s)
		if len(nf.corners) == 0 {
			continue
		}
		c := nf.corners[f.rng.n(len(nf.corners))]
		x, y := o.x+c.X, o.y+c.Y
		if x < x0-1e-9 || x > x1+1e-9 || y < y0-1e-9 || y > y1+1e-9 {
			continue
		}
		x, y = min(max(x, x0), x1), min(max(y, y0), y1)
		if v := f.overlap(i, s, b, x, y, limit()); v < limit() {
			keep(place{s, b, x, y, v})
		}
	}
	best := place{v: inf}
	for k := 0; k < n; k++ {
		if q := f.descend(i, top[k]); q.v < best.v {
			best = q
			if q.v == 0 {
				break
			}
		}
	}
	if best.v < now || best.v == now && (best.x != p.x || best.y != p.y) {
		f.move(i, best.shape, best.bin, best.x, best.y)
		return true
	}
	return false
}

// descend moves a place downhill: along the axes and diagonals with steps that
// grow when they help and shrink when they do not, then straight out of the
// deepest overlap.
func (f *field) descend(i int32, q place) place {
	x0, y0, x1, y1, ok := f.room(q.shape, q.bin)
	if !ok {
		return q
	}
	sh := f.shapes[q.shape]
	size := math.Min(sh.x1-sh.x0, sh.y1-sh.y0)
	step := float64(0.08 * size)
	least := float64(1e-3 * size)
	for step > least && q.v > 0 {
		r := f.rng.next()
		dx, dy := step, 0.0
		switch r & 3 {
		case 1:
			dx, dy = 0, step
		case 2:
			dx, dy = step, step
		case 3:
			dx, dy = step, -step
		}
		if r&4 != 0 {
			dx, dy = -dx, -dy
		}
		better := false
		for k := 0; k < 2; k++ {
			x, y := min(max(q.x+dx, x0), x1), min(max(q.y+dy, y0), y1)
			if x == q.x && y == q.y {
				dx, dy = -dx, -dy
				continue
			}
			if v := f.overlap(i, q.shape, q.bin, x, y, q.v); v < q.v {
				q.x, q.y, q.v = x, y, v
				better = true
				break
			}
			dx, dy = -dx, -dy
		}
		if better {
			step = float64(step * 1.15)
		} else {
			step = float64(step * 0.6)
		}
	}
	for k := 0; k < 6 && q.v > 0; k++ {
		dx, dy := f.push(i, &q)
		if dx == 0 && dy == 0 {
			break
		}
		x, y := min(max(q.x+dx, x0), x1), min(max(q.y+dy, y0), y1)
		v := f.overlap(i, q.shape, q.bin, x, y, q.v)
		if v >= q.v {
			break
		}
		q.x, q.y, q.v = x, y, v
	}
	return q
}

// push is the move that clears the worst overlap of a place.
func (f *field) push(i int32, q *place) (dx, dy float64) {
	n := len(f.spots)
	worst := 0.0
	var nf *nofit
	var rx, ry float64
	for _, j := range f.members[q.bin] {
		if j == i {
			continue
		}
		o := &f.spots[j]
		g := f.get(o.shape, q.shape)
		x, y := q.x-o.x, q.y-o.y
		if x <= g.x0 || x >= g.x1 || y <= g.y0 || y >= g.y1 {
			continue
		}
		if d := float64(g.depth(x, y) * f.weight[int(i)*n+int(j)]); d > worst {
			worst, nf, rx, ry = d, g, x, y
		}
	}
	if nf == nil {
		return 0, 0
	}
	return nf.away(rx, ry)
}
