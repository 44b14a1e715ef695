package species

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/joints"
)

func shopCodes(t *testing.T, d box.Design, w Workshop) []string {
	t.Helper()
	fs, err := w.Check(resolve(t, d))
	if err != nil {
		t.Fatal(err)
	}
	out := []string{}
	for _, f := range fs {
		out = append(out, f.Code)
	}
	return out
}

// TestWorkshop breaks one thing at a time that the maker has. The sound box has
// a hole of 32 and drains of 8, a roof at 10 degrees 190 + 50 + 50 = 290 wide.
func TestWorkshop(t *testing.T) {
	none := func(*box.Design) {}
	for _, c := range []struct {
		name   string
		change func(*box.Design)
		shop   Workshop
		want   string
	}{
		{"all there is", none, Workshop{Bits: []box.MM{8, 32}, SawTilt: 45, Bed: [2]box.MM{300, 500}, Boards: []box.MM{195}, Cutters: []box.MM{6}}, ""},
		{"no bit of 32", none, Workshop{Bits: []box.MM{8, 30}}, "shop-bit"},
		{"a bit within half a tenth", none, Workshop{Bits: []box.MM{8, 31.96}}, ""},
		{"a bit a tenth off", none, Workshop{Bits: []box.MM{8, 31.9}}, "shop-bit"},
		{"a saw that hardly tilts", none, Workshop{SawTilt: 5}, "shop-tilt shop-tilt"},                                                                                                                // front and roof
		{"a table too narrow", none, Workshop{Bed: [2]box.MM{200, 500}}, "shop-bed"},                                                                                                                  // the roof is 290 by some 235
		{"boards too narrow", none, Workshop{Boards: []box.MM{95, 145}}, "shop-board shop-board"},                                                                                                     // front and back are 190; plywood is no board
		{"a fine groove", func(d *box.Design) { d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{}} }, Workshop{Cutters: []box.MM{25}}, "shop-cutter shop-cutter shop-cutter shop-cutter"}, // 20.2 wide
	} {
		if got := strings.Join(shopCodes(t, sound().With(c.change), c.shop), " "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestHandTools: with hand tools only there are no compound angles, no stopped
// housings, and sizes on 1 mm; set-ups are counted.
func TestHandTools(t *testing.T) {
	hand := Workshop{HandTools: true}
	plain := box.Design{Name: "plain", Board: box.Board{Thickness: 20, Width: 140}, Size: box.Cavity{Width: 100, Depth: 100, Height: 200}, Roof: box.NoRoof{}, Floor: box.FloorBetween{}}
	if got := strings.Join(shopCodes(t, plain, hand), " "); got != "hand-setups" {
		t.Errorf("%q", got)
	}
	lean := plain.With(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Lean: 8}, {On: box.Left, Lean: 5}} })
	if got := shopCodes(t, lean, hand); got[0] != "hand-compound" {
		t.Errorf("%q", got)
	}
	// Housings run through as a rule; where they are stopped the bench must chop.
	through := plain.With(func(d *box.Design) { d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{}} })
	if got := strings.Join(shopCodes(t, through, hand), " "); strings.Contains(got, "stopped") {
		t.Errorf("%q", got)
	}
	housed := plain.With(func(d *box.Design) {
		d.Floor = box.FloorBetween{Raise: 20}
		d.Joints = []box.Between{{Over: box.Front, Under: box.Floor, Joint: joints.Housing{Stop: 10}}}
	})
	fs, err := hand.Check(resolve(t, housed))
	if err != nil {
		t.Fatal(err)
	}
	var stopped []string
	for _, f := range fs {
		if f.Code == "hand-stopped" {
			stopped = append(stopped, string(f.Part))
		}
	}
	if got := strings.Join(stopped, " "); got != "front" {
		t.Errorf("stopped in %q", got)
	}
	half := plain.With(func(d *box.Design) { d.Size = box.Cavity{Width: 100, Depth: 100, Height: 200.4} })
	if got := strings.Join(shopCodes(t, half, hand), " "); got != "hand-mm hand-setups" {
		t.Errorf("%q", got)
	}
}

// TestSetups counts by hand: all is sawn square; walls are 200 + 20 long and the
// floor 100, which is across the grain as wide as it is long; the sides are 100
// wide, the front 140, which is the board as it comes.
func TestSetups(t *testing.T) {
	d := box.Design{Name: "plain", Board: box.Board{Thickness: 20, Width: 140}, Size: box.Cavity{Width: 100, Depth: 100, Height: 200}, Roof: box.NoRoof{}, Floor: box.FloorBetween{},
		Features: []box.Feature{box.Drains{}}}
	var got []string
	for _, s := range Setups(resolve(t, d)) {
		got = append(got, s.String())
	}
	if s := strings.Join(got, "; "); s != "saw 0 deg; stop 100 mm; stop 220 mm; width 100 mm; drill 8 mm" {
		t.Error(s)
	}
	if Setups(nil) != nil {
		t.Error("of nothing")
	}
}

// TestShopOffersBits: a blue tit's box with a hole of 26 and bits of 25, 28, 30
// and 32: 25 or 28 are offered, never 30, and what 28 also admits is said.
func TestShopOffersBits(t *testing.T) {
	plan := resolve(t, good().With(func(d *box.Design) {
		d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 26}, Above: 195}
	}))
	fs, err := Review(plan, MustGet("blue_tit"), Site{Sealed: true, Shop: Workshop{Bits: []box.MM{2, 8, 25, 28, 30, 32}}}) // 2 for the hook
	if err != nil {
		t.Fatal(err)
	}
	// A great tit's floor is more than a blue tit asks for: that comes first.
	fs = slices.DeleteFunc(fs, func(f box.Finding) bool { return f.Code == "floor-preset" })
	if len(fs) != 1 || fs[0].Code != "shop-bit" {
		t.Fatalf("%+v", fs)
	}
	if w := fs[0].Why; !strings.Contains(w, "25 or 28 (which also admits") || !strings.Contains(w, "Great Tit") || strings.Contains(w, "30") {
		t.Error(w)
	}
}

func TestWorkshopBadInput(t *testing.T) {
	var p box.Problem
	plan := resolve(t, sound())
	nan := box.MM(math.NaN())
	for _, w := range []Workshop{{Bits: []box.MM{0}}, {Bits: []box.MM{nan}}, {Cutters: []box.MM{-1}}, {Boards: []box.MM{nan}}, {SawTilt: -1}, {SawTilt: box.Deg(math.NaN())}, {Bed: [2]box.MM{nan, 1}}, {Bed: [2]box.MM{300, 0}}} {
		if _, err := w.Check(plan); !errors.As(err, &p) || p.Code != "range" {
			t.Errorf("%+v: %v", w, err)
		}
		if _, err := Review(plan, MustGet("great_tit"), Site{Shop: w}); !errors.As(err, &p) || p.Code != "range" {
			t.Errorf("%+v: %v", w, err)
		}
	}
	if _, err := (Workshop{}).Check(nil); !errors.As(err, &p) || p.Code != "nil-plan" {
		t.Error(err)
	}
}
