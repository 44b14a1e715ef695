package joints

import "math"

// The limits of what can be made.
const (
	// MaxBevel is the steepest bevel that a joint may ask for, from square.
	MaxBevel Deg = 60

	thinnest = 0.5 // mm
	thickest = 1000
	longest  = 100_000 // of an edge
	furthest = 10_000  // of a run-on

	slack = 1e-9 // for comparing angles and lengths with a limit
)

// AlongA is how far the point at the heights a and b lies past the edge,
// measured along A's face: (b + a cos theta) / sin theta.
func (c Corner) AlongA(a, b MM) MM {
	return MM((float64(b) + float64(float64(a)*c.Cos())) / c.Sin())
}

// AlongB is AlongA for B's face: (a + b cos theta) / sin theta.
func (c Corner) AlongB(a, b MM) MM {
	return MM((float64(a) + float64(float64(b)*c.Cos())) / c.Sin())
}

func (c Corner) nameA() string {
	if c.NameA == "" {
		return "the first part"
	}
	return c.NameA
}

func (c Corner) nameB() string {
	if c.NameB == "" {
		return "the second part"
	}
	return c.NameB
}

// Sound fills in what may be left out of a corner, and refuses numbers that no
// corner has. The joints of this package begin with it.
func (c Corner) Sound() (Corner, error) {
	if c.LeastA == 0 {
		c.LeastA = c.TA
	}
	if c.LeastB == 0 {
		c.LeastB = c.TB
	}
	var fs faults
	okA := fs.within("", float64(c.TA), thinnest, thickest, "mm", "the thickness of "+c.nameA()+" is out of range")
	okB := fs.within("", float64(c.TB), thinnest, thickest, "mm", "the thickness of "+c.nameB()+" is out of range")
	if okA {
		fs.within("", float64(c.LeastA), thinnest, float64(c.TA), "mm", "the least thickness of "+c.nameA()+" is out of range")
	}
	if okB {
		fs.within("", float64(c.LeastB), thinnest, float64(c.TB), "mm", "the least thickness of "+c.nameB()+" is out of range")
	}
	c.LeastA, c.LeastB = min(c.LeastA, c.TA), min(c.LeastB, c.TB) // to the last digit
	if !(c.Theta > 0 && c.Theta < 180) {
		fs.add("", float64(c.Theta), 0, 180, "deg", "the parts do not meet at such an angle")
	}
	if !(c.Length > 0 && c.Length <= longest) {
		fs.add("", float64(c.Length), 0, longest, "mm", "the edge has no such length")
	}
	fs.within("", float64(c.RunOn), 0, furthest, "mm", c.nameA()+" cannot run on by that")
	fs.within("", float64(c.ReachA), 0, longest, "mm", "the size of "+c.nameA()+" is out of range")
	fs.within("", float64(c.ReachB), 0, longest, "mm", "the size of "+c.nameB()+" is out of range")
	return c, fs.err()
}

// BevelA is the bevel from square of an end of A along the line, positive
// where A is longer on its outer face: tan = (cos theta - A/B) / sin theta.
func (c Corner) BevelA(l Line) Deg { return c.bevel(l.A, l.B) }

// BevelB is the same for an end of B.
func (c Corner) BevelB(l Line) Deg { return c.bevel(l.B, l.A) }

// bevel takes the line's parts along the own height and the other one. With
// the outward direction of the end N = own nA + other nB, and
// nB = -cos nA + sin uA, it is the angle of N under A's face.
func (c Corner) bevel(own, other float64) Deg {
	return Deg(math.Atan2(float64(other*c.Cos())-own, float64(other*c.Sin())) * 180 / math.Pi)
}

// limits refuses ends too steep for a saw, and parts that would be lost in
// their own ends. What A runs on past B does not count: that is wanted.
func (c Corner) limits(fs *faults, s Section) {
	steep := func(name, other string, bevel Deg) {
		if !(math.Abs(float64(bevel)) <= float64(MaxBevel)+slack) {
			fs.add("", math.Abs(float64(bevel)), 0, float64(MaxBevel), "deg",
				"the bevel of "+name+" where it meets "+other+" is steeper than can be sawn")
		}
	}
	for _, l := range s.A.Keep {
		if l.B > 0 {
			steep(c.nameA(), c.nameB(), c.BevelA(l))
		}
	}
	for _, l := range s.B.Keep {
		if l.A > 0 {
			steep(c.nameB(), c.nameA(), c.BevelB(l))
		}
	}
	on := c.AlongA(0, c.RunOn)
	long := func(name, other string, inner, outer, size MM) {
		far := math.Max(math.Abs(float64(inner)), math.Abs(float64(outer)))
		if size > 0 && !(far <= float64(size)/2+slack) {
			fs.add("", far, none, float64(size)/2, "mm", "where it meets "+other+", "+name+
				" would reach past its edge by more than half its own size "+say(float64(size)))
		}
	}
	long(c.nameA(), c.nameB(), s.A.Inner-on, s.A.Outer-on, c.ReachA)
	long(c.nameB(), c.nameA(), s.B.Inner, s.B.Outer, c.ReachB)
}

// lip is the least that may remain of a part of the given thickness beside a
// rebate or under a housing: 6, or half of a part under 12.
func lip(thickness float64) float64 { return math.Min(6, thickness/2) }

// The lines that occur most.

func aBelow(k float64) Line { return Line{A: 1, K: k} }
func aAbove(k float64) Line { return Line{A: -1, K: 0 - k} }
func bBelow(k float64) Line { return Line{B: 1, K: k} }
func bAbove(k float64) Line { return Line{B: -1, K: 0 - k} }

// rect is the lines a0 <= a <= a1, b0 <= b <= b1.
func rect(a0, a1, b0, b1 float64) []Line {
	return []Line{aAbove(a0), aBelow(a1), bAbove(b0), bBelow(b1)}
}

// proud says in a few words what thinner boards do to a lap.
func proud(c Corner) string {
	if c.LeastB == c.TB {
		return ""
	}
	return ", standing proud by up to " + say(float64(c.TB-c.LeastB)) + " where it is thinner"
}

// lapWords tells how A's end comes about.
func lapWords(c Corner) string {
	s := "laps over " + c.nameB() + " by its thickness " + say(float64(c.TB))
	if c.RunOn > 0 {
		s += " and runs on by " + say(float64(c.RunOn))
	}
	return s + proud(c)
}
