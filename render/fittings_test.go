package render_test

import (
	"bytes"
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
