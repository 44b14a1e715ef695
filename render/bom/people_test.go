package bom

import (
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// A size to cut to says why it is not the exact one if, and only if, more than
// half a step lies between them, and by how much and which way.
func TestCutSizesSayWhy(t *testing.T) {
	said := 0
	for name, d := range designs() {
		for _, step := range []box.MM{0.1, 0.5, 2} {
			l := New(resolve(t, d), Options{Step: step})
			for _, it := range l.Items {
				for _, c := range []struct {
					cut, exact box.MM
					why        string
				}{{it.CutLength, it.Length, it.LengthWhy}, {it.CutWidth, it.Width, it.WidthWhy}} {
					by := float64(c.cut - c.exact)
					if (c.why != "") != (math.Abs(by) > float64(step)/2+near) {
						t.Errorf("%s, step %v: %v: %v is cut to %v: %q", name, step, it.Parts, c.exact, c.cut, c.why)
					}
					if c.why == "" {
						continue
					}
					said++
					word := " more: "
					if by < 0 {
						word = " less: "
					}
					if want := num(nearest(math.Abs(by), 0.01)) + word; !strings.HasPrefix(c.why, want) || len(c.why) < len(want)+10 {
						t.Errorf("%s, step %v: %v: %q, want %q and a reason", name, step, it.Parts, c.why, want)
					}
				}
			}
		}
	}
	if said < 20 {
		t.Errorf("only %d reasons were looked at", said)
	}

	// Half a millimetre, by hand: the back is 435.033 long and free at its ends,
	// 149.2 wide and laps over the sides.
	l := New(resolve(t, pent()), Options{Step: 0.5})
	want := "length 0.47 more, width 0.3 more: nothing stops it here, so it was rounded up"
	if got := l.Items[itemOf(l, box.Back)].CutWhy(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	// The sides enter rebates and end under the roof: 301.59 down to 301.5, no
	// more than half a step.
	if got := l.Items[itemOf(l, box.Left)].CutWhy(); got != "" {
		t.Errorf("sides: %q", got)
	}
	// The floor of 120.3 goes between walls whose sides, 120.3 + 2 x 7, became
	// 134.
	d := pent()
	d.Size = box.Cavity{Width: 120, Depth: 120.3, Height: 240}
	l = New(resolve(t, d), Options{Step: 0.5})
	if got, want := l.Items[itemOf(l, box.Floor)].CutWhy(), "width 0.3 less: so that it goes between its neighbours"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	// A name or a word for every reason that there is.
	if head := l.Rule(); !strings.Contains(head, "rounded to 0.5") || !strings.Contains(head, "exact sizes") {
		t.Errorf("the head says %q", head)
	}
}

// A housing 6 deep for a guest of 14.6 is cut with 0.2 play each way.
func TestPlayIsSaid(t *testing.T) {
	d := pent()
	d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 6}}
	l := New(resolve(t, d), Options{})
	want := "housing 6.2 deep (6 + 0.2 play), 14.8 wide (14.6 + 0.2 play), lower side 19.8 up, for floor"
	jobs := l.Items[itemOf(l, box.Front)].Jobs()
	if len(jobs) < 3 || jobs[2] != want {
		t.Errorf("%q, want %q", jobs, want)
	}
	d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 6, Tight: true}}
	l = New(resolve(t, d), Options{})
	if jobs := l.Items[itemOf(l, box.Front)].Jobs(); len(jobs) < 3 || strings.Contains(jobs[2], "play") {
		t.Errorf("without play: %q", jobs)
	}
}

