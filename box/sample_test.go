package box_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

func testPieces(t *testing.T, d box.Design, clearances ...box.MM) *box.Plan {
	t.Helper()
	p, err := d.TestPieces(clearances...)
	require.NoError(t, err)
	return p
}

func TestTestPieces(t *testing.T) {
	p := testPieces(t, orchard)
	assert.Equal(t, "orchard pent, test pieces", p.Name())
	// Rebate 7 deep of 14.6: the side enters by 7, so its offcut is 67 of 60; the
	// front reaches past it by 14.6 and the clearance. 60 along the edge.
	for _, c := range []float64{0.1, 0.2, 0.3} {
		front, side := piece(t, p, box.FreePart(fmt.Sprintf("1 rebate %v front", c))), piece(t, p, box.FreePart(fmt.Sprintf("1 rebate %v right", c)))
		assert.InDelta(t, 74.6+c, float64(front.Width), 1e-6)
		assert.InDelta(t, 60, float64(front.Length), 1e-6)
		assert.InDelta(t, 67, float64(side.Width), 1e-6)
		// The rebate runs out to the end: 7 x (14.6 + c) x 60.
		require.Len(t, front.Panel.Ops, 2)
		assert.Equal(t, box.OpRebate, front.Panel.Ops[0].Kind)
		assert.Equal(t, box.OpEngrave, front.Panel.Ops[1].Kind)
		assert.Empty(t, side.Panel.Ops)
		assert.InDelta(t, 74.6*14.6*60+c*14.6*60-7*(14.6+c)*60, front.Volume, 1e-3)
		assert.Equal(t, orchard.Board.Measured, front.Board.Measured)
	}
	// The sides are all equal: one drawing, three offcuts.
	for _, g := range p.Groups() {
		if g.Parts[0] == "free/1 rebate 0.1 right" {
			assert.Len(t, g.Parts, 3)
		}
	}
	// The roof lies on the front at 90 + 12 degrees, on the back at 90 - 12; both
	// are butts, which have no clearance.
	thetas := map[string]float64{}
	for _, s := range p.Seams() {
		thetas[string(s.Over)] = float64(s.Theta)
	}
	assert.InDelta(t, 102, thetas["free/3 butt roof"], 1e-6)
	assert.InDelta(t, 78, thetas["free/6 butt back"], 1e-6)
	assert.Len(t, p.Pieces(), 2*(3+5))
	for i, q := range p.Pieces() {
		m, err := p.Mesh(q.Part)
		require.NoError(t, err)
		require.NoError(t, m.Check())
		for _, o := range p.Pieces()[:i] {
			assert.Zero(t, solid.Overlap(q.Body, o.Body), "%s and %s", q.Part, o.Part)
		}
	}
	for _, s := range p.Seams() {
		assert.Greater(t, s.Contact, 300.0, "%s and %s", s.Over, s.Under)
	}
	// Each sample is a thing by itself: one part, and the other added to it.
	a, err := p.Assembly()
	assert.NoError(t, err)
	require.Len(t, a.Steps, 16)
	for i, s := range a.Steps {
		assert.Len(t, s.Parts, 1)
		assert.Len(t, s.Onto, i%2, "%s", s)
		assert.Len(t, s.Seams, i%2, "%s", s)
	}
}

