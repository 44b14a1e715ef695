package outline

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The reach of any contour in a direction is its extent once it is turned
// until that direction is the x axis.
func TestSupportIsTheTurnedExtent(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	shapes := []Contour{
		Circle(Point{3, -2}, 7), Slot(Point{1, 1}, 20, 6), RoundedRectangle(-4, -3, 9, 5, 2),
		Rectangle(0, 0, 3, 8), {{0, 0, 0.3}, {10, 0, -0.2}, {7, 9, 1}},
	}
	for _, c := range shapes {
		for k := 0; k < 200; k++ {
			deg := 360 * r.Float64()
			sin, cos := math.Sincos(deg * math.Pi / 180)
			want := c.Transform(Turn(-deg)).Extents().Max.X
			if got := c.Support(cos, sin); math.Abs(got-want) > 1e-9 {
				t.Fatalf("%v in %v degrees: %v, want %v", c, deg, got, want)
			}
		}
	}
	if got := (Contour{}).Support(1, 0); !math.IsInf(got, -1) {
		t.Errorf("an empty contour reaches %v", got)
	}
}
