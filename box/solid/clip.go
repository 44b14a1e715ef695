package solid

import "math"

// cutEdge is an edge of the new face that a clip makes.
type cutEdge struct {
	a, b Vec
	next int
}

// used marks a rim edge that the new face already has.
const used = math.MinInt

// sides tells on which sides of h the solid has corners, beyond the side test.
func (c Convex) sides(h Plane) (out, in bool) {
	for i := range c.Faces {
		for _, p := range c.Faces[i].Loop {
			s := h.At(p)
			if s > SideTest {
				out = true
			} else if s < -SideTest {
				in = true
			}
		}
		if out && in {
			break
		}
	}
	return out, in
}

// Clip keeps the part of c inside h; the new face gets the given ID, which
// should not be that of another face. It returns c itself when h cuts nothing
// off. The result may share faces with c.
func (c Convex) Clip(h Plane, id int) Convex {
	out, in := c.sides(h)
	if !out {
		return c
	}
	if !in {
		return Convex{}
	}
	// All new loops live in two slices: a face gains one corner at most, and the
	// new face has one edge from each old one at most.
	size := len(c.Faces)
	for i := range c.Faces {
		size += len(c.Faces[i].Loop) + 1
	}
	s := slab{share: true, v: make([]Vec, 0, size), n: make([]int, 0, size), faces: make([]Face, 0, len(c.Faces)+1)}
	return s.cut(c, h, id)
}

// slab is the memory in which a clip lays the faces and loops of its result,
// and the edges of the new face, collected from those of the old.
type slab struct {
	v     []Vec
	n     []int
	faces []Face
	rim   []cutEdge
	share bool // faces that are not cut may keep their loops
}

// clipper clips many times over in two slabs in turn.
type clipper struct {
	buf [2]slab
	cur int
}

// clip is Clip with the result in the memory of k, where it lasts until the
// next but one.
func (k *clipper) clip(c Convex, h Plane, id int) Convex {
	out, in := c.sides(h)
	if !out {
		return c
	}
	if !in {
		return Convex{}
	}
	k.cur = 1 - k.cur
	s := &k.buf[k.cur]
	if s.v == nil {
		*s = slab{v: make([]Vec, 0, 64), n: make([]int, 0, 64), faces: make([]Face, 0, 16), rim: make([]cutEdge, 0, 16)}
	}
	s.v, s.n, s.faces = s.v[:0], s.n[:0], s.faces[:0]
	return s.cut(c, h, id)
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

// clone copies a solid out of a clipper's memory.
func (c Convex) clone() Convex {
	if c.Empty() {
		return c
	}
	size := 0
	for i := range c.Faces {
		size += len(c.Faces[i].Loop)
	}
	s := slab{v: make([]Vec, 0, size), n: make([]int, 0, size), faces: make([]Face, 0, len(c.Faces))}
	for _, f := range c.Faces {
		at := len(s.v)
		s.v, s.n = append(s.v, f.Loop...), append(s.n, f.Next...)
		s.faces = append(s.faces, s.face(at, f.ID, f.N))
	}
	return Convex{s.faces}
}

// cut lays what h leaves of c into the slab; h must divide c.
func (s *slab) cut(c Convex, h Plane, id int) Convex {
	s.rim = s.rim[:0]
	for i := range c.Faces {
		if g, ok := c.Faces[i].clip(h, id, s); ok {
			s.faces = append(s.faces, g)
		}
	}
	if len(s.faces) < 3 {
		return Convex{}
	}
	if lid, ok := chain(s.rim, h.N, id, s); ok {
		s.faces = append(s.faces, lid)
	}
	return Convex{s.faces}
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

// clip cuts one face; an edge that then lies on the plane gets Next = id. The
// crossing of an edge is always reckoned from its inside end, so both faces of
// the edge get the same bits.
func (f Face) clip(h Plane, id int, slab *slab) (Face, bool) {
	n := len(f.Loop)
	var buf [32]float64
	s := buf[:0]
	out, in, touch := false, false, 0
	for _, p := range f.Loop {
		t := h.At(p)
		s = append(s, t)
		switch {
		case t > SideTest:
			out = true
		case t < -SideTest:
			in = true
		default:
			touch++
		}
	}
	if !in {
		return Face{}, false
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
				return f, true
			}
			slab.v, slab.n = append(slab.v, f.Loop...), append(slab.n, f.Next...)
			return slab.face(at, f.ID, f.N), true
		}
		for k, p := range f.Loop {
			next := f.Next[k]
			if j := (k + 1) % n; on(s[k]) && on(s[j]) {
				next = id
				slab.rim = append(slab.rim, cutEdge{f.Loop[j], p, f.ID})
			}
			slab.add(p, next)
		}
		return slab.face(at, f.ID, f.N), true
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
		return Face{}, false
	}
	for _, i := range cuts[:nc] {
		j := i + 1
		if j == end {
			j = at
		}
		slab.rim = append(slab.rim, cutEdge{slab.v[j], slab.v[i], f.ID})
	}
	return slab.face(at, f.ID, f.N), true
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
