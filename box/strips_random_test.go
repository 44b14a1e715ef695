package box_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/outline"
)

var edgeJoints = []string{"edge-glued", "loose tongue", "tongue and groove", "shiplap"}

// edgeJoint draws a joint for strips, to a tenth.
func edgeJoint(r *rand.Rand, name string) box.EdgeJoint {
	mm := func(lo, hi float64) box.MM { return box.MM(math.Round((lo+(hi-lo)*r.Float64())*10) / 10) }
	gap := box.MM(0)
	if r.IntN(2) == 0 {
		gap = mm(0.5, 2)
	}
	switch name {
	case "loose tongue":
		if r.IntN(2) == 0 {
			return box.LooseTongue{}
		}
		return box.LooseTongue{Width: mm(6, 16), Play: mm(0.1, 0.5)}
	case "tongue and groove":
		return box.TongueGroove{Tongue: mm(4, 10), Gap: gap, Dry: gap > 0}
	case "shiplap":
		return box.Shiplap{Lap: mm(5, 12), Gap: gap}
	}
	return box.EdgeGlued{}
}

// Random designs with made-up walls, roofs and floors: Resolve finds no overlap
// and no void without an owner (it reports both), meshes are closed and of the
// volume that the decomposition gives, outlines are sound, and the pieces of a
// part with the play of their joints are the part.
func TestRandomDesignsOfStrips(t *testing.T) {
	each, least := 3, 20 // of every footprint x roof x joint; of every joint and kind of part
	if testing.Short() {
		each, least = 1, 5
	}
	var mu sync.Mutex
	seen := map[string]int{} // joint and kind of part
	total, refused := 0, 0
	t.Run("product", func(t *testing.T) {
		for i, foot := range anybox.Footprints {
			for j, roof := range anybox.Roofs {
				t.Run(foot+" "+roof, func(t *testing.T) {
					t.Parallel()
					r := rand.New(rand.NewPCG(uint64(100+i), uint64(j)))
					for _, joint := range edgeJoints {
						for got, tries := 0, 0; got < each; tries++ {
							if !assert.Less(t, tries, 5*each, "%s: too many refused", joint) {
								break
							}
							k := kinds{Footprint: foot, Roof: roof, Laps: anybox.Laps[r.IntN(3)], Corner: anybox.Corners[r.IntN(4)], Floor: anybox.Floors[r.IntN(5)]}
							d := randomStrips(r, k, joint)
							// What is refused without strips says nothing of them.
							_, plainErr := d.With(func(d *box.Design) { d.MadeUp = nil }).Resolve()
							p, err := d.Resolve()
							if plainErr != nil {
								continue
							}
							mu.Lock()
							total++
							if err != nil {
								refused++
							}
							mu.Unlock()
							if err != nil {
								mustBeFair(t, k, err)
								continue
							}
							if len(p.Wholes()) == 0 {
								continue
							}
							got++
							checkStrips(t, p, k)
							mu.Lock()
							for _, w := range p.Wholes() {
								kind := "wall"
								if w.Part == box.Floor {
									kind = "floor"
								} else if strings.HasPrefix(string(w.Part), "roof") {
									kind = "roof"
								}
								seen[w.Joint+" "+kind]++
							}
							mu.Unlock()
							if got == 1 { // the same again, to the last bit
								q, err := d.Resolve()
								require.NoError(t, err)
								require.True(t, reflect.DeepEqual(p, q), "%v", k)
							}
						}
					}
				})
			}
		}
	})
	t.Logf("%d designs, %d refused for their strips; %v", total, refused, seen)
	assert.LessOrEqual(t, refused*5, total, "more than a fifth refused")
	for _, joint := range edgeJoints {
		for _, kind := range []string{"wall", "roof", "floor"} {
			assert.GreaterOrEqual(t, seen[joint+" "+kind], least, "%s %s", joint, kind)
		}
	}
}

func randomStrips(r *rand.Rand, k kinds, joint string) box.Design {
	d := anybox.Design(r, k)
	mm := func(lo, hi float64) box.MM { return box.MM(math.Round((lo+(hi-lo)*r.Float64())*10) / 10) }
	for _, of := range []box.Part{box.AllWalls, box.AllRoof, box.Floor} {
		if of == box.Floor && k.Floor == "none" {
			continue
		}
		d.MadeUp = append(d.MadeUp, box.MadeUp{Of: of, Joint: edgeJoint(r, joint), Width: mm(60, 150)})
	}
	if r.IntN(3) == 0 {
		d.Board.Grain = box.GrainAcross
	}
	wall := box.Front
	if k.Footprint != "rectangle" {
		wall = box.WallN(1)
	}
	if r.IntN(2) == 0 {
		d.Features = append(d.Features, box.Cut{On: wall, Shape: box.Round{Diameter: mm(20, 40)}, At: box.Anchor{Right: mm(-20, 20), Up: mm(60, 70)}, Depth: mm(0, 1) * 4, From: box.CutSide(r.IntN(2))})
	}
	return d
}

// mustBeFair sees that strips are refused for what they are, not for what went
// wrong.
func mustBeFair(t *testing.T, k kinds, err error) {
	t.Helper()
	var ps box.Problems
	require.True(t, errors.As(err, &ps), "%v: %v", k, err)
	for _, x := range ps {
		switch x.Code {
		case "overlap", "leak", "solid", "outline", "no-contact":
			t.Errorf("%v: %.300v", k, x)
		}
		if !strings.HasPrefix(x.Path, "MadeUp[") && x.Code != "falls-apart" {
			t.Errorf("%v: not a problem of strips: %.300v", k, x)
		}
	}
}

