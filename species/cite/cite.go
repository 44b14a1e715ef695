// Package cite says where a figure comes from: who published it, where it
// stands, and whether it was read there or only remembered.
//
// Every figure of species and of timber carries a source by its key, so that
// tables stay short and a list of "sources used" is one walk over keys.
package cite

import (
	"strconv"
	"strings"
)

// Basis says how well founded a figure is. The zero value is Read.
type Basis int

// The bases, from the firmest.
const (
	// Read means that the figure was read in the source named.
	Read Basis = iota
	// Computed means that a formula from the source named gives the figure.
	Computed
	// Practice means common practice of the trade: widely held, and no single
	// publication is named for the number.
	Practice
	// Memory means that the source named was not at hand when the figure was
	// written down. Treat it as unchecked.
	Memory
)

// String is the word for the basis, as it stands in lists.
func (b Basis) String() string {
	switch b {
	case Read:
		return "read"
	case Computed:
		return "computed"
	case Practice:
		return "common practice"
	case Memory:
		return "from memory"
	}
	return "unknown basis"
}

// Source is a publication.
type Source struct {
	Key       string
	Title     string // "" if the copy that was read shows none
	Publisher string // "" if not shown
	Year      int    // 0 if not shown
	URL       string // of the copy that was read; "" if none
	Kind      string // agency, society, handbook, standard, web page ...
	Basis     Basis  // Read or Memory
	Note      string // what of it was seen
}

// String is the source in one line: publisher, title, year.
func (s Source) String() string {
	var b strings.Builder
	for _, w := range []string{s.Publisher, s.Title} {
		if w == "" {
			continue
		}
		if b.Len() > 0 {
			b.WriteString(": ")
		}
		b.WriteString(w)
	}
	if b.Len() == 0 {
		b.WriteString(s.Key)
	}
	if s.Year != 0 {
		b.WriteString(", " + strconv.Itoa(s.Year))
	}
	if s.Basis == Memory {
		b.WriteString(" (from memory)")
	}
	return b.String()
}
