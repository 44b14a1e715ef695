package species

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/joints"
	"holt.example/species/timber"
)

// fastenings are boxes with corners, roofs and joints of many kinds.
func fastenings() map[string]box.Design {
	return map[string]box.Design{
		"thin":    thin(),
		"sound":   sound(),
		"gable":   thin().With(func(d *box.Design) { d.Roof, d.Walls = box.Gable{Pitch: 35, Over: box.Overhangs{All: 40}}, nil }),
		"steep":   thin().With(func(d *box.Design) { d.Roof = box.Pent{Pitch: 25, Over: box.Overhangs{Front: 60}} }),
		"leaning": thin().With(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Lean: 8}, {On: box.Left, Lean: 5}} }),
		"sides":   thin().With(func(d *box.Design) { d.Corners.Laps, d.Walls = box.Sides, nil }),
		"rebated": thin().With(func(d *box.Design) { d.Corners.Joint, d.Walls = joints.Rebate{}, nil }),
		"combed":  thin().With(func(d *box.Design) { d.Corners.Joint, d.Walls = joints.Comb{}, nil }),
		"under":   thin().With(func(d *box.Design) { d.Floor, d.Walls = box.FloorUnder{}, nil }),
		"hexagon": {Name: "hexagon", Board: box.Board{Thickness: 15}, Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 6, Across: 200}, Floor: box.FloorBetween{}, Roof: box.NoRoof{}},
		"opens":   thin().With(func(d *box.Design) { d.Opens = []box.Opening{box.Hinged{Part: box.Roof}} }),
		"strips": thin().With(func(d *box.Design) {
			d.Board.Width, d.MadeUp = 95, []box.MadeUp{{Of: box.Front}, {Of: box.Left}}
		}),
		"laid": thin().With(func(d *box.Design) {
			d.Roof = box.Gable{Pitch: 15, Over: box.Overhangs{All: 40}}
			d.Walls = nil
			d.Outer = []box.Outer{box.RidgeCap{Name: "cap", Width: 60}, box.LandingBoard{Name: "landing", Below: 10, Width: 90, Deep: 70, Flat: true},
				box.PoleSocket{Name: "socket", Hole: box.Round{Diameter: 30}, Width: 100, Deep: 100, Layers: 2}}
		}),
		"landing": thin().With(func(d *box.Design) {
			d.Outer = []box.Outer{box.LandingBoard{Name: "landing", Below: 10, Width: 80, Deep: 60}, box.Batten{Name: "batten", Above: 100, Height: 60, Screws: 2}}
		}),
	}
}

// TestFasten counts what a fastened box has: a hole in each part for every screw
// that goes square, one in the part entered for every one that goes in line with
// it, and as many screws among the fittings as there are places. Fastened again it
// is the same box.
func TestFasten(t *testing.T) {
	for name, d := range fastenings() {
		out, fs, err := Fasten(d, FixWith{})
		if err != nil {
			t.Fatal(name, err)
		}
		plan := resolve(t, out)
		holes, screws, bare := 0, 0, 0
		for i, f := range fs {
			screws += len(f.Places)
			r := out.Fixings[i]
			if r.Hole > 0 && !r.Slant {
				holes += len(f.Places)
			}
			// A pilot is drawn in an edge that it runs along, within 0.1 of it.
			b, _ := plan.Piece(f.Under)
			if c := math.Abs(b.Home.W.Dot(dir(f.Into))); r.Pilot > 0 && (c < 0.1 || c > 0.999) {
				holes += len(f.Places)
			} else {
				bare += len(f.Places)
			}
		}
		for _, p := range plan.Pieces() {
			for _, op := range p.Panel.Ops {
				if op.Use == box.UseFixing && op.Source != "screw hole" { // those of the batten are its own
					holes--
				}
			}
		}
		if holes != 0 {
			t.Errorf("%s: %d holes too few", name, holes)
		}
		if 5*bare > 2*screws {
			t.Errorf("%s: %d of %d screws have no pilot hole", name, bare, screws)
		}
		for _, f := range plan.Fittings() {
			if strings.HasPrefix(f.Why, "through ") && f.What == "screw" && !strings.Contains(f.Why, "the wall") {
				screws -= f.Count
			}
		}
		if screws != 0 {
			t.Errorf("%s: %d screws are not listed", name, screws)
		}
		again, gs, err := Fasten(out, FixWith{Spacing: 20})
		if err != nil || !reflect.DeepEqual(again, out) {
			t.Errorf("%s: fastened again it differs: %v", name, err)
		}
		same := slices.EqualFunc(fs, gs, func(a, b Fixing) bool {
			return a.String() == b.String() && slices.EqualFunc(a.Places, b.Places, func(p, q box.Place) bool { return vecOf(p).Sub(vecOf(q)).Len() < 1e-3 }) &&
				math.Abs(float64(a.Held-b.Held)) < 1e-3 && math.Abs(float64(a.Off-b.Off)) < 1e-3 && a.Edge == b.Edge && math.Abs(float64(a.End-b.End)) < 1e-3 && a.EndGrain == b.EndGrain && a.Joint == b.Joint &&
				math.Abs(a.deep-b.deep) < 1e-3
		})
		if !same {
			t.Errorf("%s: the rows read from the plan differ:\n%v\n%v", name, fs, gs)
		}
		x, err1 := CheckFixings(resolve(t, d), fs)
		y, err2 := CheckFixings(plan, gs)
		if err1 != nil || err2 != nil || len(x) != len(y) {
			t.Errorf("%s: %v, %v", name, x, y)
		}
	}
}

