package joints

import (
	"math"
	"testing"
)

// A default comb has fingers about one and a half times the thickness wide.
func TestCombCounts(t *testing.T) {
	for _, x := range []struct {
		tA, tB, long MM
		fingers      int
	}{
		{14.6, 14.6, 240, 11}, // 240/21.9 = 10.96
		{15, 15, 200, 9},      // 8.9
		{15, 12, 200, 9},      // the thicker one counts
		{15, 15, 67.4, 3},     // 3.0
		{15, 15, 91, 5},       // 4.04: as near to 3 as to 5, upwards
		{15, 15, 20, 3},       // never less than three
		{43, 43, 600, 9},      // 9.3
	} {
		c := at(x.tA, x.tB, 90, 0)
		c.Length = x.long
		s := section(t, Comb{}, c)
		if n := len(s.A.Lose) + len(s.B.Lose); n != x.fingers {
			t.Errorf("%+v: %d fingers", x, n)
		}
	}
}

// Five fingers on 200: 40 each, with 0.2 between them. B loses A's three
// fingers 0..40, 80..120, 160..200, each 0.1 wider at an inner seam; the first
// and the last are open.
func TestCombIntervals(t *testing.T) {
	s := section(t, Comb{Fingers: 5, Play: 0.2}, at(15, 12, 90, 0))
	inf := MM(math.Inf(1))
	check := func(what string, zs []Zone, want ...[2]MM) {
		t.Helper()
		if len(zs) != len(want) {
			t.Fatalf("%s: %d zones, want %d", what, len(zs), len(want))
		}
		for i, z := range zs {
			if !(math.Abs(float64(z.From-want[i][0])) <= 1e-9 || z.From == want[i][0]) ||
				!(math.Abs(float64(z.To-want[i][1])) <= 1e-9 || z.To == want[i][1]) {
				t.Errorf("%s %d: %v to %v, want %v", what, i, z.From, z.To, want[i])
			}
		}
	}
	check("B loses", s.B.Lose, [2]MM{-inf, 40.1}, [2]MM{79.9, 120.1}, [2]MM{159.9, inf})
	check("A loses", s.A.Lose, [2]MM{39.9, 80.1}, [2]MM{119.9, 160.1})
	check("void", s.Void, [2]MM{39.9, 40.1}, [2]MM{79.9, 80.1}, [2]MM{119.9, 120.1}, [2]MM{159.9, 160.1})
	if s.Ends != [2]Order{ALaps, ALaps} {
		t.Errorf("ends %v", s.Ends)
	}
	near(t, "A reaches", float64(s.A.Inner), 12, 0)
	near(t, "B reaches", float64(s.B.Inner), 15, 0)
	if want := "has 3 fingers 40 wide through left, 12 thick"; s.A.Why != want {
		t.Errorf("got %q, want %q", s.A.Why, want)
	}
}

// geometry.md section 11, F2: a hexagon box, boards 15, five fingers, 0.2 of
// play: four seams an edge, 4 x 0.2 x 225/sin 120 = 207.8461 of void.
func TestCombVoid(t *testing.T) {
	c := at(15, 15, 120, 0)
	c.Length = 100
	s := section(t, Comb{Fingers: 5, Play: 0.2}, c)
	sum := 0.0
	w := newCheck(c, s)
	for _, z := range s.Void {
		one := s
		one.Void = []Zone{z}
		v := newCheck(c, one)
		sum += area(v.void(w.places[0].cell, float64(z.From+z.To)/2)) * float64(z.To-z.From) / c.Sin()
	}
	near(t, "void of an edge", sum, 207.8461, 5e-5)
	near(t, "void of the box", 6*sum, 1247.0766, 5e-4)
}

