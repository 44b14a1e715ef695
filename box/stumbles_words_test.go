package box_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// What is said of a slip, whole, and that nothing else is said of it.
func TestOneSlipOneLine(t *testing.T) {
	thin := func(j joints.Joint) func(*box.Design) {
		return func(d *box.Design) { d.Corners.Joint = j }
	}
	features := func(fs ...box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = fs }
	}
	hinged := func(roof box.RoofForm, part box.Part) func(*box.Design) {
		return func(d *box.Design) {
			d.Roof = roof
			d.Opens = []box.Opening{box.Hinged{Part: part}}
		}
	}
	pent := box.Pent{Pitch: 20, Over: box.Overhangs{Front: 40}}
	hole := func(above box.MM) box.Entrance { return box.Entrance{Shape: box.Round{Diameter: 32}, Above: above} }
	for _, x := range []struct {
		change func(*box.Design)
		want   string
	}{
		{func(d *box.Design) { d.Size = box.Cavity{Width: -120, Depth: 120, Height: 240} },
			"Size.Cavity.Width: -120: width of the cavity at the floor, from left to right; want 1 to 10000 mm"},
		{func(d *box.Design) { d.Size = box.Outside{Width: 120, Depth: -1, Height: 240} },
			"Size.Outside.Depth: -1: depth over the outer faces, from front to back; want 1 to 10000 mm"},
		{func(d *box.Design) { d.Roof = box.Flat{Over: box.Overhangs{Left: -3}} },
			"Roof.Flat.Over.Left: -3: overhang past the left wall; want 0 to 10000 mm"},
		// Centimetres: the board of 15 is no mistake, 12 is. A board of 150 is.
		{func(d *box.Design) { d.Size = box.Cavity{Width: 12, Depth: 12, Height: 24} },
			"Size.Cavity: 12 x 12: the cavity is narrower than its boards are thick, 15 (try Width: 120, Depth: 120, Height: 240, if these are centimetres)"},
		{func(d *box.Design) { d.Size, d.Footprint = box.Cavity{Height: 24}, box.Regular{Sides: 6, Across: 12} },
			"Footprint.Regular.Across: 13.9 x 12: the cavity is narrower than its boards are thick, 15 (try Across: 120, if these are centimetres)"},
		{func(d *box.Design) { d.Size = box.Outside{Width: 16, Depth: 16, Height: 32} },
			"Size: -14: the thicknesses leave too little or no cavity between the walls; want 1 to 10000 mm (try Width: 160, Depth: 160, Height: 320, if these are centimetres)"},
		{func(d *box.Design) { d.Board.Thickness = 150 },
			"Board.Thickness: 150: the board is thicker than the cavity is wide and deep; want 0.5 to 120 mm"},
		// The front's inner face is 240 high under a pent: 250 + 32 is 42 past it, and the
		// bevel of 20 degrees takes 15 tan 20 = 5.46 more: 250 - 47.46 = 202.5.
		{func(d *box.Design) { d.Roof = pent; d.Features = []box.Feature{hole(250)} },
			"Features[0].Entrance: 32 across: the entrance reaches 42 past the edge of the cavity's face at roof, which is 120 wide and 240 high; the bevel of its top takes 5.5 more on the outer face (try Above: 202.5)"},
		// 60 from the middle to the edge, less the radius, is 44, at which it would touch a
		// joint there: on either side a tenth less.
		{features(box.Entrance{Shape: box.Round{Diameter: 32}, Above: 100, Right: 50}),
			"Features[0].Entrance: 32 across: the entrance reaches 6 past the edge of the cavity's face at right, which is 120 wide and 240 high (try Right: 43.9)"},
		{features(box.Entrance{Shape: box.Round{Diameter: 32}, Above: 100, Right: -50}),
			"Features[0].Entrance: 32 across: the entrance reaches 6 past the edge of the cavity's face at left, which is 120 wide and 240 high (try Right: -43.9)"},
		// Joints and boards: 15 less a lip of 6; twice the play of 0.2 at least.
		{thin(joints.Rebate{Depth: 12}), "Corners.Joint.Depth: 12: the rebate leaves too thin a lip of front, which is 15 thick; want 0.1 to 9 mm"},
		{thin(joints.Rebate{Depth: 0.01}), "Corners.Joint.Depth: 0.01: so shallow a rebate in front is none; want 0.1 to 9 mm"},
		{func(d *box.Design) { d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 12}} },
			"Floor.FloorBetween.Joint.Depth: 12: the housing is too deep for front, 15 thick; want 0.4 to 8.8 mm"},
		{func(d *box.Design) { d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 0.2}} },
			"Floor.FloorBetween.Joint.Depth: 0.2: the housing is too shallow, or its play too large, for front, 15 thick; want 0.4 to 8.8 mm"},
		// Names of parts.
		{hinged(box.Gable{}, box.Roof), `Opens[0].Hinged.Part: "roof": this design has no such part; it has front right back left floor roof/left roof/right (try roof/left or roof/right)`},
		{hinged(pent, "roof/lid"), `Opens[0].Hinged.Part: "roof/lid": this design has no such part; it has front right back left floor roof (try roof)`},
		{features(box.Text{On: "wall/7", Text: "1"}), `Features[0].Text.On: "wall/7": this design has no such part; it has front right back left floor roof (try front, right, back or left)`},
		{func(d *box.Design) {
			d.Size, d.Footprint = box.Cavity{Height: 240}, box.Regular{Sides: 6, Across: 150}
			d.Features = []box.Feature{box.Text{On: "wall/7", Text: "1"}}
		}, `Features[0].Text.On: "wall/7": this design has no such part; it has wall/1 wall/2 wall/3 wall/4 wall/5 wall/6 floor roof (try wall/1 to wall/6)`},
		{features(box.Text{On: box.AllWalls, Text: "1"}), `Features[0].Text.On: "walls": this is a group, and one part is wanted: front right back left floor roof`},
		{features(box.Cut{Shape: box.Round{Diameter: 9}}), "Features[0].Cut.On: say which part: front right back left floor roof"},
		{features(box.Text{On: box.Front}), "Features[0].Text.Text: there is nothing to write"},
		// A pointer.
		{features(&box.Drains{}), "Features[0]: *box.Drains is not a feature (try box.Drains{...}, without &)"},
		{features((*box.GripGrooves)(nil)), "Features[0]: *box.GripGrooves is not a feature (try box.GripGrooves{...}, without &)"},
		{func(d *box.Design) { d.Outer = []box.Outer{&box.Felt{}} }, "Outer[0]: *box.Felt is not an outer element (try box.Felt{...}, without &)"},
		{func(d *box.Design) { d.Roof = &pent }, "Roof: *box.Pent is not a roof (try box.Pent{...}, without &)"},
		{func(d *box.Design) { d.Opens = []box.Opening{&box.Hinged{Part: box.Roof}} }, "Opens[0]: *box.Hinged is not an opening (try box.Hinged{...}, without &)"},
		{func(d *box.Design) {
			d.Features = []box.Feature{hole(100)}
			d.Outer = []box.Outer{box.EntrancePlate{Name: "plate", Entrance: 1, Width: 70, Height: 70}}
		}, "Outer[0].EntrancePlate.Entrance: 1: front has 1 entrance, counted from 0"},
		// Where a joint is at fault nothing else is untrue.
		{func(d *box.Design) {
			d.Roof, d.Corners.Joint = box.Flat{Over: box.Overhangs{All: 40}}, joints.Rebate{Depth: 12}
			d.Features = []box.Feature{hole(150), box.GripGrooves{}, box.Vents{}, box.EavesVents{On: []box.Part{box.Left}, Width: 40, Height: 10}, box.Drains{}, box.DripGroove{},
				box.Edging{Round: 3}, box.Text{Text: "No 17", Height: 20, At: box.Anchor{Up: 60}}, box.PartMarks{}}
		}, "Corners.Joint.Depth: 12: the rebate leaves too thin a lip of front, which is 15 thick; want 0.1 to 9 mm"},
		{features(box.Entrance{Shape: box.Round{Diameter: 0.75}, Above: 100}), "Features[0].Entrance.Shape.Round.Diameter: 0.75: diameter of a round hole; want 1 to 10000 mm (try box.Inch(0.75), if these are inches)"},
	} {
		_, ps := tryResolve(t, x.want, plain.With(x.change))
		if assert.NotEmpty(t, ps, x.want) {
			assert.Equal(t, x.want, ps.Error())
		}
	}
	// Without On a text stands on the front.
	for _, f := range []box.Feature{box.Text{Text: "1", At: box.Anchor{Up: 100}}, box.Engrave{Lines: []outline.Path{square40().Path()}, At: box.Anchor{Up: 100}}} {
		assert.NotEmpty(t, piece(t, resolve(t, with(f)), box.Front).Panel.Ops)
	}
}

