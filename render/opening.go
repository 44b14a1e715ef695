package render

import (
	"fmt"
	"strings"

	"holt.example/box"
	"holt.example/render/bom"
)

// opening says what opens, and how far that is proved to be free.
func opening(b *strings.Builder, plan *box.Plan) {
	if len(plan.Ways()) == 0 {
		return
	}
	b.WriteString("\n## Opening\n\n")
	for _, w := range plan.Ways() {
		fmt.Fprintf(b, "- %s ", bom.Escape(string(w.Part)))
		if w.Turns {
			fmt.Fprintf(b, "turns by %s°", figure(w.Most))
		} else {
			fmt.Fprintf(b, "comes out by %s", figure(w.Most))
		}
		if len(w.Moves) > 1 {
			fmt.Fprintf(b, ", and takes along %s", names(w.Moves[1:], ", "))
		}
		b.WriteString(" without touching another part.\n")
	}
}
