package batch

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// SheetName is what a sheet is called: "sheet 2 of 5: larch 18", with its count
// where several pieces of one stock are used.
func (r *Result) SheetName(i int) string {
	s := r.Sheets[i]
	name := r.Stock(s).Name
	if name == "" {
		name = "stock " + strconv.Itoa(s.Piece.Stock+1)
	}
	n := 0
	for _, t := range r.Sheets {
		if t.Piece.Stock == s.Piece.Stock {
			n++
		}
	}
	if n > 1 {
		name += fmt.Sprintf(", piece %d of %d", s.Piece.Number, n)
	}
	what := "sheet"
	if _, ok := r.Job.By.(Lengths); ok {
		what = "board"
	}
	name = fmt.Sprintf("%s %d of %d: %s", what, s.Number, len(r.Sheets), name)
	if r.Job.Name != "" {
		name = r.Job.Name + ", " + name
	}
	return name
}

// Facts says in one line what a sheet is and how it is cut, lengths in mm.
func (r *Result) Facts(i int) string {
	s := r.Sheets[i]
	st := r.Stock(s)
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	size := short(st.Length) + " × " + short(st.Width)
	if st.Thickness > 0 {
		size += " × " + short(st.Thickness)
	}
	add("%s", size)
	if st.Material != "" {
		add("%s", st.Material)
	}
	if st.Offcut {
		add("from the shed")
	}
	add("%d parts", len(s.Placed))
	switch w := r.Job.By.(type) {
	case Router:
		add("router, gap %s, margin %s", short(w.Gap), short(w.Margin))
	case Saw:
		add("saw, kerf %s", short(w.Kerf))
	case Lengths:
		add("cut to length, kerf %s", short(w.Kerf))
	}
	if r.Job.Allowance > 0 {
		add("allowance %s", short(float64(r.Job.Allowance)))
	}
	switch r.Job.Rough {
	case OuterFace:
		add("rough face down: it goes outside")
	case InnerFace:
		add("rough face down: it goes inside")
	}
	return strings.Join(out, "; ")
}

// short is a length with at most one decimal, or two where it says more.
func short(x float64) string {
	return strconv.FormatFloat(math.Round(x*100)/100+0, 'f', -1, 64)
}
