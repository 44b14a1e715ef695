package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// Published charts against whole boxes: roofs and leaning walls are resolved,
// and the angles read off their panels. Keys are ids in facts/checks.csv and
// angles.csv; the bound is half of the last printed digit, and a little.

// hopper is a box of n leaning walls, each turned out from upright by 90 - t.
func hopper(n int, t float64) box.Design {
	d := box.Design{Name: "hopper", Board: thick(6), Size: box.Cavity{Height: 60}, Footprint: box.Regular{Sides: n, Across: 240},
		Corners: box.Corners{Joint: joints.Mitre{}}, Floor: box.NoFloor{}, Roof: box.NoRoof{}}
	for i := range n {
		d.Walls = append(d.Walls, box.Wall{On: box.WallN(i + 1), Lean: box.Deg(90 - t)})
	}
	return d
}

// pyramid is a box under a hip of n slopes of the pitch t.
func pyramid(n int, t float64) box.Design {
	return box.Design{Name: "pyramid", Board: thick(6), Size: box.Cavity{Height: 150}, Footprint: box.Regular{Sides: n, Across: 240},
		Corners: box.Corners{Joint: joints.Mitre{}}, Floor: box.NoFloor{}, Roof: box.Hip{Pitch: box.Deg(t)}}
}

// sawAngles reads the end of a part where it meets another: from square on the
// face, as a mitre gauge is set, and from square through the thickness.
func sawAngles(t *testing.T, p *box.Plan, part, other box.Part) (gauge, tilt float64) {
	t.Helper()
	for _, e := range piece(t, p, part).Panel.Edges {
		if e.Neighbour == other {
			return math.Atan(math.Abs((e.To.X-e.From.X)/(e.To.Y-e.From.Y))) * 180 / math.Pi, math.Abs(float64(e.Bevel))
		}
	}
	t.Fatalf("%s does not meet %s", part, other)
	return 0, 0
}

// The whole printed chart, for the slopes of a roof: gauge angle and blade tilt
// for 4 to 10 sides (hopper-m-n-t, hopper-b-n-t, chart-m-n-t, chart-b-n-t;
// source craftsman-chart, compound angle setting chart: read; 4 sides at 45
// also woodcentral-miter, sample: 35.26 and 30.00).
func TestCompoundAngleChart(t *testing.T) {
	for _, x := range []struct {
		t           int
		gauge, tilt [7]float64
	}{
		{5, [7]float64{44.89, 35.90, 29.91, 25.63, 22.42, 19.93, 17.94}, [7]float64{3.53, 2.94, 2.50, 2.17, 1.91, 1.71, 1.54}},
		{10, [7]float64{44.56, 35.58, 29.62, 25.37, 22.19, 19.72, 17.74}, [7]float64{7.05, 5.86, 4.98, 4.32, 3.81, 3.40, 3.08}},
		{15, [7]float64{44.01, 35.06, 29.15, 24.95, 21.81, 19.37, 17.42}, [7]float64{10.55, 8.75, 7.44, 6.45, 5.68, 5.08, 4.59}},
		{20, [7]float64{43.22, 34.32, 28.48, 24.35, 21.27, 18.88, 16.98}, [7]float64{14.00, 11.60, 9.85, 8.53, 7.52, 6.72, 6.07}},
		{25, [7]float64{42.19, 33.36, 27.62, 23.56, 20.58, 18.26, 16.41}, [7]float64{17.39, 14.38, 12.20, 10.57, 9.31, 8.31, 7.50}},
		{30, [7]float64{40.89, 32.18, 26.57, 22.64, 19.73, 17.50, 15.72}, [7]float64{20.70, 17.09, 14.48, 12.53, 11.03, 9.85, 8.89}},
		{35, [7]float64{39.32, 30.76, 25.31, 21.53, 18.74, 16.60, 14.90}, [7]float64{23.93, 19.70, 16.67, 14.41, 12.68, 11.31, 10.21}},
		{40, [7]float64{37.45, 29.10, 23.86, 20.25, 17.60, 15.58, 13.98}, [7]float64{27.03, 22.20, 18.75, 16.19, 14.24, 12.70, 11.46}},
		{45, [7]float64{35.26, 27.19, 22.21, 18.80, 16.32, 14.43, 12.94}, [7]float64{30.00, 24.56, 20.70, 17.87, 15.70, 14.00, 12.62}},
		{50, [7]float64{32.73, 25.03, 20.36, 17.20, 14.91, 13.17, 11.80}, [7]float64{32.80, 26.76, 22.52, 19.41, 17.05, 15.19, 13.69}},
	} {
		for i := range 7 {
			n := i + 4
			p := resolve(t, pyramid(n, float64(x.t)))
			for k := 1; k <= n; k += n - 1 { // both hips of the first slope, and of the last
				bound := 0.0051
				if n == 7 && x.t == 25 { // misprinted by 0.0191: the rule gives 23.579
					bound = 0.02
				}
				gauge, tilt := sawAngles(t, p, box.RoofN(k), box.RoofN(k%n+1))
				assert.InDelta(t, x.gauge[i], gauge, bound, "hopper-m-%d-%d", n, x.t)
				assert.InDelta(t, x.tilt[i], tilt, 0.0051, "hopper-b-%d-%d", n, x.t)
			}
		}
	}
}

