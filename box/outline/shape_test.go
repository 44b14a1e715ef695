package outline

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

func TestCheck(t *testing.T) {
	nan := math.NaN()
	for _, x := range []struct {
		name string
		c    Contour
		want FaultKind
		side int
	}{
		{"empty", nil, TooFewVertices, 0},
		{"point", Contour{{1, 1, 0}}, TooFewVertices, 0},
		{"two points", Contour{{0, 0, 0}, {1, 0, 0}}, TooFewVertices, 0},
		{"lens", Contour{{0, 0, 0.2}, {1, 0, 0.2}}, 0, 0},
		{"cap", Contour{{0, 0, 0.2}, {1, 0, 0}}, 0, 0},
		{"nan", Contour{{0, 0, 0}, {1, nan, 0}, {0, 1, 0}}, NotFinite, 1},
		{"infinite bulge", Contour{{0, 0, 0}, {1, 0, 0}, {0, 1, math.Inf(1)}}, NotFinite, 2},
		{"far away", Contour{{0, 0, 0}, {1e308, 0, 0}, {0, 1, 0}}, NotFinite, 1},
		{"long arc", Contour{{0, 0, 1.5}, {1, 0, 0}, {0, 1, 0}}, BulgeRange, 0},
		{"doubled vertex", Contour{{0, 0, 0}, {1, 0, 0}, {1, 0, 0}, {0, 1, 0}}, ZeroLength, 1},
		{"closed twice", Contour{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 0}}, ZeroLength, 3},
		{"bow tie", Contour{{0, 0, 0}, {2, 2, 0}, {2, 0, 0}, {0, 2, 0}}, Crossing, 0},
		{"spike", Contour{{0, 0, 0}, {4, 0, 0}, {6, 0, 0}, {4, 0, 0}, {2, 3, 0}}, Crossing, 0},
		{"touches a side", Contour{{0, 0, 0}, {4, 0, 0}, {4, 4, 0}, {2, 0, 0}, {0, 4, 0}}, Crossing, 0},
		{"arc over a side", Contour{{0, 0, 0}, {4, 0, 0}, {4, 1, 1}, {0, 1, 0}}, 0, 0},
		{"arc through a side", Contour{{0, 0, 0}, {4, 0, 0}, {4, 1, -1}, {0, 1, 0}}, Crossing, 0},
		{"arc touches a side", Contour{{0, 0, 0}, {4, 0, 0}, {4, 2, -1}, {0, 2, 0}}, Crossing, 0},
		{"arc through its neighbour", Contour{{0, 0, 0}, {10, 0, -0.5}, {5, 1, 0}, {0, 5, 0}}, Crossing, 0},
		{"and through the last", Contour{{10, 0, -0.5}, {5, 1, 0}, {0, 5, 0}, {0, 0, 0}}, Crossing, 0},
		{"there and back", Contour{{0, 0, 0.5}, {4, 0, -0.5}}, NoArea, 0},
		{"needle", Contour{{0, 0, 0}, {4, 0, 0}, {2, 1e-8, 0}}, Crossing, 0},
		{"slot", Slot(Point{}, 30, 10), 0, 0},
		{"clockwise", Slot(Point{}, 30, 10).Reverse(), 0, 0},
	} {
		err := x.c.Check()
		var f *Fault
		if errors.As(err, &f) != (x.want != 0) || f != nil && (f.Kind != x.want || f.Side != x.side) {
			t.Errorf("%s: %v (%+v), want %v at %d", x.name, err, f, x.want, x.side)
		}
	}
	if err := Circle(Point{}, 1).CheckHole(); err == nil {
		t.Error("an anticlockwise hole passes")
	}
	if err := Circle(Point{}, 1).Reverse().CheckOuter(); err == nil {
		t.Error("a clockwise outline passes")
	}
	if err := Circle(Point{}, 1).CheckOuter(); err != nil {
		t.Error(err)
	}
}

