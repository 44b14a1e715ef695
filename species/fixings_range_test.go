package species

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// TestFixingNumbers: numbers of a fixing that are none are refused, here and in a
// review, where they would pass every comparison.
func TestFixingNumbers(t *testing.T) {
	plan := resolve(t, thin())
	nan, inf := box.MM(math.NaN()), box.MM(math.Inf(1))
	for _, c := range []struct {
		path   string
		change func(*Fixing)
	}{
		{"Held", func(f *Fixing) { f.Held = nan }},
		{"Held", func(f *Fixing) { f.Held = -50 }},
		{"Held", func(f *Fixing) { f.Held = 10001 }},
		{"Edge", func(f *Fixing) { f.Edge = nan }},
		{"Edge", func(f *Fixing) { f.Edge = -1 }},
		{"End", func(f *Fixing) { f.End = nan }},
		{"End", func(f *Fixing) { f.End = inf }},
		{"Off", func(f *Fixing) { f.Off = nan }},
		{"Off", func(f *Fixing) { f.Off = -inf }},
		{"Places[1]", func(f *Fixing) { f.Places = append(f.Places, box.Place{Z: nan}) }},
		{"Places[0]", func(f *Fixing) { f.Places[0].X = -inf }},
		{"Into", func(f *Fixing) { f.Into.Z = math.NaN() }},
		{"", func(f *Fixing) { f.Off = -1 }}, // either side of the middle
		{"", func(f *Fixing) { f.Held, f.Edge, f.End = 0, 0, 0 }},
	} {
		f := Fixing{Over: box.Left, Under: box.Floor, With: Fastener{Kind: "screw", Diameter: 3.5, Length: 40, Pilot: 2.5}, Places: []box.Place{{X: -90}}}
		c.change(&f)
		_, err1 := CheckFixings(plan, []Fixing{f})
		_, err2 := Review(plan, MustGet("great_tit"), Site{Fixings: []Fixing{f}})
		for where, err := range map[string]error{"fixings[0].": err1, "Review.site.Fixings[0].": err2} {
			var p box.Problem
			if c.path == "" && err != nil || c.path != "" && (!errors.As(err, &p) || p.Code != "range" || p.Path != where+c.path) {
				t.Errorf("%s%s: %v", where, c.path, err)
			}
		}
	}
}

// TestFixingRowUneven: what has no partner of Right and Up is no place.
func TestFixingRowUneven(t *testing.T) {
	for _, f := range []Fixing{{Right: []box.MM{1}}, {Up: []box.MM{1, 2}}, {Right: []box.MM{1, 2}, Up: []box.MM{3}}} {
		f.With = Fastener{Kind: "screw", Diameter: 3.5, Length: 40, Pilot: 2.5}
		want := min(len(f.Right), len(f.Up))
		if n, m := len(f.Row().At), len(f.Cuts()); n != want || m != want {
			t.Errorf("%d places and %d cuts, want %d", n, m, want)
		}
	}
}

// TestFixingsCapped: a box of 2.6 m with a screw every 10 mm would take 256 a seam,
// and a row has room for 200. A joint of the user's own that asks for a screw every
// ten thousandth of a millimetre asks for nothing that can be done: it gets the
// usual spacing.
func TestFixingsCapped(t *testing.T) {
	tall := thin().With(func(d *box.Design) { d.Size = box.Cavity{Width: 150, Depth: 130, Height: 2600} })
	out, fs, err := Fasten(tall, FixWith{Spacing: 10})
	if err != nil {
		t.Fatal(err)
	}
	most := 0
	for _, f := range fs {
		most = max(most, len(f.Places))
	}
	if most != 200 {
		t.Errorf("the longest row has %d of %d rows", most, len(out.Fixings))
	}
	of := func(spacing box.MM) string {
		_, fs := fixings(t, thin().With(func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Holds: []joints.Hold{{Kind: "screw", Spacing: spacing}}}}
		}), FixWith{})
		return fmt.Sprint(slices.DeleteFunc(fs, func(f Fixing) bool { return f.Over != box.Front || f.Under != box.Left }))
	}
	if dense, usual := of(1e-4), of(0); dense != usual {
		t.Errorf("%s, want %s", dense, usual)
	}
	if n := len(spread(boxOf(2600, 20), 0, 5e-324)); n != mostInRow {
		t.Errorf("%d places lie flat", n)
	}
}

func boxOf(w, h float64) outline.Box { return outline.Box{Max: outline.Point{X: w, Y: h}} }
