package species

import (
	"errors"
	"math"
	"slices"
	"strings"
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
		{"a tall box of level boards", "great_tit", func(d *box.Design) {
			d.Boards[box.Back] = box.Board{Thickness: 20, Material: "robinia", Grain: box.GrainAcross}
		}, Site{}, "no-stock grain-vertical panel-wide grain-short"},
	}
}

// otherFurther breaks the rest of them on ready forms.
func otherFurther() []breach {
	none := func(*box.Design) {}
	add := func(f ...box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = append(d.Features, f...) }
	}
	slot := func(up, high box.MM) func(*box.Design) {
		return add(box.Cut{On: box.Front, Use: box.UseVent, Shape: box.Rect{Width: 150, Height: high}, At: box.Anchor{Level: box.LowestAbove, Up: up}})
	}
	bees := func(b box.BeeBlock) func(*box.Design) {
		return func(d *box.Design) { d.Inner = []box.Inner{b} }
	}
	block := box.Board{Thickness: 150, Grain: box.GrainNone}
	lid := func(d *box.Design) {
		d.Outer = nil
		d.Opens = []box.Opening{box.Hinged{Part: box.Roof}, box.HookAndEye{Part: box.Roof, At: box.Left}}
	}
	return []breach{
		{"ducklings at a planed front", "wood_duck", none, Site{Planed: true}, "duck-ladder"},
		{"a narrow ladder", "wood_duck", add(box.GripGrooves{}), Site{}, "duck-ladder"},
		{"a ladder of 90", "wood_duck", add(box.GripGrooves{Length: 90}), Site{Planed: true}, ""},
		{"swifts over a floor that runs out", "common_swift", func(d *box.Design) { d.Floor = box.FloorUnder{Over: box.Overhangs{Front: 30}} }, Site{}, "perch floor-recess"},
		{"bats on planed boards", "bat_flat_box_eu", func(d *box.Design) { d.Features = nil }, Site{Planed: true}, "bat-rough"},
		{"bats on planed boards with grooves", "bat_flat_box_eu", none, Site{Planed: true}, ""},
		// The side of the rebate that lies open under the slope: 20 sin 15 = 5.2.
		{"bats in a draught", "bat_flat_box_eu", func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Back, Under: box.Roof, Joint: joints.Butt{EndSquare: true}}}
		}, Site{}, "bat-draught"},
		{"a lid on bats in Europe", "bat_flat_box_eu", lid, Site{}, "open-bat legal-bat"},
		{"a lid on bats in America", "bat_single_chamber", lid, Site{}, "legal-bat"},
		{"a hot house without a vent", "bat_single_chamber", none, Site{HotSummers: true}, "bat-vent"},
		{"a vent at 152", "bat_single_chamber", slot(152, 12.5), Site{HotSummers: true}, ""},
		{"a vent at 200", "bat_single_chamber", slot(200, 12.5), Site{HotSummers: true}, "bat-vent"},
		{"a high vent at 152", "bat_single_chamber", slot(152, 20), Site{HotSummers: true}, "bat-vent"},
		{"a dormouse against the bark", "hazel_dormouse", func(d *box.Design) {
			for i := range d.Outer {
				b := d.Outer[i].(box.Batten)
				b.Board = box.Board{Thickness: 20}
				d.Outer[i] = b
			}
		}, Site{}, "dormouse-back"},
		{"a dormouse in front", "hazel_dormouse", func(d *box.Design) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 98}, box.Drains{}, box.DripGroove{}}
		}, Site{}, "dormouse-back"},
		{"short bores", "solitary_bees_mixed", bees(box.BeeBlock{Name: "block", Height: 198, Board: block, Rows: []box.BeeRow{{Diameter: 8, Depth: 80}}}), Site{}, "bee-closed"},
		{"bores open behind", "solitary_bees_mixed", func(d *box.Design) {
			d.Inner = nil
			d.Free = []box.Free{{Name: "block", Board: box.Board{Thickness: 130, Grain: box.GrainNone}, Outline: rectangle(-60, 0, 60, 120), At: box.Place{Z: 5, Y: 65},
				Up: box.Direction{Z: 1}, Cuts: []box.Cut{{Shape: box.Round{Diameter: 8}, At: box.Anchor{Up: 60}}}}}
		}, Site{}, "bee-closed"},
		{"wide bores", "solitary_bees_mixed", bees(box.BeeBlock{Name: "block", Height: 198, Board: block, Rows: []box.BeeRow{{Diameter: 12, Depth: 140}}}), Site{}, "hole-size bee-diameter"},
		{"bores crowded", "solitary_bees_mixed", bees(box.BeeBlock{Name: "block", Height: 198, Board: block, Spacing: 15, Rows: []box.BeeRow{{Diameter: 6, Depth: 140}}}), Site{}, "bee-spacing"},
	}
}

