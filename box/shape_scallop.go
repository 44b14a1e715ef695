package box

import (
	"math"

	"holt.example/box/outline"
)

// Scallops shapes a straight edge of a part where no other part touches it: a
// row of hollows or of round lobes, or steps.
type Scallops struct {
	On    Part
	Edge  EdgeSide
	Count int         // of hollows, lobes or notches; 1 to 500
	Depth MM          // from the edge
	Form  ScallopForm // zero: hollows
	Inset MM          // at each end of the edge, left straight
}

// EdgeSide is an edge of a part seen from outside: the one that faces most that
// way.
type EdgeSide int

// The edges.
const (
	LowerEdge EdgeSide = iota
	RightEdge
	UpperEdge
	LeftEdge
)

// ScallopForm is the form of a shaped edge.
type ScallopForm int

// The forms.
const (
	Hollows ScallopForm = iota // arcs into the part, meeting in points
	Lobes                      // arcs out of it, with sharp cuts between them
	Steps                      // square notches as wide as what stays between them
)

func (Scallops) feature() {}

func (f Scallops) on(*shell) []onPart { return []onPart{{".On", f.On}} }

func (f Scallops) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	s.c.enum(path+".Edge", int(f.Edge), int(LeftEdge), "box.LowerEdge")
	s.c.within(path+".Count", float64(f.Count), 1, 500, "", "scallops on an edge")
	s.c.within(path+".Depth", float64(f.Depth), 0.5, maxLength, "mm", "depth of scallops")
	s.c.enum(path+".Form", int(f.Form), int(Steps), "box.Hollows")
	s.c.atLeast0(path+".Inset", f.Inset, "what stays straight at each end of the edge")
	p := by[f.On]
	if len(s.c.ps) > n || p == nil {
		return
	}
	o := p.shadow()
	a, b, ok := edgeOf(o, f.Edge)
	if !ok {
		s.c.addf(path+".Edge", "no-edge", "%s has no straight edge on that side", p.face.part)
		return
	}
	l := math.Hypot(b.X-a.X, b.Y-a.Y) - 2*float64(f.Inset)
	d := float64(f.Depth)
	pitch := l / float64(f.Count)
	if f.Form == Steps {
		pitch = l / (2*float64(f.Count) + 1)
	}
	if !s.c.within(path+".Count", float64(f.Count), 1, math.Max(0, math.Floor(l/2)), "", "scallops on an edge: each at least 2 wide") {
		return
	}
	if f.Form != Steps && !s.c.within(path+".Depth", d, 0.5, math.Floor((pitch/2-hair)*100)/100, "mm", "depth of scallops: at most half circles") {
		return
	}
	// u along the edge from its start, v out of the part.
	e := outline.Point{X: (b.X - a.X) / math.Hypot(b.X-a.X, b.Y-a.Y), Y: (b.Y - a.Y) / math.Hypot(b.X-a.X, b.Y-a.Y)}
	m := outline.Affine{XX: e.X, XY: e.Y, X0: a.X, YX: e.Y, YY: -e.X, Y0: a.Y}
	for _, c := range f.bites(l, d, pitch) {
		c = c.Transform(outline.Shift(float64(f.Inset), 0).Then(m))
		p.feats = append(p.feats, feat{path: path, source: "shaped edge", use: UseOrnament, outline: c, edge: true, shaped: true})
	}
}

// hair is half of what points and crests are blunted to: neighbours that touch
// would be no solid.
const hair = 0.05

// bites are what is taken away, on an edge that runs along u from 0 to l with
// the part below it; they reach 1 beyond the edge.
func (f Scallops) bites(l, d, pitch float64) []outline.Contour {
	const beyond = 1.0
	var out []outline.Contour
	switch f.Form {
	case Steps:
		for k := range f.Count {
			x := float64(pitch * float64(2*k+1))
			out = append(out, outline.Rectangle(x, -d, x+pitch, beyond))
		}
	case Lobes:
		// The cusp between two lobes: two arcs of bulge d/(pitch/2) each.
		q := quarterBulge(d / (pitch / 2))
		for k := 0; k <= f.Count; k++ {
			x := float64(pitch * float64(k))
			lo, hi := x-pitch/2, x+pitch/2
			var c outline.Contour
			switch {
			case k == 0:
				c = outline.Contour{{X: x, Y: -d, Bulge: -q}, {X: hi - hair, Y: 0}, {X: hi - hair, Y: beyond}, {X: x, Y: beyond}}
			case k == f.Count:
				c = outline.Contour{{X: x, Y: -d}, {X: x, Y: beyond}, {X: lo + hair, Y: beyond}, {X: lo + hair, Y: 0, Bulge: -q}}
			default:
				c = outline.Contour{{X: x, Y: -d, Bulge: -q}, {X: hi - hair, Y: 0}, {X: hi - hair, Y: beyond}, {X: lo + hair, Y: beyond}, {X: lo + hair, Y: 0, Bulge: -q}}
			}
			out = append(out, c)
		}
	default:
		b := d / (pitch/2 - hair)
		for k := range f.Count {
			x := float64(pitch * float64(k))
			out = append(out, outline.Contour{{X: x + hair, Y: 0, Bulge: b}, {X: x + pitch - hair, Y: 0}, {X: x + pitch - hair, Y: beyond}, {X: x + hair, Y: beyond}})
		}
	}
	return out
}

// quarterBulge is the bulge of half an arc: tan(t/8) from tan(t/4).
func quarterBulge(b float64) float64 { return b / (1 + math.Sqrt(1+float64(b*b))) }

// edgeOf is the straight side of an outline that faces a side most, from a to b
// with the part on the left.
func edgeOf(o outline.Contour, side EdgeSide) (a, b outline.Point, ok bool) {
	nx, ny := [4]float64{0, 1, 0, -1}[side], [4]float64{-1, 0, 1, 0}[side]
	best := 0.7
	for i, v := range o {
		w := o[(i+1)%len(o)]
		l := math.Hypot(w.X-v.X, w.Y-v.Y)
		if v.Bulge != 0 || !(l > minLength) {
			continue
		}
		if d := (float64(nx*(w.Y-v.Y)) - float64(ny*(w.X-v.X))) / l; d > best+1e-9 {
			best, a, b, ok = d, v.At(), w.At(), true
		}
	}
	return a, b, ok
}
