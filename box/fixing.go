package box

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// mostFixings in one row, and rows in a design.
const (
	mostFixings = 200
	mostRows    = 1000
)

// Fixing is a row of like screws or nails through one part into another, to stay.
// The two lie on one another but for the play of their joint, each head lies on Over
// and in no opening, and no two screws or nails of the design meet.
// Its holes are cut, drawn and listed, and it is among the plan's fittings.
// species.Fasten proposes the rows of a design; a row can be written by hand too.
type Fixing struct {
	Over, Under Part   // through Over, into Under
	What        string // "screw" or "nail"
	Metal       string // "stainless steel", "aluminium" ...; "" is not said
	Diameter    MM     // 0.5 to 12
	Length      MM     // 5 to 400
	Hole        MM     // diameter of the hole through Over, from 0.5 to 15; 0 is none
	Pilot       MM     // diameter of the hole in Under, from 0.5 to Diameter; 0 is none
	// From is the face of Over on which the heads are: a screw from the inner face
	// goes outward, into what stands on the outside.
	From CutSide
	// At are the places of the heads, as a Cut on Over counts them, 1 to 200.
	At []Anchor
	// Slant drives them in line with Under, as at a slope, in place of square to
	// Over. The hole through Over is not made then: it is drilled, in line with
	// the one in Under, when the parts are together.
	Slant bool
}

// FixingRow is a row of the design as it is in the plan.
type FixingRow struct {
	Fixing
	Places []Place   // of the heads
	Into   Direction // the way they go, of length 1
	// Held is how far each passes through Over, without the play between the two, and
	// In how deep it is in Under, mm.
	Held, In []MM
	// Together says that holes it has are not drawn, because they run slanting
	// through a board: they are drilled when the parts are together.
	Together bool
}

// Fixings are the rows of the design, as they are in the plan.
func (p *Plan) Fixings() []FixingRow {
	out := slices.Clone(p.fixings)
	for i := range out {
		r := &out[i]
		r.At, r.Places, r.Held, r.In = slices.Clone(r.At), slices.Clone(r.Places), slices.Clone(r.Held), slices.Clone(r.In)
	}
	return out
}

// checkFixings looks at the numbers of the rows and of the listed fittings.
func (d Design) checkFixings(c *collector) {
	if !c.within("Fixings", float64(len(d.Fixings)), 0, mostRows, "rows", "rows of screws and nails") {
		return
	}
	for i, f := range d.Fixings {
		path := fmt.Sprintf("Fixings[%d]", i)
		if f.What != "screw" && f.What != "nail" {
			c.add(Problem{Path: path + ".What", Code: "unknown-value", Got: fmt.Sprintf("%.40q", f.What), Why: "a fixing is a screw or a nail", Try: "screw"})
		}
		if f.Metal != "" {
			c.name(path+".Metal", f.Metal)
		}
		ok := c.within(path+".Diameter", float64(f.Diameter), 0.5, 12, "mm", "diameter of a screw or nail")
		c.within(path+".Length", float64(f.Length), 5, 400, "mm", "length of a screw or nail")
		if f.Hole != 0 {
			c.within(path+".Hole", float64(f.Hole), 0.5, 15, "mm", "hole for a screw or nail; 0 is none")
		}
		if f.Pilot != 0 && ok {
			c.within(path+".Pilot", float64(f.Pilot), 0.5, float64(f.Diameter), "mm", "pilot hole, no wider than what goes into it; 0 is none")
		}
		c.enum(path+".From", int(f.From), int(FromInner), "box.FromOuter")
		if c.within(path+".At", float64(len(f.At)), 1, mostFixings, "places", "screws or nails in a row") {
			for k, a := range f.At {
				a.check(c, fmt.Sprintf("%s.At[%d]", path, k))
			}
		}
		if f.Over == f.Under {
			c.addf(path+".Under", "same-part", "a fixing joins two parts, not %.60q and itself", string(f.Over))
		}
	}
}

// stated are the holds that the design gives an edge: none where it is dry.
func stated(hs []joints.Hold) []joints.Hold {
	var out []joints.Hold
	for _, h := range hs {
		if h.Kind != "dry" {
			out = append(out, h)
		}
	}
	return out
}

