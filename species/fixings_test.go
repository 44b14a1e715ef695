package species

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/joints"
)

// thin is a box of boards that measure 14.6.
func thin() box.Design {
	return sound().With(func(d *box.Design) {
		d.Board = box.Board{Thickness: 15, Measured: 14.6, Material: "Scots pine"}
		d.Boards = nil
	})
}

func fixings(t *testing.T, d box.Design, with FixWith) (*box.Plan, []Fixing) {
	t.Helper()
	plan := resolve(t, d)
	fs, err := Fixings(plan, with)
	if err != nil || len(fs) == 0 {
		t.Fatalf("%v, %v", fs, err)
	}
	return plan, fs
}

// checkRows is CheckFixings of some rows alone: what it says of the seams that these
// leave is left out.
func checkRows(plan *box.Plan, fs []Fixing) ([]box.Finding, error) {
	got, err := CheckFixings(plan, fs)
	return slices.DeleteFunc(got, func(f box.Finding) bool { return f.Code == "seam-unfixed" }), err
}

// TestFixingsSmallBox: screws of 3.5 x 40 in a 2.5 pilot in the middle of 14.6
// give no finding, 5.0 exactly one a row (14.6 / 4 = 3.65; common practice).
func TestFixingsSmallBox(t *testing.T) {
	for d, want := range map[box.MM]int{3.5: 0, 5: 1} {
		plan, fs := fixings(t, thin(), FixWith{Fasteners: []Fastener{{Kind: "screw", Diameter: d, Length: 40, Pilot: 2.5}}})
		for _, f := range fs {
			if f.EndGrain || f.Over == box.Roof {
				continue // 40 is too short for those: 3 x 14.6 = 43.8
			}
			got, err := checkRows(plan, []Fixing{f})
			if err != nil || len(got) != want || want == 1 && (got[0].Code != "fixing-small" || got[0].Got != 5 || math.Abs(got[0].Hi-3.65) > 1e-9) {
				t.Errorf("%v: %s: %+v, %v", d, f, got, err)
			}
		}
	}
}

