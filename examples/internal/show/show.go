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
	var b strings.Builder
	iw, id, ih := plan.Inside()
	ow, od, oh := plan.Outside()
	fmt.Fprintf(&b, "%s\n", plan.Name())
	fmt.Fprintf(&b, "  inside  %.1f wide, %.1f deep, %.1f high\n", iw, id, ih)
	fmt.Fprintf(&b, "  outside %.1f wide, %.1f deep, %.1f to the eaves\n\n", ow, od, oh)
	for _, g := range plan.Groups() {
		q, _ := plan.Piece(g.Parts[0])
		fmt.Fprintf(&b, "  %d  %d x %-22s %6.1f x %6.1f x %4.1f\n", g.Number, len(g.Parts), names(g.Parts), q.Length, q.Width, q.Thickness)
	}
	b.WriteString("\n")
	for _, q := range plan.Pieces() {
		if lines := plan.Explain(q.Part); len(lines) > 0 && strings.HasPrefix(lines[len(lines)-1], "Outside, the box measures") {
			fmt.Fprintf(&b, "  %s\n", lines[len(lines)-1])
		}
	}
	for _, f := range plan.Findings() {
		fmt.Fprintf(&b, "  note: %s\n", f.Why)
	}
	for _, n := range notes {
		fmt.Fprintf(&b, "  %s\n", n)
	}
	fmt.Fprintf(&b, "\n  %d files in %s: start with %s and %s\n", len(files.Files), dir, "plan.md", "assembled.svg")
	_, err := io.WriteString(w, b.String())
	return err
}

func names(ps []box.Part) string {
	s := make([]string, len(ps))
	for i, p := range ps {
		s[i] = string(p)
	}
	return strings.Join(s, ", ")
}
