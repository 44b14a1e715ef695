package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
)

// mostCopies of one cut or stroke in a feature.
const mostCopies = 20000

// Repeat makes rows, columns and grids: the first copy is at the anchor, the
// others follow to the right and upwards.
type Repeat struct {
	Columns, Rows     int  // 0 means 1, or, in a Pattern with a step, as many as fill the part; at most 20,000 copies in all
	StepRight, StepUp MM   // from copy to copy; negative steps go to the left and down
	Brick             bool // every second row is half a step to the right
	Centred           bool // the anchor is the middle of all copies, not the place of the first
}

// check looks at the numbers; fill allows counts of 0 to mean many.
func (r Repeat) check(c *collector, path string, fill bool) bool {
	ok := c.within(path+".Columns", float64(r.Columns), 0, mostCopies, "", "columns of copies")
	ok = c.within(path+".Rows", float64(r.Rows), 0, mostCopies, "", "rows of copies") && ok
	if n := max(r.Columns, 1) * max(r.Rows, 1); ok && n > mostCopies {
		ok = c.within(path+".Rows", float64(r.Rows), 0, math.Floor(mostCopies/float64(r.Columns)), "", "rows of so many columns")
	}
	for _, s := range []struct {
		field string
		n     int
		x     MM
	}{{".StepRight", r.Columns, r.StepRight}, {".StepUp", r.Rows, r.StepUp}} {
		okay := c.offset(path+s.field, s.x, "distance between copies")
		if many := s.n > 1 || fill && s.n == 0 && s.x != 0; okay && many && math.Abs(float64(s.x)) < 0.1 {
			okay = c.within(path+s.field, math.Abs(float64(s.x)), 0.1, maxLength, "mm", "distance between copies: they must not lie on one another")
		}
		ok = ok && okay
	}
	return ok
}

// shifts are the places of the copies against the first, or the middle.
func (r Repeat) shifts() []outline.Point {
	nx, ny := max(r.Columns, 1), max(r.Rows, 1)
	out := make([]outline.Point, 0, nx*ny)
	for j := range ny {
		for i := range nx {
			out = append(out, r.shift(i, j))
		}
	}
	if r.Centred {
		b := outline.Box{Min: out[0], Max: out[0]}
		for _, p := range out {
			b = b.Join(outline.Box{Min: p, Max: p})
		}
		m := b.Centre()
		for i := range out {
			out[i].X, out[i].Y = out[i].X-m.X, out[i].Y-m.Y
		}
	}
	return out
}

// shift is the place of the copy in column i and row j.
func (r Repeat) shift(i, j int) outline.Point {
	x := float64(i)
	if r.Brick && j%2 != 0 {
		x += 0.5
	}
	return outline.Point{X: float64(x * float64(r.StepRight)), Y: float64(float64(j) * float64(r.StepUp))}
}

// check looks at the numbers of an anchor.
func (a Anchor) check(c *collector, path string) bool {
	n := len(c.ps)
	c.offset(path+".Right", a.Right, "place of the cut")
	c.offset(path+".Up", a.Up, "place of the cut")
	c.enum(path+".Datum", int(a.Datum), int(FromRight), "box.FromMiddle")
	c.enum(path+".Level", int(a.Level), int(BelowTop), "box.AlongFace")
	c.within(path+".Turn", float64(a.Turn), -360, 360, "deg", "turn of the shape")
	return len(c.ps) == n
}

// settle is the map from the shape's own frame to the feature frame of a part.
// box are the extents of all that is placed, turned already.
func (s *shell) settle(path string, a Anchor, p *part, box outline.Box) (outline.Affine, bool) {
	face := p.cavityFace()
	e := face.Extents()
	u, v := float64(a.Right), float64(a.Up)
	switch a.Datum {
	case FromLeft:
		u = e.Min.X + u
	case FromRight:
		u = e.Max.X - u
	}
	switch a.Level {
	case LowestAbove, CentreAbove:
		f := p.face.frame
		if !(f.V.Z > 1e-6) || math.Abs(f.U.Z) > 1e-9 {
			s.c.addf(path+".Level", "no-height", "%s lies level: a height over the floor does not say where on it", p.face.part)
			return outline.Affine{}, false
		}
		v = (v - f.O.Z) / f.V.Z
		if a.Level == LowestAbove {
			v -= box.Min.Y
		}
	case BelowTop:
		v = topAt(face, u) - v
	}
	return outline.Turn(float64(a.Turn)).Then(outline.Shift(u, v)), true
}

