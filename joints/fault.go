package joints

import (
	"errors"
	"math"
	"strconv"
	"strings"
)

// Error says it in one line, as
// "Depth: the rebate leaves front too thin a lip, or is none: got 10, want 0.1 to 8.6 mm".
func (f *Fault) Error() string {
	var b strings.Builder
	if f.Field != "" {
		b.WriteString(f.Field)
		b.WriteString(": ")
	}
	b.WriteString(f.Why)
	if f.Unit == "mm2" { // an area is told in the sentence
		return b.String()
	}
	if want := f.Want(); want != "" {
		b.WriteString(": got ")
		b.WriteString(num(f.Got))
		b.WriteString(", want ")
		b.WriteString(want)
	}
	return b.String()
}

// Want is the allowed range in words, "" where there is none.
func (f *Fault) Want() string {
	unit := ""
	if f.Unit != "" {
		unit = " " + f.Unit
	}
	switch lo, hi := finite(f.Lo), finite(f.Hi); {
	case f.Lo == 0 && f.Hi == 0:
		return ""
	case lo && hi && f.Lo == f.Hi:
		return num(f.Lo) + unit
	case lo && hi:
		return num(f.Lo) + " to " + num(f.Hi) + unit
	case lo:
		return "at least " + num(f.Lo) + unit
	case hi:
		return "at most " + num(f.Hi) + unit
	}
	return ""
}

// Faults lists every Fault in a tree of errors, in the order in which they
// were joined. It is nil for a nil error and for one without a Fault.
func Faults(err error) []*Fault {
	if err == nil {
		return nil
	}
	if f, ok := err.(*Fault); ok {
		return []*Fault{f}
	}
	switch e := err.(type) {
	case interface{ Unwrap() error }:
		return Faults(e.Unwrap())
	case interface{ Unwrap() []error }:
		var all []*Fault
		for _, one := range e.Unwrap() {
			all = append(all, Faults(one)...)
		}
		return all
	}
	return nil
}

// InRange is nil if lo <= got <= hi, which NaN never is, and else a Fault in
// millimetres: for the fields of a joint of your own.
func InRange(field string, got, lo, hi MM, why string) error {
	var fs faults
	fs.within(field, float64(got), float64(lo), float64(hi), "mm", why)
	return fs.err()
}

// none stands for a bound that is not there.
var none = math.NaN()

// faults collects what is wrong, so that all of it can be told at once.
type faults []*Fault

func (fs *faults) add(field string, got, lo, hi float64, unit, why string) {
	*fs = append(*fs, &Fault{Field: field, Got: got, Lo: lo, Hi: hi, Unit: unit, Why: why})
}

// within adds a fault unless lo <= got <= hi, which NaN never is. The last
// digits of a sum do not count.
func (fs *faults) within(field string, got, lo, hi float64, unit, why string) bool {
	if got >= lo-slack && got <= hi+slack {
		return true
	}
	fs.add(field, got, lo, hi, unit, why)
	return false
}

func (fs faults) err() error {
	switch len(fs) {
	case 0:
		return nil
	case 1:
		return fs[0]
	}
	es := make([]error, len(fs))
	for i, f := range fs {
		es[i] = f
	}
	return errors.Join(es...)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// num prints a figure with up to four decimals, never "-0" and, for all
// lengths that occur, never with an exponent.
func num(x float64) string { return figure(x, 4) }

// say prints a length for a sentence, to a hundredth of a millimetre.
func say(x float64) string { return figure(x, 2) }

func figure(x float64, decimals int) string {
	switch {
	case math.IsNaN(x):
		return "not a number"
	case math.IsInf(x, 1):
		return "infinite"
	case math.IsInf(x, -1):
		return "minus infinite"
	case x > 1e15:
		return "above 1000000000000000"
	case x < -1e15:
		return "below -1000000000000000"
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
