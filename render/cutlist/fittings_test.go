package cutlist

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
	"holt.example/box/outline"
)

// Three boxes with 8 screws each and two with 6 of them and a strap take 36
// screws and 2 straps; CSV, JSON and Markdown say so, and what a spreadsheet
// could take for a formula is made harmless.
func TestFittingsOfABatch(t *testing.T) {
	plan := func(name string, fs ...box.Fitting) *box.Plan {
		p, err := box.Design{Name: name, Board: box.Board{Thickness: 18}, Fittings: fs,
			Free: []box.Free{{Name: "a", Outline: outline.Rectangle(0, 0, 100, 390)}}}.Resolve()
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	screw := func(n int) box.Fitting { return box.Fitting{What: "screw", Size: "4 x 40", Count: n} }
	r, err := batch.Lay(context.Background(), batch.Job{By: batch.Lengths{Kerf: 3},
		Orders: []batch.Order{{Plan: plan("a", screw(8)), Count: 3}, {Plan: plan("b", screw(6), box.Fitting{What: "=strap", Size: "1 m | wide", Count: 1}), Count: 2}},
		Stock:  []layout.Stock{{Name: "board", Length: 2400, Width: 145, Thickness: 18}}})
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(written(t, WriteFittingsCSV, r))).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatal(err, rows)
	}
	for i, want := range []string{"what;size;count", "screw;4 x 40;36", "'=strap;1 m | wide;2"} {
		if got := strings.Join(rows[i], ";"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	var s Stock
	if err := json.Unmarshal([]byte(written(t, WriteStockJSON, r)), &s); err != nil {
		t.Fatal(err)
	}
	if len(s.Beside) != 2 || s.Beside[0] != (Fitting{"screw", "4 x 40", 36}) || s.Beside[1] != (Fitting{"=strap", "1 m | wide", 2}) {
		t.Errorf("%+v", s.Beside)
	}
	md := written(t, WriteStockMarkdown, r)
	if !strings.Contains(md, "| screw | 4 x 40 | 36 |") || strings.Contains(md, "1 m | wide") {
		t.Error(md)
	}
}
