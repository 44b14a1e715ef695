package render

import (
	"fmt"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/render/bom"
)

// assembly says how the box goes together.
func assembly(b *strings.Builder, plan *box.Plan) {
	a, err := plan.Assembly()
	if len(a.Steps) < 2 && err == nil {
		return // one part, or none
	}
	b.WriteString("\n## Putting it together\n\n")
	for _, c := range a.Captive {
		fmt.Fprintf(b, "**%s hold one another:** no straight move brings any of them home while the others are in place. Change a joint before you cut, or see whether they can be turned or sprung in. They count as one piece here.\n\n", list(c))
	}
	b.WriteString("Each part goes home by one straight move. Left, right, front and back are those of the box, seen from the front.\n\n")
	n := 1
	line := func(format string, args ...any) {
		fmt.Fprintf(b, "%d. "+format+"\n", append([]any{n}, args...)...)
		n++
	}
	line("Put it together dry, in this order, and mark on every part which side is inside and which is up.")
	again := false
	for i, s := range a.Steps {
		text := bom.Escape(s.String())
		if i > 0 && len(s.Onto) == 0 {
			text = "Put aside what is done. " + text
		}
		line("%s%s.%s", text, closes(plan, s), check(s.Check))
		again = again || len(s.Check) > 0
	}
	if again {
		line("Measure the diagonals again before the glue sets or the last screws are tight.")
	}
}

// list is names with an "and".
func list(ps []box.Part) string {
	s := make([]string, len(ps))
	for i, p := range ps {
		s[i] = bom.Escape(string(p))
	}
	return and(s)
}

// closes says which seams a step closes, and what holds them. Strips that are
// together count as the part that they make up.
func closes(plan *box.Plan, s box.Step) string {
	whole := func(p box.Part) box.Part {
		if q, ok := plan.Piece(p); ok && q.Of != "" && s.Made == "" {
			return q.Of
		}
		return p
	}
	one := true
	for _, p := range s.Parts {
		one = one && whole(p) == whole(s.Parts[0])
	}
	// Seams that are held alike are said once: in what holds them the other
	// part's name is each one's own.
	type alike struct {
		key, how string
		names    []string
	}
	var all []alike
	for _, m := range s.Seams {
		over, under := whole(m.Over), whole(m.Under)
		other := over
		if one && whole(s.Parts[0]) == over {
			other = under
		}
		name := bom.Escape(string(other))
		if !one {
			name = bom.Escape(string(over)) + " with " + bom.Escape(string(under))
		}
		how := m.Joint + ", " + holds(m)
		key := replaceName(how, string(other), "each")
		k := 0
		for k < len(all) && all[k].key != key {
			k++
		}
		if k == len(all) {
			all = append(all, alike{key: key, how: how})
		}
		if !slices.Contains(all[k].names, name) {
			all[k].names = append(all[k].names, name)
		}
	}
	if len(all) == 0 {
		return ""
	}
	var to []string
	for _, a := range all {
		how := a.how
		if len(a.names) > 1 {
			how = a.key
		}
		to = append(to, and(a.names)+" ("+bom.Escape(how)+")")
	}
	return "; it meets " + strings.Join(to, ", ")
}

// and joins words with commas and an "and".
func and(s []string) string {
	if len(s) < 2 {
		return strings.Join(s, "")
	}
	return strings.Join(s[:len(s)-1], ", ") + " and " + s[len(s)-1]
}

// holds says what keeps a seam together.
func holds(m box.Seam) string {
	if len(m.Holds) == 0 {
		return "dry"
	}
	var out []string
	for _, h := range m.Holds {
		kind := h.Kind
		if h.Count > 1 {
			kind = fmt.Sprintf("%d %ss", h.Count, h.Kind)
		}
		if h.Diameter > 0 && h.Length > 0 {
			kind += fmt.Sprintf(" %s × %s", rounded(float64(h.Diameter), 100), rounded(float64(h.Length), 100))
		}
		out = append(out, strings.TrimSpace(kind+" "+h.Note))
	}
	s := strings.Join(out, " and ")
	if !m.Glued() {
		s += ", no glue"
	}
	return s
}

// check says what a tape should read.
func check(ds []box.Diagonal) string {
	if len(ds) == 0 {
		return ""
	}
	equal := true
	var out []string
	for _, d := range ds {
		equal = equal && figure(float64(d.Length)) == figure(float64(ds[0].Length))
		out = append(out, fmt.Sprintf("%s to %s %s", corner(d.From), corner(d.To), figure(float64(d.Length))))
	}
	if equal {
		return fmt.Sprintf(" Check that it is square: over the walls' lower edge all diagonals read %s (%s).", figure(float64(ds[0].Length)), diagonals(ds))
	}
	return " Check the shape: over the walls' lower edge the diagonals read " + strings.Join(out, ", ") + "."
}

func corner(c [2]box.Part) string {
	return bom.Escape(string(c[0])) + " – " + bom.Escape(string(c[1]))
}

func diagonals(ds []box.Diagonal) string {
	var out []string
	for _, d := range ds {
		out = append(out, corner(d.From)+" to "+corner(d.To))
	}
	return strings.Join(out, ", ")
}
