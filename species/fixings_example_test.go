package species_test

import (
	"fmt"

	"holt.example/box"
	"holt.example/species"
)

// A box with its screws: their holes are in the parts, and they are listed.
func ExampleFasten() {
	crate := box.Design{
		Name:  "crate",
		Board: box.Board{Thickness: 15, Measured: 14.6},
		Size:  box.Cavity{Width: 120, Depth: 100, Height: 200},
		Roof:  box.NoRoof{},
		Floor: box.FloorBetween{},
	}
	fastened, fixings, err := species.Fasten(crate, species.FixWith{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(fixings[0])
	plan := fastened.MustResolve()
	for _, part := range []box.Part{box.Front, box.Left} {
		p, _ := plan.Piece(part)
		fmt.Println(part, "has", len(p.Panel.Ops), "holes")
	}
	n := 0
	for _, f := range plan.Fittings() {
		n += f.Count
	}
	fmt.Println(n, "screws")
	// Output:
	// 3 x screw 3.5 x 40, pilot 2.5 through front into the side grain of right
	// front has 8 holes
	// left has 8 holes
	// 20 screws
}
