package outline

import (
	"math"
	"math/rand/v2"
	"testing"
)

// shape is a contour with its properties worked out by hand.
type shape struct {
	name         string
	c            Contour
	area, length float64
	box          Box
	centroid     Point
}

// The figures are geometry, from the formulas beside them.
func shapes() []shape {
	q := math.Sqrt2 - 1
	return []shape{
		// 30 x 20.
		{"rectangle", Rectangle(10, 20, 40, 40), 600, 100, Box{Point{10, 20}, Point{40, 40}}, Point{25, 30}},
		// pi 16^2 = 804.2477 (checks.csv, hole-area-32), pi 32.
		{"circle", Circle(Point{3, 4}, 32), 804.247719318987, 100.530964914873, Box{Point{-13, -12}, Point{19, 20}}, Point{3, 4}},
		// 20 x 10 + pi 5^2 = 278.5398, 2 x 20 + pi 10 = 71.4159.
		{"slot", Slot(Point{0, 0}, 30, 10), 278.539816339745, 71.4159265358979, Box{Point{-15, -5}, Point{15, 5}}, Point{0, 0}},
		{"upright slot", Slot(Point{1, 2}, 10, 30), 278.539816339745, 71.4159265358979, Box{Point{-4, -13}, Point{6, 17}}, Point{1, 2}},
		// 40 x 30 - (4 - pi) 25 = 1178.5398, 140 - 40 + 10 pi = 131.4159.
		{"rounded", RoundedRectangle(0, 0, 40, 30, 5), 1178.53981633974, 131.415926535898, Box{Point{0, 0}, Point{40, 30}}, Point{20, 15}},
		// Quarter disc of radius 12: 36 pi, 24 + 6 pi, centroid 4r/(3 pi).
		{"quarter", Contour{{0, 0, 0}, {12, 0, q}, {0, 12, 0}}, 113.097335529233, 42.8495559215388, Box{Point{0, 0}, Point{12, 12}}, Point{5.09295817894065, 5.09295817894065}},
		// Half disc hollowed out of a square 20: 400 - 50 pi; the hollow's
		// centroid stands 4*10/(3 pi) = 4.2441 below the top, so the rest's is
		// (400*10 - 157.0796*(20 - 4.2441))/242.9204.
		{"hollow", Contour{{0, 0, 0}, {20, 0, 0}, {20, 20, -1}, {0, 20, 0}}, 242.920367320510, 91.4159265358979, Box{Point{0, 0}, Point{20, 20}}, Point{10, 6.27808211348818}},
		// Two right triangles 6 x 8: area 24, sides 6, 8, 10.
		{"triangle", Polygon(Point{0, 0}, Point{8, 0}, Point{0, 6}), 24, 24, Box{Point{0, 0}, Point{8, 6}}, Point{8.0 / 3, 2}},
		// Three quarters of a circle and a chord, bulge tan(67.5) > 1: the
		// extents pass the ends on three sides. r 10, chord l = 10 sqrt 2:
		// 75 pi + 50, 15 pi + 14.1421; centroid l^3/(12 A) from the centre
		// along the diagonal, 0.825232.
		{"long arc", Contour{{10, 0, math.Sqrt2 + 1}, {0, -10, 0}}, 285.619449019234, 61.2660254275779, Box{Point{-10, -10}, Point{10, 10}}, Point{-0.583527022543352, 0.583527022543352}},
	}
}

