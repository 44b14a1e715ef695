package picture

import (
	"math"

	"holt.example/box/solid"
)

// meshOf triangulates a convex solid, so that pictures can be tested without
// a plan.
func meshOf(c solid.Convex) *solid.Mesh {
	m := &solid.Mesh{}
	at := func(v solid.Vec) int32 {
		for i, w := range m.Vertices {
			if w.Sub(v).Len() < 1e-4 {
				return int32(i)
			}
		}
		m.Vertices = append(m.Vertices, v)
		return int32(len(m.Vertices) - 1)
	}
	for _, f := range c.Faces {
		for k := 1; k+1 < len(f.Loop); k++ {
			m.Triangles = append(m.Triangles, [3]int32{at(f.Loop[0]), at(f.Loop[k]), at(f.Loop[k+1])})
		}
	}
	return m
}

func block(x0, y0, z0, x1, y1, z1 float64) *solid.Mesh {
	return meshOf(solid.Cuboid(solid.Vec{X: x0, Y: y0, Z: z0}, solid.Vec{X: x1, Y: y1, Z: z1}))
}

// gable is a nest box by hand: cavity 120 x 120 x 200, boards 15, a roof of 45
// degrees that overhangs by 30 in front and back, and a batten behind.
func gable() []Solid {
	x, y, z := solid.Vec{X: 1}, solid.Vec{Y: 1}, solid.Vec{Z: 1}
	neg := func(v solid.Vec) solid.Vec { return v.Scale(-1) }
	pentagon := func(y0, y1 float64) *solid.Mesh {
		k := math.Sqrt(0.5)
		return meshOf(solid.Intersect([]solid.Plane{
			solid.NewPlane(neg(x), 75), solid.NewPlane(x, 75), solid.NewPlane(neg(z), 15),
			solid.NewPlane(neg(y), -y0), solid.NewPlane(y, y1),
			solid.NewPlane(solid.Vec{X: k, Z: k}, (75+200)*k), solid.NewPlane(solid.Vec{X: -k, Z: k}, (75+200)*k),
		}))
	}
	slope := func(sx float64, lap float64) *solid.Mesh {
		k := math.Sqrt(0.5)
		n := solid.Vec{X: sx * k, Z: k}
		d := (75 + 200) * k
		return meshOf(solid.Intersect([]solid.Plane{
			solid.NewPlane(n, d+15), solid.NewPlane(neg(n), -d),
			solid.NewPlane(neg(y), 105), solid.NewPlane(y, 105),
			solid.NewPlane(solid.Vec{X: sx}, 100),
			solid.NewPlane(solid.Vec{X: -sx * k, Z: k}, d+lap),
		}))
	}
	return []Solid{
		{Part: "front", Number: 1, Key: "front, back", Mesh: pentagon(-75, -60), Out: neg(y), Grain: z},
		{Part: "back", Number: 1, Key: "front, back", Mesh: pentagon(60, 75), Out: y, Grain: z},
		{Part: "left", Number: 2, Key: "left, right", Mesh: block(-75, -60, -15, -60, 60, 200), Out: neg(x), Grain: z},
		{Part: "right", Number: 2, Key: "left, right", Mesh: block(60, -60, -15, 75, 60, 200), Out: x, Grain: z},
		{Part: "floor", Number: 3, Key: "floor", Mesh: block(-60, -60, -15, 60, 60, 0), Out: neg(z), Grain: x},
		{Part: "roof/left", Number: 4, Key: "roof/left", Mesh: slope(-1, 0), Out: solid.Vec{X: -1, Z: 1}.Unit(), Grain: y},
		{Part: "roof/right", Number: 5, Key: "roof/right", Mesh: slope(1, 15), Out: solid.Vec{X: 1, Z: 1}.Unit(), Grain: y},
		{Part: "free/batten", Number: 6, Key: "free/batten", Mesh: block(-20, 75, -60, 20, 95, 190), Out: y, Grain: z},
	}
}
