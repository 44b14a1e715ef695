package picture

import (
	"math"
	"sort"

	"holt.example/box/solid"
)

// piece is a length of an edge, wholly in sight or wholly hidden.
type piece struct {
	class Class
	owner int
	a, b  solid.Vec
}

// sliver is the length, in mm of the world, under which nothing of an edge
// shows between two things that hide it, or at its end: parts that touch do so
// to 1e-4, and an edge that passes through a plane at a slope of 1 in 10 is
// within flat of it for so long.
const sliver = 1e-2

// span is a range of an edge's parameter.
type span struct{ a, b float64 }

// pieces cuts every edge that a draughtsman would draw into what is in sight
// and, if unseen is asked for, what is not.
//
// The rule is exact for solids with planar faces, whatever their order in
// depth: a point of an edge is hidden if and only if it lies behind the plane
// of some face turned to the viewer, and inside that face on the screen. Both
// can change only where the edge passes the plane or crosses a rim of the face
// on the screen, so it is enough to ask the middle of each length between.
func (s *scene) pieces(unseen bool) []piece {
	var out []piece
	for _, e := range s.edges {
		fa, fb := s.faces[e.fa].front(), s.faces[e.fb].front()
		if e.bend == smooth && fa == fb {
			continue
		}
		class := Edge
		switch {
		case !fa && !fb:
			if unseen {
				out = append(out, piece{Unseen, e.owner, e.a, e.b})
			}
			continue
		case fa != fb:
			class = Contour
		}
		hidden := s.hidden(e.a, e.b)
		add := func(c Class, v span) {
			out = append(out, piece{c, e.owner, e.a.Lerp(e.b, v.a), e.a.Lerp(e.b, v.b)})
		}
		var flush []span
		if class == Contour {
			flush = s.flush(e)
		}
		for _, v := range without(span{0, 1}, hidden) {
			for _, w := range without(v, flush) {
				add(class, w)
			}
			for _, w := range flush {
				if w.a, w.b = math.Max(w.a, v.a), math.Min(w.b, v.b); w.a < w.b {
					add(Edge, w)
				}
			}
		}
		if unseen && e.bend != smooth {
			for _, h := range hidden {
				out = append(out, piece{Unseen, e.owner, e.a.Lerp(e.b, h.a), e.a.Lerp(e.b, h.b)})
			}
		}
	}
	return out
}

// hidden are the ranges of the segment that lie behind something, in order and
// apart.
func (s *scene) hidden(a, b solid.Vec) []span {
	qa, qb := s.ax.screen(a), s.ax.screen(b)
	lo, hi := lower(qa, qb), upper(qa, qb)
	s.seen.next(len(s.front))
	var out []span
	for c, e := s.index.span(lo.y, hi.y); c <= e; c++ {
		for _, i := range s.index.cell[c] {
			if !s.seen.first(i) {
				continue
			}
			f := s.faces[s.front[i]]
			if f.hi.x < lo.x || f.lo.x > hi.x || f.hi.y < lo.y || f.lo.y > hi.y {
				continue
			}
			out = f.hides(out, a, b, qa, qb)
			if n := len(out); n > 0 && out[n-1] == (span{0, 1}) {
				return out[n-1:]
			}
		}
	}
	gap := sliver / b.Sub(a).Len()
	return toEnds(union(out, gap), gap)
}

// toEnds lets ranges that end within gap of 0 or 1 end there.
func toEnds(s []span, gap float64) []span {
	if n := len(s); n > 0 {
		if s[0].a < gap {
			s[0].a = 0
		}
		if s[n-1].b > 1-gap {
			s[n-1].b = 1
		}
	}
	return s
}

// hides appends the ranges of the segment that lie behind the face.
func (f *face) hides(out []span, a, b solid.Vec, qa, qb pt) []span {
	// The range behind the plane.
	ha, hb := f.height(a)+flat, f.height(b)+flat
	r := span{0, 1}
	switch {
	case ha >= 0 && hb >= 0:
		return out
	case ha >= 0:
		r.a = ha / (ha - hb)
	case hb >= 0:
		r.b = ha / (ha - hb)
	}
	return f.inside(out, r, qa, qb)
}

