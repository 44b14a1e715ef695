package svg

import (
	"bytes"
	"errors"
	"fmt"
	"image/png"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/render/internal/flat"
	"holt.example/render/internal/outside"
	"holt.example/render/internal/sample"
)

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

// slack is how far area and length of a contour may be off after the grid:
// each corner moves by half a step in x and y, and each radius by half a step,
// which moves a quarter arc by less than that again.
func slack(c outline.Contour) float64 { return 2 * flat.Step * c.Length() }

// like reports whether two contours have the same properties.
func like(a, b outline.Contour, by outline.Point) bool {
	ea, eb := a.Extents(), b.Extents()
	near := func(x, y float64) bool { return math.Abs(x-y) <= 4*flat.Step }
	return math.Abs(a.Area()-b.Area()) <= slack(a) && math.Abs(a.Length()-b.Length()) <= 1e-2 &&
		near(ea.Min.X+by.X, eb.Min.X) && near(ea.Max.X+by.X, eb.Max.X) &&
		near(ea.Min.Y+by.Y, eb.Min.Y) && near(ea.Max.Y+by.Y, eb.Max.Y)
}

// What is read back from the drawing of a part is what its panel says: area,
// length and extents of the face, of the far face and of every operation, not
// mirrored, at its place.
func TestRoundTrip(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		for _, p := range plan.Pieces() {
			t.Run(fmt.Sprintf("%s/%s", plan.Name(), p.Part), func(t *testing.T) {
				s := parse(t, mustWrite(t, plan, p.Part, Options{}))
				name := func(kind string, d box.MM) string { return kind + "_" + flat.Dotted(float64(d)) }
				profile := s.contours[name("profile", p.Thickness)]
				if len(profile) != len(p.Panel.Machined) {
					t.Fatalf("%d profiles, want %d", len(profile), len(p.Panel.Machined))
				}
				a, b := p.Panel.Machined.Extents(), profile.Extents()
				by := outline.Point{X: b.Min.X - a.Min.X, Y: b.Min.Y - a.Min.Y}
				find := func(layer string, c outline.Contour) {
					t.Helper()
					if at, d, ok := c.IsCircle(1e-5); ok {
						if !slices.ContainsFunc(s.circles[layer], func(o flat.Circle) bool {
							return math.Abs(o.X-at.X-by.X) <= 2*flat.Step && math.Abs(o.Y-at.Y-by.Y) <= 2*flat.Step && math.Abs(o.R-d/2) <= flat.Step
						}) {
							t.Errorf("no circle at %v of %v on %s: %v", at, d, layer, s.circles[layer])
						}
						return
					}
					if !slices.ContainsFunc(s.contours[layer], func(o outline.Contour) bool { return like(c, o, by) }) {
						t.Errorf("%v is not on %s: %v", c, layer, s.contours[layer])
					}
				}
				for _, c := range p.Panel.Machined {
					find(name("profile", p.Thickness), c)
				}
				for _, op := range p.Panel.Ops {
					if op.InOutline || op.Side == box.SideFar {
						continue
					}
					word := string(op.Kind)
					if op.Use == box.UseFixing { // a drill of its own, a layer of its own
						word = "fixing"
					}
					layer := name(word, op.To)
					if op.Side == box.SideEdge {
						layer = name(name("edge_"+word, op.From), op.To)
					}
					for _, c := range op.Region {
						find(layer, c)
					}
					for _, c := range op.Bottom {
						find(layer+"_bottom", c)
					}
				}
			})
		}
	}
}

// chiral is a panel whose mirror image is another: a bore at the upper right
// and a three-quarter arc at the lower left.
func chiral() box.Piece {
	return box.Piece{Part: "front", Panel: box.Panel{
		Thickness: 15,
		Machined:  outline.Region{outline.Rectangle(0, 0, 100, 60)},
		Far:       outline.Region{outline.Rectangle(0, 0, 100, 60)},
		Ops: []box.Op{
			{Kind: box.OpBore, Side: box.SideThrough, To: 15, Region: outline.Region{outline.Circle(outline.Point{X: 80, Y: 45}, 20)}},
			// Centre 20, 15, radius 10, from the right round to below, the long
			// way: tan(270/4) = 2.414.
			{Kind: box.OpOpening, Side: box.SideThrough, To: 15, Region: outline.Region{{
				{X: 30, Y: 15, Bulge: 1 + math.Sqrt2}, {X: 20, Y: 5}, {X: 30, Y: 5},
			}}},
		},
	}}
}

func draw(t *testing.T, title string, o Options, parts ...box.Piece) []byte {
	t.Helper()
	var s []flat.Subject
	for i, p := range parts {
		s = append(s, flat.Subject{Piece: p, Number: i + 1})
	}
	d, err := flat.Sheet(title, s, o.flat())
	if len(parts) == 1 {
		d, err = flat.Part(title, s[0], o.flat())
	}
	if err != nil {
		t.Fatal(err)
	}
	return encode(d, o)
}