// TestFastenOutward works the landing board of a box of 14.6 boards out by hand. Its
// cavity is 130 deep, so the inner face of the front is at y = -65: there the heads
// are, and the screws go towards the viewer, 14.6 through the front. The board's
// lower side is its inner face: the screws are 7.3 above it. 2.5 x 14.6 = 36.5, so
// the shortest is 40, and 14.6 / 4 = 3.65 lets 3.5 in.
func TestFastenOutward(t *testing.T) {
	d := fastenings()["landing"]
	out, fs, err := Fasten(d, FixWith{})
	if err != nil {
		t.Fatal(err)
	}
	plan := resolve(t, out)
	n := 0
	for i, f := range fs {
		if f.Under != box.FreePart("landing") {
			continue
		}
		n++
		m, err := plan.Mesh(f.Under)
		if err != nil {
			t.Fatal(err)
		}
		lo, hi := m.Bounds()
		if f.Over != box.Front || f.From != box.FromInner || f.Into != (box.Direction{Y: -1}) || f.Held != 14.6 || f.With.Diameter != 3.5 || f.With.Length != 40 || f.EndGrain {
			t.Errorf("%+v", f)
		}
		for _, p := range f.Places {
			if math.Abs(float64(p.Y)+65) > 1e-3 || math.Abs(float64(p.Z)-lo.Z-7.3) > 1e-3 || math.Abs(float64(p.Z)-hi.Z+7.3) > 1e-3 || !(float64(p.X) > lo.X && float64(p.X) < hi.X) {
				t.Errorf("%+v in %v to %v", p, lo, hi)
			}
		}
		if len(out.Fixings[i].At) != len(f.Places) {
			t.Errorf("%+v", out.Fixings[i])
		}
	}
	if n != 1 {
		t.Errorf("%d rows", n)
	}
	// The box lists no others for it.
	for _, f := range plan.Fittings() {
		if slices.Contains(f.Where, box.FreePart("landing")) && f.What == "screw" && f.Size != "3.5 x 40" {
			t.Errorf("%+v", f)
		}
	}
}

// TestFastenSaid: an edge says how it is held: glued, dry, by three nails of 2 x 40,
// or screws 50 apart. The side of the thin box is 250 high inside.
func TestFastenSaid(t *testing.T) {
	with := func(hs ...joints.Hold) (box.Design, []Fixing) {
		t.Helper()
		out, fs, err := Fasten(thin().With(func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Holds: hs}}
		}), FixWith{Fasteners: append(MetricScrews(), MetricNails()...)})
		if err != nil {
			t.Fatal(err)
		}
		return out, slices.DeleteFunc(fs, func(f Fixing) bool { return f.Over != box.Front || f.Under != box.Left })
	}
	area := func(d box.Design) float64 {
		for _, f := range resolve(t, d).Fittings() {
			if strings.HasPrefix(f.What, "glue") {
				return f.Area
			}
		}
		return 0
	}
	dry, fs := with(joints.Hold{Kind: "dry"})
	if len(fs) != 0 || area(dry) != 0 {
		t.Errorf("dry: %v", fs)
	}
	glued, fs := with(joints.Hold{Kind: "glue"})
	// The face of the joint is 14.6 wide, and as long as the seam's own contact.
	contact := 0.0
	for _, s := range resolve(t, glued).Seams() {
		if s.Over == box.Front && s.Under == box.Left {
			contact = s.Contact
		}
	}
	if got := area(glued); len(fs) != 0 || math.Abs(got-contact) > 1e-3 || !(got > 14.6*250) || !(got < 14.6*320) {
		t.Errorf("glued: %v, %v mm2, contact %v", fs, got, contact)
	}
	if _, fs = with(joints.Hold{Kind: "nail", Count: 3, Diameter: 2, Length: 40}); len(fs) != 1 || len(fs[0].Places) != 3 || fs[0].With.String() != "nail 2 x 40, pilot 1.6" {
		t.Errorf("nails: %v", fs)
	}
	_, fs = with(joints.Hold{Kind: "screw", Spacing: 50})
	if len(fs) != 1 {
		t.Fatalf("screws: %v", fs)
	}
	for i, p := range fs[0].Places[1:] {
		if gap := vecOf(p).Sub(vecOf(fs[0].Places[i])).Len(); gap > 50+1e-6 || gap < 25 {
			t.Errorf("%v apart", gap)
		}
	}
	// What is not at hand is bought.
	if _, fs = with(joints.Hold{Kind: "screw", Diameter: 3.4, Length: 41}); len(fs) != 1 || fs[0].With.String() != "screw 3.4 x 41, pilot 2.5" {
		t.Errorf("%v", fs)
	}
}

