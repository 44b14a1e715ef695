package bom

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"holt.example/box"
)

// WriteMarkdown writes the list for the bench: sizes rounded jointly to the
// step, edges, work, what proves the box right, totals, voids and findings.
// Names are escaped, so that they show as they are.
func WriteMarkdown(w io.Writer, plan *box.Plan, o Options) error {
	l, err := Checked(plan, o)
	if err != nil {
		return err
	}
	_, err = io.WriteString(w, l.markdown())
	return err
}

func (l List) markdown() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s: parts\n\n", Escape(l.Name))
	turned := ""
	if slices.ContainsFunc(l.Items, func(it Item) bool { return it.SecondFace }) {
		turned = " Work on the other face is placed as it lies when you have turned the part over like the page of a book."
	}
	fmt.Fprintf(&b, "%s Left, right, upper and lower mean the part as you look at its machined face.%s\n", l.Rule(), turned)
	l.partsTable(&b)
	l.edgesTable(&b)
	l.arrisList(&b)
	l.workList(&b)
	l.fittingsTable(&b)
	l.proof(&b)
	l.totalsTable(&b)
	l.billTable(&b)
	l.voidsAndFindings(&b)
	l.sources(&b)
	return b.String()
}

// table writes a table; cells are written as they are.
func table(b *strings.Builder, head string, rows [][]string) {
	cols := strings.Split(head, "|")
	fmt.Fprintf(b, "\n| %s |\n|%s\n", strings.Join(cols, " | "), strings.Repeat(" --- |", len(cols)))
	for _, r := range rows {
		fmt.Fprintf(b, "| %s |\n", strings.Join(r, " | "))
	}
}

func (l List) partsTable(b *strings.Builder) {
	var rows [][]string
	for _, it := range l.Items {
		rows = append(rows, []string{
			fmt.Sprint(it.Number), fmt.Sprint(it.Quantity), Escape(it.names(", ")), dash(Escape(it.Material)), it.thickness(),
			mm(it.CutLength) + " × " + mm(it.CutWidth), it.Grain, it.massWords(), Escape(it.faceWords()), dash(Escape(it.Up)), dash(it.FaceEdge), it.handWords(),
		})
	}
	table(b, "item|qty|parts|material|thickness|cut to length × width|grain|kg each|machined face|up|face edge|hand", rows)
	first := true
	for _, it := range l.Items {
		if why := it.CutWhy(); why != "" {
			if first {
				b.WriteString("\nWhere a size is not the exact one:\n\n")
				first = false
			}
			fmt.Fprintf(b, "- %d, %s: exact %s × %s; %s\n", it.Number, Escape(it.names(", ")), hundredth(float64(it.Length)), hundredth(float64(it.Width)), Escape(why))
		}
	}
}

// thickness is the measured thickness, with what it was sold as where that
// differs and what was found where boards differ.
func (it Item) thickness() string {
	t := mm(it.Thickness)
	if it.Least != it.Most {
		t = mm(it.Least) + " to " + mm(it.Most)
	}
	if it.Nominal != it.Thickness {
		t += " (sold as " + mm(it.Nominal) + ")"
	}
	return t
}

func (it Item) massWords() string {
	if !(it.Mass > 0) {
		return "—"
	}
	return num(nearest(it.Mass, 0.001))
}

func (l List) edgesTable(b *strings.Builder) {
	b.WriteString("\n## Edges\n")
	var rows [][]string
	for _, it := range l.Items {
		for _, e := range it.Edges {
			bevel, gauge := "square", "—"
			if e.bevelled() {
				d, r, longer := e.Bevel, e.Run, "machined face longer"
				if d < 0 {
					d, r, longer = -d, -r, "other face longer"
				}
				bevel = num(nearest(float64(d), 0.1)) + "°, " + longer
				gauge = tenth(float64(r))
			}
			rows = append(rows, []string{
				fmt.Sprint(it.Number), e.Name, tenth(float64(e.Length)), Escape(e.meets()), bevel, gauge, dash(Escape(e.compensation(tenth(float64(e.Adds))))),
			})
		}
		sides, more := it.Sides()
		for _, s := range sides {
			rows = append(rows, []string{fmt.Sprint(it.Number), s.Name + ", " + s.Words(), tenth(float64(s.Length)), "free", "square", "—", "—"})
		}
		if more > 0 {
			rows = append(rows, []string{fmt.Sprint(it.Number), fmt.Sprintf("and %d more", more), "—", "free", "—", "—", "—"})
		}
	}
	table(b, "item|edge|exact length|meets|bevel|gauge|past the cavity face", rows)
}

func (l List) workList(b *strings.Builder) {
	b.WriteString("\n## Work\n\n")
	n := 0
	for _, it := range l.Items {
		if len(it.Work) == 0 {
			continue
		}
		n++
		fmt.Fprintf(b, "- %d, %s\n", it.Number, Escape(it.names(", ")))
		for _, w := range it.Jobs() {
			fmt.Fprintf(b, "  - %s\n", Escape(w))
		}
	}
	if n == 0 {
		b.WriteString("Nothing but cutting to size.\n")
	}
}