// A finding is told by its code too, as lists tell it.
func TestFindingInOneLine(t *testing.T) {
	assert.Equal(t, "warning [thin-web] front: only 0.4 mm", box.Finding{Code: "thin-web", Severity: box.Warning, Part: box.Front, Why: "only 0.4 mm"}.String())
	assert.Equal(t, "advice [run-out]: a pocket", box.Finding{Code: "run-out", Why: "a pocket"}.String())
}

// What is given twice is refused, the second time; grooves that cross nothing, and
// lines that only cross, are not.
func TestGivenTwice(t *testing.T) {
	hole := box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}
	line := box.Engrave{Lines: []outline.Path{square40().Path()}, At: box.Anchor{Up: 60}}
	for _, x := range []struct {
		first, second box.Feature
		path, why     string
	}{
		{box.GripGrooves{}, box.GripGrooves{}, "Features[2].GripGrooves", "the grip groove on front runs into the grip groove of Features[1].GripGrooves: is it there twice?"},
		{box.GripGrooves{}, box.GripGrooves{Spacing: 14, Length: 40}, "Features[2].GripGrooves", "the grip groove on front runs into the grip groove of Features[1].GripGrooves: is it there twice?"},
		{box.DripGroove{}, box.DripGroove{Inset: 14}, "Features[2].DripGroove", "the drip groove on roof runs into the drip groove of Features[1].DripGroove: is it there twice?"},
		{line, line, "Features[2].Engrave", "the mark on front runs into the mark of Features[1].Engrave: is it there twice?"},
		{box.Text{Text: "17", At: box.Anchor{Up: 60}}, box.Text{Text: "17", At: box.Anchor{Up: 60}}, "Features[2].Text", "the text 17 on front runs into the text 17 of Features[1].Text: is it there twice?"},
	} {
		p := only(t, x.why, with(hole, x.first, x.second))
		assert.Equal(t, x.path, p.Path)
		assert.Equal(t, "feature-meets-feature", p.Code)
		assert.Equal(t, x.why, p.Why)
	}
	cross := line
	cross.At.Right = 10
	resolve(t, with(hole, line, cross))
	resolve(t, with(hole, box.DripGroove{}, box.DripGroove{Inset: 20}))
	resolve(t, with(hole, box.GripGrooves{Count: 2}, box.GripGrooves{Count: 2, Below: 60}))
	inner := line
	inner.From, inner.Depth, inner.Tool = box.FromInner, 1, box.Tool{VAngle: 90}
	resolve(t, with(hole, line, inner))
}

