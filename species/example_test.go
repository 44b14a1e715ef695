package species_test

import (
	"fmt"

	"holt.example/box"
	"holt.example/species"
)

// A box for great tits out of boards that measure 19.6, with one hole bored too
// large by the only bit at hand.
func Example() {
	tit, err := species.Get("great_tit")
	if err != nil {
		fmt.Println(err)
		return
	}
	way, err := tit.Entrance()
	if err != nil {
		fmt.Println(err)
		return
	}
	way.Shape = box.Round{Diameter: 35}
	design := box.Design{
		Name:     "orchard",
		Board:    box.Board{Thickness: 20, Measured: 19.6, Material: "western redcedar"},
		Size:     tit.Inside,
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 60, Left: 50, Right: 50}},
		Floor:    box.FloorUnder{},
		Features: []box.Feature{way, box.Drains{}},
	}
	plan, err := design.Resolve()
	if err != nil {
		fmt.Println(err)
		return
	}
	findings, err := species.Review(plan, tit, species.Site{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range findings {
		if f.Severity == box.Fault {
			fmt.Println(f.Code, f.Got, "allowed", f.Lo, "to", f.Hi)
		}
	}
	_, err = species.Find("graet tit")
	fmt.Println(err)
	// Output:
	// hole-size 35 allowed 28 to 32
	// unknown animal "graet tit"; did you mean Great Tit?
}
