package boxtest

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

var orchard = box.Design{
	Name:     "orchard pent",
	Board:    box.Board{Thickness: 15, Measured: 14.6},
	Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
	Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
	Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
	Corners:  box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
	Floor:    box.FloorBetween{Raise: 20},
	Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}},
}

// open is the orchard box without its front and floor.
var open = orchard.With(func(d *box.Design) {
	d.Walls = append(d.Walls, box.Wall{On: box.Front, Open: true})
	d.Floor, d.Features = box.NoFloor{}, nil
})

// ear listens to assertions.
type ear struct{ said []string }

func (e *ear) Helper() {}
func (e *ear) Errorf(format string, args ...any) {
	e.said = append(e.said, fmt.Sprintf(format, args...))
}

// hears asserts that something said it, or, with "", that nothing was said.
func hears(t *testing.T, what string, err error, want string) {
	t.Helper()
	switch {
	case want == "" && err != nil:
		t.Errorf("%s: %v", what, err)
	case want != "" && (err == nil || !strings.Contains(err.Error(), want)):
		t.Errorf("%s: %v, want %q", what, err, want)
	}
}

func TestSoundBoxes(t *testing.T) {
	for _, d := range []box.Design{orchard, open, {Name: "loose", Board: box.Board{Thickness: 12}, Free: []box.Free{{Name: "perch", Outline: outline.Rectangle(0, 0, 60, 20)}}}} {
		Sound(t, Resolve(t, d))
	}
	Cavity(t, Resolve(t, orchard), 120, 120, 240)
	Cavity(t, Resolve(t, open), 120, 120, 240)
	pieces, err := orchard.TestPieces()
	if err != nil {
		t.Fatal(err)
	}
	Sound(t, pieces)
}

// Random designs of every kind are sound too, but for the one verdict that may
// go either way; the void between the planes is worked out a second time.
func TestRandomBoxesAreSound(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 3))
	closed := 0
	for n := 0; n < 60; n++ {
		k := anybox.Kinds{Footprint: anybox.Footprints[n%3], Roof: anybox.Roofs[n%len(anybox.Roofs)], Laps: anybox.Laps[r.IntN(3)],
			Corner: anybox.Corners[n%4], Floor: anybox.Floors[r.IntN(len(anybox.Floors))]}
		p, err := anybox.Design(r, k).Resolve()
		if err != nil {
			continue
		}
		if err := errors.Join(CheckFits(p), CheckOutlines(p), CheckMeshes(p)); err != nil {
			t.Errorf("%v: %v", k, err)
		}
		w, d, h := p.Inside()
		if err := CheckCavity(p, w, d, h); err != nil {
			t.Errorf("%v: %v", k, err)
		}
		if _, ok := empty(p.Pieces(), p.Seams()); ok {
			closed++
		}
	}
	if closed < 25 {
		t.Errorf("only %d boxes closed on all sides", closed)
	}
}

func TestNoPlan(t *testing.T) {
	var e ear
	if p := Resolve(&e, box.Design{Name: "nothing"}); p != nil || len(e.said) != 1 || !strings.Contains(e.said[0], "nothing cannot be made:\nBoard.Thickness") {
		t.Errorf("%q", e.said)
	}
	e = ear{}
	Sound(&e, nil)
	Fits(&e, nil)
	Cavity(&e, nil, 1, 1, 1)
	Outlines(&e, nil)
	Meshes(&e, nil)
	GoesTogether(&e, nil)
	Golden(&e, nil, "testdata/none.txt")
	if len(e.said) != 7 {
		t.Errorf("%q", e.said)
	}
	for _, s := range e.said {
		if s != "there is no plan" {
			t.Error(s)
		}
	}
}

// shifted is a body carried by v.
func shifted(b solid.Body, v solid.Vec) solid.Body {
	out := solid.Body{Prisms: b.Prisms}
	for _, h := range b.Base {
		out.Base = append(out.Base, solid.Plane{N: h.N, D: h.D + h.N.Dot(v)})
	}
	return out
}

