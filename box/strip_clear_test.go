package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
)

// The screws of a batten on a wall of strips keep clear of the joints and of one
// another, wherever it is. The back, 335 high from 35 below the cavity floor, is of six
// strips 335/6 high; a tongue is 15 wide, its groove 0.2 deeper at each end, and a hole
// of 4.5 keeps 3 off that: 7.5 + 0.2 + 2.25 + 3 = 12.95 from a joint's middle. Two holes
// are two diameters apart, 9.
func TestScrewsBesideJointsOfStrips(t *testing.T) {
	for above := box.MM(40); above < 96; above++ {
		d := wide.With(func(d *box.Design) {
			d.MadeUp = []box.MadeUp{{Of: box.Back, Joint: box.LooseTongue{}, Width: 60}}
			d.Boards = map[box.Part]box.Board{box.Back: {Thickness: 15, Grain: box.GrainAcross}}
			d.Outer = []box.Outer{box.Batten{Name: "batten", Above: above, Width: 40, Height: 70, Screws: 3}}
		})
		var at []float64
		for _, op := range ops(t, resolve(t, d), box.Back, "screw hole") {
			at = append(at, op.Region.Extents().Centre().Y)
		}
		require.Len(t, at, 3, "%v", above)
		for i, y := range at {
			for _, z := range at[:i] {
				assert.GreaterOrEqual(t, math.Abs(y-z), 9-1e-6, "%v: %v", above, at)
			}
			for k := 1; k < 6; k++ {
				assert.GreaterOrEqual(t, math.Abs(y+35-float64(k)*335/6), 12.95-1e-6, "%v: %v", above, at)
			}
		}
	}
}
