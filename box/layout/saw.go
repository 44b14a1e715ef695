package layout

import "context"

// SawRules are the rules of a saw layout. The zero value saws without kerf,
// in any number of stages, and rips nothing shorter than 300 mm.
type SawRules struct {
	Kerf float64 // mm lost in every cut; 0 or more

	// Stages is the most changes of direction allowed, the cuts that trim the
	// blanks included; 0 is any number.
	Stages int

	// LeastRip is the length, in mm along x, below which no piece is ripped:
	// hands come too near the blade. 0 is 300 (common practice), a negative
	// value rips anything.
	LeastRip float64

	Keep float64 // mm: an offcut is kept if both its sides are at least this; 0 is 100
}

// Saw lays out the bounding rectangles of the parts so that straight cuts from
// edge to edge free them all. The cut list is in [Piece.Steps]. One iteration
// takes some blanks out of the layout and puts them back another way; the
// default effort is 20000 iterations. Where parts repeat, up to half of them go
// into a linear program over patterns of strips (Gilmore and Gomory 1965, from
// memory), whose work is counted in iterations of the same length.
//
// The error is Problems, or nil if everything was placed; the layout holds all
// that could be.
func Saw(ctx context.Context, job Job, rules SawRules) (Layout, error) {
	return saw(ctx, job, rules)
}

// Fill cuts the most valuable set of blanks from one piece of the first usable
// stock: each part up to its quantity, or as often as wanted where Quantity is
// 0. Report.Worth is the value, Report.WorthBound what it cannot exceed. If
// every quantity is 0, there is no limit of stages and the sizes are not too
// many (MostPatterns), the value is the greatest possible for cuts from edge
// to edge, and the report says optimal.
func Fill(ctx context.Context, job Job, rules SawRules) (Layout, error) {
	return fill(ctx, job, rules)
}

// MostPatterns is the most steps for which Fill computes the exact value:
// places of cuts along x times those along y times the longer of the two. Above
// it, Fill searches.
const MostPatterns = 20_000_000_000
