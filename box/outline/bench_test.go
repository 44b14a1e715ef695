package outline

import (
	"fmt"
	"math"
	"testing"
)

// wheel is a contour of n vertices, every second side an arc.
func wheel(n int) Contour {
	c := RegularPolygon(Point{}, n, 100, 0)
	for i := range c {
		if i%2 == 0 {
			c[i].Bulge = -0.1
		}
	}
	return c
}

// combs is a contour of n vertices that defeats the sweep along one axis: long
// teeth side by side.
func comb(n int) Contour {
	var c Contour
	for i := range n / 4 {
		y := float64(i)
		c = append(c, Vertex{100, y, 0}, Vertex{100, y + 0.5, 0}, Vertex{1, y + 0.5, 0}, Vertex{1, y + 1, 0})
	}
	return append(c, Vertex{0, float64(n / 4), 0}, Vertex{0, 0, 0})
}

func sizes(b *testing.B, f func(b *testing.B, n int)) {
	for _, n := range []int{10, 100, 1000, 10000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			f(b, n)
		})
	}
}

func BenchmarkArea(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		c := wheel(n)
		for b.Loop() {
			c.Area()
		}
	})
}

func BenchmarkContains(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		c := wheel(n)
		for b.Loop() {
			c.Contains(Point{3, 4}, 1e-7)
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		c := wheel(n)
		for b.Loop() {
			if err := c.Check(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkCheckComb(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		c := comb(n)
		for b.Loop() {
			if err := c.Check(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkFlatten(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		c := wheel(n)
		for b.Loop() {
			c.Flatten(0.01)
		}
	})
}

func BenchmarkSubtract(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		c, d := Region{wheel(n)}, Region{wheel(n).Transform(Shift(50, 7))}
		for b.Loop() {
			if _, err := Subtract(c, d); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// The everyday case: a board less a hole.
func BenchmarkSubtractHole(b *testing.B) {
	b.ReportAllocs()
	c, d := Region{Rectangle(0, 0, 200, 150)}, Region{Circle(Point{50, 50}, 32)}
	for b.Loop() {
		if _, err := Subtract(c, d); err != nil {
			b.Fatal(err)
		}
	}
}

// A board less n holes at once: every hole is a chain of its own.
func BenchmarkSubtractHoles(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		var holes Region
		side := math.Ceil(math.Sqrt(float64(n)))
		for i := range n {
			holes = append(holes, Circle(Point{10 * math.Mod(float64(i), side), 10 * math.Floor(float64(i)/side)}, 6))
		}
		c := Region{Rectangle(-10, -10, 10*side, 10*side)}
		for b.Loop() {
			if _, err := Subtract(c, holes); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkDistanceTo(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		c, d := wheel(n), wheel(n).Transform(Shift(250, 7))
		for b.Loop() {
			c.DistanceTo(d)
		}
	})
}

func BenchmarkConvexPieces(b *testing.B) {
	sizes(b, func(b *testing.B, n int) {
		var p []Point
		for _, v := range comb(n) {
			p = append(p, v.At())
		}
		for b.Loop() {
			ConvexPieces(p)
		}
	})
}
