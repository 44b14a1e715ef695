package box

import (
	"math"

	"holt.example/box/outline"
)

// Pattern repeats a motif over a part, clipped to the part and a margin: it
// never leaves the part. Crumbs under 1 mm2, pieces narrower than the tool and
// strokes shorter than their width are left out.
type Pattern struct {
	On    Part
	Motif Shape          // cut through or to Depth; or
	Lines []outline.Path // engraved, around their own origin; one of the two
	At    Anchor         // of one motif, or of the rings' centre; Turn turns each motif
	// Repeat with counts of 0 fills the part: its steps are the bond. Both zero:
	// one motif.
	Repeat Repeat
	Rings  Rings
	Margin MM   // from the part's edge to the pattern, line widths included
	Clear  MM   // motifs and lines nearer than this to a feature listed before, engraved ones too, are left out; 0 makes them a problem
	Whole  bool // only whole motifs: none is clipped
	Depth  MM   // of a motif: 0 is through; of lines: as in Engrave
	Width  MM   // of lines: as in Engrave
	From   CutSide
	Tool   Tool
	Use    Use    // "" means ornament
	Name   string // for lists; "" means the use
}

// Rings sets motifs in rings round the anchor, clockwise from the top seen from
// outside.
type Rings struct {
	Count int  // of rings; 0 means 1
	Each  int  // motifs in a ring, 1 to 2000; 0 means 12
	First MM   // radius of the innermost
	Step  MM   // from ring to ring
	Brick bool // every second ring is turned by half a step
	Face  bool // motifs turn with the ring, else all stand upright
}

func (Pattern) feature() {}

func (f Pattern) on(*shell) []onPart { return []onPart{{".On", f.On}} }

func (f Pattern) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	var motif outline.Contour
	switch {
	case f.Motif != nil && f.Lines != nil:
		s.c.addf(path+".Lines", "twice", "a pattern repeats a motif or lines, not both")
	case f.Lines != nil:
		checkPaths(s.c, path+".Lines", f.Lines)
	default:
		motif, _ = shapeOutline(s.c, path+".Motif", f.Motif)
	}
	f.At.check(s.c, path+".At")
	f.Repeat.check(s.c, path+".Repeat", f.Rings == (Rings{}))
	if f.Rings != (Rings{}) && f.Repeat != (Repeat{}) {
		s.c.addf(path+".Repeat", "contradiction", "a pattern runs in rings or in rows, not both")
	}
	f.Rings.check(s.c, path+".Rings")
	s.c.atLeast0(path+".Margin", f.Margin, "margin of a pattern")
	s.c.atLeast0(path+".Clear", f.Clear, "distance of a pattern from other features")
	s.c.enum(path+".From", int(f.From), int(FromInner), "box.FromOuter")
	use, _ := s.use(path, f.Use, UseOrnament)
	if f.Name != "" {
		s.c.name(path+".Name", f.Name)
	}
	p := by[f.On]
	w, d, tool := 0.0, float64(f.Depth), f.Tool
	if f.Lines != nil {
		tool, w, d, _ = s.c.groove(path, f.Tool, f.Width, f.Depth, 2)
		if p != nil && len(s.c.ps) == n {
			s.depthIn(path+".Depth", d, p)
		}
	} else {
		if f.Width != 0 {
			s.c.addf(path+".Width", "contradiction", "the width is that of lines: a motif has its own")
		}
		if f.Tool.check(s.c, path+".Tool") && motif != nil {
			f.Tool.fits(s.c, path+".Tool", motif)
		}
		s.depth(path, f.Depth, p)
	}
	if len(s.c.ps) > n || p == nil {
		return
	}
	room, convex, ok := s.room(path, p, float64(f.Margin)+w/2)
	if !ok {
		return
	}
	e := outline.Contour(motif).Extents()
	for i, l := range f.Lines {
		if i == 0 {
			e = l.Extents()
		}
		e = e.Join(l.Extents())
	}
	places, ok := s.places(path, f, p, e, room.Extents())
	if !ok {
		return
	}
	if f.Lines != nil {
		if !s.c.fewStrokes(path+".Repeat", len(f.Lines), len(places)) {
			return
		}
		f.engrave(p, path, use, tool, w, d, places, room)
		return
	}
	f.cut(s, p, path, use, motif, places, room, convex)
}

// check looks at the numbers.
func (r Rings) check(c *collector, path string) bool {
	ok := c.within(path+".Count", float64(r.Count), 0, 200, "", "rings")
	ok = c.within(path+".Each", float64(r.Each), 0, 2000, "", "motifs in a ring; 0 is 12") && ok
	ok = c.atLeast0(path+".First", r.First, "radius of the first ring") && ok
	if r.Count > 1 {
		return c.within(path+".Step", float64(r.Step), 0.1, maxLength, "mm", "distance of rings: they must not lie on one another") && ok
	}
	return c.atLeast0(path+".Step", r.Step, "distance of rings") && ok
}

