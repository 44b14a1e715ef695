// Opening is the orchard's box for the autumn cleaning: the roof lifts on a strip
// of rubber, the left side turns on two nails, and a stopper shuts the entrance
// while the ringing group looks in. It draws the box open as well as shut.
package main

import (
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

// opened is the plan with everything open and the entrance shut.
func opened(plan *box.Plan) (p *box.Plan, err error) {
	p = plan
	for part, angle := range map[box.Part]box.Deg{box.Roof: 75, box.Left: 35, box.FreePart("stopper"): 90} {
		if p, err = p.Opened(part, angle); err != nil {
			return nil, err
		}
	}
	return p, nil
}

func main() {
	out := flag.String("out", filepath.Join("out", "opening"), "folder to write")
	flag.Parse()
	err := show.Run(os.Stdout, *out, Design, "open.svg shows it open")
	if err == nil {
		var p *box.Plan
		if p, err = opened(Design.MustResolve()); err == nil {
			err = draw(filepath.Join(*out, "open.svg"), p)
		}
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func draw(name string, p *box.Plan) error {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	defer f.Close()
	return picture.WriteSVG(f, p, picture.Options{})
}
