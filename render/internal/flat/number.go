package flat

import (
	"math"
	"strconv"
)

// Step is the grid, in mm, on which every written coordinate lies.
const Step = 1e-4

// Limit is the largest coordinate, in mm, that a drawing may have: designs end
// at 10 m, and ten of them side by side still fit.
const Limit = 1e6

// Grid rounds x to the nearest multiple of Step, a tie away from zero. The
// result is the double nearest to that decimal, and never a negative zero.
func Grid(x float64) float64 { return math.Round(x*1e4)/1e4 + 0 }

// ticks is x as a whole number of grid steps.
func ticks(x float64) int64 { return int64(math.Round(x * 1e4)) }

// Num writes x, below Limit in size, with as few decimals as it needs on the
// grid: four at most, no exponent, never "-0".
func Num(x float64) string { return string(AppendNum(nil, x)) }

// AppendNum appends Num(x) to b.
func AppendNum(b []byte, x float64) []byte {
	return appendTicks(b, ticks(x), 0)
}

// Dotted is Num(x) with one decimal at least: "5.0". DXF wants reals to look
// like reals, and depths read better that way.
func Dotted(x float64) string { return string(AppendDotted(nil, x)) }

// AppendDotted appends Dotted(x) to b.
func AppendDotted(b []byte, x float64) []byte {
	return appendTicks(b, ticks(x), 1)
}

// appendTicks writes n grid steps with at least least decimals.
func appendTicks(b []byte, n int64, least int) []byte {
	if n < 0 {
		b = append(b, '-')
		n = -n
	}
	b = strconv.AppendInt(b, n/1e4, 10)
	frac := n % 1e4
	if frac == 0 && least == 0 {
		return b
	}
	b = append(b, '.')
	for d, k := int64(1000), 1; d > 0; d, k = d/10, k+1 {
		b = append(b, byte('0'+frac/d))
		frac %= d
		if frac == 0 && k >= least {
			break
		}
	}
	return b
}

// AppendBulge appends a bulge with up to twelve decimals, one at least.
func AppendBulge(b []byte, x float64) []byte {
	start := len(b)
	b = strconv.AppendFloat(b, x, 'f', 12, 64)
	for b[len(b)-1] == '0' && b[len(b)-2] != '.' {
		b = b[:len(b)-1]
	}
	if string(b[start:]) == "-0.0" {
		return append(b[:start], "0.0"...)
	}
	return b
}

// fits reports whether x may be written.
func fits(x float64) bool { return x >= -Limit && x <= Limit }
