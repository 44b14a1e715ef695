package svg_test

import (
	"bytes"
	"fmt"
	"strings"

	"holt.example/box"
	"holt.example/render/svg"
)

// A bare, tight drawing is as large as the part and holds only its lines.
func Example() {
	plan := box.Design{
		Name:     "orchard",
		Board:    box.Board{Thickness: 15},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:     box.Flat{},
		Floor:    box.FloorBetween{},
		Features: []box.Feature{box.Drains{Count: 1, Diameter: 10}},
	}.MustResolve()

	var b bytes.Buffer
	if err := svg.WritePart(&b, plan, box.Floor, svg.Options{Bare: true, Tight: true}); err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(b.String()) {
		if strings.HasPrefix(line, "<svg") || strings.HasPrefix(line, "<path") || strings.HasPrefix(line, "<circle") {
			fmt.Print(line)
		}
	}
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="0 0 120 120" role="img">
	// <path d="M 0 120 L 120 120 L 120 0 L 0 0 Z"><title>profile, 15.0 thick</title></path>
	// <circle cx="60" cy="60" r="5"><title>bore, drain, through (drain)</title></circle>
}
