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
	With(name, func(w io.Writer, dir string) error { return Run(w, dir, d, notes...) })
}

// With is Main for an example that does more: it reads the flag -out and runs it.
func With(name string, run func(w io.Writer, dir string) error) {
	out := flag.String("out", filepath.Join("out", name), "folder to write")
	flag.Parse()
	if err := run(os.Stdout, *out); err != nil {
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
	return Plan(w, dir, plan, bom.Options{}, notes...)
}

// Plan writes the folder of a plan with a list of its own, and prints the summary.
func Plan(w io.Writer, dir string, plan *box.Plan, list bom.Options, notes ...string) error {
	written, err := render.Folder(dir, plan, render.Options{BOM: list})
	if err != nil {
		return err
	}
	return summary(w, dir, plan, list, written, notes...)
}

// Summary prints parts, sizes, what was compensated, and the files written.
func Summary(w io.Writer, dir string, plan *box.Plan, files render.Written, notes ...string) error {
	return summary(w, dir, plan, bom.Options{}, files, notes...)
}

func summary(w io.Writer, dir string, plan *box.Plan, list bom.Options, files render.Written, notes ...string) error {
	if err := bom.WriteSummaryWith(w, plan, list); err != nil {
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
