package dxf

import (
	"strings"
	"testing"
	"unicode/utf8"

	"holt.example/box"
	"holt.example/render/internal/flat"
)

var hostile = []string{
	"a/b\\c:d", `"quoted" 'name'`, "<b>&amp;", "=1+1", "0\r\nEOF\r\n", "tab\tand\x00nul\x1b[31m", "%%d %%%% 100%", `\U+0041 \M+12345`, "^J^ x^",
	"Größe ø32 Łąka", "日本", "😀", "\xff\xfe broken", "\u202Eltr", strings.Repeat("x", 10_000), strings.Repeat("ø", 10_000), "",
}

// Names never break the file, and come back as they were cleaned.
func TestHostileNames(t *testing.T) {
	for _, name := range hostile {
		p := hand()
		p.Part = box.Part(name)
		p.Panel.Ops[0].Source = name
		for _, v := range versions {
			d, err := flat.Sheet(name, []flat.Subject{{Piece: p, Number: 1}}, flat.Options{})
			if err != nil {
				t.Fatal(err)
			}
			b, err := encode(d, v)
			if err != nil {
				t.Fatal(err)
			}
			f := parse(t, b)
			checkStructure(t, f, v)
			got := f.shapes(t).texts["TEXT"][0]
			if want := flat.Clean("1: "+flat.Clean(name, 60), 100); got != astral(want) {
				t.Errorf("%.40q came back as %q, want %q", name, got, want)
			}
			for i, line := range strings.Split(string(b), newline) {
				if len(line) > 1000 {
					t.Errorf("line %d is %d long", i+1, len(line))
				}
			}
		}
	}
}

// astral is what is left of characters beyond four hexadecimal digits, and of
// percent signs in a row.
func astral(s string) string {
	for _, r := range []string{"%", "°"} {
		for strings.Contains(s, "%"+r) {
			s = strings.ReplaceAll(s, "%"+r, "% "+r)
		}
	}
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF {
			return '?'
		}
		return r
	}, s)
}

func TestEscape(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"front", "front"},
		{"ø32", `\U+00F832`},
		{"12°", "12%%d"},
		{"100%", "100%"},
		{"%%d", "% %d"},
		{"5%°", "5% %%d"},
		{`a\b`, `a\b`},
		{`\U+00F8`, `\U+005CU+00F8`},
		{"a^J", "a^ J"},
		{"a\nb", "a b"},
	} {
		if got := escape(c.in); got != c.want {
			t.Errorf("%q: %q, want %q", c.in, got, c.want)
		}
	}
}

func FuzzEscape(f *testing.F) {
	for _, s := range hostile {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		e := escape(s)
		for _, c := range []byte(e) {
			if c < 0x20 || c > 0x7E {
				t.Fatalf("%q has the byte %#x", e, c)
			}
		}
		if want := astral(flat.Clean(s, mostText)); unescape(e) != want {
			t.Fatalf("%q: %q reads back as %q, want %q", s, e, unescape(e), want)
		}
		if c := comment(s); !utf8.ValidString(c) || strings.ContainsAny(c, "\r\n") {
			t.Fatalf("comment %q", c)
		}
	})
}

// Names of R12 are cut to 31 characters and stay apart; of two layers that
// differ in one decimal, both are there.
func TestOldNames(t *testing.T) {
	ls := []flat.Layer{
		{Kind: flat.Profile, To: 146000},
		{View: flat.Turned, Kind: flat.Housing, From: 41234, To: 101234, Bottom: true},
		{View: flat.Turned, Kind: flat.Housing, From: 41234, To: 101235, Bottom: true},
	}
	m := oldNames(ls)
	if got := m[ls[0]]; got != "PROFILE_14-6" {
		t.Errorf("%q", got)
	}
	if a, b := m[ls[1]], m[ls[2]]; a != "TURNED_HOUSING_4-1234_10-1234$2" || b == a || len(b) != 31 {
		t.Errorf("%q and %q", a, b)
	}
}