func TestCheckRegion(t *testing.T) {
	board := Rectangle(0, 0, 100, 100)
	hole := func(x, y, d float64) Contour { return Circle(Point{x, y}, d).Reverse() }
	for _, x := range []struct {
		name string
		r    Region
		want FaultKind
	}{
		{"nothing", nil, 0},
		{"board", Region{board}, 0},
		{"holes", Region{board, hole(30, 50, 20), hole(70, 50, 20)}, 0},
		{"hole touches the edge", Region{board, hole(10, 50, 20)}, 0},
		{"holes touch", Region{board, hole(30, 50, 20), hole(50, 50, 20)}, 0},
		{"island", Region{board, hole(50, 50, 40), Circle(Point{50, 50}, 20)}, 0},
		{"two boards", Region{board, Rectangle(200, 0, 300, 100)}, 0},
		{"corner to corner", Region{board, Rectangle(100, 100, 200, 200)}, 0},
		{"hole over the edge", Region{board, hole(5, 50, 20)}, Crossing},
		{"flush", Region{board, Rectangle(100, 0, 200, 100)}, Crossing},
		{"flush hole", Region{board, Rectangle(0, 40, 10, 50).Reverse()}, Crossing},
		{"overlapping holes", Region{board, hole(30, 50, 20), hole(45, 50, 20)}, Crossing},
		{"hole outside", Region{board, hole(150, 50, 20)}, WrongSense},
		{"hole the wrong way", Region{board, Circle(Point{50, 50}, 20)}, WrongSense},
		{"only a hole", Region{hole(0, 0, 3)}, WrongSense},
		{"bad contour", Region{board, Contour{{1, 1, 0}}}, TooFewVertices},
	} {
		err := x.r.Check()
		var f *Fault
		if errors.As(err, &f) != (x.want != 0) || f != nil && f.Kind != x.want {
			t.Errorf("%s: %v, want %v", x.name, err, x.want)
		}
		if f != nil && f.Kind == Crossing && len(f.Error()) < 20 {
			t.Errorf("%s: %q", x.name, f.Error())
		}
	}
	// Whatever is no region is no operand, but shared edges are.
	if _, err := Union(Region{board, hole(150, 50, 20)}, nil); !errors.Is(err, ErrNotRegion) {
		t.Errorf("hole outside: %v", err)
	}
	u, err := Union(Region{board, Rectangle(100, 0, 200, 100)}, nil)
	if err != nil || len(u) != 1 || len(u[0]) != 4 || u.Area() != 20000 {
		t.Errorf("flush: %v %v", u, err)
	}
}

func TestIntersections(t *testing.T) {
	sq := Rectangle(0, 0, 10, 10)
	for _, x := range []struct {
		name string
		c    Contour
		want []Point
	}{
		{"apart", Rectangle(20, 0, 30, 10), nil},
		{"inside", Circle(Point{5, 5}, 4), nil},
		{"overlap", Rectangle(5, 5, 15, 15), []Point{{5, 10}, {10, 5}}},
		{"corner", Rectangle(10, 10, 12, 12), []Point{{10, 10}}},
		{"circle touches", Circle(Point{13, 5}, 6), []Point{{10, 5}}},
		{"circle touches inside", Circle(Point{7, 5}, 6), []Point{{10, 5}}},
		{"circle cuts a side", Circle(Point{10, 5}, 6), []Point{{10, 2}, {10, 8}}},
		{"flush", Rectangle(10, 2, 15, 8), []Point{{10, 2}, {10, 8}}},
		{"itself", sq, []Point{{0, 0}, {0, 10}, {10, 0}, {10, 10}}},
		// Radius 5 about a corner: 3, 4, 5 do not come in, 5 along both sides.
		{"round a corner", Circle(Point{0, 0}, 10), []Point{{0, 5}, {5, 0}}},
	} {
		turned(x.c, func(name string, c Contour, m Affine, _ float64) {
			got := c.Intersections(sq.Transform(m))
			if len(got) != len(x.want) {
				t.Errorf("%s, %s: %v, want %v", x.name, name, got, x.want)
				return
			}
			for _, p := range x.want {
				ok := false
				for _, q := range got {
					ok = ok || gap(m.Apply(p), q) < 1e-9
				}
				if !ok {
					t.Errorf("%s, %s: %v, want %v", x.name, name, got, x.want)
				}
			}
		})
	}
	// Circles of radius 5 whose centres stand 6 apart cross at (3, +-4); those
	// of radius 5 and 2 touch outside 7 apart and inside 3 apart.
	a := Circle(Point{}, 10)
	if p := a.Intersections(Circle(Point{6, 0}, 10)); len(p) != 2 || gap(p[0], Point{3, -4}) > 1e-12 || gap(p[1], Point{3, 4}) > 1e-12 {
		t.Errorf("crossing circles: %v", p)
	}
	for _, x := range []float64{7, 3} {
		if p := a.Intersections(Circle(Point{x, 0}, 4)); len(p) != 1 || gap(p[0], Point{5, 0}) > 1e-9 {
			t.Errorf("touching circles: %v", p)
		}
		// 5e-8 off is still one touching, not two crossings 7e-4 apart.
		for _, off := range []float64{-5e-8, 5e-8} {
			if p := a.Intersections(Circle(Point{x + off, 0}, 4)); len(p) != 1 {
				t.Errorf("circles %v off touching: %v", off, p)
			}
		}
	}
}

