package species

import (
	"math"
	"slices"

	"holt.example/box"
)

// Review holds a plan against what is published for an animal and lists what
// differs: first what is at fault, then warnings, then advice, each in the
// order of the rules. A finding has the code of its rule, the value found, the
// range allowed (infinite where there is no bound), the reason, and the keys of
// its sources. A value that the preset itself has is never a finding, whatever
// a general rule says.
//
// Only what can be measured on the plan is looked at; see Reviewed for the
// rules that are. What holds at all times, of law and of safety, is Advice. A
// nil plan, a preset without a form or of a region that does not exist, are a
// box.Problem; what cannot be of a site, its shop and its mounting is told all at once,
// as box.Problems.
func Review(plan *box.Plan, animal Preset, site Site) ([]box.Finding, error) {
	if plan == nil {
		return nil, box.Problem{Path: "Review.plan", Code: "nil-plan", Why: "there is no plan to review: resolve the design first"}
	}
	if err := animal.check("Review.animal"); err != nil {
		return nil, err
	}
	if err := site.check(); err != nil {
		return nil, err
	}
	l, err := survey(plan, animal, site)
	if err != nil {
		return nil, err
	}
	if err := l.drive(); err != nil {
		return nil, err
	}
	var last []box.Finding // of no rule's own
	for _, f := range l.fixed {
		if !slices.ContainsFunc(measured, func(m measure) bool { return m.code == f.Code }) {
			last = append(last, f)
		}
	}
	if !site.Shop.empty() {
		last = append(last, site.Shop.look(plan, animal)...)
	}
	var out []box.Finding
	for _, s := range []box.Severity{box.Fault, box.Warning, box.Advice} {
		for _, r := range every {
			if r.Severity != s || !r.Scope.For(animal) {
				continue
			}
			for _, c := range measured {
				if c.code == r.Code {
					out = append(out, c.look(l, r)...)
				}
			}
		}
		for _, f := range last {
			if f.Severity == s {
				out = append(out, f)
			}
		}
	}
	for i := range out {
		switch p := l.piece(out[i].Part); {
		case p == nil: // the floor of a box without one: it is the box that is meant
			out[i].Part = ""
		case out[i].Where == (box.Place{}):
			out[i].Where = placeOf(p.min.Add(p.max).Scale(0.5))
		}
	}
	return out, nil
}

// Advice lists what holds at all times for an animal and a place, and what no
// plan shows: the law, the seasons, safety, and how rough the boards are inside.
// Each has the code of its rule.
func Advice(animal Preset) []box.Finding {
	var out []box.Finding
	for _, r := range every {
		if !r.Scope.For(animal) {
			continue
		}
		measurable := false
		for _, c := range measured {
			measurable = measurable || c.code == r.Code && !c.partly
		}
		if measurable {
			continue
		}
		f := r.finding("", box.Place{}, math.NaN())
		f.Why = r.asks() + ". " + r.Why
		out = append(out, f)
	}
	return out
}

// Reviewed lists the codes of the rules that Review measures, in the order of
// the rules.
func Reviewed() []string {
	var out []string
	for _, r := range every {
		for _, c := range measured {
			if c.code == r.Code {
				out = append(out, r.Code)
			}
		}
	}
	return out
}

// measure is a rule as something to look at.
type measure struct {
	code string
	look func(*look, Rule) []box.Finding
	// partly says that a plan shows only some ways to break the rule, so that it
	// is advice as well.
	partly bool
	// site names the fields of Site without which it is left alone, or that
	// settle it; "" is none.
	site string
}

