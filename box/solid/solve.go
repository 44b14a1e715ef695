package solid

import "math"

// solver finds the spans of columns.
type solver struct {
	s    *shell
	cols []column
	base []Plane // of the faces of the shell's base, in their order
	bs   []slant
	cs   []slant
	mem  []float64
}

// numbers takes n numbers from the solver's memory.
func (v *solver) numbers(n int) []float64 {
	if cap(v.mem)-len(v.mem) < n {
		v.mem = make([]float64, 0, max(8*n, 64))
	}
	at := len(v.mem)
	v.mem = v.mem[:at+n]
	return v.mem[at : at+n : at+n]
}

// solve finds the spans of column k, or reports that it must be cut as a
// cutter. A column that takes nothing out has no spans.
func (v *solver) solve(k int) bool {
	c := &v.cols[k]
	if c.empty() {
		return true
	}
	w, n := c.p.Frame.W, len(c.foot)
	v.bs = slants(v.bs, v.base, w)
	for i := range v.bs {
		if v.beyond(c, &v.bs[i]) {
			return true
		}
	}
	one := span{lo: v.numbers(n), hi: v.numbers(n)}
	for i, p := range c.foot {
		lo, hi, ilo, ihi, ok := crossing(v.bs, p)
		if !ok || ilo < 0 || ihi < 0 || i > 0 && (ilo != one.bottom || ihi != one.top) {
			return false
		}
		one.lo[i], one.hi[i], one.bottom, one.top = lo, hi, ilo, ihi
	}
	c.spans = append(c.spans[:0], one)
	inf := math.Inf(1)
	if !math.IsInf(c.p.From, -1) && !v.takeEven(c, -inf, c.p.From, 0, fromLabel(int32(k))) {
		return false
	}
	if !math.IsInf(c.p.To, 1) && !v.takeEven(c, c.p.To, inf, toLabel(int32(k)), 0) {
		return false
	}
	for _, b := range c.covers {
		d := &v.cols[b]
		// The other's ends along this one's W.
		sign := 1.0
		if d.p.Frame.W.Dot(w) < 0 {
			sign = -1
		}
		shift := w.Dot(d.p.Frame.O.Sub(c.p.Frame.O))
		lo, hi := float64(sign*d.p.From)+shift, float64(sign*d.p.To)+shift
		llo, lhi := fromLabel(b), toLabel(b)
		if sign < 0 {
			lo, hi, llo, lhi = hi, lo, lhi, llo
		}
		if !v.takeEven(c, lo, hi, llo, lhi) {
			return false
		}
	}
	for m := range v.s.cuts {
		if len(c.spans) == 0 {
			break
		}
		if !v.takeCut(c, &v.s.cuts[m]) {
			return false
		}
	}
	return true
}

// beyond reports whether the column lies wholly outside a plane.
func (v *solver) beyond(c *column, h *slant) bool {
	for _, p := range c.foot {
		a := h.h.At(p)
		if math.Min(a+float64(c.wlo*h.rate), a+float64(c.whi*h.rate)) < -SideTest {
			return false
		}
	}
	return true
}

// takeEven takes w from lo to hi out of the column. These are ends of prisms:
// one that lies in a surface, as at depths equal to the thickness, is there
// meant to be that surface.
func (v *solver) takeEven(c *column, lo, hi float64, llo, lhi int32) bool {
	n := len(c.foot)
	l, h := v.numbers(n), v.numbers(n)
	for i := range l {
		l[i], h[i] = lo, hi
	}
	return v.take(c, span{llo, lhi, l, h}, true)
}

// takeCut takes a cutter out of the column: nothing where a plane of it parts
// the two, a stretch where it holds the outline, and otherwise it is no column.
func (v *solver) takeCut(c *column, k *cut) bool {
	const gap = columnGap
	if c.lo.X > k.hi.X+gap || k.lo.X > c.hi.X+gap || c.lo.Y > k.hi.Y+gap || k.lo.Y > c.hi.Y+gap ||
		c.lo.Z > k.hi.Z+gap || k.lo.Z > c.hi.Z+gap {
		return true
	}
	v.cs = slants(v.cs, k.planes, c.p.Frame.W)
	for i := range v.cs {
		h := &v.cs[i]
		apart := true
		for j, p := range c.foot {
			a := h.h.At(p)
			for _, s := range c.spans {
				if a+float64(s.lo[j]*h.rate) < gap || a+float64(s.hi[j]*h.rate) < gap {
					apart = false
					break
				}
			}
			if !apart {
				break
			}
		}
		if apart {
			return true
		}
		h.surf = k.surfs[i]
	}
	n := len(c.foot)
	out := span{lo: v.numbers(n), hi: v.numbers(n)}
	for i, p := range c.foot {
		lo, hi, ilo, ihi, ok := crossing(v.cs, p)
		llo, lhi := int32(-1), int32(-1)
		if ilo >= 0 {
			llo = v.cs[ilo].surf
		}
		if ihi >= 0 {
			lhi = v.cs[ihi].surf
		}
		if !ok || i > 0 && (llo != out.bottom || lhi != out.top) {
			return false
		}
		out.lo[i], out.hi[i], out.bottom, out.top = lo, hi, llo, lhi
	}
	return v.take(c, out, false)
}

// Where an end of a stretch lies against a span.
const (
	endBelow = iota
	endWithin
	endAbove
	endNear // too near an end of the span, or not the same at all corners
)

func endAgainst(w, lo, hi []float64, touch float64) int {
	at := -1
	for i, x := range w {
		p := endNear
		switch {
		case x < lo[i]+touch:
			p = endBelow
		case x > hi[i]-touch:
			p = endAbove
		case x > lo[i]+columnGap && x < hi[i]-columnGap:
			p = endWithin
		}
		if p == endNear || at >= 0 && p != at {
			return endNear
		}
		at = p
	}
	return at
}

// take takes a stretch out of the spans of a column; its surfaces become the
// new ends. touch lets the ends of the stretch lie in those of a span.
func (v *solver) take(c *column, k span, touch bool) bool {
	tol := -columnGap
	if touch {
		tol = SideTest
	}
	for i := 0; i < len(c.spans); i++ {
		s := &c.spans[i]
		lo, hi := endAgainst(k.lo, s.lo, s.hi, tol), endAgainst(k.hi, s.lo, s.hi, tol)
		switch {
		case lo == endNear || hi == endNear:
			return false
		case lo == endAbove || hi == endBelow:
		case lo == endBelow && hi == endAbove:
			c.spans = append(c.spans[:i], c.spans[i+1:]...)
			i--
		case lo == endBelow:
			s.lo, s.bottom = k.hi, k.top
		case hi == endAbove:
			s.hi, s.top = k.lo, k.bottom
		default:
			upper := span{k.top, s.top, k.hi, s.hi}
			s.hi, s.top = k.lo, k.bottom
			c.spans = append(c.spans, span{})
			copy(c.spans[i+2:], c.spans[i+1:])
			c.spans[i+1] = upper
			i++
		}
	}
	return true
}
