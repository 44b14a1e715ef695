package box_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
)

// A button turns on a part that opens itself: it goes along with that, and does not
// bar it. The front hangs at the left, about the line where its inner plane, y = -60, meets
// the left's outer one, x = -74.6: opened by 90 degrees what lay 30 to the right of the
// middle, 104.6 from that line, lies as far before it, at -164.6.
func TestButtonOnWhatOpens(t *testing.T) {
	p := opened(t, nil, box.Hinged{Part: box.Front}, box.TurnButton{Part: box.Roof, At: box.Front, Along: 30}, box.Hinged{Part: box.Roof})
	assert.Equal(t, []box.Part{box.Front, "free/button"}, p.Ways()[0].Moves)
	q, err := p.Opened(box.Front, 90)
	assert.NoError(t, err)
	was, is := piece(t, p, "free/button").Pose.O, piece(t, q, "free/button").Pose.O
	assert.InDelta(t, 30, was.X, 1e-9)
	assert.InDelta(t, -164.6, is.Y, 1e-9)
	assert.InDelta(t, was.Z, is.Z, 1e-9)
	// The roof opens beside it, once it is turned aside.
	_, err = q.Opened(box.Roof, 90)
	assert.NoError(t, err)
}
