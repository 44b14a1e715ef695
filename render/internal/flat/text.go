package flat

import (
	"strings"
	"unicode"
)

// Clean makes a name safe to stand on one line: control characters, line and
// paragraph separators and marks that turn the writing direction become
// spaces, runs of spaces one space, and bytes that are not UTF-8 the
// replacement character. A name longer than most runes is cut and ends in
// "...". What a format must escape is left to the format.
func Clean(s string, most int) string {
	var b strings.Builder
	n, gap := 0, false
	for _, r := range s {
		if unicode.IsSpace(r) || unsafeRune(r) {
			gap = n > 0
			continue
		}
		need := 1
		if gap {
			need = 2
		}
		if n+need > most {
			return cut(b.String(), most)
		}
		if gap {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		n += need
		gap = false
	}
	return b.String()
}

// cut ends s, of at most most runes, in three dots.
func cut(s string, most int) string {
	r := []rune(s)
	if keep := max(most-3, 0); len(r) > keep {
		r = r[:keep]
	}
	return strings.TrimRight(string(r), " ") + "..."[:min(most, 3)]
}

// unsafeRune reports runes that no line of text may hold: they end it, hide in
// it or turn it round, and most are not allowed in XML.
func unsafeRune(r rune) bool {
	switch {
	case unicode.IsControl(r), r == 0x2028, r == 0x2029:
		return true
	case r == 0x061C, r == 0x200E, r == 0x200F, r >= 0x202A && r <= 0x202E, r >= 0x2066 && r <= 0x2069:
		return true
	case r == 0xFEFF, r&0xFFFE == 0xFFFE, r >= 0xFDD0 && r <= 0xFDEF:
		return true
	}
	return false
}

// Width is about how wide a line of text is, in mm, at the given height of
// capitals: no font is known here, so labels are only laid out with it.
func Width(s string, height float64) float64 {
	n := 0
	for range s {
		n++
	}
	return float64(float64(float64(n)*height) * 0.9)
}