// measured are the rules that a plan can be held against; never changed.
var measured = []measure{
	{code: "hole-size", look: holeSize},
	{code: "hole-above-120", look: holeAbove}, {code: "hole-above-125", look: holeAbove}, {code: "hole-above-170", look: holeAbove}, {code: "hole-above-450", look: holeAbove},
	{code: "hole-side-margin", look: holeSide}, {code: "hole-top-margin", look: holeTop}, {code: "hole-plank-edge", look: holeEdge}, {code: "hole-hoopoe-margin", look: holeRoom},
	{code: "hole-tilt", look: holeTilt}, {code: "hole-plate", look: holePlate, partly: true, site: "Peckers"}, {code: "front-thick", look: frontThick, partly: true, site: "Martens"},
	{code: "perch", look: perch}, {code: "swift-slot", look: slotHeight}, {code: "starling-na", look: starling},
	{code: "kestrel-lip", look: frontLip}, {code: "open-front-lip", look: frontLip},
	{code: "floor-preset", look: floorPreset}, {code: "floor-120", look: floorSides}, {code: "floor-100", look: floorSides}, {code: "floor-150", look: floorWidth},
	{code: "floor-barn-owl", look: floorArea}, {code: "floor-kestrel", look: floorArea},
	{code: "wall-15", look: walls}, {code: "wall-19", look: walls}, {code: "wall-20", look: walls}, {code: "wall-bat-eu", look: walls}, {code: "wall-bat-na", look: walls},
	{code: "thin-hot", look: thinHot},
	{code: "drain-count", look: drainCount}, {code: "drain-diameter", look: drainDiameter}, {code: "floor-recess", look: floorRecess},
	{code: "vent", look: ventArea, site: "HotSummers"}, {code: "vent-high", look: ventHigh}, {code: "vent-duck", look: ventCount},
	{code: "roof-front", look: roofOver}, {code: "roof-side", look: roofOver}, {code: "roof-back", look: roofBack, site: "Place"}, {code: "roof-drip", look: roofDrip},
	{code: "roof-slope", look: roofSlope}, {code: "roof-joint", look: roofJoint}, {code: "roof-ridge", look: roofRidge},
	{code: "grain-vertical", look: grainUp}, {code: "grain-short", look: grainShort}, {code: "end-grain", look: endGrain, partly: true}, {code: "back-batten", look: backBatten, partly: true, site: "Place, WetWall"},
	{code: "panel-wide", look: panelWide}, {code: "movement", look: movement}, {code: "movement-mc", look: swingOf, partly: true, site: "Swing"},
	{code: "open-bird", look: openBird}, {code: "open-secure", look: openSecure}, {code: "open-bat", look: openBat}, {code: "door-gap", look: doorGap},
	{code: "treated", look: treated}, {code: "sheet", look: sheet}, {code: "durability", look: durability}, {code: "safety-mass", look: mass},
	{code: "inside-bare", look: insideBare, partly: true, site: "Inside"}, {code: "outside-finish", look: outsideFinish, partly: true, site: "Outside"},
	{code: "glue-d3", look: glueClass, partly: true, site: "Glue"}, {code: "glue-d4", look: glueClass, partly: true, site: "Glue"},
	{code: "rust", look: rust, partly: true, site: "Fixings, Stainless"}, {code: "staples", look: staples, partly: true},
	{code: "points", look: points, partly: true},
	{code: "fastener-length", look: fixed, partly: true, site: "Fixings"}, {code: "fastener-endgrain", look: fixed, partly: true, site: "Fixings"},
	{code: "nail-penetration", look: fixed, partly: true, site: "Fixings"}, {code: "screw-penetration", look: fixed, partly: true, site: "Fixings"},
	{code: "edge-nopre", look: fixed, partly: true, site: "Fixings"}, {code: "end-nopre", look: fixed, partly: true, site: "Fixings"},
	{code: "edge-pre", look: fixed, partly: true, site: "Fixings"}, {code: "end-pre", look: fixed, partly: true, site: "Fixings"},
	{code: "into-edge", look: fixed, partly: true, site: "Fixings"}, {code: "fixing-small", look: fixed, partly: true, site: "Fixings"},
	{code: "mounting-pull", look: fixed, site: "Mounting"}, {code: "mounting-shear", look: fixed, site: "Mounting"},
	{code: "tree-fixing", look: treeFixing, partly: true, site: "Place"},
	{code: "bat-gap", look: batGap}, {code: "bat-landing", look: batLanding}, {code: "bat-size-na", look: batSize}, {code: "hedgehog-entrance", look: entranceSides},
	{code: "bat-height", look: height, site: "Above"}, {code: "height-small", look: height, site: "Above"}, {code: "bat-tree", look: batTree, site: "Place"},
	{code: "bat-vent", look: batVent, site: "HotSummers"}, {code: "bat-draught", look: batDraught, partly: true}, {code: "bat-rough", look: batRough, partly: true, site: "Planed"},
	{code: "inside-rough", look: insideRough, partly: true, site: "Planed"}, {code: "groove-size", look: grooveSize}, {code: "groove-strength", look: grooveStrength},
	{code: "duck-ladder", look: duckLadder, partly: true, site: "Planed"},
	{code: "dormouse-back", look: dormouseBack},
	{code: "bee-closed", look: beeClosed}, {code: "bee-diameter", look: beeDiameter}, {code: "bee-spacing", look: beeSpacing},
	{code: "predator-guard", look: guard, partly: true, site: "Place, Guard"}, {code: "aspect", look: aspect, partly: true, site: "Faces, Shaded"}, {code: "tilt-forward", look: tiltForward, partly: true, site: "Lean"},
	{code: "legal-bat", look: licence, partly: true}, {code: "legal-dormouse", look: licence, partly: true},
	{code: "safety-ladder", look: ladder, partly: true, site: "Above"}, {code: "sharp-cut", look: smallParts, partly: true},
	{code: "cavity-height", look: cavityHeight}, {code: "hole-joint", look: holeJoint}, {code: "ledge", look: ledge}, {code: "vent-top", look: ventTop}, {code: "open-inspect", look: openInspect},
	{code: "roof-into-wall", look: roofIntoWall}, {code: "roof-lines", look: roofLines}, {code: "roof-hole", look: roofHole}, {code: "felt-clouts", look: feltClouts},
	{code: "housing-depth", look: housingDepth}, {code: "no-stock", look: noStock},
}

