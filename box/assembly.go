package box

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box/solid"
)

// Assembly is an order in which the parts of a box go together. Each step
// brings one part, or a few that were put together before, home by one
// straight move.
type Assembly struct {
	Steps []Step
	// Captive are sets of parts that hold one another: no straight move parts
	// any of them from the others. The steps then take such a set for one piece.
	// Empty when the box goes together.
	Captive [][]Part
}

// Step is one step of an assembly.
type Step struct {
	// Parts come home in this step, together if they are several. In plan order.
	// Of a made-up part they are its strips and loose tongues.
	Parts []Part
	// Made is the made-up part that is put together in this step, "" in all others.
	Made Part
	// Onto are the parts put together before that they are brought to. It is
	// empty where something new begins: at the first step, where several parts are
	// put together by themselves before they move as one, and where another thing
	// stands in the plan that no joint ties to those before.
	Onto []Part
	// Move is the direction of the last, straight piece of the way home, a unit
	// vector; zero where something begins.
	Move Direction
	// Way is Move in words: "down", "to the right", "down and a little to the
	// back, square to its face". Left and right are those of the box, seen from
	// the front.
	Way string
	// Seams close in this step; Seam.Holds says with what. In plan order.
	Seams []Seam
	// Check is what a tape should read once this step is done: the diagonals
	// over the walls' lower edge, in the step that closes the ring of the walls.
	Check []Diagonal

	what, onto []Part // Parts and Onto with made-up parts as one
}

// Diagonal is a distance between two outer corners of the walls' lower edge,
// each named by the two walls that meet there.
type Diagonal struct {
	From, To [2]Part
	Length   MM
}

// ringCorner is an outer corner of the walls' lower edge.
type ringCorner struct {
	a, b Part
	at   [2]float64
}

// Assembly works out how the parts go together: by straight moves, single
// parts before groups of parts. Parts given in made are one piece from the
// start, as when a carcass is glued already; each part may be in one of them.
// Strips are put together into their part before it comes home, the boards of
// dry boarding too: a step of its own, unless they are in made.
//
// The answer is exact for the parts as drawn: joints count, openings count only
// where another part stands in them. Glue, screws and hinges are not seen, nor
// are turns: parts that would have to be twisted in count as captive. A set of
// captive parts is a Problem with the code "captive" and the parts' names; the
// assembly is returned with it all the same.
//
// It takes a few milliseconds and is worked out anew each time.
func (p *Plan) Assembly(made ...[]Part) (Assembly, error) {
	a, err := newAssembler(p, made)
	if err != nil {
		return Assembly{}, err
	}
	a.findWhole()
	for _, in := range a.apart() {
		a.build(in)
	}
	out := Assembly{Steps: a.steps, Captive: a.captive}
	p.addChecks(out.Steps)
	if len(out.Captive) == 0 {
		return out, nil
	}
	var ps Problems
	for _, c := range out.Captive {
		ps = append(ps, Problem{Path: "Joints", Code: "captive", Got: joinParts(c, ", "),
			Why: "these parts hold one another: no straight move brings any of them home while the others are in place",
			Try: "a butt or a rebate for one of them, or a housing that runs out to one end"})
	}
	return out, ps
}

// addChecks puts the diagonals into the step that closes the ring of walls.
func (p *Plan) addChecks(steps []Step) {
	var ds []Diagonal
	n := len(p.ring)
	for i := range p.ring {
		// Across an even ring the opposite corner, each pair once; across an odd one
		// the next to it.
		if n < 4 || n%2 == 0 && i >= n/2 {
			break
		}
		a, b := p.ring[i], p.ring[(i+n/2)%n]
		ds = append(ds, Diagonal{[2]Part{a.a, a.b}, [2]Part{b.a, b.b}, MM(math.Hypot(b.at[0]-a.at[0], b.at[1]-a.at[1]))})
	}
	for _, c := range p.ring {
		if _, ok := p.Piece(c.a); !ok {
			ds = nil // an open side: there are no corners to measure from
		}
	}
	for k := range steps {
		in := map[Part]bool{}
		for _, q := range append(append([]Part(nil), steps[k].Parts...), steps[k].Onto...) {
			in[q] = true
			in[p.pieces[p.index[q]].Of] = true
		}
		closed := len(ds) > 0
		for _, c := range p.ring {
			closed = closed && in[c.a]
		}
		if closed {
			steps[k].Check = ds
			return
		}
	}
}

// String is the step in words: "Add left, moving it to the right".
func (s Step) String() string {
	parts, onto := s.what, s.onto
	if parts == nil {
		parts, onto = s.Parts, s.Onto
	}
	what := joinParts(parts, " and ")
	switch {
	case s.Made != "":
		return "Make up " + string(s.Made) + " from " + joinParts(s.Parts, " and ")
	case len(s.Onto) == 0 && len(parts) == 1:
		return "Begin with " + what
	case len(s.Onto) == 0:
		return "Begin with " + what + " as one piece"
	case len(parts) == 1:
		return "Add " + what + ", moving it " + s.Way
	}
	return "Join " + what + " as one piece to " + joinParts(onto, " and ") + ", moving them " + s.Way
}

// joinParts lists names, the last one after the word given.
func joinParts(ps []Part, last string) string {
	var b strings.Builder
	for i, p := range ps {
		switch {
		case i == 0:
		case i == len(ps)-1:
			b.WriteString(last)
		default:
			b.WriteString(", ")
		}
		b.WriteString(string(p))
	}
	return b.String()
}

// wayWords says a direction in the words of someone before the box.
func wayWords(d solid.Vec) string {
	type part struct {
		size float64
		word string
	}
	name := func(x float64, plus, minus string) part {
		if x < 0 {
			return part{-x, minus}
		}
		return part{x, plus}
	}
	ws := []part{name(d.Z, "up", "down"), name(d.Y, "to the back", "to the front"), name(d.X, "to the right", "to the left")}
	for i := range ws { // three: by size, the largest first
		for k := i; k > 0 && ws[k].size > ws[k-1].size+1e-9; k-- {
			ws[k], ws[k-1] = ws[k-1], ws[k]
		}
	}
	out := ws[0].word
	for i, w := range ws[1:] {
		switch {
		case !(w.size > 0.01):
			return out
		case i == 0 && ws[2].size > 0.01:
			out += ", "
		default:
			out += " and "
		}
		if w.size < ws[0].size/2 {
			out += "a little "
		}
		out += w.word
	}
	return out
}

// unknownMade reports parts of made that do not exist or occur twice.
func unknownMade(p *Plan, made [][]Part) error {
	var ps Problems
	seen := map[Part]bool{}
	for i, g := range made {
		for k, q := range g {
			path := fmt.Sprintf("made[%d][%d]", i, k)
			if _, ok := p.index[q]; !ok {
				ps = append(ps, Problem{Path: path, Code: "unknown-part", Got: fmt.Sprintf("%.60q", string(q)), Why: "the plan has no such part"})
			} else if seen[q] {
				ps = append(ps, Problem{Path: path, Code: "twice", Got: string(q), Why: "the part is in one piece already"})
			}
			seen[q] = true
		}
	}
	if len(ps) > 0 {
		return ps
	}
	return nil
}