// stapled is a butt that only staples hold.
type stapled struct{ joints.Butt }

func (j stapled) Section(c joints.Corner) (joints.Section, error) {
	s, err := j.Butt.Section(c)
	s.Holds = []joints.Hold{{Kind: "staple"}}
	return s, err
}

// TestBlade: a shelf that ends before a wall leaning by 50 degrees ends like it, in
// an edge of 40: a blade, unless it is blunted.
func TestBlade(t *testing.T) {
	for blunt, want := range map[box.MM]bool{0: true, 1: false} {
		d := good().With(func(d *box.Design) {
			d.Walls = []box.Wall{{On: box.Left, Lean: 50}}
			d.Opens = nil
			d.Inner = []box.Inner{box.Shelf{Name: "rest", Above: 80, Gaps: box.Gaps{Left: 30, Front: 40}, Board: ply}}
			d.Features = append(d.Features, box.Edging{On: []box.Part{box.InnerPart("rest")}, Blunt: blunt})
		})
		if got := codes(t, d, "great_tit", Site{}); slices.Contains(got, "points") != want {
			t.Errorf("blunted by %v: %q", blunt, got)
		}
	}
}

// TestMadeUpParts: rules on the wall see the whole, those on grain, stock and
// movement its strips.
func TestMadeUpParts(t *testing.T) {
	wide := func(j box.EdgeJoint) box.Design {
		return good().With(func(d *box.Design) {
			d.Size = box.Cavity{Width: 190, Depth: 130, Height: 250}
			d.MadeUp = []box.MadeUp{{Of: box.Front, Width: 130, Joint: j}}
			d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 32}, Above: 195, Right: 45} // off the joint
		})
	}
	// Front and back are 230 wide: one board of them is wider than 200, and than
	// any that is sold (225); two strips are not.
	for _, c := range []struct {
		name string
		j    box.EdgeJoint
		want string
	}{
		{"glued", box.EdgeGlued{}, "no-stock panel-wide"}, // of the back
		{"tongue and groove, glued", box.TongueGroove{}, "no-stock panel-wide"},
		// Two strips of 115 and a lap of 12 in boards of 130: 0.01 x 127 = 1.3.
		{"shiplap, tight", box.Shiplap{Lap: 12}, "movement no-stock panel-wide"},
		{"shiplap with gaps", box.Shiplap{Lap: 12, Gap: 1.5}, "no-stock panel-wide"},
		{"tongue and groove, dry and tight", box.TongueGroove{Dry: true}, "movement no-stock panel-wide"},
	} {
		got := strings.Join(codes(t, wide(c.j), "great_tit", Site{}), " ")
		if got = strings.Replace(got, "floor-preset ", "", 1); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
	fs, err := Review(resolve(t, wide(box.Shiplap{Lap: 12, Gap: 0.6})), MustGet("great_tit"), Site{})
	k := slices.IndexFunc(fs, func(f box.Finding) bool { return f.Code == "movement" })
	if err != nil || k < 0 || fs[k].Part != box.Front || math.Abs(fs[k].Got-0.6) > 1e-6 {
		t.Errorf("%+v, %v", fs, err)
	}
	// The hole, its wood and the walls are asked of the whole front.
	d := wide(nil).With(func(d *box.Design) {
		d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 38}, Above: 110, Right: 60}
	})
	got := strings.Join(codes(t, d, "great_tit", Site{}), " ")
	for _, code := range []string{"hole-size", "hole-above-120", "hole-side-margin"} { // 95 - 60 - 19 = 16
		if !strings.Contains(got, code) {
			t.Errorf("no %s in %q", code, got)
		}
	}
	// A hole through a dry joint, or 10 from it, has no wood there; beside a glued one
	// it has. The strips of the front are 115 wide and meet in the middle.
	for _, c := range []struct {
		right box.MM
		j     box.EdgeJoint
		want  bool
	}{{0, box.Shiplap{Lap: 12, Gap: 1.5}, true}, {26, box.Shiplap{Lap: 12, Gap: 1.5}, true}, {50, box.Shiplap{Lap: 12, Gap: 1.5}, false}, {0, box.EdgeGlued{}, false}} {
		d := wide(c.j).With(func(d *box.Design) { d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 32}, Above: 195, Right: c.right} })
		if got := codes(t, d, "great_tit", Site{}); slices.Contains(got, "hole-joint") != c.want {
			t.Errorf("%v, %T: %q", c.right, c.j, got)
		}
	}
	// A floor of dry strips between the walls moves into its gaps; a glued one as a
	// whole.
	floor := func(j box.EdgeJoint) box.Design {
		return good().With(func(d *box.Design) {
			d.Boards = map[box.Part]box.Board{box.AllRoof: ply}
			d.MadeUp = []box.MadeUp{{Of: box.Floor, Width: 70, Joint: j}}
		})
	}
	for want, j := range map[string]box.EdgeJoint{"movement": box.EdgeGlued{}, "": box.Shiplap{Lap: 6, Gap: 1}} {
		if got := strings.Join(codes(t, floor(j), "great_tit", Site{}), " "); got != want {
			t.Errorf("floor, %T: %q", j, got)
		}
	}
	// A fixing may name a strip.
	plan := resolve(t, wide(nil))
	f := Fixing{Over: box.StripN(box.Front, 1), Under: box.Left, Places: []box.Place{{X: -100}}, With: Fastener{Kind: "screw", Diameter: 4, Length: 50, Pilot: 3}}
	if fs, err := CheckFixings(plan, []Fixing{f}); err != nil || len(fs) != 0 {
		t.Errorf("%+v, %v", fs, err)
	}
}