// turned is every way to write the same shape: each start, both senses, both
// mirrors and the quarter turns, with the map that takes the original there.
func turned(c Contour, f func(name string, c Contour, m Affine, sign float64)) {
	maps := []struct {
		name string
		m    Affine
	}{
		{"as is", Shift(0, 0)}, {"mirror x", MirrorX()}, {"mirror y", MirrorY()},
		{"quarter turn", Turn(90)}, {"half turn", Turn(-180)}, {"three quarters", Turn(270)},
		{"moved", Shift(100, -50)},
	}
	for _, m := range maps {
		d := c.Transform(m.m)
		for i := range d {
			e := append(append(Contour{}, d[i:]...), d[:i]...)
			f(m.name, e, m.m, 1)
			f(m.name+" reversed", e.Reverse(), m.m, -1)
		}
	}
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

func mapBox(b Box, m Affine) Box {
	p, q := m.Apply(b.Min), m.Apply(b.Max)
	return Box{Point{math.Min(p.X, q.X), math.Min(p.Y, q.Y)}, Point{math.Max(p.X, q.X), math.Max(p.Y, q.Y)}}
}

func TestProperties(t *testing.T) {
	for _, s := range shapes() {
		turned(s.c, func(name string, c Contour, m Affine, sign float64) {
			if got := c.Area(); !near(got, sign*s.area, 1e-9) {
				t.Errorf("%s, %s: area %v, want %v", s.name, name, got, sign*s.area)
			}
			if got := c.Length(); !near(got, s.length, 1e-9) {
				t.Errorf("%s, %s: length %v, want %v", s.name, name, got, s.length)
			}
			got, want := c.Extents(), mapBox(s.box, m)
			if gap(got.Min, want.Min) > 1e-12 || gap(got.Max, want.Max) > 1e-12 {
				t.Errorf("%s, %s: extents %v, want %v", s.name, name, got, want)
			}
			if p, q := c.Centroid(), m.Apply(s.centroid); gap(p, q) > 1e-12 {
				t.Errorf("%s, %s: centroid %v, want %v", s.name, name, p, q)
			}
			if len(c) != len(s.c) {
				t.Errorf("%s, %s: %d vertices, want %d", s.name, name, len(c), len(s.c))
			}
			// The second way: the area-true polygon has the area exactly, and
			// its centroid comes near by a step bound of 1e-4.
			f := Polygon(c.Flatten(1e-4)...)
			if !near(f.Area(), sign*s.area, 1e-9*s.area) {
				t.Errorf("%s, %s: area of the polygon %v, want %v", s.name, name, f.Area(), sign*s.area)
			}
			if p, q := f.Centroid(), c.Centroid(); gap(p, q) > 1e-3 {
				t.Errorf("%s, %s: centroid %v, of the polygon %v", s.name, name, q, p)
			}
			if err := c.Check(); (err != nil) != (s.name == "long arc") {
				t.Errorf("%s, %s: %v", s.name, name, err)
			}
			// A whole union with itself changes nothing.
			if sign > 0 {
				u, err := Union(Region{c}, Region{c})
				if (err != nil) != (s.name == "long arc") || err == nil && !near(u.Area(), s.area, 1e-9) {
					t.Errorf("%s, %s: union with itself: %v %v", s.name, name, u.Area(), err)
				}
			}
		})
	}
}

// Points beside the boundary, in and out of caps, at levels of vertices and of
// chords, where a ray meets two sides at once.
func TestContains(t *testing.T) {
	slot := Slot(Point{}, 30, 10)
	for _, x := range []struct {
		c    Contour
		p    Point
		tol  float64
		want Side
	}{
		{slot, Point{0, 0}, 0, Inside},
		{slot, Point{14.9, 0}, 0, Inside},    // in the cap, on no chord's level
		{slot, Point{-15.1, 0}, 0, Outside},  // left of all
		{slot, Point{10, 0}, 0, Inside},      // on the chord of the right cap
		{slot, Point{-10, 0}, 0, Inside},     // and of the left one
		{slot, Point{14, 4.5}, 0, Outside},   // in the corner beside the cap
		{slot, Point{-20, 5}, 0, Outside},    // level with the top side
		{slot, Point{-20, -5}, 0, Outside},   // level with the bottom side
		{slot, Point{0, 5}, 0, On},           // on a side
		{slot, Point{15, 0}, 0, On},          // on an arc
		{slot, Point{15.05, 0}, 0.1, On},     // within the tolerance
		{slot, Point{14.85, 0}, 0.1, Inside}, // and not
	} {
		turned(x.c, func(name string, c Contour, m Affine, _ float64) {
			if got := c.Contains(m.Apply(x.p), x.tol); got != x.want {
				t.Errorf("%s: %v is %v, want %v", name, x.p, got, x.want)
			}
		})
	}
	ring := Region{Rectangle(0, 0, 100, 100), Circle(Point{50, 50}, 32).Reverse()}
	for p, want := range map[Point]Side{{50, 50}: Outside, {66, 50}: On, {67, 50}: Inside, {101, 50}: Outside} {
		if got := ring.Contains(p, 1e-9); got != want {
			t.Errorf("%v in the ring: %v, want %v", p, got, want)
		}
	}
	for s, want := range map[Side]string{Outside: "outside", On: "on", Inside: "inside", 7: "unknown side"} {
		if s.String() != want {
			t.Errorf("%d is %q", int(s), s)
		}
	}
}

func TestDistances(t *testing.T) {
	board := Rectangle(0, 0, 200, 150)
	for _, x := range []struct {
		name string
		a, b Contour
		want float64
	}{
		{"hole to edge", board, Circle(Point{50, 50}, 32), 34},            // 50 - 16
		{"hole over edge", board, Circle(Point{10, 50}, 32), 0},           // crosses
		{"hole at edge", board, Circle(Point{16, 50}, 32), 0},             // touches
		{"two holes", Circle(Point{}, 10), Circle(Point{30, 40}, 20), 35}, // 50 - 5 - 10
		{"hole in hole", Circle(Point{}, 100), Circle(Point{10, 0}, 20), 30},
		{"one centre", Circle(Point{}, 100), Circle(Point{}, 20), 40},
		{"slots end on", Slot(Point{}, 30, 10), Slot(Point{40, 0}, 30, 10), 10},
		{"slots side on", Slot(Point{}, 30, 10), Slot(Point{3, 20}, 30, 10), 10},
		{"corner to arc", Rectangle(0, 0, 1, 1), Circle(Point{4, 5}, 4), 3},                                           // 5 - 2
		{"side to arc", Rectangle(0, 0, 10, 1), Circle(Point{4, 5}, 4), 2},                                            // 4 - 2
		{"corner to corner", Rectangle(0, 0, 1, 1), Rectangle(4, 5, 6, 6), 5},                                         // 3, 4, 5
		{"corner to hollow", Contour{{-10, 0, -1}, {10, 0, 0}, {10, 20, 0}, {-10, 20, 0}}, Rectangle(-3, 2, 3, 4), 5}, // hollow reaches up to r 10; corners at (3, 4)
	} {
		turned(x.b, func(name string, b Contour, m Affine, _ float64) {
			a := x.a.Transform(m)
			if got := a.DistanceTo(b); !near(got, x.want, 1e-12) {
				t.Errorf("%s, %s: %v, want %v", x.name, name, got, x.want)
			}
			if got := b.DistanceTo(a); !near(got, x.want, 1e-12) {
				t.Errorf("%s, %s, back: %v, want %v", x.name, name, got, x.want)
			}
		})
	}
	if d := board.DistanceTo(nil); !math.IsInf(d, 1) {
		t.Errorf("to nothing: %v", d)
	}
	if d := board.Distance(Point{100, 80}); d != 70 {
		t.Errorf("to a point: %v", d)
	}
}

// Values of notes/geometry-2.md, section 6, and checks.csv.
func TestFlatten(t *testing.T) {
	for _, x := range []struct {
		r, tol float64
		n      int
	}{{16, 0.1, 24}, {16, 0.05, 33}, {16, 0.01, 73}, {16, 0.001, 230}, {3, 0.01, 32}} {
		if n := CircleSteps(x.r, x.tol); n != x.n {
			t.Errorf("r %v, tol %v: %d, want %d", x.r, x.tol, n, x.n)
		}
		p := Circle(Point{7, 8}, 2*x.r).Flatten(x.tol)
		if len(p) != x.n {
			t.Errorf("r %v, tol %v: %d corners", x.r, x.tol, len(p))
		}
		for i := range p {
			over := gap(p[i], Point{7, 8}) - x.r
			m := Point{(p[i].X + p[(i+1)%len(p)].X) / 2, (p[i].Y + p[(i+1)%len(p)].Y) / 2}
			under := x.r - gap(m, Point{7, 8})
			if !(over > 0 && over <= x.tol && under > 0 && under < 0.51*over) {
				t.Fatalf("corner %v over, chord %v under", over, under)
			}
		}
	}
	// n = 64, r = 16: corners +0.012860, chords -0.006428.
	if k := 16*areaTrue(64) - 16; !near(k, 0.012860, 5e-7) {
		t.Errorf("over %v", k)
	}
	if k := 16 - 16*areaTrue(64)*math.Cos(math.Pi/64); !near(k, 0.006428, 5e-7) {
		t.Errorf("under %v", k)
	}
	// Half a circle in 8 steps: 16.237773887.
	if k := 16 * arcTrue(math.Pi, 8); !near(k, 16.237773887, 1e-9) {
		t.Errorf("half circle %v", k)
	}
	// Arcs keep their ends and stay within the tolerance, chords too.
	slot := Slot(Point{}, 30, 10)
	for _, tol := range []float64{0.5, 0.1, 0.01, 0.001} {
		p := slot.Flatten(tol)
		for i, a := range p {
			b := p[(i+1)%len(p)]
			for k := 0.0; k <= 1; k += 0.125 {
				if d := slot.Distance(along(a, sub(b, a), k)); d > tol {
					t.Fatalf("tol %v: off by %v", tol, d)
				}
			}
		}
		for _, v := range slot {
			if Polygon(p...).Distance(v.At()) > 0 {
				t.Errorf("tol %v: end %v lost", tol, v.At())
			}
		}
	}
	if n := CircleSteps(0, 1); n != 3 {
		t.Errorf("no radius: %d", n)
	}
	if n := CircleSteps(1, math.NaN()); n != maxSteps {
		t.Errorf("no tolerance: %d", n)
	}
	if p := (Contour{{0, 0, math.NaN()}, {1, 0, 0}}).Flatten(1); p != nil {
		t.Errorf("not finite: %v", p)
	}
}

// bulge = tan(sweep/4): rows bulge-180, bulge-90 and bulge-120 of checks.csv
// (DXF reference, VERTEX group codes), here as the arcs they must make.
func TestBulge(t *testing.T) {
	for _, x := range []struct{ bulge, sweep, tol float64 }{{1, 180, 1e-12}, {0.414214, 90, 2e-4}, {0.577350, 120, 2e-4}} {
		s := newSeg(Point{0, 0}, Point{10, 0}, x.bulge)
		sweep := s.length() / s.r * 180 / math.Pi
		if !near(sweep, x.sweep, x.tol) { // half a digit: 5e-7*4*57.3 = 1.2e-4
			t.Errorf("bulge %v: sweep %v, want %v", x.bulge, sweep, x.sweep)
		}
		if s.mid().Y >= 0 {
			t.Errorf("bulge %v: a positive bulge turns anticlockwise, to the right of the chord", x.bulge)
		}
	}
	// The power series for small bulges and the closed form meet: 0.125 is
	// where they change over, the next term is below 1e-16.
	a, b := newSeg(Point{}, Point{1, 0}, 0.125), newSeg(Point{}, Point{1, 0}, math.Nextafter(0.125, 0))
	if !near(a.cap(), b.cap(), 1e-15) {
		t.Errorf("caps %v and %v", a.cap(), b.cap())
	}
}

func TestTurnIsExact(t *testing.T) {
	p := Point{3, 4}
	for deg, want := range map[float64]Point{0: {3, 4}, 90: {-4, 3}, 180: {-3, -4}, 270: {4, -3}, -90: {4, -3}, 360: {3, 4}, 3690: {-4, 3}} {
		if got := Turn(deg).Apply(p); got != want {
			t.Errorf("%v: %v, want %v", deg, got, want)
		}
	}
	m := Turn(33).Then(MirrorX()).Then(Shift(5, 6)).Then(Scale(3))
	if q := m.Then(m.Inverse()).Apply(p); gap(q, p) > 1e-14 {
		t.Errorf("there and back: %v", q)
	}
	// Then: first the left one.
	if q := Shift(1, 0).Then(Turn(90)).Apply(Point{}); q != (Point{0, 1}) {
		t.Errorf("shift, then turn: %v", q)
	}
	if math.Abs(sinDeg(30)-0.5) > 1e-16 {
		t.Errorf("sine of 30: %v", sinDeg(30))
	}
}

func sinDeg(deg float64) float64 { return Turn(deg).YX }

func TestTrig(t *testing.T) {
	for x := -8.0; x < 8; x += 1.0 / 128 {
		s, c := sincos(x)
		if !near(s, math.Sin(x), 3e-16) || !near(c, math.Cos(x), 3e-16) || !near(atan(x), math.Atan(x), 3e-16) {
			t.Errorf("%v: %v %v %v", x, s, c, atan(x))
		}
		if !near(atan2(s, c), math.Atan2(s, c), 6e-16) {
			t.Errorf("%v: atan2 %v", x, atan2(s, c))
		}
	}
}

// The search in trees must find what asking every pair finds.
func TestDistanceSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 300 {
		a, b := roundRegion(t, r), roundRegion(t, r).Transform(Shift(r.Float64()*30, 0))
		want := math.Inf(1)
		for _, x := range a.sides() {
			for _, y := range b.sides() {
				want = math.Min(want, between(&x, &y))
			}
		}
		if got := a.DistanceTo(b); got != want && !near(got, want, 1e-12) {
			t.Fatalf("%v, want %v\n%v\n%v", got, want, a, b)
		}
		// And no pair of points on the boundaries may be nearer; some pair of
		// 64 on each side comes near it by a step.
		best, step := math.Inf(1), 0.0
		for _, x := range a.Flatten(1e-3) {
			for i := range x {
				s := x.side(i)
				for k := 0.0; k < 1; k += 0.125 {
					best = math.Min(best, b.Distance(along(s.a, sub(s.b, s.a), k)))
				}
				step = math.Max(step, s.length()/16)
			}
		}
		if best < want-2e-3 || !math.IsInf(want, 1) && best > want+step+2e-3 {
			t.Fatalf("%v, but points come within %v\n%v\n%v", want, best, a, b)
		}
	}
}