// Leaning walls (hopper-c-m, hopper-c-b, calc-m, calc-b and dihedral rows:
// woodcentral-miter, formulas, and geometry, normals: computed).
func TestLeaningWallAngles(t *testing.T) {
	for _, x := range []struct {
		n           int
		t           float64
		gauge, tilt float64
	}{
		{3, 80, 16.7396, 58.5251}, {4, 60, 26.5651, 37.7612}, {4, 75, 14.5108, 43.0795}, {4, 80, 9.8511, 44.1360}, {4, 85, 4.9811, 44.7824},
		{5, 60, 19.9646, 30.5997}, {5, 80, 7.1906, 35.3701}, {6, 60, 16.1021, 25.6589}, {6, 80, 5.7251, 29.4987}, {6, 90, 0, 30},
		{8, 75, 6.1191, 21.6937}, {8, 85, 2.0675, 22.4097}, {12, 60, 7.6307, 12.9525}, {12, 80, 2.6640, 14.7669},
	} {
		p := resolve(t, hopper(x.n, x.t))
		for k := 1; k <= x.n; k++ {
			gauge, tilt := sawAngles(t, p, box.WallN(k), box.WallN(k%x.n+1))
			assert.InDelta(t, x.gauge, gauge, 1e-4, "calc-m-%d-%v", x.n, x.t)
			assert.InDelta(t, x.tilt, tilt, 1e-4, "calc-b-%d-%v", x.n, x.t)
		}
		for _, s := range p.Seams() { // equal boards halve the corner
			assert.InDelta(t, 180-2*x.tilt, float64(s.Theta), 2e-4, "dihedral-%d-%v", x.n, x.t)
		}
	}
}

// Polygon mitres of upright boxes (poly-3 ... poly-12: craftsman-chart pitch 0
// and tablesaw-joinery: read; 3 and 12: 180/n).
func TestPolygonMitres(t *testing.T) {
	for n, want := range map[int]float64{3: 60, 4: 45, 5: 36, 6: 30, 7: 25.71, 8: 22.5, 9: 20, 10: 18, 12: 15} {
		_, tilt := sawAngles(t, resolve(t, hopper(n, 90)), box.WallN(1), box.WallN(2))
		assert.InDelta(t, want, tilt, 0.0051, "poly-%d", n)
	}
}

// under is a pent with the given rise over a run of 12 inches, as roof tables
// have it.
func under(rise float64, roof box.RoofForm) box.Design {
	d := box.Design{Name: "table", Board: thick(15), Size: box.Cavity{Width: box.Inch(20), Depth: box.Inch(12), Height: box.Inch(10)}, Floor: box.NoFloor{}, Roof: roof}
	switch r := roof.(type) {
	case box.Pent:
		r.Rise = box.Inch(rise)
		d.Roof = r
	case box.Gable: // the run is half the width
		r.Rise = box.Inch(rise)
		d.Roof, d.Size = r, box.Cavity{Width: box.Inch(24), Depth: box.Inch(20), Height: box.Inch(10)}
	case box.Hip:
		r.Rise = box.Inch(rise)
		d.Roof, d.Size = r, box.Cavity{Width: box.Inch(24), Depth: box.Inch(24), Height: box.Inch(10)}
	}
	return d
}

