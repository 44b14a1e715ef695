package picture

import (
	"math"

	"holt.example/box/solid"
)

// View is a parallel view of the box from a direction.
type View struct {
	Name  string
	Round float64 // degrees that the viewer has walked round from the front to the right, -360 to 360
	Up    float64 // degrees above the level, -90 to 90
}

// views is never changed. The first are the best looking; the lower ones are
// for entrances under wide eaves, the others for boxes with a face that the
// first would show edge-on, and for entrances that are not in front.
var views = []View{
	{"trimetric", 20, 35},
	{"trimetric from the left", -20, 35},
	{"trimetric, lower", 24, 25},
	{"trimetric from the left, lower", -24, 25},
	{"trimetric, further round", 52, 32},
	{"trimetric from the left, further round", -52, 32},
	{"trimetric, low", 28, 15},
	{"trimetric from the left, low", -28, 15},
	{"trimetric, low, nearly from the front", 18, 15},
	{"trimetric, low, nearly from the front, left", -18, 15},
	{"trimetric, high", 30, 50},
	{"trimetric from the left, high", -30, 50},
	{"trimetric from the right", 70, 35},
	{"trimetric from the left side", -70, 35},
	{"trimetric from the right, lower", 62, 22},
	{"trimetric from the left side, lower", -62, 22},
	{"trimetric from behind", 160, 35},
	{"trimetric from behind, left", -160, 35},
	{"trimetric from behind, lower", 156, 22},
	{"trimetric from behind, left, lower", -156, 22},
	{"nearly from the front, low", 12, 8},
}

// Views are the views that are tried in turn: the one is taken that shows the
// most of the entrances, in tenths; of several that do, the first in which no
// main face is nearly edge-on. (Isometric is not among them: it shows one slope of a 45 degree roof exactly edge-on.)
func Views() []View { return append([]View(nil), views...) }

// EdgeOn is the least |n.d| of a main face, n being its normal and d the
// direction of sight, at which a view is taken.
const EdgeOn = 0.2

// axes are the page's x and y and the direction towards the viewer, in the
// world.
type axes struct{ r, u, d solid.Vec }

// pt is a place on the screen: mm in the world's scale, y up.
type pt struct{ x, y float64 }

func (v View) axes() axes {
	sr, cr := turn(v.Round)
	su, cu := turn(v.Up)
	return axes{
		r: solid.Vec{X: cr, Y: sr},
		u: solid.Vec{X: float64(-sr * su), Y: float64(cr * su), Z: cu},
		d: solid.Vec{X: float64(sr * cu), Y: float64(-cr * cu), Z: su},
	}
}

// turn gives sine and cosine, rounded so that they have the same bits on every
// processor.
func turn(deg float64) (sin, cos float64) {
	s, c := math.Sincos(float64(deg*math.Pi) / 180)
	r := func(x float64) float64 { return math.Ldexp(math.RoundToEven(math.Ldexp(x, 40)), -40) }
	return r(s), r(c)
}

func (a axes) screen(v solid.Vec) pt { return pt{a.r.Dot(v), a.u.Dot(v)} }

func dist(a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}
