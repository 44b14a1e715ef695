package outline

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestHull(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for k := range 500 {
		p := make([]Point, 3+r.IntN(40))
		for i := range p {
			p[i] = Point{float64(r.IntN(10)), float64(r.IntN(10))}
			if k%2 == 0 {
				p[i] = Point{r.Float64(), r.Float64()}
			}
		}
		h := Hull(p)
		if len(h) < 3 {
			continue
		}
		if err := h.CheckOuter(); err != nil || !h.IsConvex() {
			t.Fatalf("%v: hull %v: %v", p, h, err)
		}
		for _, q := range p {
			if h.Contains(q, 1e-12) == Outside {
				t.Fatalf("%v is outside %v", q, h)
			}
		}
		// Only given points, each a true corner.
		if s := h.Simplify(1e-12); len(s) != len(h) {
			t.Fatalf("%v has straight corners", h)
		}
	}
	if h := Hull([]Point{{0, 0}, {1, 1}, {3, 3}, {2, 2}, {0, 0}}); len(h) != 2 {
		t.Errorf("points on a line: %v", h)
	}
	if h := Hull(nil); len(h) != 0 {
		t.Errorf("nothing: %v", h)
	}
}

// star is a simple polygon round the origin, some corners in line.
func star(r *rand.Rand, n int, grid bool) []Point {
	p := make([]Point, n)
	for i := range p {
		k := 3 + 7*r.Float64()
		p[i] = Turn(360 * float64(i) / float64(n)).Apply(Point{k, 0})
	}
	if grid {
		// A comb: teeth of random height on a common base, with points on it.
		p = p[:0]
		for i := range n {
			p = append(p, Point{float64(n - i), 1 + float64(r.IntN(3))}, Point{float64(n - i - 1), 1 + float64(r.IntN(3))})
		}
		p = append(p, Point{0, 0})
		for i := 1; i <= n; i++ {
			p = append(p, Point{float64(i), 0})
		}
	}
	return p
}

func TestConvexPiecesAndPockets(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for k := range 600 {
		p := star(r, 3+r.IntN(30), k%2 == 1)
		c := Polygon(p...)
		if c.Check() != nil {
			continue // the comb may touch itself
		}
		if k%3 == 0 {
			p = []Point{}
			for _, v := range c.Reverse() {
				p = append(p, v.At())
			}
		}
		pieces := ConvexPieces(p)
		sum := 0.0
		for _, q := range pieces {
			d := Polygon(q...)
			if !d.IsConvex() || d.Area() <= 0 {
				t.Fatalf("%d: %v of %v is not convex", k, q, p)
			}
			sum += d.Area()
		}
		if !near(sum, math.Abs(c.Area()), 1e-9) {
			t.Fatalf("%d: pieces %v of %v", k, sum, c.Area())
		}
		// Pieces within the polygon whose areas add up cannot overlap.
		for _, q := range pieces {
			for i := range q {
				m := Point{(q[i].X + q[(i+1)%len(q)].X) / 2, (q[i].Y + q[(i+1)%len(q)].Y) / 2}
				if c.Contains(m, 1e-9) == Outside {
					t.Fatalf("%d: %v is outside", k, m)
				}
			}
		}
		reflex := 0
		d := cleanPolygon(anticlockwise(p))
		for i := range d {
			if x, _ := turnAt(d[(i+len(d)-1)%len(d)], d[i], d[(i+1)%len(d)]); x < 0 {
				reflex++
			}
		}
		// Hertel and Mehlhorn: at most two diagonals stay at a reflex corner.
		if len(pieces) > 2*reflex+1 {
			t.Fatalf("%d: %d pieces for %d reflex corners", k, len(pieces), reflex)
		}
		hull := Hull(p)
		rest := 0.0
		for _, q := range Pockets(p) {
			d := Polygon(q...)
			if err := d.CheckOuter(); err != nil {
				t.Fatalf("%d: pocket %v: %v", k, q, err)
			}
			rest += d.Area()
		}
		if !near(rest, hull.Area()-math.Abs(c.Area()), 1e-9) {
			t.Fatalf("%d: pockets %v, hull %v, polygon %v\n%v", k, rest, hull.Area(), c.Area(), p)
		}
	}
	// An L is two pieces and one pocket, a rectangle with points on its sides
	// one piece and none.
	l := []Point{{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 3}, {0, 3}}
	if a, b := ConvexPieces(l), Pockets(l); len(a) != 2 || len(b) != 1 || Polygon(b[0]...).Area() != 3 {
		t.Errorf("L: %v, %v", a, b)
	}
	sq := []Point{{0, 0}, {1, 0}, {2, 0}, {2, 2}, {1, 2}, {0, 2}, {0, 1}}
	if a, b := ConvexPieces(sq), Pockets(sq); len(a) != 1 || len(a[0]) != 4 || len(b) != 0 {
		t.Errorf("square: %v, %v", a, b)
	}
	for _, p := range [][]Point{nil, {{0, 0}}, {{0, 0}, {1, 1}, {2, 2}}, {{0, 0}, {math.NaN(), 1}, {2, 2}}} {
		if a := ConvexPieces(p); a != nil {
			t.Errorf("%v: %v", p, a)
		}
	}
}

// Corners whose x differ in the last digit only, as after a turn: none of them
// is lost, whichever of them sorts first. The area is that of the rectangle
// around all points, and hulls of their mirror images have it too.
func TestHullOfNearlyUprightSides(t *testing.T) {
	const x0, x1 = -58.43765331175412, 50.437653312233735
	ulp := func(x float64, n int) float64 {
		for ; n > 0; n-- {
			x = math.Nextafter(x, math.Inf(1))
		}
		return x
	}
	ys := []float64{-44.8, -43.7, 100, 349.8, 353}
	want := (x1 - x0) * (353 + 44.8)
	for code := range 1024 { // by how many digits in the last place each x is off: 0 or 1
		var ps []Point
		for i, y := range ys {
			ps = append(ps, Point{X: ulp(x0, code>>i&1), Y: y}, Point{X: ulp(x1, code>>(i+5)&1), Y: y})
		}
		for _, m := range []Affine{Shift(0, 0), MirrorX(), MirrorY(), {XY: 1, YX: 1}} {
			var qs []Point
			for _, p := range ps {
				qs = append(qs, m.Apply(p))
			}
			h := Hull(qs)
			if a := h.Area(); math.Abs(a-want) > 1e-9 || len(h) != 4 {
				t.Fatalf("%d: area %v of %v, %d corners: %v", code, a, want, len(h), h)
			}
		}
	}
}