// finding is what a rule says of a value found somewhere.
func (r Rule) finding(part box.Part, at box.Place, got float64) box.Finding {
	lo, hi := math.Inf(-1), math.Inf(1)
	if r.Range.HasLo {
		lo = r.Range.Lo
	}
	if r.Range.HasHi {
		hi = r.Range.Hi
	}
	return box.Finding{Code: r.Code, Severity: r.Severity, Part: part, Where: at, Got: got, Lo: lo, Hi: hi, Unit: r.Unit,
		Why: r.Of + ": " + r.spoken(got) + unit(r.Unit) + " found, " + r.allowed() + " asked for. " + r.Why, Sources: r.Cites()}
}

// allowed is the range in words, with its unit.
func (r Rule) allowed() string {
	if r.Range == AtMost(0) {
		return "none"
	}
	return r.Range.String() + unit(r.Unit)
}

// asks is what the rule asks for and where.
func (r Rule) asks() string {
	out := r.Of
	if r.Unit == "month" {
		out += ", " + monthWords(r.Range.Months())
	} else if r.Range == AtMost(0) {
		out += ": none"
	} else if !r.Range.Empty() {
		out += ", " + r.allowed()
	}
	if r.Scope.When != "" {
		out += ", where " + r.Scope.When
	}
	return out
}

// spoken is a value as people say it: to a tenth of a millimetre, a degree or a
// kilogram, whole square millimetres, and shares to a hundredth.
// One that would round to a limit which it breaks keeps its digits.
func (r Rule) spoken(x float64) string {
	step := 10.0
	switch r.Unit {
	case "mm2":
		step = 1
	case "1", "t":
		step = 100
	}
	y := math.Round(x*step) / step
	if r.Range.Has(y) && !r.Range.Has(x) {
		return num(x)
	}
	return num(y)
}

// against gives a finding if a value is outside the rule and is not the
// preset's own either; own may be NaN for none.
func (r Rule) against(part box.Part, at box.Place, got, own float64) []box.Finding {
	if got >= r.Range.Lo-tiny || !r.Range.HasLo {
		if got <= r.Range.Hi+tiny || !r.Range.HasHi {
			return nil
		}
	}
	// Between the preset's own value and the range everything is as good.
	if r.Range.HasLo && got < r.Range.Lo && own < r.Range.Lo && got >= own-tiny {
		return nil
	}
	if r.Range.HasHi && got > r.Range.Hi && own > r.Range.Hi && got <= own+tiny {
		return nil
	}
	return []box.Finding{r.finding(part, at, got)}
}

// published is a value of a preset, NaN where none is published.
func published(x box.MM) float64 {
	if x == 0 {
		return math.NaN()
	}
	return float64(x)
}

func unit(u string) string {
	switch u {
	case "", "1", "count":
		return ""
	}
	return " " + u
}
