package solid

import "math"

// SideTest is the distance, in mm, within which a point counts as lying on a
// plane.
const SideTest = 1e-7

// Face is one face of a convex solid: a convex polygon, anticlockwise seen
// from outside. ID names the plane that made it; Next[k] is the ID of the face
// across the edge from Loop[k] to the vertex after it.
type Face struct {
	ID   int
	N    Vec
	Loop []Vec
	Next []int
}

// Convex is a bounded convex solid as its faces. The zero Convex is empty.
type Convex struct{ Faces []Face }

// Empty reports whether nothing is left.
func (c Convex) Empty() bool { return len(c.Faces) == 0 }

// Cuboid is the box between two corners. Its faces have the IDs -1 (x low), -2
// (x high), -3, -4 (y), -5, -6 (z), so that a face of the working box that
// shows in a result can be told from a declared one.
func Cuboid(lo, hi Vec) Convex {
	p := func(i int) Vec {
		v := lo
		if i&1 != 0 {
			v.X = hi.X
		}
		if i&2 != 0 {
			v.Y = hi.Y
		}
		if i&4 != 0 {
			v.Z = hi.Z
		}
		return v
	}
	mk := func(id int, n Vec, a, b, c, d int, next ...int) Face {
		return Face{id, n, []Vec{p(a), p(b), p(c), p(d)}, next}
	}
	return Convex{[]Face{
		mk(-1, Vec{-1, 0, 0}, 0, 4, 6, 2, -3, -6, -4, -5),
		mk(-2, Vec{1, 0, 0}, 1, 3, 7, 5, -5, -4, -6, -3),
		mk(-3, Vec{0, -1, 0}, 0, 1, 5, 4, -5, -2, -6, -1),
		mk(-4, Vec{0, 1, 0}, 2, 6, 7, 3, -1, -6, -2, -5),
		mk(-5, Vec{0, 0, -1}, 0, 2, 3, 1, -1, -4, -2, -3),
		mk(-6, Vec{0, 0, 1}, 4, 5, 7, 6, -3, -2, -4, -1),
	}}
}

// working is half the side of the cube from which solids are cut: larger than
// anything that can be designed (lengths end at 10 m).
const working = 1e5

// Intersect is the solid common to the half-spaces, plane i giving the face
// with ID i. Where they do not bound it, faces with negative IDs remain.
func Intersect(planes []Plane) Convex {
	var k clipper
	return k.all(workingBox, planes, 0).clone()
}

// workingBox is the cube from which solids are cut. It is never changed.
var workingBox = Cuboid(Vec{-working, -working, -working}, Vec{working, working, working})

// Volume is the enclosed volume in mm3.
func (c Convex) Volume() float64 {
	if c.Empty() {
		return 0
	}
	o := c.Faces[0].Loop[0]
	v := 0.0
	for _, f := range c.Faces {
		v += float64(f.N.Dot(f.Loop[0].Sub(o)) * f.Area())
	}
	return v / 3
}

// Area is the area of the face in mm2.
func (f Face) Area() float64 {
	var s Vec
	o := f.Loop[0]
	for k := 1; k+1 < len(f.Loop); k++ {
		s = s.Add(f.Loop[k].Sub(o).Cross(f.Loop[k+1].Sub(o)))
	}
	return s.Dot(f.N) / 2
}

// Centroid is the mean of the corners: a place inside, not the centre of mass.
func (c Convex) Centroid() Vec {
	var s Vec
	n := 0
	for _, f := range c.Faces {
		for _, p := range f.Loop {
			s = s.Add(p)
			n++
		}
	}
	if n == 0 {
		return s
	}
	return s.Scale(1 / float64(n))
}

// FaceOf returns the face with the given ID.
func (c Convex) FaceOf(id int) (Face, bool) {
	for _, f := range c.Faces {
		if f.ID == id {
			return f, true
		}
	}
	return Face{}, false
}

// Reach is the interval that the solid covers along n.
func (c Convex) Reach(n Vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, f := range c.Faces {
		for _, p := range f.Loop {
			s := n.Dot(p)
			lo, hi = math.Min(lo, s), math.Max(hi, s)
		}
	}
	return lo, hi
}
