package batch

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/layout"
)

// What cannot be done is a typed problem with its path; the rest is laid out.
func TestBadInput(t *testing.T) {
	p := kind(t, 2) // 6 parts of 12.2
	ok := []layout.Stock{{Length: 1250, Width: 800, Thickness: 12.2, Grain: layout.AlongX}}
	nan, inf := math.NaN(), math.Inf(1)
	with := func(f func(*layout.Stock)) []layout.Stock {
		s := ok[0]
		f(&s)
		return []layout.Stock{s}
	}
	for name, c := range map[string]struct {
		j          Job
		path, code string
	}{
		"nothing":          {Job{}, "By", CodeNoWay},
		"no orders":        {Job{By: Saw{}, Stock: ok}, "Orders", layout.CodeNoParts},
		"no stock":         {Job{By: Saw{}, Orders: []Order{{Plan: p}}}, "Stock", layout.CodeNoStock},
		"no plan":          {Job{By: Saw{}, Stock: ok, Orders: []Order{{}}}, "Orders[0].Plan", CodeNoPlan},
		"negative count":   {Job{By: Saw{}, Stock: ok, Orders: []Order{{Plan: p}, {Plan: p, Count: -1}}}, "Orders[1].Count", layout.CodeRange},
		"ten million":      {Job{By: Saw{}, Stock: ok, Orders: []Order{{Plan: p, Count: 10_000_000}}}, "Orders[0].Count", layout.CodeLimit},
		"overflow":         {Job{By: Saw{}, Stock: ok, Orders: []Order{{Plan: p, Count: math.MaxInt}}}, "Orders[0].Count", layout.CodeLimit},
		"rough":            {Job{By: Saw{}, Stock: ok, Orders: []Order{{Plan: p}}, Rough: 7}, "Rough", layout.CodeRange},
		"allowance":        {Job{By: Saw{}, Stock: ok, Orders: []Order{{Plan: p}}, Allowance: box.MM(nan)}, "Allowance", layout.CodeRange},
		"no allowance":     {Job{By: Saw{}, Stock: ok, Orders: []Order{{Plan: p}}, Allowance: -1}, "Allowance", layout.CodeRange},
		"kerf":             {Job{By: Saw{Kerf: nan}, Stock: ok, Orders: []Order{{Plan: p}}}, "By.Kerf", layout.CodeRange},
		"kerf of lengths":  {Job{By: Lengths{Kerf: -1}, Stock: ok, Orders: []Order{{Plan: p}}}, "By.Kerf", layout.CodeRange},
		"gap":              {Job{By: Router{Gap: inf}, Stock: ok, Orders: []Order{{Plan: p}}}, "By.Gap", layout.CodeRange},
		"wide gap":         {Job{By: Router{Margin: 700}, Stock: ok, Orders: []Order{{Plan: p}}}, "Orders[0].Plan.Piece(front)", layout.CodeTooLarge},
		"streams":          {Job{By: Router{}, Stock: ok, Orders: []Order{{Plan: p}}, Streams: -1}, "Streams", layout.CodeRange},
		"length":           {Job{By: Router{}, Stock: with(func(s *layout.Stock) { s.Length = nan }), Orders: []Order{{Plan: p}}}, "Stock[0].Length", layout.CodeRange},
		"thickness":        {Job{By: Router{}, Stock: with(func(s *layout.Stock) { s.Thickness = nan }), Orders: []Order{{Plan: p}}}, "Stock[0].Thickness", layout.CodeRange},
		"unused stock":     {Job{By: Router{}, Stock: append(ok, layout.Stock{Length: -1, Width: 1, Thickness: 99}), Orders: []Order{{Plan: p}}}, "Stock[1].Length", layout.CodeRange},
		"other thickness":  {Job{By: Saw{}, Stock: with(func(s *layout.Stock) { s.Thickness = 12.31 }), Orders: []Order{{Plan: p}}}, "Orders[0].Plan.Piece(front)", layout.CodeThickness},
		"other timber":     {Job{By: Saw{}, Stock: with(func(s *layout.Stock) { s.Material = "oak" }), Orders: []Order{{Plan: p}}}, "Orders[0].Plan.Piece(front)", layout.CodeMaterial},
		"too small":        {Job{By: Saw{}, Stock: with(func(s *layout.Stock) { s.Length, s.Width = 100, 50 }), Orders: []Order{{Plan: p}}}, "Orders[0].Plan.Piece(front)", layout.CodeTooLarge},
		"one sheet is all": {Job{By: Saw{}, Stock: with(func(s *layout.Stock) { s.Count = 1 }), Orders: []Order{{Plan: p, Count: 40}}}, "", layout.CodeNoneLeft},
	} {
		c.j.Effort = -1
		r, err := Lay(context.Background(), c.j)
		if r == nil || err == nil || len(r.Problems) == 0 {
			t.Errorf("%s: no problem", name)
			continue
		}
		var ps Problems
		if !errors.As(err, &ps) {
			t.Errorf("%s: %T", name, err)
		}
		found := false
		for _, q := range ps {
			found = found || q.Code == c.code && (c.path == "" || q.Path == c.path)
			if q.Why == "" || strings.Contains(q.Error(), "NaN to") {
				t.Errorf("%s: %q", name, q.Error())
			}
		}
		if !found {
			t.Errorf("%s: %v, want %s at %s", name, err, c.code, c.path)
		}
		if c.j.By == nil && (r.By() != "" || r.Verdict() != "nothing placed") {
			t.Errorf("%s: %q, %q", name, r.By(), r.Verdict())
		}
	}
}

