package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
)

// Fitting is something that a box needs and that is no board: screws, felt, a
// strap. Nothing of it is in the solids.
type Fitting struct {
	What   string         // "screw", "felt", "strap" ...
	Count  int            // how many of it
	Size   string         // in words: "4 x 35", "302.0 x 240.0"
	Length MM             // of a screw or strap, or of the piece that is cut to size
	Width  MM             // of the piece that is cut to size, or the diameter of a screw; 0 where it does not matter
	Cut    outline.Region // what is cut to size, flat; nil of other things
	Area   float64        // of one piece that is cut to size, mm2
	Where  []Part         // the parts that it is on, or joins
	Why    string         // what it is for
}

// Fittings are what the plan needs beside its boards, in the order of the
// elements that ask for it.
func (p *Plan) Fittings() []Fitting { return append([]Fitting(nil), p.fittings...) }

func (s *shell) fit(f Fitting) { s.fittings = append(s.fittings, f) }

// screws lists screws that hold a board of the thickness held to one behind it:
// 2.5 times the held thickness long (thisoldhouse.com), or less, so that the
// point stays 3 within the other board, rounded down to 5; 4 thick, or 5 where
// more than 20 are held (common practice).
func (s *shell) screws(n int, held, into float64, where []Part, why string) {
	l := math.Min(2.5*held, held+into-3)
	l = math.Max(5, 5*math.Floor(l/5+1e-9))
	d := 4.0
	if held > 20 {
		d = 5
	}
	s.fit(Fitting{What: "screw", Count: n, Size: fmt.Sprintf("%s x %s", num(d), num(l)), Length: MM(l), Width: MM(d), Where: where, Why: why})
}

// piece lists something cut to size.
func (s *shell) sheet(what string, cut outline.Region, where []Part, why string) {
	b := cut[0].Extents()
	for _, c := range cut[1:] {
		b = b.Join(c.Extents())
	}
	w, h := math.Max(b.Width(), b.Height()), math.Min(b.Width(), b.Height())
	s.fit(Fitting{What: what, Count: 1, Size: mm(w) + " x " + mm(h), Length: MM(w), Width: MM(h), Cut: cut, Area: cut.Area(), Where: where, Why: why})
}
