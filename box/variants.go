package box

import (
	"fmt"
	"iter"
	"math"
	"strings"
)

// Variants are all designs that a base and a few axes give: every value of the
// first axis with every value of the second, and so on. It is a plain value;
// nothing is made until All is walked.
type Variants struct {
	Base Design
	Axes []Axis
}

// Axis is one way in which designs differ.
type Axis struct {
	Name   string // "board", "roof"
	Values []Value
}

// Value is one choice on an axis.
type Value struct {
	Name string // "12", "pent"
	// Set makes the choice in a copy of the base, whose slices and maps are its
	// own. The values of earlier axes are set before those of later ones.
	Set func(*Design)
}

// Key names a variant by its choices: "board=12,roof=pent". It depends on the
// names alone, not on what else there is, and does for the name of a file:
// whatever is not a letter, a digit, a space or one of .-_ stands as %XX.
type Key string

// All walks all variants in the order of nested loops, the last axis turning
// fastest. Each design is made when it is asked for and is called by the base's
// name and its values' names, unless a value sets another name. Without axes
// the base is the only variant, and its key is empty.
//
// A variant may be one that cannot be made: Resolve says so.
func (v Variants) All() iter.Seq2[Key, Design] {
	return func(yield func(Key, Design) bool) {
		at := make([]int, len(v.Axes))
		for _, a := range v.Axes {
			if len(a.Values) == 0 {
				return
			}
		}
		for {
			if !yield(v.key(at), v.design(at)) {
				return
			}
			k := len(at) - 1
			for ; k >= 0; k-- {
				if at[k]++; at[k] < len(v.Axes[k].Values) {
					break
				}
				at[k] = 0
			}
			if k < 0 {
				return
			}
		}
	}
}

// Len is the number of variants; a number too large for an int is the largest
// int.
func (v Variants) Len() int {
	n := 1
	for _, a := range v.Axes {
		switch k := len(a.Values); {
		case k == 0:
			return 0
		case n > math.MaxInt/k:
			n = math.MaxInt
		default:
			n *= k
		}
	}
	return n
}

// Find makes the variant of a key that All gave, now or in an earlier run; it
// is false where there is none.
func (v Variants) Find(key Key) (Design, bool) {
	at := make([]int, len(v.Axes))
	parts := strings.Split(string(key), ",")
	if key == "" {
		parts = nil
	}
	if len(parts) != len(at) {
		return Design{}, false
	}
	for k, a := range v.Axes {
		at[k] = -1
		for i := len(a.Values) - 1; i >= 0; i-- {
			if choice(a, i) == parts[k] {
				at[k] = i
			}
		}
		if at[k] < 0 {
			return Design{}, false
		}
	}
	return v.design(at), true
}

// Check reports all that would make keys unclear or All break off: an axis
// without values, a name that is missing, not fit for a list, or there twice, a
// value without Set. The error is a Problems.
func (v Variants) Check() error {
	c := &collector{}
	axes := map[string]bool{}
	for i, a := range v.Axes {
		path := fmt.Sprintf("Axes[%d]", i)
		c.name(path+".Name", a.Name)
		if axes[a.Name] {
			c.addf(path+".Name", "twice", "another axis has the name %.60q", a.Name)
		}
		axes[a.Name] = true
		if len(a.Values) == 0 {
			c.addf(path+".Values", "missing", "an axis without values leaves no variants at all")
		}
		values := map[string]bool{}
		for k, x := range a.Values {
			path := fmt.Sprintf("%s.Values[%d]", path, k)
			c.name(path+".Name", x.Name)
			if values[x.Name] {
				c.addf(path+".Name", "twice", "another value of this axis has the name %.60q", x.Name)
			}
			values[x.Name] = true
			if x.Set == nil {
				c.addf(path+".Set", "missing", "a value says what it changes")
			}
		}
	}
	return c.err()
}

func (v Variants) key(at []int) Key {
	var b strings.Builder
	for k, a := range v.Axes {
		if k > 0 {
			b.WriteByte(',')
		}
		b.WriteString(choice(a, at[k]))
	}
	return Key(b.String())
}

// choice is one part of a key.
func choice(a Axis, i int) string { return escapeKey(a.Name) + "=" + escapeKey(a.Values[i].Name) }

// escapeKey leaves what is safe in a key and in the name of a file.
func escapeKey(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', strings.IndexByte(" .-_", c) >= 0:
			b.WriteByte(c)
		default:
			fmt.Fprintf(&b, "%%%02X", c)
		}
	}
	return b.String()
}

func (v Variants) design(at []int) Design {
	return v.Base.With(func(d *Design) {
		for k, a := range v.Axes {
			d.Name += " " + a.Values[at[k]].Name
		}
		for k, a := range v.Axes {
			if set := a.Values[at[k]].Set; set != nil {
				set(d)
			}
		}
	})
}
