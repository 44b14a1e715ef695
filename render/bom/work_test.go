package bom

import (
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
)

// back is the back of the box in the design page's example as it lies with its
// inner face up: 149.2 x 435.033, from 74.6 below the origin up, grain up.
func back() box.Piece {
	p := slab(box.Back, 120, 360.432960, 14.6, [4]side{{inner: 74.6}, {to: box.Left, inner: 14.6}, {}, {to: box.Right, inner: 14.6}}, handBox{}.front())
	p.Panel.Face = box.FromInner
	return p
}

func op(k box.OpKind, side box.OpSide, from, to box.MM, r ...outline.Contour) box.Op {
	return box.Op{Kind: k, Side: side, From: from, To: to, Region: r}
}

func TestWorkInWords(t *testing.T) {
	joint := func(o box.Op, g box.Part) box.Op { o.Guest = g; return o }
	use := func(o box.Op, u box.Use) box.Op { o.Use = u; return o }
	tilt := func(o box.Op, a ...box.Deg) box.Op { o.Tilt = a; return o }
	slanted := outline.Rectangle(0, 0, 60, 14.8).Transform(outline.Turn(30))
	tests := []struct {
		op    box.Op
		step  float64
		words string
	}{
		// 74.6 below the origin, so a centre at v = 146 is 220.6 up.
		{use(op(box.OpBore, box.SideThrough, 0, 14.6, outline.Circle(outline.Point{X: 0, Y: 146}, 32)), box.UseEntrance), 0.1,
			"hole 32 through, 220.6 up, centred (entrance)"},
		{op(box.OpBore, box.SideThrough, 0, 14.6, outline.Circle(outline.Point{X: 0, Y: 146}, 32)), 0.5,
			"hole 32 through, 220.5 up, centred"},
		// 74.6 - 20.04 = 54.56 from the left. A drill of 8.2 stays one of 8.2.
		{op(box.OpBore, box.SideThrough, 0, 14.6, outline.Circle(outline.Point{X: -20.04, Y: 0.02}, 8.2).Reverse()), 0.5,
			"hole 8.2 through, 74.5 up, 54.5 from the left"},
		{op(box.OpBore, box.SideMachined, 0, 5, outline.Circle(outline.Point{X: 10, Y: 0}, 8)), 0.1,
			"hole 8, 5 deep, 74.6 up, 84.6 from the left"},
		{op(box.OpOpening, box.SideThrough, 0, 14.6, outline.Rectangle(-30, 100, 30, 140)), 0.1,
			"opening 60 wide, 40 high, through, 194.6 up, centred"},
		{use(op(box.OpPocket, box.SideFar, 9.6, 14.6, outline.Rectangle(-30, 100, 30, 140)), box.UsePocket), 0.1,
			"pocket 60 wide, 40 high, 5 deep, 194.6 up, centred, on the other face, turned over"},
		// Turned over, what is 10 right of the middle is 74.6 - 10 from the left, and what is
		// along the right edge along the left one.
		{op(box.OpBore, box.SideFar, 4.6, 14.6, outline.Circle(outline.Point{X: 10, Y: 0}, 2)), 0.1,
			"hole 2, 10 deep, 74.6 up, 64.6 from the left, on the other face, turned over"},
		{joint(op(box.OpRebate, box.SideFar, 7.6, 14.6, outline.Rectangle(60, -34.6, 74.6, 266.994683)), box.Right), 0.1,
			"rebate along the left edge, 7 deep, 14.6 wide, 40 to 341.6 up, on the other face, turned over"},
		{op(box.OpRebate, box.SideFar, 10.6, 14.6, outline.Rectangle(-40, 350.432960, 74.6, 360.432960)), 0.1,
			"rebate along the upper edge, 4 deep, 10 wide, 0 to 114.6 from its left end, on the other face, turned over"},
		// The rebates of the example: 7 deep, 14.6 wide, from 40 to 375.43 of
		// the edge (z -34.6 to 300.83).
		{joint(op(box.OpRebate, box.SideMachined, 0, 7, outline.Rectangle(-74.6, -34.6, -60, 266.994683)), box.Right), 0.1,
			"rebate along the left edge, 7 deep, 14.6 wide, 40 to 341.6 up"},
		{joint(op(box.OpRebate, box.SideMachined, 0, 7.06, outline.Rectangle(60, -74.6, 74.6, 360.432960)), box.Right), 0.5,
			"rebate along the right edge, 7 deep, 14.6 wide"},
		{op(box.OpRebate, box.SideMachined, 0, 4, outline.Rectangle(-40, 350.432960, 74.6, 360.432960)), 0.1,
			"rebate along the upper edge, 4 deep, 10 wide, 34.6 to 149.2 from its left end"},
		// 74.6 - 14.6 = 60 up; 14.81 must go in: 14.9, also where people work
		// to 0.5.
		{joint(op(box.OpHousing, box.SideMachined, 0, 5.05, outline.Rectangle(-74.6, -14.6, 74.6, 0.21)), box.Floor), 0.5,
			"housing 5 deep, 14.9 wide, lower side 60 up"},
		{joint(op(box.OpHousing, box.SideMachined, 0, 5, outline.Rectangle(-60, -14.6, 60, 0.2)), box.Floor), 0.1,
			"housing 5 deep, 14.8 wide, lower side 60 up, 14.6 to 134.6 from the left"},
		{joint(tilt(op(box.OpGroove, box.SideMachined, 0, 5, outline.Rectangle(0, -74.6, 15, 200)), 3.84, 0, 3.84, 0), box.InnerPart("shelf")), 0.1,
			"groove 5 deep, 15 wide, left side 74.6 from the left, 0 to 274.6 up, walls tilted 3.84 deg"},
		// Turned by 30 degrees: its middle at 30 cos 30 - 7.4 sin 30 = 22.281,
		// 30 sin 30 + 7.4 cos 30 = 21.409.
		{joint(op(box.OpHousing, box.SideMachined, 0, 5, slanted), box.Floor), 0.1,
			"housing 5 deep, 14.8 wide, 60 long at 30 deg, its middle 96 up, 96.9 from the left"},
		{use(op(box.OpNotch, box.SideThrough, 0, 14.6, outline.Rectangle(60, 0, 74.6, 50)), "finger"), 0.1,
			"notch 14.6 into the right edge, 50 along it, 74.6 to 124.6 up (finger)"},
		{op(box.OpRebate, box.SideEdge, 4, 9, outline.Rectangle(-74.6, -74.6, -68.6, 360.432960)), 0.1,
			"rebate along the left edge, 5 deep, 6 wide, in the edge, 4 to 9 below the machined face"},
		// Touches nothing, whatever it is called.
		{op(box.OpNotch, box.SideThrough, 0, 14.6, outline.Rectangle(-5, 0, 5, 10)), 0.1,
			"notch 10 wide, 10 high, through, 79.6 up, centred"},
		{op(box.OpMark, box.SideMachined, 0, 0.5), 0.1, "mark, 0.5 deep"},
		{op(box.OpHousing, box.SideMachined, 0, 0.5), 0.1, "housing"},
		{tilt(op(box.OpPocket, box.SideMachined, 0, 3, outline.Rectangle(-5, 0, 5, 10)), -2, 4), 0.1,
			"pocket 10 wide, 10 high, 3 deep, 79.6 up, centred, walls tilted -2 to 4 deg"},
	}
	for _, tt := range tests {
		p := back()
		if got, _ := workOf(p, tt.op, edgeNames(p.Panel), tt.step, enterer{}); got.Words() != tt.words {
			t.Errorf("got  %s\nwant %s", got.Words(), tt.words)
		}
	}
}

