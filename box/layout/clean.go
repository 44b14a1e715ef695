package layout

import (
	"holt.example/box/outline"
	"math"
)

// placed is where a piece of a plan lies.
func (n *nester) placed(p *plan, i int) Placement {
	s := &p.spots[i]
	sh := n.fits.shapes[s.shape]
	c := n.copies[p.who[i]]
	// the shape may stand for another pose or part of the same form
	return Placement{Part: c.part, Copy: c.n, Turn: sh.pose.turn, Over: sh.pose.over, X: s.x, Y: s.y,
		Blank: rect(s.x+sh.x0, s.y+sh.y0, s.x+sh.x1, s.y+sh.y1)}
}

// clean checks the true outlines of a plan, arcs and all: every distance at
// least the gap, nothing outside, nothing on a defect.
func (n *nester) clean(p *plan) bool { return n.dirty(p) < 0 }

// dirty is the index of a spot that breaks a rule, -1 if none does.
func (n *nester) dirty(p *plan) int {
	const slack = 9e-7
	by := make([][]int, len(p.bins))
	for i := range p.spots {
		by[p.spots[i].bin] = append(by[p.spots[i].bin], i)
	}
	for b, list := range by {
		regs := make([]outline.Region, len(list))
		ext := make([]outline.Box, len(list))
		allow := make([]float64, len(list))
		for k, i := range list {
			if p.who[i] < 0 {
				continue
			}
			q := n.placed(p, i)
			regs[k] = n.job.Parts[q.Part].Outline.Transform(q.Map())
			ext[k] = regs[k].Extents()
			allow[k] = n.job.Parts[q.Part].Allowance
			e, a, bn := ext[k], allow[k], p.bins[b]
			if !(e.Min.X-a >= bn.x0-slack && e.Max.X+a <= bn.x1+slack && e.Min.Y-a >= bn.y0-slack && e.Max.Y+a <= bn.y1+slack) {
				return i
			}
		}
		for k, i := range list {
			if p.who[i] < 0 {
				continue
			}
			for j := 0; j < k; j++ {
				if p.who[list[j]] < 0 {
					d := n.fits.shapes[p.spots[list[j]].shape].defect
					if avoids(&n.job.Parts[n.copies[p.who[i]].part], d) {
						r := outline.Region{outline.Rectangle(d.Box.Min.X, d.Box.Min.Y, d.Box.Max.X, d.Box.Max.Y)}
						if !apart(regs[k], r, ext[k], d.Box, allow[k]-slack) {
							return i
						}
					}
					continue
				}
				if !apart(regs[k], regs[j], ext[k], ext[j], n.rules.Gap+allow[k]+allow[j]-slack) {
					return i
				}
			}
		}
	}
	return -1
}

// apart says whether two regions are clear of each other by at least gap; one
// in a hole of the other is. A gap of zero or less lets them touch.
func apart(a, b outline.Region, ea, eb outline.Box, gap float64) bool {
	if !ea.Overlaps(eb, math.Max(gap, 0)) {
		return true
	}
	if gap > 0 {
		if a.DistanceTo(b) < gap {
			return false
		}
	} else if !touching(a, b) {
		return false
	}
	for _, c := range a {
		if b.Contains(c[0].At(), 1e-6) == outline.Inside {
			return false
		}
	}
	for _, c := range b {
		if a.Contains(c[0].At(), 1e-6) == outline.Inside {
			return false
		}
	}
	return true
}

// touching says that no side of one region runs through the material of the
// other by more than rounding.
func touching(a, b outline.Region) bool {
	const deep = 2e-6
	in := func(r, s outline.Region) bool {
		for _, c := range s {
			poly := c.Flatten(0.01)
			for i, p := range poly {
				q := poly[(i+1)%len(poly)]
				for _, k := range [3]float64{0, 0.5, 0.77} {
					m := outline.Point{X: p.X + float64(k*(q.X-p.X)), Y: p.Y + float64(k*(q.Y-p.Y))}
					if r.Contains(m, deep) == outline.Inside && r.Distance(m) > 0.011 {
						return true
					}
				}
			}
		}
		return false
	}
	return !in(a, b) && !in(b, a)
}
