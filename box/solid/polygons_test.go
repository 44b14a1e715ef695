package solid

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"holt.example/box/outline"
)

type polygonCase struct {
	name  string
	want  int
	tol   float64
	rings [][]outline.Point
}

// corpus reads the polygons, which lie beside the repository.
func corpus(t *testing.T) []polygonCase {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "..", "shared", "corpus", "polygons.csv"))
	if err != nil {
		t.Skip("the corpus of polygons is not beside the repository: ", err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []polygonCase
	num := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	for _, r := range rows[1:] {
		if len(out) == 0 || out[len(out)-1].name != r[0] {
			out = append(out, polygonCase{name: r[0], want: int(num(r[1])), tol: num(r[2])})
		}
		c := &out[len(out)-1]
		if ring := int(num(r[3])); ring == len(c.rings) {
			c.rings = append(c.rings, nil)
		}
		k := len(c.rings) - 1
		c.rings[k] = append(c.rings[k], outline.Point{X: num(r[5]), Y: num(r[6])})
	}
	return out
}

// TestCorpus: every polygon is triangulated to its area, or refused for a reason
// given here.
func TestCorpus(t *testing.T) {
	refused := map[string]error{
		"Looping1": ErrNumber, // a corner at 1e38
		"Looping2": ErrNumber,
		// The side from its last corner to its first crosses the one from
		// (27.928, 4.97499995), by 5e-8.
		"Sliver8": ErrCrossing,
	}
	for _, c := range corpus(t) {
		tri, err := Triangulate(c.rings, c.tol)
		if want := refused[c.name]; want != nil {
			if !errors.Is(err, want) {
				t.Errorf("%s: %v, want %v", c.name, err, want)
			}
			if want != ErrCrossing {
				continue
			}
			c.tol = 1e-7
			tri, err = Triangulate(c.rings, c.tol)
		}
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		want, length, size := 0.0, 0.0, 0.0
		for _, r := range c.rings {
			want += area2(r) / 2
			for i, p := range r {
				q := r[(i+1)%len(r)]
				length += math.Hypot(q.X-p.X, q.Y-p.Y)
				size = max(size, math.Hypot(q.X-r[0].X, q.Y-r[0].Y))
			}
		}
		// Moving every corner by the tolerance changes the area by this much.
		tol := max(c.tol, 1e-9*size)*length + 1e-13*size*size
		near(t, c.name, triArea(c.rings, tri), want, tol)
		checkFlat(t, c.name, c.rings, tri)
	}
}

// checkFlat: every triangle turns left, and no edge is used twice the same way.
func checkFlat(t *testing.T, name string, rings [][]outline.Point, tri [][3]int) {
	t.Helper()
	p := flatPoints(rings)
	seen := map[[2]int]bool{}
	for _, k := range tri {
		if area2([]outline.Point{p[k[0]], p[k[1]], p[k[2]]}) < 0 {
			t.Errorf("%s: %v turns right", name, k)
		}
		for i := range k {
			e := [2]int{k[i], k[(i+1)%3]}
			if seen[e] {
				t.Errorf("%s: edge %v twice", name, e)
			}
			seen[e] = true
		}
	}
}

func flatPoints(rings [][]outline.Point) []outline.Point {
	var p []outline.Point
	for _, r := range rings {
		p = append(p, r...)
	}
	return p
}

func triArea(rings [][]outline.Point, tri [][3]int) float64 {
	p := flatPoints(rings)
	a := 0.0
	for _, t := range tri {
		a += area2([]outline.Point{p[t[0]], p[t[1]], p[t[2]]})
	}
	return a / 2
}

// ngon is a ring of n points, turned by a.
func ngon(n int, x, y, r, a float64) []outline.Point {
	p := make([]outline.Point, n)
	for i := range p {
		s, c := math.Sincos(a + 2*math.Pi*float64(i)/float64(n))
		p[i] = outline.Point{X: x + r*c, Y: y + r*s}
	}
	return p
}

func square(x, y, w float64) []outline.Point {
	return []outline.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + w}, {X: x, Y: y + w}}
}

