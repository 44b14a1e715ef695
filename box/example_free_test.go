package box_test

import (
	"fmt"
	"log"

	"holt.example/box"
	"holt.example/box/outline"
)

// A bracket under the ringer's number plate, on the right side of a post whose
// front is at y = 0. It faces to the right, so u runs from Up x Facing =
// z x x = y: away from the viewer; v runs up; and from At, on the post, the
// thickness of 12 goes to the right.
func ExampleFree() {
	p, err := box.Design{
		Name:  "bracket",
		Board: box.Board{Thickness: 12},
		Free: []box.Free{{
			Name:    "bracket",
			Outline: outline.Polygon(outline.Point{X: 0, Y: 0}, outline.Point{X: 60, Y: 0}, outline.Point{X: 0, Y: 90}),
			At:      box.Place{X: 40, Y: 0, Z: 500},
			Facing:  box.Direction{X: 1},
		}},
	}.Resolve()
	if err != nil {
		log.Fatal(err)
	}
	m, err := p.Mesh(box.FreePart("bracket"))
	if err != nil {
		log.Fatal(err)
	}
	lo, hi := m.Vertices[0], m.Vertices[0]
	for _, v := range m.Vertices {
		lo.X, lo.Y, lo.Z = min(lo.X, v.X), min(lo.Y, v.Y), min(lo.Z, v.Z)
		hi.X, hi.Y, hi.Z = max(hi.X, v.X), max(hi.Y, v.Y), max(hi.Z, v.Z)
	}
	fmt.Printf("x %.0f to %.0f, y %.0f to %.0f, z %.0f to %.0f\n", lo.X, hi.X, lo.Y, hi.Y, lo.Z, hi.Z)
	// Output:
	// x 40 to 52, y 0 to 60, z 500 to 590
}
