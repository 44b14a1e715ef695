package sdf

import (
	"math"
	"testing"

	"github.com/deadsy/sdfx/sdf"
	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// orchard is the demonstration box: leaning on every kind of cut that a body
// can have (rebates are cutters, the entrance a prism, the roof bevels planes).
func orchard() box.Design {
	return box.Design{
		Name:  "orchard pent",
		Board: box.Board{Thickness: 15, Measured: 14.6},
		Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:  box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
		Walls: []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Corners: box.Corners{
			Joint: joints.Rebate{}, Laps: box.FrontBack,
		},
		Floor:    box.FloorBetween{Raise: 20},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}, box.Drains{}},
	}
}

func resolved(t testing.TB) *box.Plan {
	t.Helper()
	p, err := orchard().Resolve()
	require.NoError(t, err)
	return p
}

func cuboid(x, y, z float64) []solid.Plane {
	return []solid.Plane{
		solid.NewPlane(solid.Vec{X: -1}, 0), solid.NewPlane(solid.Vec{X: 1}, x),
		solid.NewPlane(solid.Vec{Y: -1}, 0), solid.NewPlane(solid.Vec{Y: 1}, y),
		solid.NewPlane(solid.Vec{Z: -1}, 0), solid.NewPlane(solid.Vec{Z: 1}, z),
	}
}

// plate is a 100 x 60 x 12 board with a hole of 20 through it, a slot pocket 5
// deep and a rebate 8 x 6 along one long edge.
func plate() solid.Body {
	top := solid.Frame{O: solid.Vec{Z: 12}, U: solid.Vec{X: 1}, V: solid.Vec{Y: 1}, W: solid.Vec{Z: 1}}
	return solid.Body{
		Base: cuboid(100, 60, 12),
		Cutters: []solid.Cutter{{
			solid.NewPlane(solid.Vec{Y: 1}, 8), solid.NewPlane(solid.Vec{Z: -1}, -6),
		}},
		Prisms: []solid.Prism{
			{Frame: top, Outline: outline.Circle(outline.Point{X: 30, Y: 35}, 20), From: math.Inf(-1), To: math.Inf(1)},
			{Frame: top, Outline: slot(), From: -5, To: math.Inf(1)},
		},
	}
}

// slot is 30 long and 12 wide, its middle at (70, 35).
func slot() outline.Contour {
	return outline.Contour{{X: 61, Y: 29}, {X: 79, Y: 29, Bulge: 1}, {X: 79, Y: 41}, {X: 61, Y: 41, Bulge: 1}}
}

// plateVolume: 100*60*12 = 72000; the hole pi*10^2*12 = 3769.9112; the slot
// (18*12 + pi*6^2)*5 = 1645.4867; the rebate 8*6*100 = 4800 (geometry).
const plateVolume = 72000 - 3769.9112 - 1645.4867 - 4800

// sampled is the volume of a model by counting the cells of a grid whose
// middles are inside.
func sampled(m sdf.SDF3, cell float64) float64 {
	b := m.BoundingBox()
	n := 0
	// The grid starts at an odd place, so that no face lies along it.
	for x := b.Min.X - 0.37*cell; x < b.Max.X; x += cell {
		for y := b.Min.Y - 0.41*cell; y < b.Max.Y; y += cell {
			for z := b.Min.Z - 0.43*cell; z < b.Max.Z; z += cell {
				if m.Evaluate(v3.Vec{X: x, Y: y, Z: z}) < 0 {
					n++
				}
			}
		}
	}
	return float64(n) * cell * cell * cell
}

// meshFigures are the volume and the area of a mesh.
func meshFigures(m *solid.Mesh) (volume, area float64) {
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		volume += a.Dot(b.Cross(c)) / 6
		area += b.Sub(a).Cross(c.Sub(a)).Len() / 2
	}
	return volume, area
}