// A contour may start anywhere and the words stay the same.
func TestWordsDoNotDependOnTheStart(t *testing.T) {
	p := back()
	slot := outline.Contour{{X: -20, Y: 90}, {X: 20, Y: 90, Bulge: 1}, {X: 20, Y: 110}, {X: -20, Y: 110, Bulge: 1}}
	want := "opening 60 wide, 20 high, through, 174.6 up, centred" // 40 and two half rounds of 20
	for i := range slot {
		c := append(append(outline.Contour(nil), slot[i:]...), slot[:i]...)
		for _, c := range []outline.Contour{c, c.Reverse()} {
			if got, _ := workOf(p, op(box.OpOpening, box.SideThrough, 0, 14.6, c), edgeNames(p.Panel), 0.1, enterer{}); got.Words() != want {
				t.Errorf("from vertex %d: %s, want %s", i, got.Words(), want)
			}
		}
	}
}

func TestJobs(t *testing.T) {
	w := func(what, where, more string) Work { return Work{What: what, Where: where, More: more} }
	it := Item{Work: []Work{
		w("hole 8 through", "10 up, centred", " (vent)"), w("hole 8 through", "20 up, centred", " (vent)"),
		w("hole 8 through", "30 up, centred", " (drain)"),      // for another use
		w("hole 9 through", "40 up, centred", " (drain)"),      // of another size
		w("rebate 7 x 15", "", ""), w("rebate 7 x 15", "", ""), // nowhere said: no list of places
		w("hole 8 through", "10 up, centred", " (vent)"), // not next to the first
	}}
	want := []string{
		"2 × hole 8 through: 10 up, centred; 20 up, centred (vent)", "hole 8 through, 30 up, centred (drain)", "hole 9 through, 40 up, centred (drain)",
		"rebate 7 x 15", "rebate 7 x 15", "hole 8 through, 10 up, centred (vent)",
	}
	got := it.Jobs()
	if len(got) != len(want) {
		t.Fatalf("%q, want %q", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%q, want %q", got[i], want[i])
		}
	}
}

