package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// endBore is a hole into the edge of a part, for a screw or a nail that fills it:
// drawn and listed, not in the solid.
type endBore struct {
	at, dir    solid.Vec // where it enters, and inward
	dia, depth float64
	use        Use
	source     string
}

// op is the bore on the panel: its shadow, between two depths.
func (b endBore) op(fr solid.Frame) Op {
	p, q := fr.In(b.at), fr.In(b.at.Add(b.dir.Scale(b.depth)))
	u, v := q.X-p.X, q.Y-p.Y
	l := math.Hypot(u, v)
	x, y := -v/l*b.dia/2, u/l*b.dia/2
	o := outline.Polygon(outline.Point{X: p.X - x, Y: p.Y - y}, outline.Point{X: q.X - x, Y: q.Y - y},
		outline.Point{X: q.X + x, Y: q.Y + y}, outline.Point{X: p.X + x, Y: p.Y + y})
	if o.Area() < 0 {
		o = o.Reverse()
	}
	w := -(p.Z + q.Z) / 2
	return Op{Kind: OpBore, Use: b.use, Side: SideEdge, Region: outline.Region{settled(o)}, Source: b.source, From: MM(w - b.dia/2), To: MM(w + b.dia/2)}
}

// intoEnd bores into the edge of a part, if the hole lies in its thickness and
// runs along it.
func (p *part) intoEnd(at, dir solid.Vec, dia, depth float64, use Use, source string) {
	w := p.face.frame.In(at).Z
	if math.Abs(dir.Dot(p.face.frame.W)) > 0.1 || !(w-dia/2 > 0 && w+dia/2 < p.face.t) || !(depth > 0.5) {
		return
	}
	dir = dir.Sub(p.face.frame.W.Scale(dir.Dot(p.face.frame.W))).Unit()
	p.ends = append(p.ends, endBore{at, dir, dia, depth, use, source})
}

// fitBore bores square to a part, through it or to a depth.
func (w *way) fitBore(p *part, at solid.Vec, dia, depth float64, from CutSide, use Use, source string, with Part) {
	q := p.face.frame.In(at)
	p.feats = append(p.feats, feat{path: w.path, source: source, use: use, outline: settled(outline.Circle(outline.Point{X: q.X, Y: q.Y}, dia)),
		depth: depth, from: from, fit: true, with: with})
}

// openSeam is the edge at which a part that opens meets a neighbour.
type openSeam struct {
	e          *edge
	p, n       *part
	over       bool // p laps over n
	mitre      bool
	mid, along solid.Vec
	length     float64
}

func (s *shell) openSeam(parts []*part, p, n int) (openSeam, bool) {
	if p < 0 || n < 0 || p == n {
		return openSeam{}, false
	}
	e := s.pair[[2]int{min(p, n), max(p, n)}]
	if e == nil || !e.ok {
		return openSeam{}, false
	}
	m := openSeam{e: e, p: atFace(parts, p), n: atFace(parts, n), over: e.over == p, mitre: e.relation(0) == mitred,
		mid: e.a.Add(e.b).Scale(0.5), along: e.dir, length: e.b.Sub(e.a).Len()}
	return m, m.p != nil && m.n != nil
}

// fitOpenings puts holes and recesses into the parts, and lists what is bought.
func (s *shell) fitOpenings(parts []*part) {
	for _, w := range s.ways {
		if w.axis.none() {
			continue
		}
		switch o := w.of.(type) {
		case Hinged:
			s.fitHinge(w, o, parts)
		case Pivoted:
			s.fitPivot(w, o, parts)
		case Sliding:
			s.fit(Fitting{What: "screw", Count: 1, Size: "4 x 25", Length: 25, Width: 4, Where: []Part{w.part}, Why: "keeps " + string(w.part) + " from sliding out"})
		case Removable:
			s.fitScrews(w, o, parts)
		}
	}
	s.d.eachOpening(func(path string, o opener) {
		if h, ok := o.(HookAndEye); ok {
			s.fitHook(&way{path: path, of: h}, h, parts)
		}
	})
}

