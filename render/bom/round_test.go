package bom

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"holt.example/box"
)

// built is a box cut to the rounded list and put together again.
type built struct {
	cut map[box.Part]cutSize // as Item.CutLength (upright) and CutWidth (across)
	h   handBox
}

func rebuild(h handBox, l List) built {
	b := built{map[box.Part]cutSize{}, h}
	for _, it := range l.Items {
		for _, p := range it.Parts {
			b.cut[p] = cutSize{length: float64(it.CutLength), width: float64(it.CutWidth)}
		}
	}
	return b
}

// wide is the rounded size of a part in the direction of its width, the roof's
// and the floor's depth being their length.
func (b built) wide(p box.Part) float64 { return b.cut[p].width }

// set is a depth as one sets it: down to 0.1 (written on its own, not with the
// functions under test; 1e-9 is above the noise of a product of two floats).
func set(x float64) float64 { return math.Floor(x*10+1e-9) / 10 }

// apart is the distance between the inner faces of the neighbours of wall a
// when all parts are pushed together: its rounded length less the thickness of
// the neighbours that it covers, less the cuts that it enters.
func (b built) apart(a, left, right box.Part) float64 {
	x := b.wide(a)
	for _, n := range [2]box.Part{left, right} {
		inner, outer := b.h.reach(a, n)
		if b.h.corners != mitre && b.h.corners != comb && !b.h.lapsOver(a, n) {
			inner = set(inner)
		}
		x -= inner + outer
	}
	return x
}

func onGrid(x, step float64) bool { return math.Abs(x/step-math.Round(x/step)) < 1e-6 }

func randomBox(r *rand.Rand) handBox {
	// A third of the figures are on the grid, where rounding must do nothing.
	figure := func(lo, hi float64) float64 {
		x := lo + (hi-lo)*r.Float64()
		if r.IntN(3) == 0 {
			x = math.Round(x*2) / 2
		}
		return x
	}
	h := handBox{
		w: figure(60, 300), d: figure(60, 300), h: figure(80, 400),
		corners: kind(r.IntN(4)), laps: box.Laps(r.IntN(3)), depth: figure(3, 7), raise: figure(0, 30), over: figure(0, 40),
		floor: r.IntN(4) > 0, roof: r.IntN(4) > 0, sidesFree: r.IntN(4) == 0, grainNone: false,
		t: map[box.Part]float64{},
	}
	even := r.IntN(2) == 0
	t := figure(9, 25)
	for _, p := range append(inTurn[:], box.Floor, box.Roof) {
		h.t[p] = t
		if !even {
			h.t[p] = figure(9, 25)
		}
	}
	if r.IntN(2) == 0 {
		h.housing = figure(2, 6)
	}
	h.backUnder = r.IntN(8) == 0 && h.laps == box.FrontBack
	return h
}

// TestRoundedPartsGoTogether cuts random boxes to their rounded lists and puts
// them together again in two ways: with every part where the plan has it, and
// pushed together.
func TestRoundedPartsGoTogether(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	tight := 0 // boxes whose floor had to shrink by more than its own rounding
	for range 4000 {
		h := randomBox(r)
		step := [2]float64{0.1, 0.5}[r.IntN(2)]
		s := h.source()
		l := s.list(Options{Step: box.MM(step)})
		b := rebuild(h, l)

		for _, p := range s.pieces {
			c := b.cut[p.Part]
			if !onGrid(c.length, step) || !onGrid(c.width, step) {
				t.Fatalf("%+v: %s is cut to %v, no multiples of %v", h, p.Part, c, step)
			}
			// A depth set to 0.1 takes less than 0.1 from each of two ends.
			if math.Abs(c.length-float64(p.Length)) > 2*step+0.2 || math.Abs(c.width-float64(p.Width)) > 2*step+0.2 {
				t.Fatalf("%+v: %s %v x %v is cut to %v", h, p.Part, p.Length, p.Width, c)
			}
		}
		// Walls: a guest goes in between its hosts where they stand in the plan
		// and leaves at most two steps; a part with no guest end is not short.
		for i, a := range inTurn {
			n := [2]box.Part{inTurn[(i+1)%4], inTurn[(i+3)%4]}
			true0 := h.w
			if a == box.Left || a == box.Right {
				true0 = h.d
			}
			room, guest := true0, false
			for _, q := range n {
				inner, outer := h.reach(a, q)
				if h.corners <= rebate && !h.lapsOver(a, q) {
					inner, guest = set(inner), true
				}
				room += inner + outer
			}
			gap := room - b.wide(a)
			switch {
			case guest && !(gap > -1e-6 && gap < 2*step+1e-6):
				t.Fatalf("%+v: %s, a guest, is cut to %v, room for it is %v", h, a, b.wide(a), room)
			case !guest && !(gap < 1e-6 && gap > -step-1e-6) && len(l.Items[itemOf(l, a)].Parts) == 1:
				t.Fatalf("%+v: %s, a host, is cut to %v of %v", h, a, b.wide(a), room)
			}
			// All walls are of one height: so they stay.
			if b.cut[a].length != b.cut[box.Front].length {
				t.Fatalf("%+v: %s is %v high, the front %v", h, a, b.cut[a].length, b.cut[box.Front].length)
			}
			gap = float64(s.pieces[i].Length) - b.cut[a].length
			if under := h.roof && !(h.sidesFree && (a == box.Left || a == box.Right)); under && gap < -1e-6 {
				t.Fatalf("%+v: %s reaches %v into the roof", h, a, -gap)
			}
		}
		if !h.floor {
			continue
		}
		// The floor, pushed together: x between left and right, y between front
		// and back.
		into := 2 * set(h.housing)
		for axis, f := range [2]float64{b.cut[box.Floor].width, b.cut[box.Floor].length} {
			walls, ends, size := [2]box.Part{box.Front, box.Back}, [2]box.Part{box.Left, box.Right}, h.w
			if axis == 1 {
				walls, ends, size = [2]box.Part{box.Left, box.Right}, [2]box.Part{box.Front, box.Back}, h.d
			}
			lo := math.Min(b.apart(walls[0], ends[0], ends[1]), b.apart(walls[1], ends[0], ends[1]))
			if f > lo+into+1e-6 {
				t.Fatalf("%+v, step %v: floor %v overlaps: the walls leave %v", h, step, f, lo+into)
			}
			if f < lo+into-2*step-1e-6 {
				t.Fatalf("%+v, step %v: floor %v is loose: the walls leave %v", h, step, f, lo+into)
			}
			if gap := size + into - f; gap < -1e-6 || gap > 2*step+1e-6 {
				t.Fatalf("%+v, step %v: floor %v in its place leaves %v", h, step, f, gap)
			}
			if f < down(size+into, step)-1e-6 {
				tight++
			}
		}
	}
	if tight < 50 {
		t.Errorf("only %d floors needed the room rule: the test does not reach it", tight)
	}
}

