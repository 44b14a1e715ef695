package solid

import "testing"

// TestIslands compares the number of pieces with that of the mesh, whose
// surfaces are as many where nothing is hollow: combs never are.
func TestIslands(t *testing.T) {
	r := random(111)
	seen := map[int]int{}
	for i := range 1500 {
		b := comb(r, func() float64 { return 0 })
		if i%2 == 1 {
			b = turned(b, anyFrame(r))
		}
		if VolumeOf(b.Pieces()) < 1 {
			continue
		}
		got, want := b.Ready().Islands(), mustMesh(t, b, 0.01).Components()
		if got != want {
			t.Errorf("comb %d: %d pieces, the mesh has %d", i, got, want)
		}
		seen[got]++
	}
	if seen[1] < 100 || seen[2] < 10 {
		t.Errorf("pieces: %v", seen)
	}
	for want, b := range []Body{
		{Base: cuboid(0, 0, 0, 9, 9, -9)},
		{Base: cuboid(0, 0, 0, 9, 9, 9)},
		{Base: cuboid(0, 0, 0, 9, 9, 9), Cutters: []Cutter{cuboid(4, -1, -1, 5, 10, 10)}},
	} {
		if got := b.Islands(); got != want {
			t.Errorf("%d pieces, want %d", got, want)
		}
	}
}

func BenchmarkIslands(b *testing.B) {
	parts := sevenParts()
	for i := range parts {
		parts[i] = parts[i].Ready()
	}
	b.ReportAllocs()
	for b.Loop() {
		for _, p := range parts {
			if p.Islands() != 1 {
				b.Fatal("in pieces")
			}
		}
	}
}
