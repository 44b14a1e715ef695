package solid

import (
	"math"
	"slices"

	"holt.example/box/outline"
)

// Rings is where the surface of the body lies in the plane w = 0 of the frame
// with its outer side towards +W, as straight-sided contours in u and v:
// outer ones anticlockwise, holes clockwise, each from its lowest corner, of
// equal ones the left. Prisms are not taken out: the caller does that with their
// true arcs.
func (b Body) Rings(f Frame) outline.Region {
	base := b.Convex()
	if base.Empty() {
		return nil
	}
	s := b.newShell(base, weldRadius)
	s.build(func(loop []Vec, n Vec) bool {
		if n.Dot(f.W) < 0.9 {
			return false
		}
		for _, p := range loop {
			if h := f.W.Dot(p.Sub(f.O)); !(h <= planeGap && h >= -planeGap) {
				return false
			}
		}
		return true
	})
	flat := s.frags
	for i := range flat {
		flat[i].surf = 0
		loop := make([]Vec, len(flat[i].loop))
		for k, p := range flat[i].loop {
			q := f.In(p)
			loop[k] = Vec{q.X, q.Y, 0}
		}
		flat[i].loop = loop
	}
	return gather(flat, nil, weldRadius).region()
}

// planeGap is the distance, in mm, within which surfaces lie in one plane.
const planeGap = 1e-6

// Shadow is the shadow of the body along W, in u and v of the frame: notches
// that go through the whole of it show, others do not. Prisms are not taken
// out.
func (b Body) Shadow(f Frame) outline.Region {
	s := &shell{surfs: []Surface{{N: Vec{0, 0, 1}}}}
	for _, c := range b.shadowers() {
		hull := shadowOf(c, f)
		if len(hull) < 3 {
			continue
		}
		s.less(frag{hull, 0}, -1)
		k := cut{}
		k.lo, k.hi = boundsOf(hull)
		for i, p := range hull {
			d := hull[(i+1)%len(hull)].Sub(p)
			n := Vec{d.Y, -d.X, 0}.Unit()
			k.planes = append(k.planes, Plane{n, n.Dot(p)})
		}
		s.cuts = append(s.cuts, k)
	}
	return gather(s.frags, nil, weldRadius).region()
}

// shadowers are the pieces whose shadows make up that of the body.
func (b Body) shadowers() []Convex {
	if len(b.Cutters) > 0 {
		return b.Pieces()
	}
	if c := b.Convex(); !c.Empty() {
		return []Convex{c}
	}
	return nil
}

// shadowOf is the outline of one convex solid seen along W, anticlockwise.
func shadowOf(c Convex, f Frame) []Vec {
	var pts []Vec
	for _, g := range c.Faces {
		if g.N.Dot(f.W) < -1e-12 {
			continue // the upper faces have every corner of the outline
		}
		for _, p := range g.Loop {
			q := f.In(p)
			pts = append(pts, Vec{q.X, q.Y, 0})
		}
	}
	slices.SortFunc(pts, func(p, q Vec) int {
		switch {
		case p.X < q.X:
			return -1
		case p.X > q.X:
			return 1
		case p.Y < q.Y:
			return -1
		case p.Y > q.Y:
			return 1
		}
		return 0
	})
	pts = slices.Compact(pts)
	var hull []Vec
	for pass := 0; pass < 2; pass++ {
		from := len(hull)
		for _, p := range pts {
			for n := len(hull); n >= from+2; n = len(hull) {
				d, e := hull[n-1].Sub(hull[n-2]), p.Sub(hull[n-2])
				if d.Cross(e).Z > SideTest*e.Len()/4 {
					break
				}
				hull = hull[:n-1]
			}
			hull = append(hull, p)
		}
		hull = hull[:len(hull)-1]
		slices.Reverse(pts)
	}
	return hull
}

// region traces the edges of a flat net, whose corners have z = 0.
func (n net) region() outline.Region {
	first := make([]int32, len(n.at))
	for i := range first {
		first[i] = -1
	}
	next := make([]int32, len(n.edges))
	for i := len(n.edges) - 1; i >= 0; i-- {
		a := n.edges[i].a
		next[i], first[a] = first[a], int32(i)
	}
	take := func(prev, at int32) int32 {
		best, ba := int32(-1), math.Inf(-1)
		for i := first[at]; i >= 0; i = next[i] {
			turn := 0.0
			if prev >= 0 && next[first[at]] >= 0 {
				d, e := n.at[at].Sub(n.at[prev]), n.at[n.edges[i].b].Sub(n.at[at])
				turn = pseudoTurn(d.Dot(e), d.Cross(e).Z)
			}
			if turn > ba {
				best, ba = i, turn
			}
		}
		if best >= 0 {
			if first[at] == best {
				first[at] = next[best]
			} else {
				j := first[at]
				for next[j] != best {
					j = next[j]
				}
				next[j] = next[best]
			}
		}
		return best
	}
	var out outline.Region
	for i := range n.edges {
		v := n.edges[i].a
		for first[v] >= 0 {
			// The sharpest turn to the left keeps to one piece of material; where a
			// contour comes back to a corner, that part is a contour by itself.
			path := []int32{v}
			for at, prev := v, int32(-1); ; {
				e := take(prev, at)
				if e < 0 {
					break
				}
				prev, at = at, n.edges[e].b
				if k := slices.Index(path, at); k >= 0 {
					out = n.addRing(out, path[k:])
					path = path[:k+1]
					if k == 0 {
						break
					}
					if k > 0 {
						prev = path[k-1]
					}
					continue
				}
				path = append(path, at)
			}
		}
	}
	return out
}

// pseudoTurn grows with the angle of a turn, from -2 (right about) to 2.
func pseudoTurn(dot, cross float64) float64 {
	k := cross / (math.Abs(dot) + math.Abs(cross))
	if dot >= 0 {
		return k
	}
	if cross >= 0 {
		return 2 - k
	}
	return -2 - k
}

// addRing adds a ring without the corners that lie between their neighbours,
// and without those that enclose nothing.
func (n net) addRing(out outline.Region, ring []int32) outline.Region {
	c := make([]Vec, len(ring))
	for i, v := range ring {
		c[i] = n.at[v]
	}
	for again := true; again && len(c) >= 3; {
		again = false
		for i := 0; i < len(c) && len(c) >= 3; i++ {
			p, q, r := c[(i+len(c)-1)%len(c)], c[i], c[(i+1)%len(c)]
			d := r.Sub(p)
			if l := d.Len(); l < weldRadius || math.Abs(d.Cross(q.Sub(p)).Z) <= planeGap*l {
				c = slices.Delete(c, i, i+1)
				again = true
				i--
			}
		}
	}
	if len(c) < 3 {
		return out
	}
	// Begin at the lowest corner, of equal ones at the left.
	low := 0
	for i, p := range c {
		if q := c[low]; p.Y < q.Y-planeGap || p.Y <= q.Y+planeGap && p.X < q.X {
			low = i
		}
	}
	contour := make(outline.Contour, len(c))
	for i := range c {
		p := c[(low+i)%len(c)]
		contour[i] = outline.Vertex{X: p.X, Y: p.Y}
	}
	return append(out, contour)
}
