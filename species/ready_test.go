package species

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
)

// TestReadyForms: the ready form of every preset resolves, and reviewed against
// its own animal it has no error and no warning, but for those named.
func TestReadyForms(t *testing.T) {
	none := []string{"eurasian_wren", "red_mason_bee", "solitary_bees_mixed", "blue_orchard_bee", "solitary_bees_mixed_na"}
	for _, p := range All() {
		d, assumed, err := p.Design(box.Board{Thickness: 20, Material: "exterior plywood", Grain: box.GrainNone})
		var m *MissingError
		if errors.As(err, &m) {
			if !slices.Contains(none, p.Key) {
				t.Errorf("%s: %v", p.Key, err)
			}
			continue
		}
		if slices.Contains(none, p.Key) || len(assumed) == 0 {
			t.Errorf("%s: a ready form of nothing, or one that assumes nothing", p.Key)
		}
		plan, err := d.Resolve()
		if err != nil {
			t.Errorf("%s: %v", p.Key, err)
			continue
		}
		fs, err := Review(plan, p, Site{})
		if err != nil {
			t.Errorf("%s: %v", p.Key, err)
		}
		for _, f := range fs {
			if f.Severity >= box.Warning {
				t.Errorf("%s: %s: %s", p.Key, f.Code, f.Why)
			}
		}
		w, dd, h := plan.Inside()
		if !close(w, p.Inside.Width) || !close(dd, p.Inside.Depth) || !close(h, p.Inside.Height) {
			t.Errorf("%s: inside %v x %v x %v, published %v", p.Key, w, dd, h, p.Inside)
		}
	}
}

func close(a, b box.MM) bool { return a-b < 1e-6 && b-a < 1e-6 }

// TestWren: no height is published, so one has to be set.
func TestWren(t *testing.T) {
	p := MustGet("eurasian_wren")
	_, _, err := p.Design(box.Board{Thickness: 20})
	var m *MissingError
	if !errors.As(err, &m) || m.Field != "Inside.Height" {
		t.Fatal(err)
	}
	p.Inside.Height = 200
	d, _, err := p.Design(box.Board{Thickness: 20})
	if err != nil {
		t.Fatal(err)
	}
	plan, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	fs, _ := Review(plan, p, Site{})
	for _, f := range fs {
		if f.Severity == box.Fault || strings.Contains(f.Code, "lip") {
			t.Errorf("%s: %s", f.Code, f.Why)
		}
	}
}
