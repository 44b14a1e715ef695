package outline

import "math"

// The standard library's trigonometry may be compiled with fused products on
// one processor and without on another, and its hypotenuse is assembly on some;
// files must not differ by processor, so the few functions needed are written
// out here, products rounded one by one. Errors stay within a few ulps. (Halves
// and other powers of two are left bare: they are exact, fused or not.)

// halfPiLow is pi/2 less its float64.
const halfPiLow = 6.123233995736766e-17

// sincos is the sine and cosine of x radians. Meant for |x| up to some turns.
func sincos(x float64) (sin, cos float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return math.NaN(), math.NaN()
	}
	if !(math.Abs(x) < 1e6) {
		x = math.Mod(x, 2*math.Pi)
	}
	k := math.Floor(x/(math.Pi/2) + 0.5)
	t := x - float64(k*(math.Pi/2)) - float64(k*halfPiLow)
	s, c := sincosSmall(t)
	switch int64(k) & 3 {
	case 0:
		return s, c
	case 1:
		return c, -s
	case 2:
		return -s, -c
	default:
		return -c, s
	}
}

// sincosSmall sums the Taylor series, enough for |t| <= pi/4: the first terms
// left out are below (pi/4)^19/19! = 8e-20.
func sincosSmall(t float64) (sin, cos float64) {
	q := float64(t * t)
	s, c := 0.0, 0.0
	for n := 17; n >= 3; n -= 2 {
		s = float64((1-s)*q) / float64(n*(n-1))
		c = float64((1-c)*q) / float64((n-1)*(n-2))
	}
	return t - float64(t*s), 1 - c
}

// atanEighths holds atan(k/8), k = 0 to 8.
var atanEighths = [9]float64{
	0,
	0.12435499454676143503,
	0.24497866312686415417,
	0.35877067027057222039,
	0.46364760900080611621,
	0.55859931534356243597,
	0.64350110879328438680,
	0.71882999962162450541,
	0.78539816339744830961,
}

// atan is the arc tangent: moved to within 1/16 of zero by
// atan x = atan c + atan((x-c)/(1+xc)), then the power series.
func atan(x float64) float64 {
	switch {
	case x < 0:
		return -atan(-x)
	case x > 1:
		return math.Pi/2 - atan(1/x)
	case !(x >= 0):
		return math.NaN()
	}
	k := int(x*8 + 0.5)
	c := float64(k) / 8
	t := (x - c) / (1 + float64(x*c))
	q := float64(t * t)
	s := 0.0
	for n := 15; n >= 1; n -= 2 {
		s = 1/float64(n) - float64(q*s)
	}
	return atanEighths[k] + float64(t*s)
}

// atan2 is the angle of (x, y), in -pi to pi.
func atan2(y, x float64) float64 {
	var a float64
	if ax, ay := math.Abs(x), math.Abs(y); ax >= ay {
		if ax == 0 {
			return 0
		}
		a = atan(ay / ax)
	} else {
		a = math.Pi/2 - atan(ax/ay)
	}
	if x < 0 {
		a = math.Pi - a
	}
	if y < 0 {
		a = -a
	}
	return a
}

func add(a, b Point) Point              { return Point{a.X + b.X, a.Y + b.Y} }
func sub(a, b Point) Point              { return Point{a.X - b.X, a.Y - b.Y} }
func scale(a Point, k float64) Point    { return Point{float64(a.X * k), float64(a.Y * k)} }
func dot(a, b Point) float64            { return float64(a.X*b.X) + float64(a.Y*b.Y) }
func cross(a, b Point) float64          { return float64(a.X*b.Y) - float64(a.Y*b.X) }
func norm(a Point) float64              { return math.Sqrt(dot(a, a)) }
func gap(a, b Point) float64            { return norm(sub(a, b)) }
func left(a Point) Point                { return Point{-a.Y, a.X} }
func along(a, d Point, t float64) Point { return add(a, scale(d, t)) }
func finite(v ...float64) bool {
	for _, x := range v {
		if !(math.Abs(x) <= math.MaxFloat64) {
			return false
		}
	}
	return true
}
