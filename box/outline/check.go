package outline

import (
	"fmt"
	"math"
	"slices"
)

// FaultKind says what is wrong with a contour.
type FaultKind int

// The faults of contours and regions.
const (
	TooFewVertices FaultKind = iota + 1 // fewer than three, or two without an arc
	NotFinite                           // NaN, an infinity, or beyond Limit
	BulgeRange                          // a bulge beyond -1 to 1
	ZeroLength                          // a side shorter than SideTest
	Crossing                            // sides cross, touch or overlap
	WrongSense                          // clockwise where material is, or the reverse
	NoArea                              // encloses nothing
	WrongNesting                        // contours of a region do not alternate
)

var faultWords = [...]string{
	TooFewVertices: "too few vertices",
	NotFinite:      "a number that is not finite or too large",
	BulgeRange:     "a bulge beyond -1 to 1",
	ZeroLength:     "a side without length",
	Crossing:       "sides that cross or touch",
	WrongSense:     "the wrong sense",
	NoArea:         "no area",
	WrongNesting:   "contours that do not nest as material and holes",
}

// String is the fault in words.
func (k FaultKind) String() string {
	if k > 0 && int(k) < len(faultWords) {
		return faultWords[k]
	}
	return "unknown fault"
}

// Fault is what Check finds: the first fault, with the contour and the sides
// (numbered by the vertex they leave) that show it, and where.
type Fault struct {
	Kind           FaultKind
	Contour, Other int // index in the region; 0 for a lone contour
	Side, With     int // index of the side or vertex, and of the second one
	At             Point
}

// Error says the fault in one line.
func (f *Fault) Error() string {
	return fmt.Sprintf("outline: contour %d, side %d: %v near (%.4f, %.4f)", f.Contour, f.Side, f.Kind, f.At.X, f.At.Y)
}

// Limit is the largest coordinate, in mm either way, that contours are checked
// and combined for: a hundred metres, where float64 still resolves 1e-11 mm.
const Limit = 1e5

// Check reports the first fault as a *Fault, or nil: enough vertices, finite
// numbers within Limit, bulges from -1 to 1 (a full circle is two half circles,
// so that every arc has one shape and one direction), no side shorter than
// SideTest, no two
// sides that meet but neighbours at their common vertex, and some area. Either
// sense is good; CheckOuter and CheckHole ask for one.
func (c Contour) Check() error {
	if f := c.check(); f != nil {
		return f
	}
	return nil
}

func (c Contour) check() *Fault {
	if f := c.numbers(); f != nil {
		return f
	}
	if f := c.crosses(); f != nil {
		return f
	}
	if !(math.Abs(c.Area()) > float64(SideTest*c.Length())) {
		return &Fault{Kind: NoArea, At: c[0].At()}
	}
	return nil
}

// CheckOuter is Check, and the contour must be anticlockwise.
func (c Contour) CheckOuter() error { return c.checkSense(1) }

// CheckHole is Check, and the contour must be clockwise.
func (c Contour) CheckHole() error { return c.checkSense(-1) }

func (c Contour) checkSense(sign float64) error {
	f := c.check()
	if f == nil && float64(sign*c.Area()) < 0 {
		f = &Fault{Kind: WrongSense, At: c[0].At()}
	}
	if f != nil {
		return f
	}
	return nil
}

// crosses finds two sides that meet elsewhere than neighbours may.
func (c Contour) crosses() *Fault {
	n := len(c)
	segs, boxes := make([]seg, n), make([]Box, n)
	for i := range c {
		segs[i] = c.side(i)
		boxes[i] = segs[i].box()
	}
	var fault *Fault
	var buf []Point
	pairs(boxes, SideTest, nil, func(i, j int) bool {
		buf = meet(buf[:0], &segs[i], &segs[j], SideTest)
		for _, p := range buf {
			if j == i+1 && gap(p, segs[j].a) <= 2*SideTest || i == 0 && j == n-1 && gap(p, segs[0].a) <= 2*SideTest {
				continue
			}
			fault = &Fault{Kind: Crossing, Side: i, With: j, At: p}
			return false
		}
		return true
	})
	return fault
}

// Check checks every contour and that together they are a region: no two meet
// but at single points, material is anticlockwise, holes are clockwise, and they
// alternate. An empty region is good.
func (r Region) Check() error {
	if f := r.check(); f != nil {
		return f
	}
	return nil
}

func (r Region) check() *Fault {
	var segs []seg
	var boxes []Box
	var first []int
	for i, c := range r {
		if f := c.check(); f != nil {
			f.Contour, f.Other = i, i
			return f
		}
		first = append(first, len(segs))
		for j := range c {
			s := c.side(j)
			segs, boxes = append(segs, s), append(boxes, s.box())
		}
	}
	owner := func(k int) int {
		i, ok := slices.BinarySearch(first, k)
		if !ok {
			i--
		}
		return i
	}
	if len(r) < 2 {
		if len(r) == 1 && r[0].Area() < 0 {
			return &Fault{Kind: WrongSense, At: r[0][0].At()}
		}
		return nil
	}
	g := arrange(segs, nil, SideTest)
	g.wind()
	if len(g.pieces) > 0 && g.balanced() && g.sound() && !g.shared(segs) {
		return nil
	}
	// Something is wrong; say what.
	var fault *Fault
	var buf []Point
	pairs(boxes, SideTest, nil, func(i, j int) bool {
		a, b := owner(i), owner(j)
		if a == b {
			return true
		}
		if buf = crossings(buf[:0], &segs[i], &segs[j], 0); len(buf) == 0 {
			buf = meet(buf, &segs[i], &segs[j], SideTest)
			if len(buf) < 2 || gap(buf[0], buf[1]) <= 2*SideTest {
				return true
			}
		}
		fault = &Fault{Kind: Crossing, Contour: a, Other: b, Side: i - first[a], With: j - first[b], At: buf[0]}
		return false
	})
	if fault != nil {
		return fault
	}
	for i, c := range r {
		w := 0
		p := c.side(0).mid()
		for j, d := range r {
			if i != j && d.Extents().Overlaps(Box{p, p}, 0) {
				w += winding(d.sides(), p)
			}
		}
		switch {
		case w == 0 && c.Area() < 0, w == 1 && c.Area() > 0:
			return &Fault{Kind: WrongSense, Contour: i, Other: i, At: c[0].At()}
		case w < 0 || w > 1:
			return &Fault{Kind: WrongNesting, Contour: i, Other: i, At: c[0].At()}
		}
	}
	return &Fault{Kind: WrongNesting}
}

// numbers checks vertex by vertex.
func (c Contour) numbers() *Fault {
	arcs := false
	for i, v := range c {
		if !(math.Abs(v.X) <= Limit && math.Abs(v.Y) <= Limit && finite(v.Bulge)) {
			return &Fault{Kind: NotFinite, Side: i, At: v.At()}
		}
		if !(math.Abs(v.Bulge) <= 1+1e-9) {
			return &Fault{Kind: BulgeRange, Side: i, At: v.At()}
		}
		arcs = arcs || math.Abs(v.Bulge) >= flat
	}
	if len(c) < 2 || len(c) == 2 && !arcs {
		f := &Fault{Kind: TooFewVertices}
		if len(c) > 0 {
			f.At = c[0].At()
		}
		return f
	}
	for i := range c {
		if s := c.side(i); !(gap(s.a, s.b) > SideTest) {
			return &Fault{Kind: ZeroLength, Side: i, With: (i + 1) % len(c), At: s.a}
		}
	}
	return nil
}
