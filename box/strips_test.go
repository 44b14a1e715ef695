package box_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/solid"
)

// wide is a box whose front is 536 wide: 506 and two sides of 15, which it laps
// over. It is 300 + 15 + 20 high, and a flat roof leaves its top square.
var wide = box.Design{
	Name: "wide", Board: box.Board{Thickness: 15, Width: 145},
	Size: box.Cavity{Width: 506, Depth: 130, Height: 300},
	Roof: box.Flat{Over: box.Overhangs{All: 20}}, Floor: box.FloorBetween{Raise: 20},
	MadeUp: []box.MadeUp{{Of: box.Front}},
}

func madeOf(j box.EdgeJoint) box.Design {
	return wide.With(func(d *box.Design) { d.MadeUp[0].Joint = j })
}

// stripsDesign sets every field of made-up parts.
func stripsDesign(rect box.Design) box.Design {
	return rect.With(func(d *box.Design) {
		board := box.Board{Thickness: 5, Measured: 4.9, Least: 4.8, Most: 5, Width: 100, Density: 600}
		d.MadeUp = []box.MadeUp{
			{Of: box.AllWalls, Width: 95, Least: 50, Joint: box.TongueGroove{Tongue: 6, Thickness: 4, Play: 0.3, Gap: 1}},
			{Of: box.Left, Width: 95, Least: 50, Joint: box.LooseTongue{Width: 12, Board: board, Play: 0.1}},
			{Of: box.AllRoof, Width: 100, Least: 50, Joint: box.Shiplap{Lap: 10, Gap: 1}},
			{Of: box.Floor, Width: 90, Least: 50, Joint: box.EdgeGlued{}},
		}
		d.Features = d.Features[:1]
	})
}

// The widths of strips, worked by hand: n boards that each cover their width
// less the tongue or lap, n-1 gaps between them.
func TestWidthsOfStrips(t *testing.T) {
	for _, x := range []struct {
		what         string
		wide, board  box.MM
		joint        box.EdgeJoint
		n            int
		cover, first float64 // what shows of each; the first is as much wider as its tongue or lap
	}{
		{"a wide front", 536, 145, nil, 4, 134, 134},                 // 536/145 = 3.7
		{"the same by name", 536, 145, box.EdgeGlued{}, 4, 134, 134}, // likewise
		{"nothing to spare", 435, 145, nil, 3, 145, 145},             // 3 x 145 exactly
		{"a hair over", 435.1, 145, nil, 4, 108.775, 108.775},        // 435.1/4
		{"loose tongues take no width", 536, 145, box.LooseTongue{}, 4, 134, 134},
		{"tongue 8", 536, 145, box.TongueGroove{Tongue: 8}, 4, 134, 142},                   // cover 137: 3.91
		{"tongue 10", 600, 145, box.TongueGroove{Tongue: 10}, 5, 120, 130},                 // cover 135: 4.44
		{"tongue of its own", 536, 145, box.TongueGroove{}, 4, 134, 139},                   // a third of 15, as long as thick
		{"tongue and gap", 536, 145, box.TongueGroove{Tongue: 8, Gap: 2}, 4, 132.5, 140.5}, // (536+2)/(137+2) = 3.87; (536-3x2)/4
		{"lap", 536, 145, box.Shiplap{Lap: 12}, 5, 107.2, 119.2},                           // cover 133: 4.03
		{"lap and gap", 536, 145, box.Shiplap{Lap: 12, Gap: 2}, 4, 132.5, 144.5},           // (536+2)/(133+2) = 3.99
		{"five from 135", 536, 135, box.TongueGroove{Tongue: 8}, 5, 107.2, 115.2},          // cover 127: 4.22
	} {
		d := madeOf(x.joint).With(func(d *box.Design) {
			d.Size = box.Cavity{Width: x.wide - 30, Depth: 130, Height: 300}
			d.MadeUp[0].Width = x.board
		})
		p := resolve(t, d)
		require.Len(t, p.Wholes(), 1, x.what)
		w := p.Wholes()[0]
		require.Len(t, w.Strips, x.n, x.what)
		assert.Equal(t, x.board, w.Boards)
		assert.InDelta(t, x.cover, float64(w.Cover), 1e-6, x.what)
		for k, name := range w.Strips {
			q := piece(t, p, name)
			assert.Equal(t, box.StripN(box.Front, k+1), name)
			want := x.first
			if k == x.n-1 {
				want = x.cover // the last has no tongue
			}
			assert.InDelta(t, want, float64(q.Width), 1e-6, "%s: %s", x.what, name)
			assert.InDelta(t, 335, float64(q.Length), 1e-6, "%s: %s", x.what, name)
			assert.LessOrEqual(t, float64(q.Width), float64(x.board)+1e-6, "%s: %s", x.what, name)
			assert.Equal(t, box.Front, q.Of)
		}
		boxtest.Sound(t, p)
		for _, f := range p.Findings() {
			assert.False(t, f.Code == "wider-than-board" && strings.HasPrefix(string(f.Part), "front"), x.what)
		}
	}
}

