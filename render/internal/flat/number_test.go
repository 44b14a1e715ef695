package flat

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestNum(t *testing.T) {
	for _, c := range []struct {
		x           float64
		num, dotted string
	}{
		{0, "0", "0.0"},
		{math.Copysign(0, -1), "0", "0.0"},
		{-0.00004, "0", "0.0"},
		{0.00005, "0.0001", "0.0001"}, // a tie goes away from zero
		{-0.00005, "-0.0001", "-0.0001"},
		{5, "5", "5.0"},
		{-5, "-5", "-5.0"},
		{14.6, "14.6", "14.6"},
		{5.2000000001862645, "5.2", "5.2"},
		{1.05, "1.05", "1.05"},
		{0.0101, "0.0101", "0.0101"},
		{123456.7891, "123456.7891", "123456.7891"},
		{-74.59999999964202, "-74.6", "-74.6"},
		{1e6, "1000000", "1000000.0"},
	} {
		if got := Num(c.x); got != c.num {
			t.Errorf("Num(%v) = %q, want %q", c.x, got, c.num)
		}
		if got := Dotted(c.x); got != c.dotted {
			t.Errorf("Dotted(%v) = %q, want %q", c.x, got, c.dotted)
		}
	}
}

func TestBulge(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{
		{0, "0.0"}, {1, "1.0"}, {-1, "-1.0"}, {-1e-13, "0.0"},
		{math.Sqrt2 - 1, "0.414213562373"}, // tan 22.5, a quarter of a circle
		{-0.5, "-0.5"},
	} {
		if got := string(AppendBulge(nil, c.x)); got != c.want {
			t.Errorf("%v: %q, want %q", c.x, got, c.want)
		}
	}
}

// A written number reads back as the grid point, to the last bit.
func FuzzNum(f *testing.F) {
	for _, x := range []float64{0, 0.1, -14.6, 1e-5, 99999.99995, Limit} {
		f.Add(x)
	}
	f.Fuzz(func(t *testing.T, x float64) {
		if !fits(x) {
			return
		}
		for _, s := range []string{Num(x), Dotted(x)} {
			got, err := strconv.ParseFloat(s, 64)
			if err != nil || got != Grid(x) || math.Abs(got-x) > Step/2+math.Abs(x)/(1<<51) {
				t.Fatalf("%v: %q reads back as %v, grid %v, %v", x, s, got, Grid(x), err)
			}
			_, d, _ := strings.Cut(s, ".")
			if len(d) > 4 || strings.HasPrefix(s, "-0") && got == 0 || math.Signbit(Grid(x)) && Grid(x) == 0 {
				t.Fatalf("%v: %q", x, s)
			}
		}
	})
}
