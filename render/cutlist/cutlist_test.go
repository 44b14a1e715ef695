package cutlist

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"io"
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
	"holt.example/box/outline"
)

// two is a loose part of 390 x 100 and one of 200 x 145, from one board of
// 145 with 25 trimmed off each end.
func two(t testing.TB) *batch.Result {
	t.Helper()
	free := func(name string, w, h float64, y box.MM) box.Free {
		return box.Free{Name: name, Outline: outline.Rectangle(0, 0, w, h), At: box.Place{Y: y}}
	}
	p, err := box.Design{Name: "shelf", Board: box.Board{Thickness: 18}, Free: []box.Free{free("a", 100, 390, 0), free("b", 145, 200, 100)}}.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	r, err := batch.Lay(context.Background(), batch.Job{
		Orders: []batch.Order{{Plan: p}}, By: batch.Lengths{Kerf: 3}, Name: "bench",
		Stock: []layout.Stock{{Name: "board", Length: 2400, Width: 145, Thickness: 18, Grain: layout.AlongX, End: 25, Price: 9.5}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func written(t testing.TB, write func(io.Writer, *batch.Result) error, r *batch.Result) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// By hand: the left end loses 22 and a kerf of 3; then 390 comes off and 200, a
// kerf each; 2400 - 25 - 390 - 3 - 200 - 3 - 25 = 1754 is left before the trim of
// the right end. The narrow part is then ripped at 100.
func TestCutsByHand(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(written(t, WriteCSV, two(t)))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"1 trim crosscut 22 left",
		"2 crosscut 390 left",
		"3 crosscut 200 left 2/1",
		"4 crosscut 1754 left",
		"5 rip 100 bottom 1/1",
	}
	if len(rows) != len(want)+1 {
		t.Fatalf("%d lines: %q", len(rows), rows)
	}
	col := map[string]int{}
	for i, h := range rows[0] {
		col[h] = i
	}
	for i, r := range rows[1:] {
		got := strings.TrimSpace(strings.Join([]string{r[col["cut"]], r[col["kind"]], r[col["at_mm"]], r[col["edge"]], r[col["part"]]}, " "))
		if got != want[i] {
			t.Errorf("%q, want %q", got, want[i])
		}
	}
}

func TestStockByHand(t *testing.T) {
	r := two(t)
	if got, want := written(t, WriteStockCSV, r), "stock,material,length_mm,width_mm,thickness_mm,pieces,from_shed,price,cost\r\n\"board\",\"\",2400,145,18,1,no,9.5,9.5\r\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	md := written(t, WriteStockMarkdown, r)
	// 390 x 100 + 200 x 145 = 68000 of 348000 mm2.
	for _, s := range []string{"| board |  | 2400 × 145 × 18 | 1 | 9.50 | 9.50 |", "2 of 2 parts placed, 19.5 %", "Cost 9.50; no layout of these parts costs less than 9.50. The layout is optimal.", "| 1 | board | 1754 × 145 |"} {
		if !strings.Contains(md, s) {
			t.Errorf("no %q in %s", s, md)
		}
	}
	var s Stock
	if err := json.Unmarshal([]byte(written(t, WriteStockJSON, r)), &s); err != nil || s.Schema != StockSchema || len(s.Lines) != 1 || s.Cost != 9.5 || !s.Optimal || len(s.Left) == 0 {
		t.Errorf("%v, %+v", err, s)
	}
}

// JSON, CSV and Markdown say the same, and every part comes off once.
func TestListsAgree(t *testing.T) {
	r := two(t)
	var l List
	if err := json.Unmarshal([]byte(written(t, WriteJSON, r)), &l); err != nil || l.Schema != Schema || l.By != "lengths" || l.Name != "bench" {
		t.Fatalf("%v, %+v", err, l)
	}
	rows, err := csv.NewReader(strings.NewReader(written(t, WritePartsCSV, r))).ReadAll()
	if err != nil || len(rows) != 3 || rows[1][2] != l.Sheets[0].Parts[0].Label || rows[1][5] != "shelf" {
		t.Errorf("%v, %q", err, rows)
	}
	off := map[string]int{}
	md := written(t, WriteMarkdown, r)
	for _, c := range l.Sheets[0].Cuts {
		off[c.Part]++
		off[c.Leaves]++
		if _, w, _ := strings.Cut(c.Words, " "); !strings.Contains(md, w) {
			t.Errorf("the list for the bench has no %q", w)
		}
	}
	if off["1/1"] != 1 || off["2/1"] != 1 {
		t.Errorf("%v", off)
	}
}

// What could not be placed is in every list that a person reads.
func TestProblemsAreListed(t *testing.T) {
	r := two(t)
	job := r.Job
	job.Stock = []layout.Stock{{Name: "short", Length: 300, Width: 145, Thickness: 18, Grain: layout.AlongX}}
	bad, err := batch.Lay(context.Background(), job)
	if err == nil || bad.Report.Placed != 1 {
		t.Fatalf("%v, %+v", err, bad.Report)
	}
	for name, s := range map[string]string{"cuts": written(t, WriteMarkdown, bad), "stock": written(t, WriteStockMarkdown, bad)} {
		if !strings.Contains(s, "## Not placed") || !strings.Contains(s, "larger than any stock") {
			t.Errorf("%s: %s", name, s)
		}
	}
}

func TestExact(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{{0, "0"}, {math.Copysign(0, -1), "0"}, {-0.00001, "0"}, {1e21, "1000000000000000000000"}, {2.50004, "2.5"}, {1.23456, "1.2346"}, {math.NaN(), ""}, {math.Inf(1), ""}} {
		if got := Exact(c.x).String(); got != c.want {
			t.Errorf("%v is written %q, want %q", c.x, got, c.want)
		}
		b, err := json.Marshal(Exact(c.x))
		if want := c.want; err != nil || string(b) != want && !(want == "" && string(b) == "null") {
			t.Errorf("%v in JSON: %s, %v", c.x, b, err)
		}
	}
	if money(-0.001) != "0.00" || money(2.5) != "2.50" {
		t.Error(money(-0.001), money(2.5))
	}
}

func TestNoBatch(t *testing.T) {
	if l := New(nil); len(l.Sheets) != 0 || l.Boxes == nil {
		t.Error("a list of nothing")
	}
	if s := NewStock(nil); len(s.Lines) != 0 {
		t.Error("a stock list of nothing")
	}
	empty, _ := batch.Lay(context.Background(), batch.Job{})
	for _, w := range []func(io.Writer, *batch.Result) error{WriteCSV, WritePartsCSV, WriteMarkdown, WriteJSON, WriteStockCSV, WriteStockMarkdown, WriteStockJSON} {
		if written(t, w, empty) == "" {
			t.Error("nothing written for an empty batch")
		}
	}
}

// TestOffcutsAreSure: who buys by the list must find no less on the shelf, and the
// same figures as on the drawing: 363.467 is 363.4, and what is 0.1 short of a whole by
// rounding alone is whole.
func TestOffcutsAreSure(t *testing.T) {
	for x, want := range map[Exact]string{363.467: "363.4", 208.384: "208.3", 120: "120", 119.99999999: "120", 0.05: "0"} {
		if got := x.sure(); got != want {
			t.Errorf("%v: %s, want %s", float64(x), got, want)
		}
	}
}
