package near

import (
	"slices"
	"strings"
)

// made say how a board was made and nothing of its wood.
var made = []string{"rough", "sawn", "unplaned", "planed", "dressed", "smooth", "untreated", "board", "boards", "solid", "dry", "seasoned", "air-dried", "wood", "timber"}

// Wood is what a material says beside how its boards were made: "white oak" of "rough
// sawn white oak". A comma that only parted the two goes too.
func Wood(material string) string {
	var rest []string
	for _, x := range strings.Fields(material) {
		if !slices.Contains(made, strings.Trim(strings.ToLower(x), ",;")) {
			rest = append(rest, x)
		}
	}
	return strings.TrimRight(strings.Join(rest, " "), ",;")
}