// TestFastenGlue: the class is that asked for, D4 in the weather, and what the
// design says stays.
func TestFastenGlue(t *testing.T) {
	rebated := fastenings()["rebated"]
	for class, want := range map[timber.Glue]string{0: "class D4 (EN 204)", timber.D3: "class D3 (EN 204)"} {
		d, _, err := Fasten(rebated, FixWith{Glue: class})
		if err != nil || d.Glue != want {
			t.Errorf("%q, %v", d.Glue, err)
		}
		n := 0
		for _, f := range resolve(t, d).Fittings() {
			if f.What == "glue, "+want && f.Area > 0 {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%s is listed %d times", want, n)
		}
	}
	if d, _, err := Fasten(rebated.With(func(d *box.Design) { d.Glue = "casein" }), FixWith{}); err != nil || d.Glue != "casein" {
		t.Errorf("%q, %v", d.Glue, err)
	}
	if d, _, err := Fasten(thin(), FixWith{}); err != nil || d.Glue != "" {
		t.Errorf("a box without glue has %q, %v", d.Glue, err)
	}
}

func TestFastenBadInput(t *testing.T) {
	var p box.Problem
	var ps box.Problems
	if _, _, err := Fasten(box.Design{}, FixWith{}); !errors.As(err, &ps) {
		t.Error(err)
	}
	if _, _, err := Fasten(thin(), FixWith{Glue: 9}); !errors.As(err, &p) || p.Path != "FixWith.Glue" {
		t.Error(err)
	}
	if _, _, err := Fasten(thin(), FixWith{Fasteners: []Fastener{{Kind: "screw", Diameter: -3.5, Length: 40}}}); !errors.As(err, &p) || p.Path != "FixWith.Fasteners[0].Diameter" || p.Hi != 12 {
		t.Error(err)
	}
	if _, _, err := Fasten(thin(), FixWith{Spacing: box.MM(math.NaN())}); !errors.As(err, &p) || p.Path != "FixWith.Spacing" {
		t.Error(err)
	}
}

// TestFastenFlat works a landing board that lies flat on the front out by hand: both
// boards are 14.6, so a screw that does not come out is at most 14.6 + 14.6 - 2 =
// 27.2 long: 25, through the landing board, whose outer face is at y = -65 - 29.2. It
// is 90 wide and 70 high, so its four screws stand 15 from its edges: 30 to either side
// of the middle, and 40 apart upright.
func TestFastenFlat(t *testing.T) {
	out, fs, err := Fasten(fastenings()["laid"], FixWith{})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range fs {
		if f.Over != box.FreePart("landing") {
			continue
		}
		n++
		if f.Under != box.Front || f.Into != (box.Direction{Y: 1}) || f.With.String() != "screw 3.5 x 25, pilot 2.5" || len(f.Places) != 4 {
			t.Errorf("%+v", f)
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, p := range f.Places {
			lo, hi = math.Min(lo, float64(p.Z)), math.Max(hi, float64(p.Z))
			if math.Abs(math.Abs(float64(p.X))-30) > 1e-3 || math.Abs(float64(p.Y)+65+29.2) > 1e-3 {
				t.Errorf("%+v", p)
			}
		}
		if math.Abs(hi-lo-40) > 1e-3 {
			t.Errorf("%v to %v", lo, hi)
		}
	}
	if n != 1 {
		t.Errorf("%d rows", n)
	}
	// Cap, landing board and socket have their rows, and no screws beside them.
	plan := resolve(t, out)
	for _, part := range []box.Part{"free/cap/1", "free/cap/2", "free/landing", "free/socket/1"} {
		if !slices.ContainsFunc(fs, func(f Fixing) bool { return f.Over == part || f.Under == part }) {
			t.Errorf("%s has no row", part)
		}
		rows, lines := 0, 0
		for _, f := range plan.Fixings() {
			if f.Over == part || f.Under == part {
				rows++
			}
		}
		for _, f := range plan.Fittings() {
			if strings.HasPrefix(f.What, "screw") && slices.Contains(f.Where, part) {
				lines++
			}
		}
		if rows != lines {
			t.Errorf("%s has %d rows and %d lines of screws", part, rows, lines)
		}
	}
	// No screw goes into a ridge of 150 degrees.
	if got, err := CheckFixings(plan, fs); err != nil || len(got) != 1 || got[0].Code != "seam-unfixed" || got[0].Part != box.RoofRight {
		t.Errorf("%v, %v", got, err)
	}
}
