package species

import (
	"fmt"
	"slices"

	"holt.example/box"
	"holt.example/species/cite"
)

// Preset is what is published about a dwelling for one animal, or for a group
// that is served alike, in one region and form. Every value is a plain number
// to start a design from, and every one may be overridden.
type Preset struct {
	// Key names the preset; it is unique and stable: "blue_tit".
	Key string
	// Common is the English name of the preset; Scientific are its members.
	Common     string
	Scientific []string
	// Members are the keys under which the figures of its members were printed;
	// see Printed.
	Members []string
	Group   Group
	Region  Region
	Form    Form

	// Inside is the cavity in mm: Width and Depth at the floor, Height at the
	// entrance wall. 0 means not published. The Depth of a tube is its length.
	Inside box.Cavity
	// Entry is the way in.
	Entry Entry
	// Hole is the smallest and largest size that serves the animal and keeps
	// out what the sources want kept out, in mm; for a slot, of the gap.
	Hole Span
	// WallLeast is the least thickness of the walls in mm; 0: not published.
	WallLeast box.MM
	// Grip is what the young need to climb out.
	Grip Grip
	// Mount is the height above ground in metres.
	Mount Span
	// CleanMonths are the months, 1 to 12, in which an empty box is cleaned;
	// nil where none are published. Look first: some animals use it in winter.
	CleanMonths []int

	// Cautions are what else the sources say, a sentence each.
	Cautions []Note
	// Chosen says how the values were chosen where sources differ.
	Chosen []string
	// InPrint is the smallest and largest of each size in print.
	InPrint []PrintRange
	// Sources are the keys of the publications used; see Source.
	Sources []string
}

// Entry is an entrance as published.
type Entry struct {
	Shape EntryShape
	// Width and Height in mm; equal for a round hole (its diameter). 0 means
	// not published.
	Width, Height box.MM
	// Above is from the cavity floor up to Datum, in mm; it means nothing where
	// Datum is NoDatum. Lowest gives the figure a design needs.
	Above box.MM
	Datum Datum
}

// Lowest is the height of the entrance's lowest point above the cavity floor,
// in mm, which is what box.Entrance.Above asks for. A height to the centre is
// taken down by half the entrance; an unspecified datum is read as the lower
// edge. ok is false where no height was published.
func (e Entry) Lowest() (above box.MM, ok bool) {
	switch e.Datum {
	case NoDatum:
		return 0, false
	case Centre:
		return e.Above - e.Height/2, true
	}
	return e.Above, true
}

// Note is a sentence of advice and how well founded it is.
type Note struct {
	Text  string
	Basis cite.Basis
}

// PrintRange is the smallest and largest of a size in print, over Sources
// publications that give it.
type PrintRange struct {
	Of      PrintedSize
	Lo, Hi  box.MM
	Sources int
}

// PrintedSize is a size whose spread over the publications is known.
type PrintedSize string

// The sizes with a spread.
const (
	PrintedHole   PrintedSize = "hole"
	PrintedFloor  PrintedSize = "floor" // either side
	PrintedHeight PrintedSize = "height"
	PrintedAbove  PrintedSize = "hole above floor"
	PrintedLip    PrintedSize = "front lip"
)

// Spread is the range of a size in print; ok is false where none is known.
func (p Preset) Spread(of PrintedSize) (r PrintRange, ok bool) {
	for _, r := range p.InPrint {
		if r.Of == of {
			return r, true
		}
	}
	return PrintRange{}, false
}

// check refuses a preset that no table gave: an empty one, or one of a form, a
// group or a region that does not exist. The error is a box.Problem, or an
// *UnknownError, which is one too.
func (p Preset) check(path string) error {
	if p.Form == "" || p.Group == "" || p.Region == "" {
		return box.Problem{Path: path, Code: "no-preset", Got: fmt.Sprintf("%.80q", p.Key), Why: "the preset is empty: take one from Get or Find"}
	}
	_, err := Select(Query{Region: p.Region, Group: p.Group, Form: p.Form})
	return err
}

// clone returns a copy that shares nothing with the tables.
func (p Preset) clone() Preset {
	p.Scientific = slices.Clone(p.Scientific)
	p.Members = slices.Clone(p.Members)
	p.CleanMonths = slices.Clone(p.CleanMonths)
	p.Cautions = slices.Clone(p.Cautions)
	p.Chosen = slices.Clone(p.Chosen)
	p.InPrint = slices.Clone(p.InPrint)
	p.Sources = slices.Clone(p.Sources)
	return p
}
