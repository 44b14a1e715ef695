package outline_test

import (
	"fmt"

	"holt.example/box/outline"
)

// The front of a nest box: a board with an entrance hole and a grip cut flush
// out of its lower edge.
func Example() {
	board := outline.Region{outline.Rectangle(0, 0, 150, 250)}
	hole := outline.Circle(outline.Point{X: 75, Y: 190}, 32)
	grip := outline.Rectangle(60, 0, 90, 12)

	front, err := outline.Subtract(board, outline.Region{hole, grip})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d contours, %.1f mm2, %.1f mm of edge\n", len(front), front.Area(), front.Length())
	fmt.Printf("web over the hole %.1f mm\n", hole.DistanceTo(board[0]))
	fmt.Printf("corners of the hole within 0.05 mm: %d\n", len(hole.Flatten(0.05)))
	// Output:
	// 2 contours, 36335.8 mm2, 924.5 mm of edge
	// web over the hole 44.0 mm
	// corners of the hole within 0.05 mm: 33
}

// Mirroring keeps the sense: material stays material.
func ExampleContour_Transform() {
	c := outline.Slot(outline.Point{X: 40, Y: 0}, 30, 10)
	m := c.Transform(outline.MirrorX())
	fmt.Printf("%.4f %.4f\n", c.Area(), m.Area())
	fmt.Println(m.Extents().Min.X, m.Extents().Max.X)
	// Output:
	// 278.5398 278.5398
	// -55 -25
}

// A contour from elsewhere says what is wrong with it, and where.
func ExampleContour_Check() {
	c := outline.Polygon(outline.Point{X: 0, Y: 0}, outline.Point{X: 20, Y: 20}, outline.Point{X: 20, Y: 0}, outline.Point{X: 0, Y: 20})
	fmt.Println(c.Check())
	// Output:
	// outline: contour 0, side 0: sides that cross or touch near (10.0000, 10.0000)
}

// A gable cut level: half-planes keep everything with Ax + By <= C.
func ExampleContour_Clip() {
	gable := outline.Polygon(outline.Point{X: 0, Y: 0}, outline.Point{X: 100, Y: 0}, outline.Point{X: 50, Y: 50})
	fmt.Println(gable.Clip(outline.HalfPlane{A: 0, B: 1, C: 30}))
	// Output:
	// [[{30 30 0} {0 0 0} {100 0 0} {70 30 0}]]
}
