package solid

import (
	"math"
	"slices"
)

// relate finds which columns touch which, and which lie inside the outline of
// another. Columns that touch, or might, are marked slow.
func relate(cols []column) {
	n := len(cols)
	for i := range cols {
		cols[i].group = int32(i)
	}
	if n < 2 {
		return
	}
	// Sweep along the axis in which the columns are spread most.
	axis := spread(cols)
	order := make([]int32, 0, n)
	for i := range cols {
		if !cols[i].empty() {
			order = append(order, int32(i))
		}
	}
	low := func(i int32) float64 { return coord(cols[i].lo, axis) }
	slices.SortFunc(order, func(i, j int32) int {
		switch a, b := low(i), low(j); {
		case a < b:
			return -1
		case a > b:
			return 1
		}
		return int(i - j)
	})
	var active []int32
	for _, i := range order {
		keep := active[:0]
		a := &cols[i]
		for _, j := range active {
			b := &cols[j]
			if coord(b.hi, axis)+columnGap < low(i) {
				continue
			}
			keep = append(keep, j)
			if b.lo.X > a.hi.X+columnGap || a.lo.X > b.hi.X+columnGap ||
				b.lo.Y > a.hi.Y+columnGap || a.lo.Y > b.hi.Y+columnGap ||
				b.lo.Z > a.hi.Z+columnGap || a.lo.Z > b.hi.Z+columnGap {
				continue
			}
			if i < j {
				relatePair(cols, i, j)
			} else {
				relatePair(cols, j, i)
			}
		}
		active = append(keep, i)
	}
}

func coord(p Vec, axis int) float64 {
	switch axis {
	case 0:
		return p.X
	case 1:
		return p.Y
	}
	return p.Z
}

func spread(cols []column) int {
	best, axis := -1.0, 0
	for k := 0; k < 3; k++ {
		lo, hi := math.Inf(1), math.Inf(-1)
		for i := range cols {
			lo, hi = min(lo, coord(cols[i].lo, k)), max(hi, coord(cols[i].lo, k))
		}
		if hi-lo > best {
			best, axis = hi-lo, k
		}
	}
	return axis
}

func findGroup(cols []column, i int32) int32 {
	for cols[i].group != i {
		cols[i].group = cols[cols[i].group].group
		i = cols[i].group
	}
	return i
}

// relatePair looks at two columns whose bounds meet.
func relatePair(cols []column, i, j int32) {
	a, b := &cols[i], &cols[j]
	f := a.p.Frame
	apart, inside := false, 0
	if x := f.W.Cross(b.p.Frame.W); x.Dot(x) > 1e-20 {
		inside = bothSlow
	} else {
		sign := 1.0
		if f.W.Dot(b.p.Frame.W) < 0 {
			sign = -1
		}
		shift := f.W.Dot(b.p.Frame.O.Sub(f.O))
		lo, hi := float64(sign*b.wlo)+shift, float64(sign*b.whi)+shift
		if sign < 0 {
			lo, hi = hi, lo
		}
		if lo > a.whi+columnGap || hi < a.wlo-columnGap {
			return
		}
		apart, inside = outlinesMeet(project(a.foot, f), project(b.foot, f))
	}
	if apart {
		return
	}
	gi, gj := findGroup(cols, i), findGroup(cols, j)
	cols[max(gi, gj)].group = min(gi, gj)
	switch inside {
	case firstInside:
		a.covers = append(a.covers, j)
	case secondInside:
		b.covers = append(b.covers, i)
	default:
		a.slow, b.slow = true, true
	}
}

// How two outlines lie that are not apart.
const (
	bothSlow = iota
	firstInside
	secondInside
)

type flat struct{ x, y float64 }

func project(foot []Vec, f Frame) []flat {
	out := make([]flat, len(foot))
	for i, p := range foot {
		d := p.Sub(f.O)
		out[i] = flat{f.U.Dot(d), f.V.Dot(d)}
	}
	return out
}

func middle(p []flat) flat {
	lo, hi := p[0], p[0]
	for _, q := range p {
		lo, hi = flat{min(lo.x, q.x), min(lo.y, q.y)}, flat{max(hi.x, q.x), max(hi.y, q.y)}
	}
	return flat{(lo.x + hi.x) / 2, (lo.y + hi.y) / 2}
}

// outlinesMeet tells whether two outlines keep the clearance from each other,
// and if so whether one surrounds the other.
func outlinesMeet(a, b []flat) (apart bool, how int) {
	// Quick: a line square to that of the middles parts them.
	ca, cb := middle(a), middle(b)
	dx, dy := cb.x-ca.x, cb.y-ca.y
	if l := math.Hypot(dx, dy); l > 0 {
		dx, dy = dx/l, dy/l
		top, low := math.Inf(-1), math.Inf(1)
		for _, p := range a {
			top = max(top, float64(p.x*dx)+float64(p.y*dy))
		}
		for _, p := range b {
			low = min(low, float64(p.x*dx)+float64(p.y*dy))
		}
		if low > top+columnGap {
			return true, 0
		}
	}
	for i, p := range a {
		q := a[(i+1)%len(a)]
		x0, x1 := min(p.x, q.x)-columnGap, max(p.x, q.x)+columnGap
		y0, y1 := min(p.y, q.y)-columnGap, max(p.y, q.y)+columnGap
		for j, r := range b {
			s := b[(j+1)%len(b)]
			if max(r.x, s.x) < x0 || min(r.x, s.x) > x1 || max(r.y, s.y) < y0 || min(r.y, s.y) > y1 {
				continue
			}
			if segmentsNear(p, q, r, s, columnGap) {
				return false, bothSlow
			}
		}
	}
	if insidePolygon(a[0], b) {
		return false, firstInside
	}
	if insidePolygon(b[0], a) {
		return false, secondInside
	}
	return true, 0
}

func segmentsNear(p, q, r, s flat, gap float64) bool {
	side := func(a, b, c flat) float64 {
		return float64((b.x-a.x)*(c.y-a.y)) - float64((c.x-a.x)*(b.y-a.y))
	}
	if side(p, q, r)*side(p, q, s) < 0 && side(r, s, p)*side(r, s, q) < 0 {
		return true
	}
	to := func(a, b, c flat) float64 { // distance of c from the segment a b
		dx, dy := b.x-a.x, b.y-a.y
		t := float64((c.x-a.x)*dx) + float64((c.y-a.y)*dy)
		if l := float64(dx*dx) + float64(dy*dy); l > 0 {
			t = min(1, max(0, t/l))
		}
		return math.Hypot(c.x-a.x-float64(t*dx), c.y-a.y-float64(t*dy))
	}
	return min(to(p, q, r), to(p, q, s), to(r, s, p), to(r, s, q)) < gap
}

func insidePolygon(p flat, c []flat) bool {
	in := false
	for i, a := range c {
		b := c[(i+1)%len(c)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+float64((p.y-a.y)*(b.x-a.x))/(b.y-a.y) {
			in = !in
		}
	}
	return in
}
