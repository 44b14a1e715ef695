package timber

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"holt.example/joints"
)

// must takes the value of a formula that is not expected to fail here.
func must[T ~float64](x T, err error) float64 {
	if err != nil {
		return math.NaN()
	}
	return float64(x)
}

func coef(wood string, d Direction) float64 {
	w, err := Get(wood)
	if err != nil {
		return math.NaN()
	}
	p := ShrinkTangential
	if d == Radial {
		p = ShrinkRadial
	}
	s, ok := w.Figure(p)
	if !ok {
		return math.NaN()
	}
	return must(CoefficientOf(s.Value))
}

func density(wood string) float64 {
	w, err := Get(wood)
	if err != nil {
		return math.NaN()
	}
	g, ok := w.Figure(Gravity12)
	if !ok {
		return math.NaN()
	}
	return must(DensityAt(g.Value, 12))
}

// A check is a figure worked out elsewhere: how it is printed, how far it may
// be off (half a unit of its last digit), and where it stands. "read" was read
// there, "computed" follows from a formula read there, "memory" is remembered.
type check struct {
	id        string
	want, tol float64
	got       func() float64
	source    string
}

var checks = []check{
	// Wood movement.
	{"move-whitefir", 1.705, 0.0006, func() float64 { return must(Movement(232, 0.00245, 8, 11)) }, "read: Wood Handbook (FPL-GTR-190), example under Eq. 13-2"},
	{"move-mesquite", 0.019, 0.0006, func() float64 { return must(Movement(joints.Inch(5), 0.00129, 6, 9)) / 25.4 }, "read: Flooring Artists, example under the table; in inches"},
	{"coef-american-beech-CT", 0.00431, 5.1e-06, func() float64 { return coef("american-beech", Tangential) }, "read: Wood Handbook, Table 13-5 against Table 4-3"},
	{"coef-sugar-maple-CT", 0.00353, 5.1e-06, func() float64 { return coef("sugar-maple", Tangential) }, "read: the same"},
	{"coef-black-cherry-CT", 0.00248, 5.1e-06, func() float64 { return coef("black-cherry", Tangential) }, "read: the same"},
	{"coef-white-ash-CR", 0.00169, 5.1e-06, func() float64 { return coef("white-ash", Radial) }, "read: the same"},
	{"coef-yellow-birch-CR", 0.00256, 5.1e-06, func() float64 { return coef("yellow-birch", Radial) }, "read: the same"},
	{"coef-black-walnut-CT", 0.00274, 5.1e-06, func() float64 { return coef("black-walnut", Tangential) }, "read: the same"},
	{"coef-red-alder-CR", 0.00151, 5.1e-06, func() float64 { return coef("red-alder", Radial) }, "read: the same"},
	{"coef-american-basswood-CT", 0.00330, 5.1e-06, func() float64 { return coef("american-basswood", Tangential) }, "read: the same"},
	{"move-whitefir-eq3", 1.7119, 0.0001, func() float64 { return must(MovementByShrinkage(232, 7.0, 8, 11)) }, "computed: Wood Handbook, Eq. 13-3"},
	{"move-en", -3, 1e-09, func() float64 { return must(Movement(150, EuropeanSoftwoodPerCent/100, 20, 12)) }, "computed: EN 1313-1, clause 5"},
	// Moisture content: Table 4-2 is printed by degrees Fahrenheit.
	{"emc-30-50", 9.5, 0.06, func() float64 { return emcF(30, 50) }, "read: Wood Handbook, Table 4-2; Eq. 4-5"},
	{"emc-40-80", 16.5, 0.06, func() float64 { return emcF(40, 80) }, "read: the same"},
	{"emc-50-65", 12.3, 0.06, func() float64 { return emcF(50, 65) }, "read: the same"},
	{"emc-60-75", 14.6, 0.06, func() float64 { return emcF(60, 75) }, "read: the same"},
	{"emc-70-30", 6.2, 0.06, func() float64 { return emcF(70, 30) }, "read: the same"},
	{"emc-70-65", 12.0, 0.06, func() float64 { return emcF(70, 65) }, "read: the same"},
	{"emc-80-50", 9.1, 0.06, func() float64 { return emcF(80, 50) }, "read: the same"},
	{"emc-90-90", 19.8, 0.06, func() float64 { return emcF(90, 90) }, "read: the same"},
	{"emc-100-20", 4.2, 0.06, func() float64 { return emcF(100, 20) }, "read: the same"},
	{"maxmc-30", 267, 2, func() float64 { return must(MaxMoisture(0.30)) }, "read: Wood Handbook (FPL-GTR-282), p. 4-3, prints 267; Eq. 4-3 gives 268.4"},
	// Density.
	{"dens-redcedar", 358, 0.6, func() float64 { return density("western-redcedar") }, "computed: Wood Handbook, Eq. 4-14, with the gravity of REF_SPECIES"},
	{"dens-pine", 526, 0.6, func() float64 { return density("scots-pine") }, "computed: the same"},
	{"dens-oak", 762, 0.6, func() float64 { return density("white-oak") }, "computed: the same"},
	{"dens-spruce", 437, 0.6, func() float64 { return density("norway-spruce") }, "computed: the same"},
	{"sg-040-12", 0.42717, 1e-05, func() float64 { return must(GravityAt(0.40, 12)) }, "computed: Wood Handbook, Eq. 4-9, 4-11, 4-12"},
	{"dens-040-12", 478.43, 0.01, func() float64 { return must(DensityAt(must(GravityAt(0.40, 12)), 12)) }, "computed: Wood Handbook, Eq. 4-14"},
	{"mass-board", 0.2367, 1e-06, func() float64 { return must(Mass(200*150*15, 526)) }, "computed: geometry"},
	// Withdrawal.
	{"nail-awc-w", 3619.313, 0.01, func() float64 { return must(NailAllowable(0.42, joints.Inch(0.131))) }, "read: American Wood Council, example E2.1a; N/m"},
	// 2.5 in of nail through 0.105 in leaves 2.395 in in the wood.
	{"nail-awc-load", 220.17, 0.02, func() float64 { return must(NailAllowable(0.42, joints.Inch(0.131))) * (2.5 - 0.105) * 0.0254 }, "read: the same"},
	{"lag-awc", 4247.94, 0.05, func() float64 { return must(LagAllowable(0.55, joints.Inch(0.5), joints.Inch(2.1875))) }, "read: American Wood Council, example E2.3"},
	{"nail-fpl", 785.0, 0.06, func() float64 { return must(NailWithdrawal(0.42, 3.33, 38.1)) }, "computed: Wood Handbook, Eq. 8-1, p. 8-2"},
	{"nail-fpl-ring", 1736.0, 0.06, func() float64 { return must(RingNailWithdrawal(0.42, 3.33, 38.1)) }, "computed: Wood Handbook, Eq. 8-2a, p. 8-4"},
	{"screw-fpl", 1990.7, 0.06, func() float64 { return must(ScrewWithdrawal(0.42, 4.17, 25)) }, "computed: Wood Handbook, Eq. 8-10, p. 8-10"},
	// Screws and nails.
	{"gauge-6", 3.51, 0.0055, func() float64 { return must(Gauge(6)) }, "read: Wood Handbook, Table 8-9, p. 8-12"},
	{"gauge-8", 4.17, 0.0055, func() float64 { return must(Gauge(8)) }, "read: the same"},
	{"gauge-10", 4.83, 0.0055, func() float64 { return must(Gauge(10)) }, "read: the same"},
	{"gauge-14", 6.15, 0.0055, func() float64 { return must(Gauge(14)) }, "read: the same"},
	{"pilot-8", 0.078125, 0, func() float64 { return must(PilotDrill(joints.Inch(0.112), 0.70)) / 64 }, "read: l36-pilot, pilot table; 5/64 in"},
	// 0.112 x 0.9 = 0.1008 in is 6.45/64: 6/64 = 3/32.
	{"pilot-8-hard", 0.09375, 0, func() float64 { return must(PilotDrill(joints.Inch(0.112), 0.90)) / 64 }, "read: the same; 3/32 in"},
	{"penny-2", 25.4, 1e-09, func() float64 { return must(PennyLength(2)) }, "read: Natural Handyman, list of penny sizes"},
	{"penny-6", 50.8, 1e-09, func() float64 { return must(PennyLength(6)) }, "read: the same"},
	{"penny-8", 63.5, 1e-09, func() float64 { return must(PennyLength(8)) }, "read: the same"},
	{"penny-10", 76.2, 1e-09, func() float64 { return must(PennyLength(10)) }, "read: the same"},
	{"edge-27-14", 1.9, 0.051, func() float64 { return must(LargestInEdge(27, EdgeNail)) }, "read: LVL Handbook, Table 5.2"},
	{"edge-33-8", 4.1, 0.051, func() float64 { return must(LargestInEdge(33, EdgeAxial)) }, "read: the same"},
	{"edge-45-6", 7.5, 0.051, func() float64 { return must(LargestInEdge(45, EdgePilot)) }, "read: the same"},
	// Units.
	{"bf-20", 20, 1e-09, func() float64 { return must(BoardFeet(3, 8, 10)) }, "read: West Coast Lands, worked example"},
	{"bf-2", 2, 1e-09, func() float64 { return must(BoardFeet(1, 3, 8)) }, "read: furnituremaking.us, worked example"},
	{"bf-1", 1, 1e-09, func() float64 { return must(BoardFeet(1, 12, 1)) }, "read: the same, definition"},
	{"bf-m3", 0.002359737216, 1e-15, func() float64 { return BoardFoot / 1e9 }, "computed: woodworkingadvice.com, 144 cubic inches"},
	{"bf-2x4x8", 5.3333, 0.0001, func() float64 { return must(BoardFeet(2, 4, 8)) }, "computed: the same, formula"},
	// 38 x 89 mm are 1-1/2 x 3-1/2 in: the real wood is 1.5 x 3.5 x 8 / 12.
	{"bf-2x4x8-actual", 3.5, 0.0001, func() float64 { return must(BoardFeet(1.5, 3.5, 8)) }, "computed: Engineering ToolBox, nominal and actual sizes"},
	{"inch-7_8", 22.225, 1e-09, func() float64 { return float64(joints.Inch(7.0 / 8)) }, "read: Farmers' Bulletin 609"},
	{"inch-1-1_8", 28.575, 1e-09, func() float64 { return float64(joints.Inch(1 + 1.0/8)) }, "read: For the Birds, table of box dimensions"},
	{"inch-1-1_4", 31.75, 1e-09, func() float64 { return float64(joints.Inch(1 + 1.0/4)) }, "read: the same"},
	{"inch-1-3_8", 34.925, 1e-09, func() float64 { return float64(joints.Inch(1 + 3.0/8)) }, "read: the same"},
	{"inch-1-9_16", 39.6875, 1e-09, func() float64 { return float64(joints.Inch(1 + 9.0/16)) }, "read: USDA Forest Service, bluebird house"},
	{"inch-1-3_4", 44.45, 1e-09, func() float64 { return float64(joints.Inch(1 + 3.0/4)) }, "read: For the Birds"},
	{"inch-2-7_8", 73.025, 1e-09, func() float64 { return float64(joints.Inch(2 + 7.0/8)) }, "read: Cranbrook Bulletin 1"},
	{"feet-12", 3.6576, 1e-09, func() float64 { return float64(joints.Inch(12*12)) / 1000 }, "read: For the Birds"},
	{"vent-sqin", 2903.22, 0.005, func() float64 { return 4.5 * float64(joints.Inch(1)) * float64(joints.Inch(1)) }, "read: Texas Parks and Wildlife, feature list; 4 1/2 square inches"},
}

