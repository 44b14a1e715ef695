package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// CoverStrip covers the joint where a roof meets a wall that runs on above it: a
// strip on the wall's inner face with its lower edge bevelled to the roof. Along
// the ends of a gable there are two, NAME/1 and NAME/2; else it is NAME.
type CoverStrip struct {
	Name   string
	On     Part  // "" means the back; on a polygon it must be said
	Height MM    // of the strip on the wall, square to the roof's line
	Board  Board // zero means the design's
}

func (CoverStrip) outer() {}

func (f CoverStrip) on(s *shell) []onPart { return []onPart{{".On", s.backOr(f.On)}} }

func (f CoverStrip) names(d *Design) []made {
	if g, ok := d.Roof.(Gable); ok {
		end := f.On == "" || f.On == Back || f.On == Front
		if g.Run == LeftToRight {
			end = f.On == Left || f.On == Right
		}
		if end {
			return []made{{".Name", f.Name + "/1"}, {".Name", f.Name + "/2"}}
		}
	}
	return made1(f.Name)
}

func (f CoverStrip) check(_ *Design, c *collector, path string) {
	c.length(path+".Height", f.Height, "height of a cover strip")
	c.board(path+".Board", f.Board, false)
}

func (f CoverStrip) build(s *shell, m *making) {
	host := m.host(s.backOr(f.On))
	if host == nil {
		return
	}
	w := host.face
	if !w.up() {
		s.c.addf(m.path+".On", "not-up", "%s does not run on above the roof: there is nothing that a strip could lie on", w.part)
		return
	}
	var roofs []*part
	for _, i := range s.roofs() {
		if e := s.pair[[2]int{min(host.at, i), max(host.at, i)}]; e != nil && e.ok {
			roofs = append(roofs, m.host(s.faces[i].part))
		}
	}
	ns := f.names(s.d)
	if len(roofs) != len(ns) {
		s.c.addf(m.path+".On", "no-edge", "%d slopes of the roof meet %s: a cover strip lies along one, or along the two of a gable", len(roofs), w.part)
		return
	}
	fr := turnedFrame(w)
	wall := host.wallBox() // seen from outside
	for k, r := range roofs {
		p := s.slab(m, ns[k].name, f.Board, w.in.Flip(), fr)
		lower := r.face.in.Shift(r.face.t)
		line := lower.N.Cross(w.in.N).Unit()
		up := fr.W.Cross(line).Unit() // in the wall, square to the roof's line
		if up.Dot(lower.N) < 0 {
			up = up.Scale(-1)
		}
		on := solid.Vec{} // a place on the line: on both planes
		on = on.Add(w.in.N.Scale(w.in.D))
		on = on.Add(up.Scale(-lower.At(on) / up.Dot(lower.N)))
		p.add(lower.Flip(), r.at)
		p.add(solid.NewPlane(up, up.Dot(on)+float64(f.Height)), fromOutline)
		// As wide as the wall and the roof.
		lo, hi := r.convex.Reach(fr.U)
		lo, hi = math.Max(lo-fr.U.Dot(fr.O), -wall.Max.X), math.Min(hi-fr.U.Dot(fr.O), -wall.Min.X)
		p.line(outline.Point{X: hi}, outline.Point{X: hi, Y: 1})
		p.line(outline.Point{X: lo}, outline.Point{X: lo, Y: -1})
		if len(roofs) == 2 { // they meet where they are equally high
			o := roofs[1-k].face
			other := o.in.Shift(o.t)
			n := other.N.Sub(lower.N)
			p.add(solid.NewPlane(n, other.D-lower.D), fromOutline)
		}
		if !s.finishSlab(p) {
			return
		}
		// The wall must be as high.
		room := math.Inf(1)
		for _, g := range host.convex.Faces {
			if host.from[g.ID] == fromEnd {
				room = solid.Plane{N: g.N, D: g.N.Dot(g.Loop[0])}.D
			}
		}
		if _, top := p.convex.Reach(solid.Vec{Z: 1}); top > room+1e-6 {
			s.c.add(Problem{Path: m.path + ".Height", Code: "range", Got: num(float64(f.Height)), Lo: minLength, Hi: math.Max(minLength, float64(f.Height)-(top-room)/up.Z), Unit: "mm",
				Why: fmt.Sprintf("the cover strip stands over the end of %s", w.part)})
			return
		}
		m.put(p)
		s.lieOn(m.path, host, p, joints.Hold{Kind: "screw", Note: "through " + string(p.face.part) + ", bedded in sealant"})
		long := p.cavityFace().Extents().Width()
		s.screws(max(2, int(math.Ceil(long/150))), p.face.t, w.least, []Part{p.face.part, w.part}, "the cover strip to the wall")
	}
}

