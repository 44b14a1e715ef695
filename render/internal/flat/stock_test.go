package flat

import (
	"context"
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
	"holt.example/box/outline"
)

// pentBoard is a pent box from one board 145 wide, cut to length.
func pentBoard(t *testing.T) *batch.Result {
	t.Helper()
	plan := box.Design{
		Name: "orchard pent", Board: box.Board{Thickness: 15}, Size: box.BoardWidth{Width: 145, Height: 230},
		Roof: box.Pent{Pitch: 12}, Floor: box.FloorBetween{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 160}, box.Drains{}},
	}.MustResolve()
	r, err := batch.Lay(context.Background(), batch.Job{Orders: []batch.Order{{Plan: plan}}, By: batch.Lengths{Kerf: 3},
		Stock: []layout.Stock{{Name: "board", Length: 2400, Width: 145, Thickness: 15, Grain: layout.AlongX, End: 25}}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The two sides of a pent lie head to tail: the cut between them is drawn in the
// middle of its kerf, half a kerf from either side near both its ends, and leans
// by the roof's pitch.
func TestSlantedCutIsDrawn(t *testing.T) {
	r := pentBoard(t)
	d, err := OnStock(r, 0, Options{})
	if err != nil {
		t.Fatal(err)
	}
	square, slanted := 0, 0
	for _, it := range d.Items {
		if it.Layer.Kind != Saw {
			continue
		}
		if !strings.Contains(it.Note, "off square") {
			square++
			continue
		}
		slanted++
		p, q := it.From, it.To
		if lean := math.Atan2(math.Abs(q.X-p.X), math.Abs(q.Y-p.Y)) * 180 / math.Pi; math.Abs(lean-12) > 1e-3 {
			t.Errorf("leans %v, want 12", lean)
		}
		if it.Note != "crosscut 12.0° off square" {
			t.Errorf("says %q", it.Note)
		}
		near := 0
		for i := range r.Sheets[0].Placed {
			s := &r.Sheets[0].Placed[i]
			g := s.Panel.Silhouette.Transform(s.Lay)
			at := func(k float64) outline.Point { return outline.Point{X: p.X + k*(q.X-p.X), Y: p.Y + k*(q.Y-p.Y)} }
			if math.Abs(g.Distance(at(0.1))-1.5) < 1e-3 && math.Abs(g.Distance(at(0.9))-1.5) < 1e-3 {
				near++
				if n := string(s.Piece.Part); n != "left" && n != "right" {
					t.Errorf("beside %s", n)
				}
			}
		}
		if near != 2 {
			t.Errorf("half a kerf from %d parts, want both sides", near)
		}
	}
	// six parts: five cuts between them, one of them slanted, two trims of the
	// ends, and one that frees the last part from the offcut
	if slanted != 1 || square != 7 {
		t.Errorf("%d slanted cuts and %d square ones", slanted, square)
	}
}

// What is done to a part is said on it, each kind once, and clear of its
// neighbours; a bare drawing says nothing.
func TestWorkIsNamedOnStock(t *testing.T) {
	r := pentBoard(t)
	for _, bare := range []bool{false, true} {
		d, err := OnStock(r, 0, Options{Bare: bare})
		if err != nil {
			t.Fatal(err)
		}
		count := map[string]int{}
		for _, it := range d.Items {
			if it.Shape != Label || it.Layer.Kind != Size {
				continue
			}
			count[it.Text.Value]++
			e := it.extents()
			s := &r.Sheets[0].Placed[it.Part]
			g := outline.Region{s.Panel.Silhouette.Transform(s.Lay)[0]}
			for _, c := range corners(e) {
				if g.Contains(c, 0) == outline.Outside {
					t.Errorf("%q stands out of its part", it.Text.Value)
				}
			}
		}
		want := 1
		if bare {
			want = 0
		}
		if count["ø32"] != want || count["4 × ø8"] != want {
			t.Errorf("bare %v: %v", bare, count)
		}
	}
}
