package box

// Outer is something fixed to the outside of the box, placed by what it is fixed
// to: Batten, SplitBatten, Feet, PoleSocket, Strap; CoverStrip, RidgeCap, Felt;
// LandingBoard, EntrancePlate, Tunnel. Its parts are named free/NAME.
type Outer interface{ outer() }

// maker is an inner or an outer element that brings itself down to parts,
// coverings and what is bought for it.
type maker interface {
	// names lists the parts that it makes.
	names(d *Design) []made
	// on lists the parts of the shell that it names.
	on(s *shell) []onPart
	// check looks at its numbers before there is a shape to hold against them.
	check(d *Design, c *collector, path string)
	// build makes the parts. What goes wrong is a problem.
	build(s *shell, m *making)
}

// asMaker refuses pointers, which may be nil and are no values.
func asMaker(x any) (maker, bool) {
	m, ok := x.(maker)
	return m, ok && !isPointer(x)
}

// made is the name of a part to be made, and the field that gives it.
type made struct{ field, name string }

// making is what a maker works with.
type making struct {
	path  string  // of the element in the design
	side  CutSide // FromInner: it stands inside the box, and its parts are inner parts
	parts []*part // all made so far, those of the shell first
}

// part is the full name of a part to be made.
func (m *making) part(name string) Part {
	if m.side == FromInner {
		return InnerPart(name)
	}
	return FreePart(name)
}

// put takes in a finished part.
func (m *making) put(p *part) *part {
	m.parts = append(m.parts, p)
	return p
}

// host is the part of the shell with the given name, nil where the face is open.
func (m *making) host(name Part) *part {
	for _, p := range m.parts {
		if p.at >= 0 && p.face.part == name {
			return p
		}
	}
	return nil
}

// made1 is a single part.
func made1(name string) []made { return []made{{".Name", name}} }
