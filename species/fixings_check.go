package species

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/species/timber"
)

// CheckFixings holds fixings against a plan and the rules: the small-box rule
// (a pilot hole, a diameter of at most a quarter of the thickness, within 1 mm of
// the middle of the edge), or over 10 kg the structural distances to edge and
// end; length, more of it into end grain; points that come out; and stainless
// steel in woods that attack plain steel. The codes are fixing-small, edge-pre,
// edge-nopre, end-pre, end-nopre, fastener-length, fastener-endgrain, points and
// rust; and seam-unfixed names every seam that asks for screws or nails, and whose
// parts are joined neither by these fixings, which should be all there are, nor by
// the plan's own; its range is the lengths that would do. Without fixings, here and
// in the plan, that is left alone: they are not chosen yet. Held and Edge of a fixing
// made by hand may be left 0, and EndGrain false: they are measured. A fixing between parts that the plan does not have is a box.Problem.
func CheckFixings(plan *box.Plan, fixings []Fixing) ([]box.Finding, error) {
	if plan == nil {
		return nil, box.Problem{Path: "CheckFixings.plan", Code: "nil-plan", Why: "there is no plan to look at: resolve the design first"}
	}
	l, err := survey(plan, Preset{}, Site{})
	if err != nil {
		return nil, err
	}
	return l.checkFixings(plan, fixings)
}

// checkFixings is CheckFixings on what is surveyed already.
func (l *look) checkFixings(plan *box.Plan, fixings []Fixing) ([]box.Finding, error) {
	var out []box.Finding
	rusts := map[box.Part]bool{}
	for i, f := range fixings {
		if err := f.ranges(fmt.Sprintf("fixings[%d]", i)); err != nil {
			return nil, err
		}
		for _, p := range []box.Part{f.Over, f.Under} {
			q, ok := plan.Piece(p)
			if !ok {
				return nil, box.Problem{Path: fmt.Sprintf("fixings[%d]", i), Code: "unknown-part", Got: fmt.Sprintf("%.80q", string(p)), Why: "the plan has no such part"}
			}
			if w, ok := l.woodOf(q.Board.Material); ok && w.Corrosive() && !f.With.Stainless && !rusts[p] {
				rusts[p] = true
				r, _ := RuleOf("rust")
				g := r.finding(p, box.Place{}, math.NaN())
				g.Why = fmt.Sprintf("%s is of %s, which attacks plain steel when damp. %s", p, w.Name, r.Why)
				out = append(out, g)
			}
		}
		if len(f.Places) == 0 {
			continue
		}
		if err := f.With.check(fmt.Sprintf("fixings[%d].With", i)); err != nil {
			return nil, err
		}
		f.measure(l.piece(f.Over), l.piece(f.Under))
		out = append(out, f.check(true)...)
	}
	if len(fixings)+len(plan.Fixings()) > 0 {
		structural := l.mass() > heavy
		all := slices.Clone(fixings)
		for _, r := range plan.Fixings() {
			all = append(all, l.driven(plan, r, structural))
		}
		for _, u := range l.unfixed(plan, all, append(MetricScrews(), MetricNails()...), structural) {
			out = append(out, u.finding())
		}
	}
	return out, nil
}

// measure fills in what a fixing made by hand leaves out: the wood held, the edge
// and the depth of wood behind it, and whether it goes into end grain or a sheet.
func (f *Fixing) measure(a, b *piece) {
	w := solid.Vec{X: f.Into.X, Y: f.Into.Y, Z: f.Into.Z}
	if w == (solid.Vec{}) {
		w = a.outward
	}
	f.sheet = !b.solidWood()
	f.EndGrain = f.EndGrain || b.endGrain(w)
	sunk := 0.0
	if f.From == box.FromOuter {
		sunk = a.channel(b.Part)
	}
	if f.Held == 0 {
		f.Held = a.Thickness - box.MM(sunk)
	}
	if f.Edge == 0 {
		f.Edge = min(box.MM(b.leastThick()), b.Thickness)
	}
	if f.deep == 0 {
		f.deep = b.wood(a, f.From) + sunk
	}
}

// multiple is how many times the wood held a fastener should be long.
func (f Fixing) multiple() float64 {
	code := "fastener-length"
	if f.EndGrain {
		code = "fastener-endgrain"
	}
	r, _ := RuleOf(code)
	return r.Range.Lo
}

// check holds one row against the rules; the distance to the end only if asked.
func (f Fixing) check(ends bool) []box.Finding {
	var out []box.Finding
	at := box.Place{}
	if len(f.Places) > 0 {
		at = f.Places[0]
	}
	d := float64(f.With.Diameter)
	add := func(code string, got, lo, hi float64, u, why string) {
		sources := []string{"common practice"}
		severity := box.Warning
		if r, err := RuleOf(code); err == nil {
			sources, severity = r.Cites(), r.Severity
			why += ". " + r.Why
		} else {
			why += "."
		}
		out = append(out, box.Finding{Code: code, Severity: severity, Part: f.Over, Where: at, Got: got, Lo: lo, Hi: hi, Unit: u, Why: fmt.Sprintf("%s: %s", f, why), Sources: sources})
	}
	pilot := "nopre"
	if f.With.Pilot > 0 {
		pilot = "pre"
	}
	switch {
	case f.flat(): // no edge, and no end, is near
	case f.Structural:
		l := timber.DistancesFor(f.With.Pilot > 0, f.sheet)
		if edge := float64(f.Edge)/2 - math.Abs(float64(f.Off)); edge < float64(l.Edge*d)-tiny {
			add("edge-"+pilot, edge/d, l.Edge, math.Inf(1), "d", fmt.Sprintf("%s mm to the edge, %s needed", tenth(edge), tenth(l.Edge*d)))
		}
		if end := float64(f.End); ends && end < float64(l.End*d)-tiny {
			add("end-"+pilot, end/d, l.End, math.Inf(1), "d", fmt.Sprintf("%s mm to the end, %s needed", tenth(end), tenth(l.End*d)))
		}
	case f.With.Pilot == 0:
		add("fixing-small", 0, 0.5*d, d, "mm", "no pilot hole, and the edge of a thin board splits")
	case timber.SmallBox(f.With.Diameter, f.Edge, f.Off) != nil:
		if math.Abs(float64(f.Off)) > 1 {
			add("fixing-small", math.Abs(float64(f.Off)), 0, 1, "mm", "it stands too far from the middle of the edge")
		} else {
			add("fixing-small", d, 0, float64(f.Edge)/4, "mm", fmt.Sprintf("too thick for an edge of %s mm, of which at most a quarter will do", tenth(float64(f.Edge))))
		}
	}
	if need := f.least(); float64(f.With.Length) < need-tiny {
		code := "fastener-length"
		if f.EndGrain {
			code = "fastener-endgrain"
		}
		add(code, float64(f.With.Length/f.Held), need/float64(f.Held), math.Inf(1), "t", fmt.Sprintf("%s mm is too short for %s mm of wood held, %s needed", num(float64(f.With.Length)), tenth(float64(f.Held)), tenth(need)))
	}
	if in := float64(f.With.Length - f.Held); f.deep > 0 && in > f.deep-2 {
		add("points", in, 0, f.deep-2, "mm", "the point comes out")
	}
	return out
}
