package joints

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// Faults seeded into good sections, each of which Check must name.
func TestCheckFindsNonsense(t *testing.T) {
	inf := MM(math.Inf(1))
	flush, run := at(15, 15, 100, 0), at(15, 12, 100, 20)
	for _, x := range []struct {
		what  string
		j     Joint
		c     Corner
		spoil func(*Section)
		want  string
	}{
		{"rebate 1 too deep", Rebate{Depth: 7}, flush, func(s *Section) { s.A.Lose[0].Lines[0].K = 8 },
			"shares and void add up to 210 of 225 mm2"},
		{"rebate 1 too shallow", Rebate{Depth: 7}, flush, func(s *Section) { s.A.Lose[0].Lines[0].K = 6 },
			"both parts claim the same 15 mm2"},
		{"guest left at the inner face", Rebate{Depth: 7}, flush, func(s *Section) { s.B.Keep[0].K = 0; *s = flush.Measure(*s) },
			"shares and void add up to 120 of 225 mm2"},
		{"rebate 0.00001 too deep", Rebate{Depth: 7}, flush, func(s *Section) { s.A.Lose[0].Lines[0].K += 1e-5 },
			"add up to 224.9999 of 225 mm2"}, // 225 - 0.00015
		{"void not declared", Housing{}, run, func(s *Section) { s.Void = nil },
			"shares and void add up to 177.6 of 180 mm2"},
		{"void over the guest", Housing{}, run, func(s *Section) { s.Void[0].Lines[0].K = -4 }, // from a = 4
			"left and the void claim the same 12 mm2"},
		{"void over the host", Housing{}, run, func(s *Section) { s.Void[0].Lines[1].K = 6.2 }, // to a = 6.2
			"front and the void claim the same 12 mm2"},
		{"channel as narrow as B", Housing{}, run, func(s *Section) { s.A.Lose[0].Lines[2].K = 12 },
			"front and the void claim the same 1.04 mm2"}, // 5.2 x 0.2
		{"B stops short of the corner", Butt{}, flush, func(s *Section) { s.B.Keep[0].K = -2; *s = flush.Measure(*s) },
			"inside the corner left and the void fill 420 of 450 mm2"}, // 30 x 15 - 2 x 15
		{"A is cut beside the corner", Butt{}, flush, func(s *Section) {
			s.A.Lose = []Zone{{Lines: []Line{aBelow(3), bBelow(-10), bAbove(-12)}}}
		}, "inside the corner front and the void fill 444 of 450 mm2"}, // 3 x 2
		{"one finger lost", Comb{Fingers: 5}, flush, func(s *Section) { s.A.Lose = s.A.Lose[:1] },
			"both parts claim the same 225 mm2 from 120 to 160 along the edge"},
		{"finger ends with the edge", Comb{Fingers: 5}, flush, func(s *Section) { s.B.Lose[0].From = -1 },
			"both parts claim the same 225 mm2 before -1 along the edge"},
		{"last finger ends with the edge", Comb{Fingers: 5}, flush, func(s *Section) { s.B.Lose[2].To = 200 },
			"both parts claim the same 225 mm2 past 200 along the edge"},
		{"zone back to front", Comb{Fingers: 5}, flush, func(s *Section) { s.A.Lose[0].From = 90 },
			"cut from front: a zone begins at or after its end: got 90, want at most 80 mm"},
		{"zone at NaN", Comb{Fingers: 5}, flush, func(s *Section) { s.A.Lose[0].To = MM(nan) },
			"cut from front: a zone begins"},
		{"void from infinity", Comb{Fingers: 5, Play: .2}, flush, func(s *Section) { s.Void[0].From = inf },
			"void: a zone begins"},
		{"no line ends B", Butt{}, flush, func(s *Section) { s.B.Keep = nil },
			"left on its inner face: no line ends it"},
		{"a line without direction", Butt{}, flush, func(s *Section) { s.A.Keep = append(s.A.Keep, Line{K: 1}) },
			"share of front: 0 a + 0 b <= 1 is no line"},
		{"a line at NaN", Butt{}, flush, func(s *Section) { s.B.Keep[0].K = nan },
			"share of left: 1 a + 0 b <= not a number is no line"},
		{"a cut at infinity", Rebate{}, flush, func(s *Section) { s.A.Lose[0].Lines[0].A = math.Inf(1) },
			"cut from front: infinite a + 0 b <= 7 is no line"},
		{"a false reach", Butt{}, flush, func(s *Section) { s.A.Inner = 15 },
			"front on its inner face: the reach does not follow from the lines"},
		{"no name", Butt{}, flush, func(s *Section) { s.Name = "" }, "a section needs a name"},
		{"no such order", Butt{}, flush, func(s *Section) { s.Ends[1] = 7 }, "end of the edge: there is no such order"},
		{"gap back to front", Butt{}, flush, func(s *Section) { s.Least = 1 }, "the least gap is larger than the greatest"},
		{"negative play", Butt{}, flush, func(s *Section) { s.Play = -1 }, "the section's play is no length"},
		{"gap NaN", Butt{}, flush, func(s *Section) { s.Greatest = MM(nan) }, "the section's greatest gap is no length"},
		{"grain infinite", Butt{}, flush, func(s *Section) { s.ShortGrain = inf }, "the section's short grain is no length"},
	} {
		s := section(t, x.j, x.c)
		x.spoil(&s)
		err := Check(x.c, s)
		if len(Faults(err)) == 0 {
			t.Errorf("%s: Check was content", x.what)
		} else if !strings.Contains(err.Error(), x.want) {
			t.Errorf("%s: got %q, want %q", x.what, err, x.want)
		}
	}
	if err := Check(flush, Section{}); len(Faults(err)) < 3 {
		t.Errorf("an empty section: %v", err)
	}
}

