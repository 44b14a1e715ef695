package outline

import (
	"math"
	"testing"
)

// A side that lies on another but for 6e-12: the crossing of the two could be
// computed anywhere along it, and was, 0.0017 past its end.
func TestSubtractAlongASlantedSide(t *testing.T) {
	a := Region{{{-40.74180391526335, 0, 0}, {40.741803915267866, 0, 0}, {40.741803915267866, 113.5217401147548, 0}, {-40.74180391526335, 153.48621848342398, 0}}}
	b := Region{{{-27.28922839924701, 146.8882636612606, 0}, {-32.35426027229774, 149.37246093867583, 0}, {-32.35426027229774, 76.7431092420434, 0}, {-27.28922839924701, 76.7431092420434, 0}}}
	c, err := Subtract(a, b)
	if err != nil {
		t.Fatal(err)
	}
	if want := a.Area() - b.Area(); math.Abs(c.Area()-want) > 1e-4 {
		t.Errorf("area %v, want %v", c.Area(), want)
	}
}
