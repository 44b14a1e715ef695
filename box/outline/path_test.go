package outline

import (
	"errors"
	"math"
	"testing"
)

// A quarter circle of radius 10 and a line of 20: length 5 pi + 20.
var hook = Path{{10, 0, math.Sqrt2 - 1}, {0, 10, 0}, {-20, 10, 0}}

func TestPathMeasures(t *testing.T) {
	if l := hook.Length(); math.Abs(l-5*math.Pi-20) > 1e-12 {
		t.Error(l)
	}
	if b := hook.Extents(); gap(b.Min, Point{-20, 0}) > 1e-12 || gap(b.Max, Point{10, 10}) > 1e-12 {
		t.Error(b)
	}
	for _, p := range []Path{hook.Reverse(), hook.Transform(MirrorX()), hook.Transform(Turn(30))} {
		if math.Abs(p.Length()-hook.Length()) > 1e-12 {
			t.Errorf("%v", p)
		}
	}
	// The arc stands round the centre: (9, 9) is 9 sqrt 2 - 10 beyond it.
	if d := hook.Transform(MirrorX()).Distance(Point{-9, 9}); math.Abs(d-(9*math.Sqrt2-10)) > 1e-12 {
		t.Error(d)
	}
	if hook.Closed() || !Rectangle(0, 0, 5, 5).Path().Closed() {
		t.Error("closed")
	}
}

// The part of the path inside a square from -5 to 15: the arc, and 5 of the
// line. Inside a ring only what is not in its hole.
func TestPathWithin(t *testing.T) {
	in := hook.Within(Region{Rectangle(-5, -5, 15, 15)})
	if len(in) != 1 || math.Abs(in[0].Length()-5*math.Pi-5) > 1e-9 {
		t.Fatalf("%v", in)
	}
	line := Line(Point{-50, 0}, Point{50, 0})
	ring := Region{Circle(Point{}, 60), Circle(Point{}, 20).Reverse()}
	in = line.Within(ring)
	if len(in) != 2 || math.Abs(in[0].Length()-20) > 1e-9 || math.Abs(in[1].Length()-20) > 1e-9 {
		t.Fatalf("%v", in)
	}
	// A circle of radius 25 about (0, 0) in the half x > 0: one stretch, though
	// it begins there.
	in = Circle(Point{}, 50).Path().Within(Region{Rectangle(0, -100, 100, 100)})
	if len(in) != 1 || math.Abs(in[0].Length()-25*math.Pi) > 1e-9 {
		t.Fatalf("%v", in)
	}
	if in = line.Within(Region{Rectangle(0, 5, 10, 10)}); in != nil {
		t.Errorf("%v", in)
	}
}

// The band of half width 2 along an L of 30 and 20: 2*2*50 + pi*4 for the ends,
// and at the corner pi/2*4/2 - 4*tan 45 = pi - 4. The second way is the union of
// two slots as wide as the band.
func TestPathSwept(t *testing.T) {
	l := Line(Point{0, 0}, Point{30, 0}, Point{30, 20})
	want := 200 + 4*math.Pi + math.Pi - 4
	if a := l.Swept(2); math.Abs(a-want) > 1e-9 {
		t.Errorf("%v, want %v", a, want)
	}
	u, err := Union(Region{Slot(Point{15, 0}, 34, 4)}, Region{Slot(Point{30, 10}, 4, 24)})
	if err != nil || math.Abs(u.Area()-want) > 1e-6 {
		t.Errorf("the union has %v, %v", u.Area(), err)
	}
	// A ring of radius 10: the annulus from 8 to 12.
	if a := Circle(Point{}, 20).Path().Swept(2); math.Abs(a-math.Pi*(144-64)) > 1e-9 {
		t.Error(a)
	}
	// A square of 10 round: outside 4 quarter discs of 2 and 4*10*2, inside 36 left.
	if a := Rectangle(0, 0, 10, 10).Path().Swept(2); math.Abs(a-(80+4*math.Pi+100-36)) > 1e-9 {
		t.Error(a)
	}
	if (Path{}).Swept(2) != 0 || l.Swept(0) != 0 || l.Swept(math.NaN()) != 0 {
		t.Error("nothing is something")
	}
}

func TestPathCheck(t *testing.T) {
	for name, c := range map[string]struct {
		p Path
		k FaultKind
	}{
		"one point": {Path{{0, 0, 0}}, TooFewVertices},
		"twice":     {Path{{1, 1, 0}, {1, 1, 0}}, ZeroLength},
		"NaN":       {Path{{1, 1, 0}, {1, math.NaN(), 0}}, NotFinite},
		"last NaN":  {Path{{1, 1, 0}, {1, 2, math.NaN()}}, NotFinite},
		"bulge NaN": {Path{{1, 1, math.NaN()}, {1, 2, 0}}, NotFinite},
		"bulge 2":   {Path{{1, 1, 2}, {1, 2, 0}}, BulgeRange},
	} {
		var f *Fault
		if err := c.p.Check(); !errors.As(err, &f) || f.Kind != c.k {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := hook.Check(); err != nil {
		t.Error(err)
	}
}
