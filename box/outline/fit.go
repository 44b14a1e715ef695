package outline

import (
	"errors"
	"math"
)

// Curve is a smooth curve: its place, and its direction (of any length above
// 0), for t from 0 to 1.
type Curve func(t float64) (at, along Point)

// Faults of Fit, FitClosed and FitCurve, beside the *Fault of bad points.
var (
	// ErrTolerance says that a tolerance is not a number from 1e-4 to 100 mm.
	ErrTolerance = errors.New("outline: want a tolerance from 1e-4 to 100 mm")
	// ErrNotSmooth says that a curve turns too sharply to be followed by arcs.
	ErrNotSmooth = errors.New("outline: the curve is not smooth: it stands still, or turns back, somewhere")
)

// Through is the cubic spline through the points, two at least (closed: three):
// parameter by chord length, no bend at the ends, or the same bend all round.
// Neighbouring points must lie apart by more than SideTest. The error is a
// *Fault with the number of the point.
func Through(points []Point, closed bool) (Curve, error) {
	s, err := newSpline(points, closed)
	if err != nil {
		return nil, err
	}
	return func(t float64) (Point, Point) { return s.at(t * s.total()) }, nil
}

// Fit is the smooth curve through the points as arcs that meet without a
// corner: the spline of Through, no arc farther than tol mm from it, and every
// point on an arc's end. tol runs from 1e-4 to 100.
func Fit(points []Point, tol float64) (Path, error) { return fitPoints(points, false, tol) }

// FitClosed is Fit for a ring: the curve runs on from the last point to the
// first, which is not repeated. The contour runs the way of the points.
func FitClosed(points []Point, tol float64) (Contour, error) {
	p, err := fitPoints(points, true, tol)
	if err != nil {
		return nil, err
	}
	return Contour(p[:len(p)-1]), nil
}

func fitPoints(points []Point, closed bool, tol float64) (Path, error) {
	s, err := newSpline(points, closed)
	if err != nil {
		return nil, err
	}
	return fitBreaks(s.at, s.knots, tol)
}

// FitCurve fits any smooth curve within tol mm, which runs from 1e-4 to 100;
// its ends are kept.
func FitCurve(c Curve, tol float64) (Path, error) {
	breaks := make([]float64, 17)
	for i := range breaks {
		breaks[i] = float64(i) / 16
	}
	return fitBreaks(c, breaks, tol)
}

// mostHalvings of a stretch between two points.
const mostHalvings = 24

func fitBreaks(c Curve, breaks []float64, tol float64) (Path, error) {
	if !(tol >= 1e-4 && tol <= 100) {
		return nil, ErrTolerance
	}
	at, _ := c(breaks[0])
	out := Path{{at.X, at.Y, 0}}
	var follow func(t0, t1 float64, left int) bool
	follow = func(t0, t1 float64, left int) bool {
		if v, ok := biarc(c, t0, t1, tol); ok {
			for _, w := range v {
				out[len(out)-1].Bulge = w.Bulge
				out = append(out, Vertex{w.X, w.Y, 0})
			}
			return true
		}
		m := (t0 + t1) / 2
		return left > 0 && follow(t0, m, left-1) && follow(m, t1, left-1)
	}
	for i := 0; i+1 < len(breaks); i++ {
		if !follow(breaks[i], breaks[i+1], mostHalvings) {
			return nil, ErrNotSmooth
		}
	}
	return out, nil
}

// biarc is the pair of arcs, tangent to each other and to the curve at both
// ends, that take equal lengths of tangent there: with v from end to end and unit
// directions s and t the length d solves 2(1-s.t) d^2 + 2 v.(s+t) d = v.v, and
// the arcs meet half way between the tangents' ends (geometry). The vertices come
// with the bulge that leads to them. It is false if the curve strays from them
// by more than tol.
func biarc(c Curve, t0, t1, tol float64) ([]Vertex, bool) {
	p, s := c(t0)
	q, t := c(t1)
	s, t = unit(s), unit(t)
	v := sub(q, p)
	vv := dot(v, v)
	if !finite(p.X, p.Y, q.X, q.Y, s.X, s.Y, t.X, t.Y) || !(vv > SideTest*SideTest) {
		return nil, false
	}
	a, b := 1-dot(s, t), dot(v, add(s, t))
	d := (math.Sqrt(float64(b*b)+float64(2*a*vv)) - b) / (2 * a)
	if !(a > 1e-9) { // the directions are parallel
		d = vv / (2 * b)
	}
	if !(d > 0 && d < 10*math.Sqrt(vv)) {
		return nil, false
	}
	m := scale(add(add(p, q), scale(sub(s, t), d)), 0.5)
	arcs := [2]seg{arcFrom(p, s, m), arcFrom(q, scale(t, -1), m)}
	arcs[1] = arcs[1].reversed()
	if math.Abs(arcs[0].bulge) > 0.5 || math.Abs(arcs[1].bulge) > 0.5 || gap(p, m) < SideTest || gap(m, q) < SideTest {
		return nil, false
	}
	// Between two of 32 samples a smooth curve strays little: a tenth is kept
	// for it.
	for i := 1; i < 32; i++ {
		x, _ := c(t0 + float64((t1-t0)*float64(i))/32)
		if !(distance(arcs[:], x) <= 0.9*tol) {
			return nil, false
		}
	}
	return []Vertex{{m.X, m.Y, arcs[0].bulge}, {q.X, q.Y, arcs[1].bulge}}, true
}