// holds looks at what is said to hold an edge.
func (c *collector) holds(path string, hs []joints.Hold) {
	for i, h := range hs {
		at := fmt.Sprintf("%s.Holds[%d]", path, i)
		switch h.Kind {
		case "glue", "screw", "nail":
		case "dry":
			if len(hs) > 1 {
				c.addf(at+".Kind", "contradiction", "an edge that is dry has nothing else to hold it")
			}
		default:
			c.add(Problem{Path: at + ".Kind", Code: "unknown-value", Got: fmt.Sprintf("%.40q", h.Kind), Why: "an edge is held by glue, screw or nail, or it is dry", Try: "glue"})
		}
		if h.Note != "" {
			c.name(at+".Note", h.Note)
		}
		c.within(at+".Count", float64(h.Count), 0, mostFixings, "", "screws or nails along an edge; 0 is not said")
		for _, x := range []struct {
			field string
			x, hi MM
		}{{".Diameter", h.Diameter, 12}, {".Length", h.Length, 400}, {".Spacing", h.Spacing, maxLength}} {
			c.within(at+x.field, float64(x.x), 0, float64(x.hi), "mm", "size or distance of screws or nails; 0 is not said")
		}
	}
}

// lowerFixings bores the holes of the rows and lists them.
func (s *shell) lowerFixings(parts []*part) {
	by := map[Part]*part{}
	var names []string
	for _, p := range parts {
		by[p.face.part] = p
		names = append(names, string(p.face.part))
	}
	var nails []nail
	for i := range s.d.Fixings {
		f := &s.d.Fixings[i]
		path := fmt.Sprintf("Fixings[%d]", i)
		for _, e := range []onPart{{".Over", f.Over}, {".Under", f.Under}} {
			if by[e.part] == nil {
				s.unknown(path+e.field, e.part, names)
			}
		}
		if a, b := by[f.Over], by[f.Under]; a != nil && b != nil && s.staysShut(path, f) {
			nails = append(nails, s.drive(path, f, a, b)...)
		}
	}
	s.checkBare(nails)
	s.checkNails(nails)
}

// staysShut reports a row that would hold shut what opens.
func (s *shell) staysShut(path string, f *Fixing) bool {
	for _, w := range s.ways {
		moves := func(p Part) bool { return p == w.part || slices.Contains(w.with, p) }
		if moves(f.Over) != moves(f.Under) {
			s.c.addf(path, "holds-shut", "%s opens, and a %s through %s into %s would hold it shut", w.part, f.What, f.Over, f.Under)
			return false
		}
	}
	return true
}

// way is the direction of a row through a into b; ok is false where none is in
// line with b.
func (f *Fixing) way(a, b *part) (w solid.Vec, ok bool) {
	n := a.face.frame.W
	if f.Slant {
		m := b.face.frame.W
		n = n.Sub(m.Scale(n.Dot(m)))
		if !(n.Len() > 0.5) {
			return w, false
		}
		n = n.Unit()
	}
	if f.From == FromOuter {
		return n.Scale(-1), true
	}
	return n, true
}

