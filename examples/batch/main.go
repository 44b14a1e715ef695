// Batch is the orchard's winter job: six boxes of three kinds out of two kinds of
// sheet and what lies in the shed, cut on a router table; then one more box from
// single boards cut to length, and the same parts from a wide board on the saw.
package main

import (
	"context"
	"flag"
	"fmt"
	"log"
	"path/filepath"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
	"holt.example/joints"
	"holt.example/render"
)

// nest is a box with a round entrance, its floor between the walls.
func nest(name string, measured, width, height, hole box.MM, roof box.RoofForm, corner joints.Joint) *box.Plan {
	return box.Design{
		Name: name, Board: box.Board{Thickness: measured, Material: "larch"},
		Size:    box.Cavity{Width: width, Depth: width, Height: height},
		Corners: box.Corners{Joint: corner}, Floor: box.FloorBetween{Raise: 12}, Roof: roof,
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: hole}, Above: height * 0.7}, box.Drains{}},
	}.MustResolve()
}

func main() {
	out := flag.String("out", filepath.Join("out", "batch"), "folder to write")
	flag.Parse()
	pent := nest("orchard pent", 17.8, 120, 240, 32, box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}}, joints.Rebate{})
	barn := nest("cider barn gable", 17.8, 180, 260, 50, box.Gable{Pitch: 40, Ridge: joints.Mitre{}}, joints.Rebate{})
	hedge := nest("hedge box", 12.2, 100, 180, 28, box.Flat{Over: box.Overhangs{Front: 30}}, nil)
	board := box.Design{Name: "one board box", Board: box.Board{Thickness: 15, Measured: 14.6, Width: 145, Material: "larch"},
		Size: box.BoardWidth{Width: 145, Height: 230}, Roof: box.Flat{}, Floor: box.FloorBetween{}}.MustResolve()
	one := []batch.Order{{Plan: board}}

	jobs := []batch.Job{
		{Name: "six boxes", By: batch.Router{Gap: 8, Margin: 10},
			Orders: []batch.Order{{Plan: pent, Count: 3}, {Plan: barn, Count: 1}, {Plan: hedge, Count: 2}},
			Stock: []layout.Stock{
				{Name: "sheet 18", Material: "larch", Length: 1250, Width: 800, Thickness: 17.8, Grain: layout.AlongX, Price: 38},
				{Name: "sheet 12", Material: "larch", Length: 1250, Width: 800, Thickness: 12.2, Grain: layout.AlongX, Price: 29},
				{Name: "end of the barn door", Material: "larch", Length: 700, Width: 420, Thickness: 17.8, Grain: layout.AlongX, Offcut: true},
			}},
		{Name: "one box, lengths", Orders: one, By: batch.Lengths{Kerf: 3},
			Stock: []layout.Stock{{Name: "board 145", Length: 2400, Width: 145, Thickness: 14.6, Grain: layout.AlongX, End: 25, Price: 9}}},
		{Name: "one box, saw", Orders: one, By: batch.Saw{Kerf: 3},
			Stock: []layout.Stock{{Name: "wide board", Length: 1200, Width: 400, Thickness: 14.6, Grain: layout.AlongX, End: 25, Edge: 5, Price: 15}}},
	}
	var done []*batch.Result
	for _, job := range jobs {
		r, err := batch.Lay(context.Background(), job)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %d parts from %d pieces, cost %.2f, %s\n", job.Name, r.Report.Placed, len(r.Sheets), r.Report.Cost, r.Verdict())
		done = append(done, r)
	}
	written, err := render.BatchFolder(*out, render.Options{}, done...)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d files in %s\n", len(written.Files), written.Dir)
}
