package timber

import (
	"slices"

	"holt.example/species/cite"
)

// Sources lists the publications behind the figures of this package. The
// result is a copy.
func Sources() []cite.Source { return slices.Clone(sources) }
