package joints

import "math"

// Rebate lets B's end into a rebate along A's edge; what remains of A there,
// the lip, laps over it.
type Rebate struct {
	// Depth into A's thickness. 0 means half of it in whole millimetres,
	// rounded down, or less where the lip needs it (common practice). The lip,
	// reckoned with the least measured thickness, is at least 6, or half the
	// thickness of a part under 12.
	Depth MM
	// Width across A's face. 0 means B's thickness; less lets only a tongue of
	// B in, on its outer side, and rebates B to match. Where A runs on past B
	// the rebate runs out to A's end all the same; a Housing does not.
	Width MM
	// Through runs the rebate on past B's ends, out of A's: quicker to cut, and
	// open there where A is longer than B.
	Through bool
}

// Section divides the corner. Greatest is what B's thickness may fall short
// of the rebate's width.
func (j Rebate) Section(c Corner) (Section, error) {
	c, err := c.Sound()
	if err != nil {
		return Section{}, err
	}
	var fs faults
	tB := float64(c.TB)
	d, most := float64(j.Depth), float64(c.LeastA)-lip(float64(c.LeastA))
	if d == 0 {
		d = math.Floor(math.Min(float64(c.TA)/2, most) + slack)
		if d == 0 { // card, not boards
			d = most
		}
	} else {
		why := "so shallow a rebate in " + c.nameA() + " is none"
		if d > most {
			why = "the rebate leaves too thin a lip of " + c.nameA() + ", which is " + say(float64(c.LeastA)) + " thick"
		}
		fs.within("Depth", d, math.Min(0.1, most), most, "mm", why)
	}
	w := float64(j.Width)
	if w == 0 {
		w = tB
	} else {
		fs.within("Width", w, lip(float64(c.LeastB))+float64(c.TB-c.LeastB), tB, "mm",
			"the rebate takes a tongue of "+c.nameB()+", which is "+say(tB)+" thick")
	}
	s := Section{
		Name: "rebate",
		A: Share{
			Keep: []Line{bBelow(tB + float64(c.RunOn))},
			Lose: []Zone{{Lines: []Line{aBelow(d), bAbove(tB - w)}, Work: Rebating, Through: j.Through,
				Why: "rebate " + say(d) + " deep and " + say(w+float64(c.RunOn)) + " wide for " + c.nameB()}},
			Why: lapWords(c),
		},
		B: Share{
			Keep: []Line{aBelow(d)},
			Why:  "enters the rebate of " + c.nameA() + " by " + say(d),
		},
		Greatest: c.TB - c.LeastB,
		Holds:    []Hold{{Kind: "glue"}, {Kind: "nail", Note: "through the lip of " + c.nameA()}},
	}
	if w < tB {
		s.B.Lose = []Zone{{Lines: []Line{aAbove(0), bBelow(tB - w)}, Work: Rebating,
			Why: "rebate " + say(tB-w) + " deep and " + say(d) + " wide, leaving a tongue for " + c.nameA()}}
		s.B.Why += " with a tongue of " + say(w)
	}
	s = c.Measure(s)
	c.limits(&fs, s)
	if err := fs.err(); err != nil {
		return Section{}, err
	}
	return s, nil
}
