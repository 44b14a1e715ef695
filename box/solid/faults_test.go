package solid

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"holt.example/box/outline"
)

func TestMeshFaults(t *testing.T) {
	plate := func(p ...Prism) Body { return Body{Base: cuboid(0, 0, 0, 100, 100, 15), Prisms: p} }
	bow := outline.Polygon(outline.Point{X: 20, Y: 20}, outline.Point{X: 60, Y: 60}, outline.Point{X: 60, Y: 20}, outline.Point{X: 20, Y: 50})
	left := through(circleAt(50, 50, 20))
	left.Frame.W.Z = -1
	short := through(circleAt(50, 50, 20))
	short.Frame.U.X = 0.9
	for _, c := range []struct {
		name string
		b    Body
		want error // nil: any error
	}{
		{"no planes", Body{}, ErrUnbounded},
		{"no end", Body{Base: cuboid(0, 0, 0, 100, 100, 15)[:5]}, ErrUnbounded},
		{"empty base", Body{Base: cuboid(0, 0, 0, -1, 100, 15)}, ErrEmpty},
		{"all cut away", Body{Base: cuboid(0, 0, 0, 9, 9, 9), Cutters: []Cutter{cuboid(-1, -1, -1, 10, 10, 10)}}, ErrEmpty},
		{"cutter without planes", Body{Base: cuboid(0, 0, 0, 9, 9, 9), Cutters: []Cutter{{}}}, ErrEmpty},
		{"all bored away", plate(through(rectOutline(-1, -1, 101, 101))), ErrEmpty},
		{"bow tie", plate(through(bow)), ErrCrossing},
		{"bow tie over the edge", plate(Prism{World(), bow, math.Inf(-1), math.Inf(1)}, through(circleAt(60, 60, 20))), ErrCrossing},
		{"not a plane", Body{Base: append(cuboid(0, 0, 0, 9, 9, 9), Plane{})}, nil},
		{"NaN plane", Body{Base: append(cuboid(0, 0, 0, 9, 9, 9), Plane{Vec{math.NaN(), 0, 1}, 3})}, nil},
		{"NaN offset", Body{Base: cuboid(0, 0, 0, 9, 9, 9), Cutters: []Cutter{{Plane{Vec{0, 0, 1}, math.NaN()}}}}, nil},
		{"left-handed frame", plate(left), nil},
		{"frame out of scale", plate(short), nil},
		{"NaN outline", plate(through(circleAt(math.NaN(), 50, 20))), nil},
		{"NaN end", plate(Prism{World(), circleAt(50, 50, 20), math.NaN(), 3}), nil},
	} {
		m, err := c.b.Mesh(0.01)
		if err == nil || m != nil || c.want != nil && !errors.Is(err, c.want) {
			t.Errorf("%s: mesh %v, error %v, want %v", c.name, m != nil, err, c.want)
		}
		if _, err := c.b.Volume(0.01); err == nil && c.name != "bow tie" && c.name != "all bored away" {
			t.Errorf("%s: Volume gives no error", c.name)
		}
	}
}

func TestMeshOddOutlines(t *testing.T) {
	b := Body{Base: cuboid(0, 0, 0, 100, 100, 15)}
	square := outline.Polygon(
		outline.Point{X: 20, Y: 20}, outline.Point{X: 20, Y: 20}, outline.Point{X: 30, Y: 20}, outline.Point{X: 40, Y: 20},
		outline.Point{X: 40, Y: 40}, outline.Point{X: 20, Y: 40}, outline.Point{X: 20, Y: 20 + 1e-6})
	want := (1e4 - 400) * 15.0
	for name, p := range map[string]Prism{
		"repeated points":   through(square),
		"clockwise":         through(square.Reverse()),
		"ends in the faces": {World(), square, 0, 15},
		"a hair inside":     {World(), square, 1e-8, 15 - 1e-8},
		"ends outside":      {World(), square, -1, 99},
	} {
		b.Prisms = []Prism{p}
		m := mustMesh(t, b, 0.01)
		near(t, name, m.Volume(), want, 1e-4)
		if m.Genus() != 1 {
			t.Errorf("%s: genus %d", name, m.Genus())
		}
	}
	for name, p := range map[string]Prism{
		"a point":       through(outline.Contour{{X: 50, Y: 50}}),
		"a line":        through(outline.Contour{{X: 50, Y: 50}, {X: 60, Y: 50}}),
		"no height":     {World(), square, 5, 5},
		"above":         {World(), square, 15, 20},
		"an empty list": through(nil),
	} {
		b.Prisms = []Prism{p}
		m := mustMesh(t, b, 0.01)
		near(t, name, m.Volume(), 150000, 1e-9)
		if len(m.Triangles) != 12 {
			t.Errorf("%s: %d triangles", name, len(m.Triangles))
		}
	}
}

