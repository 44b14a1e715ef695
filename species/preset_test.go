package species

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/species/cite"
)

func TestCountsAndKeys(t *testing.T) {
	all := All()
	if len(all) != 60 { // as curated: 60 rows
		t.Errorf("%d presets, want 60", len(all))
	}
	seen := map[string]bool{}
	for _, p := range all {
		if seen[p.Key] {
			t.Errorf("%s stands twice", p.Key)
		}
		seen[p.Key] = true
		for _, m := range p.Members {
			if !slices.ContainsFunc(names, func(a Animal) bool { return a.Key == m && a.Region == p.Region }) {
				t.Errorf("%s: no figures in print for its member %s", p.Key, m)
			}
		}
	}
}

func TestEverySourceIsKnown(t *testing.T) {
	for _, p := range All() {
		if len(p.Sources) == 0 {
			t.Errorf("%s has no source", p.Key)
		}
		for _, k := range p.Sources {
			s, err := SourceOf(k)
			if err != nil {
				t.Errorf("%s: %v", p.Key, err)
			} else if s.Title == "" {
				t.Errorf("%s has no title", k)
			}
		}
	}
	for _, f := range printed {
		if _, err := SourceOf(f.Source); err != nil {
			t.Error(err)
		}
	}
}

// TestRoomRoundHoles: geometry of the curated table: at least 20 mm beside and
// 15 mm above every round, oval or square hole of a box (common practice), and
// lip + opening = height for open fronts.
func TestRoomRoundHoles(t *testing.T) {
	for _, p := range All() {
		if p.Form == OpenFront && p.Inside.Height > 0 && p.Entry.Height > 0 {
			if got := p.Entry.Above + p.Entry.Height; got != p.Inside.Height {
				t.Errorf("%s: lip and opening are %v, the height %v", p.Key, got, p.Inside.Height)
			}
		}
		if p.Form != Hole || p.Entry.Width == 0 {
			continue
		}
		if p.Inside.Width > 0 && (p.Inside.Width-p.Entry.Width)/2 < 20 {
			t.Errorf("%s: %v beside the hole", p.Key, (p.Inside.Width-p.Entry.Width)/2)
		}
		if low, ok := p.Entry.Lowest(); ok && p.Inside.Height-low-p.Entry.Height < 15 {
			t.Errorf("%s: %v above the hole", p.Key, p.Inside.Height-low-p.Entry.Height)
		}
	}
}

// TestHolesStandHigh: three presets have the hole under 125 mm because their
// sources do (common practice is 125), and no other.
func TestHolesStandHigh(t *testing.T) {
	low := []string{}
	for _, p := range All() {
		if above, ok := p.Entry.Lowest(); ok && p.Group == Bird && p.Form == Hole && above < 125 {
			low = append(low, p.Key)
		}
	}
	want := []string{"prothonotary_warbler", "purple_martin", "american_barn_owl"}
	if !slices.Equal(low, want) {
		t.Errorf("below 125 mm: %q, want %q", low, want)
	}
}

// TestValuesInPrint: every value lies in the range that was printed, but for
// the exceptions that the preset itself explains.
func TestValuesInPrint(t *testing.T) {
	why := map[string]string{
		"common_swift hole":                   "the spread is of round holes; the preset has a slot",
		"wood_duck hole":                      "the height of the oval, 3 in; its width lies in the range",
		"spotted_flycatcher hole":             "an open front: the spread is of holes also in print",
		"eurasian_wren hole":                  "an open front: the spread is of holes also in print",
		"spotted_flycatcher hole above floor": "an open front: the spread is of a box with a hole",
		"european_robin hole above floor":     "the spread is of another form; the lip is in its own range",
		"black_redstart hole above floor":     "the spread is of a box with ovals; the lip is in its own range",
		"european_robin height":               "the height of the half-open plan, which prints lip and opening",
		"bat_flat_box_eu hole":                "the gap is the depth of the crevice",
		"bat_single_chamber hole":             "the gap is the depth of the crevice",
		"bat_multi_chamber hole":              "the gap is the depth of the crevice",
		"little_owl floor":                    "the length of the tube is no side of a floor",
	}
	used := map[string]bool{}
	for _, p := range All() {
		for _, r := range p.InPrint {
			var got []box.MM
			switch r.Of {
			case PrintedHole:
				got = []box.MM{p.Entry.Width, p.Entry.Height}
			case PrintedFloor:
				got = []box.MM{p.Inside.Width, p.Inside.Depth}
			case PrintedHeight:
				got = []box.MM{p.Inside.Height}
			case PrintedAbove:
				if p.Entry.Datum != NoDatum {
					got = []box.MM{p.Entry.Above}
				}
			case PrintedLip:
				got = []box.MM{p.Entry.Above}
			default:
				t.Errorf("%s: unknown size %q", p.Key, r.Of)
			}
			for _, g := range got {
				// 0.05: both were rounded to 0.1 mm from inches.
				if g != 0 && !(g >= r.Lo-0.0501 && g <= r.Hi+0.0501) {
					k := p.Key + " " + string(r.Of)
					used[k] = true
					if why[k] == "" {
						t.Errorf("%s: %v is not in %v to %v", k, g, r.Lo, r.Hi)
					}
				}
			}
		}
	}
	for k, w := range why {
		if !used[k] {
			t.Errorf("%s needs no reason (%s)", k, w)
		}
	}
}

