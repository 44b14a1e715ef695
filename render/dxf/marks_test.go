package dxf

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/render/internal/outside"
)

// marked is a box with lines on both faces, a pocketed pattern and letters.
func marked(t *testing.T) *box.Plan {
	t.Helper()
	p, err := box.Design{Name: "marked", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 150, Depth: 120, Height: 240},
		Roof: box.Flat{Over: box.Overhangs{All: 30}}, Floor: box.FloorBetween{},
		Features: []box.Feature{
			box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170},
			box.GripGrooves{},
			box.Text{On: box.Front, Text: "B 28", At: box.Anchor{Up: 120}},
			box.Pattern{On: box.Roof, Motif: box.Oval{Width: 20, Height: 12}, Repeat: box.Repeat{StepRight: 27, StepUp: 17, Brick: true}, Margin: 4, Depth: 3},
			box.Engrave{On: box.Back, At: box.Anchor{Up: 100}, Width: 4, Lines: []outline.Path{outline.Circle(outline.Point{}, 50).Path(), outline.RoundedRectangle(-40, -40, 40, 40, 9).Path(), {{X: -30, Y: 60, Bulge: 0.5}, {X: 30, Y: 60}, {X: 30, Y: 70}}}},
		}}.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// In a reader written by others every engraved stroke has its layer, its depth in
// the layer's name, its length and number; closed ones are closed. The pockets of
// the clipped pattern have their areas.
func TestOutsideMarks(t *testing.T) {
	plan := marked(t)
	want := map[string]struct {
		length, area float64
		n            int
	}{}
	slack := map[string]float64{}
	for _, p := range plan.Pieces() {
		for _, op := range p.Panel.Ops {
			if op.Kind != box.OpEngrave && op.Use != box.UseOrnament {
				continue
			}
			layer := "ENGRAVE_"
			if op.Kind == box.OpPocket {
				layer = "POCKET_"
			}
			depth := op.To - op.From
			if op.Side == box.SideFar {
				layer = "TURNED_" + layer
			}
			layer += trim(float64(depth))
			w := want[layer]
			for _, s := range op.Strokes {
				w.length += s.Length()
				w.n++
				slack[layer] += float64(len(s)) * 2e-4
			}
			for _, c := range op.Region {
				w.length += c.Length()
				w.area += c.Area()
				w.n++
				slack[layer] += gridArea(c) + float64(len(c))*2e-4
			}
			want[layer] = w
		}
	}
	if len(want) != 4 { // letters on the outer face, grooves on the inner; the back's lines; the pockets
		t.Fatalf("layers %v", want)
	}
	var files [][]byte
	for _, v := range versions {
		files = append(files, mustWrite(t, plan, "", Options{Version: v}))
	}
	for i, d := range outside.ReadDXF(t, files...) {
		if len(d.Errors)+len(d.Fixes)+len(d.Other) > 0 {
			t.Errorf("errors %q, mended %q, other entities %v", d.Errors, d.Fixes, d.Other)
		}
		seen := 0
		for layer, w := range want {
			at := d.Layers[old(layer, versions[i])]
			length, area, n := 0.0, 0.0, len(at.Contours)+len(at.Circles)+len(at.Lines)
			for _, c := range at.Contours {
				length += c.Length
				if strings.Contains(layer, "POCKET") {
					area += c.Area
					if !c.Closed {
						t.Errorf("%s: an open pocket", layer)
					}
				}
				if c.RepeatsFirst {
					t.Errorf("%s: the first corner is repeated", layer)
				}
			}
			for _, c := range at.Circles {
				length += 2 * math.Pi * c[2]
			}
			for _, l := range at.Lines {
				length += math.Hypot(l[2]-l[0], l[3]-l[1])
			}
			if n != w.n || math.Abs(length-w.length) > slack[layer] || math.Abs(area-w.area) > slack[layer] {
				t.Errorf("%s: %d strokes %v long, area %v; want %d, %v, %v within %v", layer, n, length, area, w.n, w.length, w.area, slack[layer])
			}
			seen += n
		}
		if seen < 60 {
			t.Errorf("only %d strokes and pockets", seen)
		}
	}
}

// trim writes a depth as layers do.
func trim(x float64) string {
	s := strings.TrimRight(strconv.FormatFloat(x, 'f', 4, 64), "0")
	if strings.HasSuffix(s, ".") {
		s += "0"
	}
	return s
}
