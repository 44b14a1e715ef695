package solid

import "math"

// node takes a stack node for a corner.
func (s *sweeper) node(v, below int32) int32 {
	if i := s.free; i >= 0 {
		s.free = s.nodes[i].below
		s.nodes[i] = chainNode{v, below}
		return i
	}
	s.nodes = append(s.nodes, chainNode{v, below})
	return int32(len(s.nodes) - 1)
}

// release gives a node back and returns the one below it.
func (s *sweeper) release(i int32) int32 {
	below := s.nodes[i].below
	s.nodes[i].below = s.free
	s.free = i
	return below
}

// start begins a part at its lowest corner.
func (s *sweeper) start(v int32) int32 {
	s.chains = append(s.chains, chainTop{s.node(v, -1), 0})
	return int32(len(s.chains) - 1)
}

// push adds the corner v to a side of a part.
func (s *sweeper) push(part, v int32, side int8) {
	c := &s.chains[part]
	if c.side != 0 && c.side != side {
		// Across: v sees the whole stack.
		top := s.nodes[c.top].v
		s.across(c, v)
		c.top = s.node(v, s.node(top, -1))
		c.side = side
		return
	}
	for c.side != 0 {
		below := s.nodes[c.top].below
		if below < 0 {
			break
		}
		under, top := s.nodes[below].v, s.nodes[c.top].v
		p, q := under, top
		if side == leftSide {
			p, q = q, p
		}
		if !s.convex(under, top, v, s.turn(p, q, v)) {
			break
		}
		s.tri = append(s.tri, [3]int32{p, q, v})
		c.top = s.release(c.top)
	}
	c.top = s.node(v, c.top)
	c.side = side
}

// convex tells whether the chain from under over top to v turns towards the
// part, t being twice the area there. In line counts as reflex, so that top
// waits for a better triangle; but where the chain doubles back, as at corners
// of nearly the same height, top must be cut off before v is passed: the flips
// mend that triangle.
func (s *sweeper) convex(under, top, v int32, t float64) bool {
	ax, ay := s.x[top]-s.x[under], s.y[top]-s.y[under]
	bx, by := s.x[v]-s.x[top], s.y[v]-s.y[top]
	l := max(float64(ax*ax)+float64(ay*ay), float64(bx*bx)+float64(by*by))
	if float64(t*t) > l*(flatHeight*flatHeight) {
		return t > 0
	}
	return float64(ax*bx)+float64(ay*by) < 0
}

// finish adds the highest corner of a part.
func (s *sweeper) finish(part, v int32) {
	c := &s.chains[part]
	s.across(c, v)
	c.top = -1
}

// across joins v to every edge of the stack, and empties it.
func (s *sweeper) across(c *chainTop, v int32) {
	for i := c.top; i >= 0; {
		below := s.release(i)
		if below >= 0 {
			p, q := s.nodes[below].v, s.nodes[i].v
			if c.side == leftSide {
				p, q = q, p // the stack is at the left of v: from top to bottom
			}
			s.tri = append(s.tri, [3]int32{p, q, v})
		}
		i = below
	}
}

// weigh compares the area of the triangles with that inside the edges, which
// finds whatever else went wrong.
func (s *sweeper) weigh(edges [][2]int32) error {
	if len(edges) == 0 {
		return nil
	}
	o := edges[0][0]
	want, scale := 0.0, 0.0
	for e := range edges {
		t := s.turn(o, s.lo[e], s.hi[e])
		if inside(s.wind[e]) {
			t = -t // the region is at the right of the way up
		}
		want += t
		scale += math.Abs(t)
	}
	got := 0.0
	for _, t := range s.tri {
		a := s.turn(t[0], t[1], t[2])
		if a < -1e-12*scale {
			return ErrCrossing
		}
		got += a
	}
	if math.Abs(got-want) > 1e-9*scale {
		return ErrCrossing
	}
	return nil
}