func TestTriangulate(t *testing.T) {
	chequer := [][]outline.Point{}
	for i := 0; i < 10; i++ {
		for j := 0; j < 10; j++ {
			if (i+j)%2 == 0 {
				chequer = append(chequer, square(float64(i), float64(j), 1))
			}
		}
	}
	var ringOf3 [][]outline.Point
	ringOf3 = append(ringOf3, square(-30, -30, 60))
	for i := 0; i < 3; i++ {
		// Hexagons whose corners touch: centres on a triangle of side 20.
		s, c := math.Sincos(math.Pi/2 + 2*math.Pi*float64(i)/3)
		ringOf3 = append(ringOf3, ngon(6, 20/math.Sqrt(3)*c, 20/math.Sqrt(3)*s, 10, 0))
	}
	hex := 6 * 100 * math.Sqrt(3) / 4
	var nested [][]outline.Point
	for i := 0; i < 5; i++ {
		nested = append(nested, square(float64(i), float64(i), float64(20-2*i)))
	}
	// Triangles by Euler: T = E + 2(V - E) - 2X with E sides and V corners, X the
	// pieces less the holes.
	for _, c := range []struct {
		name  string
		rings [][]outline.Point
		tri   int
		area  float64
	}{
		{"square", [][]outline.Point{square(0, 0, 10)}, 2, 100},
		{"square with a hole", [][]outline.Point{square(0, 0, 10), square(2, 2, 3)}, 8, 91},
		{"two holes touching at a corner", [][]outline.Point{square(0, 0, 10), square(2, 2, 3), square(5, 5, 3)}, 12 - 2 + 2, 82},
		{"hole touching the outline", [][]outline.Point{square(0, 0, 10), {{X: 0, Y: 5}, {X: 4, Y: 3}, {X: 4, Y: 7}}}, 8 - 2, 92},
		{"hole sharing a side", [][]outline.Point{square(0, 0, 10), square(0, 4, 2)}, 6, 96},
		{"chequer of 50 squares", chequer, 100, 50},
		{"ring of three hexagons", ringOf3, 22 - 6 + 4, 3600 - 3*hex},
		// Squares of 20, 18, 16, 14, 12: 400-324+256-196+144; rings 8 and 8, 2.
		{"five nested rings", nested, 18, 280},
		{"two squares as one", [][]outline.Point{square(0, 0, 10), square(10, 0, 10)}, 4, 200},
		{"the same ring twice", [][]outline.Point{square(0, 0, 10), square(0, 0, 10)}, 0, 0},
		{"nothing", nil, 0, 0},
		{"a line", [][]outline.Point{{{X: 0, Y: 0}, {X: 5, Y: 5}, {X: 9, Y: 9}}}, 0, 0},
	} {
		for turn := 0; turn < 12; turn++ {
			s, co := math.Sincos(0.3 * float64(turn))
			rings := make([][]outline.Point, len(c.rings))
			for i, r := range c.rings {
				for _, p := range r {
					rings[i] = append(rings[i], outline.Point{X: p.X*co - p.Y*s, Y: p.X*s + p.Y*co})
				}
			}
			tri, err := Triangulate(rings, 0)
			if err != nil {
				t.Errorf("%s, turned %d: %v", c.name, turn, err)
				continue
			}
			if len(tri) != c.tri {
				t.Errorf("%s, turned %d: %d triangles, want %d", c.name, turn, len(tri), c.tri)
			}
			near(t, c.name, triArea(rings, tri), c.area, 1e-9*max(c.area, 1))
			checkFlat(t, c.name, rings, tri)
		}
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), -1e10} {
		if _, err := Triangulate([][]outline.Point{{{X: 0, Y: 0}, {X: 1, Y: bad}, {X: 1, Y: 1}}}, 0); !errors.Is(err, ErrNumber) {
			t.Errorf("%g: %v", bad, err)
		}
	}
}

