package species

import (
	"math"
	"slices"
	"testing"

	"holt.example/box/outline"
)

// TestSpreadFromFigures reckons the smallest, the largest and the number of
// sources of every size anew from the single figures in print: a second way to
// what the presets say. 0.06 is half a unit of the last digit, as both were
// rounded to 0.1 mm, and a hundredth.
func TestSpreadFromFigures(t *testing.T) {
	quantities := map[PrintedSize][]string{
		PrintedHole:   {"entrance_diameter", "tube_diameter", "chamber_gap"},
		PrintedFloor:  {"floor_width", "floor_depth", "interior_side", "interior_diameter"},
		PrintedHeight: {"cavity_height"},
		PrintedAbove:  {"entrance_bottom_above_floor", "entrance_above_floor_unspecified", "entrance_centre_above_floor"},
		PrintedLip:    {"front_lip_height"},
	}
	compared := 0
	for _, p := range All() {
		for _, r := range p.InPrint {
			of := quantities[r.Of]
			if p.Form == Crevice && r.Of == PrintedHeight {
				of = []string{"box_height"} // bat houses are published by their outsides
			}
			lo, hi := math.Inf(1), math.Inf(-1)
			var sources []string
			for _, f := range p.Printed() {
				if !slices.Contains(of, f.Quantity) {
					continue
				}
				if !slices.Contains(sources, f.Source) {
					sources = append(sources, f.Source)
				}
				for _, e := range []struct {
					x  float64
					ok bool
				}{{f.Range.Lo, f.Range.HasLo}, {f.Range.Hi, f.Range.HasHi}} {
					if e.ok {
						lo, hi = math.Min(lo, e.x), math.Max(hi, e.x)
					}
				}
			}
			compared++
			if !(math.Abs(lo-float64(r.Lo)) < 0.06) || !(math.Abs(hi-float64(r.Hi)) < 0.06) || len(sources) != r.Sources {
				t.Errorf("%s, %s: %v to %v by %d sources, the figures say %v to %v by %d", p.Key, r.Of, r.Lo, r.Hi, r.Sources, lo, hi, len(sources))
			}
		}
	}
	if compared != 204 {
		t.Errorf("%d ranges compared", compared)
	}
}

// TestSourcesOfFigures: the publications of a preset's figures are among its
// sources.
func TestSourcesOfFigures(t *testing.T) {
	for _, p := range All() {
		for _, f := range p.Printed() {
			// A study that compared floor areas gives no size to build to.
			if !slices.Contains(p.Sources, f.Source) && f.Quantity != "floor_area_tested" {
				t.Errorf("%s: %s gives its %s and is not among its sources", p.Key, f.Source, f.Quantity)
			}
		}
	}
}

// TestAreas: rows hole-area-32 and vent-area of the checks (geometry; NestWatch,
// feature list): a hole of 32 has 804.2477 mm2, four of 5/8 in 791.730.
func TestAreas(t *testing.T) {
	if a := outline.Circle(outline.Point{}, 32).Area(); math.Abs(a-804.2477) > 0.0001 {
		t.Errorf("%v", a)
	}
	if a := 4 * outline.Circle(outline.Point{}, 5.0/8*25.4).Area(); math.Abs(a-791.730) > 0.001 {
		t.Errorf("%v", a)
	}
}
