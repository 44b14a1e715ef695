package species

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
)

// WriteRules writes all rules as a table in Markdown: code, grade, what is looked
// at, what is allowed, to what it applies, whether Review measures it or Advice
// states it, and the sources. An error is the writer's.
func WriteRules(w io.Writer) error {
	b := bufio.NewWriter(w)
	b.WriteString("| Code | Grade | Of | Allowed | For | By | Sources |\n|---|---|---|---|---|---|---|\n")
	for _, r := range every {
		allowed := ""
		if !r.Range.Empty() {
			allowed = r.Range.String() + unit(r.Unit)
		}
		fmt.Fprintf(b, "| `%s` | %s | %s | %s | %s | %s | %s |\n", r.Code, r.Severity, escape(r.Of), escape(allowed), escape(r.Scope.words()), by(r.Code), escape(strings.Join(r.Cites(), ", ")))
	}
	return b.Flush()
}

// by says what looks at a rule, and what of a Site it needs or settles it.
func by(code string) string {
	for _, c := range measured {
		if c.code != code {
			continue
		}
		out := "review"
		if c.site != "" {
			out += " (" + c.site + ")"
		}
		if c.partly {
			out += " and advice"
		}
		return out
	}
	return "advice: " + kindOf(code)
}

// words says to what a rule applies; "all" is everything.
func (s Scope) words() string {
	w := slices.Clone(s.Presets)
	for _, x := range s.Groups {
		w = append(w, string(x)+"s")
	}
	for _, x := range s.Forms {
		w = append(w, string(x))
	}
	for _, x := range s.Regions {
		w = append(w, regionWord(x))
	}
	out := strings.Join(w, ", ")
	if out == "" {
		out = "all"
	}
	if len(s.Except) > 0 {
		out += ", but " + strings.Join(s.Except, ", ")
	}
	if s.When != "" {
		out += ", where " + s.When
	}
	return out
}
