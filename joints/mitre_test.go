package joints

import (
	"math"
	"testing"
)

// bevels are those of a mitre's ends, from its section.
func bevels(t *testing.T, c Corner) (a, b float64) {
	t.Helper()
	s := section(t, Mitre{}, c)
	return float64(c.BevelA(s.A.Keep[0])), float64(c.BevelB(s.B.Keep[0]))
}

// Equal parts: 90 - theta/2. Unequal ones: tan A = (TB/TA + cos)/sin.
func TestMitreBevels(t *testing.T) {
	for _, x := range []struct {
		tA, tB  MM
		theta   Deg
		a, b    float64
		because string
	}{
		{15, 15, 90, 45, 45, "common practice"},
		{15, 15, 120, 30, 30, "90 - 60"},
		{15, 15, 60, 60, 60, "90 - 30, the steepest allowed"},
		{15, 15, 93.8410, 43.0795, 43.0795, "90 - 46.9205"},
		{20, 10, 90, 26.5651, 63.4349, "atan 1/2 and atan 2"},
		{12, 9, 120, 16.1021, 43.8979, "atan (0.75-0.5)/0.8660, atan (1.3333-0.5)/0.8660"},
	} {
		c := at(x.tA, x.tB, x.theta, 0)
		if x.b > 60 {
			refused(t, Mitre{}, c, "", math.Atan2(2, 1)*180/math.Pi, 0, 60)
			continue
		}
		a, b := bevels(t, c)
		near(t, x.because, a, x.a, 1e-4)
		near(t, x.because, b, x.b, 1e-4)
		near(t, "together they turn the corner", a+b, 180-float64(x.theta), 1e-9)
	}
}

// Both ends lie in one plane: in the cross section they meet in the inner and
// in the outer edge, however thick the parts are. At 120 degrees, 12 and 9:
// A reaches (9-6)/s = 2 rt3 outside, B (12-4.5)/s = 5 rt3.
func TestMitreReaches(t *testing.T) {
	s := section(t, Mitre{}, at(12, 9, 120, 0))
	near(t, "A outer", float64(s.A.Outer), 2*math.Sqrt(3), 1e-9)
	near(t, "B outer", float64(s.B.Outer), 5*math.Sqrt(3), 1e-9)
	near(t, "A inner", float64(s.A.Inner), 0, 0)
	near(t, "B inner", float64(s.B.Inner), 0, 0)
	if s.Ends != [2]Order{Mitred, Mitred} || len(s.Void) != 0 {
		t.Errorf("ends %v, void %v", s.Ends, s.Void)
	}
}

// Swapping the parts of a mitre swaps its shares, a and b.
func TestMitreSwapped(t *testing.T) {
	for _, theta := range []Deg{70, 90, 111.1, 140} {
		s := section(t, Mitre{}, at(14, 12, theta, 0))
		r := section(t, Mitre{}, at(12, 14, theta, 0))
		for _, l := range [][2]Line{{s.A.Keep[0], r.B.Keep[0]}, {s.B.Keep[0], r.A.Keep[0]}} {
			if (Line{A: l[0].B, B: l[0].A, K: l[0].K}) != l[1] {
				t.Errorf("theta %v: %v is not %v swapped", theta, l[0], l[1])
			}
		}
		if s.A.Outer != r.B.Outer || s.B.Outer != r.A.Outer {
			t.Errorf("theta %v: reaches %v %v against %v %v", theta, s.A.Outer, s.B.Outer, r.B.Outer, r.A.Outer)
		}
	}
}

// geometry.md section 2: a mitre of 15 and 12 reverses at 175 degrees, as
// 12/15 < -cos 175, A's outer arris at -33.8; 15 and 15.1 bent by 1 degree is
// still sound but for its reach; equal parts are sound right up to 180.
func TestReversedMitre(t *testing.T) {
	c := at(15, 12, 175, 0)
	near(t, "outer arris", float64(c.AlongA(15, 12)), -33.8, 0.05)
	near(t, "outer arris", float64(at(15, 12, 179, 0).AlongA(15, 12)), -171.8, 0.1)
	bevel := math.Atan2(12.0/15+c.Cos(), c.Sin()) * 180 / math.Pi
	refused(t, Mitre{}, c, "", bevel, 0, 60)
	// The other way round it is B that reverses.
	refused(t, Mitre{}, at(12, 15, 175, 0), "", bevel, 0, 60)
	section(t, Mitre{}, at(15, 15, 179.99999, 0))
	// 15/15.1 = 0.99338 against cos 1 = 0.99985: reversed by a little.
	if _, err := (Mitre{}).Section(at(15, 15.1, 179, 0)); err == nil {
		t.Error("15/15.1 < -cos 179 was not refused")
	}
	if _, err := (Mitre{}).Section(at(20, 17.3, 150, 0)); err == nil { // 0.865 < 0.866
		t.Error("17.3/20 < -cos 150 was not refused")
	}
	section(t, Mitre{}, at(20, 17.5, 150, 0))   // 0.875
	section(t, Mitre{}, at(15, 15.001, 179, 0)) // 0.99993 is above 0.99985
}

func TestMitreRefusals(t *testing.T) {
	refused(t, Mitre{}, at(15, 15, 59, 0), "", 60.5, 0, 60)
	refused(t, Mitre{}, at(15, 15, 90, 20), "RunOn", 20, nan, 0)
}
