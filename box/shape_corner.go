package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// RoundCorners rounds or clips the corners of a part where no other part
// touches it: of a roof that runs on, of a long back, of a free part. The round
// touches the outer edges of the part's shadow, square to its face: where an edge
// is bevelled it runs out on the other face.
type RoundCorners struct {
	On      Part
	Corners []Corner // nil means all
	Radius  MM       // of the round; clipped: along each edge
	Clip    bool     // cut straight off instead
}

// Corner is a corner of a part, seen from outside: the one farthest that way.
type Corner int

// The corners.
const (
	LowerLeft Corner = iota
	LowerRight
	UpperRight
	UpperLeft
)

func (RoundCorners) feature() {}

func (f RoundCorners) on(*shell) []onPart { return []onPart{{".On", f.On}} }

func (f RoundCorners) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	s.c.length(path+".Radius", f.Radius, "radius of a corner")
	for i, c := range f.Corners {
		s.c.enum(fmt.Sprintf("%s.Corners[%d]", path, i), int(c), int(UpperLeft), "box.LowerLeft")
	}
	p := by[f.On]
	if len(s.c.ps) > n || p == nil {
		return
	}
	o := p.shadow()
	count := len(o)
	var which []int
	chosen := make([]bool, count)
	take := func(i int) {
		if !chosen[i] {
			chosen[i] = true
			which = append(which, i)
		}
	}
	for _, c := range f.Corners {
		x, y := -1.0, -1.0
		if c == LowerRight || c == UpperRight {
			x = 1
		}
		if c == UpperLeft || c == UpperRight {
			y = 1
		}
		e := o.Extents()
		best, at := math.Inf(-1), 0
		for i, v := range o {
			// By the box round the part, so that a long one is no exception.
			if d := x*v.X/e.Width() + y*v.Y/e.Height(); d > best+1e-9 {
				best, at = d, i
			}
		}
		take(at)
	}
	if f.Corners == nil {
		for i := range o {
			if corner(o, i) {
				take(i)
			}
		}
	}
	used := make([]float64, count) // of each edge
	for _, i := range which {
		if !corner(o, i) {
			s.c.add(Problem{Path: path + ".Corners", Code: "no-corner", Got: num(round1(o[i].X)) + ", " + num(round1(o[i].Y)),
				Why: fmt.Sprintf("%s has no corner between straight edges there", p.face.part)})
			return
		}
		f.round(s, path, p, o, i, used)
	}
}

// shadow is the silhouette of a part in its feature frame, without the vertices
// on straight edges.
func (p *part) shadow() outline.Contour {
	_, _, r := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	return r[0].Simplify(1e-6)
}

// corner reports whether a contour turns left between two straight sides at i.
func corner(o outline.Contour, i int) bool {
	n := len(o)
	a, b, c := o[(i+n-1)%n], o[i], o[(i+1)%n]
	return a.Bulge == 0 && b.Bulge == 0 && float64((b.X-a.X)*(c.Y-b.Y))-float64((b.Y-a.Y)*(c.X-b.X)) > 1e-6
}

// round takes one corner off. used is how much of each edge is gone already.
func (f RoundCorners) round(s *shell, path string, p *part, o outline.Contour, i int, used []float64) {
	n := len(o)
	before := (i + n - 1) % n
	a, b, c := o[before].At(), o[i].At(), o[(i+1)%n].At()
	l1, l2 := math.Hypot(b.X-a.X, b.Y-a.Y), math.Hypot(c.X-b.X, c.Y-b.Y)
	e1 := outline.Point{X: (b.X - a.X) / l1, Y: (b.Y - a.Y) / l1}
	e2 := outline.Point{X: (c.X - b.X) / l2, Y: (c.Y - b.Y) / l2}
	dot, cross := float64(e1.X*e2.X)+float64(e1.Y*e2.Y), float64(e1.X*e2.Y)-float64(e1.Y*e2.X)
	half := cross / (1 + dot) // tan of half the turn
	along, bulge := float64(f.Radius), 0.0
	if !f.Clip {
		along = float64(float64(f.Radius) * half)
		bulge = half / (1 + math.Sqrt(1+float64(half*half))) // tan of a quarter
	}
	left := math.Min(l1-used[before], l2-used[i])
	if along > left+1e-9 {
		most := left
		if !f.Clip {
			most = left / half
		}
		s.c.add(Problem{Path: path + ".Radius", Code: "range", Got: num(float64(f.Radius)), Lo: minLength, Hi: math.Floor(most*100) / 100, Unit: "mm",
			Why: fmt.Sprintf("radius of a corner of %s: its edges are no longer there", p.face.part)})
		return
	}
	used[before] += along
	used[i] += along
	pa := outline.Point{X: b.X - float64(along*e1.X), Y: b.Y - float64(along*e1.Y)}
	pb := outline.Point{X: b.X + float64(along*e2.X), Y: b.Y + float64(along*e2.Y)}
	const beyond = 1.0
	n1, n2 := outline.Point{X: e1.Y, Y: -e1.X}, outline.Point{X: e2.Y, Y: -e2.X}
	k := beyond / (1 + dot)
	cut := outline.Contour{
		{X: pb.X, Y: pb.Y, Bulge: -bulge},
		{X: pa.X, Y: pa.Y},
		{X: pa.X + beyond*n1.X, Y: pa.Y + beyond*n1.Y},
		{X: b.X + float64(k*(n1.X+n2.X)), Y: b.Y + float64(k*(n1.Y+n2.Y))},
		{X: pb.X + beyond*n2.X, Y: pb.Y + beyond*n2.Y},
	}
	what := "rounded corner"
	if f.Clip {
		what = "clipped corner"
	}
	p.feats = append(p.feats, feat{path: path, source: what, use: UseOrnament, outline: cut, edge: true, shaped: true})
}

// touched is a part that stands against p where a shaped edge would be cut
// away, nil if there is none.
func (p *part) touched(o outline.Contour, parts []*part) *part {
	flat := o.Flatten(0.01)
	for _, q := range parts {
		if q == p || q.face == p.face {
			continue
		}
		for _, piece := range outline.ConvexPieces(flat) {
			c := q.convex
			const near = 0.1 // dry play counts as touching
			lo := solid.NewPlane(p.face.in.N.Scale(-1), -(p.face.in.D - near))
			hi := solid.NewPlane(p.face.in.N, p.face.in.D+p.face.t+near)
			c = c.Clip(lo, -40).Clip(hi, -41)
			for i, a := range piece {
				if c.Empty() {
					break
				}
				b := piece[(i+1)%len(piece)]
				nrm := p.face.frame.U.Scale(b.Y - a.Y).Sub(p.face.frame.V.Scale(b.X - a.X))
				c = c.Clip(solid.NewPlane(nrm, nrm.Dot(p.face.frame.Out(solid.Vec{X: a.X, Y: a.Y}))), -42-i)
			}
			if !c.Empty() && c.Volume() > 1e-4 {
				return q
			}
		}
	}
	return nil
}

// checkShaped sees that shaped edges and corners are cut where no part touches.
func (s *shell) checkShaped(parts []*part) {
	for _, p := range parts {
		for i := range p.feats {
			f := &p.feats[i]
			if !f.shaped {
				continue
			}
			if q := p.touched(f.outline, parts); q != nil {
				s.c.add(Problem{Path: f.path, Code: "feature-meets-joint", Got: size(f.outline),
					Why: fmt.Sprintf("the %s on %s would be cut where %s touches it: edges are shaped where there is no joint", f.source, p.face.part, q.face.part)})
			}
		}
	}
}
