package bom

import (
	"math"
	"strconv"
	"strings"

	"holt.example/box"
	"holt.example/render/internal/text"
)

// num writes a figure with at most four decimals: no exponent, no "-0", no
// trailing zeros. What is not a number is written as "".
func num(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	return trim(strconv.FormatFloat(x, 'f', 4, 64))
}

// mm writes a length.
func mm(x box.MM) string { return num(float64(x)) }

// full writes a figure so that reading it gives the same float64 again, without
// an exponent.
func full(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	if x == 0 { // also -0
		return "0"
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

func trim(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// exact is a figure written to JSON with at most four decimals, null when it
// is not a number.
type exact float64

// MarshalJSON implements json.Marshaler.
func (x exact) MarshalJSON() ([]byte, error) { return orNull(num(float64(x))), nil }

// precise is a figure written to JSON so that nothing of it is lost.
type precise float64

// MarshalJSON implements json.Marshaler.
func (x precise) MarshalJSON() ([]byte, error) { return orNull(full(float64(x))), nil }

func orNull(s string) []byte {
	if s == "" {
		return []byte("null")
	}
	return []byte(s)
}

// plain is a name fit for one line.
func plain(s string) string { return text.Plain(s) }

// down and up round to a multiple of step. What lies on a multiple already, to
// within near, stays there.
func down(x, step float64) float64 { return grid(math.Floor((x+near)/step), step) }
func up(x, step float64) float64   { return grid(math.Ceil((x-near)/step), step) }

// nearest rounds to the nearest multiple, upward in the middle. The nudge makes
// equal figures round alike whatever the noise in their last bits.
func nearest(x, step float64) float64 { return grid(math.Floor((x+near)/step+0.5), step) }

// grid is k steps, free of the noise of the product.
func grid(k, step float64) float64 {
	x := math.Round(float64(k*step)*1e6) / 1e6
	if x == 0 {
		return 0
	}
	return x
}
