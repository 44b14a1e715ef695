package box_test

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/joints"
)

// What a newcomer stumbles over, each by what is said of it or done instead.

// only is the one problem of a design.
func only(t *testing.T, name string, d box.Design) box.Problem {
	t.Helper()
	_, ps := tryResolve(t, name, d)
	require.Len(t, ps, 1, "%s: %v", name, ps)
	return ps[0]
}

// A text that is too long says so once, as a whole, and tries a height that does.
// "NO 17" is 23.5 units of a sixth of its height long (4+2+4+2+2+2+1.5+2+4), and a
// tenth of it more for the width of the line: 4.0167 heights. The front is 150 wide.
func TestTextThatIsTooLong(t *testing.T) {
	for _, x := range []struct {
		height, width box.MM
		turn          box.Deg
		got, why, try string
	}{
		// 160.67 long: (160.67 - 150)/2 = 5.33 past; 150/4.0167 = 37.3.
		{40, 0, 0, "40 high", `text "No 17", 160.7 wide at Height 40, comes 5.3 past the edge of front, which has 150 there`, "Height: 37"},
		{40, 0, 180, "40 high", `text "No 17", 160.7 wide at Height 40, comes 5.3 past the edge of front, which has 150 there`, "Height: 37"},
		// 38 x 23.5/6 = 148.83 and the line of 3: 151.83; (150-3)/(23.5/6) = 37.53.
		{38, 3, 0, "38 high", `text "No 17", 151.8 wide at Height 38, comes 0.9 past the edge of front, which has 150 there`, "Height: 37"},
		// Upright there is room for it: the front is 255 high, 240 of them over the floor's
		// level, and 120 up from the lower edge of the face.
		{70, 0, 90, "70 high", `text "No 17", 281.2 wide at Height 70, comes 20.6 past the edge of front, which has 255 there`, "Height: 59"},
	} {
		p := only(t, x.why, with(box.Text{On: box.Front, Text: "No 17", Height: x.height, Width: x.width, At: box.Anchor{Up: 120, Turn: x.turn}}))
		assert.Equal(t, "Features[0].Text", p.Path)
		assert.Equal(t, "off-part", p.Code)
		assert.Equal(t, x.got, p.Got)
		assert.Equal(t, x.why, p.Why)
		assert.Equal(t, x.try, p.Try)
	}
	// What is tried does resolve, and a millimetre more does not.
	resolve(t, with(box.Text{On: box.Front, Text: "No 17", Height: 37, At: box.Anchor{Up: 120}}))
	only(t, "38", with(box.Text{On: box.Front, Text: "No 17", Height: 38, At: box.Anchor{Up: 120}}))
	// Where only the place is wrong nothing is said of the width; where no height helps,
	// nothing is tried.
	p := only(t, "beside", with(box.Text{On: box.Front, Text: "7", Height: 30, At: box.Anchor{Right: 90, Up: 100}}))
	assert.NotContains(t, p.Why, "which has")
	assert.Empty(t, p.Try)
	// The hole begins 25 over the text's middle.
	p = only(t, "into the hole", with(box.Entrance{Shape: box.Round{Diameter: 32}, Above: 100}, box.Text{On: box.Front, Text: "7", Height: 60, At: box.Anchor{Up: 75}}))
	assert.Equal(t, "feature-meets-feature", p.Code)
	assert.Contains(t, p.Why, `text "7", 46 wide at Height 60, on front runs into the entrance of Features[0].Entrance`)
	assert.Equal(t, "Height: 45", p.Try) // half a capital and half a line, 0.55 heights: 45.45
}