func TestFitsFinds(t *testing.T) {
	p := Resolve(t, orchard)
	spoil := func(f func(ps []box.Piece, ss []box.Seam, vs []box.Void)) error {
		ps, ss, vs := p.Pieces(), p.Seams(), p.Voids()
		f(ps, ss, vs)
		return fits(ps, ss, vs)
	}
	hears(t, "as it is", spoil(func([]box.Piece, []box.Seam, []box.Void) {}), "")
	// The floor, 120 x 120 x 14.6, 0.1 to the right: 0.1 x 120 x 14.6 = 175.2 in the
	// right wall, as much left empty beside the left one.
	moved := spoil(func(ps []box.Piece, _ []box.Seam, _ []box.Void) {
		for i := range ps {
			if ps[i].Part == box.Floor {
				ps[i].Body = shifted(ps[i].Body, solid.Vec{X: 0.1})
			}
		}
	})
	hears(t, "floor moved", moved, "right and floor fill the same place: 175.2000 mm3")
	hears(t, "floor moved", moved, "the parts leave 175.2000 mm3 between the outer planes, and the plan owns up to 0.0000")
	hears(t, "seam without contact", spoil(func(_ []box.Piece, ss []box.Seam, _ []box.Void) { ss[0].Contact = 0 }), "front and right do not touch")
	hears(t, "void without owner", spoil(func(_ []box.Piece, _ []box.Seam, vs []box.Void) { vs[0].Owner = "" }), "has no owner")
}

func TestCavityFinds(t *testing.T) {
	p := Resolve(t, orchard)
	hears(t, "narrower", CheckCavity(p, 119.9, 120, 240), "the cavity is 120 wide, want 119.9")
	hears(t, "shallower", CheckCavity(p, 120, 121, 240), "the cavity is 120 deep, want 121")
	hears(t, "lower", CheckCavity(p, 120, 120, 239.5), "the cavity is 240 high, want 239.5")
	size := [3]box.MM{120, 120, 240}
	ps := p.Pieces()
	for i := range ps {
		if ps[i].Part == box.Left { // 0.5 into the cavity: 0.5 x 120 x (240 + 60 tan 12), but for what is above 240
			ps[i].Body = shifted(ps[i].Body, solid.Vec{X: 0.5})
		}
	}
	hears(t, "left moved in", cavity(ps, size, size), "left reaches into the cavity: 14400.0000 mm3")
	ps = p.Pieces()
	for i := range ps {
		if ps[i].Part == box.Left {
			ps[i].Home.O.X++
		}
	}
	hears(t, "left drawn elsewhere", cavity(ps, size, size), "the parts leave 119 x 120 at the floor, and the plan says 120 x 120")
}

func TestOutlinesFinds(t *testing.T) {
	p := Resolve(t, orchard)
	for _, tt := range []struct {
		want  string
		spoil func(q *box.Piece)
	}{
		{"", func(q *box.Piece) {}},
		{"cut line: outline: ", func(q *box.Piece) { q.Panel.Machined = outline.Region{q.Panel.Machined[0][:2]} }},
		{"silhouette: outline: ", func(q *box.Piece) { q.Panel.Silhouette = q.Panel.Silhouette.Reverse() }},
		{"far face: it encloses nothing", func(q *box.Piece) { q.Panel.Far = nil }},
		{"cut line: it reaches out of the silhouette by 149.2000 mm2", func(q *box.Piece) {
			q.Panel.Machined = q.Panel.Machined.Transform(outline.Shift(0, -1)) // 149.2 wide
		}},
		{"it is 274.7 x 149.2, and drawn 149.2 x 274.6", func(q *box.Piece) { q.Length += 0.1 }},
		{"bore for entrance: it goes from 0 to 15 of 14.6", func(q *box.Piece) { q.Panel.Ops[len(q.Panel.Ops)-1].To = 15 }},
		{"bore for entrance: it lies beside the panel", func(q *box.Piece) {
			o := &q.Panel.Ops[len(q.Panel.Ops)-1]
			o.Region = o.Region.Transform(outline.Shift(500, 0))
		}},
		{"bore for entrance: outline: ", func(q *box.Piece) { q.Panel.Ops[len(q.Panel.Ops)-1].Region = outline.Region{{{X: 1}}} }},
	} {
		q, _ := p.Piece(box.Front)
		q.Panel.Ops = append([]box.Op(nil), q.Panel.Ops...)
		tt.spoil(&q)
		hears(t, tt.want, errors.Join(outlinesOf(&q)...), tt.want)
	}
}

func TestMeshesFinds(t *testing.T) {
	p := Resolve(t, orchard)
	q, _ := p.Piece(box.Front)
	m, err := p.Mesh(box.Front)
	if err != nil {
		t.Fatal(err)
	}
	hears(t, "as it is", meshOf(&q, m), "")
	q.Volume++
	hears(t, "volume", meshOf(&q, m), "the mesh encloses")
	q.Volume--
	q.Thickness += 0.4
	hears(t, "thickness", meshOf(&q, m), "the panel is 15 thick")
	m.Triangles = m.Triangles[1:]
	hears(t, "open", meshOf(&q, m), "solid: ")
}

// ring lets a wall run on past its neighbour, so that a housing holds there.
type ring struct{ joints.Housing }

