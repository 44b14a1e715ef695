// Package solid holds the solids of boards: exactly, as half-spaces, and as
// closed triangle meshes.
//
// A Body is a convex solid less cutters less prisms. The base is a board
// between its two faces, cut off by planes; each Cutter is what a joint takes
// away, a list of half-spaces left open where the surface of the board bounds
// it; each Prism is a hole or a pocket over an outline of lines and arcs.
//
// Sizes, overlaps and contacts come from the half-spaces, without a mesh:
// Convex is a solid as its faces, Clip cuts it, Pieces and Subtract divide
// bodies into convex cells, Overlap and Contact compare two bodies, Rings and
// Shadow give the flat forms of one.
//
// Mesh is for files and pictures. The faces of base and cutters become polygons
// less polygons; corners are welded in connected clusters, corners that lie on
// edges are put in, edges inside a surface cancel, and what remains is
// triangulated by a sweep and improved by flips. A prism that goes cleanly
// through the same surfaces along all its lines is put in as rings; only the
// others are cut into convex pieces. Where material touches along an edge or in
// a corner only it is parted. The result is closed, has no corner in the middle
// of an edge and no triangle without area, and nothing in it is rounded.
//
// A body that is asked more than once, by Overlap and Contact with all others
// and by Mesh, is made Ready first: what all of these need is then kept in it.
//
// Three numbers rule: SideTest (1e-7 mm) tells the sides of planes apart, the
// weld radius makes corners one (4e-6 mm, up to 1e-4 mm where a mesh does not
// close otherwise, always that in flat forms), and planes within 1e-6 mm are the
// same plane. Lengths up to 10 m are meant. Products are rounded one by one, so
// that the same body gives the same bytes on every processor.
package solid
