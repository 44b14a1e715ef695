package bom

import "bytes"

// indent spreads JSON over lines, but keeps lists of numbers on one line and
// contours on one line.
func indent(in []byte) []byte {
	out := make([]byte, 0, 2*len(in))
	depth := 0
	line := func() {
		out = append(out, '\n')
		for range depth {
			out = append(out, '\t')
		}
	}
	for i := 0; i < len(in); i++ {
		c := in[i]
		switch c {
		case '"':
			n := i + 1
			for in[n] != '"' {
				if in[n] == '\\' {
					n++
				}
				n++
			}
			out = append(out, in[i:n+1]...)
			i = n
		case '{', '[':
			if n := numbers(in[i:]); n > 0 {
				out = append(out, bytes.ReplaceAll(in[i:i+n], []byte(","), []byte(", "))...)
				i += n - 1
				continue
			}
			out = append(out, c)
			depth++
			line()
		case '}', ']':
			depth--
			line()
			out = append(out, c)
		case ',':
			out = append(out, c)
			line()
		case ':':
			out = append(out, c, ' ')
		default:
			out = append(out, c)
		}
	}
	return append(out, '\n')
}

// numbers is the length of the list at the start of JSON if there are only
// numbers and lists in it, else 0. An empty list or object counts too.
func numbers(in []byte) int {
	if bytes.HasPrefix(in, []byte("{}")) {
		return 2
	}
	if in[0] != '[' {
		return 0
	}
	depth := 0
	for i, c := range in {
		switch c {
		case '[':
			depth++
		case ']':
			depth--
			if depth == 0 {
				return i + 1
			}
		case '"', '{':
			return 0
		}
	}
	return 0
}
