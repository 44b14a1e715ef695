package box

import (
	"fmt"
	"math"
	"strings"
)

// meeting is where two features of a part run into each other the most.
type meeting struct {
	f, g *feat
	by   float64
}

// tellMeeting reports it: of copies of one cut by the step that is too small.
func (s *shell) tellMeeting(p *part, m meeting) {
	f, g := m.f, m.g
	if f.path == g.path && s.tellStep(m) {
		return
	}
	pr := Problem{Path: f.path, Code: "feature-meets-feature", Got: size(f.outline),
		Why: fmt.Sprintf("the %s on %s runs into the %s of %s, by %s", f.source, p.face.part, g.source, g.path, num(round1(m.by)))}
	pr.Try = clearOfIt(f.path, g.path)
	s.c.add(pr)
}

// clearOfIt is what keeps a pattern clear of what is listed before it, as something
// to try.
func clearOfIt(later, earlier string) string {
	const clear = "Clear: 3, which leaves out what would come nearer"
	switch isPattern := func(path string) bool { return strings.HasSuffix(path, ".Pattern") }; {
	case later == earlier:
		return ""
	case isPattern(later):
		return clear
	case isPattern(earlier) && strings.HasPrefix(later, "Features["):
		return "to list " + earlier + " after it, with " + clear
	}
	return ""
}

// tellStep reports copies that lie beside or over one another by the step between
// them, and whether it could.
func (s *shell) tellStep(m meeting) bool {
	var r Repeat
	for i, f := range s.d.Features {
		if typed(fmt.Sprintf("Features[%d]", i), f) != m.f.path {
			continue
		}
		switch f := f.(type) {
		case Cut:
			r = f.Repeat
		case Pattern:
			r = f.Repeat
		}
	}
	a, b := m.f.outline.Extents(), m.g.outline.Extents()
	wide, high := math.Max(a.Width(), b.Width()), math.Max(a.Height(), b.Height()) // either may be clipped
	tell := func(field string, step, over float64, across string) bool {
		step = math.Abs(step)
		if !(step > 0 && step < over-1e-6) {
			return false
		}
		s.c.add(Problem{Path: m.f.path + ".Repeat." + field, Code: "feature-meets-feature", Got: num(step), Lo: over, Hi: math.Inf(1), Unit: "mm",
			Why: fmt.Sprintf("the step is less than the motif, %s %s, so that its copies run into one another", num(round1(over)), across)})
		return true
	}
	c, d := a.Centre(), b.Centre()
	whole := math.Abs(a.Width()-b.Width()) < 1e-6 && math.Abs(a.Height()-b.Height()) < 1e-6
	if whole && math.Abs(c.Y-d.Y) > 1e-6 {
		return tell("StepUp", float64(r.StepUp), high, "high")
	}
	return tell("StepRight", float64(r.StepRight), wide, "across") || tell("StepUp", float64(r.StepUp), high, "high")
}
