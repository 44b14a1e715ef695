package outline

import (
	"errors"
	"math"
)

// Faults of Union, Intersect and Subtract, beside the *Fault of an operand
// whose numbers are no good.
var (
	// ErrNotRegion says that an operand is not a region: it crosses itself, its
	// contours overlap, or a hole stands outside the material.
	ErrNotRegion = errors.New("outline: operand is not a region of anticlockwise contours and clockwise holes")
	// ErrUncertain says that the boundaries run so close to each other that the
	// result could not be proved; nothing is returned then.
	ErrUncertain = errors.New("outline: boundaries too close to tell apart")
)

// Union is what lies in a or in b, arcs kept. Boundaries closer than SideTest
// count as one; contours that share an edge are joined. The result is made of
// contours that do not cross; they may touch at single points. Its area is
// checked against those of the operands; if that fails, or an operand is not a
// region, it returns an error and no region.
func Union(a, b Region) (Region, error) {
	return combine(a, b, func(x, y bool) bool { return x || y })
}

// Intersect is what lies in a and in b; see Union.
func Intersect(a, b Region) (Region, error) {
	return combine(a, b, func(x, y bool) bool { return x && y })
}

// Subtract is what lies in a and not in b; see Union.
func Subtract(a, b Region) (Region, error) {
	return combine(a, b, func(x, y bool) bool { return x && !y })
}

func (r Region) numbers() *Fault {
	for i, c := range r {
		if f := c.numbers(); f != nil && f.Kind != ZeroLength && f.Kind != TooFewVertices {
			f.Contour, f.Other = i, i
			return f
		}
	}
	return nil
}

func combine(a, b Region, op func(x, y bool) bool) (Region, error) {
	for _, r := range [2]Region{a, b} {
		if f := r.numbers(); f != nil {
			return nil, f
		}
	}
	sa, sb := a.sides(), b.sides()
	areaA, areaB := a.Area(), b.Area()
	length := a.Length() + b.Length()
	// Should places within SideTest not close up, a wider weld may: three
	// boundaries that pass within a hair of each other need it.
	err := ErrUncertain
	for _, eps := range [3]float64{SideTest, 10 * SideTest, 100 * SideTest} {
		g := arrange(sa, sb, eps)
		if !g.balanced() {
			continue
		}
		g.wind()
		if !g.sound() {
			err = ErrNotRegion
			continue
		}
		// Welding moves boundaries by eps at most.
		slack := float64(4*eps*length) + 1e-9
		both, either, want := 0.0, 0.0, 0.0
		for i := range g.pieces {
			p := &g.pieces[i]
			k := p.s.under()
			both += float64(k * p.step(func(x, y bool) bool { return x && y }))
			either += float64(k * p.step(func(x, y bool) bool { return x || y }))
			want += float64(k * p.step(op))
		}
		if !(math.Abs(both+either-areaA-areaB) <= slack && both >= -slack && both <= math.Min(areaA, areaB)+slack) {
			err = ErrUncertain
			continue
		}
		out := g.trace(op, eps)
		if !(math.Abs(out.Area()-want) <= slack) {
			err = ErrUncertain
			continue
		}
		return out, nil
	}
	return nil, err
}

// under is the signed area between the segment and the origin.
func (s seg) under() float64 { return cross(s.a, s.b)/2 + s.cap() }

// step is how the piece bounds the result: 1 with the result on its left, -1 on
// its right, 0 not at all.
func (p *piece) step(op func(x, y bool) bool) float64 {
	l, r := op(p.left[0] > 0, p.left[1] > 0), op(p.right[0] > 0, p.right[1] > 0)
	switch {
	case l && !r:
		return 1
	case r && !l:
		return -1
	}
	return 0
}

// balanced reports whether both boundaries leave every node as often as they
// come to it.
func (g *arrangement) balanced() bool {
	for n, star := range g.stars {
		var sum [2]int
		for _, i := range star {
			p := &g.pieces[i]
			k := 1
			if p.v == int32(n) {
				k = -1
			}
			sum[0] += k * int(p.net[0])
			sum[1] += k * int(p.net[1])
		}
		if sum != [2]int{} {
			return false
		}
	}
	return true
}

