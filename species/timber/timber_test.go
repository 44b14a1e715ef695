package timber

import (
	"errors"
	"math"
	"strings"
	"testing"

	"holt.example/joints"
	"holt.example/species/cite"
)

// Table 4-2 of the Wood Handbook (FPL-GTR-190), read: a part of it typed here, so that the
// test needs no file. Columns are 10, 30, 50, 70 and 90 % of humidity. The
// tolerance is half a unit of the last digit and a hundredth for its rounding.
func TestEMCTable(t *testing.T) {
	for _, r := range []struct {
		fahrenheit float64
		cells      [5]float64
	}{
		{30, [5]float64{2.6, 6.3, 9.5, 13.5, 21.0}},
		{70, [5]float64{2.5, 6.2, 9.2, 13.1, 20.5}},
		{100, [5]float64{2.3, 5.8, 8.7, 12.3, 19.5}},
	} {
		for i, h := range []float64{10, 30, 50, 70, 90} {
			if got := emcF(r.fahrenheit, h); math.Abs(got-r.cells[i]) > 0.06 {
				t.Errorf("%v F, %v %%: %v, printed %v", r.fahrenheit, h, got, r.cells[i])
			}
		}
	}
	if got := emcF(70, 0); got != 0 {
		t.Errorf("dry air: %v", got)
	}
}

// EMC grows with the humidity of the air at every temperature.
func TestEMCGrows(t *testing.T) {
	for c := -40.0; c <= 120; c += 10 {
		last := -1.0
		for h := 0.0; h <= 100; h++ {
			got, err := EMC(c, h)
			if err != nil || !(got > last) {
				t.Fatalf("%v C, %v %%: %v after %v, %v", c, h, got, last, err)
			}
			last = got
		}
	}
}

// The published coefficients of Table 13-5 follow from the shrinkages of Table
// 4-3 by Eq. 13-3 to half a unit of their last digit, but for the woods whose
// note says that they saturate at 22 %: there C = S/(2200 - 12 S). The oaks
// have coefficients of the commercial group, not of the species, and are left
// out.
func TestCoefficientsFollowFromShrinkage(t *testing.T) {
	n := 0
	for _, w := range Woods() {
		for _, d := range []struct{ c, s Property }{{CoefRadial, ShrinkRadial}, {CoefTangential, ShrinkTangential}} {
			c, ok := w.Figure(d.c)
			s, ok2 := w.Figure(d.s)
			if !ok || !ok2 || strings.HasPrefix(c.When, "estimated") || strings.Contains(c.Note, "commercial") {
				continue
			}
			n++
			want, _ := CoefficientOf(s.Value)
			if strings.Contains(c.Note, "22%") {
				want = s.Value / (2200 - 12*s.Value)
			}
			if math.Abs(c.Value-want) > 5.1e-6 {
				t.Errorf("%s, %s: printed %v, computed %v from %v %%", w.Key, d.c, c.Value, want, s.Value)
			}
		}
	}
	if n != 88 { // 47 woods with both coefficients, less two oaks and one wood without shrinkages
		t.Errorf("%d coefficients compared", n)
	}
}

// Densities of the handbook follow from its specific gravities: 1000 G (1.12).
func TestDensitiesFollowFromGravity(t *testing.T) {
	n := 0
	for _, w := range Woods() {
		g, ok := w.Figure(Gravity12)
		d, ok2 := w.Density()
		if !ok2 {
			continue
		}
		if !(d.Value > 250 && d.Value < 1000) {
			t.Errorf("%s: density %v", w.Key, d.Value)
		}
		if !ok {
			continue
		}
		n++
		if want, _ := DensityAt(g.Value, 12); math.Abs(d.Value-want) > 0.51 { // printed in whole kg/m3
			t.Errorf("%s: %v, computed %v", w.Key, d.Value, want)
		}
		if d.Source != "fpl-gtr-282" {
			t.Errorf("%s: the handbook's density comes first, not that of %s", w.Key, d.Source)
		}
	}
	if n != 50 {
		t.Errorf("%d woods with a gravity, want 50", n)
	}
}

