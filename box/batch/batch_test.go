package batch

import (
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"holt.example/box"
	"holt.example/box/layout"
	"holt.example/box/outline"
	"holt.example/joints"
)

const near = 1e-6 // mm: what layout promises

// kind is one of three boxes of the orchard: of two thicknesses, with work on
// one face, bevels and slanted sides among them.
func kind(t testing.TB, n int) *box.Plan {
	t.Helper()
	d := box.Design{
		Name: "pent", Board: box.Board{Thickness: 18, Measured: 17.8, Material: "larch"},
		Size: box.Cavity{Width: 120, Depth: 120, Height: 240}, Floor: box.FloorBetween{Raise: 10},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}},
		Corners:  box.Corners{Joint: joints.Rebate{}},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}, box.GripGrooves{}, box.Drains{}},
	}
	switch n {
	case 1:
		d.Name, d.Roof = "gable", box.Gable{Pitch: 40, Ridge: joints.Mitre{}}
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 60}, Above: 150}}
	case 2:
		d.Name, d.Roof, d.Corners = "flat", box.Flat{}, box.Corners{}
		d.Board = box.Board{Thickness: 12, Measured: 12.2, Material: "larch"}
		d.Features = nil
	}
	p, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func stock() []layout.Stock {
	return []layout.Stock{
		{Name: "18", Material: "larch", Length: 1250, Width: 800, Thickness: 17.85, Grain: layout.AlongX, End: 10, Edge: 5, Price: 38},
		{Name: "12", Material: "larch", Length: 1250, Width: 800, Thickness: 12.2, Grain: layout.AlongX, Price: 29},
		{Name: "shed", Material: "larch", Length: 700, Width: 420, Thickness: 17.8, Grain: layout.AlongY, Offcut: true},
		{Name: "spruce", Material: "spruce", Length: 2000, Width: 2000, Thickness: 17.8, Price: 1},
	}
}

func orders(t testing.TB) []Order {
	return []Order{{Plan: kind(t, 0), Count: 3}, {Plan: kind(t, 1)}, {Plan: kind(t, 2), Count: 2}}
}

