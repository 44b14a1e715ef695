// Testpieces writes samples of the orchard box's joints, to be cut first and
// from the same boards: two offcuts of each joint, at three clearances.
package main

import (
	"flag"
	"fmt"
	"log"
	"path/filepath"

	"holt.example/box"
	"holt.example/joints"
	"holt.example/render"
)

// Design is the orchard box with its floor housed: its test pieces are those of
// a rebate, a housing, and the butts of roof and walls.
var Design = box.Design{
	Name:    "orchard, floor housed",
	Board:   box.Board{Thickness: 18, Measured: 17.6, Material: "larch"},
	Size:    box.Cavity{Width: 120, Depth: 120, Height: 240},
	Roof:    box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
	Corners: box.Corners{Joint: joints.Rebate{}},
	Floor:   box.FloorBetween{Raise: 20, Joint: joints.Housing{Dry: true}},
}

func main() {
	out := flag.String("out", filepath.Join("out", "testpieces"), "folder to write")
	flag.Parse()
	log.SetFlags(0)
	plan, err := Design.TestPieces(0.1, 0.2, 0.3)
	if err != nil {
		log.Fatal(err)
	}
	written, err := render.Folder(*out, plan, render.Options{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s: %d offcuts, %d drawings\n", plan.Name(), len(plan.Pieces()), len(plan.Groups()))
	for _, g := range plan.Groups() {
		q, _ := plan.Piece(g.Parts[0])
		fmt.Printf("  %2d  %d x %-34s %5.1f x %4.1f x %4.1f\n", g.Number, len(g.Parts), g.Parts[0], q.Length, q.Width, q.Thickness)
	}
	fmt.Printf("%d files in %s\n", len(written.Files), *out)
}
