package near

import (
	"reflect"
	"strings"
	"testing"
)

func TestFold(t *testing.T) {
	for got, want := range map[string]string{
		"Bewick's_Wren":   "bewicks wren",
		"  GREAT   tit\n": "great tit",
		"Mésange–bleue":   "mesange bleue",
		"Straße":          "strasse",
		"Pied/White":      "pied white",
		"":                "",
		"--":              "",
		"bad\xffbytes":    "bad bytes", // an invalid byte parts words, as any sign does
	} {
		if f := Fold(got); f != want {
			t.Errorf("Fold(%q) = %q, want %q", got, f, want)
		}
	}
}

// Distances by hand: swap one pair; drop one; change one.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"great tit", "graet tit", 1}, {"bluetit", "blue tit", 1}, {"kestrel", "kestral", 1},
		{"abc", "", 3}, {"ab", "ba", 1}, {"kitten", "sitting", 3},
	} {
		if d := distance(c.a, c.b); d != c.want {
			t.Errorf("distance(%q, %q) = %d, want %d", c.a, c.b, d, c.want)
		}
		if d := distance(c.b, c.a); d != c.want {
			t.Errorf("distance is not symmetric for %q, %q: %d", c.a, c.b, d)
		}
	}
}

func TestNames(t *testing.T) {
	list := []string{"great tit", "blue tit", "coal tit", "tawny owl", "little owl", "great tit"}
	for _, c := range []struct {
		got  string
		want []string
	}{
		{"graet tit", []string{"great tit"}},
		{"owl", []string{"little owl", "tawny owl"}},
		{"bleu tit", []string{"blue tit"}}, // "coal tit" needs 4 of 8 letters, more than a third
		{"", nil},
		{"zebra", nil},
		{strings.Repeat("x", 1<<20), nil},
	} {
		if got := Names(c.got, list, 5); !reflect.DeepEqual(got, c.want) {
			t.Errorf("Names(%.20q) = %q, want %q", c.got, got, c.want)
		}
	}
	if got := Names("owl", list, 1); len(got) != 1 {
		t.Errorf("at most one asked, got %q", got)
	}
}

func TestWood(t *testing.T) {
	for from, want := range map[string]string{
		"rough sawn white oak": "white oak", "Scots pine, planed": "Scots pine", "Planed; larch": "larch", "boards": "", "": "", "driftwood": "driftwood",
	} {
		if got := Wood(from); got != want {
			t.Errorf("%q of %q, want %q", got, from, want)
		}
	}
}
