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

// Split divides c into the part inside all the half-spaces, whose face from
// plane i has the ID i, and convex pieces of the remainder. Where c and the
// half-spaces have nothing in common, inside is empty and rest is c alone. The
// pieces are disjoint and come in the order of the planes.
func Split(c Convex, planes []Plane) (inside Convex, rest []Convex) {
	var k clipper
	return k.split(c, planes, 0, nil, true)
}

// split appends the remainder to rest; plane i gives the face ID id+i on both
// of its sides. The inside only lasts if want is set.
func (k *clipper) split(c Convex, planes []Plane, id int, rest []Convex, want bool) (Convex, []Convex) {
	if c.Empty() {
		return c, rest
	}
	in := k.within(c, planes, id)
	if in.Empty() {
		return in, append(rest, c)
	}
	// Only planes that bound the inside part pieces from it.
	last := -1
	k.bound = k.bound[:0]
	for i := range planes {
		_, ok := in.FaceOf(id + i)
		k.bound = append(k.bound, ok)
		if ok {
			last = i
		}
	}
	if want {
		in = k.keep(in)
	}
	for i := 0; i <= last; i++ {
		if !k.bound[i] {
			continue
		}
		cur := k.cur // c may be there
		if piece := k.clip(c, planes[i].Flip(), id+i); !piece.Empty() {
			rest = append(rest, k.keep(piece))
		}
		k.cur = cur
		if i < last {
			c = k.clip(c, planes[i], id+i)
		}
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
	var k clipper
	return k.less([]Convex{base}, b.Cutters, len(b.Base))
}

// less takes cutters out of the cells; the first plane of the first gives the
// face ID id.
func (k *clipper) less(cells []Convex, cutters []Cutter, id int) []Convex {
	var next []Convex
	for _, h := range cutters {
		next = next[:0]
		for _, c := range cells {
			_, next = k.split(c, h, id, next, false)
		}
		cells, next = next, cells
		id += len(h)
	}
	return cells
}

// Subtract takes the body b, without its prisms, out of the cells. What stands
// in a cutter of b stays. Face IDs of the results tell nothing apart.
func Subtract(cells []Convex, b Body) []Convex {
	var k clipper
	var out, left, next []Convex
	_, lo, hi := b.hull()
	for _, c := range cells {
		if clo, chi := c.Bounds(); clearOf(clo, chi, lo, hi) {
			out = append(out, c)
			continue
		}
		var in Convex
		in, out = k.split(c, b.Base, 1<<30, out, true)
		if in.Empty() {
			continue
		}
		// The part of the cell that stands in the cutters: each cutter takes its
		// share out of what the ones before left.
		left = append(left[:0], in)
		for _, h := range b.Cutters {
			next = next[:0]
			for _, p := range left {
				var held Convex
				if held, next = k.split(p, h, 1<<30, next, true); !held.Empty() {
					out = append(out, held)
				}
			}
			left, next = next, left
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
