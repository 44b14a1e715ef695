package joints

import "math"

// Mitre joins both parts on the plane from the inner edge to the outer one.
// With parts of different thickness the plane does not halve the angle, but
// both outer faces still end in one arris.
type Mitre struct{}

// Tilts are the bevels of both ends from square:
// tan A = (TB/TA + cos theta) / sin theta, and the same for B the other way
// round. With equal parts both are 90 - theta/2. A negative one says that the
// mitre reverses: the part is then longer on its inner face.
func (Mitre) Tilts(c Corner) (a, b Deg) {
	tilt := func(own, other MM) Deg {
		return Deg(math.Atan2(float64(other)/float64(own)+c.Cos(), c.Sin()) * 180 / math.Pi)
	}
	return tilt(c.TA, c.TB), tilt(c.TB, c.TA)
}

// Section divides the corner. There is no gap: the inner faces meet, and where
// boards are thinner than cut for, the outer faces are a little out of line.
func (j Mitre) Section(c Corner) (Section, error) {
	c, err := c.sound()
	if err != nil {
		return Section{}, err
	}
	var fs faults
	tA, tB := float64(c.TA), float64(c.TB)
	if c.RunOn > 0 {
		fs.add("", float64(c.RunOn), none, 0, "mm", "a mitred part cannot run on past the other")
	}
	tiltA, tiltB := j.Tilts(c)
	one := func(name, other string, tilt Deg) {
		switch {
		case tilt > MaxBevel+slack:
			fs.add("", float64(tilt), 0, float64(MaxBevel), "deg", "the mitre on "+name+" is steeper than can be sawn")
		case !(tilt >= 0):
			fs.add("", float64(tilt), 0, float64(MaxBevel), "deg",
				"the mitre reverses: "+name+" is too thick for "+other+" at "+say(float64(c.Theta))+" degrees")
		}
	}
	one(c.nameA(), c.nameB(), tiltA)
	one(c.nameB(), c.nameA(), tiltB)
	s := c.Measure(Section{
		Name:  "mitre",
		A:     Share{Keep: []Line{{A: -tB, B: tA}}, Why: "is mitred with " + c.nameB() + " at " + say(float64(tiltA)) + " degrees"},
		B:     Share{Keep: []Line{{A: tB, B: -tA}}, Why: "is mitred with " + c.nameA() + " at " + say(float64(tiltB)) + " degrees"},
		Ends:  [2]Order{Mitred, Mitred},
		Holds: []Hold{{Kind: "glue"}},
	})
	c.reaches(&fs, s)
	if err := fs.err(); err != nil {
		return Section{}, err
	}
	return s, nil
}
