package outline

import (
	"fmt"
	"math"
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
// SideTest.
func (c Contour) Check() error {
	if f := c.numbers(); f != nil {
		return f
	}
	return nil
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
