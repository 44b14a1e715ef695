package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// makeOpens makes the free parts that openings bring with them.
func (s *shell) makeOpens(parts []*part) []*part {
	s.d.eachOpening(func(path string, o opener) {
		var w *way
		switch o := o.(type) {
		case Inspection:
			w = s.inspection(path, o, parts)
		case Stopper:
			w = s.stopper(path, o, parts)
		case TurnButton:
			w = s.turnButton(path, o, parts)
		}
		if w == nil {
			return
		}
		q := s.freePart(path, w.plate)
		if q == nil {
			return
		}
		w.path, w.of, w.face, w.hinge, w.part = path, o, -1, -1, q.face.part
		w.ends(q)
		parts = append(parts, q)
		if b, ok := o.(TurnButton); ok {
			if v := s.wayOf(s.shellFace(b.Part)); v != nil {
				v.aside = append(v.aside, w)
			}
		}
		s.ways = append(s.ways, w)
	})
	return parts
}

// ends settles how far a plate goes.
func (w *way) ends(q *part) {
	switch w.kind {
	case turning:
		w.most = 90
	default:
		w.most = q.face.t + 100
	}
}

// onto is a plate on the outer face of a part, its origin at u and v of the
// part's frame.
func onto(f *face, name string, b Board, u, v float64) *Free {
	at := f.frame.Out(solid.Vec{X: u, Y: v, Z: f.t})
	return &Free{Name: name, Board: b, At: place(at), Facing: Direction(f.frame.W), Up: Direction(f.frame.V)}
}

// plateThick is the thickness of a plate.
func (s *shell) plateThick(b Board) float64 {
	if b == (Board{}) {
		b = s.d.Board
	}
	return b.most()
}

// wallPart is the wall that an opening is in, nil if it is none.
func (s *shell) wallPart(path, field string, name Part, parts []*part) *part {
	i := s.shellFace(name)
	if i < 0 || i >= s.walls {
		if i >= 0 {
			s.c.addf(path+field, "not-a-wall", "%s is no wall", name)
		}
		return nil
	}
	return atFace(parts, i)
}

func (s *shell) inspection(path string, o Inspection, parts []*part) *way {
	p := s.wallPart(path, ".On", o.On, parts)
	if p == nil {
		return nil
	}
	f := p.face
	wide, high, lap := mmOr(o.Width, 100), mmOr(o.Height, 100), mmOr(o.Lap, 15)
	_, cl := sincos(f.lean)
	v := mmOr(o.Sill, 50)/cl + high/2
	u := float64(o.Right)
	hole := outline.Rectangle(u-wide/2, v-high/2, u+wide/2, v+high/2)
	name := openName(o)
	p.feats = append(p.feats, feat{path: path, source: "inspection opening", use: UseOpening, outline: settled(hole), cavity: true})
	fr := onto(f, name, o.Board, u, v)
	fr.Outline = outline.Rectangle(-wide/2-lap, -high/2-lap, wide/2+lap, high/2+lap)
	w := &way{path: path, kind: lifting, axis: motion{d: f.in.N}, plate: fr, parent: s.wayOf(p.at)}
	for _, y := range []float64{high/2 + lap/2, -high/2 - lap/2} {
		around := outline.Box{Min: outline.Point{X: u - wide/2, Y: v + y - lap/2 + 4}, Max: outline.Point{X: u + wide/2, Y: v + y + lap/2 - 4}}
		q := s.clearOfStrips(p, outline.Point{X: u, Y: v + y}, 4.5, around, nil)
		fr.Cuts = append(fr.Cuts, Cut{Shape: Round{4.5}, At: Anchor{Right: MM(q.X - u), Up: MM(q.Y - v)}, Use: UseScrew, Name: "screw of the cover"})
		w.fitBore(p, f.frame.Out(solid.Vec{X: q.X, Y: q.Y}), 2.5, f.least-2, FromOuter, UseScrew, "screw of the cover", FreePart(name))
	}
	s.screws(2, s.plateThick(o.Board), f.least, []Part{FreePart(name), o.On}, "hold the cover of the inspection opening; slacken one, take out the other, and it turns aside")
	return w
}