// Either slope of a gable opens: the one that is hinged laps over at the ridge, and
// the other one where Joints says so, which then is told.
func TestEitherSlopeOfAGableOpens(t *testing.T) {
	for _, pitch := range []box.Deg{14, 20, 30, 45, 60} {
		for _, run := range []box.RidgeRun{box.FrontToBack, box.LeftToRight} {
			slopes := [2]box.Part{box.RoofLeft, box.RoofRight}
			if run == box.LeftToRight {
				slopes = [2]box.Part{box.RoofFront, box.RoofBack}
			}
			for k, part := range slopes {
				p := resolve(t, plain.With(func(d *box.Design) {
					d.Roof = box.Gable{Pitch: pitch, Run: run, Over: box.Overhangs{All: 20}}
					d.Opens = []box.Opening{box.Hinged{Part: part}}
				}))
				for _, s := range p.Seams() {
					if s.Over == slopes[1-k] && s.Under == part && pitch >= 15 {
						t.Errorf("%v %v: %s laps over %s", pitch, run, s.Over, part)
					}
				}
				q, err := p.Opened(part, 90)
				require.NoError(t, err)
				assert.NotEqual(t, piece(t, p, part).Pose, piece(t, q, part).Pose)
			}
		}
	}
	stays := only(t, "joint", plain.With(func(d *box.Design) {
		d.Roof = box.Gable{Pitch: 30}
		d.Opens = []box.Opening{box.Hinged{Part: box.RoofLeft}}
		d.Joints = []box.Between{{Over: box.RoofRight, Under: box.RoofLeft}}
	}))
	assert.Equal(t, "Opens[0].Hinged.Angle", stays.Path)
	assert.Equal(t, "roof/left cannot move at all: front lies against it", stays.Why)
	assert.Equal(t, `Joints: []box.Between{{Over: "roof/left", Under: "roof/right"}}`, stays.Try)
}

// A wall that swings out under the overhang of a slope strikes it: one figure, in
// the sentence and in the range, rounded down, and the headroom that would do. The top
// is bevelled to the slope, so its inner arris is highest; on the way out that passes
// under the roof's edge, 40 + 15 farther out: square to the slope it needs 55 sin 10 =
// 9.55.
func TestHingedWallUnderAnOverhang(t *testing.T) {
	hung := func(headroom box.MM, angle box.Deg) box.Design {
		return plain.With(func(d *box.Design) {
			d.Roof = box.Pent{Pitch: 10, Over: box.Overhangs{Front: 40}}
			d.Corners.Laps = box.Sides
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}}
			d.Opens = []box.Opening{box.Hinged{Part: box.Front, Headroom: headroom, Angle: angle}}
		})
	}
	p := only(t, "180", hung(0, 180))
	assert.Equal(t, "Opens[0].Hinged.Angle", p.Path)
	assert.Equal(t, "180", p.Got)
	assert.Regexp(t, `^front strikes roof when it is turned by \d\.\d\d degrees, and it must open to 180$`, p.Why)
	assert.Contains(t, p.Error(), "when it is turned by "+strconv.FormatFloat(p.Hi, 'f', -1, 64)+" degrees")
	assert.Contains(t, p.Error(), "want 0 to "+strconv.FormatFloat(p.Hi, 'f', -1, 64)+" deg")
	resolve(t, hung(0, box.Deg(p.Hi)))
	only(t, "half a degree on", hung(0, box.Deg(p.Hi+0.5)))
	m := regexp.MustCompile(`^Headroom: ([\d.]+), or less overhang on that side$`).FindStringSubmatch(p.Try)
	require.Len(t, m, 2, p.Try)
	h, err := strconv.ParseFloat(m[1], 64)
	require.NoError(t, err)
	resolve(t, hung(box.MM(h), 180))
	only(t, "a tenth less", hung(box.MM(h-0.1), 180))
	assert.InDelta(t, 55*math.Sin(10*math.Pi/180), h, 0.1)
}

