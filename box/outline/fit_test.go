package outline

import (
	"errors"
	"math"
	"testing"
)

// strays is how far a path lies from a curve and the curve from the path, by
// 4,000 samples of the curve and 50 of every arc.
func strays(p Path, c Curve) float64 {
	const n = 4000
	var on [n + 1]Point
	worst := 0.0
	for i := range on {
		on[i], _ = c(float64(i) / n)
		worst = math.Max(worst, p.Distance(on[i]))
	}
	line := Line(on[:]...).sides()
	for _, s := range p.sides() {
		for k := 1; k < 50; k++ {
			// A place on the arc by the part of the sweep: bulge tan(k/50 * sweep/4).
			a := 4 * math.Atan(s.bulge) * float64(k) / 50
			x, y := s.a.X-s.c.X, s.a.Y-s.c.Y
			q := Point{s.c.X + x*math.Cos(a) - y*math.Sin(a), s.c.Y + x*math.Sin(a) + y*math.Cos(a)}
			if s.r == 0 {
				q = along(s.a, sub(s.b, s.a), float64(k)/50)
			}
			worst = math.Max(worst, distance(line, q))
		}
	}
	return worst
}

// An ellipse of 80 by 40: no arc strays from the true curve by more than was
// asked, and the area is pi a b to that distance times the circumference.
func TestFitEllipse(t *testing.T) {
	ellipse := func(x float64) (Point, Point) {
		s, c := math.Sincos(2 * math.Pi * x)
		return Point{40 * c, 20 * s}, Point{-40 * s, 20 * c}
	}
	last := 0
	for _, tol := range []float64{1, 0.1, 0.01, 0.001} {
		p, err := FitCurve(ellipse, tol)
		if err != nil {
			t.Fatal(err)
		}
		// The samples' chords fall short by (196/4000)^2/(8*10), 3e-5, at most.
		if d := strays(p, ellipse); d > tol+3e-5 {
			t.Errorf("within %v: strays by %v", tol, d)
		}
		c := Contour(p[:len(p)-1])
		if err := c.CheckOuter(); err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(c.Area() - 800*math.Pi); d > tol*194 {
			t.Errorf("within %v: area off by %v", tol, d)
		}
		if len(c) < last || len(c) > 200 {
			t.Errorf("within %v: %d arcs after %d", tol, len(c), last)
		}
		last = len(c)
	}
}

// Through hits its points, and on a ring of points of a circle it is the circle
// nearly: the spline through n points is off by less than r (2 pi/n)^4/384 *
// 5 (the bound for cubic splines, f”” = r), 32 points of r 50: 1e-3.
func TestFitClosedCircle(t *testing.T) {
	var ps []Point
	for i := 0; i < 32; i++ {
		s, c := sincos(2 * math.Pi * float64(i) / 32)
		ps = append(ps, Point{50 * c, 50 * s})
	}
	c, err := FitClosed(ps, 0.005)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.CheckOuter(); err != nil {
		t.Fatal(err)
	}
	for _, p := range ps {
		if d := c.Distance(p); d > 1e-9 {
			t.Errorf("%v is %v off", p, d)
		}
	}
	for _, p := range c.Flatten(1e-3) {
		if d := math.Abs(norm(p) - 50); d > 0.005+2e-3 {
			t.Errorf("%v lies %v from the centre", p, norm(p))
		}
	}
}

// Points of the plan of a bracket: a wave. The arcs meet without corners, pass
// through the points, and keep to the spline.
func TestFitWave(t *testing.T) {
	ps := []Point{{0, 0}, {30, 12}, {55, -8}, {80, 5}, {140, 0}}
	for _, tol := range []float64{0.5, 0.02} {
		p, err := Fit(ps, tol)
		if err != nil {
			t.Fatal(err)
		}
		c, _ := Through(ps, false)
		if d := strays(p, c); d > tol+1e-4 {
			t.Errorf("strays by %v, want %v", d, tol)
		}
		ss := p.sides()
		for i := 0; i+1 < len(ss); i++ {
			_, a := ss[i].tangents()
			b, _ := ss[i+1].tangents()
			if k := math.Abs(cross(unit(a), unit(b))); k > 1e-9 {
				t.Errorf("a corner of %v at %v", k, ss[i].b)
			}
		}
		at := 0
		for _, v := range p {
			if at < len(ps) && gap(v.At(), ps[at]) < 1e-9 {
				at++
			}
		}
		if at != len(ps) {
			t.Errorf("%d of %d points are met", at, len(ps))
		}
	}
	// Two points make a straight line.
	p, err := Fit(ps[:2], 0.1)
	if err != nil || math.Abs(p.Length()-math.Hypot(30, 12)) > 1e-9 {
		t.Errorf("%v, %v", p, err)
	}
	// Mirrored points make the mirrored curve, to rounding.
	var ms []Point
	for _, q := range ps {
		ms = append(ms, MirrorX().Apply(q))
	}
	a, _ := Fit(ps, 0.02)
	b, _ := Fit(ms, 0.02)
	if len(a) != len(b) {
		t.Fatal(len(a), len(b))
	}
	for i, v := range a.Transform(MirrorX()) {
		if gap(v.At(), b[i].At()) > 1e-9 || math.Abs(v.Bulge-b[i].Bulge) > 1e-9 {
			t.Errorf("%v and %v", v, b[i])
		}
	}
}

func TestFitRefuses(t *testing.T) {
	fault := func(k FaultKind) func(error) bool {
		return func(err error) bool { var f *Fault; return errors.As(err, &f) && f.Kind == k }
	}
	good := []Point{{0, 0}, {10, 0}, {20, 5}}
	for name, c := range map[string]struct {
		ps     []Point
		tol    float64
		closed bool
		ok     func(error) bool
	}{
		"none":          {nil, 0.1, false, fault(TooFewVertices)},
		"one point":     {good[:1], 0.1, false, fault(TooFewVertices)},
		"two of a ring": {good[:2], 0.1, true, fault(TooFewVertices)},
		"twice":         {[]Point{{0, 0}, {0, 0}, {1, 1}}, 0.1, false, fault(ZeroLength)},
		"NaN":           {[]Point{{0, 0}, {math.NaN(), 0}}, 0.1, false, fault(NotFinite)},
		"far":           {[]Point{{0, 0}, {1e9, 0}}, 0.1, false, fault(NotFinite)},
		"tolerance 0":   {good, 0, false, func(err error) bool { return errors.Is(err, ErrTolerance) }},
		"tolerance NaN": {good, math.NaN(), true, func(err error) bool { return errors.Is(err, ErrTolerance) }},
	} {
		var err error
		if c.closed {
			_, err = FitClosed(c.ps, c.tol)
		} else {
			_, err = Fit(c.ps, c.tol)
		}
		if !c.ok(err) {
			t.Errorf("%s: %v", name, err)
		}
	}
	still := func(float64) (Point, Point) { return Point{1, 1}, Point{} }
	if _, err := FitCurve(still, 0.1); !errors.Is(err, ErrNotSmooth) {
		t.Errorf("a curve that stands still: %v", err)
	}
}
