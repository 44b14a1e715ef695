package species

import (
	"math"
	"reflect"
	"testing"
)

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		s       Span
		text    string
		in, out []float64
	}{
		{Span{}, "not published", []float64{0, -1e300, math.Inf(1)}, []float64{math.NaN()}},
		{Between(25, 28), "25 to 28", []float64{25, 28}, []float64{24.999, 28.001, math.NaN(), math.Inf(1)}},
		{AtLeast(2), "at least 2", []float64{2, math.Inf(1)}, []float64{1.9}},
		{AtMost(0), "at most 0", []float64{0, -3}, []float64{1e-9}},
		{Between(32, 32), "32", []float64{32}, []float64{31}},
		{Between(-10, 30), "-10 to 30", []float64{-10}, []float64{-11}},
	} {
		if got := c.s.String(); got != c.text {
			t.Errorf("%+v: %q, want %q", c.s, got, c.text)
		}
		for _, x := range c.in {
			if !c.s.Has(x) {
				t.Errorf("%s should have %v", c.text, x)
			}
		}
		for _, x := range c.out {
			if c.s.Has(x) {
				t.Errorf("%s should not have %v", c.text, x)
			}
		}
	}
}

func TestMonths(t *testing.T) {
	for _, c := range []struct {
		s    Span
		want []int
	}{
		{Between(9, 1), []int{9, 10, 11, 12, 1}},
		{Between(10, 2), []int{10, 11, 12, 1, 2}},
		{Between(3, 3), []int{3}},
		{Between(0, 3), nil}, {Between(1, 13), nil}, {Between(1.5, 3), nil}, {AtLeast(3), nil}, {Span{}, nil},
		{Between(math.NaN(), 3), nil}, {Between(math.Inf(1), 3), nil},
	} {
		if got := c.s.Months(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%v: %v, want %v", c.s, got, c.want)
		}
	}
}

func TestNum(t *testing.T) {
	for x, want := range map[float64]string{0: "0", math.Copysign(0, -1): "0", -0.00001: "0", 100: "100", 0.125: "0.125", 1e7: "10000000", 1.23456: "1.2346"} {
		if got := num(x); got != want {
			t.Errorf("num(%v) = %q, want %q", x, got, want)
		}
	}
}
