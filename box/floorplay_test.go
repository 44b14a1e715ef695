package box_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/joints"
)

// A dry floor of solid wood may swell. Common data (EN 1313-1): 0.25 % of its
// width for 1 % of moisture, so over 6 % a floor 160 deep swells by 2.4 across a
// grain that runs from side to side, 1.2 at the front and at the back; a floor 120
// wide with its grain from front to back by 1.8, 0.9 at each side.
func TestPlayOfADryFloor(t *testing.T) {
	base := box.Design{Name: "floor", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 160, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{}}
	grain := func(g box.Grain) map[box.Part]box.Board {
		return map[box.Part]box.Board{box.Floor: {Thickness: 15, Grain: g}}
	}
	for _, x := range []struct {
		name           string
		floor          box.FloorBetween
		boards         map[box.Part]box.Board
		across, deep   float64   // of the floor
		voids          float64   // declared as play
		channels       [2]box.MM // depth of the housings: in the front, in the sides
		glued, screwed bool
	}{
		{"fast", box.FloorBetween{}, nil, 120, 160, 0, [2]box.MM{}, false, true},
		{"dry", box.FloorBetween{Dry: true}, nil, 120, 160 - 2.4, 2.4 * 120 * 15, [2]box.MM{}, false, true},
		{"dry, the other way", box.FloorBetween{Dry: true}, grain(box.GrainUp), 120 - 1.8, 160, 1.8 * 160 * 15, [2]box.MM{}, false, true},
		{"dry plywood", box.FloorBetween{Dry: true}, grain(box.GrainNone), 120, 160, 0, [2]box.MM{}, false, true},
		{"with a play of its own", box.FloorBetween{Play: 1}, nil, 118, 158, (120*160 - 118*158) * 15, [2]box.MM{}, false, true},
		// A rebate 7 deep: the floor is 134 x 174 when it is fast.
		{"dry in a rebate", box.FloorBetween{Dry: true, Joint: joints.Rebate{Depth: 7}}, nil, 134, 174 - 2.4, 2.4 * 134 * 15, [2]box.MM{}, false, false},
		// In housings 5 deep the floor is 130 x 170 and stays so: the room is under
		// its edges. Channels are 5 and the usual play of 0.2 deep, and across the
		// grain 1.2 besides. Play beside the floor: 0.2 wide on all sides, under it;
		// by the front 130 long at least.
		{"dry in a housing", box.FloorBetween{Raise: 20, Dry: true, Joint: joints.Housing{Depth: 5}}, nil, 130, 170, -1, [2]box.MM{6.4, 5.2}, false, false},
		{"in a dry housing", box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5, Dry: true}}, nil, 130, 170, -1, [2]box.MM{6.4, 5.2}, false, false},
		{"in a glued housing", box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5}}, nil, 130, 170, -1, [2]box.MM{5.2, 5.2}, true, false},
		{"in a housing that says its own", box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5, Dry: true, Swell: 0.5}}, nil, 130, 170, -1, [2]box.MM{5.7, 5.7}, false, false},
		{"with a play, in a housing", box.FloorBetween{Raise: 20, Play: 1, Joint: joints.Housing{Depth: 5}}, nil, 130, 170, -1, [2]box.MM{6.2, 6.2}, true, false},
	} {
		p, err := base.With(func(d *box.Design) { d.Floor, d.Boards = x.floor, x.boards }).Resolve()
		require.NoError(t, err, x.name)
		require.NoError(t, boxtest.CheckSound(p), x.name)
		floor, _ := p.Piece(box.Floor)
		e := floor.Panel.Silhouette.Extents()
		assert.InDelta(t, x.across, e.Width(), 1e-6, x.name)
		assert.InDelta(t, x.deep, e.Height(), 1e-6, x.name)
		sum := 0.0
		for _, v := range p.Voids() {
			if v.Kind == "play" {
				sum += v.Volume
			}
		}
		if x.voids >= 0 {
			assert.InDelta(t, x.voids, sum, 1e-3, x.name)
		}
		if x.channels[0] > 0 {
			for k, part := range []box.Part{box.Front, box.Left} {
				q, _ := p.Piece(part)
				deepest := box.MM(0)
				for _, op := range q.Panel.Ops {
					if op.Guest == box.Floor {
						deepest = max(deepest, op.To)
					}
				}
				assert.InDelta(t, float64(x.channels[k]), float64(deepest), 1e-6, "%s %s", x.name, part)
			}
		}
		glued, screwed, gap := false, false, box.MM(0)
		for _, m := range p.Seams() {
			if m.Under == box.Floor {
				glued = glued || m.Glued()
				for _, h := range m.Holds {
					screwed = screwed || h.Kind == "screw"
				}
				gap = max(gap, m.Least)
			}
		}
		assert.Equal(t, x.glued, glued, x.name)
		assert.Equal(t, x.screwed, screwed, x.name)
		if x.voids > 0 {
			assert.Positive(t, float64(gap), x.name)
		}
		words := strings.Join(p.Explain(box.Floor), "\n")
		assert.Equal(t, x.floor.Play == 0 && strings.Contains(x.name, "dry") && !strings.Contains(x.name, "ply"), strings.Contains(words, "1.2") || strings.Contains(words, "0.9"), "%s: %s", x.name, words)
	}
}

