package joints

import (
	"math"
	"testing"
)

// joinery.csv housing-depth (diyinfozone): a third of the thickness; to 0.5.
func TestHousingDepths(t *testing.T) {
	for _, x := range []struct{ tA, depth MM }{
		{15, 5}, {14.6, 5}, {12, 4}, {18, 6}, {9, 3},
		{22, 7.5}, // 7.33
		{20, 6.5}, // 6.67
		{43, 14.5},
		{3, 1},
	} {
		s := section(t, Housing{}, at(x.tA, 12, 90, 20))
		near(t, "depth in "+num(float64(x.tA)), float64(s.B.Inner), float64(x.depth), 1e-12)
	}
}

// A floor of 12 housed 5 in a wall of 15, run-on 20. The channel is 5.2 x 12.2;
// of the corner, 180, B has 5 x 12 = 60, the play beneath takes 0.2 x 12 = 2.4
// (its part beside B, outside the corner, apart) and A has the rest.
func TestHousingShares(t *testing.T) {
	c := at(15, 12, 90, 20)
	s := section(t, Housing{}, c)
	w := newCheck(c, s)
	k := w.places[0].cell
	near(t, "A", area(w.share(k, s.A, 100)), 117.6, 1e-9)
	near(t, "B", area(w.share(k, s.B, 100)), 60, 1e-9)
	near(t, "void", area(w.void(k, 100)), 2.4, 1e-9)
	// All of the void: 0.2 x 12.2 beneath and 0.2 x 5 beside, 3.44 for each mm.
	wide := cell{{0, 0}, {15, 0}, {15, 20}, {0, 20}}
	near(t, "all void", area(w.void(wide, 100)), 3.44, 1e-9)
	if inA, _, v := owners(s, 3, 12.1, 100); inA || v != 1 {
		t.Error("no room beside B's outer face")
	}
	if inA, _, v := owners(s, 3, 12.3, 100); !inA || v != 0 {
		t.Error("the channel is wider than 12.2")
	}
	near(t, "A runs on", float64(s.A.Inner), 32, 0)
	near(t, "short grain", float64(s.ShortGrain), 19.8, 1e-12)
	if s.A.Lose[0].Work != Housed || s.A.Lose[0].Why != "housing 5.2 deep and 12.2 wide for left" {
		t.Errorf("cut %+v", s.A.Lose[0])
	}
	if s.Play != DefaultPlay {
		t.Errorf("play %v", s.Play)
	}
}

// Stops 20 from the start and 18 from the end of an edge 200 long
// (joinery.csv stopped-housing-front: 3/4 in; stopped-housing-front-2: 20).
// The channel lies at 20 to 182, the tongue at 20.2 to 181.8.
func TestStoppedHousing(t *testing.T) {
	c := at(15, 12, 90, 20)
	for _, j := range []Housing{{StopFrom: 20, StopTo: 18}, {Stop: 18, StopFrom: 20}, {Stop: 20, StopTo: 18}} {
		s := section(t, j, c)
		for _, x := range []struct {
			z, a    float64
			a1, b1  bool
			void    int
			because string
		}{
			{10, 3, true, false, 0, "before the stop"},
			{19.9, 3, true, false, 0, "just before the stop"},
			{20.1, 3, false, false, 1, "room before the tongue"},
			{20.3, 3, false, true, 0, "tongue"},
			{100, 5.1, false, false, 1, "under the tongue"},
			{181.7, 3, false, true, 0, "end of the tongue"},
			{181.9, 3, false, false, 1, "room past the tongue"},
			{182.1, 3, true, false, 0, "past the stop"},
			{900, 3, true, false, 0, "far past the edge"},
		} {
			a, b, v := owners(s, x.a, 6, x.z)
			if a != x.a1 || b != x.b1 || v != x.void {
				t.Errorf("%+v: %s: A %v, B %v, void %d", j, x.because, a, b, v)
			}
		}
	}
	one := section(t, Housing{StopFrom: 20, Tight: true}, c)
	if a, b, _ := owners(one, 3, 6, -5); !a || b {
		t.Error("the stop does not hold at the start")
	}
	if a, b, _ := owners(one, 3, 6, 205); a || !b {
		t.Error("the channel does not run out at the end")
	}
	if len(one.Void) != 0 {
		t.Errorf("tight, and void %v", one.Void)
	}
}

// Seen from the other end the stops change places.
func TestHousingReversed(t *testing.T) {
	c := at(15, 12, 80, 20)
	s := section(t, Housing{StopFrom: 30, StopTo: 18}, c)
	r := section(t, Housing{StopFrom: 18, StopTo: 30}, c)
	for z := -10.05; z < 220; z += 0.1 {
		a1, b1, v1 := owners(s, 3, 6, z)
		a2, b2, v2 := owners(r, 3, 6, 200-z)
		if a1 != a2 || b1 != b2 || v1 != v2 {
			t.Fatalf("at %v: %v %v %d against %v %v %d", z, a1, b1, v1, a2, b2, v2)
		}
	}
}

