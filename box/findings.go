package box

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// findings gathers what can be made and should be known.
func (s *shell) findings(p *Plan, parts []*part) {
	add := func(f Finding) { p.findings = append(p.findings, f) }
	for i := range p.pieces {
		q, path := &p.pieces[i], parts[i].path
		for _, e := range q.Panel.Edges {
			b := math.Abs(float64(e.Bevel))
			if b > maxBevel+1e-9 {
				s.c.add(Problem{Path: path, Code: "bevel", Got: num(b), Lo: 0, Hi: maxBevel, Unit: "deg",
					Why: fmt.Sprintf("the edge of %s at %s would be bevelled steeper than can be sawn", q.Part, orFree(e.Neighbour))})
			} else if b > 45+1e-9 {
				add(Finding{Code: "steep-bevel", Severity: Advice, Part: q.Part, Where: place(q.Home.Out(vec(e.From))), Got: b, Lo: 0, Hi: 45, Unit: "deg",
					Why: fmt.Sprintf("most saws stop at 45 degrees: the edge of %s at %s needs a jig", q.Part, orFree(e.Neighbour)), Sources: []string{"common practice"}})
			}
			if e.Length > 0 && e.Length < thinWeb {
				add(Finding{Code: "short-edge", Severity: Warning, Part: q.Part, Where: place(q.Home.Out(vec(e.From))), Got: float64(e.Length), Lo: thinWeb, Hi: math.Inf(1), Unit: "mm",
					Why: fmt.Sprintf("%s has an edge of %s mm: a crumb that will break off", q.Part, num(float64(e.Length)))})
			}
		}
		if q.Board.Width > 0 && q.Width > q.Board.Width+1e-6 {
			add(Finding{Code: "wider-than-board", Severity: Warning, Part: q.Part, Where: place(q.Home.O), Got: float64(q.Width), Lo: 0, Hi: float64(q.Board.Width), Unit: "mm",
				Why: fmt.Sprintf("%s is %s wide across the grain, and the board is %s: it has to be made up of strips", q.Part, num(round1(float64(q.Width))), num(float64(q.Board.Width)))})
		}
	}
	for _, q := range parts {
		s.webs(q, add)
	}
	for _, q := range unmade(parts) {
		q.lineFindings(add)
	}
	for _, w := range s.made {
		w.stripFindings(add)
	}
	for _, e := range s.edges {
		if !e.ok {
			continue
		}
		a := &s.faces[e.over]
		if g := float64(e.sec.ShortGrain); g > 0 && g < a.t-1e-9 {
			add(Finding{Code: "short-grain", Severity: Advice, Part: a.part, Where: place(e.a), Got: g, Lo: a.t, Hi: math.Inf(1), Unit: "mm",
				Why:     fmt.Sprintf("the channel for %s lies %s from the end of %s: less than the thickness may shear off", e.second(s).part, num(round1(g)), a.part),
				Sources: []string{"common practice"}})
		}
	}
	s.doubts(p, add)
	if h, ok := s.d.Roof.(Hip); ok && !h.Level && h.SidePitch != 0 && h.SidePitch != h.Pitch {
		add(Finding{Code: "uneven-eaves", Severity: Advice, Part: RoofLeft, Got: float64(h.SidePitch), Lo: float64(h.Pitch), Hi: float64(h.Pitch), Unit: "deg",
			Why: "slopes of unequal pitch leave eaves at different heights; Level evens them out"})
	}
	for _, v := range p.voids {
		if v.Kind == "run-out" {
			add(Finding{Code: "run-out", Severity: Advice, Where: v.At, Got: v.Volume, Lo: math.Inf(-1), Hi: math.Inf(1), Unit: "mm3",
				Why: fmt.Sprintf("the cut of %s runs out past its guest and leaves a pocket", v.Owner)})
		}
	}
}

// doubts are what can be made, but was hardly meant.
func (s *shell) doubts(p *Plan, add func(Finding)) {
	seen := map[Board]bool{}
	for i := range p.pieces {
		q := &p.pieces[i]
		if seen[q.Board] {
			continue
		}
		seen[q.Board] = true
		sold, is := float64(q.Board.Thickness), q.Board.most()
		switch {
		case math.Abs(is-sold) > sold/4:
			add(Finding{Code: "thickness-doubt", Severity: Warning, Part: q.Part, Where: place(q.Home.O), Got: is, Lo: sold * 0.75, Hi: sold * 1.25, Unit: "mm",
				Why: fmt.Sprintf("a board sold as %s thick was measured %s: a slip?", num(sold), num(is)), Sources: []string{"common practice"}})
		case is < 4:
			add(Finding{Code: "thickness-doubt", Severity: Warning, Part: q.Part, Where: place(q.Home.O), Got: is, Lo: 4, Hi: math.Inf(1), Unit: "mm",
				Why: fmt.Sprintf("a board %s mm thick is card; for inches say box.Inch(%s)", num(is), num(is)), Sources: []string{"common practice"}})
		}
	}
	s.entranceDoubts(p, add)
	s.idleFittings(add)
	for i := range s.faces[:s.walls] {
		if f := &s.faces[i]; f.up() && f.over > 0 {
			add(Finding{Code: "overhang-lost", Severity: Advice, Part: f.part, Got: f.over, Lo: 0, Hi: 0, Unit: "mm",
				Why: fmt.Sprintf("%s runs on above the roof, which ends at it: the overhang of %s there comes to nothing", f.part, num(f.over))})
		}
	}
	s.strays(p, add)
}

