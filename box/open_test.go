package box_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/solid"
	"holt.example/joints"
)

// openBox is the pent of geometry, section 3: 120 x 100 x 200 of boards of 15,
// the roof 40 over the front.
var openBox = box.Design{Name: "open", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 100, Height: 200},
	Floor: box.FloorBetween{}, Roof: box.Pent{Pitch: 10, Over: box.Overhangs{Front: 40}}}

func bounds(t *testing.T, p *box.Plan, name box.Part) (lo, hi solid.Vec) {
	t.Helper()
	m, err := p.Mesh(name)
	require.NoError(t, err)
	require.NoError(t, m.Check())
	return m.Bounds()
}

// A face left open has no part, no thickness and no joint; what is beside it
// stops flush with the cavity, but for what runs on past it. Nothing is void.
func TestOpenFaces(t *testing.T) {
	openFront := func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Open: true}} }
	noFloor := func(d *box.Design) { d.Floor = box.NoFloor{} }
	noRoof := func(d *box.Design) { d.Roof = box.NoRoof{} }
	type row struct {
		name    string
		changes []func(*box.Design)
		parts   int
		side    [4]float64 // the left wall: y from, to, z from, to
	}
	// The roof's plane is 200 at the front's inner face: at the back's, where
	// the sides end, it is 200 + 100 tan 10 = 217.632698.
	const top = 217.63269807084665
	for _, x := range []row{
		{"closed", nil, 6, [4]float64{-50, 50, -15, top}},
		{"front", []func(*box.Design){openFront}, 5, [4]float64{-50, 50, -15, top}},
		{"floor", []func(*box.Design){noFloor}, 5, [4]float64{-50, 50, 0, top}},
		{"roof", []func(*box.Design){noRoof}, 5, [4]float64{-50, 50, -15, 200}},
		{"front and floor", []func(*box.Design){openFront, noFloor}, 4, [4]float64{-50, 50, 0, top}},
		{"front and roof", []func(*box.Design){openFront, noRoof}, 4, [4]float64{-50, 50, -15, 200}},
		{"floor and roof", []func(*box.Design){noFloor, noRoof}, 4, [4]float64{-50, 50, 0, 200}},
	} {
		for _, j := range []joints.Joint{nil, joints.Rebate{Depth: 6}, joints.Mitre{}, joints.Comb{Fingers: 5}} {
			d := openBox
			for _, f := range x.changes {
				d = d.With(f)
			}
			d.Corners.Joint = j
			p := resolve(t, d)
			assert.Len(t, p.Pieces(), x.parts, x.name)
			assert.Empty(t, p.Voids(), x.name)
			for _, m := range p.Seams() {
				for _, name := range []box.Part{m.Over, m.Under} {
					_, ok := p.Piece(name)
					assert.True(t, ok, "%s: a seam with %s, which is not there", x.name, name)
				}
			}
			if j != nil {
				continue
			}
			lo, hi := bounds(t, p, box.Left)
			assert.InDeltaSlice(t, x.side[:], []float64{lo.Y, hi.Y, lo.Z, hi.Z}, 1e-6, x.name)
			if _, roofed := p.Piece(box.Roof); roofed {
				// Past the front: 15 + 40, or with no front 40 alone, plumb.
				want := -105.0
				if _, front := p.Piece(box.Front); !front {
					want = -90
				}
				lo, _ := bounds(t, p, box.Roof)
				assert.InDelta(t, want, lo.Y, 1e-6, x.name)
			}
			w, dp, _ := p.Outside()
			assert.InDelta(t, 150, float64(w), 1e-9)
			deep := 130.0
			if _, front := p.Piece(box.Front); !front {
				deep = 115
			}
			assert.InDelta(t, deep, float64(dp), 1e-9, x.name)
		}
	}
}

// An open side gives its neighbours nothing to lap over or to be let into, so
// that the sides end square at y = -50, and say why.
func TestBesideAnOpenFront(t *testing.T) {
	p := resolve(t, openBox.With(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Open: true}} }))
	for _, name := range []box.Part{box.Left, box.Right} {
		q := piece(t, p, name)
		assert.InDelta(t, 100, float64(q.Width), 1e-9)
		free := 0
		for _, e := range q.Panel.Edges {
			if e.Neighbour == "" {
				free++
				assert.Equal(t, "ends at the open side", e.Why)
				assert.Zero(t, e.Bevel)
				assert.InDelta(t, 0, float64(e.Adds), 1e-9)
			}
		}
		assert.Equal(t, 1, free, "%s", name)
	}
	// The floor too: 120 x 100 with its front edge bare.
	lo, hi := bounds(t, p, box.Floor)
	assert.InDeltaSlice(t, []float64{-50, 50}, []float64{lo.Y, hi.Y}, 1e-9)
	// With every wall of a prow open but two the box still stands.
	resolve(t, box.Design{Name: "screen", Board: thick(12), Size: box.Cavity{Width: 200, Depth: 200, Height: 150}, Floor: box.FloorUnder{}, Roof: box.NoRoof{},
		Walls: []box.Wall{{On: box.Front, Open: true}, {On: box.Right, Open: true}}})
}

// Random boxes with one or two faces open: no overlap and nothing unowned
// (Resolve reports both), and no wall and no floor between
// walls reaches past the plane of the open face, leaning or not.
func TestRandomOpenFaces(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 14))
	accepted := 0
	someDesigns(400, 8, func(_ int, k anybox.Kinds, d box.Design) {
		if k.Footprint != "rectangle" {
			return
		}
		d.Features = nil
		n := r.IntN(4)
		open, lean, found := fourWalls[n], 0.0, false
		for i := range d.Walls {
			if d.Walls[i].On == open {
				d.Walls[i].Open, found, lean = true, true, float64(d.Walls[i].Lean)
			}
		}
		if !found {
			d.Walls = append(d.Walls, box.Wall{On: open, Open: true})
		}
		if r.IntN(3) == 0 {
			d.Roof = box.NoRoof{}
			delete(d.Boards, box.AllRoof)
		}
		p, ps := tryResolve(t, "open", d)
		for _, x := range ps {
			switch x.Code {
			case "overlap", "leak", "no-contact", "outline":
				t.Errorf("%v, %s open: %v", k, open, x)
			}
		}
		if p == nil {
			return
		}
		accepted++
		w, dp, _ := p.Inside()
		// The plane: right.v = half + z tan lean, v across the open wall.
		half := [4]float64{float64(dp) / 2, float64(w) / 2, float64(dp) / 2, float64(w) / 2}[n]
		out := [4]solid.Vec{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}}[n]
		for _, q := range p.Pieces() {
			require.NotEqual(t, open, q.Part)
			if _, under := d.Floor.(box.FloorUnder); strings.HasPrefix(string(q.Part), "roof") || under && q.Part == box.Floor {
				continue // these may run on past it
			}
			for _, f := range q.Body.Convex().Faces {
				for _, v := range f.Loop {
					past := out.Dot(v) - half - v.Z*math.Tan(lean*math.Pi/180)
					require.LessOrEqual(t, past, 1e-6, "%v: %s past the open %s", k, q.Part, open)
				}
			}
		}
	})
	assert.Greater(t, accepted, 70)
}
