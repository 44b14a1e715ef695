package solid

import (
	"math"
	"reflect"
	"sync"
	"testing"

	"holt.example/box/outline"
)

// answers asks a body, and a pair of it and another, everything.
func answers(b, c Body) []any {
	f := World()
	v, verr := b.Volume(0.05)
	m, merr := b.Mesh(0.05)
	return []any{b.Convex(), b.Pieces(), v, verr, m, merr, b.Rings(f), b.Shadow(f),
		Overlap(b, c), Overlap(c, b), Common(b, c), Contact(b, c, 0.1), Contact(c, b, 0.1),
		Subtract([]Convex{c.Convex()}, b)}
}

// TestReady: what is kept changes no answer, not by a bit, for sound bodies and
// for faulty ones, and may be asked by several goroutines at once.
func TestReady(t *testing.T) {
	r := random(81)
	bodies := []Body{{}, {Base: cuboid(0, 0, 0, 9, 9, -9)}, {Base: cuboid(0, 0, 0, 9, 9, 9)[:5]},
		{Base: cuboid(0, 0, 0, 9, 9, 9), Cutters: []Cutter{{}}},
		{Base: cuboid(0, 0, 0, 9, 9, 9), Cutters: []Cutter{{Plane{Vec{0, 0, 1}, math.Inf(1)}}}},
		{Base: cuboid(0, 0, 0, 9, 9, 9), Prisms: []Prism{{}}}, board()}
	for i := 0; i < 60; i++ {
		bodies = append(bodies, randomPrisms(r, i))
	}
	for i, b := range bodies {
		c := bodies[(i+1)%len(bodies)]
		want := answers(b, c)
		rb, rc := b.Ready(), c.Ready()
		var wg sync.WaitGroup
		for range 2 {
			wg.Go(func() {
				for k, got := range answers(rb, rc) {
					if !reflect.DeepEqual(got, want[k]) {
						t.Errorf("body %d, answer %d: %v, want %v", i, k, got, want[k])
					}
				}
			})
		}
		wg.Wait()
	}
}

// TestReadyChanged: what is done to a copy of a ready body counts.
func TestReadyChanged(t *testing.T) {
	b := Body{Base: cuboid(0, 0, 0, 100, 100, 10)}.Ready()
	volume := func(what string, b Body, want float64) {
		t.Helper()
		v, err := b.Volume(0.01)
		if err != nil {
			t.Fatal(err)
		}
		near(t, what, v, want, 1e-6)
		near(t, what+", mesh", mustMesh(t, b, 0.01).Volume(), want, 1e-6)
	}
	c := b
	c.Prisms = []Prism{through(outline.Circle(outline.Point{X: 50, Y: 50}, 20))}
	volume("prism", c, (1e4-100*math.Pi)*10)
	c = b
	c.Cutters = []Cutter{{NewPlane(Vec{1, 0, 0}, 50)}} // keeps x > 50
	volume("cutter", c, 5e4)
	c.Base = cuboid(0, 0, 0, 100, 100, 20)
	volume("base", c, 1e5)
	if c = c.Ready(); c.kept() == nil || c.Ready().ready != c.ready {
		t.Error("nothing kept, or made twice")
	}
	volume("anew", c, 1e5)
	volume("as it was", b, 1e5)
}

func BenchmarkReady(b *testing.B) {
	parts := sevenParts()
	b.ReportAllocs()
	for b.Loop() {
		for _, p := range parts {
			p.Ready()
		}
	}
}