// What has no room for it says so.
func TestFloorsWithoutPlay(t *testing.T) {
	base := box.Design{Name: "floor", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 160, Height: 200}, Roof: box.Flat{}}
	for _, x := range []struct {
		floor      box.FloorBetween
		path, code string
	}{
		{box.FloorBetween{Play: -1}, "Floor.FloorBetween.Play", "range"},
		{box.FloorBetween{Play: 21}, "Floor.FloorBetween.Play", "range"},
		{box.FloorBetween{Play: 1, Joint: joints.Mitre{}}, "Floor.FloorBetween.Play", "play"},
		{box.FloorBetween{Dry: true, Joint: joints.Comb{}}, "Floor.FloorBetween.Dry", "play"},
		{box.FloorBetween{Raise: 20, Play: 9, Joint: joints.Housing{Depth: 5}}, "Floor.FloorBetween.Play", "joint"},
	} {
		_, err := base.With(func(d *box.Design) { d.Floor = x.floor }).Resolve()
		require.Error(t, err)
		found := false
		for _, p := range err.(box.Problems) {
			found = found || p.Path == x.path && p.Code == x.code
		}
		assert.True(t, found, "%s %s: %v", x.path, x.code, err)
	}
}

// Inner boards in dry housings have room to swell too, and a loose floor has it
// on all sides. A partition 160 wide with its grain up swells by 2.4, 1.2 at each
// wall; a shelf 120 x 160 has its grain along the 160 and swells by 1.8 to the
// sides, 0.9 at each. A third of 15 is 5, and 0.2 the usual play.
func TestPlayOfInnerParts(t *testing.T) {
	base := box.Design{Name: "inner", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 160, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{}}
	dry := joints.Housing{Dry: true}
	for _, x := range []struct {
		in     box.Inner
		name   box.Part
		depths map[box.Part]float64
	}{
		{box.Partition{Name: "p", Joint: dry}, "inner/p", map[box.Part]float64{box.Front: 6.4, box.Back: 6.4}},
		{box.Partition{Name: "p"}, "inner/p", map[box.Part]float64{box.Front: 5.2}},
		{box.Partition{Name: "p", Joint: joints.Housing{Dry: true, Swell: 0.4}}, "inner/p", map[box.Part]float64{box.Front: 5.6}},
		{box.Partition{Name: "p", Joint: dry, Board: box.Board{Thickness: 15, Grain: box.GrainAcross}}, "inner/p", map[box.Part]float64{box.Front: 5.2}},
		{box.Partition{Name: "p", Joint: dry, Board: box.Board{Thickness: 15, Grain: box.GrainNone}}, "inner/p", map[box.Part]float64{box.Front: 5.2}},
		{box.Shelf{Name: "s", Above: 80, Joint: &joints.Housing{Dry: true}}, "inner/s", map[box.Part]float64{box.Front: 5.2, box.Back: 5.2, box.Left: 6.1, box.Right: 6.1}},
	} {
		p, err := base.With(func(d *box.Design) { d.Inner = []box.Inner{x.in} }).Resolve()
		require.NoError(t, err)
		require.NoError(t, boxtest.CheckSound(p))
		for on, want := range x.depths {
			q, _ := p.Piece(on)
			got := box.MM(0)
			for _, op := range q.Panel.Ops {
				if op.Guest == x.name {
					got = max(got, op.To)
				}
			}
			assert.InDelta(t, want, float64(got), 1e-6, "%+v %s", x.in, on)
		}
	}
	// Loose floors: 120 x 160 across its grain 120: 0.9 is less than 2. 400 x 360:
	// 360 x 1.5 % / 2 = 2.7, so 394.6 x 354.6.
	for _, x := range []struct{ w, d, less float64 }{{120, 160, 4}, {400, 360, 5.4}} {
		p, err := base.With(func(d *box.Design) {
			d.Size = box.Cavity{Width: box.MM(x.w), Depth: box.MM(x.d), Height: 200}
			d.Inner = []box.Inner{box.FalseFloor{Name: "f", Room: 20}}
		}).Resolve()
		require.NoError(t, err)
		q, _ := p.Piece("inner/f")
		e := q.Panel.Silhouette.Extents()
		assert.InDelta(t, x.w-x.less, e.Width(), 1e-6)
		assert.InDelta(t, x.d-x.less, e.Height(), 1e-6)
	}
}
