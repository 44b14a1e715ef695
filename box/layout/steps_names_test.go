package layout

import (
	"context"
	"fmt"
	"math/rand"
	"testing"

	"holt.example/box/outline"
)

// TestStepsNameTheirPieces: whoever reads a cut list down from its first line has
// heard of every piece that a line takes up: the stock, what came off it, and
// what a last cut has left under a name of its own.
func TestStepsNameTheirPieces(t *testing.T) {
	r, left := rand.New(rand.NewSource(20)), 0
	for n := range 60 {
		var parts []Part
		for i := range 12 {
			parts = append(parts, Part{ID: fmt.Sprint(i), Outline: outline.Region{outline.Rectangle(0, 0, 80+float64(r.Intn(300)), 60+float64(r.Intn(200)))}})
		}
		l, err := Saw(context.Background(), Job{Parts: parts, Effort: 200,
			Stock: []Stock{{Length: 1250, Width: 800, Price: 38}, {Length: 600, Width: 500, Offcut: true, Count: 1}}}, SawRules{Kerf: 3})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range l.Pieces {
			heard := map[string]bool{"1": true}
			for _, s := range p.Steps {
				if !heard[s.From] {
					t.Fatalf("job %d: nobody has heard of the piece in %q", n, s)
				}
				if s.Left != "" {
					left++
					if heard[s.Left] {
						t.Errorf("job %d: %q leaves a piece that was there before: %s", n, s, s.Left)
					}
				}
				heard[s.Off], heard[s.Left] = true, true
			}
		}
	}
	if left == 0 {
		t.Error("no cut left a piece to be cut on: the test sees nothing")
	}
}
