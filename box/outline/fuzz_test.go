package outline

import (
	"encoding/binary"
	"math"
	"testing"
)

// fuzzContour reads up to 24 vertices, as wild as the bytes.
func fuzzContour(data []byte) Contour {
	var c Contour
	for len(data) >= 24 && len(c) < 24 {
		f := func(i int) float64 { return math.Float64frombits(binary.LittleEndian.Uint64(data[8*i:])) }
		c = append(c, Vertex{f(0), f(1), f(2)})
		data = data[24:]
	}
	return c
}

// tameContour reads small vertices on a half-millimetre grid, bulges in eighths.
func tameContour(data []byte) Contour {
	var c Contour
	for len(data) >= 3 && len(c) < 24 {
		c = append(c, Vertex{float64(int8(data[0])) / 2, float64(int8(data[1])) / 2, float64(int8(data[2])%9) / 8})
		data = data[3:]
	}
	return c
}

func bytesOf(c Contour) []byte {
	var b []byte
	for _, v := range c {
		for _, x := range [3]float64{v.X, v.Y, v.Bulge} {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		}
	}
	return b
}

// Nothing may panic or hang, whatever the numbers; what is given back must be
// finite and keep the laws of areas.
func FuzzContours(f *testing.F) {
	nan, inf := math.NaN(), math.Inf(1)
	f.Add(bytesOf(Slot(Point{}, 30, 10)), bytesOf(Circle(Point{3, 4}, 5)))
	f.Add(bytesOf(Contour{{nan, 0, 1}, {1, inf, -inf}, {1e308, -1e308, 1e308}}), bytesOf(Contour{{1e308, 1e308, 1}, {-1e308, 0, nan}}))
	f.Add(bytesOf(Contour{{0, 0, 5e-324}, {1e-300, 0, 1e300}, {1e4, 1e-9, 1}}), []byte("0123456789012345678901234567890123456789"))
	f.Add([]byte{0, 0, 0, 9, 0, 0, 9, 9, 0, 0, 9, 0}, []byte{0, 0, 8, 9, 0, 8})
	f.Fuzz(func(t *testing.T, x, y []byte) {
		for _, read := range []func([]byte) Contour{fuzzContour, tameContour} {
			a, b := read(x), read(y)
			errA, errB := a.Check(), b.Check()
			_ = Region{a, b}.Check()
			p := a.Flatten(0.5)
			if errA == nil && !near(Polygon(p...).Area(), a.Area(), 1e-9*(1+math.Abs(a.Area())+a.Length())) {
				t.Errorf("area %v, flattened %v: %v", a.Area(), Polygon(p...).Area(), a)
			}
			_, _ = a.Extents(), a.Centroid()
			_ = a.Intersections(b)
			_ = a.DistanceTo(b)
			_ = a.Contains(Point{1, 2}, 0.1)
			_ = a.Simplify(0.1)
			_ = a.Clip(HalfPlane{1, 2, 3})
			_ = a.IsConvex()
			if len(p) < 2000 {
				_, _, _ = ConvexPieces(p), Pockets(p), Hull(p)
			}
			ra, rb := Region{a}, Region{b}
			if a.Area() < 0 {
				ra = ra.Reverse()
			}
			if b.Area() < 0 {
				rb = rb.Reverse()
			}
			u, err1 := Union(ra, rb)
			i, err2 := Intersect(ra, rb)
			d, err3 := Subtract(ra, rb)
			if err1 != nil || err2 != nil || err3 != nil {
				if errA == nil && errB == nil && !wild(a) && !wild(b) {
					t.Errorf("%v and %v: %v %v %v", a, b, err1, err2, err3)
				}
				continue
			}
			slack := 1e-5 * (1 + a.Length() + b.Length()) // the widest weld
			if k := u.Area() + i.Area() - ra.Area() - rb.Area(); !(math.Abs(k) <= slack) {
				t.Errorf("union and intersection of %v and %v lack %v", a, b, k)
			}
			if k := d.Area() + i.Area() - ra.Area(); !(math.Abs(k) <= slack) {
				t.Errorf("difference and intersection of %v and %v lack %v", a, b, k)
			}
		}
	})
}

// wild contours may honestly be too close to tell apart.
func wild(c Contour) bool {
	for i, v := range c {
		if v.X != math.Round(2*v.X)/2 || v.Y != math.Round(2*v.Y)/2 || v.Bulge != math.Round(8*v.Bulge)/8 || c.side(i).length() < 1e-3 {
			return true
		}
	}
	return false
}
