package outline

import (
	"cmp"
	"math"
	"slices"
)

// Path is an open run of lines and arcs: the centre line of a groove, a letter's
// stroke. The bulge of its last vertex says nothing. One whose last vertex lies
// on its first, within SideTest, is a closed ring.
type Path []Vertex

// Path is the contour as a path that comes back to its first vertex.
func (c Contour) Path() Path {
	if len(c) == 0 {
		return nil
	}
	p := append(make(Path, 0, len(c)+1), c...)
	return append(p, Vertex{X: c[0].X, Y: c[0].Y})
}

// Line is the straight path through the points.
func Line(p ...Point) Path {
	out := make(Path, len(p))
	for i, q := range p {
		out[i] = Vertex{q.X, q.Y, 0}
	}
	return out
}

func (p Path) sides() []seg {
	var out []seg
	for i := 0; i+1 < len(p); i++ {
		out = append(out, newSeg(p[i].At(), p[i+1].At(), p[i].Bulge))
	}
	return out
}

// Closed reports whether the path comes back to its beginning.
func (p Path) Closed() bool {
	return len(p) > 2 && gap(p[0].At(), p[len(p)-1].At()) <= SideTest
}

// Length is the length of the path in mm, arcs exact.
func (p Path) Length() float64 {
	l := 0.0
	for _, s := range p.sides() {
		l += s.length()
	}
	return l
}

// Extents is the least axis-parallel box round the path, arcs exact; an empty
// path has the zero Box.
func (p Path) Extents() Box {
	var b Box
	for i, s := range p.sides() {
		if i == 0 {
			b = s.box()
		}
		b = b.Join(s.box())
	}
	return b
}

// Reverse is the same path run the other way.
func (p Path) Reverse() Path {
	n := len(p)
	out := make(Path, n)
	for i := range p {
		out[i] = Vertex{X: p[n-1-i].X, Y: p[n-1-i].Y}
		if i+1 < n {
			out[i].Bulge = -p[n-2-i].Bulge
		}
	}
	return out
}

// Transform maps the path by a similarity. The first vertex stays first.
func (p Path) Transform(a Affine) Path {
	out := make(Path, len(p))
	k := 1.0
	if a.Mirrors() {
		k = -1
	}
	for i, v := range p {
		q := a.Apply(v.At())
		out[i] = Vertex{q.X, q.Y, k * v.Bulge}
	}
	return out
}

// Check reports the first fault as a *Fault, or nil: two vertices at least,
// finite numbers within Limit, bulges (the last one's too) from -1 to 1, no side
// shorter than SideTest. A path may cross itself.
func (p Path) Check() error {
	if len(p) < 2 {
		return &Fault{Kind: TooFewVertices}
	}
	for i, v := range p {
		if !(math.Abs(v.X) <= Limit && math.Abs(v.Y) <= Limit) || !finite(v.Bulge) {
			return &Fault{Kind: NotFinite, Side: i, With: i, At: v.At()}
		}
		if !(math.Abs(v.Bulge) <= 1) {
			return &Fault{Kind: BulgeRange, Side: i, With: i, At: v.At()}
		}
	}
	for i := 0; i+1 < len(p); i++ {
		if !(gap(p[i].At(), p[i+1].At()) > SideTest) {
			return &Fault{Kind: ZeroLength, Side: i, With: i, At: p[i].At()}
		}
	}
	return nil
}

// Distance is the least distance from q to the path; +Inf for an empty one.
func (p Path) Distance(q Point) float64 { return distance(p.sides(), q) }

// DistanceTo is the exact least distance between the path and the boundary of
// a contour: 0 if they meet, +Inf if one is empty.
func (p Path) DistanceTo(c Contour) float64 { return distanceSides(p.sides(), c.sides()) }

// Within lists the stretches of the path that lie in the region or on its
// boundary, in the order of the path.
func (p Path) Within(r Region) []Path {
	walls := r.sides()
	var out []Path
	var cur Path
	end := func() {
		if len(cur) > 1 {
			out = append(out, cur)
		}
		cur = nil
	}
	for _, s := range p.sides() {
		from := s.a
		for _, to := range append(cutsOf(&s, walls), s.b) {
			part := newSeg(from, to, s.bulgeTo(from, to))
			if s.r == 0 {
				part.bulge = s.bulge // straight, or so flat that it counts as straight
			}
			from = to
			if gap(part.a, part.b) <= SideTest {
				continue
			}
			if r.Contains(part.mid(), SideTest) == Outside {
				end()
				continue
			}
			if len(cur) == 0 {
				cur = Path{{part.a.X, part.a.Y, 0}}
			}
			cur[len(cur)-1].Bulge = part.bulge
			cur = append(cur, Vertex{part.b.X, part.b.Y, 0})
		}
	}
	end()
	// A ring that was not cut at its seam is one stretch there.
	if n := len(out); n > 1 && p.Closed() {
		a, b := out[0], out[n-1]
		if gap(a[0].At(), p[0].At()) <= SideTest && gap(b[len(b)-1].At(), p[0].At()) <= SideTest {
			out[0] = append(b[:len(b)-1:len(b)-1], a...)
			out = out[:n-1]
		}
	}
	return out
}

// cutsOf are the places where s meets the walls, in its direction.
func cutsOf(s *seg, walls []seg) []Point {
	var at []Point
	b := s.box()
	for i := range walls {
		if b.Overlaps(walls[i].box(), SideTest) {
			at = meet(at, s, &walls[i], SideTest)
		}
	}
	d := sub(s.b, s.a)
	key := func(p Point) float64 {
		if s.r == 0 {
			return dot(sub(p, s.a), d)
		}
		return math.Abs(s.bulgeTo(s.a, p))
	}
	slices.SortStableFunc(at, func(p, q Point) int { return cmp.Compare(key(p), key(q)) })
	kept := at[:0]
	last := s.a
	for _, p := range at {
		if gap(p, last) > SideTest && gap(p, s.b) > SideTest {
			kept = append(kept, p)
			last = p
		}
	}
	return kept
}

// Swept is the area, mm2, that a disc of radius r covers along the path:
// 2 r L, half a disc at each end, and at a corner that turns by t the sector
// t r^2/2 outside less what both sides cover inside, r^2 tan(t/2) (geometry). It
// is exact where no arc is tighter than r and no side shorter than r tan(t/2);
// where the path crosses itself the common place counts twice.
func (p Path) Swept(r float64) float64 {
	ss := p.sides()
	if len(ss) == 0 || !(r > 0) {
		return 0
	}
	a := 0.0
	for _, s := range ss {
		a += 2 * float64(r*s.length())
	}
	corner := func(s, t seg) float64 {
		_, in := s.tangents()
		out, _ := t.tangents()
		co, si := dot(in, out), math.Abs(cross(in, out))
		turn := atan2(si, co)
		both := float64(r * r * si / (math.Sqrt(float64(co*co)+float64(si*si)) + co))
		most := 2 * float64(r*math.Min(s.length(), t.length()))
		if !(both <= most) {
			both = most
		}
		return float64(r*r*turn)/2 - both
	}
	for i := 0; i+1 < len(ss); i++ {
		a += corner(ss[i], ss[i+1])
	}
	if p.Closed() {
		return a + corner(ss[len(ss)-1], ss[0])
	}
	return a + float64(math.Pi*r*r)
}
