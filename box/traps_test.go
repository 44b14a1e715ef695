package box_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
)

func resolve(t *testing.T, d box.Design) *box.Plan {
	t.Helper()
	p, err := d.Resolve()
	require.NoError(t, err)
	return p
}

func problems(t *testing.T, d box.Design) box.Problems {
	t.Helper()
	p, err := d.Resolve()
	require.Error(t, err)
	require.Nil(t, p)
	var ps box.Problems
	require.True(t, errors.As(err, &ps), "%v", err)
	require.NotEmpty(t, ps)
	return ps
}

func piece(t *testing.T, p *box.Plan, name box.Part) box.Piece {
	t.Helper()
	q, ok := p.Piece(name)
	require.True(t, ok, "no %s", name)
	return q
}

// voidOf adds up the voids of one kind, of one owner unless that is "".
func voidOf(p *box.Plan, kind, owner string) float64 {
	v := 0.0
	for _, x := range p.Voids() {
		if x.Kind == kind && (owner == "" || x.Owner == owner) {
			v += x.Volume
		}
	}
	return v
}

func thick(t box.MM) box.Board { return box.Board{Thickness: t} }

func TestHipWallsMeetSlopesOnlyInAPoint(t *testing.T) {
	// Rules from edge neighbours alone overlap here: each wall meets the two
	// hips beside its own only in the eaves corner. Wrong values: plan 100 x
	// 100, pitch 45, all 10 thick: 10^3/6 = 166.6667 four times; hips 10 and
	// 20: 628.5394 at the apex; front and back hips butted over the sides:
	// 1414.2136 (geometry).
	hip := box.Design{Name: "hip", Board: thick(10), Size: box.Cavity{Width: 100, Depth: 100, Height: 100},
		Floor: box.FloorBetween{}, Roof: box.Hip{Pitch: 45}}
	resolve(t, hip)
	resolve(t, hip.With(func(d *box.Design) {
		d.Boards = map[box.Part]box.Board{box.RoofLeft: thick(19), box.RoofRight: thick(19)}
		d.Roof = box.Hip{Pitch: 45, Hips: joints.Mitre{}}
	}))
	resolve(t, hip.With(func(d *box.Design) { d.Roof = box.Hip{Pitch: 45, Hips: joints.Butt{}} }))
}

func TestCornerLappedInARingIsRefused(t *testing.T) {
	// Three slabs lapping over one another in a ring leave the whole corner
	// open: 10 x 12 x 15 = 1800 (geometry).
	d := box.Design{Name: "ring", Board: thick(10), Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{},
		Boards: map[box.Part]box.Board{box.Right: thick(12), box.Floor: thick(15)},
		Joints: []box.Between{{Over: box.Floor, Under: box.Front}}}
	// front over right, right over floor, floor over front
	ps := problems(t, d)
	require.Equal(t, "ring", ps[0].Code)
	for _, name := range []string{"front", "right", "floor"} {
		assert.Contains(t, ps.Error(), name)
	}
	// One mitre does not mend it; two do.
	d.Joints = append(d.Joints, box.Between{Over: box.Right, Under: box.Floor, Joint: joints.Mitre{}})
	assert.Equal(t, "ring", problems(t, d)[0].Code)
}

func TestRebatesOfUnlikeDepthRunOut(t *testing.T) {
	// t 10, 12, 15; depths front/right, front/floor, right/floor. What runs
	// out is a pocket: (5,3,5) (5-3)*5*15 = 150, (3,5,5) 210, (7,5,3)
	// (7-5)*3*15 = 90, four corners each (geometry). A rebate that ends with
	// its guest leaves none in the first and the last.
	build := func(ab, ac, bc box.MM, through bool) *box.Plan {
		d := box.Design{Name: "rebates", Board: thick(10), Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
			Floor: box.FloorBetween{}, Roof: box.Flat{},
			Boards:  map[box.Part]box.Board{box.Left: thick(12), box.Right: thick(12), box.Floor: thick(15)},
			Corners: box.Corners{Joint: joints.Rebate{Depth: ab, Through: through}}}
		for _, w := range []box.Part{box.Front, box.Back} {
			d.Joints = append(d.Joints, box.Between{Over: w, Under: box.Floor, Joint: joints.Rebate{Depth: ac, Through: through}})
		}
		for _, w := range []box.Part{box.Left, box.Right} {
			d.Joints = append(d.Joints, box.Between{Over: w, Under: box.Floor, Joint: joints.Rebate{Depth: bc, Through: through}})
		}
		return resolve(t, d)
	}
	assert.InDelta(t, 0, voidOf(build(5, 5, 5, true), "run-out", ""), 1e-4)
	assert.InDelta(t, 600, voidOf(build(5, 3, 5, true), "run-out", ""), 1e-4)
	assert.InDelta(t, 0, voidOf(build(5, 3, 5, false), "run-out", ""), 1e-4)
	assert.InDelta(t, 840, voidOf(build(3, 5, 5, true), "run-out", ""), 1e-4)
	assert.InDelta(t, 0, voidOf(build(3, 5, 5, false), "run-out", ""), 1e-4)
}