// cavityFace is the face of the cavity that a part covers; of a free part, its
// outline.
func (p *part) cavityFace() outline.Contour {
	if p.free != nil {
		return p.free.Outline
	}
	o := outline.Polygon(flat(p.face.loop, p.face.frame)...)
	if o.Area() < 0 { // of an inner part the loop is seen from the other side
		o = o.Reverse()
	}
	return o
}

// topAt is the highest point of an outline on an upright line; the highest of
// all where the line passes it by.
func topAt(o outline.Contour, u float64) float64 {
	top := math.Inf(-1)
	ps := o.Flatten(0.001)
	for i, a := range ps {
		b := ps[(i+1)%len(ps)]
		if !(math.Min(a.X, b.X) <= u && u <= math.Max(a.X, b.X)) {
			continue
		}
		if a.X == b.X {
			top = math.Max(top, math.Max(a.Y, b.Y))
			continue
		}
		top = math.Max(top, a.Y+float64((b.Y-a.Y)*((u-a.X)/(b.X-a.X))))
	}
	if math.IsInf(top, -1) {
		return o.Extents().Max.Y
	}
	return top
}

// mirrorLine is the part's upright centre line.
func (p *part) mirrorLine() float64 {
	if p.free != nil {
		return p.free.Outline.Extents().Centre().X
	}
	return 0
}

// mirrored is the map that mirrors about the part's centre line.
func (p *part) mirrored() outline.Affine {
	return outline.MirrorX().Then(outline.Shift(2*p.mirrorLine(), 0))
}

// copies places a shape as often as Repeat and Mirror say, each place once.
func (s *shell) copies(path string, o outline.Contour, at Anchor, r Repeat, mirror bool, p *part) []outline.Contour {
	turned := o.Transform(outline.Turn(float64(at.Turn))).Extents()
	shifts := r.shifts()
	box := turned
	for i, d := range shifts {
		b := outline.Box{Min: outline.Point{X: turned.Min.X + d.X, Y: turned.Min.Y + d.Y}, Max: outline.Point{X: turned.Max.X + d.X, Y: turned.Max.Y + d.Y}}
		if i == 0 {
			box = b
		}
		box = box.Join(b)
	}
	m, ok := s.settle(path+".At", at, p, box)
	if !ok {
		return nil
	}
	out := make([]outline.Contour, 0, 2*len(shifts))
	for _, d := range shifts {
		out = append(out, o.Transform(m.Then(outline.Shift(d.X, d.Y))))
	}
	if !mirror {
		return out
	}
	boxes := make([]outline.Box, len(out))
	for i, c := range out {
		boxes[i] = c.Extents()
	}
	grid := newBins(boxes)
	mm := p.mirrored()
	for i := range shifts {
		c, twice := out[i].Transform(mm), false
		grid.near(grow(c.Extents(), 1e-6), func(k int) { twice = twice || sameContour(c, out[k]) })
		if !twice {
			out = append(out, c)
		}
	}
	return out
}

// sameContour reports whether two contours are one within 1e-6 mm, wherever
// they begin.
func sameContour(a, b outline.Contour) bool {
	if len(a) != len(b) {
		return false
	}
	if !near(a.Extents(), b.Extents()) || math.Abs(a.Area()-b.Area()) > 1e-6*a.Length() {
		return false
	}
	for _, v := range a {
		if b.Distance(v.At()) > 1e-6 {
			return false
		}
	}
	return true
}

// onPart names a part that a feature speaks of, by its field.
type onPart struct {
	field string
	part  Part
}

// onParts names the parts of a list in a field.
func onParts(field string, ps []Part) []onPart {
	var out []onPart
	for i, p := range ps {
		out = append(out, onPart{fmt.Sprintf("%s[%d]", field, i), p})
	}
	return out
}
