package box_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
)

// A part that opens may be made up: all its pieces move, its joints with the
// frame have their play, and shut again it is what it was.
func TestStripsThatOpen(t *testing.T) {
	for _, j := range []box.EdgeJoint{nil, box.LooseTongue{}, box.TongueGroove{Tongue: 7, Gap: 1}, box.Shiplap{Lap: 10}} {
		for _, opens := range []box.Opening{
			box.Hinged{Part: box.Roof, Hinge: box.Butts{}},
			box.Pivoted{Part: box.Front},
			box.Removable{Part: box.Floor},
		} {
			d := box.Design{Name: "opens", Board: thick(15), Size: box.Cavity{Width: 260, Depth: 180, Height: 250},
				Roof: box.Pent{Pitch: 10, Over: box.Overhangs{Left: 20, Right: 20}}, Floor: box.FloorBetween{},
				MadeUp: []box.MadeUp{{Of: box.AllWalls, Joint: j, Width: 100}, {Of: box.AllRoof, Joint: j, Width: 100}, {Of: box.Floor, Joint: j, Width: 100}},
				Opens:  []box.Opening{opens}}
			whole := resolve(t, d.With(func(d *box.Design) { d.MadeUp = nil }))
			p := resolve(t, d)
			boxtest.Sound(t, p)
			require.Equal(t, whole.Ways()[0].Most, p.Ways()[0].Most, "%T %T", j, opens)
			part := p.Ways()[0].Part
			w, ok := p.Piece(part)
			require.True(t, ok)
			open, err := p.Opened(part, 30)
			if !p.Ways()[0].Turns {
				open, err = p.Drawn(part, 10)
			}
			require.NoError(t, err)
			// Where the whole part goes, each piece goes.
			o, _ := open.Piece(part)
			at := o.Pose.Out(w.Home.In(w.Home.O.Add(w.Home.U.Scale(50))))
			n := 0
			for _, q := range open.Pieces() {
				if q.Of != part {
					assert.Equal(t, q.Home, q.Pose, "%s stays", q.Part)
					continue
				}
				n++
				moved := q.Pose.Out(q.Home.In(w.Home.O.Add(w.Home.U.Scale(50))))
				assert.InDelta(t, 0, moved.Sub(at).Len(), 1e-9, q.Part)
			}
			assert.Greater(t, n, 1)
			shut, err := open.Opened(part, 0)
			if !p.Ways()[0].Turns {
				shut, err = open.Drawn(part, 0)
			}
			require.NoError(t, err)
			assert.Equal(t, p.Pieces(), shut.Pieces())
			assert.Equal(t, p.Wholes(), shut.Wholes())
			// Every hole for a nail or a screw is in one strip.
			count := func(qs []box.Piece) (all int) {
				for _, q := range qs {
					for _, op := range q.Panel.Ops {
						if op.Kind == box.OpBore && op.Side == box.SideEdge {
							all++
						}
					}
				}
				return all
			}
			assert.Equal(t, count(whole.Pieces()), count(p.Pieces()), "%T %T", j, opens)
			assert.Equal(t, count(whole.Pieces()), count(p.Parts()), "%T %T", j, opens)
		}
	}
}

// What is screwed onto a made-up part has a seam with each strip that it lies
// on, and edging knows the strips by their part's name.
func TestElementsOnStrips(t *testing.T) {
	for _, j := range []box.EdgeJoint{nil, box.LooseTongue{}, box.TongueGroove{Tongue: 7}, box.Shiplap{Lap: 10}} {
		p := resolve(t, box.Design{Name: "battened", Board: thick(18), Size: box.Cavity{Width: 260, Depth: 180, Height: 250},
			Roof: box.Pent{Pitch: 10, Over: box.Overhangs{Front: 30}}, Floor: box.FloorBetween{},
			MadeUp:   []box.MadeUp{{Of: box.AllWalls, Joint: j, Width: 110}},
			Outer:    []box.Outer{box.Batten{Name: "batten", Above: 100, Height: 40, Screws: 3}, box.EntrancePlate{Name: "plate", Width: 90, Height: 90, Screws: 4}},
			Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 40}, Above: 150}, box.Edging{On: []box.Part{box.Front}, Round: 3}}})
		boxtest.Sound(t, p)
		strips := map[box.Part]int{}
		for _, m := range p.Seams() {
			for _, w := range p.Wholes() {
				assert.NotEqual(t, w.Part, m.Over)
				assert.NotEqual(t, w.Part, m.Under)
			}
			on := map[box.Part]box.Part{m.Over: m.Under, m.Under: m.Over}[box.FreePart("batten")]
			if on != "" && piece(t, p, on).Of == box.Back {
				strips[on]++
			}
		}
		assert.Len(t, strips, 3, "the batten lies on all strips of the back: %v", strips)
		rounded := 0
		for _, q := range p.Pieces() {
			for _, e := range q.Panel.Edges {
				for _, a := range e.Arrises {
					if a.Round > 0 {
						rounded++
						assert.Equal(t, box.Front, q.Of, q.Part)
						assert.NotContains(t, []box.Part{"front/1", "front/2", "front/3"}, e.Neighbour, "%s", q.Part)
					}
				}
			}
		}
		assert.Positive(t, rounded)
	}
}
