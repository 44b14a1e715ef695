// Package picture draws a plan as a joiner would sketch it: the box closed, or
// its parts drawn apart, in ink on warm paper, with numbers in balloons that
// are those of the parts list.
package picture