func TestIsCircle(t *testing.T) {
	turned(Circle(Point{3, 4}, 32), func(name string, c Contour, m Affine, _ float64) {
		p, d, ok := c.IsCircle(1e-9)
		if !ok || gap(p, m.Apply(Point{3, 4})) > 1e-12 || !near(d, 32, 1e-12) {
			t.Errorf("%s: %v %v %v", name, p, d, ok)
		}
	})
	q := math.Sqrt2 - 1
	four := Contour{{5, 0, q}, {0, 5, q}, {-5, 0, q}, {0, -5, q}}
	if _, d, ok := four.IsCircle(1e-9); !ok || !near(d, 10, 1e-12) {
		t.Error("four quarters are a circle")
	}
	if s := four.Simplify(1e-9); len(s) != 2 || !near(s.Area(), 25*math.Pi, 1e-12) {
		t.Errorf("four quarters: %v", s)
	}
	for _, c := range []Contour{nil, Rectangle(0, 0, 1, 1), Slot(Point{}, 3, 2), Oval(Point{}, 3, 2), {{0, 0, 0.5}, {1, 0, 0.5}}, append(append(Contour{}, four...), four...)} {
		if _, _, ok := c.IsCircle(1e-6); ok {
			t.Errorf("%v is no circle", c)
		}
	}
}

func TestSimplify(t *testing.T) {
	q := math.Tan(math.Pi / 16) // 45 degrees
	c, s := math.Cos(math.Pi/4), math.Sin(math.Pi/4)
	// A half disc in four arcs on a base in three parts.
	half := Contour{{5, 0, q}, {5 * c, 5 * s, q}, {0, 5, q}, {-5 * c, 5 * s, q}, {-5, 0, 0}, {-2, 0, 0}, {3, 0, 0}}
	turned(half, func(name string, c Contour, m Affine, sign float64) {
		got := c.Simplify(1e-9)
		if len(got) != 2 || !near(got.Area(), sign*12.5*math.Pi, 1e-12) {
			t.Errorf("%s: %v", name, got)
		}
	})
	// Nothing to do: the same, vertex by vertex.
	slot := Slot(Point{}, 30, 10)
	for i, v := range slot.Simplify(1e-9) {
		if v != slot[i] {
			t.Errorf("slot changed: %v", slot.Simplify(1e-9))
		}
	}
	// Corners a tenth off the line go only if the tolerance says so.
	bent := Polygon(Point{0, 0}, Point{5, -0.1}, Point{10, 0}, Point{10, 10}, Point{0, 10})
	if n, m := len(bent.Simplify(0.05)), len(bent.Simplify(0.2)); n != 5 || m != 4 {
		t.Errorf("%d and %d vertices", n, m)
	}
	// A regular polygon of many corners must not wander off: every corner
	// stays within the tolerance, though each is within it of its neighbours.
	many := RegularPolygon(Point{}, 720, 50, 0)
	few := many.Simplify(0.01)
	for _, v := range many {
		if d := few.Distance(v.At()); d > 0.01 {
			t.Fatalf("off by %v", d)
		}
	}
	// Four sides have a sagitta of 50 (1 - cos 1 deg) = 0.0076, five 0.0119.
	if len(few) != 720/4 {
		t.Errorf("%d corners left", len(few))
	}
}

func TestBuilders(t *testing.T) {
	for _, x := range []struct {
		name string
		c    Contour
		n    int
		w, h float64
	}{
		{"slot", Slot(Point{1, 2}, 30, 10), 4, 30, 10},
		{"round slot", Slot(Point{1, 2}, 10, 10), 2, 10, 10},
		{"rounded", RoundedRectangle(0, 0, 30, 10, 2), 8, 30, 10},
		{"all round", RoundedRectangle(0, 0, 30, 10, 99), 4, 30, 10},
		{"all round upright", RoundedRectangle(0, 0, 10, 30, 99), 4, 10, 30},
		{"rounded to a slot", RoundedRectangle(0, 0, 30, 10, 9), 4, 30, 10},
		{"sharp", RoundedRectangle(30, 10, 0, 0, 0), 4, 30, 10},
		{"hexagon", RegularPolygon(Point{}, 6, 10, 0), 6, 20, 10 * math.Sqrt(3)},
		{"oval", Oval(Point{1, 2}, 40, 30), 4, 40, 30},
		{"upright oval", Oval(Point{1, 2}, 30, 40), 4, 30, 40},
		{"round oval", Oval(Point{1, 2}, 30, 30), 2, 30, 30},
	} {
		b := x.c.Extents()
		if len(x.c) != x.n || !near(b.Width(), x.w, 1e-12) || !near(b.Height(), x.h, 1e-12) {
			t.Errorf("%s: %d vertices, %v", x.name, len(x.c), b)
		}
		if err := x.c.CheckOuter(); err != nil {
			t.Errorf("%s: %v", x.name, err)
		}
		if !x.c.IsConvex() || !x.c.Reverse().IsConvex() {
			t.Errorf("%s is convex", x.name)
		}
	}
	// The oval has no corners: at every vertex the tangents agree.
	o := Oval(Point{}, 40, 30)
	for i := range o {
		_, a := o.side(i).tangents()
		b, _ := o.side((i + 1) % 4).tangents()
		if !near(cross(a, b)/(norm(a)*norm(b)), 0, 1e-12) || dot(a, b) < 0 {
			t.Errorf("corner at %d", i)
		}
	}
	for _, c := range []Contour{Slot(Point{}, 0, 1), Oval(Point{}, 1, -1), RegularPolygon(Point{}, 2, 1, 0), RoundedRectangle(0, 0, 0, 5, 1), Slot(Point{}, math.NaN(), 1)} {
		if c != nil {
			t.Errorf("%v, want nil", c)
		}
	}
	for _, c := range []Contour{
		nil, Polygon(Point{0, 0}, Point{4, 0}, Point{1, 1}, Point{0, 4}), {{0, 0, 0}, {20, 0, 0}, {20, 20, -1}, {0, 20, 0}},
		// A five-pointed star turns left everywhere, but twice round.
		{{10, 0, 0}, {-8.0902, 5.8779, 0}, {3.0902, -9.5106, 0}, {3.0902, 9.5106, 0}, {-8.0902, -5.8779, 0}},
	} {
		if c.IsConvex() {
			t.Errorf("%v is not convex", c)
		}
	}
}

