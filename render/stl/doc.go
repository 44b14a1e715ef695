// Package stl writes the parts of a plan as STL meshes, one part or the whole
// box. Lengths are millimetres, which the header says because the format
// cannot.
//
// Each part is a closed surface of its own, so that joints can be seen and
// measured: the assembly is not one solid. Triangles are anticlockwise seen
// from outside, every edge is used once in each direction, and none is without
// area, also after the coordinates have been rounded to what the format holds:
// corners that fall together are joined and triangles that fall flat are
// turned into others. A mesh that cannot be kept closed is an error.
//
// STL forgets names and arcs: it is for looking at and for printing. Drawings
// to cut from are those of package dxf.
package stl
