package outline

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawShape draws a contour on a coarse grid, where coincidences are common.
func drawShape(t *rapid.T, name string) Contour {
	n := rapid.IntRange(1, 8)
	w, h := 2*float64(n.Draw(t, name+" half width")), 2*float64(n.Draw(t, name+" half height"))
	var c Contour
	switch rapid.IntRange(0, 5).Draw(t, name+" kind") {
	case 0:
		c = Rectangle(-w/2, -h/2, w/2, h/2)
	case 1:
		c = Circle(Point{}, w)
	case 2:
		c = Slot(Point{}, w, h)
	case 3:
		c = RoundedRectangle(-w/2, -h/2, w/2, h/2, float64(n.Draw(t, name+" radius")))
	case 4:
		c = Oval(Point{}, w, h)
	case 5:
		c = RegularPolygon(Point{}, 2+n.Draw(t, name+" corners"), w/2, 0)
	}
	at := rapid.IntRange(-8, 8)
	turn := rapid.SampledFrom([]float64{0, 0, 90, 180, 30, 45, 7}).Draw(t, name+" turn")
	return c.Transform(Turn(turn).Then(Shift(float64(at.Draw(t, name+" x")), float64(at.Draw(t, name+" y")))))
}

// The algebra of sets, by areas; a and b swapped; all turned and mirrored.
func TestLawsOfSets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := Region{drawShape(t, "a")}, Region{drawShape(t, "b")}, Region{drawShape(t, "c")}
		do := func(op func(a, b Region) (Region, error), a, b Region) Region {
			r, err := op(a, b)
			if err != nil {
				t.Fatalf("%v\n%v\n%v", err, a, b)
			}
			if err := r.Check(); err != nil {
				t.Fatalf("%v\n%v\n%v\n%v", err, r, a, b)
			}
			return r
		}
		same := func(what string, x, y Region) {
			if !near(x.Area(), y.Area(), 1e-5) {
				t.Fatalf("%s: %v and %v\na %v\nb %v\nc %v\n%v\n%v", what, x.Area(), y.Area(), a, b, c, x, y)
			}
			// Equal areas of different places would be seen in the centroid.
			if x.Area() > 1e-2 && gap(x.Centroid(), y.Centroid()) > 1e-3/math.Min(1, x.Area()) {
				t.Fatalf("%s: centroids %v and %v", what, x.Centroid(), y.Centroid())
			}
		}
		ab, bc := do(Union, a, b), do(Union, b, c)
		same("a+b = b+a", ab, do(Union, b, a))
		same("(a+b)+c = a+(b+c)", do(Union, ab, c), do(Union, a, bc))
		same("ab = a-(a-b)", do(Intersect, a, b), do(Subtract, a, do(Subtract, a, b)))
		same("a-(b+c) = (a-b)-c", do(Subtract, a, bc), do(Subtract, do(Subtract, a, b), c))
		same("a(b+c) = ab+ac", do(Intersect, a, bc), do(Union, do(Intersect, a, b), do(Intersect, a, c)))
		same("(a-b)+ab = a", do(Union, do(Subtract, a, b), do(Intersect, a, b)), a)
		for _, m := range []Affine{Turn(90), MirrorX(), Turn(33).Then(Shift(5, 7))} {
			same("turned", ab.Transform(m), do(Union, a.Transform(m), b.Transform(m)))
		}
	})
}

// Sides cut anywhere are joined again by Simplify; nothing else changes.
func TestSimplifyUndoesCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawShape(t, "c")
		n := len(c.Simplify(1e-6))
		var d Contour
		for i := range c {
			s := c.side(i)
			m := s.mid()
			d = append(d, c[i])
			if rapid.Bool().Draw(t, "cut") {
				h := halfBulge(s.bulge)
				d[len(d)-1].Bulge = h
				d = append(d, Vertex{m.X, m.Y, h})
			}
		}
		k := rapid.IntRange(0, len(d)-1).Draw(t, "start")
		d = append(append(Contour{}, d[k:]...), d[:k]...)
		e := d.Simplify(1e-6)
		// A chain of arcs can be joined to halves from another start, which
		// may leave one vertex more.
		if len(e) > n+1 || !near(e.Area(), c.Area(), 1e-9) || !near(e.Length(), c.Length(), 1e-9) {
			t.Fatalf("%v from %v", e, d)
		}
		for _, v := range e {
			if d := c.Distance(v.At()); d > 1e-9 {
				t.Fatalf("%v is off by %v", v, d)
			}
		}
	})
}

// Distances do not depend on the order or the frame, and a step towards the
// other boundary by the distance never crosses it.
func TestLawsOfDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawShape(t, "a"), drawShape(t, "b")
		d := a.DistanceTo(b)
		m := Turn(rapid.Float64Range(0, 360).Draw(t, "turn")).Then(Shift(3, 4))
		if x, y := b.DistanceTo(a), a.Transform(m).DistanceTo(b.Transform(m)); !near(x, d, 1e-12) || !near(y, d, 1e-7) {
			t.Fatalf("%v, back %v, turned %v", d, x, y)
		}
		if p := a.Intersections(b); len(p) > 0 != (d <= SideTest) {
			t.Fatalf("%d intersections, distance %v", len(p), d)
		}
		deg := rapid.Float64Range(0, 360).Draw(t, "way")
		if d > 1e-6 {
			p := Turn(deg).Apply(Point{d * (1 - 1e-9), 0})
			if e := a.Transform(Shift(p.X, p.Y)).DistanceTo(b); !(e > 0) {
				t.Fatalf("%v apart, but %v meets", d, p)
			}
		}
	})
}
