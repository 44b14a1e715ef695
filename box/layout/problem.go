package layout

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// The codes of problems. They are stable.
const (
	CodeRange     = "range"     // a number out of range, or not a number
	CodeOutline   = "outline"   // an outline that is not a region, or is empty
	CodeLimit     = "limit"     // more parts than a job may have
	CodeNoParts   = "no-parts"  // nothing is wanted
	CodeNoStock   = "no-stock"  // there is nothing to cut from
	CodeMaterial  = "material"  // no stock of the part's material
	CodeThickness = "thickness" // no stock of the part's thickness
	CodeTooLarge  = "too-large" // no stock is large enough, whichever way it is turned
	CodeGrain     = "grain"     // it would fit, but not along the grain
	CodeTurns     = "turns"     // it would fit, but not by the turns allowed
	CodeBed       = "bed"       // it fits the stock, but not the machine's bed
	CodeDefect    = "defect"    // it fits the stock, but not between the defects
	CodeLeast     = "least-rip" // it could only be cut by ripping too short a piece
	CodeStages    = "stages"    // it could only be cut with more stages than allowed
	CodeNoneLeft  = "none-left" // all stock that fits is used up
)

// Problem is something that cannot be done. Its fields are those of the
// problems of a design; codes and paths are stable.
type Problem struct {
	Path   string  // where in the input, as a Go path: "Parts[3].Outline"
	Code   string  // one of the codes
	Got    string  // the value found, or the part's ID
	Lo, Hi float64 // the allowed range; NaN or infinite where there is no bound
	Unit   string  // of Lo and Hi: "mm" or ""
	Why    string  // the reason
	Try    string  // what would do, "" if unknown
}

// Error says it in one line.
func (p Problem) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: ", p.Path)
	if p.Got != "" {
		fmt.Fprintf(&b, "%s: ", p.Got)
	}
	b.WriteString(p.Why)
	lo := !math.IsNaN(p.Lo) && !math.IsInf(p.Lo, 0)
	hi := !math.IsNaN(p.Hi) && !math.IsInf(p.Hi, 0)
	u := ""
	if p.Unit != "" {
		u = " " + p.Unit
	}
	switch {
	case lo && hi && p.Lo == 0 && p.Hi == 0:
	case lo && hi:
		b.WriteString("; want " + num(p.Lo) + " to " + num(p.Hi) + u)
	case lo:
		b.WriteString("; want at least " + num(p.Lo) + u)
	case hi:
		b.WriteString("; want at most " + num(p.Hi) + u)
	}
	if p.Try != "" {
		fmt.Fprintf(&b, " (try %s)", p.Try)
	}
	return b.String()
}

// Problems is every problem of a job, in the order of its parts and stock.
// It is never an empty error.
type Problems []Problem

// Error lists all problems, a line each.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives errors.As and errors.Is the single problems.
func (ps Problems) Unwrap() []error {
	es := make([]error, len(ps))
	for i, p := range ps {
		es[i] = p
	}
	return es
}

// err is nil for no problems.
func (ps Problems) err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}

// num prints a figure with up to four decimals, never "-0" and never with an
// exponent.
func num(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', 4, 64)
	}
	s := strconv.FormatFloat(x, 'f', 4, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}
