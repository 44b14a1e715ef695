package timber

import (
	"fmt"
	"slices"
	"strings"

	"holt.example/species/cite"
	"holt.example/species/internal/near"
)

// Property is what a figure of a wood is of.
type Property string

// The properties.
const (
	GravityBasic     Property = "specific gravity, oven-dry mass over green volume"
	Gravity12        Property = "specific gravity, oven-dry mass over volume at 12 %"
	Density12        Property = "density at 12 % moisture content"    // kg/m3
	DensityBasic     Property = "basic density"                       // kg/m3, oven-dry mass over green volume
	ShrinkRadial     Property = "shrinkage, radial"                   // %, green to oven-dry
	ShrinkTangential Property = "shrinkage, tangential"               // %
	ShrinkVolume     Property = "shrinkage, volume"                   // %
	ShrinkLength     Property = "shrinkage, along the grain"          // %
	CoefRadial       Property = "coefficient of movement, radial"     // per 1 % of moisture content
	CoefTangential   Property = "coefficient of movement, tangential" // per 1 % of moisture content
	MoveRadial       Property = "movement, radial"                    // % per 1 % of moisture content
	MoveTangential   Property = "movement, tangential"                // % per 1 % of moisture content
	DurabilityEN350  Property = "durability of the heartwood, EN 350" // class 1 to 5
	DecayUS          Property = "decay resistance of the heartwood"   // words
	Equilibrium      Property = "equilibrium moisture content"        // %
)

// Figure is one published figure of a wood.
type Figure struct {
	Of      Property
	Value   float64 // 0 for a class
	High    float64 // upper end where a range is printed, else 0
	Class   string  // of durability: "3-4", or words
	Unit    string  // "" for a class
	When    string  // the state it holds for
	Source  string  // a key; see Sources
	Locator string
	Basis   cite.Basis // Memory covers what was computed from remembered figures
	Note    string
}

// Wood is a kind of timber with what is published about it. Figures of one
// property stand in order of preference, the handbook's first.
type Wood struct {
	Key        string // "scots-pine"
	Name       string
	Scientific []string
	Broadleaf  bool // a hardwood
	Figures    []Figure
}

// UnknownError says that a name is not in the tables.
type UnknownError struct {
	What string // "wood", "glue", "stock" ...
	Got  string
	Near []string // what may have been meant, nearest first; may be empty
}

// Error says what is unknown and what may have been meant.
func (e *UnknownError) Error() string {
	s := fmt.Sprintf("unknown %s %.80q", e.What, e.Got)
	if len(e.Near) > 0 {
		s += "; did you mean " + strings.Join(e.Near, ", ") + "?"
	}
	return s
}

// suggestions is how many names an UnknownError offers.
const suggestions = 5

// Woods lists all woods, softwoods first. The result is a copy.
func Woods() []Wood {
	out := make([]Wood, 0, len(conifers)+len(broadleaves))
	for _, w := range conifers {
		out = append(out, w.clone())
	}
	for _, w := range broadleaves {
		out = append(out, w.clone())
	}
	return out
}

func (w Wood) clone() Wood {
	w.Scientific = slices.Clone(w.Scientific)
	w.Figures = slices.Clone(w.Figures)
	return w
}

// Get returns the wood of a key, or of a common or scientific name; words in
// brackets count as names too ("European redwood" is Scots pine). Where several
// woods share a name the first in the list is given. Of a name that is none, words
// that say how a board was made are left out: "rough sawn white oak" is white oak.
// The error is an *UnknownError with suggestions.
func Get(name string) (Wood, error) {
	rest := near.Wood(name)
	for _, n := range []string{name, rest} {
		if w, ok := find(near.Fold(n)); ok {
			return w, nil
		}
	}
	var list []string
	for _, table := range [][]Wood{conifers, broadleaves} {
		for i := range table {
			list = append(list, table[i].called()...)
		}
	}
	return Wood{}, &UnknownError{What: "wood", Got: name, Near: near.Names(rest, list, suggestions)}
}

// find is the first wood of a folded name.
func find(want string) (Wood, bool) {
	for _, table := range [][]Wood{conifers, broadleaves} {
		for i := range table {
			for _, n := range table[i].called() {
				if want != "" && near.Fold(n) == want {
					return table[i].clone(), true
				}
			}
		}
	}
	return Wood{}, false
}