// TestMeshNearMisses sets prisms and cutters off each other by distances from
// 1e-9 to 0.1 mm, in all axes at once: always sound.
func TestMeshNearMisses(t *testing.T) {
	nearMisses(t, random(51), 300)
}

func nearMisses(t *testing.T, r *rand.Rand, n int) {
	for i := 0; i < n; i++ {
		e := func() float64 {
			d := math.Pow(10, -9+8*r.Float64())
			if r.IntN(2) == 0 {
				return -d
			}
			return d
		}
		b := Body{Base: cuboid(0, 0, 0, 100, 100, 15), Cutters: []Cutter{
			{NewPlane(Vec{1, 0, 0}, 20+e()), NewPlane(Vec{0, 0, -1}, -8+e())},
			{NewPlane(Vec{0, -1, 0}, -40+e()), NewPlane(Vec{0, 1, 0}, 60+e()), NewPlane(Vec{0, 0, -1}, -8+e())},
		}}
		shapes := []outline.Contour{
			rectOutline(20+e(), 20+e(), 40+e(), 40+e()), rectOutline(40+e(), 60+e(), 60+e(), 80+e()),
			circleAt(50+e(), 50+e(), 20+e()), rectOutline(60+e(), 40+e(), 80, 100+e())}
		for k := r.IntN(4); k >= 0; k-- {
			b.Prisms = append(b.Prisms, pocket(shapes[r.IntN(4)], 15+e(), []float64{7, 15, 3}[r.IntN(3)]+e()))
		}
		if i%2 == 0 {
			b = turned(b, anyFrame(r))
		}
		m, err := b.Mesh(0.05)
		if err == nil {
			err = m.Check()
		}
		if err != nil {
			t.Errorf("%d: %v", i, err)
			continue
		}
		// Welds move faces of under 2e4 mm2 by up to a few 1e-4.
		near(t, "volume", m.Volume(), byPieces(b, 0.05), 10)
	}
}

func FuzzMesh(f *testing.F) {
	for i := uint64(0); i < 8; i++ {
		f.Add(i, i*7)
	}
	f.Fuzz(func(t *testing.T, s1, s2 uint64) {
		r := rand.New(rand.NewPCG(s1, s2))
		b := randomPrisms(r, int(s1&1))
		want := byPieces(b, 0.05)
		m, err := b.Mesh(0.05)
		if err != nil {
			if want < 1e-3 && errors.Is(err, ErrEmpty) {
				return
			}
			t.Fatal(err)
		}
		if err := m.Check(); err != nil {
			t.Fatal(err)
		}
		near(t, "volume", m.Volume(), want, 1e-7*b.Convex().Volume())
	})
}

func FuzzTriangulate(f *testing.F) {
	f.Add([]byte("\x00\x00\x10\x00\x10\x10\x00\x10\xff\x04\x04\x08\x04\x06\x08"))
	f.Fuzz(func(t *testing.T, data []byte) {
		rings := [][]outline.Point{nil}
		for i := 0; i+1 < len(data) && i < 200; {
			if data[i] == 255 {
				rings = append(rings, nil)
				i++
				continue
			}
			k := len(rings) - 1
			rings[k] = append(rings[k], outline.Point{X: float64(data[i]), Y: float64(data[i+1])})
			i += 2
		}
		tri, err := Triangulate(rings, 0)
		if err != nil {
			if !errors.Is(err, ErrCrossing) {
				t.Fatal(err)
			}
			return
		}
		checkFlat(t, "fuzz", rings, tri)
	})
}
