package joints

// Fitted is a joint that can be made with more or less room, so that a test
// piece shows which suits the boards. A butt and a mitre cannot.
type Fitted interface {
	Joint
	// Fit is the joint with the given play, 0 for none. A play that does not go
	// with the rest of it is left for Section to refuse.
	Fit(play MM) Joint
}

// Fit is the housing with another Play; 0 makes it Tight.
func (j Housing) Fit(play MM) Joint {
	j.Play, j.Tight = play, play == 0
	return j
}

// Fit is the comb joint with another Play between its fingers.
func (j Comb) Fit(play MM) Joint {
	j.Play = play
	return j
}

// Fit is the rebate that much wider than its guest is thick, as for a thicker
// guest: the lip stands proud by the play.
func (j Rebate) Fit(play MM) Joint {
	if play == 0 {
		return j
	}
	return wideRebate{j, play}
}

// wideRebate lets its first part run on past the second one.
type wideRebate struct {
	Rebate
	play MM
}

// Section is that of a rebate whose first part runs on further.
func (j wideRebate) Section(c Corner) (Section, error) {
	if !(j.play >= 0 && j.play <= furthest) {
		var fs faults
		fs.within("Play", float64(j.play), 0, furthest, "mm", "a rebate cannot be wider than its guest by that")
		return Section{}, fs.err()
	}
	c.RunOn += j.play
	return j.Rebate.Section(c)
}

// Fit replaces the play.
func (j wideRebate) Fit(play MM) Joint { return j.Rebate.Fit(play) }
