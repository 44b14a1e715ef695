package box_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/boxtest"
	"holt.example/box/layout"
	"holt.example/box/solid"
)

// A design names its strips from the left seen from outside, and from below.
func TestNamesOfStrips(t *testing.T) {
	p := resolve(t, wide.With(func(d *box.Design) {
		d.Size = box.Cavity{Width: 300, Depth: 300, Height: 300}
		d.Boards = map[box.Part]box.Board{box.Back: {Thickness: 15, Width: 145, Grain: box.GrainAcross}}
		d.MadeUp = []box.MadeUp{{Of: box.AllWalls}, {Of: box.Floor}, {Of: box.AllRoof}}
	}))
	middle := func(name box.Part) solid.Vec {
		lo, hi := piece(t, p, name).Body.Convex().Bounds()
		return lo.Lerp(hi, 0.5)
	}
	assert.Less(t, middle("front/1").X, middle("front/2").X)
	assert.Less(t, middle("right/1").Y, middle("right/2").Y)
	assert.Greater(t, middle("left/1").Y, middle("left/2").Y)
	assert.Less(t, middle("back/1").Z, middle("back/2").Z)
	assert.Less(t, middle("floor/1").Y, middle("floor/2").Y)
	assert.Less(t, middle("roof/1").X, middle("roof/2").X)
	assert.Equal(t, box.Part("left/tongue/2"), box.TongueN(box.Left, 2))
}

// The plan has the part as one too.
func TestWholeOfStrips(t *testing.T) {
	d := madeOf(box.TongueGroove{Tongue: 8})
	p := resolve(t, d)
	plain := resolve(t, d.With(func(d *box.Design) { d.MadeUp = nil }))
	w, one := piece(t, p, box.Front), piece(t, plain, box.Front)
	one.Body, w.Body = solid.Body{}, solid.Body{} // compared as meshes
	assert.Equal(t, one, w)
	a, err := p.Mesh(box.Front)
	require.NoError(t, err)
	b, err := plain.Mesh(box.Front)
	require.NoError(t, err)
	assert.Equal(t, b, a)
	var names []box.Part
	for _, q := range p.Parts() {
		names = append(names, q.Part)
	}
	assert.Equal(t, []box.Part{"front", "back", "left", "right", "floor", "roof"}, names)
	assert.Len(t, p.Pieces(), 9)
	words := strings.Join(p.Explain(box.Front), " ")
	assert.Contains(t, words, "It is made up of 4 strips, front/1 to front/4, from boards 145 wide (tongue and groove): 134.0 of each shows.")
	assert.Contains(t, strings.Join(p.Explain("front/2"), " "), "It is strip 2 of 4 of front, which is 536.0 wide: 134.0 of it shows, and 8.0 are its tongue.")
	assert.Contains(t, strings.Join(p.Explain("front/2"), " "), "At front/3 (tongue and groove) it has its tongue: 8.0 added.")
	_, ok := p.Piece("front/5")
	assert.False(t, ok)
	assert.Equal(t, []string{`The plan has no part "front/5": front/1?`}, p.Explain("front/5"))
}

// Strips that meet a made-up neighbour name the strip there, if it is one.
func TestNeighboursOfStrips(t *testing.T) {
	p := resolve(t, wide.With(func(d *box.Design) {
		d.Size = box.Cavity{Width: 300, Depth: 300, Height: 300}
		d.Floor = box.FloorBetween{Raise: 20, Joint: nil}
		d.MadeUp = []box.MadeUp{{Of: box.AllWalls}, {Of: box.Floor}}
	}))
	near := func(name box.Part) string {
		var out []string
		for _, e := range piece(t, p, name).Panel.Edges {
			out = append(out, string(e.Neighbour))
		}
		return fmt.Sprint(out)
	}
	// 330 wide: three of 110. The floor, 300 x 300, is three of 100 from front to
	// back; the sides likewise.
	assert.ElementsMatch(t, []box.Part{"front/1", "front/2", "front/3"}, p.Wholes()[0].Strips)
	assert.Contains(t, near("front/1"), "left/3")
	assert.Contains(t, near("front/1"), "floor/1")
	assert.Contains(t, near("front/3"), "right/1")
	assert.NotContains(t, near("front/2"), "left")
	assert.Contains(t, near("left/2"), "floor/2")
	assert.Contains(t, near("floor/1"), "front", "three strips of it")
	assert.Contains(t, near("floor/1"), "left/3")
}

