package species

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"holt.example/box"
	"holt.example/species/timber"
)

func TestFind(t *testing.T) {
	for name, want := range map[string]string{
		"blue_tit":            "blue_tit",
		"BLUE TIT":            "blue_tit",
		"Parus major":         "great_tit",
		"Bewick’s wren":       "house_wren",                 // a member
		"Sialia currucoides":  "western_mountain_bluebirds", // scientific name of a member
		"Mountain Bluebird":   "western_mountain_bluebirds",
		"passer-domesticus":   "house_sparrow house_sparrow_terrace",
		"Hooded merganser":    "wood_duck",
		"pied/white wagtail":  "white_wagtail",
		"Chiroptera":          "bat_flat_box_eu bat_single_chamber bat_multi_chamber",
		"Megachile rotundata": "solitary_bees_mixed_na",
		"EASTERN SCREECH OWL": "eastern_screech_owl",
		"coal tit":            "coal_tit tits_28",
	} {
		got, err := Find(name)
		var keys []string
		for _, p := range got {
			keys = append(keys, p.Key)
		}
		if err != nil || strings.Join(keys, " ") != want {
			t.Errorf("Find(%q) = %q, %v; want %q", name, keys, err, want)
		}
	}
}

func TestFindUnknown(t *testing.T) {
	for got, first := range map[string]string{
		"gret tit":                 "Great Tit",
		"Bule Tit":                 "Blue Tit",
		"Parus mayor":              "Parus major",
		"kestral":                  "", // only names of two words: a third of 7 letters is not enough
		"owl":                      "Tawny Owl",
		"":                         "",
		"zzzzzzzz":                 "",
		"\x00\xff\x1b[0m":          "",
		strings.Repeat("a", 1<<16): "",
	} {
		_, err := Find(got)
		var u *UnknownError
		if !errors.As(err, &u) || u.What != "animal" || u.Got != got {
			t.Errorf("Find(%.20q): %v", got, err)
			continue
		}
		if first != "" && (len(u.Near) == 0 || !contains(u.Near, first)) {
			t.Errorf("Find(%q) suggests %q, want %q among them", got, u.Near, first)
		}
		var p box.Problem
		if !errors.As(err, &p) || p.Code != "unknown-animal" {
			t.Errorf("Find(%.20q): no problem in %v", got, err)
		}
		if len(err.Error()) > 1000 || strings.ContainsAny(err.Error(), "\x00\x1b") {
			t.Errorf("a hostile name passes into the message: %.200q", err.Error())
		}
	}
	// The barred owl has figures in print and no preset.
	_, err := Find("Barred Owl")
	var u *UnknownError
	if !errors.As(err, &u) || !strings.Contains(u.Why, `PrintedFor("barred_owl")`) {
		t.Errorf("barred owl: %v", err)
	}
	if _, err := PrintedFor("barred_owl"); err != nil {
		t.Error(err)
	}
	if _, err := PrintedFor("bared_owl"); !errors.As(err, &u) || len(u.Near) == 0 || u.Near[0] != "barred_owl" {
		t.Errorf("PrintedFor: %v", err)
	}
	if _, err := Get("graet_tit"); !errors.As(err, &u) || u.What != "preset" || u.Near[0] != "great_tit" {
		t.Errorf("Get: %v", err)
	}
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// TestEveryNameFinds: every key, common and scientific name finds its preset.
func TestEveryNameFinds(t *testing.T) {
	for _, p := range All() {
		for _, n := range append([]string{p.Key, p.Common}, p.Scientific...) {
			got, err := Find(n)
			found := false
			for _, g := range got {
				found = found || g.Key == p.Key
			}
			if !found {
				t.Errorf("Find(%q) does not give %s: %v", n, p.Key, err)
			}
		}
	}
}

func TestSelect(t *testing.T) {
	for _, c := range []struct {
		q    Query
		want int
	}{
		{Query{}, 60},
		{Query{Region: Europe, Form: OpenFront}, 6}, // kestrel, black redstart, robin, wren, spotted flycatcher, wagtail
		{Query{Group: Bat}, 3},
		{Query{Region: NorthAmerica, Form: Shelf}, 2},
		{Query{Region: Europe, Form: Shelf}, 0},
		{Query{Form: Tunnel}, 1},
	} {
		got, err := Select(c.q)
		if err != nil || len(got) != c.want {
			t.Errorf("%+v: %d, %v; want %d", c.q, len(got), err, c.want)
		}
		for _, p := range got {
			if c.q.Region != "" && p.Region != c.q.Region || c.q.Form != "" && p.Form != c.q.Form || c.q.Group != "" && p.Group != c.q.Group {
				t.Errorf("%+v gives %s", c.q, p.Key)
			}
		}
	}
	for _, q := range []Query{{Region: "atlantis"}, {Form: "hol"}, {Group: "brid"}} {
		_, err := Select(q)
		var u *UnknownError
		if !errors.As(err, &u) || len(u.Near) == 0 {
			t.Errorf("%+v: %v", q, err)
		}
	}
	_, err := Select(Query{Form: "hol"})
	if u := new(UnknownError); !errors.As(err, &u) || u.Near[0] != "hole" {
		t.Errorf("hol: %v", err)
	}
}

func TestRegionsGroupsForms(t *testing.T) {
	for _, p := range All() {
		if known("region", p.Region, Regions()) != nil || known("group", p.Group, Groups()) != nil || known("form", p.Form, Forms()) != nil ||
			p.Region == "" || p.Group == "" || p.Form == "" {
			t.Errorf("%s: %q %q %q", p.Key, p.Region, p.Group, p.Form)
		}
	}
}

// FuzzFind: no name panics, and whatever is found or suggested finds again.
func FuzzFind(f *testing.F) {
	for _, s := range []string{"blue tit", "owl", "", "Parus\xff", "ГОРИХВОСТКА", "a'b`c’d", strings.Repeat("tit ", 30)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, name string) {
		_, err := Find(name)
		var u *UnknownError
		if err == nil {
			return
		}
		if !errors.As(err, &u) {
			t.Fatal(err)
		}
		for _, n := range u.Near {
			if _, err := Find(n); err != nil {
				t.Errorf("suggested %q does not find: %v", n, err)
			}
		}
	})
}