// Slope lengths, hip lengths and angles per foot of run, in inches, for rises of
// 1 to 18: lines 1 and 2 stamped on framing squares (sq-c, sq-h, square-c:
// from memory), of which army-en0069 prints 16 and 13, hodgson-square 9, and
// computed angles (ang, roof-angle: roofonline, atan(rise/run)).
func TestRoofTables(t *testing.T) {
	line1 := [18]float64{12.04, 12.17, 12.37, 12.65, 13.00, 13.42, 13.89, 14.42, 15.00, 15.62, 16.28, 16.97, 17.69, 18.44, 19.21, 20.00, 20.81, 21.63}
	line2 := [18]float64{17.00, 17.09, 17.23, 17.44, 17.69, 18.00, 18.36, 18.76, 19.21, 19.70, 20.22, 20.78, 21.38, 22.00, 22.65, 23.32, 24.02, 24.74}
	angle := map[int]float64{3: 14.0362, 4: 18.4349, 6: 26.5651, 8: 33.6901, 10: 39.8056, 12: 45, 16: 53.1301}
	for i := range 18 {
		rise := float64(i + 1)
		pent, gable, hip := resolve(t, under(rise, box.Pent{})), resolve(t, under(rise, box.Gable{Ridge: joints.Mitre{}})), resolve(t, under(rise, box.Hip{}))
		// The cavity faces: 12 in of run each.
		inch := func(x box.MM) float64 { return float64(x) / 25.4 }
		assert.InDelta(t, line1[i], inch(piece(t, pent, box.Roof).Nominal[1]), 0.0051, "sq-c%d", i+1)
		assert.InDelta(t, line1[i], inch(piece(t, gable, box.RoofLeft).Nominal[1]), 0.0051, "sq-c%d", i+1)
		assert.InDelta(t, line1[i], inch(piece(t, hip, box.RoofBack).Nominal[1]), 0.0051, "sq-c%d", i+1)
		for _, pair := range [][2]box.Part{{box.RoofFront, box.RoofRight}, {box.RoofBack, box.RoofLeft}} {
			for _, s := range hip.Seams() {
				if s.Over == pair[0] && s.Under == pair[1] || s.Over == pair[1] && s.Under == pair[0] {
					dx, dy, dz := float64(s.To.X-s.From.X)/25.4, float64(s.To.Y-s.From.Y)/25.4, float64(s.To.Z-s.From.Z)/25.4
					assert.InDelta(t, line2[i], math.Sqrt(dx*dx+dy*dy+dz*dz), 0.0051, "sq-h%d", i+1)
					assert.InDelta(t, 16.97, math.Hypot(dx, dy), 0.0051, "hip-run, roof-hiprun: griffith-carpentry, section 20: read")
					assert.InDelta(t, rise, dz, 1e-6)
				}
			}
		}
		if want, ok := angle[i+1]; ok {
			up := piece(t, pent, box.Roof).Home.V
			assert.InDelta(t, want, math.Atan2(up.Z, up.Y)*180/math.Pi, 1e-4, "roof-angle-%d", i+1)
		}
		// The boards themselves: over walls of 15 the inner face grows in
		// proportion.
		over := 15 / 25.4
		assert.InDelta(t, line1[i]*(12+2*over)/12, innerHeight(t, pent, box.Roof)/25.4, 0.0056, "sq-c%d over walls", i+1)
	}
	// Printed: army-en0069, text at fig. 2-14 to 2-17, rise 16: 20.00 and 13:
	// 17.69; hodgson-square, fig. 55, rise 9: 15; fig. 57 the hip, to a quarter
	// inch: 19.25 (roof-16, roof-13, roof-9, roof-hip9).
	assert.Equal(t, [3]float64{20, 17.69, 15}, [3]float64{line1[15], line1[12], line1[8]})
	assert.InDelta(t, 19.25, line2[8], 0.13)
}

// innerHeight is the height of a part's inner face, measured on its outline.
func innerHeight(t *testing.T, p *box.Plan, name box.Part) float64 {
	t.Helper()
	q := piece(t, p, name)
	face := map[bool]outline.Region{true: q.Panel.Machined, false: q.Panel.Far}[q.Panel.Face == box.FromInner]
	return face.Extents().Height()
}

// Area multipliers: slope 6 in 12 gives 1.118, so that 5000 of footprint is
// 5590 of roof; 7 in 12 gives 1.16 (roof-mult-6, roof-area-6, roof-mult-7:
// roof-slope-page, worked examples: read).
func TestRoofAreas(t *testing.T) {
	area := func(rise float64) float64 {
		n := piece(t, resolve(t, under(rise, box.Pent{})), box.Roof).Nominal
		return float64(n[0]) * float64(n[1]) / (20 * 12 * 25.4 * 25.4)
	}
	assert.InDelta(t, 1.118, area(6), 0.0006)
	assert.InDelta(t, 5590, 5000*area(6), 0.6)
	assert.InDelta(t, 1.16, area(7), 0.0051)
}

