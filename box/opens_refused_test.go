package box_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
)

// What cannot open, each with its place in the design and its range.
func TestOpeningsThatCannotBeMade(t *testing.T) {
	one := func(os ...box.Opening) func(*box.Design) {
		return func(d *box.Design) { d.Opens = os }
	}
	with := func(f func(*box.Design), os ...box.Opening) func(*box.Design) {
		return func(d *box.Design) { f(d); d.Opens = os }
	}
	sides := func(d *box.Design) { d.Corners.Laps = box.Sides }
	hole := func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 120}}
	}
	checkRefusals(t, shut, []refusal{
		{"nothing", one(nil), "Opens[0]", "unknown-value", "not an opening", 0, 0},
		{"an angle of 400", one(box.Hinged{Part: box.Roof, Angle: 400}), "Opens[0].Hinged.Angle", "range", "400", 1, 270},
		{"a pivot's angle", one(box.Pivoted{Part: box.Front, Angle: -5}), "Opens[0].Pivoted.Angle", "range", "-5", 1, 270},
		{"no number", one(box.Hinged{Part: box.Roof, Play: box.MM(math.NaN())}), "Opens[0].Hinged.Play", "range", "NaN", 0, 20},
		{"play of 30", one(box.Removable{Part: box.Roof, Play: 30}), "Opens[0].Removable.Play", "range", "30", 0, 20},
		{"no such part", one(box.Hinged{Part: "frnot", At: box.Left}), "Opens[0].Hinged.Part", "unknown-part", "(try front)", 0, 0},
		{"no part", one(box.Pivoted{}), "Opens[0].Pivoted.Part", "unknown-part", "say which part: front", 0, 0},
		{"no such neighbour", one(box.Hinged{Part: box.Front, At: "lift"}), "Opens[0].Hinged.At", "unknown-part", "(try left)", 0, 0},
		{"at itself", one(box.Hinged{Part: box.Front, At: box.Front}), "Opens[0].Hinged.At", "no-edge", "do not meet", 0, 0},
		{"at the other side", one(box.Hinged{Part: box.Front, At: box.Back}), "Opens[0].Hinged.At", "no-edge", "do not meet", 0, 0},
		{"a free part opens", with(func(d *box.Design) { d.Free = []box.Free{{Name: "x", Outline: square40(), At: box.Place{Y: 500}}} }, box.Pivoted{Part: "free/x"}), "Opens[0].Pivoted.Part", "unknown-part", "front", 0, 0},
		{"an open face", with(func(d *box.Design) { d.Roof = box.NoRoof{} }, box.Hinged{Part: box.Roof}), "Opens[0].Hinged.Part", "unknown-part", "roof", 0, 0},
		{"a neighbour that is open", with(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Left, Open: true}} }, box.Pivoted{Part: box.Front}), "Opens[0].Pivoted.Part", "open", "left", 0, 0},
		{"twice", one(box.Hinged{Part: box.Roof}, box.Removable{Part: box.Roof}), "Opens[1].Removable.Part", "twice", "Opens[0].Hinged", 0, 0},
		{"a roof between walls", one(box.Pivoted{Part: box.Roof}), "Opens[0].Pivoted.Part", "not-a-wall", "roof", 0, 0},
		{"a floor that slides", one(box.Sliding{Part: box.Floor}), "Opens[0].Sliding.Part", "not-a-wall", "floor", 0, 0},
		{"the long back", with(longBack, box.Hinged{Part: box.Back, At: box.Left}), "Opens[0].Hinged.Part", "runs-on", "carries the box", 0, 0},
		// The front's ends are 254.6 - 1.6 high; twice the nail is 6.
		{"a pivot above the part", one(box.Pivoted{Part: box.Front, Below: 2, Headroom: 1.6}), "Opens[0].Pivoted.Below", "range", "edges", 6, 247},
		{"a pivot below the part", one(box.Pivoted{Part: box.Front, Below: 300, Headroom: 1.6}), "Opens[0].Pivoted.Below", "range", "300", 6, 247},
		// The nails go through 14.6 and a gap of 2.4, at least 10 in, at most to the middle of 120.
		{"short nails", one(box.Pivoted{Part: box.Front, Length: 20}), "Opens[0].Pivoted.Length", "range", "20", 27, 77},
		{"nails that meet", one(box.Pivoted{Part: box.Front, Length: 90}), "Opens[0].Pivoted.Length", "range", "90", 27, 77},
		{"thick nails", one(box.Pivoted{Part: box.Front, Diameter: 6}), "Opens[0].Pivoted.Diameter", "range", "6", 1, 14.6 / 3},
		{"leaning neighbours", with(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Left, Lean: 5}, {On: box.Right, Lean: 5}} }, box.Pivoted{Part: box.Front}), "Opens[0].Pivoted.Part", "not-square", "5", 0, 0.001},
		{"glued in a housing", with(func(d *box.Design) {
			d.Floor = box.FloorBetween{Raise: 20}
			d.Joints = []box.Between{{Over: box.Front, Under: box.Floor, Joint: joints.Housing{}}}
		}, box.Hinged{Part: box.Front}), "Opens[0].Hinged.Part", "captive", "floor", 0, 0},
		{"fingers", with(func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Right, Joint: joints.Comb{}}}
		}, box.Hinged{Part: box.Front}), "Opens[0].Hinged.Part", "captive", "comb", 0, 0},
		{"a partition housed in it", with(func(d *box.Design) { d.Inner = []box.Inner{box.Partition{Name: "p"}} }, box.Pivoted{Part: box.Front}), "Opens[0].Pivoted.Part", "captive", "inner/p", 0, 0},
		// A rebate holds the pivoted side from turning inward at once: its top moves in.
		{"a rebate behind its top", with(func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Joint: joints.Rebate{}}}
		}, box.Pivoted{Part: box.Left}), "Opens[0].Pivoted.Angle", "strikes", "front", 0, 0},
		{"a gap wider than the leaf", one(box.Hinged{Part: box.Roof, Hinge: box.Butts{Width: 20}}), "Opens[0].Hinged.Hinge.Butts.Width", "range", "thinner board", 3, 14.6},
		{"leaves thicker than the board", one(box.Hinged{Part: box.Roof, Hinge: box.Butts{Thickness: 4}}), "Opens[0].Hinged.Hinge.Butts.Thickness", "range", "recess", 0, 7.3},
		{"more hinges than seam", one(box.Hinged{Part: box.Roof, Hinge: box.Butts{Count: 4}}), "Opens[0].Hinged.Hinge.Butts.Height", "range", "4 of them", 1, 28},
		{"no hinge", one(box.Hinged{Part: box.Roof, Hinge: strangeHinge{}}), "Opens[0].Hinged.Hinge", "unknown-value", "not a hinge", 0, 0},
		{"too deep a groove", one(box.Sliding{Part: box.Front, Depth: 12}), "Opens[0].Sliding.Depth", "joint", "deep", 0, 0},
		{"too little beyond the groove", one(box.Sliding{Part: box.Front, Beyond: 2}), "Opens[0].Sliding.Beyond", "joint", "shear off", 0, 0},
		{"an inspection off the wall", one(box.Inspection{On: box.Left, Width: 130}), "Opens[0].Inspection", "off-cavity", "reaches 5 past", 0, 0},
		{"a sill of 5", one(box.Inspection{On: box.Left, Sill: 5}), "Opens[0].Inspection.Sill", "range", "nest", 10, 10000},
		{"an inspection of the roof", one(box.Inspection{On: box.Roof}), "Opens[0].Inspection.On", "not-a-wall", "roof", 0, 0},
		{"two covers", one(box.Inspection{On: box.Left}, box.Inspection{On: box.Right}), "Opens[1].Inspection.Name", "twice", "cover", 0, 0},
		{"an inspection over the entrance", with(hole, box.Inspection{On: box.Front}), "Features[0].Entrance", "feature-meets-feature", "inspection", 0, 0},
		{"nothing to stop", one(box.Stopper{}), "Opens[0].Stopper.On", "no-entrance", "front", 0, 0},
		{"a stopper under the eaves", with(func(d *box.Design) {
			d.Roof = box.Flat{Over: box.Overhangs{Front: 30}}
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 205}}
		}, box.Stopper{}), "Opens[0].Stopper", "in-the-way", "roof", 0, 0},
		{"a button under an overhang", with(func(d *box.Design) { d.Roof = box.Flat{Over: box.Overhangs{All: 20}} }, box.Hinged{Part: box.Roof}, box.TurnButton{Part: box.Roof, At: box.Left}), "Opens[1].TurnButton.At", "not-flush", "HookAndEye", 0, 0},
		{"a button off its seam", with(sides, box.Hinged{Part: box.Front}, box.TurnButton{Part: box.Front, At: box.Right, Along: 130}), "Opens[1].TurnButton.Along", "range", "130", -120, 120},
		{"a hook where nothing meets", one(box.HookAndEye{Part: box.Front, At: box.Back}), "Opens[0].HookAndEye.At", "no-edge", "do not meet", 0, 0},
		{"a wall moves along", one(box.Hinged{Part: box.Roof, With: []box.Part{box.Left}}), "Opens[0].Hinged.With[0]", "fixed", "left", 0, 0},
		{"nothing moves along", one(box.Hinged{Part: box.Roof, With: []box.Part{"free/no"}}), "Opens[0].Hinged.With[0]", "unknown-part", "free/no", 0, 0},
	})
	for _, p := range problems(t, box.Design{Name: "free", Board: shut.Board, Free: []box.Free{{Name: "x", Outline: square40()}}, Opens: []box.Opening{box.Stopper{}}}) {
		assert.Equal(t, "no-box", p.Code)
	}
	// A polygon has no back to hang at.
	_, ps := tryResolve(t, "hexagon", box.Design{Name: "hex", Board: shut.Board, Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 6, Across: 200},
		Floor: box.NoFloor{}, Roof: box.Flat{}, Opens: []box.Opening{box.Hinged{Part: box.Roof}}})
	require.Len(t, ps, 1)
	assert.Equal(t, "missing", ps[0].Code)
	assert.Equal(t, "Opens[0].Hinged.At", ps[0].Path)
}

