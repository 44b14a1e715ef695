package render

import (
	"fmt"
	"io"

	"holt.example/box/batch"
	"holt.example/render/cutlist"
	"holt.example/render/dxf"
	"holt.example/render/svg"
)

// BatchFolder writes all files of one batch or of several into a folder, all or
// none, as Folder does. The files of several batches go into folders of their
// own, named by their jobs.
//
//	stock.csv, stock.json, stock.md         what to buy, and what is left over
//	fittings.csv                            screws and the like, for all boxes
//	cuts.csv, cuts.json, cuts.md            the parts and the cuts on each piece
//	parts.csv                               where every part comes from
//	sheets/NUMBER-STOCK.svg, .dxf           each piece of stock
//
// Of the options, those of DXF and SVG count.
func BatchFolder(dir string, o Options, batches ...*batch.Result) (Written, error) {
	es, err := batchEntries(o, batches)
	if err != nil {
		return Written{}, err
	}
	return save(dir, es)
}

// BatchFiles makes the same files in memory, in a fixed order.
func BatchFiles(o Options, batches ...*batch.Result) ([]File, error) {
	es, err := batchEntries(o, batches)
	if err != nil {
		return nil, err
	}
	return fill(es)
}

func batchEntries(o Options, batches []*batch.Result) ([]entry, error) {
	names := make([]string, len(batches))
	for i, r := range batches {
		if r == nil {
			return nil, fmt.Errorf("render: batch %d: there is no batch", i)
		}
		names[i] = r.Job.Name
		if names[i] == "" {
			names[i] = fmt.Sprintf("batch-%d", i+1)
		}
	}
	var es []entry
	for i, name := range fileNames(names) {
		prefix := name + "/"
		if len(batches) == 1 {
			prefix = ""
		}
		es = append(es, oneBatch(prefix, batches[i], o)...)
	}
	return es, nil
}

func oneBatch(prefix string, r *batch.Result, o Options) []entry {
	list := func(name string, write func(io.Writer, *batch.Result) error) entry {
		return entry{prefix + name, func(w io.Writer) error { return write(w, r) }}
	}
	es := []entry{
		list("stock.csv", cutlist.WriteStockCSV), list("stock.json", cutlist.WriteStockJSON), list("stock.md", cutlist.WriteStockMarkdown),
		list("fittings.csv", cutlist.WriteFittingsCSV),
		list("cuts.csv", cutlist.WriteCSV), list("cuts.json", cutlist.WriteJSON), list("cuts.md", cutlist.WriteMarkdown),
		list("parts.csv", cutlist.WritePartsCSV),
	}
	names := make([]string, len(r.Sheets))
	for i, s := range r.Sheets {
		names[i] = fmt.Sprintf("%0*d-%s", len(fmt.Sprint(len(r.Sheets))), s.Number, r.Stock(s).Name)
	}
	for i, name := range fileNames(names) {
		es = append(es,
			entry{prefix + "sheets/" + name + ".svg", func(w io.Writer) error { return svg.WriteSheet(w, r, i, o.SVG) }},
			entry{prefix + "sheets/" + name + ".dxf", func(w io.Writer) error { return dxf.WriteSheet(w, r, i, o.DXF) }})
	}
	return es
}