// A tight bare drawing has no margin, so the places can be read off: y down,
// and the picture is not mirrored. The arc of 270 degrees is four of 67.5, all
// anticlockwise on the screen, which SVG calls 0.
func TestText(t *testing.T) {
	got := string(draw(t, "t", Options{Bare: true, Tight: true}, chiral()))
	for _, want := range []string{
		`<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60" role="img">`,
		`<path d="M 0 60 L 100 60 L 100 0 L 0 0 Z">`,
		`<circle cx="80" cy="15" r="10">`,
		// 20 + 10 cos 67.5 = 23.8268, 60 - (15 + 10 sin 67.5) = 35.7612;
		// 20 - 10 sin 45 = 12.9289, 45 - 7.0711 = 37.9289;
		// 20 + 10 cos 202.5 = 10.7612, 45 - 10 sin 202.5 = 48.8268
		`<path d="M 30 45 A 10 10 0 0 0 23.8268 35.7612 A 10 10 0 0 0 12.9289 37.9289 A 10 10 0 0 0 10.7612 48.8268 A 10 10 0 0 0 20 55 L 30 55 Z">`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%s is not in\n%s", want, got)
		}
	}
}

// Capitals of 2.5 mm in letters whose capitals are 0.7 of their size; the
// height of the part reads from the right: turned a quarter anticlockwise,
// which SVG counts negative. The part's lower left corner lies at 10 + 11.5
// (the room that the height takes: 8 to its line, 1 to its text, 2.5 for that)
// across.
func TestWriting(t *testing.T) {
	got := string(draw(t, "t", Options{}, chiral()))
	for _, want := range []string{
		`<text x="12.5" y="40" font-size="3.5714" stroke="none" text-anchor="middle" transform="rotate(-90 12.5 40)">60</text>`,
		`<text x="21.5" y="85.5" font-size="5" stroke="none">1: front</text>`,
		// Its middle 80 and 45 from the lower left corner.
		`text-anchor="middle">ø20</text>`, `text-anchor="middle">at 80, 45</text>`,
		// The legend has the word in the colour of the circle above.
		`fill="#7a4a2b">hole</text>`, `>Thick line: cut.`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%s is not in\n%s", want, got)
		}
	}
}

// Where flags are packed or exponents used, readers fail: no attribute of any
// sample has two numbers without a space between them.
func TestNumbers(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		parse(t, mustWrite(t, plan, "", Options{})) // number complains
	}
}

// On a sheet, no part's drawing overlaps another's, and every number and name
// is there.
func TestSheet(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		p := parse(t, mustWrite(t, plan, "", Options{}))
		for _, g := range plan.Groups() {
			for _, part := range g.Parts {
				if want := fmt.Sprintf("%d: %s", g.Number, part); !slices.Contains(p.texts, want) {
					t.Errorf("%s: no text %q in %q", plan.Name(), want, p.texts)
				}
			}
		}
		var boxes []outline.Box
		for l, r := range p.contours {
			if strings.HasPrefix(l, "profile") {
				for _, c := range r {
					if c.Area() > 0 {
						boxes = append(boxes, c.Extents())
					}
				}
			}
		}
		for i, a := range boxes {
			if a.Min.X < 0 || a.Min.Y < 0 || a.Max.X > p.w || a.Max.Y > p.h {
				t.Errorf("%s: %v lies outside the drawing", plan.Name(), a)
			}
			for _, b := range boxes[i+1:] {
				if a.Overlaps(b, 0) {
					t.Errorf("%s: %v and %v overlap", plan.Name(), a, b)
				}
			}
		}
	}
}

var hostile = []string{
	"a/b\\c:d", `"quoted" 'name'`, "<script>alert(1)</script>", "]]>&amp;<!--", "=1+1", "two\r\nlines", "tab\tand\x00nul\x1b[31m",
	"Größe ø32 Łąka", "日本 😀", "\xff\xfe broken", "\u202Eltr\uFFFE\uFDD0", strings.Repeat("x", 10_000), strings.Repeat("<", 10_000), "",
}

// Names never break the file and come back as they were cleaned, in the title,
// the label and the note.
func TestHostileNames(t *testing.T) {
	for _, name := range hostile {
		p := chiral()
		p.Part = box.Part(name)
		p.Panel.Ops[0].Source = name
		b := draw(t, name, Options{}, p, p)
		if !utf8.Valid(b) {
			t.Errorf("%.40q: not UTF-8", name)
		}
		s := parse(t, b)
		if want := flat.Clean(name, 80); s.title != want {
			t.Errorf("%.40q: title %q, want %q", name, s.title, want)
		}
		if want := flat.Clean("1: "+flat.Clean(name, 60), 100); !slices.Contains(s.texts, want) {
			t.Errorf("%.40q: no label %q in %q", name, want, s.texts)
		}
		if name != "" {
			if want := flat.Clean("bore, through ("+name+")", 200); !slices.Contains(s.titles, want) {
				t.Errorf("%.40q: no note %q in %q", name, want, s.titles)
			}
		}
		if len(b) > 20_000 {
			t.Errorf("%.40q: %d bytes", name, len(b))
		}
	}
}