// Length, position and gaps of the seams between strips.
func TestSeamsOfStrips(t *testing.T) {
	p := resolve(t, madeOf(box.TongueGroove{Tongue: 8, Gap: 2, Dry: true}))
	for k, x := range []float64{-268 + 132.5, -268 + 132.5 + 134.5, -268 + 132.5 + 2*134.5} {
		m := seamOf(t, p, box.StripN(box.Front, k+1), box.StripN(box.Front, k+2))
		assert.InDelta(t, x, float64(m.From.X), 1e-6)
		assert.InDelta(t, -65, float64(m.From.Y), 1e-6)
		assert.InDelta(t, -35, float64(m.From.Z), 1e-6)
		assert.InDelta(t, 300, float64(m.To.Z), 1e-6)
		assert.Equal(t, box.MM(2), m.Least)
		assert.Equal(t, box.Deg(180), m.Theta)
		assert.False(t, m.Glued())
		// The cheeks of the tongue, 6 in the groove, and its end: 0.1 and 0.2 apart.
		assert.InDelta(t, 335*(2*6+5), m.Contact, 1e-3)
	}
	assert.True(t, seamOf(t, resolve(t, wide), "front/1", "front/2").Glued())
	assert.InDelta(t, 335*15, seamOf(t, resolve(t, wide), "front/1", "front/2").Contact, 1e-3)
}

// A made-up part is put together before it goes into the box.
func TestStripsAreMadeUpFirst(t *testing.T) {
	p := resolve(t, madeOf(box.LooseTongue{}))
	a, err := p.Assembly()
	require.NoError(t, err)
	var text []string
	for _, s := range a.Steps {
		text = append(text, s.String())
		if s.Made != "" {
			assert.Len(t, s.Seams, 9, "three between strips, six with tongues")
		}
	}
	all := strings.Join(text, "\n")
	assert.Contains(t, all, "Make up front from front/1, front/2, front/3, front/4, front/tongue/1, front/tongue/2 and front/tongue/3")
	assert.Contains(t, all, "Add front, moving it to the back")
	assert.Equal(t, 1, strings.Count(all, "Make up"))
	checked := 0
	for _, s := range a.Steps {
		checked += len(s.Check)
	}
	assert.Equal(t, 2, checked, "the diagonals, once")
	// Told that it is one piece already, or one with the left side.
	a, err = p.Assembly([]box.Part{box.Front, box.Left})
	require.NoError(t, err)
	for _, s := range a.Steps {
		assert.Empty(t, s.Made)
	}
	assert.Equal(t, "Begin with front and left as one piece", a.Steps[0].String())
	_, err = p.Assembly([]box.Part{"front/1", "front"})
	require.ErrorContains(t, err, "in one piece already")
}

