package timber

import (
	"math"
	"testing"

	"holt.example/joints"
)

// TestDensityOf: Scots pine weighs 526 kg/m3 at 12 % (computed from the handbook's
// specific gravity), whatever its name; what is no wood has no density.
func TestDensityOf(t *testing.T) {
	for name, want := range map[string]float64{"Scots pine": 526, "scots-pine": 526, "Pinus sylvestris": 526, "planed Scots pine": 526, "cardboard": 0, "": 0} {
		if d, ok := DensityOf(name); math.Abs(d-want) > 0.5 || ok != (want > 0) {
			t.Errorf("%q: %v, %v", name, d, ok)
		}
	}
}

// TestLateral: a nail of 3.33 mm bears 50.04 x 3.33^1.5 = 304.1 N, a screw of 4.17
// 23.17 x 4.17^2 = 402.9 N (coefficients from memory, arithmetic by hand).
func TestLateral(t *testing.T) {
	if x, err := NailLateral(3.33); err != nil || math.Abs(x-304.1) > 0.05 {
		t.Errorf("%v, %v", x, err)
	}
	if x, err := ScrewLateral(4.17); err != nil || math.Abs(x-402.9) > 0.05 {
		t.Errorf("%v, %v", x, err)
	}
	for _, f := range []func() (float64, error){func() (float64, error) { return NailLateral(-3) }, func() (float64, error) { return ScrewLateral(joints.MM(math.NaN())) }} {
		if x, err := f(); err == nil {
			t.Errorf("%v", x)
		}
	}
}
