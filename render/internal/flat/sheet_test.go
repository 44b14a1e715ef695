package flat

import (
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
)

// plain is a panel w wide and h high.
func plain(name string, w, h float64) Subject {
	r := outline.Region{outline.Rectangle(0, 0, w, h)}
	return Subject{Piece: box.Piece{Part: box.Part(name), Panel: box.Panel{Thickness: 15, Machined: r, Far: r, Silhouette: r}}}
}

// A row takes what fits: on 250 with gaps of 20 the panels of 100, 120 and 50
// make a row of two (100 + 20 + 120 = 240) and one of one.
func TestRows(t *testing.T) {
	d, err := Sheet("t", []Subject{plain("a", 100, 50), plain("b", 120, 80), plain("c", 50, 30)}, Options{Bare: true, Width: 250})
	if err != nil {
		t.Fatal(err)
	}
	var got []outline.Box
	for _, it := range d.Items {
		got = append(got, it.extents())
	}
	box := func(x0, y0, x1, y1 float64) outline.Box {
		return outline.Box{Min: outline.Point{X: x0, Y: y0}, Max: outline.Point{X: x1, Y: y1}}
	}
	// The lower row is 30 high, the upper one starts 20 above it; both stand on
	// their rows' lower lines.
	want := []outline.Box{box(0, 50, 100, 100), box(120, 50, 240, 130), box(0, 0, 50, 30)}
	for i := range want {
		if i >= len(got) || got[i] != want[i] {
			t.Fatalf("%v, want %v", got, want)
		}
	}
	if d.Bounds != box(0, 0, 240, 130) {
		t.Errorf("bounds %v", d.Bounds)
	}
}

// A part wider than the sheet has a row of its own, and the sheet is as wide
// as that.
func TestWidePart(t *testing.T) {
	d, err := Sheet("t", []Subject{plain("a", 10, 10), plain("b", 500, 20), plain("c", 10, 10)}, Options{Bare: true, Width: 100, Gap: 5})
	if err != nil {
		t.Fatal(err)
	}
	if d.Bounds.Width() != 500 || d.Bounds.Height() != 10+5+20+5+10 {
		t.Errorf("bounds %v", d.Bounds)
	}
}

// A shift keeps every difference of coordinates to the last digit.
func TestShiftIsExact(t *testing.T) {
	c := outline.Contour{{X: 0.1, Y: 0.2}, {X: 33.3333, Y: 0.0001, Bulge: 0.3}, {X: 7.7777, Y: 100.9999}}
	d := shift(c, outline.Point{X: 1234.5678, Y: -987.6543})
	for i := range c {
		if ticks(d[i].X)-ticks(c[i].X) != 12345678 || ticks(d[i].Y)-ticks(c[i].Y) != -9876543 || d[i].Bulge != c[i].Bulge {
			t.Errorf("%v went to %v", c[i], d[i])
		}
	}
}

func TestRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for what, f := range map[string]func(*box.Panel){
		"no outline":      func(p *box.Panel) { p.Machined = nil },
		"a hole only":     func(p *box.Panel) { p.Machined = outline.Region{outline.Rectangle(0, 0, 1, 1).Reverse()} },
		"NaN corner":      func(p *box.Panel) { p.Machined[0][1].X = nan },
		"infinite corner": func(p *box.Panel) { p.Far = outline.Region{{{X: inf}, {X: 1}, {Y: 1}}} },
		"NaN bulge":       func(p *box.Panel) { p.Machined[0][1].Bulge = nan },
		"thickness 0":     func(p *box.Panel) { p.Thickness = 0 },
		"NaN thickness":   func(p *box.Panel) { p.Thickness = box.MM(nan) },
		"NaN depth":       func(p *box.Panel) { p.Ops = []box.Op{{Kind: box.OpPocket, To: box.MM(nan)}} },
		"a bad operation": func(p *box.Panel) { p.Ops = []box.Op{{Kind: box.OpPocket, To: 5, Region: outline.Region{{{X: nan}}}}} },
		"a bad bottom":    func(p *box.Panel) { p.Ops = []box.Op{{Kind: box.OpPocket, To: 5, Bottom: outline.Region{{{Y: inf}}}}} },
		"too far away":    func(p *box.Panel) { p.Silhouette = outline.Region{outline.Rectangle(0, 0, 1, 2e6)} },
	} {
		s := plain("a\nb", 100, 50)
		f(&s.Piece.Panel)
		_, err := Part("t", s, Options{})
		if err == nil || !strings.Contains(err.Error(), `part "a\nb"`) {
			t.Errorf("%s: %v", what, err)
		}
		if _, err := Sheet("t", []Subject{plain("x", 1, 1), s}, Options{}); err == nil {
			t.Errorf("%s: a sheet takes it", what)
		}
	}
	if _, err := Sheet("t", nil, Options{}); err != ErrNoParts {
		t.Errorf("no parts: %v", err)
	}
}

