package main

import (
	"bytes"
	"fmt"
	"strings"

	"holt.example/box"
)

// file is a file of the page.
type file struct {
	name string
	data []byte
}

// page makes all files of the page: README.md and a picture for each element.
func page() ([]file, error) {
	sources, err := sources()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString("# The elements\n\nEach with the Go value that makes it and a picture, both made by `make pictures` from the tables beside this page.\n" +
		"The values go into the fields of a `box.Design` or, in the case of shapes, hinges and joints, into those of an element.\n" +
		"`larch`, `thin`, `ply` and `oak` are boards; `heart`, `sprig` and `branch` outlines of a few lines and arcs; they stand in the tables.\n\n")
	for _, c := range chapters {
		fmt.Fprintf(&b, "- [%s](#%s):", c.title, anchor(c.title))
		for i, e := range c.elements {
			if i > 0 {
				b.WriteByte(',')
			}
			fmt.Fprintf(&b, " [%s](#%s)", e.title, anchor(e.title))
		}
		b.WriteByte('\n')
	}
	var files []file
	for _, c := range chapters {
		fmt.Fprintf(&b, "\n## %s\n\n%s\n", c.title, c.says)
		for _, e := range c.elements {
			plan, svg, err := e.draw()
			if err != nil {
				return nil, err
			}
			src, ok := sources[e.title]
			if !ok {
				return nil, fmt.Errorf("%s: no source", e.title)
			}
			name := anchor(e.title) + ".svg"
			files = append(files, file{name, svg})
			fmt.Fprintf(&b, "\n### %s\n\n%s\n\n```go\n%s\n```\n\n", e.title, e.says, src)
			needs(&b, plan)
			fmt.Fprintf(&b, "![%s](%s)\n", e.title, name)
		}
	}
	return append(files, file{"README.md", b.Bytes()}), nil
}

// needs lists what the plan needs beside its boards, and the arrises that are
// taken off, which no picture shows.
func needs(b *bytes.Buffer, plan *box.Plan) {
	var words []string
	add := func(n int, what string) {
		if n > 0 {
			words = append(words, fmt.Sprintf("%d x %s", n, what))
		}
	}
	var things []string
	count := map[string]int{}
	for _, f := range plan.Fittings() {
		what := f.What + ", " + f.Size
		if count[what] == 0 {
			things = append(things, what)
		}
		count[what] += f.Count
	}
	for _, what := range things {
		add(count[what], what)
	}
	rounds, blunts := 0, 0
	for _, q := range plan.Pieces() {
		for _, e := range q.Panel.Edges {
			for _, a := range e.Arrises {
				if a.Round > 0 {
					rounds++
				}
				if a.Blunt > 0 {
					blunts++
				}
			}
		}
	}
	add(rounds, "arris rounded over")
	add(blunts, "arris blunted")
	if len(words) > 0 {
		fmt.Fprintf(b, "Listed with it: %s.\n\n", strings.Join(words, "; "))
	}
}

// anchor is a title as a link within a page, and as the name of a file.
func anchor(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '-':
			b.WriteRune(r)
		case r == ' ':
			b.WriteByte('-')
		}
	}
	return b.String()
}
