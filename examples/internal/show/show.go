// Package show is the part that the examples share: it resolves a design,
// writes its folder and prints a summary.
package show

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"holt.example/box"
	"holt.example/render"
	"holt.example/render/bom"
)

// Main is the whole of an example: it reads the flag -out, writes the folder
// and prints what was made. It ends the program with status 1 on a problem.
func Main(name string, d box.Design, notes ...string) {
	out := flag.String("out", filepath.Join("out", name), "folder to write")
	flag.Parse()
	if err := Run(os.Stdout, *out, d, notes...); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// Run writes the folder of a design and prints the summary.
func Run(w io.Writer, dir string, d box.Design, notes ...string) error {
	plan, err := d.Resolve()
	if err != nil {
		return err
	}
	written, err := render.Folder(dir, plan, render.Options{})
	if err != nil {
		return err
	}
	return Summary(w, dir, plan, written, notes...)
}

// Summary prints parts, sizes, what was compensated, and the files written.
func Summary(w io.Writer, dir string, plan *box.Plan, files render.Written, notes ...string) error {
	if err := bom.WriteSummary(w, plan); err != nil {
		return err
	}
	var b strings.Builder
	if len(notes) > 0 {
		b.WriteString("\n")
	}
	for _, n := range notes {
		fmt.Fprintf(&b, "  %s\n", n)
	}
	fmt.Fprintf(&b, "\n  %d files in %s: start with %s and %s\n", len(files.Files), dir, "plan.md", "assembled.svg")
	if len(files.Stale) > 0 {
		fmt.Fprintf(&b, "  of an earlier plan and to be removed: %s\n", strings.Join(files.Stale, ", "))
	}
	_, err := io.WriteString(w, b.String())
	return err
}
