package species

import (
	"math"
	"strings"
	"testing"

	"holt.example/box"
)

// TestNoSheet: of a part that fits no sheet the side that is too much is named. The
// largest sheet of the tables is 3050 x 1525: 1686 x 1668 is too wide, 3200 too long.
func TestNoSheet(t *testing.T) {
	for _, c := range []struct {
		w, h, got, hi float64
		what          string
	}{
		{1686, 1668, 1668, 1525, "the widest sheet of that length in the tables is 1525"},
		{3200, 500, 3200, 3050, "the longest sheet in the tables is 3050"},
		{3200, 1600, 3200, 3050, "longest"},
		{1500, 3000, 0, 0, ""},
	} {
		plan := resolve(t, box.Design{Name: "sheet", Board: box.Board{Thickness: 18, Material: "exterior plywood", Grain: box.GrainNone},
			Free: []box.Free{{Name: "sheet", Outline: rectangle(0, 0, c.w, c.h)}}})
		l, err := survey(plan, MustGet("great_tit"), Site{})
		if err != nil {
			t.Fatal(err)
		}
		r, _ := RuleOf("no-stock")
		fs := noStock(l, r)
		if c.what == "" {
			if len(fs) != 0 {
				t.Errorf("%+v", fs)
			}
			continue
		}
		if len(fs) != 1 || math.Abs(fs[0].Got-c.got) > 1e-6 || fs[0].Lo != 0 || fs[0].Hi != c.hi || !strings.Contains(fs[0].Why, c.what) {
			t.Errorf("%v x %v: %+v", c.w, c.h, fs)
		}
	}
}
