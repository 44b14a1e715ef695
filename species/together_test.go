package species

import (
	"errors"
	"math"
	"slices"
	"testing"

	"holt.example/box"
)

// TestEveryMistakeAtOnce: what cannot be is told all together, sorted by path.
func TestEveryMistakeAtOnce(t *testing.T) {
	plan := resolve(t, thin())
	paths := func(err error) []string {
		var ps box.Problems
		if !errors.As(err, &ps) {
			t.Fatalf("%v", err)
		}
		var out []string
		for _, p := range ps {
			out = append(out, p.Path)
		}
		return out
	}
	bad := Fastener{Kind: "rivet", Diameter: -1, Length: 4000}
	thick := Fastener{Kind: "screw", Diameter: 4, Length: 40, Pilot: 5}
	_, err := Fixings(plan, FixWith{Fasteners: []Fastener{bad, thick}, Spacing: 5, Load: math.NaN(), Glue: 9})
	if got, want := paths(err), []string{"FixWith.Fasteners[0].Diameter", "FixWith.Fasteners[0].Kind", "FixWith.Fasteners[0].Length", "FixWith.Fasteners[1].Pilot", "FixWith.Glue", "FixWith.Load", "FixWith.Spacing"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	_, err = Review(plan, MustGet("great_tit"), Site{Above: -1, Lean: 90, Place: "moon", Faces: "up", Glue: 7, Shop: Workshop{Bits: []box.MM{-1}, SawTilt: 100}, Mounting: Mounting{Load: -1, Into: "cheese"}})
	if got, want := paths(err), []string{"Mounting.Into", "Mounting.Load", "Review.site.Above", "Review.site.Faces", "Review.site.Glue", "Review.site.Lean", "Review.site.Place", "Workshop.Bits[0]", "Workshop.SawTilt"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	// Of a row by hand the path says which.
	rows := []Fixing{{Over: box.Left, Under: box.Floor, With: thick}, {Over: box.Left, Under: box.Floor, With: bad, Places: []box.Place{{X: -90}}}}
	_, err = CheckFixings(plan, rows)
	if got, want := paths(err), []string{"fixings[1].With.Diameter", "fixings[1].With.Kind", "fixings[1].With.Length"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}