func TestTestPieceOfHousing(t *testing.T) {
	// A housing of 15 is 5 deep. The floor of 12 leaves 12 + c for the channel,
	// 5 + c deep; the wall runs on by 15 + 1 for it to hold. Stops are cut down
	// to a quarter of the sample, 15.
	d := box.Design{Name: "housed", Board: thick(15), Boards: map[box.Part]box.Board{box.Floor: thick(12)},
		Size: box.Cavity{Width: 200, Depth: 160, Height: 200}, Roof: box.NoRoof{},
		Floor: box.FloorBetween{Raise: 30, Joint: joints.Housing{Stop: 40}}}
	p := testPieces(t, d, 0.15, 0)
	var names []string
	for _, q := range p.Pieces() {
		names = append(names, strings.TrimPrefix(string(q.Part), "free/"))
	}
	// The grain runs side to side in the floor: on end at the sides, along the
	// edge at the front.
	assert.Equal(t, []string{"1 butt front", "1 butt right", "2 housing 0.15 front", "2 housing 0.15 floor", "2 housing 0 front", "2 housing 0 floor",
		"3 housing 0.15 right", "3 housing 0.15 floor", "3 housing 0 right", "3 housing 0 floor"}, names)
	for _, tt := range []struct {
		name string
		c    float64
	}{{"2 housing 0.15 front", 0.15}, {"2 housing 0 front", 0}} {
		q := piece(t, p, box.FreePart(tt.name))
		require.Len(t, q.Panel.Ops, 2) // and the mark
		o := q.Panel.Ops[0]
		assert.Equal(t, box.OpHousing, o.Kind, "across the grain of the wall")
		assert.InDelta(t, 5+tt.c, float64(o.To-o.From), 1e-6)
		e := o.Region.Extents()
		assert.InDelta(t, 12+tt.c, math.Min(e.Width(), e.Height()), 1e-6)
		assert.InDelta(t, 60-2*15, math.Max(e.Width(), e.Height()), 1e-6)
	}
	for _, s := range p.Seams() {
		if strings.Contains(string(s.Over), "housing") {
			assert.True(t, s.Glued())
		}
	}
}

func TestTestPieceOfComb(t *testing.T) {
	// 12 fingers on 220: 18.3333 wide, so that 60 holds 3.27 of them; an even
	// count ends with the other part, so 4 it is: 73.3333.
	d := box.Design{Name: "comb", Board: thick(12), Size: box.Cavity{Width: 100, Depth: 120, Height: 220},
		Corners: box.Corners{Joint: joints.Comb{Fingers: 12, First: joints.OwnerB}}, Floor: box.NoFloor{}, Roof: box.NoRoof{}}
	p := testPieces(t, d)
	assert.Len(t, p.Pieces(), 6, "one corner stands for all four")
	q := piece(t, p, "free/1 comb 0.2 front")
	assert.InDelta(t, 220.0/12*4, float64(q.Length), 1e-6)
	d.Corners.Joint = joints.Comb{Fingers: 11}
	// 20 wide: three of them.
	assert.InDelta(t, 60, float64(piece(t, testPieces(t, d), "free/1 comb 0.2 front").Length), 1e-6)
}

func TestTestPiecesOfHexagon(t *testing.T) {
	d := box.Design{Name: "hexagon", Board: thick(12), Footprint: box.Regular{Sides: 6, Across: 160}, Size: box.Cavity{Height: 220},
		Corners: box.Corners{Joint: joints.Mitre{}}, Floor: box.FloorBetween{}, Roof: box.Hip{Pitch: 30, Over: box.Overhangs{All: 25}}}
	p := testPieces(t, d)
	seen := map[string]int{}
	for _, s := range p.Seams() {
		seen[fmt.Sprintf("%s %.4f", s.Joint, s.Theta)]++
	}
	// Hips of pitch 30 over 60 degrees of turn: the cosine of the angle between
	// two slopes' normals is cos2 30 + sin2 30 cos 60 = 0.875; inside 151.0450.
	// Of the floor's butts some have its grain on end and some askew.
	assert.Equal(t, 1, seen["mitre 120.0000"], "%v", seen)
	assert.Equal(t, 1, seen["mitre 151.0450"], "%v", seen)
	assert.Equal(t, 1, seen["butt 120.0000"], "roof on walls: %v", seen)
}

