package timber

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"holt.example/joints"
)

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
