package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/render/internal/flat"
	"holt.example/render/internal/sample"
)

var versions = []Version{R2000, R12}

func mustWrite(t *testing.T, plan *box.Plan, part box.Part, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	var err error
	if part == "" {
		err = Write(&b, plan, o)
	} else {
		err = WritePart(&b, plan, part, o)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// old is a layer's name in the given version.
func old(name string, v Version) string {
	if v == R12 {
		return strings.ReplaceAll(name, ".", "-")
	}
	return name
}

// Every file of every sample hangs together.
func TestStructure(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		for _, v := range versions {
			for _, bare := range []bool{false, true} {
				o := Options{Version: v, Bare: bare}
				checkStructure(t, parse(t, mustWrite(t, plan, "", o)), v)
				for _, p := range plan.Pieces() {
					checkStructure(t, parse(t, mustWrite(t, plan, p.Part, o)), v)
				}
			}
		}
	}
}

// What is read back from the file of a part is what its panel says, corner by
// corner and bulge by bulge: the face and its holes on PROFILE, the far face on
// FAR_FACE if it is another, each operation once on the layer of its depth.
func TestRoundTrip(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		for _, p := range plan.Pieces() {
			for _, v := range versions {
				t.Run(fmt.Sprintf("%s/%s/%d", plan.Name(), p.Part, v), func(t *testing.T) {
					s := parse(t, mustWrite(t, plan, p.Part, Options{Version: v})).shapes(t)
					roundTrip(t, p.Panel, s, v)
				})
			}
		}
	}
}

func roundTrip(t *testing.T, p box.Panel, s shapes, v Version) {
	depth := func(d float64) string { return flat.Dotted(d) }
	// want takes a contour off the list of what was read.
	want := func(layer string, c outline.Contour) {
		layer = old(layer, v)
		if at, d, ok := c.IsCircle(1e-5); ok {
			for i, o := range s.circles[layer] {
				if math.Abs(o.X-at.X) <= 5.1e-5 && math.Abs(o.Y-at.Y) <= 5.1e-5 && math.Abs(o.R-d/2) <= 5.1e-5 {
					s.circles[layer] = append(s.circles[layer][:i], s.circles[layer][i+1:]...)
					return
				}
			}
			t.Errorf("no circle %v of %v on %s", at, d, layer)
			return
		}
		for i, o := range s.contours[layer] {
			if near(c, o) {
				s.contours[layer] = append(s.contours[layer][:i], s.contours[layer][i+1:]...)
				return
			}
		}
		t.Errorf("no contour %v on %s: %v", c, layer, s.contours[layer])
	}
	th := float64(p.Thickness)
	for _, c := range p.Machined {
		want("PROFILE_"+depth(th), c)
	}
	turned := false
	for _, op := range p.Ops {
		if op.InOutline {
			continue
		}
		if op.Side == box.SideFar {
			turned = true
			continue
		}
		word := strings.ToUpper(string(op.Kind))
		if op.Use == box.UseFixing { // a drill of its own, a layer of its own
			word = "FIXING"
		}
		layer := word + "_" + depth(float64(op.To))
		if op.Side == box.SideEdge {
			layer = "EDGE_" + word + "_" + depth(float64(op.From)) + "_" + depth(float64(op.To))
		}
		for _, c := range op.Region {
			want(layer, c)
		}
		for _, c := range op.Bottom {
			want(layer+"_BOTTOM", c)
		}
	}
	for _, c := range p.Far {
		shown := false
		for _, m := range p.Machined {
			shown = shown || near(onlyGrid(m), onlyGrid(c))
		}
		if !shown {
			want("FAR_FACE_"+depth(th), c)
		}
	}
	for l, r := range s.contours {
		if len(r) > 0 && !strings.HasPrefix(l, "TURNED_") {
			t.Errorf("%d contours too many on %s: %v", len(r), l, r)
		}
	}
	for l, r := range s.circles {
		if len(r) > 0 && !strings.HasPrefix(l, "TURNED_") {
			t.Errorf("%d circles too many on %s", len(r), l)
		}
	}
	if got := len(s.contours["TURNED_FACE"]) > 0; got != turned {
		t.Errorf("a turned drawing: %v, want %v", got, turned)
	}
}

func onlyGrid(c outline.Contour) outline.Contour {
	d := make(outline.Contour, len(c))
	for i, v := range c {
		d[i] = outline.Vertex{X: flat.Grid(v.X), Y: flat.Grid(v.Y), Bulge: v.Bulge}
	}
	return d
}