// European ash has only a basic density of 558 in print. By hand:
// 0.558/(1 - 0.265 x 0.558 x 0.6) = 0.558/0.911278 = 0.612327; x 1120 = 685.81.
func TestDensityFromBasic(t *testing.T) {
	d, ok := MustGet("european-ash").Density()
	if !ok || math.Abs(d.Value-685.81) > 0.005 || d.Basis != cite.Computed || d.Source != "gwdd2" {
		t.Errorf("%+v, %v", d, ok)
	}
	if _, ok := MustGet("douglas-fir-interior-west").Density(); ok {
		t.Error("no density is known of this provenance")
	}
}

// Two ways to one number: the change by coefficient and by total shrinkage
// agree where the coefficient is defined, for a step that starts at 10 %.
func TestTwoWaysToMovement(t *testing.T) {
	for _, s := range []float64{2, 5, 7.8, 11.9} {
		c, _ := CoefficientOf(s)
		a, err := Movement(150, c, 10, 14)
		b, err2 := MovementByShrinkage(150, s, 10, 14)
		if err != nil || err2 != nil || math.Abs(float64(a-b)) > 1e-9 {
			t.Errorf("S = %v: %v and %v", s, a, b)
		}
	}
	// A floor of 150 mm across the grain in European softwood, 0.25 % per 1 %, by 4 %:
	// 150 x 0.0025 x 4 = 1.5.
	if m, _ := Movement(150, EuropeanSoftwoodPerCent/100, 12, 16); math.Abs(float64(m)-1.5) > 1e-12 {
		t.Errorf("%v", m)
	}
	// There and back is nothing.
	up, _ := Movement(150, 0.00245, 8, 12)
	down, _ := Movement(150, 0.00245, 12, 8)
	if up != -down {
		t.Errorf("%v up, %v down", up, down)
	}
}

// Shrinkage at 12 % of a total of 7 %: 7 x (1 - 12/30) = 4.2 (Eq. 4-9).
func TestShrinkageAt(t *testing.T) {
	if got := must(ShrinkageAt(7, 12)); math.Abs(got-4.2) > 1e-12 {
		t.Errorf("%v", got)
	}
	if got := must(ShrinkageAt(7, 30)); got != 0 {
		t.Errorf("%v at saturation", got)
	}
	// Above saturation the gravity stays basic.
	if got := must(GravityAt(0.4, 80)); got != 0.4 {
		t.Errorf("%v", got)
	}
}

func TestGetWood(t *testing.T) {
	for name, key := range map[string]string{
		"scots-pine": "scots-pine", "Scots Pine": "scots-pine", "European redwood": "scots-pine", "Pinus sylvestris": "scots-pine",
		"quercus petraea": "european-oak", "Robinia": "black-locust", "Douglas-fir, coast": "douglas-fir-coast", "Pseudotsuga menziesii": "douglas-fir-coast",
		"Redwood": "redwood", "tulipwood": "yellow-poplar",
		"rough sawn white oak": "white-oak", "Scots pine, planed": "scots-pine", "solid Robinia boards": "black-locust",
	} {
		if w, err := Get(name); err != nil || w.Key != key {
			t.Errorf("Get(%q) = %s, %v; want %s", name, w.Key, err, key)
		}
	}
	for got, want := range map[string]string{"scotspine": "Scots pine", "european lrach": "European larch", "ceder": "", "rough sawn european lrach": "European larch", "sawn boards": "", "": "", "\x00": ""} {
		_, err := Get(got)
		var u *UnknownError
		if !errors.As(err, &u) || u.What != "wood" {
			t.Errorf("Get(%q): %v", got, err)
			continue
		}
		found := want == ""
		for _, n := range u.Near {
			found = found || n == want
		}
		if !found {
			t.Errorf("Get(%q) suggests %q", got, u.Near)
		}
	}
	if n := len(Woods()); n != 62 {
		t.Errorf("%d woods", n)
	}
	w := MustGet("scots-pine")
	w.Figures[0].Value, w.Scientific[0] = 9, "x"
	if MustGet("scots-pine").Figures[0].Value == 9 || MustGet("scots-pine").Scientific[0] == "x" {
		t.Error("a caller changed the table")
	}
}