func (s *shell) stopper(path string, o Stopper, parts []*part) *way {
	on := s.frontOr(o.On)
	p := s.wallPart(path, ".On", on, parts)
	if p == nil {
		return nil
	}
	var hole outline.Contour
	for _, x := range s.d.Features {
		e, ok := x.(Entrance)
		if !ok || s.frontOr(e.On) != on {
			continue
		}
		c := &collector{}
		shape, ok := shapeOutline(c, "", e.Shape)
		if !ok {
			return nil // reported with the entrance
		}
		_, cl := sincos(p.face.lean)
		hole = shape.Transform(outline.Shift(float64(e.Right), float64(e.Above)/cl-shape.Extents().Min.Y))
		break
	}
	if hole == nil {
		s.c.addf(path+".On", "no-entrance", "%s has no entrance to shut", on)
		return nil
	}
	lap := mmOr(o.Lap, 6)
	e := hole.Extents()
	wide := e.Height() + 2*lap      // of the plate; it lies across the entrance when shut
	off := e.Width()/2 + wide/2 + 1 // of the screw from the middle of the entrance
	long := off + e.Width()/2 + lap // from the screw to the free end
	mid := outline.Point{X: (e.Min.X + e.Max.X) / 2, Y: (e.Min.Y + e.Max.Y) / 2}
	u, v := mid.X+off, mid.Y                                // of the screw
	axis := motion{turn: true, d: p.face.frame.W.Scale(-1)} // clockwise: up to the left
	if o.Left {
		u, axis.d = mid.X-off, p.face.frame.W
	}
	name := openName(o)
	fr := onto(p.face, name, o.Board, u, v)
	r := wide / 2
	fr.Outline = outline.Contour{{X: -r, Y: -long}, {X: r, Y: -long}, {X: r, Y: 0, Bulge: 1}, {X: -r, Y: 0}}
	fr.Cuts = []Cut{{Shape: Round{4.5}, Use: UseScrew, Name: "screw of the stopper"}}
	axis.o = p.face.frame.Out(solid.Vec{X: u, Y: v})
	w := &way{path: path, axis: axis, plate: fr, parent: s.wayOf(p.at)}
	w.fitBore(p, axis.o, 2.5, p.face.least-2, FromOuter, UseScrew, "screw of the stopper", FreePart(name))
	s.screws(1, s.plateThick(o.Board), p.face.least, []Part{FreePart(name), on}, "the stopper turns on it")
	return w
}

// turnButton is a bar in the plane in which a seam lies flush: on the end of what
// laps over, or on the outer face of what is lapped over.
func (s *shell) turnButton(path string, o TurnButton, parts []*part) *way {
	m, ok := s.openSeam(parts, s.shellFace(o.Part), s.shellFace(o.At))
	if !ok {
		s.noSeam(path, o.Part, o.At)
		return nil
	}
	long, wide := mmOr(o.Length, 50), mmOr(o.Width, 16)
	if !s.c.within(path+".Along", float64(o.Along), -m.length/2, m.length/2, "mm", "place of the button, from the middle of the seam") {
		return nil
	}
	// face offers its outer face, end its end, which lies flush with it.
	face, end := m.p, m.n
	if m.over {
		face, end = m.n, m.p
	}
	run := s.runOn(m.e.over, m.e.under)
	if end.face.up() {
		run += end.face.above
	}
	if m.mitre || run > 1e-6 || math.Abs(m.e.theta-90) > 1e-6 {
		s.c.add(Problem{Path: path + ".At", Code: "not-flush", Got: num(run),
			Why: fmt.Sprintf("%s and %s are not flush and square outside: a button cannot turn over the seam", o.Part, o.At), Try: "box.HookAndEye"})
		return nil
	}
	f := face.face
	at := m.mid.Add(m.along.Scale(float64(o.Along)))
	to := end.face.in.N // in the outer face, away from the middle of it
	seam := at          // on the line where the two show outside
	name := openName(o)
	var pivot, up solid.Vec
	if m.over { // the button stands on the face and reaches up over the end
		pivot = seam.Sub(to.Scale(math.Max(wide/2, long*2/3-end.face.t+1)))
		up = to
	} else { // it stands on the end and reaches over the face
		pivot = seam.Add(to.Scale(end.face.t / 2))
		up = to.Scale(-1)
	}
	reach := long * 2 / 3
	tail := long - reach
	fr := &Free{Name: name, Board: o.Board, At: place(pivot.Add(f.in.N.Scale(f.t - f.in.At(pivot)))), Facing: Direction(f.in.N), Up: Direction(up)}
	fr.Outline = outline.RoundedRectangle(-wide/2, -tail, wide/2, reach, wide/4)
	fr.Cuts = []Cut{{Shape: Round{4.5}, Use: UseScrew, Name: "screw of the button"}}
	w := &way{path: path, axis: motion{turn: true, o: pivot, d: f.in.N}, plate: fr, parent: s.wayOf(m.n.at)}
	if m.over {
		w.fitBore(face, pivot, 2.5, f.least-2, FromOuter, UseScrew, "screw of the button", FreePart(name))
	} else {
		end.intoEnd(pivot.Add(f.in.N.Scale(f.t-f.in.At(pivot))), f.in.N.Scale(-1), 2.5, 15, UseScrew, "screw of the button")
	}
	into := f.least
	if !m.over {
		into = maxThickness // into the end
	}
	s.screws(1, s.plateThick(o.Board), into, []Part{FreePart(name), o.At}, "the button that keeps "+string(o.Part)+" shut turns on it")
	return w
}
