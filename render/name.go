package render

import (
	"strconv"
	"strings"
)

// longest is the greatest length of a name without its extension: file systems
// take 255 bytes, but paths add up and old tools take less.
const longest = 64

// fileNames makes names of files from names of parts: safe on every system, and
// no two of them equal, even where upper and lower case are one.
func fileNames(parts []string) []string {
	out := make([]string, len(parts))
	taken := make(map[string]bool, len(parts))
	for i, p := range parts {
		base := fileName(p)
		name := base
		for n := 2; taken[strings.ToLower(name)]; n++ {
			name = base + "-" + strconv.Itoa(n)
		}
		taken[strings.ToLower(name)] = true
		out[i] = name
	}
	return out
}

// fileName makes the name of a file, without extension, from any text. Letters
// beyond ASCII become hyphens too, because systems differ in how they write
// them.
func fileName(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '.', r == '_', r == '-':
			b.WriteRune(r)
		default:
			b.WriteByte('-')
		}
		if b.Len() == longest {
			break
		}
	}
	// A dot in front hides a file, one behind is lost on some systems, a hyphen
	// in front looks like an option.
	n := strings.Trim(b.String(), ".-")
	if n == "" {
		n = "part"
	}
	if reserved(n) {
		n = "part-" + n
	}
	return n
}

// reserved reports whether a name belongs to a device on some systems, with or
// without an extension.
func reserved(n string) bool {
	n, _, _ = strings.Cut(strings.ToLower(n), ".")
	switch n {
	case "con", "prn", "aux", "nul", "conin", "conout", "clock":
		return true
	}
	return len(n) == 4 && (strings.HasPrefix(n, "com") || strings.HasPrefix(n, "lpt")) && n[3] >= '0' && n[3] <= '9'
}