func (s *shell) fitPivot(w *way, o Pivoted, parts []*part) {
	p := atFace(parts, w.face)
	dia := mmOr(o.Diameter, 3)
	s.c.within(w.path+".Diameter", dia, 1, p.face.least/3, "mm", fmt.Sprintf("diameter of the nails, at most a third of the thickness of %s", w.part))
	what := "nail"
	if o.Screws {
		what = "screw"
	}
	long := 0.0
	for k, j := range w.sides {
		n := atFace(parts, j)
		gap := n.face.t + w.room[j]
		wide := w.pivot[1].Sub(w.pivot[0]).Len()
		l := mmOr(o.Length, 5*math.Ceil((gap+30)/5))
		if o.Length == 0 {
			l = math.Min(l, gap+wide/2)
		}
		s.c.within(w.path+".Length", l, gap+math.Min(10, wide/4), gap+wide/2, "mm", fmt.Sprintf("length of the %ss: through %s and into %s", what, n.face.part, w.part))
		long = math.Max(long, l)
		w.fitBore(n, w.pivot[k], dia, 0, FromOuter, UseHinge, "pivot of "+string(w.part), w.part)
		in := n.face.in.N.Scale(-1)
		p.intoEnd(w.pivot[k].Add(in.Scale(w.room[j])), in, 0.8*dia, l-gap, UseHinge, "pivot at "+string(n.face.part))
	}
	s.fit(Fitting{What: what, Count: 2, Size: num(dia) + " x " + num(round1(long)), Length: MM(long), Width: MM(dia),
		Where: []Part{w.part, s.faces[w.sides[0]].part, s.faces[w.sides[1]].part}, Why: string(w.part) + " turns on them"})
}

func (s *shell) fitHinge(w *way, o Hinged, parts []*part) {
	m, ok := s.openSeam(parts, w.face, w.hinge)
	if !ok {
		return
	}
	where := []Part{w.part, m.n.face.part}
	why := fmt.Sprintf("%s hangs by it at %s", w.part, m.n.face.part)
	lo, hi := m.p.convex.Reach(m.along)
	switch h := o.Hinge.(type) {
	case nil, RubberStrip:
		r, _ := h.(RubberStrip)
		s.sheet("rubber strip, "+num(mmOr(r.Thickness, 3))+" thick",
			outline.Region{outline.Rectangle(0, 0, hi-lo, mmOr(r.Width, 60))}, where, why+", and it keeps the rain out of the seam")
		row := func(long float64) int { return int(math.Ceil(long/40-1e-9)) + 1 } // a nail every 40 at most (common practice)
		// The part may be wider than what it hangs on: past that a nail finds no wood.
		from, to := m.n.convex.Reach(m.along)
		on, at := row(hi-lo), row(math.Max(0, math.Min(hi, to)-math.Max(lo, from)))
		s.fit(Fitting{What: "clout nail", Count: on + at, Size: "2.5 x 13", Length: 13, Width: 2.5, Where: where,
			Why: fmt.Sprintf("for the strip, in two rows: %d into %s, %d into %s", on, w.part, at, m.n.face.part)})
	case Leather:
		n := countOr(h.Count, 2)
		a, b := mmOr(h.Width, 40), mmOr(h.Length, 80)
		s.c.within(w.path+".Hinge.Leather.Count", float64(n), 1, math.Floor(m.length/a), "", fmt.Sprintf("pieces %s wide along a seam of %s", num(a), num(round1(m.length))))
		s.fit(Fitting{What: "leather, " + num(mmOr(h.Thickness, 3)) + " thick", Count: n, Size: mm(math.Max(a, b)) + " x " + mm(math.Min(a, b)), Length: MM(math.Max(a, b)), Width: MM(math.Min(a, b)),
			Cut: outline.Region{outline.Rectangle(0, 0, a, b)}, Area: a * b, Where: where, Why: why})
		s.fit(Fitting{What: "clout nail", Count: 6 * n, Size: "2.5 x 13", Length: 13, Width: 2.5, Where: where, Why: "for the leather, three on each side of a piece"})
	case Butts:
		s.fitButts(w, h, m, where, why)
	}
}

