package species

import (
	"bytes"
	"encoding/binary"
	"math"
	"slices"
	"strconv"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
	"holt.example/render/stl"
)

// A boxCheck is a figure worked out elsewhere, of angles, roofs, cutters, arcs and
// files: how it is printed, how far it may be off (half a unit of its last digit),
// and where it stands. "read" was read there, "computed" follows from a formula
// read there or from geometry, "memory" is remembered. Those of wood, nails, glue
// and units stand in package timber.
type boxCheck struct {
	id        string
	want, tol float64
	got       func() float64
	source    string
}

var boxChecks = []boxCheck{
	{"hopper-m-4-5", 44.89, 0.0051, func() float64 { return gauge(hip(4, 5)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-4-5", 3.53, 0.0051, func() float64 { return tilt(hip(4, 5)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-4-10", 44.56, 0.0051, func() float64 { return gauge(hip(4, 10)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-4-10", 7.05, 0.0051, func() float64 { return tilt(hip(4, 10)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-4-15", 44.01, 0.0051, func() float64 { return gauge(hip(4, 15)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-4-15", 10.55, 0.0051, func() float64 { return tilt(hip(4, 15)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-4-30", 40.89, 0.0051, func() float64 { return gauge(hip(4, 30)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-4-30", 20.70, 0.0051, func() float64 { return tilt(hip(4, 30)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-4-45", 35.26, 0.0051, func() float64 { return gauge(hip(4, 45)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-4-45", 30.00, 0.0051, func() float64 { return tilt(hip(4, 45)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-5-20", 34.32, 0.0051, func() float64 { return gauge(hip(5, 20)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-5-20", 11.60, 0.0051, func() float64 { return tilt(hip(5, 20)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-5-35", 30.76, 0.0051, func() float64 { return gauge(hip(5, 35)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-5-35", 19.70, 0.0051, func() float64 { return tilt(hip(5, 35)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-6-10", 29.62, 0.0051, func() float64 { return gauge(hip(6, 10)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-6-10", 4.98, 0.0051, func() float64 { return tilt(hip(6, 10)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-6-30", 26.57, 0.0051, func() float64 { return gauge(hip(6, 30)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-6-30", 14.48, 0.0051, func() float64 { return tilt(hip(6, 30)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-6-45", 22.21, 0.0051, func() float64 { return gauge(hip(6, 45)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-6-45", 20.70, 0.0051, func() float64 { return tilt(hip(6, 45)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-7-15", 24.95, 0.0051, func() float64 { return gauge(hip(7, 15)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-7-15", 6.45, 0.0051, func() float64 { return tilt(hip(7, 15)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-8-20", 21.27, 0.0051, func() float64 { return gauge(hip(8, 20)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-8-20", 7.52, 0.0051, func() float64 { return tilt(hip(8, 20)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-8-40", 17.60, 0.0051, func() float64 { return gauge(hip(8, 40)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-8-40", 14.24, 0.0051, func() float64 { return tilt(hip(8, 40)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-9-25", 18.26, 0.0051, func() float64 { return gauge(hip(9, 25)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-9-25", 8.31, 0.0051, func() float64 { return tilt(hip(9, 25)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-10-30", 15.72, 0.0051, func() float64 { return gauge(hip(10, 30)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-10-30", 8.89, 0.0051, func() float64 { return tilt(hip(10, 30)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-m-10-50", 11.80, 0.0051, func() float64 { return gauge(hip(10, 50)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-b-10-50", 13.69, 0.0051, func() float64 { return tilt(hip(10, 50)) }, "read: craftsman-chart, compound angle setting chart"},
	{"hopper-wc-x", 35.26, 0.0051, func() float64 { return gauge(hip(4, 45)) }, "read: woodcentral-miter, Sample Diagram Solution"},
	{"hopper-wc-y", 30.00, 0.0051, func() float64 { return tilt(hip(4, 45)) }, "read: woodcentral-miter, Sample Diagram Solution"},
	{"hopper-c-m-4-75", 14.5108, 0.0001, func() float64 { return gauge(wallsOf(4, 75, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"hopper-c-b-4-75", 43.0795, 0.0001, func() float64 { return tilt(wallsOf(4, 75, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"dihedral-4-75", 93.8410, 0.0001, func() float64 { return dihedral(wallsOf(4, 75, joints.Mitre{})) }, "computed: geometry, normals of two neighbours; equals 180 - 2 x bevel"},
	{"hopper-c-m-4-80", 9.8511, 0.0001, func() float64 { return gauge(wallsOf(4, 80, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"hopper-c-b-4-80", 44.1360, 0.0001, func() float64 { return tilt(wallsOf(4, 80, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"dihedral-4-80", 91.7279, 0.0001, func() float64 { return dihedral(wallsOf(4, 80, joints.Mitre{})) }, "computed: geometry, normals of two neighbours; equals 180 - 2 x bevel"},
	{"hopper-c-m-6-80", 5.7251, 0.0001, func() float64 { return gauge(wallsOf(6, 80, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"hopper-c-b-6-80", 29.4987, 0.0001, func() float64 { return tilt(wallsOf(6, 80, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"dihedral-6-80", 121.0026, 0.0001, func() float64 { return dihedral(wallsOf(6, 80, joints.Mitre{})) }, "computed: geometry, normals of two neighbours; equals 180 - 2 x bevel"},
	{"hopper-c-m-8-75", 6.1191, 0.0001, func() float64 { return gauge(wallsOf(8, 75, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"hopper-c-b-8-75", 21.6937, 0.0001, func() float64 { return tilt(wallsOf(8, 75, joints.Mitre{})) }, "computed: woodcentral-miter, Formulas"},
	{"dihedral-8-75", 136.6127, 0.0001, func() float64 { return dihedral(wallsOf(8, 75, joints.Mitre{})) }, "computed: geometry, normals of two neighbours; equals 180 - 2 x bevel"},
	{"butt-4-75", 3.8410, 0.0001, func() float64 { return tilt(wallsOf(4, 75, joints.Butt{})) }, "computed: geometry, asin(cos^2 t)"},
	{"butt-4-80", 1.7279, 0.0001, func() float64 { return tilt(wallsOf(4, 80, joints.Butt{})) }, "computed: geometry, asin(cos^2 t)"},
	{"butt-4-85", 0.4352, 0.0001, func() float64 { return tilt(wallsOf(4, 85, joints.Butt{})) }, "computed: geometry, asin(cos^2 t)"},
	{"poly-3", 60, 0.0051, func() float64 { return tilt(wallsOf(3, 90, joints.Mitre{})) }, "computed: geometry, 180/n"},
	{"poly-4", 45, 0.0051, func() float64 { return tilt(wallsOf(4, 90, joints.Mitre{})) }, "read: tablesaw-joinery, paragraph on mitre cuts"},
	{"poly-5", 36, 0.0051, func() float64 { return tilt(wallsOf(5, 90, joints.Mitre{})) }, "read: craftsman-chart, pitch 0"},
	{"poly-6", 30, 0.0051, func() float64 { return tilt(wallsOf(6, 90, joints.Mitre{})) }, "read: craftsman-chart, pitch 0"},
	{"poly-7", 25.71, 0.0051, func() float64 { return tilt(wallsOf(7, 90, joints.Mitre{})) }, "read: craftsman-chart, pitch 0"},
	{"poly-8", 22.5, 0.0051, func() float64 { return tilt(wallsOf(8, 90, joints.Mitre{})) }, "read: tablesaw-joinery, paragraph on mitre cuts"},
	{"poly-9", 20, 0.0051, func() float64 { return tilt(wallsOf(9, 90, joints.Mitre{})) }, "read: craftsman-chart, pitch 0"},
	{"poly-10", 18, 0.0051, func() float64 { return tilt(wallsOf(10, 90, joints.Mitre{})) }, "read: craftsman-chart, pitch 0"},
	{"poly-12", 15, 0.0051, func() float64 { return tilt(wallsOf(12, 90, joints.Mitre{})) }, "computed: geometry, 180/n"},
	{"roof-16", 20.00, 0.0051, func() float64 { return slope(16) }, "read: army-en0069, text at fig. 2-14 to 2-17"},
	{"roof-13", 17.69, 0.0051, func() float64 { return slope(13) }, "read: army-en0069, text at fig. 2-14 to 2-17"},
	{"roof-9", 15, 0.0051, func() float64 { return slope(9) }, "read: hodgson-square, Fig. 55"},
	{"roof-hip9", 19.25, 0.13, func() float64 { return hipLength(9) }, "read: hodgson-square, Fig. 57 (printed to a quarter inch)"},
	{"roof-hiprun", 16.97, 0.0051, func() float64 { return hipRun() }, "read: griffith-carpentry, section 20, Fig. 58"},
	{"roof-mult-6", 1.118, 0.0006, func() float64 { return times(6, 1) }, "read: roof-slope-page, worked example; formula"},
	{"roof-area-6", 5590, 0.6, func() float64 { return times(6, 5000) }, "read: roof-slope-page, worked example (with 1.118)"},
	{"roof-mult-7", 1.16, 0.0051, func() float64 { return times(7, 1) }, "read: roof-slope-page, worked example"},
	{"square-c-3", 12.37, 0.0051, func() float64 { return slope(3) }, "memory: framing-square, line 1"},
	{"square-c-4", 12.65, 0.0051, func() float64 { return slope(4) }, "memory: framing-square, line 1"},
	{"square-c-5", 13.00, 0.0051, func() float64 { return slope(5) }, "memory: framing-square, line 1"},
	{"square-c-8", 14.42, 0.0051, func() float64 { return slope(8) }, "memory: framing-square, line 1"},
	{"square-c-10", 15.62, 0.0051, func() float64 { return slope(10) }, "memory: framing-square, line 1"},
	{"square-c-12", 16.97, 0.0051, func() float64 { return slope(12) }, "memory: framing-square, line 1"},
	{"roof-angle-3", 14.0362, 0.0001, func() float64 { return pitch(3) }, "computed: roofonline, atan(rise/run)"},
	{"roof-angle-4", 18.4349, 0.0001, func() float64 { return pitch(4) }, "computed: roofonline, atan(rise/run)"},
	{"roof-angle-6", 26.5651, 0.0001, func() float64 { return pitch(6) }, "computed: roofonline, atan(rise/run)"},
	{"roof-angle-8", 33.6901, 0.0001, func() float64 { return pitch(8) }, "computed: roofonline, atan(rise/run)"},
	{"roof-angle-12", 45.0000, 0.0001, func() float64 { return pitch(12) }, "computed: roofonline, atan(rise/run)"},
	{"gable-150-45", 106.0660, 0.0001, func() float64 { return gableSlope(45) }, "computed: geometry, run/cos(pitch)"},
	{"gable-rise-150-30", 43.3013, 0.0001, func() float64 { return gableRise(30) }, "computed: geometry, run*tan(pitch)"},
	{"hip-slope-45", 35.2644, 0.0001, func() float64 { return hipSlope(45) }, "computed: geometry, atan(tan p / sqrt 2)"},
	{"hip-dihedral-45", 120, 1e-09, func() float64 { return dihedral(hip(4, 45)) }, "computed: geometry, normals"},
	{"hip-dihedral-30", 138.5904, 0.0001, func() float64 { return dihedral(hip(4, 30)) }, "computed: geometry, normals"},
	{"hip-bevel-30", 20.7048, 0.0001, func() float64 { return tilt(hip(4, 30)) }, "computed: woodcentral-miter, Formulas"},
	{"v-depth-30", 11.1962, 6e-05, func() float64 { return float64(box.Tool{VAngle: 30}.DepthFor(6)) }, "computed: woodworkerb, width formula, inverted"},
	{"v-depth-60", 5.1962, 6e-05, func() float64 { return float64(box.Tool{VAngle: 60}.DepthFor(6)) }, "computed: woodworkerb, width formula, inverted"},
	{"v-depth-90", 3, 6e-05, func() float64 { return float64(box.Tool{VAngle: 90}.DepthFor(6)) }, "computed: woodworkerb, width formula, inverted"},
	{"v-depth-120", 1.7321, 6e-05, func() float64 { return float64(box.Tool{VAngle: 120}.DepthFor(6)) }, "computed: woodworkerb, width formula, inverted"},
	{"v-width-60-tip", 1.9321, 0.0001, func() float64 { return float64(box.Tool{VAngle: 60, Tip: 0.2}.WidthAt(1.5)) }, "computed: woodworkerb, w = d_tip + 2*depth*tan(a/2)"},
	{"corner-radius", 0.25, 1e-09, func() float64 { return 0.5 / 2 }, "read: portlandcnc, The Problem (no code of ours yet: arithmetic)"},
	{"dogbone-travel-6", 1.2426, 0.0001, func() float64 { return 6.0 / 2 * (math.Sqrt2 - 1) }, "computed: geometry, r*(sqrt 2 - 1) (no code of ours yet: arithmetic)"},
	{"chipload", 3600, 1e-06, func() float64 { return 2 * 0.1 * 18000 }, "read: cncshop, worked example (no code of ours yet: arithmetic)"},
	{"bulge-180", 1, 1e-12, func() float64 { return bulge(180) }, "read: dxf-ref-vertex, VERTEX group codes"},
	{"bulge-90", 0.414214, 5e-07, func() float64 { return bulge(90) }, "computed: dxf-ref-vertex, VERTEX group codes"},
	{"bulge-120", 0.577350, 5e-07, func() float64 { return bulge(120) }, "computed: dxf-ref-vertex, VERTEX group codes"},
	{"chord-32", 40, 0, func() float64 { return chords(32, 0.05) }, "computed: geometry, ceil(pi/acos(1-s/r))"},
	{"hole-area-32", 804.2477, 0.0001, func() float64 { return outline.Circle(outline.Point{}, 32).Area() }, "computed: geometry, pi*r^2"},
	{"vent-area", 791.730, 0.001, func() float64 { return ventsArea() }, "computed: nestwatch_features, feature list (count and size)"},
	{"stl-12", 684, 0, func() float64 { return stlBytes() }, "computed: polyu-stl, 84 + 50 n"},
	{"svg-mm", 3.779528, 5e-07, func() float64 { return 96 / 25.4 }, "computed: css-values-4, 1 in = 96 px = 25.4 mm (our drawings have mm themselves: arithmetic)"},
}

// sawCorner is where two parts of a resolved box meet: what a saw is set to.
type sawCorner struct{ gauge, tilt, theta, rise, run, length float64 }

func gauge(c sawCorner) float64    { return c.gauge }
func tilt(c sawCorner) float64     { return c.tilt }
func dihedral(c sawCorner) float64 { return c.theta }

// meet reads the first corner of two parts off a plan.
func meet(d box.Design, a, b box.Part) sawCorner {
	p, err := d.Resolve()
	if err != nil {
		return sawCorner{gauge: math.NaN(), tilt: math.NaN(), theta: math.NaN()}
	}
	var out sawCorner
	q, _ := p.Piece(a)
	for _, e := range q.Panel.Edges {
		if e.Neighbour == b {
			out.gauge = math.Atan(math.Abs((e.To.X-e.From.X)/(e.To.Y-e.From.Y))) * 180 / math.Pi
			out.tilt = math.Abs(float64(e.Bevel))
		}
	}
	for _, s := range p.Seams() {
		if s.Over == a && s.Under == b || s.Over == b && s.Under == a {
			out.theta = float64(s.Theta)
			x, y, z := float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y), float64(s.To.Z-s.From.Z)
			out.rise, out.run, out.length = math.Abs(z), math.Hypot(x, y), math.Sqrt(x*x+y*y+z*z)
		}
	}
	return out
}

// hip is the first corner of n equal slopes, each t degrees from level.
func hip(n int, t box.Deg) sawCorner {
	return meet(box.Design{Name: "hip", Board: box.Board{Thickness: 6}, Size: box.Cavity{Height: 150}, Footprint: box.Regular{Sides: n, Across: 240},
		Corners: box.Corners{Joint: joints.Mitre{}}, Floor: box.NoFloor{}, Roof: box.Hip{Pitch: t}}, box.RoofN(1), box.RoofN(2))
}

// wallsOf is the first corner of n walls that lean out, each t degrees from level.
func wallsOf(n int, t box.Deg, j joints.Joint) sawCorner {
	d := box.Design{Name: "hopper", Board: box.Board{Thickness: 6}, Size: box.Cavity{Height: 60}, Footprint: box.Regular{Sides: n, Across: 240},
		Corners: box.Corners{Joint: j}, Floor: box.NoFloor{}, Roof: box.NoRoof{}}
	for i := range n {
		d.Walls = append(d.Walls, box.Wall{On: box.WallN(i + 1), Lean: 90 - t})
	}
	return meet(d, box.WallN(1), box.WallN(2))
}

// inches is a box under a roof that rises so many inches over a run of 12.
func inches(roof box.RoofForm, w, d float64) *box.Plan {
	return box.Design{Name: "roof", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: box.Inch(w), Depth: box.Inch(d), Height: box.Inch(10)}, Floor: box.NoFloor{}, Roof: roof}.MustResolve()
}

func slope(rise float64) float64 {
	q, _ := inches(box.Pent{Rise: box.Inch(rise)}, 20, 12).Piece(box.Roof)
	return float64(q.Nominal[1]) / 25.4
}

func pitch(rise float64) float64 {
	q, _ := inches(box.Pent{Rise: box.Inch(rise)}, 20, 12).Piece(box.Roof)
	return math.Atan2(q.Home.V.Z, q.Home.V.Y) * 180 / math.Pi
}

// times is the area of a roof over a footprint, measured on its cavity face.
func times(rise, footprint float64) float64 {
	q, _ := inches(box.Pent{Rise: box.Inch(rise)}, 20, 12).Piece(box.Roof)
	return footprint * float64(q.Nominal[0]) * float64(q.Nominal[1]) / (20 * 12 * 25.4 * 25.4)
}

func hipOf(rise float64) sawCorner {
	return meet(box.Design{Name: "roof", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: box.Inch(24), Depth: box.Inch(24), Height: box.Inch(10)}, Floor: box.NoFloor{}, Roof: box.Hip{Rise: box.Inch(rise)}}, box.RoofFront, box.RoofRight)
}

func hipLength(rise float64) float64 { return hipOf(rise).length / 25.4 }
func hipRun() float64                { return hipOf(9).run / 25.4 }

func hipSlope(t box.Deg) float64 {
	c := meet(box.Design{Name: "hip", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 150, Depth: 150, Height: 200}, Floor: box.FloorBetween{}, Roof: box.Hip{Pitch: t}}, box.RoofFront, box.RoofRight)
	return math.Atan2(c.rise, c.run) * 180 / math.Pi
}

// gable150 is the inner face of a slope of a gable over an outside width of 150.
func gable150(t box.Deg) (high, rise float64) {
	q, _ := box.Design{Name: "gable", Board: box.Board{Thickness: 15}, Size: box.Outside{Width: 150, Depth: 150, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Gable{Pitch: t, Ridge: joints.Mitre{}}}.MustResolve().Piece(box.RoofLeft)
	face := q.Panel.Machined
	if q.Panel.Face != box.FromInner {
		face = q.Panel.Far
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range face[0] {
		z := q.Home.Out(solid.Vec{X: v.X, Y: v.Y}).Z
		lo, hi = math.Min(lo, z), math.Max(hi, z)
	}
	return face.Extents().Height(), hi - lo
}

func gableSlope(t box.Deg) float64 { h, _ := gable150(t); return h }
func gableRise(t box.Deg) float64  { _, r := gable150(t); return r }

// bulge is that of the arc that outline leaves of a circle cut by a half-plane, so
// that so many degrees of it stay.
func bulge(sweep float64) float64 {
	// The chord of the arc stands r cos(sweep/2) from the middle.
	c := outline.Circle(outline.Point{}, 20).Clip(outline.HalfPlane{B: -1, C: -10 * math.Cos(sweep*math.Pi/360)})
	total := 0.0
	for _, v := range c[0] {
		total += 4 * math.Atan(v.Bulge) // bulge = tan(sweep/4), in as many arcs as there are
	}
	return math.Tan(total / 4)
}

// chords is the least number of equal chords of a round hole whose middles lie
// no farther inside it than allowed: ours touch the circle from both sides, so
// they do with fewer (box/outline, TestFlatten).
func chords(d, sagitta float64) float64 {
	n := math.Ceil(math.Pi / math.Acos(1-sagitta/(d/2)))
	if float64(outline.CircleSteps(d/2, sagitta)) > n {
		return math.NaN()
	}
	return n
}

func ventsArea() float64 {
	sum := 0.0
	for _, q := range sound().With(func(d *box.Design) {
		d.Features = []box.Feature{box.Vents{Diameter: box.Inch(5.0 / 8)}}
	}).MustResolve().Pieces() {
		for _, op := range q.Panel.Ops {
			if op.Use == box.UseVent {
				sum += op.Region.Area()
			}
		}
	}
	return sum
}

// stlBytes is the size of a plain board, 12 triangles, as a file.
func stlBytes() float64 {
	p := box.Design{Name: "board", Board: box.Board{Thickness: 15}, Free: []box.Free{{Name: "board", Outline: outline.Rectangle(0, 0, 200, 150)}}}.MustResolve()
	var b bytes.Buffer
	if err := stl.WritePart(&b, p, box.FreePart("board"), stl.Options{}); err != nil || b.Len() < 84 || binary.LittleEndian.Uint32(b.Bytes()[80:]) != 12 {
		return math.NaN()
	}
	return float64(b.Len())
}

func TestBoxChecks(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range boxChecks {
		if seen[c.id] {
			t.Errorf("%s stands twice", c.id)
		}
		seen[c.id] = true
		if got := c.got(); !(math.Abs(got-c.want) <= c.tol) {
			t.Errorf("%s: %v, want %v within %v (%s)", c.id, got, c.want, c.tol, c.source)
		}
	}
}

// TestChecksAreCovered: every row of checks.csv is a check here or in package
// timber, whose TestChecksAreComplete holds its own topics to the table.
func TestChecksAreCovered(t *testing.T) {
	woods := []string{"wood movement", "moisture content", "density", "withdrawal", "screw", "nail", "edge distance", "board foot", "unit"}
	rows := facts(t, "checks.csv")
	here, there := 0, 0
	by := map[string]int{}
	for _, r := range rows {
		by[r["provenance"]]++
		if slices.Contains(woods, r["topic"]) {
			there++
			continue
		}
		here++
		i := slices.IndexFunc(boxChecks, func(c boxCheck) bool { return c.id == r["id"] })
		if i < 0 {
			t.Errorf("%s is not checked: %s", r["id"], r["given"])
			continue
		}
		want, _ := strconv.ParseFloat(r["expected"], 64)
		tol, _ := strconv.ParseFloat(r["tolerance"], 64)
		if c := boxChecks[i]; c.want != want || c.tol != tol || c.source == "" {
			t.Errorf("%s: want %v within %v, the table has %v within %v", c.id, c.want, c.tol, want, tol)
		}
	}
	if here != len(boxChecks) {
		t.Errorf("%d rows, %d checks", here, len(boxChecks))
	}
	t.Logf("%d rows of checks.csv: %d here, %d in species/timber; %d read, %d computed, %d from memory", len(rows), here, there, by["read"], by["computed"], by["memory"])
}