// What keeps nothing shut, and an entrance in inches, are made, and told.
func TestDoubtsOfOpeningsAndEntrances(t *testing.T) {
	codes := func(d box.Design) (out []string) {
		for _, f := range resolve(t, d).Findings() {
			out = append(out, f.String())
		}
		return out
	}
	hook := box.HookAndEye{Part: box.Roof, At: box.Left}
	idle := "warning [holds-nothing] roof: the hook and eye keeps roof shut, which does not open, nor does left: add a Hinged, Pivoted, Sliding or Removable to Opens"
	with2 := func(os ...box.Opening) box.Design { return plain.With(func(d *box.Design) { d.Opens = os }) }
	assert.Contains(t, codes(with2(hook)), idle)
	assert.NotContains(t, codes(with2(box.Removable{Part: box.Roof}, hook)), idle)
	// The neighbour may be the one that opens.
	assert.NotContains(t, codes(with2(box.Removable{Part: box.Roof}, box.HookAndEye{Part: box.Left, At: box.Roof})), "holds-nothing")
	flush := plain.With(func(d *box.Design) {
		d.Roof = box.Flat{}
		d.Opens = []box.Opening{box.TurnButton{Part: box.Left, At: box.Front, Along: 20}}
	})
	assert.Contains(t, codes(flush), "warning [holds-nothing] left: the turn button keeps left shut, which does not open, nor does front: add a Hinged, Pivoted, Sliding or Removable to Opens")

	inch := "warning [entrance-doubt] front: an entrance 1.25 mm wide is one for insects; for inches say box.Inch(1.25)"
	assert.Contains(t, codes(with(box.Entrance{Shape: box.Round{Diameter: 1.25}, Above: 100})), inch)
	assert.NotContains(t, codes(with(box.Entrance{Shape: box.Round{Diameter: box.Inch(1.25)}, Above: 100})), inch)
}

// A name that the plan does not have is answered, with those that come near.
func TestExplainOfNoPart(t *testing.T) {
	p := resolve(t, plain)
	assert.Equal(t, []string{`The plan has no part "rooof": roof?`}, p.Explain("rooof"))
	assert.Equal(t, []string{`The plan has no part "chimney"; it has front, back, left, right, floor, roof.`}, p.Explain("chimney"))
	assert.NotEmpty(t, p.Explain(box.Roof))
}
