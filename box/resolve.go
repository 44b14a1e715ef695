package box

import "math"

// With returns a copy changed by f. Slices and maps are copied too, those inside
// features, openings and all other elements included, so that the original never
// changes.
func (d Design) With(f func(*Design)) Design {
	c := clone(d)
	f(&c)
	return c
}

// MustResolve is Resolve for examples and tests: it panics on problems.
func (d Design) MustResolve() *Plan {
	p, err := d.Resolve()
	if err != nil {
		panic(err)
	}
	return p
}

// Resolve solves the design: it returns either a plan, or every problem at
// once as Problems.
func (d Design) Resolve() (*Plan, error) {
	plan, _, _, err := d.solve(nil)
	return plan, d.blameLean(err)
}

// solve is Resolve with the shell and the parts in plan order. What name does
// to the new shell, if not nil, comes before anything else.
func (d Design) solve(name func(*shell)) (*Plan, *shell, []*part, error) {
	c := &collector{}
	d.check(c)
	s := &shell{d: &d, c: c}
	var parts []*part
	if d.Size == nil && len(c.ps) > 0 {
		return nil, nil, nil, c.err()
	}
	if d.Size != nil {
		if s = newShell(&d, c); s == nil {
			return nil, nil, nil, c.err()
		}
		if name != nil {
			name(s)
		}
		if !s.setJoints() {
			s.checkOpenings()
			return nil, nil, nil, c.err()
		}
		r := s.setOrder()
		s.checkRings(r)
		if parts = s.build(r); len(c.ps) > 0 {
			return nil, nil, nil, c.err()
		}
		parts = s.makeAll(s.makeAll(parts, FromInner), FromOuter)
		s.setWays(parts)
		s.fitOpenings(parts)
		parts = s.makeOpens(parts)
	}
	parts = s.buildFree(parts)
	s.lowerFeatures(parts)
	s.lowerFixings(parts)
	for _, p := range parts {
		s.checkFeats(p)
	}
	s.checkShaped(parts)
	if len(c.ps) > 0 {
		return nil, nil, nil, c.err()
	}
	if parts = s.divide(parts); len(c.ps) > 0 {
		return nil, nil, nil, c.err()
	}
	for _, p := range append(parts[:len(parts):len(parts)], s.wholes()...) {
		for i := range p.feats {
			p.prisms = append(p.prisms, p.feats[i].prism(p))
		}
		p.solid = p.body().Ready()
		if n := p.solid.Islands(); n > 1 {
			c.addf(p.path, "falls-apart", "the joints cut %s into %d pieces, some hanging on a line at most: other joints, or other counts of fingers, leave it whole", p.face.part, n)
		}
	}
	s.checkOverlaps(parts)
	if len(c.ps) == 0 {
		s.checkMoves(unmade(parts))
	}
	var voids []Void
	if d.Size != nil {
		voids = s.findVoids(parts)
	}
	parts = sorted(parts)
	plan := s.plan(parts)
	plan.voids = voids
	if len(c.ps) > 0 {
		return nil, nil, nil, c.err()
	}
	return plan, s, parts, nil
}

// sorted puts the parts into plan order: front, back, left, right or wall/1...,
// floor, roof, inner and free parts.
func sorted(parts []*part) []*part {
	var out []*part
	for _, name := range []Part{Front, Back, Left, Right} {
		for _, p := range parts {
			if p.shellPart() == name {
				out = append(out, p)
			}
		}
	}
	for _, p := range parts {
		switch p.shellPart() {
		case Front, Back, Left, Right:
		default:
			out = append(out, p)
		}
	}
	return out
}

// plan makes the read-only plan of the finished parts.
func (s *shell) plan(parts []*part) *Plan {
	p := &Plan{name: s.d.Name, chord: s.chord(), index: map[Part]int{}, words: map[Part][]string{}}
	for i, q := range parts {
		p.index[q.face.part] = i
		p.pieces = append(p.pieces, s.piece(q))
		s.arrises(q, &p.pieces[i].Panel, parts)
	}
	s.group(p, parts)
	if s.d.Size != nil {
		s.sizes(p)
		s.seams(p, parts)
		s.laidSeams(p)
	}
	p.fittings = s.fittings
	s.listFixings(p)
	s.planWays(p)
	s.planWholes(p, parts)
	s.findings(p, parts)
	for i, q := range parts {
		p.words[q.face.part] = s.explain(p, &p.pieces[i], q)
	}
	return p
}

