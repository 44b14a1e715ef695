package box

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// makeAll makes inner or outer elements.
func (s *shell) makeAll(parts []*part, side CutSide) []*part {
	m := &making{side: side, parts: parts}
	s.eachMaker(side, func(path string, x maker) {
		m.path = path
		x.build(s, m)
	})
	return m.parts
}

// eachMaker calls do for the inner or the outer elements, with their places in
// the design.
func (s *shell) eachMaker(side CutSide, do func(path string, x maker)) {
	if side == FromInner {
		for i, in := range s.d.Inner {
			if x, ok := asMaker(in); ok {
				do(typed(fmt.Sprintf("Inner[%d]", i), in), x)
			}
		}
		return
	}
	for i, out := range s.d.Outer {
		if x, ok := asMaker(out); ok {
			do(typed(fmt.Sprintf("Outer[%d]", i), out), x)
		}
	}
}

func (p Partition) names(*Design) []made { return made1(p.Name) }

func (p Partition) on(*shell) []onPart { return nil }

func (p Partition) check(d *Design, c *collector, path string) {
	c.enum(path+".Across", int(p.Across), int(RunLeftToRight), "box.RunFrontToBack")
	c.offset(path+".At", p.At, "place of the partition from the cavity's middle")
	c.atLeast0(path+".Above", p.Above, "height of the partition's lower edge over the cavity floor")
	c.atLeast0(path+".Height", p.Height, "height of the partition; 0 is up to the roof")
	c.board(path+".Board", p.Board, false)
	c.rectangle(d, path, "a partition stands between opposite walls of a rectangle")
	c.finite(path+".Joint", p.Joint)
}

// rectangle refuses a footprint that is none.
func (c *collector) rectangle(d *Design, path, why string) {
	if d.Footprint != nil {
		c.addf(path, "footprint", "%s", why)
	}
}

// build makes a partition between two opposite walls of a rectangle. Against
// each of them it is the second part of a corner of its own, with its near face
// as the inner one; the walls run on past it.
func (p Partition) build(s *shell, m *making) { s.partition(m, p) }

func (s *shell) partition(m *making, p Partition) *part {
	path := m.path
	hosts, normal := [2]Part{Front, Back}, solid.Vec{X: 1}
	if p.Across == RunLeftToRight {
		hosts, normal = [2]Part{Left, Right}, solid.Vec{Y: 1}
	}
	t := s.thick(InnerPart(p.Name), p.Board)
	q := s.slab(m, p.Name, p.Board, solid.NewPlane(normal, float64(p.At)-t/2), solid.Frame{})
	f := q.face
	f.nh = [2]float64{normal.X, normal.Y}
	middle := s.cav.Clip(f.in.Flip(), -20).Clip(f.in.Shift(f.t), -21)
	f.loop = s.loopOn(middle, f.in, -20, false)
	if f.loop == nil || s.loopOn(middle, f.in.Shift(f.t), -21, false) == nil {
		lo, hi := s.cav.Reach(normal)
		s.c.add(Problem{Path: path + ".At", Code: "outside", Got: num(float64(p.At)), Lo: lo + f.t/2, Hi: hi - f.t/2, Unit: "mm", Why: "the partition stands in the wall or outside the cavity"})
		return nil
	}
	_, top := middle.Reach(solid.Vec{Z: 1})
	if float64(p.Height) > top+1e-6 {
		s.c.add(Problem{Path: path + ".Height", Code: "range", Got: num(float64(p.Height)), Lo: 0, Hi: top, Unit: "mm", Why: "the partition would go through the roof; 0 is up to it"})
		return nil
	}
	if p.Height != 0 {
		if !s.c.within(path+".Height", float64(p.Height), minLength, top+1e-6, "mm", "height of the partition; 0 is up to the roof") {
			return nil
		}
		top = float64(p.Height)
	}
	if !s.c.within(path+".Above", float64(p.Above), 0, top-minLength, "mm", "height of the lower edge, below the upper one") {
		return nil
	}
	f.frame = featureFrame(f)
	if p.Above > 0 {
		q.add(solid.NewPlane(solid.Vec{Z: -1}, -float64(p.Above)), fromOutline)
		middle = middle.Clip(solid.NewPlane(solid.Vec{Z: -1}, -float64(p.Above)), -22)
		if loop := s.loopOn(middle, f.in, -20, false); loop != nil { // the face that the features see
			f.loop = loop
			f.frame = featureFrame(f)
		}
	}
	if p.Height != 0 {
		q.add(solid.NewPlane(solid.Vec{Z: 1}, float64(p.Height)), fromOutline)
	}
	held := func(i int) bool { return s.faces[i].part == hosts[0] || s.faces[i].part == hosts[1] }
	if !s.letInto(q, m, p.Joint, held, func(int) float64 { return 0 }) {
		return nil
	}
	return m.put(q)
}

