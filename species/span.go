package species

import (
	"strconv"
	"strings"
)

// Span is a range of a figure, either end of which may be missing. The zero
// value is a span without ends: nothing was published. Both ends belong to it.
type Span struct {
	Lo, Hi       float64
	HasLo, HasHi bool
}

// Between is the span from lo to hi.
func Between(lo, hi float64) Span { return Span{Lo: lo, Hi: hi, HasLo: true, HasHi: true} }

// AtLeast is the span from lo upwards.
func AtLeast(lo float64) Span { return Span{Lo: lo, HasLo: true} }

// AtMost is the span up to hi.
func AtMost(hi float64) Span { return Span{Hi: hi, HasHi: true} }

// Empty says that neither end is known.
func (s Span) Empty() bool { return !s.HasLo && !s.HasHi }

// Has says whether x lies in the span; no span has NaN. An empty span has
// every other number.
func (s Span) Has(x float64) bool {
	if x != x {
		return false
	}
	return (!s.HasLo || x >= s.Lo) && (!s.HasHi || x <= s.Hi)
}

// Months expands a span of months, which may run over the turn of the year:
// 9 to 1 is September to January. It is nil unless both ends are whole numbers
// from 1 to 12.
func (s Span) Months() []int {
	from, to := int(s.Lo), int(s.Hi)
	if !s.HasLo || !s.HasHi || float64(from) != s.Lo || float64(to) != s.Hi ||
		from < 1 || from > 12 || to < 1 || to > 12 {
		return nil
	}
	out := []int{from}
	for m := from; m != to; {
		m = m%12 + 1
		out = append(out, m)
	}
	return out
}

// String writes the span as people do: "25 to 28", "at least 2", "at most 3",
// "32", and "not published" for an empty one.
func (s Span) String() string {
	switch {
	case s.Empty():
		return "not published"
	case !s.HasHi:
		return "at least " + num(s.Lo)
	case !s.HasLo:
		return "at most " + num(s.Hi)
	case s.Lo == s.Hi:
		return num(s.Lo)
	}
	return num(s.Lo) + " to " + num(s.Hi)
}

// num writes a number with at most four decimals, without an exponent and
// never as "-0".
func num(x float64) string {
	t := strconv.FormatFloat(x, 'f', 4, 64)
	if strings.Contains(t, ".") {
		t = strings.TrimRight(strings.TrimRight(t, "0"), ".")
	}
	if t == "-0" {
		return "0"
	}
	return t
}
