package box_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/solid"
	"holt.example/joints"
)

// stand is a plain box whose numbers are easy: 180 x 180 outside, its walls from
// -15 to 200 under a level roof, everything 15 thick and butted.
var stand = box.Design{Name: "stand", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
	Floor: box.FloorBetween{}, Roof: box.Flat{}}

// hung is the worked example: the long back runs on 80 above a pent roof and 60
// below the floor.
var hung = box.Design{Name: "hung", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
	Floor: box.FloorBetween{}, Roof: box.Pent{Pitch: 12, Over: box.Overhangs{Front: 50, Left: 30, Right: 30}},
	Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
	Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 120}}}

func deg(x float64) float64 { return x * math.Pi / 180 }

// is is what a part should measure: along the grain, across it, and its volume.
type is struct {
	part                  box.Part
	length, width, volume float64
}

// measures resolves a design, proves it sound, and compares parts.
func measures(t *testing.T, d box.Design, want []is) *box.Plan {
	t.Helper()
	p := boxtest.Resolve(t, d)
	require.NotNil(t, p)
	boxtest.Sound(t, p)
	for _, w := range want {
		q := piece(t, p, w.part)
		assert.InDelta(t, w.length, float64(q.Length), 1e-6, "%s long", w.part)
		assert.InDelta(t, w.width, float64(q.Width), 1e-6, "%s wide", w.part)
		assert.InDelta(t, w.volume, q.Volume, 0.02, "%s volume", w.part)
		m, err := p.Mesh(w.part)
		require.NoError(t, err)
		assert.InDelta(t, w.volume, m.Volume(), 0.02, "%s mesh", w.part)
	}
	return p
}

// A shelf in four walls is 5 (a third of 15) longer at each end: 160 x 160. Its
// play: channels 5.2 deep and 15.2 wide, tongues 5 x 15, so 79.04 - 75 = 4.04 in
// section; front and back hold the corners too, 160 long, the sides 150.
func TestShelfInFourWalls(t *testing.T) {
	d := stand.With(func(d *box.Design) { d.Inner = []box.Inner{box.Shelf{Name: "shelf", Above: 90}} })
	p := measures(t, d, []is{{"inner/shelf", 160, 160, 160 * 160 * 15}})
	assert.InDelta(t, 2*4.04*(160+150), voidOf(p, "play", ""), 1e-3)
	lo, hi := bounds(t, p, "inner/shelf")
	assert.InDelta(t, 90, lo.Z, 1e-6)
	assert.InDelta(t, 105, hi.Z, 1e-6)
	seams := 0
	for _, s := range p.Seams() {
		if s.Under == "inner/shelf" {
			seams++
			assert.Equal(t, "housing", s.Joint)
		}
	}
	assert.Equal(t, 4, seams)
	// The front loses its channel: 160 x 5.2 x 15.2.
	bare := piece(t, resolve(t, stand), box.Front).Volume
	assert.InDelta(t, 160*5.2*15.2, bare-piece(t, p, box.Front).Volume, 1e-3)
}

func TestShelves(t *testing.T) {
	for _, x := range []struct {
		name  string
		shelf box.Shelf
		long  float64
		wide  float64
		vol   float64
	}{
		// Housed into left and right alone: 160 by 150 - 40 - 10.
		{"between two walls", box.Shelf{Name: "s", Above: 50, Gaps: box.Gaps{Front: 40, Back: 10}}, 160, 100, 240000},
		// Along the back, 60 deep with its tongue of 5, and into both sides.
		{"ledge", box.Shelf{Name: "s", Above: 50, Gaps: box.Gaps{Front: 95}}, 160, 60, 160 * 60 * 15},
		{"butted", box.Shelf{Name: "s", Above: 50, Joint: joints.Butt{}}, 150, 150, 150 * 150 * 15},
		{"all gaps but one", box.Shelf{Name: "s", Above: 50, Joint: joints.Butt{}, Gaps: box.Gaps{All: 20, Back: 30}}, 110, 100, 110 * 100 * 15},
		{"on the floor", box.Shelf{Name: "s", Joint: joints.Butt{}, Board: thick(6)}, 150, 150, 150 * 150 * 6},
	} {
		d := stand.With(func(d *box.Design) { d.Inner = []box.Inner{x.shelf} })
		t.Run(x.name, func(t *testing.T) { measures(t, d, []is{{"inner/s", x.long, x.wide, x.vol}}) })
	}
}