// What lies on a part that should open is told as that, with what would do: to be
// fixed to the part, or left out.
func TestWhatCannotMoveAtAll(t *testing.T) {
	covered := func(o box.Opening) box.Design {
		return plain.With(func(d *box.Design) {
			d.Roof = box.Pent{Over: box.Overhangs{Front: 40, Left: 20, Right: 20}}
			d.Walls = []box.Wall{{On: box.Back, Above: 80}}
			d.Outer = []box.Outer{box.CoverStrip{Name: "cover strip", Height: 30}}
			d.Opens = []box.Opening{o}
		})
	}
	p := only(t, "hinged", covered(box.Hinged{Part: box.Roof}))
	assert.Equal(t, "Opens[0].Hinged.Angle: roof cannot move at all: free/cover strip lies on it (try to leave out free/cover strip: the rubber strip of the hinge covers the seam)", p.Error())
	resolve(t, covered(box.Hinged{Part: box.Roof}).With(func(d *box.Design) { d.Outer = nil }))
	p = only(t, "leather", covered(box.Hinged{Part: box.Roof, Hinge: box.Leather{}}))
	assert.Equal(t, "to leave out free/cover strip, or to place it elsewhere", p.Try)
	p = only(t, "removable", covered(box.Removable{Part: box.Roof}))
	assert.Equal(t, `Opens[0].Removable: roof cannot move at all: free/cover strip lies on it (try With: []box.Part{"free/cover strip"}, fixed to roof alone)`, p.Error())
	resolve(t, covered(box.Removable{Part: box.Roof, With: []box.Part{"free/cover strip"}}))
	p = only(t, "upward", covered(box.Sliding{Part: box.Front, Up: true}))
	assert.Equal(t, "Up: false, to draw it the other way", p.Try)
	resolve(t, covered(box.Sliding{Part: box.Front}))
}

// A pitch over 60 is told once, at the pitch, with what would do; with tops and ends
// left square, under an overhang, it is made up to 75.
func TestSteepRoofs(t *testing.T) {
	over := box.Overhangs{All: 20}
	at := func(r box.RoofForm) box.Design { return plain.With(func(d *box.Design) { d.Roof = r }) }
	for _, x := range []struct {
		path, got             string
		steep, square, barely box.RoofForm
	}{
		{"Roof.Pent.Pitch", "74", box.Pent{Pitch: 74, Over: over}, box.Pent{Pitch: 75, Over: over, Tops: box.SquareTops, Ends: box.SquareEnds}, box.Pent{Pitch: 60}},
		{"Roof.Gable.Pitch", "74", box.Gable{Pitch: 74, Over: over}, box.Gable{Pitch: 75, Over: over, Tops: box.SquareTops, Ends: box.SquareEnds}, box.Gable{Pitch: 60}},
		{"Roof.Gable.Pitch", "61", box.Gable{Pitch: 61, Tops: box.SquareTops}, box.Gable{Pitch: 61, Over: over, Tops: box.SquareTops, Ends: box.SquareEnds}, box.Gable{Pitch: 60, Tops: box.SquareTops}},
		// 150 over half of 120: atan(2.5) = 68.2 degrees.
		{"Roof.Gable.Rise", "68.1986", box.Gable{Rise: 150, Over: over}, box.Gable{Rise: 150, Over: over, Tops: box.SquareTops, Ends: box.SquareEnds}, box.Gable{Rise: 103}},
		{"Roof.Hip.Pitch", "74", box.Hip{Pitch: 74, Over: over}, box.Hip{Pitch: 75, Over: over, Tops: box.SquareTops, Ends: box.SquareEnds}, box.Hip{Pitch: 60}},
		{"Roof.Hip.SidePitch", "65", box.Hip{Pitch: 50, SidePitch: 65, Over: over}, box.Hip{Pitch: 50, SidePitch: 65, Over: over, Tops: box.SquareTops, Ends: box.SquareEnds}, box.Hip{Pitch: 50, SidePitch: 60}},
	} {
		p := only(t, x.path, at(x.steep))
		assert.Equal(t, x.path, p.Path)
		assert.Equal(t, "range", p.Code)
		assert.Equal(t, x.got, p.Got)
		assert.Equal(t, [2]float64{1, 60}, [2]float64{p.Lo, p.Hi})
		assert.Equal(t, "Tops: box.SquareTops, Ends: box.SquareEnds and an overhang, up to 75", p.Try)
		resolve(t, at(x.square))
		resolve(t, at(x.barely))
	}
	// Against a long back the roof's upper end must be bevelled, whatever its ends.
	p := only(t, "long back", at(box.Pent{Pitch: 65, Over: over}).With(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Back, Above: 60}} }))
	assert.Equal(t, "Roof.Pent.Pitch", p.Path)
	assert.Empty(t, p.Try)
	_, ps := tryResolve(t, "long back", at(box.Pent{Pitch: 65, Over: over, Tops: box.SquareTops, Ends: box.SquareEnds}).With(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Back, Above: 60}} }))
	require.Len(t, ps, 1)
	assert.Empty(t, ps[0].Try)
	// A joint of one's own is told at the joint.
	_, ps = tryResolve(t, "own joint", at(box.Gable{Pitch: 65, Joint: joints.Butt{}}))
	assert.Len(t, ps, 4)
	for _, p := range ps {
		assert.Contains(t, p.Path, "Roof.Gable.Joint")
	}
}

