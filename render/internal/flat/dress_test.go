package flat

import (
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
)

// Round a twelve-sided face the bevels stand along their edges, inside the
// face and clear of the line of the far face, and none is upside down.
func TestBevelsStandInside(t *testing.T) {
	const side = 80.0
	r := side / 2 / math.Sin(math.Pi/12)
	var ps []outline.Point
	for i := range 12 {
		a := (float64(i) + 0.25) * math.Pi / 6
		ps = append(ps, outline.Point{X: r * math.Cos(a), Y: r * math.Sin(a)})
	}
	face := outline.Polygon(ps...)
	for _, run := range []float64{-14.6, 3.1, 12.3} {
		for i, p := range ps {
			q := ps[(i+1)%12]
			e := box.PanelEdge{From: p, To: q, Length: side, Bevel: box.Deg(math.Atan(run/14.6) * 180 / math.Pi), Run: box.MM(run)}
			items := bevel(&placer{face: outline.Region{face}}, e, bevelWords(e))
			var all []string
			for _, it := range items {
				all = append(all, it.Text.Value)
			}
			if want := strings.Join(bevelWords(e), ", "); len(items) < 2 || strings.Join(all, ", ") != want {
				t.Fatalf("edge %d: %q, want %q on two lines or three", i, all, want)
			}
			for k := range items {
				w := items[k].Text
				if !(w.Angle > -90 && w.Angle <= 90) {
					t.Errorf("edge %d: turned by %v", i, w.Angle)
				}
				// Along the edge: the same direction or the opposite one.
				d := math.Mod(w.Angle-math.Atan2(q.Y-p.Y, q.X-p.X)*180/math.Pi+720, 180)
				if math.Min(d, 180-d) > 1e-3 {
					t.Errorf("edge %d: turned by %v, off its edge by %v", i, w.Angle, d)
				}
				half := Width(w.Value, w.Height) / 2
				text := outline.Rectangle(-half, 0, half, w.Height).
					Transform(outline.Turn(w.Angle).Then(outline.Shift(items[k].From.X, items[k].From.Y)))
				for _, v := range text {
					if face.Contains(v.At(), 0) != outline.Inside || face.Distance(v.At()) < math.Max(run, 0)+0.9 {
						t.Errorf("edge %d, run %v: the text comes within %v of the edge, %v",
							i, run, face.Distance(v.At()), face.Contains(v.At(), 0))
						break
					}
				}
			}
		}
	}
}

// No text where there is no bevel, no room or no number.
func TestBevelsLeftOut(t *testing.T) {
	long := box.PanelEdge{To: outline.Point{X: 200}, Length: 200}
	for what, e := range map[string]func(*box.PanelEdge){
		"square":        func(e *box.PanelEdge) {},
		"short":         func(e *box.PanelEdge) { e.Bevel, e.Run, e.To.X = 12, 3, 20 },
		"NaN":           func(e *box.PanelEdge) { e.Bevel = box.Deg(math.NaN()) },
		"run of NaN":    func(e *box.PanelEdge) { e.Bevel, e.Run = 12, box.MM(math.NaN()) },
		"end of NaN":    func(e *box.PanelEdge) { e.Bevel, e.To.Y = 12, math.NaN() },
		"without limit": func(e *box.PanelEdge) { e.Bevel, e.From.X = 12, math.Inf(-1) },
	} {
		edge := long
		e(&edge)
		words := bevelWords(edge)
		if what == "short" {
			if items := bevel(&placer{}, edge, words); items != nil {
				t.Errorf("%s: %v", what, items)
			}
			continue
		}
		if words != nil {
			t.Errorf("%s: %v", what, words)
		}
	}
}
