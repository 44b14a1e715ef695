package species

import (
	"fmt"
	"math"

	"holt.example/box"
)

// largest is the most of a size of a fixing in mm, that of a part of a box; places
// may lie farther out.
const largest, farthest = 1e4, 1e5

// ranges looks at the numbers of a fixing made by hand: one that is none would pass
// every comparison that follows.
func (f Fixing) ranges(path string) error {
	for _, r := range []struct {
		field string
		x     box.MM
		lo    float64
	}{{"Held", f.Held, 0}, {"Edge", f.Edge, 0}, {"End", f.End, 0}, {"Off", f.Off, -largest}} {
		if !(float64(r.x) >= r.lo && r.x <= largest) {
			return box.Problem{Path: path + "." + r.field, Code: "range", Got: num(float64(r.x)), Lo: r.lo, Hi: largest, Unit: "mm", Why: "this is no size of a fixing; 0 is measured on the plan"}
		}
	}
	for i, p := range f.Places {
		for _, x := range []box.MM{p.X, p.Y, p.Z} {
			if !(math.Abs(float64(x)) <= farthest) {
				return box.Problem{Path: fmt.Sprintf("%s.Places[%d]", path, i), Code: "range", Got: num(float64(x)), Lo: -farthest, Hi: farthest, Unit: "mm", Why: "this is no place on a box"}
			}
		}
	}
	for _, x := range []float64{f.Into.X, f.Into.Y, f.Into.Z} {
		if !(math.Abs(x) <= farthest) {
			return box.Problem{Path: path + ".Into", Code: "range", Got: num(x), Lo: -farthest, Hi: farthest, Why: "this is no direction"}
		}
	}
	return nil
}
