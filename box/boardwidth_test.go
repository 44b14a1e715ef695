package box_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
)

var fourWalls = []box.Part{box.Front, box.Right, box.Back, box.Left}

// boardBox is a box from one board of the given width and thickness.
func boardBox(width, t box.MM, laps box.Laps, j joints.Joint) box.Design {
	return box.Design{Name: "one board", Board: box.Board{Thickness: t, Width: width}, Size: box.BoardWidth{Width: width, Height: 240},
		Corners: box.Corners{Joint: j, Laps: laps}, Floor: box.FloorBetween{}, Roof: box.Flat{}}
}

// One board cross-cut and never ripped, worked by hand: what laps over gives
// the cavity its width, what stands between gives it its depth.
func TestCavityFromTheBoardWidth(t *testing.T) {
	for _, x := range []struct {
		width, t box.MM
		laps     box.Laps
		joint    joints.Joint
		w, d     float64
	}{
		{145, 14.6, box.FrontBack, nil, 115.8, 145},                       // 145 - 2 x 14.6; sides as they are
		{148, 14.6, box.FrontBack, nil, 118.8, 148},                       // 148 - 29.2
		{145, 14.6, box.FrontBack, joints.Rebate{Depth: 7}, 115.8, 131},   // sides enter by 7 twice: 145 - 14
		{145, 14.6, box.FrontBack, joints.Rebate{}, 115.8, 131},           // the default depth of 14.6 is 7
		{145, 14.6, box.Sides, nil, 145, 115.8},                           // turned by a quarter
		{145, 14.6, box.Sides, joints.Rebate{Depth: 7}, 131, 115.8},       //
		{145, 14.6, box.Pinwheel, nil, 130.4, 130.4},                      // each laps once: 145 - 14.6
		{145, 14.6, box.Pinwheel, joints.Rebate{Depth: 7}, 123.4, 123.4},  // and enters once: 145 - 14.6 - 7
		{145, 14.6, box.FrontBack, joints.Mitre{}, 115.8, 115.8},          // 145 - 2 x 14.6 both ways
		{145, 14.6, box.FrontBack, joints.Comb{}, 115.8, 115.8},           //
		{145, 14.6, box.Pinwheel, joints.Comb{Fingers: 7}, 115.8, 115.8},  //
		{145, 14.6, box.FrontBack, joints.Rebate{Depth: 3.5}, 115.8, 138}, // 145 - 7
	} {
		p := resolve(t, boardBox(x.width, x.t, x.laps, x.joint))
		w, d, h := p.Inside()
		assert.InDelta(t, x.w, float64(w), 1e-9, "%+v", x)
		assert.InDelta(t, x.d, float64(d), 1e-9, "%+v", x)
		assert.InDelta(t, 240, float64(h), 1e-12)
		for _, name := range fourWalls {
			assert.InDelta(t, float64(x.width), float64(piece(t, p, name).Width), 1e-9, "%s of %+v", name, x)
		}
		for _, f := range p.Findings() {
			if f.Code == "wider-than-board" {
				assert.Equal(t, box.Roof, f.Part, "%+v", x) // only the roof is not promised
			}
		}
	}
}

// 145 x 14.6, butted, front and back lapping: the floor lies with its grain
// across, 115.8 long and as wide as the board, so that nothing is ripped.
// Front and back come out 145 wide because 115.8 + 2 x 14.6 = 145.
func TestFloorOfOneBoardIsNotRipped(t *testing.T) {
	p := resolve(t, boardBox(145, 14.6, box.FrontBack, nil))
	f := piece(t, p, box.Floor)
	assert.InDelta(t, 115.8, float64(f.Length), 1e-9)
	assert.InDelta(t, 145, float64(f.Width), 1e-9)
	assert.Equal(t, [2]float64{1, 0}, f.Panel.Grain) // along u: side to side
	// A rebate of 7 makes the floor 115.8 x 131: ripped. Housed by as much as
	// the sides enter, 131 + 2 x 7, it is a whole board again: 129.8 x 145.
	f = piece(t, resolve(t, boardBox(145, 14.6, box.FrontBack, joints.Rebate{Depth: 7})), box.Floor)
	assert.InDelta(t, 131, float64(f.Width), 1e-9)
	d := boardBox(145, 14.6, box.FrontBack, joints.Rebate{Depth: 7})
	d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 7, Tight: true}}
	f = piece(t, resolve(t, d), box.Floor)
	assert.InDelta(t, 129.8, float64(f.Length), 1e-9)
	assert.InDelta(t, 145, float64(f.Width), 1e-9)
	// The roof needs another board unless it overhangs by exactly
	// B - W - tL - tR = 0 at the sides: 145 wide here, and then 174.2 long.
	r := piece(t, resolve(t, boardBox(145, 14.6, box.FrontBack, nil)), box.Roof)
	assert.InDelta(t, 145, float64(r.Width), 1e-9)
	assert.InDelta(t, 174.2, float64(r.Length), 1e-9) // 145 + 2 x 14.6
}

