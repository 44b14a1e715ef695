package picture_test

import (
	"fmt"
	"strings"

	"holt.example/box"
	"holt.example/render/picture"
)

// The orchard's box drawn apart, for the leaflet of the ringing group.
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
	p, err := picture.Exploded(plan, picture.Options{Tint: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Note, "from", p.View.Name)
	for _, t := range p.Texts {
		if t.Align == picture.Start {
			fmt.Println(t.S)
		}
	}

	var file strings.Builder
	if err := p.WriteSVG(&file); err != nil {
		fmt.Println(err)
	}
	fmt.Println(strings.HasPrefix(file.String(), "<svg "))
	// Output:
	// exploded from trimetric
	// front
	// back
	// left, right
	// floor
	// roof
	// orchard flat
	// exploded; trimetric, turned 20°, from 35° above; not to scale
	// true
}
