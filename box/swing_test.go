package box

import (
	"math"
	"math/rand/v2"
	"testing"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

func cuboid(x0, y0, z0, x1, y1, z1 float64) solid.Body {
	p := func(x, y, z, d float64) solid.Plane { return solid.NewPlane(solid.Vec{X: x, Y: y, Z: z}, d) }
	return solid.Body{Base: []solid.Plane{p(-1, 0, 0, -x0), p(1, 0, 0, x1), p(0, -1, 0, -y0), p(0, 1, 0, y1), p(0, 0, -1, -z0), p(0, 0, 1, z1)}}
}

// Strikes with angles and ways known from geometry.
func TestStrikesKnownByHand(t *testing.T) {
	z := solid.Vec{Z: 1}
	for _, x := range []struct {
		name string
		m    motion
		a, b solid.Body
		most float64
		want float64 // negative: never
	}{
		// A bar 10 long about its end, against a wall from y = 5 on: its corner (10, 0)
		// rises to 10 sin x, the one at (10, 1) to sqrt(101) sin(x + atan 0.1): 5 at
		// asin(5/sqrt(101)) - 5.7106 = 24.1258.
		{"corner on face", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, 5, 0, 50, 9, 10), 90,
			(math.Asin(5/math.Sqrt(101)) - math.Atan(0.1)) * 180 / math.Pi},
		// Onto a post: the bar's upper face, 1 from the axis, meets the corner (9, 3),
		// which lies sqrt(90) away at atan(3/9): atan(3/9) - asin(1/sqrt(90)) = 12.3842.
		{"face on corner", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(8, 3, 0, 9, 20, 10), 90,
			(math.Atan2(3, 9) - math.Asin(1/math.Sqrt(90))) * 180 / math.Pi},
		{"out of reach", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, 10.06, 0, 50, 12, 10), 90, -1}, // sqrt(101) = 10.0499
		{"just in reach", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, 10.04, 0, 50, 12, 10), 90,
			(math.Asin(10.04/math.Sqrt(101)) - math.Atan(0.1)) * 180 / math.Pi},
		{"over it", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, 5, 10, 50, 9, 20), 90, -1},
		{"from contact", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, -5, 0, 50, 0, 10), 90, -1},
		{"from contact, and round", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, -5, 0, 50, 0, 10), 170, 90}, // (0, 1) passes (-1, 0)
		{"into contact", motion{d: z, turn: true}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, 1, 0, 50, 5, 10), 90, 0},
		// A shift of 3 closes the gap.
		{"shift", motion{d: solid.Vec{X: 1}}, cuboid(0, 0, 0, 10, 1, 10), cuboid(13, -5, -5, 20, 5, 5), 100, 3},
		{"slide along", motion{d: solid.Vec{X: 1}}, cuboid(0, 0, 0, 10, 1, 10), cuboid(-50, 1, 0, 50, 5, 10), 100, -1},
	} {
		got, hit := strike(x.m, x.a, x.b, x.most)
		if hit != (x.want >= 0) {
			t.Errorf("%s: strikes: %v at %v", x.name, hit, got)
			continue
		}
		// strikeDepth over the speed of the corner, at worst near the top of its arc.
		if hit && math.Abs(got-x.want) > 2e-3 {
			t.Errorf("%s: %v, want %v", x.name, got, x.want)
		}
	}
}

// A peg in a hole is no strike at home, and one when it is drawn sideways by the
// play: 10 in 12 strikes after 1.
func TestStrikeInAHole(t *testing.T) {
	peg := cuboid(-5, -5, -20, 5, 5, 20)
	plate := cuboid(-50, -50, 0, 50, 50, 10)
	plate.Prisms = []solid.Prism{{Frame: solid.World(), Outline: outline.Rectangle(-6, -6, 6, 6), From: math.Inf(-1), To: math.Inf(1)}}
	got, hit := strike(motion{d: solid.Vec{X: 1}}, peg, plate, 20)
	if !hit || math.Abs(got-1) > 0.01 { // crumb over the 10 x 10 face: 1e-4
		t.Errorf("%v %v", got, hit)
	}
	if got, hit := strike(motion{d: solid.Vec{Z: 1}}, peg, plate, 100); hit {
		t.Errorf("drawn out lengthwise it strikes at %v", got)
	}
}

// The most and least heights of a moving place against a thousand samples.
func TestTracksAgainstSamples(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	v := func() solid.Vec {
		return solid.Vec{X: r.Float64()*200 - 100, Y: r.Float64()*200 - 100, Z: r.Float64()*200 - 100}
	}
	for range 300 {
		m := motion{o: v(), d: v().Unit(), turn: true}
		n, p := v().Unit(), v()
		lo := r.Float64()*300 - 20
		hi := lo + r.Float64()*200
		k := m.along(n, p)
		most, least := k.most(m, lo, hi), k.least(m, lo, hi)
		top, low := math.Inf(-1), math.Inf(1)
		for i := 0; i <= 1000; i++ {
			h := n.Dot(m.point(p, lo+(hi-lo)*float64(i)/1000))
			top, low = math.Max(top, h), math.Min(low, h)
		}
		// Between two samples 0.2 degrees apart, 350 from the axis at most, a peak is
		// missed by 350 (0.1 degrees)^2 / 2 = 6e-4.
		if most < top-1e-9 || most > top+6e-4 || least > low+1e-9 || least < low-6e-4 {
			t.Fatalf("most %v of %v, least %v of %v", most, top, least, low)
		}
	}
}
