package solid

import "testing"

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