func itemOf(l List, p box.Part) int {
	for i, it := range l.Items {
		if slices.Contains(it.Parts, p) {
			return i
		}
	}
	return -1
}

// The figures are worked out by hand.
func TestRoundedSizes(t *testing.T) {
	type size struct{ length, width box.MM }
	tests := []struct {
		name string
		h    handBox
		step box.MM
		want map[box.Part]size
	}{
		// Front 120.3 + 2 x 14.6 = 149.5 stays; its height 240.2 + 14.6 = 254.8
		// goes under the roof: 254.5. Sides 130.2 between front and back: 130.
		// Floor 120.3 x 130.2: 120 x 130. Roof 149.5 + 40 = 189.5 by
		// 130.2 + 29.2 + 40 = 199.4, free all round: 199.5.
		{"butt", handBox{w: 120.3, d: 130.2, h: 240.2, t: evenly(14.6), floor: true, roof: true, over: 20}, 0.5, map[box.Part]size{
			box.Front: {254.5, 149.5}, box.Left: {254.5, 130}, box.Floor: {130, 120}, box.Roof: {199.5, 189.5},
		}},
		{"butt, machine", handBox{w: 120.33, d: 130.27, h: 240.25, t: evenly(14.6), floor: true, roof: true, over: 20}, 0.1, map[box.Part]size{
			box.Front: {254.8, 149.6}, box.Left: {254.8, 130.2}, box.Floor: {130.2, 120.3}, box.Roof: {199.5, 189.6},
		}},
		// Rebate 6.3: sides 120 + 12.6 = 132.6, down to 132.5. Pushed into the
		// rebates they set front and back 119.9 apart: the floor's 120 gives
		// way to 119.5.
		{"rebate", handBox{w: 100, d: 120, h: 200, t: evenly(14.6), corners: rebate, depth: 6.3, floor: true}, 0.5, map[box.Part]size{
			box.Left: {215, 132.5}, box.Floor: {119.5, 100},
		}},
		// A depth of 6.37 is set to 6.3, so 120 + 12.74 counts as 132.6: 132.5.
		{"rebate set", handBox{w: 100, d: 120, h: 200, t: evenly(14.6), corners: rebate, depth: 6.37}, 0.5, map[box.Part]size{
			box.Left: {200, 132.5},
		}},
		// Pinwheel, rebate 7: every wall 120 + 14.6 + 7 = 141.6, one end enters:
		// 141.5. That leaves 119.9: floor 119.5.
		{"pinwheel", handBox{w: 120, d: 120, h: 200, t: evenly(14.6), corners: rebate, depth: 7, laps: box.Pinwheel, floor: true}, 0.5, map[box.Part]size{
			box.Front: {215, 141.5}, box.Left: {215, 141.5}, box.Floor: {119.5, 119.5},
		}},
		// Mitres have no guest: 120.3 + 2 x 14.6 = 149.5; 100.1 + 29.2 = 129.3 up.
		{"mitre", handBox{w: 120.3, d: 100.1, h: 200.3, t: evenly(14.6), corners: mitre}, 0.5, map[box.Part]size{
			box.Front: {200.5, 149.5}, box.Left: {200.5, 129.5},
		}},
		{"comb", handBox{w: 120.3, d: 100.1, h: 200, t: evenly(14.6), corners: comb}, 0.5, map[box.Part]size{
			box.Front: {200, 149.5}, box.Left: {200, 129.5},
		}},
		// The sides' tops are free and alone would round up to 200.5; the front
		// goes under the roof. All walls are of one height.
		{"one height", handBox{w: 120, d: 120, h: 200.3, t: evenly(15), roof: true, sidesFree: true}, 0.5, map[box.Part]size{
			box.Front: {200, 150}, box.Left: {200, 120},
		}},
		// Boards 145 wide that are not to be ripped stay 145; open above, the
		// height of 200 + 14.6 goes up.
		{"board width", handBox{w: 115.8, d: 130.4, h: 200, t: evenly(14.6), corners: rebate, depth: 7.3, floor: true}, 0.5, map[box.Part]size{
			box.Front: {215, 145}, box.Left: {215, 145}, box.Floor: {130, 115.5},
		}},
		// Equal parts in different places: the front (100.3 + 20, up alone) and
		// the sides (120.3, down) are one item, so all are cut to 120; then the
		// front sets the sides 100 apart.
		{"equal", handBox{w: 100.3, d: 120.3, h: 200, t: evenly(10), floor: true}, 0.5, map[box.Part]size{
			box.Front: {210, 120}, box.Left: {210, 120}, box.Floor: {120, 100},
		}},
		// The grain from side to side: Length is across the panel.
		{"grain across", handBox{w: 120.3, d: 130.2, h: 200.2, t: evenly(14.7), floor: true, roof: true, grainAcross: true}, 0.5, map[box.Part]size{
			box.Front: {150, 214.5}, box.Left: {130, 214.5},
		}},
		// No grain: Length is the longer: the front is 114.9 up and 79.7 across,
		// the side 140.2 across.
		{"no grain", handBox{w: 50.3, d: 140.2, h: 100.2, t: evenly(14.7), floor: true, roof: true, grainNone: true}, 0.5, map[box.Part]size{
			box.Front: {114.5, 80}, box.Left: {140, 114.5},
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := tt.h.source().list(Options{Step: tt.step})
			for p, want := range tt.want {
				it := l.Items[itemOf(l, p)]
				if got := (size{it.CutLength, it.CutWidth}); got != want {
					t.Errorf("%s: %v x %v is cut to %v, want %v", p, it.Length, it.Width, got, want)
				}
			}
		})
	}
}