func checkStrips(t *testing.T, p *box.Plan, k kinds) {
	t.Helper()
	for _, q := range p.Pieces() {
		m, err := p.Mesh(q.Part)
		if err != nil {
			t.Errorf("%v %s: %v", k, q.Part, err)
			continue
		}
		if err := m.Check(); err != nil {
			t.Errorf("%v %s: %v", k, q.Part, err)
		}
		if v := m.Volume(); math.Abs(v-q.Volume) > 1e-9*q.Volume+1e-3 {
			t.Errorf("%v %s: mesh %.6f, decomposition %.6f", k, q.Part, v, q.Volume)
		}
	}
	if err := boxtest.CheckOutlines(p); err != nil {
		t.Errorf("%v: %v", k, err)
	}
	if err := boxtest.CheckFits(p); err != nil {
		t.Errorf("%v: %v", k, err)
	}
	for _, w := range p.Wholes() {
		// What the pieces and the whole have in common by their half-spaces is all
		// of the pieces, and what of the whole they leave is play.
		sum := 0.0
		for _, name := range append(append([]box.Part(nil), w.Strips...), w.Tongues...) {
			q := piece(t, p, name)
			sum += q.Volume
			assert.Equal(t, w.Part, q.Of)
			assert.LessOrEqual(t, float64(q.Width), float64(w.Boards)+1e-6, "%v %s", k, name)
		}
		if w.Joint == "edge-glued" {
			// Holes are area-true on both sides; 1e-7 mm over faces of 0.1 m2 else.
			assert.InDelta(t, w.Volume, sum, 2e-2, "%v %s", k, w.Part)
		} else {
			assert.Less(t, sum, w.Volume+1, "%v %s", k, w.Part)
		}
	}
}

// Marks and openings of every kind on boxes of strips: meshes are closed, no
// stroke is lost or drawn twice, and what the features take from the strips is
// what they take from the whole.
func TestRandomMarksOnStrips(t *testing.T) {
	t.Parallel()
	r := dice{rand.New(rand.NewPCG(31, 41))}
	accepted := map[string]int{}
	for i := range 160 {
		name := edgeJoints[i%4]
		d := plain.With(func(d *box.Design) {
			for range 1 + r.IntN(3) {
				d.Features = append(d.Features, r.feature())
			}
			d.Walls = []box.Wall{{On: box.Back, Above: 80, Below: 50}}
			d.Free = []box.Free{{Name: "board", Outline: outline.Rectangle(-90, -50, 90, 150), At: box.Place{Y: -400}}}
			joint := edgeJoint(r.Rand, name)
			for _, of := range []box.Part{box.AllWalls, box.AllRoof, box.Floor} {
				d.MadeUp = append(d.MadeUp, box.MadeUp{Of: of, Joint: joint, Width: r.mm(60, 100)})
			}
			d.Board.Grain = []box.Grain{box.GrainAuto, box.GrainAcross}[r.IntN(2)]
		})
		p, ps := tryResolve(t, name, d)
		if p == nil {
			for _, x := range ps {
				assert.NotContains(t, []string{"outline", "solid", "overlap", "leak"}, x.Code, "%d: %v\n%+v", i, x, d.Features)
			}
			continue
		}
		accepted[name]++
		soundMeshes(t, p)
		assert.NoError(t, boxtest.CheckOutlines(p), "%d\n%+v", i, d.Features)
		bare := resolve(t, d.With(func(d *box.Design) { d.Features = nil }))
		for k, w := range p.Wholes() {
			sum, plainSum := 0.0, 0.0
			strokes := 0.0
			for _, part := range append(append([]box.Part(nil), w.Strips...), w.Tongues...) {
				q := piece(t, p, part)
				sum += q.Volume
				plainSum += piece(t, bare, part).Volume
				strokes += lengthOf(q)
			}
			if open := gapOf(d.MadeUp[0].Joint); open == 0 {
				assert.InDelta(t, lengthOf(w.Piece), strokes, 1e-5, "%d %s\n%+v", i, w.Part, d.Features)
			} else { // over a gap there is nothing to draw on
				assert.LessOrEqual(t, strokes, lengthOf(w.Piece)+1e-5, "%d %s\n%+v", i, w.Part, d.Features)
			}
			// Exact where strips are glued edge to edge; what a joint's play takes of a
			// feature is taken from the whole, but from no strip.
			taken, fromStrips := bare.Wholes()[k].Volume-w.Volume, plainSum-sum
			play := bare.Wholes()[k].Volume - plainSum
			assert.LessOrEqual(t, fromStrips, taken+0.5, "%d %s %s\n%+v", i, name, w.Part, d.Features)
			assert.GreaterOrEqual(t, fromStrips, taken-play-0.5, "%d %s %s\n%+v", i, name, w.Part, d.Features)
		}
	}
	for _, name := range edgeJoints {
		assert.GreaterOrEqual(t, accepted[name], 12, name)
	}
}

// lengthOf is the length of all strokes on a piece.
func lengthOf(q box.Piece) float64 {
	l := 0.0
	for _, op := range q.Panel.Ops {
		for _, s := range op.Strokes {
			l += s.Length()
		}
	}
	return l
}

func gapOf(j box.EdgeJoint) box.MM {
	switch j := j.(type) {
	case box.TongueGroove:
		return j.Gap
	case box.Shiplap:
		return j.Gap
	}
	return 0
}
