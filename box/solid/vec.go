package solid

import "math"

// Vec is a place or a direction in space, in millimetres.
type Vec struct{ X, Y, Z float64 }

// Products are written float64(x*y) throughout this package: Go may fuse
// x*y+z into one rounding on some processors, and the same design must give
// the same bytes on all of them.

// Add returns v + w.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Sub returns v - w.
func (v Vec) Sub(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Scale returns v times k.
func (v Vec) Scale(k float64) Vec {
	return Vec{float64(v.X * k), float64(v.Y * k), float64(v.Z * k)}
}

// Dot is the scalar product.
func (v Vec) Dot(w Vec) float64 {
	return float64(v.X*w.X) + float64(v.Y*w.Y) + float64(v.Z*w.Z)
}

// Cross is the vector product.
func (v Vec) Cross(w Vec) Vec {
	return Vec{
		float64(v.Y*w.Z) - float64(v.Z*w.Y),
		float64(v.Z*w.X) - float64(v.X*w.Z),
		float64(v.X*w.Y) - float64(v.Y*w.X),
	}
}

// Len is the length.
func (v Vec) Len() float64 { return math.Sqrt(v.Dot(v)) }

// Unit is v scaled to length 1; the zero vector stays zero.
func (v Vec) Unit() Vec {
	l := v.Len()
	if l == 0 {
		return v
	}
	return Vec{v.X / l, v.Y / l, v.Z / l}
}

// Lerp is v + t(w-v).
func (v Vec) Lerp(w Vec, t float64) Vec { return v.Add(w.Sub(v).Scale(t)) }

// Frame is a right-handed set of axes: O the origin, U, V, W unit vectors at
// right angles with U x V = W.
type Frame struct{ O, U, V, W Vec }

// worldFrame is never changed.
var worldFrame = Frame{U: Vec{1, 0, 0}, V: Vec{0, 1, 0}, W: Vec{0, 0, 1}}

// World returns the frame of the world itself.
func World() Frame { return worldFrame }

// Out maps a place given in the frame to the world.
func (f Frame) Out(p Vec) Vec {
	return f.O.Add(f.U.Scale(p.X)).Add(f.V.Scale(p.Y)).Add(f.W.Scale(p.Z))
}

// In maps a place of the world into the frame.
func (f Frame) In(p Vec) Vec {
	d := p.Sub(f.O)
	return Vec{d.Dot(f.U), d.Dot(f.V), d.Dot(f.W)}
}

// Plane is the half-space N.x <= D; N has length 1 and points out of it.
type Plane struct {
	N Vec
	D float64
}

// roundTo rounds x to a multiple of 2^-bits.
func roundTo(x float64, bits int) float64 {
	return math.Ldexp(math.RoundToEven(math.Ldexp(x, bits)), -bits)
}

// NewPlane is the half-space n.x <= d, n of any length above zero. Direction
// and offset are rounded once, to 2^-40 and 2^-30 mm, so that a sine that
// differs in its last bit on another processor changes nothing after it.
func NewPlane(n Vec, d float64) Plane {
	l := n.Len()
	return Plane{
		N: Vec{roundTo(n.X/l, 40), roundTo(n.Y/l, 40), roundTo(n.Z/l, 40)},
		D: roundTo(d/l, 30),
	}
}

// At is the height of p above the plane: positive outside the half-space.
func (h Plane) At(p Vec) float64 { return h.N.Dot(p) - h.D }

// Flip is the other half-space of the same plane.
func (h Plane) Flip() Plane { return Plane{h.N.Scale(-1), -h.D} }

// Shift moves the plane outward by t.
func (h Plane) Shift(t float64) Plane { return Plane{h.N, roundTo(h.D+t, 30)} }