func (s *shell) fitButts(w *way, h Butts, m openSeam, where []Part, why string) {
	high, thick := mmOr(h.Height, 40), mmOr(h.Thickness, 1.2)
	n, screws := countOr(h.Count, 2), countOr(h.Screws, 2)
	thin := math.Min(m.p.face.least, m.n.face.least)
	wide := mmOr(h.Width, math.Min(20, thin-2))
	metal := h.Metal
	if metal == "" {
		metal = "brass or stainless steel"
	}
	at := w.path + ".Hinge.Butts"
	ok := s.c.within(at+".Width", wide, 3, thin, "mm", "width of a leaf, on the edge of the thinner board")
	ok = s.c.within(at+".Height", high, 1, m.length/float64(n)-2, "mm", fmt.Sprintf("height of a leaf, %d of them along a seam of %s", n, num(round1(m.length)))) && ok
	if !ok {
		return
	}
	s.fit(Fitting{What: "butt hinge, " + metal, Count: n, Size: num(high) + " x " + num(round1(2*wide)), Length: MM(high), Width: MM(2 * wide), Where: where, Why: why})
	s.fit(Fitting{What: "screw", Count: 2 * n * screws, Size: "3 x 16", Length: 16, Width: 3, Where: where, Why: "for the butt hinges"})
	if m.mitre {
		return
	}
	// The part that offers its inner face, and the one that offers its end.
	faced, ended := m.n, m.p
	if m.over {
		faced, ended = m.p, m.n
	}
	f := faced.face
	in := ended.face.in.N.Scale(-1) // from outside inward, across the end
	in = in.Sub(f.frame.W.Scale(in.Dot(f.frame.W))).Unit()
	into := f.in.N.Scale(-1) // into the end
	deep := 2*thick - w.room[w.hinge]
	if deep < 0.05 {
		deep = 0
	} else if !s.c.within(at+".Thickness", deep, 0, f.least/2, "mm", fmt.Sprintf("depth of the recess in %s", f.part)) {
		return
	}
	for k := range n {
		x := m.length/6 + float64(m.length*2/3*float64(k))/float64(n-1) - m.length/2
		c := w.axis.o.Add(m.along.Scale(x + m.along.Dot(m.mid.Sub(w.axis.o))))
		c = c.Sub(f.in.N.Scale(f.in.At(c)))
		if deep > 0 {
			w.recess(faced, c, in, m.along, wide, high, deep)
		}
		for i := range screws {
			y := float64(high*(float64(i)+0.5))/float64(screws) - high/2
			q := c.Add(m.along.Scale(y)).Add(in.Scale(wide * 0.55))
			if d := math.Min(12, f.least-deep-2); d > 1 {
				w.fitBore(faced, q, 2, deep+d, FromInner, UseHinge, "pilot of the hinge", ended.face.part)
			}
			gap := 0.0
			if !m.over {
				gap = w.room[w.hinge]
			}
			ended.intoEnd(q.Add(into.Scale(gap)), into, 2, 12, UseHinge, "pilot of the hinge")
		}
	}
}

// recess lets a leaf into the inner face of a part: a pocket that is open to the
// edge where that is flush.
func (w *way) recess(p *part, c, in, along solid.Vec, wide, high, deep float64) {
	fr := p.face.frame
	flatAt := func(q solid.Vec) outline.Point { x := fr.In(q); return outline.Point{X: x.X, Y: x.Y} }
	_, inner, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	out := 0.0
	open := len(inner) > 0 && inner[0].Contains(flatAt(c.Sub(in.Scale(0.5))), 1e-6) == outline.Outside
	if open {
		out = 1
	}
	a := along.Scale(high / 2)
	o := outline.Polygon(flatAt(c.Sub(a).Sub(in.Scale(out))), flatAt(c.Add(a).Sub(in.Scale(out))), flatAt(c.Add(a).Add(in.Scale(wide))), flatAt(c.Sub(a).Add(in.Scale(wide))))
	if o.Area() < 0 {
		o = o.Reverse()
	}
	p.feats = append(p.feats, feat{path: w.path, source: "hinge recess", use: UseHinge, outline: settled(o), depth: deep, from: FromInner, fit: true, with: w.part, open: open})
}

