// Package layout answers what to buy and how to get all parts out of it, for
// the three ways in which timber is cut:
//
//   - [Free] puts true outlines anywhere on sheets, for a router table;
//   - [Saw] divides sheets and wide boards by straight cuts from edge to edge,
//     and writes the cuts as a list that a person can follow;
//   - [Lengths] cuts boards of a given width to length.
//
// A [Job] says what is wanted ([Part]) and what there is ([Stock], offcuts in
// the shed among it); the rules of each way say the rest: gap and margin, or
// kerf. The answer is a [Layout] of plain values: which piece of which stock,
// each part's place on it, the cuts, what is left over, and a [Report] with
// cost, yield and a proved lower bound. What cannot be placed comes back as
// [Problems], each with its reason; the rest is laid out all the same.
//
// Everything is deterministic. Effort is counted in iterations, never in
// seconds; a parallel search runs a fixed number of streams and merges them in
// order; a context only stops the search early, and the report then says so.
// The same job gives the same bytes on every machine.
//
// The package knows outlines and names, nothing of boxes.
package layout