// hand is a panel with one of everything: 120 x 240, bevelled at its lower
// edge, machined face up.
func hand() box.Piece {
	return box.Piece{Part: "front", Panel: box.Panel{
		Thickness: 14.6,
		Grain:     [2]float64{0, 1},
		Machined:  outline.Region{outline.Rectangle(-60, 0, 60, 240)},
		Far:       outline.Region{outline.Rectangle(-60, 3.1, 60, 240)},
		Edges:     []box.PanelEdge{{From: outline.Point{X: -60}, To: outline.Point{X: 60}, Length: 120, Bevel: 12, Run: 3.1}},
		Ops: []box.Op{
			{Kind: box.OpBore, Use: box.UseEntrance, Side: box.SideThrough, To: 14.6, Region: outline.Region{outline.Circle(outline.Point{X: 10, Y: 180}, 32)}},
			{Kind: box.OpHousing, Side: box.SideMachined, To: 5, Region: outline.Region{outline.Rectangle(-60, 20, 60, 34.6)}, Bottom: outline.Region{outline.Rectangle(-60, 21, 60, 33.6)}},
			{Kind: box.OpPocket, Side: box.SideFar, From: 10.6, To: 14.6, Region: outline.Region{slot}},
			{Kind: box.OpGroove, Side: box.SideEdge, From: 4, To: 9, Region: outline.Region{outline.Rectangle(40, 50, 60, 56)}},
		},
	}}
}

// slot lies from -45 to -15 and from 100 to 110: its middle at -30, 105.
var slot = outline.Contour{{X: -40, Y: 100}, {X: -20, Y: 100, Bulge: 1}, {X: -20, Y: 110}, {X: -40, Y: 110, Bulge: 1}}

func drawHand(t *testing.T, v Version, o flat.Options) shapes {
	t.Helper()
	d, err := flat.Part("orchard", flat.Subject{Piece: hand(), Number: 2}, o)
	if err != nil {
		t.Fatal(err)
	}
	b, err := encode(d, v)
	if err != nil {
		t.Fatal(err)
	}
	f := parse(t, b)
	checkStructure(t, f, v)
	return f.shapes(t)
}

// The layers of a hand-made panel, one by one.
func TestLayers(t *testing.T) {
	s := drawHand(t, R2000, flat.Options{})
	for _, l := range []string{
		"PROFILE_14.6", "FAR_FACE_14.6", "HOUSING_5.0", "HOUSING_5.0_BOTTOM", "EDGE_GROOVE_4.0_9.0",
		"TURNED_FACE", "TURNED_POCKET_4.0",
	} {
		if len(s.contours[l]) != 1 {
			t.Errorf("%d contours on %s, want 1", len(s.contours[l]), l)
		}
		delete(s.contours, l)
	}
	if len(s.contours) > 0 {
		t.Errorf("more layers: %v", s.contours)
	}
	if c := s.circles["BORE_14.6"]; len(c) != 1 || c[0] != (flat.Circle{X: 10, Y: 180, R: 16}) {
		t.Errorf("the bore is %v", c)
	}
	// A shaft and four strokes for the heads.
	if s.lines["GRAIN"] != 5 || s.lines["TURNED_GRAIN"] != 5 {
		t.Errorf("%d and %d lines of grain, want 5 each", s.lines["GRAIN"], s.lines["TURNED_GRAIN"])
	}
	if got := s.texts["TEXT"]; !slices.Equal(got, []string{"2: front", "outer face up, 14.6 thick", "bevel 12°, 3.1 over the thickness", "machined face longer"}) {
		t.Errorf("texts %q", got)
	}
	// The bore's centre is 10 right of the middle of 120.
	if got := s.texts["SIZE"]; !slices.Equal(got, []string{"120", "240", "housing 5 deep, 14.6 wide, lower side 20 up",
		"groove in the edge, 4 to 9 below the face, 6 wide", "lower side 50 up, 100 to 120 from the left", "ø32", "at 70, 180"}) {
		t.Errorf("sizes %q", got)
	}
}

// A centred text has its place twice, the second one counts; the height of the
// part reads from the right.
func TestWriting(t *testing.T) {
	for _, v := range versions {
		d, err := flat.Part("orchard", flat.Subject{Piece: hand()}, flat.Options{})
		if err != nil {
			t.Fatal(err)
		}
		b, err := encode(d, v)
		if err != nil {
			t.Fatal(err)
		}
		centred := 0
		for _, e := range parse(t, b).sections["ENTITIES"] {
			if e.kind() != "TEXT" || e.get(8) != "SIZE" {
				continue
			}
			angle := e.get(50)
			want, known := map[string]string{"120": "", "240": "90.0"}[e.get(1)]
			if !known {
				continue // of the work
			}
			centred++
			if angle != want {
				t.Errorf("%s is turned by %q, want %q", e.get(1), angle, want)
			}
			if e.get(72) != "1" || e.num(t, 11) != e.num(t, 10) || e.num(t, 21) != e.num(t, 20) {
				t.Errorf("%s at %s, %s is centred on %s, %s", e.get(1), e.get(10), e.get(20), e.get(11), e.get(21))
			}
		}
		if centred != 2 {
			t.Errorf("%d sizes, want 2", centred)
		}
	}
}

