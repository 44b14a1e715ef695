package render

import (
	"bytes"
	"context"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
	"holt.example/joints"
	"holt.example/render/dxf"
	"holt.example/render/internal/outside"
	"holt.example/render/svg"
)

// plain leaves out what the name of a design must not have.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == '\u202e' {
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, ""))
}

// laid is a batch of two kinds of boxes: one has rebates, grooves on the far
// face of its front, and bevels; the other nothing of it.
func laid(t testing.TB, name string, by batch.Way) *batch.Result {
	t.Helper()
	d := box.Design{
		Name: plain(name) + "pent", Board: box.Board{Thickness: 18, Measured: 17.8, Material: "larch"},
		Size: box.Cavity{Width: 120, Depth: 120, Height: 240}, Floor: box.FloorBetween{Raise: 10},
		Roof:    box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}},
		Corners: box.Corners{Joint: joints.Rebate{}},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}, box.Drains{},
			box.Cut{On: box.Front, Shape: box.Rect{Width: 30, Height: 20}, At: box.Anchor{Up: 60}, Depth: 4}},
	}
	flat := box.Design{Name: plain(name) + "flat", Board: d.Board, Size: d.Size, Roof: box.Flat{}, Floor: box.FloorBetween{}}
	one, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	two, err := flat.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	st := layout.Stock{Name: name + "sheet", Material: "larch", Length: 1250, Width: 800, Thickness: 17.8, Grain: layout.AlongX, End: 12, Price: 30}
	if _, ok := by.(batch.Lengths); ok {
		st.Width, st.Length = 260, 2400
	}
	shed := st
	shed.Name, shed.Offcut, shed.Length = name+"shed", true, 420
	r, err := batch.Lay(context.Background(), batch.Job{Name: name + "winter", By: by, Effort: 100,
		Orders: []batch.Order{{Plan: one, Count: 2}, {Plan: two}}, Stock: []layout.Stock{st, shed}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// ways are the three ways of cutting.
var ways = map[string]batch.Way{
	"router":  batch.Router{Gap: 8, Margin: 10},
	"saw":     batch.Saw{Kerf: 3},
	"lengths": batch.Lengths{Kerf: 3},
}

func sheets(t testing.TB, r *batch.Result, o dxf.Options) [][]byte {
	t.Helper()
	var files [][]byte
	for i := range r.Sheets {
		var b bytes.Buffer
		if err := dxf.WriteSheet(&b, r, i, o); err != nil {
			t.Fatal(err)
		}
		files = append(files, b.Bytes())
	}
	return files
}

// An outside reader finds in every sheet the stock, and of every part the
// profile, bores and balloon; nothing to mend, every contour closed.
func TestSheetsReadBack(t *testing.T) {
	results := map[string]*batch.Result{}
	for name, by := range ways {
		results[name] = laid(t, "", by)
	}
	// With the rough face inside, parts lie turned over.
	job := results["router"].Job
	job.Rough = batch.InnerFace
	rough, err := batch.Lay(context.Background(), job)
	if err != nil {
		t.Fatal(err)
	}
	results["rough"] = rough
	// All drawings in one call: the reader takes longer to start than to read.
	var names []string
	for name := range results {
		names = append(names, name)
	}
	slices.Sort(names)
	var files [][]byte
	for _, name := range names {
		for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
			files = append(files, sheets(t, results[name], dxf.Options{Version: v})...)
		}
	}
	read := outside.ReadDXF(t, files...)
	for _, name := range names {
		r := results[name]
		for range 2 {
			these := read[:len(r.Sheets)]
			read = read[len(r.Sheets):]
			for i, d := range these {
				s := r.Sheets[i]
				if len(d.Errors)+len(d.Fixes)+len(d.Other) > 0 {
					t.Errorf("%s: errors %q, mended %q, other %v", name, d.Errors, d.Fixes, d.Other)
				}
				st := r.Stock(s)
				if c := d.Layers["STOCK"].Contours; len(c) != 1 || c[0].Box != [4]float64{0, 0, st.Length, st.Width} {
					t.Errorf("%s: stock %+v", name, c)
				}
				area, want, profiles, bores, wantBores := 0.0, 0.0, 0, 0, 0
				turned, pockets := 0, map[string]bool{}
				for l, at := range d.Layers {
					for _, c := range at.Contours {
						if !c.Closed || c.RepeatsFirst {
							t.Errorf("%s, layer %s: %+v", name, l, c)
						}
					}
					if strings.HasPrefix(l, "PROFILE") {
						profiles += len(at.Contours)
						for _, c := range at.Contours {
							area += c.Area
						}
					}
					if strings.HasPrefix(l, "BORE") {
						bores += len(at.Circles)
					}
					if strings.HasPrefix(l, "TURNED_POCKET") {
						turned += len(at.Contours)
					}
				}
				labels := map[string]int{}
				slack := 0.0
				boxes := map[[4]int]int{} // of profiles, in tenths
				for l, at := range d.Layers {
					if strings.HasPrefix(l, "PROFILE") {
						for _, c := range at.Contours {
							boxes[tenths(c.Box[0], c.Box[1], c.Box[2], c.Box[3])]++
						}
					}
				}
				for _, p := range s.Placed {
					for _, c := range p.Panel.Machined {
						want += c.Area()
						slack += 1e-4 * c.Length()
					}
					for _, o := range p.Panel.Ops {
						if o.Kind == box.OpBore && !o.InOutline {
							wantBores++
						}
						if o.Kind == box.OpPocket && o.Side == box.SideFar {
							pockets[fmt.Sprint(p.Item, r.Boxes[p.Box].Order)] = true
						}
					}
					labels[p.Label]++
					e := p.Panel.Machined.Transform(p.Lay).Extents()
					k := tenths(e.Min.X, e.Min.Y, e.Max.X, e.Max.Y)
					if boxes[k]--; boxes[k] < 0 {
						t.Errorf("%s, sheet %d: no profile of %s at %v", name, s.Number, p.Label, e)
					}
				}
				if profiles != len(s.Placed) || math.Abs(area-want) > slack || bores != wantBores || turned != len(pockets) {
					t.Errorf("%s, sheet %d: %d profiles of %v, want %d of %v; %d bores, want %d; %d turned, want %d",
						name, s.Number, profiles, area, len(s.Placed), want, bores, wantBores, turned, len(pockets))
				}
				for _, x := range d.Layers["TEXT"].Texts {
					labels[x.Text]--
				}
				for _, p := range s.Placed {
					if labels[p.Label] > 0 {
						t.Errorf("%s, sheet %d: the label %q is missing", name, s.Number, p.Label)
					}
				}
				if n := len(d.Layers["BALLOON"].Circles); n != len(s.Placed) {
					t.Errorf("%s, sheet %d: %d balloons for %d parts", name, s.Number, n, len(s.Placed))
				}
			}
		}
	}
}

func tenths(a, b, c, d float64) [4]int {
	r := func(x float64) int { return int(math.Round(x*10 + 0.1234)) } // off the halves
	return [4]int{r(a), r(b), r(c), r(d)}
}

// Profiles are part of the silhouettes that were laid out, so a library of
// others must find them at least the gap apart and inside the trimmed sheet.
// Written corners lie within half a step of 1e-4 of their place, flattened arcs
// within 1e-3.
func TestSheetsApart(t *testing.T) {
	const slack = 2.5e-3
	results := map[string]*batch.Result{}
	var names []string
	var files [][]byte
	for name, by := range ways {
		names = append(names, name)
		results[name] = laid(t, "", by)
	}
	slices.Sort(names)
	for _, name := range names {
		files = append(files, sheets(t, results[name], dxf.Options{Bare: true})...)
	}
	read := outside.Apart(t, files...)
	for _, name := range names {
		r := results[name]
		gap, margin := 0.0, 0.0
		if w, ok := r.Job.By.(batch.Router); ok {
			gap, margin = w.Gap, w.Margin
		}
		if w, ok := r.Job.By.(batch.Saw); ok {
			gap = w.Kerf
		}
		these := read[:len(r.Sheets)]
		read = read[len(r.Sheets):]
		for i, s := range these {
			if s.Stocks != 1 || s.Parts != len(r.Sheets[i].Placed) || !s.Valid {
				t.Fatalf("%s: %+v", name, s)
			}
			if s.Least != nil && *s.Least < gap-slack || s.Margin < margin-slack || s.Overlap > 1e-3 {
				t.Errorf("%s, sheet %d: %v apart, %v from the edge, %v in common", name, i+1, *s.Least, s.Margin, s.Overlap)
			}
		}
	}
}

var svgSize = regexp.MustCompile(`width="([0-9.]+)mm" height="([0-9.]+)mm" viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)

// A sheet is drawn at true size, in lines: no element but a text is filled.
func TestSheetSVG(t *testing.T) {
	for name, by := range ways {
		r := laid(t, "", by)
		for i := range r.Sheets {
			var b bytes.Buffer
			if err := svg.WriteSheet(&b, r, i, svg.Options{Bare: true, Tight: true}); err != nil {
				t.Fatal(err)
			}
			m := svgSize.FindStringSubmatch(b.String())
			st := r.Stock(r.Sheets[i])
			if m == nil || m[1] != m[3] || m[2] != m[4] || num(t, m[1]) != st.Length || num(t, m[2]) < st.Width {
				t.Errorf("%s: %q for a stock of %v x %v", name, m, st.Length, st.Width)
			}
			b.Reset()
			if err := svg.WriteSheet(&b, r, i, svg.Options{}); err != nil {
				t.Fatal(err)
			}
			wellFormed(t, b.Bytes())
			for _, c := range []string{"stock", "balloon", "grain", "profile"} {
				if !strings.Contains(b.String(), `<g class="`+c+`"`) {
					t.Errorf("%s: no %s", name, c)
				}
			}
			if strings.Contains(b.String(), "<rect") || strings.Count(b.String(), "<title>")-1 < len(r.Sheets[i].Placed) {
				t.Errorf("%s: blocks, or parts without names", name)
			}
			if _, saw := by.(batch.Router); !saw != strings.Contains(b.String(), `<g class="saw"`) {
				t.Errorf("%s: cuts of a saw: %v", name, saw)
			}
		}
	}
}

func num(t testing.TB, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func wellFormed(t testing.TB, b []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(b))
	for {
		_, err := d.Token()
		if err == io.EOF {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

func TestBatchFolder(t *testing.T) {
	a, b := laid(t, "", ways["router"]), laid(t, "", ways["saw"]) // of one name: the folders must differ
	dir := filepath.Join(t.TempDir(), "new", "batch")
	w, err := BatchFolder(dir, Options{}, a, b)
	if err != nil {
		t.Fatal(err)
	}
	first, err := BatchFiles(Options{}, a, b)
	if err != nil {
		t.Fatal(err)
	}
	second, err := BatchFiles(Options{}, laid(t, "", ways["router"]), laid(t, "", ways["saw"]))
	if err != nil {
		t.Fatal(err)
	}
	if want := 16 + 2*len(a.Sheets) + 2*len(b.Sheets); len(first) != want || len(w.Files) != want {
		t.Fatalf("%d and %d files, want %d", len(first), len(w.Files), want)
	}
	seen := map[string]bool{}
	for i, f := range first {
		disk, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(f.Name)))
		if err != nil || !bytes.Equal(disk, f.Data) || !bytes.Equal(f.Data, second[i].Data) || f.Name != second[i].Name || seen[strings.ToLower(f.Name)] {
			t.Errorf("%s: %v, or other bytes the second time", f.Name, err)
		}
		seen[strings.ToLower(f.Name)] = true
	}
	one, err := BatchFiles(Options{}, a)
	if err != nil || one[0].Name != "stock.csv" {
		t.Errorf("%v, %v", one[0].Name, err)
	}
	if _, err := BatchFolder(filepath.Join(dir, "no"), Options{}, a, nil); err == nil {
		t.Error("nil is no batch")
	}
	if _, err := os.Stat(filepath.Join(dir, "no")); err == nil {
		t.Error("a folder was made for nothing")
	}
}