// Screws of a batten keep clear of the joints of a made-up wall: the middle one of
// three would stand on that between two strips. What no room helps is said as it is.
func TestScrewsClearOfStripJoints(t *testing.T) {
	for _, j := range []box.EdgeJoint{nil, box.LooseTongue{}, box.TongueGroove{}, box.Shiplap{Lap: 8}} {
		for _, screws := range []int{1, 2, 3, 4, 5} {
			d := plain.With(func(d *box.Design) {
				d.Size = box.Cavity{Width: 280, Depth: 280, Height: 300}
				d.Board.Width = 160
				d.MadeUp = []box.MadeUp{{Of: box.Back, Joint: j}, {Of: box.Left, Joint: j}}
				d.Outer = []box.Outer{box.Batten{Name: "batten", Above: 150, Height: 45, Screws: screws}}
				d.Opens = []box.Opening{box.Inspection{On: box.Left}}
			})
			p := resolve(t, d)
			holes := map[string]int{}
			for _, q := range p.Pieces() {
				for _, op := range q.Panel.Ops {
					if op.Source != "screw hole" && op.Source != "screw of the cover" {
						continue
					}
					holes[op.Source]++
					assert.Equal(t, box.UseScrew, op.Use)
					_, _, round := op.Region[0].IsCircle(1e-6)
					assert.True(t, round, "%T, %d: %s in %s is cut", j, screws, op.Source, q.Part)
				}
			}
			assert.Equal(t, map[string]int{"screw hole": screws, "screw of the cover": 4}, holes, "%T", j) // two in the wall, two in the cover
			for _, f := range p.Findings() {
				assert.NotContains(t, f.Why, "screw", "%T, %d", j, screws)
			}
			// The cover's holes lie over those in the wall.
			var at [2][]solid.Vec
			for _, q := range p.Pieces() {
				for _, op := range q.Panel.Ops {
					if op.Source == "screw of the cover" {
						c, _, _ := op.Region[0].IsCircle(1e-6)
						k := 0
						if q.Part == "free/cover" {
							k = 1
						}
						at[k] = append(at[k], q.Home.Out(solid.Vec{X: c.X, Y: c.Y}))
					}
				}
			}
			for k := range at[0] {
				near := math.Inf(1)
				for _, v := range at[1] {
					near = math.Min(near, math.Hypot(v.Y-at[0][k].Y, v.Z-at[0][k].Z))
				}
				assert.Less(t, near, 1e-6, "%T", j)
			}
		}
	}
	// A batten 10 wide upright on the joint: nowhere to go.
	p := resolve(t, plain.With(func(d *box.Design) {
		d.Size = box.Cavity{Width: 280, Depth: 280, Height: 300}
		d.Board.Width = 160
		d.MadeUp = []box.MadeUp{{Of: box.Back, Joint: box.TongueGroove{}}}
		d.Outer = []box.Outer{box.Batten{Name: "batten", Width: 10, Screws: 2}}
	}))
	said := 0
	for _, f := range p.Findings() {
		assert.NotContains(t, f.Why, "only -")
		if f.Code == "thin-web" {
			said++
			assert.Equal(t, "the edge of back/1 cuts the screw hole", f.Why)
			assert.Zero(t, f.Got)
		}
	}
	assert.Positive(t, said)
}

