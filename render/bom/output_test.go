package bom

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
)

// hostile are names that mean harm to some reader.
var hostile = []string{
	"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1", "a\"b", "a,b;=1", "a|b", "`rm`", "<script>alert(1)</script>", "a\nb", "\\",
	"[x](http://example.com)", "**bold**", "_a_", "# no", "1. no", "&lt;", "\x00", "\xff\xfe", "\u202eabc", "", "![x](y)", "www.example.com", "a@b.example",
	"{{x}}", "'", "$x$", "~~x~~", "a\u2028b",
}

// full is a list with a bit of everything, every name being the given one.
func fullList(name string) List {
	s := handBox{w: 120, d: 130, h: 200, t: evenly(14.6), corners: mitre, floor: true, roof: true, over: 10, density: 500}.source()
	s.name = name
	for i := range s.pieces {
		p := &s.pieces[i]
		p.Board.Material = name
		p.Board.Thickness = 15
		p.Panel.Edges[0].Why, p.Panel.Edges[1].Joint = name, name
		p.Panel.Ops = []box.Op{
			{Kind: box.OpBore, Use: box.Use(name), Side: box.SideThrough, To: 14.6, Region: outline.Region{outline.Circle(outline.Point{Y: 100}, 32)}, Source: name},
			{Kind: box.OpRebate, Side: box.SideMachined, To: 7, Guest: box.FreePart(name), Tilt: []box.Deg{1, 0, 0, 0}, Region: outline.Region{outline.Rectangle(-60, 0, 60, 10)}, Bottom: outline.Region{outline.Rectangle(-60, 0, 60, 9)}},
		}
		p.Home.O.X += 1.0 / 3
	}
	free := s.pieces[0]
	free.Part, free.Mass, free.Board = box.FreePart(name), 0, box.Board{Thickness: 9, Least: 8.8, Most: 9.2}
	free.Panel.Grain = [2]float64{}
	free.Panel.SecondFace = true
	s.pieces = append(s.pieces, free)
	s.groups = append(s.groups, box.Group{Number: len(s.groups) + 1, Parts: []box.Part{free.Part}, Mirror: 1})
	s.groups[0].Mirror = len(s.groups)
	s.voids = []box.Void{{Owner: name, Kind: name, Volume: 1.00004, At: box.Place{X: -0.00001}}}
	s.findings = []box.Finding{{Code: "steep-bevel", Severity: box.Warning, Part: box.FreePart(name), Got: 50, Lo: math.Inf(-1), Hi: math.NaN(), Why: name, Sources: []string{name}}}
	s.diag = box.Diagonals{Outside: [2]box.MM{211, 211}, Inside: [2]box.MM{170, 170}}
	s.inside = Size{120, 130, 200}
	s.outside = Size{149.2, 159.2, 214.6}
	s.explain = func(box.Part) []string { return []string{name} }
	return s.list(Options{})
}

func TestCSVReadsBackTheSameNumbers(t *testing.T) {
	for _, name := range append([]string{"plain"}, hostile...) {
		l := fullList(name)
		var b bytes.Buffer
		if err := l.writeCSV(&b); err != nil {
			t.Fatal(err)
		}
		if n, crlf := strings.Count(b.String(), "\n"), strings.Count(b.String(), "\r\n"); n != crlf || n != len(l.Items)+1 {
			t.Errorf("%q: %d lines, %d of them end in CRLF, want %d", name, n, crlf, len(l.Items)+1)
		}
		rows, err := csv.NewReader(&b).ReadAll()
		if err != nil {
			t.Fatalf("%q: %v", name, err)
		}
		col := map[string]int{}
		for i, h := range rows[0] {
			col[h] = i
		}
		if len(col) != len(csvColumns) {
			t.Fatalf("columns %q are not distinct", rows[0])
		}
		for i, it := range l.Items {
			row := rows[i+1]
			for h, want := range map[string]float64{
				"item": float64(it.Number), "quantity": float64(it.Quantity), "nominal_mm": float64(it.Nominal), "thickness_mm": float64(it.Thickness),
				"least_mm": float64(it.Least), "most_mm": float64(it.Most), "length_mm": float64(it.Length), "width_mm": float64(it.Width),
				"cut_length_mm": float64(it.CutLength), "cut_width_mm": float64(it.CutWidth), "volume_mm3": it.Volume, "mass_kg": it.Mass, "mirror_of": float64(it.MirrorOf),
			} {
				text := row[col[h]]
				if text == "" && want == 0 && (h == "mass_kg" || h == "mirror_of") {
					continue
				}
				// Half a unit of the fourth decimal.
				if got, err := strconv.ParseFloat(text, 64); err != nil || !(math.Abs(got-want) <= 0.00005) {
					t.Errorf("%q, item %d: %s is %q, want %v", name, it.Number, h, text, want)
				}
			}
			for h, text := range row {
				if strings.ContainsAny(text, "\x00\t\r\n") {
					t.Errorf("%q: column %s holds a control character: %q", name, rows[0][h], text)
				}
				if _, err := strconv.ParseFloat(text, 64); err == nil && text != "" && strings.HasSuffix(rows[0][h], "_mm") {
					continue
				}
				if u := strings.TrimSpace(text); u != "" && strings.ContainsRune("=+-@＝", []rune(u)[0]) {
					t.Errorf("%q: column %s is a formula: %q", name, rows[0][h], text)
				}
			}
		}
		// A name that is harmless stays what it is.
		if got := rows[1][col["material"]]; name == "a,b;=1" && got != name || name == "=1+1" && got != "'=1+1" {
			t.Errorf("material %q became %q", name, got)
		}
	}
}

