// Package flat is the drawing model that the flat formats share: what stands
// on a drawing of one panel or of all panels, before anybody decides how a
// line is written. render/dxf and render/svg only put its items into their own
// words, so a contour cannot be right in one file and wrong in the other.
//
// A drawing is a list of items in plan order, each a closed contour of lines
// and arcs, a circle, a straight line or a line of text, and each on a layer.
// All coordinates lie on a grid of 1e-4 mm. A contour is what the panel says,
// arcs included: nothing is flattened, offset or joined here.
//
// # Views
//
// A panel is drawn as seen from the tool: v up, the machined face towards the
// reader, in the panel's own coordinates. Work that reaches only the far face
// is drawn a second time as it lies under the tool after the part has been
// turned over like the page of a book: mirrored in u, to the right of the
// first view, on layers of its own. So no layer ever mixes the two.
//
// OnStock draws a piece of stock of a batch: every panel carried to its place,
// then drawn like any other, so its work cannot differ from that of the part's
// own drawing.
//
// # Layers
//
// A layer is named from the word of the work and the depth of it, because work
// of another depth is another job for whoever cuts it: see Layer.
package flat
