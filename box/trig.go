package box

import "math"

// sincos is exact at multiples of 90 degrees, so that upright parts get no
// crumbs of 1e-17.
func sincos(deg float64) (s, c float64) {
	d := math.Mod(deg, 360)
	if d < 0 {
		d += 360
	}
	switch d {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(d * math.Pi / 180)
}

func tan(deg float64) float64 {
	s, c := sincos(deg)
	return s / c
}

func atan(x float64) float64 { return math.Atan(x) * 180 / math.Pi }

// plainAngle is an angle as a plan states it, to 1e-9 degrees: 30 is 30, whatever
// sines it comes of.
func plainAngle(x float64) Deg { return Deg(math.Round(x*1e9)/1e9 + 0) }
