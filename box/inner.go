package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// buildInner adds the inner parts and lets them into their walls.
func (s *shell) buildInner(parts []*part) []*part {
	for i, in := range s.d.Inner {
		if p, ok := in.(Partition); ok {
			if q := s.partition(fmt.Sprintf("Inner[%d].Partition", i), p, parts); q != nil {
				parts = append(parts, q)
			}
		}
	}
	return parts
}

// partition stands between two opposite walls of a rectangle. Against each of
// them it is the second part of a corner of its own, with its near face as the
// inner one; the walls run on past it.
func (s *shell) partition(path string, p Partition, parts []*part) *part {
	hosts, normal := [2]Part{Front, Back}, solid.Vec{X: 1}
	if p.Across == RunLeftToRight {
		hosts, normal = [2]Part{Left, Right}, solid.Vec{Y: 1}
	}
	f := &face{part: InnerPart(p.Name), kind: innerFace}
	s.setBoard(f)
	if p.Board != (Board{}) {
		f.board, f.grain, f.t, f.least = p.Board, p.Board.Grain, p.Board.most(), p.Board.least()
	}
	f.nh = [2]float64{normal.X, normal.Y}
	f.in = solid.NewPlane(normal, float64(p.At)-f.t/2)
	middle := s.cav.Clip(f.in.Flip(), -20).Clip(f.in.Shift(f.t), -21)
	if g, ok := middle.FaceOf(-20); ok {
		f.loop = g.Loop
	}
	if got, ok := middle.FaceOf(-21); f.loop == nil || !ok || len(got.Loop) == 0 {
		lo, hi := s.cav.Reach(normal)
		s.c.add(Problem{Path: path + ".At", Code: "outside", Got: num(float64(p.At)), Lo: lo + f.t/2, Hi: hi - f.t/2, Unit: "mm", Why: "the partition stands in the wall or outside the cavity"})
		return nil
	}
	if _, top := middle.Reach(solid.Vec{Z: 1}); float64(p.Height) > top+1e-6 {
		s.c.add(Problem{Path: path + ".Height", Code: "range", Got: num(float64(p.Height)), Lo: 0, Hi: top, Unit: "mm", Why: "the partition would go through the roof; 0 is up to it"})
		return nil
	}
	f.frame = featureFrame(f)
	q := &part{face: f, at: -1, path: path}
	q.add(f.in.Flip(), fromInner)
	q.add(f.in.Shift(f.t), fromOuter)
	if p.Height != 0 {
		q.add(solid.NewPlane(solid.Vec{Z: 1}, float64(p.Height)), fromOutline)
	}
	jt := p.Joint
	if isNil(jt) {
		jt = joints.Housing{}
	}
	type held struct {
		host *part
		e    *edge
		edge []solid.Plane
	}
	var holds []held
	for i := range s.faces {
		w := &s.faces[i]
		if w.part != hosts[0] && w.part != hosts[1] || w.open {
			q.add(w.in, i)
			continue
		}
		e := s.innerEdge(i, f, jt, path+".Joint")
		if e == nil {
			return nil
		}
		var limit []solid.Plane
		for _, l := range e.sec.B.Keep {
			if h, ok := s.lift(w, f, l); ok {
				limit = append(limit, h)
				q.add(h, i)
			}
		}
		for _, o := range parts {
			if o.face == w {
				holds = append(holds, held{o, e, limit})
			}
		}
	}
	if !q.finish() {
		s.c.addf(path, "no-part", "nothing is left of the partition between the walls")
		return nil
	}
	for _, h := range holds {
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
	return q
}

// innerEdge is the line where an inner part's near face meets a wall.
func (s *shell) innerEdge(i int, f *face, jt joint, path string) *edge {
	w := &s.faces[i]
	e := &edge{i: i, j: -1, over: i, under: -1, joint: jt, path: path, theta: 90, guest: f}
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
		TA: MM(w.t), TB: MM(f.t), LeastA: MM(w.least), LeastB: MM(f.least), Theta: 90,
		Length: MM(e.length), RunOn: MM(w.t), ReachA: maxLength, ReachB: MM(reach)}
	sec, ok := s.section(jt, path, c)
	if !ok {
		return nil
	}
	if !bounded(sec.A.Lose) {
		s.c.addf(path, "unbounded", "the wall runs on past the partition on both sides, so the joint must be a channel as wide as the partition: a housing, or a butt")
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