// Text cells are quoted even where RFC 4180 does not ask for it: a reader that
// takes semicolons for separators then finds no formula behind one.
func TestCSVQuotesText(t *testing.T) {
	var b bytes.Buffer
	if err := fullList("a;=1").writeCSV(&b); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), `,"a;=1",15,14.6,`) {
		t.Errorf("the material is not quoted:\n%s", b.String())
	}
}

func TestMarkdownKeepsItsTables(t *testing.T) {
	plainList := fullList("plain").markdown()
	for _, name := range hostile {
		text := fullList(name).markdown()
		if a, b := strings.Count(text, "\n"), strings.Count(plainList, "\n"); a != b {
			t.Errorf("%q: %d lines, want %d", name, a, b)
			continue
		}
		want := strings.Split(plainList, "\n")
		for i, line := range strings.Split(text, "\n") {
			if a, b := bars(line), bars(want[i]); a != b {
				t.Errorf("%q: %d cells in %q, want %d", name, a, line, b)
			}
			if strings.ContainsAny(line, "<\x00\r\t") || strings.Contains(line, "`") && !strings.Contains(line, "\\`") {
				t.Errorf("%q: %q", name, line)
			}
		}
	}
}

// bars counts the bars of a line that are not escaped.
func bars(s string) int {
	n := 0
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case '\\':
			i++
		case '|':
			n++
		}
	}
	return n
}

