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
		Opens:    []box.Opening{box.Hinged{Part: box.Roof}, box.HookAndEye{Part: box.Roof, At: box.Left}},
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

// What the maker has decides how a plan can be made: here there is a bit of 30,
// which is too wide for blue tits, beside two that serve them.
func ExampleWorkshop() {
	design := box.Design{
		Name:     "small tits",
		Board:    box.Board{Thickness: 15, Material: "Douglas fir"},
		Size:     box.Cavity{Width: 110, Depth: 110, Height: 230},
		Roof:     box.Pent{Pitch: 10, Over: box.Overhangs{Front: 50}},
		Floor:    box.FloorUnder{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 26}, Above: 170}},
	}
	shop := species.Workshop{Bits: []box.MM{25, 28, 30, 32}}
	findings, err := species.Review(design.MustResolve(), species.MustGet("blue_tit"), species.Site{Shop: shop})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range findings {
		if f.Code == "shop-bit" {
			fmt.Println(f.Why)
		}
	}
	// Output:
	// there is no bit of 26 mm for the entrance of front: of those at hand 25 or 28 (which also admits Small tits, Great Tit, European Pied Flycatcher, Eurasian Tree Sparrow) serves Blue Tit
}

// Screws for a box, and their pilot holes in the design itself.
func ExampleFixings() {
	design := box.Design{
		Name:  "crate",
		Board: box.Board{Thickness: 15, Measured: 14.6},
		Size:  box.Cavity{Width: 120, Depth: 100, Height: 200},
		Roof:  box.NoRoof{},
		Floor: box.FloorBetween{},
	}
	fixings, err := species.Fixings(design.MustResolve(), species.FixWith{})
	if err != nil {
		fmt.Println(err)
		return
	}
	bored := design.With(func(d *box.Design) {
		for _, f := range fixings {
			for _, c := range f.Cuts() {
				d.Features = append(d.Features, c)
			}
		}
	}).MustResolve()
	front, _ := bored.Piece(box.Front)
	for _, f := range fixings {
		if f.Over == box.Front {
			fmt.Println(f)
		}
	}
	fmt.Println(len(front.Panel.Ops), "holes in the front")
	// Output:
	// 3 x screw 3.5 x 40, pilot 2.5 through front into the side grain of right
	// 3 x screw 3.5 x 40, pilot 2.5 through front into the side grain of left
	// 2 x screw 3.5 x 40, pilot 2.5 through front into the side grain of floor
	// 8 holes in the front
}
