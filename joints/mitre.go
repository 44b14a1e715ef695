package joints

// Mitre joins both parts on the plane from the inner edge to the outer one:
// TA b = TB a. With parts of different thickness the plane does not halve the
// angle, but both outer faces still end in one arris. The bevels are
// tan A = (TB/TA + cos theta) / sin theta, and the same for B the other way
// round; with equal parts both are 90 - theta/2.
type Mitre struct{}

// Section divides the corner. There is no gap: the inner faces meet, and where
// boards are thinner than cut for, the outer faces are a little out of line.
//
// A mitre that reverses, TB/TA < -cos theta either way round, is refused: the
// thicker part would be longer on its inner face than on its outer one.
func (j Mitre) Section(c Corner) (Section, error) {
	c, err := c.Sound()
	if err != nil {
		return Section{}, err
	}
	var fs faults
	if c.RunOn > 0 {
		fs.add("RunOn", float64(c.RunOn), none, 0, "mm", "a mitred part cannot run on past the other")
	}
	tA, tB := float64(c.TA), float64(c.TB)
	endA, endB := Line{A: -tB, B: tA}, Line{A: tB, B: -tA}
	bevelA, bevelB := c.BevelA(endA), c.BevelB(endB)
	reverses := func(bevel Deg, name, other string) {
		if !(bevel >= 0) {
			fs.add("", float64(bevel), 0, float64(MaxBevel), "deg",
				"the mitre reverses: "+name+" is too thick for "+other+" at "+say(float64(c.Theta))+" degrees")
		}
	}
	reverses(bevelA, c.nameA(), c.nameB())
	reverses(bevelB, c.nameB(), c.nameA())
	s := c.Measure(Section{
		Name:  "mitre",
		A:     Share{Keep: []Line{endA}, Why: "is mitred with " + c.nameB() + " at " + say(float64(bevelA)) + " degrees"},
		B:     Share{Keep: []Line{endB}, Why: "is mitred with " + c.nameA() + " at " + say(float64(bevelB)) + " degrees"},
		Ends:  [2]Order{Mitred, Mitred},
		Holds: []Hold{{Kind: "glue"}},
	})
	c.limits(&fs, s)
	if err := fs.err(); err != nil {
		return Section{}, err
	}
	return s, nil
}
