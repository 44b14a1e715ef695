package timber

import (
	"errors"
	"math"
	"strconv"
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
	// The example of the brief: 150 mm across the grain, 4 %, at 0.25 % per 1 %:
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
	} {
		if w, err := Get(name); err != nil || w.Key != key {
			t.Errorf("Get(%q) = %s, %v; want %s", name, w.Key, err, key)
		}
	}
	for got, want := range map[string]string{"scotspine": "Scots pine", "european lrach": "European larch", "ceder": "", "": "", "\x00": ""} {
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

func TestNailsAndScrewsAgainstPractices(t *testing.T) {
	of := func(key string) (float64, bool) {
		p, err := PracticeOf(key)
		if p.Unit == "in" {
			return p.Value * 25.4, err == nil
		}
		return p.Value, err == nil
	}
	same := func(key string, got joints.MM) {
		t.Helper()
		want, ok := of(key)
		if !ok && got == 0 {
			return
		}
		if !ok || math.Abs(float64(got)-want) > 1e-9 {
			t.Errorf("%s: %v, the practice has %v, %v", key, got, want, ok)
		}
	}
	for _, n := range Nails() {
		k := "nail-" + strconv.Itoa(n.Penny) + "d-"
		same(k+"length", n.Length)
		same(k+"diameter", n.Diameter)
	}
	sum, count := 0.0, 0
	for _, s := range Screws() {
		n := strconv.Itoa(s.Gauge)
		same("screw-"+n+"-shank", s.Shank)
		same("pilot-"+n+"-root-diameter", s.Root)
		same("pilot-"+n+"-shank-clearance-hole", s.Clear)
		same("pilot-"+n+"-pilot-softwood-from-70pc-of-root", s.PilotSoft)
		same("pilot-"+n+"-pilot-hardwood-from-90pc-of-root", s.PilotHard)
		// The gauge formula gives the printed shank to 0.005 mm.
		if g := must(Gauge(s.Gauge)); math.Abs(g-float64(s.Shank)) > 0.0051 {
			t.Errorf("No. %s: %v by the formula, %v printed", n, g, s.Shank)
		}
		if s.Root == 0 {
			continue
		}
		sum += float64(s.Root) / float64(s.Shank)
		count++
		// The table rounds to 1/64 in, but not always to the nearest: within one.
		if d := must(PilotDrill(s.Root, 0.7)) * 25.4 / 64; math.Abs(d-float64(s.PilotSoft)) > 25.4/64+1e-9 {
			t.Errorf("No. %s: pilot %v, printed %v", n, d, s.PilotSoft)
		}
	}
	if mean := sum / float64(count); math.Abs(mean-RootShare) > 0.005 {
		t.Errorf("the mean share of the root is %v, RootShare %v", mean, RootShare)
	}
	for _, d := range []struct {
		pilot, sheet bool
		end, edge    string
	}{{true, false, "dist-end-pre", "dist-edge-pre"}, {false, false, "dist-end-nopre", "dist-edge-nopre"}, {false, true, "dist-end-nopre-edge", "dist-edge-nopre-edge"}} {
		got := DistancesFor(d.pilot, d.sheet)
		e, _ := of(d.end)
		g, _ := of(d.edge)
		if got.End != e || got.Edge != g {
			t.Errorf("%+v: %+v, the practice has %v and %v", d, got, e, g)
		}
	}
	for _, th := range []int{27, 33, 39, 45} {
		for use, suffix := range map[EdgeUse]string{EdgeNail: "nail", EdgePilot: "screw-pre", EdgeAxial: "screw-axial"} {
			want, ok := of("edge-face-" + strconv.Itoa(th) + "-" + suffix)
			got := must(LargestInEdge(joints.MM(th), use))
			if !ok || math.Abs(got-want) > 0.051 { // printed to 0.1
				t.Errorf("t %d, %s: %v, printed %v", th, suffix, got, want)
			}
		}
	}
}

// The small-box rule (common practice): a screw of 3.5 in an edge of 14.6 is
// under a quarter, 3.65, and a 5.0 is not.
func TestSmallBox(t *testing.T) {
	if err := SmallBox(3.5, 14.6, 0.9); err != nil {
		t.Error(err)
	}
	var r *RangeError
	if err := SmallBox(5, 14.6, 0); !errors.As(err, &r) || math.Abs(r.Hi-3.65) > 1e-12 || r.Got != 5 {
		t.Error(err)
	}
	if err := SmallBox(3.5, 14.6, -1.1); !errors.As(err, &r) || r.Hi != 1 {
		t.Error(err)
	}
}

// 15 mm held: 37.5 to 45 into side grain, 45 and up to 57.7 into end grain.
func TestFastenerLength(t *testing.T) {
	lo, hi, err := FastenerLength(15, false)
	if err != nil || lo != 37.5 || hi != 45 {
		t.Error(lo, hi, err)
	}
	lo, hi, err = FastenerLength(15, true)
	if err != nil || lo != 45 || math.Abs(float64(hi)-57.7) > 1e-12 {
		t.Error(lo, hi, err)
	}
	if _, _, err = FastenerLength(-1, true); err == nil {
		t.Error("a negative thickness passes")
	}
	// No. 8 has a root of 0.112 in = 2.8448: 1.9914 to 2.4181 in softwood.
	lo, hi, err = Pilot(joints.Inch(0.112), false)
	if err != nil || math.Abs(float64(lo)-1.99136) > 1e-9 || math.Abs(float64(hi)-2.41808) > 1e-9 {
		t.Error(lo, hi, err)
	}
}

func TestStock(t *testing.T) {
	s, err := StockNamed("1x4")
	if err != nil || s.Thickness != 19 || s.Width != 89 || s.WidthIn != "3-1/2" {
		t.Errorf("%+v, %v", s, err)
	}
	p, err := StockNamed("birch plywood 12 mm sanded")
	least, most, ok := p.Limits()
	if err != nil || !ok || math.Abs(float64(least)-11.3) > 1e-9 || math.Abs(float64(most)-12.5) > 1e-9 { // 12 - 0.7, 12 + 0.5
		t.Errorf("%v to %v, %v, %v", least, most, ok, err)
	}
	b, _ := StockNamed("birch-12")
	if least, most, ok = b.Limits(); !ok || least != 11.5 || most != 12.5 {
		t.Errorf("%v to %v", least, most)
	}
	e, _ := StockNamed("en315-sanded")
	if got := e.Minus.At(18); math.Abs(float64(got)-0.94) > 1e-12 { // 0.4 + 0.03 x 18
		t.Errorf("%v", got)
	}
	if l, _ := StockNamed("fi-lengths"); l.Least != 2700 || l.Most != 5400 {
		t.Errorf("%+v", l)
	} else if _, _, ok := l.Limits(); ok {
		t.Error("lengths are no limits of thickness")
	}
	var u *UnknownError
	if _, err := StockNamed("1x44"); !errors.As(err, &u) || len(u.Near) == 0 {
		t.Error(err)
	}
	if _, err := StockOf("plastic"); !errors.As(err, &u) {
		t.Error(err)
	}
	if all, _ := StockOf(""); len(all) != 174 {
		t.Errorf("%d entries", len(all))
	}
	if m, _ := StockOf(MDF); len(m) != 10 {
		t.Errorf("%d MDF", len(m))
	}
}

// inches reads "3-1/2", "25/32" or "1".
func inches(s string) float64 {
	x := 0.0
	for _, p := range strings.Split(s, "-") {
		a, b, ok := strings.Cut(p, "/")
		n, _ := strconv.ParseFloat(a, 64)
		if ok {
			d, _ := strconv.ParseFloat(b, 64)
			n /= d
		}
		x += n
	}
	return x
}

// Sizes in mm are those in inches to the whole millimetre, and the rule from
// nominal to actual gives every dry width in the table.
func TestLumberInches(t *testing.T) {
	n := 0
	lumber, _ := StockOf(LumberUS)
	for _, s := range lumber {
		for _, d := range []struct {
			mm joints.MM
			in string
		}{{s.Thickness, s.ThicknessIn}, {s.Width, s.WidthIn}} {
			if d.in == "" {
				continue
			}
			n++
			if math.Abs(float64(d.mm)-inches(d.in)*25.4) > 0.51 {
				t.Errorf("%s: %v mm, %s in", s.Key, d.mm, d.in)
			}
		}
		if strings.HasSuffix(s.Key, "-dry") && s.Width > 0 {
			_, w, _ := strings.Cut(strings.TrimSuffix(s.Nominal, " in"), " x ")
			nominal, _ := strconv.ParseFloat(w, 64)
			if got := must(NominalInch(nominal)); math.Abs(got-inches(s.WidthIn)*25.4) > 1e-9 {
				t.Errorf("%s: %v by the rule, %s in printed", s.Key, got, s.WidthIn)
			}
		}
	}
	if n < 90 {
		t.Errorf("only %d sizes compared", n)
	}
}

func TestGlue(t *testing.T) {
	for g, w := range map[Glue]string{D1: "D1", D2: "D2", D3: "D3", D4: "D4", 0: "", 5: "", -1: ""} {
		if g.String() != w || (g.Use() != "") != (w != "") {
			t.Errorf("%d: %q, %q", int(g), g.String(), g.Use())
		}
	}
	if GlueFor(true) != D4 || GlueFor(false) != D3 {
		t.Error("D3 out of the weather, D4 in it")
	}
	if _, err := Practices("glues"); err == nil {
		t.Error("no such topic")
	}
	if p, err := Practices("glue"); err != nil || len(p) != 10 {
		t.Errorf("%d, %v", len(p), err)
	}
}

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
