package timber

import (
	"slices"

	"holt.example/species/cite"
	"holt.example/species/internal/near"
)

// Practice is one published figure of joinery and fixing, in its own unit.
// Sources disagree on some: the table keeps both sides.
type Practice struct {
	Key   string // "housing-depth"
	Topic string // "housing", "nail", "pilot hole" ...
	Of    string // what the figure is of
	// Value, with High as the upper end where a range is given; 0 where the
	// practice is a Formula or a Text.
	Value, High float64
	Unit        string // "mm", "in", "d" (diameters), "1" (a share) ...
	Text        string // where it is no number
	Formula     string
	Applies     string
	Source      string // a key; see Sources
	Locator     string
	Basis       cite.Basis
	Note        string
}

// Practices lists the figures on a topic, or all for "", in the order of the
// table. An unknown topic is an *UnknownError. The result is a copy.
func Practices(topic string) ([]Practice, error) {
	if topic == "" {
		return slices.Clone(practices), nil
	}
	var out []Practice
	var list []string
	for _, p := range practices {
		if p.Topic == topic {
			out = append(out, p)
		}
		if !slices.Contains(list, p.Topic) {
			list = append(list, p.Topic)
		}
	}
	if out == nil {
		return nil, &UnknownError{What: "topic", Got: topic, Near: near.Names(topic, list, suggestions)}
	}
	return out, nil
}

// PracticeOf returns one figure by its key. The error is an *UnknownError.
func PracticeOf(key string) (Practice, error) {
	list := make([]string, len(practices))
	for i, p := range practices {
		if p.Key == key {
			return p, nil
		}
		list[i] = p.Key
	}
	return Practice{}, &UnknownError{What: "practice", Got: key, Near: near.Names(key, list, suggestions)}
}

// Glue is a class of thermoplastic wood adhesive by EN 204. Resin glues stand
// outside it.
type Glue int

// The classes, from dry rooms to the weather.
const (
	D1 Glue = 1 + iota
	D2
	D3
	D4
)

// String is the name of the class; "" if there is no such class.
func (g Glue) String() string {
	if g < D1 || g > D4 {
		return ""
	}
	return [...]string{"D1", "D2", "D3", "D4"}[g-D1]
}

// Use says where the class belongs, by a summary of EN 204; "" if there is no
// such class.
func (g Glue) Use() string {
	p, err := PracticeOf("glue-" + g.String())
	if err != nil {
		return ""
	}
	return p.Text
}

// GlueFor is the least class for joints outdoors: D3 out of the weather, D4 in
// it, and then only under a coating (EN 204, by a summary of it).
func GlueFor(inTheWeather bool) Glue {
	if inTheWeather {
		return D4
	}
	return D3
}
