package species

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
)

// TestBlade: a shelf that ends before a wall leaning by 50 degrees ends like it, in
// an edge of 40: a blade, unless it is blunted.
func TestBlade(t *testing.T) {
	for blunt, want := range map[box.MM]bool{0: true, 1: false} {
		d := good().With(func(d *box.Design) {
			d.Walls = []box.Wall{{On: box.Left, Lean: 50}}
			d.Opens = nil
			d.Inner = []box.Inner{box.Shelf{Name: "rest", Above: 80, Gaps: box.Gaps{Left: 30, Front: 40}, Board: ply}}
			d.Features = append(d.Features, box.Edging{On: []box.Part{box.InnerPart("rest")}, Blunt: blunt})
		})
		if got := codes(t, d, "great_tit", Site{}); slices.Contains(got, "points") != want {
			t.Errorf("blunted by %v: %q", blunt, got)
		}
	}
}

// TestMadeUpParts: rules on the wall see the whole, those on grain, stock and
// movement its strips.
func TestMadeUpParts(t *testing.T) {
	wide := func(j box.EdgeJoint) box.Design {
		return good().With(func(d *box.Design) {
			d.Size = box.Cavity{Width: 190, Depth: 130, Height: 250}
			d.MadeUp = []box.MadeUp{{Of: box.Front, Width: 130, Joint: j}}
			d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 32}, Above: 195, Right: 45} // off the joint
		})
	}
	// Front and back are 230 wide: one board of them is wider than 200, and than
	// any that is sold (225); two strips are not.
	for _, c := range []struct {
		name string
		j    box.EdgeJoint
		want string
	}{
		{"glued", box.EdgeGlued{}, "no-stock panel-wide"}, // of the back
		{"tongue and groove, glued", box.TongueGroove{}, "no-stock panel-wide"},
		// Two strips of 115 and a lap of 12 in boards of 130: 0.01 x 127 = 1.3.
		{"shiplap, tight", box.Shiplap{Lap: 12}, "movement no-stock panel-wide"},
		{"shiplap with gaps", box.Shiplap{Lap: 12, Gap: 1.5}, "no-stock panel-wide"},
		{"tongue and groove, dry and tight", box.TongueGroove{Dry: true}, "movement no-stock panel-wide"},
	} {
		got := strings.Join(codes(t, wide(c.j), "great_tit", Site{}), " ")
		if got = strings.Replace(got, "floor-preset ", "", 1); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
	fs, err := Review(resolve(t, wide(box.Shiplap{Lap: 12, Gap: 0.6})), MustGet("great_tit"), Site{})
	k := slices.IndexFunc(fs, func(f box.Finding) bool { return f.Code == "movement" })
	if err != nil || k < 0 || fs[k].Part != box.Front || math.Abs(fs[k].Got-0.6) > 1e-6 {
		t.Errorf("%+v, %v", fs, err)
	}
	// The hole, its wood and the walls are asked of the whole front.
	d := wide(nil).With(func(d *box.Design) {
		d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 38}, Above: 110, Right: 60}
	})
	got := strings.Join(codes(t, d, "great_tit", Site{}), " ")
	for _, code := range []string{"hole-size", "hole-above-120", "hole-side-margin"} { // 95 - 60 - 19 = 16
		if !strings.Contains(got, code) {
			t.Errorf("no %s in %q", code, got)
		}
	}
	// A hole through a dry joint, or 10 from it, has no wood there; beside a glued one
	// it has. The strips of the front are 115 wide and meet in the middle.
	for _, c := range []struct {
		right box.MM
		j     box.EdgeJoint
		want  bool
	}{{0, box.Shiplap{Lap: 12, Gap: 1.5}, true}, {26, box.Shiplap{Lap: 12, Gap: 1.5}, true}, {50, box.Shiplap{Lap: 12, Gap: 1.5}, false}, {0, box.EdgeGlued{}, false}} {
		d := wide(c.j).With(func(d *box.Design) {
			d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 32}, Above: 195, Right: c.right}
		})
		if got := codes(t, d, "great_tit", Site{}); slices.Contains(got, "hole-joint") != c.want {
			t.Errorf("%v, %T: %q", c.right, c.j, got)
		}
	}
	// A floor of dry strips between the walls moves into its gaps; a glued one as a
	// whole.
	floor := func(j box.EdgeJoint) box.Design {
		return good().With(func(d *box.Design) {
			d.Boards = map[box.Part]box.Board{box.AllRoof: ply}
			d.MadeUp = []box.MadeUp{{Of: box.Floor, Width: 70, Joint: j}}
		})
	}
	for want, j := range map[string]box.EdgeJoint{"movement": box.EdgeGlued{}, "": box.Shiplap{Lap: 6, Gap: 1}} {
		if got := strings.Join(codes(t, floor(j), "great_tit", Site{}), " "); got != want {
			t.Errorf("floor, %T: %q", j, got)
		}
	}
	// A fixing may name a strip.
	plan := resolve(t, wide(nil))
	f := Fixing{Over: box.StripN(box.Front, 1), Under: box.Left, Places: []box.Place{{X: -100}}, With: Fastener{Kind: "screw", Diameter: 4, Length: 50, Pilot: 3}}
	if fs, err := checkRows(plan, []Fixing{f}); err != nil || len(fs) != 0 {
		t.Errorf("%+v, %v", fs, err)
	}
}

