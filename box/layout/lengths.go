package layout

import "context"

// LengthRules are the rules of cutting boards to length. The zero value cuts
// without kerf.
type LengthRules struct {
	Kerf float64 // mm lost in every cut; 0 or more

	// LeastRip is the length, in mm, below which no piece is ripped: hands come
	// too near the blade. Short narrow parts are ripped several in a row, or
	// from a longer piece, and crosscut after that. 0 is 300 (common practice),
	// a negative value rips anything.
	LeastRip float64

	// NoRip refuses parts narrower than their board instead of ripping them.
	NoRip bool

	Keep float64 // mm: an offcut at least this long is kept; 0 is 100
}

// Lengths cuts boards of a given width to length. A part as wide as the board
// is only cut across; a narrower one is ripped too, and its steps say so. Parts
// with one slanted end are paired head to tail where they may be turned so.
// Equal narrow parts come side by side out of one length, and in a row as long
// as the least rip asks for. One iteration is one
// pattern priced, or a share of one that is hard to price, or one step of
// rounding; the default effort is 20000.
//
// The bound holds for this way of cutting: parts side by side and in a row only
// if they are equal, head to tail only in pairs.
//
// Report.Bound is proved by linear programming, and Report.Optimal says
// whether the layout meets it.
//
// The error is Problems, or nil if everything was placed; the layout holds all
// that could be.
func Lengths(ctx context.Context, job Job, rules LengthRules) (Layout, error) {
	return lengths(ctx, job, rules)
}