// drive brings one row down to holes, and gives what is driven.
func (s *shell) drive(path string, f *Fixing, a, b *part) (nails []nail) {
	w, ok := f.way(a, b)
	if !ok {
		s.c.addf(path+".Slant", "parallel", "%s lies flat on %s: nothing through one is in line with the other", f.Under, f.Over)
		return nil
	}
	row := FixingRow{Fixing: *f, Into: Direction{roundTo(w.X, 40), roundTo(w.Y, 40), roundTo(w.Z, 40)}}
	row.At = slices.Clone(f.At)
	start := 0.0
	if f.From == FromOuter {
		start = a.face.t
	}
	for k, at := range f.At {
		here := fmt.Sprintf("%s.At[%d]", path, k)
		r := math.Max(float64(f.Hole), float64(f.Diameter)) / 2
		m, ok := s.settle(here, at, a, outline.Box{Min: outline.Point{X: -r, Y: -r}, Max: outline.Point{X: r, Y: r}})
		if !ok {
			return nil
		}
		o := m.Apply(outline.Point{})
		head := a.face.frame.Out(solid.Vec{X: o.X, Y: o.Y, Z: start})
		drilled := f.Hole > 0 && !f.Slant
		if off := f.offEdge(a, o); off > 0 && !drilled { // a hole says so itself
			s.c.add(Problem{Path: here, Code: "off-part", Got: num(float64(f.Diameter)) + " across",
				Why: fmt.Sprintf("the %s into %s reaches %s past the edge of %s", f.What, f.Under, num(round1(off)), f.Over)})
			continue
		}
		from, to := through(b.convex, head, w)
		if in := float64(f.Length) - from; !(from > -1e-6 && to > from+1e-6 && in > 0.5) {
			s.c.add(Problem{Path: here, Code: "misses", Got: num(float64(f.Length)) + " long",
				Why: fmt.Sprintf("the %s through %s does not reach into %s here", f.What, f.Over, f.Under)})
			continue
		}
		_, leaves := through(a.convex, head, w)
		if gap := from - leaves; gap > s.gapOf(a, b)/math.Abs(w.Dot(a.face.frame.W))+1e-6 {
			s.c.add(Problem{Path: here, Code: "misses", Got: num(round1(gap)) + " between them",
				Why: fmt.Sprintf("the %s through %s into %s: the two do not lie on one another here", f.What, f.Over, f.Under)})
			continue
		}
		nails = append(nails, nail{here, f, a, b, head, head.Add(w.Scale(float64(f.Length))), o})
		row.Places = append(row.Places, place(head))
		row.Held = append(row.Held, tidy(math.Min(from, leaves)))
		row.In = append(row.In, tidy(math.Min(to, float64(f.Length))-from))
		row.Together = row.Together || f.Hole > 0 && f.Slant
		if drilled {
			a.feats = append(a.feats, feat{path: path, source: f.What, use: UseFixing, outline: settled(outline.Circle(o, float64(f.Hole))), fit: true, with: f.Under})
		}
		if f.Pilot > 0 && !s.pilot(path, f, b, head.Add(w.Scale(from)), w, math.Min(to, float64(f.Length))-from) {
			row.Together = true
		}
	}
	s.rows = append(s.rows, row)
	return nails
}

// pilot bores for one screw: into the edge of a part, or square into its face. It
// says whether it could: not on the slant.
func (s *shell) pilot(path string, f *Fixing, b *part, at, w solid.Vec, in float64) bool {
	c := b.face.frame.W.Dot(w)
	if math.Abs(c) < 1-1e-6 {
		n := len(b.ends)
		b.intoEnd(at, w, float64(f.Pilot), in, UseFixing, f.What)
		return len(b.ends) > n
	}
	from := FromOuter
	if c > 0 {
		from = FromInner
	}
	if in > b.face.least-0.5 { // it comes out on the other side
		in = 0
	}
	q := b.face.frame.In(at)
	b.feats = append(b.feats, feat{path: path, source: f.What, use: UseFixing, depth: in, from: from, fit: true, with: f.Over,
		outline: settled(outline.Circle(outline.Point{X: q.X, Y: q.Y}, float64(f.Pilot)))})
	return true
}

// through is where a ray from p enters a convex body and leaves it again.
func through(c solid.Convex, p, w solid.Vec) (from, to float64) {
	from, to = math.Inf(-1), math.Inf(1)
	for _, f := range c.Faces {
		speed, gap := f.N.Dot(w), f.N.Dot(f.Loop[0].Sub(p))
		switch {
		case math.Abs(speed) < 1e-12:
			if gap < 0 {
				return 0, 0
			}
		case speed > 0:
			to = math.Min(to, gap/speed)
		default:
			from = math.Max(from, gap/speed)
		}
	}
	return from, to
}

// listFixings puts the rows and what the design lists into the fittings, and says
// in the seams what holds them.
func (s *shell) listFixings(p *Plan) {
	p.fixings = s.rows
	for _, r := range s.rows {
		f := Fitting{What: r.What, Count: len(r.At), Size: num(float64(r.Diameter)) + " x " + num(float64(r.Length)), Length: r.Length, Width: r.Diameter,
			Where: []Part{r.Over, r.Under}, Why: "through " + string(r.Over) + " into " + string(r.Under)}
		if r.Metal != "" {
			f.What += ", " + r.Metal
		}
		if r.Slant {
			f.Why += ", in line with it"
		}
		if r.Together {
			f.Why += "; drilled when they are together"
		}
		p.fittings = append(p.fittings, f)
	}
	for i := range p.seams {
		p.seams[i].Holds = s.heldBy(p, &p.seams[i])
	}
	s.listGlue(p)
	for i, f := range s.d.Fittings {
		for k, q := range f.Where {
			if _, ok := p.Piece(q); !ok {
				var names []string
				for _, x := range p.pieces {
					names = append(names, string(x.Part))
				}
				s.unknown(fmt.Sprintf("Fittings[%d].Where[%d]", i, k), q, names)
			}
		}
		p.fittings = append(p.fittings, clone(f))
	}
}

