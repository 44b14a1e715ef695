package solid

// Mesh is a closed triangle mesh: every edge is used once in each direction,
// triangles are anticlockwise seen from outside, none has zero area. Corners with
// different numbers may lie in the same place, where parts of the surface touch.
type Mesh struct {
	Vertices  []Vec
	Triangles [][3]int32
	// Surface[i] is the number, in Surfaces, of the flat surface that triangle i
	// is part of.
	Surface  []int32
	Surfaces []Surface
}

// Surface is a flat piece of the surface of a mesh.
type Surface struct {
	N Vec // outward, of length 1
	// Smooth is 0 for a surface that is really flat. Surfaces with the same
	// number above 0 are facets of one curved wall: an edge between two of them
	// is not an arris.
	Smooth int32
}