// TestFixingsProposed: what is proposed from the metric sizes keeps every rule.
func TestFixingsProposed(t *testing.T) {
	for name, d := range map[string]box.Design{
		"thin": thin(), "sound": sound().With(func(d *box.Design) { d.Board.Material = "Scots pine" }),
		"gable": thin().With(func(d *box.Design) { d.Roof, d.Walls = box.Gable{Pitch: 15}, nil }),
	} {
		plan, fs := fixings(t, d, FixWith{})
		got, err := CheckFixings(plan, fs)
		if name == "gable" { // its slopes meet at 150 degrees: no screw holds the ridge
			if len(got) != 1 || got[0].Code != "seam-unfixed" || got[0].Severity != box.Advice || got[0].Part != box.RoofRight {
				t.Errorf("%s: %+v", name, got)
			}
			continue
		}
		if err != nil || len(got) != 0 {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// TestFixingsOfHeavyBoxes: a box counts as heavy by the density of its board, by
// that of the wood it names, and with its load; 10 kg are the limit.
func TestFixingsOfHeavyBoxes(t *testing.T) {
	large := box.Design{Name: "large", Board: box.Board{Thickness: 25, Material: "European oak"}, Size: box.Cavity{Width: 400, Depth: 400, Height: 500}, Roof: box.NoRoof{}, Floor: box.FloorBetween{}}
	for _, c := range []struct {
		name string
		d    box.Design
		load float64
		want bool
	}{
		{"named", large, 0, true}, // 0.026 m3 of some 700 kg/m3
		{"stated", large.With(func(d *box.Design) { d.Board.Density = 300 }), 0, false},
		{"loaded", large.With(func(d *box.Design) { d.Board.Density = 300 }), 3, true},
		{"unknown", large.With(func(d *box.Design) { d.Board.Material = "boards" }), 0, false},
	} {
		_, fs := fixings(t, c.d, FixWith{Load: c.load})
		if fs[0].Structural != c.want {
			t.Errorf("%s: %+v", c.name, fs[0])
		}
	}
}

// TestFixingsByHand: a fixing written down by hand is measured on the plan. The
// floor is 150 wide: a screw of 170 through 14.6 comes out of its other side. The
// grain of the floor runs from left to right, so it is its end grain that takes the
// screw, 3 x 14.6 = 43.8; of ply it is an edge, 2.5 x 14.6 = 36.5.
func TestFixingsByHand(t *testing.T) {
	plan := resolve(t, thin())
	sheet := resolve(t, thin().With(func(d *box.Design) { d.Boards = map[box.Part]box.Board{box.Floor: ply} }))
	f := Fixing{Over: box.Left, Under: box.Floor, With: Fastener{Kind: "screw", Diameter: 3.5, Length: 30, Pilot: 2.5}, Places: []box.Place{{X: -90}}}
	if got, err := checkRows(sheet, []Fixing{f}); err != nil || len(got) != 1 || got[0].Code != "fastener-length" || !strings.Contains(got[0].Why, "into the edge of floor") {
		t.Errorf("ply: %+v, %v", got, err)
	}
	for length, want := range map[box.MM]string{45: "", 40: "fastener-endgrain", 30: "fastener-endgrain", 170: "points"} {
		f := Fixing{Over: box.Left, Under: box.Floor, With: Fastener{Kind: "screw", Diameter: 3.5, Length: length, Pilot: 2.5}, Places: []box.Place{{X: -90}}}
		got, err := checkRows(plan, []Fixing{f})
		code := ""
		for _, g := range got {
			code += g.Code
		}
		if err != nil || code != want {
			t.Errorf("%v: %+v, %v", length, got, err)
		}
	}
}

// TestFixingsNails: a rebate asks for nails through its lip and gets them where
// there are any; the butts of the same box keep their screws.
func TestFixingsNails(t *testing.T) {
	d := thin().With(func(d *box.Design) { d.Corners.Joint, d.Walls = joints.Rebate{}, nil })
	_, fs := fixings(t, d, FixWith{Fasteners: append(MetricNails(), MetricScrews()...)})
	kinds := map[string]string{"butt": "screw", "rebate": "nail"}
	seen := map[string]bool{}
	for _, f := range fs {
		seen[f.Joint] = true
		if f.With.Kind != kinds[f.Joint] {
			t.Errorf("%s: %s", f.Joint, f)
		}
		if f.Joint == "rebate" && f.Held != 7.6 { // a rebate of 7 in 14.6
			t.Errorf("%v is held", f.Held)
		}
	}
	if len(seen) != 2 {
		t.Errorf("%v", seen)
	}
	_, fs = fixings(t, d, FixWith{Fasteners: MetricNails()})
	for _, f := range fs {
		if f.With.Kind != "nail" {
			t.Errorf("%s", f)
		}
	}
}

// TestFixingsPlaces works the front of the sound box out by hand: the boards are
// 20 thick and the cavity 150 wide, so the middle of a side lies 75 + 10 = 85
// from the middle of the front (geometry).
func TestFixingsPlaces(t *testing.T) {
	_, fs := fixings(t, sound(), FixWith{})
	n := 0
	for _, f := range fs {
		if f.Over != box.Front || f.Under != box.Left {
			continue
		}
		n++
		for i, p := range f.Places {
			if math.Abs(float64(p.X)+85) > 1e-3 || math.Abs(float64(p.Y)+65+20) > 1e-3 || f.Right[i] != p.X {
				t.Errorf("%+v at %v", p, f.Right[i])
			}
		}
		if f.Into != (box.Direction{Y: 1}) || f.EndGrain || f.Held != 20 {
			t.Errorf("%+v", f)
		}
	}
	if n != 1 {
		t.Errorf("%d rows", n)
	}
}

// TestFixingsClear: no two fasteners of a box come nearer than they may, and the
// holes for them can be cut: the plan with them resolves and shows each.
func TestFixingsClear(t *testing.T) {
	for name, d := range map[string]box.Design{"thin": thin(), "sound": sound()} {
		_, fs := fixings(t, d, FixWith{})
		n := 0
		with := d.With(func(d *box.Design) {
			for _, f := range fs {
				for _, c := range f.Cuts() {
					d.Features = append(d.Features, c)
					n++
				}
			}
		})
		plan := resolve(t, with)
		for _, p := range plan.Pieces() {
			for _, op := range p.Panel.Ops {
				if op.Use == box.UseFixing && op.Kind == box.OpBore {
					n--
				}
			}
		}
		if n != 0 {
			t.Errorf("%s: %d pilot holes are missing", name, n)
		}
		for i, f := range fs {
			for _, g := range fs[:i] {
				for _, p := range f.Places {
					for _, q := range g.Places {
						a, b := vecOf(p), vecOf(q)
						d := between(a, a.Add(dir(f.Into).Scale(float64(f.With.Length))), b, b.Add(dir(g.Into).Scale(float64(g.With.Length))))
						if d < float64(f.With.Diameter+g.With.Diameter)/2+apart-1e-3 {
							t.Errorf("%s: %s and %s are %v apart", name, f, g, d)
						}
					}
				}
			}
		}
	}
}

// TestFixingsBroken breaks one rule of fixings at a time.
func TestFixingsBroken(t *testing.T) {
	plan, fs := fixings(t, thin(), FixWith{})
	var f Fixing
	for _, x := range fs {
		if x.Over == box.Front && x.Under == box.Left {
			f = x
		}
	}
	for _, c := range []struct {
		name   string
		change func(*Fixing)
		want   string
	}{
		{"sound", func(*Fixing) {}, ""},
		{"no pilot", func(f *Fixing) { f.With.Pilot = 0 }, "fixing-small"},
		{"aside", func(f *Fixing) { f.Off = 2 }, "fixing-small"},
		{"short", func(f *Fixing) { f.With.Length = 30 }, "fastener-length"},
		{"short in end grain", func(f *Fixing) { f.With.Length, f.EndGrain = 40, true }, "fastener-endgrain"},
		{"through the floor", func(f *Fixing) { f.deep = 20 }, "points"},
		// 14.6 / 2 = 7.3 is less than 3 x 3.5 = 10.5, and 20 less than 7 x 3.5 = 24.5.
		{"a load on the edge", func(f *Fixing) { f.Structural = true; f.End = 30 }, "edge-pre"},
		{"a load near the end", func(f *Fixing) { f.Structural, f.Edge, f.End = true, 40, 20 }, "end-pre"},
		{"a load without pilot", func(f *Fixing) { f.Structural, f.Edge, f.End, f.With.Pilot = true, 30, 40, 0 }, "edge-nopre"},
		{"a load near the end without pilot", func(f *Fixing) { f.Structural, f.Edge, f.End, f.With.Pilot = true, 40, 30, 0 }, "end-nopre"},
	} {
		g := f
		c.change(&g)
		got, err := checkRows(plan, []Fixing{g})
		s := ""
		for _, x := range got {
			s += x.Code
		}
		if err != nil || s != c.want {
			t.Errorf("%s: %+v, %v, want %s", c.name, got, err, c.want)
		}
	}
}

// TestFixingsRust: redcedar attacks plain steel, once a part; stainless stands it.
func TestFixingsRust(t *testing.T) {
	plan, fs := fixings(t, sound(), FixWith{})
	got, err := CheckFixings(plan, fs)
	if err != nil || len(got) != 4 || got[0].Code != "rust" {
		t.Errorf("%+v, %v", got, err)
	}
	for i := range fs {
		fs[i].With.Stainless = true
	}
	if got, err = CheckFixings(plan, fs); err != nil || len(got) != 0 {
		t.Errorf("%+v, %v", got, err)
	}
}

// TestFixingsDry: a floor that floats and a mitre that is glued take no screws.
func TestFixingsDry(t *testing.T) {
	d := thin().With(func(d *box.Design) {
		d.Corners.Joint, d.Walls = joints.Mitre{}, nil
		d.Floor = box.FloorBetween{Raise: 15, Joint: joints.Housing{}}
	})
	_, fs := fixings(t, d, FixWith{})
	for _, f := range fs {
		if f.Over != box.Roof && f.Under != box.Roof {
			t.Errorf("%s", f)
		}
	}
}

func dir(d box.Direction) solid.Vec { return solid.Vec{X: d.X, Y: d.Y, Z: d.Z} }

func TestFixingsBadInput(t *testing.T) {
	plan := resolve(t, thin())
	var p box.Problem
	nan := math.NaN()
	good := Fastener{Kind: "screw", Diameter: 3.5, Length: 40, Pilot: 2.5}
	for code, with := range map[string][]FixWith{
		"required":      {{Fasteners: []Fastener{}}},
		"unknown-value": {{Fasteners: []Fastener{{Kind: "glue", Diameter: 3, Length: 40}}}},
		"range": {{Spacing: box.MM(nan)}, {Load: -1}, {Load: nan}, {Fasteners: []Fastener{{Kind: "nail", Diameter: box.MM(nan), Length: 40}}},
			{Fasteners: []Fastener{{Kind: "nail", Diameter: 2, Length: -40}}}, {Fasteners: []Fastener{{Kind: "nail", Diameter: 2, Length: 40, Pilot: 3}}}},
	} {
		for _, w := range with {
			if _, err := Fixings(plan, w); !errors.As(err, &p) || p.Code != code {
				t.Errorf("%+v: %v", w, err)
			}
		}
	}
	if _, err := Fixings(nil, FixWith{}); !errors.As(err, &p) || p.Code != "nil-plan" {
		t.Error(err)
	}
	if _, err := CheckFixings(nil, nil); !errors.As(err, &p) || p.Code != "nil-plan" {
		t.Error(err)
	}
	if _, err := CheckFixings(plan, []Fixing{{Over: "door", Under: box.Left, With: good}}); !errors.As(err, &p) || p.Code != "unknown-part" {
		t.Error(err)
	}
}

// TestFixingsOfPresets: every ready form can be screwed together with what is
// proposed; its pilot holes can be cut, no point comes out, and above 10 kg the
// structural distances hold.
func TestFixingsOfPresets(t *testing.T) {
	structural := 0
	for _, p := range All() {
		for _, thick := range []box.MM{15, 20, 25} {
			d, _, err := p.Design(box.Board{Thickness: thick, Material: "Scots pine", Density: 510})
			if err != nil {
				continue
			}
			plan := resolve(t, d)
			fs, err := Fixings(plan, FixWith{})
			if err != nil {
				t.Fatal(p.Key, err)
			}
			got, err := CheckFixings(plan, fs)
			if err != nil {
				t.Fatal(p.Key, err)
			}
			for _, f := range got {
				// An edge too thin for its load is the box's own fault, and so are the
				// strips of a crevice, which are too narrow for a screw of full length.
				// No screw goes into a roof beside the crevice, nor into a flat ridge.
				if f.Code == "seam-unfixed" && strings.HasPrefix(string(f.Part), "roof") && slices.Contains([]string{"little_owl", "eurasian_wren", "bat_flat_box_eu", "bat_single_chamber", "bat_multi_chamber"}, p.Key) {
					continue
				}
				if f.Code != "edge-pre" && (p.Form != Crevice || f.Code != "fastener-length") {
					t.Errorf("%s of %v: %s", p.Key, thick, f.Why)
				}
			}
			if len(fs) > 0 && fs[0].Structural {
				structural++
			}
			for _, f := range fs {
				if len(f.Places) != len(f.Right) || len(f.Places) != len(f.Up) {
					t.Errorf("%s: %+v", p.Key, f)
				}
			}
			bored, gs, err := Fasten(d, FixWith{})
			if err != nil || len(gs) != len(fs) {
				t.Errorf("%s of %v: %d rows and %d, %v", p.Key, thick, len(fs), len(gs), err)
			}
			for i, r := range bored.Fixings {
				if r.Hole == 0 || r.Pilot == 0 {
					t.Errorf("%s of %v: %s has no holes", p.Key, thick, gs[i])
				}
			}
		}
	}
	if structural == 0 {
		t.Error("no box is heavy")
	}
}