// A finger that starts at 0 instead of going on past it is not the whole edge
// by mistake: 0 to 40 covers only that.
func TestZoneFromZero(t *testing.T) {
	z := Zone{From: 0, To: 40}
	for x, in := range map[float64]bool{-1: false, 1: true, 39: true, 41: false} {
		if z.at(x) != in {
			t.Errorf("at %v: %v", x, !in)
		}
	}
	if z = (Zone{}); !z.at(-1e9) || !z.at(1e9) {
		t.Error("0 to 0 is not the whole edge")
	}
}

// A user's joint may be too steep or eat its part as well as ours.
func TestCheckLimits(t *testing.T) {
	c := at(15, 15, 25, 0)
	s := c.Measure(Section{Name: "mine", A: Share{Keep: []Line{bBelow(15)}}, B: Share{Keep: []Line{aBelow(0)}}})
	if err := Check(c, s); err == nil || !strings.Contains(err.Error(), "the bevel of front where it meets left is steeper") {
		t.Errorf("got %v", err)
	}
	c = at(15, 15, 90, 0)
	c.ReachA = 29
	if err := Check(c, c.Measure(s)); err == nil || !strings.Contains(err.Error(), "more than half its own size 29") {
		t.Errorf("got %v", err)
	}
}

// Seeded faults of random size in random sections: a cut moved by e is seen
// whenever it changes an area by more than the bound.
func TestCheckSeesSmallFaults(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	seen := 0
	for range 2000 {
		c := randomCorner(r)
		j := randomJoint(r, c)
		s, err := j.Section(c)
		if err != nil || len(s.A.Lose) == 0 {
			continue
		}
		e := 0.01 * (1 + r.Float64())
		if r.IntN(2) == 0 {
			e = -e
		}
		z := &s.A.Lose[r.IntN(len(s.A.Lose))]
		z.Lines[0].K += e // at least 0.01 over a length of millimetres
		if Check(c, s) == nil {
			t.Fatalf("%#v at %+v: a cut moved by %v was not seen", j, c, e)
		}
		seen++
	}
	if seen < 300 {
		t.Errorf("only %d faults were seeded", seen)
	}
}

// Overlapping cuts count once.
func TestOverlappingCuts(t *testing.T) {
	c := at(15, 15, 90, 0)
	s := section(t, Rebate{Depth: 7}, c)
	z := s.A.Lose[0]
	s.A.Lose = append(s.A.Lose, z, Zone{Lines: []Line{aBelow(4), bAbove(0)}})
	if err := Check(c, s); err != nil {
		t.Error(err)
	}
	h := at(15, 12, 90, 20)
	s = section(t, Housing{Stop: 30}, h)
	s.Void = append(s.Void, s.Void...)
	if err := Check(h, s); err != nil {
		t.Error(err)
	}
}

// A section cut into thousands of pieces ends in a fault, not in a long wait.
func TestTooManyPieces(t *testing.T) {
	c := at(15, 15, 90, 0)
	s := section(t, Butt{}, c)
	for i := range 400 { // strips across, each way: some 40,000 cells
		x := (float64(i) + 0.4) * 15 / 400
		s.A.Lose = append(s.A.Lose,
			Zone{Lines: []Line{aBelow(x + 0.01), aAbove(x)}}, Zone{Lines: []Line{bBelow(x + 0.01), bAbove(x)}})
	}
	if err := Check(c, s); err == nil || !strings.Contains(err.Error(), "too many pieces") {
		t.Errorf("got %v", err)
	}
}
