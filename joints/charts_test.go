package joints

import (
	"math"
	"testing"
)

// insideAngle is between neighbouring faces of n equal ones, each tilted from
// the plane of the base (90 is an upright box), worked out from the normals
// (sin t cos p, sin t sin p, cos t): nothing here knows the formula of a chart.
func insideAngle(n int, tilt float64) Deg {
	t, p := tilt*math.Pi/180, 2*math.Pi/float64(n)
	dot := math.Sin(t)*math.Sin(t)*math.Cos(p) + math.Cos(t)*math.Cos(t)
	return Deg(180 - math.Acos(dot)*180/math.Pi)
}

// Saw tilts of mitred corners. Keys are ids in facts/checks.csv; the bound is
// half of the last printed digit.
func TestMitreCharts(t *testing.T) {
	for _, x := range []struct {
		key   string
		n     int
		tilt  float64
		bevel float64
		bound float64
	}{
		// craftsman-chart, compound angle setting chart: read
		{"hopper-b-4-5", 4, 5, 3.53, 0.0051},
		{"hopper-b-4-10", 4, 10, 7.05, 0.0051},
		{"hopper-b-4-15", 4, 15, 10.55, 0.0051},
		{"hopper-b-4-30", 4, 30, 20.70, 0.0051},
		{"hopper-b-4-45", 4, 45, 30.00, 0.0051},
		{"hopper-b-5-20", 5, 20, 11.60, 0.0051},
		{"hopper-b-5-35", 5, 35, 19.70, 0.0051},
		{"hopper-b-6-10", 6, 10, 4.98, 0.0051},
		{"hopper-b-6-30", 6, 30, 14.48, 0.0051},
		{"hopper-b-6-45", 6, 45, 20.70, 0.0051},
		{"hopper-b-7-15", 7, 15, 6.45, 0.0051},
		{"hopper-b-8-20", 8, 20, 7.52, 0.0051},
		{"hopper-b-8-40", 8, 40, 14.24, 0.0051},
		{"hopper-b-9-25", 9, 25, 8.31, 0.0051},
		{"hopper-b-10-30", 10, 30, 8.89, 0.0051},
		{"hopper-b-10-50", 10, 50, 13.69, 0.0051},
		// woodcentral-miter, sample solution: read
		{"hopper-wc-y", 4, 45, 30.00, 0.0051},
		// woodcentral-miter, formulas: computed
		{"hopper-c-b-4-75", 4, 75, 43.0795, 0.0001},
		{"hopper-c-b-4-80", 4, 80, 44.1360, 0.0001},
		{"hopper-c-b-6-80", 6, 80, 29.4987, 0.0001},
		{"hopper-c-b-8-75", 8, 75, 21.6937, 0.0001},
		{"hip-bevel-30", 4, 30, 20.7048, 0.0001},
		// polygons: craftsman-chart pitch 0, tablesaw-joinery; 3 and 12: geometry
		{"poly-3", 3, 90, 60, 0.0051},
		{"poly-4", 4, 90, 45, 0.0051},
		{"poly-5", 5, 90, 36, 0.0051},
		{"poly-6", 6, 90, 30, 0.0051},
		{"poly-7", 7, 90, 25.71, 0.0051},
		{"poly-8", 8, 90, 22.5, 0.0051},
		{"poly-9", 9, 90, 20, 0.0051},
		{"poly-10", 10, 90, 18, 0.0051},
		{"poly-12", 12, 90, 15, 0.0051},
		// angles.csv, "hopper computed": woodcentral-miter, formulas
		{"calc-b-3-60", 3, 60, 48.5904, 0.0001},
		{"calc-b-3-85", 3, 85, 59.6245, 0.0001},
		{"calc-b-4-60", 4, 60, 37.7612, 0.0001},
		{"calc-b-5-60", 5, 60, 30.5997, 0.0001},
		{"calc-b-5-85", 5, 85, 35.8418, 0.0001},
		{"calc-b-6-75", 6, 75, 28.8791, 0.0001},
		{"calc-b-8-85", 8, 85, 22.4097, 0.0001},
		{"calc-b-12-60", 12, 60, 12.9525, 0.0001},
		{"calc-b-12-80", 12, 80, 14.7669, 0.0001},
	} {
		a, b := bevels(t, at(15, 15, insideAngle(x.n, x.tilt), 0))
		near(t, x.key, a, x.bevel, x.bound)
		near(t, x.key, b, x.bevel, x.bound)
	}
}

