package flat

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
	"holt.example/render/internal/sample"
)

// textsOf are the texts of a drawing of one part.
func textsOf(t *testing.T, p box.Piece) []string {
	t.Helper()
	d, err := Part("t", Subject{Piece: p}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, it := range d.Items {
		if it.Shape == Label {
			out = append(out, it.Text.Value)
		}
	}
	return out
}

func pent() box.Design {
	return box.Design{
		Name: "orchard pent", Board: box.Board{Thickness: 15, Measured: 14.6},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
		Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Corners:  box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
		Floor:    box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5}},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}},
	}
}

// One can work from the sheet: every figure here is worked out beside it.
func TestFiguresOnTheSheet(t *testing.T) {
	plan := pent().MustResolve()
	for part, want := range map[box.Part][]string{
		// 120 + 2 x 14.6 wide; 14.6 + 20 below the cavity's floor: the hole's middle is
		// 170 + 16 + 34.6 up, the housing, 0.2 wider than the floor, begins 0.1 below it
		// and is read to 0.1 as in the list. tan 12 x 14.6 = 3.1.
		box.Front: {"149.2", "274.6", "ø32", "at 74.6, 220.6", "rebate 7 deep, 14.6 wide", "housing 5.2 deep, 14.8 wide, lower side 19.8 up",
			"bevel 12°, 3.1 over the thickness", "machined face longer"},
		// Depth 120 + 2 x 7; the corners of the slope: 301.6 behind, 301.6 - 134 tan 12
		// = 273.1 in front.
		box.Left: {"134", "301.6", "0", "273.1"},
		// 181.6 over all, the cut line 3.1 less.
		box.Roof: {"189.2", "181.6", "0", "178.5"},
	} {
		p, _ := plan.Piece(part)
		got := textsOf(t, p)
		for _, w := range want {
			if !slices.Contains(got, w) {
				t.Errorf("%s: no %q in %q", part, w, got)
			}
		}
	}
}

// No text lies on another one, on a sheet of anything.
func TestTextsKeepApart(t *testing.T) {
	texts, crossed := 0, 0
	for _, plan := range append(sample.Plans(t), pent().MustResolve()) {
		for _, s := range Subjects(plan) {
			d, err := Part(plan.Name(), s, Options{Legend: true})
			if err != nil {
				t.Fatal(err)
			}
			var rects [][]outline.Point
			for _, it := range d.Items {
				if it.Shape != Label {
					continue
				}
				b := block{lines: []string{it.Text.Value}, height: it.Text.Height, angle: it.Text.Angle}
				w := Width(it.Text.Value, it.Text.Height)
				r := outline.Rectangle(0, 0, w, it.Text.Height)
				if it.Text.Middle {
					r = outline.Rectangle(-w/2, 0, w/2, it.Text.Height)
				}
				r = r.Transform(outline.Turn(b.angle).Then(outline.Shift(it.From.X, it.From.Y)))
				var q []outline.Point
				for _, v := range r {
					q = append(q, v.At())
				}
				for k, o := range rects {
					lo, hi := bounds(q)
					if touch(q, lo, hi, o) {
						crossed++
						t.Logf("%s %s: %q lies on text %d", plan.Name(), s.Piece.Part, it.Text.Value, k)
					}
				}
				rects = append(rects, q)
				texts++
			}
		}
	}
	// By the widest letters: in print there is more room.
	if crossed > 0 || texts < 200 {
		t.Errorf("of %d texts %d lie on others", texts, crossed)
	}
}

// Many equal holes have one label, and a hole at the rim keeps its leader off
// nothing.
func TestManyHoles(t *testing.T) {
	r := outline.Region{outline.Rectangle(0, 0, 200, 100)}
	p := box.Piece{Part: "x", Panel: box.Panel{Thickness: 15, Machined: r, Far: r, Silhouette: r}}
	for i := range 24 {
		p.Panel.Ops = append(p.Panel.Ops, box.Op{Kind: box.OpBore, Side: box.SideThrough, To: 15,
			Region: outline.Region{outline.Circle(outline.Point{X: 10 + float64(i%12)*16, Y: 20 + float64(i/12)*16}, 6)}})
	}
	got := textsOf(t, p)
	if !slices.Contains(got, "24 × ø6") || slices.Contains(got, "ø6") {
		t.Errorf("%q", got)
	}
	p.Panel.Ops = p.Panel.Ops[:3]
	got = textsOf(t, p)
	if n := strings.Count(fmt.Sprint(got), "ø6"); n != 3 || !slices.Contains(got, "at 42, 20") {
		t.Errorf("%d labels in %q", n, got)
	}
}

