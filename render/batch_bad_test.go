package render

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"io"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/render/cutlist"
	"holt.example/render/dxf"
	"holt.example/render/internal/outside"
	"holt.example/render/svg"
)

// Names that would break out of a cell, an element, a folder or a line.
func TestBatchHostileNames(t *testing.T) {
	var drawings [][]byte
	evil := "=cmd|'/../..\\ \"<script>]]>&amp; |`*_[x](y)\u202e\x00\xff\r\n"
	for name, by := range ways {
		r := laid(t, evil, by)
		fs, err := BatchFiles(Options{}, r, r)
		if err != nil {
			t.Fatal(name, err)
		}
		for _, f := range fs {
			if !filepath.IsLocal(filepath.FromSlash(f.Name)) || strings.ContainsAny(f.Name, "\\\"<>|:*?\r\n\x00") {
				t.Errorf("%s: the name %q", name, f.Name)
			}
			switch filepath.Ext(f.Name) {
			case ".svg":
				wellFormed(t, f.Data)
				if bytes.Contains(f.Data, []byte("<script")) {
					t.Errorf("%s: not escaped", f.Name)
				}
			case ".json":
				if !json.Valid(f.Data) {
					t.Errorf("%s: not JSON", f.Name)
				}
			case ".md":
				if bytes.Contains(f.Data, []byte("<script")) || bytes.ContainsAny(f.Data, "\x00\r") {
					t.Errorf("%s: not escaped", f.Name)
				}
			case ".csv":
				rows, err := csv.NewReader(bytes.NewReader(f.Data)).ReadAll()
				if err != nil {
					t.Errorf("%s: %v", f.Name, err)
				}
				for _, row := range rows {
					for _, c := range row {
						if strings.HasPrefix(c, "=") {
							t.Errorf("%s: a formula: %q", f.Name, c)
						}
					}
				}
			}
		}
		drawings = append(drawings, sheets(t, r, dxf.Options{})...)
	}
	for _, d := range outside.ReadDXF(t, drawings...) {
		if len(d.Errors)+len(d.Fixes)+len(d.Other) > 0 || len(d.Layers["TEXT"].Texts) == 0 {
			t.Errorf("errors %q, mended %q, other %v", d.Errors, d.Fixes, d.Other)
		}
	}
}

// broken fails after so many bytes.
type broken struct{ left int }

var errPipe = errors.New("broken")

func (w *broken) Write(b []byte) (int, error) {
	if len(b) > w.left {
		return w.left, errPipe
	}
	w.left -= len(b)
	return len(b), nil
}

func TestBatchWritersFail(t *testing.T) {
	r := laid(t, "", ways["saw"])
	for name, write := range map[string]func(io.Writer, *batch.Result) error{
		"csv": cutlist.WriteCSV, "parts": cutlist.WritePartsCSV, "md": cutlist.WriteMarkdown, "json": cutlist.WriteJSON,
		"stock csv": cutlist.WriteStockCSV, "stock md": cutlist.WriteStockMarkdown, "stock json": cutlist.WriteStockJSON,
		"svg": func(w io.Writer, r *batch.Result) error { return svg.WriteSheet(w, r, 0, svg.Options{}) },
		"dxf": func(w io.Writer, r *batch.Result) error { return dxf.WriteSheet(w, r, 0, dxf.Options{}) },
	} {
		for _, n := range []int{0, 1, 50} {
			if err := write(&broken{n}, r); !errors.Is(err, errPipe) {
				t.Errorf("%s after %d bytes: %v", name, n, err)
			}
		}
		if err := write(io.Discard, nil); err == nil {
			t.Errorf("%s of no batch", name)
		}
	}
	for _, i := range []int{-1, len(r.Sheets)} {
		if svg.WriteSheet(io.Discard, r, i, svg.Options{}) == nil || dxf.WriteSheet(io.Discard, r, i, dxf.Options{}) == nil {
			t.Errorf("sheet %d", i)
		}
	}
	if svg.WriteSheet(io.Discard, r, 0, svg.Options{Gap: box.MM(math.NaN())}) == nil || dxf.WriteSheet(io.Discard, r, 0, dxf.Options{Version: 9}) == nil {
		t.Error("bad options")
	}
}
