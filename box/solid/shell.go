package solid

import "slices"

// shell is the surface of a body, without its prisms, as convex polygons: the
// faces of the base less all cutters, and the faces of the cutters inside the
// base, turned round, less the other cutters.
type shell struct {
	weld  float64 // the radius
	base  Convex
	cuts  []cut
	surfs []Surface
	frags []frag
	known []Plane // of the base and of the cutters so far
	mem   []Vec   // memory of the loops
	tmp   [2][]frag
	clip  clipper
}

// frag is a convex polygon of a surface, anticlockwise seen from outside.
type frag struct {
	loop []Vec
	surf int32
}

// cut is a cutter within the base.
type cut struct {
	cell   Convex
	planes []Plane // those that bound the cell
	surfs  []int32 // of these planes; the normals point into the cell
	faces  []int32 // of the cell, on these planes
	lo, hi Vec
}

// newShell prepares the base and the cutters of b.
func (b Body) newShell(base Convex, weld float64) *shell {
	if r := b.kept(); r != nil && r.shell != nil && weld == r.shell.weld {
		// The slices are full, so that adding to them copies them.
		return &shell{
			weld: weld, base: base, cuts: slices.Clip(r.shell.cuts), surfs: slices.Clip(r.shell.surfs), known: slices.Clip(r.shell.known),
		}
	}
	s := &shell{
		weld:  weld,
		base:  base,
		cuts:  make([]cut, 0, len(b.Cutters)),
		surfs: make([]Surface, 0, len(base.Faces)+4*len(b.Cutters)),
	}
	for _, f := range base.Faces {
		s.surfs = append(s.surfs, Surface{N: f.N})
		h := Plane{f.N, f.N.Dot(f.Loop[0])} // of the working box, if unbounded
		if f.ID >= 0 {
			h = b.Base[f.ID]
		}
		s.known = append(s.known, h)
	}
	for _, k := range b.Cutters {
		s.addCut(k, nil)
	}
	return s
}

// addCut adds a cutter; its plane j belongs to the smoothing group smooth[j].
func (s *shell) addCut(k Cutter, smooth []int32) {
	const id = 1 << 30 // beyond every plane of a base
	k = s.settle(k)
	cell := s.clip.within(s.base, k, id)
	if cell.Empty() {
		return
	}
	cell = s.clip.keep(cell)
	c := cut{cell: cell}
	c.lo, c.hi = cell.Bounds()
	for i, f := range cell.Faces {
		j := f.ID - id
		if j < 0 {
			continue
		}
		g := int32(0)
		if smooth != nil {
			g = smooth[j]
		}
		c.planes = append(c.planes, k[j])
		c.faces = append(c.faces, int32(i))
		c.surfs = append(c.surfs, int32(len(s.surfs)))
		s.surfs = append(s.surfs, Surface{N: k[j].N.Scale(-1), Smooth: g})
	}
	s.cuts = append(s.cuts, c)
}

// settle gives a cutter the planes of the base and of earlier cutters where its
// own are parallel to them and so near that welding would make one of them. What
// material is left between is taken away: it would be a sheet without thickness.
func (s *shell) settle(k Cutter) Cutter {
	out := make(Cutter, len(k))
next:
	for i, h := range k {
		for _, g := range s.known {
			if d := h.D - g.D; d <= s.weld && d >= -s.weld && parallel(h.N, g.N) {
				out[i] = g
				continue next
			}
			if d := h.D + g.D; d <= s.weld && d >= -s.weld && opposite(h.N, g.N) {
				out[i] = g.Flip()
				continue next
			}
		}
		out[i] = h
		s.known = append(s.known, h)
	}
	return out
}

func parallel(n, m Vec) bool {
	d := n.Sub(m)
	return d.Dot(d) <= parallelGap*parallelGap
}

// cutFace is the face of cut k on its plane j, turned round.
func (s *shell) cutFace(k, j int) []Vec {
	c := &s.cuts[k]
	loop := c.cell.Faces[c.faces[j]].Loop
	at := len(s.mem)
	for i := len(loop) - 1; i >= 0; i-- {
		s.mem = append(s.mem, loop[i])
	}
	return s.mem[at:len(s.mem):len(s.mem)]
}

// build makes all polygons of the surfaces that want wants; nil wants all.
func (s *shell) build(want func(loop []Vec, n Vec) bool) {
	if want == nil {
		s.frags = make([]frag, 0, 2*len(s.base.Faces)+8*len(s.cuts))
		s.mem = make([]Vec, 0, 32+64*len(s.cuts))
	}
	for i, f := range s.base.Faces {
		if want != nil && !want(f.Loop, f.N) {
			continue
		}
		s.less(frag{f.Loop, int32(i)}, -1)
	}
	for k := range s.cuts {
		c := &s.cuts[k]
		for j := range c.planes {
			loop := s.cutFace(k, j)
			if want != nil && !want(loop, s.surfs[c.surfs[j]].N) {
				continue
			}
			s.less(frag{loop, c.surfs[j]}, k)
		}
	}
}

