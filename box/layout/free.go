package layout

import "context"

// Objective says what a free layout is for.
type Objective int

// The objectives. LeastCost buys as little as possible and then leaves the
// largest offcut on the last piece; ShortestLength puts everything on one
// piece of the first stock that is wide enough and uses as little of its
// length as possible.
const (
	LeastCost Objective = iota
	ShortestLength
)

// String is the name of the objective.
func (o Objective) String() string {
	if o == ShortestLength {
		return "shortest length"
	}
	return "least cost"
}

// FreeRules are the rules of a free layout. The zero value packs outlines
// until they touch.
type FreeRules struct {
	Gap    float64 // mm between any two parts: the cutter and a little more; 0 or more
	Margin float64 // mm between any part and the edge of the trimmed stock; 0 or more

	Objective Objective

	// BedLength and BedWidth are the size of the machine's bed along x and y,
	// mm; 0 takes stock of any size. Stock larger than the bed is cut into
	// blanks of the bed's size, and Clamp mm are kept free along each edge of
	// a blank; the gap holds between parts of neighbouring blanks too.
	BedLength, BedWidth float64
	Clamp               float64

	Keep float64 // mm: an offcut is kept if both its sides are at least this; 0 is 100
}

// Free lays true outlines, arcs and holes included, on sheets for a router
// table. Small parts may lie in the openings of large ones. One iteration is
// one layout decoded from an order of the parts if all are rectangles, else
// one round of moving the parts that overlap; the default effort is 2000
// rounds shared by the streams.
//
// The error is Problems, or nil if everything was placed; the layout holds all
// that could be.
func Free(ctx context.Context, job Job, rules FreeRules) (Layout, error) {
	return free(ctx, job, rules)
}