func TestTriangulateCrossing(t *testing.T) {
	// Two rings that cross properly: always an error, never silent.
	r := random(31)
	for i := 0; i < 2000; i++ {
		n := 3 + r.IntN(20)
		a := ngon(n, 0, 0, 10, r.Float64())
		// Centre 8 to 12 away: the two reach across each other, neither holds the
		// other's middle alone.
		s, c := math.Sincos(2 * math.Pi * r.Float64())
		d := 8 + 4*r.Float64()
		b := ngon(3+r.IntN(20), d*c, d*s, 10, r.Float64())
		if tri, err := Triangulate([][]outline.Point{square(-40, -40, 80), a, b}, 0); !errors.Is(err, ErrCrossing) {
			t.Fatalf("%d: %d triangles, %v", i, len(tri), err)
		}
	}
}

func TestTriangulateStars(t *testing.T) {
	// Plates with random star-shaped holes, half on whole numbers: points of
	// equal height, points in line.
	r := random(32)
	for i := 0; i < 1000; i++ {
		rings := [][]outline.Point{square(-5, -5, 100)}
		want := 1e4
		for x := 0; x < 90; x += 30 {
			for y := 0; y < 90; y += 30 {
				var p []outline.Point
				for k, n := 0, 3+r.IntN(15); k < n; k++ {
					s, c := math.Sincos(2 * math.Pi * (float64(k) + 0.6*r.Float64()) / float64(n))
					d := 3 + 11*r.Float64()
					q := outline.Point{X: float64(x+15) + d*c, Y: float64(y+15) + d*s}
					if i%2 == 0 {
						q = outline.Point{X: math.Round(q.X), Y: math.Round(q.Y)}
					}
					p = append(p, q)
				}
				want -= area2(p) / 2
				rings = append(rings, p)
			}
		}
		tri, err := Triangulate(rings, 0)
		if err != nil {
			if i%2 == 0 {
				continue // rounding can make a star cross itself
			}
			t.Fatalf("%d: %v", i, err)
		}
		if i%2 == 1 {
			near(t, "area", triArea(rings, tri), want, 1e-8)
		}
		checkFlat(t, "stars", rings, tri)
	}
}

func TestTriangulateDelaunay(t *testing.T) {
	// No diagonal has more than half a turn opposite to it, unless its
	// quadrilateral is not convex.
	rings := [][]outline.Point{square(0, 0, 100), ngon(64, 30, 30, 20, 0), ngon(31, 70, 60, 22, 0.1)}
	tri, err := Triangulate(rings, 0)
	if err != nil {
		t.Fatal(err)
	}
	p := flatPoints(rings)
	opposite := map[[2]int]int{}
	for _, k := range tri {
		for i := range k {
			opposite[[2]int{k[i], k[(i+1)%3]}] = k[(i+2)%3]
		}
	}
	diagonals := 0
	for e, c := range opposite {
		d, ok := opposite[[2]int{e[1], e[0]}]
		if !ok {
			continue
		}
		diagonals++
		a, b := p[e[0]], p[e[1]]
		left := func(x, y, z outline.Point) float64 { return area2([]outline.Point{x, y, z}) }
		if left(p[c], a, p[d]) < 1e-9 || left(p[d], b, p[c]) < 1e-9 {
			continue
		}
		angle := func(q outline.Point) float64 {
			return math.Abs(math.Remainder(math.Atan2(a.Y-q.Y, a.X-q.X)-math.Atan2(b.Y-q.Y, b.X-q.X), 2*math.Pi))
		}
		if s := angle(p[c]) + angle(p[d]); s > math.Pi+1e-6 {
			t.Errorf("diagonal %v: opposite angles add up to %g", e, s)
		}
	}
	if diagonals < 64 {
		t.Errorf("only %d diagonals seen", diagonals)
	}
}
