package svg

import (
	"bytes"
	"math"
	"regexp"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
)

// The strokes of an engraving stand open on a layer of their own, with the
// depth, and have their length: an arc of bulge 0.5 over 60 (a sweep of 4 atan 0.5,
// radius 37.5) and a line of 10 in one path, and a line by itself.
func TestStrokes(t *testing.T) {
	plan, err := box.Design{Name: "marked", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 150, Depth: 120, Height: 240},
		Roof: box.Flat{}, Floor: box.FloorBetween{},
		Features: []box.Feature{box.Engrave{On: box.Back, At: box.Anchor{Up: 100}, Width: 4, Tool: box.Tool{VAngle: 90}, Lines: []outline.Path{
			{{X: -30, Y: 60, Bulge: 0.5}, {X: 30, Y: 60}, {X: 30, Y: 70}}, outline.Line(outline.Point{X: -20}, outline.Point{X: 20})}}},
	}.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := WritePart(&b, plan, box.Back, Options{}); err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(b.String(), `data-layer="engrave_2.0" data-depth="2"`)
	if !ok {
		t.Fatalf("no layer of engraving in\n%s", b.String())
	}
	group, _, _ := strings.Cut(rest, "</g>")
	d := regexp.MustCompile(`<path d="([^"]*)"`).FindAllStringSubmatch(group, -1)
	if len(d) != 1 || strings.Contains(d[0][1], "Z") || strings.Count(group, "<line ") != 1 {
		t.Fatalf("want an open path and a line:\n%s", group)
	}
	// The reader of the package closes paths: less the way back, hypot(60, 10).
	got := picture{}.path(t, d[0][1]+" Z").Length() - math.Hypot(60, 10)
	if want := 4*math.Atan(0.5)*37.5 + 10; math.Abs(got-want) > 1e-3 {
		t.Errorf("length %v, want %v", got, want)
	}
	if !strings.Contains(group, "lines 4.0 wide with a V-cutter of 90°") {
		t.Errorf("no words for the cutter:\n%s", group)
	}
}