func emcF(f, h float64) float64 { return must(EMC((f-32)/1.8, h)) }

func TestChecks(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range checks {
		if seen[c.id] {
			t.Errorf("%s stands twice", c.id)
		}
		seen[c.id] = true
		if got := c.got(); !(math.Abs(got-c.want) <= c.tol) {
			t.Errorf("%s: %v, want %v within %v (%s)", c.id, got, c.want, c.tol, c.source)
		}
	}
}

// TestChecksAreComplete: every row of checks.csv on these topics is a check
// here, with the same figure and tolerance.
func TestChecksAreComplete(t *testing.T) {
	topics := []string{"wood movement", "moisture content", "density", "withdrawal", "screw", "nail", "edge distance", "board foot", "unit"}
	n := 0
	for _, r := range facts(t, "checks.csv") {
		if !slices.Contains(topics, r["topic"]) {
			continue
		}
		n++
		i := slices.IndexFunc(checks, func(c check) bool { return c.id == r["id"] })
		if i < 0 {
			t.Errorf("%s is not checked: %s", r["id"], r["given"])
			continue
		}
		want, _ := strconv.ParseFloat(r["expected"], 64)
		tol, _ := strconv.ParseFloat(r["tolerance"], 64)
		if c := checks[i]; c.want != want || c.tol != tol {
			t.Errorf("%s: want %v within %v, the table has %v within %v", c.id, c.want, c.tol, want, tol)
		}
	}
	if n != len(checks) {
		t.Errorf("%d rows on these topics, %d checks", n, len(checks))
	}
}