func TestEscape(t *testing.T) {
	for in, want := range map[string]string{
		"front":                     "front",
		"roof/left":                 "roof/left",
		"12.5 - 3":                  "12.5 - 3",
		"a|b":                       `a\|b`,
		"`x`":                       "\\`x\\`",
		"<b>&amp;</b>":              "&lt;b&gt;&amp;amp;&lt;/b&gt;",
		"[x](http://a.example)":     `\[x\](http\://a.example)`,
		"# one":                     `\# one`,
		"- one":                     `\- one`,
		"1. one":                    `1\. one`,
		"2) two":                    `2\) two`,
		"www.a.example":             `www\.a.example`,
		"a@b.example":               `a\@b.example`,
		" two\r\nlines ":            "two  lines",
		"Größe 3 × 4":               "Größe 3 × 4",
		"\u202etxt.exe\u2066 \xff!": "txt.exe  \ufffd!",
	} {
		if got := Escape(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

// full writes the box's totals: worked out here part by part.
func TestTotals(t *testing.T) {
	s := handBox{w: 100, d: 120, h: 200, t: evenly(10), floor: true, density: 500}.source()
	s.pieces[4].Board.Material, s.pieces[4].Board.Density, s.pieces[4].Mass = "ply", 0, 0
	got := s.list(Options{}).Totals
	// Front and back 120 x 210, sides 120 x 210, floor 100 x 120, all 10 thick.
	wall, floor := 4*120*210.0, 100*120.0
	if got.Parts != 5 || got.Known != 4 || got.Volume != 10*(wall+floor) || math.Abs(got.Mass-10*wall*500/1e9) > 1e-12 {
		t.Errorf("%+v", got)
	}
	want := []BoardTotal{{"larch", 10, 10, 4, wall, 10 * wall}, {"ply", 10, 10, 1, floor, 10 * floor}}
	if len(got.Boards) != 2 || got.Boards[0] != want[0] || got.Boards[1] != want[1] {
		t.Errorf("boards %+v, want %+v", got.Boards, want)
	}
}

func TestHands(t *testing.T) {
	s := handBox{w: 100, d: 120, h: 200, t: evenly(10), floor: true}.source()
	group := func(n int, p box.Part, mirror int) box.Group {
		return box.Group{Number: n, Parts: []box.Part{p}, Mirror: mirror}
	}
	// Whatever the order of the groups, the part called left is the left one;
	// front and back are told apart by nothing but their number.
	s.groups = []box.Group{group(1, box.Right, 3), group(2, box.Front, 4), group(3, box.Left, 1), group(4, box.Back, 2), group(5, box.Floor, 0)}
	l := s.list(Options{})
	for i, want := range []struct {
		hand  Hand
		words string
	}{
		{RightHand, "right, mirror image of 3"}, {LeftHand, "left, mirror image of 4"},
		{LeftHand, "left, mirror image of 1"}, {RightHand, "right, mirror image of 2"}, {NoHand, "—"},
	} {
		if got := l.Items[i]; got.Hand != want.hand || got.handWords() != want.words {
			t.Errorf("item %d: %q, %q, want %q", i+1, got.Hand, got.handWords(), want.words)
		}
	}
	// By place: a part further to the left, whatever it is called.
	s.pieces[0].Part, s.pieces[2].Part = box.FreePart("a"), box.FreePart("b")
	s.pieces[0].Home.O.X = 30
	s.groups = []box.Group{group(1, box.FreePart("a"), 2), group(2, box.FreePart("b"), 1)}
	if l := s.list(Options{}); l.Items[0].Hand != RightHand || l.Items[1].Hand != LeftHand {
		t.Errorf("by place: %q and %q", l.Items[0].Hand, l.Items[1].Hand)
	}
}

func TestUpAndFaceEdge(t *testing.T) {
	s := handBox{w: 100, d: 120, h: 200, t: evenly(10), corners: mitre, floor: true, roof: true}.source()
	for _, tt := range []struct {
		piece    int
		up, edge string
	}{
		// Along the grain the walls have mitred edges only.
		{0, "upper edge", ""}, {1, "upper edge", ""},
		// The floor is level, its lower edge to the front; grain up: both sides
		// are square and equal, the right one comes first.
		{4, "level, lower edge to the front", "right edge"},
	} {
		p := s.pieces[tt.piece]
		names := edgeNames(p.Panel)
		if up, edge := upWords(p, names), faceEdge(p, names); up != tt.up || edge != tt.edge {
			t.Errorf("%s: up %q, face edge %q, want %q, %q", p.Part, up, edge, tt.up, tt.edge)
		}
	}
}

// failing takes n bytes, then fails.
type failing struct{ n int }

var errFull = errors.New("full")

func (f *failing) Write(p []byte) (int, error) {
	if len(p) > f.n {
		return f.n, errFull
	}
	f.n -= len(p)
	return len(p), nil
}

func TestFailingWriter(t *testing.T) {
	l := fullList("x")
	for name, write := range map[string]func(io.Writer) error{
		"csv": l.writeCSV, "json": l.writeJSON, "markdown": func(w io.Writer) error { _, err := io.WriteString(w, l.markdown()); return err },
	} {
		for _, n := range []int{0, 1, 100} {
			if err := write(&failing{n}); !errors.Is(err, errFull) {
				t.Errorf("%s after %d bytes: %v", name, n, err)
			}
		}
		if err := write(&failing{1 << 20}); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestOptionsAndNoPlan(t *testing.T) {
	for _, step := range []box.MM{-0.1, 0.001, 11, box.MM(math.NaN()), box.MM(math.Inf(1))} {
		var p box.Problem
		if err := (Options{Step: step}).Check(); !errors.As(err, &p) || p.Path != "Step" || p.Code != "range" {
			t.Errorf("step %v: %v", step, err)
		}
	}
	for _, step := range []box.MM{0, 0.01, 0.1, 0.5, 1, 10} {
		if err := (Options{Step: step}).Check(); err != nil {
			t.Errorf("step %v: %v", step, err)
		}
	}
	for _, write := range []func(io.Writer, *box.Plan, Options) error{WriteCSV, WriteJSON, WriteMarkdown} {
		if err := write(io.Discard, nil, Options{}); err == nil {
			t.Error("a missing plan is no error")
		}
	}
	if l := New(nil, Options{}); len(l.Items) != 0 {
		t.Errorf("a list of no plan: %+v", l)
	}
}

func TestSameBytes(t *testing.T) {
	write := func() string {
		l := fullList("x")
		var b bytes.Buffer
		if err := errors.Join(l.writeCSV(&b), l.writeJSON(&b)); err != nil {
			t.Fatal(err)
		}
		return b.String() + l.markdown()
	}
	first := write()
	for range 5 {
		if write() != first {
			t.Fatal("the same list gives other bytes")
		}
	}
}

func TestNumbers(t *testing.T) {
	for in, want := range map[float64]string{
		0: "0", -0.00001: "0", 149.2: "149.2", 1e-9: "0", 123456789.00006: "123456789.0001", -3.5: "-3.5", 1e6: "1000000", 100: "100",
		math.Inf(1): "", math.NaN(): "",
	} {
		if got := num(in); got != want {
			t.Errorf("num(%v) = %q, want %q", in, got, want)
		}
	}
	for _, x := range []float64{0, 1.0 / 3, -1e-17, 1e20, math.Pi, math.Nextafter(1, 2), -0.5} {
		s := full(x)
		if back, err := strconv.ParseFloat(s, 64); err != nil || back != x || strings.ContainsAny(s, "eE") {
			t.Errorf("full(%v) = %q", x, s)
		}
	}
	if s := full(math.Copysign(0, -1)); s != "0" {
		t.Errorf("full(-0) = %q", s)
	}
}
