package species

import (
	"fmt"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/species/internal/near"
)

// UnknownError says that a name is not in the tables. errors.As finds it, and
// through it a box.Problem for those who list problems.
type UnknownError struct {
	What string // "preset", "animal", "region", "form", "group", "rule", "source"
	Got  string
	Near []string // what may have been meant, nearest first; may be empty
	Why  string   // more about it, "" if there is nothing
}

// Error says what is unknown and what may have been meant.
func (e *UnknownError) Error() string {
	s := fmt.Sprintf("unknown %s %.80q", e.What, e.Got)
	if e.Why != "" {
		s += ": " + e.Why
	}
	if len(e.Near) > 0 {
		s += "; did you mean " + strings.Join(e.Near, ", ") + "?"
	}
	return s
}

// Unwrap gives the same as a box.Problem with the code "unknown-" and What.
func (e *UnknownError) Unwrap() error {
	return box.Problem{Path: "species", Code: "unknown-" + e.What, Got: fmt.Sprintf("%.80q", e.Got),
		Why: e.Error(), Try: strings.Join(e.Near, ", ")}
}

// suggestions is how many names an UnknownError offers.
const suggestions = 5

// All returns every preset: Europe first, then North America, each in the
// order of the table. The result is a copy.
func All() []Preset {
	out := make([]Preset, 0, len(presetsEurope)+len(presetsNorthAmerica))
	each(func(p *Preset) { out = append(out, p.clone()) })
	return out
}

// each calls f for every preset in order.
func each(f func(*Preset)) {
	for i := range presetsEurope {
		f(&presetsEurope[i])
	}
	for i := range presetsNorthAmerica {
		f(&presetsNorthAmerica[i])
	}
}

// Get returns the preset of a key. The error is an *UnknownError.
func Get(key string) (Preset, error) {
	var out Preset
	var keys []string
	found := false
	each(func(p *Preset) {
		if p.Key == key {
			out, found = p.clone(), true
		}
		keys = append(keys, p.Key)
	})
	if !found {
		return Preset{}, &UnknownError{What: "preset", Got: key, Near: near.Names(key, keys, suggestions)}
	}
	return out, nil
}

// MustGet is Get for examples and tests: it panics on an unknown key.
func MustGet(key string) Preset {
	p, err := Get(key)
	if err != nil {
		panic(err)
	}
	return p
}

// Find returns every preset for a name: a key, a common or scientific name of
// the preset, or of any member of it. Case, accents, hyphens, underscores and
// apostrophes do not matter. Where nothing matches, the error is an
// *UnknownError with suggestions; it says so if figures are in print for the
// animal though no preset was made of them (see PrintedFor).
func Find(name string) ([]Preset, error) {
	want := near.Fold(name)
	var out []Preset
	var list []string
	each(func(p *Preset) {
		called := p.called()
		list = append(list, called...)
		if want != "" && slices.ContainsFunc(called, func(n string) bool { return near.Fold(n) == want }) {
			out = append(out, p.clone())
		}
	})
	if len(out) > 0 {
		return out, nil
	}
	e := &UnknownError{What: "animal", Got: name}
	for i := range names {
		a := &names[i]
		if want != "" && (near.Fold(a.Key) == want || near.Fold(a.Common) == want || near.Fold(a.Scientific) == want) {
			e.Why = fmt.Sprintf("no preset was made, but figures are in print: see PrintedFor(%q)", a.Key)
			return nil, e
		}
	}
	e.Near = near.Names(name, list, suggestions)
	return nil, e
}

// called lists all names of a preset and of its members.
func (p *Preset) called() []string {
	out := []string{p.Key, p.Common}
	out = append(out, p.Scientific...)
	for _, m := range p.Members {
		for i := range names {
			if names[i].Key == m && names[i].Region == p.Region {
				out = append(out, names[i].Key, names[i].Common)
			}
		}
	}
	return out
}

// Query picks presets by what they are; an empty field does not matter.
type Query struct {
	Region Region
	Group  Group
	Form   Form
}

// Select returns the presets that fit the query, in the order of All. A
// region, group or form that does not exist is an *UnknownError; a query that
// nothing fits gives an empty list.
func Select(q Query) ([]Preset, error) {
	if err := known("region", q.Region, Regions()); err != nil {
		return nil, err
	}
	if err := known("group", q.Group, Groups()); err != nil {
		return nil, err
	}
	if err := known("form", q.Form, Forms()); err != nil {
		return nil, err
	}
	var out []Preset
	each(func(p *Preset) {
		if (q.Region == "" || p.Region == q.Region) && (q.Group == "" || p.Group == q.Group) && (q.Form == "" || p.Form == q.Form) {
			out = append(out, p.clone())
		}
	})
	return out, nil
}

// known checks a word against its list; "" is always known.
func known[T ~string](what string, got T, list []T) error {
	if got == "" || slices.Contains(list, got) {
		return nil
	}
	words := make([]string, len(list))
	for i, w := range list {
		words[i] = string(w)
	}
	n := near.Names(string(got), words, suggestions)
	if len(n) == 0 {
		n = words
	}
	return &UnknownError{What: what, Got: string(got), Near: n}
}
