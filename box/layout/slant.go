package layout

import (
	"math"

	"holt.example/box/outline"
)

// ends are the ends of a part that runs the whole width of its board: how far
// the end at the left and at the right leans, as x at the bottom less x at the
// top. Zero is square.
type ends struct{ left, right float64 }

// leans finds the ends of a part in a pose, if it is a quadrilateral between
// two edges along x; holes do no harm.
func leans(p *Part, t pose) (ends, bool) {
	if len(p.Outline) == 0 {
		return ends{}, false
	}
	c := p.Outline[0].Transform(t.turnMap()).Simplify(1e-6)
	for _, k := range p.Outline[1:] {
		if k.Area() > 0 {
			return ends{}, false
		}
	}
	if len(c) != 4 {
		return ends{}, false
	}
	e := c.Extents()
	var lo, hi []outline.Point
	for _, v := range c {
		switch {
		case v.Bulge != 0:
			return ends{}, false
		case v.Y-e.Min.Y <= 1e-6:
			lo = append(lo, v.At())
		case e.Max.Y-v.Y <= 1e-6:
			hi = append(hi, v.At())
		}
	}
	if len(lo) != 2 || len(hi) != 2 {
		return ends{}, false
	}
	l0, l1 := math.Min(lo[0].X, lo[1].X), math.Max(lo[0].X, lo[1].X)
	h0, h1 := math.Min(hi[0].X, hi[1].X), math.Max(hi[0].X, hi[1].X)
	return ends{l0 - h0, l1 - h1}, true
}

// pairing is two parts head to tail, the second to the right of the first.
type pairing struct {
	a, b         int // parts
	poseA, poseB pose
	lean         float64 // x at the bottom less x at the top of the cut between
	length       float64 // over both
	kerf         float64 // along x of the cut between
	height       float64
}

// pair lays two parts head to tail so that they take the least length, and
// reports whether that saves any.
func (c *checked) pair(a, b, stock int, kerf float64) (pairing, bool) {
	pa, pb := &c.job.Parts[a], &c.job.Parts[b]
	s := &c.job.Stock[stock]
	width := s.Width - 2*s.Edge
	best := pairing{length: inf}
	plain := 0.0
	ok := false
	if pa.Allowance > 0 || pb.Allowance > 0 {
		return best, false
	}
	for _, ta := range poses(pa, s) {
		if q, _ := quarter(ta.turn); !q {
			continue
		}
		la, ha := c.size(a, ta)
		ea, good := leans(pa, ta)
		if !good || math.Abs(ha-width) > 1e-3 || math.Abs(ea.right) < 1 {
			continue
		}
		for _, tb := range poses(pb, s) {
			if q, _ := quarter(tb.turn); !q {
				continue
			}
			lb, hb := c.size(b, tb)
			eb, good := leans(pb, tb)
			if !good || math.Abs(hb-width) > 1e-3 || math.Abs(eb.left-ea.right) > 1e-6 {
				continue
			}
			tan := ea.right / ha
			k := float64(kerf * math.Sqrt(1+float64(tan*tan)))
			l := la + lb - math.Abs(ea.right) + k
			if l < best.length-1e-9 {
				best = pairing{a, b, ta, tb, ea.right, l, k, ha}
				plain = la + kerf + lb
				ok = l < plain-1e-6
			}
		}
	}
	return best, ok
}
