package box_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/joints"
)

func (r dice) joint() joints.Joint {
	return []joints.Joint{nil, joints.Butt{}, joints.Housing{Depth: r.mm(3, 6)}, joints.Housing{Tight: true}}[r.IntN(4)]
}

func (r dice) maybe(x box.MM) box.MM {
	if r.IntN(2) == 0 {
		return 0
	}
	return x
}

// element draws an element of any kind.
func (r dice) element() any {
	hole := []box.Shape{nil, box.Round{Diameter: r.mm(4, 9)}, box.Keyhole{Head: 12, Slot: 6, Drop: 14}}[r.IntN(3)]
	b := []box.Board{{}, {Thickness: r.mm(9, 25)}}[r.IntN(2)]
	switch r.IntN(21) {
	case 0:
		return box.Shelf{Name: "x", Above: r.mm(0, 60), Gaps: box.Gaps{Front: r.maybe(r.mm(0, 60)), Back: r.maybe(r.mm(0, 30)), All: r.maybe(20)}, Joint: r.joint(), Board: b}
	case 1:
		return box.FalseFloor{Name: "x", Room: r.mm(8, 40), Play: r.maybe(r.mm(1, 4)), Rim: r.maybe(r.mm(10, 40)), Board: b}
	case 2:
		return box.Baffles{Name: "x", Run: box.PartitionRun(r.IntN(4) / 3), Count: 1 + r.IntN(3), Crevice: r.maybe(r.mm(12, 30)), Above: r.maybe(10), Room: r.maybe(r.mm(10, 30)), Joint: r.joint(), Board: b}
	case 3:
		return box.Lobby{Name: "x", Behind: []box.Part{"", box.Left, box.Right}[r.IntN(3)], Deep: r.mm(20, 50), Shape: box.Round{Diameter: r.mm(20, 40)}, At: box.Anchor{Right: r.mm(-20, 20), Up: r.mm(40, 80)}, Joint: r.joint(), Board: b}
	case 4:
		return box.BeeBlock{Name: "x", Height: r.mm(60, 120), Spacing: r.mm(12, 24), Board: b, Rows: []box.BeeRow{{Diameter: r.mm(4, 8), Depth: r.mm(5, 8), Repeat: 2}, {Diameter: r.mm(2, 6), Depth: 6}}}
	case 5:
		return box.EntrancePlate{Name: "x", Width: r.mm(45, 90), Height: r.mm(45, 90), Hole: []box.Shape{nil, box.Oval{Width: 26, Height: 34}}[r.IntN(2)], Screws: 2 * r.IntN(3), Board: b}
	case 6:
		return box.Tunnel{Name: "x", Long: r.mm(30, 90), Width: r.maybe(r.mm(30, 60)), Height: r.maybe(r.mm(30, 60)), Open: r.IntN(2) == 0, Board: b}
	case 7:
		return box.LandingBoard{Name: "x", Below: r.mm(10, 60), Width: r.mm(50, 140), Deep: r.mm(30, 90), Slope: box.Deg(r.mm(0, 20)), Grooves: r.maybe(r.mm(10, 20)), Board: b}
	case 8:
		return box.LandingBoard{Name: "x", Below: r.mm(10, 60), Width: r.mm(50, 140), Deep: r.mm(30, 60), Flat: true, Grooves: r.maybe(r.mm(10, 20)), Board: b}
	case 9:
		return box.Batten{Name: "x", Right: r.mm(-30, 30), Above: r.mm(10, 150), Width: r.maybe(r.mm(30, 60)), Height: r.maybe(r.mm(30, 60)), Past: r.mm(0, 60), Hole: hole, Inset: r.maybe(r.mm(15, 40)), Screws: r.IntN(4), Board: b}
	case 10:
		return box.SplitBatten{Name: "x", Above: r.mm(10, 120), Width: r.maybe(r.mm(80, 140)), Height: r.mm(60, 100), Bevel: box.Deg(r.maybe(r.mm(20, 55))), Screws: r.IntN(4), Hole: []box.Shape{nil, box.Round{Diameter: 5}}[r.IntN(2)], Board: b}
	case 11:
		return box.Strap{Trunk: r.mm(100, 500), Width: r.mm(15, 40), Heights: []box.MM{r.mm(20, 60), r.mm(120, 160)}, Spare: 100}
	case 12:
		return box.Feet{Name: "x", Run: box.PartitionRun(r.IntN(2)), Width: r.mm(20, 50), Length: r.maybe(r.mm(30, 60)), Inset: r.mm(0, 15), Board: b}
	case 13:
		return box.PoleSocket{Name: "x", Hole: []box.Shape{box.Round{Diameter: r.mm(20, 40)}, box.Rect{Width: 30, Height: 30}}[r.IntN(2)], Width: r.mm(60, 110), Deep: r.mm(60, 110), Layers: r.IntN(4), Floor: r.IntN(2) == 0, Board: b}
	case 14:
		return box.CoverStrip{Name: "x", Height: r.mm(15, 60), Board: b}
	case 15:
		return box.RidgeCap{Name: "x", Width: r.mm(30, 80), Past: r.maybe(10), Sheet: []string{"", "lead"}[r.IntN(2)], Board: b}
	case 16:
		return box.Felt{Turn: r.mm(0, 40), Up: r.mm(0, 40), Lap: r.mm(0, 40)}
	case 17:
		return box.Hang{Shape: hole, Apart: r.maybe(r.mm(30, 80)), Heights: [][]box.MM{nil, {r.mm(60, 150)}}[r.IntN(2)]}
	case 18:
		return box.DripGroove{Width: r.maybe(r.mm(2, 5)), Depth: r.maybe(r.mm(2, 6)), Inset: r.maybe(r.mm(6, 15)), Sides: r.IntN(2) == 0}
	case 19:
		return box.EavesVents{On: [][]box.Part{nil, {box.Front}}[r.IntN(2)], Width: r.mm(30, 100), Height: r.mm(6, 20), Right: r.mm(-15, 15)}
	}
	return box.Edging{Round: r.maybe(r.mm(1, 4)), Blunt: r.maybe(1)}
}

