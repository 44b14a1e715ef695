package solid

import "math"

// overlapChord is how far round prisms may be off in an overlap, mm. Their
// area is exact all the same.
const overlapChord = 0.01

// Overlap is the volume that two bodies both hold, mm3: their bases have a
// convex intersection, and both sets of cutters and prisms are taken out of
// it. Bodies that merely touch, within SideTest, overlap by exactly 0.
func Overlap(a, b Body) float64 {
	cells := Common(a, b)
	if len(cells) == 0 {
		return 0
	}
	v := VolumeOf(cells)
	if v > 0 && len(a.Prisms)+len(b.Prisms) > 0 {
		cells = lessPrisms(lessPrisms(cells, a.Prisms, overlapChord), b.Prisms, overlapChord)
		v = VolumeOf(cells)
	}
	return v
}

// Common is what two bodies both hold, prisms not taken out, as disjoint convex
// cells; nil when that is nothing.
func Common(a, b Body) []Convex {
	if parted(a.Base, b.Base) {
		return nil
	}
	ca, alo, ahi := a.hull()
	cb, blo, bhi := b.hull()
	if clearOf(alo, ahi, blo, bhi) {
		return nil
	}
	for _, h := range a.Base {
		if !cb.enters(h) {
			return nil
		}
	}
	id := len(a.Base)
	var k clipper
	c := k.within(ca, b.Base, id)
	if c.Empty() {
		return nil
	}
	id += len(b.Base)
	cells := k.less([]Convex{k.keep(c)}, a.Cutters, id)
	for _, h := range a.Cutters {
		id += len(h)
	}
	return k.less(cells, b.Cutters, id)
}

// parted reports whether a face of one solid and a parallel face of the other
// turn their outsides to each other: neighbours in a box, mostly.
func parted(a, b []Plane) bool {
	for _, h := range a {
		for _, g := range b {
			if h.D+g.D <= SideTest && opposite(h.N, g.N) {
				return true
			}
		}
	}
	return false
}

// lessPrisms takes prisms out of cells.
func lessPrisms(cells []Convex, prisms []Prism, chord float64) []Convex {
	var k clipper
	for _, p := range prisms {
		for _, h := range p.cutters(chord) {
			cells = k.less(cells, []Cutter{h}, 1<<30)
		}
	}
	return cells
}

// Bounds is the axis-parallel box around the solid; lo is above hi when the
// solid is empty.
func (c Convex) Bounds() (lo, hi Vec) {
	inf := math.Inf(1)
	lo, hi = Vec{inf, inf, inf}, Vec{-inf, -inf, -inf}
	for i := range c.Faces {
		for _, p := range c.Faces[i].Loop {
			lo.X, hi.X = math.Min(lo.X, p.X), math.Max(hi.X, p.X)
			lo.Y, hi.Y = math.Min(lo.Y, p.Y), math.Max(hi.Y, p.Y)
			lo.Z, hi.Z = math.Min(lo.Z, p.Z), math.Max(hi.Z, p.Z)
		}
	}
	return lo, hi
}

// clearOf reports whether two boxes have nothing in common.
func clearOf(alo, ahi, blo, bhi Vec) bool {
	return alo.X > bhi.X || blo.X > ahi.X || alo.Y > bhi.Y || blo.Y > ahi.Y || alo.Z > bhi.Z || blo.Z > ahi.Z
}
