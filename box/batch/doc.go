// Package batch lays out whole boxes: it takes plans, how many boxes of each
// are wanted, and the stock there is, and answers which piece of stock every
// part is cut from, where, and which way round.
//
// Lay takes each part's silhouette as its outline, the grain from its panel,
// and keeps parts together that share stock: a part goes to stock whose measured
// thickness is its own within layout.ThicknessMatch (0.1 mm). A part with work
// on one of its faces, or stock with a rough face, is never turned over. Equal
// parts of a plan share one outline.
//
// The Result carries panels: for every piece of stock (Sheet) the parts on it
// (Placed), each with its box, its item number, its panel as it lies, and the map
// that carries the one into the other. Package render draws and lists it.
//
// The same job gives the same result on every machine; see package layout.
package batch