// piece is a part as the plan shows it.
func (s *shell) piece(q *part) Piece {
	pn, home := s.panel(q)
	pc := Piece{Part: q.face.part, Of: q.ofPart(), Board: q.face.board, Thickness: MM(q.face.t), Home: home, Pose: home, Panel: pn, Body: q.solid}
	e := pn.Silhouette.Extents()
	pc.Length, pc.Width = MM(e.Height()), MM(e.Width())
	if pn.Grain[0] != 0 || pn.Grain == [2]float64{} && pc.Width > pc.Length {
		pc.Length, pc.Width = pc.Width, pc.Length
	}
	if q.at >= 0 && len(q.face.loop) > 2 {
		u, v := math.Inf(1), math.Inf(1)
		u2, v2 := -u, -v
		for _, x := range flat(q.face.loop, q.face.frame) {
			u, v, u2, v2 = math.Min(u, x.X), math.Min(v, x.Y), math.Max(u2, x.X), math.Max(v2, x.Y)
		}
		pc.Nominal = [2]MM{MM(u2 - u), MM(v2 - v)}
	}
	vol, err := pc.Body.Volume(s.chord())
	if err != nil {
		s.c.addf(q.path, "solid", "the solid could not be worked out: %v", err)
	}
	pc.Volume = vol
	pc.Mass = vol * 1e-9 * q.face.board.Density
	return pc
}

// sizes are the inside, the outside and the diagonals.
func (s *shell) sizes(p *Plan) {
	p.inside = [3]MM{tidy(s.extent(1, 0)), tidy(s.extent(0, 1)), tidy(s.height)}
	outside := s.outerCorners(s.lower)
	for i, c := range outside {
		p.ring = append(p.ring, ringCorner{s.faces[i].part, s.faces[(i+1)%s.walls].part, c})
	}
	w := [4]float64{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	for _, c := range outside {
		w[0], w[1] = math.Min(w[0], c[0]), math.Max(w[1], c[0])
		w[2], w[3] = math.Min(w[2], c[1]), math.Max(w[3], c[1])
	}
	p.outside = [3]MM{tidy(w[1] - w[0]), tidy(w[3] - w[2]), tidy(s.outerHeight())}
	if s.walls == 4 {
		in := s.corners(0)
		d := func(a, b [2]float64) MM { return tidy(math.Hypot(a[0]-b[0], a[1]-b[1])) }
		p.diag = Diagonals{
			Outside: [2]MM{d(outside[0], outside[2]), d(outside[1], outside[3])},
			Inside:  [2]MM{d(in[0], in[2]), d(in[1], in[3])},
		}
	}
}

// tidy rounds a size that is compared with what was asked: to 1e-9 mm.
func tidy(x float64) MM { return MM(math.Round(x*1e9) / 1e9) }

// outerCorners are the corners between the walls' outer planes at height z.
func (s *shell) outerCorners(z float64) [][2]float64 {
	out := &shell{faces: append([]face(nil), s.faces[:s.walls]...), walls: s.walls}
	for i := range out.faces {
		_, cl := sincos(out.faces[i].lean)
		out.faces[i].d += out.faces[i].t / cl
	}
	return out.corners(z)
}

// outerHeight is from the walls' lower edge to the lowest line where an outer
// roof plane meets an outer wall plane; without such a line, to the highest
// wall.
func (s *shell) outerHeight() float64 {
	least := math.Inf(1)
	for i := range s.faces[:s.walls] {
		f := &s.faces[i]
		if p, t, ok := s.eavesOf(i); ok {
			least = math.Min(least, f.eavesRise(p, t))
		}
	}
	if math.IsInf(least, 1) {
		least = 0
	}
	return s.height + least - s.lower
}