func (j ring) Section(c joints.Corner) (joints.Section, error) {
	c.RunOn += 15
	return j.Housing.Section(c)
}

func TestGoesTogetherFinds(t *testing.T) {
	d := box.Design{Name: "ring", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
		Corners: box.Corners{Laps: box.Pinwheel, Joint: ring{joints.Housing{Stop: 15}}}, Roof: box.Flat{},
		Floor: box.FloorBetween{Raise: 20, Joint: joints.Housing{Stop: 15}}}
	var e ear
	GoesTogether(&e, Resolve(t, d))
	if len(e.said) != 1 || !strings.HasPrefix(e.said[0], "ring: it does not go together: Joints: front, back, left, right, floor: these parts hold one another") {
		t.Errorf("%q", e.said)
	}
	var p box.Problem
	if err := CheckSound(Resolve(t, d)); !errors.As(err, &p) || p.Code != "captive" {
		t.Errorf("%v", err)
	}
}

func TestGoldenAndDifference(t *testing.T) {
	file := filepath.Join(t.TempDir(), "deep", "orchard.txt")
	p := Resolve(t, orchard)
	hears(t, "no file", CheckGolden(p, file), "there is no drawing in "+file+" yet")
	t.Setenv("HOLT_UPDATE", "1")
	Golden(t, p, file)
	t.Setenv("HOLT_UPDATE", "")
	Golden(t, p, file)

	// A checkout with other line ends is the same drawing.
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := Difference(strings.ReplaceAll(string(text), "\n", "\r\n"), string(text)); d != "" {
		t.Error(d)
	}

	// A larger hole changes one line, of the front.
	d := orchard.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 28}, Above: 174}}
	})
	want := `the drawing is no longer that of ` + file + ` (- was, + is):
  front
-   bore "entrance", through from 0 to 14.6, 32 across at (0,186)
+   bore "entrance", through from 0 to 14.6, 28 across at (0,188)
If this is meant, run with -boxtest.update`
	if err := CheckGolden(Resolve(t, d), file); err == nil || err.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", err, want)
	}
}

