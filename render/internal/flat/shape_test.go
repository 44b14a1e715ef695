package flat

import (
	"math"
	"testing"

	"holt.example/box/outline"
)

// Arcs through known points: from (r, 0) to (r cos s, r sin s) about the
// origin the bulge is tan(s/4).
func TestArcOf(t *testing.T) {
	for _, deg := range []float64{1, 45, 90, 180, 270, 359, -30, -180, -300} {
		s := deg * math.Pi / 180
		p := outline.Point{X: 50}
		q := outline.Point{X: 50 * math.Cos(s), Y: 50 * math.Sin(s)}
		c, r := ArcOf(p, q, math.Tan(s/4))
		// The chord of one degree is 0.87 long and known to 1e-14: 50/0.87 times
		// that is far below 1e-9.
		if math.Hypot(c.X, c.Y) > 1e-9 || math.Abs(r-50) > 1e-9 {
			t.Errorf("%v degrees: centre %v, radius %v", deg, c, r)
		}
	}
}

func TestOnGrid(t *testing.T) {
	for _, c := range []struct {
		what     string
		in, want outline.Contour
	}{
		{"corners on the grid", outline.Contour{{X: 1.00004}, {X: 2.00006}, {X: 2, Y: 3}}, outline.Contour{{X: 1}, {X: 2.0001}, {X: 2, Y: 3}}},
		{"two that fall together", outline.Contour{{X: 1}, {X: 5}, {X: 5.00001, Bulge: 0.5}, {X: 5, Y: 3}}, outline.Contour{{X: 1}, {X: 5, Bulge: 0.5}, {X: 5, Y: 3}}},
		{"last and first", outline.Contour{{X: 1, Bulge: 0.5}, {X: 5}, {X: 5, Y: 3, Bulge: 0.25}, {X: 1.00001, Bulge: 0.7}}, outline.Contour{{X: 1, Bulge: 0.5}, {X: 5}, {X: 5, Y: 3, Bulge: 0.25}}},
	} {
		got := onGrid(c.in)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v, want %v", c.what, got, c.want)
			}
		}
	}
	if _, ok := closed(Layer{}, outline.Contour{{X: 1}, {X: 1.00001}, {X: 1.00002}}, ""); ok {
		t.Error("a contour that is a point on the grid is drawn")
	}
}

// The name of a line does not depend on where it starts or which way it runs.
func TestSameLine(t *testing.T) {
	c := outline.Contour{{X: -20, Y: -15, Bulge: 0.3}, {X: 22, Y: -10}, {X: 18, Y: 12, Bulge: -0.2}, {X: -12, Y: 14, Bulge: 0.9}}
	want := Item{Shape: Closed, Contour: c}.sameLine()
	for s := range c {
		d := append(append(outline.Contour(nil), c[s:]...), c[:s]...)
		for _, e := range []outline.Contour{d, d.Reverse()} {
			if got := (Item{Shape: Closed, Contour: e}).sameLine(); got != want {
				t.Errorf("from corner %d: %q, want %q", s, got, want)
			}
		}
	}
	d := append(outline.Contour(nil), c...)
	d[2].Bulge = -0.21
	if (Item{Shape: Closed, Contour: d}).sameLine() == want {
		t.Error("another arc is the same line")
	}
}
