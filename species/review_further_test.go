package species

import (
	"math"
	"slices"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
	"holt.example/species/timber"
)

// furtherBreaks break the rules of grip, of ledges and points, of roofs, of
// housings and of stock on the sound box.
func furtherBreaks() []breach {
	add := func(f ...box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = append(d.Features, f...) }
	}
	planed := Site{Planed: true}
	behind := func(on box.Part) func(*box.Design) {
		return func(d *box.Design) {
			e := d.Features[0].(box.Entrance)
			e.On = on
			d.Features[0] = e
		}
	}
	line := func(x, y float64) []outline.Path {
		return []outline.Path{outline.Line(outline.Point{X: -x, Y: -y}, outline.Point{X: x, Y: y})}
	}
	gable := func(j joints.Joint) func(*box.Design) {
		return func(d *box.Design) {
			d.Walls = nil
			unscrewed(d)
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
	plate := func(b box.Board, side box.MM) func(*box.Design) {
		return func(d *box.Design) {
			d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 32}, Above: 175}
			d.Outer = []box.Outer{box.EntrancePlate{Name: "plate", Width: side, Height: side - 20, Board: b}}
		}
	}
	// A roof of boards with the grain from side to side is as long as you like.
	solidRoof := func(f ...box.Feature) func(*box.Design) {
		return func(d *box.Design) {
			d.Boards[box.AllRoof] = box.Board{Thickness: 20, Material: "robinia", Grain: box.GrainAcross}
			d.Size = box.Cavity{Width: 150, Depth: 120, Height: 250} // (50 + 20 + 120) / cos 10 = 193 wide
			d.Roof = box.Pent{Pitch: 10, Over: box.Overhangs{Front: 50, Left: 50, Right: 50}}
			d.Features = append(d.Features, f...)
		}
	}
	opens := func(o ...box.Opening) func(*box.Design) {
		return func(d *box.Design) { d.Opens = o }
	}
	return []breach{
		{"planed and no grip", "great_tit", add(), planed, "inside-rough"},
		{"called planed", "great_tit", func(d *box.Design) { d.Board.Material = "planed robinia" }, Site{}, "inside-rough"},
		{"called unplaned", "great_tit", func(d *box.Design) { d.Board.Material = "unplaned robinia" }, Site{}, ""},
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
		{"a spike inside", "great_tit", spike(0, 20), Site{}, "points sharp-cut"},
		{"a spike before the back, outside", "great_tit", spike(0, 120), Site{}, "sharp-cut"},
		{"on a pole", "great_tit", add(), Site{Place: OnPole}, "roof-back"},
		// The end of the roof is square: 20 sin 10 = 3.5 opens at the back.
		{"roof ends square at the back", "great_tit", func(d *box.Design) {
			unscrewed(d)
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
		{"a pattern of lines across the fall", "great_tit", add(box.Pattern{On: box.Roof, Lines: line(15, 0), Margin: 30, Repeat: box.Repeat{StepRight: 50, StepUp: 40}}), Site{}, "roof-lines"},
		{"a pocket in the roof", "great_tit", add(box.Cut{On: box.Roof, At: box.Anchor{Up: 60}, Shape: box.Round{Diameter: 20}, Depth: 5, Tool: box.Tool{Diameter: 6}}), Site{}, "roof-lines"},
		{"a groove along the fall", "great_tit", add(box.Cut{On: box.Roof, At: box.Anchor{Up: 60}, Shape: box.Slot{Width: 6, Height: 40}, Depth: 3}), Site{}, ""},
		{"lines along the fall", "great_tit", add(box.Engrave{On: box.Roof, Lines: line(0, 20), At: box.Anchor{Up: 60}}), Site{}, ""},
		{"lines under the roof", "great_tit", add(box.Engrave{On: box.Roof, Lines: line(20, 0), At: box.Anchor{Up: 60}, From: box.FromInner}), Site{}, ""},
		{"a hole in the roof", "great_tit", add(box.Cut{On: box.Roof, At: box.Anchor{Up: 60}, Shape: box.Round{Diameter: 12}}), Site{}, "roof-hole"},
		{"a screw in the roof", "great_tit", add(box.Cut{On: box.Roof, At: box.Anchor{Up: 60}, Shape: box.Round{Diameter: 3}}), Site{}, ""},
		// 3 and 1.4 of play are 4.4 of 20, less than a quarter; the floor is of boards.
		{"a shallow housing", "great_tit", func(d *box.Design) {
			d.Boards[box.Floor] = d.Board
			d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 3, Swell: 1.4, Dry: true}}
		}, Site{}, "housing-depth"},
		// Its outside looks up by 5 degrees, so the hole falls inwards, and its foot
		// stands out by 250 tan 5 = 22 under the same roof.
		{"a front that leans in", "great_tit", func(d *box.Design) {
			d.Walls = append(d.Walls, box.Wall{On: box.Front, Lean: -5})
		}, Site{}, "roof-front hole-tilt"},
		{"a box that leans back", "great_tit", add(), Site{Lean: -3}, "hole-tilt tilt-forward"},
		{"a box that leans forward", "great_tit", add(), Site{Lean: 4}, ""},
		// What leans forward tips a hole in the back inwards, one in a side neither way.
		{"a hole in the back of a box that leans back", "great_tit", behind(box.Back), Site{Lean: -3}, "tilt-forward"},
		{"a hole in the back of a box that leans forward", "great_tit", behind(box.Back), Site{Lean: 4}, "hole-tilt"},
		{"a hole in the side of a box that leans back", "great_tit", behind(box.Left), Site{Lean: -3}, "tilt-forward"},
		{"woodpeckers", "great_tit", add(), Site{Peckers: true}, "hole-plate"},
		{"woodpeckers at a steel plate", "great_tit", plate(box.Board{Thickness: 1, Material: "stainless steel"}, 80), Site{Peckers: true}, "sharp-cut"},
		{"martens", "great_tit", add(), Site{Martens: true}, "front-thick"},
		{"martens at a block", "great_tit", plate(box.Board{Thickness: 25, Material: "robinia"}, 120), Site{Martens: true}, ""},
		{"a plate makes a wide hole right", "great_tit", func(d *box.Design) {
			d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 45}, Above: 180}
			d.Outer = []box.Outer{box.EntrancePlate{Name: "plate", Hole: box.Round{Diameter: 32}, Width: 120, Height: 80, Board: box.Board{Thickness: 20, Material: "robinia"}}}
		}, Site{}, ""},
		{"a plate makes a right hole wrong", "great_tit", func(d *box.Design) {
			d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 32}, Above: 175}
			d.Outer = []box.Outer{box.EntrancePlate{Name: "plate", Hole: box.Round{Diameter: 20}, Width: 120, Height: 100, Board: box.Board{Thickness: 20, Material: "robinia"}}}
		}, Site{}, "hole-size"},
		{"walls of steel", "great_tit", func(d *box.Design) { d.Board = box.Board{Thickness: 20, Material: "sheet steel", Grain: box.GrainNone} }, Site{}, "thin-hot"},
		{"a solid roof without a drip groove", "great_tit", solidRoof(), Site{}, "roof-drip"},
		{"a solid roof with one", "great_tit", solidRoof(box.DripGroove{}), Site{}, ""},
		{"a deep one", "great_tit", solidRoof(box.DripGroove{Depth: 8}), Site{}, "roof-drip"},
		{"against a trunk", "great_tit", add(), Site{Place: OnTree}, "back-batten tree-fixing"},
		{"against a wet wall", "great_tit", add(), Site{WetWall: true}, "back-batten"},
		{"on a batten at a wet wall", "great_tit", func(d *box.Design) {
			d.Outer = []box.Outer{box.Batten{Name: "batten", Above: 100, Height: 45, Board: box.Board{Thickness: 20, Material: "robinia", Grain: box.GrainAcross}}}
		}, Site{WetWall: true}, ""},
		{"strapped to a trunk", "great_tit", func(d *box.Design) {
			d.Outer = []box.Outer{box.Strap{Trunk: 250, Width: 40, Heights: []box.MM{60, 200}, Spare: 100}}
		}, Site{Place: OnTree}, "back-batten"},
		{"nothing opens", "great_tit", opens(), Site{}, "open-bird"},
		{"only a peephole", "great_tit", opens(box.Inspection{On: box.Left, Width: 50, Height: 50, Sill: 120, Board: ply}), Site{}, "open-bird sharp-cut"},
		{"an inspection opening", "great_tit", opens(box.Inspection{On: box.Left, Sill: 100, Board: ply}), Site{}, ""},
		{"a roof that hardly opens", "great_tit", opens(box.Hinged{Part: box.Roof, Angle: 40}, box.HookAndEye{Part: box.Roof, At: box.Left}), Site{}, "open-bird"},
		{"a roof without a hook", "great_tit", opens(box.Hinged{Part: box.Roof}), Site{}, "open-secure"},
		{"a front on two nails, loose", "great_tit", opens(box.Pivoted{Part: box.Front}), Site{}, "open-secure"},
		{"a front on two nails with a button", "great_tit", opens(box.Pivoted{Part: box.Front}, box.TurnButton{Part: box.Front, At: box.Left, Board: ply}), Site{}, "sharp-cut"},
		{"a front that slides", "great_tit", opens(box.Sliding{Part: box.Front}), Site{}, ""},
		{"a floor that comes off", "great_tit", opens(box.Removable{Part: box.Floor}), Site{}, "open-inspect"},
		// 1.5 is the least, and 130 mm swell by 1.3 over 4 %, half of it on each side.
		{"a tight front", "great_tit", opens(box.Pivoted{Part: box.Front, Play: 0.8}, box.HookAndEye{Part: box.Front, At: box.Left}), Site{}, "door-gap door-gap"},
		{"a loose front", "great_tit", opens(box.Pivoted{Part: box.Front, Play: 6}, box.HookAndEye{Part: box.Front, At: box.Left}), Site{}, "door-gap door-gap"},
		{"painted inside", "great_tit", add(), Site{Inside: WaterBased}, "inside-bare"},
		{"tarred outside", "great_tit", add(), Site{Outside: Preservative}, "outside-finish"},
		{"stained outside", "great_tit", add(), Site{Outside: WaterBased, Inside: NoCoat}, ""},
		{"D3 in the weather", "great_tit", func(d *box.Design) { d.Corners.Joint = joints.Rebate{}; d.Walls = nil }, Site{Glue: timber.D3}, "glue-d4"},
		{"D3 in a loft", "great_tit", func(d *box.Design) { d.Corners.Joint = joints.Rebate{}; d.Walls = nil }, Site{Glue: timber.D3, Place: Indoors}, ""},
		{"D2 in a loft", "great_tit", func(d *box.Design) { d.Corners.Joint = joints.Rebate{}; d.Walls = nil }, Site{Glue: timber.D2, Place: Indoors}, "glue-d3"},
		{"oak and steel", "great_tit", func(d *box.Design) { d.Board.Material = "rough sawn white oak" }, Site{}, "rust"},
		{"Douglas fir and steel", "great_tit", func(d *box.Design) { d.Board.Material = "planed Douglas fir" }, Site{}, "inside-rough rust"},
		{"oak and stainless steel", "great_tit", func(d *box.Design) { d.Board.Material = "white oak" }, Site{Stainless: true}, ""},
		{"stapled", "great_tit", func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Joint: stapled{}}}
		}, Site{}, "staples"},
		{"a swing of 10 %", "great_tit", add(), Site{Swing: 10}, "movement-mc"},
		{"looking south-west", "great_tit", add(), Site{Faces: SouthWest}, "aspect"},
		{"looking south-west in the shade", "great_tit", add(), Site{Faces: SouthWest, Shaded: true}, ""},
		{"looking north-east", "great_tit", add(), Site{Faces: NorthEast}, ""},
		{"a baffle too near", "great_tit", add(), Site{Place: OnPole, Guard: 100}, "roof-back predator-guard"},
		{"hung high", "great_tit", add(), Site{Above: 3}, "safety-ladder"},
		// The clouts of the strip are 13 long: 3 of strip and 8 of roof are 11.
		{"clouts through a thin roof", "great_tit", func(d *box.Design) {
			d.Boards[box.AllRoof] = box.Board{Thickness: 8, Material: "exterior plywood", Grain: box.GrainNone}
		}, Site{}, "points"},
		{"felt on a thin roof", "great_tit", func(d *box.Design) {
			unscrewed(d)
			d.Boards[box.AllRoof] = box.Board{Thickness: 12, Material: "exterior plywood", Grain: box.GrainNone}
			d.Outer = []box.Outer{box.Felt{Turn: 20}}
		}, Site{}, "felt-clouts"},
		{"felt on a thick roof", "great_tit", func(d *box.Design) { unscrewed(d); d.Outer = []box.Outer{box.Felt{Turn: 20}} }, Site{}, ""},
		{"ridge mitred under felt", "great_tit", func(d *box.Design) { gable(joints.Mitre{})(d); d.Outer = []box.Outer{box.Felt{Turn: 20}} }, Site{}, ""},
		{"ridge mitred under boards", "great_tit", func(d *box.Design) {
			gable(joints.Mitre{})(d)
			d.Outer = []box.Outer{box.RidgeCap{Name: "cap", Width: 80, Board: ply}}
		}, Site{}, ""},
		// A plate of 3 on a front of 15: 2.5 x 3 = 7.5, so screws of 5 reach 2 into it.
		{"a thin plate screwed on", "great_tit", func(d *box.Design) {
			plate(box.Board{Thickness: 3, Material: "stainless steel"}, 120)(d)
			p := d.Outer[0].(box.EntrancePlate)
			p.Screws = 4
			d.Outer[0] = p
		}, Site{}, ""},
		{"a ledge to land on", "great_tit", func(d *box.Design) {
			d.Outer = []box.Outer{box.LandingBoard{Name: "ledge", Below: 30, Width: 110, Deep: 110, Board: ply}}
		}, Site{}, "perch"},
		// 150 - 32 = 118 beside, and the housing's cheek at 38 - 10: 28 - 16 = 12.
		{"a partition beside the hole", "great_tit", func(d *box.Design) {
			d.Inner = []box.Inner{box.Partition{Name: "wall", At: 38, Above: 180, Height: 240, Board: ply}}
		}, Site{}, "hole-joint"},
		{"a partition farther away", "great_tit", func(d *box.Design) {
			d.Inner = []box.Inner{box.Partition{Name: "wall", At: 45, Above: 180, Height: 240, Board: ply}}
		}, Site{}, ""},
		{"a gable that falls towards the back", "great_tit", func(d *box.Design) {
			unscrewed(d)
			d.Roof = box.Gable{Pitch: 20, Run: box.LeftToRight, Over: box.Overhangs{Front: 60, Left: 50, Right: 50}}
		}, Site{}, "roof-into-wall"},
		{"a floor of boards, tight", "great_tit", func(d *box.Design) { delete(d.Boards, box.Floor) }, Site{}, "movement"},
		{"bare end grain of the long back", "great_tit", add(), Site{}, "end-grain"},
		{"bare end grain in a loft", "great_tit", add(), Site{Place: Indoors}, ""},
		{"bare end grain under a roof", "great_tit", func(d *box.Design) { d.Walls = nil }, Site{}, ""},
		{"a shelf with its grain the short way", "great_tit", func(d *box.Design) {
			d.Inner = []box.Inner{box.Shelf{Name: "rest", Above: 60, Gaps: box.Gaps{Front: 70}, Board: box.Board{Thickness: 15, Material: "robinia", Grain: box.GrainUp}}}
		}, Site{}, "movement grain-short"},
		{"a floor of boards, dry", "great_tit", func(d *box.Design) {
			delete(d.Boards, box.Floor)
			d.Floor = box.FloorBetween{Raise: 10, Dry: true}
		}, Site{}, ""},
		{"a floor of boards, dry, where the wood swings by 8 %", "great_tit", func(d *box.Design) {
			delete(d.Boards, box.Floor)
			d.Floor = box.FloorBetween{Raise: 10, Dry: true} // room for 6 %
		}, Site{Swing: 8}, "movement"},
		{"a tall box of level boards", "great_tit", func(d *box.Design) {
			d.Boards[box.Back] = box.Board{Thickness: 20, Material: "robinia", Grain: box.GrainAcross}
		}, Site{}, "no-stock grain-vertical panel-wide grain-short"},
	}
}

