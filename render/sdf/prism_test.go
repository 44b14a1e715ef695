package sdf

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// The flat distance is reckoned here a second time; it agrees with package
// outline on sign and size, also on the lines where a mistake would show: level
// with corners, on chords of arcs.
func TestFlatAgreesWithOutline(t *testing.T) {
	shapes := map[string]outline.Contour{
		"circle":   outline.Circle(outline.Point{X: 3, Y: 4}, 10),
		"slot":     slot(),
		"square":   outline.Rectangle(0, 0, 10, 8),
		"ell":      outline.Polygon(outline.Point{}, outline.Point{X: 10}, outline.Point{X: 10, Y: 3}, outline.Point{X: 3, Y: 3}, outline.Point{X: 3, Y: 9}, outline.Point{Y: 9}),
		"keyhole":  {{X: -2, Y: -10}, {X: 2, Y: -10}, {X: 2, Y: 0, Bulge: 2.5}, {X: -2, Y: 0}}, // an arc of more than a half circle
		"crescent": {{X: 5, Y: 0, Bulge: 1}, {X: -5, Y: 0, Bulge: -0.4}},
	}
	for name, c := range shapes {
		q, err := newPrism(solid.Prism{Frame: solid.World(), Outline: c, From: 0, To: 1})
		require.NoError(t, err)
		e := c.Extents()
		assert.InDelta(t, e.Min.X, q.x0, 1e-9, name)
		assert.InDelta(t, e.Max.X, q.x1, 1e-9, name)
		assert.InDelta(t, e.Min.Y, q.y0, 1e-9, name)
		assert.InDelta(t, e.Max.Y, q.y1, 1e-9, name)
		r := rand.New(rand.NewPCG(1, uint64(len(name))))
		ask := func(x, y float64) {
			p := outline.Point{X: x, Y: y}
			d := q.flat(x, y)
			require.InDelta(t, c.Distance(p), math.Abs(d), 1e-9, "%s at %v", name, p)
			if side := c.Contains(p, 1e-9); side != outline.On {
				require.Equal(t, side == outline.Inside, d < 0, "%s at %v", name, p)
			}
		}
		for range 2000 {
			ask(e.Min.X-3+(e.Width()+6)*r.Float64(), e.Min.Y-3+(e.Height()+6)*r.Float64())
		}
		for i, v := range c {
			w := c[(i+1)%len(c)]
			for k := -12; k <= 24; k++ {
				ask(v.X+float64(k)/3, v.Y)                                    // level with a corner
				ask(v.X, v.Y+float64(k)/3)                                    // above it
				ask(v.X+(w.X-v.X)*float64(k)/12, v.Y+(w.Y-v.Y)*float64(k)/12) // along a chord
			}
		}
	}
}

// Asking only the boxes first must not change anything.
func TestCutShortcuts(t *testing.T) {
	q, err := newPrism(solid.Prism{Frame: solid.World(), Outline: slot(), From: -5, To: 7})
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(9, 9))
	for range 5000 {
		p := solid.Vec{X: 50 + 40*r.Float64(), Y: 20 + 30*r.Float64(), Z: 20*r.Float64() - 9}
		d := 20*r.Float64() - 10
		full := math.Max(d, -math.Max(math.Max(-5-p.Z, p.Z-7), q.flat(p.X, p.Y)))
		require.Equal(t, full, q.cut(p, d), "%v %v", p, d)
	}
}
