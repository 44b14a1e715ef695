package timber

import (
	"fmt"
	"slices"

	"holt.example/joints"
	"holt.example/species/cite"
	"holt.example/species/internal/near"
)

// StockKind is a kind of stock, or of the rules that it is made to.
type StockKind string

// The kinds of stock.
const (
	LumberUS     StockKind = "us softwood lumber"
	PlywoodUS    StockKind = "us plywood"
	PlywoodEU    StockKind = "eu plywood"
	SheetSize    StockKind = "sheet size"
	MDF          StockKind = "mdf"
	OSB          StockKind = "osb"
	SawnEU       StockKind = "eu sawn softwood"
	StructuralEU StockKind = "eu structural softwood"
	PlanedEU     StockKind = "eu planed softwood"
	Measuring    StockKind = "measurement" // how sizes are measured
)

// Tolerance is a permitted deviation in mm, which may grow with the nominal
// thickness: Fixed + Per * t. Known is false where none is given.
type Tolerance struct {
	Fixed, Per float64
	Known      bool
}

// At is the deviation at a nominal thickness in mm.
func (t Tolerance) At(thickness joints.MM) joints.MM {
	return joints.MM(t.Fixed + float64(t.Per*float64(thickness)))
}

// Stock is a size that is sold, or a rule on sizes. Sizes are in mm; 0 is a
// size that does not matter or is not given.
type Stock struct {
	Key     string
	Kind    StockKind
	Name    string // "1x4", "birch plywood 12 mm sanded"
	Nominal string // what the seller calls it: "1 x 4 in"
	// Thickness, Width and Length are what it measures.
	Thickness, Width, Length joints.MM
	// ThicknessIn and WidthIn are the same in inches, as printed: "3-1/2".
	ThicknessIn, WidthIn string
	// Least and Most are limits: of the thickness, or of the lengths sold.
	Least, Most joints.MM
	// Plus and Minus are the deviations permitted.
	Plus, Minus Tolerance
	// Value is another figure, with its Unit: plies, a slope, a rule in words.
	Value, Unit string
	When        string // the state it holds for
	Source      string // a key; see Sources
	Locator     string
	Basis       cite.Basis
	Note        string
}

// StockOf lists the stock of a kind, or all of it for "", in the order of the
// table. An unknown kind is an *UnknownError. The result is a copy.
func StockOf(kind StockKind) ([]Stock, error) {
	if kind == "" {
		return slices.Clone(stock), nil
	}
	var out []Stock
	var list []string
	for _, s := range stock {
		if s.Kind == kind {
			out = append(out, s)
		}
		if k := string(s.Kind); !slices.Contains(list, k) {
			list = append(list, k)
		}
	}
	if out == nil {
		return nil, &UnknownError{What: "kind of stock", Got: string(kind), Near: near.Names(string(kind), list, suggestions)}
	}
	return out, nil
}

// StockNamed returns the stock of a key, or the first of a name: "1x4" is
// dressed and dry. The error is an *UnknownError.
func StockNamed(name string) (Stock, error) {
	var list []string
	for _, s := range stock {
		if s.Key == name {
			return s, nil
		}
		list = append(list, s.Key)
	}
	want := near.Fold(name)
	for _, s := range stock {
		if want != "" && (near.Fold(s.Name) == want || near.Fold(s.Nominal) == want) {
			return s, nil
		}
		list = append(list, s.Name)
	}
	return Stock{}, &UnknownError{What: "stock", Got: name, Near: near.Names(name, list, suggestions)}
}

// Limits is the least and the most that a piece may measure in thickness:
// the limits where they are printed, else the thickness with its deviations.
// ok is false where neither is known. Boards differ all the same: measure them.
func (s Stock) Limits() (least, most joints.MM, ok bool) {
	switch {
	case s.Least > 0 && s.Most > 0 && s.Kind != SawnEU: // there they are lengths
		return s.Least, s.Most, true
	case s.Thickness > 0 && s.Plus.Known && s.Minus.Known:
		return s.Thickness - s.Minus.At(s.Thickness), s.Thickness + s.Plus.At(s.Thickness), true
	}
	return 0, 0, false
}

// NominalInch is what is left in mm of a softwood width of nominal whole or
// half inches after dressing, by the general rule of American lumber: a
// quarter inch off under 2 in, half an inch under 8, three quarters from there
// on. The rule is for widths; a thickness of 2 in loses half an inch too. It
// takes from 1 to 16 inches.
func NominalInch(inches float64) (joints.MM, error) {
	if err := within("nominal width", inches, 1, 16, "in"); err != nil {
		return 0, err
	}
	off := 0.75
	switch {
	case inches < 2:
		off = 0.25
	case inches < 8:
		off = 0.5
	}
	return joints.Inch(inches - off), nil
}

// BoardFoot is a board foot in mm3: 144 cubic inches.
const BoardFoot = 144 * 25.4 * 25.4 * 25.4

// BoardFeet counts board feet as they are sold: nominal thickness and width in
// inches, length in feet.
func BoardFeet(thicknessIn, widthIn, lengthFt float64) (float64, error) {
	err := first(
		within("thickness", thicknessIn, 0, 100, "in"),
		within("width", widthIn, 0, 100, "in"),
		within("length", lengthFt, 0, 1000, "ft"),
	)
	if err != nil {
		return 0, err
	}
	return float64(float64(thicknessIn*widthIn)*lengthFt) / 12, nil
}

// String is the stock in one line.
func (s Stock) String() string {
	t := s.Name
	if s.Thickness > 0 && s.Width > 0 {
		t += fmt.Sprintf(": %v x %v mm", float64(s.Thickness), float64(s.Width))
	} else if s.Thickness > 0 {
		t += fmt.Sprintf(": %v mm", float64(s.Thickness))
	}
	return t
}
