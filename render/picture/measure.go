package picture

// Widths of the printable ASCII characters in the Go fonts, in 1/2048 of the
// font size. Texts are placed with them, so that a picture needs no font to be
// laid out, and so that SVG and PNG have everything in the same place.
var (
	regular = [95]uint16{569, 569, 727, 1139, 1139, 1821, 1366, 391, 682, 682, 1196, 1196, 648, 1196, 648, 569,
		1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 627, 627, 1196, 1196, 1196, 1139,
		2079, 1366, 1366, 1479, 1479, 1366, 1251, 1593, 1479, 817, 1015, 1366, 1139, 1706, 1479, 1593,
		1366, 1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 569, 569, 569, 960, 1139,
		682, 1139, 1139, 1024, 1139, 1139, 569, 1139, 1139, 505, 519, 1024, 548, 1706, 1139, 1139,
		1139, 1139, 682, 1024, 579, 1139, 1024, 1479, 1024, 1024, 1024, 684, 532, 684, 1196}
	bold = [95]uint16{569, 682, 971, 1139, 1139, 1821, 1479, 487, 682, 682, 1143, 1196, 569, 1196, 569, 569,
		1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 682, 682, 1196, 1196, 1196, 1251,
		1997, 1479, 1479, 1479, 1479, 1366, 1251, 1593, 1479, 928, 1139, 1479, 1251, 1706, 1479, 1593,
		1366, 1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 682, 569, 682, 1196, 1139,
		682, 1139, 1251, 1139, 1251, 1139, 682, 1251, 1251, 592, 589, 1139, 611, 1821, 1251, 1251,
		1251, 1251, 797, 1139, 682, 1251, 1139, 1593, 1139, 1139, 1024, 797, 573, 797, 1196}
)

// FontSize is the size of the Go fonts, in mm, whose capitals are as high as
// given: their capitals stand 1480/2048 of the size high.
func FontSize(capHeight float64) float64 { return float64(capHeight*2048) / 1480 }

// TextWidth is the width in mm of a line of text in the Go fonts, at a height
// of capitals in mm. Characters outside ASCII count as wide ones: 0.78 of the
// size, from U+1100 on 1.02 (the scripts that are set in squares).
func TextWidth(s string, capHeight float64, heavy bool) float64 {
	table := &regular
	if heavy {
		table = &bold
	}
	w := 0
	for _, r := range s {
		switch {
		case r >= ' ' && r <= '~':
			w += int(table[r-' '])
		case r >= 0x1100:
			w += 2090
		default:
			w += 1600
		}
	}
	return float64(FontSize(capHeight)*float64(w)) / 2048
}

// shorten cuts s so that it is at most width mm wide, with an ellipsis. The
// second result is the whole text if something was cut.
func shorten(s string, capHeight float64, heavy bool, width float64) (cut, full string) {
	if TextWidth(s, capHeight, heavy) <= width {
		return s, ""
	}
	rs := []rune(s)
	lo, hi := 0, len(rs) // the longest start that fits is lo long
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if TextWidth(string(rs[:mid])+"…", capHeight, heavy) <= width {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return string(rs[:lo]) + "…", s
}