func TestHousedFloorAtRebatedCorners(t *testing.T) {
	// Cavity 100 x 100, t 15, rebate 6, floor 12 housed 5 (geometry):
	// through: a closed pocket 1 x 5 x 12 = 60 at each corner; stopped 3
	// short: none. With play 0.2: channels 110.4^2 + 4*0.8*5.2 less the floor
	// 110^2, times 12: 1257.6, of which run-out 4*0.8*5*12 = 192.
	build := func(h joints.Housing, corner joints.Joint) *box.Plan {
		return resolve(t, box.Design{Name: "housed", Board: thick(15), Size: box.Cavity{Width: 100, Depth: 100, Height: 200},
			Corners: box.Corners{Joint: corner}, Roof: box.Flat{},
			Boards: map[box.Part]box.Board{box.Floor: thick(12)},
			Floor:  box.FloorBetween{Raise: 15, Joint: h}})
	}
	r := joints.Rebate{Depth: 6}
	p := build(joints.Housing{Depth: 5, Tight: true}, r)
	assert.InDelta(t, 240, voidOf(p, "run-out", ""), 1e-4)
	assert.InDelta(t, 0, voidOf(p, "play", ""), 1e-6)
	p = build(joints.Housing{Depth: 5, Play: 0.2}, r)
	assert.InDelta(t, 1065.6, voidOf(p, "play", ""), 1e-3)
	assert.InDelta(t, 192, voidOf(p, "run-out", ""), 1e-3)
	// Butt corners: the channel of the front runs out through its ends, 5 x 12
	// x (15-5) = 600 a corner, open to the outside.
	p = build(joints.Housing{Depth: 5, Tight: true}, nil)
	assert.InDelta(t, 2400, voidOf(p, "run-out", ""), 1e-3)
}

func TestOrderFollowsFromAllJoints(t *testing.T) {
	// Hip, plan 120 x 100, ridge 20: the right slope laps over front and back,
	// both lap over the left one, front and back mitred. "Left equals right",
	// the usual rank, would leave 23.6893 at the left end of the ridge; the
	// joints together say right over left (geometry).
	d := box.Design{Name: "hip", Board: thick(10), Size: box.Cavity{Width: 120, Depth: 100, Height: 100},
		Floor: box.FloorBetween{}, Roof: box.Hip{Pitch: 45},
		Joints: []box.Between{
			{Over: box.RoofRight, Under: box.RoofFront, Joint: joints.Butt{}},
			{Over: box.RoofRight, Under: box.RoofBack, Joint: joints.Butt{}},
			{Over: box.RoofFront, Under: box.RoofLeft, Joint: joints.Butt{}},
			{Over: box.RoofBack, Under: box.RoofLeft, Joint: joints.Butt{}},
			{Over: box.RoofFront, Under: box.RoofBack, Joint: joints.Mitre{}}}}
	assert.Empty(t, resolve(t, d).Voids())
}

func TestPinwheelOfThickBoards(t *testing.T) {
	// A ring over the whole box: octagon of side 30, pinwheel butts. From t
	// above half the side the usual ranks would leave voids: 4032 at t 18,
	// 11,200 at 20 (geometry). Parts so thick are refused: at 135 degrees the
	// end of a butt reaches past its edge by t, which may be half the side.
	for _, th := range []box.MM{10, 15, 15.1, 18, 20} {
		d := box.Design{Name: "octagon", Board: thick(th), Size: box.Cavity{Height: 100},
			Footprint: box.Regular{Sides: 8, Across: box.MM(30 * (1 + math.Sqrt2))},
			Boards:    map[box.Part]box.Board{box.Floor: thick(12)},
			Corners:   box.Corners{Laps: box.Pinwheel}, Floor: box.FloorBetween{}, Roof: box.Flat{}}
		if th > 15 {
			assert.Equal(t, "joint", problems(t, d)[0].Code)
			continue
		}
		assert.Empty(t, resolve(t, d).Voids(), "%v", th)
	}
}

