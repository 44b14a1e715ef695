package outline

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Shapes that miss each other by a hair, 1e-3 to 1e-12 mm, or are turned by as
// little: the places where set operations go wrong. An error is allowed, a
// wrong area is not; and errors must stay rare.
func TestBooleanByAHair(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	failed, done := 0, 0
	for k := range 4000 {
		a := roundRegion(t, r)
		if len(a) == 0 {
			continue
		}
		hair := math.Pow(10, -3-9*r.Float64())
		m := Shift(hair*(r.Float64()-0.5), hair*(r.Float64()-0.5))
		if k%2 == 0 {
			m = Turn(hair * 57).Then(m)
		}
		b := a.Transform(m)
		switch k % 5 {
		case 1: // one contour against its copy and others
			b = append(Region{}, b[0])
		case 2: // joined to a shape that shares its edges or arcs
			if u, err := Union(b, Region{roundShape(r)}); err == nil {
				b = u
			}
		case 3: // grown or shrunk
			b = a.Transform(Scale(1 + hair/20))
		}
		if b[0].Area() < 0 {
			b = b.Reverse()
		}
		var area [3]float64
		ok := true
		for i, op := range ops {
			got, err := op.do(a, b)
			done++
			if err != nil {
				failed++
				ok = false
				continue
			}
			area[i] = got.Area()
			checkPoints(t, r, op.name, a, b, got, op.in, 10)
		}
		if !ok {
			continue
		}
		// A plain copy is moved by hair/2 each way, and by hair times 40 where it
		// is turned about the origin, so the common part lacks a strip at most.
		if c := k % 5; c == 0 || c == 4 {
			if d := a.Area() - area[1]; !(math.Abs(d) <= 41*hair*a.Length()+1e-5*a.Length()) {
				t.Fatalf("%d: a copy moved by %v has %v less in common", k, hair, d)
			}
		}
		// The weld is 1e-7, or 1e-5 at the third try, along all boundaries.
		slack := 1e-5 * (a.Length() + b.Length())
		if d := a.Area() + b.Area() - area[0] - area[1]; math.Abs(d) > slack {
			t.Fatalf("%d: union and intersection lack %v\n%v\n%v", k, d, a, b)
		}
		if d := a.Area() - area[1] - area[2]; math.Abs(d) > slack {
			t.Fatalf("%d: difference and intersection lack %v\n%v\n%v", k, d, a, b)
		}
	}
	t.Logf("%d of %d refused", failed, done)
	if failed > done/1000 {
		t.Errorf("%d of %d refused", failed, done)
	}
}
