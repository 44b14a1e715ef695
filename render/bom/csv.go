package bom

import (
	"errors"
	"io"
	"strconv"
	"strings"

	"holt.example/box"
	"holt.example/render/internal/text"
)

var errNoPlan = errors.New("bom: there is no plan")

// WriteCSV writes the list as CSV (RFC 4180: a header, CRLF at the ends of
// lines): a line for each item. Lengths are in mm with at most four decimals;
// length_mm and width_mm are exact, cut_length_mm and cut_width_mm rounded
// jointly to the step. What is not known is left empty.
//
// Text is always quoted. Text that a spreadsheet could take for a formula (it
// starts with =, +, -, @ or one of their wide forms) gets an apostrophe in
// front, and control characters become spaces.
func WriteCSV(w io.Writer, plan *box.Plan, o Options) error {
	l, err := Checked(plan, o)
	if err != nil {
		return err
	}
	return l.writeCSV(w)
}

// csvColumns are the columns, in order. They are stable: new ones go to the
// end.
var csvColumns = [...]string{
	"item", "quantity", "parts", "material", "nominal_mm", "thickness_mm", "least_mm", "most_mm",
	"length_mm", "width_mm", "cut_length_mm", "cut_width_mm", "grain", "volume_mm3", "mass_kg",
	"machined_face", "up", "face_edge", "hand", "mirror_of", "bevels", "edges", "work", "compensation", "arrises",
}

func (l List) writeCSV(w io.Writer) error {
	var b strings.Builder
	line := func(cells []string) {
		b.WriteString(strings.Join(cells, ","))
		b.WriteString("\r\n")
	}
	line(csvColumns[:])
	for _, it := range l.Items {
		mass, mirror := "", ""
		if it.Mass > 0 {
			mass = num(it.Mass)
		}
		if it.MirrorOf > 0 {
			mirror = strconv.Itoa(it.MirrorOf)
		}
		line([]string{
			strconv.Itoa(it.Number), strconv.Itoa(it.Quantity), quoted(it.names("; ")), quoted(it.Material),
			mm(it.Nominal), mm(it.Thickness), mm(it.Least), mm(it.Most),
			mm(it.Length), mm(it.Width), mm(it.CutLength), mm(it.CutWidth),
			quoted(it.Grain), num(it.Volume), mass,
			quoted(it.faceWords()), quoted(it.Up), quoted(it.FaceEdge), quoted(string(it.Hand)), mirror,
			quoted(it.bevels()), quoted(it.meetings()), quoted(strings.Join(it.Jobs(), " | ")), quoted(it.compensation()), quoted(it.arrises()),
		})
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// quoted is a text cell.
func quoted(s string) string { return text.Quoted(s) }