// fitScrews finds the two longest edges at right angles and puts screws along
// them.
func (s *shell) fitScrews(w *way, o Removable, parts []*part) {
	var all []openSeam
	for j := range s.faces {
		if m, ok := s.openSeam(parts, w.face, j); ok && !m.mitre && math.Abs(m.e.theta-90) <= 1e-6 {
			all = append(all, m)
		}
	}
	// The two longest that lie opposite, or else the two longest.
	var best [2]openSeam
	score := -1.0
	for x, m := range all {
		for _, n := range all[x+1:] {
			l := m.length + n.length
			if m.n.face.in.N.Dot(n.n.face.in.N) < -0.5 {
				l += 2 * maxLength
			}
			if l > score+1e-6 {
				best, score = [2]openSeam{m, n}, l
			}
		}
	}
	if score < 0 {
		s.c.addf(w.path+".Part", "no-hold", "%s has no two edges square to a neighbour for its screws", w.part)
		return
	}
	dia, n := mmOr(o.Diameter, 4), countOr(o.Screws, 2)
	long := 0.0
	where := []Part{w.part}
	for k, m := range best {
		w.screwed[k] = m.n.at
		head, end := m.n, m.p // the screw goes through head into the end of the other
		if m.over {
			head, end = m.p, m.n
		}
		if !s.c.within(w.path+".Diameter", dia, 1, end.face.least/3, "mm", fmt.Sprintf("diameter of a screw, at most a third of the thickness of %s", end.face.part)) {
			return
		}
		if !s.c.within(w.path+".Screws", float64(n), 1, math.Floor(m.length/(5*dia)), "", fmt.Sprintf("screws along an edge of %s, five diameters apart", num(round1(m.length)))) {
			return
		}
		l := 5 * math.Ceil(head.face.t*2.5/5-1e-9)
		long = math.Max(long, l)
		where = append(where, m.n.face.part)
		into := head.face.in.N.Scale(-1)
		for k := range n {
			x := m.length * ((float64(k)+0.5)/float64(n) - 0.5)
			q := m.mid.Add(m.along.Scale(x)).Add(end.face.in.N.Scale(end.face.t / 2))
			w.fitBore(head, q, dia+0.5, 0, FromOuter, UseScrew, "screw of "+string(w.part), end.face.part)
			gap := 0.0
			if !m.over {
				gap = w.room[m.e.over]
			}
			end.intoEnd(q.Add(into.Scale(gap)), into, 0.7*dia, l-head.face.t-gap, UseScrew, "screw of "+string(w.part))
		}
	}
	s.fit(Fitting{What: "screw", Count: 2 * n, Size: num(dia) + " x " + num(long), Length: MM(long), Width: MM(dia), Where: where, Why: "hold " + string(w.part)})
}

// fitHook drills for a hook and an eye: two small holes on either side of a seam.
func (s *shell) fitHook(w *way, o HookAndEye, parts []*part) {
	m, ok := s.openSeam(parts, s.shellFace(o.Part), s.shellFace(o.At))
	if !ok {
		s.noSeam(w.path, o.Part, o.At)
		return
	}
	if !s.c.within(w.path+".Along", float64(o.Along), -m.length/2, m.length/2, "mm", "place of the hook, from the middle of the seam") {
		return
	}
	at := m.mid.Add(m.along.Scale(float64(o.Along)))
	face, end := m.n, m.p // one offers a face, the other its end
	if m.over {
		face, end = m.p, m.n
	}
	// The face: outside the seam where the part runs on, else on its outer face.
	one := func(p, q *part, d float64) {
		out := q.face.in.N.Sub(p.face.in.N.Scale(q.face.in.N.Dot(p.face.in.N))).Unit()
		on := at.Add(out.Scale(d))
		w.fitBore(p, on, 2, math.Min(10, p.face.least-3), FromOuter, UseScrew, "pilot of the hook and eye", q.face.part)
	}
	one(end, face, -25)
	if run := s.runOn(m.e.over, m.e.under) + s.aboveOf(face); run >= 30 {
		out := end.face.in.N.Sub(face.face.in.N.Scale(end.face.in.N.Dot(face.face.in.N))).Unit()
		w.fitBore(face, at.Add(out.Scale(end.face.t+15)), 2, math.Min(10, face.face.least-3), FromInner, UseScrew, "pilot of the hook and eye", end.face.part)
	} else {
		face.intoEnd(at.Add(face.face.in.N.Scale(face.face.t/2)).Add(end.face.in.N.Scale(end.face.t+run)), end.face.in.N.Scale(-1), 2, 12, UseScrew, "pilot of the hook and eye")
	}
	s.fit(Fitting{What: "hook and eye", Count: 1, Size: "50", Length: 50, Where: []Part{o.Part, o.At}, Why: "keeps " + string(o.Part) + " shut"})
}

func (s *shell) aboveOf(p *part) float64 { return p.face.above }

func (s *shell) noSeam(path string, p, at Part) {
	s.c.addf(path+".At", "no-edge", "%s and %s do not meet in an edge", p, at)
}
