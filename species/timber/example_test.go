package timber_test

import (
	"fmt"

	"holt.example/species/timber"
)

// A front of flat-sawn Scots pine, 145 mm wide, made in a workshop at 10 % and
// hung outdoors where it goes to 16 %.
func Example() {
	pine, err := timber.Get("Scots pine")
	if err != nil {
		fmt.Println(err)
		return
	}
	density, _ := pine.Density()
	c, _ := pine.Coefficient(timber.Tangential)
	wider, err := timber.Movement(145, c.Value, 10, 16)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %.0f %s (%s)\n", pine.Name, density.Value, density.Unit, density.Source)
	fmt.Printf("wider by %.1f mm\n", float64(wider))

	_, err = timber.Get("skots pine")
	fmt.Println(err)
	// Output:
	// Scots pine (European redwood): 526 kg/m3 (fpl-gtr-282)
	// wider by 2.1 mm
	// unknown wood "skots pine"; did you mean Scots pine?
}
