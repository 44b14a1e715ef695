package solid

import (
	"math"
	"testing"

	"holt.example/box/outline"
)

// Cells hold what Volume says, and overlap neither each other nor the hole.
func TestCells(t *testing.T) {
	b := Body{Base: cuboid(0, 0, 0, 60, 40, 15), Cutters: []Cutter{{NewPlane(Vec{X: 1}, 10), NewPlane(Vec{Z: 1}, 5)}},
		Prisms: []Prism{{World(), outline.Circle(outline.Point{X: 35, Y: 20}, 20), math.Inf(-1), math.Inf(1)}}}
	cells := b.Cells(0.01)
	// 60 x 40 x 15 less 10 x 40 x 5 less pi 10^2 x 15, area-true.
	near(t, "volume", VolumeOf(cells), 36000-2000-math.Pi*1500, 1e-6)
	for i, c := range cells {
		var faces []Plane
		for _, f := range c.Faces {
			faces = append(faces, Plane{f.N, f.N.Dot(f.Loop[0])})
		}
		for _, d := range cells[:i] {
			in, _ := Split(d, faces)
			near(t, "common", in.Volume(), 0, 1e-6)
		}
	}
	if got := (Body{Base: cuboid(0, 0, 0, 1, 1, 1), Cutters: []Cutter{{NewPlane(Vec{X: 1}, 2)}}}).Cells(0.01); len(got) != 0 {
		t.Errorf("nothing is left of it, but %d cells", len(got))
	}
}
