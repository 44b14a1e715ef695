package species

import (
	"slices"

	"holt.example/species/cite"
	"holt.example/species/internal/near"
)

// Animal is an animal, or a group of animals, for which figures are in print.
type Animal struct {
	Key, Common, Scientific string
	Group                   Group
	Region                  Region
}

// Printed is one figure as a publication has it, converted to mm, metres or
// square mm. Figures in inches were converted exactly.
type Printed struct {
	// Animal is the key of the animal; "general" is advice for all boxes of the
	// region.
	Animal string
	Region Region
	// Quantity is what the figure is of: "entrance_diameter".
	Quantity string
	Range    Span
	Unit     string // "mm", "m", "mm2", "count", "month"
	Source   string // a key; see Source
	Locator  string // page, table or section
	Basis    cite.Basis
}

// General is the Animal of figures that hold for all boxes of a region.
const General = "general"

// Animals lists the animals for which figures are in print, with presets or
// without. The result is a copy.
func Animals() []Animal { return slices.Clone(names) }

// PrintedFor returns the figures in print for an animal's key, in every
// region where there are any, or the general ones for General. The error is an
// *UnknownError.
func PrintedFor(animal string) ([]Printed, error) {
	var out []Printed
	for _, f := range printed {
		if f.Animal == animal {
			out = append(out, f)
		}
	}
	if out == nil {
		list := make([]string, len(names))
		for i := range names {
			list[i] = names[i].Key
		}
		return nil, &UnknownError{What: "animal", Got: animal, Near: near.Names(animal, list, suggestions)}
	}
	return out, nil
}

// Printed returns the figures in print for the members of a preset in its
// region: what its values were chosen from.
func (p Preset) Printed() []Printed {
	var out []Printed
	for _, m := range p.Members {
		for _, f := range printed {
			if f.Animal == m && f.Region == p.Region {
				out = append(out, f)
			}
		}
	}
	return out
}

// Citation is a source with the places in it that were used.
type Citation struct {
	Source   cite.Source
	Locators []string // empty where only general advice was taken from it
}

// Citations are the sources of a preset, each with the places where its
// figures stand, in the order of Sources.
func (p Preset) Citations() []Citation {
	figures := p.Printed()
	var out []Citation
	for _, key := range p.Sources {
		s, err := SourceOf(key)
		if err != nil {
			continue // TestEverySourceIsKnown holds the tables to it
		}
		c := Citation{Source: s}
		for _, f := range figures {
			if f.Source == key && !slices.Contains(c.Locators, f.Locator) {
				c.Locators = append(c.Locators, f.Locator)
			}
		}
		if c.Locators == nil {
			for _, f := range printed {
				if f.Animal == General && f.Region == p.Region && f.Source == key && !slices.Contains(c.Locators, f.Locator) {
					c.Locators = append(c.Locators, f.Locator)
				}
			}
		}
		out = append(out, c)
	}
	return out
}
