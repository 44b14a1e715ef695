package png_test

import (
	"bytes"
	"fmt"
	"image/png"

	"holt.example/box"
	"holt.example/render/picture"
	holtpng "holt.example/render/png"
)

// An exploded picture for a leaflet, 100 mm wide.
func Example() {
	design := box.Design{
		Name:     "orchard flat",
		Board:    box.Board{Thickness: 20},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 200},
		Roof:     box.Flat{Over: box.Overhangs{Front: 30}},
		Floor:    box.FloorBetween{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 140}},
	}
	plan, err := design.Resolve()
	if err != nil {
		fmt.Println(err)
		return
	}
	var file bytes.Buffer
	err = holtpng.Write(&file, plan, holtpng.Options{
		Options: picture.Options{Exploded: true, Tint: true, Width: 100, Height: 150},
		DPI:     127,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	config, err := png.DecodeConfig(&file)
	fmt.Println(config.Width, config.Height, err)
	// Output: 500 750 <nil>
}