// The second drawing is mirrored: in the panel the slot's middle is 30 left of
// the middle and 75 above the lower edge of the far face less 3.1; turned over
// it is 30 right of the middle of the outline drawn there.
func TestTurned(t *testing.T) {
	for _, v := range versions {
		s := drawHand(t, v, flat.Options{})
		face := s.contours["TURNED_FACE"].Extents()
		at := s.contours[old("TURNED_POCKET_4.0", v)].Extents().Centre()
		if math.Abs(at.X-face.Centre().X-30) > 1e-9 || math.Abs(at.Y-105) > 1e-9 {
			t.Errorf("the pocket's middle is %v, the face %v", at, face)
		}
		// Beside the first drawing, not on it.
		if face.Min.X < 60 {
			t.Errorf("the second drawing begins at %v, on the first", face.Min.X)
		}
		// Both stay anticlockwise.
		if a := s.contours[old("TURNED_POCKET_4.0", v)].Area(); math.Abs(a-(200+25*math.Pi)) > 1e-6 {
			t.Errorf("area %v, want 20 x 10 and a circle of 10", a)
		}
	}
}

func TestCorner(t *testing.T) {
	s := drawHand(t, R2000, flat.Options{Corner: true, Bare: true})
	if b := s.contours["PROFILE_14.6"].Extents(); b.Min != (outline.Point{}) || b.Max != (outline.Point{X: 120, Y: 240}) {
		t.Errorf("the profile spans %v", b)
	}
	if len(s.texts)+len(s.lines) > 0 {
		t.Errorf("a bare drawing has texts %v and lines %v", s.texts, s.lines)
	}
}

// No two entities of a file are the same line, on whatever layer, on a sheet
// either: a line drawn twice is cut twice.
func TestNoDuplicates(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		s := parse(t, mustWrite(t, plan, "", Options{})).shapes(t)
		var all outline.Region
		for _, r := range s.contours {
			all = append(all, r...)
		}
		for i, a := range all {
			for _, b := range all[i+1:] {
				if near(a, b) || near(a, b.Reverse()) {
					t.Errorf("%s: %v is drawn twice", plan.Name(), a)
				}
			}
		}
		seen := map[flat.Circle]bool{}
		for _, cs := range s.circles {
			for _, c := range cs {
				if seen[c] {
					t.Errorf("%s: the circle %v is drawn twice", plan.Name(), c)
				}
				seen[c] = true
			}
		}
	}
}

func TestSameBytes(t *testing.T) {
	for i, d := range []func() box.Design{sample.Orchard, sample.Gable, sample.Hip} {
		for _, v := range versions {
			var was []byte
			for range 3 {
				plan, err := d().Resolve()
				if err != nil {
					t.Fatal(err)
				}
				b := mustWrite(t, plan, "", Options{Version: v})
				if was != nil && !bytes.Equal(was, b) {
					t.Errorf("design %d: other bytes", i)
				}
				was = b
			}
		}
	}
}

// failing takes n bytes.
type failing struct{ n int }

var errFull = errors.New("full")

func (f *failing) Write(b []byte) (int, error) {
	if len(b) > f.n {
		n := f.n
		f.n = 0
		return n, errFull
	}
	f.n -= len(b)
	return len(b), nil
}

func TestFailingWriter(t *testing.T) {
	plan, err := sample.Orchard().Resolve()
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range versions {
		full := len(mustWrite(t, plan, "floor", Options{Version: v}))
		for n := 0; n < full; n += 1 + n/7 {
			if err := WritePart(&failing{n}, plan, "floor", Options{Version: v}); !errors.Is(err, errFull) {
				t.Fatalf("after %d of %d bytes: %v", n, full, err)
			}
		}
		if err := WritePart(&failing{full}, plan, "floor", Options{Version: v}); err != nil {
			t.Errorf("room for all: %v", err)
		}
		if err := Write(&failing{100}, plan, Options{Version: v}); !errors.Is(err, errFull) {
			t.Errorf("sheet: %v", err)
		}
	}
}

func TestErrors(t *testing.T) {
	plan, err := sample.Orchard().Resolve()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	var p box.Problem
	if err := WritePart(&b, plan, "attic\n", Options{}); !errors.As(err, &p) || p.Code != "unknown-part" || p.Path != "attic" {
		t.Errorf("unknown part: %v", err)
	}
	for _, o := range []Options{
		{Version: 2}, {Version: -1}, {Gap: -1}, {Gap: box.MM(math.NaN())}, {Width: box.MM(math.Inf(1))},
	} {
		if Write(&b, plan, o) == nil {
			t.Errorf("%+v is taken", o)
		}
	}
	if Write(&b, nil, Options{}) == nil || WritePart(&b, nil, "front", Options{}) == nil {
		t.Error("no plan is taken")
	}
	if b.Len() > 0 {
		t.Errorf("%d bytes were written before the error", b.Len())
	}
}