// less adds a polygon less all cuts but own; own is -1 for a face of the base.
func (s *shell) less(f frag, own int) {
	lo, hi := boundsOf(f.loop)
	list, next := append(s.tmp[0][:0], f), s.tmp[1][:0]
	for m := range s.cuts {
		c := &s.cuts[m]
		if m == own || apart(lo, hi, c.lo, c.hi) {
			continue
		}
		next = next[:0]
		for _, g := range list {
			next = s.cutFrag(g, c, own, m, next)
		}
		list, next = next, list
		if len(list) == 0 {
			break
		}
	}
	s.frags = append(s.frags, list...)
	s.tmp[0], s.tmp[1] = list[:0], next[:0]
}

// cutFrag appends what is left of g outside the cut m.
//
// Where a plane of the cut lies in the polygon's own plane, the polygon is lost
// if the cut takes the material behind it. On the base that is so when the
// normals agree. Of two cutters with the same face on the same side the first
// keeps it; with opposite sides neither has a face there.
func (s *shell) cutFrag(g frag, c *cut, own, m int, out []frag) []frag {
	n := s.surfs[g.surf].N
	skip := -1 // the plane in which the polygon lies
	for j, h := range c.planes {
		if anyInside(g.loop, h) {
			continue
		}
		if !onPlane(g.loop, h) {
			return append(out, g)
		}
		behind := h.N.Dot(n) > 0 // the cut takes the material behind the polygon
		if !behind && (own < 0 || m > own) {
			return append(out, g)
		}
		skip = j
	}
	mark, rest := len(out), g.loop
	for j, h := range c.planes {
		if j == skip {
			continue
		}
		in, outside := s.split(rest, h)
		if outside != nil {
			out = append(out, frag{outside, g.surf})
		}
		if rest = in; rest == nil {
			return append(out[:mark], g) // it missed the cut: leave it whole
		}
	}
	return out
}

// split divides a polygon at a plane; a part without extent is nil.
func (s *shell) split(loop []Vec, h Plane) (in, out []Vec) {
	var buf [80]float64
	d := buf[:0]
	var isIn, isOut bool
	for _, p := range loop {
		t := h.At(p)
		d = append(d, t)
		isIn = isIn || t < -SideTest
		isOut = isOut || t > SideTest
	}
	if !isOut {
		return loop, nil
	}
	if !isIn {
		return nil, loop
	}
	half := func(sign float64) []Vec {
		at := len(s.mem)
		for k, p := range loop {
			j := k + 1
			if j == len(loop) {
				j = 0
			}
			q, sp, sq := loop[j], d[k], d[j]
			if sp*sign <= SideTest {
				s.mem = append(s.mem, p)
			}
			if sp < -SideTest && sq > SideTest {
				s.mem = append(s.mem, p.Lerp(q, sp/(sp-sq)))
			} else if sp > SideTest && sq < -SideTest {
				s.mem = append(s.mem, q.Lerp(p, sq/(sq-sp)))
			}
		}
		if len(s.mem)-at < 3 {
			s.mem = s.mem[:at]
			return nil
		}
		return s.mem[at:len(s.mem):len(s.mem)]
	}
	return half(1), half(-1)
}

// anyInside reports whether a corner lies inside h, beyond the side test.
func anyInside(loop []Vec, h Plane) bool {
	for _, p := range loop {
		if h.At(p) < -SideTest {
			return true
		}
	}
	return false
}

// onPlane reports whether all corners lie on h.
func onPlane(loop []Vec, h Plane) bool {
	for _, p := range loop {
		if t := h.At(p); !(t <= SideTest && t >= -SideTest) {
			return false
		}
	}
	return true
}

func boundsOf(loop []Vec) (lo, hi Vec) {
	lo, hi = loop[0], loop[0]
	for _, p := range loop[1:] {
		lo = Vec{min(lo.X, p.X), min(lo.Y, p.Y), min(lo.Z, p.Z)}
		hi = Vec{max(hi.X, p.X), max(hi.Y, p.Y), max(hi.Z, p.Z)}
	}
	return lo, hi
}

// apart reports whether two boxes are further apart than the weld radius.
func apart(alo, ahi, blo, bhi Vec) bool {
	const gap = 2 * weldRadius
	return alo.X > bhi.X+gap || blo.X > ahi.X+gap ||
		alo.Y > bhi.Y+gap || blo.Y > ahi.Y+gap ||
		alo.Z > bhi.Z+gap || blo.Z > ahi.Z+gap
}
