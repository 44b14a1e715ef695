package species

import (
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// furtherBreaks break the rules of grip, of ledges and points, of roofs, of
// housings and of stock on the sound box.
func furtherBreaks() []breach {
	add := func(f ...box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = append(d.Features, f...) }
	}
	planed := Site{Planed: true}
	line := func(x, y float64) []outline.Path {
		return []outline.Path{outline.Line(outline.Point{X: -x, Y: -y}, outline.Point{X: x, Y: y})}
	}
	gable := func(j joints.Joint) func(*box.Design) {
		return func(d *box.Design) {
			d.Walls = nil
			d.Roof = box.Gable{Pitch: 30, Ridge: j, Over: box.Overhangs{Front: 60, Left: 50, Right: 50}}
		}
	}
	spike := func(x, y box.MM) func(*box.Design) {
		return func(d *box.Design) {
			// 20 wide and 40 high: 2 atan(10/40) = 28 degrees at the tip.
			d.Free = []box.Free{{Name: "spike", Board: box.Board{Thickness: 5}, Outline: outline.Polygon(outline.Point{X: -10}, outline.Point{X: 10}, outline.Point{Y: 40}),
				At: box.Place{X: x, Y: y, Z: 40}, Up: box.Direction{Z: 1}}}
		}
	}
	return []breach{
		{"planed and no grip", "great_tit", add(), planed, "inside-rough"},
		{"called planed", "great_tit", func(d *box.Design) { d.Board.Material = "planed cedar" }, Site{}, "inside-rough"},
		{"called unplaned", "great_tit", func(d *box.Design) { d.Board.Material = "unplaned cedar" }, Site{}, ""},
		{"planed with grip", "great_tit", add(box.GripGrooves{}), planed, ""},
		{"grooves of 4", "great_tit", add(box.GripGrooves{Depth: 4}), planed, "groove-size"},
		// 15 - 2.5 = 12.5 is enough, 12 - 2.5 = 9.5 is not; its walls are thin as well.
		{"grooves in 12", "great_tit", func(d *box.Design) { d.Board.Thickness = 12; add(box.GripGrooves{Depth: 2.5})(d) }, planed, "wall-15 groove-strength wall-20"},
		{"a pierced rail below the hole", "great_tit", add(box.Rail{On: box.Front, At: box.Anchor{Up: 140, Level: box.CentreAbove}, Width: 100, Height: 40, Balusters: 1}), Site{}, "ledge"},
		{"a shallow rail", "great_tit", add(box.Rail{On: box.Front, At: box.Anchor{Up: 140, Level: box.CentreAbove}, Width: 100, Height: 40, Balusters: 1, Depth: 3}), Site{}, ""},
		{"a rail inside", "great_tit", add(box.Rail{On: box.Front, At: box.Anchor{Up: 140, Level: box.CentreAbove}, Width: 100, Height: 40, Balusters: 1, Depth: 6, From: box.FromInner}), Site{}, ""},
		{"vents at the floor", "great_tit", add(box.Vents{Below: 180}), Site{}, "vent-high vent-top"},
		// The hole is 195 over it: farther than a paw reaches from there.
		{"a floor that runs out", "great_tit", func(d *box.Design) { d.Floor = box.FloorUnder{Over: box.Overhangs{Front: 30}} }, Site{}, "floor-recess"},
		{"a spike inside", "great_tit", spike(0, 20), Site{}, "points"},
		{"a spike before the back, outside", "great_tit", spike(0, 120), Site{}, ""},
		{"on a pole", "great_tit", add(), Site{Place: OnPole}, "roof-back"},
		// The end of the roof is square: 20 sin 10 = 3.5 opens at the back.
		{"roof ends square at the back", "great_tit", func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Back, Under: box.Roof, Joint: joints.Butt{EndSquare: true}}}
		}, Site{}, "roof-joint"},
		{"ridge mitred", "great_tit", gable(joints.Mitre{}), Site{}, "roof-ridge"},
		{"ridge lapped", "great_tit", gable(nil), Site{}, ""},
		{"ridge capped", "great_tit", func(d *box.Design) {
			gable(joints.Mitre{})(d)
			// The ridge is 75 tan 30 = 43 over the eaves, and 20 / cos 30 = 23 thick.
			d.Free = []box.Free{{Name: "cap", Outline: rectangle(-40, -200, 40, 200), At: box.Place{Z: 250 + 43.3 + 23.1}, Facing: box.Direction{Z: 1}, Up: box.Direction{Y: 1}}}
		}, Site{}, ""},
		{"lines across the fall", "great_tit", add(box.Engrave{On: box.Roof, Lines: line(20, 0), At: box.Anchor{Up: 60}}), Site{}, "roof-lines"},
		{"lines along the fall", "great_tit", add(box.Engrave{On: box.Roof, Lines: line(0, 20), At: box.Anchor{Up: 60}}), Site{}, ""},
		{"lines under the roof", "great_tit", add(box.Engrave{On: box.Roof, Lines: line(20, 0), At: box.Anchor{Up: 60}, From: box.FromInner}), Site{}, ""},
		{"a hole in the roof", "great_tit", add(box.Cut{On: box.Roof, At: box.Anchor{Up: 60}, Shape: box.Round{Diameter: 12}}), Site{}, "roof-hole"},
		{"a screw in the roof", "great_tit", add(box.Cut{On: box.Roof, At: box.Anchor{Up: 60}, Shape: box.Round{Diameter: 3}}), Site{}, ""},
		// 3 and 1.4 of play are 4.4 of 20, less than a quarter; the floor is of boards.
		{"a shallow housing", "great_tit", func(d *box.Design) {
			d.Boards[box.Floor] = d.Board
			d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 3, Swell: 1.4, Dry: true}}
		}, Site{}, "housing-depth"},
		{"a tall box of level boards", "great_tit", func(d *box.Design) {
			d.Boards[box.Back] = box.Board{Thickness: 20, Material: "western redcedar", Grain: box.GrainAcross}
		}, Site{}, "no-stock grain-vertical panel-wide"},
	}
}

