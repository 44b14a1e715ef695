package render

import (
	"bytes"
	"errors"
	"io"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
	"holt.example/render/bom"
)

func page(t *testing.T, d box.Design) string {
	t.Helper()
	var b bytes.Buffer
	if err := WritePlan(&b, resolve(t, d), bom.Options{Step: 0.5}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestPlanRefusesWhatListsRefuse: a density that is none fails the page, as it does
// the parts list, and nothing is written.
func TestPlanRefusesWhatListsRefuse(t *testing.T) {
	var b bytes.Buffer
	d := pent()
	d.Board.Material = "lead"
	o := bom.Options{Bill: &bom.Terms{Density: func(string) (float64, bool) { return -1, true }}}
	err := WritePlan(&b, resolve(t, d), o)
	var p box.Problem
	if !errors.As(err, &p) || p.Path != "Bill.Density" || b.Len() > 0 {
		t.Errorf("%v, and %d bytes", err, b.Len())
	}
}

func TestPlanPage(t *testing.T) {
	text := page(t, pent())
	for _, want := range []string{
		"# orchard pent\n",
		// 286.4228: geometry-2.md, section 4.
		"- Outside, the walls: 149.2 wide, 149.2 deep, 286.4 high to the eaves, diagonals 211 and 211\n",
		// The roof is 149.2 + 2 x 20 wide and runs on by 40 in front; the back is
		// 435.03 long and holds the highest point and the lowest.
		"- Overall, the whole box: 189.2 wide, 189.2 deep, 435 high\n",
		"what goes between or into other parts down",
		"- right is the same, with back at its right edge, roof at its upper edge, front at its left edge and floor at its lower edge.\n",
		"### 3. left, right\n\n2 equal parts: make them from one drawing.\n",
		"- Cut to 274.5 × 149.5, along the grain first, 14.6 thick. Exact: 274.6 × 149.2; width 0.3 more: nothing stops it here, so it was rounded up.\n",
		"- Cut to 301.5 × 134, along the grain first, 14.6 thick.\n", // exact 301.59: less than half a step from it
		"meets roof in a butt joint; bevel 12°, gauge 3.1, the machined face is the longer.\n",
		"- Hole 32 through, 220.5 up, centred (entrance).\n",
		"| front | right | rebate | 90° | 240 | 0 | 0 |",
		"- entrance front (feature): 11742 mm³ at 0, -67.3, 186\n", // pi 16^2 14.6
		"## Findings\n", "let the rules of your place decide",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	plan := resolve(t, pent())
	for _, p := range plan.Pieces() {
		for _, s := range plan.Explain(p.Part) {
			if p.Part == box.Right {
				continue // like left
			}
			if !strings.Contains(text, bom.Escape(s)) {
				t.Errorf("%s: not explained: %s", p.Part, s)
			}
		}
	}
}

// section is a part of the page, from its heading to the next.
func section(t *testing.T, text, heading string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, "\n## "+heading+"\n\n")
	if !ok {
		t.Fatalf("no %q in\n%s", heading, text)
	}
	rest, _, _ = strings.Cut(rest, "\n## ")
	return rest
}

func TestAssembly(t *testing.T) {
	d := pent()
	d.Walls, d.Features = nil, nil
	d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Dry: true}}
	// Outside 120 + 2 x 14.6 = 149.2 each way: sqrt 2 x 149.2 = 211.0007.
	want := `Each part goes home by one straight move. Left, right, front and back are those of the box, seen from the front.

1. Put it together dry, in this order, and mark on every part which side is inside and which is up.
2. Begin with floor.
3. Add left, moving it to the right; it meets floor (housing, dry).
4. Add right, moving it to the left; it meets floor (housing, dry).
5. Add front, moving it to the back; it meets right and left (rebate, glue and nail through the lip of front), floor (housing, dry).
6. Add back, moving it to the front; it meets right and left (rebate, glue and nail through the lip of back), floor (housing, dry). Check that it is square: over the walls' lower edge all diagonals read 211 (front – right to back – left, right – back to left – front).
7. Add roof, moving it down and a little to the back, square to its face; it meets front, right, back and left (butt, screw through roof into the end of each, no glue).
8. Measure the diagonals again before the glue sets or the last screws are tight.
`
	if got := section(t, page(t, d), "Putting it together"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// stopped is a housing at a corner that runs out at neither end.
type stopped struct{ joints.Housing }

func (j stopped) Section(c joints.Corner) (joints.Section, error) {
	c.RunOn += 15
	return j.Housing.Section(c)
}

func TestAssemblyOfGroups(t *testing.T) {
	d := pent()
	d.Walls, d.Features, d.Roof, d.Floor = nil, nil, box.NoRoof{}, box.NoFloor{}
	d.Corners = box.Corners{Laps: box.Pinwheel, Joint: stopped{joints.Housing{Stop: 20}}}
	got := section(t, page(t, d), "Putting it together")
	for _, want := range []string{"\n4. Put aside what is done. Begin with back.\n",
		"\n6. Join back and right as one piece to front and left, moving them to the front; it meets front with right and back with left (housing, glue). Check"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Stop: 15}}
	got = section(t, page(t, d), "Putting it together")
	if want := "**front, back, left, right and floor hold one another:** no straight move"; !strings.HasPrefix(got, want) {
		t.Errorf("no %q in\n%s", want, got)
	}
}

// Test pieces are written like any box: a drawing for each group, and each
// sample put together by itself.
func TestFilesOfTestPieces(t *testing.T) {
	plan, err := pent().TestPieces()
	if err != nil {
		t.Fatal(err)
	}
	files, err := Files(plan, small())
	if err != nil {
		t.Fatal(err)
	}
	if want := 11 + 3*len(plan.Pieces()); len(files) != want {
		t.Errorf("%d files, want %d", len(files), want)
	}
	for _, f := range files {
		if f.Name == "plan.md" {
			got := section(t, string(f.Data), "Putting it together")
			if n := strings.Count(got, "Put aside what is done. Begin with"); n != len(plan.Seams())-1 {
				t.Errorf("%d samples after the first, want %d", n, len(plan.Seams())-1)
			}
		}
	}
}

func TestHostileNames(t *testing.T) {
	d := pent()
	d.Name = "<script>alert(1)</script>|`x`]]>&amp;"
	d.Board.Material = "=cmd|'/c calc'!A0 [x](http://a.example)"
	name := "a|b<i>\"CON\"../`x`"
	d.Free = []box.Free{{Name: name, Outline: outline.Rectangle(0, 0, 30, 20), At: box.Place{X: 300}}}
	plan := resolve(t, d)
	files, err := Files(plan, small())
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text := string(f.Data)
		switch {
		case strings.HasSuffix(f.Name, ".md"), strings.HasSuffix(f.Name, ".svg"):
			if strings.Contains(text, "<script") || strings.Contains(text, "<i>") {
				t.Errorf("%s lets markup through", f.Name)
			}
		case strings.HasSuffix(f.Name, ".csv"):
			if strings.Contains(text, ",=cmd") || strings.Contains(text, `"=cmd`) {
				t.Errorf("%s lets a formula through", f.Name)
			}
		}
		if !filepath.IsLocal(f.Name) || strings.ContainsAny(f.Name, "|<>\"`") {
			t.Errorf("file name %q", f.Name)
		}
	}
}

