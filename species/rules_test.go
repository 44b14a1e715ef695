package species

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/species/cite"
)

// TestRulesAgainstFacts compares every cell of rules.csv. The sentences are
// ours: of the three columns of prose together, the figures must carry over.
func TestRulesAgainstFacts(t *testing.T) {
	rows := facts(t, "rules.csv")
	if len(rows) != len(rules) {
		t.Fatalf("%d rows, %d rules", len(rows), len(rules))
	}
	severity := map[string]box.Severity{"error": box.Fault, "warning": box.Warning, "advice": box.Advice}
	basis := map[string]cite.Basis{"read": cite.Read, "common practice": cite.Practice, "memory": cite.Memory}
	for i, r := range rows {
		g := rules[i]
		lo, hi := ends(g.Range)
		got := []string{g.Code, lo, hi, g.Unit, g.Severity.String(), strings.Join(g.Sources, ";"), g.Basis.String()}
		want := []string{r["id"], norm(t, r["min"]), norm(t, r["max"]), r["unit"], severity[r["severity"]].String(), r["source_keys"], basis[r["provenance"]].String()}
		if !slices.Equal(got, want) {
			t.Errorf("rule %d: Go has %q, the table %q", i, got, want)
		}
		ours, theirs := figuresIn(g.Scope.When+" "+g.Of+" "+g.Why), figuresIn(r["applies_to"]+" "+r["quantity"]+" "+r["reason_short"])
		if !slices.Equal(ours, theirs) {
			t.Errorf("%s: figures in our words %q, in the table %q", g.Code, ours, theirs)
		}
		if len(r["reason_short"]) > 20 && strings.Contains(g.Why, r["reason_short"]) {
			t.Errorf("%s repeats the wording of the table", g.Code)
		}
	}
}

func TestRules(t *testing.T) {
	count := map[box.Severity]int{}
	bases := map[cite.Basis]int{}
	seen := map[string]bool{}
	keys := map[string]bool{}
	each(func(p *Preset) { keys[p.Key] = true })
	for _, r := range Rules() {
		count[r.Severity]++
		bases[r.Basis]++
		if seen[r.Code] {
			t.Errorf("%s stands twice", r.Code)
		}
		seen[r.Code] = true
		if !strings.HasSuffix(r.Why, ".") || r.Of == "" {
			t.Errorf("%s: %q of %q", r.Code, r.Why, r.Of)
		}
		for _, k := range r.Sources {
			if _, err := SourceOf(k); err != nil {
				t.Errorf("%s: %v", r.Code, err)
			}
		}
		for _, k := range append(slices.Clone(r.Scope.Presets), r.Scope.Except...) {
			if !keys[k] {
				t.Errorf("%s: no preset %s", r.Code, k)
			}
		}
		if r.Unit == "month" && r.Range.Months() == nil {
			t.Errorf("%s: %v are no months", r.Code, r.Range)
		}
		if !slices.ContainsFunc(All(), r.Scope.For) {
			t.Errorf("%s applies to nothing", r.Code)
		}
		if len(r.Cites()) == 0 {
			t.Errorf("%s cites nothing", r.Code)
		}
	}
	for _, r := range further { // those of ours stand beside the table
		count[r.Severity]--
		bases[r.Basis]--
	}
	// As curated: 16 errors, 43 warnings, 53 advice; 82 read, 24 common practice, 6 memory.
	if count[box.Fault] != 16 || count[box.Warning] != 43 || count[box.Advice] != 53 {
		t.Errorf("%v", count)
	}
	if bases[cite.Read] != 82 || bases[cite.Practice] != 24 || bases[cite.Memory] != 6 {
		t.Errorf("%v", bases)
	}
}