func TestTestPiecesRefused(t *testing.T) {
	for _, tt := range []struct {
		c    []box.MM
		want string
	}{
		{[]box.MM{-1}, "clearances[0]: -1: room in a joint; want 0 to 5 mm"},
		{[]box.MM{0.1, box.MM(math.NaN())}, "clearances[1]: NaN: room"},
		{[]box.MM{0.1, 0.1}, "clearances[1]: the clearance 0.1 is there already"},
	} {
		_, err := orchard.TestPieces(tt.c...)
		assert.ErrorContains(t, err, tt.want)
	}
	_, err := box.Design{}.TestPieces()
	assert.ErrorContains(t, err, "Name: a name is needed")
	// A housing in a part 12 thick has 6 of depth at most, and no play beyond 2.
	d := terrace.With(func(d *box.Design) { d.Board = thick(12) })
	_, err = d.TestPieces(0.2, 3)
	assert.ErrorContains(t, err, "Inner[0].Partition.Joint.Play: 3")
	free := box.Design{Name: "free", Board: thick(15), Free: []box.Free{{Name: "perch", Outline: outline.Rectangle(0, 0, 30, 20)}}}
	_, err = free.TestPieces()
	assert.ErrorContains(t, err, "no joints to try")
}

// Every design of every kind has its test pieces; where a clearance does not go
// with the boards it is named.
func TestTestPiecesOfRandomDesigns(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	made, offcuts, tight := 0, 0, 0
	for n := 0; n < 80; n++ {
		k := kinds{Footprint: anybox.Footprints[n%3], Roof: anybox.Roofs[n%5], Laps: anybox.Laps[r.IntN(3)],
			Corner: anybox.Corners[n%4], Floor: anybox.Floors[r.IntN(len(anybox.Floors))]}
		d := randomDesign(r, k)
		if _, err := d.Resolve(); err != nil {
			continue
		}
		p, err := d.TestPieces()
		if err != nil {
			if strings.Contains(err.Error(), "goes ill") {
				tight++
				continue
			}
			t.Errorf("%v: %v", k, err)
			continue
		}
		made, offcuts = made+1, offcuts+len(p.Pieces())
		names := map[box.Part]bool{}
		for _, q := range p.Pieces() {
			assert.False(t, names[q.Part], "%v: %s twice", k, q.Part)
			names[q.Part] = true
			m, err := p.Mesh(q.Part)
			require.NoError(t, err)
			require.NoError(t, m.Check(), "%v: %s", k, q.Part)
		}
	}
	t.Logf("%d designs, %d offcuts, %d too thin for a clearance", made, offcuts, tight)
	assert.Greater(t, made, 50)
}

// badFit is a joint that goes wrong when it is fitted.
type badFit struct {
	joints.Butt
	panics bool
}

func (j badFit) Fit(joints.MM) joints.Joint {
	if j.panics {
		panic("no")
	}
	return nil
}

func TestTestPiecesOfOthersJoints(t *testing.T) {
	d := box.Design{Name: "own", Board: thick(15), Size: box.Cavity{Width: 100, Depth: 120, Height: 220}, Floor: box.NoFloor{}, Roof: box.NoRoof{}}
	for _, panics := range []bool{false, true} {
		d.Corners.Joint = badFit{panics: panics}
		_, err := d.TestPieces()
		assert.ErrorContains(t, err, "Corners.Joint: the joint's Fit gives no joint")
	}
	// A pointer is as good as what it points to.
	d.Corners.Joint = &joints.Comb{Fingers: 11}
	assert.InDelta(t, 60, float64(piece(t, testPieces(t, d), "free/1 comb 0.2 front").Length), 1e-6)
	// A joint that works in the box and nowhere else is the sample's problem.
	d.Corners.Joint = moody{}
	_, err := d.TestPieces()
	assert.ErrorContains(t, err, "Corners.Joint")
}

// moody panics at edges shorter than a hundred.
type moody struct{ joints.Butt }

func (j moody) Section(c joints.Corner) (joints.Section, error) {
	if c.Length < 100 {
		panic("too short for me")
	}
	return j.Butt.Section(c)
}