// Butted against a left wall that leans out 10 degrees, a shelf from 90 to 105 is
// 150 + 97.5 tan 10 wide in its middle; its blank reaches 150 + 105 tan 10.
func TestShelfAgainstALeaningWall(t *testing.T) {
	d := stand.With(func(d *box.Design) {
		d.Walls = []box.Wall{{On: box.Left, Lean: 10}}
		d.Inner = []box.Inner{box.Shelf{Name: "s", Above: 90, Joint: joints.Butt{}}}
	})
	tan := math.Tan(deg(10))
	p := measures(t, d, []is{{"inner/s", 150 + 105*tan, 150, 150 * 15 * (150 + 97.5*tan)}})
	for _, e := range piece(t, p, "inner/s").Panel.Edges {
		if e.Neighbour == box.Left {
			assert.InDelta(t, 10, math.Abs(float64(e.Bevel)), 1e-6)
		}
	}
	// Housed, it still divides its corners without a leak.
	d.Inner[0] = box.Shelf{Name: "s", Above: 90}
	boxtest.Sound(t, resolve(t, d))
}

// A hexagon 200 across has 2 sqrt(3) r^2 of area, its shelf r = 100 + 5.
func TestShelfInAHexagon(t *testing.T) {
	d := box.Design{Name: "hexagon", Board: thick(15), Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 6, Across: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{}, Inner: []box.Inner{box.Shelf{Name: "s", Above: 90}}}
	q := piece(t, resolve(t, d), "inner/s")
	assert.InDelta(t, 2*math.Sqrt(3)*105*105*15, q.Volume, 1e-2)
	assert.InDelta(t, 210, float64(min(q.Length, q.Width)), 1e-6)
}

// A tray with 2 of play: 146 x 146 less four holes of 8; its bearers 20 high; a
// rim 30 high, the ones in front and behind lapping over those of the
// sides: 146 and 146 - 2 x 15 = 116 long.
func TestFalseFloor(t *testing.T) {
	d := stand.With(func(d *box.Design) {
		d.Inner = []box.Inner{box.FalseFloor{Name: "tray", Room: 20, Rim: 30}}
	})
	p := measures(t, d, []is{
		{"inner/tray", 146, 146, 146*146*15 - 4*math.Pi*16*15},
		{"inner/tray bearer 1", 146, 20, 146 * 20 * 15},
		{"inner/tray bearer 2", 146, 20, 146 * 20 * 15},
		{"inner/tray rim 1", 146, 30, 146 * 30 * 15},
		{"inner/tray rim 2", 116, 30, 116 * 30 * 15},
		{"inner/tray rim 3", 146, 30, 146 * 30 * 15},
		{"inner/tray rim 4", 116, 30, 116 * 30 * 15},
	})
	lo, hi := bounds(t, p, "inner/tray")
	assert.InDelta(t, 20, lo.Z, 1e-6)
	assert.InDelta(t, -73, lo.X, 1e-6)
	assert.InDelta(t, 73, hi.Y, 1e-6)
	lo, _ = bounds(t, p, "inner/tray bearer 1")
	assert.InDelta(t, 0, lo.Z, 1e-6)
	assert.InDelta(t, -73, lo.X, 1e-6)
	fs := p.Fittings()
	require.Len(t, fs, 1)
	assert.Equal(t, 4, fs[0].Count)
	assert.Equal(t, "4 x 30", fs[0].Size) // 15 + 20 - 3 = 32, down to 30; 2.5 x 15 = 37.5 is longer
	// Without a rim there are three parts, and no play of its own is 1.
	d.Inner[0] = box.FalseFloor{Name: "tray", Room: 20, Play: 1, Hole: 10}
	p = measures(t, d, []is{{"inner/tray", 148, 148, 148*148*15 - 4*math.Pi*25*15}})
	assert.Len(t, p.Pieces(), 6+3)
}

// Three baffles of 12 and crevices of 20: the first from -58 + 20 to -26 where the
// cavity is 4 x 20 + 3 x 12 = 116 deep.
func TestBaffles(t *testing.T) {
	d := stand.With(func(d *box.Design) {
		d.Size = box.Cavity{Width: 150, Depth: 116, Height: 200}
		d.Floor = box.NoFloor{}
		d.Inner = []box.Inner{box.Baffles{Name: "baffle", Run: box.RunLeftToRight, Count: 3, Crevice: 20, Above: 10, Room: 25, Board: thick(12)}}
	})
	var want []is
	for i := 1; i <= 3; i++ {
		want = append(want, is{box.Part(fmt.Sprintf("inner/baffle/%d", i)), 165, 160, 165 * 160 * 12}) // 200 - 25 - 10 high
	}
	p := measures(t, d, want)
	for i := range 3 {
		lo, hi := bounds(t, p, want[i].part)
		assert.InDelta(t, -58+20+32*float64(i), lo.Y, 1e-6)
		assert.InDelta(t, lo.Y+12, hi.Y, 1e-6)
		assert.InDelta(t, 10, lo.Z, 1e-6)
		assert.InDelta(t, 175, hi.Z, 1e-6)
	}
	// Evenly spread they are where they were; two of them leave the rest behind.
	even := d.With(func(d *box.Design) {
		d.Inner[0] = box.Baffles{Name: "baffle", Run: box.RunLeftToRight, Count: 3, Board: thick(12)}
	})
	lo, _ := bounds(t, resolve(t, even), "inner/baffle/3")
	assert.InDelta(t, -58+20+64, lo.Y, 1e-6)
	two := d.With(func(d *box.Design) {
		d.Inner[0] = box.Baffles{Name: "baffle", Count: 2, Crevice: 15, Board: thick(12)}
	})
	lo, _ = bounds(t, resolve(t, two), "inner/baffle/2")
	assert.InDelta(t, -75+15+12+15, lo.X, 1e-6)
}

