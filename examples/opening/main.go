// Opening is the orchard's box for the autumn cleaning: the roof lifts on a strip
// of rubber, the left side turns on two nails, and a stopper shuts the entrance
// while the ringing group looks in. It draws the box open as well as shut.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"holt.example/box"
	"holt.example/examples/internal/show"
	"holt.example/render/picture"
)

// Design is the whole box.
var Design = box.Design{
	Name:     "orchard, opened",
	Board:    box.Board{Thickness: 15, Measured: 14.6, Material: "larch"},
	Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
	Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
	Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
	Floor:    box.FloorBetween{Raise: 20},
	Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}, box.Drains{}},
	Opens: []box.Opening{
		box.Hinged{Part: box.Roof, Hinge: box.RubberStrip{Width: 80}, Angle: 100},
		box.HookAndEye{Part: box.Roof, At: box.Right},
		box.Pivoted{Part: box.Left, Below: 30, Angle: 60},
		box.Stopper{},
	},
}

func main() {
	show.Main("opening", Design, "open.svg shows it open")
	if err := drawOpen(filepath.Join(flag.Lookup("out").Value.String(), "open.svg")); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// drawOpen draws the box with all that opens three quarters open.
func drawOpen(name string) error {
	plan := Design.MustResolve()
	for _, w := range plan.Ways() {
		var err error
		if plan, err = plan.Opened(w.Part, box.Deg(w.Most*0.75)); err != nil {
			return err
		}
	}
	var b bytes.Buffer
	if err := picture.WriteSVG(&b, plan, picture.Options{}); err != nil {
		return err
	}
	return os.WriteFile(name, b.Bytes(), 0o644)
}