// What is wrong with made-up parts, each with its place and its range.
func TestStripsRefused(t *testing.T) {
	set := func(f func(m *box.MadeUp, d *box.Design)) func(*box.Design) {
		return func(d *box.Design) { f(&d.MadeUp[0], d) }
	}
	joint := func(j box.EdgeJoint) func(*box.Design) {
		return set(func(m *box.MadeUp, _ *box.Design) { m.Joint = j })
	}
	checkRefusals(t, wide, []refusal{
		{"no such part", set(func(m *box.MadeUp, _ *box.Design) { m.Of = "frnt" }), "MadeUp[0].Of", "unknown-part", "try front", 0, 0},
		{"an inner part", set(func(m *box.MadeUp, d *box.Design) {
			d.Inner = []box.Inner{box.Partition{Name: "shelf", Height: 60}}
			m.Of = box.InnerPart("shelf")
		}), "MadeUp[0].Of", "unknown-part", "inner/shelf", 0, 0},
		{"an open side", set(func(_ *box.MadeUp, d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Open: true}} }), "MadeUp[0].Of", "unknown-part", "front", 0, 0},
		{"twice", func(d *box.Design) { d.MadeUp = append(d.MadeUp, box.MadeUp{Of: box.Front}) }, "MadeUp[1].Of", "twice", "made up twice", 0, 0},
		{"no width", func(d *box.Design) { d.Board.Width = 0 }, "MadeUp[0].Width", "missing", "how wide", 0, 0},
		{"sheet", func(d *box.Design) { d.Board.Grain = box.GrainNone }, "MadeUp[0].Of", "no-grain", "sheet", 0, 0},
		// Boards of 400 would make two strips of 268.
		{"narrow strips", set(func(m *box.MadeUp, _ *box.Design) { m.Width, m.Least = 400, 300 }), "MadeUp[0].Least", "narrow-strip", "268: front is 536 wide, and boards of 400 make it up of 2 strips that narrow; want 300 to 10000 mm (try boards of at least 536)", 300, 10000},
		// Three strips of 178.7 need boards of 186.7 with their tongues.
		{"narrow with a tongue", set(func(m *box.MadeUp, _ *box.Design) { m.Joint, m.Least = box.TongueGroove{Tongue: 8}, 140 }), "MadeUp[0].Least", "narrow-strip", "try boards of at least 186.7", 140, 10000},
		{"boards narrower than the tongue", set(func(m *box.MadeUp, _ *box.Design) { m.Joint, m.Width = box.TongueGroove{Tongue: 8}, 8 }), "MadeUp[0].Width", "range", "leaves nothing", 9, 10000},
		{"too many strips", set(func(m *box.MadeUp, d *box.Design) { m.Width = 2 }), "MadeUp[0].Of", "range", "268", 2, 200},
		{"least", set(func(m *box.MadeUp, _ *box.Design) { m.Least = -1 }), "MadeUp[0].Least", "range", "-1", 0, 10000},
		// 15 less two cheeks of 1.5 and play of 0.2.
		{"thick tongue", joint(box.TongueGroove{Thickness: 12}), "MadeUp[0].Joint.TongueGroove.Thickness", "range", "15 thick", 0.5, 11.8},
		{"short tongue", joint(box.TongueGroove{Tongue: 1}), "MadeUp[0].Joint.TongueGroove.Tongue", "range", "length of a tongue", 2, 100},
		{"gap past the tongue", joint(box.TongueGroove{Tongue: 8, Gap: 7.5}), "MadeUp[0].Joint.TongueGroove.Gap", "range", "keeps 1 in its groove", 0, 7},
		{"play", joint(box.TongueGroove{Play: 3}), "MadeUp[0].Joint.TongueGroove.Play", "range", "room", 0, 2},
		{"thick loose tongue", joint(box.LooseTongue{Board: box.Board{Thickness: 13}}), "MadeUp[0].Joint.LooseTongue.Board.Thickness", "range", "15 thick", 0.5, 11.8},
		{"narrow loose tongue", joint(box.LooseTongue{Width: 3}), "MadeUp[0].Joint.LooseTongue.Width", "range", "width of a loose tongue", 4, 200},
		{"no lap", joint(box.Shiplap{}), "MadeUp[0].Joint.Shiplap.Lap", "range", "lap of boarding", 3, 200},
		{"gap past the lap", joint(box.Shiplap{Lap: 5, Gap: 5}), "MadeUp[0].Joint.Shiplap.Gap", "range", "1 must be left", 0, 4},
		{"thin boarding", func(d *box.Design) { d.Board.Thickness, d.MadeUp[0].Joint = 2, box.Shiplap{Lap: 5} }, "MadeUp[0].Joint.Shiplap", "range", "no half", 2.5, 1000},
	})
}