// entranceDoubts are entrances too small for anything but insects.
func (s *shell) entranceDoubts(p *Plan, add func(Finding)) {
	const least = 6.0
	for _, f := range s.d.Features {
		e, ok := f.(Entrance)
		if !ok {
			continue
		}
		o, ok := shapeOutline(&collector{}, "", e.Shape)
		q, known := p.Piece(s.frontOr(e.On))
		if !ok || !known {
			continue
		}
		x := o.Extents()
		if is := math.Min(x.Width(), x.Height()); is < least {
			add(Finding{Code: "entrance-doubt", Severity: Warning, Part: q.Part, Where: place(q.Home.O), Got: is, Lo: least, Hi: math.Inf(1), Unit: "mm",
				Why: fmt.Sprintf("an entrance %s mm wide is one for insects; for inches say box.Inch(%s)", num(is), num(is)), Sources: []string{"common practice"}})
		}
	}
}

// idleFittings are hooks and buttons between two parts that do not open.
func (s *shell) idleFittings(add func(Finding)) {
	opens := map[Part]bool{}
	for _, w := range s.ways {
		opens[w.part] = true
	}
	for _, o := range s.d.Opens {
		var part, at Part
		what := "hook and eye"
		switch o := o.(type) {
		case HookAndEye:
			part, at = o.Part, o.At
		case TurnButton:
			part, at, what = o.Part, o.At, "turn button"
		default:
			continue
		}
		if !opens[part] && !opens[at] {
			add(Finding{Code: "holds-nothing", Severity: Warning, Part: part, Lo: math.Inf(-1), Hi: math.Inf(1),
				Why: fmt.Sprintf("the %s keeps %s shut, which does not open, nor does %s: add a Hinged, Pivoted, Sliding or Removable to Opens", what, part, at)})
		}
	}
}

// strays finds free parts that touch nothing else.
func (s *shell) strays(p *Plan, add func(Finding)) {
	for i := range p.pieces {
		q := &p.pieces[i]
		if !strings.HasPrefix(string(q.Part), "free/") || len(p.pieces) < 2 {
			continue
		}
		touches := false
		for k := range p.pieces {
			if k != i && solid.Contact(q.Body, p.pieces[k].Body, 1) > 0 {
				touches = true
				break
			}
		}
		if !touches {
			add(Finding{Code: "stray", Severity: Advice, Part: q.Part, Where: place(q.Home.O), Got: 0, Lo: 0, Hi: math.Inf(1), Unit: "mm2",
				Why: fmt.Sprintf("%s lies flat against no other part", q.Part)})
		}
	}
}

// webs finds thin wood between openings and beside them.
func (s *shell) webs(p *part, add func(Finding)) {
	top, _, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	if p.strip != nil {
		top = p.strip.showing(p, top)
	}
	if len(top) == 0 {
		return
	}
	report := func(f *feat, d float64, what string) {
		c := f.outline.Centroid()
		why := fmt.Sprintf("only %s mm of wood stand between the %s and %s", num(round2(d)), f.source, what)
		if d < 0.01 {
			why = fmt.Sprintf("%s cuts the %s", what, f.source)
		}
		add(Finding{Code: "thin-web", Severity: Warning, Part: p.face.part, Where: place(p.face.frame.Out(vec(c))), Got: math.Max(0, d), Lo: thinWeb, Hi: math.Inf(1), Unit: "mm", Why: why})
	}
	for i := range p.feats {
		if f := &p.feats[i]; !f.inLine && !f.open && !f.split {
			if d := inside(top[0], f.outline); d < thinWeb {
				report(f, d, "the edge of "+string(p.face.part))
			}
		}
	}
	p.eachPair(thinWeb, func(i, k int) {
		f, g := &p.feats[max(i, k)], &p.feats[min(i, k)]
		if d := f.outline.DistanceTo(g.outline); d < thinWeb && !f.inLine && !g.inLine && !(f.fit && g.fit && f.path == g.path) {
			report(f, d, "the "+g.source+" beside it")
		}
	})
}

func round2(x float64) float64 { return math.Round(x*100) / 100 }

func orFree(p Part) string {
	if p == "" {
		return "its free end"
	}
	return string(p)
}

func vec(p outline.Point) solid.Vec { return solid.Vec{X: p.X, Y: p.Y} }
