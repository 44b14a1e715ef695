package species

import (
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/joints"
)

// TestOtherAnimals breaks the rules of single animals on their ready forms: what
// the change adds to the findings of the form are those codes and no others.
func TestOtherAnimals(t *testing.T) {
	for _, c := range append(otherBreaks(), otherFurther()...) {
		t.Run(c.name, func(t *testing.T) {
			plain := reviewOf(t, breach{key: c.key, change: func(*box.Design) {}})
			var got []string
			for _, f := range reviewOf(t, c) {
				if k := slices.IndexFunc(plain, func(g box.Finding) bool { return g.Code == f.Code }); k >= 0 {
					plain = slices.Delete(plain, k, k+1)
					continue
				}
				got = append(got, f.Code)
			}
			if s := strings.Join(got, " "); s != c.want {
				t.Errorf("got %q, want %q", s, c.want)
			}
		})
	}
}

// reviewOf reviews the changed ready form of an animal, of plywood.
func reviewOf(t *testing.T, c breach) []box.Finding {
	t.Helper()
	p := MustGet(c.key)
	d, _, err := p.Design(box.Board{Thickness: 20, Material: "exterior plywood", Grain: box.GrainNone})
	if err != nil {
		t.Fatal(err)
	}
	fs, err := Review(resolve(t, d.With(c.change)), p, c.site)
	if err != nil {
		t.Fatal(err)
	}
	readAloud(t, fs)
	return fs
}

func roomOf(w, d, h box.MM) func(*box.Design) {
	return func(x *box.Design) { x.Size = box.Cavity{Width: w, Depth: d, Height: h} }
}

func wayOf(e box.Entrance) func(*box.Design) {
	return func(x *box.Design) { x.Features[0] = e }
}

func otherBreaks() []breach {
	return []breach{
		{"hole of a barn owl low", "western_barn_owl", wayOf(box.Entrance{Shape: box.Rect{Width: 130, Height: 130}, Above: 300}), Site{}, "hole-above-450"},
		{"barn owl without room", "western_barn_owl", roomOf(450, 400, 600), Site{}, "floor-barn-owl"},
		{"hole of a hoopoe aside", "hoopoe", wayOf(box.Entrance{Shape: box.Round{Diameter: 55}, Above: 145, Right: 160}), Site{}, "hole-hoopoe-margin"}, // 255 - 27.5 - 160 = 67.5
		{"slot for starlings", "common_swift", wayOf(box.Entrance{Shape: box.Slot{Width: 60, Height: 35}, Above: 20}), Site{}, "swift-slot"},
		{"bluebirds and starlings", "eastern_bluebird", wayOf(box.Entrance{Shape: box.Round{Diameter: 41.3}, Above: 165}), Site{}, "hole-size starling-na"},
		{"thin walls in America", "eastern_bluebird", func(d *box.Design) { d.Board.Thickness = 18 }, Site{}, "wall-19"},
		{"kestrel rolls out", "eurasian_kestrel", func(d *box.Design) { d.Free[0].Outline = rectangle(-270, -30, 270, 80) }, Site{}, "kestrel-lip"},
		{"robin behind a high board", "european_robin", func(d *box.Design) { d.Free[0].Outline = rectangle(-90, -30, 90, 150) }, Site{}, "open-front-lip"},
		{"ducks in a draught", "wood_duck", func(d *box.Design) { d.Features = append(d.Features, box.Vents{}) }, Site{}, "vent-duck"},
		{"little room for kestrels", "eurasian_kestrel", roomOf(480, 300, 300), Site{}, "floor-kestrel"},
		{"a bat house on a tree", "bat_single_chamber", func(*box.Design) {}, Site{Place: OnTree}, "back-batten tree-fixing bat-tree"},
		{"thin boards for European bats", "bat_flat_box_eu", func(d *box.Design) { d.Board.Thickness = 18 }, Site{}, "wall-bat-eu"},
		{"thin boards for American bats", "bat_multi_chamber", func(d *box.Design) { d.Board.Thickness = 12 }, Site{}, "wall-bat-na"},
		{"bats in a wide crevice", "bat_flat_box_eu", roomOf(210, 30, 330), Site{}, "bat-gap floor-preset"},
		{"no landing for bats", "bat_flat_box_eu", func(d *box.Design) { d.Walls[0].Below = 40 }, Site{}, "bat-landing"},
		{"bats hung low", "bat_flat_box_eu", func(*box.Design) {}, Site{Above: 2}, "bat-height"},
		{"a short house for bats", "bat_multi_chamber", roomOf(355.6, 97.3, 480), Site{}, "bat-size-na cavity-height"},
		{"dogs at the hedgehog's", "hedgehog", wayOf(box.Entrance{Shape: box.Rect{Width: 140, Height: 180}, Above: 10, Right: -210}), Site{}, "hole-size hedgehog-entrance"},
	}
}

