package batch

import (
	"context"
	"fmt"
	"testing"

	"holt.example/box/layout"
)

// BenchmarkGrowth lays out 1, 10, 50 and 500 boxes of three kinds at default
// effort, in each way; besides time and memory it says how many pieces of
// stock they take and the least that is proved.
func BenchmarkGrowth(b *testing.B) {
	lengths := []layout.Stock{
		{Name: "board 18", Material: "larch", Length: 3000, Width: 240, Thickness: 17.8, Grain: layout.AlongX, End: 25},
		{Name: "board 12", Material: "larch", Length: 3000, Width: 240, Thickness: 12.2, Grain: layout.AlongX, End: 25}}
	for _, way := range []struct {
		by    Way
		stock []layout.Stock
	}{{Router{Gap: 8, Margin: 10}, stock()}, {Saw{Kerf: 3}, stock()}, {Lengths{Kerf: 3}, lengths}} {
		for _, n := range []int{1, 10, 50, 500} {
			b.Run(fmt.Sprintf("%s/%d", way.by.word(), n), func(b *testing.B) {
				j := Job{By: way.by, Stock: way.stock, Orders: []Order{{Plan: kind(b, 0), Count: (n + 1) / 2}, {Plan: kind(b, 1), Count: n / 5}, {Plan: kind(b, 2), Count: n - (n+1)/2 - n/5}}}
				for i := len(j.Orders) - 1; i >= 0; i-- {
					if j.Orders[i].Count == 0 { // 0 would count as 1
						j.Orders = append(j.Orders[:i], j.Orders[i+1:]...)
					}
				}
				var r *Result
				for b.Loop() {
					var err error
					if r, err = Lay(context.Background(), j); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportAllocs()
				b.ReportMetric(float64(r.Report.Placed), "parts")
				b.ReportMetric(float64(len(r.Sheets)), "pieces")
				b.ReportMetric(100*r.Report.Yield, "%used")
				b.ReportMetric(r.Report.Cost, "cost")
				b.ReportMetric(r.Report.Bound, "bound")
			})
		}
	}
}
