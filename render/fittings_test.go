package render_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/render"
	"holt.example/render/bom"
)

// A plan with fittings has them on its page and in a file of their own; one
// without has neither.
func TestFittingsOnThePage(t *testing.T) {
	d := box.Design{Name: "felted", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{}}
	for _, felt := range []bool{false, true} {
		if felt {
			d.Outer = []box.Outer{box.Felt{Turn: 30}}
			d.Features = []box.Feature{box.Edging{Round: 2}}
		}
		p := d.MustResolve()
		var b bytes.Buffer
		if err := render.WritePlan(&b, p, bom.Options{}); err != nil {
			t.Fatal(err)
		}
		// 180 + 2 x 30 square: 0.0576 m2.
		if got := strings.Contains(b.String(), "- 1 × roofing felt, 240.0 x 240.0 (0.058 m²), on roof: "); got != felt {
			t.Errorf("felt %v: on the page %v:\n%s", felt, got, b.String())
		}
		if got := strings.Contains(b.String(), "; round the other arris 2"); got != felt {
			t.Errorf("felt %v: arrises on the page %v", felt, got)
		}
		files, err := render.Files(p, render.Options{})
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, f := range files {
			found = found || f.Name == "fittings.csv"
		}
		if found != felt {
			t.Errorf("felt %v: fittings.csv %v", felt, found)
		}
	}
}

// TestAreasOnThePage: small things are not nothing: 60 x 10 is 6 cm2, 8 x 5 is 40
// mm2, and the full stop of a reason stands once.
func TestAreasOnThePage(t *testing.T) {
	d := box.Design{Name: "small", Board: box.Board{Thickness: 15, Material: "larch"}, Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{}, Roof: box.Flat{},
		Fittings: []box.Fitting{{What: "felt", Count: 1, Size: "60 x 10", Area: 600, Why: "a strip."}, {What: "pad", Count: 1, Size: "8 x 5", Area: 40}, {What: "sheet", Count: 1, Size: "300 x 100", Area: 30000}}}
	p := d.MustResolve()
	var b, m bytes.Buffer
	terms := &bom.Terms{Density: func(string) (float64, bool) { return 600, true }}
	if err := errors.Join(render.WritePlan(&b, p, bom.Options{Bill: terms}), bom.WriteMarkdown(&m, p, bom.Options{})); err != nil {
		t.Fatal(err)
	}
	volume := 0.0
	for _, q := range p.Pieces() {
		volume += q.Volume
	}
	for _, want := range []string{"felt, 60 x 10 (6 cm²): a strip.\n", "pad, 8 x 5 (40 mm²).\n", "sheet, 300 x 100 (0.030 m²).\n", fmt.Sprintf("- Mass: %.2f kg, without fittings\n", volume*600e-9)} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	if s := m.String(); !strings.Contains(s, "| felt | 60 x 10 | 0.0006 |") || !strings.Contains(s, "| pad | 8 x 5 | under 0.0001 |") {
		t.Errorf("%s", s)
	}
}

// TestBillInTheFolder: a bill is a file of the folder where it is asked for.
func TestBillInTheFolder(t *testing.T) {
	p := box.Design{Name: "billed", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{}, Roof: box.Flat{}}.MustResolve()
	for _, bill := range []*bom.Terms{nil, {}} {
		files, err := render.Files(p, render.Options{BOM: bom.Options{Bill: bill}})
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, f := range files {
			found = found || f.Name == "bill.csv"
		}
		if found != (bill != nil) {
			t.Errorf("bill %v: bill.csv %v", bill, found)
		}
	}
	if _, err := render.Files(p, render.Options{BOM: bom.Options{Bill: &bom.Terms{Waste: -1}}}); err == nil {
		t.Error("a waste below nothing passes")
	}
}
