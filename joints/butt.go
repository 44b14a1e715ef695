package joints

import "math"

// Butt is the plain joint: B ends at A's inner face and A laps over B's end.
//
// Ends are cut parallel to the other part's face, so that they fit at any
// angle, unless they are left square; at a right angle that is the same.
type Butt struct {
	// LapSquare cuts A's end square to A, instead of parallel to B's outer
	// face. The end then reaches no further than the bevelled one would: at an
	// obtuse corner its inner arris falls short by TA |cos theta|, and unless A
	// runs on by that much a strip of B's end stays bare.
	LapSquare bool
	// EndSquare leaves B's end square to B. It touches A's inner face with one
	// arris only: the inner one where Theta is below 90, else the outer one.
	EndSquare bool
}

// Section divides the corner. Least and Greatest are 0, or with EndSquare the
// widest opening of the wedge.
func (j Butt) Section(c Corner) (Section, error) {
	c, err := c.Sound()
	if err != nil {
		return Section{}, err
	}
	var fs faults
	tA, tB, cos := float64(c.TA), float64(c.TB), c.Cos()
	s := Section{
		Name:  "butt",
		A:     Share{Keep: []Line{bBelow(tB + float64(c.RunOn))}, Why: lapWords(c)},
		B:     Share{Keep: []Line{aBelow(0)}, Why: "ends at the inner face of " + c.nameA()},
		Holds: []Hold{{Kind: "screw", Note: "through " + c.nameA() + " into the end of " + c.nameB()}},
	}
	if j.LapSquare && cos != 0 {
		k := tB + float64(c.RunOn) + math.Min(0, float64(tA*cos))
		s.A.Keep = []Line{{A: cos, B: 1, K: k}}
		s.A.Why += ", its end cut square"
		if float64(tA*math.Abs(cos)) > float64(c.RunOn) {
			s.Void = append(s.Void, Zone{
				// Not bounded by b >= 0: at a sharp corner the wedge of a thick
				// part goes on beside its cavity face.
				Lines: []Line{aAbove(0), aBelow(tA), bBelow(tB), {A: -cos, B: -1, K: -k}},
				Work:  SquareEnd,
				Why:   "square end of " + c.nameA(),
			})
		}
		if cos < 0 && !(k >= tB/4) {
			fs.add("LapSquare", k, tB/4, none, "mm",
				"the square end of "+c.nameA()+" would cover too little of the end of "+c.nameB())
		}
	}
	if j.EndSquare && cos != 0 {
		k := math.Min(0, float64(tB*cos))
		s.B.Keep = []Line{{A: 1, B: cos, K: k}}
		s.B.Why += ", its end left square"
		s.Void = append(s.Void, Zone{
			Lines: []Line{aBelow(0), bAbove(0), bBelow(tB), {A: -1, B: -cos, K: 0 - k}},
			Work:  SquareEnd,
			Why:   "square end of " + c.nameB(),
		})
		open := float64(tB * math.Abs(cos))
		s.Least, s.Greatest = MM(open), MM(open)
		if cos > 0 { // the inner arris touches, so a thinner board opens less
			s.Least = MM(float64(float64(c.LeastB) * cos))
		}
	}
	s = c.Measure(s)
	c.limits(&fs, s)
	if err := fs.err(); err != nil {
		return Section{}, err
	}
	return s, nil
}