// TestFastenedDesignReviewed: Review looks at the rows that a design states.
func TestFastenedDesignReviewed(t *testing.T) {
	d, rows, err := Fasten(good(), FixWith{})
	if err != nil || len(rows) == 0 {
		t.Fatal(rows, err)
	}
	if got := codes(t, d, "great_tit", Site{}); len(got) != 0 {
		t.Errorf("%q", got)
	}
	d = d.With(func(d *box.Design) { d.Fixings[0].Diameter, d.Fixings[0].Hole, d.Fixings[0].Pilot = 6, 6, 4 })
	if got := codes(t, d, "great_tit", Site{}); !slices.Equal(got, []string{"fixing-small"}) { // 20 / 4 = 5
		t.Errorf("%q", got)
	}
	d = d.With(func(d *box.Design) { d.Fixings[0].Metal, d.Board.Material = "stainless steel", "white oak" })
	if got := codes(t, d, "great_tit", Site{}); !slices.Contains(got, "rust") { // the other rows
		t.Errorf("%q", got)
	}
}

// fixingBreaks break the rules on nails and screws: one row of them each, through
// the left side of 20 into the floor. Advice on load is for heavy boxes only.
func fixingBreaks() []breach {
	with := func(f Fixing) Site {
		f.Over, f.Under, f.Places = box.Left, box.Floor, []box.Place{{X: -95}}
		return Site{Fixings: []Fixing{f}}
	}
	screw := func(d, l, pilot box.MM) Fastener {
		return Fastener{Kind: "screw", Diameter: d, Length: l, Pilot: pilot}
	}
	nail := func(d, l, pilot box.MM) Fastener {
		return Fastener{Kind: "nail", Diameter: d, Length: l, Pilot: pilot}
	}
	none := func(*box.Design) {}
	oak := func(d *box.Design) { d.Board.Material = "white oak" }
	return []breach{
		{"screws in order", "great_tit", none, with(Fixing{With: screw(4, 50, 3)}), ""},
		{"screws short", "great_tit", none, with(Fixing{With: screw(4, 45, 3)}), "fastener-length"}, // 2.5 x 20 = 50
		{"screws short for end grain", "great_tit", none, with(Fixing{With: screw(4, 50, 3), EndGrain: true}), "fastener-endgrain"},
		{"screws without a pilot", "great_tit", none, with(Fixing{With: screw(4, 50, 0)}), "fixing-small"},
		{"screws too thick", "great_tit", none, with(Fixing{With: screw(6, 50, 4)}), "fixing-small"}, // 20 / 4 = 5
		// The floor is 150 wide: 20 and 148 are more than it takes.
		{"screws that come out", "great_tit", none, with(Fixing{With: screw(4, 170, 3)}), "points"},
		{"plain steel in oak", "great_tit", oak, with(Fixing{With: screw(4, 50, 3)}), "rust"},
		{"stainless steel in oak", "great_tit", oak, with(Fixing{With: Fastener{Kind: "screw", Diameter: 4, Length: 50, Pilot: 3, Stainless: true}}), ""},
		// Under load. Edge to the middle 10 mm: a screw of 4 needs 3 d = 12 with a
		// pilot, 5 d = 20 without, and 7 d = 28 or 10 d = 40 to the end; for the edge
		// of sheets the table has more. Penetration 7 d = 28; t/6 = 3.3.
		{"a heavy box, screws in order", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(3, 50, 2)}), ""},
		// 200 kg more on nails of 2 mm that hold 20 mm: neither draws nor bears, and
		// 25 mm are 12.5 diameters in light wood.
		{"hung on pins", "great_tit", func(d *box.Design) { d.Features = append(d.Features, box.Hang{}) },
			Site{Mounting: Mounting{With: nail(2, 45, 0), Load: 200}}, "mounting-pull mounting-shear nail-penetration"},
		{"hung on screws", "great_tit", func(d *box.Design) { d.Features = append(d.Features, box.Hang{}) }, Site{Mounting: Mounting{Into: "Scots pine"}}, ""},
		{"near the edge", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(3, 50, 2), Off: 4}), "edge-pre"},
		{"near the end", "great_tit", none, with(Fixing{Structural: true, End: 10, With: screw(3, 50, 2)}), "end-pre"},
		{"near the edge without a pilot", "great_tit", none, with(Fixing{Structural: true, End: 60, With: nail(2.5, 50, 0)}), "edge-nopre"},
		{"near the end without a pilot", "great_tit", none, with(Fixing{Structural: true, End: 12, With: nail(1.4, 50, 0)}), "end-nopre"},
		{"thick for the edge", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(5, 60, 3.5)}), "edge-pre into-edge"},
		{"screws that hardly go in", "great_tit", none, with(Fixing{Structural: true, End: 60, With: screw(3, 40, 2)}), "fastener-length screw-penetration"}, // 20 / 3 = 6.7
		// 50 - 20 = 30 are 12 d of a nail of 2.5: too little in light wood, enough in dense.
		{"nails not deep enough in light wood", "great_tit", func(d *box.Design) {
			d.Boards[box.Floor] = box.Board{Thickness: 20, Material: "western redcedar", Grain: box.GrainUp}
		}, with(Fixing{Structural: true, End: 60, Edge: 40, With: nail(2.5, 50, 2)}), "movement rust nail-penetration"},
		{"nails as deep in dense wood", "great_tit", func(d *box.Design) {
			d.Boards[box.Floor] = box.Board{Thickness: 20, Material: "robinia", Grain: box.GrainUp}
		}, with(Fixing{Structural: true, End: 60, Edge: 40, With: nail(2.5, 50, 2)}), "movement"},
		{"nails that hardly go in", "great_tit", none, with(Fixing{Structural: true, End: 60, With: nail(3, 45, 2.4)}), "fastener-length nail-penetration"}, // 25 / 3 = 8.3
	}
}

// TestFixingsReviewed: Review looks at the fixings of the site.
func TestFixingsReviewed(t *testing.T) {
	for _, c := range fixingBreaks() {
		// The site has one row only: of the seams without one TestSeamsUnfixed tells.
		got := slices.DeleteFunc(codes(t, good().With(c.change), c.key, c.site), func(s string) bool { return s == "seam-unfixed" })
		if got := strings.Join(got, " "); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
	var p box.Problem
	if _, err := Review(resolve(t, good()), MustGet("great_tit"), Site{Fixings: []Fixing{{Over: "attic", Under: box.Floor}}}); !errors.As(err, &p) || p.Code != "unknown-part" {
		t.Error(err)
	}
	if _, err := Review(resolve(t, good()), MustGet("great_tit"), Site{Fixings: []Fixing{{Over: box.Left, Under: box.Floor, Places: []box.Place{{}}, With: Fastener{Kind: "rivet", Diameter: 3, Length: 40}}}}); !errors.As(err, &p) || p.Code != "unknown-value" {
		t.Error(err)
	}
}
