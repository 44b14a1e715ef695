package timber

import "holt.example/joints"

// NailLateral is the load in N, square to its length, that a nail of a diameter
// bears in a test before it has slipped by 0.4 mm: 50.04 D^1.5. The form is that
// of the Wood Handbook, chapter 8; the coefficient, that of its lightest
// softwoods (specific gravity 0.29 to 0.42), is from memory, and is used for
// heavier woods too, which bear more. It needs a depth of ten diameters in dense
// woods to fourteen in light ones in the second part.
func NailLateral(diameter joints.MM) (float64, error) {
	if err := within("diameter", float64(diameter), 0.5, 30, "mm"); err != nil {
		return 0, err
	}
	return product(50.04, float64(diameter), sqrt(float64(diameter))), nil
}

// ScrewLateral is the same for a wood screw of a shank diameter: 23.17 D^2, the
// coefficient from memory too. It needs a depth of seven diameters.
func ScrewLateral(shank joints.MM) (float64, error) {
	if err := within("diameter", float64(shank), 0.5, 30, "mm"); err != nil {
		return 0, err
	}
	return product(23.17, float64(shank), float64(shank)), nil
}
