package cutlist

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"holt.example/box/batch"
	"holt.example/render/bom"
	"holt.example/render/internal/text"
)

// Exact is a figure written with at most four decimals, without an exponent and
// never as "-0"; in JSON null if it is not a number.
type Exact float64

// String is the figure in decimals; "" if it is not a number.
func (x Exact) String() string { return decimals(float64(x), 4) }

// MarshalJSON implements json.Marshaler.
func (x Exact) MarshalJSON() ([]byte, error) {
	if s := x.String(); s != "" {
		return []byte(s), nil
	}
	return []byte("null"), nil
}

// tape is a length for a person: to a tenth of a millimetre.
func (x Exact) tape() string { return decimals(float64(x), 1) }

// sure is a length that is there for certain, as on the drawing: whole tenths, rounded
// down.
func (x Exact) sure() string { return decimals(math.Floor(float64(x*10)+1e-6)/10, 1) }

func decimals(x float64, n int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	s := strconv.FormatFloat(x, 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// money is a sum with two decimals.
func money(x Exact) string {
	return strconv.FormatFloat(math.Round(float64(x)*100)/100+0, 'f', 2, 64)
}

// plain is a name fit for one line.
func plain(s string) string { return text.Plain(s) }

// quoted is a text cell of CSV.
func quoted(s string) string { return text.Quoted(s) }

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// writeRows writes lines as RFC 4180 has them.
func writeRows(w io.Writer, rows [][]string) error {
	var b strings.Builder
	for _, r := range rows {
		b.WriteString(strings.Join(r, ","))
		b.WriteString("\r\n")
	}
	return out(w, b.String())
}

func out(w io.Writer, s string) error {
	if _, err := io.WriteString(w, s); err != nil {
		return fmt.Errorf("cutlist: %w", err)
	}
	return nil
}

func toJSON(w io.Writer, v any) error {
	b, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		return fmt.Errorf("cutlist: %w", err)
	}
	return out(w, string(b)+"\n")
}

// WriteCSV writes the cuts as CSV (RFC 4180), a line for each in the order to
// make them. Lengths are in mm, exact to four decimals. A router's batch has no
// cuts: then there is only the header. The columns are stable; new ones go to
// the end.
func WriteCSV(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	rows := [][]string{{"sheet", "stock", "piece", "cut", "kind", "from", "off", "setting_mm", "at_mm", "edge", "cut_length_mm", "slant_degrees", "same_setting", "part", "leaves", "left"}}
	for _, s := range New(r).Sheets {
		for _, c := range s.Cuts {
			rows = append(rows, []string{strconv.Itoa(s.Number), quoted(s.Stock), strconv.Itoa(s.Piece), strconv.Itoa(c.Number), quoted(c.Kind), quoted(c.From), quoted(c.Off),
				c.Setting.String(), c.At.String(), quoted(c.Edge), c.Long.String(), c.Slant.String(), yes(c.Same), quoted(c.Part), quoted(c.Leaves), quoted(c.Left)})
		}
	}
	return writeRows(w, rows)
}

// WritePartsCSV writes every part and its place as CSV, in the order of the
// drawings.
func WritePartsCSV(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	l := New(r)
	rows := [][]string{{"sheet", "stock", "label", "item", "box", "box_name", "part", "x_mm", "y_mm", "length_mm", "width_mm", "thickness_mm", "face_up", "turned_over", "second_face"}}
	for _, s := range l.Sheets {
		for _, p := range s.Parts {
			rows = append(rows, []string{strconv.Itoa(s.Number), quoted(s.Stock), quoted(p.Label), strconv.Itoa(p.Item), strconv.Itoa(p.Box), quoted(l.Boxes[p.Box-1].Name), quoted(p.Name),
				p.X.String(), p.Y.String(), p.Length.String(), p.Width.String(), p.Thickness.String(), quoted(p.Face), yes(p.Over), yes(p.Second)})
		}
	}
	return writeRows(w, rows)
}

// WriteJSON writes the List as JSON.
func WriteJSON(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	return toJSON(w, New(r))
}

// WriteMarkdown writes the list for the bench: each piece of stock, the parts
// on it, and the cuts in the order to make them. Lengths are to a tenth of a
// millimetre; names are escaped.
func WriteMarkdown(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	l := New(r)
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\nLengths in mm. A part is named item/box, as on its drawing.\n", heading(l.Name, "cut list"))
	if l.By != "router" {
		b.WriteString("\nPiece 1 is the stock, lying as drawn. What comes off it is 1.1, 1.2 and so on; what is left keeps the name, or gets the one that its last cut says. " +
			"Each measure is that of what comes off: the blade takes its kerf beyond it.\n")
	}
	table(&b, "box|name", len(l.Boxes), func(i int) []string {
		return []string{strconv.Itoa(l.Boxes[i].Number), bom.Escape(l.Boxes[i].Name)}
	})
	for _, s := range l.Sheets {
		fmt.Fprintf(&b, "\n## %s\n\n%s.\n", bom.Escape(s.Name), bom.Escape(s.Facts))
		table(&b, "part|name|blank|at|face up", len(s.Parts), func(i int) []string {
			p := s.Parts[i]
			face := p.Face
			if p.Second {
				face += ", then turn over"
			}
			return []string{p.Label, bom.Escape(p.Name), p.Length.tape() + " × " + p.Width.tape(), p.X.tape() + ", " + p.Y.tape(), face}
		})
		for _, c := range s.Cuts {
			if c.Number == 1 {
				b.WriteString("\n")
			}
			setting := ""
			if c.Setting != c.At {
				setting = " (set " + c.Setting.tape() + ")"
			}
			_, words, _ := strings.Cut(c.Words, " ")
			fmt.Fprintf(&b, "%d. %s%s\n", c.Number, bom.Escape(words), setting)
		}
	}
	problems(&b, l.Problems)
	return out(w, b.String())
}

func heading(name, what string) string {
	if name = plain(name); name != "" {
		return bom.Escape(name) + ": " + what
	}
	return strings.ToUpper(what[:1]) + what[1:]
}

// table writes n rows; cells are written as they are.
func table(b *strings.Builder, head string, n int, row func(int) []string) {
	if n == 0 {
		return
	}
	cols := strings.Split(head, "|")
	fmt.Fprintf(b, "\n| %s |\n|%s\n", strings.Join(cols, " | "), strings.Repeat(" --- |", len(cols)))
	for i := range n {
		fmt.Fprintf(b, "| %s |\n", strings.Join(row(i), " | "))
	}
}

func problems(b *strings.Builder, ps []string) {
	if len(ps) == 0 {
		return
	}
	b.WriteString("\n## Not placed\n\n")
	for _, p := range ps {
		fmt.Fprintf(b, "- %s\n", bom.Escape(p))
	}
}

// WriteStockCSV writes what to buy and what to take from the shed as CSV.
func WriteStockCSV(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	rows := [][]string{{"stock", "material", "length_mm", "width_mm", "thickness_mm", "pieces", "from_shed", "price", "cost"}}
	for _, l := range NewStock(r).Lines {
		rows = append(rows, []string{quoted(l.Name), quoted(l.Material), l.Length.String(), l.Width.String(), l.Thickness.String(),
			strconv.Itoa(l.Pieces), yes(l.Shed), l.Price.String(), l.Cost.String()})
	}
	return writeRows(w, rows)
}

// WriteFittingsCSV writes what is bought or cut beside the boards, for all
// boxes together, as CSV. Without fittings there is the header alone.
func WriteFittingsCSV(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	rows := [][]string{{"what", "size", "count"}}
	for _, f := range NewStock(r).Beside {
		rows = append(rows, []string{quoted(f.What), quoted(f.Size), strconv.Itoa(f.Count)})
	}
	return writeRows(w, rows)
}

// WriteStockJSON writes the Stock as JSON.
func WriteStockJSON(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	return toJSON(w, NewStock(r))
}

// WriteStockMarkdown writes what to buy, fittings among it, what the stock
// costs, how good that is, and what is left over.
func WriteStockMarkdown(w io.Writer, r *batch.Result) error {
	if r == nil {
		return errNoBatch
	}
	s := NewStock(r)
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", heading(s.Name, "stock to buy"))
	table(&b, "stock|material|length × width × thickness|pieces|each|cost", len(s.Lines), func(i int) []string {
		l := s.Lines[i]
		each, cost := "—", "—"
		switch {
		case l.Shed:
			each = "from the shed"
		case s.Priced:
			each, cost = money(l.Price), money(l.Cost)
		}
		size := l.Length.tape() + " × " + l.Width.tape()
		if l.Thickness > 0 {
			size += " × " + l.Thickness.tape()
		}
		return []string{bom.Escape(l.Name), bom.Escape(l.Material), size, strconv.Itoa(l.Pieces), each, cost}
	})
	fmt.Fprintf(&b, "\n%d of %d parts placed, %s %% of the stock used.", s.Placed, s.Wanted, decimals(100*float64(s.Yield), 1))
	if s.Priced {
		fmt.Fprintf(&b, " Cost %s; no layout of these parts costs less than %s.", money(s.Cost), money(s.Bound))
	}
	fmt.Fprintf(&b, " The layout is %s.\n", s.Verdict)
	if len(s.Beside) > 0 {
		b.WriteString("\n## Beside the boards\n")
		table(&b, "what|size|pieces", len(s.Beside), func(i int) []string {
			f := s.Beside[i]
			return []string{bom.Escape(f.What), bom.Escape(f.Size), strconv.Itoa(f.Count)}
		})
	}
	if len(s.Left) > 0 {
		b.WriteString("\n## Left over\n")
		table(&b, "sheet|of|length × width", len(s.Left), func(i int) []string {
			o := s.Left[i]
			return []string{strconv.Itoa(o.Sheet), bom.Escape(o.Of), o.Length.sure() + " × " + o.Width.sure()}
		})
	}
	problems(&b, s.Missing)
	return out(w, b.String())
}
