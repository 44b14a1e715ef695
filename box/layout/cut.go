package layout

import (
	"fmt"
	"math"

	"holt.example/box/outline"
)

// Cut is a node of the tree of cuts: a rectangle of stock and what becomes of
// it. If it is divided, parallel cuts from edge to edge part it into Into, in
// order from the left or from the bottom; a full kerf lies between neighbours.
type Cut struct {
	Box   outline.Box
	Rip   bool  // divided along x (cuts at some y); else across, at some x
	Into  []Cut // nil: not divided
	Place int   // index in Piece.Placements + 1 of the part whose blank this is; 0: waste or offcut
	Trim  bool  // waste that is only cut off to square an edge

	// Slant is the lean of the one cut between a pair head to tail, in degrees
	// from square, positive if the cut runs to the left on its way up. The
	// boxes of the pair overlap by the run of the cut. 0 is square.
	Slant float64
}

// StepKind says what a step of the cut list is.
type StepKind int

// The kinds of steps. A rip runs along the length of the stock (x), a crosscut
// across it; a trim is either, and only cleans an edge.
const (
	Rip StepKind = iota + 1
	Crosscut
	TrimRip
	TrimCrosscut
)

// String is the kind in a word or two.
func (k StepKind) String() string {
	switch k {
	case Rip:
		return "rip"
	case Crosscut:
		return "crosscut"
	case TrimRip:
		return "trim rip"
	case TrimCrosscut:
		return "trim crosscut"
	}
	return "none"
}

// Step is a cut as it is made.
type Step struct {
	Number  int // from 1 on each piece of stock
	Kind    StepKind
	From    string  // the piece it is made on: "1" is the stock itself, "1.2" the second piece off it
	Off     string  // the piece that comes off at the fence or stop, "" for waste
	Setting float64 // mm: width or length of what comes off, as set on fence or stop; kerf not included
	At      float64 // mm from the edge of the piece as it then lies: the left edge (of a slanted cut, along the bottom), or the bottom one
	Long    float64 // mm: the length of the cut
	Same    bool    // fence or stop stay as they were for the step before
	Slant   float64 // degrees by which a crosscut leans to the left on its way up; 0 for square
	Place   int     // index in Piece.Placements + 1 of the part that comes off; 0 if none
	Frees   int     // the same for the part that is left when the last cut of a piece is made
	Left    string  // the name that what is left then goes by, where it is cut on; else ""
}

// String is the step as a line of a cut list.
func (s Step) String() string {
	edge := "left"
	if s.Kind == Rip || s.Kind == TrimRip {
		edge = "bottom"
	}
	out := fmt.Sprintf("%d %s piece %s at %.1f from the %s edge", s.Number, s.Kind, s.From, s.At, edge)
	if s.Slant != 0 {
		side := "left"
		if s.Slant < 0 {
			side = "right"
		}
		out += fmt.Sprintf(", measured along the bottom, leaning %.1f degrees to the %s", math.Abs(s.Slant), side)
	}
	if s.Same {
		out += ", same setting"
	}
	return out
}
