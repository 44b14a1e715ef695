// Elements draws every element that a design can have, each on a plain box or
// board, and writes a page that shows it: README.md beside this file was made by
// it. What the page shows of the Go source is the source of these tables.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"holt.example/box"
)

// element is one entry of the page.
type element struct {
	title string
	says  string // one sentence
	what  any    // what the page shows the source of
	on    box.Design
	look  look
}

// look says how an element's picture is taken. The zero value is the box as it
// stands.
type look struct {
	off    []box.Part // left out, to look inside
	only   []box.Part // nothing else
	open   float64    // of what opens: the share of what is proved free
	apart  float64    // how far strips or parts are drawn apart
	round  float64    // degrees round the box from the front to the right ...
	up     float64    // ... and above the level; both 0: the usual views
	inside bool       // a plate or a tunnel inside its wall, not outside
}

// chapter is a part of the page.
type chapter struct {
	title, says string
	elements    []element
}

var chapters = []chapter{
	{"Openings", "Round holes to any outline, placed by edge, centre or height, mirrored and repeated.", openings},
	{"Shaped parts", "Curves, shaped edges and corners, and free parts of any outline.", shaped},
	{"Patterns and marks", "Engraved, pocketed or cut through; numbers for the ground, marks for the bench.", marks},
	{"Ways in", "What opens is drawn open, most of the way that it is proved free.", ways},
	{"Inner parts", "Boards inside the cavity; walls or the roof are left out of some pictures.", inners},
	{"Mounting and weather", "What a box hangs by or stands on, and what keeps the rain off.", outers},
	{"Made-up parts", "Parts wider than any board, drawn apart at their joints.", strips},
	{"Joints", "A corner of two boards, drawn apart.", corners},
	{"Roofs, floors and walls", "The forms of the box itself.", shells},
	{"Ready forms", "Functions of package forms that return whole designs.", ready},
}

func main() {
	out := flag.String("out", filepath.Join("out", "elements"), "folder to write the page and its pictures")
	flag.Parse()
	if err := run(*out); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// run writes the page.
func run(dir string) error {
	files, err := page()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	size := 0
	for _, f := range files {
		size += len(f.data)
		if err := os.WriteFile(filepath.Join(dir, f.name), f.data, 0o644); err != nil {
			return err
		}
	}
	fmt.Printf("%d files, %d kB, in %s: start with README.md\n", len(files), (size+999)/1000, dir)
	return nil
}