// strangeHinge is none of the kinds of hinge, by embedding one.
type strangeHinge struct{ box.Hinge }

// What a plan is asked and cannot do.
func TestPlansThatCannotBeOpened(t *testing.T) {
	p := opened(t, nil, box.Pivoted{Part: box.Front}, box.Removable{Part: box.Roof})
	var pr box.Problem
	for _, x := range []struct {
		do   func() error
		code string
		says string
	}{
		{func() error { _, err := p.Opened("frnot", 10); return err }, "unknown-part", "no such part"},
		{func() error { _, err := p.Opened(box.Left, 10); return err }, "fixed", "does not open"},
		{func() error { _, err := p.Opened(box.Roof, 10); return err }, "fixed", "Drawn"},
		{func() error { _, err := p.Drawn(box.Front, 10); return err }, "fixed", "Opened"},
		{func() error { _, err := p.Opened(box.Front, 400); return err }, "range", "400"},
		{func() error { _, err := p.Opened(box.Front, -1); return err }, "range", "-1"},
		{func() error { _, err := p.Opened(box.Front, box.Deg(math.NaN())); return err }, "range", "NaN"},
	} {
		err := x.do()
		require.True(t, errors.As(err, &pr), "%v", err)
		assert.Equal(t, x.code, pr.Code)
		assert.Contains(t, pr.Error(), x.says)
	}
}

