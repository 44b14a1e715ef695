package render

import (
	"bytes"
	"errors"
	"fmt"
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

func TestPlanPage(t *testing.T) {
	text := page(t, pent())
	for _, want := range []string{
		"# orchard pent\n",
		// 286.4228: geometry-2.md, section 4.
		"- Outside: 149.2 wide, 149.2 deep, 286.4228 high, diagonals 211.0007 and 211.0007\n",
		"### 3. left, right\n\n2 equal parts: make them from one drawing.\n",
		"- Cut to 274.5 × 149.5, along the grain first (exact 274.6 × 149.2), 14.6 thick.\n",
		"meets roof in a butt; bevel 12°, gauge 3.1033, the machined face is the longer.\n",
		"- Hole 32 through, 220.5 up, centred (entrance).\n",
		"| front | right | rebate | 90° | 240 | 0 | 0 |",
		"- entrance front (feature): 11742.0167 mm³ at 0, -67.3, 186\n", // pi 16^2 14.6
		"## Findings\n", "let the rules of your place decide",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	plan := resolve(t, pent())
	for _, p := range plan.Pieces() {
		for _, s := range plan.Explain(p.Part) {
			if !strings.Contains(text, bom.Escape(s)) {
				t.Errorf("%s: not explained: %s", p.Part, s)
			}
		}
	}
}

func TestSteps(t *testing.T) {
	ring := pent()
	ring.Roof, ring.Walls, ring.Corners = box.NoRoof{}, nil, box.Corners{Laps: box.Pinwheel}
	mitred := ring
	mitred.Corners = box.Corners{Joint: joints.Mitre{}}
	under := pent()
	under.Walls, under.Floor = nil, box.FloorUnder{}
	gable := pent()
	gable.Walls, gable.Roof = nil, box.Gable{}
	for name, tt := range map[string]struct {
		d    box.Design
		want string
	}{
		// The back laps over the roof and comes last.
		"pent":   {pent(), "[floor] [left] [right] [front] [roof] [back]"},
		"ring":   {ring, "[floor] [front back left right]"},
		"mitred": {mitred, "[floor] [front back left right]"},
		"under":  {under, "[left] [right] [front] [back] [floor] [roof]"},
		"gable":  {gable, "[floor] [left] [right] [front] [back] [roof/left] [roof/right]"},
	} {
		p := resolve(t, tt.d)
		var got []string
		for _, s := range steps(p.Pieces(), p.Seams()) {
			got = append(got, fmt.Sprint(s.parts))
		}
		if g := strings.Join(got, " "); g != tt.want {
			t.Errorf("%s: %s, want %s", name, g, tt.want)
		}
	}
}

// A part is added when all that it laps over is in place, and none is lost.
func TestStepsKeepTheOrder(t *testing.T) {
	for _, corners := range []box.Laps{box.FrontBack, box.Sides} {
		d := pent()
		d.Walls = nil
		d.Corners.Laps = corners
		p := resolve(t, d)
		at, n := map[box.Part]int{}, 0
		for i, s := range steps(p.Pieces(), p.Seams()) {
			for _, q := range s.parts {
				at[q] = i
				n++
			}
		}
		if n != len(p.Pieces()) {
			t.Errorf("%d parts placed of %d", n, len(p.Pieces()))
		}
		for _, s := range p.Seams() {
			if at[s.Over] <= at[s.Under] {
				t.Errorf("%s laps over %s but is added in step %d, not after %d", s.Over, s.Under, at[s.Over], at[s.Under])
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
