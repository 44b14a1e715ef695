package species

import (
	"holt.example/box"
	"holt.example/species/cite"
)

// PlanSources lists the publications behind what is taken from tables for a plan, by
// key: the densities of the woods that its boards name and state none of, and the
// rules of its fixings where it has any. A bill of materials can name them. A nil plan
// has none.
func PlanSources(plan *box.Plan) []cite.Source {
	if plan == nil {
		return nil
	}
	var keys []string
	l := &look{}
	for _, p := range plan.Pieces() {
		if p.Board.Density != 0 {
			continue
		}
		if w, err := l.woodNamed(p.Board.Material); err == nil {
			if d, ok := w.Density(); ok {
				keys = append(keys, d.Source)
			}
		}
	}
	rule := func(code string) {
		if r, err := RuleOf(code); err == nil {
			keys = append(keys, r.Sources...)
		}
	}
	for _, r := range plan.Fixings() {
		if len(r.Places) > 0 {
			rule("fastener-length")
		}
	}
	return sourcesOf(keys)
}
