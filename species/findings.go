package species

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"slices"
	"sort"
	"strings"
	"unicode"

	"holt.example/box"
	"holt.example/species/cite"
)

// WriteFindings writes findings as text: one line each, then the sources used.
// An error is the writer's.
func WriteFindings(w io.Writer, findings []box.Finding) error {
	b := bufio.NewWriter(w)
	if len(findings) == 0 {
		b.WriteString("no findings\n")
	}
	for _, f := range findings {
		fmt.Fprintf(b, "%s [%s]%s: %s (%s)\n", f.Severity, plain(f.Code), at(f), plain(f.Why), plain(strings.Join(f.Sources, ", ")))
	}
	if s := SourcesUsed(findings); len(s) > 0 {
		b.WriteString("\nsources\n")
		for _, x := range s {
			fmt.Fprintf(b, "  %s: %s\n", x.Key, x)
		}
	}
	return b.Flush()
}

// WriteFindingsMarkdown writes findings as a table in Markdown, and the sources
// used below it. An error is the writer's.
func WriteFindingsMarkdown(w io.Writer, findings []box.Finding) error {
	b := bufio.NewWriter(w)
	if len(findings) == 0 {
		b.WriteString("No findings.\n")
		return b.Flush()
	}
	b.WriteString("| Grade | Code | Part | Found | Allowed | Why | Sources |\n|---|---|---|---:|---|---|---|\n")
	for _, f := range findings {
		got, allowed := "", ""
		if finite(f.Got) {
			got = num(f.Got) + unit(f.Unit)
		}
		if s := span(f); !s.Empty() {
			allowed = s.String() + unit(f.Unit)
		}
		fmt.Fprintf(b, "| %s | `%s` | %s | %s | %s | %s | %s |\n", f.Severity, escape(f.Code), escape(string(f.Part)), escape(got), escape(allowed), escape(f.Why), escape(strings.Join(f.Sources, ", ")))
	}
	writeUsed(b, SourcesUsed(findings))
	return b.Flush()
}

// WriteFindingsJSON writes findings as an array of objects in JSON. A value that
// was not measured and an end of a range that does not exist are left out; a
// part and a place are left out where there is none. An error is the writer's.
func WriteFindingsJSON(w io.Writer, findings []box.Finding) error {
	type place struct {
		X json.Number `json:"x"`
		Y json.Number `json:"y"`
		Z json.Number `json:"z"`
	}
	type object struct {
		Code     string       `json:"code"`
		Severity string       `json:"severity"`
		Part     box.Part     `json:"part,omitempty"`
		Where    *place       `json:"where,omitempty"`
		Got      *json.Number `json:"got,omitempty"`
		Lo       *json.Number `json:"lo,omitempty"`
		Hi       *json.Number `json:"hi,omitempty"`
		Unit     string       `json:"unit,omitempty"`
		Why      string       `json:"why"`
		Sources  []string     `json:"sources"`
	}
	number := func(x float64) *json.Number {
		if !finite(x) {
			return nil
		}
		n := json.Number(num(x))
		return &n
	}
	list := make([]object, len(findings))
	for i, f := range findings {
		o := object{Code: f.Code, Severity: f.Severity.String(), Part: f.Part, Got: number(f.Got), Lo: number(f.Lo), Hi: number(f.Hi), Unit: f.Unit, Why: f.Why, Sources: f.Sources}
		if x, y, z := number(float64(f.Where.X)), number(float64(f.Where.Y)), number(float64(f.Where.Z)); f.Where != (box.Place{}) && x != nil && y != nil && z != nil {
			o.Where = &place{*x, *y, *z}
		}
		if o.Sources == nil {
			o.Sources = []string{}
		}
		list[i] = o
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(list)
}

// SourcesUsed lists the publications behind findings, by key. What is common
// practice, memory or the maker's own word has none.
func SourcesUsed(findings []box.Finding) []cite.Source {
	var keys []string
	for _, f := range findings {
		keys = append(keys, f.Sources...)
	}
	return sourcesOf(keys)
}

func sourcesOf(keys []string) []cite.Source {
	keys = slices.Clone(keys)
	sort.Strings(keys)
	var out []cite.Source
	for _, k := range slices.Compact(keys) {
		if s, err := SourceOf(k); err == nil {
			out = append(out, s)
		}
	}
	return out
}

func writeUsed(b *bufio.Writer, list []cite.Source) {
	if len(list) == 0 {
		return
	}
	b.WriteString("\n### Sources\n\n")
	for _, s := range list {
		fmt.Fprintf(b, "- `%s`: %s\n", s.Key, escape(s.String()))
	}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func span(f box.Finding) Span {
	return Span{Lo: f.Lo, Hi: f.Hi, HasLo: finite(f.Lo), HasHi: finite(f.Hi)}
}

func at(f box.Finding) string {
	if f.Part == "" {
		return ""
	}
	return " " + plain(string(f.Part))
}

// plain makes text fit for one line: what would end it, hide in it or turn the
// direction of writing becomes a space, bytes that are not UTF-8 the replacement
// character.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}
