package flat

import (
	"slices"
	"testing"
)

func TestLayerName(t *testing.T) {
	for _, c := range []struct {
		l      Layer
		want   string
		dashed bool
	}{
		{at(AsMachined, Profile, 0, 14.6), "PROFILE_14.6", false},
		{at(AsMachined, Face, 0, 14.6), "FAR_FACE_14.6", true},
		{at(Turned, Face, 0, 0), "TURNED_FACE", false},
		{at(AsMachined, Housing, 0, 5), "HOUSING_5.0", false},
		{at(AsMachined, Housing, 0, 4.86667), "HOUSING_4.8667", false},
		{at(AsMachined, Pocket, 3, 8), "POCKET_3.0_8.0", false},
		{at(Turned, Pocket, 0, 3), "TURNED_POCKET_3.0", false},
		{at(AtEdge, Groove, 4, 9), "EDGE_GROOVE_4.0_9.0", true},
		{Layer{Kind: Rebate, To: 70000, Bottom: true}, "REBATE_7.0_BOTTOM", true},
		{Layer{Kind: Text}, "TEXT", false},
		{Layer{View: Turned, Kind: Grain}, "TURNED_GRAIN", false},
	} {
		if got := c.l.Name(); got != c.want || c.l.Dashed() != c.dashed {
			t.Errorf("%+v: %q, dashed %v; want %q, %v", c.l, got, c.l.Dashed(), c.want, c.dashed)
		}
	}
}

// Two layers never have one name, and their order is total.
func TestLayersApart(t *testing.T) {
	var ls []Layer
	for v := range View(3) {
		for k := range Kind(Kinds) {
			for _, d := range [][2]int64{{0, 0}, {0, 50000}, {0, 50001}, {10000, 50000}, {50000, 60000}} {
				for _, b := range []bool{false, true} {
					ls = append(ls, Layer{v, k, d[0], d[1], b})
				}
			}
		}
	}
	seen := map[string]Layer{}
	for _, l := range ls {
		if l.From != 0 && l.To == 0 {
			continue
		}
		if m, twice := seen[l.Name()]; twice {
			t.Errorf("%+v and %+v are both %s", l, m, l.Name())
		}
		seen[l.Name()] = l
	}
	sorted := slices.Clone(ls)
	slices.SortFunc(sorted, Layer.Compare)
	for i := 1; i < len(sorted); i++ {
		if sorted[i-1].Compare(sorted[i]) >= 0 || sorted[i].Compare(sorted[i-1]) <= 0 {
			t.Errorf("%+v and %+v have no order", sorted[i-1], sorted[i])
		}
	}
}
