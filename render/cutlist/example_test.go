package cutlist_test

import (
	"context"
	"fmt"
	"os"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
	"holt.example/box/outline"
	"holt.example/render/cutlist"
)

// What the ringing group buys for six perches of 390 mm: five fit a board.
func ExampleWriteStockMarkdown() {
	perch := box.Design{Name: "perch", Board: box.Board{Thickness: 18},
		Free: []box.Free{{Name: "perch", Outline: outline.Rectangle(0, 0, 145, 390)}}}.MustResolve()
	r, err := batch.Lay(context.Background(), batch.Job{
		Orders: []batch.Order{{Plan: perch, Count: 6}}, By: batch.Lengths{Kerf: 3},
		Stock: []layout.Stock{{Name: "board", Material: "larch", Length: 2400, Width: 145, Thickness: 18, Grain: layout.AlongX, End: 25, Price: 9.5}},
	})
	if err == nil {
		err = cutlist.WriteStockMarkdown(os.Stdout, r)
	}
	if err != nil {
		fmt.Println(err)
	}
	// Output:
	// # Stock to buy
	//
	// | stock | material | length × width × thickness | pieces | each | cost |
	// | --- | --- | --- | --- | --- | --- |
	// | board | larch | 2400 × 145 × 18 | 2 | 9.50 | 19.00 |
	//
	// 6 of 6 parts placed, 48.8 % of the stock used. Cost 19.00; no layout of these parts costs less than 19.00. The layout is optimal.
	//
	// ## Left over
	//
	// | sheet | of | length × width |
	// | --- | --- | --- |
	// | 1 | board | 385 × 145 |
	// | 2 | board | 1957 × 145 |
}
