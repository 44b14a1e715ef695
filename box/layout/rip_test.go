package layout

import (
	"context"
	"math"
	"math/rand"
	"testing"

	"holt.example/box/outline"
)

// Nothing shorter than 300 is ripped (common practice; issue 5): a part of 200
// x 100 from a board 145 wide is ripped out of a piece of 300, two in a row out
// of 200 + 3 + 200 = 403, three out of 606. Two of 200 x 60 lie side by side
// (60 + 3 + 60 = 123), so four take 403 as well. What is as wide as the board
// is not ripped at all.
func TestLeastRipOfLengths(t *testing.T) {
	for _, c := range []struct {
		long, wide float64
		n          int
		least      float64
		want       float64
	}{
		{200, 100, 1, 0, 300},
		{200, 100, 1, -1, 200},
		{200, 100, 1, 250, 250},
		{200, 100, 2, 0, 403},
		{200, 100, 3, 0, 606},
		{200, 100, 2, -1, 403},
		{200, 60, 2, 0, 300},
		{200, 60, 4, 0, 403},
		{40, 100, 7, 0, 300}, // 7 x 43 - 3 = 298
		{40, 100, 8, 0, 341},
		{300, 100, 1, 0, 300},
		{200, 145, 1, 0, 200},
	} {
		p := Part{ID: "floor", Grain: AlongX, Quantity: c.n, Outline: outline.Region{outline.Rectangle(0, 0, c.long, c.wide)}}
		job := Job{Parts: []Part{p}, Stock: []Stock{board145()}}
		l, err := Lengths(context.Background(), job, LengthRules{Kerf: 3, LeastRip: c.least})
		if err != nil {
			t.Fatal(err)
		}
		verifier{job: &job, kerf: 3, sawn: true}.check(t, l)
		if len(l.Pieces) != 1 || math.Abs(l.Pieces[0].Used-c.want) > 1e-6 {
			t.Errorf("%v: %d boards, %v used, want %v", c, len(l.Pieces), l.Pieces[0].Used, c.want)
		}
		least := c.least
		if least == 0 {
			least = 300
		}
		for _, s := range l.Pieces[0].Steps {
			if s.Kind == Rip && s.Long < least-1e-9 {
				t.Errorf("%v: %v is %v long", c, s, s.Long)
			}
		}
	}
}

// A board of 290 is too short to rip; crosscut only it would do.
func TestLeastRipRefuses(t *testing.T) {
	p := Part{ID: "floor", Outline: outline.Region{outline.Rectangle(0, 0, 200, 100)}, Grain: AlongX}
	s := Stock{Length: 290, Width: 145, Grain: AlongX}
	for _, c := range []struct {
		least float64
		code  string
	}{{0, CodeLeast}, {290, ""}, {-1, ""}, {math.NaN(), CodeRange}, {math.Inf(1), CodeRange}} {
		l, err := Lengths(context.Background(), Job{Parts: []Part{p}, Stock: []Stock{s}}, LengthRules{Kerf: 3, LeastRip: c.least})
		switch {
		case c.code == "" && err != nil:
			t.Errorf("least %v: %v", c.least, err)
		case c.code != "" && (len(l.Problems) != 1 || l.Problems[0].Code != c.code):
			t.Errorf("least %v: %v, want %s", c.least, l.Problems, c.code)
		}
	}
}

// Adding an offcut to a shed that has some already never raises the cost.
func TestEveryOffcutHelps(t *testing.T) {
	tried, lower := 0, 0
	for seed := int64(0); seed < 120; seed++ {
		r := rand.New(rand.NewSource(seed))
		job := lengthJob(r, 3+r.Intn(20), 2400)
		for i := range job.Parts {
			if r.Intn(3) == 0 {
				e := job.Parts[i].Outline.Extents()
				job.Parts[i].Outline = outline.Region{outline.Rectangle(0, 0, e.Width(), 40+float64(r.Intn(100)))}
			}
		}
		job.Effort = 200
		way := "lengths"
		lay := func() Report {
			var l Layout
			var err error
			if seed%2 == 0 {
				way = "saw"
				l, err = Saw(context.Background(), job, SawRules{Kerf: 3})
				verifier{job: &job, kerf: 3, sawn: true}.check(t, l)
			} else {
				l, err = Lengths(context.Background(), job, LengthRules{Kerf: 3})
				verifier{job: &job, kerf: 3, sawn: true}.check(t, l)
			}
			if err != nil {
				t.Fatal(seed, err)
			}
			return l.Report
		}
		before := lay()
		for k := 0; k < 3; k++ {
			off := Stock{Name: "offcut", Length: 200 + float64(r.Intn(1400)), Width: 145, Grain: AlongX, Offcut: true}
			if r.Intn(2) == 0 { // anywhere in the list
				job.Stock = append([]Stock{off}, job.Stock...)
			} else {
				job.Stock = append(append([]Stock(nil), job.Stock...), off)
			}
			now := lay()
			tried++
			if now.Cost < before.Cost-1e-9 {
				lower++
			}
			if now.Cost > before.Cost+1e-9 {
				t.Errorf("seed %d, %s, offcut %d: cost %v, before %v", seed, way, k+1, now.Cost, before.Cost)
			}
			before = now
		}
	}
	t.Logf("%d offcuts added, %d of them lowered the cost", tried, lower)
}
