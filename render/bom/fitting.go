package bom

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// Fitting is what is bought or cut beside the boards: screws, felt, a strap.
type Fitting struct {
	What          string
	Count         int
	Size          string         // in words
	Length, Width box.MM         // 0 where not used
	Cut           outline.Region // of what is cut to size; nil of other things
	Area          float64        // of one piece, or of what is glued, mm2
	Proud         box.MM         // how far its head stands off the wood
	Where         []box.Part
	Why           string
	Hangs         bool // the box hangs by it
}

func fittingsOf(fs []box.Fitting) []Fitting {
	var out []Fitting
	for _, f := range fs {
		g := Fitting(f)
		g.Cut = copyRegion(f.Cut)
		g.Where = append([]box.Part(nil), f.Where...)
		out = append(out, g)
	}
	return out
}

// arrisWords says what is done to the arrises of an edge.
func arrisWords(e box.PanelEdge) []string {
	var out []string
	for side, a := range e.Arrises {
		which := "machined"
		if side == 1 {
			which = "other"
		}
		if a.Round > 0 {
			out = append(out, "round the "+which+" arris "+mm(a.Round))
		}
		if a.Blunt > 0 {
			out = append(out, fmt.Sprintf("blunt the %s arris, of %s degrees, to %s", which, num(nearest(float64(a.Angle), 0.1)), mm(a.Blunt)))
		}
	}
	return out
}

// arrises lists what is done to the arrises of all edges.
func (it Item) arrises() string {
	var s []string
	for _, e := range it.Edges {
		if len(e.Arrises) > 0 {
			s = append(s, e.Name+": "+strings.Join(e.Arrises, ", "))
		}
	}
	return strings.Join(s, "; ")
}

func (l List) arrisList(b *strings.Builder) {
	head := "\n### Arrises\n\n"
	for _, it := range l.Items {
		if s := it.arrises(); s != "" {
			fmt.Fprintf(b, "%s- %d, %s: %s\n", head, it.Number, Escape(it.names(", ")), s)
			head = ""
		}
	}
}

func (l List) fittingsTable(b *strings.Builder) {
	if len(l.Fittings) == 0 {
		return
	}
	b.WriteString("\n## Fittings\n")
	var rows [][]string
	for _, f := range l.Fittings {
		rows = append(rows, []string{strconv.Itoa(f.Count), Escape(f.What), Escape(f.Size), f.areaWords(), Escape(joinParts(f.Where, ", ")), Escape(f.Why)})
	}
	table(b, "count|what|size|area, m²|where|why", rows)
}

func (f Fitting) areaWords() string {
	if !(f.Area > 0) {
		return "—"
	}
	if a := f.Area / 1e6; a >= 5e-5 {
		return num(a)
	}
	return "under 0.0001"
}

// WriteFittingsCSV writes what is bought or cut beside the boards as CSV, a line
// for each, in the manner of WriteCSV. Without fittings there is the header
// alone.
func WriteFittingsCSV(w io.Writer, plan *box.Plan, o Options) error {
	l, err := Checked(plan, o)
	if err != nil {
		return err
	}
	var b strings.Builder
	b.WriteString("count,what,size,length_mm,width_mm,area_mm2,where,why,proud_mm\r\n")
	some := func(x float64) string {
		if !(x > 0) {
			return ""
		}
		return num(x)
	}
	for _, f := range l.Fittings {
		b.WriteString(strings.Join([]string{strconv.Itoa(f.Count), quoted(f.What), quoted(f.Size), some(float64(f.Length)), some(float64(f.Width)), some(f.Area),
			quoted(joinParts(f.Where, "; ")), quoted(f.Why), some(float64(f.Proud))}, ",") + "\r\n")
	}
	_, err = io.WriteString(w, b.String())
	return err
}
