package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

func (f Cut) on(*shell) []onPart {
	return append([]onPart{{".On", f.On}}, onParts(".Through", f.Through)...)
}

func (f Cut) lower(s *shell, path string, by map[Part]*part) {
	p := by[f.On]
	for _, g := range s.plainCut(path, f, p) {
		p.feats = append(p.feats, g)
		s.through(path, f, p, g, by)
	}
}

// use looks at the use of a cut and settles what is left out.
func (s *shell) use(path string, u Use, dflt Use) (Use, bool) {
	switch u {
	case "":
		return dflt, true
	case UseEntrance, UseVent, UseDrain, UseOpening, UsePocket, UseMark, UseGrip, UseOrnament, UseHinge, UseScrew, UseFixing, UseDrip:
		return u, true
	}
	s.c.add(Problem{Path: path + ".Use", Code: "unknown-value", Got: fmt.Sprintf("%.40q", string(u)), Why: "no such use", Try: "box.UseOpening"})
	return u, false
}

// depth looks at the depth of a cut; 0 is through. Without a part any board will
// do.
func (s *shell) depth(path string, d MM, p *part) bool {
	switch {
	case d == 0:
		return true
	case p == nil:
		return s.c.within(path+".Depth", float64(d), 0.1, maxThickness, "mm", "depth of a cut; 0 is through")
	}
	return s.c.within(path+".Depth", float64(d), 0.1, p.face.least-0.5, "mm", "depth of a cut in "+string(p.face.part)+"; 0 is through")
}

// plainCut is a cut and its copies on its own part. Without a part it only looks
// at the numbers.
func (s *shell) plainCut(path string, f Cut, p *part) []feat {
	o, ok := shapeOutline(s.c, path+".Shape", f.Shape)
	ok = f.At.check(s.c, path+".At") && ok
	ok = f.Repeat.check(s.c, path+".Repeat", false) && ok
	if tool := f.Tool.check(s.c, path+".Tool"); ok && tool {
		ok = f.Tool.fits(s.c, path+".Tool", o)
	} else {
		ok = false
	}
	s.c.enum(path+".From", int(f.From), int(FromInner), "box.FromOuter")
	dflt := UseOpening
	if f.Depth != 0 {
		dflt = UsePocket
	}
	use, known := s.use(path, f.Use, dflt)
	ok = known && ok
	if f.Name != "" {
		s.c.name(path+".Name", f.Name)
	}
	ok = s.depth(path, f.Depth, p) && ok
	if len(f.Through) > 0 && f.Depth != 0 {
		s.c.addf(path+".Depth", "contradiction", "a cut through several parts goes through each of them: leave the depth 0")
		ok = false
	}
	if !ok || p == nil {
		return nil
	}
	source := f.Name
	if source == "" {
		source = string(use)
	}
	os := s.copies(path, o, f.At, f.Repeat, f.Mirror, p)
	fs := make([]feat, len(os))
	for i, o := range os {
		fs[i] = feat{path: path, source: source, use: use, outline: o, depth: float64(f.Depth), from: f.From, tool: f.Tool,
			edge: use == UseDrain || use == UseVent}
	}
	return fs
}

// through repeats a cut in the other parts on its axis.
func (s *shell) through(path string, f Cut, p *part, g feat, by map[Part]*part) {
	for i, name := range f.Through {
		q := by[name]
		if q == nil {
			continue
		}
		at := fmt.Sprintf("%s.Through[%d]", path, i)
		if q == p {
			s.c.addf(at, "same-part", "the cut is in %s already", name)
			continue
		}
		a, b := p.face.frame, q.face.frame
		if c := a.W.Dot(b.W); math.Abs(c) < 1-1e-9 {
			angle := math.Acos(math.Min(1, math.Abs(c))) * 180 / math.Pi
			s.c.add(Problem{Path: at, Code: "not-parallel", Got: num(angle), Lo: 0, Hi: 1e-3, Unit: "deg",
				Why: fmt.Sprintf("%s is not parallel to %s: a cut square to one would be slanted in the other", name, f.On)})
			continue
		}
		h := g
		h.path, h.cavity = at, false
		h.outline = g.outline.Transform(across(a, b))
		q.feats = append(q.feats, h)
	}
}

// across carries a place in the plane of a frame along its axis into the plane
// of a parallel one.
func across(a, b solid.Frame) outline.Affine {
	o := b.In(a.O)
	return outline.Affine{XX: a.U.Dot(b.U), XY: a.V.Dot(b.U), X0: o.X, YX: a.U.Dot(b.V), YY: a.V.Dot(b.V), Y0: o.Y}
}
