package outline

// Side says where a point lies.
type Side int

// The sides of a boundary.
const (
	Outside Side = iota - 1
	On           // within the tolerance of the boundary
	Inside
)

// String is the name of the side.
func (s Side) String() string {
	switch s {
	case Outside:
		return "outside"
	case On:
		return "on"
	case Inside:
		return "inside"
	}
	return "unknown side"
}

// winding is how often the boundary runs anticlockwise round p, a point off it.
// The chords are counted as a polygon by the rays to the right of p, every arc
// then adds the cap between it and its chord if p is in there. Both ask the
// same cross product, so a point on a chord is counted once.
func winding(segs []seg, p Point) int {
	w := 0
	for i := range segs {
		w += segs[i].winds(p)
	}
	return w
}

func (s *seg) winds(p Point) int {
	up, down := s.a.Y <= p.Y && p.Y < s.b.Y, s.b.Y <= p.Y && p.Y < s.a.Y
	if s.r == 0 && !up && !down {
		return 0
	}
	k := cross(sub(s.b, s.a), sub(p, s.a))
	w := 0
	if up && k > 0 {
		w = 1
	} else if down && k < 0 {
		w = -1
	}
	if s.r == 0 {
		return w
	}
	// A point on the chord counts as moved a little to the right, and up, as
	// the half-open ranges above have it.
	if k == 0 {
		switch {
		case s.a.Y < s.b.Y:
			k = -1
		case s.a.Y > s.b.Y:
			k = 1
		default:
			k = s.b.X - s.a.X
		}
	}
	if s.bulge > 0 && k < 0 && gap(p, s.c) < s.r {
		w++
	} else if s.bulge < 0 && k > 0 && gap(p, s.c) < s.r {
		w--
	}
	return w
}

// Contains says where p lies: On within tol of the boundary, arcs exact, else
// Inside if the contour runs round p in either sense. A negative tol is 0.
func (c Contour) Contains(p Point, tol float64) Side {
	segs := c.sides()
	if distance(segs, p) <= tol {
		return On
	}
	if winding(segs, p) != 0 {
		return Inside
	}
	return Outside
}

// Contains says where p lies: On within tol of any boundary, Inside in the
// material, Outside elsewhere and in the holes.
func (r Region) Contains(p Point, tol float64) Side {
	w := 0
	for _, c := range r {
		segs := c.sides()
		if distance(segs, p) <= tol {
			return On
		}
		w += winding(segs, p)
	}
	if w > 0 {
		return Inside
	}
	return Outside
}
