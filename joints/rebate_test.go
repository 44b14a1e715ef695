package joints

import (
	"math"
	"testing"
)

// DESIGN section 3: half the thickness in whole millimetres rounded down, lip
// at least 6; joinery.csv rebate-depth (bookcase-blog): half the thickness.
func TestRebateDepths(t *testing.T) {
	for _, x := range []struct{ most, least, depth MM }{
		{14.6, 14.6, 7}, // 7.3 rounded down: DESIGN section 5
		{15, 15, 7},
		{18, 18, 9},
		{12.2, 12.2, 6},   // lip 6.2
		{12, 12, 6},       // lip 6, just enough
		{12.2, 11.8, 5},   // half of the least is 5.9, so its lip is 5.9: 5 and not 6
		{14.9, 14.3, 7},   // lip 7.3 at the least
		{20, 13, 7},       // 10 would leave 3 at the least; 13 - 6 = 7
		{9, 9, 4},         // lip 5, more than half
		{3, 3, 1},         // lip 2
		{1.5, 1.5, 0.75},  // card: whole millimetres would be none
		{43, 43, 21},      // 21.5 rounded down
		{22.0, 22.0, 11},  // exactly half
		{0.5, 0.5, 0.25},  // the thinnest
		{1.98, 1.9, 0.95}, // half of the least
	} {
		c := at(x.most, 12, 90, 0)
		c.LeastA = x.least
		s := section(t, Rebate{}, c)
		near(t, "depth in "+num(float64(x.most)), float64(s.B.Inner), float64(x.depth), 1e-12)
	}
}

// DESIGN section 5 and geometry-2.md section 2: cavity 120 square, boards
// 14.6, rebate 7: the front is 149.2 wide and the sides are 134.
func TestRebatedOrchardBox(t *testing.T) {
	s := section(t, Rebate{}, at(14.6, 14.6, 90, 0))
	near(t, "front", 120+2*float64(s.A.Inner), 149.2, 1e-9)
	near(t, "side", 120+2*float64(s.B.Inner), 134, 1e-9)
	if got, want := s.A.Lose[0].Why, "rebate 7 deep and 14.6 wide for left"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if s.A.Lose[0].Work != Rebating || len(s.Void) != 0 || len(s.B.Lose) != 0 {
		t.Errorf("section %+v", s)
	}
}

// At 60 and 120 degrees B reaches d/s inside, (d + TB c)/s outside; 15 and 12,
// depth 7: 14/rt3; (7+6)/s = 26/rt3, and (7-6)/s = 2/rt3.
func TestRebateReaches(t *testing.T) {
	rt3 := math.Sqrt(3)
	s := section(t, Rebate{}, at(15, 12, 60, 0))
	near(t, "inner", float64(s.B.Inner), 14/rt3, 1e-9)
	near(t, "outer", float64(s.B.Outer), 26/rt3, 1e-9)
	s = section(t, Rebate{}, at(15, 12, 120, 0))
	near(t, "inner", float64(s.B.Inner), 14/rt3, 1e-9)
	near(t, "outer", float64(s.B.Outer), 2/rt3, 1e-9)
}

// A narrow rebate takes a tongue of B, on its outer side. Of the corner, 15 x
// 12 = 180, B has 7 x 8 = 56 and A the rest.
func TestNarrowRebate(t *testing.T) {
	c := at(15, 12, 90, 0)
	s := section(t, Rebate{Width: 8}, c)
	w := newCheck(c, s)
	near(t, "B's share", area(w.share(w.places[0].cell, s.B, 100)), 56, 1e-9)
	near(t, "A's share", area(w.share(w.places[0].cell, s.A, 100)), 124, 1e-9)
	if inA, inB, _ := owners(s, 3, 2, 100); !inA || inB {
		t.Error("beside the tongue the wood is not A's")
	}
	if got, want := s.B.Lose[0].Why, "rebate 4 deep and 7 wide, leaving a tongue for front"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Measured 14.3 to 14.9: cut for 14.9, so a board of 14.3 leaves 0.6 and one
// of 14.9 nothing. A butt and a mitre press together and never gape.
func TestGapOfUnevenBoards(t *testing.T) {
	c := at(14.9, 14.9, 90, 0)
	c.LeastA, c.LeastB = 14.3, 14.3
	run := c
	run.RunOn = 20
	for _, x := range []struct {
		j               Joint
		c               Corner
		least, greatest float64
	}{
		{Butt{}, c, 0, 0},
		{Mitre{}, c, 0, 0},
		{Rebate{}, c, 0, 0.6},
		{Rebate{Width: 8}, c, 0, 0.6},      // the tongue: 8 at the most, 7.4 at the least
		{Housing{}, run, 0.2, 0.8},         // 14.9 + 0.2 wide
		{Housing{Play: 1}, run, 1, 1.6},    // 15.9 wide
		{Housing{Tight: true}, run, 0, .6}, // 14.9 wide
		{Comb{}, c, 0, 0},
		{Comb{Play: 0.3}, c, 0.3, 0.3}, // between fingers thickness does not matter
	} {
		s := section(t, x.j, x.c)
		near(t, s.Name+" least", float64(s.Least), x.least, 1e-9)
		near(t, s.Name+" greatest", float64(s.Greatest), x.greatest, 1e-9)
	}
}

func TestRebateRefusals(t *testing.T) {
	c := at(15, 12, 90, 0)
	// Lip 6: from 15 at most 9 may go.
	section(t, Rebate{Depth: 9}, c)
	refused(t, Rebate{Depth: 9.1}, c, "Depth", 9.1, 0.1, 9)
	refused(t, Rebate{Depth: 15}, c, "Depth", 15, 0.1, 9)
	refused(t, Rebate{Depth: 16}, c, "Depth", 16, 0.1, 9)
	refused(t, Rebate{Depth: -1}, c, "Depth", -1, 0.1, 9)
	refused(t, Rebate{Depth: MM(nan)}, c, "Depth", nan, 0.1, 9)
	refused(t, Rebate{Depth: 1e9}, c, "Depth", 1e9, 0.1, 9)
	if _, err := (Rebate{Depth: MM(math.Inf(1)), Width: MM(math.Inf(-1))}).Section(c); len(Faults(err)) != 2 {
		t.Errorf("infinite: got %v, want faults of Depth and Width", err)
	}
	// The least counts: 14 - 6 = 8.
	c.LeastA = 14
	refused(t, Rebate{Depth: 9}, c, "Depth", 9, 0.1, 8)
	// Not wider than B is thick; a tongue of B, like a lip, at least 6.
	refused(t, Rebate{Width: 12.5}, c, "Width", 12.5, 6, 12)
	refused(t, Rebate{Width: 5}, c, "Width", 5, 6, 12)
	refused(t, Rebate{Width: MM(nan)}, c, "Width", nan, 6, 12)
	// With B 11 to 12 the tongue is 1 thinner at the least: 5.5 + 1.
	c.LeastB = 11
	refused(t, Rebate{Width: 6}, c, "Width", 6, 6.5, 12)
	refused(t, Rebate{}, at(15, 12, 151, 0), "", 61, 0, 60)
}
