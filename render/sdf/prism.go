package sdf

import (
	"errors"
	"math"

	"holt.example/box/solid"
)

// side is one line or arc of an outline.
type side struct {
	ax, ay, bx, by float64
	bulge          float64
	cx, cy, r      float64 // of an arc
}

// prism is an outline raised along its frame's w axis.
type prism struct {
	frame          solid.Frame
	from, to       float64
	sides          []side
	x0, y0, x1, y1 float64 // around the outline
}

func newPrism(p solid.Prism) (*prism, error) {
	if len(p.Outline) < 2 {
		return nil, errors.New("an outline needs two corners or more")
	}
	if !(p.From < p.To) {
		return nil, errors.New("it has no height")
	}
	q := &prism{frame: p.Frame, from: p.From, to: p.To}
	q.x0, q.y0, q.x1, q.y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for i, v := range p.Outline {
		w := p.Outline[(i+1)%len(p.Outline)]
		s := side{ax: v.X, ay: v.Y, bx: w.X, by: w.Y, bulge: v.Bulge}
		q.reach(v.X, v.Y)
		if b := v.Bulge; b != 0 {
			// Half the chord is r sin(s/2), and tan(s/4) = b for the sweep s,
			// so the centre lies (1-b^2)/(4b) chords to the left of the
			// chord's middle.
			dx, dy := w.X-v.X, w.Y-v.Y
			k := (1 - float64(b*b)) / float64(4*b)
			s.cx, s.cy = (v.X+w.X)/2-float64(k*dy), (v.Y+w.Y)/2+float64(k*dx)
			s.r = math.Hypot(v.X-s.cx, v.Y-s.cy)
			for _, d := range [4][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
				x, y := s.cx+float64(s.r*d[0]), s.cy+float64(s.r*d[1])
				if s.onArcSide(x, y) {
					q.reach(x, y)
				}
			}
		}
		q.sides = append(q.sides, s)
	}
	return q, nil
}

func (q *prism) reach(x, y float64) {
	q.x0, q.y0 = math.Min(q.x0, x), math.Min(q.y0, y)
	q.x1, q.y1 = math.Max(q.x1, x), math.Max(q.y1, y)
}

// left reports whether a point lies to the left of the chord. A point on it
// counts as moved up a very little, and to the right by even less.
func (s *side) left(x, y float64) bool {
	dx, dy := s.bx-s.ax, s.by-s.ay
	k := float64(dx*(y-s.ay)) - float64(dy*(x-s.ax))
	if k == 0 {
		k = dx
	}
	if k == 0 {
		k = -dy
	}
	return k > 0
}

// onArcSide reports whether a point lies on the side of the chord on which the
// arc is: to its right if the arc turns anticlockwise.
func (s *side) onArcSide(x, y float64) bool { return s.left(x, y) != (s.bulge > 0) }

// distance from a point to the side.
func (s *side) distance(x, y float64) float64 {
	if s.bulge != 0 {
		dx, dy := x-s.cx, y-s.cy
		l := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		if l == 0 {
			return s.r
		}
		if k := s.r / l; s.onArcSide(s.cx+float64(k*dx), s.cy+float64(k*dy)) {
			return math.Abs(l - s.r)
		}
		return math.Min(gap(x-s.ax, y-s.ay), gap(x-s.bx, y-s.by))
	}
	dx, dy := s.bx-s.ax, s.by-s.ay
	n := float64(dx*dx) + float64(dy*dy)
	t := 0.0
	if n > 0 {
		t = math.Max(0, math.Min(1, (float64((x-s.ax)*dx)+float64((y-s.ay)*dy))/n))
	}
	return gap(x-s.ax-float64(t*dx), y-s.ay-float64(t*dy))
}

func gap(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }

// flat is the signed distance to the outline in its plane. A point is inside
// if a ray to the right crosses the chords an odd number of times, turned
// round once more for every cap between an arc and its chord that holds it.
func (q *prism) flat(x, y float64) float64 {
	d, in := math.Inf(1), false
	for i := range q.sides {
		s := &q.sides[i]
		d = math.Min(d, s.distance(x, y))
		if (s.ay > y) != (s.by > y) && s.left(x, y) == (s.by > s.ay) {
			in = !in
		}
		if s.bulge != 0 && s.onArcSide(x, y) && gap(x-s.cx, y-s.cy) < s.r {
			in = !in
		}
	}
	if in {
		return -d
	}
	return d
}

// cut is the greater of d and the height inside the prism: what is left of a
// solid with the value d when the prism is taken out of it. The outline is
// asked only where it can matter.
func (q *prism) cut(v solid.Vec, d float64) float64 {
	p := q.frame.In(v)
	h := math.Max(q.from-p.Z, p.Z-q.to)
	x := math.Max(0, math.Max(q.x0-p.X, p.X-q.x1))
	y := math.Max(0, math.Max(q.y0-p.Y, p.Y-q.y1))
	if -math.Max(h, gap(x, y)) <= d && (h >= 0 || x > 0 || y > 0) {
		return d
	}
	return math.Max(d, -math.Max(h, q.flat(p.X, p.Y)))
}
