package joints

import "math"

// Measure fills in the four reaches, Inner and Outer of both shares, which
// follow from the lines that are kept.
func (c Corner) Measure(s Section) Section {
	cos, sin := c.Cos(), c.Sin()
	reach := func(keep []Line, thick MM, swap bool) (inner, outer MM) {
		t := float64(thick)
		return MM(ends(keep, 0, swap) / sin), MM((ends(keep, t, swap) + float64(t*cos)) / sin)
	}
	s.A.Inner, s.A.Outer = reach(s.A.Keep, c.TA, false)
	s.B.Inner, s.B.Outer = reach(s.B.Keep, c.TB, true)
	return s
}

// ends is the largest height over the other part's inner face that the lines
// leave at the given height over the part's own; infinite without a bound.
func ends(keep []Line, own float64, swap bool) float64 {
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
