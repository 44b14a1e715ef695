package solid

import "math"

// cutEdge is an edge of the new face that a clip makes.
type cutEdge struct {
	a, b Vec
	next int
}

// used marks a rim edge that the new face already has.
const used = math.MinInt

// heights are those of all corners above h, face after face, added to s; out
// and in tell whether there are corners on the two sides, beyond the side test.
func (c Convex) heights(h Plane, s []float64) (_ []float64, out, in bool) {
	for i := range c.Faces {
		for _, p := range c.Faces[i].Loop {
			t := h.At(p)
			out = out || t > SideTest
			in = in || t < -SideTest
			s = append(s, t)
		}
	}
	return s, out, in
}

// enters reports whether a corner lies inside h, beyond the side test.
func (c Convex) enters(h Plane) bool {
	for i := range c.Faces {
		if anyInside(c.Faces[i].Loop, h) {
			return true
		}
	}
	return false
}

// Clip keeps the part of c inside h; the new face gets the given ID, which
// should not be that of another face. It returns c itself when h cuts nothing
// off. The result may share faces with c.
func (c Convex) Clip(h Plane, id int) Convex {
	var buf [96]float64
	s, out, in := c.heights(h, buf[:0])
	if !out {
		return c
	}
	if !in {
		return Convex{}
	}
	// All new loops live in two slices: a face that is cut gains one corner at
	// most, and the new face has one edge from each of them at most.
	size, faces, at := 0, 1, 0
	for i := range c.Faces {
		n := len(c.Faces[i].Loop)
		if in, out, touch := tally(s[at : at+n]); in {
			faces++
			if out || touch > 1 {
				size += n + 2
			}
		}
		at += n
	}
	var rim [24]cutEdge
	l := slab{share: true, v: make([]Vec, 0, size), n: make([]int, 0, size), faces: make([]Face, 0, faces)}
	r, _ := l.cut(c, h, id, s, rim[:0])
	return r
}

// slab is the memory in which a clip lays the faces and loops of its result.
type slab struct {
	v     []Vec
	n     []int
	faces []Face
	share bool // faces that are not cut may keep their loops
}

// clipper clips many times over in two slabs in turn. It belongs to one
// operation; what that gives back is kept in a third, which grows.
type clipper struct {
	buf   [2]slab
	cur   int
	kept  slab
	rim   []cutEdge
	s     []float64
	bound []bool
}

// clip is Clip with the result in the memory of k, where it lasts until the
// next but one.
func (k *clipper) clip(c Convex, h Plane, id int) Convex {
	if k.s == nil {
		k.s, k.rim = make([]float64, 0, 48), make([]cutEdge, 0, 12)
	}
	var out, in bool
	k.s, out, in = c.heights(h, k.s[:0])
	if !out {
		return c
	}
	if !in {
		return Convex{}
	}
	k.cur = 1 - k.cur
	s := &k.buf[k.cur]
	if s.v == nil {
		*s = slab{v: make([]Vec, 0, 48), n: make([]int, 0, 48), faces: make([]Face, 0, 12)}
	}
	s.v, s.n, s.faces = s.v[:0], s.n[:0], s.faces[:0]
	c, k.rim = s.cut(c, h, id, k.s, k.rim[:0])
	return c
}

// all clips with every half-space; plane i gives the face ID id+i.
func (k *clipper) all(c Convex, planes []Plane, id int) Convex {
	for i, h := range planes {
		if c = k.clip(c, h, id+i); c.Empty() {
			break
		}
	}
	return c
}

// within is all, with a look beforehand whether any half-space leaves nothing.
func (k *clipper) within(c Convex, planes []Plane, id int) Convex {
	for _, h := range planes {
		if !c.enters(h) {
			return Convex{}
		}
	}
	return k.all(c, planes, id)
}

// keep copies a solid out of the memory that clip uses.
func (k *clipper) keep(c Convex) Convex {
	size := c.corners()
	s := &k.kept
	if cap(s.v)-len(s.v) < size {
		n := max(size, min(2*cap(s.v), 1000))
		s.v, s.n = make([]Vec, 0, n), make([]int, 0, n)
	}
	if cap(s.faces)-len(s.faces) < len(c.Faces) {
		s.faces = make([]Face, 0, max(len(c.Faces), min(2*cap(s.faces), 200)))
	}
	return s.copy(c)
}

// clone copies a solid out of a clipper's memory, to be kept alone.
func (c Convex) clone() Convex {
	if c.Empty() {
		return c
	}
	size := c.corners()
	s := slab{v: make([]Vec, 0, size), n: make([]int, 0, size), faces: make([]Face, 0, len(c.Faces))}
	return s.copy(c)
}

// corners counts those of all faces.
func (c Convex) corners() int {
	n := 0
	for i := range c.Faces {
		n += len(c.Faces[i].Loop)
	}
	return n
}

