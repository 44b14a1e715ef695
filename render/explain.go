package render

import (
	"fmt"
	"sort"
	"strings"

	"holt.example/box"
	"holt.example/render/bom"
)

// explain says how an item came by its size. Of equal parts the first is told
// in full; of the others where they stand, and what else is not the same.
func explain(b *strings.Builder, plan *box.Plan, it bom.Item) {
	var all []string
	for _, p := range plan.Pieces() {
		all = append(all, string(p.Part))
	}
	told := map[string]bool{}
	for n, p := range it.Parts {
		lines := plan.Explain(p)
		var more []string
		for i, s := range lines {
			key := bare(s, all)
			switch {
			case n == 0 && i == 0:
				fmt.Fprintf(b, "- %s\n", bom.Escape(s))
			case n == 0:
				fmt.Fprintf(b, "  - %s\n", bom.Escape(s))
			case !told[key]:
				more = append(more, s)
			}
			if n == 0 {
				told[key] = true
			}
		}
		if n == 0 || len(lines) == 0 {
			continue
		}
		fmt.Fprintf(b, "- %s is the same%s.\n", bom.Escape(string(p)), stands(it, n))
		for _, s := range more {
			fmt.Fprintf(b, "  - %s\n", bom.Escape(s))
		}
	}
}

// stands says what part n of an item has at its edges.
func stands(it bom.Item, n int) string {
	var to []string
	for _, e := range it.Edges {
		if n < len(e.Neighbours) {
			to = append(to, bom.Escape(string(e.Neighbours[n]))+" at its "+e.Name+" edge")
		}
	}
	if len(to) == 0 {
		return ""
	}
	return ", with " + and(to)
}

// bare is a sentence without the names of parts, its clauses after a colon in
// order: two sentences that say the same of different parts become one.
func bare(s string, names []string) string {
	// A longer name first: it may begin with a shorter one.
	sorted := append([]string(nil), names...)
	sort.SliceStable(sorted, func(i, j int) bool { return len(sorted[i]) > len(sorted[j]) })
	for _, n := range sorted {
		s = replaceName(s, n, "\x00")
	}
	if head, tail, ok := strings.Cut(s, ": "); ok {
		c := strings.Split(strings.TrimSuffix(tail, "."), ", ")
		sort.Strings(c)
		s = head + ": " + strings.Join(c, ", ")
	}
	return s
}

// replaceName puts a word for a name wherever the name stands by itself.
func replaceName(s, name, word string) string {
	if name == "" {
		return s
	}
	var b strings.Builder
	for {
		i := strings.Index(s, name)
		if i < 0 {
			b.WriteString(s)
			return b.String()
		}
		end := i + len(name)
		if i > 0 && inName(s[i-1]) || end < len(s) && inName(s[end]) {
			b.WriteString(s[:end])
		} else {
			b.WriteString(s[:i] + word)
		}
		s = s[end:]
	}
}

// inName reports whether a byte may go on a name: what part names are made of.
func inName(c byte) bool {
	return c == '/' || c == '-' || c == '_' || c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80
}
