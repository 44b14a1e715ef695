package joints_test

import (
	"math"
	"testing"

	"holt.example/joints"
)

func TestFit(t *testing.T) {
	c := joints.Corner{TA: 15, TB: 12, Theta: 90, Length: 60, RunOn: 15, ReachA: 200, ReachB: 200}
	// A housing for 12 is 12 + play wide, a third of 15 = 5 and the play deep.
	for _, play := range []joints.MM{0, 0.1, 0.3} {
		s, err := joints.Housing{Play: 0.2, Swell: 1}.Fit(play).Section(c)
		if err != nil {
			t.Fatal(err)
		}
		if s.Play != play || s.ShortGrain != 15-play {
			t.Errorf("housing %v: play %v, short grain %v", play, s.Play, s.ShortGrain)
		}
		if err := joints.Check(c, s); err != nil {
			t.Error(err)
		}
	}
	flush := c
	flush.RunOn = 0
	for _, play := range []joints.MM{0, 0.1, 0.3} {
		s, err := joints.Comb{Fingers: 3, Play: 0.5}.Fit(play).Section(flush)
		if err != nil || s.Play != play {
			t.Errorf("comb %v: play %v, %v", play, s.Play, err)
		}
		// The rebate's own part ends at 12 + play over the guest's inner face.
		s, err = joints.Rebate{Depth: 7}.Fit(0.2).(joints.Fitted).Fit(play).Section(flush)
		if err != nil || math.Abs(float64(s.A.Outer-12-play)) > 1e-12 || s.Name != "rebate" {
			t.Errorf("rebate %v: reaches %v, %v", play, s.A.Outer, err)
		}
		if err := joints.Check(flush, s); err != nil {
			t.Error(err)
		}
	}
	for _, j := range []joints.Fitted{joints.Housing{}, joints.Comb{}, joints.Rebate{}} {
		for _, bad := range []joints.MM{-1, joints.MM(math.NaN()), joints.MM(math.Inf(1)), 1e9} {
			if _, err := j.Fit(bad).Section(c); err == nil {
				t.Errorf("%T with a play of %v", j, bad)
			}
		}
	}
}
