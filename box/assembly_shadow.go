package box

import (
	"math"
	"slices"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// shadowGap is the width, in mm, above which shadows overlap: a thousand times
// what a plane may be off over the largest parts.
const shadowGap = 1e-4

// roundGap is the same where round cuts count, which are facets here.
const roundGap = 0.05

// lump is a convex piece of a part.
type lump struct {
	node   int // of the assembler
	gap    float64
	verts  []solid.Vec
	planes []solid.Plane
}

func newLump(node int, gap float64, c solid.Convex) lump {
	l := lump{node: node, gap: gap}
	for i := range c.Faces {
		f := &c.Faces[i]
		l.planes = append(l.planes, solid.Plane{N: f.N, D: f.N.Dot(f.Loop[0])})
		for _, v := range f.Loop {
			if !slices.Contains(l.verts, v) {
				l.verts = append(l.verts, v)
			}
		}
	}
	return l
}

// silhouette is what a lump covers seen along a direction.
type silhouette struct {
	hull   []outline.Point // anticlockwise
	lo, hi outline.Point
	lump   *lump
}

// sight looks along a direction: d with u and v square to it.
type sight struct{ u, v, d solid.Vec }

func newSight(d solid.Vec) sight {
	u := solid.Vec{X: 1}
	if math.Abs(d.X) > 0.6 {
		u = solid.Vec{Y: 1}
	}
	u = u.Sub(d.Scale(u.Dot(d))).Unit()
	return sight{u, d.Cross(u), d}
}

func (g sight) shadow(l *lump) silhouette {
	ps := make([]outline.Point, len(l.verts), 2*len(l.verts)+2)
	for i, v := range l.verts {
		ps[i] = outline.Point{X: g.u.Dot(v), Y: g.v.Dot(v)}
	}
	slices.SortFunc(ps, func(a, b outline.Point) int {
		switch {
		case a.X < b.X || a.X == b.X && a.Y < b.Y:
			return -1
		case a == b:
			return 0
		}
		return 1
	})
	s := silhouette{lump: l, lo: outline.Point{X: ps[0].X, Y: math.Inf(1)}, hi: outline.Point{X: ps[len(ps)-1].X, Y: math.Inf(-1)}}
	for _, p := range ps {
		s.lo.Y, s.hi.Y = math.Min(s.lo.Y, p.Y), math.Max(s.hi.Y, p.Y)
	}
	h := ps[len(ps):] // the other half of the memory
	s.hull = make([]outline.Point, 0, len(ps))
	chain := func(p outline.Point, from int) {
		for len(h) > from+1 && turns2(h[len(h)-2], h[len(h)-1], p) <= 0 {
			h = h[:len(h)-1]
		}
		h = append(h, p)
	}
	for _, p := range ps {
		chain(p, 0)
	}
	low := len(h) - 1
	for i := len(ps) - 2; i >= 0; i-- {
		chain(ps[i], low)
	}
	// Corners that are one but for rounding would give sides of any direction.
	for _, p := range h[:len(h)-1] {
		if n := len(s.hull); n == 0 || !near2(s.hull[n-1], p) {
			s.hull = append(s.hull, p)
		}
	}
	for n := len(s.hull); n > 1 && near2(s.hull[0], s.hull[n-1]); n-- {
		s.hull = s.hull[:n-1]
	}
	return s
}

func near2(p, q outline.Point) bool {
	return math.Abs(p.X-q.X) < solid.SideTest && math.Abs(p.Y-q.Y) < solid.SideTest
}

// turns2 is twice the area of the triangle a b c.
func turns2(a, b, c outline.Point) float64 {
	return float64((b.X-a.X)*(c.Y-a.Y)) - float64((c.X-a.X)*(b.Y-a.Y))
}

// parting reports whether a line along a side of a keeps b off, or lets it
// overlap by no more than gap. The support of a counts, not the side, so that
// a side whose direction is off does no harm.
func parting(a, b []outline.Point, gap float64) bool {
	for i, p := range a {
		q := a[(i+1)%len(a)]
		nx, ny := q.Y-p.Y, p.X-q.X
		l := math.Sqrt(float64(nx*nx) + float64(ny*ny))
		nx, ny = nx/l, ny/l
		top, low := math.Inf(-1), math.Inf(1)
		for _, r := range a {
			top = math.Max(top, float64(nx*r.X)+float64(ny*r.Y))
		}
		for _, r := range b {
			low = math.Min(low, float64(nx*r.X)+float64(ny*r.Y))
		}
		if low > top-gap {
			return true
		}
	}
	return false
}

// common is a place inside both shadows, if they overlap.
func common(a, b *silhouette) (outline.Point, bool) {
	gap := math.Max(a.lump.gap, b.lump.gap)
	if a.lo.X > b.hi.X-gap || b.lo.X > a.hi.X-gap || a.lo.Y > b.hi.Y-gap || b.lo.Y > a.hi.Y-gap ||
		parting(a.hull, b.hull, gap) || parting(b.hull, a.hull, gap) {
		return outline.Point{}, false
	}
	var bufs [2][48]outline.Point
	cut := append(bufs[0][:0], a.hull...)
	for i, p := range b.hull {
		q := b.hull[(i+1)%len(b.hull)]
		next := bufs[(i+1)%2][:0]
		for k, r := range cut {
			s := cut[(k+1)%len(cut)]
			sr, ss := turns2(p, q, r), turns2(p, q, s)
			if sr >= 0 {
				next = append(next, r)
			}
			if sr > 0 && ss < 0 || sr < 0 && ss > 0 {
				t := sr / (sr - ss)
				next = append(next, outline.Point{X: r.X + float64(t*(s.X-r.X)), Y: r.Y + float64(t*(s.Y-r.Y))})
			}
		}
		if cut = next; len(cut) == 0 {
			return outline.Point{}, false
		}
	}
	var m outline.Point
	for _, p := range cut {
		m.X, m.Y = m.X+p.X/float64(len(cut)), m.Y+p.Y/float64(len(cut))
	}
	return m, true
}

// depth is the middle of the lump along the line of sight at a place.
func (g sight) depth(l *lump, at outline.Point) float64 {
	o := g.u.Scale(at.X).Add(g.v.Scale(at.Y))
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, h := range l.planes {
		k, c := h.N.Dot(g.d), -h.At(o)
		switch {
		case k > 1e-12:
			hi = math.Min(hi, c/k)
		case k < -1e-12:
			lo = math.Max(lo, c/k)
		}
	}
	return (lo + hi) / 2
}

// graph says which nodes stand in the way of which along d: ahead[i] of those
// that i runs into when it moves along d, behind[i] of those when it moves the
// other way. Convex lumps that share no place keep one order along all lines
// that meet both, so that one line decides.
func (a *assembler) graph(d solid.Vec) (ahead, behind []bits) {
	n := len(a.nodes)
	ahead, behind = newBits(n), newBits(n)
	g := newSight(d)
	shadows := make([]silhouette, len(a.lumps))
	order := make([]int, len(a.lumps))
	for i := range a.lumps {
		shadows[i], order[i] = g.shadow(&a.lumps[i]), i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		switch {
		case shadows[i].lo.X < shadows[j].lo.X:
			return -1
		case shadows[i].lo.X > shadows[j].lo.X:
			return 1
		}
		return 0
	})
	for x, i := range order {
		for _, j := range order[x+1:] {
			p, q := &shadows[i], &shadows[j]
			if q.lo.X > p.hi.X {
				break
			}
			m, k := p.lump.node, q.lump.node
			if m == k || ahead[m].has(k) && behind[m].has(k) {
				continue
			}
			at, ok := common(p, q)
			if !ok {
				continue
			}
			if g.depth(p.lump, at) > g.depth(q.lump, at) {
				m, k = k, m
			}
			ahead[m].set(k)
			behind[k].set(m)
		}
	}
	return ahead, behind
}