func TestWallAboveTheRoofLapsOverItsNeighbours(t *testing.T) {
	// Sides over the back while the roof laps over the sides would leave
	// 14.6^3/cos 12 = 3181.6630 open at each top corner (geometry).
	d := orchard.With(func(d *box.Design) {
		d.Joints = []box.Between{{Over: box.Left, Under: box.Back}, {Over: box.Right, Under: box.Back}}
	})
	ps := problems(t, d)
	assert.Equal(t, "up-under", ps[0].Code)
	assert.Equal(t, "Walls[0].Above", ps[0].Path)
}

func TestCombOfAHexagon(t *testing.T) {
	// Hexagon of side 90, 100 high, t 15, five fingers, play 0.2: 6 edges x 4
	// seams x 0.2 x 15 x 15 / sin 120 = 1247.0766 (geometry).
	p := resolve(t, box.Design{Name: "hexagon", Board: thick(15), Size: box.Cavity{Height: 100},
		Footprint: box.Regular{Sides: 6, Across: box.MM(90 * math.Sqrt(3))},
		Corners:   box.Corners{Joint: joints.Comb{Fingers: 5, Play: 0.2}}, Floor: box.NoFloor{}, Roof: box.Flat{}})
	assert.InDelta(t, 1247.0766, voidOf(p, "play", ""), 1e-3)
}

func TestSquareEndsOfAPent(t *testing.T) {
	// Pitch 15, roof 18, walls 15, cavity 150 x 130, front over 40, back 0
	// (geometry): length 130/cos15 + 52.1171 + 15.5291 = 202.232151; the bare
	// strip at the back 18^2 cos75 / (2 sin75) x 180 = 7813.3985.
	d := box.Design{Name: "square", Board: thick(15), Boards: map[box.Part]box.Board{box.Roof: thick(18)},
		Size: box.Cavity{Width: 150, Depth: 130, Height: 200}, Floor: box.FloorBetween{},
		Roof: box.Pent{Pitch: 15, Over: box.Overhangs{Front: 40}, Ends: box.SquareEnds}}
	p := resolve(t, d)
	assert.InDelta(t, 202.232151, float64(piece(t, p, box.Roof).Length), 1e-6)
	assert.InDelta(t, 7813.3985, voidOf(p, "square", ""), 1e-3)
	d.Roof = box.Pent{Pitch: 15, Ends: box.SquareEnds}
	assert.InDelta(t, 2*7813.3985, voidOf(resolve(t, d), "square", ""), 1e-3)
}

func TestPlumbRoofVolume(t *testing.T) {
	// (130+15+22+40)/cos15 x (150+12+9+40) x 18 = 813919.639172 (geometry).
	p := resolve(t, box.Design{Name: "pent", Board: thick(15),
		Boards: map[box.Part]box.Board{box.Right: thick(12), box.Back: thick(22), box.Left: thick(9), box.Roof: thick(18)},
		Size:   box.Cavity{Width: 150, Depth: 130, Height: 200}, Floor: box.FloorBetween{},
		Roof: box.Pent{Pitch: 15, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}}})
	assert.InDelta(t, 813919.639172, piece(t, p, box.Roof).Volume, 1e-3)
}

func TestHopperAngles(t *testing.T) {
	// Four walls leaning 15 out: the mitre's tilt from square is asin(cos 15
	// sin 45) = 43.080, a butt's bevel 3.841 (checks: hopper-c-b-4-75,
	// butt-4-75).
	d := box.Design{Name: "hopper", Board: thick(15), Size: box.Cavity{Width: 200, Depth: 200, Height: 120},
		Floor: box.FloorBetween{}, Roof: box.NoRoof{}, Corners: box.Corners{Joint: joints.Mitre{}}}
	for _, w := range []box.Part{box.Front, box.Back, box.Left, box.Right} {
		d.Walls = append(d.Walls, box.Wall{On: w, Lean: 15})
	}
	bevel := func(d box.Design) float64 {
		for _, e := range piece(t, resolve(t, d), box.Left).Panel.Edges {
			if e.Neighbour == box.Front {
				return math.Abs(float64(e.Bevel))
			}
		}
		return math.NaN()
	}
	assert.InDelta(t, 43.0795, bevel(d), 1e-4)
	d.Corners.Joint = joints.Butt{}
	assert.InDelta(t, 3.8410, bevel(d), 1e-4)
}

func TestFaintBendIsRefused(t *testing.T) {
	// The front of a rectangle bent by 3 degrees, butted: the bevel of 87
	// degrees would eat the whole part (geometry: void 11,300).
	d := box.Design{Name: "bent", Board: thick(15), Size: box.Cavity{Height: 200}, Floor: box.FloorBetween{}, Roof: box.Flat{},
		Footprint: box.Polygon{Points: []box.Point{{X: -75, Y: -75}, {X: 0, Y: box.MM(-75 - 75*math.Tan(3*math.Pi/180))}, {X: 75, Y: -75}, {X: 75, Y: 75}, {X: -75, Y: 75}}}}
	ps := problems(t, d)
	assert.Equal(t, "joint", ps[0].Code)
}