// A housing of the usual depth passes the loose tongue of the wall by: it is t/3 and
// 0.2 of play deep, and the groove of the tongue begins 0.2 or more beyond it.
func TestLooseTongueMissesTheFloor(t *testing.T) {
	for _, thickness := range []box.MM{10, 12, 14.6, 15, 17.6, 18, 20, 21, 25} {
		p := resolve(t, plain.With(func(d *box.Design) {
			d.Board = box.Board{Thickness: thickness, Width: 100}
			d.Size = box.Cavity{Width: 180, Depth: 150, Height: 240}
			d.Floor = box.FloorBetween{Raise: 25, Joint: joints.Housing{}}
			d.MadeUp = []box.MadeUp{{Of: box.Back, Joint: box.LooseTongue{}}}
		}))
		tongue := piece(t, p, "back/tongue/1")
		assert.Empty(t, tongue.Panel.Ops, "%v thick", thickness)
		assert.Greater(t, float64(tongue.Thickness), float64(thickness)/5-1e-9)
		deep := 0.0
		for _, op := range piece(t, p, "back/1").Panel.Ops {
			if op.Kind == box.OpHousing {
				deep = math.Max(deep, float64(op.To-op.From))
			}
		}
		require.Positive(t, deep)
		assert.GreaterOrEqual(t, float64(thickness-tongue.Thickness)/2-0.1-deep, 0.2-1e-9, "%v thick", thickness)
	}
}

// Angles of a plan can be compared with ==: the bevels of a mitred polygon are half
// the turn from wall to wall, whatever the sines that they come of.
func TestPlainAngles(t *testing.T) {
	for sides := 3; sides <= 12; sides++ {
		half := box.Deg(180) / box.Deg(sides) // 30 for a hexagon
		if sides == 7 || sides == 11 {
			half = box.Deg(math.Round(float64(half)*1e9) / 1e9)
		}
		p := resolve(t, box.Design{Name: "ring", Board: thick(15), Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: sides, Across: 150},
			Corners: box.Corners{Joint: joints.Mitre{}}, Roof: box.NoRoof{}, Floor: box.FloorBetween{}})
		n := 0
		for _, q := range p.Pieces() {
			for _, e := range q.Panel.Edges {
				if e.Joint == "mitre" {
					n++
					assert.True(t, e.Bevel == half || e.Bevel == -half, "%d sides: %v", sides, e.Bevel)
				}
			}
		}
		assert.Equal(t, 2*sides, n)
		for _, s := range p.Seams() {
			if s.Joint == "mitre" {
				assert.True(t, s.Theta == box.Deg(math.Round(float64(180-2*half)*1e9)/1e9) || sides == 7 || sides == 11, "%d sides: %v", sides, s.Theta)
			}
		}
	}
	// Of slopes and leaning walls too.
	p := resolve(t, plain.With(func(d *box.Design) { d.Roof = box.Gable{Pitch: 35, Over: box.Overhangs{All: 20}} }))
	for _, e := range piece(t, p, box.Left).Panel.Edges {
		if e.Neighbour == box.RoofLeft {
			assert.True(t, e.Bevel == 35 || e.Bevel == -35, "%v", e.Bevel)
		}
	}
}