// TestScopes: which rules may apply to three animals, by some of the codes.
func TestScopes(t *testing.T) {
	for key, c := range map[string]struct{ with, without string }{
		"blue_tit":        {"hole-size hole-above-120 hole-above-170 floor-120 wall-15 perch clean-season legal-nest-uk aspect points", "wall-19 bat-gap floor-kestrel duck-ladder vent-duck legal-bat open-bat bee-closed"},
		"purple_martin":   {"hole-size wall-19 legal-nest-us", "hole-above-125 hole-above-120 wall-15 clean-season"},
		"bat_flat_box_eu": {"bat-gap bat-landing bat-rough open-bat wall-bat-eu legal-bat treated", "open-bird perch aspect drain-count wall-bat-na bat-tree hole-size"},
		"wood_duck":       {"duck-ladder vent-duck bedding", "legal-nest-uk"},
		"red_mason_bee":   {"bee-closed bee-diameter hole-size", "drain-count bat-gap aspect"},
		"hedgehog":        {"hedgehog-entrance treated hole-size", "perch"},
	} {
		p := MustGet(key)
		var codes []string
		for _, r := range p.Rules() {
			codes = append(codes, r.Code)
		}
		for _, w := range strings.Fields(c.with) {
			if !slices.Contains(codes, w) {
				t.Errorf("%s: %s should apply", key, w)
			}
		}
		for _, w := range strings.Fields(c.without) {
			if slices.Contains(codes, w) {
				t.Errorf("%s: %s should not apply", key, w)
			}
		}
	}
}

// TestPresetsKeepTheRules: the values of every preset keep the rules that need
// nothing but the preset, or the table itself names the exemption.
func TestPresetsKeepTheRules(t *testing.T) {
	allowed := map[string]string{
		"floor-150":                   "advice; most published boxes are smaller, as the rule says",
		"floor-120":                   "advice; many sources accept less, as the rule says",
		"wall-20":                     "advice; the least thickness of a preset is not the one advised",
		"bee-closed blue_orchard_bee": "152.4 is 6 in, the figure of its own source, which the rule rounds to 150",
	}
	used := map[string]bool{}
	for _, p := range All() {
		for _, r := range p.Rules() {
			var got []float64
			switch r.Code {
			case "hole-above-120", "hole-above-125", "hole-above-170", "hole-above-450":
				if a, ok := p.Entry.Lowest(); ok {
					got = append(got, float64(a))
				}
			case "wall-15", "wall-19", "wall-20", "wall-bat-eu", "wall-bat-na":
				if p.WallLeast > 0 {
					got = append(got, float64(p.WallLeast))
				}
			case "floor-100", "floor-120":
				got = append(got, float64(p.Inside.Width), float64(p.Inside.Depth))
			case "floor-150":
				got = append(got, float64(p.Inside.Width))
			case "floor-barn-owl", "floor-kestrel":
				got = append(got, float64(p.Inside.Width*p.Inside.Depth))
			case "swift-slot":
				got = append(got, float64(p.Entry.Height))
			case "bat-gap":
				got = append(got, float64(p.Entry.Height))
			case "kestrel-lip", "open-front-lip":
				got = append(got, float64(p.Entry.Above))
			case "starling-na", "bee-diameter":
				got = append(got, float64(p.Entry.Width))
			case "bee-closed":
				if p.Inside.Depth > 0 && p.Group == Insect {
					got = append(got, float64(p.Inside.Depth))
				}
			case "hedgehog-entrance":
				got = append(got, float64(p.Entry.Width))
			case "hole-size":
				if p.Entry.Shape == RoundEntry && !p.Hole.Has(float64(p.Entry.Width)) {
					t.Errorf("%s: a hole of %v outside %v", p.Key, p.Entry.Width, p.Hole)
				}
			}
			for _, g := range got {
				if r.Range.Has(g) {
					continue
				}
				if k := r.Code + " " + p.Key; allowed[k] != "" {
					used[k] = true
					continue
				}
				used[r.Code] = true
				if r.Severity != box.Advice || allowed[r.Code] == "" {
					t.Errorf("%s breaks %s: %v, allowed %v", p.Key, r.Code, g, r.Range)
				}
			}
		}
	}
	for code := range allowed {
		if !used[code] {
			t.Errorf("%s needs no excuse", code)
		}
	}
}

func TestRuleOf(t *testing.T) {
	r, err := RuleOf("bat-gap")
	if err != nil || r.Range != Between(15, 25) || r.Severity != box.Fault || r.Scope.When != "" {
		t.Errorf("%+v, %v", r, err)
	}
	r.Sources[0], r.Scope.Groups[0] = "x", "x"
	if r, _ = RuleOf("bat-gap"); r.Sources[0] == "x" || r.Scope.Groups[0] == "x" {
		t.Error("a caller changed the table")
	}
	var u *UnknownError
	if _, err := RuleOf("bat-gab"); !errors.As(err, &u) || u.Near[0] != "bat-gap" {
		t.Error(err)
	}
	if r, _ = RuleOf("hole-side-margin"); !slices.Equal(r.Cites(), []string{"common practice"}) {
		t.Errorf("%q", r.Cites())
	}
}