func TestOwnersAreNotAmbiguous(t *testing.T) {
	l := List{Items: []Item{{Parts: []box.Part{"front", "front/2", "inner/wall", "wall/1"}}, {Parts: []box.Part{"wall/2", "floor"}}}}
	for in, want := range map[string]string{
		"front/floor":          "front – floor",
		"front/inner/wall":     "front – inner/wall",
		"wall/1/wall/2":        "wall/1 – wall/2",
		"front/2/floor":        "front/2 – floor",
		"front/front/2/floor":  "front – front/2 – floor",
		"front/2":              "front/2", // a part, not two
		"entrance front":       "entrance front",
		"front/somewhere else": "front/somewhere else",
		"":                     "",
	} {
		if got := l.Owner(box.Void{Owner: in}); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

// The rim of a free part, its lengths from geometry: straight sides of 80, a
// quarter of radius 80 (40 pi = 125.66), a half round of radius 10 cut in (10
// pi = 31.42).
func TestRim(t *testing.T) {
	quarter := math.Sqrt2 - 1 // tan 22.5
	bracket := outline.Contour{{X: 0, Y: 0}, {X: 80, Y: 0, Bulge: quarter}, {X: 0, Y: 80}, {X: 0, Y: 50, Bulge: -1}, {X: 0, Y: 30}}
	type row struct {
		name, words string
		length      float64
	}
	check := func(got []Side, want []row) {
		t.Helper()
		if len(got) != len(want) {
			t.Fatalf("%+v, want %+v", got, want)
		}
		for i, w := range want {
			if g := got[i]; g.Name != w.name || g.Words() != w.words || math.Abs(float64(g.Length)-w.length) > 1e-9 {
				t.Errorf("%+v (%s), want %+v", g, g.Words(), w)
			}
		}
	}
	check(rim(outline.Region{bracket}), []row{
		{"lower", "straight", 80}, {"upper right", "an arc of radius 80", 40 * math.Pi},
		{"left", "straight", 30}, {"left 2", "a hollow arc of radius 10", 10 * math.Pi}, {"left 3", "straight", 30},
	})
	check(rim(outline.Region{outline.Circle(outline.Point{X: 5}, 50)}), []row{{allRound, "a circle of radius 25", 50 * math.Pi}})

	d := pent()
	d.Free = []box.Free{{Name: "bracket", Outline: bracket, At: box.Place{X: 400}}}
	plan := resolve(t, d)
	l := New(plan, Options{})
	for _, it := range l.Items {
		free := slices.Contains(it.Parts, box.FreePart("bracket"))
		if free != (len(it.Rim) == 5) || free != (len(it.Edges) == 0) {
			t.Errorf("%v: %d sides, %d edges", it.Parts, len(it.Rim), len(it.Edges))
		}
	}
	// Its inner face is machined, so it is seen from behind.
	if text := l.markdown(); !strings.Contains(text, "| upper left, an arc of radius 80 | 125.7 | free |") {
		t.Errorf("no arc in\n%s", text)
	}
	// It lies 400 to the side and is not counted.
	if l.Overall.Width > 200 || l.Whole() != "the box without its free parts" {
		t.Errorf("%v, %s", l.Overall, l.Whole())
	}
}

// The roof is 120 + 2 (14.6 + 20) wide and runs on by 40 before walls that are
// 149.2 apart; the back holds the highest point and the lowest.
func TestOverall(t *testing.T) {
	l := New(resolve(t, pent()), Options{})
	want := Size{189.2, 189.2, l.Items[itemOf(l, box.Back)].Length}
	for i, x := range [3]box.MM{l.Overall.Width - want.Width, l.Overall.Depth - want.Depth, l.Overall.Height - want.Height} {
		if math.Abs(float64(x)) > 2e-4 { // two welds
			t.Errorf("overall %v, want %v (%d)", l.Overall, want, i)
		}
	}
	if l.Rise() != "eaves" || l.Whole() != "the whole box" {
		t.Errorf("%q, %q", l.Rise(), l.Whole())
	}
	d := pent()
	d.Roof, d.Walls, d.Features = box.NoRoof{}, nil, nil
	if l := New(resolve(t, d), Options{}); l.Rise() != "upper edge" || math.Abs(float64(l.Overall.Height-274.6)) > 2e-4 {
		t.Errorf("without a roof: %q, %v", l.Rise(), l.Overall)
	}
}

// No figure for people has more than three decimals: kg and m² have those.
func TestFiguresForPeople(t *testing.T) {
	for name, d := range designs() {
		text := New(resolve(t, d), Options{}).markdown()
		run := 0
		for i := range text {
			switch c := text[i]; {
			case c == '.' && run == 0:
				run = 1
			case c >= '0' && c <= '9' && run > 0:
				if run++; run > 4 {
					t.Fatalf("%s: %q", name, text[max(0, i-20):i+1])
				}
			default:
				run = 0
			}
		}
	}
}

func TestSummaryOfWildNames(t *testing.T) {
	for _, name := range hostile {
		text := fullList(name).summary()
		for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
			if strings.ContainsAny(line, "\x00\r\t\u202e\u2028") || line != strings.TrimRight(line, " ") {
				t.Errorf("%q: %q", name, line)
			}
		}
	}
	if err := WriteSummary(io.Discard, nil); err == nil {
		t.Error("a missing plan is no error")
	}
	if err := WriteSummary(&failing{10}, resolve(t, pent())); err != errFull {
		t.Errorf("a full disk: %v", err)
	}
}
