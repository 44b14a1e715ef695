package outline

import (
	"math"
	"math/rand/v2"
	"testing"
)

// ops are the three operations with their meaning for points.
var ops = []struct {
	name string
	do   func(a, b Region) (Region, error)
	in   func(a, b bool) bool
}{
	{"union", Union, func(a, b bool) bool { return a || b }},
	{"intersect", Intersect, func(a, b bool) bool { return a && b }},
	{"subtract", Subtract, func(a, b bool) bool { return a && !b }},
}

// checkPoints compares membership in the result with membership in the
// operands at random places, skipping those near a boundary.
func checkPoints(t *testing.T, r *rand.Rand, name string, a, b, got Region, in func(a, b bool) bool, n int) {
	t.Helper()
	box := a.Extents().Join(b.Extents())
	for range n {
		p := Point{box.Min.X - 1 + r.Float64()*(box.Width()+2), box.Min.Y - 1 + r.Float64()*(box.Height()+2)}
		x, y, z := a.Contains(p, 1e-5), b.Contains(p, 1e-5), got.Contains(p, 1e-5)
		if x == On || y == On || z == On {
			continue
		}
		if in(x == Inside, y == Inside) != (z == Inside) {
			t.Fatalf("%s: %v is %v in a, %v in b, %v in the result\na = %v\nb = %v\ngot %v", name, p, x, y, z, a, b, got)
		}
	}
}

// gridRegion is up to four rectangles on whole millimetres, made one by union
// or difference, so that edges coincide often.
func gridRegion(t *testing.T, r *rand.Rand) Region {
	t.Helper()
	out := Region{gridRect(r)}
	for range r.IntN(4) {
		op := ops[r.IntN(2)*2]
		got, err := op.do(out, Region{gridRect(r)})
		if err != nil {
			t.Fatalf("%s of %v: %v", op.name, out, err)
		}
		out = got
	}
	return out
}

func gridRect(r *rand.Rand) Contour {
	x, y := float64(r.IntN(8)), float64(r.IntN(8))
	return Rectangle(x, y, x+1+float64(r.IntN(5)), y+1+float64(r.IntN(5)))
}

// cells counts the unit cells of 0..14 whose centres are in.
func cells(in func(p Point) bool) float64 {
	n := 0.0
	for x := 0.5; x < 14; x++ {
		for y := 0.5; y < 14; y++ {
			if in(Point{x, y}) {
				n++
			}
		}
	}
	return n
}

// On whole millimetres the area is a count of cells: an oracle that knows
// nothing of boundaries. Turning the operands must not change the area.
func TestBooleanCountsCells(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for k := range 1500 {
		a, b := gridRegion(t, r), gridRegion(t, r)
		turn := Turn(r.Float64() * 360).Then(Shift(r.Float64()*100, r.Float64()*100))
		for _, op := range ops {
			want := cells(func(p Point) bool {
				return op.in(a.Contains(p, 0) == Inside, b.Contains(p, 0) == Inside)
			})
			got, err := op.do(a, b)
			if err != nil {
				t.Fatalf("%d %s: %v\n%v\n%v", k, op.name, err, a, b)
			}
			if math.Abs(got.Area()-want) > 1e-9 {
				t.Fatalf("%d %s: area %v, %v cells\n%v\n%v", k, op.name, got.Area(), want, a, b)
			}
			if err := got.Check(); err != nil {
				t.Fatalf("%d %s: %v\n%v\n%v\n%v", k, op.name, err, a, b, got)
			}
			turned, err := op.do(a.Transform(turn), b.Transform(turn))
			if err != nil {
				t.Fatalf("%d %s turned: %v\n%v\n%v", k, op.name, err, a, b)
			}
			if math.Abs(turned.Area()-want) > 1e-8 {
				t.Fatalf("%d %s turned: area %v, %v cells\n%v\n%v", k, op.name, turned.Area(), want, a, b)
			}
			if err := turned.Check(); err != nil {
				t.Fatalf("%d %s turned: %v", k, op.name, err)
			}
			if len(turned) != len(got) {
				t.Fatalf("%d %s: %d contours, turned %d", k, op.name, len(got), len(turned))
			}
		}
	}
}

// roundShape is a turned rectangle, a circle, a slot, a rounded rectangle or an
// oval somewhere in 0..20, at times on whole millimetres so that arcs touch and
// run along each other.
func roundShape(r *rand.Rand) Contour {
	x, y, w, h := r.Float64()*14, r.Float64()*14, 1+r.Float64()*9, 1+r.Float64()*9
	grid := r.IntN(2) == 0
	if grid {
		x, y, w, h = math.Round(x), math.Round(y), 2*math.Round(w/2)+2, 2*math.Round(h/2)+2
	}
	var c Contour
	switch r.IntN(5) {
	case 0:
		c = Rectangle(-w/2, -h/2, w/2, h/2)
	case 1:
		c = Circle(Point{}, w)
	case 2:
		c = Slot(Point{}, w, h)
	case 3:
		c = RoundedRectangle(-w/2, -h/2, w/2, h/2, 1)
	case 4:
		c = Oval(Point{}, w, h)
	}
	m := Turn(float64(r.IntN(4)) * 90)
	if !grid {
		m = Turn(r.Float64() * 360)
	}
	return c.Transform(m.Then(Shift(x, y)))
}

func roundRegion(t *testing.T, r *rand.Rand) Region {
	t.Helper()
	out := Region{roundShape(r)}
	for range r.IntN(4) {
		op := ops[r.IntN(2)*2]
		got, err := op.do(out, Region{roundShape(r)})
		if err != nil {
			t.Fatalf("%s of %v: %v", op.name, out, err)
		}
		out = got
	}
	return out
}

