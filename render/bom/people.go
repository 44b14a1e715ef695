package bom

import (
	"strings"

	"holt.example/box"
)

// What people read: to a tenth, and names that cannot be taken for others.

// tenth is a figure for people, to 0.1.
func tenth(x float64) string { return num(nearest(x, fine)) }

// hundredth is an exact size for people: fine enough to show that it is not
// the one to cut to.
func hundredth(x float64) string { return num(nearest(x, 0.01)) }

// Owner is the owner of a void in words: the names of the parts that it lies
// between are joined by dashes, because they may hold a "/" themselves.
func (l List) Owner(v box.Void) string {
	known := map[string]bool{}
	for _, it := range l.Items {
		for _, p := range it.Parts {
			known[string(p)] = true
		}
	}
	if names := partsOf(v.Owner, known); len(names) > 1 {
		return strings.Join(names, " – ")
	}
	return v.Owner
}

// partsOf splits names joined by "/", nil if they are not all known.
func partsOf(s string, known map[string]bool) []string {
	if known[s] {
		return []string{s}
	}
	for i := range s {
		if s[i] != '/' || !known[s[:i]] {
			continue
		}
		if rest := partsOf(s[i+1:], known); rest != nil {
			return append([]string{s[:i]}, rest...)
		}
	}
	return nil
}

// Rule says how the sizes were rounded, and which sizes are not.
func (l List) Rule() string {
	return "Sizes in mm. Lengths and widths to cut to are rounded to " + mm(l.Step) + ", all of them together: " +
		"what goes between or into other parts down, what laps over others or ends free up, and floor and partitions take what the rounded walls leave. " +
		"So parts that are all cut to this list go together; where a size is more than half a step from the exact one, the reason is given. " +
		"Edges here, and the drawings, have the exact sizes, written to 0.1."
}

// Rise is the line up to which the outer height is measured: "eaves", or where
// there is no roof "upper edge".
func (l List) Rise() string {
	for _, it := range l.Items {
		for _, p := range it.Parts {
			if p == box.Roof || strings.HasPrefix(string(p), "roof/") {
				return "eaves"
			}
		}
	}
	return "upper edge"
}

// Whole says what the overall size is of: "the whole box", or the box without
// its free parts.
func (l List) Whole() string {
	for _, it := range l.Items {
		for _, p := range it.Parts {
			if isFree(p) {
				return "the box without its free parts"
			}
		}
	}
	return "the whole box"
}

// isFree reports whether a part is a free one.
func isFree(p box.Part) bool { return strings.HasPrefix(string(p), "free/") }

// CutWhy says why the sizes to cut to differ from the exact ones, "" where they
// do not by more than half a step.
func (it Item) CutWhy() string {
	l, w := it.LengthWhy, it.WidthWhy
	by, why, _ := strings.Cut(l, ": ")
	_, also, _ := strings.Cut(w, ": ")
	switch {
	case l == "" && w == "":
		return ""
	case w == "":
		return "length " + l
	case l == "":
		return "width " + w
	case why == also:
		return "length " + by + ", width " + w
	}
	return "length " + l + "; width " + w
}

// overall is what the parts take up together, all but free ones.
func overall(plan *box.Plan) Size {
	var lo, hi [3]float64
	first := true
	for _, p := range plan.Pieces() {
		if isFree(p.Part) {
			continue
		}
		m, err := plan.Mesh(p.Part)
		if err != nil || len(m.Vertices) == 0 {
			return Size{}
		}
		a, b := m.Bounds()
		for i, x := range [3][2]float64{{a.X, b.X}, {a.Y, b.Y}, {a.Z, b.Z}} {
			if first || x[0] < lo[i] {
				lo[i] = x[0]
			}
			if first || x[1] > hi[i] {
				hi[i] = x[1]
			}
		}
		first = false
	}
	return Size{box.MM(hi[0] - lo[0]), box.MM(hi[1] - lo[1]), box.MM(hi[2] - lo[2])}
}
