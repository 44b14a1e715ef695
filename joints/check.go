package joints

import (
	"math"
	"slices"
)

// Check proves that a section divides the corner: everywhere along the edge
// the two shares and the void fill the rectangle TA x TB exactly and without
// overlap, each part fills its own slab just inside the corner but for
// declared void, nothing that A keeps where it runs on is void, and all
// numbers are finite. It returns one or several Faults
// that say what is wrong, with areas in mm2, or nil. Ends steeper than MaxBevel
// and reaches over half a part are refused too.
//
// Every section should be checked, whoever wrote its joint. Exactly means to
// within a strip of 1e-7 mm, as everywhere in holt.
func Check(c Corner, s Section) error {
	c, err := c.Sound()
	if err != nil {
		return err
	}
	var fs faults
	c.checkNumbers(&fs, s)
	ends := c.checkZones(&fs, s)
	c.limits(&fs, s)
	if len(fs) > 0 {
		return fs.err()
	}
	slices.Sort(ends)
	w := newCheck(c, s)
	for i := 0; i <= len(ends) && len(fs) == 0; i++ {
		// The stretches before the first end and after the last count too:
		// parts go on past their edge where three of them meet.
		from, to := math.Inf(-1), math.Inf(1)
		if i > 0 {
			from = ends[i-1]
		}
		if i < len(ends) {
			to = ends[i]
		}
		if to-from > slack {
			w.stretch(&fs, from, to)
		}
	}
	return fs.err()
}

// Measure fills in the four reaches, Inner and Outer of both shares, which
// follow from the lines that are kept.
func (c Corner) Measure(s Section) Section {
	cos, sin := c.Cos(), c.Sin()
	reach := func(keep []Line, thick MM, swap bool) (inner, outer MM) {
		t := float64(thick)
		return MM(end(keep, 0, swap) / sin), MM((end(keep, t, swap) + float64(t*cos)) / sin)
	}
	s.A.Inner, s.A.Outer = reach(s.A.Keep, c.TA, false)
	s.B.Inner, s.B.Outer = reach(s.B.Keep, c.TB, true)
	return s
}

// end is the largest height over the other part's inner face that the lines
// leave at the given height over the part's own; infinite without a bound.
func end(keep []Line, own float64, swap bool) float64 {
	far := math.Inf(1)
	for _, l := range keep {
		p, q := l.A, l.B
		if swap {
			p, q = q, p
		}
		if q > 0 {
			far = math.Min(far, (l.K-float64(p*own))/q)
		}
	}
	return far
}

func (c Corner) checkNumbers(fs *faults, s Section) {
	if s.Name == "" {
		fs.add("", none, none, none, "", "a section needs a name")
	}
	for i, o := range s.Ends {
		if o < ALaps || o > Mitred {
			fs.add("", float64(o), float64(ALaps), float64(Mitred), "", [2]string{"start", "end"}[i]+" of the edge: there is no such order")
		}
	}
	for _, n := range [...]struct {
		what string
		x    MM
	}{{"play", s.Play}, {"least gap", s.Least}, {"greatest gap", s.Greatest}, {"short grain", s.ShortGrain}} {
		if !(n.x >= 0 && finite(float64(n.x))) {
			fs.add("", float64(n.x), 0, none, "mm", "the section's "+n.what+" is no length")
		}
	}
	if s.Least > s.Greatest {
		fs.add("", float64(s.Least), none, float64(s.Greatest), "mm", "the least gap is larger than the greatest")
	}
	m := c.Measure(s)
	reach := func(name, face string, got, want MM) {
		said, is := float64(got), float64(want)
		switch {
		case !finite(is):
			fs.add("", none, none, none, "", name+" on its "+face+" face: no line ends it")
		case !(math.Abs(said-is) <= 1e-6*(1+math.Abs(is))):
			fs.add("", said, is, is, "mm", name+" on its "+face+
				" face: the reach does not follow from the lines (Corner.Measure works it out)")
		}
	}
	reach(c.nameA(), "inner", s.A.Inner, m.A.Inner)
	reach(c.nameA(), "outer", s.A.Outer, m.A.Outer)
	reach(c.nameB(), "inner", s.B.Inner, m.B.Inner)
	reach(c.nameB(), "outer", s.B.Outer, m.B.Outer)
}

// checkZones looks at every line and returns the places along the edge where
// something begins or ends.
func (c Corner) checkZones(fs *faults, s Section) []float64 {
	lines := func(ls []Line, what, name string) {
		for _, l := range ls {
			if !l.sound() {
				fs.add("", none, none, none, "", what+name+": "+num(l.A)+" a + "+num(l.B)+" b <= "+num(l.K)+" is no line")
			}
		}
	}
	var ends []float64
	zones := func(zs []Zone, what, name string) {
		for _, z := range zs {
			lines(z.Lines, what, name)
			if z.whole() {
				continue
			}
			if !(z.From < z.To) {
				fs.add("", float64(z.From), none, float64(z.To), "mm", what+name+": a zone begins at or after its end")
				continue
			}
			for _, x := range [2]float64{float64(z.From), float64(z.To)} {
				if finite(x) {
					ends = append(ends, x)
				}
			}
		}
	}
	lines(s.A.Keep, "share of ", c.nameA())
	lines(s.B.Keep, "share of ", c.nameB())
	zones(s.A.Lose, "cut from ", c.nameA())
	zones(s.B.Lose, "cut from ", c.nameB())
	zones(s.Void, "void", "")
	return ends
}

