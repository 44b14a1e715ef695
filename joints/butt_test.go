package joints

import (
	"math"
	"testing"
)

// The reaches of a butt joint, worked by hand: with s = sin theta and
// c = cos theta A reaches (TB+o)/s inside, (TB+o+TA c)/s outside, B 0 and TB c/s.
func TestButtReaches(t *testing.T) {
	rt3 := math.Sqrt(3)
	for _, x := range []struct {
		j                              Butt
		c                              Corner
		aInner, aOuter, bInner, bOuter float64
	}{
		{Butt{}, at(14.6, 14.6, 90, 0), 14.6, 14.6, 0, 0},
		{Butt{}, at(15, 12, 90, 40), 52, 52, 0, 0},
		// 60 degrees: s = rt3/2, c = 1/2. 12/s = 8 rt3; (12+7.5)/s = 13 rt3; 6/s = 4 rt3.
		{Butt{}, at(15, 12, 60, 0), 8 * rt3, 13 * rt3, 0, 4 * rt3},
		// 120 degrees: (12-7.5)/s = 3 rt3; -6/s = -4 rt3.
		{Butt{}, at(15, 12, 120, 0), 8 * rt3, 3 * rt3, 0, -4 * rt3},
		// Lap end square at 60: stays at b + a/2 = 12, so 8 rt3 all along.
		{Butt{LapSquare: true}, at(15, 12, 60, 0), 8 * rt3, 8 * rt3, 0, 4 * rt3},
		// At 120: b - a/2 = 12 - 7.5, so 4.5/s = 3 rt3 all along.
		{Butt{LapSquare: true}, at(15, 12, 120, 0), 3 * rt3, 3 * rt3, 0, -4 * rt3},
		// End square at 60: a + b/2 = 0; at 120: a - b/2 = -6, so -6/s = -4 rt3.
		{Butt{EndSquare: true}, at(15, 12, 60, 0), 8 * rt3, 13 * rt3, 0, 0},
		{Butt{EndSquare: true}, at(15, 12, 120, 0), 8 * rt3, 3 * rt3, -4 * rt3, -4 * rt3},
		// At a right angle square changes nothing.
		{Butt{LapSquare: true, EndSquare: true}, at(15, 15, 90, 3), 18, 18, 0, 0},
	} {
		s := section(t, x.j, x.c)
		near(t, "A inner", float64(s.A.Inner), x.aInner, 1e-9)
		near(t, "A outer", float64(s.A.Outer), x.aOuter, 1e-9)
		near(t, "B inner", float64(s.B.Inner), x.bInner, 1e-9)
		near(t, "B outer", float64(s.B.Outer), x.bOuter, 1e-9)
		if s.Ends != [2]Order{ALaps, ALaps} {
			t.Errorf("%+v: ends %v", x.j, s.Ends)
		}
	}
	// geometry.md section 2: cover reach at 170 degrees 86.4 = 15/sin 170.
	near(t, "reach at 170", float64(at(15, 15, 170, 0).AlongA(0, 15)), 86.4, 0.05)
}

// geometry.md section 11, D1: pent 15 degrees, roof 18, walls 15, front over
// 40: 202.232151 long with square ends = 130/cos 15 + 52.1171 + 15.5291. The
// roof meets the front wall at 105 degrees and the back wall at 75.
func TestSquareRoofEnds(t *testing.T) {
	front := section(t, Butt{LapSquare: true}, at(18, 15, 105, 40))
	back := section(t, Butt{LapSquare: true}, at(18, 15, 75, 0))
	near(t, "front", float64(front.A.Inner), 52.1171, 5e-5)
	near(t, "back", float64(back.A.Inner), 15.5291, 5e-5)
	cos15 := math.Cos(math.Pi / 12)
	near(t, "length", 130/cos15+float64(front.A.Inner+back.A.Inner), 202.232151, 5e-7)

	// geometry-2.md section 8: the void at the back over 180 is 7813.3985 =
	// 18^2 cos75/(2 sin75) x 180, none at the front; with front 0 the same there.
	near(t, "void at the back", voidIn(at(18, 15, 75, 0), back)*180, 7813.3985, 5e-5)
	if len(front.Void) != 0 {
		t.Errorf("void at the front: %v", front.Void)
	}
	flush := section(t, Butt{LapSquare: true}, at(18, 15, 105, 0))
	near(t, "void at a flush front", voidIn(at(18, 15, 105, 0), flush)*180, 7813.3985, 5e-5)
}

