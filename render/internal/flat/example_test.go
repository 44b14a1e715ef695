package flat_test

import (
	"fmt"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// A panel becomes items on layers, each contour as the panel has it.
func Example() {
	face := outline.Region{outline.Rectangle(-60, 0, 60, 240)}
	piece := box.Piece{Part: box.Front, Panel: box.Panel{
		Thickness: 14.6, Machined: face, Far: face,
		Ops: []box.Op{
			{Kind: box.OpBore, Side: box.SideThrough, To: 14.6, Region: outline.Region{outline.Circle(outline.Point{Y: 180}, 32)}},
			{Kind: box.OpHousing, Side: box.SideMachined, To: 5, Region: outline.Region{outline.Rectangle(-60, 20, 60, 34.6)}},
		},
	}}
	d, err := flat.Part("orchard", flat.Subject{Piece: piece}, flat.Options{Bare: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, it := range d.Items {
		fmt.Println(it.Layer.Name(), "-", it.Note)
	}
	// Output:
	// PROFILE_14.6 - profile, 14.6 thick
	// BORE_14.6 - bore, through
	// HOUSING_5.0 - housing, 5.0 deep
}