// A part that one board covers stays whole, to the last tenth of a micron.
func TestNarrowPartsStayWhole(t *testing.T) {
	for _, j := range []box.EdgeJoint{nil, (*box.TongueGroove)(nil), box.TongueGroove{Tongue: 10}, box.Shiplap{Lap: 20}} {
		p := resolve(t, madeOf(j).With(func(d *box.Design) {
			d.Size = box.Cavity{Width: 115, Depth: 130, Height: 300} // 145 with the sides
			d.MadeUp = append(d.MadeUp, box.MadeUp{Of: box.Left, Joint: j})
		}))
		assert.Empty(t, p.Wholes())
		assert.InDelta(t, 145, float64(piece(t, p, box.Front).Width), 1e-9)
		assert.Equal(t, box.Part(""), piece(t, p, box.Front).Of)
	}
}

// Where nothing else differs, strips that have the same neighbours are equal.
func TestEqualStrips(t *testing.T) {
	count := func(j box.EdgeJoint) []int {
		var ns []int
		for _, g := range resolve(t, madeOf(j)).Groups() {
			if strings.HasPrefix(string(g.Parts[0]), "front/") {
				ns = append(ns, len(g.Parts))
			}
		}
		return ns
	}
	assert.Equal(t, []int{4}, count(nil))
	assert.Equal(t, []int{2, 2, 3}, count(box.LooseTongue{}), "outer strips, inner ones, tongues")
	assert.Equal(t, []int{1, 2, 1}, count(box.TongueGroove{Tongue: 8}))
	// The last of five has no lip under a next one and is narrower.
	assert.Equal(t, []int{1, 3, 1}, count(box.Shiplap{Lap: 12}))
}

// What the strips hold together is the part less the play of their joints; the
// play by hand, per mm of length, and as the plan declares it.
func TestVolumesOfStrips(t *testing.T) {
	for _, x := range []struct {
		joint box.EdgeJoint
		play  float64 // mm2
	}{
		{nil, 0},
		// Two grooves 4 + 0.2 thick and 15/2 + 0.2 deep, less a tongue 4 x 15.
		{box.LooseTongue{}, 2*4.2*7.7 - 60},
		{box.LooseTongue{Width: 20, Board: box.Board{Thickness: 4}, Play: 0.5}, 2*4.5*10.5 - 80},
		// A groove 5.2 x 8.2 less a tongue 5 x 8.
		{box.TongueGroove{Tongue: 8}, 5.2*8.2 - 40},
		// The same and a gap of 2 above and below the groove: 15 - 5.2 thick.
		{box.TongueGroove{Tongue: 8, Gap: 2}, 5.2*8.2 - 40 + 2*(15-5.2)},
		{box.Shiplap{Lap: 12}, 0},
		{box.Shiplap{Lap: 12, Gap: 2}, 2 * 15},
	} {
		p := resolve(t, madeOf(x.joint))
		w := p.Wholes()[0]
		whole := 536.0 * 335 * 15
		assert.InDelta(t, whole, w.Volume, 1e-2)
		sum := 0.0
		for _, name := range append(append([]box.Part(nil), w.Strips...), w.Tongues...) {
			sum += piece(t, p, name).Volume
		}
		lost := float64(len(w.Strips)-1) * 335 * x.play
		assert.InDelta(t, whole-lost, sum, 1e-2, "%T", x.joint)
		// Voids are owned between the outer planes; the front runs 20 below them.
		assert.InDelta(t, lost*315/335, voidOf(p, "play", ""), 1e-2, "%T", x.joint)
	}
}

// fills reports whether a place lies within a body, prisms apart.
func fills(b box.Piece, at solid.Vec) bool {
	for _, h := range b.Body.Base {
		if h.At(at) > 0 {
			return false
		}
	}
	for _, c := range b.Body.Cutters {
		in := true
		for _, h := range c {
			in = in && h.At(at) <= 0
		}
		if in {
			return false
		}
	}
	return true
}

// owner is the piece that holds a place, "" if none does.
func owner(p *box.Plan, at solid.Vec) box.Part {
	for _, q := range p.Pieces() {
		if fills(q, at) {
			return q.Part
		}
	}
	return ""
}