// copy adds a copy of c, for which there must be room.
func (s *slab) copy(c Convex) Convex {
	from := len(s.faces)
	for i := range c.Faces {
		f := &c.Faces[i]
		at := len(s.v)
		s.v, s.n = append(s.v, f.Loop...), append(s.n, f.Next...)
		s.faces = append(s.faces, s.face(at, f.ID, f.N))
	}
	return Convex{s.faces[from:len(s.faces):len(s.faces)]}
}

// cut lays what h leaves of c into the slab; h must divide c, and s be the
// heights of its corners. rim is memory for the edges of the new face.
func (l *slab) cut(c Convex, h Plane, id int, s []float64, rim []cutEdge) (Convex, []cutEdge) {
	at := 0
	for i := range c.Faces {
		f := &c.Faces[i]
		n := len(f.Loop)
		var g Face
		var ok bool
		if g, rim, ok = f.clip(id, s[at:at+n], l, rim); ok {
			l.faces = append(l.faces, g)
		}
		at += n
	}
	if len(l.faces) < 3 {
		return Convex{}, rim
	}
	if lid, ok := chain(rim, h.N, id, l); ok {
		l.faces = append(l.faces, lid)
	}
	return Convex{l.faces}, rim
}

func (s *slab) add(p Vec, next int) {
	s.v = append(s.v, p)
	s.n = append(s.n, next)
}

// face returns what was added since length at as a face.
func (s *slab) face(at, id int, n Vec) Face {
	e := len(s.v)
	return Face{id, n, s.v[at:e:e], s.n[at:e:e]}
}

// tally tells on which sides a face has corners, and how many lie on the plane.
func tally(s []float64) (in, out bool, touch int) {
	for _, t := range s {
		switch {
		case t > SideTest:
			out = true
		case t < -SideTest:
			in = true
		default:
			touch++
		}
	}
	return in, out, touch
}

// clip cuts one face, whose corners have the heights s; an edge that then lies on
// the plane gets Next = id and is added to the rim. The crossing of an edge is
// always reckoned from its inside end, so both faces of the edge get the same
// bits.
func (f *Face) clip(id int, s []float64, slab *slab, rim []cutEdge) (Face, []cutEdge, bool) {
	n := len(f.Loop)
	in, out, touch := tally(s)
	if !in {
		return Face{}, rim, false
	}
	on := func(t float64) bool { return t <= SideTest && t >= -SideTest }
	at := len(slab.v)
	var cuts [4]int // where edges along the plane begin; one, but for slivers
	nc := 0
	cut := func(i int) {
		if nc < len(cuts) {
			cuts[nc] = i
			nc++
		}
	}
	if !out {
		if touch < 2 {
			if slab.share {
				return *f, rim, true
			}
			slab.v, slab.n = append(slab.v, f.Loop...), append(slab.n, f.Next...)
			return slab.face(at, f.ID, f.N), rim, true
		}
		for k, p := range f.Loop {
			next := f.Next[k]
			if j := (k + 1) % n; on(s[k]) && on(s[j]) {
				next = id
				rim = append(rim, cutEdge{f.Loop[j], p, f.ID})
			}
			slab.add(p, next)
		}
		return slab.face(at, f.ID, f.N), rim, true
	}
	for k, p := range f.Loop {
		j := k + 1
		if j == n {
			j = 0
		}
		q, sp, sq := f.Loop[j], s[k], s[j]
		switch {
		case sp > SideTest: // outside
			if sq < -SideTest {
				slab.add(q.Lerp(p, sq/(sq-sp)), f.Next[k])
			}
		case sp < -SideTest: // inside
			slab.add(p, f.Next[k])
			if sq > SideTest {
				cut(len(slab.v))
				slab.add(p.Lerp(q, sp/(sp-sq)), id)
			}
		case sq < -SideTest: // on the plane, coming in
			slab.add(p, f.Next[k])
		default: // on the plane, staying or leaving
			cut(len(slab.v))
			slab.add(p, id)
		}
	}
	end := len(slab.v)
	if end-at < 3 {
		slab.v, slab.n = slab.v[:at], slab.n[:at]
		return Face{}, rim, false
	}
	for _, i := range cuts[:nc] {
		j := i + 1
		if j == end {
			j = at
		}
		rim = append(rim, cutEdge{slab.v[j], slab.v[i], f.ID})
	}
	return slab.face(at, f.ID, f.N), rim, true
}

// chain joins the rim edges into the loop of the new face, always going on to
// the edge that starts nearest.
func chain(rim []cutEdge, n Vec, id int, slab *slab) (Face, bool) {
	if len(rim) < 3 {
		return Face{}, false
	}
	at, e := len(slab.v), 0
	for k := range rim {
		end := rim[e].b
		slab.add(rim[e].a, rim[e].next)
		rim[e].next = used
		if k == len(rim)-1 {
			break
		}
		best, bd := -1, math.Inf(1)
		for i := range rim {
			if rim[i].next == used {
				continue
			}
			if rim[i].a == end {
				best = i
				break
			}
			if d := rim[i].a.Sub(end).Len(); d < bd {
				best, bd = i, d
			}
		}
		e = best
	}
	return slab.face(at, id, n), true
}