func TestDurability(t *testing.T) {
	for _, c := range []struct {
		wood        string
		best, worst int
	}{
		{"scots-pine", 3, 4}, {"european-beech", 5, 5}, {"european-oak", 2, 4}, {"western-redcedar", 2, 2},
	} {
		b, w, ok := MustGet(c.wood).Durability()
		if !ok || b != c.best || w != c.worst {
			t.Errorf("%s: %d to %d, %v; want %d to %d", c.wood, b, w, ok, c.best, c.worst)
		}
	}
	if _, _, ok := MustGet("catalpa").Durability(); ok {
		t.Error("no EN 350 class is known of catalpa")
	}
	if !MustGet("european-oak").Corrosive() || !MustGet("western-redcedar").Corrosive() || MustGet("norway-spruce").Corrosive() || MustGet("northern-white-cedar").Corrosive() {
		t.Error("which woods need stainless fixings (memory)")
	}
}

func TestRefusesNonsense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for i, err := range []error{
		second(Movement(-1, 0.002, 8, 12)), second(Movement(100, nan, 8, 12)), second(Movement(100, 0.002, 8, inf)), second(Movement(100, 0.002, -1, 8)),
		second(MovementByShrinkage(100, 0, 8, 12)), second(CoefficientOf(nan)), second(CoefficientOf(150)), second(EMC(nan, 50)), second(EMC(20, 101)), second(EMC(20, -1)), second(EMC(-300, 50)),
		second(MaxMoisture(0)), second(MaxMoisture(2)), second(ShrinkageAt(-1, 12)), second(GravityAt(0, 12)), second(DensityAt(-0.4, 12)), second(Mass(1, -500)), second(Mass(-1, 500)), second(Mass(1, nan)),
		second(NailWithdrawal(nan, 3, 30)), second(RingNailWithdrawal(0.42, 0, 30)), second(ScrewWithdrawal(0.42, 4, -1)), second(NailAllowable(9, 3)), second(LagAllowable(0.5, joints.MM(inf), 3)),
		second(Gauge(-1)), second(PennyLength(1)), second(PennyLength(12)), second(PilotDrill(joints.MM(nan), 0.7)), second(LargestInEdge(0, EdgeNail)), second(LargestInEdge(20, 9)), second(NominalInch(nan)), second(BoardFeet(-1, 1, 1)),
		SmallBox(joints.MM(nan), 15, 0), SmallBox(3, joints.MM(nan), 0), SmallBox(3, 15, joints.MM(nan)),
	} {
		var r *RangeError
		if !errors.As(err, &r) || r.Error() == "" {
			t.Errorf("case %d: %v", i, err)
		}
	}
}

func second[T any](_ T, err error) error { return err }

func TestSourcesKnown(t *testing.T) {
	known := map[string]bool{}
	for _, s := range Sources() {
		known[s.Key] = true
	}
	use := func(what, key string) {
		if !known[key] {
			t.Errorf("%s: no source %q", what, key)
		}
	}
	for _, w := range Woods() {
		for _, f := range w.Figures {
			use(w.Key, f.Source)
		}
	}
	for _, s := range stock {
		use(s.Key, s.Source)
	}
	for _, p := range practices {
		use(p.Key, p.Source)
	}
	for _, p := range Places() {
		use(p.Name, p.Source)
	}
}