// A partition that stands on the joint between two strips is let into both, and
// into a floor of strips nothing.
func TestPartitionOnAStripJoint(t *testing.T) {
	for _, j := range []box.EdgeJoint{nil, box.LooseTongue{}, box.TongueGroove{Tongue: 8}, box.Shiplap{Lap: 10}} {
		p := resolve(t, wide.With(func(d *box.Design) {
			d.Inner = []box.Inner{box.Partition{Name: "middle", Height: 200}}
			d.MadeUp = []box.MadeUp{{Of: box.Front, Joint: j, Width: 150}, {Of: box.Back, Joint: j, Width: 150}}
		}))
		boxtest.Sound(t, p)
		inner := box.InnerPart("middle")
		_, lap := j.(box.Shiplap)
		for _, host := range []box.Part{"front/2", "front/3", "back/2", "back/3"} {
			if lap && strings.HasSuffix(string(host), "3") {
				// The lip of the second strip, 10 wide, takes it all.
				for _, op := range piece(t, p, host).Panel.Ops {
					assert.NotEqual(t, inner, op.Guest, host)
				}
				continue
			}
			n := 0
			for _, op := range piece(t, p, host).Panel.Ops {
				if op.Guest == inner {
					n++
					// A third of 15, and play of 0.2 under its end; the near face lies 7.5 left of
					// the joint, seen from the front.
					assert.InDelta(t, 5.2, float64(op.To-op.From), 1e-6)
				}
			}
			assert.Equal(t, 1, n, "%T: %s", j, host)
			assert.Positive(t, seamOf(t, p, host, inner).Contact)
		}
	}
}

// Whoever lays out boards gets the strips and never the part that they make up, and
// the strips weigh what the part would, with the tongues that lie in the others'
// grooves: 6 thick, which is a third of 18 (geometry), 8 long, 3 of them.
func TestStripsAreLaidOutAndWeighed(t *testing.T) {
	d := box.Design{Name: "strips", Board: box.Board{Thickness: 18, Width: 145, Material: "larch", Density: 600},
		Size: box.Cavity{Width: 500, Depth: 200, Height: 300}, Floor: box.NoFloor{}, Roof: box.NoRoof{},
		MadeUp: []box.MadeUp{{Of: box.Front, Joint: box.TongueGroove{Tongue: 8}}}}
	p := resolve(t, d)
	// 536 over the sides, from boards that cover 137: 4 of 134.0.
	r, err := batch.Lay(context.Background(), batch.Job{
		Orders: []batch.Order{{Plan: p, Count: 1}},
		Stock:  []layout.Stock{{Name: "sheet", Material: "larch", Length: 2000, Width: 1000, Thickness: 18, Grain: layout.AlongX}},
		By:     batch.Router{Gap: 8, Margin: 5},
	})
	require.NoError(t, err)
	laid := map[box.Part]int{}
	for _, s := range r.Sheets {
		for _, x := range s.Placed {
			laid[x.Piece.Part]++
		}
	}
	assert.Equal(t, map[box.Part]int{"front/1": 1, "front/2": 1, "front/3": 1, "front/4": 1, "back": 1, "left": 1, "right": 1}, laid)
	mass := 0.0
	for n := 1; n <= 4; n++ {
		q := piece(t, p, box.StripN(box.Front, n))
		mass += q.Mass
		want := 134.0
		if n < 4 {
			want += 8 // its tongue
		}
		assert.InDelta(t, want, float64(q.Width), 1e-6)
	}
	// Each groove takes a tongue's section and the play of 0.2 on top and end.
	wood := 536*18*300 + 3*300*(6*8-6.2*8.2)
	assert.InDelta(t, wood*600e-9, mass, 1e-6)
}