// Random elements of every kind, one or two at a time, on boxes of many kinds: a
// plan, or problems with good paths. Of a plan nothing overlaps or leaks (Resolve
// says so), seams touch, outlines are sound and all meshes closed; its volumes are
// those of the meshes.
func TestRandomElements(t *testing.T) {
	r := dice{rand.New(rand.NewPCG(6, 10))}
	accepted, thrown := map[string]int{}, map[string]int{}
	for i := 0; i < 1100; i++ {
		d := hung.With(func(d *box.Design) {
			d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 30}, Above: r.mm(90, 130)}
			switch r.IntN(4) {
			case 0:
				d.Walls, d.Roof = nil, box.Gable{Pitch: box.Deg(r.mm(8, 55)), Run: box.RidgeRun(r.IntN(2)), Over: box.Overhangs{All: 45}}
			case 1:
				d.Walls, d.Roof = []box.Wall{{On: box.Front, Lean: box.Deg(r.mm(-3, 8))}, {On: box.Right, Lean: box.Deg(r.mm(-3, 8))}}, box.Flat{Over: box.Overhangs{All: 35}}
			case 2:
				d.Walls = []box.Wall{{On: box.Back, Above: 80, Below: 60, Lean: box.Deg(r.mm(0, 5))}}
			}
			if r.IntN(3) == 0 && (len(d.Walls) == 0 || d.Walls[0].On == box.Back) {
				d.Corners.Joint = joints.Rebate{}
			}
			d.Floor = []box.FloorForm{box.FloorBetween{}, box.FloorBetween{Raise: 15}, box.FloorBetween{Raise: 15, Joint: joints.Housing{}}, box.FloorUnder{}}[r.IntN(4)]
			for range 1 + r.IntN(2) {
				x := r.element()
				if _, in := x.(box.Inner); in {
					if _, out := x.(box.Outer); out && r.IntN(2) == 0 {
						d.Inner = append(d.Inner, x.(box.Inner))
						continue
					}
				}
				if _, cap := x.(box.RidgeCap); cap {
					d.Walls, d.Roof = nil, box.Gable{Pitch: box.Deg(r.mm(8, 55)), Over: box.Overhangs{All: 45}}
				}
				switch x := x.(type) {
				case box.Feature:
					d.Features = append(d.Features, x)
				case box.Outer:
					d.Outer = append(d.Outer, x)
				case box.Inner:
					d.Inner = append(d.Inner, x)
				}
			}
		})
		var kinds []string
		for _, x := range d.Features[1:] {
			kinds = append(kinds, fmt.Sprintf("%T", x))
		}
		for _, x := range d.Outer {
			kinds = append(kinds, fmt.Sprintf("%T outside", x))
		}
		for _, x := range d.Inner {
			kinds = append(kinds, fmt.Sprintf("%T inside", x))
		}
		p, ps := tryResolve(t, fmt.Sprint(i), d)
		for _, k := range kinds {
			thrown[k]++
			if p != nil {
				accepted[k]++
			}
		}
		if p == nil {
			for _, x := range ps {
				assert.NotContains(t, []string{"outline", "solid", "leak", "no-part"}, x.Code, "%d %v: %v", i, kinds, x)
				if x.Code == "overlap" && len(kinds) == 1 {
					t.Logf("%d %v: %v", i, kinds, x)
				}
			}
			continue
		}
		for _, check := range []func(*box.Plan) error{boxtest.CheckFits, boxtest.CheckMeshes, boxtest.CheckOutlines} {
			assert.NoError(t, check(p), "%d %v\n%+v\n%+v\n%+v", i, kinds, d.Outer, d.Inner, d.Features)
		}
		for _, q := range p.Pieces() {
			m, err := p.Mesh(q.Part)
			if assert.NoError(t, err) {
				assert.InDelta(t, q.Volume, m.Volume(), 1e-6*q.Volume, "%d %s", i, q.Part)
			}
		}
		for _, f := range p.Fittings() {
			assert.Positive(t, f.Count)
			assert.NotEmpty(t, f.What)
			assert.NotEmpty(t, f.Size)
			assert.NotEmpty(t, f.Where)
			assert.False(t, math.IsNaN(float64(f.Length)) || math.IsNaN(f.Area))
		}
	}
	var names []string
	for k := range thrown {
		names = append(names, k)
	}
	sort.Strings(names)
	for _, k := range names {
		t.Logf("%-28s %3d of %3d accepted", k, accepted[k], thrown[k])
		assert.GreaterOrEqual(t, accepted[k], 20, k)
	}
	assert.Len(t, names, 22)
}
