// Forms makes the boxes that the orchard's ringing group lends out this year: the
// ready forms at the group's sizes, each written into a folder of its own.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"holt.example/box"
	"holt.example/box/forms"
	"holt.example/examples/internal/show"
)

var (
	larch = box.Board{Thickness: 18, Measured: 17.6, Material: "larch", Density: 590}
	ply   = box.Board{Thickness: 12, Material: "birch plywood", Grain: box.GrainNone}
	oak   = box.Board{Thickness: 160, Material: "oak, dry"}
)

// Designs are the boxes, each a plain design that With may change.
var Designs = []box.Design{
	forms.HoleBox(forms.Hole{Name: "hole box", Board: larch, Inside: box.Cavity{Width: 120, Depth: 120, Height: 240}, Hole: 32, Above: 170}),
	forms.OpenFront(forms.Open{Name: "open front", Board: larch, Inside: box.Cavity{Width: 140, Depth: 140, Height: 170}, Lip: 100}),
	forms.Terrace(forms.Row{Name: "terrace", Board: larch, Homes: 3, Inside: box.Cavity{Width: 130, Depth: 150, Height: 250}, Hole: 32, Above: 150}),
	forms.Shelf(forms.Ledge{Name: "shelf", Board: larch, Inside: box.Cavity{Width: 200, Depth: 150, Height: 200}}),
	forms.OwlBox(forms.Owl{Name: "owl box", Board: larch, Inside: box.Cavity{Width: 300, Depth: 300, Height: 800}, Width: 120, Height: 120, Above: 500}),
	forms.SwiftBox(forms.Swift{Name: "swift box", Board: larch, Inside: box.Cavity{Width: 400, Depth: 210, Height: 120}, Slot: box.Slot{Width: 60, Height: 28}, Above: 30, Aside: 130}),
	forms.BatBox(forms.Bat{Name: "bat box", Board: larch, Baffle: ply, Width: 300, Height: 400, Crevices: 4, Crevice: 20}),
	forms.DormouseBox(forms.Dormouse{Name: "dormouse box", Board: larch, Inside: box.Cavity{Width: 120, Depth: 120, Height: 210}, Hole: 32, Above: 130}),
	forms.HedgehogHouse(forms.Hedgehog{Name: "hedgehog house", Board: larch, Inside: box.Cavity{Width: 520, Depth: 400, Height: 300}, Doorway: 140, Lobby: 150}),
	forms.BeeBlock(forms.Bees{Name: "bee block", Board: larch, Block: oak, Width: 180, Height: 200, Rows: []box.BeeRow{{Diameter: 8, Depth: 150, Repeat: 3}, {Diameter: 6, Depth: 130, Repeat: 4}}}),
	forms.Planter(forms.Trough{Name: "planter", Board: larch, Inside: box.Cavity{Width: 600, Depth: 220, Height: 220}, Lean: 8}),
}

func main() {
	out := flag.String("out", filepath.Join("out", "forms"), "folder to write, a folder in it for each form")
	flag.Parse()
	for _, d := range Designs {
		if err := show.Run(os.Stdout, filepath.Join(*out, d.Name), d); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}
