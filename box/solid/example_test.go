package solid_test

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// A board 200 x 150 x 15 with a rebate along one end and a round hole.
func Example() {
	side := func(x, y, z, d float64) solid.Plane { return solid.NewPlane(solid.Vec{X: x, Y: y, Z: z}, d) }
	board := solid.Body{
		Base: []solid.Plane{
			side(-1, 0, 0, 0), side(1, 0, 0, 200),
			side(0, -1, 0, 0), side(0, 1, 0, 150),
			side(0, 0, -1, 15), side(0, 0, 1, 0), // the face towards the tool is z = 0
		},
		// Open towards the end and the face: 20 wide, 7 deep.
		Cutters: []solid.Cutter{{side(1, 0, 0, 20), side(0, 0, -1, 7)}},
		Prisms: []solid.Prism{{
			Frame:   solid.World(),
			Outline: outline.Circle(outline.Point{X: 110, Y: 75}, 32),
			From:    math.Inf(-1), To: math.Inf(1),
		}},
	}
	mesh, err := board.Mesh(0.01)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4f mm3 in %d triangles, %d hole\n", mesh.Volume(), len(mesh.Triangles), mesh.Genus())
	fmt.Println("sound:", mesh.Check() == nil)
	fmt.Printf("without the hole: %.1f mm3 in %d pieces\n", solid.VolumeOf(board.Pieces()), len(board.Pieces()))
	fmt.Println("machined face:", board.Rings(solid.World()))
	// Output:
	// 416936.2842 mm3 in 316 triangles, 1 hole
	// sound: true
	// without the hole: 429000.0 mm3 in 2 pieces
	// machined face: [[{20 0 0} {200 0 0} {200 150 0} {20 150 0}]]
}
