package species

import (
	"errors"
	"math"
	"strings"
	"testing"

	"holt.example/box"
)

// TestCareOfNoSite: a site that cannot be is refused as Review refuses it, and
// nothing is written.
func TestCareOfNoSite(t *testing.T) {
	for path, site := range map[string]Site{
		"WriteCare.site.Above": {Above: math.Inf(1)},
		"WriteCare.site.Place": {Place: "moon"},
		"WriteCare.site.Faces": {Faces: "up"},
		"WriteCare.site.Lean":  {Lean: box.Deg(math.NaN())},
	} {
		var b strings.Builder
		err := WriteCare(&b, MustGet("great_tit"), site)
		var p box.Problem
		if !errors.As(err, &p) || p.Path != path || b.Len() != 0 {
			t.Errorf("%s: %v, %d written", path, err, b.Len())
		}
	}
	var b strings.Builder
	if err := WriteCare(&b, MustGet("great_tit"), Site{Above: 3, Place: OnTree}); err != nil || b.Len() == 0 {
		t.Errorf("%v, %d written", err, b.Len())
	}
}
