// Catalogue works out every box that the orchard's ringing group could make:
// 1,000 variants, of which one is held at a time, each a line of a list.
package main

import (
	"flag"
	"fmt"
	"log"
	"os"
	"path/filepath"

	"holt.example/box"
	"holt.example/joints"
)

// axis is one way in which the boxes differ, by values of any kind.
func axis[V any](name string, set func(*box.Design, V), values ...V) box.Axis {
	a := box.Axis{Name: name}
	for _, v := range values {
		a.Values = append(a.Values, box.Value{Name: fmt.Sprint(v), Set: func(d *box.Design) { set(d, v) }})
	}
	return a
}

// Catalogue is 5 cavities x 5 boards x 5 pitches x 8 entrances.
var Catalogue = box.Variants{
	Base: box.Design{Name: "orchard", Floor: box.FloorBetween{Raise: 10}, Corners: box.Corners{Joint: joints.Rebate{}}},
	Axes: []box.Axis{
		axis("cavity", func(d *box.Design, w box.MM) { d.Size = box.Cavity{Width: w, Depth: w, Height: 2 * w} }, 100, 110, 120, 130, 140),
		axis("board", func(d *box.Design, t box.MM) { d.Board = box.Board{Thickness: t, Width: 145} }, 12, 15, 18, 20, 22),
		axis("pitch", func(d *box.Design, p box.Deg) { d.Roof = box.Pent{Pitch: p, Over: box.Overhangs{Front: 40}} }, 6, 8, 10, 12, 15),
		axis("entrance", func(d *box.Design, e box.MM) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: e}, Above: 130}}
		}, 25, 26, 28, 30, 32, 34, 45, 50),
	},
}

func main() {
	out := flag.String("out", filepath.Join("out", "catalogue"), "folder to write")
	flag.Parse()
	_ = os.MkdirAll(*out, 0o777) // if it fails, so does Create
	f, err := os.Create(filepath.Join(*out, "catalogue.csv"))
	if err != nil {
		log.Fatal(err)
	}
	fmt.Fprintln(f, "box;side, length;side, width;findings")
	for key, design := range Catalogue.All() {
		if plan, err := design.Resolve(); err != nil {
			fmt.Fprintf(f, "%s;%q\n", key, err)
		} else if side, ok := plan.Piece(box.Left); ok {
			fmt.Fprintf(f, "%s;%.1f;%.1f;%d\n", key, side.Length, side.Width, len(plan.Findings()))
		}
	}
	if err := f.Close(); err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d boxes in %s\n", Catalogue.Len(), f.Name())
}
