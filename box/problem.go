package box

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Problem is something that cannot be made. Codes and paths are stable.
type Problem struct {
	Path   string  // where in the design, as a Go path: "Corners.Joint.Depth"
	Code   string  // e.g. "range", "unknown-part"
	Got    string  // the value found
	Lo, Hi float64 // the allowed range; NaN or infinite where there is no bound
	Unit   string  // of Lo and Hi: "mm", "deg" or ""
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
	if r := p.want(); r != "" {
		fmt.Fprintf(&b, "; want %s", r)
	}
	if p.Try != "" {
		fmt.Fprintf(&b, " (try %s)", p.Try)
	}
	return b.String()
}

func (p Problem) want() string {
	lo := !math.IsNaN(p.Lo) && !math.IsInf(p.Lo, 0)
	hi := !math.IsNaN(p.Hi) && !math.IsInf(p.Hi, 0)
	u := ""
	if p.Unit != "" {
		u = " " + p.Unit
	}
	switch {
	case lo && hi && p.Lo == 0 && p.Hi == 0:
		return ""
	case lo && hi:
		return num(p.Lo) + " to " + num(p.Hi) + u
	case lo:
		return "at least " + num(p.Lo) + u
	case hi:
		return "at most " + num(p.Hi) + u
	}
	return ""
}

// num prints a figure with up to four decimals, never "-0" and never with an
// exponent.
func num(x float64) string {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return strconv.FormatFloat(x, 'g', 4, 64)
	case x > 1e15:
		return "above 1000000000000000"
	case x < -1e15:
		return "below -1000000000000000"
	}
	s := strconv.FormatFloat(x, 'f', 4, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// Problems is every problem of a design, sorted by path. Resolve returns it as
// an error; it is never an empty error.
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

// Severity grades a finding.
type Severity int

// The grades of findings.
const (
	Advice Severity = iota
	Warning
	Fault
)

// String is the word for the grade.
func (s Severity) String() string {
	switch s {
	case Warning:
		return "warning"
	case Fault:
		return "error"
	}
	return "advice"
}

// Finding is something that can be made and should be known.
type Finding struct {
	Code        string // stable, e.g. "steep-bevel"
	Severity    Severity
	Part        Part
	Where       Place
	Got, Lo, Hi float64 // the value and the good range; infinite where there is no bound
	Unit        string
	Why         string
	Sources     []string // title and publisher, or "common practice"
}

// String says it in one line: "warning [thin-web] front: ...".
func (f Finding) String() string {
	at := ""
	if f.Part != "" {
		at = " " + string(f.Part)
	}
	return f.Severity.String() + " [" + f.Code + "]" + at + ": " + f.Why
}
