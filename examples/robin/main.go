// Robin is an open-fronted box for the bothy wall, made with hand tools: it
// prints the review with its sources, the set-ups, and a care sheet.
package main

import (
	"fmt"
	"io"
	"os"

	"holt.example/box"
	"holt.example/species"
)

// Site is a wall behind ivy.
var Site = species.Site{Place: species.OnWall, Above: 1.8, Shop: species.Workshop{HandTools: true}}

func main() {
	if err := run(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// run reviews the ready form of the preset, in the boards at hand.
func run(w io.Writer) error {
	animal, err := species.Get("european_robin")
	if err != nil {
		return err
	}
	design, assumed, err := animal.Design(box.Board{Thickness: 15, Width: 195, Material: "European larch"})
	if err != nil {
		return err
	}
	plan, err := design.Resolve()
	if err != nil {
		return err
	}
	findings, err := species.Review(plan, animal, Site)
	if err != nil {
		return err
	}
	for _, line := range assumed {
		fmt.Fprintln(w, "assumed:", line)
	}
	if err := species.WriteFindings(w, findings); err != nil {
		return err
	}
	fmt.Fprintln(w)
	return species.WriteCare(w, animal, Site)
}
