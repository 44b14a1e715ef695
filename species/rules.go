package species

import (
	"slices"

	"holt.example/box"
	"holt.example/species/cite"
	"holt.example/species/internal/near"
)

// Rule is one thing that a dwelling is held to, as the sources have it. Its
// code is stable: findings carry it.
type Rule struct {
	Code     string
	Severity box.Severity
	Scope    Scope
	// Of is what is measured or looked at, and Range what is allowed, in Unit
	// ("mm", "mm2", "deg", "count", "month", "class", "d" for diameters, "t" for
	// thicknesses, "1" for a share); an empty Range is no matter of a number.
	Of    string
	Range Span
	Unit  string
	// Why is the reason.
	Why string
	// Sources are the keys of the publications; nil for common practice and
	// what is remembered without one.
	Sources []string
	Basis   cite.Basis
}

// Scope says to what a rule applies: to presets that are in every list that is
// not nil, and then only When something else holds.
type Scope struct {
	Groups  []Group
	Regions []Region
	Forms   []Form
	Presets []string
	Except  []string // presets whose own sources say otherwise
	When    string   // a condition of the box or its place, in words; "" is always
}

// For says whether the rule may apply to a preset. Whether the condition When
// holds is for the box and its place to say.
func (s Scope) For(p Preset) bool {
	return in(s.Groups, p.Group) && in(s.Regions, p.Region) && in(s.Forms, p.Form) && in(s.Presets, p.Key) &&
		!slices.Contains(s.Except, p.Key)
}

func in[T comparable](list []T, x T) bool { return list == nil || slices.Contains(list, x) }

// Rules lists all rules: those of the published table in its order, then those of
// the trade. The result is a copy.
func Rules() []Rule {
	out := make([]Rule, len(every))
	for i, r := range every {
		out[i] = r.clone()
	}
	return out
}

// RuleOf returns the rule of a code. The error is an *UnknownError.
func RuleOf(code string) (Rule, error) {
	list := make([]string, len(every))
	for i, r := range every {
		if r.Code == code {
			return r.clone(), nil
		}
		list[i] = r.Code
	}
	return Rule{}, &UnknownError{What: "rule", Got: code, Near: near.Names(code, list, suggestions)}
}

// Rules lists the rules that may apply to a preset, in the order of the table.
func (p Preset) Rules() []Rule {
	var out []Rule
	for _, r := range every {
		if r.Scope.For(p) {
			out = append(out, r.clone())
		}
	}
	return out
}

// Cites names the sources of the rule as a finding does: the keys, or the
// basis where there is none.
func (r Rule) Cites() []string {
	if len(r.Sources) == 0 {
		return []string{r.Basis.String()}
	}
	return slices.Clone(r.Sources)
}

func (r Rule) clone() Rule {
	r.Scope.Groups = slices.Clone(r.Scope.Groups)
	r.Scope.Regions = slices.Clone(r.Scope.Regions)
	r.Scope.Forms = slices.Clone(r.Scope.Forms)
	r.Scope.Presets = slices.Clone(r.Scope.Presets)
	r.Scope.Except = slices.Clone(r.Scope.Except)
	r.Sources = slices.Clone(r.Sources)
	return r
}
