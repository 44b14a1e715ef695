package layout

import (
	"math"
	"sort"

	"holt.example/box/outline"
)

// shape is a part in a pose, for the search: convex pieces that together cover
// it, about the origin of the part.
type shape struct {
	pieces         [][]outline.Point
	x0, y0, x1, y1 float64 // extents, allowance included
	allow          float64
	area           float64
	part           int // -1: a defect
	pose           pose
	defect         *Defect
	box            bool // the pieces are one rectangle
}

// The outlines are replaced by polygons that lie outside them: convex arcs by
// their tangents, concave ones by chords. They overreach by no more than
// shapeError of the part's size, or leastError mm.
const (
	shapeError = 0.004
	leastError = 0.1
)

// outer is a polygon round a contour that is at most tol away from it.
func outer(c outline.Contour, tol float64) []outline.Point {
	var out []outline.Point
	for i, v := range c {
		w := c[(i+1)%len(c)]
		out = append(out, v.At())
		if math.Abs(v.Bulge) < 1e-9 {
			continue
		}
		sweep := 4 * atan(v.Bulge)
		dx, dy := w.X-v.X, w.Y-v.Y
		q := float64(v.Bulge * v.Bulge)
		k := (1 - q) / (4 * v.Bulge)
		cx, cy := (v.X+w.X)/2-float64(dy*k), (v.Y+w.Y)/2+float64(dx*k)
		r := float64(math.Sqrt(float64(dx*dx)+float64(dy*dy))*(1+q)) / (4 * math.Abs(v.Bulge))
		// chords fall short by r(1 - cos(a/2)), tangents overreach by
		// r(1/cos(a/2) - 1), about r a^2/8 both
		n := int(math.Ceil(math.Abs(sweep) / math.Sqrt(8*tol/r)))
		n = max(n, int(math.Ceil(math.Abs(sweep)/(math.Pi/3))))
		if n = min(max(n, 1), 200); math.Abs(sweep) > 3 {
			n += n & 1 // a circle then looks the same after a quarter turn
		}
		step := sweep / float64(n)
		turn := func(a, k float64) outline.Point {
			s, co := sincos(a)
			x, y := v.X-cx, v.Y-cy
			return outline.Point{X: cx + float64(k*(float64(co*x)-float64(s*y))), Y: cy + float64(k*(float64(s*x)+float64(co*y)))}
		}
		if v.Bulge < 0 {
			for j := 1; j < n; j++ {
				out = append(out, turn(float64(step*float64(j)), 1))
			}
			continue
		}
		_, co := sincos(step / 2)
		for j := 0; j < n; j++ {
			out = append(out, turn(float64(step*(float64(j)+0.5)), 1/co))
		}
	}
	return out
}

// sincos and atan come from outline's turns, which are the same on every
// processor.
func sincos(a float64) (s, c float64) {
	m := outline.Turn(a * (180 / math.Pi))
	return m.YX, m.XX
}

// atan is the arc tangent of -1 to 1 by its series after two halvings.
func atan(x float64) float64 {
	for i := 0; i < 3; i++ {
		x /= 1 + math.Sqrt(1+float64(x*x))
	}
	q, sum, p := float64(x*x), 0.0, x
	for k := 1; k < 40; k += 2 {
		sum += p / float64(k)
		p = float64(-p * q)
	}
	return 8 * sum
}

// simplified fills what nothing can use: pockets shallower or narrower than
// depth.
func simplified(poly []outline.Point, depth float64) []outline.Point {
	if depth <= 0 || len(poly) < 5 {
		return poly
	}
	hull := outline.Hull(poly)
	on := map[outline.Point]bool{}
	for _, v := range hull {
		on[v.At()] = true
	}
	n := len(poly)
	start := -1
	for i, p := range poly {
		if on[p] {
			start = i
			break
		}
	}
	if start < 0 {
		return poly
	}
	var out []outline.Point
	for i := 0; i < n; {
		a := poly[(start+i)%n]
		out = append(out, a)
		j := i + 1
		far := 0.0
		for ; j < n && !on[poly[(start+j)%n]]; j++ {
		}
		b := poly[(start+j)%n]
		l := math.Sqrt(float64((b.X-a.X)*(b.X-a.X)) + float64((b.Y-a.Y)*(b.Y-a.Y)))
		for k := i + 1; k < j; k++ {
			p := poly[(start+k)%n]
			if l > 0 {
				far = math.Max(far, math.Abs(float64((b.X-a.X)*(p.Y-a.Y))-float64((b.Y-a.Y)*(p.X-a.X)))/l)
			}
		}
		if far > depth && l > depth {
			for k := i + 1; k < j; k++ {
				out = append(out, poly[(start+k)%n])
			}
		}
		i = j
	}
	return out
}