func TestLostFace(t *testing.T) {
	// Sides leaning in by 30 degrees close over the front: 150 wide, they meet
	// at 130 of 200, so the roof never shows.
	d := box.Design{Name: "tent", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{}, Roof: box.Flat{},
		Walls: []box.Wall{{On: box.Left, Lean: -30}, {On: box.Right, Lean: -30}}}
	ps := problems(t, d)
	assert.Equal(t, "lost-face", ps[0].Code)
	assert.Equal(t, "Walls[0].Lean", ps[0].Path)
	assert.Contains(t, ps[0].Why, "meet 129.9 above the cavity floor, before they reach roof")
}

func TestSizesOfTheOrchardBox(t *testing.T) {
	// Cavity 120 x 120 x 240, t 14.6, pitch 12, rebate 7, raise 20, roof over
	// front 40 and sides 20, back 80 above and 60 below, worked by hand: roof
	// meets back at 265.506787 + 14.6/cos 12 = 280.432960, the back ends 80
	// higher; below the floor's underside -14.6 it runs on by 60.
	p := resolve(t, orchard)
	assert.Empty(t, voidOf(p, "play", "")+voidOf(p, "run-out", "")+voidOf(p, "square", ""))
	for _, x := range []struct {
		part          box.Part
		width, length float64
		volume        float64
	}{
		{box.Front, 149.2, 274.6, 538810.4766 - 11742.0167},
		{box.Back, 149.2, 435.032960, 886147.1073},
		{box.Left, 134, 301.594683, 562178.1794},
		{box.Right, 134, 301.594683, 562178.1794},
		{box.Floor, 120, 120, 210240},
		{box.Roof, 189.2, 181.603994, 493075.9649},
	} {
		q := piece(t, p, x.part)
		assert.InDelta(t, x.width, float64(q.Width), 1e-6, "%s", x.part)
		assert.InDelta(t, x.length, float64(q.Length), 1e-6, "%s", x.part)
		assert.InDelta(t, x.volume, q.Volume, 2e-4, "%s", x.part)
	}
	w, d, h := p.Outside()
	assert.InDelta(t, 149.2, float64(w), 1e-9)
	assert.InDelta(t, 149.2, float64(d), 1e-9)
	assert.InDelta(t, 286.422847, float64(h), 1e-6)
	for _, x := range []struct {
		roof box.RoofForm
		top  float64
		net  float64
	}{
		{box.Flat{}, 334.6, 835240.3040},
		{box.Gable{Pitch: 40, Run: box.LeftToRight}, 339.058946, 845553.6081},
		{box.Gable{Pitch: 40}, 389.404924, 955875.0040},
	} {
		q := piece(t, resolve(t, orchard.With(func(d *box.Design) { d.Roof = x.roof })), box.Back)
		assert.InDelta(t, x.top+74.6, float64(q.Length), 1e-6, "%T", x.roof)
		assert.InDelta(t, x.net, q.Volume, 1e-3, "%T", x.roof)
	}
}

func TestProblemsAreSentences(t *testing.T) {
	_, err := box.Design{}.Resolve()
	for _, l := range strings.Split(err.Error(), "\n") {
		assert.Regexp(t, `^[A-Z][A-Za-z.\[\]0-9]*: `, l)
	}
}

func TestCornerCutsTakeTheirTriangles(t *testing.T) {
	// Four corners of 8 x 8 / 2 = 32 off a floor 15 thick: 4 x 32 x 15 = 1920,
	// and the floor's outline loses them.
	d := box.Design{Name: "corners", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 100, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{}, Features: []box.Feature{box.CornerCuts{Size: 8}}}
	p := resolve(t, d)
	q := piece(t, p, box.Floor)
	assert.InDelta(t, 1920, voidOf(p, "feature", ""), 1e-6)
	assert.InDelta(t, 120*100*15-1920, q.Volume, 1e-3)
	assert.InDelta(t, 120*100-4*32, q.Panel.Silhouette.Area(), 1e-6)
	for _, o := range q.Panel.Ops {
		assert.True(t, o.InOutline)
	}
	// Housed, the chamfer runs on to the floor's own edges: at 45 degrees a
	// corner of side 8 + 2*5 is taken.
	d.Floor = box.FloorBetween{Raise: 15, Joint: joints.Housing{Depth: 5, Tight: true}}
	assert.InDelta(t, 130*110*15-4*15*18*18/2, piece(t, resolve(t, d), box.Floor).Volume, 1e-3)
}
