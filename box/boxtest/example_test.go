package boxtest_test

import (
	"fmt"

	"holt.example/box"
	"holt.example/box/boxtest"
)

// A change of the board is checked without a test at hand: what a service does
// with the designs of others.
func ExampleCheckSound() {
	design := box.Design{
		Name: "orchard box", Board: box.Board{Thickness: 15, Measured: 14.6},
		Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
		Floor: box.FloorBetween{Raise: 10}, Roof: box.Pent{Pitch: 12},
	}
	plan, err := design.Resolve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(boxtest.CheckSound(plan))
	fmt.Println(boxtest.CheckCavity(plan, 120, 125, 240))
	// Output:
	// <nil>
	// the cavity is 120 deep, want 125
}

// What changed between two plans, part by part.
func ExampleDifference() {
	design := box.Design{
		Name: "orchard box", Board: box.Board{Thickness: 15},
		Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
		Floor: box.FloorBetween{}, Roof: box.Flat{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 28}, Above: 180}},
	}
	wider := design.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 180}}
	})
	fmt.Print(boxtest.Difference(boxtest.Drawing(design.MustResolve()), boxtest.Drawing(wider.MustResolve())))
	// Output:
	//   front
	// -   bore "entrance", through from 0 to 15, 28 across at (0,194)
	// +   bore "entrance", through from 0 to 15, 32 across at (0,196)
}