func TestLowest(t *testing.T) {
	// The tube for little owls prints 80 to the centre of a hole of 65:
	// 80 - 65/2 = 47.5 (geometry).
	if got, ok := MustGet("little_owl").Entry.Lowest(); !ok || got != 47.5 {
		t.Errorf("little owl: %v, %v", got, ok)
	}
	// 19 in to the centre of an oval 3 in high: 482.6 - 76.2/2 = 444.5.
	if got, _ := MustGet("wood_duck").Entry.Lowest(); math.Abs(float64(got)-444.5) > 1e-9 {
		t.Errorf("wood duck: %v", got)
	}
	if got, _ := MustGet("black_capped_chickadee").Entry.Lowest(); got != 165 {
		t.Errorf("an unspecified datum is the lower edge: %v", got)
	}
	if _, ok := MustGet("common_swift").Entry.Lowest(); ok {
		t.Error("no height is published for the swift")
	}
}

func TestEntrance(t *testing.T) {
	for _, c := range []struct {
		key  string
		want box.Entrance
	}{
		{"blue_tit", box.Entrance{Shape: box.Round{Diameter: 26}, Above: 175}},
		{"common_redstart", box.Entrance{Shape: box.Slot{Width: 32, Height: 48}, Above: 150}},
		{"western_barn_owl", box.Entrance{Shape: box.Rect{Width: 130, Height: 130}, Above: 450}},
		{"european_robin", box.Entrance{Shape: box.Rect{Width: 140, Height: 70}, Above: 100}},
		{"hedgehog", box.Entrance{Shape: box.Rect{Width: 140, Height: 140}, Above: 0}},
	} {
		got, err := MustGet(c.key).Entrance()
		if err != nil || got != c.want {
			t.Errorf("%s: %+v, %v", c.key, got, err)
		}
	}
	for key, field := range map[string]string{"bat_flat_box_eu": "Entry", "american_robin": "Entry", "common_swift": "Entry.Above", "eurasian_wren": "Entry.Height"} {
		_, err := MustGet(key).Entrance()
		var m *MissingError
		var p box.Problem
		if !errors.As(err, &m) || m.Field != field || !errors.As(err, &p) || p.Code != "not-published" {
			t.Errorf("%s: %v", key, err)
		}
	}
}

func TestCopiesAreSafe(t *testing.T) {
	p := MustGet("blue_tit")
	p.CleanMonths[0], p.Sources[0], p.Chosen[0], p.Cautions[0].Text, p.InPrint[0].Lo, p.Scientific[0], p.Members[0] = 7, "x", "x", "x", 1, "x", "x"
	all := All()
	all[0].Sources[0] = "x"
	q := MustGet("blue_tit")
	if q.CleanMonths[0] != 9 || q.Sources[0] == "x" || q.Chosen[0] == "x" || q.Cautions[0].Text == "x" || q.InPrint[0].Lo == 1 || q.Scientific[0] == "x" || q.Members[0] == "x" {
		t.Error("a caller changed the table")
	}
	Animals()[0].Key = "x"
	Sources()[0].Key = "x"
	if names[0].Key == "x" || sources[0].Key == "x" {
		t.Error("a caller changed a list")
	}
}

func TestCitations(t *testing.T) {
	c := MustGet("blue_tit").Citations()
	if len(c) != 23 {
		t.Fatalf("%d citations", len(c))
	}
	var general bool
	for _, x := range c {
		switch x.Source.Key {
		case "lipu":
			if !slices.Contains(x.Locators, "table, row Cinciarella") {
				t.Errorf("lipu: %q", x.Locators)
			}
		case "bto_guide": // has no row of its own for the blue tit: general advice
			general = slices.Contains(x.Locators, "panel on what a box needs")
		}
	}
	if !general {
		t.Error("the general advice of bto_guide has no place")
	}
	for _, p := range All() {
		with := 0
		for _, x := range p.Citations() {
			if len(x.Locators) > 0 {
				with++
			}
		}
		if with == 0 {
			t.Errorf("%s: no source has a place", p.Key)
		}
	}
}

func TestSentences(t *testing.T) {
	for _, p := range All() {
		var all []string
		all = append(all, p.Chosen...)
		for _, c := range p.Cautions {
			all = append(all, c.Text)
			if c.Basis != cite.Read && c.Basis != cite.Memory {
				t.Errorf("%s: %v", p.Key, c)
			}
		}
		for _, s := range all {
			if !strings.HasSuffix(s, ".") || strings.ToUpper(s[:1]) != s[:1] || strings.Contains(s, "memory)") {
				t.Errorf("%s: not a sentence: %q", p.Key, s)
			}
		}
	}
}