// F1: seen from the other end an odd comb is the same, and an even one that
// begins with the other part.
func TestCombReversed(t *testing.T) {
	long := 210.0
	turn := func(zs []Zone) map[[2]float64]bool {
		m := map[[2]float64]bool{}
		for _, z := range zs {
			m[[2]float64{math.Round((long-float64(z.To))*1e6) / 1e6, math.Round((long-float64(z.From))*1e6) / 1e6}] = true
		}
		return m
	}
	for _, x := range []struct {
		n           int
		first, last Owner
	}{{5, Unsaid, Unsaid}, {5, OwnerA, OwnerA}, {7, OwnerB, OwnerB}, {4, OwnerA, OwnerB}, {6, OwnerB, OwnerA}} {
		c := at(15, 12, 95, 0)
		c.Length = MM(long)
		s := section(t, Comb{Fingers: x.n, Play: 0.1, First: x.first}, c)
		r := section(t, Comb{Fingers: x.n, Play: 0.1, First: x.last}, c)
		if s.Ends[0] != r.Ends[1] || s.Ends[1] != r.Ends[0] {
			t.Errorf("%+v: ends %v and %v", x, s.Ends, r.Ends)
		}
		for i, pair := range [][2][]Zone{{s.A.Lose, r.A.Lose}, {s.B.Lose, r.B.Lose}, {s.Void, r.Void}} {
			turned := turn(pair[0])
			if len(turned) != len(pair[1]) {
				t.Errorf("%+v: list %d: %d and %d zones", x, i, len(turned), len(pair[1]))
			}
			for _, z := range pair[1] {
				if !turned[[2]float64{math.Round(float64(z.From)*1e6) / 1e6, math.Round(float64(z.To)*1e6) / 1e6}] {
					t.Errorf("%+v: list %d: %v to %v is not there", x, i, z.From, z.To)
				}
			}
		}
	}
}

// Swapping the parts, and with them the owner of the first finger, changes
// nothing but the names.
func TestCombSwapped(t *testing.T) {
	s := section(t, Comb{Fingers: 4, First: OwnerA}, at(15, 12, 80, 0))
	r := section(t, Comb{Fingers: 4, First: OwnerB}, at(12, 15, 80, 0))
	if s.Ends != [2]Order{ALaps, BLaps} || r.Ends != [2]Order{BLaps, ALaps} {
		t.Errorf("ends %v and %v", s.Ends, r.Ends)
	}
	for i := range s.A.Lose {
		p, q := s.A.Lose[i], r.B.Lose[i]
		if p.From != q.From || p.To != q.To || (Line{A: p.Lines[0].B, B: p.Lines[0].A, K: p.Lines[0].K}) != q.Lines[0] {
			t.Errorf("zone %d: %v and %v", i, p, q)
		}
	}
	if s.A.Outer != r.B.Outer || s.B.Outer != r.A.Outer {
		t.Error("reaches differ")
	}
}

func TestCombRefusals(t *testing.T) {
	c := at(15, 12, 90, 0) // 200 long, so at most 200/3.75 = 53 fingers
	section(t, Comb{Fingers: 53}, c)
	refused(t, Comb{Fingers: 55}, c, "Fingers", 55, 2, 53)
	refused(t, Comb{Fingers: 1}, c, "Fingers", 1, 2, 53)
	refused(t, Comb{Fingers: -3}, c, "Fingers", -3, 2, 53)
	refused(t, Comb{Fingers: math.MaxInt}, c, "Fingers", math.MaxInt, 2, 53)
	refused(t, Comb{Fingers: 4}, c, "First", nan, nan, nan)
	section(t, Comb{Fingers: 4, First: OwnerA}, c)
	refused(t, Comb{First: 3}, c, "First", 3, 0, 2)
	refused(t, Comb{First: -1}, c, "First", -1, 0, 2)
	// Half of a finger of 40.
	section(t, Comb{Fingers: 5, Play: 19}, c)
	refused(t, Comb{Fingers: 5, Play: 21}, c, "Play", 21, 0, 20)
	refused(t, Comb{Fingers: 5, Play: -0.1}, c, "Play", -0.1, 0, 20)
	refused(t, Comb{Fingers: 5, Play: MM(nan)}, c, "Play", nan, 0, 20)
	on := c
	on.RunOn = 5
	refused(t, Comb{}, on, "RunOn", 5, nan, 0)
	short := c
	short.Length = 10
	refused(t, Comb{}, short, "", 10, 11.25, nan) // 3 x 15/4
	refused(t, Comb{}, at(15, 12, 25, 0), "", 65, 0, 60)
}
