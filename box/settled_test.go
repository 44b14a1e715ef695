package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
)

// TestOutlinesAreSettled: every outline that is cut out of a part lies on the grid of
// 2^-30 mm, its bulges on that of 2^-40, whatever feature it comes from: a root or a
// sine that differs in its last bit on another processor is gone then. All of these are
// turned or lean, so that none lies there by itself.
func TestOutlinesAreSettled(t *testing.T) {
	onGrid := func(x float64, bits int) bool { y := math.Ldexp(x, bits); return y == math.Round(y) }
	at := func(right, up box.MM) box.Anchor { return box.Anchor{Right: right, Up: up, Turn: 17} }
	base := orchard.With(func(d *box.Design) {
		d.Features = nil
		d.Walls = append(d.Walls, box.Wall{On: box.Front, Lean: 7})
	})
	for name, f := range map[string]box.Feature{
		"cut":       box.Cut{On: box.Front, Shape: box.Rect{Width: 30, Height: 20, Corner: 3}, At: at(0, 100)},
		"through":   box.Cut{On: box.Left, Shape: box.Oval{Width: 30, Height: 20}, At: at(0, 100), Through: []box.Part{box.Right}},
		"pattern":   box.Pattern{On: box.Front, Motif: box.Regular{Sides: 5, Across: 12}, At: at(0, 100), Repeat: box.Repeat{StepRight: 27.7, StepUp: 26.3}, Depth: 3},
		"rings":     box.Pattern{On: box.Front, Motif: box.Round{Diameter: 5}, At: at(0, 100), Rings: box.Rings{Each: 7, First: 22.3}},
		"rail":      box.Rail{On: box.Front, At: at(0, 120), Width: 60, Height: 33.3, Waist: 2},
		"corners":   box.RoundCorners{On: "free/sign", Radius: 9},
		"clipped":   box.RoundCorners{On: "free/sign", Radius: 9, Clip: true},
		"hollows":   box.Scallops{On: "free/sign", Edge: box.UpperEdge, Count: 3, Depth: 4},
		"lobes":     box.Scallops{On: "free/sign", Edge: box.UpperEdge, Count: 3, Depth: 4, Form: box.Lobes},
		"of a part": nil,
	} {
		d := base.With(func(d *box.Design) {
			d.Free = []box.Free{{Name: "sign", At: box.Place{Y: 500}, Outline: outline.Rectangle(-41.3, -23.7, 41.3, 23.7).Transform(outline.Turn(13))}}
			if f != nil {
				d.Features = append(d.Features, f)
			} else {
				d.Free[0].Cuts = []box.Cut{{Shape: box.Regular{Sides: 7, Across: 20}, At: box.Anchor{Turn: 5}}}
			}
		})
		p := resolve(t, d)
		n := 0
		for _, q := range p.Pieces() {
			for _, x := range q.Body.Prisms {
				for _, v := range x.Outline {
					n++
					assert.True(t, onGrid(v.X, 30) && onGrid(v.Y, 30) && onGrid(v.Bulge, 40), "%s: %v on %s", name, v, q.Part)
				}
			}
		}
		require.Positive(t, n, name)
	}
}
