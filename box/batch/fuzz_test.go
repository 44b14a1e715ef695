package batch

import (
	"context"
	"testing"

	"holt.example/box"
	"holt.example/box/layout"
)

// FuzzLay lays small batches out from any stock, in every way: what comes back
// is sound, and whatever is missing has a problem that says so.
func FuzzLay(f *testing.F) {
	f.Add(uint8(0), uint8(1), 1250.0, 800.0, 8.0, 0.0, uint8(0))
	f.Add(uint8(1), uint8(2), 2400.0, 400.0, 3.0, 2.0, uint8(1))
	f.Add(uint8(2), uint8(1), 2400.0, 145.0, 3.0, 0.0, uint8(2))
	f.Add(uint8(5), uint8(3), -1.0, 1e9, 0.0, 1e-9, uint8(3))
	plans := make([]*box.Plan, 3)
	for i := range plans {
		plans[i] = kind(f, i)
	}
	f.Fuzz(func(t *testing.T, how, count uint8, length, width, gap, allowance float64, more uint8) {
		j := Job{Orders: []Order{{Plan: plans[more%3], Count: 1 + int(count%3), Priority: int(more % 2)}}, Allowance: box.MM(allowance), Rough: Face(more / 3 % 3), Seed: uint64(count), Effort: 20,
			Stock: []layout.Stock{{Name: "a", Length: length, Width: width, Grain: layout.Grain(more / 9 % 3), End: allowance, Price: 3},
				{Name: "\x00<&", Length: width, Width: length, Thickness: 17.8, Offcut: more&4 != 0, Count: int(count / 64)}}}
		j.By = []Way{Router{Gap: gap, Margin: gap / 2}, Saw{Kerf: gap}, Lengths{Kerf: gap}}[how%3]
		if how/3%2 == 1 {
			j.Orders = append(j.Orders, Order{Plan: plans[(more+1)%3]})
		}
		r, err := Lay(context.Background(), j)
		if err != nil && (r == nil || len(r.Problems) == 0) {
			if r == nil {
				return // not even a job
			}
			t.Fatalf("an error without a problem: %v", err)
		}
		if err == nil && r.Report.Placed != r.Report.Wanted {
			t.Fatalf("%d of %d placed and no error", r.Report.Placed, r.Report.Wanted)
		}
		verify(t, r)
	})
}
