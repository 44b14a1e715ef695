package solid

import (
	"fmt"
	"math"
	"testing"

	"holt.example/box/outline"
)

// sevenParts are the walls, floor and roof of a box 150 x 150 x 220 of 15 mm
// boards, rebated at the corners, with a housing for the floor.
func sevenParts() []Body {
	reb := func(planes ...Plane) Cutter { return planes }
	x := func(s, d float64) Plane { return NewPlane(Vec{s, 0, 0}, d) }
	y := func(s, d float64) Plane { return NewPlane(Vec{0, s, 0}, d) }
	z := func(s, d float64) Plane { return NewPlane(Vec{0, 0, s}, d) }
	front := Body{Base: cuboid(-15, -15, 0, 165, 0, 220), Cutters: []Cutter{
		reb(y(-1, 7), x(1, 0)), reb(y(-1, 7), x(-1, -150)),
		reb(y(-1, 5), z(-1, -6), z(1, 21)),
	}}
	back := Body{Base: cuboid(-15, 150, 0, 165, 165, 220), Cutters: []Cutter{
		reb(y(1, 157), x(1, 0)), reb(y(1, 157), x(-1, -150)),
		reb(y(1, 155), z(-1, -6), z(1, 21)),
	}}
	left := Body{Base: cuboid(-15, -7, 0, 0, 157, 220), Cutters: []Cutter{reb(x(-1, 5), z(-1, -6), z(1, 21))}}
	right := Body{Base: cuboid(150, -7, 0, 165, 157, 220), Cutters: []Cutter{reb(x(1, 155), z(-1, -6), z(1, 21))}}
	floor := Body{Base: cuboid(-5, -5, 6, 155, 155, 21)}
	roofA := Body{Base: cuboid(-40, -60, 220, 190, 75, 238)}
	roofB := Body{Base: cuboid(-40, 75, 220, 190, 200, 238)}
	return []Body{front, back, left, right, floor, roofA, roofB}
}

func BenchmarkOverlapAllPairs(b *testing.B) {
	parts := sevenParts()
	b.ReportAllocs()
	for b.Loop() {
		for i := range parts {
			for j := range parts[:i] {
				if v := Overlap(parts[i], parts[j]); v != 0 {
					b.Fatal(i, j, v)
				}
			}
		}
	}
}

func BenchmarkRings(b *testing.B) {
	body := board()
	top := Frame{Vec{0, 0, 15}, Vec{1, 0, 0}, Vec{0, 1, 0}, Vec{0, 0, 1}}
	b.ReportAllocs()
	for b.Loop() {
		body.Rings(top)
	}
}

func BenchmarkPieces(b *testing.B) {
	body := board()
	b.ReportAllocs()
	for b.Loop() {
		body.Pieces()
	}
}

// holes is n round holes in a square grid, 20 mm apart.
func holes(n int, steps int) Body {
	side := 1
	for side*side < n {
		side++
	}
	l := float64(20*side + 20)
	b := Body{Base: cuboid(0, 0, 0, l, l, 15)}
	r := 6.0
	chord := 1e-9
	for outline.CircleSteps(r, chord) > steps {
		chord *= 1.05
	}
	for i := 0; i < n; i++ {
		x, y := float64(20+20*(i%side)), float64(20+20*(i/side))
		b.Prisms = append(b.Prisms, through(outline.Circle(outline.Point{X: x, Y: y}, 2*r)))
	}
	return b
}

func benchMesh(b *testing.B, body Body, chord float64) {
	b.ReportAllocs()
	n := 0
	for b.Loop() {
		m, err := body.Mesh(chord)
		if err != nil {
			b.Fatal(err)
		}
		n = len(m.Triangles)
	}
	b.ReportMetric(float64(n), "tri")
}

func BenchmarkMesh(b *testing.B) {
	b.Run("plain", func(b *testing.B) { benchMesh(b, Body{Base: cuboid(0, 0, 0, 200, 150, 15)}, 0.01) })
	b.Run("board", func(b *testing.B) { benchMesh(b, board(), 0.01) })
	front := sevenParts()[0]
	f := Frame{Vec{75, -15, 140}, Vec{1, 0, 0}, Vec{0, 0, 1}, Vec{0, -1, 0}}
	front.Prisms = []Prism{{f, outline.Circle(outline.Point{}, 32), math.Inf(-1), math.Inf(1)}}
	b.Run("front", func(b *testing.B) { benchMesh(b, front, 0.01) })
	cut := board()
	cut.Prisms = []Prism{through(outline.Circle(outline.Point{X: 100, Y: 130}, 32))}
	b.Run("crossing", func(b *testing.B) { benchMesh(b, cut, 0.01) })
	for _, n := range []int{10, 100, 1000, 10000} {
		body, chord := holes(n, 64), 0.0049
		b.Run(fmt.Sprintf("holes-%d", n), func(b *testing.B) { benchMesh(b, body, chord) })
	}
}

func BenchmarkMeshSevenParts(b *testing.B) {
	parts := sevenParts()
	f := Frame{Vec{75, -15, 140}, Vec{1, 0, 0}, Vec{0, 0, 1}, Vec{0, -1, 0}}
	parts[0].Prisms = []Prism{{f, outline.Circle(outline.Point{}, 32), math.Inf(-1), math.Inf(1)}}
	for _, x := range []float64{16, 134} {
		for _, y := range []float64{16, 134} {
			parts[4].Prisms = append(parts[4].Prisms, through(outline.Circle(outline.Point{X: x, Y: y}, 8)))
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		for _, p := range parts {
			if _, err := p.Mesh(0.01); err != nil {
				b.Fatal(err)
			}
		}
	}
}