func (l List) proof(b *strings.Builder) {
	b.WriteString("\n## Sizes and proof\n")
	row := func(name string, s Size, d [2]box.MM) []string {
		diag := "—"
		if d[0] > 0 || d[1] > 0 {
			diag = tenth(float64(d[0])) + " and " + tenth(float64(d[1]))
		}
		return []string{name, tenth(float64(s.Width)), tenth(float64(s.Depth)), tenth(float64(s.Height)), diag}
	}
	rows := [][]string{
		row("inside", l.Inside, l.Diagonals.Inside), row("outside, the walls, up to the "+l.Rise(), l.Outside, l.Diagonals.Outside),
	}
	if l.Overall != (Size{}) {
		rows = append(rows, row("overall, "+l.Whole(), l.Overall, [2]box.MM{}))
	}
	table(b, "mm|width|depth|height|diagonals at the walls' lower edge", rows)
	if d := l.Diagonals.Outside; d[0] > 0 && num(float64(d[0])) == num(float64(d[1])) {
		b.WriteString("\nThe box is square when both diagonals read the same.\n")
	}
}

func (l List) totalsTable(b *strings.Builder) {
	b.WriteString("\n## Totals\n")
	var rows [][]string
	for _, t := range l.Totals.Boards {
		rows = append(rows, []string{
			dash(Escape(t.Material)), Item{Nominal: t.Nominal, Thickness: t.Thickness, Least: t.Thickness, Most: t.Thickness}.thickness(),
			fmt.Sprint(t.Parts), num(nearest(t.Area/1e6, 0.001)), num(nearest(t.Volume/1e6, 0.01)),
		})
	}
	table(b, "material|thickness|parts|blanks, m²|volume, dm³", rows)
	mass := l.massWords() + Escape(l.unweighed())
	fmt.Fprintf(b, "\nParts: %d. Volume: %s dm³. %s.\n", l.Totals.Parts, num(nearest(l.Totals.Volume/1e6, 0.01)), strings.ToUpper(mass[:1])+mass[1:])
}

// massWords is the mass of the box, as far as it is known.
func (l List) massWords() string {
	switch {
	case l.Totals.Known > 0 && l.Totals.Known == l.Totals.Parts:
		return num(nearest(l.Totals.Mass, 0.001)) + " kg"
	case l.Totals.Known > 0:
		return fmt.Sprintf("%s kg for the %d whose mass is known", num(nearest(l.Totals.Mass, 0.001)), l.Totals.Known)
	}
	return "mass not known"
}

// unweighed says of what materials no density is known, and what they may mean.
func (l List) unweighed() string {
	if l.Bill == nil {
		return ""
	}
	s := ""
	for _, n := range l.Bill.NoDensity {
		switch {
		case n.Material == "":
			s += "; boards of no material have no density"
		case len(n.Near) == 0:
			s += "; no density is known for " + plain(n.Material)
		default:
			s += "; no density is known for " + plain(n.Material) + " (did you mean " + plain(strings.Join(n.Near, ", ")) + "?)"
		}
	}
	return s
}

func (l List) voidsAndFindings(b *strings.Builder) {
	if len(l.Voids) > 0 {
		b.WriteString("\n## Voids\n\n")
		for _, v := range l.Voids {
			fmt.Fprintf(b, "- %s (%s): %s mm³\n", Escape(l.Owner(v)), Escape(v.Kind), tenth(v.Volume))
		}
	}
	if len(l.Findings) > 0 {
		b.WriteString("\n## Findings\n\n")
		for _, f := range l.Findings {
			part := ""
			if f.Part != "" {
				part = Escape(string(f.Part)) + ": "
			}
			fmt.Fprintf(b, "- %s (%s): %s%s\n", Escape(f.Code), f.Severity, part, Escape(f.Why))
		}
	}
}

func dash(s string) string {
	if s == "" {
		return "—"
	}
	return s
}

// Escape makes a text fit to stand anywhere in a line of Markdown, also in a
// table: it shows as it is and is neither markup, nor HTML, nor a link.
func Escape(s string) string {
	s = strings.TrimSpace(plain(s))
	var b strings.Builder
	for i, r := range s {
		switch r {
		case '&':
			b.WriteString("&amp;")
		case '<':
			b.WriteString("&lt;")
		case '>':
			b.WriteString("&gt;")
		case '\\', '`', '*', '_', '[', ']', '|', '~', '$', '@':
			b.WriteByte('\\')
			b.WriteRune(r)
		case '#', '+', '-', '=', '!':
			// Marks at the start of a line: of a heading, a list, a rule.
			if i == 0 && (len(s) == 1 || strings.ContainsRune(" #-=[", rune(s[1]))) {
				b.WriteByte('\\')
			}
			b.WriteRune(r)
		case ':':
			if strings.HasPrefix(s[i:], "://") {
				b.WriteByte('\\')
			}
			b.WriteByte(':')
		case '.':
			if i >= 3 && strings.EqualFold(s[i-3:i], "www") || marker(s, i) {
				b.WriteByte('\\')
			}
			b.WriteByte('.')
		case ')':
			if marker(s, i) {
				b.WriteByte('\\')
			}
			b.WriteByte(')')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// marker reports whether what ends at i begins a numbered list.
func marker(s string, i int) bool {
	return i > 0 && strings.Trim(s[:i], "0123456789") == "" && (i+1 == len(s) || s[i+1] == ' ')
}
