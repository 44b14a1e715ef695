// Package outline is the flat geometry of the library: contours of straight
// lines and circular arcs, exact as long as they stay contours.
//
// A Contour is a closed list of vertices, each with the bulge of the side that
// leaves it; a Region is a set of contours, anticlockwise round material and
// clockwise round holes. Lengths are millimetres, angles degrees.
//
// Measures (Area, Length, Extents, Centroid), places (Contains, Distance,
// DistanceTo, Intersections) and maps (Transform, Reverse) are closed forms of
// the arcs themselves. Clip, Union, Intersect and Subtract keep arcs as arcs;
// the last three prove their areas before they return anything and give an
// error otherwise. Simplify takes out vertices that say nothing. Check finds
// what is wrong with a contour that came from elsewhere.
//
// Flatten is the one loss, and the last step before a mesh: polygons with the
// area of the true shape.
//
// Places within SideTest of each other are one place to Check and the set
// operations. Nothing else is rounded. All sums are written so that every
// processor makes the same bits.
package outline
