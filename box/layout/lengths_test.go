package layout

import (
	"context"
	"fmt"
	"math"
	"testing"

	"holt.example/box/outline"
)

func board145() Stock {
	return Stock{Name: "board", Length: 2400, Width: 145, Grain: AlongX}
}

// pentSide is a side wall 145 deep, 250 high at the back and 200 at the front,
// lying along the grain.
func pentSide(id string) Part {
	return Part{ID: id, Grain: AlongX, Outline: outline.Region{outline.Polygon(
		outline.Point{X: 0, Y: 0}, outline.Point{X: 250, Y: 0}, outline.Point{X: 200, Y: 145}, outline.Point{X: 0, Y: 145})}}
}

func mirrored(p Part) Part {
	p.Outline = p.Outline.Transform(outline.MirrorX())
	return p
}

// Two pent sides head to tail: 250 + 200 and the kerf of the slanted cut along
// the board, 3 sqrt(1 + (50/145)^2) = 3.1733, are 453.1733. If they may not be
// turned over, head to tail gives two of one hand and no left and right: 250 +
// 3 + 250 = 503 (geometry; issue 5).
func TestPentSidesHeadToTail(t *testing.T) {
	for _, over := range []bool{true, false} {
		a, b := pentSide("side/left"), mirrored(pentSide("side/right"))
		a.TurnOver, b.TurnOver = over, over
		job := Job{Parts: []Part{a, b}, Stock: []Stock{board145()}}
		l, err := Lengths(context.Background(), job, LengthRules{Kerf: 3})
		if err != nil {
			t.Fatal(err)
		}
		verifier{job: &job, kerf: 3, sawn: true}.check(t, l)
		want := 503.0
		if over {
			want = 450 + 3*math.Sqrt(1+50.0*50/(145*145))
		}
		if got := l.Pieces[0].Used; math.Abs(got-want) > 1e-6 {
			t.Errorf("turned over %v: used %v, want %v", over, got, want)
		}
		if over {
			if s := fmt.Sprintf("%.1f", l.Pieces[0].Used); s != "453.2" {
				t.Errorf("printed %s, the issue says 453.2", s)
			}
			r := outline.Region(nil)
			_ = r
			p := l.Pieces[0].Placements
			d := job.Parts[p[0].Part].Outline.Transform(p[0].Map()).DistanceTo(job.Parts[p[1].Part].Outline.Transform(p[1].Map()))
			if math.Abs(d-3) > 1e-6 {
				t.Errorf("the sides are %v apart, want one kerf", d)
			}
		}
	}
}

// Sawn ends: 2400 less 25 at each end is 2350; five of 390 and four kerfs take
// 1962, six and five 2355 (issue 5). With a kerf of 2 six take 2350 exactly.
func TestSawnEnds(t *testing.T) {
	for _, c := range []struct {
		kerf float64
		want int
	}{{3, 5}, {2, 6}} {
		s := board145()
		s.End = 25
		job := Job{Parts: []Part{{ID: "side", Outline: outline.Region{outline.Rectangle(0, 0, 390, 145)}, Quantity: 6}}, Stock: []Stock{s}}
		l, err := Lengths(context.Background(), job, LengthRules{Kerf: c.kerf})
		if err != nil {
			t.Fatal(err)
		}
		verifier{job: &job, kerf: c.kerf, sawn: true}.check(t, l)
		if got := len(l.Pieces[0].Placements); got != c.want {
			t.Errorf("kerf %v: %d parts on the first board, want %d", c.kerf, got, c.want)
		}
	}
}
