package bom

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"holt.example/box"
)

// WriteSummary writes what a plan comes to as plain text for a terminal or a
// log, about a line a part: the box inside, outside and overall, the parts with
// their exact sizes to 0.1 mm (along the grain, across it, thick), by how much
// walls are narrower than the box and what takes the difference, and the
// findings. The lists to cut from are those of the other writers.
func WriteSummary(w io.Writer, plan *box.Plan) error {
	return WriteSummaryWith(w, plan, Options{})
}

// WriteSummaryWith is WriteSummary with the options of the list: with a bill it says
// what the box weighs, what to buy, and what that costs.
func WriteSummaryWith(w io.Writer, plan *box.Plan, o Options) error {
	l, err := Checked(plan, o)
	if err != nil {
		return err
	}
	_, err = io.WriteString(w, l.summary())
	return err
}

func (l List) summary() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", strings.TrimSpace(plain(l.Name)))
	l.summarySizes(&b)
	l.summaryParts(&b)
	l.summaryBill(&b)
	var lines []string
	for _, it := range l.Items {
		for _, s := range it.Words {
			if strings.HasPrefix(s, narrower) {
				lines = append(lines, plain(s))
			}
		}
	}
	for _, f := range l.Findings {
		part := ""
		if f.Part != "" && !strings.HasPrefix(f.Why, string(f.Part)) {
			part = string(f.Part) + ": "
		}
		lines = append(lines, plain(f.Severity.String()+": "+part+f.Why))
	}
	if len(lines) > 0 {
		b.WriteString("\n")
	}
	for _, s := range lines {
		fmt.Fprintf(&b, "  %s\n", strings.TrimSpace(s))
	}
	return b.String()
}

// narrower begins the sentence of box.Plan.Explain that says what takes the
// difference between a wall and the box outside.
const narrower = "Outside, the box measures"

func (l List) summarySizes(b *strings.Builder) {
	rows := [][]string{{"", "wide", "deep", "high", ""}}
	add := func(name string, s Size, note string) {
		if s != (Size{}) {
			rows = append(rows, []string{name, oneDecimal(s.Width), oneDecimal(s.Depth), oneDecimal(s.Height), note})
		}
	}
	add("inside", l.Inside, "")
	add("outside", l.Outside, "the walls, up to the "+l.Rise())
	add("overall", l.Overall, l.Whole())
	if len(rows) > 1 {
		columns(b, rows, "lrrrl")
	}
}

func (l List) summaryParts(b *strings.Builder) {
	rows := [][]string{{"item", "qty", "parts", "along", "across", "thick", ""}}
	for _, it := range l.Items {
		note := it.Material
		if it.MirrorOf > 0 {
			note = strings.TrimPrefix(note+", "+it.handWords(), ", ")
		}
		thick := oneDecimal(it.Thickness)
		if it.Least != it.Most {
			thick = oneDecimal(it.Least) + " to " + oneDecimal(it.Most)
		}
		rows = append(rows, []string{fmt.Sprint(it.Number), fmt.Sprint(it.Quantity), plain(it.names(", ")), oneDecimal(it.Length), oneDecimal(it.Width), thick, plain(note)})
	}
	b.WriteString("\n")
	columns(b, rows, "rrlrrrl")
}

// columns sets a table in columns of equal width, "l" or "r" for each; nothing
// trails behind a line.
func columns(b *strings.Builder, rows [][]string, sides string) {
	wide := make([]int, len(sides))
	for _, r := range rows {
		for i, c := range r {
			// A very long name only pushes its own line out.
			wide[i] = min(max(wide[i], utf8.RuneCountInString(c)), 48)
		}
	}
	for _, r := range rows {
		var line strings.Builder
		for i, c := range r {
			pad := strings.Repeat(" ", max(0, wide[i]-utf8.RuneCountInString(c)))
			if sides[i] == 'r' {
				line.WriteString("  " + pad + c)
			} else {
				line.WriteString("  " + c + pad)
			}
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

// oneDecimal is a size to 0.1, with that decimal always: figures stand under
// each other.
func oneDecimal(x box.MM) string {
	if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
		return ""
	}
	s := tenth(float64(x))
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}

// summaryBill is a line for each thing to buy, and the mass and the cost.
func (l List) summaryBill(b *strings.Builder) {
	if l.Bill == nil {
		return
	}
	rows := [][]string{{"to buy", "", "", ""}}
	if l.Bill.anyPrice() {
		rows[0][2], rows[0][3] = "cost", "price"
	}
	for _, n := range l.Bill.Lines {
		cost, price := "", ""
		if n.Priced {
			cost, price = money(n.Cost, l.Bill.Currency), n.per(l.Bill.Currency)
		} else if l.Bill.anyPrice() {
			cost = "unpriced"
		}
		rows = append(rows, []string{n.bought(), plain(n.name() + listed(n.Size)), cost, price})
	}
	b.WriteString("\n")
	columns(b, rows, "rlrl")
	fmt.Fprintf(b, "\n  %s%s", l.massWords(), l.unweighed())
	if l.Bill.Priced > 0 {
		fmt.Fprintf(b, "; cost %s", money(l.Bill.Cost, l.Bill.Currency))
		if n := len(l.Bill.Lines) - l.Bill.Priced; n > 0 {
			fmt.Fprintf(b, ", %d unpriced", n)
		}
	}
	b.WriteString("\n")
}
