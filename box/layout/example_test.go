package layout_test

import (
	"context"
	"fmt"

	"holt.example/box/layout"
	"holt.example/box/outline"
)

// A ringing group cuts the sides of three nest boxes from the boards in the
// orchard shed: five of 390 mm fit in a board of 2400 whose ends are sawn.
func ExampleLengths() {
	job := layout.Job{
		Parts: []layout.Part{{ID: "side", Outline: outline.Region{outline.Rectangle(0, 0, 390, 145)}, Grain: layout.AlongX, Quantity: 6}},
		Stock: []layout.Stock{{Name: "larch 145", Length: 2400, Width: 145, Grain: layout.AlongX, End: 25}},
	}
	l, err := layout.Lengths(context.Background(), job, layout.LengthRules{Kerf: 3})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range l.Pieces {
		fmt.Println(job.Stock[p.Stock].Name, p.Number, "parts:", len(p.Placements))
	}
	fmt.Println(l.Report.Verdict())
	// Output:
	// larch 145 1 parts: 5
	// larch 145 2 parts: 1
	// optimal
}
