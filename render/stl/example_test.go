package stl_test

import (
	"bytes"
	"fmt"

	"holt.example/box"
	"holt.example/joints"
	"holt.example/render/stl"
)

// Every part is a solid of its own, and the header says the unit.
func Example() {
	plan := box.Design{
		Name:    "orchard pent",
		Board:   box.Board{Thickness: 15, Measured: 14.6},
		Size:    box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:    box.Pent{Pitch: 12},
		Floor:   box.FloorBetween{},
		Corners: box.Corners{Joint: joints.Rebate{}},
	}.MustResolve()

	var assembly, left bytes.Buffer
	if err := stl.Write(&assembly, plan, stl.Options{}); err != nil {
		fmt.Println(err)
		return
	}
	if err := stl.WritePart(&left, plan, box.Left, stl.Options{Flat: true}); err != nil {
		fmt.Println(err)
		return
	}
	head := bytes.TrimRight(assembly.Bytes()[:80], "\x00")
	fmt.Printf("%s\n", head)
	// Six faces of two triangles each.
	fmt.Println((left.Len()-84)/50, "triangles in the side")
	// Output:
	// mm, holt: orchard pent
	// 12 triangles in the side
}