// TestFastenedDesignReviewed: Review looks at the rows that a design states.
func TestFastenedDesignReviewed(t *testing.T) {
	d, rows, err := Fasten(good(), FixWith{})
	if err != nil || len(rows) == 0 {
		t.Fatal(rows, err)
	}
	if got := codes(t, d, "great_tit", Site{}); len(got) != 0 {
		t.Errorf("%q", got)
	}
	d = d.With(func(d *box.Design) { d.Fixings[0].Diameter, d.Fixings[0].Hole, d.Fixings[0].Pilot = 6, 6, 4 })
	if got := codes(t, d, "great_tit", Site{}); !slices.Equal(got, []string{"fixing-small"}) { // 20 / 4 = 5
		t.Errorf("%q", got)
	}
	d = d.With(func(d *box.Design) { d.Fixings[0].Metal, d.Board.Material = "stainless steel", "white oak" })
	if got := codes(t, d, "great_tit", Site{}); !slices.Contains(got, "rust") { // the other rows
		t.Errorf("%q", got)
	}
}

// fixingBreaks break the rules on nails and screws: one row of them each, through
// the left side of 20 into the floor. Advice on load is for heavy boxes only.
func fixingBreaks() []breach {
	with := func(f Fixing) Site {
		f.Over, f.Under, f.Places = box.Left, box.Floor, []box.Place{{X: -95}}
		return Site{Fixings: []Fixing{f}}
	}
	screw := func(d, l, pilot box.MM) Fastener {
		return Fastener{Kind: "screw", Diameter: d, Length: l, Pilot: pilot}
	}
	nail := func(d, l, pilot box.MM) Fastener {
		return Fastener{Kind: "nail", Diameter: d, Length: l, Pilot: pilot}
	}
	none := func(*box.Design) {}
	oak := func(d *box.Design) { d.Board.Material = "white oak" }
	return []breach{
		{"screws in order", "great_tit", none, with(Fixing{With: screw(4, 50, 3)}), ""},
		{"screws short", "great_tit", none, with(Fixing{With: screw(4, 45, 3)}), "fastener-length"}, // 2.5 x 20 = 50
		{"screws short for end grain", "great_tit", none, with(Fixing{With: screw(4, 50, 3), EndGrain: true}), "fastener-endgrain"},
		{"screws without a pilot", "great_tit", none, with(Fixing{With: screw(4, 50, 0)}), "fixing-small"},
		{"screws too thick", "great_tit", none, with(Fixing{With: screw(6, 50, 4)}), "fixing-small"}, // 20 / 4 = 5
		// The floor is 150 wide: 20 and 148 are more than it takes.
		{"screws that come out", "great_tit", none, with(Fixing{With: screw(4, 170, 3)}), "points"},
		{"plain steel in oak", "great_tit", oak, with(Fixing{With: screw(4, 50, 3)}), "rust"},
		{"stainless steel in oak", "great_tit", oak, with(Fixing{With: Fastener{Kind: "screw", Diameter: 4, Length: 50, Pilot: 3, Stainless: true}}), ""},
		// Under load. Edge to the middle 10 mm: a screw of 4 needs 3 d = 12 with a
		// pilot, 5 d = 20 without, and 7 d = 28 or 10 d = 40 to the end; for the edge
		// of sheets the table has more. Penetration 7 d = 28; t/6 = 3.3.
		{"a heavy box, screws in order", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(3, 50, 2)}), ""},
		// 200 kg more on nails of 2 mm that hold 20 mm: neither draws nor bears.
		{"hung on pins", "great_tit", func(d *box.Design) { d.Features = append(d.Features, box.Hang{}) },
			Site{Mounting: Mounting{With: nail(2, 45, 0), Load: 200}}, "mounting-pull mounting-shear"},
		{"hung on screws", "great_tit", func(d *box.Design) { d.Features = append(d.Features, box.Hang{}) }, Site{Mounting: Mounting{Into: "Scots pine"}}, ""},
		{"near the edge", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(3, 50, 2), Off: 4}), "edge-pre"},
		{"near the end", "great_tit", none, with(Fixing{Structural: true, End: 10, With: screw(3, 50, 2)}), "end-pre"},
		{"near the edge without a pilot", "great_tit", none, with(Fixing{Structural: true, End: 60, With: nail(2.5, 50, 0)}), "edge-nopre"},
		{"near the end without a pilot", "great_tit", none, with(Fixing{Structural: true, End: 12, With: nail(1.4, 50, 0)}), "end-nopre"},
		{"thick for the edge", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(5, 60, 3.5)}), "edge-pre into-edge"},
		{"screws that hardly go in", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(3, 40, 2)}), "fastener-length screw-penetration"}, // 20 / 3 = 6.7
		{"nails that hardly go in", "great_tit", none, with(Fixing{Structural: true, End: 60, With: nail(3, 45, 2.4)}), "fastener-length nail-penetration"},  // 25 / 3 = 8.3
	}
}

// TestFixingsReviewed: Review looks at the fixings of the site.
func TestFixingsReviewed(t *testing.T) {
	for _, c := range fixingBreaks() {
		if got := strings.Join(codes(t, good().With(c.change), c.key, c.site), " "); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
	var p box.Problem
	if _, err := Review(resolve(t, good()), MustGet("great_tit"), Site{Fixings: []Fixing{{Over: "attic", Under: box.Floor}}}); !errors.As(err, &p) || p.Code != "unknown-part" {
		t.Error(err)
	}
	if _, err := Review(resolve(t, good()), MustGet("great_tit"), Site{Fixings: []Fixing{{Over: box.Left, Under: box.Floor, Places: []box.Place{{}}, With: Fastener{Kind: "rivet"}}}}); !errors.As(err, &p) || p.Code != "unknown-value" {
		t.Error(err)
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