// loopOn is the face that a cut left in a cell of the cavity; where an open side
// of the cavity, or any side, lies in the cut's plane, that side.
func (s *shell) loopOn(c solid.Convex, h solid.Plane, id int, either bool) []solid.Vec {
	if g, ok := c.FaceOf(id); ok {
		return g.Loop
	}
next:
	for _, g := range c.Faces {
		if g.ID < 0 || g.ID >= len(s.faces) || !either && !s.faces[g.ID].open {
			continue
		}
		for _, q := range g.Loop {
			if math.Abs(h.At(q)) > 1e-6 {
				continue next
			}
		}
		return g.Loop
	}
	return nil
}

// renamed gives the problems after the first n, which speak of a partition's
// fields, the names of the fields that they came from.
func (s *shell) renamed(n int, path string, fields map[string]string) {
	for i := n; i < len(s.c.ps); i++ {
		p := &s.c.ps[i]
		if to, ok := fields[strings.TrimPrefix(p.Path, path)]; ok {
			p.Path = path + to
		}
	}
}

// letInto bounds an inner part by the faces of the cavity: with a joint in the
// walls that hold it, and short of the others by what gap says.
func (s *shell) letInto(q *part, m *making, jt joint, holds func(i int) bool, gap func(i int) float64) bool {
	f := q.face
	if isNil(jt) {
		jt = joints.Housing{}
	}
	type held struct {
		host *part
		e    *edge
	}
	var all []held
	for i := range s.faces {
		w := &s.faces[i]
		if !holds(i) || w.open {
			if x := gap(i); x > 0 {
				q.add(w.in.Shift(-x), fromOutline)
			} else if !q.has(w.in) {
				q.add(w.in, i)
			}
			continue
		}
		e := s.innerEdge(i, f, s.roomy(jt, f, i), m.path+".Joint")
		if e == nil {
			return false
		}
		for _, l := range e.sec.B.Keep {
			if h, ok := s.lift(w, f, l); ok {
				q.add(h, i)
			}
		}
		for _, o := range m.parts {
			if o.face == w {
				all = append(all, held{o, e})
			}
		}
	}
	if !q.finish() {
		s.c.addf(m.path, "no-part", "nothing is left of %s between the walls", f.part)
		return false
	}
	for _, h := range all {
		for _, z := range h.e.sec.A.Lose {
			hs := s.zoneOf(h.host.face, f, h.e, z)
			for k, b := range q.base {
				if q.from[k] >= 0 && &s.faces[q.from[k]] != h.host.face || q.from[k] == fromOutline {
					hs = append(hs, b)
				}
			}
			h.host.cut(hs, cutter{edge: h.e, zone: z, guest: f})
		}
		for _, z := range h.e.sec.B.Lose {
			q.cut(s.zoneOf(h.host.face, f, h.e, z), cutter{edge: h.e, zone: z, guest: h.host.face})
		}
		s.inner = append(s.inner, h.e)
	}
	return true
}

// has reports whether a part is bounded by a plane already: one that stands flush
// with an open side.
func (p *part) has(h solid.Plane) bool {
	for _, b := range p.base {
		if b.N.Dot(h.N) > 1-1e-12 && math.Abs(b.D-h.D) < 1e-6 {
			return true
		}
	}
	return false
}

