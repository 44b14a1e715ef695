package layout

import "context"

// LengthRules are the rules of cutting boards to length. The zero value cuts
// without kerf.
type LengthRules struct {
	Kerf float64 // mm lost in every cut; 0 or more

	// NoRip refuses parts narrower than their board instead of ripping them.
	NoRip bool

	Keep float64 // mm: an offcut at least this long is kept; 0 is 100
}

// Lengths cuts boards of a given width to length. A part as wide as the board
// is only cut across; a narrower one is ripped too, and its steps say so. Parts
// with one slanted end are paired head to tail where they may be turned so.
// Equal narrow parts come side by side out of one length. One iteration is one
// pattern priced or one step of rounding; the default effort is 20000.
//
// The bound holds for this way of cutting: parts side by side only if they are
// equal, head to tail only in pairs.
//
// Report.Bound is proved by linear programming, and Report.Optimal says
// whether the layout meets it.
//
// The error is Problems, or nil if everything was placed; the layout holds all
// that could be.
func Lengths(ctx context.Context, job Job, rules LengthRules) (Layout, error) {
	return lengths(ctx, job, rules)
}