// Mirror images that stand in different places are cut alike too: like the case
// "equal" above, with the sides the mirror image of front and back.
func TestMirrorImagesAreCutAlike(t *testing.T) {
	s := handBox{w: 100.3, d: 120.3, h: 200, t: evenly(10), floor: true}.source()
	s.groups = []box.Group{
		{Number: 1, Parts: []box.Part{box.Front, box.Back}, Mirror: 2}, {Number: 2, Parts: []box.Part{box.Left, box.Right}, Mirror: 1},
		{Number: 3, Parts: []box.Part{box.Floor}},
	}
	for _, it := range s.list(Options{Step: 0.5}).Items[:2] {
		if it.CutLength != 210 || it.CutWidth != 120 {
			t.Errorf("%v are cut to %v x %v", it.Parts, it.CutLength, it.CutWidth)
		}
	}
}

func TestRoundingOfNumbers(t *testing.T) {
	for _, tt := range []struct{ x, step, down, up, nearest float64 }{
		{14.6, 0.1, 14.6, 14.6, 14.6},
		{14.6, 0.5, 14.5, 15, 14.5},
		{14.75, 0.5, 14.5, 15, 15},
		{0.1 + 0.2, 0.1, 0.3, 0.3, 0.3},         // 0.30000000000000004
		{3 * 1.1, 0.1, 3.3, 3.3, 3.3},           // 3.3000000000000003
		{120 - 1e-9, 0.5, 120, 120, 120},        // the noise of a plane
		{120 + 1e-9, 0.5, 120, 120, 120},        //
		{120.25 - 1e-9, 0.5, 120, 120.5, 120.5}, // a tie is a tie
		{120.2501, 0.0625, 120.25, 120.3125, 120.25},
		{-0.04, 0.1, -0.1, 0, 0},
	} {
		if d, u, n := down(tt.x, tt.step), up(tt.x, tt.step), nearest(tt.x, tt.step); d != tt.down || u != tt.up || n != tt.nearest || math.Signbit(n) != math.Signbit(tt.nearest) {
			t.Errorf("%v by %v: down %v, up %v, nearest %v; want %v, %v, %v", tt.x, tt.step, d, u, n, tt.down, tt.up, tt.nearest)
		}
	}
}
