package text

import "testing"

func TestPlain(t *testing.T) {
	for in, want := range map[string]string{
		"":                      "",
		"oak – 20":              "oak – 20",
		"a\r\nb\tc":             "a  b c",
		"a\u2028b\u2029c":       "a b c",  // line and paragraph separators
		"a\u202eb\u2066c\u200e": "a b c ", // marks that turn the direction of writing
		"a\xffb":                "a\uFFFDb",
		"\x00":                  " ",
	} {
		if got := Plain(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

func TestQuoted(t *testing.T) {
	for in, want := range map[string]string{
		"":            `""`,
		`4" by 2"`:    `"4"" by 2"""`,
		"a,b;c":       `"a,b;c"`,
		"=1+1":        `"'=1+1"`,
		"  @x":        `"'  @x"`,
		"\n-2":        `"' -2"`, // the line end is a space by then
		"\ufeff+3":    "\"'\ufeff+3\"",
		"％":           `"％"`,
		"＝1":          `"'＝1"`,
		"4 x 40 - x":  `"4 x 40 - x"`,
		"|calc":       `"'|calc"`,
		"%0":          `"'%0"`,
		"\u202e=2":    `"' =2"`,
		"larch\r\n=3": `"larch  =3"`,
	} {
		if got := Quoted(in); got != want {
			t.Errorf("%q: %s, want %s", in, got, want)
		}
	}
}