// listGlue lists the glue of all seams that are glued, and says in them which it is.
func (s *shell) listGlue(p *Plan) {
	if s.d.Glue == "" {
		return
	}
	f := Fitting{What: "glue, " + s.d.Glue, Count: 1}
	n := 0
	for i := range p.seams {
		m := &p.seams[i]
		if !m.Glued() || !(m.Contact > 0) {
			continue
		}
		m.Holds = slices.Clone(m.Holds)
		for k, h := range m.Holds {
			if h.Kind == "glue" && h.Note == "" {
				m.Holds[k].Note = s.d.Glue
			}
		}
		n++
		f.Area += m.Contact
		for _, q := range []Part{m.Over, m.Under} {
			if !slices.Contains(f.Where, q) {
				f.Where = append(f.Where, q)
			}
		}
	}
	f.Size = "for " + num(math.Ceil(f.Area/100-1e-6)) + " cm2"
	f.Why = fmt.Sprintf("the faces of %d seams together", n)
	if n == 1 {
		f.Why = "the faces of one seam"
	}
	if n > 0 {
		p.fittings = append(p.fittings, f)
	}
}

// heldBy says what holds a seam: the rows of the design in place of the screws and
// nails that the joint only asks for.
func (s *shell) heldBy(p *Plan, m *Seam) []joints.Hold {
	of := func(q Part) Part { // a strip belongs to its part
		if x, ok := p.Piece(q); ok && x.Of != "" {
			return x.Of
		}
		return q
	}
	a, b := of(m.Over), of(m.Under)
	var rows []joints.Hold
	has := false
	for _, r := range s.rows {
		over, under := m.Over, m.Under
		switch {
		case a == r.Over && b == r.Under:
		case a == r.Under && b == r.Over:
			over, under = under, over
		default:
			continue
		}
		has = true
		if r.Places = s.inStrips(r, over, under); len(r.Places) > 0 {
			rows = append(rows, joints.Hold{Kind: r.What, Count: len(r.Places), Diameter: r.Diameter, Length: r.Length, Spacing: r.spacing(),
				Note: "through " + string(r.Over) + " into " + string(r.Under)})
		}
	}
	if !has {
		return m.Holds
	}
	var out []joints.Hold
	for _, h := range m.Holds {
		if h.Kind != "screw" && h.Kind != "nail" {
			out = append(out, h)
		}
	}
	return append(out, rows...)
}

// inStrips are the places of a row whose screws go through one piece into another:
// all of them, but for strips of made-up parts.
func (s *shell) inStrips(r FixingRow, over, under Part) []Place {
	a, b := s.stripOf(over), s.stripOf(under)
	if a == nil && b == nil {
		return r.Places
	}
	var out []Place
	for k, at := range r.Places {
		head := solid.Vec{X: float64(at.X), Y: float64(at.Y), Z: float64(at.Z)}
		in := head.Add(solid.Vec{X: r.Into.X, Y: r.Into.Y, Z: r.Into.Z}.Scale(float64(r.Held[k] + r.In[k]/2)))
		ok := true
		if a != nil {
			_, _, ok = a.stretch(head, head)
		}
		if b != nil && ok {
			_, _, ok = b.stretch(in, in)
		}
		if ok {
			out = append(out, at)
		}
	}
	return out
}

// stripOf is the strip of a name, nil if the part is none.
func (s *shell) stripOf(name Part) *part {
	for _, w := range s.made {
		for _, q := range w.strips {
			if q.face.part == name {
				return q
			}
		}
	}
	return nil
}

// spacing is the largest distance between neighbours in the row.
func (r *FixingRow) spacing() MM {
	most := 0.0
	for i, a := range r.Places {
		if i == 0 {
			continue
		}
		b := r.Places[i-1]
		x, y, z := float64(a.X-b.X), float64(a.Y-b.Y), float64(a.Z-b.Z)
		most = math.Max(most, math.Sqrt(float64(x*x)+float64(y*y)+float64(z*z)))
	}
	return tidy(most)
}
