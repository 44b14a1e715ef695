// Package render writes everything there is to know about a plan in one call:
// solids to look at, drawings to cut from, the parts list, pictures, and a page
// that explains every part. Folder writes into a folder, Files into memory.
//
//	assembly.stl                      the box, every part a solid of its own
//	assembled.svg, assembled.png      the box as it stands
//	exploded.svg, exploded.png        the parts apart
//	bom.csv, bom.json, bom.md         the parts list
//	plan.md                           every part explained, fittings, seams, voids, findings, assembly
//	fittings.csv                      screws, felt and the like, if there are any
//	parts.svg, parts.dxf              all panels on one sheet
//	parts/NAME.stl, .svg, .dxf        each part by itself; a made-up part also as a whole, flat
//
// The part roof/left is in files called roof-left: names of files hold only
// letters, digits, dots, hyphens and underscores, and are safe on every system.
//
// BatchFolder and BatchFiles do the same for boxes laid out on stock by package
// batch: each piece of stock drawn, the cut list, and what to buy.
//
// Whoever needs one format imports only that package: stl, dxf, svg, bom,
// cutlist, picture or png. The same plan gives the same bytes, on any processor.
package render