func TestEdgeNames(t *testing.T) {
	// A gable wall: five edges, the two slopes at 45 degrees.
	wall := outline.Contour{{X: -50, Y: 0}, {X: 50, Y: 0}, {X: 50, Y: 100}, {X: 0, Y: 150}, {X: -50, Y: 100}}
	// A wall under a slope of 12 degrees: its top still counts as upper.
	pent := outline.Contour{{X: -50, Y: 0}, {X: 50, Y: 0}, {X: 50, Y: 121.256}, {X: -50, Y: 100}}
	for _, tt := range []struct {
		c    outline.Contour
		want []string
	}{
		{wall, []string{"lower", "right", "upper right", "upper left", "left"}},
		{pent, []string{"lower", "right", "upper", "left"}},
		// A corner cut off at 45 degrees twice on one side.
		{outline.Contour{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 5, Y: 10.5}, {X: 0, Y: 10}}, []string{"lower", "right", "upper", "upper 2", "left"}},
	} {
		var p box.Panel
		for i, v := range tt.c {
			p.Edges = append(p.Edges, box.PanelEdge{From: v.At(), To: tt.c[(i+1)%len(tt.c)].At()})
		}
		got := edgeNames(p)
		for i := range got {
			if got[i] != tt.want[i] {
				t.Errorf("%v: got %q, want %q", tt.c, got, tt.want)
				break
			}
		}
	}
}

func TestGrainWords(t *testing.T) {
	for _, tt := range []struct {
		g    [2]float64
		want string
	}{
		{[2]float64{}, "none"}, {[2]float64{0, 1}, "up"}, {[2]float64{0, -1}, "up"}, {[2]float64{-1, 0}, "across"},
		{[2]float64{0.8660254037844387, 0.5}, "30 deg from across"}, {[2]float64{-0.8660254037844387, -0.5}, "30 deg from across"},
	} {
		if got := grainWords(tt.g); got != tt.want {
			t.Errorf("%v: %q, want %q", tt.g, got, tt.want)
		}
	}
}
