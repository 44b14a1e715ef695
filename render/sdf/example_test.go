package sdf_test

import (
	"fmt"

	sdfx "github.com/deadsy/sdfx/sdf"
	v3 "github.com/deadsy/sdfx/vec/v3"

	"holt.example/box"
	"holt.example/render/sdf"
)

// A maker wants a perch hole through the finished front, and asks how thick
// the wood is there.
func Example() {
	design := box.Design{
		Name:     "orchard flat",
		Board:    box.Board{Thickness: 20},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 200},
		Roof:     box.Flat{},
		Floor:    box.FloorBetween{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 140}},
	}
	plan, err := design.Resolve()
	if err != nil {
		fmt.Println(err)
		return
	}
	front, err := sdf.PartModel(plan, box.Front)
	if err != nil {
		fmt.Println(err)
		return
	}
	middle := v3.Vec{Y: -70, Z: 60} // of the board's thickness, 60 above the floor
	fmt.Printf("wood: %.1f\n", front.Evaluate(middle))

	peg, _ := sdfx.Cylinder3D(100, 6, 0)
	hole := sdfx.Transform3D(peg, sdfx.Translate3d(middle).Mul(sdfx.RotateX(sdfx.DtoR(90))))
	drilled := sdfx.Difference3D(front, hole)
	fmt.Printf("drilled: %.1f\n", drilled.Evaluate(middle))

	// The entrance: its lowest point is 140 above the floor, so its middle 156.
	fmt.Printf("entrance: %.1f\n", front.Evaluate(v3.Vec{Y: -70, Z: 156}))
	// Output:
	// wood: -10.0
	// drilled: 6.0
	// entrance: 16.0
}