// What is read only lies beside the part or in it, never on its lines where it
// can be helped: sizes and labels stand clear of the outline.
func TestDressIsClear(t *testing.T) {
	s := plain("front", 100, 50)
	s.Piece.Panel.Grain = [2]float64{0, 1}
	d, err := Part("t", s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	part := outline.Box{Max: outline.Point{X: 100, Y: 50}}
	inside := 0
	for _, it := range d.Items {
		b := it.extents()
		switch {
		case it.Layer.Kind == Profile:
		case it.Layer.Kind == Grain:
			inside++
			if b.Min.X < 1 || b.Min.Y < 1 || b.Max.X > 99 || b.Max.Y > 49 {
				t.Errorf("the grain arrow spans %v", b)
			}
		case part.Overlaps(b, 1):
			t.Errorf("%s %q touches the part: %v", it.Layer.Name(), it.Text.Value, b)
		}
	}
	if inside != 5 {
		t.Errorf("%d lines in the grain arrow, want 5", inside)
	}
}

// The grain arrow steps aside for a bore in the middle.
func TestArrowStepsAside(t *testing.T) {
	s := plain("front", 100, 100)
	s.Piece.Panel.Grain = [2]float64{1, 0}
	bore := outline.Circle(outline.Point{X: 50, Y: 50}, 32)
	s.Piece.Panel.Ops = []box.Op{{Kind: box.OpBore, Side: box.SideThrough, To: 15, Region: outline.Region{bore}}}
	d, err := Part("t", s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, it := range d.Items {
		if it.Layer.Kind == Grain && it.extents().Overlaps(bore.Extents(), 0) {
			t.Errorf("the arrow is on the bore: %v", it.extents())
		}
	}
}

// Turned over like a page, grain that rises to the right rises to the left.
func TestTurnedGrain(t *testing.T) {
	s := plain("front", 100, 100)
	s.Piece.Panel.Grain = [2]float64{0.8, 0.6}
	pocket := outline.Rectangle(0, 0, 10, 10)
	s.Piece.Panel.Ops = []box.Op{{Kind: box.OpPocket, Side: box.SideFar, From: 10, To: 15, Region: outline.Region{pocket}}}
	d, err := Part("t", s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	shafts := map[View]outline.Point{}
	for _, it := range d.Items {
		if _, ok := shafts[it.Layer.View]; it.Layer.Kind == Grain && !ok {
			shafts[it.Layer.View] = outline.Point{X: it.To.X - it.From.X, Y: it.To.Y - it.From.Y}
		}
	}
	// 30 long: 24 and 18.
	if shafts[AsMachined] != (outline.Point{X: 24, Y: 18}) || shafts[Turned] != (outline.Point{X: -24, Y: 18}) {
		t.Errorf("the shafts are %v", shafts)
	}
}

// The lower left corner of the silhouette goes to 0, 0, wherever it was.
func TestCorner(t *testing.T) {
	s := plain("front", 100, 50)
	r := outline.Region{outline.Rectangle(-30, -7, 70, 43)}
	s.Piece.Panel.Machined, s.Piece.Panel.Far = r, r
	s.Piece.Panel.Silhouette = outline.Region{outline.Rectangle(-30, -9, 70, 43)}
	d, err := Part("t", s, Options{Bare: true, Corner: true})
	if err != nil {
		t.Fatal(err)
	}
	if b := d.Items[0].extents(); b.Min != (outline.Point{X: 0, Y: 2}) || b.Max != (outline.Point{X: 100, Y: 52}) {
		t.Errorf("the profile spans %v", b)
	}
}
