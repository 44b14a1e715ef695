package box

import (
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// Where a base plane of a part comes from, if not from a face of the cavity.
const (
	fromInner = -1 - iota // the part's own inner plane
	fromOuter             // its own outer plane
	fromEnd               // the end of a wall that runs on
	fromOutline
	fromLow  // the strip before, of a made-up part
	fromHigh // the next one
)

// part is a part under construction.
type part struct {
	face     *face
	at       int    // index of its face in the shell, -1 for inner and free parts
	path     string // in the design
	base     []solid.Plane
	from     []int // for each base plane: the face it answers to, or from...
	convex   solid.Convex
	cutters  []cutter
	prisms   []solid.Prism
	feats    []feat
	settled  int // how many of them have their outlines settled
	engraved []line
	ends     []endBore
	free     *Free
	solid    solid.Body // of all the above, made ready
	strip    *strip     // if it is a piece of a made-up part
	whole    *whole     // if it is made up
	lines    [2]*[3]outline.Region
	edgeIDs  []int // the base planes of the panel's edges
}

// cutter is one piece of joinery taken out of a part.
type cutter struct {
	planes solid.Cutter
	cell   solid.Convex // what it takes of the base
	edge   *edge
	zone   joints.Zone
	guest  *face
	strip  bool // of the joint between two strips
}

func (p *part) body() solid.Body {
	b := solid.Body{Base: p.base, Prisms: p.prisms}
	for i := range p.cutters {
		b.Cutters = append(b.Cutters, p.cutters[i].planes)
	}
	return b
}

// lift turns a line of a joint's section into a half-space.
func (s *shell) lift(a, b *face, l joints.Line) (solid.Plane, bool) {
	n := a.in.N.Scale(l.A).Add(b.in.N.Scale(l.B))
	if n.Len() < 1e-9 {
		return solid.Plane{}, false
	}
	return solid.NewPlane(n, l.K+float64(l.A*a.in.D)+float64(l.B*b.in.D)), true
}

// limits are the half-spaces that face i's part keeps against face j.
func (s *shell) limits(r order, i, j int) []solid.Plane {
	a, b := &s.faces[i], &s.faces[j]
	if b.open {
		run := s.runOn(i, j)
		if a.kind == wallFace && b.kind == roofFace {
			run = a.above
		}
		return []solid.Plane{b.in.Shift(run)}
	}
	if e := s.pair[[2]int{min(i, j), max(i, j)}]; e != nil && e.ok {
		if e.over == i && e.free {
			return nil
		}
		share := e.sec.A
		if e.under == i {
			share = e.sec.B
		}
		var hs []solid.Plane
		for _, l := range share.Keep {
			if h, ok := s.lift(&s.faces[e.over], &s.faces[e.under], l); ok {
				hs = append(hs, h)
			}
		}
		return hs
	}
	switch r.say(i, j) {
	case over:
		if a.up() && b.kind == roofFace {
			return nil
		}
		return []solid.Plane{b.in.Shift(b.t + s.runOn(i, j))}
	case under:
		return []solid.Plane{b.in}
	}
	n := b.in.N.Scale(1 / b.t).Sub(a.in.N.Scale(1 / a.t))
	if n.Len() < 1e-12 {
		return nil
	}
	return []solid.Plane{solid.NewPlane(n, b.in.D/b.t-a.in.D/a.t)}
}

// outer is the solid between the outer planes.
func (s *shell) outer() solid.Convex {
	hs := make([]solid.Plane, len(s.faces))
	for i := range s.faces {
		hs[i] = s.faces[i].in.Shift(s.faces[i].t)
	}
	return solid.Intersect(hs)
}

// build makes the base of every part and cuts the joints into them.
func (s *shell) build(r order) []*part {
	n := len(s.faces)
	lim := make([][][]solid.Plane, n)
	for i := range s.faces {
		if s.faces[i].open {
			continue
		}
		lim[i] = make([][]solid.Plane, n)
		for j := range s.faces {
			if j != i {
				lim[i][j] = s.limits(r, i, j)
			}
		}
	}
	s.measureEdges(lim)
	s.makeRoom(r, lim)
	var parts []*part
	for i := range s.faces {
		if s.faces[i].open {
			continue
		}
		p := &part{face: &s.faces[i], at: i, path: s.facePath(i)}
		p.add(p.face.in.Flip(), fromInner)
		p.add(p.face.in.Shift(p.face.t), fromOuter)
		for j := range s.faces {
			for _, h := range lim[i][j] {
				p.add(h, j)
			}
		}
		if p.face.up() && !s.faces[n-1].open {
			p.add(s.endPlane(i), fromEnd)
		}
		if p.finish() {
			parts = append(parts, p)
		} else {
			s.c.addf(s.facePath(i), "no-part", "nothing is left of %s once its neighbours have lapped over it", p.face.part)
		}
	}
	for _, p := range parts {
		s.cutJoints(p, lim)
	}
	return parts
}

func (p *part) add(h solid.Plane, from int) {
	p.base, p.from = append(p.base, h), append(p.from, from)
}

// finish cuts the base and keeps only the planes that show in it.
func (p *part) finish() bool {
	c := solid.Intersect(p.base)
	if c.Empty() || !(c.Volume() > 1) {
		return false
	}
	for _, f := range c.Faces {
		if f.ID < 0 {
			return false
		}
	}
	renumber := make([]int, len(p.base))
	var base []solid.Plane
	var from []int
	for k, h := range p.base {
		renumber[k] = -1
		if _, ok := c.FaceOf(k); ok {
			renumber[k] = len(base)
			base, from = append(base, h), append(from, p.from[k])
		}
	}
	for k := range c.Faces {
		f := &c.Faces[k]
		f.ID = renumber[f.ID]
		next := make([]int, len(f.Next))
		for m, id := range f.Next {
			next[m] = renumber[id]
		}
		f.Next = next
	}
	p.base, p.from, p.convex = base, from, c
	return true
}

// measureEdges finds, for joints that divide their edge, how long it is where
// both parts stand, and asks them again.
func (s *shell) measureEdges(lim [][][]solid.Plane) {
	for _, e := range s.edges {
		if !e.ok {
			continue
		}
		switch e.joint.(type) {
		case joints.Butt, joints.Mitre, joints.Rebate:
			continue
		}
		a, b := &s.faces[e.over], &s.faces[e.under]
		hs := []solid.Plane{a.in.Flip(), a.in.Shift(a.t), b.in.Flip(), b.in.Shift(b.t)}
		for k := range s.faces {
			if k != e.i && k != e.j {
				hs = append(append(hs, lim[e.i][k]...), lim[e.j][k]...)
			}
		}
		c := solid.Intersect(hs)
		if c.Empty() {
			continue
		}
		lo, hi := c.Reach(e.dir)
		if !(hi-lo < maxLength*2) {
			continue
		}
		e.z0, e.length = lo-e.dir.Dot(e.a), hi-lo
		e.sec, e.ok = s.section(e.joint, e.path, s.corner(e))
	}
}

// endPlane is the upper end of a wall that runs on above the roof: level, at
// Above over the highest point where a roof's upper face meets its inner plane.
func (s *shell) endPlane(i int) solid.Plane {
	w := &s.faces[i]
	hs := []solid.Plane{w.in, floorPlane}
	for j := range s.faces {
		if f := &s.faces[j]; j != i && f.kind != floorFace {
			hs = append(hs, f.in.Shift(f.t))
		}
	}
	top := s.height
	if f, ok := solid.Intersect(hs).FaceOf(0); ok {
		for _, p := range f.Loop {
			top = math.Max(top, p.Z)
		}
	}
	return solid.NewPlane(solid.Vec{Z: 1}, top+w.above)
}

// cutJoints takes the joinery out of a part. What holds a guest ends where the
// guest ends: the guest's own limits bound it too.
func (s *shell) cutJoints(p *part, lim [][][]solid.Plane) {
	for _, e := range s.edges {
		if !e.ok || (e.over != p.at && e.under != p.at) {
			continue
		}
		share, guest := e.sec.A, e.under
		if e.under == p.at {
			share, guest = e.sec.B, e.over
		}
		for _, z := range share.Lose {
			hs := s.zonePlanes(e, z)
			if !z.Through {
				for k := range s.faces {
					if k != p.at && k != guest {
						hs = append(hs, lim[guest][k]...)
					}
				}
			}
			p.cut(hs, cutter{edge: e, zone: z, guest: &s.faces[guest]})
		}
	}
}

// zonePlanes are the half-spaces of a zone of an edge.
func (s *shell) zonePlanes(e *edge, z joints.Zone) []solid.Plane {
	return s.zoneOf(&s.faces[e.over], e.second(s), e, z)
}

func (s *shell) zoneOf(a, b *face, e *edge, z joints.Zone) []solid.Plane {
	var hs []solid.Plane
	for _, l := range z.Lines {
		if h, ok := s.lift(a, b, l); ok {
			hs = append(hs, h)
		}
	}
	if z.From == 0 && z.To == 0 {
		return hs
	}
	zero := e.dir.Dot(e.a) + e.z0
	if !math.IsInf(float64(z.From), -1) {
		hs = append(hs, solid.NewPlane(e.dir.Scale(-1), -(zero+float64(z.From))))
	}
	if !math.IsInf(float64(z.To), 1) {
		hs = append(hs, solid.NewPlane(e.dir, zero+float64(z.To)))
	}
	return hs
}

// cut adds a cutter, keeping only the planes that bound it inside the base.
func (p *part) cut(hs []solid.Plane, c cutter) {
	cell := p.convex
	for _, h := range hs {
		next := cell.Clip(h, len(p.base)+len(c.planes))
		if next.Empty() {
			return
		}
		if len(next.Faces) == len(cell.Faces) && &next.Faces[0] == &cell.Faces[0] {
			continue
		}
		cell = next
		c.planes = append(c.planes, h)
	}
	if len(c.planes) == 0 || !(cell.Volume() > 1e-6) {
		return
	}
	c.cell = cell
	p.cutters = append(p.cutters, c)
}