// full refuses all that is written to it.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errBroken }

func TestWritePlanFails(t *testing.T) {
	plan := resolve(t, pent())
	if err := WritePlan(full{}, plan, bom.Options{}); !errors.Is(err, errBroken) {
		t.Errorf("a full disk: %v", err)
	}
	if err := WritePlan(io.Discard, nil, bom.Options{}); err == nil {
		t.Error("no plan")
	}
	if err := WritePlan(io.Discard, plan, bom.Options{Step: box.MM(math.NaN())}); err == nil {
		t.Error("a step that is no number")
	}
}

// What equal parts do not share is said of each, and a name is only taken for
// a name where it stands by itself.
func TestBareSentences(t *testing.T) {
	names := []string{"wall/1", "wall/12", "roof", "roof/1", "left", "right", "back", "front"}
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"At wall/1 (mitre) it ends.", "At wall/12 (mitre) it ends.", true},
		{"At wall/1 (mitre) it ends.", "At wall/2 (mitre) it ends.", false}, // no part of this plan
		{"At roof (butt): 14 added.", "At roof/1 (butt): 14 added.", true},
		{"At roof (butt): 14 added.", "At roof/1 (butt): 15 added.", false},
		{"left is 15.2 narrower: back takes 7.6, front takes 7.6.", "right is 15.2 narrower: front takes 7.6, back takes 7.6.", true},
		{"left is 20.7 narrower: back takes 11.4, front takes 9.3.", "right is 20.7 narrower: front takes 9.3, back takes 11.4.", true},
		{"the leftmost", "the rightmost", false},
	} {
		if got := bare(c.a, names) == bare(c.b, names); got != c.same {
			t.Errorf("%q and %q: %v, want %v", c.a, c.b, got, c.same)
		}
	}
}

// A made-up part is put together in a step of its own, and is one part after it.
func TestAssemblyOfStrips(t *testing.T) {
	d := pent()
	d.MadeUp = []box.MadeUp{{Of: box.AllWalls, Joint: box.TongueGroove{Tongue: 5}, Width: 70}, {Of: box.Floor, Width: 70}}
	text := string(page(t, d))
	for _, want := range []string{
		"Make up front from front/1, front/2 and front/3; it meets front/1 with front/2 and front/2 with front/3 (tongue and groove, glue).",
		"Make up floor from floor/1 and floor/2; it meets floor/1 with floor/2 (edge-glued, glue).",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, section(t, text, "Putting it together"))
		}
	}
	for _, line := range strings.Split(section(t, text, "Putting it together"), "\n") {
		if strings.Contains(line, "Add ") && strings.Contains(line, "/1") {
			t.Errorf("a strip by itself: %s", line)
		}
	}
}

// Joints in sentences have the article and the noun that they need.
func TestPlanPageOfStrips(t *testing.T) {
	d := pent()
	d.Board.Width = 100
	d.MadeUp = []box.MadeUp{{Of: box.Front}, {Of: box.Back, Joint: box.LooseTongue{}}}
	text := page(t, d)
	for _, want := range []string{"in an edge-glued joint", "in a loose tongue joint", "in a rebate joint"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	for _, not := range []string{"in a edge", "edge-glued;", "edge-glued."} {
		if strings.Contains(text, not) {
			t.Errorf("%q in\n%s", not, text)
		}
	}
}
