// Package sdf gives a plan as a signed-distance model, for people who go on
// modelling with the sdfx library: round the arrises, take a hollow out, add a
// bracket, and render the result there.
//
// A model is a function of a point: negative inside the timber, positive
// outside, and never farther from zero than the true distance to the surface.
// (That last is what sdfx's octree renderers need.) It is made straight from
// the half-spaces, cutters and outlines of a plan's bodies, with true arcs and
// without any mesh; so it is also a second account of every part, and the
// tests hold it against the first.
//
// Things to know when going on with sdfx:
//
//   - Parts that touch have a common face on which the model of the whole box
//     is zero, as it should be: they are separate pieces of timber. Render
//     parts one by one (PartModel), or glue them with a small sdf.MinFunc.
//   - Its writers to files (ToSTL and others) print, and lose errors, and its
//     uniform renderer leaves goroutines behind. render.ToTriangles with
//     render.NewMarchingCubesOctree does neither.
//   - Marching cubes round off every arris by up to half a cell. For exact
//     files use the writers of this module; they do not come this way.
package sdf
