// Package dxf writes the panels of a plan as DXF drawings, for whoever cuts
// them: one part, all of them on a sheet, or those of a batch where they lie on
// the stock.
//
// Two dialects of the format come from one drawing. R2000 is the default: its
// header states millimetres and its contours are LWPOLYLINE entities with
// bulges. R12 is for old controllers: POLYLINE with bulges, and since that
// dialect knows no units, a comment and the text on the sheet say millimetres.
// A closed contour has the closed flag and does not repeat its first vertex, a
// round hole is a CIRCLE, an arc stays an arc, and there is never a spline.
// Lines are the edges of the finished part: no cutter is allowed for.
//
// # Layers
//
// A layer is one job, named from the word of the work and its depth in mm:
//
//	PROFILE_14.6         the machined face of a part 14.6 thick: cut along it, through
//	FAR_FACE_14.6        the far face, 14.6 below, where it differs (bevelled
//	                     edges): a line to mark, dashed
//	BORE_14.6            a round hole, through
//	FIXING_14.6          a hole for screws or nails, through
//	OPENING_14.6         any other opening, through
//	POCKET_5.0           a pocket 5 deep; so also REBATE, HOUSING (across the
//	                     grain), GROOVE (along it), NOTCH (open to an edge), MARK
//	HOUSING_5.0_BOTTOM   the outline of its bottom, where its walls are tilted
//	POCKET_3.0_8.0       work that begins 3 below the face
//	EDGE_GROOVE_4.0_9.0  work inside the thickness, reached from an edge
//	EDGE_BORE_6.1_8.5    the shadow of a round hole into an edge, between two depths;
//	                     so also EDGE_FIXING. A screw or nail fills it: the solid
//	                     does not have it
//	TURNED_FACE          the far face as it lies when the part is turned over
//	TURNED_POCKET_5.0    work on the far face, its depth counted from there
//	GRAIN SIZE TEXT      the grain arrow, overall sizes, number and name: to read
//
// On a sheet of a batch (WriteSheet) there are also
//
//	STOCK TRIM DEFECT    the edge of the stock, what it is trimmed to, what to avoid
//	BLANK SAW            the rectangles sawn for parts, or set-ups of a router's
//	                     bed; the middle of every cut from edge to edge
//	OFFCUT BALLOON       what is left and worth keeping; round a part's item/box
//
// Work of another depth is on another layer. R12 allows no point in a name, so
// its layers have a hyphen there: PROFILE_14-6. A name over the 31 characters
// of R12 is cut short and numbered. Colours go by layer, are numbers from 1 to
// 6 and only tell layers apart; nothing is on layer 0.
//
// # Places
//
// A single part is drawn in its panel's own coordinates (see box.Panel): seen
// from the tool, v up, 0, 0 at the middle of the lower edge of the face that
// looks into the cavity. Options.Corner puts the lower left corner there
// instead. If the far face is worked too, the part is drawn a second time to
// the right, turned over like the page of a book, on the TURNED layers; both
// drawings show the outline of the far face, by which they can be laid on each
// other. The two faces, the depths and the bottoms of tilted cuts are all that
// is needed to build the part again from its file.
//
// A sheet of a batch has the lower left corner of the stock at 0, 0. Its panels
// are seen with the face up that lies up; work on the faces that are down stands
// below the stock, on the TURNED layers, once for equal parts.
package dxf