// TestFurtherOfOtherAnimals breaks the rest of them on ready forms.
func TestFurtherOfOtherAnimals(t *testing.T) {
	for _, c := range []breach{
		{"ducklings at a planed front", "wood_duck", func(*box.Design) {}, Site{Planed: true}, "duck-ladder"},
		{"a narrow ladder", "wood_duck", func(d *box.Design) { d.Features = append(d.Features, box.GripGrooves{}) }, Site{}, "duck-ladder"},
		{"a ladder of 90", "wood_duck", func(d *box.Design) { d.Features = append(d.Features, box.GripGrooves{Length: 90}) }, Site{Planed: true}, ""},
		{"swifts over a floor that runs out", "common_swift", func(d *box.Design) { d.Floor = box.FloorUnder{Over: box.Overhangs{Front: 30}} }, Site{}, "perch"},
		{"bats on planed boards", "bat_flat_box_eu", func(*box.Design) {}, Site{Planed: true}, "bat-rough"},
	} {
		var got []string
		for _, f := range reviewOf(t, c, 20) {
			if f.Severity >= box.Warning {
				got = append(got, f.Code)
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: got %q, want %q", c.name, s, c.want)
		}
	}
}

// TestRoofIntoWall: a gable whose ridge runs from left to right falls towards the
// back; one that rises to the back does not.
func TestRoofIntoWall(t *testing.T) {
	d := sound().With(func(d *box.Design) {
		d.Roof = box.Gable{Pitch: 20, Run: box.LeftToRight, Over: box.Overhangs{Front: 60, Left: 50, Right: 50}}
	})
	if got := strings.Join(codes(t, d, "great_tit", Site{}), " "); got != "roof-into-wall" {
		t.Errorf("%q", got)
	}
}

// TestHoleJoint: a partition housed into the front beside the hole. The hole's
// edge is 16 from its middle, the housing's cheek 40 - 10 = 30: 14 of wood stay.
func TestHoleJoint(t *testing.T) {
	for at, want := range map[box.MM]string{40: "hole-joint", 45: ""} {
		d := sound().With(func(d *box.Design) {
			d.Inner = []box.Inner{box.Partition{Name: "wall", At: at, Height: 240, Board: ply}}
		})
		if got := strings.Join(codes(t, d, "great_tit", Site{}), " "); got != want {
			t.Errorf("%v: %q", at, got)
		}
	}
}

// TestBatDraught: a crevice whose lid is a free part has no seam with it; sides
// left square at a leaning front open by more than half a millimetre.
func TestBatDraught(t *testing.T) {
	r, err := RuleOf("bat-draught")
	if err != nil {
		t.Fatal(err)
	}
	for gap, want := range map[box.MM]int{0.5: 0, 0.6: 1} {
		l := &look{seams: []box.Seam{{Over: box.Front, Under: box.Left, Greatest: 0.1}, {Over: box.Back, Under: box.Left, Greatest: gap}}}
		f := batDraught(l, r)
		if len(f) != want || want == 1 && (f[0].Part != box.Back || math.Abs(f[0].Got-0.6) > 1e-9) {
			t.Errorf("%v: %+v", gap, f)
		}
	}
}