// A problem of one order leaves the others alone.
func TestTheRestIsLaidOut(t *testing.T) {
	r, err := Lay(context.Background(), Job{
		By: Router{Gap: 5}, Effort: 20, Orders: []Order{{Plan: kind(t, 0)}, {}, {Plan: kind(t, 2), Count: 2}},
		Stock: []layout.Stock{{Length: 1250, Width: 800, Thickness: 12.2, Grain: layout.AlongX}},
	})
	if err == nil || r.Report.Placed != 12 || len(r.Boxes) != 3 {
		t.Errorf("%d placed of %d boxes: %v", r.Report.Placed, len(r.Boxes), err)
	}
	verify(t, r)
}

// The tolerance counts both ways and is the one that is stated: 0.1 mm.
func TestThicknessMatch(t *testing.T) {
	for _, c := range []struct {
		stock float64
		ok    bool
	}{{12.1001, true}, {12.2999, true}, {12.0999, false}, {12.3001, false}, {0, true}} {
		r, err := Lay(context.Background(), Job{By: Saw{Kerf: 3}, Effort: -1, Orders: []Order{{Plan: kind(t, 2)}},
			Stock: []layout.Stock{{Length: 1250, Width: 800, Thickness: c.stock}}})
		if (err == nil) != c.ok || (len(r.Groups[0].Stock) == 1) != c.ok {
			t.Errorf("12.2 from %v: %v", c.stock, err)
		}
	}
}

// Parts of 17.8 and of 17.95 both fit the one sheet of 17.87 there is: it must
// not be used twice.
func TestSharedStockIsUsedOnce(t *testing.T) {
	thick := box.Design{Name: "thick", Board: box.Board{Thickness: 17.95}, Size: box.Cavity{Width: 120, Depth: 120, Height: 240}, Roof: box.Flat{}, Floor: box.FloorBetween{}}.MustResolve()
	r, err := Lay(context.Background(), Job{By: Router{Gap: 5}, Effort: 20, Orders: []Order{{Plan: kind(t, 0)}, {Plan: thick}},
		Stock: []layout.Stock{{Length: 640, Width: 480, Thickness: 17.87, Count: 1}}})
	if err == nil || len(r.Groups) != 1 || len(r.Sheets) != 1 || r.Report.Placed >= 12 {
		t.Errorf("%d groups, %d sheets, %d placed, %v", len(r.Groups), len(r.Sheets), r.Report.Placed, err)
	}
	verify(t, r)
}

// Higher priority gets the stock.
func TestPriority(t *testing.T) {
	r, err := Lay(context.Background(), Job{By: Router{}, Effort: -1, Orders: []Order{{Plan: kind(t, 2)}, {Plan: kind(t, 2), Priority: 1}},
		Stock: []layout.Stock{{Length: 520, Width: 400, Thickness: 12.2, Count: 1}}})
	if err == nil {
		t.Fatal("room for both")
	}
	n := [2]int{}
	for _, s := range r.Sheets {
		for _, p := range s.Placed {
			n[r.Boxes[p.Box].Order]++
		}
	}
	if n[1] <= n[0] {
		t.Errorf("%d parts of the first, %d of the more wanted", n[0], n[1])
	}
}

// A context that has ended stops the search, not the layout.
func TestCancelled(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	r, err := Lay(ctx, Job{By: Router{Gap: 8}, Orders: orders(t), Stock: stock()})
	if err != nil || !r.Report.Cancelled || r.Report.Placed != r.Report.Wanted {
		t.Errorf("%v, %+v", err, r.Report)
	}
	verify(t, r)
}

// An offcut never raises the cost.
func TestOffcutNeverRaisesTheCost(t *testing.T) {
	for _, by := range []Way{Router{Gap: 8}, Saw{Kerf: 3}} {
		s := stock()
		with := mustLay(t, Job{By: by, Orders: orders(t), Stock: s, Effort: 60})
		without := mustLay(t, Job{By: by, Orders: orders(t), Stock: append(s[:2:2], s[3]), Effort: 60})
		if with.Report.Cost > without.Report.Cost {
			t.Errorf("%T: %v with an offcut, %v without", by, with.Report.Cost, without.Report.Cost)
		}
	}
}
