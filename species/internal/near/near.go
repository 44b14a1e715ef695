// Package near finds the names that somebody may have meant.
package near

import (
	"sort"
	"strings"
	"unicode"
)

// Fold brings a name into the form in which names are compared: lower case,
// words parted by one space, the accents of Latin letters dropped, and every
// apostrophe left out. "Bewick's_Wren" and "bewicks wren" fold alike.
func Fold(s string) string {
	var b strings.Builder
	b.Grow(len(s))
	gap := false
	for _, r := range strings.ToLower(s) {
		switch {
		case r == '\'' || r == '’' || r == '`':
			continue
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			if gap && b.Len() > 0 {
				b.WriteByte(' ')
			}
			gap = false
			if r < 0x80 {
				b.WriteByte(byte(r))
			} else {
				b.WriteString(plain(r))
			}
		default:
			gap = true
		}
	}
	return b.String()
}

// plain drops the accent of the letters that occur in European names.
func plain(r rune) string {
	switch r {
	case 'à', 'á', 'â', 'ã', 'ä', 'å', 'ā', 'ă', 'ą':
		return "a"
	case 'ç', 'ć', 'č':
		return "c"
	case 'è', 'é', 'ê', 'ë', 'ē', 'ę', 'ě':
		return "e"
	case 'ì', 'í', 'î', 'ï', 'ī':
		return "i"
	case 'ñ', 'ń', 'ň':
		return "n"
	case 'ò', 'ó', 'ô', 'õ', 'ö', 'ø', 'ő':
		return "o"
	case 'ù', 'ú', 'û', 'ü', 'ů', 'ű':
		return "u"
	case 'ý', 'ÿ':
		return "y"
	case 'š', 'ś':
		return "s"
	case 'ž', 'ź', 'ż':
		return "z"
	case 'ł':
		return "l"
	case 'ß':
		return "ss"
	case 'æ':
		return "ae"
	case 'œ':
		return "oe"
	}
	return string(r)
}

// Longest is the length, in runes, beyond which a name is not compared: a
// name is short, and the work grows with the square of it.
const Longest = 80

// Names picks from the list up to most names close to the one given: those
// that need at most a third of its letters changed, and those that hold all of
// its words. Nearest first, equals in alphabetical order; the order of the
// list does not matter. Of names that fold alike the first stands for all.
func Names(got string, list []string, most int) []string {
	want := Fold(got)
	if want == "" || len([]rune(want)) > Longest {
		return nil
	}
	type hit struct {
		name string
		cost int
	}
	var hits []hit
	limit := len([]rune(want)) / 3
	if limit < 1 {
		limit = 1
	}
	for _, n := range list {
		f := Fold(n)
		d := distance(want, f)
		if d <= limit {
			hits = append(hits, hit{n, d})
		} else if holds(f, want) {
			hits = append(hits, hit{n, limit + 1})
		}
	}
	sort.Slice(hits, func(i, j int) bool {
		if hits[i].cost != hits[j].cost {
			return hits[i].cost < hits[j].cost
		}
		return hits[i].name < hits[j].name
	})
	var out []string
	seen := map[string]bool{}
	for _, h := range hits {
		if len(out) == most {
			break
		}
		if f := Fold(h.name); !seen[f] {
			seen[f] = true
			out = append(out, h.name)
		}
	}
	return out
}

// holds says whether every word of want begins a word of name.
func holds(name, want string) bool {
	words := strings.Fields(name)
	for _, w := range strings.Fields(want) {
		if len(w) < 3 {
			return false
		}
		found := false
		for _, n := range words {
			if strings.HasPrefix(n, w) {
				found = true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// distance counts the letters to insert, drop, change or swap with their
// neighbour to turn a into b (optimal string alignment).
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(y) > Longest {
		return len(y)
	}
	two := make([]int, len(y)+1)
	one := make([]int, len(y)+1)
	now := make([]int, len(y)+1)
	for j := range one {
		one[j] = j
	}
	for i := 1; i <= len(x); i++ {
		now[0] = i
		for j := 1; j <= len(y); j++ {
			c := 1
			if x[i-1] == y[j-1] {
				c = 0
			}
			d := min(one[j]+1, now[j-1]+1, one[j-1]+c)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				d = min(d, two[j-2]+1)
			}
			now[j] = d
		}
		two, one, now = one, now, two
	}
	return one[len(y)]
}
