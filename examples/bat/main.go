// Bat is a crevice box for bats: it prints the review with its sources, and a
// care sheet that keeps people out of it.
package main

import (
	"fmt"
	"io"
	"os"

	"holt.example/box"
	"holt.example/species"
)

// Site is the gable of the barn.
var Site = species.Site{Place: species.OnWall, Above: 4}

func main() {
	if err := run(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// run reviews the ready form of the preset, in the boards at hand.
func run(w io.Writer) error {
	animal, err := species.Get("bat_flat_box_eu")
	if err != nil {
		return err
	}
	design, assumed, err := animal.Design(box.Board{Thickness: 20, Width: 195, Material: "rough sawn European larch"})
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
