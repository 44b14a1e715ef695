package box

import (
	"math"

	"holt.example/box/outline"
)

// Felt covers the roof. It is listed as the size to cut, with its outline: the
// roof's upper faces, and what is turned down over free edges, laid over the next
// slope, or turned up at a wall that runs on. A gable takes one piece over the
// ridge, any other roof one for each slope. It has no part.
type Felt struct {
	What string // "" means "roofing felt"
	Turn MM     // down over free edges, from the arris
	Up   MM     // against walls that run on above the roof
	Lap  MM     // over the next slope, at hips
}

func (Felt) outer() {}

func (f Felt) names(*Design) []made { return nil }

func (f Felt) on(*shell) []onPart { return nil }

func (f Felt) check(d *Design, c *collector, path string) {
	if f.What != "" {
		c.name(path+".What", f.What)
	}
	c.atLeast0(path+".Turn", f.Turn, "turn-down of felt")
	c.atLeast0(path+".Up", f.Up, "turn-up of felt")
	c.atLeast0(path+".Lap", f.Lap, "lap of felt over the next slope")
	switch d.Roof.(type) {
	case NoRoof, nil:
		c.addf(path, "no-roof", "there is no roof to cover")
	}
}

func (f Felt) build(s *shell, m *making) {
	what := f.What
	if what == "" {
		what = "roofing felt"
	}
	const why = "over the roof; fold it over the edges and fix it from below or at the sides"
	var slopes []*part
	for _, i := range s.roofs() {
		if p := m.host(s.faces[i].part); p != nil {
			slopes = append(slopes, p)
		}
	}
	_, gable := s.d.Roof.(Gable)
	var cut []outline.Contour
	for _, p := range slopes {
		cut = append(cut, f.slope(s, p, gable))
	}
	if gable && len(slopes) == 2 {
		// Unfolded about the ridge into the plane of the first slope: half a turn.
		a, b := slopes[0], slopes[1]
		va := ridgeV(a, b.face.in.Shift(b.face.t))
		vb := ridgeV(b, a.face.in.Shift(a.face.t))
		x := a.face.frame.In(b.face.frame.O).X
		var all []outline.Point
		for _, v := range cut[0] {
			all = append(all, v.At())
		}
		for _, v := range cut[1] {
			all = append(all, outline.Point{X: x - v.X, Y: va + vb - v.Y})
		}
		s.sheet(what, outline.Region{settled(outline.Hull(all).Simplify(1e-7))}, []Part{a.face.part, b.face.part}, why)
		return
	}
	for i, p := range slopes {
		s.sheet(what, outline.Region{settled(cut[i])}, []Part{p.face.part}, why)
	}
}

// slope is the felt of one slope in the plane of its upper face.
func (f Felt) slope(s *shell, p *part, gable bool) outline.Contour {
	_, fr := p.face.onFace(FromOuter, 0)
	o := outline.Rectangle(-2*maxLength, -2*maxLength, 2*maxLength, 2*maxLength)
	for k, h := range p.base {
		more := float64(f.Turn)
		switch j := p.from[k]; {
		case j == fromInner || j == fromOuter:
			continue
		case j >= 0 && s.faces[j].kind == roofFace:
			h = s.faces[j].in.Shift(s.faces[j].t)
			more = float64(f.Lap)
			if gable {
				more = 0
			}
		case j >= 0 && s.faces[j].up():
			more = float64(f.Up)
		}
		a, b := h.N.Dot(fr.U), h.N.Dot(fr.V)
		l := math.Hypot(a, b)
		if l < 1e-9 {
			continue
		}
		if r := o.Clip(outline.HalfPlane{A: a / l, B: b / l, C: -h.At(fr.O)/l + more}); len(r) == 1 {
			o = r[0]
		}
	}
	return o.Simplify(1e-7)
}
