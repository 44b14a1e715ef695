// Package timber holds figures of the trade: woods and how they move, sheets
// and boards as sold and as measured, nails, screws and glues. Each figure has
// its source and says whether it was read there or is remembered.
//
// Nothing here decides. Where sources disagree the preferred figure stands
// first, usually that of the Wood Handbook, and the others stay beside it. A
// formula takes numbers in the units that its name and comment give, and
// refuses what it is not good for with a *RangeError.
package timber
