package bom_test

import (
	"fmt"
	"os"

	"holt.example/box"
	"holt.example/joints"
	"holt.example/render/bom"
	"holt.example/species/timber"
)

// tray is a seed tray from the orchard's shed: four equal walls.
func tray() *box.Plan {
	return box.Design{
		Name:    "seed tray",
		Board:   box.Board{Thickness: 15, Measured: 14.6, Material: "European larch"},
		Size:    box.BoardWidth{Width: 145, Height: 60},
		Corners: box.Corners{Joint: joints.Butt{}, Laps: box.Pinwheel},
		Floor:   box.FloorBetween{},
		Roof:    box.NoRoof{},
	}.MustResolve()
}

// For hand work sizes are rounded to half a millimetre, all together.
func ExampleNew() {
	l := bom.New(tray(), bom.Options{Step: 0.5})
	for _, it := range l.Items {
		fmt.Printf("%d %v %.1f x %.1f, cut to %v x %v\n", it.Number, it.Parts, it.Length, it.Width, it.CutLength, it.CutWidth)
	}
	// Output:
	// 1 [front back left right] 74.6 x 145.0, cut to 75 x 145
	// 2 [floor] 130.4 x 130.4, cut to 130 x 130
}

func ExampleWriteMarkdown() {
	if err := bom.WriteMarkdown(os.Stdout, tray(), bom.Options{Step: 0.5}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// # seed tray: parts
	//
	// Sizes in mm. Lengths and widths to cut to are rounded to 0.5, all of them together: what goes between or into other parts down, what laps over others or ends free up, and floor and partitions take what the rounded walls leave. So parts that are all cut to this list go together; where a size is more than half a step from the exact one, the reason is given. Edges here, and the drawings, have the exact sizes, written to 0.1. Left, right, upper and lower mean the part as you look at its machined face.
	//
	// | item | qty | parts | material | thickness | cut to length × width | grain | kg each | machined face | up | face edge | hand |
	// | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
	// | 1 | 4 | front, back, left, right | European larch | 14.6 (sold as 15) | 75 × 145 | up | — | inside | upper edge | left edge | — |
	// | 2 | 1 | floor | European larch | 14.6 (sold as 15) | 130 × 130 | across | — | inside | level, lower edge to the front | lower edge | — |
	//
	// Where a size is not the exact one:
	//
	// - 1, front, back, left, right: exact 74.6 × 145; length 0.4 more: nothing stops it here, so it was rounded up
	// - 2, floor: exact 130.4 × 130.4; length 0.4 less, width 0.4 less: so that it goes between its neighbours
	//
	// ## Edges
	//
	// | item | edge | exact length | meets | bevel | gauge | past the cavity face |
	// | --- | --- | --- | --- | --- | --- | --- |
	// | 1 | left | 74.6 | right, left, front, back in turn (butt) | square | — | +14.6 (laps over right by its thickness 14.6) |
	// | 1 | lower | 145 | floor (butt) | square | — | +14.6 (laps over floor by its thickness 14.6) |
	// | 1 | right | 74.6 | left, right, back, front in turn (butt) | square | — | 0 (ends at the inner face of left) |
	// | 1 | upper | 145 | free | square | — | 0 (ends at the open side) |
	// | 2 | lower | 130.4 | front (butt) | square | — | 0 (ends at the inner face of front) |
	// | 2 | right | 130.4 | right (butt) | square | — | 0 (ends at the inner face of right) |
	// | 2 | upper | 130.4 | back (butt) | square | — | 0 (ends at the inner face of back) |
	// | 2 | left | 130.4 | left (butt) | square | — | 0 (ends at the inner face of left) |
	//
	// ## Work
	//
	// Nothing but cutting to size.
	//
	// ## Sizes and proof
	//
	// | mm | width | depth | height | diagonals at the walls' lower edge |
	// | --- | --- | --- | --- | --- |
	// | inside | 130.4 | 130.4 | 60 | 184.4 and 184.4 |
	// | outside, the walls, up to the upper edge | 159.6 | 159.6 | 74.6 | 225.7 and 225.7 |
	// | overall, the whole box | 159.6 | 159.6 | 74.6 | — |
	//
	// The box is square when both diagonals read the same.
	//
	// ## Totals
	//
	// | material | thickness | parts | blanks, m² | volume, dm³ |
	// | --- | --- | --- | --- | --- |
	// | European larch | 14.6 (sold as 15) | 5 | 0.06 | 0.88 |
	//
	// Parts: 5. Volume: 0.88 dm³. Mass not known.
}

func ExampleWriteSummary() {
	if err := bom.WriteSummary(os.Stdout, tray()); err != nil {
		fmt.Println(err)
	}
	// Output:
	// seed tray
	//             wide   deep  high
	//   inside   130.4  130.4  60.0
	//   outside  159.6  159.6  74.6  the walls, up to the upper edge
	//   overall  159.6  159.6  74.6  the whole box
	//
	//   item  qty  parts                     along  across  thick
	//      1    4  front, back, left, right   74.6   145.0   14.6  European larch
	//      2    1  floor                     130.4   130.4   14.6  European larch
	//
	//   Outside, the box measures 159.6 here; front is 14.6 narrower: left takes 14.6.
}

// A bill says what to buy, at the prices of the user's shop; what has none there is
// unpriced.
func ExampleWriteSummaryWith() {
	terms := &bom.Terms{
		Density:  timber.DensityOf,
		Near:     timber.NamesNear,
		Waste:    0.1,
		Prices:   []bom.Price{{Of: "European larch", Per: bom.SquareMetre, Cost: 42}},
		Currency: "EUR",
	}
	if err := bom.WriteSummaryWith(os.Stdout, tray(), bom.Options{Bill: terms}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// seed tray
	//             wide   deep  high
	//   inside   130.4  130.4  60.0
	//   outside  159.6  159.6  74.6  the walls, up to the upper edge
	//   overall  159.6  159.6  74.6  the whole box
	//
	//   item  qty  parts                     along  across  thick
	//      1    4  front, back, left, right   74.6   145.0   14.6  European larch
	//      2    1  floor                     130.4   130.4   14.6  European larch
	//
	//      to buy                                cost  price
	//   0.0663 m²  European larch, 15 thick  2.78 EUR  42.00 EUR per m²
	//
	//   0.523 kg; cost 2.78 EUR
	//
	//   Outside, the box measures 159.6 here; front is 14.6 narrower: left takes 14.6.
}