// Angles between neighbours, and the bevel of a butted corner: 90 less it.
func TestButtCharts(t *testing.T) {
	for _, x := range []struct {
		key   string
		n     int
		tilt  float64
		theta float64
	}{ // geometry, normals of two neighbours: computed
		{"dihedral-4-75", 4, 75, 93.8410},
		{"dihedral-4-80", 4, 80, 91.7279},
		{"dihedral-6-80", 6, 80, 121.0026},
		{"dihedral-8-75", 8, 75, 136.6127},
		{"hip-dihedral-45", 4, 45, 120},
		{"hip-dihedral-30", 4, 30, 138.5904},
	} {
		theta := insideAngle(x.n, x.tilt)
		near(t, x.key, float64(theta), x.theta, 0.0001)
		c := at(15, 12, theta, 0)
		s := section(t, Butt{}, c)
		near(t, x.key+" butted", float64(c.BevelA(s.A.Keep[0])), 90-x.theta, 0.0001)
		near(t, x.key+" butted", float64(c.BevelB(s.B.Keep[0])), 90-x.theta, 0.0001)
	}
	for _, x := range []struct {
		key         string
		tilt, bevel float64
	}{ // geometry, asin(cos^2 t): computed. At these obtuse corners A is shorter
		// on its outer face, so the bevel counts as negative.
		{"butt-4-75", 75, 3.8410},
		{"butt-4-80", 80, 1.7279},
		{"butt-4-85", 85, 0.4352},
		{"calc-butt-4-60", 60, 14.4775},
		{"calc-butt-4-90", 90, 0},
	} {
		c := at(15, 15, insideAngle(4, x.tilt), 0)
		s := section(t, Butt{}, c)
		near(t, x.key, float64(c.BevelA(s.A.Keep[0])), -x.bevel, 0.0001)
		sq := section(t, Butt{LapSquare: true, EndSquare: true}, c)
		near(t, x.key+" square", float64(c.BevelA(sq.A.Keep[0])), 0, 1e-12)
		near(t, x.key+" square", float64(c.BevelB(sq.B.Keep[0])), 0, 1e-12)
	}
}

// A bevel is what the two reaches say: its tangent is their difference over
// the thickness.
func TestBevelAgreesWithReaches(t *testing.T) {
	for _, theta := range []Deg{70, 80, 90, 104, 125} {
		c := at(15, 12, theta, 0)
		for _, j := range []Joint{Butt{}, Butt{LapSquare: true}, Butt{EndSquare: true}, Mitre{}, Rebate{}, Comb{}} {
			s := section(t, j, c)
			near(t, s.Name, math.Tan(float64(c.BevelA(s.A.Keep[0]))*math.Pi/180), float64(s.A.Outer-s.A.Inner)/15, 1e-9)
			near(t, s.Name, math.Tan(float64(c.BevelB(s.B.Keep[0]))*math.Pi/180), float64(s.B.Outer-s.B.Inner)/12, 1e-9)
		}
	}
}

// A reach is the distance along the face of the point where the end meets it.
func TestReachIsAlong(t *testing.T) {
	for _, theta := range []Deg{70, 90, 125} {
		c := at(15, 12, theta, 10)
		s := section(t, Rebate{Depth: 7}, c)
		near(t, "A inner", float64(s.A.Inner), float64(c.AlongA(0, 22)), 1e-9)
		near(t, "A outer", float64(s.A.Outer), float64(c.AlongA(15, 22)), 1e-9)
		near(t, "B inner", float64(s.B.Inner), float64(c.AlongB(7, 0)), 1e-9)
		near(t, "B outer", float64(s.B.Outer), float64(c.AlongB(7, 12)), 1e-9)
	}
	// At 60 degrees, 15 and 12, worked by hand: (7 + 12/2) / (rt3/2) = 26/rt3.
	near(t, "AlongB", float64(at(15, 12, 60, 0).AlongB(7, 12)), 26/math.Sqrt(3), 1e-9)
}