// RidgeCap covers the ridge of a gable with two boards, NAME/1 lapping over
// NAME/2, or with a strip of sheet, which is listed with its cut size and has no
// part.
type RidgeCap struct {
	Name  string
	Width MM     // down each slope from the ridge, on the roof
	Past  MM     // runs on past the roof at both ends
	Sheet string // "" makes boards; "felt", "lead" ... a strip of it
	Board Board  // zero means the design's
}

func (RidgeCap) outer() {}

func (f RidgeCap) names(*Design) []made {
	if f.Sheet != "" {
		return nil
	}
	return []made{{".Name", f.Name + "/1"}, {".Name", f.Name + "/2"}}
}

func (f RidgeCap) on(*shell) []onPart { return nil }

func (f RidgeCap) check(d *Design, c *collector, path string) {
	c.length(path+".Width", f.Width, "width of a ridge cap on each slope")
	c.atLeast0(path+".Past", f.Past, "how far a ridge cap runs on past the roof")
	c.board(path+".Board", f.Board, false)
	if f.Sheet != "" {
		c.name(path+".Sheet", f.Sheet)
	}
	if _, ok := d.Roof.(Gable); !ok {
		c.addf(path, "no-ridge", "only a gable has a ridge to cap")
	}
}

func (f RidgeCap) build(s *shell, m *making) {
	rs := s.roofs()
	if len(rs) != 2 {
		return
	}
	a, b := m.host(s.faces[rs[1]].part), m.host(s.faces[rs[0]].part)
	if a == nil || b == nil {
		return
	}
	// The ridge line: where the outer planes meet.
	oa, ob := a.face.in.Shift(a.face.t), b.face.in.Shift(b.face.t)
	for _, r := range []*part{a, b} {
		other := ob
		if r == b {
			other = oa
		}
		v := ridgeV(r, other)
		if low := r.wallBox().Min.Y; !s.c.within(m.path+".Width", float64(f.Width), minLength, v-low, "mm", "width of a ridge cap: as long as the slope of "+string(r.face.part)) {
			return
		}
	}
	lo, hi := a.convex.Reach(a.face.frame.U)
	lo2, hi2 := b.convex.Reach(a.face.frame.U)
	lo, hi = math.Min(lo, lo2)-float64(f.Past), math.Max(hi, hi2)+float64(f.Past)
	if f.Sheet != "" {
		s.sheet(f.Sheet, outline.Region{outline.Rectangle(0, -float64(f.Width), hi-lo, float64(f.Width))}, []Part{a.face.part, b.face.part}, "over the ridge, folded along its middle")
		return
	}
	half := func(r *part, name string, end solid.Plane, other solid.Plane) *part {
		in, fr := r.face.onFace(FromOuter, 0)
		p := s.slab(m, name, f.Board, in, fr)
		u := a.face.frame.U
		p.add(solid.NewPlane(u, hi), fromOutline)
		p.add(solid.NewPlane(u.Scale(-1), -lo), fromOutline)
		v := ridgeV(r, other) - float64(f.Width)
		p.line(outline.Point{Y: v}, outline.Point{X: 1, Y: v})
		p.add(end, fromOutline)
		if !s.finishSlab(p) {
			return nil
		}
		m.put(p)
		s.lieOn(m.path, r, p, joints.Hold{Kind: "screw", Note: "through " + string(p.face.part)})
		s.screws(max(2, int(math.Ceil((hi-lo)/150))), p.face.t, r.face.least, []Part{p.face.part, r.face.part}, "the ridge cap to the roof")
		return p
	}
	ta, tb := s.thick(m.part(f.Name+"/1"), f.Board), s.thick(m.part(f.Name+"/2"), f.Board)
	endA, endB := ob.Shift(tb), oa
	// The butted board's outer face begins t cot(2 pitch) down from the ridge.
	if p := 2 * a.face.pitch; p < 90 && a.face.pitch >= leastButtRidge {
		if !s.c.within(m.path+".Width", float64(f.Width), tb/tan(p)+minLength, maxLength, "mm", "width of a ridge cap: its second board ends in a long bevel under the first") {
			return
		}
	}
	if a.face.pitch < leastButtRidge { // too flat for a butt: mitred
		n := ob.N.Scale(1 / tb).Sub(oa.N.Scale(1 / ta))
		endA = solid.NewPlane(n, ob.D/tb-oa.D/ta)
		endB = endA.Flip()
	}
	p, q := half(a, f.Name+"/1", endA, ob), half(b, f.Name+"/2", endB, oa)
	if p != nil && q != nil {
		s.abut(m.path, p, q, joints.Hold{Kind: "glue"})
	}
}

// ridgeV is where, on the outer face of a slope, the ridge line lies.
func ridgeV(r *part, other solid.Plane) float64 {
	_, fr := r.face.onFace(FromOuter, 0)
	return -other.At(fr.O) / other.N.Dot(fr.V)
}
