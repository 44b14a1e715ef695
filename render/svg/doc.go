// Package svg writes the panels of a plan as SVG drawings: one part, all of
// them on a sheet, or those of a batch where they lie on the stock, at true size.
//
// Width and height are in millimetres and the view box too, so one unit of the
// drawing is a millimetre. Circles are circles and arcs are arcs, none over 90
// degrees, with a space or comma between any two numbers. y points up in a
// panel and down in SVG: places are turned over, the picture is not.
//
// A sheet is meant to be worked from: it has overall sizes (of the blank), the
// corners of the cut line from its left and lower ends, and by each hole,
// channel and bevel its measures, exact, to 0.1; a legend says how to read it.
//
// A part is a group of the class "part"; in it every layer is a group whose
// classes are the words of the layer ("housing", and "turned", "edge" or
// "bottom" where they apply), its name in lower case as data-layer, and its
// depth in data-depth. The layers are those of package dxf. Colours and widths
// stand as attributes of the groups, so a style sheet of the reader's own may
// change them. Text is text, in the reader's sans-serif letters. A title tells
// what each line is, for people and for screen readers.
package svg
