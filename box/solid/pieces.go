package solid

import "slices"

// Convex is the base of the body as a solid; the face made by Base[i] has the
// ID i. A face with an ID below 0 shows where Base is not bounded.
func (b Body) Convex() Convex {
	if r := b.kept(); r != nil {
		return r.solid
	}
	return Intersect(b.Base)
}

// within is c less all that lies outside the half-spaces; plane i gives the
// face ID id+i.
func (c Convex) within(planes []Plane, id int) Convex {
	for _, h := range planes {
		if _, in := c.sides(h); !in {
			return Convex{}
		}
	}
	var k clipper
	return k.all(c, planes, id).clone()
}

// Split divides c into the part inside all the half-spaces, whose face from
// plane i has the ID i, and convex pieces of the remainder. Where c and the
// half-spaces have nothing in common, inside is empty and rest is c alone. The
// pieces are disjoint and come in the order of the planes.
func Split(c Convex, planes []Plane) (inside Convex, rest []Convex) {
	return split(c, planes, 0, nil)
}

// split appends the remainder to rest; plane i gives the face ID id+i on both
// of its sides.
func split(c Convex, planes []Plane, id int, rest []Convex) (Convex, []Convex) {
	if c.Empty() {
		return c, rest
	}
	in := c.within(planes, id)
	if in.Empty() {
		return in, append(rest, c)
	}
	for i, h := range planes {
		if _, ok := in.FaceOf(id + i); !ok {
			continue // bounds nothing here
		}
		if piece := c.Clip(h.Flip(), id+i); !piece.Empty() {
			rest = append(rest, piece)
		}
		c = c.Clip(h, id+i)
	}
	return in, rest
}

// Pieces is the base less the cutters as disjoint convex pieces; prisms are not
// taken out. A face made by plane j of Cutters[k] has the ID
// len(Base) + (planes of the cutters before k) + j.
func (b Body) Pieces() []Convex {
	if r := b.kept(); r != nil {
		return slices.Clone(r.pieces)
	}
	base := b.Convex()
	if base.Empty() {
		return nil
	}
	return b.lessCutters([]Convex{base}, len(b.Base))
}

// lessCutters takes the cutters of b out of the cells.
func (b Body) lessCutters(cells []Convex, id int) []Convex {
	for _, k := range b.Cutters {
		var next []Convex
		for _, c := range cells {
			_, next = split(c, k, id, next)
		}
		cells, id = next, id+len(k)
	}
	return cells
}

// Subtract takes the body b, without its prisms, out of the cells. What stands
// in a cutter of b stays. Face IDs of the results tell nothing apart.
func Subtract(cells []Convex, b Body) []Convex {
	var out []Convex
	_, lo, hi := b.hull()
	for _, c := range cells {
		if clo, chi := c.Bounds(); clearOf(clo, chi, lo, hi) {
			out = append(out, c)
			continue
		}
		var in Convex
		in, out = split(c, b.Base, 1<<30, out)
		if in.Empty() {
			continue
		}
		// The part of the cell that stands in the cutters: each cutter takes its
		// share out of what the ones before left.
		left := []Convex{in}
		for _, k := range b.Cutters {
			var next []Convex
			for _, p := range left {
				var held Convex
				if held, next = split(p, k, 1<<30, next); !held.Empty() {
					out = append(out, held)
				}
			}
			left = next
		}
	}
	return out
}

// VolumeOf is the sum of the volumes of the cells, mm3.
func VolumeOf(cells []Convex) float64 {
	v := 0.0
	for _, c := range cells {
		v += c.Volume()
	}
	return v
}
