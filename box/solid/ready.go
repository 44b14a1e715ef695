package solid

// prepared is what Ready keeps of a body. It is never changed after that.
type prepared struct {
	base    []Plane  // what it was made from
	cutters []Cutter // likewise
	err     error    // why the base is no solid
	solid   Convex
	lo, hi  Vec // bounds of the solid
	pieces  []Convex
	shell   *shell // base and cutters, not built
}

// Ready is the same body with its base as a solid, its pieces and its bounds
// worked out and kept, for bodies that are asked more than once: every method
// and function gives the same results, only sooner. The result may be copied
// and used by several goroutines at once. Its Prisms may be changed, and so may
// Base and Cutters be replaced or added to, which only loses the gain; but single
// planes in them must be left alone, and what Convex and Pieces return too.
func (b Body) Ready() Body {
	if b.kept() != nil {
		return b
	}
	b.ready = nil
	r := &prepared{base: b.Base, cutters: b.Cutters}
	r.solid, r.lo, r.hi = b.hull()
	r.err = b.fault(r.solid)
	r.pieces = b.Pieces()
	r.shell = b.newShell(r.solid, weldRadii[0])
	b.ready = r
	return b
}

// kept is what Ready has kept, if it is of these planes.
func (b *Body) kept() *prepared {
	r := b.ready
	if r == nil || !same(r.base, b.Base) || !same(r.cutters, b.Cutters) {
		return nil
	}
	return r
}

// same reports whether two slices are the same memory.
func same[T any](a, b []T) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

// hull is the base with its bounds.
func (b Body) hull() (c Convex, lo, hi Vec) {
	if r := b.kept(); r != nil {
		return r.solid, r.lo, r.hi
	}
	c = Intersect(b.Base)
	lo, hi = c.Bounds()
	return c, lo, hi
}
