package box

import (
	"math"

	"holt.example/box/solid"
)

// How far, in mm, a moving part may enter another before it strikes: above the
// roundings of planes and corners, and small enough that the angle is right to a
// thousandth of a degree.
const strikeDepth = 1e-5

// looks bounds the work on one pair of pieces; beyond it the rest is sampled.
const looks = 20000

// pair is two convex pieces, the first of which moves.
type pair struct {
	m     motion
	a, b  []solid.Vec // corners
	faces []halfTrack // of both: heights of the other's corners
	ea    []solid.Vec // directions of edges
	eb    []solid.Vec
	step  float64 // below which a motion is no longer divided
	left  int
}

// halfTrack is a face of one piece and the heights of the other's corners over
// it as they move.
type halfTrack struct {
	m  motion
	d  float64
	ts []track
}

func corners(c solid.Convex) (ps []solid.Vec, es []solid.Vec) {
	seen := map[solid.Vec]bool{}
	for _, f := range c.Faces {
		for k, p := range f.Loop {
			if !seen[p] {
				seen[p] = true
				ps = append(ps, p)
			}
			e := f.Loop[(k+1)%len(f.Loop)].Sub(p).Unit()
			fresh := e != (solid.Vec{})
			for _, o := range es {
				fresh = fresh && o.Cross(e).Len() > 1e-9
			}
			if fresh {
				es = append(es, e)
			}
		}
	}
	return ps, es
}

func newPair(m motion, a, b solid.Convex) *pair {
	q := &pair{m: m, left: looks}
	q.a, q.ea = corners(a)
	q.b, q.eb = corners(b)
	half := func(m motion, c solid.Convex, ps []solid.Vec) {
		for _, f := range c.Faces {
			h := halfTrack{m: m, d: f.N.Dot(f.Loop[0])}
			for _, p := range ps {
				h.ts = append(h.ts, m.along(f.N, p))
			}
			q.faces = append(q.faces, h)
		}
	}
	half(m, b, q.a)
	half(m.back(), a, q.b) // seen from the moving piece the other one moves back
	far := 1.0
	if m.turn {
		far = 0
		for _, p := range q.a {
			r := p.Sub(m.o)
			far = math.Max(far, r.Sub(m.d.Scale(m.d.Dot(r))).Len())
		}
		far = math.Max(far, 1) * math.Pi / 180
	}
	q.step = strikeDepth / far / 2
	return q
}

// apart reports whether the pieces stay apart, but for strikeDepth, all the way
// from lo to hi: whether one plane parts them throughout. It may say no where
// they do stay apart, on a long way.
func (q *pair) apart(lo, hi float64) bool {
	for i := range q.faces {
		h := &q.faces[i]
		clear := true
		for _, t := range h.ts {
			if t.least(h.m, lo, hi)-h.d < -strikeDepth {
				clear = false
				break
			}
		}
		if clear {
			if i > 0 {
				q.faces[0], q.faces[i] = q.faces[i], q.faces[0] // the next look begins with it
			}
			return true
		}
	}
	// Planes along one edge of each: the best in the middle of the way.
	mid := (lo + hi) / 2
	best, dir := math.Inf(-1), solid.Vec{}
	at := make([]solid.Vec, len(q.a))
	for i, p := range q.a {
		at[i] = q.m.point(p, mid)
	}
	for _, e := range q.ea {
		e = q.m.vec(e, mid)
		for _, f := range q.eb {
			n := e.Cross(f)
			if n.Len() < 1e-6 {
				continue
			}
			n = n.Unit()
			alo, ahi := spanAlong(at, n)
			blo, bhi := spanAlong(q.b, n)
			if g := alo - bhi; g > best {
				best, dir = g, n
			}
			if g := blo - ahi; g > best {
				best, dir = g, n.Scale(-1)
			}
		}
	}
	if best < -strikeDepth {
		return false
	}
	_, top := spanAlong(q.b, dir)
	for _, p := range q.a {
		if q.m.along(dir, p).least(q.m, lo, hi)-top < -strikeDepth {
			return false
		}
	}
	return true
}

func spanAlong(ps []solid.Vec, n solid.Vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range ps {
		x := n.Dot(p)
		lo, hi = math.Min(lo, x), math.Max(hi, x)
	}
	return lo, hi
}

// first is the least place from lo to hi where the pieces strike. What it passes
// over is proved clear: a whole way by one plane, or both its halves.
func (q *pair) first(lo, hi float64) (float64, bool) {
	if q.left--; q.left < 0 || q.apart(lo, hi) {
		return 0, false
	}
	if hi-lo <= q.step {
		return lo, true
	}
	mid := lo + (hi-lo)/2
	if x, hit := q.first(lo, mid); hit {
		return x, true
	}
	return q.first(mid, hi)
}

// strike is where a moving body first strikes another, from 0 to most. Prisms
// take no part in the search; where one of the bodies has any, what it finds is
// held against the exact volume that both fill.
func strike(m motion, a, b solid.Body, most float64) (float64, bool) {
	best, hit := most, false
	spent := false
	pb := b.Pieces()
	for _, c := range a.Pieces() {
		for _, d := range pb {
			q := newPair(m, c, d)
			if x, ok := q.first(0, best); ok && (x < best || !hit) {
				best, hit = x, true
			}
			spent = spent || q.left < 0
		}
	}
	if !hit && !spent {
		return 0, false
	}
	if hit && len(a.Prisms)+len(b.Prisms) == 0 {
		return best, true
	}
	// By steps of half a degree or a millimetre.
	step := 0.5
	if !m.turn {
		step = 1
	}
	from := best
	if !hit {
		from = 0
	}
	fills := func(x float64) bool { return solid.Overlap(m.body(a, x), b) > crumb }
	for k := 1; ; k++ {
		x := math.Min(from+float64(float64(k)*step), most)
		if fills(x) {
			if hit && k == 1 && from > 0 {
				return from, true
			}
			lo := math.Max(x-step, from)
			for range 30 {
				if mid := (lo + x) / 2; fills(mid) {
					x = mid
				} else {
					lo = mid
				}
			}
			return x, true
		}
		if x >= most {
			return 0, false
		}
	}
}
