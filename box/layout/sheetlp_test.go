package layout

import (
	"context"
	"fmt"
	"math/rand"
	"testing"

	"holt.example/box/outline"
)

// A sheet of 1000 x 600 without kerf: a strip of 250 cut into 400, 350 and 250,
// one of 350 into 700 and a stack of 200 and 150 by 300. Twenty times all of it
// fills twenty sheets to the last mm, so one misplaced part takes a sheet more.
func TestRepeatedPatterns(t *testing.T) {
	sizes := [][2]float64{{400, 250}, {350, 250}, {250, 250}, {700, 350}, {300, 200}, {300, 150}}
	for _, least := range []float64{-1, 300} {
		job := Job{Stock: []Stock{{Length: 1000, Width: 600}}}
		for i, s := range sizes {
			job.Parts = append(job.Parts, Part{ID: fmt.Sprint(i), Quantity: 20, Outline: outline.Region{outline.Rectangle(0, 0, s[0], s[1])}})
		}
		l, err := Saw(context.Background(), job, SawRules{LeastRip: least})
		if err != nil {
			t.Fatal(err)
		}
		verifier{job: &job, sawn: true}.check(t, l)
		if len(l.Pieces) != 20 || !l.Report.Optimal || l.Report.Yield < 1-1e-9 {
			t.Errorf("least rip %v: %d sheets, %v used, %s; want 20, all of them", least, len(l.Pieces), l.Report.Yield, l.Report.Verdict())
		}
		for i := range l.Pieces {
			if b := shortRip(l.Pieces[i].Cuts, least); b != "" {
				t.Errorf("rips a piece shorter than %v: %s", least, b)
			}
		}
	}
}

// Patterns priced with random values: each is a sound sheet, yields what it
// says, and is worth what the table says. Every other job has sizes whose sums
// are too many, so that they go on a grid.
func TestPatternsAreSound(t *testing.T) {
	patterns, grids := 0, 0
	for seed := int64(0); seed < 100; seed++ {
		r := rand.New(rand.NewSource(seed))
		k := 1 + 9972*int(seed%2)
		size := func(lo, more int) int64 { return int64(lo*k + r.Intn(more*k)) }
		p := &sawing{kinds: []sheetKind{{roots: [][2]int64{{size(600, 900), size(400, 600)}}, cost: 1}}, least: size(150, 1) * int64(r.Intn(3))}
		n := 2 + r.Intn(5) + 12*int(seed%2)
		for i := 0; i < n; i++ {
			q := blankSize{w: size(50, 300), h: size(50, 300), ways: []uint8{uint8(1 + r.Intn(3))}}
			for k := 0; k < 40; k++ {
				p.pieces = append(p.pieces, q)
			}
		}
		p.prepare()
		y := newPlanner(p)
		if y == nil {
			continue
		}
		vals := make([]float64, len(y.types))
		for i := range vals {
			vals[i] = r.Float64()
		}
		for _, ra := range y.rasters {
			if len(ra.xs) > mostPlaces/3 {
				grids++
			}
			s, worth := ra.best(vals)
			sum := make([]int, len(y.types))
			s.count(sum)
			got, short := 0.0, false
			for i, c := range sum {
				got += float64(c) * vals[i]
				short = short || c > 40
			}
			if d := got - worth; d > 1e-9 || d < -1e-9 {
				t.Fatalf("seed %d: worth %v, the table says %v", seed, got, worth)
			}
			if short || worth == 0 {
				continue
			}
			patterns++
			next := make([]int, len(y.types))
			b := &sawBest{bins: []slicing{{}}}
			b.bins[0].reset(0, p.kinds[0].roots)
			s.deal(func(k int) int32 { next[k]++; return y.types[k].pieces[next[k]-1] }).sawn(&b.bins[0])
			for k := range y.types {
				b.out = append(b.out, y.types[k].pieces[next[k]:]...)
			}
			if err := sawFault(p, b); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			if err := ripFault(&b.bins[0], p.least); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
		}
	}
	if patterns < 60 || grids < 40 {
		t.Errorf("only %d patterns, %d on grids", patterns, grids)
	}
}

// ripFault finds a node that is divided along though it is too short.
func ripFault(s *slicing, least int64) error {
	for i := range s.nodes {
		if n := &s.nodes[i]; n.kind == nodeAlong && n.w < least {
			return fmt.Errorf("a piece of %d is ripped, the least is %d", n.w, least)
		}
	}
	return nil
}

// A kerf of zero is no kerf: what fills the stock to the last mm fits, in all
// three ways.
func TestKerfZeroIsNoKerf(t *testing.T) {
	job := Job{Stock: []Stock{{Length: 1200, Width: 600}}, Parts: []Part{{ID: "a", Quantity: 6, Outline: outline.Region{outline.Rectangle(0, 0, 400, 300)}}}}
	free, err := Free(context.Background(), job, FreeRules{})
	if err != nil {
		t.Fatal(err)
	}
	freeVerifier(&job, FreeRules{}).check(t, free)
	sawn, err := Saw(context.Background(), job, SawRules{})
	if err != nil {
		t.Fatal(err)
	}
	verifier{job: &job, sawn: true}.check(t, sawn)
	board := job
	board.Stock = []Stock{{Length: 2400, Width: 300}}
	cut, err := Lengths(context.Background(), board, LengthRules{})
	if err != nil {
		t.Fatal(err)
	}
	verifier{job: &board, sawn: true}.check(t, cut)
	for name, l := range map[string]Layout{"free": free, "saw": sawn, "lengths": cut} {
		if len(l.Pieces) != 1 || l.Report.Yield < 1-1e-9 || !l.Report.Optimal {
			t.Errorf("%s: %d pieces, %v used", name, len(l.Pieces), l.Report.Yield)
		}
	}
	// and a kerf as small as can be is one
	if l, _ := Lengths(context.Background(), board, LengthRules{Kerf: 0.001}); len(l.Pieces) != 2 {
		t.Errorf("with a kerf: %d pieces", len(l.Pieces))
	}
}