// otherFurther breaks the rest of them on ready forms.
func otherFurther() []breach {
	none := func(*box.Design) {}
	add := func(f ...box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = append(d.Features, f...) }
	}
	slot := func(up, high box.MM) func(*box.Design) {
		return add(box.Cut{On: box.Front, Use: box.UseVent, Shape: box.Rect{Width: 150, Height: high}, At: box.Anchor{Level: box.LowestAbove, Up: up}})
	}
	bees := func(b box.BeeBlock) func(*box.Design) {
		return func(d *box.Design) { d.Inner = []box.Inner{b} }
	}
	block := box.Board{Thickness: 150, Grain: box.GrainNone}
	lid := func(d *box.Design) {
		d.Outer = nil
		d.Opens = []box.Opening{box.Hinged{Part: box.Roof}, box.HookAndEye{Part: box.Roof, At: box.Left}}
	}
	return []breach{
		{"ducklings at a planed front", "wood_duck", none, Site{Planed: true}, "duck-ladder"},
		{"a narrow ladder", "wood_duck", add(box.GripGrooves{}), Site{}, "duck-ladder"},
		{"a ladder of 90", "wood_duck", add(box.GripGrooves{Length: 90}), Site{Planed: true}, ""},
		{"swifts over a floor that runs out", "common_swift", func(d *box.Design) { d.Floor = box.FloorUnder{Over: box.Overhangs{Front: 30}} }, Site{}, "perch floor-recess"},
		{"bats on planed boards", "bat_flat_box_eu", func(d *box.Design) { d.Features = nil }, Site{Planed: true}, "bat-rough"},
		{"bats on planed boards with grooves", "bat_flat_box_eu", none, Site{Planed: true}, ""},
		// The side of the rebate that lies open under the slope: 20 sin 15 = 5.2.
		{"bats in a draught", "bat_flat_box_eu", func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Back, Under: box.Roof, Joint: joints.Butt{EndSquare: true}}}
		}, Site{}, "bat-draught"},
		{"a lid on bats in Europe", "bat_flat_box_eu", lid, Site{}, "open-bat legal-bat"},
		{"a lid on bats in America", "bat_single_chamber", lid, Site{}, "legal-bat"},
		{"a hot house without a vent", "bat_single_chamber", none, Site{HotSummers: true}, "bat-vent"},
		{"a vent at 152", "bat_single_chamber", slot(152, 12.5), Site{HotSummers: true}, ""},
		{"a vent at 200", "bat_single_chamber", slot(200, 12.5), Site{HotSummers: true}, "bat-vent"},
		{"a high vent at 152", "bat_single_chamber", slot(152, 20), Site{HotSummers: true}, "bat-vent"},
		{"a dormouse against the bark", "hazel_dormouse", func(d *box.Design) {
			for i := range d.Outer {
				b := d.Outer[i].(box.Batten)
				b.Board = box.Board{Thickness: 20}
				d.Outer[i] = b
			}
		}, Site{}, "dormouse-back"},
		{"a dormouse in front", "hazel_dormouse", func(d *box.Design) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 98}, box.Drains{}, box.DripGroove{}}
		}, Site{}, "dormouse-back"},
		{"short bores", "solitary_bees_mixed", bees(box.BeeBlock{Name: "block", Height: 198, Board: block, Rows: []box.BeeRow{{Diameter: 8, Depth: 80}}}), Site{}, "bee-closed"},
		{"bores open behind", "solitary_bees_mixed", func(d *box.Design) {
			d.Inner = nil
			d.Free = []box.Free{{Name: "block", Board: box.Board{Thickness: 130, Grain: box.GrainNone}, Outline: rectangle(-60, 0, 60, 120), At: box.Place{Z: 5, Y: 65},
				Up: box.Direction{Z: 1}, Cuts: []box.Cut{{Shape: box.Round{Diameter: 8}, At: box.Anchor{Up: 60}}}}}
		}, Site{}, "bee-closed"},
		{"wide bores", "solitary_bees_mixed", bees(box.BeeBlock{Name: "block", Height: 198, Board: block, Rows: []box.BeeRow{{Diameter: 12, Depth: 140}}}), Site{}, "hole-size bee-diameter"},
		{"bores crowded", "solitary_bees_mixed", bees(box.BeeBlock{Name: "block", Height: 198, Board: block, Spacing: 15, Rows: []box.BeeRow{{Diameter: 6, Depth: 140}}}), Site{}, "bee-spacing"},
	}
}
