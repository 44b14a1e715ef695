package species

import (
	"slices"
	"testing"

	"holt.example/box"
	"holt.example/species/timber"
)

// TestWoodFoundAlike: what a material says beside the name of its wood changes
// nothing, wherever the wood is asked for: in weighing, in what it hangs by, in the
// sources, and in what rusts in oak.
func TestWoodFoundAlike(t *testing.T) {
	of := func(material string) *box.Plan {
		return resolve(t, thin().With(func(d *box.Design) {
			d.Board.Material = material
			d.Features = append(d.Features, box.Hang{})
		}))
	}
	plain, said := of("white oak"), of("rough sawn white oak")
	a, err1 := Weigh(plain)
	b, err2 := Weigh(said)
	if err1 != nil || err2 != nil || a.Mass != b.Mass || !(a.Mass > 0) {
		t.Errorf("%v kg and %v, %v, %v", a.Mass, b.Mass, err1, err2)
	}
	// Were the wood not known, the heaviest would be taken, which white oak is not.
	h, err1 := Mounting{}.Hang(plain)
	g, err2 := Mounting{}.Hang(said)
	if oak, _ := timber.MustGet("white oak").Density(); err1 != nil || err2 != nil || h.Mass != g.Mass || !(oak.Value < heaviest()) {
		t.Errorf("%v kg and %v hang, %v, %v", h.Mass, g.Mass, err1, err2)
	}
	x, y := PlanSources(plain), PlanSources(said)
	if len(x) == 0 || !slices.Equal(x, y) {
		t.Errorf("%v and %v", x, y)
	}
	rusts := func(plan *box.Plan) bool {
		got, err := CheckFixings(plan, []Fixing{{Over: box.Left, Under: box.Floor, With: Fastener{Kind: "screw", Diameter: 3.5, Length: 40, Pilot: 2.5}}})
		return err == nil && slices.ContainsFunc(got, func(f box.Finding) bool { return f.Code == "rust" })
	}
	if !rusts(plain) || !rusts(said) {
		t.Errorf("rust: %v and %v", rusts(plain), rusts(said))
	}
	// A name that the tables part by place will do for what rots, not for a mass.
	fir := of("rough sawn Douglas-fir")
	if w, ok := (&look{}).woodOf("rough sawn Douglas-fir"); !ok || w.Key != "douglas-fir-coast" {
		t.Errorf("%s, %v", w.Key, ok)
	}
	if _, err := Weigh(fir); err == nil || len(PlanSources(fir)) != 0 {
		t.Errorf("%v, %v", err, PlanSources(fir))
	}
	// What is no wood says so of all that was asked for.
	if _, err := (&look{}).woodNamed("rough sawn moonwood"); err == nil || err.(*timber.UnknownError).Got != "rough sawn moonwood" {
		t.Error(err)
	}
}