// A floor that swells: 2 more under its end, but faces as close as ever.
func TestSwell(t *testing.T) {
	c := at(18, 12, 90, 20)
	s := section(t, Housing{Depth: 6, Swell: 2, Dry: true}, c)
	if _, b, v := owners(s, 7, 6, 100); b || v != 1 {
		t.Error("no room under the end")
	}
	if s.Play != DefaultPlay || len(s.Holds) != 0 {
		t.Errorf("play %v, holds %v", s.Play, s.Holds)
	}
	if got, want := s.A.Lose[0].Why, "housing 8.2 deep and 12.2 wide for left"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// geometry.md section 2, the square-walled envelope of a tongue, t 15, d 5:
// at 120 degrees -2.89 to 17.32, at 60 degrees 0 to 20.21 along A's face.
func TestTongueEnvelope(t *testing.T) {
	c := at(15, 15, 120, 20)
	near(t, "120 from", float64(c.AlongA(5, 0)), -2.89, 0.005)
	near(t, "120 to", float64(c.AlongA(0, 15)), 17.32, 0.005)
	c = at(15, 15, 60, 20)
	near(t, "60 from", float64(c.AlongA(0, 0)), 0, 0)
	near(t, "60 to", float64(c.AlongA(5, 15)), 20.21, 0.005)
}

func TestHousingRefusals(t *testing.T) {
	c := at(15, 12, 90, 20)
	// 15 - 6 - 0.2 = 8.8 at most, two plays at least.
	section(t, Housing{Depth: 8.8}, c)
	refused(t, Housing{Depth: 9}, c, "Depth", 9, 0.4, 8.8)
	refused(t, Housing{Depth: 15}, c, "Depth", 15, 0.4, 8.8)
	refused(t, Housing{Depth: -5}, c, "Depth", -5, 0.4, 8.8)
	refused(t, Housing{Depth: MM(nan)}, c, "Depth", nan, 0.4, 8.8)
	refused(t, Housing{Depth: 9.1, Tight: true}, c, "Depth", 9.1, 0.1, 9)
	refused(t, Housing{Depth: 8, Swell: 1}, c, "Depth", 8, 1, 7.8)
	// Play: a third of what may go, (15-6)/3.
	refused(t, Housing{Play: 3.1}, c, "Play", 3.1, 0, 3)
	refused(t, Housing{Play: -0.1}, c, "Play", -0.1, 0, 3)
	refused(t, Housing{Play: MM(nan)}, c, "Play", nan, 0, 3)
	refused(t, Housing{Play: 0.1, Tight: true}, c, "Play", 0.1, nan, 0)
	refused(t, Housing{Swell: -1}, c, "Swell", -1, 0, 4.4)
	refused(t, Housing{Swell: 5}, c, "Swell", 5, 0, 4.4)
	// Short grain: a quarter of 15 beyond the channel, which has 0.2 of play.
	near := c
	near.RunOn = 3.95
	section(t, Housing{}, near)
	near.RunOn = 3.9
	refused(t, Housing{}, near, "RunOn", 3.9, 3.95, nan)
	near.RunOn = 0
	refused(t, Housing{Tight: true}, near, "RunOn", 0, 3.75, nan)
	// Stops: the tongue is at least as long as deep. 200 - 2 x 97.5 = 5, less
	// the play at both stops.
	refused(t, Housing{Stop: 97.5}, c, "Stop", 195, nan, 194.6)
	section(t, Housing{Stop: 97.3}, c)
	section(t, Housing{Stop: 97.5, Tight: true}, c)
	refused(t, Housing{StopFrom: 199}, c, "StopFrom", 199, nan, 194.8)
	refused(t, Housing{StopTo: 199}, c, "StopTo", 199, nan, 194.8)
	refused(t, Housing{Stop: -1}, c, "Stop", -1, 0, 200)
	refused(t, Housing{StopFrom: MM(nan)}, c, "StopFrom", nan, 0, 200)
	refused(t, Housing{StopTo: 201}, c, "StopTo", 201, 0, 200)
	refused(t, Housing{}, at(15, 12, 20, 20), "", 70, 0, 60)
	// A card of 1 is too thin for the usual play, but not for a press fit.
	refused(t, Housing{}, at(1, 1, 90, 5), "Play", 0.2, 0, 0.5/3)
	section(t, Housing{Tight: true}, at(1, 1, 90, 5))
	if d := section(t, Housing{Tight: true}, at(0.6, 0.6, 90, 5)).B.Inner; math.Abs(float64(d)-0.2) > 1e-12 {
		t.Errorf("depth %v in a card of 0.6, want a third", d)
	}
}
