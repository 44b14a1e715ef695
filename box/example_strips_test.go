package box_test

import (
	"fmt"

	"holt.example/box"
)

// A front of 536 from boards 145 wide is made up of four strips. With a tongue of
// 8 on each, a board covers 137.
func ExampleMadeUp() {
	d := box.Design{
		Name:   "owl box",
		Board:  box.Board{Thickness: 18, Width: 145},
		Size:   box.Cavity{Width: 500, Depth: 140, Height: 450},
		Roof:   box.Flat{},
		Floor:  box.FloorBetween{Raise: 20},
		MadeUp: []box.MadeUp{{Of: box.Front, Joint: box.EdgeGlued{}, Least: 60}},
	}
	tongued := d.With(func(d *box.Design) { d.MadeUp[0].Joint = box.TongueGroove{Tongue: 8} })
	for _, plan := range []*box.Plan{d.MustResolve(), tongued.MustResolve()} {
		for _, w := range plan.Wholes() {
			fmt.Printf("%s, %.1f wide: %d strips of %.1f, %s\n", w.Part, w.Width, len(w.Strips), w.Cover, w.Joint)
			for _, name := range w.Strips {
				q, _ := plan.Piece(name)
				fmt.Printf("  %s %.1f x %.1f\n", q.Part, q.Length, q.Width)
			}
		}
	}
	// Output:
	// front, 536.0 wide: 4 strips of 134.0, edge-glued
	//   front/1 488.0 x 134.0
	//   front/2 488.0 x 134.0
	//   front/3 488.0 x 134.0
	//   front/4 488.0 x 134.0
	// front, 536.0 wide: 4 strips of 134.0, tongue and groove
	//   front/1 488.0 x 142.0
	//   front/2 488.0 x 142.0
	//   front/3 488.0 x 142.0
	//   front/4 488.0 x 134.0
}
