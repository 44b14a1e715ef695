package joints

import "math"

// Housing lets B's edge into a channel in A, which runs on past it.
type Housing struct {
	// Depth of B in A. 0 means a third of A's thickness, to the nearest half
	// millimetre (common practice), or less in uneven boards. What remains of A
	// under the channel, reckoned with the least measured thickness, is at
	// least 6, or half the thickness of a part under 12.
	Depth MM
	// Play is the room beyond B's outer face, under its end, and at each stop,
	// by which the channel is larger than B; B's inner face touches. A glued
	// joint needs some, so 0 means 0.2; for none at all say Tight.
	Play  MM
	Tight bool // no play: a press fit
	// Swell is further room under B's end alone, for a part that swells and
	// shrinks across its grain, as a floor of solid wood does.
	Swell MM
	// Stop ends the channel that far from both ends of the edge, and B is cut
	// back there to match; 0 lets it run through. StopFrom and StopTo do the
	// same at the start and the end alone, and beat Stop there.
	Stop, StopFrom, StopTo MM
	// Dry leaves out the glue, so that B may swell and shrink.
	Dry bool
}

// DefaultPlay is the play of a housing that does not state one.
const DefaultPlay MM = 0.2

// Section divides the corner. The gap is the play, and Greatest adds what B's
// thickness may fall short. ShortGrain is the wood between the channel and
// A's end: at least a quarter of A's thickness or it is refused, and better
// the whole of it.
func (j Housing) Section(c Corner) (Section, error) {
	c, err := c.Sound()
	if err != nil {
		return Section{}, err
	}
	var fs faults
	tA, least, long := float64(c.TA), float64(c.LeastA), float64(c.Length)

	play := float64(j.Play)
	switch {
	case j.Tight && play != 0:
		fs.add("Play", play, none, 0, "mm", "a tight housing has no play: say one or the other")
	case !j.Tight && play == 0:
		play = float64(DefaultPlay)
	}
	// Two plays and the swelling are less than the depth, so that the tongue
	// never leaves the channel.
	most := least - lip(least)
	ok := fs.within("Play", play, 0, most/3, "mm", "so much room goes ill with a part "+say(tA)+" thick")
	ok = fs.within("Swell", float64(j.Swell), 0, (most-play)/2, "mm", "so much room goes ill with a part "+say(tA)+" thick") && ok
	d := float64(j.Depth)
	if ok {
		lo, hi := math.Max(0.1, math.Max(2*play, float64(j.Swell))), most-play-float64(j.Swell)
		if d == 0 {
			if d = math.Round(tA/3*2) / 2; d == 0 { // card, not boards
				d = tA / 3
			}
			d = math.Min(d, hi)
		}
		why := "the housing is too deep for "
		switch {
		case lo > hi:
			why = "the housing has too much play or swelling for "
		case d < lo:
			why = "the housing is too shallow, or its play too large, for "
		}
		ok = fs.within("Depth", d, lo, hi, "mm", why+c.nameA()+", "+say(tA)+" thick")
	}
	from, to := float64(j.Stop), float64(j.Stop)
	if j.StopFrom != 0 {
		from = float64(j.StopFrom)
	}
	if j.StopTo != 0 {
		to = float64(j.StopTo)
	}
	stops := fs.within("Stop", float64(j.Stop), 0, long, "mm", "the housing cannot stop there")
	stops = fs.within("StopFrom", float64(j.StopFrom), 0, long, "mm", "the housing cannot stop there") && stops
	stops = fs.within("StopTo", float64(j.StopTo), 0, long, "mm", "the housing cannot stop there") && stops
	if ok && stops && from+to > 0 {
		tongue := long - from - to
		if from > 0 {
			tongue -= play
		}
		if to > 0 {
			tongue -= play
		}
		if !(tongue >= d) {
			field := "Stop"
			if j.StopFrom != 0 {
				field = "StopFrom"
			} else if j.StopTo != 0 {
				field = "StopTo"
			}
			fs.add(field, from+to, none, from+to+tongue-d, "mm", "the stops together leave "+say(tongue)+
				" of the edge "+say(long)+" long, and the tongue is to be at least as long as deep")
		}
	}
	if ok && !(float64(c.RunOn)-play >= tA/4-slack) {
		fs.add("RunOn", float64(c.RunOn), tA/4+play, none, "mm", "the housing lies so near the end of "+c.nameA()+
			" that the wood beyond it would shear off: let it run on further, or use a rebate")
	}
	s := j.divide(c, d, play, from, to)
	c.limits(&fs, s)
	if err := fs.err(); err != nil {
		return Section{}, err
	}
	return s, nil
}

// divide is the arithmetic, once the numbers are known to be good.
func (j Housing) divide(c Corner, d, play, from, to float64) Section {
	tB, long := float64(c.TB), float64(c.Length)
	deep := d + play + float64(j.Swell)
	z := Zone{} // the stretch of the channel
	if from > 0 || to > 0 {
		z.From, z.To = MM(math.Inf(-1)), MM(math.Inf(1))
		if from > 0 {
			z.From = MM(from)
		}
		if to > 0 {
			z.To = MM(long - to)
		}
	}
	at := func(z Zone, lines []Line, work Work, why string) Zone {
		z.Lines, z.Work, z.Why = lines, work, why
		return z
	}
	s := Section{
		Name: "housing",
		A: Share{
			Keep: []Line{bBelow(tB + float64(c.RunOn))},
			Lose: []Zone{through(at(z, []Line{aBelow(deep), bAbove(0), bBelow(tB + play)}, Housed,
				"housing "+say(deep)+" deep and "+say(tB+play)+" wide for "+c.nameB()))},
			Why: lapWords(c),
		},
		B: Share{
			Keep: []Line{aBelow(d)},
			Why:  "enters the housing of " + c.nameA() + " by " + say(d),
		},
		Play:       MM(play),
		Least:      MM(play),
		Greatest:   MM(play) + (c.TB - c.LeastB),
		ShortGrain: c.RunOn - MM(play),
	}
	if !j.Dry {
		s.Holds = []Hold{{Kind: "glue"}}
	}
	why := "play of " + c.nameB() + " in " + c.nameA()
	if deep > d {
		s.Void = append(s.Void, at(z, rect(d, deep, 0, tB+play), "", why))
	}
	if play > 0 {
		s.Void = append(s.Void, at(z, rect(0, d, tB, tB+play), "", why))
	}
	// The tongue ends short of the channel by the play.
	stop := func(lose, room Zone, length float64) {
		s.B.Lose = append(s.B.Lose, at(lose, []Line{aAbove(0)}, Shoulders,
			"shoulder "+say(length+play)+" long at the stop of the housing in "+c.nameA()))
		if play > 0 {
			s.Void = append(s.Void, at(room, rect(0, d, 0, tB), "", why))
		}
	}
	if from > 0 {
		stop(Zone{From: MM(math.Inf(-1)), To: MM(from + play)}, Zone{From: MM(from), To: MM(from + play)}, from)
	}
	if to > 0 {
		stop(Zone{From: MM(long - to - play), To: MM(math.Inf(1))}, Zone{From: MM(long - to - play), To: MM(long - to)}, to)
	}
	return c.Measure(s)
}

// through lets a cut run on past the other part, as far as its stops.
func through(z Zone) Zone {
	z.Through = true
	return z
}