// A plan that is opened has other poses and the same home; shut again it is what
// it was. The front turns about the axis through its nails, its lower edge
// outward: after 90 degrees what was up lies to the back.
func TestOpenAndShut(t *testing.T) {
	p := opened(t, longBack, box.Hinged{Part: box.Roof}, box.Pivoted{Part: box.Left}, box.HookAndEye{Part: box.Roof, At: box.Right})
	before := p.Pieces()
	q, err := p.Opened(box.Left, 90)
	require.NoError(t, err)
	assert.Equal(t, before, p.Pieces(), "the plan itself stays shut")
	both, err := q.Opened(box.Roof, 45)
	require.NoError(t, err)
	for i, x := range both.Pieces() {
		assert.Equal(t, before[i].Home, x.Home)
		moved := x.Part == box.Left || x.Part == box.Roof
		assert.Equal(t, moved, x.Pose != x.Home, x.Part)
	}
	left, _ := both.Piece(box.Left)
	// Its way up, z, turns about y so that the lower edge goes out to -x: to +x.
	up := left.Pose.Out(left.Home.In(left.Home.O.Add(left.Home.V))).Sub(left.Pose.O)
	assert.InDelta(t, 1, up.X, 1e-9)
	assert.InDelta(t, 0, up.Z, 1e-9)
	w := both.Ways()
	assert.Equal(t, 45.0, w[0].At)
	assert.Equal(t, 90.0, w[1].At)
	one, err := both.Opened(box.Roof, 0)
	require.NoError(t, err)
	assert.Equal(t, q.Pieces(), one.Pieces())
	none, err := one.Opened(box.Left, 0)
	require.NoError(t, err)
	assert.Equal(t, before, none.Pieces())
	assert.Equal(t, p.Ways(), none.Ways())
}

// With copies what openings hold.
func TestWithCopiesOpenings(t *testing.T) {
	d := opens(nil, box.Hinged{Part: box.Roof, With: []box.Part{"free/a"}})
	c := d.With(func(d *box.Design) {
		d.Opens[0].(box.Hinged).With[0] = "free/b"
		d.Opens = append(d.Opens, box.Stopper{})
	})
	assert.Equal(t, box.Part("free/a"), d.Opens[0].(box.Hinged).With[0])
	assert.Len(t, d.Opens, 1)
	assert.Len(t, c.Opens, 2)
}
