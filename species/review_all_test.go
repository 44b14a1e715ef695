package species

import (
	"testing"

	"holt.example/box"
)

// TestReadyFormsInAnyWorkshop reviews every ready form on every site: nothing
// panics, every finding has a reason and a source, no fault that the form is to
// blame for is found, and the same comes out twice.
func TestReadyFormsInAnyWorkshop(t *testing.T) {
	for _, p := range All() {
		d, _, err := p.Design(box.Board{Thickness: 20, Material: "European larch"})
		if err != nil {
			continue
		}
		plan := resolve(t, d)
		for _, s := range []Site{{}, {Planed: true}, {Place: OnPole, HotSummers: true}, {Shop: Workshop{HandTools: true, Bits: []box.MM{25, 28}, Cutters: []box.MM{6}, SawTilt: 45, Bed: [2]box.MM{300, 300}, Boards: []box.MM{145}}}} {
			fs, err := Review(plan, p, s)
			if err != nil {
				t.Fatal(p.Key, err)
			}
			again, err := Review(plan, p, s)
			if err != nil || len(again) != len(fs) {
				t.Fatal(p.Key, err)
			}
			readAloud(t, fs)
			for i, f := range fs {
				if f.Why == "" || len(f.Sources) == 0 || f.Code == "" || f.Why != again[i].Why {
					t.Errorf("%s: %+v", p.Key, f)
				}
				if i > 0 && f.Severity > fs[i-1].Severity {
					t.Errorf("%s: %s after %s", p.Key, f.Code, fs[i-1].Code)
				}
				// Planed boards without grooves are what Planed is asked about.
				if f.Severity == box.Fault && !(s.Planed && (f.Code == "duck-ladder" || f.Code == "bat-rough")) {
					t.Errorf("%s: %s", p.Key, f.Why)
				}
			}
		}
	}
}
