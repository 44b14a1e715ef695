package svg

import (
	"strings"

	"holt.example/render/internal/flat"
)

// replacer escapes what has a meaning in XML. Never changed.
var replacer = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// escape makes a name safe in an element and in an attribute.
func escape(s string) string { return replacer.Replace(flat.Clean(s, mostText)) }

// mostText is the longest text in characters.
const mostText = 4000
