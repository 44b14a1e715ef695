package joints

import (
	"errors"
	"fmt"
	"math"
	"testing"
)

func TestFaultError(t *testing.T) {
	inf := math.Inf(1)
	for _, x := range []struct {
		f    Fault
		want string
	}{
		{Fault{Field: "Depth", Got: 15, Lo: 0.1, Hi: 8.6, Unit: "mm", Why: "too deep"}, "Depth: too deep: got 15, want 0.1 to 8.6 mm"},
		{Fault{Field: "Fingers", Got: 99, Lo: 2, Hi: 53, Why: "too many"}, "Fingers: too many: got 99, want 2 to 53"},
		{Fault{Got: 1.0 / 3, Lo: 1, Hi: nan, Unit: "mm", Why: "too near"}, "too near: got 0.3333, want at least 1 mm"},
		{Fault{Got: 5, Lo: math.Inf(-1), Hi: 0, Unit: "mm", Why: "no"}, "no: got 5, want at most 0 mm"},
		{Fault{Got: 5, Lo: nan, Hi: inf, Why: "no"}, "no"},
		{Fault{Why: "no range"}, "no range"},
		{Fault{Field: "X", Got: nan, Lo: 0, Hi: 1, Unit: "mm", Why: "no"}, "X: no: got not a number, want 0 to 1 mm"},
		{Fault{Field: "X", Got: 2, Lo: 7, Hi: 7, Unit: "mm", Why: "no"}, "X: no: got 2, want 7 mm"},
		{Fault{Got: 210, Lo: 225, Hi: 225, Unit: "mm2", Why: "add up to 210 of 225 mm2"}, "add up to 210 of 225 mm2"},
		{Fault{Field: "X", Got: -0.00001, Lo: 1e300, Hi: nan, Why: "no"}, "X: no: got 0, want at least above 1000000000000000"},
	} {
		if got := x.f.Error(); got != x.want {
			t.Errorf("got %q, want %q", got, x.want)
		}
	}
}

func TestFaults(t *testing.T) {
	a, b, c := &Fault{Why: "a"}, &Fault{Why: "b"}, &Fault{Why: "c"}
	tree := fmt.Errorf("corner: %w", errors.Join(a, fmt.Errorf("%w and %w", b, errors.New("other")), errors.Join(c)))
	got := Faults(tree)
	if len(got) != 3 || got[0] != a || got[1] != b || got[2] != c {
		t.Errorf("got %v", got)
	}
	if Faults(nil) != nil || Faults(errors.New("x")) != nil {
		t.Error("faults from nothing")
	}
	var f *Fault
	if !errors.As(tree, &f) || f != a {
		t.Error("errors.As does not find the first")
	}
}

func TestInRange(t *testing.T) {
	if err := InRange("Depth", 5, 1, 7, "no"); err != nil {
		t.Errorf("got %v", err)
	}
	for _, x := range []MM{0.9, 7.1, MM(nan), MM(math.Inf(1))} {
		if fs := Faults(InRange("Depth", x, 1, 7, "no")); len(fs) != 1 || fs[0].Field != "Depth" || fs[0].Hi != 7 {
			t.Errorf("%v: got %v", x, fs)
		}
	}
}

func TestInch(t *testing.T) { // 25.4 exactly: the international inch of 1959
	if Inch(1.5) != 38.1 {
		t.Errorf("1.5 in is %v", Inch(1.5))
	}
}