// places are the maps that carry the motif, whose extents are e, to where it is
// repeated over the room.
func (s *shell) places(path string, f Pattern, p *part, e, room outline.Box) ([]outline.Affine, bool) {
	turned := outline.Rectangle(e.Min.X, e.Min.Y, e.Max.X, e.Max.Y).Transform(outline.Turn(float64(f.At.Turn))).Extents()
	at, ok := s.settle(path+".At", f.At, p, turned)
	if !ok {
		return nil, false
	}
	var out []outline.Affine
	if f.Rings != (Rings{}) {
		each, count := f.Rings.Each, max(f.Rings.Count, 1)
		if each == 0 {
			each = 12
		}
		if !s.c.within(path+".Rings.Each", float64(each*count), 1, mostCopies, "", "motifs in all rings") {
			return nil, false
		}
		for k := range count {
			r := float64(f.Rings.First) + float64(float64(k)*float64(f.Rings.Step))
			for i := range each {
				a := float64(i)
				if f.Rings.Brick && k%2 != 0 {
					a += 0.5
				}
				a = 360 * a / float64(each)
				m := outline.Shift(0, r).Then(outline.Turn(-a)) // clockwise from the top
				if !f.Rings.Face {
					m = outline.Turn(a).Then(m)
				}
				out = append(out, outline.Turn(float64(f.At.Turn)).Then(m).Then(outline.Shift(at.X0, at.Y0)))
			}
		}
		return out, true
	}
	r := f.Repeat
	// The copies that can reach the room: lo to hi, or as many as are said.
	span := func(n int, step, lo, hi float64) (int, int) {
		if n != 0 || step == 0 {
			return 0, max(n, 1) - 1
		}
		if step < 0 {
			lo, hi = hi, lo
		}
		return int(math.Ceil(lo/step - 1e-9)), int(math.Floor(hi/step + 1e-9))
	}
	j0, j1 := span(r.Rows, float64(r.StepUp), room.Min.Y-at.Y0-turned.Max.Y, room.Max.Y-at.Y0-turned.Min.Y)
	i0, i1 := span(r.Columns, float64(r.StepRight), room.Min.X-at.X0-turned.Max.X, room.Max.X-at.X0-turned.Min.X)
	if r.Brick && r.Columns == 0 {
		i0-- // a row that is moved by half a step reaches one farther
	}
	if n := float64(i1-i0+1) * float64(j1-j0+1); n > mostCopies {
		s.c.add(Problem{Path: path + ".Repeat", Code: "range", Got: num(n), Lo: 1, Hi: mostCopies, Why: "motifs that would fill the part: make the steps larger"})
		return nil, false
	}
	shift := outline.Point{}
	if r.Centred && r.Columns*r.Rows > 0 {
		m := r.shifts()[0]
		shift = m
	}
	for j := j0; j <= j1; j++ {
		for i := i0; i <= i1; i++ {
			d := r.shift(i, j)
			out = append(out, at.Then(outline.Shift(d.X+shift.X, d.Y+shift.Y)))
		}
	}
	return out, true
}

// cut puts the motifs onto the part.
func (f Pattern) cut(s *shell, p *part, path string, use Use, motif outline.Contour, places []outline.Affine, room outline.Region, convex []outline.HalfPlane) {
	before := p.listedBefore()
	tool := float64(f.Tool.Diameter) / 2
	if f.Tool.VAngle != 0 {
		tool = 0
	}
	for _, m := range places {
		whole := motif.Transform(m)
		if !before.clearOf(whole.Extents(), float64(f.Clear), 0, func(g outline.Contour) bool { return comesNear(whole, g, float64(f.Clear)) },
			func(l *line, t outline.Path) bool {
				return f.meetsFace(p, l, float64(f.Depth)) && (t.DistanceTo(whole) < float64(f.Clear)+l.band() || whole.Contains(t[0].At(), 0) == outline.Inside)
			}) {
			continue
		}
		pieces, cut, err := clipTo(whole, room, convex)
		if err != nil {
			s.c.addf(path, "outline", "a motif could not be clipped to %s: %v", p.face.part, err)
			return
		}
		if cut && f.Whole {
			continue
		}
		for _, o := range pieces {
			if a := o.Area(); cut && (!(a > 1) || tool > 0 && !roomFor(o, tool)) {
				continue
			}
			p.feats = append(p.feats, feat{path: path, source: orUse(f.Name, use), use: use, outline: o, depth: float64(f.Depth), from: f.From, tool: f.Tool})
		}
	}
}

// comesNear reports whether two outlines come nearer than d or share a place.
func comesNear(a, b outline.Contour, d float64) bool { return a.DistanceTo(b) < d || clash(a, b) }

// engrave puts the strokes onto the part, one line for all.
func (f Pattern) engrave(p *part, path string, use Use, t Tool, w, d float64, places []outline.Affine, room outline.Region) {
	before := p.listedBefore()
	l := line{path: path, source: orUse(f.Name, use), use: use, tool: t, width: w, depth: d, from: f.From}
	off := float64(f.Clear)
	for _, m := range places {
		for _, stroke := range f.Lines {
			whole := stroke.Transform(m)
			if !before.clearOf(whole.Extents(), off, w/2, func(g outline.Contour) bool {
				return whole.DistanceTo(g) < off+w/2 || g.Contains(whole[0].At(), 0) == outline.Inside
			}, func(o *line, t outline.Path) bool {
				return f.meetsFace(p, o, d) && whole.DistanceTo(thereAndBack(t)) < off+w/2+o.band()
			}) {
				continue
			}
			parts := whole.Within(room)
			if f.Whole && !(len(parts) == 1 && math.Abs(parts[0].Length()-whole.Length()) < 1e-6) {
				continue
			}
			for _, t := range parts {
				if t.Length() >= w {
					l.strokes = append(l.strokes, t)
				}
			}
		}
	}
	if len(l.strokes) > 0 {
		p.engraved = append(p.engraved, l)
	}
}