// convexCover covers a region by convex pieces, from outside, in the part's
// own frame. Holes smaller than hole both ways, or narrower than that one way,
// count as material.
func convexCover(r outline.Region, tol, pocket, hole float64) [][]outline.Point {
	var straight outline.Region
	holes := 0
	for _, c := range r {
		if c.Area() > 0 {
			straight = append(straight, outline.Polygon(simplified(outer(c, tol), pocket)...))
			continue
		}
		e := c.Extents()
		if math.Min(e.Width(), e.Height()) < hole {
			continue
		}
		holes++
		straight = append(straight, outline.Polygon(outer(c, tol)...))
	}
	return coverStraight(straight, holes, 0)
}

func coverStraight(r outline.Region, holes, depth int) [][]outline.Point {
	var out [][]outline.Point
	if holes > 0 && depth < 40 {
		var mid float64
		for _, c := range r {
			if c.Area() < 0 {
				mid = c.Extents().Centre().X
				break
			}
		}
		for _, h := range []outline.HalfPlane{{A: 1, C: mid}, {A: -1, C: -mid}} {
			part := r.Clip(h)
			n := 0
			for _, c := range part {
				if c.Area() < 0 {
					n++
				}
			}
			out = append(out, coverStraight(part, n, depth+1)...)
		}
		return out
	}
	for _, c := range r {
		if c.Area() <= 0 {
			continue
		}
		poly := make([]outline.Point, len(c))
		for i, v := range c {
			poly[i] = v.At()
		}
		out = append(out, outline.ConvexPieces(poly)...)
	}
	return out
}

// shapeOf poses the pieces of a part.
func (c *checked) shapeOf(part int, t pose, pieces [][]outline.Point) *shape {
	p := &c.job.Parts[part]
	s := &shape{part: part, pose: t, allow: p.Allowance, area: p.Outline.Area()}
	m := t.turnMap()
	for _, k := range pieces {
		q := make([]outline.Point, len(k))
		for i, v := range k {
			q[i] = m.Apply(v)
		}
		if t.over {
			for i, j := 0, len(q)-1; i < j; i, j = i+1, j-1 {
				q[i], q[j] = q[j], q[i]
			}
		}
		s.pieces = append(s.pieces, q)
	}
	e := c.posed(part, t)
	s.x0, s.y0, s.x1, s.y1 = e.Min.X-s.allow, e.Min.Y-s.allow, e.Max.X+s.allow, e.Max.Y+s.allow
	s.box = len(s.pieces) == 1 && isBox(s.pieces[0])
	return s
}

// isBox says whether a convex polygon is a rectangle along the axes.
func isBox(p []outline.Point) bool {
	if len(p) != 4 {
		return false
	}
	for i := range p {
		q := p[(i+1)%4]
		if math.Abs(p[i].X-q.X) > 1e-6 && math.Abs(p[i].Y-q.Y) > 1e-6 {
			return false
		}
	}
	return true
}

// sameShape says whether two shapes lie in the same way: a half turn of a
// rectangle is one pose less to try.
func sameShape(a, b *shape) bool {
	if math.Abs((a.x1-a.x0)-(b.x1-b.x0)) > 1e-9 || math.Abs((a.y1-a.y0)-(b.y1-b.y0)) > 1e-9 || len(a.pieces) != len(b.pieces) {
		return false
	}
	dx, dy := b.x0-a.x0, b.y0-a.y0
	pts := func(s *shape, dx, dy float64) []outline.Point {
		var out []outline.Point
		for _, p := range s.pieces {
			for _, q := range p {
				out = append(out, outline.Point{X: math.Round((q.X+dx)*1e6) / 1e6, Y: math.Round((q.Y+dy)*1e6) / 1e6})
			}
		}
		sort.Slice(out, func(i, j int) bool {
			if out[i].X != out[j].X {
				return out[i].X < out[j].X
			}
			return out[i].Y < out[j].Y
		})
		return out
	}
	p, q := pts(a, dx, dy), pts(b, 0, 0)
	if len(p) != len(q) {
		return false
	}
	for i := range p {
		if math.Abs(p[i].X-q[i].X) > 2e-6 || math.Abs(p[i].Y-q[i].Y) > 2e-6 {
			return false
		}
	}
	return true
}
