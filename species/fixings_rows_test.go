package species

import (
	"slices"
	"testing"

	"holt.example/box"
	"holt.example/species/cite"
	"holt.example/species/timber"
)

// TestFixingsOfRows: rows that a design has are read from its plan, measured, and
// held against the rules. The thin box has boards of 14.6 and a cavity of 150 x 130:
// the middle of its left side's edge is 75 + 7.3 = 82.3 from the middle of the front.
func TestFixingsOfRows(t *testing.T) {
	for _, c := range []struct {
		name          string
		diameter, len box.MM
		pilot, right  box.MM
		want          []string
	}{
		{"small box", 3.5, 40, 2.5, -82.3, nil},
		{"within a millimetre", 3.5, 40, 2.5, -81.4, nil},
		{"aside", 3.5, 40, 2.5, -80.3, []string{"fixing-small"}},                 // 2 from the middle
		{"too thick", 5, 40, 2.5, -82.3, []string{"fixing-small"}},               // over 14.6 / 4
		{"no pilot", 3.5, 40, 0, -82.3, []string{"fixing-small"}},                //
		{"too short", 3.5, 30, 2.5, -82.3, []string{"fastener-length"}},          // under 2.5 x 14.6
		{"through it all", 3.5, 170, 2.5, -82.3, []string{"points"}},             // 14.6 + 130 + 14.6 is less
		{"both", 5, 30, 2.5, -82.3, []string{"fixing-small", "fastener-length"}}, //
	} {
		d := thin().With(func(d *box.Design) {
			d.Fixings = []box.Fixing{{Over: box.Front, Under: box.Left, What: "screw", Diameter: c.diameter, Length: c.len, Hole: 4, Pilot: c.pilot,
				At: []box.Anchor{{Right: c.right, Up: 60}, {Right: c.right, Up: 160}}}}
		})
		plan := resolve(t, d)
		fs, err := Fixings(plan, FixWith{})
		if err != nil {
			t.Fatal(c.name, err)
		}
		got, err := checkRows(plan, fs[:1])
		codes := []string(nil)
		for _, g := range got {
			codes = append(codes, g.Code)
		}
		if err != nil || !slices.Equal(codes, c.want) {
			t.Errorf("%s: %v, %v", c.name, got, err)
		}
	}
}

// TestPlanSources: a wood by name has its density from a publication, a board that
// states its own needs none; fixings have their rules.
func TestPlanSources(t *testing.T) {
	keys := func(ss []cite.Source) (out []string) {
		for _, s := range ss {
			out = append(out, s.Key)
		}
		return out
	}
	d, ok := timber.MustGet("Scots pine").Density()
	if got := keys(PlanSources(resolve(t, thin().With(func(d *box.Design) { d.Board.Density = 0 })))); !ok || !slices.Contains(got, d.Source) || slices.Contains(got, "thisoldhouse") {
		t.Errorf("%v", got)
	}
	fast, _, err := Fasten(thin(), FixWith{})
	if err != nil {
		t.Fatal(err)
	}
	if got := keys(PlanSources(resolve(t, fast))); !slices.Contains(got, "thisoldhouse") || !slices.IsSorted(got) {
		t.Errorf("%v", got)
	}
	stated := resolve(t, thin().With(func(d *box.Design) { d.Board.Density = 510 }))
	if got := PlanSources(stated); len(got) != 0 || PlanSources(nil) != nil {
		t.Errorf("%v", got)
	}
}

func TestStainless(t *testing.T) {
	plain := MetricScrews()
	for i, f := range Stainless(plain) {
		if !f.Stainless || plain[i].Stainless || f.Diameter != plain[i].Diameter {
			t.Errorf("%v of %v", f, plain[i])
		}
	}
}