// Clip must agree with Intersect and a large turned square, and point by point.
func TestClip(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for k := range 2000 {
		a := roundRegion(t, r)
		if len(a) == 0 {
			continue
		}
		deg := r.Float64() * 360
		if k%2 == 0 {
			deg = float64(r.IntN(4)) * 90
		}
		n := Turn(deg).Apply(Point{1, 0})
		at := math.Round(40*r.Float64() - 20)
		l := 1 + r.Float64()
		h := HalfPlane{n.X * l, n.Y * l, at * l}
		got := a.Clip(h)
		half := Region{Rectangle(at-200, -200, at, 200).Transform(Turn(deg))}
		want, err := Intersect(a, half)
		if err != nil {
			t.Fatalf("%d: %v", k, err)
		}
		if !near(got.Area(), want.Area(), 1e-4) {
			t.Fatalf("%d: area %v, want %v\n%v clipped by %v (%v deg, %v)\ngot  %v\nwant %v", k, got.Area(), want.Area(), a, h, deg, at, got, want)
		}
		checkPoints(t, r, "clip", a, half, got, func(x, y bool) bool { return x && y }, 30)
		for _, c := range got {
			if e := c.Extents(); deg == 0 && e.Max.X > at+SideTest {
				t.Fatalf("%d: %v over the line", k, e)
			}
		}
		// Both parts make the whole.
		rest := a.Clip(HalfPlane{-h.A, -h.B, -h.C})
		if !near(got.Area()+rest.Area(), a.Area(), 1e-4) {
			t.Fatalf("%d: parts %v and %v of %v", k, got.Area(), rest.Area(), a.Area())
		}
		// A lone hole keeps its sense.
		c := a[0].Reverse()
		if x, y := c.Clip(h).Area(), a[0].Clip(h).Area(); !near(x, -y, 1e-9) {
			t.Fatalf("%d: hole %v, outline %v", k, x, y)
		}
	}
	sq := Rectangle(0, 0, 10, 10)
	if got := sq.Clip(HalfPlane{0, 0, 1}); len(got) != 1 || got.Area() != 100 {
		t.Errorf("everything: %v", got)
	}
	for _, h := range []HalfPlane{{0, 0, -1}, {1, 0, -1}, {1, 0, 0}, {math.NaN(), 1, 1}} {
		if got := sq.Clip(h); len(got) != 0 {
			t.Errorf("%v: %v", h, got)
		}
	}
	// A step on the line belongs to the side its material is on: no spikes.
	step := Polygon(Point{0, 0}, Point{10, 0}, Point{10, 10}, Point{5, 10}, Point{5, 5}, Point{0, 5})
	turned(step, func(name string, c Contour, m Affine, sign float64) {
		for _, x := range []struct{ y, area float64 }{{1, 50}, {-1, 25}} {
			// y <= 5 or y >= 5, mapped.
			n, p := sub(m.Apply(Point{0, x.y}), m.Apply(Point{})), m.Apply(Point{0, 5})
			got := c.Clip(HalfPlane{n.X, n.Y, dot(n, p)})
			if len(got) != 1 || !near(got.Area(), sign*x.area, 1e-12) || got[0].Check() != nil {
				t.Errorf("%s: step cut to %v", name, got)
			}
		}
	})
	// Upright and level cuts are exact.
	if got := sq.Transform(Turn(30)).Clip(HalfPlane{2, 0, 1.4}).Extents().Max.X; got != 0.7 {
		t.Errorf("cut at %v", got)
	}
}