// MustGet is Get for examples and tests: it panics on an unknown name.
func MustGet(name string) Wood {
	w, err := Get(name)
	if err != nil {
		panic(err)
	}
	return w
}

// called lists all names of a wood.
func (w *Wood) called() []string {
	out := []string{w.Key, w.Name}
	if a, b, ok := strings.Cut(w.Name, " ("); ok {
		out = append(out, a, strings.TrimSuffix(b, ")"))
	}
	return append(out, w.Scientific...)
}

// Figure returns the preferred figure of a property; ok is false where none is
// known.
func (w Wood) Figure(of Property) (f Figure, ok bool) {
	for _, f := range w.Figures {
		if f.Of == of {
			return f, true
		}
	}
	return Figure{}, false
}

// All returns every figure of a property, the preferred one first.
func (w Wood) All(of Property) []Figure {
	var out []Figure
	for _, f := range w.Figures {
		if f.Of == of {
			out = append(out, f)
		}
	}
	return out
}

// Density is the density at 12 % moisture content in kg/m3: the handbook's
// value where it has one, else another published one, else computed from the
// basic density of the wood density database (Eq. 4-13 and 4-14 of the
// handbook). ok is false for a wood of which neither is known.
func (w Wood) Density() (f Figure, ok bool) {
	if f, ok = w.Figure(Density12); ok {
		return f, true
	}
	b, ok := w.Figure(DensityBasic)
	if !ok {
		return Figure{}, false
	}
	g, err := GravityAt(b.Value/1000, 12)
	if err != nil {
		return Figure{}, false
	}
	d, err := DensityAt(g, 12)
	if err != nil {
		return Figure{}, false
	}
	return Figure{Of: Density12, Value: d, Unit: "kg/m3", When: "computed from the basic density", Source: b.Source, Locator: b.Locator, Basis: cite.Computed}, true
}

// Direction is a direction across the grain.
type Direction int

// The directions. Tangential is along the rings, the width of a flat-sawn
// board, and moves most; Radial is from the heart outwards, the width of a
// quarter-sawn board.
const (
	Tangential Direction = iota
	Radial
)

// Coefficient is how much a dimension across the grain changes per 1 % of
// moisture content, as a share of it at 10 %: the published coefficient where
// there is one, else computed from the total shrinkage. ok is false where
// neither is known.
func (w Wood) Coefficient(d Direction) (f Figure, ok bool) {
	coef, shrink := CoefTangential, ShrinkTangential
	if d == Radial {
		coef, shrink = CoefRadial, ShrinkRadial
	}
	if f, ok = w.Figure(coef); ok {
		return f, true
	}
	s, ok := w.Figure(shrink)
	if !ok {
		return Figure{}, false
	}
	c, err := CoefficientOf(s.Value)
	if err != nil {
		return Figure{}, false
	}
	return Figure{Of: coef, Value: c, Unit: "1 per % MC", When: "computed from the total shrinkage", Source: s.Source, Locator: s.Locator, Basis: cite.Computed}, true
}

// Durability is the range of classes that the sources give the heartwood by
// EN 350, from 1 (very durable) to 5 (not durable). Sapwood is always 5. ok is
// false where no class is known.
func (w Wood) Durability() (best, worst int, ok bool) {
	for _, f := range w.All(DurabilityEN350) {
		for _, r := range f.Class {
			if r < '1' || r > '5' {
				continue
			}
			n := int(r - '0')
			if !ok || n < best {
				best = n
			}
			if !ok || n > worst {
				worst = n
			}
			ok = true
		}
	}
	return best, worst, ok
}

// Corrosive says that damp wood of this kind attacks plain and galvanised steel
// and is stained by it, so that fixings should be stainless: oaks, chestnuts,
// western redcedar, Douglas-fir and redwood. From memory of trade advice; the
// list is not complete.
func (w Wood) Corrosive() bool {
	for _, s := range w.Scientific {
		genus, _, _ := strings.Cut(s, " ")
		switch genus {
		case "Quercus", "Castanea", "Pseudotsuga", "Sequoia":
			return true
		}
		if s == "Thuja plicata" {
			return true
		}
	}
	return false
}
