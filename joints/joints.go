package joints

import "math"

// MM is a length in millimetres.
type MM float64

// Deg is an angle in degrees.
type Deg float64

// Inch converts inches to millimetres (1 in = 25.4 mm exactly, the
// international inch of 1959).
func Inch(x float64) MM { return MM(x * 254 / 10) } // so that 1.5 gives 38.1 to the last digit

// Joint says how two parts share the corner where their slabs meet. The
// interface is open: a joint of your own needs this one method.
//
// Section returns a *Fault (or several, joined with errors.Join) when the
// joint cannot be made at this corner.
type Joint interface{ Section(Corner) (Section, error) }

// Corner is the place where two parts meet. With a and b the heights of a
// point above the two inner faces, the cavity is a<0, b<0 and the slabs cross
// in the rectangle 0<=a<=TA, 0<=b<=TB. The first part, A, is the one that laps
// over the second. In a and b the rectangle is the same at every angle.
type Corner struct {
	TA, TB         MM  // thicknesses to cut for: the most that was measured, 0.5 to 1000
	LeastA, LeastB MM  // least measured thicknesses; 0 means TA, TB: one value
	Theta          Deg // angle between the inner faces, inside the cavity, above 0 and below 180
	Length         MM  // of the edge where both parts stand, above 0
	RunOn          MM  // how far A runs on past B's outer face, 0 = flush
	ReachA, ReachB MM  // size of each part away from the edge; 0 is not known, and not asked about
	// NameA and NameB are the parts' names, for messages and lists; "" reads
	// "the first part" and "the second part".
	NameA, NameB string
}

// Cos is the cosine of Theta, exactly 0 at a right angle.
func (c Corner) Cos() float64 {
	if c.Theta == 90 {
		return 0
	}
	return math.Cos(float64(c.Theta) * math.Pi / 180)
}

// Sin is the sine of Theta.
func (c Corner) Sin() float64 { return math.Sin(float64(c.Theta) * math.Pi / 180) }

// Line keeps the points with A*a + B*b <= K, in the heights of a Corner.
type Line struct{ A, B, K float64 }

// Work names what is cut, in the words of the trade.
type Work string

// The kinds of work that joints ask for.
const (
	Rebating  Work = "rebate"  // along the edge of the part, open to the side
	Housed    Work = "housing" // a channel that takes the other part's edge
	Notching  Work = "notch"   // through the whole thickness, open to the edge
	Shoulders Work = "shoulder"
)

// SquareEnd marks a void beside an end that is left square; any other void of a
// section is play.
const SquareEnd Work = "square end"

// Zone is a convex piece of the corner: the points on the inner side of all
// Lines and, along the edge, between From and To. From = To = 0 means the
// whole edge, and an infinite end is open. It is left open where the part's
// own surface bounds it.
type Zone struct {
	Lines    []Line
	From, To MM
	Work     Work   // what a part loses it to; of a void, SquareEnd or "" for play
	Through  bool   // the cut runs on past the other part's end; else it ends there
	Why      string // in words, for lists and messages
}

// Share is what one of the two parts gets of the corner.
type Share struct {
	Keep []Line // all hold
	Lose []Zone // cut out of it
	// Inner and Outer are how far the part reaches past the edge of its cavity
	// face, measured along its inner face and along its outer one from the
	// same place, before anything is cut out of it. Negative: it falls short.
	// Corner.Measure works them out from Keep.
	Inner, Outer MM
	Why          string // e.g. "laps over by its neighbour's thickness"
}

// Order says who laps over whom at an end of the edge.
type Order int

// The orders. The zero value is the usual one.
const (
	ALaps  Order = iota // A runs on past B
	BLaps               // B runs on past A
	Mitred              // they meet on a slanting plane
)

// Hold says what keeps the joint together.
type Hold struct {
	Kind string // "glue", "screw", "nail"; of what opens "hinge", "pivot", "loose screw"
	Note string
	// Of screws and nails, where they are known: how many, their size, and the
	// largest distance between two in mm. The joints of this package leave them 0.
	Count            int
	Diameter, Length MM
	Spacing          MM
}

// Section is the division of the corner. Shares and Void together fill the
// rectangle TA x TB exactly, at every place along the edge.
type Section struct {
	Name            string // "butt", "rebate" ...
	A, B            Share
	Void            []Zone   // left empty on purpose: play, square ends
	Ends            [2]Order // at the start and the end of the edge
	Play            MM       // largest distance across which the parts count as touching
	Least, Greatest MM       // gap over the measured range of thickness
	// ShortGrain is the wood left between a channel and the end of A; 0 where
	// there is no channel. Under A's thickness it is worth a finding.
	ShortGrain MM
	Holds      []Hold
}

// Fault says which field of a joint is wrong at this corner.
type Fault struct {
	// Field is the name of the joint's field, "RunOn" for how far A runs on,
	// which is no doing of the joint's, "" for the joint as a whole.
	Field string
	// Got is the value, NaN where there is none. Lo and Hi are the allowed
	// range: NaN or infinite where there is no bound, both 0 where none.
	Got, Lo, Hi float64
	Unit        string // "mm", "deg", "mm2", "" for a count
	Why         string
}
