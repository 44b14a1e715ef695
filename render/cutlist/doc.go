// Package cutlist writes what the bench needs of a batch beside its drawings:
// the cut list, the place of every part, and the stock to buy, each as CSV,
// Markdown or JSON. A part is named item/box, as on the drawings of svg and dxf.
package cutlist
