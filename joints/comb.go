package joints

import "math"

// Owner says which part has a finger of a comb joint.
type Owner int

// The owners.
const (
	Unsaid Owner = iota // A's, which the pattern allows only with an odd count
	OwnerA              // the part that laps over
	OwnerB              // the other one
)

// Comb interlocks both ends with fingers through the whole thickness.
//
// The fingers divide Length into equal stretches from the start of the edge;
// the first and the last one go on past its ends.
type Comb struct {
	// Fingers of both parts together. 0 means an odd count, at least 3, that
	// makes them about one and a half times as wide as the thicker part is
	// thick. They are at least a quarter of that thickness wide.
	Fingers int
	// Play is the room between neighbouring fingers, half taken from each; 0
	// is none. The fingers' ends have no play.
	Play MM
	// First owns the finger at the start of the edge. An even count, which
	// starts and ends with different parts, must say so; with an odd count A
	// has it unless B is named.
	First Owner
}

// Section divides the corner. The gap is the play; where boards are thinner
// than cut for, the fingers stand proud.
func (j Comb) Section(c Corner) (Section, error) {
	c, err := c.Sound()
	if err != nil {
		return Section{}, err
	}
	var fs faults
	if c.RunOn > 0 {
		fs.add("RunOn", float64(c.RunOn), none, 0, "mm", "a part of a comb joint cannot run on past the other")
	}
	long, thick := float64(c.Length), math.Max(float64(c.TA), float64(c.TB))
	n := j.Fingers
	if n == 0 {
		n = max(3, 2*int(math.Min(long/(1.5*thick)+1e-6, 999)/2)+1)
	}
	most := math.Min(math.Floor(long/(thick/4)+slack), 1000)
	if most < 3 {
		fs.add("", long, thick/4*3, none, "mm", "the edge is too short for three fingers of a part "+say(thick)+" thick")
	} else if fs.within("Fingers", float64(n), 2, most, "", "a finger would be "+fingerWords(long, n)) {
		fs.within("Play", float64(j.Play), 0, long/float64(n)/2, "mm", "so much room goes ill with fingers "+fingerWords(long, n))
	}
	if j.First < Unsaid || j.First > OwnerB {
		fs.add("First", float64(j.First), float64(Unsaid), float64(OwnerB), "", "there is no such owner")
	} else if n > 0 && n%2 == 0 && j.First == Unsaid {
		fs.add("First", none, none, none, "", "an even count of fingers begins with one part and ends with the other: "+
			"say which one begins, or make the count odd")
	}
	if len(fs) > 0 { // before a count out of range makes a million fingers
		return Section{}, fs.err()
	}
	s := j.divide(c, n)
	c.limits(&fs, s)
	if err := fs.err(); err != nil {
		return Section{}, err
	}
	return s, nil
}

func fingerWords(long float64, n int) string {
	if n <= 0 {
		return "of no width"
	}
	return say(long/float64(n)) + " wide"
}

// divide is the arithmetic, once the numbers are known to be good.
func (j Comb) divide(c Corner, n int) Section {
	tA, tB, long, half := float64(c.TA), float64(c.TB), float64(c.Length), float64(j.Play)/2
	seam := func(k int) float64 { return long * float64(k) / float64(n) }
	// owned reports whether finger k is A's.
	owned := func(k int) bool { return (k%2 == 0) == (j.First != OwnerB) }
	s := Section{
		Name:  "comb",
		A:     Share{Keep: []Line{bBelow(tB)}, Lose: make([]Zone, 0, n/2+1)},
		B:     Share{Keep: []Line{aBelow(tA)}, Lose: make([]Zone, 0, n/2+1)},
		Play:  j.Play,
		Least: j.Play, Greatest: j.Play,
		Holds: []Hold{{Kind: "glue"}},
	}
	count := [2]int{}
	for k := range n {
		z := Zone{From: MM(math.Inf(-1)), To: MM(math.Inf(1)), Work: Notching}
		if k > 0 {
			z.From = MM(seam(k) - half)
		}
		if k < n-1 {
			z.To = MM(seam(k+1) + half)
		}
		if owned(k) {
			z.Lines, z.Why = []Line{aAbove(0)}, "for a finger of "+c.nameA()
			s.B.Lose = append(s.B.Lose, z)
			count[0]++
		} else {
			z.Lines, z.Why = []Line{bAbove(0)}, "for a finger of "+c.nameB()
			s.A.Lose = append(s.A.Lose, z)
			count[1]++
		}
		if k > 0 && half > 0 {
			s.Void = append(s.Void, Zone{Lines: rect(0, tA, 0, tB), From: MM(seam(k) - half), To: MM(seam(k) + half),
				Why: "play between fingers of " + c.nameA() + " and " + c.nameB()})
		}
	}
	for i, k := range [2]int{0, n - 1} {
		if !owned(k) {
			s.Ends[i] = BLaps
		}
	}
	s.A.Why = fingersWords(count[0], long/float64(n), tB, c.nameB())
	s.B.Why = fingersWords(count[1], long/float64(n), tA, c.nameA())
	return c.Measure(s)
}

func fingersWords(count int, wide, through float64, other string) string {
	s := num(float64(count)) + " fingers "
	if count == 1 {
		s = "1 finger "
	}
	return "has " + s + say(wide) + " wide through " + other + ", " + say(through) + " thick"
}