// Gables and hips in millimetres (geometry: run/cos p, run tan p, atan(tan p /
// sqrt 2), normals; hip-bevel-30: woodcentral-miter).
func TestGablesAndHips(t *testing.T) {
	// 150 outside, pitch 45: 75/cos 45 = 106.0660 from the ridge to the wall
	// (gable-150-45); pitch 30 rises 75 tan 30 = 43.3013 (gable-rise-150-30).
	gable := func(pitch box.Deg) *box.Plan {
		return resolve(t, box.Design{Name: "gable", Board: thick(15), Size: box.Outside{Width: 150, Depth: 150, Height: 200},
			Floor: box.FloorBetween{}, Roof: box.Gable{Pitch: pitch, Ridge: joints.Mitre{}}})
	}
	assert.InDelta(t, 106.0660, innerHeight(t, gable(45), box.RoofLeft), 1e-4)
	for _, side := range []box.Part{box.RoofLeft, box.RoofRight} {
		p := gable(30)
		q := piece(t, p, side)
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, v := range q.Panel.Machined[0] { // the inner face, laid in the world
			z := q.Home.Out(solid.Vec{X: v.X, Y: v.Y}).Z
			lo, hi = math.Min(lo, z), math.Max(hi, z)
		}
		assert.Equal(t, box.FromInner, q.Panel.Face)
		assert.InDelta(t, 43.3013, hi-lo, 1e-4)
	}
	for _, x := range []struct{ pitch, hip, theta, bevel float64 }{
		{45, 35.2644, 120, 30},           // hip-slope-45, hip-dihedral-45; halved
		{30, 22.2077, 138.5904, 20.7048}, // atan(tan 30/sqrt 2) = 22.2077; hip-dihedral-30, hip-bevel-30
	} {
		p := resolve(t, box.Design{Name: "hip", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{}, Roof: box.Hip{Pitch: box.Deg(x.pitch)}})
		hips := 0
		for _, s := range p.Seams() {
			if s.Joint != "mitre" {
				continue
			}
			hips++
			run := math.Hypot(float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y))
			assert.InDelta(t, x.hip, math.Atan(float64(s.To.Z-s.From.Z)/run)*180/math.Pi, 1e-4)
			assert.InDelta(t, x.theta, float64(s.Theta), 1e-4)
		}
		assert.Equal(t, 4, hips)
		_, tilt := sawAngles(t, p, box.RoofFront, box.RoofRight)
		assert.InDelta(t, x.bevel, tilt, 1e-4)
	}
}

// Round holes are round: a hole of 32 has 804.2477 mm2 (hole-area-32: pi r^2),
// on its panel, as an operation, and in the wood it takes out; four vents of
// 5/8 in have 791.730 together (vent-area: nestwatch_features: computed).
func TestHoleAreas(t *testing.T) {
	p := resolve(t, orchard)
	blank := resolve(t, orchard.With(func(d *box.Design) { d.Features = nil }))
	q := piece(t, p, box.Front)
	var bore *box.Op
	for i := range q.Panel.Ops {
		if q.Panel.Ops[i].Kind == box.OpBore {
			bore = &q.Panel.Ops[i]
		}
	}
	require.NotNil(t, bore)
	_, dia, ok := bore.Region[0].IsCircle(1e-9)
	assert.True(t, ok)
	assert.InDelta(t, 32, dia, 1e-9)
	assert.InDelta(t, 804.2477, bore.Region.Area(), 1e-4)
	assert.InDelta(t, 804.2477*14.6, piece(t, blank, box.Front).Volume-q.Volume, 1e-4*14.6)
	v := resolve(t, orchard.With(func(d *box.Design) { d.Features = []box.Feature{box.Vents{Diameter: box.Inch(5. / 8)}} }))
	sum := 0.0
	for _, name := range []box.Part{box.Left, box.Right} {
		for _, op := range piece(t, v, name).Panel.Ops {
			sum += op.Region.Area()
		}
	}
	assert.InDelta(t, 791.730, sum, 0.001, "vent-area")
}