// edge is a kept piece, run with the result on its left.
type edge struct {
	u, v int32
	s    seg
	used bool
}

// trace chains the pieces that bound the result into contours.
func (g *arrangement) trace(op func(x, y bool) bool, eps float64) Region {
	var edges []edge
	leave := make([][]int32, len(g.at))
	for i := range g.pieces {
		p := &g.pieces[i]
		e := edge{u: p.u, v: p.v, s: p.s}
		switch p.step(op) {
		case 0:
			continue
		case -1:
			e = edge{u: p.v, v: p.u, s: p.s.reversed()}
		}
		leave[e.u] = append(leave[e.u], int32(len(edges)))
		edges = append(edges, e)
	}
	var outer, holes Region
	seen := make([]int32, len(g.at)) // place in the path, plus one
	var path []int32
	for i := range edges {
		if edges[i].used {
			continue
		}
		path = path[:0]
		for k := int32(i); k >= 0 && !edges[k].used; {
			edges[k].used = true
			path = append(path, k)
			seen[edges[k].u] = int32(len(path))
			n := edges[k].v
			// A node met before closes a contour of its own: the result touches
			// itself there.
			if at := seen[n]; at > 0 {
				c := contourOf(edges, path[at-1:])
				for _, j := range path[at-1:] {
					seen[edges[j].u] = 0
				}
				path = path[:at-1]
				c = c.Simplify(1e-9)
				if a := c.Area(); math.Abs(a) <= float64(eps*c.Length()) {
					// A sliver no wider than the weld is none.
				} else if a > 0 {
					outer = append(outer, c)
				} else {
					holes = append(holes, c)
				}
				if len(path) == 0 {
					break
				}
				k = next(edges, leave[n], path[len(path)-1])
				continue
			}
			k = next(edges, leave[n], k)
		}
		for _, j := range path {
			seen[edges[j].u] = 0
		}
	}
	return append(outer, holes...)
}

// next is the unused edge that turns most to the left after edge k, so that
// parts that touch at a point come apart there.
func next(edges []edge, leave []int32, k int32) int32 {
	best, from := int32(-1), leaving(edges[k].s.reversed())
	var bestAt bearing
	for _, j := range leave {
		if edges[j].used {
			continue
		}
		b := leaving(edges[j].s)
		// The first clockwise from the way back is the last anticlockwise.
		if best < 0 || b.after(from, bestAt) {
			best, bestAt = j, b
		}
	}
	return best
}

// bearing is how a piece leaves a node: direction, and curvature where pieces
// leave in one direction.
type bearing struct{ angle, curve float64 }

func leaving(s seg) bearing {
	d, _ := s.tangents()
	b := bearing{angle: atan2(d.Y, d.X)}
	if s.r > 0 {
		b.curve = math.Copysign(1/s.r, s.bulge)
	}
	return b
}

// after reports whether b comes later than c, anticlockwise from o.
func (b bearing) after(o, c bearing) bool {
	x, y := b.from(o), c.from(o)
	if math.Abs(x-y) > sameWay {
		return x > y
	}
	return b.curve > c.curve
}

// sameWay is the angle below which two pieces leave a node in one direction and
// their curvature decides.
const sameWay = 1e-6

// from is the angle from o to b, anticlockwise, in 0 to a full turn; a piece
// that leaves along o itself is put by its curvature.
func (b bearing) from(o bearing) float64 {
	a := b.angle - o.angle
	if a < 0 {
		a += 2 * math.Pi
	}
	if full := 2 * math.Pi; a < sameWay && b.curve < o.curve {
		a += full
	} else if a > full-sameWay && b.curve >= o.curve {
		a -= full
	}
	return a
}

func contourOf(edges []edge, path []int32) Contour {
	c := make(Contour, len(path))
	for i, k := range path {
		s := edges[k].s
		c[i] = Vertex{s.a.X, s.a.Y, s.bulge}
	}
	return c
}
