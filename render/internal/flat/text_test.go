package flat

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

func TestClean(t *testing.T) {
	for _, c := range []struct {
		in   string
		most int
		want string
	}{
		{"front", 80, "front"},
		{"  two  words\t", 80, "two words"},
		{"a\r\nb\x00c", 80, "a b c"},
		{"left\u2028right\u2029", 80, "left right"},
		{"\u202Eevil\u2066", 80, "evil"},
		{"\xffx", 80, "\uFFFDx"},
		{"12345", 5, "12345"},
		{"123456", 5, "12..."},
		{"øøøøøø", 5, "øø..."},
		{"1 3456", 5, "1..."},
		{"abcd", 2, ".."},
		{"", 5, ""},
	} {
		if got := Clean(c.in, c.most); got != c.want {
			t.Errorf("%q in %d: %q, want %q", c.in, c.most, got, c.want)
		}
	}
}

func FuzzClean(f *testing.F) {
	f.Add("two  words\n\u202E", 5)
	f.Add(strings.Repeat("ø", 10000), 80)
	f.Fuzz(func(t *testing.T, s string, most int) {
		if most < 0 || most > 1000 {
			return
		}
		c := Clean(s, most)
		if n := utf8.RuneCountInString(c); n > most || !utf8.ValidString(c) {
			t.Fatalf("%q has %d characters, want %d", c, n, most)
		}
		for _, r := range c {
			if unicode.IsControl(r) || unsafeRune(r) {
				t.Fatalf("%q has %U", c, r)
			}
		}
		if Clean(c, most) != c {
			t.Fatalf("%q is cleaned again to %q", c, Clean(c, most))
		}
	})
}
