package species

import (
	"errors"
	"strings"
	"testing"

	"holt.example/box"
)

// TestReadyForms: every preset has a ready form, which resolves, says what it
// assumes, has the cavity that is published, and reviewed against its own animal
// has no error and no warning: in plywood, and in boards.
func TestReadyForms(t *testing.T) {
	n := 0
	for _, p := range All() {
		for _, board := range []box.Board{{Thickness: 20, Material: "exterior plywood", Grain: box.GrainNone}, {Thickness: 20, Width: 195, Material: "robinia"}} {
			d, assumed, err := p.Design(board)
			if err != nil || len(assumed) == 0 {
				t.Errorf("%s: %v, assumes %q", p.Key, err, assumed)
				continue
			}
			plan, err := d.Resolve()
			if err != nil {
				t.Errorf("%s: %v", p.Key, err)
				continue
			}
			n++
			fs, err := Review(plan, p, Site{})
			if err != nil {
				t.Errorf("%s: %v", p.Key, err)
			}
			readAloud(t, fs)
			for _, f := range fs {
				if f.Severity >= box.Warning {
					t.Errorf("%s of %s: %s: %s", p.Key, board.Material, f.Code, f.Why)
				}
			}
			for _, f := range plan.Findings() {
				if f.Severity == box.Fault {
					t.Errorf("%s: %s", p.Key, f)
				}
			}
			w, dd, h := plan.Inside()
			in := p.Inside
			if p.Key == "bat_multi_chamber" { // three chambers and two boards
				in.Depth = 3*in.Depth + 2*20
			}
			if p.Form == Tunnel { // and a lobby of 150 beside it
				in.Width += 150 + 20
			}
			if p.Group == Insect { // a frame round the block
				if in.Depth > 0 && !close(dd, in.Depth+10) {
					t.Errorf("%s: %v deep", p.Key, dd)
				}
				continue
			}
			if !close(w, in.Width) || !close(dd, in.Depth) || !close(h, in.Height) && in.Height != 0 {
				t.Errorf("%s: inside %v x %v x %v, published %v", p.Key, w, dd, h, p.Inside)
			}
		}
	}
	if n != 2*len(All()) {
		t.Errorf("%d ready forms of %d presets in two kinds of boards", n, len(All()))
	}
	t.Logf("%d ready forms of %d presets", n, len(All()))
}

func close(a, b box.MM) bool { return a-b < 1e-6 && b-a < 1e-6 }

// TestWren: no height is published, so one is assumed and said; one that is set
// is kept.
func TestWren(t *testing.T) {
	p := MustGet("eurasian_wren")
	for set, want := range map[box.MM]box.MM{0: 200, 220: 220} { // 140 + 60
		p.Inside.Height = set
		d, assumed, err := p.Design(box.Board{Thickness: 20})
		if err != nil {
			t.Fatal(err)
		}
		_, _, h := resolve(t, d).Inside()
		if h != want || strings.Contains(assumed[0], "No height is published") != (set == 0) {
			t.Errorf("%v: %v, %q", set, h, assumed)
		}
	}
	p.Inside.Height, p.Inside.Depth = 200, 0
	var m *MissingError
	if _, _, err := p.Design(box.Board{Thickness: 20}); !errors.As(err, &m) || m.Field != "Inside.Depth" {
		t.Error(err)
	}
}

// TestReadyFormsSayAll: what a ready form adds to what is published, it says, and
// nothing of what it has is denied.
func TestReadyFormsSayAll(t *testing.T) {
	for _, p := range All() {
		d, assumed, err := p.Design(box.Board{Thickness: 20, Material: "Scots pine"})
		if err != nil {
			t.Fatal(p.Key, err)
		}
		var words []string
		for _, f := range d.Features {
			switch f.(type) {
			case box.Hang:
				words = append(words, "a hole at each end")
			case box.DripGroove:
				words = append(words, "a drip groove")
			case box.GripGrooves, box.Pattern:
				words = append(words, "grooved every 12 mm")
			case box.EavesVents:
				words = append(words, "a vent under the eaves")
			case box.Drains:
				words = append(words, "four drains")
			case box.Entrance:
			default:
				t.Errorf("%s has a %T that this test does not know", p.Key, f)
			}
		}
		for _, o := range d.Outer {
			switch o := o.(type) {
			case box.CoverStrip:
				words = append(words, "a cover strip")
			case box.Batten:
				words = append(words, "Two bars")
			case box.Tunnel:
				words = append(words, "a tunnel")
			case box.Feet:
				words = append(words, "runners")
			case box.Felt:
				words = append(words, "under felt")
			case box.LandingBoard:
				words = append(words, "The ledge")
			default:
				t.Errorf("%s has a %T that this test does not know", p.Key, o)
			}
		}
		for _, o := range d.Opens {
			if r, ok := o.(box.Removable); ok {
				words = append(words, "comes off", "held by four screws", string(r.Part))
			} else {
				words = append(words, "The roof opens")
			}
		}
		if d.Corners.Joint != nil {
			words = append(words, "The corners are rebated")
		}
		said := strings.Join(assumed, " ")
		for _, w := range words {
			if !strings.Contains(said, w) {
				t.Errorf("%s does not say %q: %q", p.Key, w, assumed)
			}
		}
		if strings.Contains(said, "Nothing opens") || strings.Contains(said, "nothing else opens") && len(d.Opens) > 0 {
			t.Errorf("%s: %q opens %v", p.Key, assumed, d.Opens)
		}
	}
}
