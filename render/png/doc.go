// Package png paints pictures as PNG files. It stands apart from package
// picture because it is the one that needs a painter and fonts; whoever wants
// SVG only does not compile them.
package png