// Seen from the other side the places count from the left of what is seen
// there: 200 - 30 = 170.
func TestTurnedPlaces(t *testing.T) {
	r := outline.Region{outline.Rectangle(0, 0, 200, 100)}
	p := box.Piece{Part: "x", Panel: box.Panel{Thickness: 15, Machined: r, Far: r, Silhouette: r, SecondFace: true, Ops: []box.Op{
		{Kind: box.OpPocket, Side: box.SideFar, From: 11, To: 15, Region: outline.Region{outline.Circle(outline.Point{X: 30, Y: 40}, 20)}},
	}}}
	if got := textsOf(t, p); !slices.Contains(got, "ø20 4 deep") || !slices.Contains(got, "at 170, 40") {
		t.Errorf("%q", got)
	}
}

// A bevel that has no room beside its edge is written below the part.
func TestBevelNotes(t *testing.T) {
	r := outline.Region{outline.Rectangle(0, 0, 30, 200)}
	p := box.Piece{Part: "x", Panel: box.Panel{Thickness: 15, Machined: r, Far: r, Silhouette: r, Edges: []box.PanelEdge{
		{From: outline.Point{X: 30, Y: 200}, To: outline.Point{Y: 200}, Length: 30, Bevel: -14.4775, Run: -3.87},
	}}}
	if got, want := textsOf(t, p), "upper edge: bevel 14.5°, 3.9 over the thickness, other face longer"; !slices.Contains(got, want) {
		t.Errorf("no %q in %q", want, got)
	}
}

func TestRungs(t *testing.T) {
	for _, c := range []struct {
		in      []float64
		overall float64
		want    []float64
	}{
		{[]float64{0, 120, 120, 0}, 120, nil}, // says nothing new
		{[]float64{0, 120, 120, 0}, 128, []float64{0, 120}},
		{[]float64{80, 0, 40.01, 40.02, 80}, 80, []float64{0, 40.01, 80}},
		{[]float64{5}, 5, nil},
		{nil, 5, nil},
	} {
		if got := rungs(slices.Clone(c.in), c.overall); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.in, got, c.want)
		}
	}
	if got := rungs(func() (x []float64) {
		for i := range 100 {
			x = append(x, float64(i))
		}
		return x
	}(), 200); got != nil {
		t.Errorf("a hundred rungs: %v", got)
	}
	// Two that are too near go apart by the same: 10 and 11 to 8.5 and 12.5.
	if got, want := spaced([]float64{0, 10, 11, 30}, 4), []float64{0, 8.5, 12.5, 30}; !slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestTouch(t *testing.T) {
	sq := func(x, y, w, h, turn float64) []outline.Point {
		var out []outline.Point
		for _, v := range outline.Rectangle(-w/2, -h/2, w/2, h/2).Transform(outline.Turn(turn).Then(outline.Shift(x, y))) {
			out = append(out, v.At())
		}
		return out
	}
	for _, c := range []struct {
		a, b []outline.Point
		want bool
	}{
		{sq(0, 0, 10, 10, 0), sq(9, 0, 10, 10, 0), true},
		{sq(0, 0, 10, 10, 0), sq(10, 0, 10, 10, 0), false}, // side to side
		// Turned by 45 degrees its side is 8 sqrt 2 - 5 = 6.3 from the middle, and the
		// other's corner 5 sqrt 2 = 7.1.
		{sq(0, 0, 10, 10, 0), sq(8, 8, 10, 10, 45), true},
		{sq(0, 0, 10, 10, 0), sq(9, 9, 10, 10, 45), false}, // 7.7
		{sq(0, 0, 10, 10, 0), sq(11, 11, 8, 8, 0), false},
		{sq(0, 0, 10, 10, 0), []outline.Point{{X: -20}, {X: 20}}, true}, // a line right across
		{sq(0, 0, 10, 10, 0), []outline.Point{{X: -20, Y: 6}, {X: 20, Y: 6}}, false},
		{sq(0, 0, 10, 10, 0), []outline.Point{{X: 3, Y: -20}, {X: 3, Y: 20}}, true},
		{sq(0, 0, 10, 10, 0), []outline.Point{{X: 0, Y: 12}, {X: 12, Y: 0}}, false}, // past the corner
	} {
		lo, hi := bounds(c.a)
		if got := touch(c.a, lo, hi, c.b); got != c.want {
			t.Errorf("%v and %v: %v", c.a, c.b, got)
		}
	}
}
