package stl

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"

	"holt.example/render/internal/outside"
	"holt.example/render/internal/sample"
)

// figure finds a number that admesh prints after a label.
func figure(t *testing.T, text, label string) float64 {
	t.Helper()
	m := regexp.MustCompile(regexp.QuoteMeta(label) + `\s*:\s*(-?[0-9.]+)`).FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("no %q in %s", label, text)
	}
	x, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// admesh finds nothing to mend: every edge is matched exactly, no triangle is
// degenerate, no normal wrong, and the volume is the plan's.
func TestOutsideAdmesh(t *testing.T) {
	for i, plan := range sample.Plans(t) {
		for _, p := range plan.Pieces() {
			for _, o := range []Options{{}, {ASCII: true}} {
				text := outside.Admesh(t, outside.File(t, "part.stl", mustWrite(t, plan, p.Part, o)))
				for _, l := range []string{
					"Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added",
					"Facets reversed", "Backwards edges", "Normals fixed",
				} {
					if n := figure(t, text, l); n != 0 {
						t.Errorf("%d, %s, %+v: %s %v", i, p.Part, o, l, n)
					}
				}
				if n := figure(t, text, "Number of parts"); n != 1 {
					t.Errorf("%d, %s: %v parts", i, p.Part, n)
				}
				// It adds up in single precision.
				if v := figure(t, text, "Volume"); math.Abs(v-p.Volume) > 1e-4*p.Volume {
					t.Errorf("%d, %s, %+v: volume %v, the plan says %v", i, p.Part, o, v, p.Volume)
				}
			}
		}
	}
}

// A solid kernel written by others takes every part as a closed solid, of one
// piece and with as many handles as it has holes, with the plan's volume to
// 1e-6; and no two parts share any volume beyond the rounding.
func TestOutsideKernel(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		var files []string
		for i, p := range plan.Pieces() {
			files = append(files, outside.File(t, fmt.Sprintf("%d.stl", i), mustWrite(t, plan, p.Part, Options{})))
		}
		got := outside.ReadSTL(t, files...)
		for i, p := range plan.Pieces() {
			m := got.Parts[i]
			holes := 0
			for _, op := range p.Panel.Ops {
				if op.Side == "through" && !op.InOutline {
					holes++
				}
			}
			if m.Status != "NoError" || m.Open != 0 || m.Pieces != 1 || m.Genus != holes {
				t.Errorf("%s, %s: status %s, %d open edges, %d pieces, genus %d with %d holes", plan.Name(), p.Part, m.Status, m.Open, m.Pieces, m.Genus, holes)
			}
			if math.Abs(m.Volume-p.Volume) > 1e-6*p.Volume {
				t.Errorf("%s, %s: volume %v, the plan says %v", plan.Name(), p.Part, m.Volume, p.Volume)
			}
		}
		for _, s := range got.Shared {
			// Faces that touch are rounded by half a step of 3.1e-5 each: at most
			// that much over the smaller surface.
			most := 3.1e-5 * math.Min(got.Parts[s.A].Area, got.Parts[s.B].Area)
			if s.Volume > most {
				t.Errorf("%s: %s and %s share %v mm3, rounding explains %v", plan.Name(), plan.Pieces()[s.A].Part, plan.Pieces()[s.B].Part, s.Volume, most)
			}
		}
	}
}