func mustLay(t testing.TB, j Job) *Result {
	t.Helper()
	r, err := Lay(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	verify(t, r)
	return r
}

// verify checks a result from the plans and the maps alone; it shares no code
// with what makes it.
func verify(t testing.TB, r *Result) {
	t.Helper()
	type key struct {
		box  int
		part box.Part
	}
	seen := map[key]bool{}
	used := map[[2]int]bool{}
	for i, s := range r.Sheets {
		st := r.Job.Stock[s.Piece.Stock]
		if s.Number != i+1 || used[[2]int{s.Piece.Stock, s.Piece.Number}] || len(s.Placed) != len(s.Piece.Placements) || len(s.Placed) == 0 {
			t.Fatalf("sheet %d: %+v", i, s)
		}
		used[[2]int{s.Piece.Stock, s.Piece.Number}] = true
		if most := st.Count; st.Offcut && max(most, 1) < s.Piece.Number || !st.Offcut && most > 0 && most < s.Piece.Number {
			t.Fatalf("piece %d of stock %q, there are %d", s.Piece.Number, st.Name, most)
		}
		laid := make([]outline.Region, len(s.Placed))
		for n, p := range s.Placed {
			b := r.Boxes[p.Box]
			plan := r.Job.Orders[b.Order].Plan
			q, ok := plan.Piece(p.Piece.Part)
			if !ok || seen[key{p.Box, q.Part}] {
				t.Fatalf("box %d, part %q: in the plan %v, or twice", b.Number, p.Piece.Part, ok)
			}
			seen[key{p.Box, q.Part}] = true
			for _, g := range plan.Groups() {
				for _, name := range g.Parts {
					if name == q.Part && p.Label != fmt.Sprintf("%d/%d", g.Number, b.Number) {
						t.Fatalf("part %q has the label %q", name, p.Label)
					}
				}
			}
			if d := math.Abs(float64(q.Thickness) - st.Thickness); st.Thickness > 0 && d > 0.1 {
				t.Fatalf("part %v thick from %v", q.Thickness, st.Thickness)
			}
			if st.Material != "" && q.Board.Material != "" && st.Material != q.Board.Material {
				t.Fatalf("%q from %q", q.Board.Material, st.Material)
			}
			m := p.Map()
			if m.Mirrors() != p.Over || p.Lay.Mirrors() {
				t.Fatalf("over %v, but the map says %v", p.Over, m.Mirrors())
			}
			// The grain of the panel, carried by the map, lies along the stock's.
			g := q.Panel.Grain
			gx, gy := m.XX*g[0]+m.XY*g[1], m.YX*g[0]+m.YY*g[1]
			if across := [...]float64{0, gy, gx}[st.Grain]; g != [2]float64{} && math.Abs(across) > 1e-9 {
				t.Fatalf("part %q lies across the grain of %s (%v): %v, %v, %+v, panel %v", q.Part, st.Name, st.Grain, gx, gy, s.Piece.Placements[n], g)
			}
			// Both ways carry the silhouette onto the outline, corner by corner.
			laid[n] = q.Panel.Silhouette.Transform(m)
			same(t, laid[n], p.Outline[:len(laid[n])])
			same(t, p.Panel.Silhouette.Transform(p.Lay), laid[n])
			e := laid[n].Extents()
			a := float64(r.Job.Allowance)
			if e.Min.X-a < st.End-near || e.Max.X+a > st.Length-st.End+near || e.Min.Y-a < st.Edge-near || e.Max.Y+a > st.Width-st.Edge+near {
				t.Fatalf("part %q outside: %v", q.Part, e)
			}
			up := q.Panel.Face
			if p.Over {
				up = box.FromOuter + box.FromInner - up
			}
			if r.Job.Rough == OuterFace && up != box.FromInner || r.Job.Rough == InnerFace && up != box.FromOuter {
				t.Fatalf("part %q lies with its rough face up", q.Part)
			}
			for _, o := range q.Panel.Ops {
				if p.Over && r.Job.Rough == NoFace && (o.Side == box.SideMachined || o.Side == box.SideFar) {
					t.Fatalf("part %q has %s on one face and is turned over", q.Part, o.Kind)
				}
			}
		}
		gap := 0.0
		if w, ok := r.Job.By.(Router); ok {
			gap = w.Gap + 2*float64(r.Job.Allowance)
		}
		for n := range laid {
			for k := range n {
				if d := laid[n].DistanceTo(laid[k]); d < gap-near {
					t.Fatalf("sheet %d: parts %q and %q are %v apart", s.Number, s.Placed[n].Label, s.Placed[k].Label, d)
				}
				if gap > 0 && (laid[n].Contains(laid[k][0][0].At(), 0) == outline.Inside || laid[k].Contains(laid[n][0][0].At(), 0) == outline.Inside) {
					if !opening(r, s.Placed[n], laid[k]) && !opening(r, s.Placed[k], laid[n]) {
						t.Fatalf("sheet %d: one part in another", s.Number)
					}
				}
			}
		}
	}
	wanted := 0
	for i, b := range r.Boxes {
		if b.Number != i+1 {
			t.Fatalf("box %d has the number %d", i, b.Number)
		}
		for _, q := range r.Job.Orders[b.Order].Plan.Pieces() {
			wanted++
			if len(r.Problems) == 0 && !seen[key{i, q.Part}] {
				t.Fatalf("part %q of box %d is missing", q.Part, b.Number)
			}
		}
	}
	if r.Report.Wanted != wanted || r.Report.Placed != len(seen) {
		t.Fatalf("%d of %d, the report says %d of %d", len(seen), wanted, r.Report.Placed, r.Report.Wanted)
	}
	// Cost and areas added up again.
	cost, area := 0.0, 0.0
	for _, s := range r.Sheets {
		st := r.Job.Stock[s.Piece.Stock]
		area += st.Length * st.Width
		if !st.Offcut {
			cost += st.Price
		}
	}
	if r.Report.Priced && math.Abs(cost-r.Report.Cost) > 1e-9 || math.Abs(area-r.Report.StockArea) > 1e-3 || r.Report.Bound > r.Report.Cost+1e-9 {
		t.Fatalf("cost %v, area %v: %+v", cost, area, r.Report)
	}
}

// opening says whether a part lies in an opening of another.
func opening(r *Result, p Placed, in outline.Region) bool {
	for _, o := range p.Piece.Panel.Ops {
		if o.Side == box.SideThrough && o.Region.Transform(p.Map()).Contains(in[0][0].At(), 0) == outline.Inside {
			return true
		}
	}
	return false
}

// same compares two regions corner by corner, from any first corner.
func same(t testing.TB, a, b outline.Region) {
	t.Helper()
	if len(a) != len(b) {
		t.Fatalf("%d contours, want %d", len(a), len(b))
	}
	for i := range a {
		found := len(a[i]) == len(b[i])
		for s := 0; s < len(a[i]) && found; s++ {
			found = false
			ok := true
			for k, v := range a[i] {
				w := b[i][(k+s)%len(a[i])]
				ok = ok && math.Hypot(v.X-w.X, v.Y-w.Y) < 1e-9 && math.Abs(v.Bulge-w.Bulge) < 1e-9
			}
			if ok {
				found = true
				break
			}
			found = s+1 < len(a[i])
		}
		if !found {
			t.Fatalf("contour %d: %v, want %v", i, a[i], b[i])
		}
	}
}

func TestEveryPartIsPlacedOnce(t *testing.T) {
	boards := []layout.Stock{
		{Name: "wide 18", Length: 2400, Width: 260, Thickness: 17.8, Grain: layout.AlongX, End: 25, Price: 20},
		{Name: "wide 12", Length: 2000, Width: 200, Thickness: 12.2, Grain: layout.AlongX, End: 25, Price: 11},
	}
	for name, j := range map[string]Job{
		"router":     {By: Router{Gap: 8, Margin: 10}, Stock: stock(), Effort: 200},
		"allowance":  {By: Router{Gap: 8, Margin: 10}, Stock: stock(), Effort: 100, Allowance: 3},
		"rough out":  {By: Router{Gap: 8}, Stock: stock(), Effort: 100, Rough: OuterFace},
		"rough in":   {By: Router{Gap: 8}, Stock: stock(), Effort: 100, Rough: InnerFace},
		"saw":        {By: Saw{Kerf: 3}, Stock: stock(), Effort: 2000},
		"saw, rough": {By: Saw{Kerf: 3}, Stock: stock(), Effort: 2000, Rough: OuterFace},
		"lengths":    {By: Lengths{Kerf: 3}, Stock: boards},
	} {
		t.Run(name, func(t *testing.T) {
			j.Orders = orders(t)
			r := mustLay(t, j)
			if len(r.Groups) != 2 { // two thicknesses that share no stock
				t.Errorf("%d groups", len(r.Groups))
			}
			for _, s := range r.Sheets {
				if _, router := j.By.(Router); router == (len(s.Piece.Steps) > 0) {
					t.Errorf("sheet %d has %d steps", s.Number, len(s.Piece.Steps))
				}
			}
		})
	}
}

func TestSeedsAndPermutations(t *testing.T) {
	for seed := range uint64(6) {
		os := orders(t)
		k := int(seed) % 3
		os[0], os[k] = os[k], os[0]
		r := mustLay(t, Job{By: Router{Gap: float64(seed), Margin: float64(k)}, Orders: os, Stock: stock(), Seed: seed, Effort: 60})
		if r.Report.Placed != 3*6+7+2*6 {
			t.Errorf("%d parts", r.Report.Placed)
		}
	}
}

func TestSameJobSameResult(t *testing.T) {
	j := Job{By: Router{Gap: 8}, Orders: orders(t), Stock: stock(), Effort: 80, Streams: 2}
	if a, b := mustLay(t, j), mustLay(t, j); !reflect.DeepEqual(a.Sheets, b.Sheets) || !reflect.DeepEqual(a.Report, b.Report) {
		t.Error("twice the same job, two results")
	}
}

// free is a plan of loose parts.
func free(t testing.TB, outlines ...outline.Contour) *box.Plan {
	t.Helper()
	d := box.Design{Name: "loose", Board: box.Board{Thickness: 18}}
	for i, o := range outlines {
		d.Free = append(d.Free, box.Free{Name: fmt.Sprint(i + 1), Outline: o, At: box.Place{Y: box.MM(100 * i)}})
	}
	p, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Two pent sides 250 and 200 high from 145 stock, kerf 3. Head to tail the slanted
// ends share one cut. The slant runs 50 over 145, so square to it the kerf of 3 is
// 3 sqrt(1 + (50/145)^2) = 3.1733 along the board: 250 + 200 + 3.1733 = 453.17. If
// they may not be turned over, one is the mirror image of the other; head to tail
// would give two of one hand, so each is cut by itself: 250 + 3 + 250 = 503.
func TestPentSidesHeadToTail(t *testing.T) {
	left := outline.Polygon(outline.Point{}, outline.Point{X: 145}, outline.Point{X: 145, Y: 250}, outline.Point{Y: 200})
	right := left.Transform(outline.MirrorX().Then(outline.Shift(145, 0)))
	j := Job{
		Orders: []Order{{Plan: free(t, left, right)}},
		Stock:  []layout.Stock{{Length: 2400, Width: 145, Thickness: 18, Grain: layout.AlongX}},
		By:     Lengths{Kerf: 3},
	}
	for _, c := range []struct {
		rough Face
		want  float64
	}{{NoFace, 450 + 3*math.Hypot(1, 50.0/145)}, {OuterFace, 503}, {InnerFace, 503}} {
		j.Rough = c.rough
		r := mustLay(t, j)
		if len(r.Sheets) != 1 || math.Abs(r.Sheets[0].Piece.Used-c.want) > 0.01 {
			t.Errorf("rough %d: %v of length, want %.1f", c.rough, r.Sheets[0].Piece.Used, c.want)
		}
	}
}

// Work on one face forbids turning over as a rough face does.
func TestWorkOnOneFaceIsNotTurnedOver(t *testing.T) {
	left := outline.Polygon(outline.Point{}, outline.Point{X: 145}, outline.Point{X: 145, Y: 250}, outline.Point{Y: 200})
	right := left.Transform(outline.MirrorX().Then(outline.Shift(145, 0)))
	d := box.Design{Name: "handed", Board: box.Board{Thickness: 18}}
	for i, o := range []outline.Contour{left, right} {
		d.Free = append(d.Free, box.Free{Name: fmt.Sprint(i + 1), Outline: o, At: box.Place{Y: box.MM(100 * i)},
			Cuts: []box.Cut{{Shape: box.Rect{Width: 20, Height: 20}, At: box.Anchor{Right: 72.5, Up: 100}, Depth: 5}}})
	}
	p, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	r := mustLay(t, Job{Orders: []Order{{Plan: p}}, By: Lengths{Kerf: 3}, Stock: []layout.Stock{{Length: 2400, Width: 145, Thickness: 18, Grain: layout.AlongX}}})
	if u := r.Sheets[0].Piece.Used; math.Abs(u-503) > 0.01 {
		t.Errorf("%v of length, want 503", u)
	}
}

// A board of 2400 with 25 off each end leaves 2350: five parts of 390 and four
// kerfs of 3 take 1962, six take 2355.
func TestFiveOf390(t *testing.T) {
	r := mustLay(t, Job{
		Orders: []Order{{Plan: free(t, outline.Rectangle(0, 0, 145, 390)), Count: 6}},
		Stock:  []layout.Stock{{Length: 2400, Width: 145, Thickness: 18, Grain: layout.AlongX, End: 25}},
		By:     Lengths{Kerf: 3},
	})
	if len(r.Sheets) != 2 || len(r.Sheets[0].Placed) != 5 || !r.Report.Optimal || r.Verdict() != "optimal" {
		t.Errorf("%d boards, %d on the first: %s", len(r.Sheets), len(r.Sheets[0].Placed), r.Verdict())
	}
}

// A bed of 300 x 400 with a clamp margin of 20 takes 260 x 360.
func TestBedRefuses390(t *testing.T) {
	r, err := Lay(context.Background(), Job{
		Orders: []Order{{Plan: free(t, outline.Rectangle(0, 0, 145, 390))}},
		Stock:  []layout.Stock{{Length: 2400, Width: 1200, Thickness: 18, Grain: layout.AlongX}},
		By:     Router{BedLength: 300, BedWidth: 400, Clamp: 20},
	})
	var p Problem
	if !errors.As(err, &p) || p.Code != layout.CodeBed || p.Try != "the saw" || p.Path != "Orders[0].Plan.Piece(free/1)" || len(r.Sheets) != 0 {
		t.Errorf("%+v", err)
	}
}

// A part of 40 goes into the opening of a frame where there is no other room.
func TestSmallPartInOpening(t *testing.T) {
	d := box.Design{Name: "frame", Board: box.Board{Thickness: 18}, Free: []box.Free{
		{Name: "frame", Outline: outline.Rectangle(0, 0, 200, 200), Cuts: []box.Cut{{Shape: box.Rect{Width: 100, Height: 100}, At: box.Anchor{Right: 100, Up: 100}}}},
		{Name: "plug", Outline: outline.Rectangle(0, 0, 40, 40), At: box.Place{Y: 100}},
	}}
	p, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	r := mustLay(t, Job{Orders: []Order{{Plan: p}}, By: Router{Gap: 8}, Stock: []layout.Stock{{Length: 200, Width: 200, Thickness: 18}}})
	if len(r.Sheets) != 1 {
		t.Errorf("%d sheets", len(r.Sheets))
	}
}