// Arcs: membership at random points, the two laws of areas, and the same
// operation on area-true polygons with corners within 0.001 mm. Those are off
// by less than 0.001 mm times the length of the boundaries.
func TestBooleanOfArcs(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for k := range 2000 {
		a, b := roundRegion(t, r), roundRegion(t, r)
		var area [3]float64
		for i, op := range ops {
			got, err := op.do(a, b)
			if err != nil {
				t.Fatalf("%d %s: %v\n%v\n%v", k, op.name, err, a, b)
			}
			area[i] = got.Area()
			checkPoints(t, r, op.name, a, b, got, op.in, 60)
			if err := got.Check(); err != nil {
				t.Fatalf("%d %s: %v\na = %v\nb = %v\ngot %v", k, op.name, err, a, b, got)
			}
			if k%20 == 0 {
				f, err := op.do(a.Flatten(1e-3), b.Flatten(1e-3))
				if err != nil {
					t.Fatalf("%d %s flattened: %v", k, op.name, err)
				}
				if d := math.Abs(f.Area() - got.Area()); d > 1e-3*(a.Length()+b.Length()) {
					t.Fatalf("%d %s: area %v, flattened %v", k, op.name, got.Area(), f.Area())
				}
			}
		}
		if d := a.Area() + b.Area() - area[0] - area[1]; math.Abs(d) > 1e-5 {
			t.Fatalf("%d: union and intersection lack %v\n%v\n%v", k, d, a, b)
		}
		if d := a.Area() - area[1] - area[2]; math.Abs(d) > 1e-5 {
			t.Fatalf("%d: difference and intersection lack %v\n%v\n%v", k, d, a, b)
		}
	}
}

// Parts that touch at points only come apart there, whether their edges cross
// in the point or touch along one tangent.
func TestUnionOfTouching(t *testing.T) {
	// Four cells round an empty one, and four discs.
	cells := [4]Contour{Rectangle(1, 0, 2, 1), Rectangle(0, 1, 1, 2), Rectangle(2, 1, 3, 2), Rectangle(1, 2, 2, 3)}
	discs := [4]Contour{Circle(Point{5, 5}, 10), Circle(Point{-5, 5}, 10), Circle(Point{5, -5}, 10), Circle(Point{-5, -5}, 10)}
	for deg := 0.0; deg < 360; deg += 15 {
		for i, set := range [][4]Contour{cells, discs} {
			var all Region
			for _, c := range set {
				u, err := Union(all, Region{c.Transform(Turn(deg))})
				if err != nil {
					t.Fatal(err)
				}
				all = u
			}
			want := [2]float64{4, 100 * math.Pi}[i]
			if len(all) != 4 || !near(all.Area(), want, 1e-9) {
				t.Fatalf("%v deg: %v", deg, all)
			}
			for _, c := range all {
				if !near(c.Area(), want/4, 1e-9) {
					t.Fatalf("%v deg: %v", deg, all)
				}
			}
			// What lies between them, cut out of a square, is in touch with
			// the rest in the same points.
			box := Rectangle(-10, -10, 10, 10).Transform(Turn(deg))
			rest, err := Subtract(Region{box}, all)
			if err != nil || !near(rest.Area(), 400-want, 1e-9) {
				t.Fatalf("%v deg: %v %v", deg, rest, err)
			}
			if err := rest.Check(); err != nil {
				t.Fatalf("%v deg: %v: %v", deg, err, rest)
			}
			back, err := Subtract(Region{box}, rest)
			if err != nil || len(back) != 4 || !near(back.Area(), want, 1e-9) {
				t.Fatalf("%v deg: back %v %v", deg, back, err)
			}
		}
	}
}

// A hole flush with the edge and a plug in it share the edge of the board three
// times over, in every order, and cancel to the board.
func TestUnionOfPlug(t *testing.T) {
	parts := [3]Contour{Rectangle(0, 0, 10, 10), Rectangle(3, 0, 6, 4).Reverse(), Rectangle(3, 0, 6, 4)}
	for _, o := range [][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
		r := Region{parts[o[0]], parts[o[1]], parts[o[2]]}
		for deg := 0.0; deg < 360; deg += 15 {
			u, err := Union(r.Transform(Turn(deg)), nil)
			if err != nil || len(u) != 1 || len(u[0]) != 4 || !near(u.Area(), 100, 1e-9) {
				t.Errorf("%v, %v deg: %v %v", o, deg, u, err)
			}
		}
	}
}

// Boundaries that leave a point in one direction are told apart by their
// curvature: a hole as wide as the slot touches both sides, and an upright slot
// in the hole touches both again in the same two points. Left, right and middle
// must come out as three contours of material.
func TestTangentParts(t *testing.T) {
	for deg := 0.0; deg < 360; deg += 15 {
		m := Turn(deg)
		of := func(c Contour) Region { return Region{c.Transform(m)} }
		two, err := Subtract(of(Slot(Point{}, 30, 10)), of(Circle(Point{}, 10)))
		if err != nil {
			t.Fatal(err)
		}
		three, err := Union(two, of(Slot(Point{}, 4, 10)))
		if err != nil {
			t.Fatal(err)
		}
		again, err := Union(of(Slot(Point{}, 4, 10)), two)
		if err != nil {
			t.Fatal(err)
		}
		// Half of (20 x 10 + 25 pi - 25 pi), and 4 x 6 + 4 pi.
		for i, r := range []Region{two, three, again} {
			if len(r) != min(i+2, 3) || r.Check() != nil {
				t.Fatalf("%v deg: %v", deg, r)
			}
			for _, c := range r {
				if a := c.Area(); !near(a, 100, 1e-9) && !(i > 0 && near(a, 24+4*math.Pi, 1e-9)) {
					t.Fatalf("%v deg: area %v of %v", deg, a, c)
				}
			}
		}
	}
}
