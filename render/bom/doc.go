// Package bom writes the parts list of a plan: what to cut, how each part is
// worked, what was compensated and why, and what proves the box right. It
// comes as CSV for a spreadsheet, as JSON for another program and as Markdown
// for the bench; New gives the same list as a value, and WriteSummary a page of
// plain text for a terminal.
//
// Sizes come in two precisions. The exact ones carry four decimals. The cut
// sizes are those that people work to, rounded to Options.Step, and rounded
// jointly: what goes between other parts is rounded down, what ends on the
// outside up, equal parts alike, and the floor to what the rounded walls
// leave. So a box cut to the rounded list still goes together, without a gap of
// more than two steps.
//
// Where a size to cut to is more than half a step from the exact one, the list
// says why. Markdown and summary are for people and write 0.1 mm; CSV and JSON
// carry four decimals.
//
// With Options.Bill the list reckons what to buy as well: lengths or areas of each
// kind of board, with the waste that is stated, fittings summed up by what they are,
// the mass of each part and of the box, and the cost at the prices that are given.
// Nothing of it is made up: what has no price is listed as unpriced, never as 0.
//
// In all words, left, right, upper and lower mean the panel as one looks at its
// machined face; places count up from its lower edge and right from its left
// edge; the place of a hole is that of its centre.
//
// The same plan gives the same bytes, on any processor.
package bom
