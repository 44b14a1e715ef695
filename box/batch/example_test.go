package batch_test

import (
	"context"
	"fmt"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
)

// The orchard's ringing group wants four boxes out of what is in the shed.
func ExampleLay() {
	plan := box.Design{
		Name:  "orchard",
		Board: box.Board{Thickness: 18, Measured: 17.8, Material: "larch"},
		Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:  box.Flat{},
		Floor: box.FloorBetween{},
	}.MustResolve()
	r, err := batch.Lay(context.Background(), batch.Job{
		Orders: []batch.Order{{Plan: plan, Count: 4}},
		Stock: []layout.Stock{
			{Name: "panel", Material: "larch", Length: 1000, Width: 600, Thickness: 17.8, Grain: layout.AlongX, Price: 24},
			{Name: "rest of the barn door", Material: "larch", Length: 500, Width: 400, Thickness: 17.8, Grain: layout.AlongX, Offcut: true},
		},
		By: batch.Router{Gap: 8, Margin: 5},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range r.Sheets {
		fmt.Println(s.Number, r.Stock(s).Name, "parts:", len(s.Placed))
	}
	fmt.Println(r.Report.Placed, "parts,", r.Report.Cost, "to pay,", r.Verdict())
	// Output:
	// 1 panel parts: 14
	// 2 panel parts: 6
	// 3 rest of the barn door parts: 4
	// 24 parts, 48 to pay, at most 24.00 above the least cost
}
