// Batch is the orchard's winter job: six boxes of three kinds from two kinds of sheet
// and the shed, on a router table and on the saw; one box from a single board, and
// the same parts from a wide board on the saw.
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
func nest(name string, measured box.MM, size box.Size, hole, above box.MM, roof box.RoofForm, corner joints.Joint) *box.Plan {
	return box.Design{
		Name: name, Board: box.Board{Thickness: measured, Material: "larch"}, Size: size, Roof: roof,
		Corners: box.Corners{Joint: corner}, Floor: box.FloorBetween{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: hole}, Above: above}, box.Drains{}},
	}.MustResolve()
}

// larch is stock of the one timber that the orchard buys.
func larch(name string, length, width, measured, end, price float64) layout.Stock {
	return layout.Stock{Name: name, Material: "larch", Length: length, Width: width, Thickness: measured, Grain: layout.AlongX, End: end, Price: price, Offcut: price == 0}
}

func main() {
	out := flag.String("out", filepath.Join("out", "batch"), "folder to write")
	flag.Parse()
	pent := nest("orchard pent", 17.8, box.Cavity{Width: 120, Depth: 120, Height: 240}, 32, 170, box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}}, joints.Rebate{})
	barn := nest("cider barn gable", 17.8, box.Cavity{Width: 180, Depth: 180, Height: 260}, 50, 180, box.Gable{Pitch: 40, Ridge: joints.Mitre{}}, joints.Rebate{})
	hedge := nest("hedge box", 12.2, box.Cavity{Width: 100, Depth: 100, Height: 180}, 28, 125, box.Flat{Over: box.Overhangs{Front: 30}}, nil)
	six := []batch.Order{{Plan: pent, Count: 3}, {Plan: barn}, {Plan: hedge, Count: 2}}
	sheets := []layout.Stock{larch("sheet 18", 1250, 800, 17.8, 0, 38), larch("sheet 12", 1250, 800, 12.2, 0, 29), larch("end of the barn door", 700, 420, 17.8, 0, 0)}
	one := []batch.Order{{Plan: nest("one board box", 14.6, box.BoardWidth{Width: 145, Height: 230}, 32, 160, box.Pent{Pitch: 12}, nil)}}
	var done []*batch.Result
	for _, job := range []batch.Job{
		{Name: "six boxes", Orders: six, By: batch.Router{Gap: 8, Margin: 10}, Stock: sheets},
		{Name: "six boxes, saw", Orders: six, By: batch.Saw{Kerf: 3}, Stock: sheets},
		{Name: "one box, lengths", Orders: one, By: batch.Lengths{Kerf: 3}, Stock: []layout.Stock{larch("board 145", 2400, 145, 14.6, 25, 9)}},
		{Name: "one box, saw", Orders: one, By: batch.Saw{Kerf: 3}, Stock: []layout.Stock{larch("wide board", 1200, 400, 14.6, 25, 15)}},
	} {
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
