// Package picture draws a plan as a joiner would sketch it: the box closed, or
// its parts drawn apart, in ink on warm paper, with numbers in balloons that
// are those of the parts list.
//
// Assembled and Exploded give a Picture: lines, tinted areas, circles and
// texts in millimetres on a page. It is a plain value, to be painted (WriteSVG
// here, render/png), laid into a larger drawing, or read by a test. Draw does
// the same for any solids, such as the half of a box for an assembly step.
//
// Which lines are seen is found exactly. Every edge is cut where it passes the
// plane of a face turned to the viewer, or crosses a rim of it on the screen;
// between two cuts it is wholly hidden by that face or wholly not, so one
// question in the middle of each length settles it. No order of depth is
// needed for that, and parts may touch, hide each other in a ring, or be seen
// through a hole. Only the tint needs an order: the faces go through a tree
// that divides space by their planes, and come out back to front.
//
// The view is the one of Options.Views that shows the most of the entrances;
// a part that is seen only through a hole counts as out of sight.
//
// How to read a picture: a bold line is a contour, with air behind; a fine one
// an edge between two faces in sight, or a joint between parts that touch. The
// finest unbroken lines are engraved or sawn into a face; out of sight they are left
// out. A thin chain line is the way a part has been moved. End grain is tinted
// darker. The picture is not to scale, and says so.
package picture