func (z Zone) whole() bool { return z.From == 0 && z.To == 0 }

func (z Zone) at(x float64) bool {
	return z.whole() || float64(z.From) < x && x < float64(z.To)
}

// check is what is needed at every stretch of the edge.
type check struct {
	bench
	c      Corner
	s      Section
	bound  float64   // areas that count as nothing
	places [4]place  // the corner, the two slabs beside it, and A's run-on
	base   [96]point // first scratch space
}

// place is one of the rectangles that must be filled.
type place struct {
	cell cell
	a, b bool // which parts lie there
	name string
	part bool // it need not be filled
}

func newCheck(c Corner, s Section) *check {
	tA, tB := float64(c.TA), float64(c.TB)
	w := &check{c: c, s: s, bound: 1e-7 * (tA + tB)}
	w.tiny = 1e-13 * (tA + tB) * (tA + tB)
	box := func(a0, a1, b0, b1 float64) cell { return cell{{a0, b0}, {a1, b0}, {a1, b1}, {a0, b1}} }
	w.places = [4]place{
		{cell: box(0, tA, 0, tB), a: true, b: true},
		{cell: box(0, tA, -tA-tB, 0), a: true, name: c.nameA()},
		{cell: box(-tA-tB, 0, 0, tB), b: true, name: c.nameB()},
		{cell: box(0, tA, tB, tB+float64(c.RunOn)), a: true, part: true},
	}
	return w
}

// stretch checks the places between two neighbouring ends.
func (w *check) stretch(fs *faults, from, to float64) {
	mid := (from + to) / 2
	switch {
	case math.IsInf(from, -1) && math.IsInf(to, 1):
		mid = 0
	case math.IsInf(from, -1):
		mid = to - 1
	case math.IsInf(to, 1):
		mid = from + 1
	}
	for _, p := range w.places {
		if p.part && w.c.RunOn == 0 {
			continue
		}
		w.block = w.base[:0]
		w.fill(fs, p, mid, from, to)
	}
}

func (w *check) fill(fs *faults, p place, mid, from, to float64) {
	var inA, inB, void []cell
	if p.a {
		inA = w.share(p.cell, w.s.A, mid)
	}
	if p.b {
		inB = w.share(p.cell, w.s.B, mid)
	}
	void = w.void(p.cell, mid)
	if len(inA)+len(inB)+len(void) > maxCells {
		fs.add("", none, none, none, "", "the section is cut into too many pieces to be a joint")
		return
	}
	say := func(got, want float64, why string) {
		fs.add("", got, want, want, "mm2", why+along(from, to))
	}
	if x := w.overlap(inA, inB); !(x <= w.bound) {
		say(x, 0, "both parts claim the same "+num(x)+" mm2")
	}
	if x := w.overlap(inA, void); !(x <= w.bound) {
		say(x, 0, w.c.nameA()+" and the void claim the same "+num(x)+" mm2")
	}
	if x := w.overlap(inB, void); !(x <= w.bound) {
		say(x, 0, w.c.nameB()+" and the void claim the same "+num(x)+" mm2")
	}
	if p.part {
		return
	}
	full, sum := p.cell.area(), area(inA)+area(inB)+area(void)
	if !(math.Abs(sum-full) <= w.bound) {
		if p.name == "" {
			say(sum, full, "shares and void add up to "+num(sum)+" of "+num(full)+" mm2")
		} else {
			say(sum, full, "inside the corner "+p.name+" and the void fill "+num(sum)+" of "+num(full)+" mm2")
		}
	}
}

// share is what a part has of a cell.
func (w *check) share(p cell, s Share, mid float64) []cell {
	p = w.cutAll(p, s.Keep)
	if p == nil || !(p.area() > w.tiny) {
		return nil
	}
	parts := []cell{p}
	for _, z := range s.Lose {
		if z.at(mid) {
			parts = w.without(parts, z.Lines)
		}
	}
	return parts
}

// void is the union of the void zones in a cell.
func (w *check) void(p cell, mid float64) []cell {
	var all []cell
	for i, z := range w.s.Void {
		if !z.at(mid) {
			continue
		}
		q := w.cutAll(p, z.Lines)
		if q == nil || !(q.area() > w.tiny) {
			continue
		}
		parts := []cell{q}
		for _, before := range w.s.Void[:i] {
			if before.at(mid) {
				parts = w.without(parts, before.Lines)
			}
		}
		if all = append(all, parts...); len(all) > maxCells {
			break
		}
	}
	return all
}

func (w *check) without(parts []cell, zone []Line) []cell {
	if len(parts) == 1 && w.cutAll(parts[0], zone) == nil || len(parts) > maxCells {
		return parts
	}
	var left []cell
	for _, q := range parts {
		left = w.less(left, q, zone)
	}
	return left
}

// along says where, "" for the whole edge.
func along(from, to float64) string {
	switch lo, hi := finite(from), finite(to); {
	case lo && hi:
		return " from " + num(from) + " to " + num(to) + " along the edge"
	case lo:
		return " past " + num(from) + " along the edge"
	case hi:
		return " before " + num(to) + " along the edge"
	}
	return ""
}
