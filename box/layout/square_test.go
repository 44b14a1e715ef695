package layout

import (
	"context"
	"testing"

	"holt.example/box/outline"
)

// A square looks the same after a quarter turn, its grain does not: on stock
// whose grain runs the other way than that of the first it must be turned. (It
// was not: the shape made for the first stock stood for both.)
func TestSquareKeepsItsGrainOnEveryStock(t *testing.T) {
	job := Job{
		Parts: []Part{{ID: "floor", Quantity: 2, Grain: AlongX, Outline: outline.Region{outline.Rectangle(0, 0, 100, 100)}}},
		Stock: []Stock{
			{Length: 100, Width: 100, Grain: AlongX, Count: 1},
			{Length: 100, Width: 100, Grain: AlongY, Count: 1},
		},
	}
	for name, lay := range map[string]func() (Layout, error){
		"free":    func() (Layout, error) { return Free(context.Background(), job, FreeRules{}) },
		"saw":     func() (Layout, error) { return Saw(context.Background(), job, SawRules{LeastRip: -1}) },
		"lengths": func() (Layout, error) { return Lengths(context.Background(), job, LengthRules{}) },
	} {
		l, err := lay()
		if err != nil {
			t.Fatal(name, err)
		}
		verifier{job: &job, sawn: name != "free"}.check(t, l)
	}
}
