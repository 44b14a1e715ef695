package outline

import (
	"math"
	"slices"
)

// meet appends the points common to two segments: ends of one within eps of
// the other, crossings and touchings. Segments that overlap are described by
// the ends that lie on the other. A point may appear more than once.
func meet(dst []Point, s, t *seg, eps float64) []Point {
	for _, p := range [2]Point{s.a, s.b} {
		if t.distance(p) <= eps {
			dst = append(dst, p)
		}
	}
	for _, p := range [2]Point{t.a, t.b} {
		if s.distance(p) <= eps {
			dst = append(dst, p)
		}
	}
	return crossings(dst, s, t, eps)
}

// crossings appends the points where two segments cross, or touch within eps,
// away from overlaps.
func crossings(dst []Point, s, t *seg, eps float64) []Point {
	switch {
	case s.r == 0 && t.r == 0:
		return crossLines(dst, s, t, eps)
	case s.r == 0:
		return crossLineArc(dst, s, t, eps)
	case t.r == 0:
		return crossLineArc(dst, t, s, eps)
	}
	return crossArcs(dst, s, t, eps)
}

func crossLines(dst []Point, s, t *seg, eps float64) []Point {
	d, e := sub(s.b, s.a), sub(t.b, t.a)
	k := cross(d, e)
	if math.Abs(k) <= float64(eps*math.Sqrt(math.Max(dot(d, d), dot(e, e)))) {
		// The shorter one strays less than eps from the other's direction: where
		// they meet, its ends say so, and the crossing could lie anywhere on it.
		return dst
	}
	o := sub(t.a, s.a)
	u, v := cross(o, e)/k, cross(o, d)/k
	if !(u >= 0 && u <= 1 && v >= 0 && v <= 1) {
		return dst
	}
	return append(dst, s.keep(t.keep(along(s.a, d, u))))
}

// keep puts a point that lies on a level or upright side exactly there.
func (s *seg) keep(p Point) Point {
	if s.r == 0 {
		if s.a.X == s.b.X {
			p.X = s.a.X
		}
		if s.a.Y == s.b.Y {
			p.Y = s.a.Y
		}
	}
	return p
}

func crossLineArc(dst []Point, s, t *seg, eps float64) []Point {
	d := sub(s.b, s.a)
	l := norm(d)
	if l == 0 {
		return dst
	}
	d = scale(d, 1/l)
	o := sub(t.c, s.a)
	h, foot := math.Abs(cross(d, o)), dot(d, o)
	if h > t.r+eps {
		return dst
	}
	at := func(u float64) {
		if p := s.keep(along(s.a, d, u)); u >= 0 && u <= l && t.faces(p) {
			dst = append(dst, p)
		}
	}
	if h >= t.r-eps {
		at(foot)
		return dst
	}
	w := math.Sqrt(float64((t.r - h) * (t.r + h)))
	at(foot - w)
	at(foot + w)
	return dst
}

func crossArcs(dst []Point, s, t *seg, eps float64) []Point {
	o := sub(t.c, s.c)
	d := norm(o)
	if d+math.Abs(s.r-t.r) <= eps || d == 0 {
		return dst // one circle: the ends say all
	}
	if d > s.r+t.r+eps || d < math.Abs(s.r-t.r)-eps {
		return dst
	}
	u := scale(o, 1/d)
	at := func(p Point) {
		if s.faces(p) && t.faces(p) {
			dst = append(dst, p)
		}
	}
	switch {
	case d >= s.r+t.r-eps:
		at(along(s.c, u, s.r))
		return dst
	case d <= math.Abs(s.r-t.r)+eps && s.r > t.r:
		at(along(s.c, u, s.r))
		return dst
	case d <= math.Abs(s.r-t.r)+eps && s.r < t.r:
		at(along(s.c, u, -s.r))
		return dst
	}
	x := (d + float64((s.r-t.r)*(s.r+t.r))/d) / 2
	y := math.Sqrt(math.Max(0, float64((s.r-x)*(s.r+x))))
	m, n := along(s.c, u, x), scale(left(u), y)
	at(add(m, n))
	at(sub(m, n))
	return dst
}

// pairs calls f for every pair of boxes that come within eps of each other, in
// a fixed order, until f returns false: sort along one axis and sweep. Two
// lists are told apart by own: pairs of equal own are left out, unless own is
// nil.
func pairs(boxes []Box, eps float64, own []int8, f func(i, j int) bool) {
	var sx, sy float64
	var all Box
	for i, b := range boxes {
		if i == 0 {
			all = b
		}
		all = all.Join(b)
		sx += b.Width()
		sy += b.Height()
	}
	lo := func(b *Box) float64 { return b.Min.X }
	hi := func(b *Box) float64 { return b.Max.X }
	// Sweep along the axis on which the boxes are short beside the whole.
	if float64(sx*all.Height()) > float64(sy*all.Width()) {
		lo = func(b *Box) float64 { return b.Min.Y }
		hi = func(b *Box) float64 { return b.Max.Y }
	}
	order := make([]int, len(boxes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		switch a, b := lo(&boxes[i]), lo(&boxes[j]); {
		case a < b:
			return -1
		case a > b:
			return 1
		}
		return 0
	})
	var active []int
	for _, j := range order {
		b := &boxes[j]
		from := lo(b) - eps
		keep := active[:0]
		for _, i := range active {
			if hi(&boxes[i]) < from {
				continue
			}
			keep = append(keep, i)
		}
		active = keep
		for _, i := range active {
			if own != nil && own[i] == own[j] || !boxes[i].Overlaps(*b, eps) {
				continue
			}
			if !f(min(i, j), max(i, j)) {
				return
			}
		}
		active = append(active, j)
	}
}

// Intersections lists the places where two boundaries meet, each once, sorted
// by x and then y: crossings, touchings (within SideTest) and, where they run
// along each other, the ends of the common stretch.
func (c Contour) Intersections(d Contour) []Point {
	a, b := c.sides(), d.sides()
	all := append(a, b...)
	boxes, own := make([]Box, len(all)), make([]int8, len(all))
	for i := range all {
		boxes[i] = all[i].box()
		if i >= len(a) {
			own[i] = 1
		}
	}
	var out []Point
	pairs(boxes, SideTest, own, func(i, j int) bool {
		out = meet(out, &all[i], &all[j], SideTest)
		return true
	})
	slices.SortFunc(out, func(p, q Point) int {
		switch {
		case p.X < q.X || p.X == q.X && p.Y < q.Y:
			return -1
		case p == q:
			return 0
		}
		return 1
	})
	var kept []Point
next:
	for _, p := range out {
		// Sorted by x, so equal places are close to the end of the list.
		for k := len(kept) - 1; k >= 0 && kept[k].X >= p.X-4*SideTest; k-- {
			if gap(kept[k], p) <= 4*SideTest {
				continue next
			}
		}
		kept = append(kept, p)
	}
	return kept
}