// arcFrom leaves p along s and ends in q: the chord lies off s by half the
// sweep, and tan(sweep/4) is that of half the angle.
func arcFrom(p, s, q Point) seg {
	v := sub(q, p)
	return newSeg(p, q, cross(s, v)/(norm(v)+dot(s, v)))
}

func unit(p Point) Point { return scale(p, 1/norm(p)) }

// spline is a cubic spline by its slopes at the points.
type spline struct {
	p, m  []Point
	knots []float64
}

func newSpline(points []Point, closed bool) (*spline, error) {
	n, least := len(points), 2
	if closed {
		least = 3
	}
	if n < least {
		return nil, &Fault{Kind: TooFewVertices, Side: n, With: n}
	}
	s := &spline{p: append([]Point(nil), points...)}
	if closed {
		s.p = append(s.p, points[0])
	}
	s.knots = make([]float64, len(s.p))
	for i, q := range s.p {
		if !(math.Abs(q.X) <= Limit && math.Abs(q.Y) <= Limit) {
			return nil, &Fault{Kind: NotFinite, Side: i, With: i, At: q}
		}
		if i == 0 {
			continue
		}
		h := gap(s.p[i-1], q)
		if !(h > SideTest) {
			return nil, &Fault{Kind: ZeroLength, Side: i - 1, With: i % n, At: q}
		}
		s.knots[i] = s.knots[i-1] + h
	}
	s.slopes(closed)
	return s, nil
}

// slopes solves h1 m0 + 2 (h0+h1) m1 + h0 m2 = 3 (h1 d0 + h0 d1) at every
// point, h and d the length and slope of the chords, by sweeps: the middle
// outweighs both sides twice, so every sweep halves the error.
func (s *spline) slopes(closed bool) {
	n := len(s.p) - 1
	h := func(i int) float64 { return s.knots[i+1] - s.knots[i] }
	d := func(i int) Point { return scale(sub(s.p[i+1], s.p[i]), 1/h(i)) }
	s.m = make([]Point, n+1)
	for i := range s.m {
		s.m[i] = d(min(i, n-1))
	}
	between := func(i, j int, before, after Point) Point {
		r := scale(add(scale(d(i), h(j)), scale(d(j), h(i))), 3)
		r = sub(r, add(scale(before, h(j)), scale(after, h(i))))
		return scale(r, 1/(2*(h(i)+h(j))))
	}
	for sweep := 0; sweep < 64; sweep++ {
		if closed {
			s.m[0] = between(n-1, 0, s.m[n-1], s.m[1])
			s.m[n] = s.m[0]
		} else {
			s.m[0] = scale(sub(scale(d(0), 3), s.m[1]), 0.5)
			s.m[n] = scale(sub(scale(d(n-1), 3), s.m[n-1]), 0.5)
		}
		for i := 1; i < n; i++ {
			s.m[i] = between(i-1, i, s.m[i-1], s.m[i+1])
		}
	}
}

func (s *spline) total() float64 { return s.knots[len(s.knots)-1] }

// at is the place and slope at the length t of chords.
func (s *spline) at(t float64) (Point, Point) {
	lo, hi := 0, len(s.knots)-2
	for lo < hi {
		k := (lo + hi + 1) / 2
		if s.knots[k] <= t {
			lo = k
		} else {
			hi = k - 1
		}
	}
	h := s.knots[lo+1] - s.knots[lo]
	x := (t - s.knots[lo]) / h
	p, q, m, n := s.p[lo], s.p[lo+1], scale(s.m[lo], h), scale(s.m[lo+1], h)
	if x == 1 {
		return q, n
	}
	// Hermite: p + x m + x^2 (3(q-p) - 2m - n) + x^3 (2(p-q) + m + n).
	c2 := sub(scale(sub(q, p), 3), add(scale(m, 2), n))
	c3 := add(scale(sub(p, q), 2), add(m, n))
	at := along(p, add(m, scale(add(c2, scale(c3, x)), x)), x)
	dir := add(m, scale(add(scale(c2, 2), scale(c3, 3*x)), x))
	return at, dir
}
