package species

import (
	"fmt"

	"holt.example/box"
)

// MissingError says that a preset cannot give a value, because none was
// published or because its form has none.
type MissingError struct {
	Preset string // key
	Field  string // "Entry", "Entry.Above", "Inside.Height" ...
	Why    string
}

// Error says what is missing and why.
func (e *MissingError) Error() string {
	return fmt.Sprintf("%s has no %s: %s", e.Preset, e.Field, e.Why)
}

// Unwrap gives the same as a box.Problem with the code "not-published".
func (e *MissingError) Unwrap() error {
	return box.Problem{Path: "species." + e.Preset + "." + e.Field, Code: "not-published", Why: e.Why}
}

// Cut is the entrance as a shape of box: round as box.Round, square as
// box.Rect, oval and slot as box.Slot with half-round ends, as two drilled
// holes and a saw give them, and the open part of a front as a box.Rect as
// wide as the cavity. nil where no size was published.
func (e Entry) Cut() box.Shape {
	if !(e.Width > 0 && e.Height > 0) {
		return nil
	}
	switch e.Shape {
	case RoundEntry:
		return box.Round{Diameter: e.Width}
	case OvalEntry, SlotEntry:
		return box.Slot{Width: e.Width, Height: e.Height}
	case SquareEntry, OpenEntry:
		return box.Rect{Width: e.Width, Height: e.Height}
	}
	return nil
}

// Entrance is the preset's way in as a feature on the front: a plain value, to
// be changed at will. Where the form has no opening to cut (a crevice is open
// below, a shelf on several sides), or where no size or height was published,
// the error is a *MissingError that says which.
func (p Preset) Entrance() (box.Entrance, error) {
	switch p.Form {
	case Crevice:
		return box.Entrance{}, &MissingError{p.Key, "Entry", "a crevice is open below: leave out the floor instead"}
	case Shelf:
		return box.Entrance{}, &MissingError{p.Key, "Entry", "a shelf is open on several sides: leave walls out instead"}
	}
	cut := p.Entry.Cut()
	if cut == nil {
		return box.Entrance{}, &MissingError{p.Key, "Entry.Height", "the sources used give no size"}
	}
	above, ok := p.Entry.Lowest()
	if !ok {
		return box.Entrance{}, &MissingError{p.Key, "Entry.Above", "the sources used do not say how far above the floor it stands"}
	}
	return box.Entrance{Shape: cut, Above: above}, nil
}