// A lobby 50 deep behind the front: from -75 + 50 to -10; its doorway of 40 x 40
// lies 60 to the right of the middle of 150, 30 over the floor. Housed 5 deep into
// the sides it is 160 wide.
func TestLobby(t *testing.T) {
	lobby := box.Lobby{Name: "lobby", Deep: 50, Shape: box.Rect{Width: 40, Height: 40}, At: box.Anchor{Right: 40, Level: box.LowestAbove, Up: 30}}
	for _, x := range []struct {
		behind box.Part
		axis   func(solid.Vec) float64
		lo     float64
	}{
		{"", func(v solid.Vec) float64 { return v.Y }, -25},
		{box.Back, func(v solid.Vec) float64 { return v.Y }, 10},
		{box.Left, func(v solid.Vec) float64 { return v.X }, -25},
		{box.Right, func(v solid.Vec) float64 { return v.X }, 10},
	} {
		d := stand.With(func(d *box.Design) {
			lobby.Behind = x.behind
			d.Inner = []box.Inner{lobby}
		})
		p := measures(t, d, []is{{"inner/lobby", 200, 160, (160*200 - 1600) * 15}})
		lo, hi := bounds(t, p, "inner/lobby")
		assert.InDelta(t, x.lo, x.axis(lo), 1e-6, x.behind)
		assert.InDelta(t, x.lo+15, x.axis(hi), 1e-6, x.behind)
		m, err := p.Mesh("inner/lobby")
		require.NoError(t, err)
		assert.Equal(t, 1, m.Genus())
	}
}

// 178 wide with 1 of play in 180; 10 of wood beside the holes: (178 - 20 - 8)/20
// leaves room for 8 of 8 mm, (178 - 20 - 5)/20 for 8 of 5 mm. Blind holes leave
// the solid without handles, and take pi r^2 depth each.
func TestBeeBlock(t *testing.T) {
	d := stand.With(func(d *box.Design) {
		d.Size = box.Cavity{Width: 180, Depth: 140, Height: 200}
		d.Walls = []box.Wall{{On: box.Front, Open: true}}
		d.Inner = []box.Inner{box.BeeBlock{Name: "block", Height: 150, Board: thick(140),
			Rows: []box.BeeRow{{Diameter: 8, Depth: 120, Repeat: 2}, {Diameter: 5, Depth: 90}, {Diameter: 3, Depth: 60, Count: 2}}}}
	})
	holes := math.Pi * (16*16*120 + 8*6.25*90 + 2*2.25*60)
	p := measures(t, d, []is{{"inner/block", 178, 150, 178*150*140 - holes}})
	q := piece(t, p, "inner/block")
	n := 0
	for _, op := range q.Panel.Ops {
		assert.Equal(t, box.OpBore, op.Kind)
		assert.Equal(t, box.SideMachined, op.Side)
		assert.Equal(t, box.FromOuter, q.Panel.Face)
		_, dia, ok := op.Region[0].IsCircle(1e-6)
		assert.True(t, ok)
		assert.InDelta(t, float64(op.Tool.Diameter), dia, 1e-6)
		n++
	}
	assert.Equal(t, 16+8+2, n)
	// Across the grain, which runs from side to side: into side grain.
	assert.Equal(t, [2]float64{1, 0}, q.Panel.Grain)
	m, err := p.Mesh("inner/block")
	require.NoError(t, err)
	assert.Equal(t, 0, m.Genus())
	// It faces forward, flush with the open front.
	lo, hi := bounds(t, p, "inner/block")
	assert.InDelta(t, -70, lo.Y, 1e-6)
	assert.InDelta(t, 70, hi.Y, 1e-6)
	// The lowest row has its rims 10 over the block's lower edge.
	assert.InDelta(t, 14, q.Panel.Ops[0].Region[0].Extents().Centre().Y, 1e-6)
}