// The layers of each joint, probed from the inner face of the front (y = -65)
// outwards, beside the plane between the first two strips at x = -134.
func TestLayersOfEdgeJoints(t *testing.T) {
	for _, x := range []struct {
		joint  box.EdgeJoint
		dx     float64 // right of the plane
		layers []box.Part
	}{ // every 1.5 mm: w = 0.75, 2.25, ... 14.25
		{nil, 1, []box.Part{"front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2"}},
		{nil, -1, []box.Part{"front/1", "front/1", "front/1", "front/1", "front/1", "front/1", "front/1", "front/1", "front/1", "front/1"}},
		// The tongue is 5 thick: 5 to 10 over the inner face.
		{box.TongueGroove{Tongue: 8}, 1, []box.Part{"front/2", "front/2", "front/2", "front/1", "front/1", "front/1", "front/1", "front/2", "front/2", "front/2"}},
		{box.TongueGroove{Tongue: 8}, 8.1, []box.Part{"front/2", "front/2", "front/2", "", "", "", "", "front/2", "front/2", "front/2"}},
		{box.TongueGroove{Tongue: 8}, 8.3, []box.Part{"front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2", "front/2"}},
		// The loose one is 4 thick: 5.5 to 9.5, with 0.1 of play on either side.
		{box.LooseTongue{}, -7, []box.Part{"front/1", "front/1", "front/1", "front/1", "front/tongue/1", "front/tongue/1", "front/1", "front/1", "front/1", "front/1"}},
		{box.LooseTongue{}, 7.6, []box.Part{"front/2", "front/2", "front/2", "front/2", "", "", "front/2", "front/2", "front/2", "front/2"}},
		// The inner half of the first goes on under the outer half of the second.
		{box.Shiplap{Lap: 11}, 5, []box.Part{"front/1", "front/1", "front/1", "front/1", "front/1", "front/2", "front/2", "front/2", "front/2", "front/2"}},
	} {
		p := resolve(t, madeOf(x.joint))
		for i, want := range x.layers {
			w := 0.75 + 1.5*float64(i)
			at := solid.Vec{X: -134 + x.dx, Y: -65 - w, Z: 100}
			assert.Equal(t, want, owner(p, at), "%T, %v right, %v out", x.joint, x.dx, w)
		}
	}
}

// On a roof with its boards across the slope, each board laps over the one below
// it, so that rain runs off; tongues point up.
func TestRainRunsOffShiplap(t *testing.T) {
	for _, roof := range []box.RoofForm{box.Pent{Pitch: 15}, box.Gable{Pitch: 30}} {
		p := resolve(t, wide.With(func(d *box.Design) {
			d.Roof, d.Size = roof, box.Cavity{Width: 300, Depth: 300, Height: 300}
			d.Boards = map[box.Part]box.Board{box.AllRoof: {Thickness: 14, Width: 120, Grain: box.GrainAcross}}
			d.MadeUp = []box.MadeUp{{Of: box.AllRoof, Joint: box.Shiplap{Lap: 20}}}
		}))
		require.NotEmpty(t, p.Wholes())
		boxtest.Sound(t, p)
		for _, w := range p.Wholes() {
			for k := range w.Strips[1:] {
				a, b := piece(t, p, w.Strips[k]), piece(t, p, w.Strips[k+1])
				_, hi := a.Body.Convex().Reach(solid.Vec{Z: 1})
				_, hib := b.Body.Convex().Reach(solid.Vec{Z: 1})
				assert.Greater(t, hib, hi, "%s is the upper one", b.Part)
				seam := seamOf(t, p, a.Part, b.Part)
				f := solid.Vec{X: float64(seam.From.X+seam.To.X) / 2, Y: float64(seam.From.Y+seam.To.Y) / 2, Z: float64(seam.From.Z+seam.To.Z) / 2}
				_, outer := facesOf(t, p, w.Part)
				up := (solid.Vec{Z: 1}).Sub(outer.N.Scale(outer.N.Z)).Unit()
				assert.Equal(t, a.Part, owner(p, f.Add(up.Scale(10)).Add(outer.N.Scale(6))), "inside")
				assert.Equal(t, b.Part, owner(p, f.Add(up.Scale(10)).Add(outer.N.Scale(8))), "outside")
			}
		}
	}
}

func seamOf(t *testing.T, p *box.Plan, a, b box.Part) box.Seam {
	t.Helper()
	for _, m := range p.Seams() {
		if m.Over == a && m.Under == b {
			return m
		}
	}
	require.Fail(t, "no seam", "%s with %s", a, b)
	return box.Seam{}
}

// Strips of leaning, bevelled and mitred parts are parted square to their faces.
func TestStripsOfLeaningWalls(t *testing.T) {
	for _, j := range []box.EdgeJoint{nil, box.LooseTongue{}, box.TongueGroove{Tongue: 8, Gap: 1}, box.Shiplap{Lap: 10, Gap: 1}} {
		p := resolve(t, wide.With(func(d *box.Design) {
			d.Size = box.Cavity{Width: 300, Depth: 300, Height: 300}
			d.Walls = []box.Wall{{On: box.Front, Lean: 8}, {On: box.Left, Lean: -5}, {On: box.Back, Above: 60, Below: 40}}
			d.Roof = box.Pent{Pitch: 12, Over: box.Overhangs{Front: 30}}
			d.MadeUp = []box.MadeUp{{Of: box.AllWalls, Joint: j}, {Of: box.AllRoof, Joint: j}, {Of: box.Floor, Joint: j}}
		}))
		require.Len(t, p.Wholes(), 6)
		boxtest.Sound(t, p)
		for _, q := range p.Pieces() {
			n := 0
			for _, e := range q.Panel.Edges {
				if nb, ok := p.Piece(e.Neighbour); ok && nb.Of == q.Of {
					assert.Zero(t, e.Bevel, "%s at %s", q.Part, e.Neighbour)
					n++
				}
			}
			assert.Contains(t, []int{1, 2}, n, q.Part)
		}
	}
}
