package species

import (
	"errors"
	"math"
	"testing"

	"holt.example/box"
	"holt.example/species/timber"
)

// hung is a plain board of 300 x 600 x 20 at 500 kg/m3, 1.8 kg (geometry), that
// hangs on screws at 580 and 20 of its height.
func hung() box.Design {
	return box.Design{Name: "hung", Board: box.Board{Thickness: 20, Material: "Scots pine", Density: 500},
		Size: box.Cavity{Width: 100, Depth: 100, Height: 200}, Floor: box.FloorBetween{}, Roof: box.Flat{Over: box.Overhangs{All: 30}},
		Walls: []box.Wall{{On: box.Back, Above: 80, Below: 60}}, Features: []box.Feature{box.Hang{}}}
}

// TestMountingByHand works the statics of a box out from its solids: two screws,
// the upper one draws m g a / h, and both share m g.
func TestMountingByHand(t *testing.T) {
	plan := resolve(t, hung())
	with := Fastener{Kind: "screw", Diameter: 5, Length: 60, Pilot: 3.5}
	h, err := Mounting{With: with, Into: "Scots pine", Load: 3}.Hang(plan)
	if err != nil {
		t.Fatal(err)
	}
	w, err := Weigh(plan)
	if err != nil {
		t.Fatal(err)
	}
	back, _ := plan.Piece(box.Back)
	m, _ := plan.Mesh(box.Back)
	foot, wall := math.Inf(1), math.Inf(-1)
	for _, v := range m.Vertices {
		foot, wall = math.Min(foot, v.Z), math.Max(wall, v.Y)
	}
	// The holes are in the middle of what the back runs on by: 60 below, so 30
	// above its foot, and 80 above (see box.Hang).
	if len(h.Places) != 2 || h.On != back.Part || math.Abs(wall-70) > 1e-9 {
		t.Fatalf("%+v", h)
	}
	low, high := math.Min(float64(h.Places[0].Z), float64(h.Places[1].Z)), math.Max(float64(h.Places[0].Z), float64(h.Places[1].Z))
	if math.Abs(low-foot-30) > 1e-6 || h.Places[0].Y != 70 {
		t.Errorf("%+v, foot %v", h.Places, foot)
	}
	if want := w.Pull(box.MM(wall), box.MM(high), box.MM(foot), 3); math.Abs(h.Pull-want) > 1e-9 {
		t.Errorf("pull %v, by hand %v", h.Pull, want)
	}
	if want := (w.Mass + 3) * 9.80665 / 2; math.Abs(h.Shear-want) > 1e-9 {
		t.Errorf("shear %v, by hand %v", h.Shear, want)
	}
	// 60 - 20 = 40 in the wood, of which 2/3 x 60 = 40 is thread: 108.25 G^2 x 5 x 40
	// and 23.17 x 25 = 579.25, for 40 is 8 diameters.
	g := timber.MustGet("Scots pine")
	f, ok := g.Figure(timber.Gravity12)
	if !ok {
		d, _ := g.Density()
		f.Value = d.Value / 1120
	}
	if want := 108.25 * f.Value * f.Value * 5 * 40; h.In != 40 || math.Abs(h.Withdrawal-want) > 1e-6 || math.Abs(h.Lateral-579.25) > 1e-9 {
		t.Errorf("%+v, want %v", h, want)
	}
	if got := h.Findings(); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// TestMountingWeak: the same box with a load, by nails, short ones and proud ones.
func TestMountingWeak(t *testing.T) {
	plan := resolve(t, hung())
	for name, c := range map[string]struct {
		m    Mounting
		want []string
	}{
		"usual": {Mounting{}, nil},
		// 500 kg: 5 x 500 x 9.8 / 2 = 12 260 N a screw, which bears some 834.
		"a load": {Mounting{Load: 500}, []string{"mounting-pull", "mounting-shear"}},
		// A nail of 3 x 30 left 9 proud goes 30 - 20 - 9 = 1 deep.
		"proud":  {Mounting{With: Fastener{Kind: "nail", Diameter: 3, Length: 30}, Proud: 9}, []string{"mounting-pull", "mounting-shear", "nail-penetration"}},
		"short":  {Mounting{With: Fastener{Kind: "screw", Diameter: 6, Length: 60, Pilot: 4}}, []string{"screw-penetration"}}, // 40 is less than 7 x 6
		"enough": {Mounting{With: Fastener{Kind: "screw", Diameter: 5, Length: 60, Pilot: 3.5}}, nil},
	} {
		got, err := CheckMounting(plan, c.m)
		if err != nil || len(got) != len(c.want) {
			t.Errorf("%s: %+v, %v", name, got, err)
			continue
		}
		for i := range got {
			if got[i].Code != c.want[i] || len(got[i].Sources) == 0 || got[i].Part != box.Back {
				t.Errorf("%s: %+v", name, got[i])
			}
		}
	}
	none, err := CheckMounting(resolve(t, hung().With(func(d *box.Design) { d.Features = nil })), Mounting{})
	if err != nil || none != nil {
		t.Errorf("%+v, %v", none, err)
	}
}

// TestMountingSaid: the plan says what it hangs by: nails of 6 x 100, 20 proud, go
// 100 - 20 - 20 = 60 into the wood, ten diameters: enough in dense wood, and in light
// wood, which asks for fourteen, too little. A batten of 20 hangs in its place where
// there is one.
func TestMountingSaid(t *testing.T) {
	d := hung().With(func(d *box.Design) {
		d.Features = []box.Feature{box.Hang{By: box.Hanger{What: "nail, aluminium", Diameter: 6, Length: 100, Proud: 20}}}
	})
	for into, need := range map[string]float64{"white oak": 10, "Scots pine": 14, "": 14} {
		h, err := Mounting{Into: into}.Hang(resolve(t, d))
		if err != nil || h.With != (Fastener{Kind: "nail", Diameter: 6, Length: 100, Stainless: true}) || h.In != 60 {
			t.Errorf("%+v, %v", h, err)
		}
		bears, _ := timber.NailLateral(6)
		if fs := h.Findings(); need == 10 && len(fs) != 0 || need == 14 && (len(fs) != 1 || fs[0].Code != "nail-penetration" || fs[0].Got != 10 || fs[0].Lo != need) || math.Abs(h.Lateral-bears*10/need) > 1e-9 {
			t.Errorf("%q: bears %v of %v: %+v", into, h.Lateral, bears, fs)
		}
	}
	d = d.With(func(d *box.Design) {
		d.Outer = []box.Outer{box.Batten{Name: "batten", Width: 60, Past: 120, Hole: box.Round{Diameter: 5}, By: box.Hanger{Diameter: 5, Length: 80}}}
	})
	h, err := Mounting{}.Hang(resolve(t, d))
	if err != nil || h.On != box.FreePart("batten") || h.With != (Fastener{Kind: "screw", Diameter: 5, Length: 80}) || h.In != 60 || h.Places[0].Y != 90 {
		t.Errorf("%+v, %v", h, err)
	}
}

func TestMountingBadInput(t *testing.T) {
	plan := resolve(t, hung())
	nan := math.NaN()
	var p box.Problem
	for path, m := range map[string]Mounting{
		"Mounting.Proud":         {Proud: -1},
		"Mounting.Load":          {Load: nan},
		"Mounting.Reserve":       {Reserve: math.Inf(1)},
		"Mounting.Into":          {Into: "moonwood"},
		"Mounting.With.Kind":     {With: Fastener{Kind: "rope", Diameter: 3, Length: 40}},
		"Mounting.With.Diameter": {With: Fastener{Kind: "nail", Diameter: -3, Length: 40}},
	} {
		if _, err := m.Hang(plan); !errors.As(err, &p) || p.Path != path {
			t.Errorf("%s: %v", path, err)
		}
	}
	if _, err := (Mounting{}).Hang(nil); !errors.As(err, &p) || p.Code != "nil-plan" {
		t.Error(err)
	}
	if _, err := CheckMounting(nil, Mounting{}); !errors.As(err, &p) || p.Code != "nil-plan" {
		t.Error(err)
	}
	if _, err := (Mounting{}).Hang(resolve(t, hung().With(func(d *box.Design) { d.Features = nil }))); !errors.As(err, &p) || p.Code != "no-mounting" {
		t.Error(err)
	}
}
