package stl

import (
	"encoding/binary"
	"math"
	"strconv"
	"strings"

	"holt.example/box/solid"
)

// facet is a triangle as it is written.
type facet struct {
	n       solid.Vec
	a, b, c solid.Vec
}

// headLength is the length of a binary header before the count.
const headLength = 80

// header is the binary header and room for the count. It begins with the unit,
// so that no name can push that out, and never with "solid", by which readers
// tell text from binary.
func header(title string) []byte {
	b := make([]byte, headLength+4)
	n := copy(b, "mm, holt: ")
	copy(b[n:headLength], name(title, headLength-n))
	return b
}

func setCount(b []byte, n int) {
	binary.LittleEndian.PutUint32(b[headLength:], uint32(n))
}

// appendBinary writes 50 bytes a triangle.
func appendBinary(b []byte, facets []facet) []byte {
	for _, f := range facets {
		for _, v := range [...]solid.Vec{f.n, f.a, f.b, f.c} {
			for _, x := range [...]float64{v.X, v.Y, v.Z} {
				b = binary.LittleEndian.AppendUint32(b, math.Float32bits(float32(x)))
			}
		}
		b = append(b, 0, 0)
	}
	return b
}

// appendText writes one solid.
func appendText(b []byte, title string, facets []facet) []byte {
	title = name(title, 70)
	b = append(append(append(b, "solid "...), title...), '\n')
	vec := func(v solid.Vec) {
		for _, x := range [...]float64{v.X, v.Y, v.Z} {
			b = append(b, ' ')
			b = appendFixed(b, x)
		}
		b = append(b, '\n')
	}
	for _, f := range facets {
		b = append(b, "facet normal"...)
		vec(f.n)
		b = append(b, "outer loop\n"...)
		for _, v := range [...]solid.Vec{f.a, f.b, f.c} {
			b = append(b, "vertex"...)
			vec(v)
		}
		b = append(b, "endloop\nendfacet\n"...)
	}
	return append(append(append(b, "endsolid "...), title...), '\n')
}

// appendFixed writes x with at most four decimals, without an exponent, without
// needless zeros and without a negative zero.
func appendFixed(b []byte, x float64) []byte {
	s := strconv.FormatFloat(x, 'f', 4, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		s = "0"
	}
	return append(b, s...)
}

// name writes a name in printable ASCII, other characters as Go writes them in
// a string ("\u00f8", "\n"), so that two names stay two. It is cut, never in
// the middle of such a character, to most bytes.
func name(s string, most int) string {
	if len(s) > 4*most {
		s = s[:4*most] // no escape is shorter than its character
	}
	b := make([]byte, 0, most)
	for _, r := range s {
		q := strconv.QuoteRuneToASCII(r)
		q = q[1 : len(q)-1]
		if r == '\'' {
			q = "'"
		}
		if len(b)+len(q) > most {
			break
		}
		b = append(b, q...)
	}
	return strings.TrimSpace(string(b))
}
