package solid

// parallelGap is how far two unit normals may be from opposite.
const parallelGap = 1e-9

// Contact is the area, mm2, over which two bodies face each other: faces with
// opposite normals, apart by 0 to gap mm (and planeGap, for rounding). Cutters
// count, prisms do not.
func Contact(a, b Body, gap float64) float64 {
	ca, alo, ahi := a.hull()
	cb, blo, bhi := b.hull()
	if ca.Empty() || cb.Empty() {
		return 0
	}
	reach := gap + planeGap
	grow := Vec{reach, reach, reach}
	if apart(alo.Sub(grow), ahi.Add(grow), blo, bhi) {
		return 0
	}
	sa, sb := a.newShell(ca, weldRadii[0]), b.newShell(cb, weldRadii[0])
	pa, pb := sa.planes(), sb.planes()
	sa.build(facing(pb, reach))
	if len(sa.frags) == 0 {
		return 0
	}
	sb.build(facing(pa, reach))
	area := 0.0
	for _, f := range sa.frags {
		n := sa.surfs[f.surf].N
		lo, hi := boundsOf(f.loop)
		lo, hi = lo.Sub(grow), hi.Add(grow)
		for _, g := range sb.frags {
			if !opposite(n, sb.surfs[g.surf].N) {
				continue
			}
			if d := n.Dot(g.loop[0].Sub(f.loop[0])); !(d >= -planeGap && d <= reach) {
				continue
			}
			if glo, ghi := boundsOf(g.loop); apart(lo, hi, glo, ghi) {
				continue
			}
			area += sa.shared(f.loop, g.loop, n)
		}
	}
	return area
}

// planes are all surfaces of the shell as half-spaces, outside being outside
// the material.
func (s *shell) planes() []Plane {
	var out []Plane
	for _, f := range s.base.Faces {
		out = append(out, Plane{f.N, f.N.Dot(f.Loop[0])})
	}
	for i := range s.cuts {
		for _, h := range s.cuts[i].planes {
			out = append(out, h.Flip())
		}
	}
	return out
}

// facing tells whether a polygon faces one of the planes at a distance of 0 to
// reach.
func facing(planes []Plane, reach float64) func([]Vec, Vec) bool {
	return func(loop []Vec, n Vec) bool {
		for _, h := range planes {
			if !opposite(n, h.N) {
				continue
			}
			if d := h.At(loop[0]); d >= -planeGap && d <= reach {
				return true
			}
		}
		return false
	}
}

func opposite(n, m Vec) bool {
	d := n.Add(m)
	return d.Dot(d) <= parallelGap*parallelGap
}

// shared is the area common to the convex polygons f and g seen along n; g runs
// the other way round.
func (s *shell) shared(f, g []Vec, n Vec) float64 {
	for i, p := range g {
		d := g[(i+1)%len(g)].Sub(p)
		m := n.Cross(d).Unit() // out of g, which is clockwise seen from n
		if f, _ = s.split(f, Plane{m, m.Dot(p)}); f == nil {
			return 0
		}
	}
	return Face{N: n, Loop: f}.Area()
}
