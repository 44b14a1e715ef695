package box

import (
	"math"
	"slices"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// slab begins a flat part: a board's thickness over the plane in, which is where
// w of the frame is zero. Its edges follow.
func (s *shell) slab(m *making, name string, b Board, in solid.Plane, fr solid.Frame) *part {
	f := &face{part: m.part(name), kind: innerFace, in: in, frame: fr}
	s.setBoard(f)
	if b != (Board{}) {
		f.board, f.grain, f.t, f.least = b, b.Grain, b.most(), b.least()
	}
	p := &part{face: f, at: -1, path: m.path}
	p.add(in.Flip(), fromInner)
	p.add(in.Shift(f.t), fromOuter)
	return p
}

// onFace is the frame and the plane of the outer face of a part of the shell, or
// of its inner one less the thickness t: where a slab on it begins.
func (f *face) onFace(side CutSide, t float64) (solid.Plane, solid.Frame) {
	d := f.t
	if side == FromInner {
		d = -t
	}
	fr := f.frame
	fr.O = fr.O.Add(fr.W.Scale(d))
	return f.in.Shift(d), fr
}

// thick is the thickness that a board, or else that of the part, is cut for.
func (s *shell) thick(part Part, b Board) float64 {
	if b != (Board{}) {
		return b.most()
	}
	f := face{part: part, kind: innerFace}
	s.setBoard(&f)
	return f.t
}

// line limits a slab to the left of a line through two places of its frame.
func (p *part) line(a, b outline.Point) {
	f := p.face.frame
	n := f.U.Scale(b.Y - a.Y).Sub(f.V.Scale(b.X - a.X))
	p.add(solid.NewPlane(n, n.Dot(f.Out(vec(a)))), fromOutline)
}

// rect limits a slab to a rectangle of its frame.
func (p *part) rect(b outline.Box) {
	c := [4]outline.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
	for i := range c {
		p.line(c[i], c[(i+1)%4])
	}
}

// finishSlab finishes a slab: its frame moves to the middle of its lower edge, and
// its grain, if nothing else is said, runs along its longer side.
func (s *shell) finishSlab(p *part) bool {
	if !p.finish() {
		s.c.addf(p.path, "no-part", "nothing is left of %s", p.face.part)
		return false
	}
	f, outer := p.face, false
	for k := range p.convex.Faces {
		switch g := &p.convex.Faces[k]; p.from[g.ID] {
		case fromInner:
			f.loop = g.Loop
		case fromOuter:
			outer = true
		}
	}
	if f.loop == nil || !outer {
		s.c.addf(p.path, "no-part", "%s would lose one of its faces: its edges meet before they reach it", f.part)
		return false
	}
	ps := flat(f.loop, f.frame)
	e := outline.Polygon(ps...).Extents()
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range ps {
		if q.Y < e.Min.Y+1e-6 {
			lo, hi = math.Min(lo, q.X), math.Max(hi, q.X)
		}
	}
	f.frame.O = f.frame.Out(solid.Vec{X: (lo + hi) / 2, Y: e.Min.Y})
	if f.grain == GrainAuto {
		f.grain = GrainUp
		if e.Width() > e.Height()+1e-9 {
			f.grain = GrainAcross
		}
	}
	return true
}

// over carries an outline from the frame of one part to that of another that is
// parallel to it.
func (p *part) over(from solid.Frame, o outline.Contour) outline.Contour {
	return settled(o.Transform(across(from, p.face.frame)))
}

// laid is a part that lies with its face on another.
type laid struct {
	over, under *part // under is the one that is laid on
	path, joint string
	holds       []joints.Hold
}

// lieOn notes that a part lies on another, and what holds it there.
func (s *shell) lieOn(path string, host, guest *part, holds ...joints.Hold) {
	s.laid = append(s.laid, laid{host, guest, path, "face", holds})
}

// abut notes that a part stands with its edge against another.
func (s *shell) abut(path string, host, guest *part, holds ...joints.Hold) {
	s.laid = append(s.laid, laid{host, guest, path, "butt", holds})
}

// takeAlong lets what is fixed to a part that opens move with it: plates, caps,
// landing boards.
func (s *shell) takeAlong() {
	for _, w := range s.ways {
		with := slices.Clone(w.with)
		for found := true; found; {
			found = false
			for _, l := range s.laid {
				on, part := l.over.face.part, l.under.face.part
				if len(l.holds) > 0 && (on == w.part || slices.Contains(with, on)) && !slices.Contains(with, part) {
					with, found = append(with, part), true
				}
			}
		}
		w.with = with
	}
}

// laidSeams are the seams of parts that lie on others.
func (s *shell) laidSeams(p *Plan) {
	for _, l := range s.laid {
		f := l.under.face
		e := l.under.cavityFace().Extents()
		mid := e.Centre().Y
		m := Seam{Over: l.over.face.part, Under: f.part, Joint: l.joint,
			From: place(f.frame.Out(solid.Vec{X: e.Min.X, Y: mid})), To: place(f.frame.Out(solid.Vec{X: e.Max.X, Y: mid})),
			Theta: 180, Holds: l.holds, Contact: solid.Contact(l.over.solid, l.under.solid, 1e-6)}
		if l.joint == "butt" {
			m.Theta = Deg(math.Acos(math.Max(-1, math.Min(1, -l.over.face.in.N.Dot(f.in.N)))) * 180 / math.Pi)
			if a, b, ok := l.under.edgeOn(l.over); ok {
				m.From, m.To = place(a), place(b)
			}
		}
		if !(m.Contact > 0) {
			s.c.addf(l.path, "no-contact", "%s does not lie on %s anywhere", f.part, m.Over)
		}
		for _, q := range l.over.pieces() {
			for _, r := range l.under.pieces() {
				n := m
				n.Over, n.Under, n.Contact = q.face.part, r.face.part, solid.Contact(q.solid, r.solid, 1e-6)
				if n.Contact > 0 {
					p.seams = append(p.seams, n)
				}
			}
		}
	}
}

// hole takes an outline, given in a frame parallel to the part, through it.
func (p *part) hole(path, source string, use Use, from solid.Frame, o outline.Contour) {
	p.feats = append(p.feats, feat{path: path, source: source, use: use, outline: p.over(from, o)})
}

// edgeOn is the longest edge of a part's inner face that lies on a plane of
// another part, startsLater telling where it begins.
func (p *part) edgeOn(q *part) (a, b solid.Vec, ok bool) {
	n := len(p.face.loop)
	for i := range p.face.loop {
		x, y := p.face.loop[i], p.face.loop[(i+1)%n]
		for _, h := range q.base {
			if math.Abs(h.At(x)) < 1e-6 && math.Abs(h.At(y)) < 1e-6 && y.Sub(x).Len() > b.Sub(a).Len()+1e-9 {
				a, b, ok = x, y, true
			}
		}
	}
	if ok && startsLater(a, b) {
		a, b = b, a
	}
	return a, b, ok
}

// turnedFrame looks at a wall from inside: u runs the other way, and w into the
// cavity.
func turnedFrame(f *face) solid.Frame {
	fr := f.frame
	fr.U, fr.W = fr.U.Scale(-1), fr.W.Scale(-1)
	return fr
}

// levelPlane is the half-space below a height.
func levelPlane(z float64) solid.Plane { return solid.NewPlane(solid.Vec{Z: 1}, z) }
