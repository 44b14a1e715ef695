package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
	"holt.example/joints"
)

// uneven is a pile of boards sold as 15 and found to be 14.3 to 14.9.
var uneven = box.Board{Thickness: 15, Measured: 14.6, Least: 14.3, Most: 14.9}

func seam(t *testing.T, p *box.Plan, over, under box.Part) box.Seam {
	t.Helper()
	for _, s := range p.Seams() {
		if s.Over == over && s.Under == under {
			return s
		}
	}
	t.Fatalf("no seam of %s over %s", over, under)
	return box.Seam{}
}

// Boards of 14.3 to 14.9 are cut for 14.9, so that nothing interferes: 120 +
// 2 x 14.9 = 149.8 for what laps over. The cavity is as asked, whatever the
// boards.
func TestUnevenBoardsAreCutForTheThickest(t *testing.T) {
	d := orchard.With(func(d *box.Design) { d.Board = uneven })
	p := resolve(t, d)
	w, dp, h := p.Inside()
	assert.Equal(t, [3]box.MM{120, 120, 240}, [3]box.MM{w, dp, h})
	for _, q := range p.Pieces() {
		assert.Equal(t, box.MM(14.9), q.Thickness, "%s", q.Part)
		inner, outer := facesOf(t, p, q.Part)
		assert.InDelta(t, 14.9, outer.D+inner.D, 1e-8, "%s", q.Part) // one plane faces the other way
	}
	for name, width := range map[box.Part]float64{box.Front: 149.8, box.Back: 149.8, box.Left: 134, box.Right: 134, box.Floor: 120, box.Roof: 189.8} {
		assert.InDelta(t, width, float64(piece(t, p, name).Width), 1e-9, "%s", name)
	}
	// What a gauge is set to is for 14.9 too: 14.9 tan 12 = 3.167093.
	for _, e := range piece(t, p, box.Roof).Panel.Edges {
		if e.Neighbour == box.Back {
			assert.InDelta(t, 3.167093, math.Abs(float64(e.Run)), 1e-6)
		}
	}
	// The same as a design of boards of 14.9 all through, in every size.
	q := resolve(t, d.With(func(d *box.Design) { d.Board = thick(14.9) }))
	for _, a := range p.Pieces() {
		b := piece(t, q, a.Part)
		assert.Equal(t, [2]box.MM{b.Length, b.Width}, [2]box.MM{a.Length, a.Width}, "%s", a.Part)
	}
}

// What a thinner board leaves open: nothing in a butt, which closes on the
// inner face; 14.9 - 14.3 = 0.6 in a rebate or a housing made for 14.9, and the
// play of 0.2 besides.
func TestGapsOfUnevenBoards(t *testing.T) {
	d := orchard.With(func(d *box.Design) {
		d.Board, d.Floor = uneven, box.FloorBetween{Raise: 20, Joint: joints.Housing{}}
	})
	p := resolve(t, d)
	for _, x := range []struct {
		over, under     box.Part
		joint           string
		least, greatest float64
	}{
		{box.Front, box.Left, "rebate", 0, 0.6},
		{box.Back, box.Right, "rebate", 0, 0.6},
		{box.Front, box.Floor, "housing", 0.2, 0.8},
		{box.Roof, box.Front, "butt", 0, 0},
		{box.Back, box.Roof, "butt", 0, 0},
	} {
		s := seam(t, p, x.over, x.under)
		assert.Equal(t, x.joint, s.Joint)
		assert.InDelta(t, x.least, float64(s.Least), 1e-9, "%s/%s", x.over, x.under)
		assert.InDelta(t, x.greatest, float64(s.Greatest), 1e-9, "%s/%s", x.over, x.under)
		assert.LessOrEqual(t, s.Greatest, box.MM(1), "no gap over 1.0")
		assert.Positive(t, s.Contact, "%s/%s", x.over, x.under)
	}
	// Only the sides uneven: the front's rebate for them is, the floor's edge
	// in the front is not.
	p = resolve(t, orchard.With(func(d *box.Design) {
		d.Board, d.Boards = thick(15), map[box.Part]box.Board{box.Left: uneven}
	}))
	assert.InDelta(t, 0.6, float64(seam(t, p, box.Front, box.Left).Greatest), 1e-9)
	assert.InDelta(t, 0, float64(seam(t, p, box.Front, box.Right).Greatest), 1e-9)
}

// Lips are reckoned with the thinnest board: 14.3 - 6 = 8.3 is the deepest
// rebate, though the parts are cut for 14.9; and the default of half, 7, holds
// for both. A pocket leaves half a millimetre of 14.3.
func TestLipsOfUnevenBoards(t *testing.T) {
	rebated := func(depth box.MM) box.Design {
		return orchard.With(func(d *box.Design) {
			d.Board, d.Corners.Joint = uneven, joints.Rebate{Depth: depth}
		})
	}
	p := resolve(t, rebated(8.3))
	assert.InDelta(t, 120+2*8.3, float64(piece(t, p, box.Left).Width), 1e-9)
	ps := problems(t, rebated(8.4))
	assert.Equal(t, "Corners.Joint.Depth", ps[0].Path)
	assert.InDelta(t, 8.3, ps[0].Hi, 1e-9)
	// With boards of 14.9 alone the same rebate would do: 14.9 - 6 = 8.9.
	resolve(t, rebated(8.4).With(func(d *box.Design) { d.Board = thick(14.9) }))
	p = resolve(t, rebated(0))
	assert.InDelta(t, 134, float64(piece(t, p, box.Left).Width), 1e-9)
	ps = problems(t, orchard.With(func(d *box.Design) {
		d.Board = uneven
		d.Features = []box.Feature{box.Cut{On: box.Left, At: box.Anchor{Up: 60}, Shape: box.Round{Diameter: 9}, Depth: 14}}
	}))
	assert.Equal(t, "Features[0].Cut.Depth", ps[0].Path)
	assert.InDelta(t, 13.8, ps[0].Hi, 1e-9)
}

// One of Least and Most may be left out: Measured, else the nominal thickness,
// stands for the other.
func TestHalfMeasuredBoards(t *testing.T) {
	for _, x := range []struct {
		board     box.Board
		cut, deep float64 // thickness cut for, deepest rebate
	}{
		{box.Board{Thickness: 15}, 15, 9},
		{box.Board{Thickness: 15, Measured: 14.6}, 14.6, 8.6},
		{box.Board{Thickness: 15, Least: 14.3}, 15, 8.3},
		{box.Board{Thickness: 15, Most: 15.4}, 15.4, 9},
		{box.Board{Thickness: 15, Measured: 14.6, Most: 14.9}, 14.9, 8.6},
		{box.Board{Thickness: 15, Measured: 14.6, Least: 14.3}, 14.6, 8.3},
		{box.Board{Thickness: 15, Least: 15.2}, 15.2, 9.2}, // thicker than sold
		{box.Board{Thickness: 15, Most: 14.4}, 14.4, 8.4},  // thinner than sold
	} {
		d := orchard.With(func(d *box.Design) { d.Board = x.board; d.Corners.Joint = joints.Rebate{Depth: 14} })
		assert.InDelta(t, x.deep, problems(t, d)[0].Hi, 1e-9, "%+v", x.board)
		d.Corners.Joint = nil
		assert.InDelta(t, 120+2*x.cut, float64(piece(t, resolve(t, d), box.Front).Width), 1e-9, "%+v", x.board)
	}
}