// voidIn is the true area of a section's void within the corner, between ends:
// areas in a and b are sin theta times as large.
func voidIn(c Corner, s Section) float64 {
	w := newCheck(c, s)
	return area(w.void(w.places[0].cell, float64(c.Length)/2)) / c.Sin()
}

// A square end of B opens a wedge as wide as B's thickness times |cos theta|.
func TestSquareEndWedge(t *testing.T) {
	c := at(15, 12, 60, 0)
	c.LeastB = 11
	s := section(t, Butt{EndSquare: true}, c)
	near(t, "least", float64(s.Least), 5.5, 1e-9) // 11/2: the inner arris touches
	near(t, "greatest", float64(s.Greatest), 6, 1e-9)
	c.Theta = 120
	s = section(t, Butt{EndSquare: true}, c)
	near(t, "least", float64(s.Least), 6, 1e-9) // cut for 12: the outer arris touches
	if len(s.Void) != 1 || s.Void[0].Why != "square end of left" {
		t.Errorf("void %+v", s.Void)
	}
	if s := section(t, Butt{EndSquare: true, LapSquare: true}, at(15, 12, 90, 0)); len(s.Void) != 0 {
		t.Errorf("void at a right angle: %v", s.Void)
	}
}

func TestButtRefusals(t *testing.T) {
	// J1: a front bent by 3 degrees, 15 over 12: a bevel of 87.
	refused(t, Butt{}, at(15, 12, 177, 0), "", 87, 0, 60)
	refused(t, Butt{}, at(15, 12, 29, 0), "", 61, 0, 60)
	section(t, Butt{}, at(15, 12, 30, 0))
	section(t, Butt{}, at(15, 12, 150, 0))
	// Square at both ends needs no bevel: 12+10-15 |cos 20| = 7.9 of 12 are covered.
	section(t, Butt{LapSquare: true, EndSquare: true}, at(15, 12, 160, 10))
	// Flush, 15 |cos 150| = 12.99: A would end inside the cavity's edge.
	refused(t, Butt{LapSquare: true}, at(15, 12, 150, 0), "LapSquare", 12-7.5*math.Sqrt(3), 3, nan)
	// A quarter of B's end is to be covered: 12 - 18.2/2 = 2.9 is less, 3.1 not.
	refused(t, Butt{LapSquare: true}, at(18.2, 12, 120, 0), "LapSquare", 2.9, 3, nan)
	section(t, Butt{LapSquare: true}, at(17.8, 12, 120, 0))
	// With an acute angle the inner face covers all of B's end.
	section(t, Butt{LapSquare: true}, at(15, 12, 30, 0))
}

func TestButtWords(t *testing.T) {
	c := at(15, 14.6, 90, 20)
	s := section(t, Butt{}, c)
	if want := "laps over left by its thickness 14.6 and runs on by 20"; s.A.Why != want {
		t.Errorf("got %q, want %q", s.A.Why, want)
	}
	if want := "ends at the inner face of front"; s.B.Why != want {
		t.Errorf("got %q, want %q", s.B.Why, want)
	}
	c.NameA, c.NameB = "", ""
	if s = section(t, Butt{}, c); s.B.Why != "ends at the inner face of the first part" {
		t.Errorf("got %q", s.B.Why)
	}
}
