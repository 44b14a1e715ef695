package solid

import "holt.example/box/outline"

// Cutter takes away the common part of its half-spaces. It is left open where
// the surface of the body bounds it, so that no two faces coincide.
type Cutter []Plane

// Prism takes away what stands over an outline in a frame, from w = From up to
// w = To. Infinite ends are open: From -Inf and To +Inf is a through cut, From
// -5 and To +Inf a pocket 5 deep in a body whose top is w = 0.
type Prism struct {
	Frame    Frame
	Outline  outline.Contour // anticlockwise, in u and v of the frame
	From, To float64         // along w, mm
}

// Body is a convex solid less cutters and prisms. Base must be bounded.
type Body struct {
	Base    []Plane
	Cutters []Cutter
	Prisms  []Prism

	ready *prepared // see Ready
}
