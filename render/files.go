package render

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"sync"

	"holt.example/box"
	"holt.example/render/bom"
	"holt.example/render/dxf"
	"holt.example/render/picture"
	"holt.example/render/png"
	"holt.example/render/stl"
	"holt.example/render/svg"
)

// Options are those of the single formats. The zero value is ready to use.
type Options struct {
	STL     stl.Options // Flat counts for the single parts only
	DXF     dxf.Options
	SVG     svg.Options
	BOM     bom.Options
	Picture png.Options // Exploded is not needed: both pictures are drawn
}

// File is one file of a plan.
type File struct {
	Name string // with slashes: "parts/front.svg"
	Data []byte
}

var errNoPlan = errors.New("render: there is no plan")

// Files makes all files of a plan in memory, in a fixed order: first those of
// the whole box, then those of each part in plan order. An error names the
// file.
func Files(plan *box.Plan, o Options) ([]File, error) {
	if plan == nil {
		return nil, errNoPlan
	}
	return fill(entries(plan, o))
}

// Lists that only some plans have.
const fittingsFile, billFile = "fittings.csv", "bill.csv"

// entry is a file to be written.
type entry struct {
	name  string
	write func(io.Writer) error
}

// fill writes the entries into memory.
func fill(es []entry) ([]File, error) {
	files := make([]File, 0, len(es))
	for _, e := range es {
		var b bytes.Buffer
		if err := e.write(&b); err != nil {
			return nil, fmt.Errorf("render: %s: %w", e.name, err)
		}
		files = append(files, File{e.name, b.Bytes()})
	}
	return files, nil
}

// entries are the files of a plan, in order.
func entries(plan *box.Plan, o Options) []entry {
	whole := o.STL
	whole.Flat = false
	// A picture is drawn once for both of its formats.
	drawn := func(exploded bool) func() (*picture.Picture, error) {
		po := o.Picture.Options
		po.Exploded = exploded
		return sync.OnceValues(func() (*picture.Picture, error) { return picture.New(plan, po) })
	}
	vector := func(p func() (*picture.Picture, error)) func(io.Writer) error {
		return func(w io.Writer) error {
			d, err := p()
			if err != nil {
				return err
			}
			return d.WriteSVG(w)
		}
	}
	raster := func(p func() (*picture.Picture, error)) func(io.Writer) error {
		return func(w io.Writer) error {
			d, err := p()
			if err != nil {
				return err
			}
			return png.WritePicture(w, d, o.Picture.DPI)
		}
	}
	assembled, exploded := drawn(false), drawn(true)
	es := []entry{
		{"assembly.stl", func(w io.Writer) error { return stl.Write(w, plan, whole) }},
		{"assembled.svg", vector(assembled)},
		{"assembled.png", raster(assembled)},
		{"exploded.svg", vector(exploded)},
		{"exploded.png", raster(exploded)},
		{"bom.csv", func(w io.Writer) error { return bom.WriteCSV(w, plan, o.BOM) }},
		{"bom.json", func(w io.Writer) error { return bom.WriteJSON(w, plan, o.BOM) }},
		{"bom.md", func(w io.Writer) error { return bom.WriteMarkdown(w, plan, o.BOM) }},
		{"plan.md", func(w io.Writer) error { return WritePlan(w, plan, o.BOM) }},
		{"parts.svg", func(w io.Writer) error { return svg.Write(w, plan, o.SVG) }},
		{"parts.dxf", func(w io.Writer) error { return dxf.Write(w, plan, o.DXF) }},
	}
	if len(plan.Fittings()) > 0 {
		es = append(es, entry{fittingsFile, func(w io.Writer) error { return bom.WriteFittingsCSV(w, plan, o.BOM) }})
	}
	if o.BOM.Bill != nil {
		es = append(es, entry{billFile, func(w io.Writer) error { return bom.WriteBillCSV(w, plan, o.BOM) }})
	}
	pieces := plan.Pieces()
	var parts []string
	for _, p := range pieces {
		parts = append(parts, string(p.Part))
	}
	// A made-up part is drawn as a whole too: openings across its strips are cut
	// once these are together.
	for _, w := range plan.Wholes() {
		parts = append(parts, string(w.Part))
	}
	for i, name := range fileNames(parts) {
		part := box.Part(parts[i])
		if i < len(pieces) {
			es = append(es, entry{"parts/" + name + ".stl", func(w io.Writer) error { return stl.WritePart(w, plan, part, o.STL) }})
		}
		es = append(es,
			entry{"parts/" + name + ".svg", func(w io.Writer) error { return svg.WritePart(w, plan, part, o.SVG) }},
			entry{"parts/" + name + ".dxf", func(w io.Writer) error { return dxf.WritePart(w, plan, part, o.DXF) }},
		)
	}
	return es
}
