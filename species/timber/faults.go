package timber

import "fmt"

// RangeError says that a number is outside what a formula is good for, or no
// number at all.
type RangeError struct {
	Quantity string
	Got      float64
	Lo, Hi   float64
	Unit     string
}

// Error says what was found and what is allowed.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%s is %v, not from %v to %v %s", e.Quantity, e.Got, e.Lo, e.Hi, e.Unit)
}

// within is nil if x lies from lo to hi; NaN never does.
func within(quantity string, x, lo, hi float64, unit string) error {
	if !(x >= lo && x <= hi) {
		return &RangeError{quantity, x, lo, hi, unit}
	}
	return nil
}

// first returns the first error that is one.
func first(errs ...error) error {
	for _, e := range errs {
		if e != nil {
			return e
		}
	}
	return nil
}