// FuzzGet: no key panics in any table; what is unknown says so in one bounded
// line, and is a box.Problem besides.
func FuzzGet(f *testing.F) {
	for _, s := range []string{"blue_tit", "hole-size", "bto_guide", "", "\x00\x1b[31m", "..\\..\\", "=cmd|' /C calc'!A0", strings.Repeat("tit_", 5000), "<script>", "Parus\xff\xfe"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, key string) {
		_, e1 := Get(key)
		_, e2 := RuleOf(key)
		_, e3 := SourceOf(key)
		_, e4 := PrintedFor(key)
		_, e5 := Select(Query{Region: Region(key), Group: Group(key), Form: Form(key)})
		_, e6 := timber.Get(key)
		for i, err := range []error{e1, e2, e3, e4, e5, e6} {
			if err == nil {
				continue
			}
			if s := err.Error(); len(s) > 2000 || strings.ContainsAny(s, "\n\r\x00\x1b") || !utf8.ValidString(s) {
				t.Errorf("%d: %.200q", i, s)
			}
			var u *UnknownError
			var p box.Problem
			if i < 5 && (!errors.As(err, &u) || !errors.As(err, &p) || !strings.HasPrefix(p.Code, "unknown-")) {
				t.Errorf("%d: %v", i, err)
			}
		}
	})
}

// FuzzSite: no site panics, and what is refused is a box.Problem.
func FuzzSite(f *testing.F) {
	f.Add("tree", "north", "none", 2.5, 3.0, 200.0, 4.0, 3)
	f.Add("\x00", "up", "\xff", math.NaN(), math.Inf(1), -1.0, 1e300, -9)
	plan, tit := good().MustResolve(), MustGet("great_tit")
	f.Fuzz(func(t *testing.T, place, faces, coat string, above, lean, guard, swing float64, glue int) {
		s := Site{Place: Place(place), Faces: Compass(faces), Inside: Coat(coat), Outside: Coat(coat), Above: above, Lean: box.Deg(lean), Guard: box.MM(guard), Swing: swing, Glue: timber.Glue(glue)}
		fs, err := Review(plan, tit, s)
		var p box.Problem
		if err != nil && !errors.As(err, &p) {
			t.Fatal(err)
		}
		for _, g := range fs {
			if g.Why == "" || len(g.Sources) == 0 {
				t.Errorf("%+v", g)
			}
		}
	})
}