// Four thicknesses and two widths of board: every wall is as wide as its board
// for any corner. The cavity by the table: B less what the walls' ends take.
func TestEveryWallIsAWholeBoard(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(9, 9))
	mm := func(lo, hi float64) box.MM { return box.MM(lo + (hi-lo)*r.Float64()) }
	for range 300 {
		b, sides := mm(120, 250), mm(120, 250)
		depth := mm(3, 5)
		tf, tr, tb, tl := mm(12, 22), mm(12, 22), mm(12, 22), mm(12, 22)
		laps := box.Laps(r.IntN(3))
		kind := r.IntN(4)
		if laps == box.Pinwheel { // unlike boards would need unlike widths there
			tb, tl = tf, tr
		}
		if kind == 1 { // so that no mitre reverses
			tr, tb, tl = tf, tf, tf
		}
		j := []joints.Joint{nil, joints.Mitre{}, joints.Rebate{Depth: depth}, joints.Comb{}}[kind]
		var in float64 // how far the part that is lapped over enters
		if kind == 2 {
			in = float64(depth)
		}
		f, rt, bk, l := float64(tf), float64(tr), float64(tb), float64(tl)
		w, dp := float64(b), float64(sides)
		switch {
		case kind == 1 || kind == 3:
			w, dp = w-l-rt, dp-f-bk
		case laps == box.FrontBack:
			w, dp = w-l-rt, dp-2*in
		case laps == box.Sides:
			w, dp = w-2*in, dp-f-bk
		default: // the front laps over the right and enters the left
			w, dp = w-rt-in, dp-bk-in
		}
		d := boardBox(b, 15, laps, j)
		d.Size = box.BoardWidth{Width: b, Sides: sides, Height: 200}
		d.Boards = map[box.Part]box.Board{box.Front: thick(tf), box.Right: thick(tr), box.Back: thick(tb), box.Left: thick(tl)}
		p := resolve(t, d)
		gw, gd, _ := p.Inside()
		require.InDelta(t, w, float64(gw), 1e-9)
		require.InDelta(t, dp, float64(gd), 1e-9)
		for i, name := range fourWalls {
			want := b
			if i%2 == 1 {
				want = sides
			}
			// Two planes rounded to 2^-30 each.
			require.InDelta(t, float64(want), float64(piece(t, p, name).Width), 4e-9, "%s", name)
		}
	}
}

// What a board's width cannot fix is refused.
func TestBoardWidthsThatFixNothing(t *testing.T) {
	base := boardBox(145, 14.6, box.FrontBack, nil)
	for _, x := range []struct {
		change     func(*box.Design)
		path, code string
	}{
		// The sides stand between leaning walls and taper.
		{func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Lean: 5}} }, "Walls[0].Lean", "taper"},
		{func(d *box.Design) { d.Footprint = box.Regular{Sides: 6, Across: 150} }, "Size.BoardWidth", "footprint"},
		// Each laps over the next: the front over the right 20, the back over the left 14.6.
		{func(d *box.Design) {
			d.Corners.Laps, d.Boards = box.Pinwheel, map[box.Part]box.Board{box.Right: thick(20)}
		}, "Size.BoardWidth.Width", "unequal"},
		{func(d *box.Design) {
			d.Corners.Laps, d.Boards = box.Pinwheel, map[box.Part]box.Board{box.Back: thick(20)}
		}, "Size.BoardWidth.Sides", "unequal"},
		// 28 wide less 2 x 14.6 leaves nothing.
		{func(d *box.Design) { d.Size = box.BoardWidth{Width: 28, Height: 200} }, "Size", "no-cavity"},
	} {
		ps := problems(t, base.With(x.change))
		assert.Equal(t, [2]string{x.path, x.code}, [2]string{ps[0].Path, ps[0].Code}, "%v", ps)
	}
}