// The text of the golden drawing is as documented: lowest corner first, in
// hundredths, each group once.
func TestDrawing(t *testing.T) {
	text := Drawing(Resolve(t, orchard))
	for _, want := range []string{
		"\"orchard pent\"\ninside 120 x 120 x 240, outside 149.2 x 149.2 x 286.42\n",
		"\nfront\n  274.6 x 149.2 x 14.6, grain up, inner face machined\n  cut (-74.6,-34.6) (74.6,-34.6) (74.6,240) (-74.6,240)\n",
		"\n  far (-74.6,-34.6) (74.6,-34.6) (74.6,236.9) (-74.6,236.9)\n", // 240 - 14.6 tan 12 = 236.8967
		"\nleft, right\n  301.59 x 134 x 14.6, grain up",
		"in a \"rebate\"\n", "\"roof\" in a \"butt\", bevel 12\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	// Whatever the start vertex and its rounding, the text is one.
	c := outline.Polygon(outline.Point{X: 0, Y: 1e-9}, outline.Point{X: 10, Y: 0}, outline.Point{X: 5, Y: 7})
	for i := range c {
		turned := append(append(outline.Contour(nil), c[i:]...), c[:i]...)
		if got := contour(turned); got != "(0,0) (10,0) (5,7)" {
			t.Error(got)
		}
	}
	if Drawing(nil) != "" {
		t.Error("a drawing of nothing")
	}
}

func TestDifference(t *testing.T) {
	for _, tt := range []struct{ was, is, want string }{
		{"", "", ""},
		{"a\n  1\n  2\n", "a\n  1\n  2\n", ""},
		{"a\n  1\n  2\nb\n  3\n", "a\n  1\nb\n  3\n", "  a\n-   2\n"},
		{"a\n  1\nb\n  3\n", "a\n  1\nb\n  3\n  4\n", "  b\n+   4\n"},
		{"a\n  1\nb\n  2\nc\n  3\n", "a\n  0\nb\n  2\nc\n  4\n", "  a\n-   1\n+   0\n  c\n-   3\n+   4\n"},
		{"a\n  1\n", "", "- a\n-   1\n"},
		{"", "a\n  1\n", "+ a\n+   1\n"},
	} {
		if got := Difference(tt.was, tt.is); got != tt.want {
			t.Errorf("%q to %q: %q, want %q", tt.was, tt.is, got, tt.want)
		}
	}
}

func variants() box.Variants {
	return box.Variants{Base: orchard, Axes: []box.Axis{{Name: "board", Values: []box.Value{
		{Name: "15", Set: func(*box.Design) {}},
		{Name: "0.1", Set: func(d *box.Design) { d.Board = box.Board{Thickness: 0.1} }},
	}}}}
}

func TestEach(t *testing.T) {
	v := variants()
	var keys []string
	Each(t, v, func(t *testing.T, d box.Design) { keys = append(keys, t.Name()) })
	if got := strings.Join(keys, " "); got != "TestEach/board=15 TestEach/board=0.1" {
		t.Error(got)
	}
	v.Axes[0].Values = v.Axes[0].Values[:1]
	Each(t, v, nil)
	hears(t, "sound", CheckEach(v), "")
	hears(t, "too thin", CheckEach(variants()), "board=0.1: Board.Thickness: 0.1: thickness of the board; want 0.5 to 1000 mm")
	hears(t, "a check of one's own", CheckEach(v, func(p *box.Plan) error { return CheckCavity(p, 100, 120, 240) }), "board=15: the cavity is 120 wide, want 100")
	v.Axes[0].Name = ""
	hears(t, "no name", CheckEach(v), "Axes[0].Name")
}

// Every change of an engraving shows in the drawing: with one left out, a text
// could move, turn or shrink under a golden file that still passes.
func TestDrawingSeesEngravings(t *testing.T) {
	engraved := func(change func(f *box.Text)) string {
		f := box.Text{On: box.Front, Text: "No 17", Height: 20, Width: 2, At: box.Anchor{Up: 80}, Name: "number"}
		change(&f)
		return Drawing(Resolve(t, orchard.With(func(d *box.Design) { d.Features = append(d.Features, f) })))
	}
	was := engraved(func(*box.Text) {})
	for what, change := range map[string]func(f *box.Text){
		"up":             func(f *box.Text) { f.At.Up = 60 },
		"right":          func(f *box.Text) { f.At.Right = 1 },
		"turned over":    func(f *box.Text) { f.At.Turn = 180 },
		"height":         func(f *box.Text) { f.Height = 19 },
		"another number": func(f *box.Text) { f.Text = "No 71" },
		"another width":  func(f *box.Text) { f.Width = 1.9 },
	} {
		if engraved(change) == was {
			t.Errorf("%s: the drawing is as it was", what)
		}
	}
	// A line of 40 from (-20, 50) to (20, 50), seen from within: the sharp V-cutter of
	// 60 degrees is 1.73 deep where its groove is 2 wide (1 / tan 30).
	d := orchard.With(func(d *box.Design) {
		d.Features = append(d.Features, box.Engrave{On: box.Front, From: box.FromInner, At: box.Anchor{Up: 50}, Lines: []outline.Path{outline.Line(outline.Point{X: -20}, outline.Point{X: 20})}})
	})
	if want := `engrave "mark", machined from 0 to 1.73, 2 wide: 1 stroke, 40 long, from (-20,50) to (20,50), middle (0,50), first at (20,50)`; !strings.Contains(Drawing(Resolve(t, d)), want) {
		t.Errorf("no %q in\n%s", want, Drawing(Resolve(t, d)))
	}
}

// stopper is a test that can be ended, as *testing.T can.
type stopper struct{ ear }

func (s *stopper) FailNow() { panic("ended") }

func TestResolveEndsTheTest(t *testing.T) {
	var s stopper
	func() {
		defer func() {
			if r := recover(); r != "ended" {
				t.Errorf("%v: not ended", r)
			}
		}()
		Resolve(&s, box.Design{Name: "nothing"})
		t.Error("the test went on")
	}()
	if len(s.said) != 1 || !strings.HasPrefix(s.said[0], "nothing cannot be made:\nBoard.Thickness") {
		t.Errorf("%q", s.said)
	}
}

// A hexagon 150 from side to side is 150/cos 30 = 173.2051 from corner to corner.
func TestCavityOfAHexagon(t *testing.T) {
	p := Resolve(t, box.Design{Name: "hexagon", Board: box.Board{Thickness: 15}, Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 6, Across: 150},
		Corners: box.Corners{Joint: joints.Mitre{}}, Roof: box.NoRoof{}, Floor: box.FloorBetween{}})
	hears(t, "width", CheckCavity(p, 150, 150, 200), "the cavity is 173.205081 wide over the corners, want 150")
	hears(t, "depth", CheckCavity(p, 150, 140, 200), "the cavity is 150 deep, want 140")
	hears(t, "height", CheckCavity(p, 150, 150, 210), "the cavity is 200 high, want 210")
	Cavity(t, p, box.MM(150/math.Cos(math.Pi/6)), 150, 200)
}
