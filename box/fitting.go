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
	Area   float64        // of one piece that is cut to size, or of what is glued, mm2
	Proud  MM             // how far its head stands off the wood: of an aluminium nail in a living tree
	Where  []Part         // the parts that it is on, or joins
	Why    string         // what it is for
	Hangs  bool           // the box hangs by it
}

// checkFittings looks at what the design lists.
func (d Design) checkFittings(c *collector) {
	if d.Glue != "" {
		c.name("Glue", d.Glue)
	}
	if !c.within("Fittings", float64(len(d.Fittings)), 0, mostRows, "lines", "lines of further fittings") {
		return
	}
	for i, f := range d.Fittings {
		path := fmt.Sprintf("Fittings[%d]", i)
		c.name(path+".What", f.What)
		for _, t := range []struct{ field, s string }{{".Size", f.Size}, {".Why", f.Why}} {
			if t.s != "" {
				c.name(path+t.field, t.s)
			}
		}
		c.within(path+".Count", float64(f.Count), 1, mostCount, "", "how many of a fitting")
		c.atLeast0(path+".Length", f.Length, "length of a fitting; 0 is not said")
		c.atLeast0(path+".Width", f.Width, "width of a fitting, or the diameter of a screw; 0 is not said")
		c.within(path+".Proud", float64(f.Proud), 0, 100, "mm", "how far a head stands off the wood")
		c.within(path+".Area", f.Area, 0, maxLength*maxLength, "mm2", "area of a fitting; 0 is not said")
		for k, o := range f.Cut {
			checkOutline(c, fmt.Sprintf("%s.Cut[%d]", path, k), o)
		}
	}
}

// mostCount of one fitting.
const mostCount = 10000

// Fittings are what the plan needs beside its boards, in the order of the
// elements that ask for it.
func (p *Plan) Fittings() []Fitting { return clone(p.fittings) }

func (s *shell) fit(f Fitting) { s.fittings = append(s.fittings, f) }

// screws lists screws that hold a board of the thickness held to one behind it:
// 2.5 times the held thickness long (thisoldhouse.com), or less, so that the
// point stays 3 within the other board, rounded down to 5; 4 thick, or 5 where
// more than 20 are held (common practice). Where the design has a row between the
// two parts, that is listed in their place.
func (s *shell) screws(n int, held, into float64, where []Part, why string) {
	for i := range s.d.Fixings {
		f := &s.d.Fixings[i]
		if len(where) == 2 && (f.Over == where[0] && f.Under == where[1] || f.Over == where[1] && f.Under == where[0]) {
			return
		}
	}
	l := math.Min(2.5*held, held+into-3)
	l = math.Max(5, 5*math.Floor(l/5+1e-9))
	d := 4.0
	if held > 20 {
		d = 5
	}
	s.fit(Fitting{What: "screw", Count: n, Size: fmt.Sprintf("%s x %s", num(d), num(l)), Length: MM(l), Width: MM(d), Where: where, Why: why})
}

// sheet lists something cut to size.
func (s *shell) sheet(what string, cut outline.Region, where []Part, why string) {
	b := cut[0].Extents()
	for _, c := range cut[1:] {
		b = b.Join(c.Extents())
	}
	w, h := math.Max(b.Width(), b.Height()), math.Min(b.Width(), b.Height())
	s.fit(Fitting{What: what, Count: 1, Size: mm(w) + " x " + mm(h), Length: MM(w), Width: MM(h), Cut: cut, Area: cut.Area(), Where: where, Why: why})
}
