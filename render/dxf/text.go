package dxf

import (
	"fmt"
	"strings"

	"holt.example/render/internal/flat"
)

// mostText is the longest text in characters before escaping: with all of them
// escaped it still is short enough for every reader.
const mostText = 120

// escape turns a name into the value of a TEXT entity. The file is plain ASCII:
// other characters are written \U+XXXX, as the format has it, and those beyond
// four digits a question mark. "^" and a backslash that would start such an
// escape are themselves escaped. "%%" begins a sign of the format, and readers
// differ in how it could be escaped, so two percent signs get a space between
// them; the degree sign is written as one that even the oldest readers know.
func escape(s string) string {
	var b strings.Builder
	rs := []rune(flat.Clean(s, mostText))
	for i, r := range rs {
		next := rune(0)
		if i+1 < len(rs) {
			next = rs[i+1]
		}
		switch {
		case r == '^':
			b.WriteString("^ ")
		case r == '\\' && (next == 'U' || next == 'M' || next == 'u' || next == 'm'):
			b.WriteString(`\U+005C`)
		case r == '%' && (next == '%' || next == '°'):
			b.WriteString("% ")
		case r == '°':
			b.WriteString("%%d")
		case r >= 0x20 && r < 0x7F:
			b.WriteRune(r)
		case r <= 0xFFFF:
			fmt.Fprintf(&b, `\U+%04X`, r)
		default:
			b.WriteByte('?')
		}
	}
	return b.String()
}

// comment is a name in a comment line: what is not ASCII becomes a question
// mark.
func comment(s string) string {
	return strings.Map(func(r rune) rune {
		if r < 0x20 || r >= 0x7F {
			return '?'
		}
		return r
	}, flat.Clean(s, mostText))
}