// innerEdge is the line where an inner part's near face meets a wall.
func (s *shell) innerEdge(i int, f *face, jt joint, path string) *edge {
	w := &s.faces[i]
	e := &edge{i: i, j: -1, over: i, under: -1, joint: jt, path: path, theta: 90, guest: f}
	if dot := w.in.N.Dot(f.in.N); math.Abs(dot) > 1e-11 {
		e.theta = math.Acos(math.Max(-1, math.Min(1, -dot))) * 180 / math.Pi
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	e.dir = w.in.N.Cross(f.in.N).Unit()
	if e.dir.Z < 0 || e.dir.Z == 0 && e.dir.X+e.dir.Y < 0 {
		e.dir = e.dir.Scale(-1)
	}
	for _, p := range f.loop {
		if math.Abs(w.in.At(p)) < 1e-6 {
			if v := e.dir.Dot(p); v < lo {
				lo, e.a = v, p
			}
			if v := e.dir.Dot(p); v > hi {
				hi, e.b = v, p
			}
		}
	}
	if !(hi-lo >= minLength) {
		s.c.addf(path, "no-edge", "%s does not reach %s", f.part, w.part)
		return nil
	}
	e.length = hi - lo
	reach := 0.0
	for _, p := range f.loop {
		reach = math.Max(reach, math.Abs(w.in.At(p)))
	}
	c := joints.Corner{NameA: string(w.part), NameB: string(f.part),
		TA: MM(w.t), TB: MM(f.t), LeastA: MM(w.least), LeastB: MM(f.least), Theta: Deg(e.theta),
		Length: MM(e.length), RunOn: MM(w.t), ReachA: maxLength, ReachB: MM(reach)}
	sec, ok := s.section(jt, path, c)
	if !ok {
		return nil
	}
	if !bounded(sec.A.Lose) {
		s.c.addf(path, "unbounded", "the wall runs on past %s on both sides, so the joint must be a channel as wide as it is thick: a housing, or a butt", f.part)
		return nil
	}
	e.sec, e.ok = sec, true
	return e
}

// bounded reports whether all zones end on both sides of the second part.
func bounded(zones []joints.Zone) bool {
	for _, z := range zones {
		above, below := false, false
		for _, l := range z.Lines {
			above, below = above || l.B > 0, below || l.B < 0
		}
		if !above || !below {
			return false
		}
	}
	return true
}

// buildFree makes the free parts.
func (s *shell) buildFree(parts []*part) []*part {
	for i := range s.d.Free {
		if p := s.freePart(fmt.Sprintf("Free[%d]", i), &s.d.Free[i]); p != nil {
			parts = append(parts, p)
		}
	}
	return parts
}

func (d Design) checkFree(c *collector) {
	seen := map[string]bool{}
	for i := range d.Free {
		f, path := &d.Free[i], fmt.Sprintf("Free[%d]", i)
		c.name(path+".Name", f.Name)
		if seen[f.Name] {
			c.addf(path+".Name", "twice", "another free part has the name %.60q", f.Name)
		}
		seen[f.Name] = true
		c.board(path+".Board", f.Board, false)
		checkOutline(c, path+".Outline", f.Outline)
		c.offset(path+".At.X", f.At.X, "place of the part")
		c.offset(path+".At.Y", f.At.Y, "place of the part")
		c.offset(path+".At.Z", f.At.Z, "place of the part")
		w, v := f.axes()
		s := &shell{d: &d, c: c}
		for k, cut := range f.Cuts {
			s.plainCut(fmt.Sprintf("%s.Cuts[%d]", path, k), cut, nil)
		}
		facing := w.Len() > 1e-9 && w.Len() < 1e9
		if !facing {
			c.addf(path+".Facing", "direction", "the part must face somewhere")
		}
		if !(v.Len() > 1e-9 && v.Len() < 1e9) {
			c.addf(path+".Up", "direction", "the part must have an upper end")
		} else if facing && !(w.Unit().Cross(v.Unit()).Len() > 1e-3) {
			c.addf(path+".Up", "direction", "up must not be the way the part faces")
		}
	}
}

func (f *Free) axes() (facing, up solid.Vec) {
	facing, up = solid.Vec(f.Facing), solid.Vec(f.Up)
	if f.Facing == (Direction{}) {
		facing = solid.Vec{Y: -1}
	}
	if f.Up == (Direction{}) {
		up = solid.Vec{Z: 1}
	}
	return facing, up
}

// freePart is the hull of its outline less the pockets between the two.
func (s *shell) freePart(path string, fr *Free) *part {
	f := &face{part: FreePart(fr.Name), kind: innerFace}
	s.setBoard(f)
	if fr.Board != (Board{}) {
		f.board, f.grain, f.t, f.least = fr.Board, fr.Board.Grain, fr.Board.most(), fr.Board.least()
	}
	w, v := fr.axes()
	w = w.Unit()
	u := v.Cross(w).Unit()
	v = w.Cross(u)
	o := solid.Vec{X: float64(fr.At.X), Y: float64(fr.At.Y), Z: float64(fr.At.Z)}
	f.in = solid.NewPlane(w, w.Dot(o))
	f.frame = solid.Frame{O: o, U: u, V: v, W: w}
	p := &part{face: f, at: -1, free: fr, path: path}
	p.add(f.in.Flip(), fromInner)
	p.add(f.in.Shift(f.t), fromOuter)
	flat := fr.Outline.Flatten(s.chord())
	hull := outline.Hull(flat)
	side := func(a, b outline.Point) solid.Plane {
		n := u.Scale(b.Y - a.Y).Sub(v.Scale(b.X - a.X))
		at := f.frame.Out(solid.Vec{X: a.X, Y: a.Y})
		return solid.NewPlane(n, n.Dot(at))
	}
	for i := range hull {
		p.add(side(hull[i].At(), hull[(i+1)%len(hull)].At()), fromOutline)
	}
	if !p.finish() {
		s.c.addf(path, "no-part", "nothing is left of the outline")
		return nil
	}
	for _, pocket := range outline.Pockets(flat) {
		for _, piece := range outline.ConvexPieces(pocket) {
			var hs []solid.Plane
			for i := range piece {
				hs = append(hs, side(piece[i], piece[(i+1)%len(piece)]))
			}
			p.cut(hs, cutter{})
		}
	}
	for i, c := range fr.Cuts {
		at := fmt.Sprintf("%s.Cuts[%d]", path, i)
		for k := range c.Through {
			s.c.addf(fmt.Sprintf("%s.Through[%d]", at, k), "contradiction", "a cut through several parts stands among the design's features")
		}
		p.feats = append(p.feats, s.plainCut(at, c, p)...)
	}
	return p
}

func (s *shell) chord() float64 {
	if s.d.Chord == 0 {
		return 0.01
	}
	return float64(s.d.Chord)
}