// TestOpenSides: a box with a side left open needs no door, whichever side it is;
// one that is shut does, and a front in grooves of walls that run on is no opening.
func TestOpenSides(t *testing.T) {
	hexagon := func(open int) box.Design {
		d := good()
		d.Size, d.Footprint, d.Opens, d.Walls = box.Cavity{Height: 250}, box.Regular{Sides: 6, Across: 150}, nil, nil
		d.Roof, d.Features = box.Pent{Over: box.Overhangs{All: 50}}, []box.Feature{box.Drains{}}
		if open > 0 {
			d.Walls = []box.Wall{{On: box.WallN(open), Open: true}}
		}
		return d
	}
	for open := range 7 {
		got := codes(t, hexagon(open), "great_tit", Site{})
		if slices.Contains(got, "open-bird") != (open == 0) {
			t.Errorf("wall %d open: %q", open, got)
		}
	}
	for _, part := range []box.Part{box.Front, box.Back, box.Left, box.Right, ""} {
		d := good().With(func(d *box.Design) {
			d.Opens, d.Walls, d.Features = nil, nil, []box.Feature{box.Drains{}}
			if part != "" {
				d.Walls = []box.Wall{{On: part, Open: true}}
			}
		})
		if got := codes(t, d, "great_tit", Site{}); slices.Contains(got, "open-bird") != (part == "") {
			t.Errorf("%s open: %q", part, got)
		}
	}
}

// stapled is a butt that only staples hold.
type stapled struct{ joints.Butt }

func (j stapled) Section(c joints.Corner) (joints.Section, error) {
	s, err := j.Butt.Section(c)
	s.Holds = []joints.Hold{{Kind: "staple"}}
	return s, err
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

// TestOpeningAtDormice: the form's roof comes off, so the law is said of it; a
// box that does not open has no need of it.
func TestOpeningAtDormice(t *testing.T) {
	said := func(change func(*box.Design)) bool {
		return slices.ContainsFunc(reviewOf(t, breach{key: "hazel_dormouse", change: change}), func(f box.Finding) bool { return f.Code == "legal-dormouse" })
	}
	if !said(func(*box.Design) {}) {
		t.Error("a roof comes off, and nothing is said of the law")
	}
	if said(func(d *box.Design) { d.Opens = nil }) {
		t.Error("nothing opens")
	}
}
