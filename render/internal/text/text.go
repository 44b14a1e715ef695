// Package text makes words that came from users fit for a line, a cell or a table.
package text

import (
	"strings"
	"unicode"
)

// Plain makes a name fit for one line: control characters, line and paragraph
// separators and the marks that turn the direction of writing become spaces,
// bytes that are not UTF-8 the replacement character.
func Plain(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}

// Quoted is a text cell of CSV (RFC 4180), always in quotes. What a spreadsheet could
// take for a formula gets an apostrophe in front.
func Quoted(s string) string {
	s = Plain(s)
	if formula(s) {
		s = "'" + s
	}
	return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
}

// formula reports whether a spreadsheet could take the text for a formula.
func formula(s string) bool {
	s = strings.TrimLeftFunc(s, func(r rune) bool { return unicode.IsSpace(r) || r == '\ufeff' })
	return s != "" && strings.ContainsRune("=+-@|%＝＋－＠", []rune(s)[0])
}
