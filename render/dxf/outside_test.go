package dxf

import (
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/render/internal/flat"
	"holt.example/render/internal/outside"
	"holt.example/render/internal/sample"
)

// gridArea is how far the area of a contour on the grid may be from that of
// the contour itself: each corner moves by at most half a step in x and in y.
func gridArea(c outline.Contour) float64 { return flat.Step / 2 * math.Sqrt2 * c.Length() }

// A reader written by others finds nothing to mend in our files, and in them
// the units, layers, areas and circles that the plan has.
func TestOutsideReader(t *testing.T) {
	plans := sample.Plans(t)
	var files [][]byte
	for _, plan := range plans {
		for _, v := range versions {
			files = append(files, mustWrite(t, plan, "", Options{Version: v}))
		}
	}
	for i, sheet := range outside.ReadDXF(t, files...) {
		plan, v := plans[i/2], versions[i%2]
		clean(t, plan.Name(), sheet, v)
		area, n := 0.0, 0
		for l, at := range sheet.Layers {
			if strings.HasPrefix(l, "PROFILE") {
				for _, c := range at.Contours {
					area += c.Area
					n++
				}
			}
		}
		want, slack, wantN := 0.0, 0.0, 0
		for _, p := range plan.Pieces() {
			for _, c := range p.Panel.Machined {
				want += c.Area()
				slack += gridArea(c)
				wantN++
			}
		}
		if n != wantN || math.Abs(area-want) > slack {
			t.Errorf("%s, version %d: %d profiles of %v mm2 in all, want %d of %v within %v", plan.Name(), v, n, area, wantN, want, slack)
		}
	}
}

// clean fails unless the reader has nothing to say against a file.
func clean(t *testing.T, name string, d outside.DXF, v Version) {
	t.Helper()
	if len(d.Errors)+len(d.Fixes)+len(d.Other) > 0 {
		t.Errorf("%s: errors %q, mended %q, other entities %v", name, d.Errors, d.Fixes, d.Other)
	}
	if want := [...]string{"AC1015", "AC1009"}[v]; d.Version != want {
		t.Errorf("%s: version %s, want %s", name, d.Version, want)
	}
	if v == R2000 && (d.Units == nil || *d.Units != 4 || d.Measurement == nil || *d.Measurement != 1) {
		t.Errorf("%s: units %v, measurement %v", name, d.Units, d.Measurement)
	}
	if len(d.Min) < 2 || len(d.Max) < 2 || !(d.Min[0] < d.Max[0]) || !(d.Min[1] < d.Max[1]) {
		t.Errorf("%s: extents %v to %v", name, d.Min, d.Max)
	}
	for l, at := range d.Layers {
		things := len(at.Contours) + len(at.Circles) + len(at.Lines) + len(at.Texts)
		if at.Undeclared || l == "0" && things > 0 {
			t.Errorf("%s: layer %s: undeclared %v, %d things", name, l, at.Undeclared, things)
		}
		if things > 0 && !(at.Colour >= 1 && at.Colour <= 6) {
			t.Errorf("%s: layer %s has the colour %d", name, l, at.Colour)
		}
		for _, c := range at.Contours {
			if !c.Closed || c.RepeatsFirst || !(c.Area > 0) && !strings.HasPrefix(l, "PROFILE") {
				t.Errorf("%s: layer %s: closed %v, first corner repeated %v, area %v", name, l, c.Closed, c.RepeatsFirst, c.Area)
			}
			for _, q := range c.Vertices {
				if q[0] < d.Min[0]-1e-9 || q[0] > d.Max[0]+1e-9 || q[1] < d.Min[1]-1e-9 || q[1] > d.Max[1]+1e-9 {
					t.Errorf("%s: %v lies outside the extents", name, q)
				}
			}
		}
	}
}

// A hand-made panel, number by number: the slot of 20 x 10 with round ends has
// the area 200 + 25 pi, its bulges are half circles, the bore is a circle of
// radius 16 at 10, 180.
func TestOutsideNumbers(t *testing.T) {
	for _, v := range versions {
		fd, err := flat.Part("orchard Größe", flat.Subject{Piece: hand(), Number: 2}, flat.Options{})
		if err != nil {
			t.Fatal(err)
		}
		b, err := encode(fd, v)
		if err != nil {
			t.Fatal(err)
		}
		d := outside.ReadDXF(t, b)[0]
		clean(t, "hand", d, v)
		pocket := d.Layers[old("TURNED_POCKET_4.0", v)].Contours
		if len(pocket) != 1 || math.Abs(pocket[0].Area-200-25*math.Pi) > 1e-9 || math.Abs(pocket[0].Length-40-10*math.Pi) > 1e-9 {
			t.Errorf("the slot is %v", pocket)
		}
		if c := d.Layers[old("BORE_14.6", v)].Circles; len(c) != 1 || c[0] != [3]float64{10, 180, 16} {
			t.Errorf("the bore is %v", c)
		}
		if x := d.Layers["TEXT"].Texts; len(x) != 4 || x[2].Text != "bevel 12°, 3.1 over the thickness" || x[3].Text != "machined face longer" || x[2].Height != 2.5 {
			t.Errorf("texts %+v", x)
		}
	}
}

// The reader gets names back as they were, but for what cannot be shown.
func TestOutsideNames(t *testing.T) {
	names := []string{"Größe ø32 Łąka", "^J^ x^y", `\U+0041 a\b`, "100% oak", "12°", "日本", `"a" <b> & 'c'`, "=1+1"}
	var parts []flat.Subject
	for _, name := range names {
		p := hand()
		p.Part = box.Part(name)
		parts = append(parts, flat.Subject{Piece: p})
	}
	for _, v := range versions {
		fd, err := flat.Sheet("names", parts, flat.Options{})
		if err != nil {
			t.Fatal(err)
		}
		b, err := encode(fd, v)
		if err != nil {
			t.Fatal(err)
		}
		d := outside.ReadDXF(t, b)[0]
		clean(t, "names", d, v)
		found := map[string]bool{}
		for _, x := range d.Layers["TEXT"].Texts {
			found[x.Text] = true
		}
		for _, name := range names {
			if !found[name] {
				t.Errorf("version %d: %q is not among %v", v, name, found)
			}
		}
	}
}
