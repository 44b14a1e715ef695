package joints_test

import (
	"fmt"

	"holt.example/joints"
)

// A front of uneven boards, 14.3 to 14.9 thick, laps over the left side in a
// rebate.
func Example() {
	corner := joints.Corner{
		TA: 14.9, LeastA: 14.3, NameA: "front",
		TB: 14.9, LeastB: 14.3, NameB: "left",
		Theta: 90, Length: 240,
	}
	section, err := joints.Rebate{}.Section(corner)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range corner.Words(section) {
		fmt.Println(line)
	}
	fmt.Println("front reaches", section.A.Inner, "past the cavity, left", section.B.Inner)

	_, err = joints.Rebate{Depth: 10}.Section(corner)
	fmt.Println(err)
	// Output:
	// front laps over left by its thickness 14.9, standing proud by up to 0.6 where it is thinner
	// left enters the rebate of front by 7
	// cut from front: rebate 7 deep and 14.9 wide for left
	// gap 0 to 0.6
	// held by glue
	// held by nail through the lip of front
	// front reaches 14.9 past the cavity, left 7
	// Depth: the rebate leaves too thin a lip of front, which is 14.3 thick: got 10, want 0.1 to 8.3 mm
}

// Tongue is a barefaced tongue: a groove in A near its end takes a tongue on
// the inner side of B, so that both parts end flush.
type Tongue struct{ Depth, Width joints.MM }

// Section makes Tongue a Joint.
func (t Tongue) Section(c joints.Corner) (joints.Section, error) {
	c, err := c.Sound()
	if err != nil {
		return joints.Section{}, err
	}
	if err := joints.InRange("Depth", t.Depth, 1, c.LeastA/2, "the tongue is too long"); err != nil {
		return joints.Section{}, err
	}
	if err := joints.InRange("Width", t.Width, 2, c.LeastB/2, "the tongue is too thick"); err != nil {
		return joints.Section{}, err
	}
	d, w := float64(t.Depth), float64(t.Width)
	return c.Measure(joints.Section{
		Name: "tongue",
		A: joints.Share{
			Keep: []joints.Line{{B: 1, K: float64(c.TB + c.RunOn)}}, // b <= TB + RunOn
			Lose: []joints.Zone{{ // a <= d, 0 <= b <= w
				Lines: []joints.Line{{A: 1, K: d}, {B: -1}, {B: 1, K: w}},
				Work:  joints.Housed, Why: "groove for the tongue of " + c.NameB,
			}},
			Why: fmt.Sprintf("laps over %s by its thickness %v", c.NameB, c.TB),
		},
		B: joints.Share{
			Keep: []joints.Line{{A: 1, K: d}}, // a <= d
			Lose: []joints.Zone{{ // a >= 0, b >= w
				Lines: []joints.Line{{A: -1}, {B: -1, K: -w}},
				Work:  joints.Rebating, Why: "shoulder of the tongue",
			}},
			Why: fmt.Sprintf("enters the groove of %s with a tongue of %v", c.NameA, t.Width),
		},
		ShortGrain: c.TB - t.Width + c.RunOn,
	}), nil
}

// A joint of your own needs one method.
func ExampleJoint() {
	corner := joints.Corner{TA: 15, TB: 15, Theta: 100, Length: 200, NameA: "front", NameB: "left"}
	section, err := Tongue{Depth: 5, Width: 5}.Section(corner)
	fmt.Println(err, joints.Check(corner, section))

	section.A.Lose[0].Lines[0].K = 6 // a groove 1 deeper than the tongue is long
	fmt.Println(joints.Check(corner, section))

	_, err = Tongue{Depth: 9, Width: 5}.Section(corner)
	fmt.Println(err)
	// Output:
	// <nil> <nil>
	// shares and void add up to 220 of 225 mm2
	// Depth: the tongue is too long: got 9, want 1 to 7.5 mm
}

func ExampleFaults() {
	corner := joints.Corner{TA: 12, TB: 12, Theta: 90, Length: 200}
	_, err := joints.Housing{Depth: 9, Play: -1}.Section(corner)
	for _, f := range joints.Faults(err) {
		fmt.Printf("field %q got %v want %s\n", f.Field, f.Got, f.Want())
	}
	// Output:
	// field "Play" got -1 want 0 to 2 mm
}