func FuzzNames(f *testing.F) {
	for _, s := range hostile {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, name string) {
		p := chiral()
		p.Part = box.Part(name)
		s := parse(t, draw(t, name, Options{}, p))
		if want := flat.Clean(name, 80); s.title != want {
			t.Fatalf("%q: title %q, want %q", name, s.title, want)
		}
	})
}

func TestSameBytes(t *testing.T) {
	var was []byte
	for range 3 {
		plan, err := sample.Gable().Resolve()
		if err != nil {
			t.Fatal(err)
		}
		b := mustWrite(t, plan, "", Options{})
		if was != nil && !bytes.Equal(was, b) {
			t.Error("other bytes")
		}
		was = b
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
	full := len(mustWrite(t, plan, "floor", Options{}))
	for n := 0; n < full; n++ {
		if err := WritePart(&failing{n}, plan, "floor", Options{}); !errors.Is(err, errFull) {
			t.Fatalf("after %d of %d bytes: %v", n, full, err)
		}
	}
	if err := WritePart(&failing{full}, plan, "floor", Options{}); err != nil {
		t.Errorf("room for all: %v", err)
	}
	if err := Write(&failing{100}, plan, Options{}); !errors.Is(err, errFull) {
		t.Errorf("sheet: %v", err)
	}
}

func TestErrors(t *testing.T) {
	plan, err := sample.Orchard().Resolve()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	var p box.Problem
	if err := WritePart(&b, plan, "attic", Options{}); !errors.As(err, &p) || p.Code != "unknown-part" {
		t.Errorf("unknown part: %v", err)
	}
	for _, o := range []Options{{Gap: -1}, {Gap: box.MM(math.NaN())}, {Width: box.MM(math.Inf(1))}} {
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

// Painted by a program written by others at 254 dots an inch, ten a
// millimetre, the drawing has its true size, and ink where the plan has lines
// and none beside them.
func TestOutsidePainter(t *testing.T) {
	file := outside.File(t, "chiral.svg", draw(t, "chiral", Options{Bare: true}, chiral()))
	img, err := png.Decode(bytes.NewReader(outside.Paint(t, file, "254")))
	if err != nil {
		t.Fatal(err)
	}
	// 100 x 60 and 10 of margin on each side.
	if s := img.Bounds().Size(); s.X != 1200 || s.Y != 800 {
		t.Fatalf("%v pixels, want 1200 x 800", s)
	}
	ink := func(x, y float64) bool {
		// Panel to pixels: the lower left corner lies at 10, 70 of the page.
		r, g, b, _ := img.At(int((10+x)*10), int((70-y)*10)).RGBA()
		return r+g+b < 3*0xC000
	}
	for _, c := range []struct {
		x, y float64
		want bool
	}{
		{50, 0, true}, {100, 30, true}, {0, 30, true}, {50, 60, true}, // the four sides
		{90, 45, true}, {80, 55, true}, {70, 45, true}, {80, 35, true}, // the bore
		{10, 15, true}, {20, 25, true}, {27.07, 22.07, true}, {12.93, 7.93, true}, // the arc
		{20, 45, false}, {10, 45, false}, {20, 55, false}, // where the bore would be, mirrored
		{27.07, 7.93, false}, // the quarter that the arc leaves out
		{50, 30, false}, {80, 45, false}, {50, 58, false}, {95, 30, false},
	} {
		if got := ink(c.x, c.y); got != c.want {
			t.Errorf("at %v, %v ink %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

// Others' programs take the whole sheets too.
func TestOutsideSheets(t *testing.T) {
	for i, plan := range sample.Plans(t) {
		b := mustWrite(t, plan, "", Options{})
		p := parse(t, b)
		img, err := png.DecodeConfig(bytes.NewReader(outside.Paint(t, outside.File(t, fmt.Sprintf("%d.svg", i), b), "25.4")))
		if err != nil {
			t.Fatal(err)
		}
		// One dot a millimetre, a broken one rounded up or down.
		if math.Abs(float64(img.Width)-p.w) >= 1 || math.Abs(float64(img.Height)-p.h) >= 1 {
			t.Errorf("%s: %d x %d dots, want %v x %v", plan.Name(), img.Width, img.Height, p.w, p.h)
		}
	}
}
