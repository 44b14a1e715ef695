package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/solid"
)

// A button on a flush corner: on the end of the side, 14.6/2 from the seam, and
// two thirds of its length over the front. It is turned aside when the front opens.
func TestTurnButton(t *testing.T) {
	p := opened(t, func(d *box.Design) { d.Corners.Laps = box.Sides },
		box.Hinged{Part: box.Front}, box.TurnButton{Part: box.Front, At: box.Right, Length: 60})
	b, ok := p.Piece(box.FreePart("button"))
	require.True(t, ok)
	assert.InDelta(t, 60, float64(b.Length), 1e-6)
	lo, hi := b.Body.Convex().Bounds()
	assert.InDelta(t, 67.3+20, hi.X, 1e-6)
	assert.InDelta(t, 67.3-40, lo.X, 1e-6)
	assert.InDelta(t, -74.6, hi.Y, 1e-6)
	require.Len(t, opsOf(t, p, box.Right, "screw of the button"), 1)
	q, err := p.Opened(box.Front, 30)
	require.NoError(t, err)
	turned, _ := q.Piece(box.FreePart("button"))
	// Its long way was across, now it is upright.
	assert.InDelta(t, 0, turned.Pose.V.X, 1e-9)
	assert.InDelta(t, 1, math.Abs(turned.Pose.V.Z), 1e-9)
	back, err := q.Opened(box.Front, 0)
	require.NoError(t, err)
	assert.Equal(t, p.Pieces(), back.Pieces())
}

// An opening of 100 x 100 over a sill of 60, under a cover of 130 x 130 on the
// outside; the cover goes with a side that opens.
func TestInspection(t *testing.T) {
	p := opened(t, nil, box.Pivoted{Part: box.Left}, box.Inspection{On: box.Left, Sill: 60, Right: 3})
	hole := opsOf(t, p, box.Left, "inspection opening")
	require.Len(t, hole, 1)
	e := hole[0].Region.Extents()
	assert.InDelta(t, 100, e.Width(), 1e-9)
	assert.InDelta(t, 60, e.Min.Y, 1e-9)
	assert.InDelta(t, 160, e.Max.Y, 1e-9)
	c, ok := p.Piece(box.FreePart("cover"))
	require.True(t, ok)
	lo, hi := c.Body.Convex().Bounds()
	assert.InDelta(t, -74.6, hi.X, 1e-6)
	assert.InDelta(t, 45, lo.Z, 1e-6)
	assert.InDelta(t, 175, hi.Z, 1e-6)
	q, err := p.Opened(box.Left, 90)
	require.NoError(t, err)
	c, _ = q.Piece(box.FreePart("cover"))
	l, _ := q.Piece(box.Left)
	want := l.Pose.Out(l.Home.In(c.Home.O))
	assert.InDelta(t, 0, want.Sub(c.Pose.O).Len(), 1e-6)
	assert.Greater(t, c.Pose.O.Sub(c.Home.O).Len(), 50.0)
	assert.Contains(t, p.Ways()[0].Moves, box.FreePart("cover"))
}

// A stopper for a hole of 32: 44 wide with a lap of 6; its screw 16 + 22 + 1 beside
// the middle of the hole, so that it hangs clear of it by 1; 39 + 16 + 6 long from
// the screw. Turned up by 90 degrees it covers the hole and its lap.
func TestStopper(t *testing.T) {
	for _, left := range []bool{false, true} {
		sign := 1.0
		if left {
			sign = -1
		}
		p := opened(t, func(d *box.Design) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 120}}
		}, box.Stopper{Left: left})
		s, ok := p.Piece(box.FreePart("stopper"))
		require.True(t, ok)
		span := func(f solid.Frame) (lo, hi solid.Vec) {
			lo, hi = solid.Vec{X: 1e9, Z: 1e9}, solid.Vec{X: -1e9, Z: -1e9}
			for _, face := range s.Body.Convex().Faces {
				for _, v := range face.Loop {
					v = f.Out(s.Home.In(v))
					lo.X, hi.X = math.Min(lo.X, v.X*sign), math.Max(hi.X, v.X*sign)
					lo.Z, hi.Z = math.Min(lo.Z, v.Z), math.Max(hi.Z, v.Z)
				}
			}
			return lo, hi
		}
		lo, hi := span(s.Pose)
		assert.InDelta(t, 17, lo.X, 0.01) // clear of the hole's 16
		assert.InDelta(t, 136-61, lo.Z, 1e-6)
		assert.InDelta(t, 136+22, hi.Z, 0.01)
		q, err := p.Opened(box.FreePart("stopper"), 90)
		require.NoError(t, err)
		s, _ = q.Piece(box.FreePart("stopper"))
		lo, hi = span(s.Pose)
		assert.InDelta(t, -22, lo.X, 1e-6) // 16 and 6 past the middle of the hole
		assert.InDelta(t, 136-22, lo.Z, 0.01)
		assert.InDelta(t, 136+22, hi.Z, 0.01)
		assert.InDelta(t, 39+22, hi.X, 0.01)
	}
}