// inside appends those ranges within r at which a segment on the screen is
// inside the face.
func (f *face) inside(out []span, r span, qa, qb pt) []span {
	// The places where it crosses a rim.
	var buf [16]float64
	cuts := append(buf[:0], r.a)
	dx, dy := qb.x-qa.x, qb.y-qa.y
	cross := func(g seg) {
		sa := float64(dx*(g.a.y-qa.y)) - float64(dy*(g.a.x-qa.x))
		sb := float64(dx*(g.b.y-qa.y)) - float64(dy*(g.b.x-qa.x))
		if (sa > 0) == (sb > 0) {
			return
		}
		k := sa / (sa - sb)
		x, y := g.a.x+float64(k*(g.b.x-g.a.x)), g.a.y+float64(k*(g.b.y-g.a.y))
		t := (float64((x-qa.x)*dx) + float64((y-qa.y)*dy)) / (float64(dx*dx) + float64(dy*dy))
		if t > r.a && t < r.b {
			cuts = append(cuts, t)
		}
	}
	if f.rimBands == nil {
		for _, g := range f.rims {
			cross(g)
		}
	} else {
		// A rim in several bands is met several times: the same place twice
		// only makes an empty range.
		for c, e := f.rimBands.span(math.Min(qa.y, qb.y), math.Max(qa.y, qb.y)); c <= e; c++ {
			for _, i := range f.rimBands.cell[c] {
				cross(f.rims[i])
			}
		}
	}
	cuts = append(cuts, r.b)
	sort.Float64s(cuts)
	for i := 1; i < len(cuts); i++ {
		m := (cuts[i-1] + cuts[i]) / 2
		if cuts[i] > cuts[i-1] && f.covers(pt{qa.x + float64(m*dx), qa.y + float64(m*dy)}) {
			if n := len(out); n > 0 && i > 1 && out[n-1].b == cuts[i-1] {
				out[n-1].b = cuts[i]
			} else {
				out = append(out, span{cuts[i-1], cuts[i]})
			}
		}
	}
	return out
}

// flush are the ranges of a contour behind which the surface goes on, on
// another part that lies close: a joint, which a fine line shows, and not the
// end of what is seen. They are looked for on a line beside the edge.
func (s *scene) flush(e edge) []span {
	const beside = 0.3 // mm of the world: more than the play in a joint
	qa, qb := s.ax.screen(e.a), s.ax.screen(e.b)
	dx, dy := qb.x-qa.x, qb.y-qa.y
	n := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if n == 0 {
		return nil
	}
	// The first face of an edge is to its left, seen from outside.
	side := beside / n
	if s.faces[e.fa].front() {
		side = -side
	}
	ox, oy := -float64(side*dy), float64(side*dx)
	qa, qb = pt{qa.x + ox, qa.y + oy}, pt{qb.x + ox, qb.y + oy}
	lo, hi := lower(qa, qb), upper(qa, qb)
	s.seen.next(len(s.front))
	var out, part []span
	for c, last := s.index.span(lo.y, hi.y); c <= last; c++ {
		for _, i := range s.index.cell[c] {
			f := s.faces[s.front[i]]
			if !s.seen.first(i) || f.hi.x < lo.x || f.lo.x > hi.x || f.hi.y < lo.y || f.lo.y > hi.y {
				continue
			}
			part = f.inside(part[:0], span{0, 1}, qa, qb)
			for _, v := range part {
				m := (v.a + v.b) / 2
				p := s.on(f, pt{qa.x + float64(m*(qb.x-qa.x)), qa.y + float64(m*(qb.y-qa.y))})
				depth := s.ax.d.Dot(p) - s.ax.d.Dot(e.a.Lerp(e.b, m))
				if math.Abs(depth) < 0.5+beside/f.nd {
					out = append(out, v)
				}
			}
		}
	}
	// The line beside the edge may end before its corner or after.
	return toEnds(union(out, beside/n), 3*beside/n)
}

// covers reports whether a place on the screen is inside the face there: a ray
// to the right crosses its rims an odd number of times.
func (f *face) covers(q pt) bool {
	in := false
	test := func(g seg) {
		if (g.a.y > q.y) == (g.b.y > q.y) {
			return
		}
		side := float64((g.b.x-g.a.x)*(q.y-g.a.y)) - float64((g.b.y-g.a.y)*(q.x-g.a.x))
		if (side > 0) == (g.b.y > g.a.y) {
			in = !in
		}
	}
	if f.rimBands == nil {
		for _, g := range f.rims {
			test(g)
		}
		return in
	}
	// Each rim once: in the one band that holds the place.
	c, _ := f.rimBands.span(q.y, q.y)
	for _, i := range f.rimBands.cell[c] {
		test(f.rims[i])
	}
	return in
}

// behind reports whether a point of the world is hidden by some face.
func (s *scene) behind(p solid.Vec) bool {
	q := s.ax.screen(p)
	c, _ := s.index.span(q.y, q.y)
	for _, i := range s.index.cell[c] {
		f := s.faces[s.front[i]]
		if f.lo.x <= q.x && q.x <= f.hi.x && f.height(p) < -flat && f.covers(q) {
			return true
		}
	}
	return false
}

// union joins ranges that touch or are no more than gap apart.
func union(s []span, gap float64) []span {
	sort.Slice(s, func(i, j int) bool {
		if s[i].a != s[j].a {
			return s[i].a < s[j].a
		}
		return s[i].b < s[j].b
	})
	out := s[:0]
	for _, v := range s {
		if n := len(out); n > 0 && v.a <= out[n-1].b+gap {
			out[n-1].b = math.Max(out[n-1].b, v.b)
		} else {
			out = append(out, v)
		}
	}
	return out
}

// without is what is left of a range when others, in order, are taken away.
func without(all span, taken []span) []span {
	var out []span
	at := all.a
	for _, v := range taken {
		if v.b <= at {
			continue
		}
		if v.a >= all.b {
			break
		}
		if v.a > at {
			out = append(out, span{at, v.a})
		}
		at = v.b
	}
	if at < all.b {
		out = append(out, span{at, all.b})
	}
	return out
}
