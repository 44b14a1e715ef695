package species

import (
	"slices"

	"holt.example/species/cite"
	"holt.example/species/internal/near"
	"holt.example/species/timber"
)

// Sources lists the publications behind presets, rules and figures, without
// those of timber (see timber.Sources). The result is a copy.
func Sources() []cite.Source { return slices.Clone(sources) }

// SourceOf returns the publication of a key, of this package or of timber. The
// error is an *UnknownError.
func SourceOf(key string) (cite.Source, error) {
	var list []string
	for _, s := range sources {
		if s.Key == key {
			return s, nil
		}
		list = append(list, s.Key)
	}
	for _, s := range timber.Sources() {
		if s.Key == key {
			return s, nil
		}
		list = append(list, s.Key)
	}
	return cite.Source{}, &UnknownError{What: "source", Got: key, Near: near.Names(key, list, suggestions)}
}
