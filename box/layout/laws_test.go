package layout

import (
	"context"
	"fmt"
	"math"
	"math/rand"
	"runtime"
	"testing"

	"holt.example/box/outline"
)

func lengthJob(r *rand.Rand, n int, long float64) Job {
	job := Job{Stock: []Stock{{Length: long, Width: 145, Grain: AlongX}}, Seed: 1, Effort: 4000}
	for i := 0; i < n; i++ {
		job.Parts = append(job.Parts, Part{ID: fmt.Sprint(i), Grain: AlongX, Quantity: 1 + r.Intn(3), Outline: outline.Region{outline.Rectangle(0, 0, 60+float64(r.Intn(500)), 145)}})
	}
	return job
}

// least is the least number of boards by trying everything: pieces one by one,
// the longest first, into each board that has room or a new one.
func least(lens []float64, room, kerf float64) int {
	best := len(lens)
	var open []float64
	var try func(i int)
	try = func(i int) {
		if len(open) >= best {
			return
		}
		if i == len(lens) {
			best = len(open)
			return
		}
		for b := range open {
			if open[b]+1e-9 < lens[i]+kerf {
				continue
			}
			seen := false
			for c := 0; c < b; c++ {
				seen = seen || open[c] == open[b]
			}
			if seen {
				continue
			}
			open[b] -= lens[i] + kerf
			try(i + 1)
			open[b] += lens[i] + kerf
		}
		open = append(open, room+kerf-lens[i]-kerf)
		try(i + 1)
		open = open[:len(open)-1]
	}
	try(0)
	return best
}

// The exact method against trying everything.
func TestLengthsAgainstAll(t *testing.T) {
	for seed := int64(0); seed < 150; seed++ {
		r := rand.New(rand.NewSource(seed))
		job := lengthJob(r, 1+r.Intn(4), 700+float64(r.Intn(800)))
		l, err := Lengths(context.Background(), job, LengthRules{Kerf: 3})
		if err != nil {
			t.Fatal(err)
		}
		verifier{job: &job, kerf: 3, sawn: true}.check(t, l)
		var lens []float64
		for _, p := range job.Parts {
			for q := 0; q < p.Quantity; q++ {
				lens = append(lens, p.Outline.Extents().Width())
			}
		}
		for i := range lens { // longest first
			for j := i; j > 0 && lens[j] > lens[j-1]; j-- {
				lens[j], lens[j-1] = lens[j-1], lens[j]
			}
		}
		want := least(lens, job.Stock[0].Length, 3)
		if l.Report.Pieces != want || l.Report.LeastBound > want {
			t.Errorf("seed %d: %d boards, bound %d, trying everything gives %d", seed, l.Report.Pieces, l.Report.LeastBound, want)
		}
		if !l.Report.Optimal && l.Report.LeastBound != want {
			t.Logf("seed %d: not proved: bound %d, optimum %d", seed, l.Report.LeastBound, want)
		}
	}
}

// What must not change the number of boards: the order of the parts, one
// quantity split in two, everything twice as large. What can only lower it:
// longer boards. The answers are proved optimal, else the law says nothing.
func TestLengthsLaws(t *testing.T) {
	proved := 0
	for seed := int64(0); seed < 40; seed++ {
		r := rand.New(rand.NewSource(seed))
		job := lengthJob(r, 6, 1800)
		count := func(j Job, kerf float64) (int, bool) {
			l, err := Lengths(context.Background(), j, LengthRules{Kerf: kerf})
			if err != nil {
				t.Fatal(err)
			}
			verifier{job: &j, kerf: kerf, sawn: true}.check(t, l)
			return l.Report.Pieces, l.Report.Optimal
		}
		n, ok := count(job, 3)
		if !ok {
			continue
		}
		proved++
		same := func(what string, j Job, kerf float64) {
			if m, good := count(j, kerf); good && m != n {
				t.Errorf("seed %d, %s: %d boards, before %d", seed, what, m, n)
			}
		}
		perm := job
		perm.Parts = append([]Part(nil), job.Parts...)
		r.Shuffle(len(perm.Parts), func(i, j int) { perm.Parts[i], perm.Parts[j] = perm.Parts[j], perm.Parts[i] })
		same("permuted", perm, 3)
		split := job
		split.Parts = nil
		for _, p := range job.Parts {
			for q := p.Quantity; q > 0; q-- {
				p.Quantity = 1
				split.Parts = append(split.Parts, p)
			}
		}
		same("split", split, 3)
		twice := job
		twice.Parts = append([]Part(nil), job.Parts...)
		for i := range twice.Parts {
			twice.Parts[i].Outline = twice.Parts[i].Outline.Transform(outline.Scale(2))
		}
		twice.Stock = []Stock{{Length: 3600, Width: 290, Grain: AlongX}}
		same("scaled", twice, 6)
		mirror := job
		mirror.Parts = append([]Part(nil), job.Parts...)
		for i := range mirror.Parts {
			mirror.Parts[i].Outline = mirror.Parts[i].Outline.Transform(outline.MirrorX())
		}
		same("mirrored", mirror, 3)
		long := job
		long.Stock = []Stock{{Length: 1800 + float64(r.Intn(600)), Width: 145, Grain: AlongX}}
		if m, good := count(long, 3); good && m > n {
			t.Errorf("seed %d: longer boards take %d, before %d", seed, m, n)
		}
		if m, good := count(job, 0); good && m > n {
			t.Errorf("seed %d: without kerf %d, with it %d", seed, m, n)
		}
	}
	if proved < 30 {
		t.Errorf("only %d of 40 proved optimal", proved)
	}
}

// Free and saw layouts stay sound when the job is scaled, mirrored, permuted
// or its quantities are split.
func TestSoundUnderChange(t *testing.T) {
	for seed := int64(104); seed < 106; seed++ {
		r := rand.New(rand.NewSource(seed))
		job, rules := randomFree(r)
		job.Effort = 15
		rules.BedLength, rules.BedWidth = 0, 0
		for i := range job.Stock {
			job.Stock[i].Defects = nil
		}
		for what := 0; what < 4; what++ {
			j := job
			j.Parts = append([]Part(nil), job.Parts...)
			j.Stock = append([]Stock(nil), job.Stock...)
			ru := rules
			switch what {
			case 0:
				ru.Gap *= 2.5
				ru.Margin *= 2.5
				for i := range j.Parts {
					j.Parts[i].Outline = j.Parts[i].Outline.Transform(outline.Scale(2.5))
					j.Parts[i].Allowance *= 2.5
				}
				for i := range j.Stock {
					s := &j.Stock[i]
					s.Length, s.Width, s.End, s.Edge = 2.5*s.Length, 2.5*s.Width, 2.5*s.End, 2.5*s.Edge
				}
			case 1:
				for i := range j.Parts {
					j.Parts[i].Outline = j.Parts[i].Outline.Transform(outline.MirrorY())
				}
			case 2:
				r.Shuffle(len(j.Parts), func(a, b int) { j.Parts[a], j.Parts[b] = j.Parts[b], j.Parts[a] })
			case 3:
				j.Parts = append(j.Parts, j.Parts[0])
			}
			l, _ := Free(context.Background(), j, ru)
			freeVerifier(&j, ru).check(t, l)
			l, _ = Saw(context.Background(), j, SawRules{Kerf: 3})
			verifier{job: &j, kerf: 3, sawn: true}.check(t, l)
		}
	}
}

// A proved optimum of the saw: four quarters of a sheet with their kerfs.
func TestSawQuarters(t *testing.T) {
	job := Job{Parts: []Part{{ID: "q", Outline: outline.Region{outline.Rectangle(0, 0, 498.5, 298.5)}, Quantity: 8}}, Stock: []Stock{{Length: 1000, Width: 600}}}
	l, err := Saw(context.Background(), job, SawRules{Kerf: 3})
	if err != nil {
		t.Fatal(err)
	}
	verifier{job: &job, kerf: 3, sawn: true}.check(t, l)
	if len(l.Pieces) != 2 || !l.Report.Optimal || l.Report.LeastBound != 2 {
		t.Errorf("%d sheets, %+v", len(l.Pieces), l.Report)
	}
	// 498.5 + 3 + 498.5 = 1000: one crosscut and, at one setting of the fence,
	// two rips, the second without moving it
	var kinds []string
	for _, s := range l.Pieces[0].Steps {
		kinds = append(kinds, s.String())
	}
	if len(kinds) != 3 || !l.Pieces[0].Steps[2].Same {
		t.Errorf("steps %q", kinds)
	}
}

// boxParts are the parts of a plain box with a slanted roof: what a batch is
// made of.
func boxParts(n int) []Part {
	pt := func(x, y float64) outline.Point { return outline.Point{X: x, Y: y} }
	rect := func(w, h float64) outline.Region { return outline.Region{outline.Rectangle(0, 0, w, h)} }
	front := append(rect(145, 240), outline.Circle(pt(72.5, 180), 32).Reverse())
	side := outline.Region{outline.Polygon(pt(0, 0), pt(120, 0), pt(120, 240), pt(0, 265))}
	return []Part{
		{ID: "front", Outline: front, Quantity: n}, {ID: "back", Outline: rect(145, 435), Quantity: n},
		{ID: "left", Outline: side, Quantity: n}, {ID: "right", Outline: side.Transform(outline.MirrorX()), Quantity: n},
		{ID: "floor", Outline: rect(115.8, 120), Quantity: n}, {ID: "roof", Outline: rect(185, 200), Quantity: n},
	}
}

// TestGrowth prints time and memory against the number of boxes.
func TestGrowth(t *testing.T) {
	list := []int{1, 10}
	if every() == 1 {
		list = append(list, 50, 500)
	}
	for _, n := range list {
		job := Job{Parts: boxParts(n), Stock: []Stock{{Length: 1220, Width: 2440}}}
		if n == 1 {
			job.Stock[0].Width = 610
		}
		rules := FreeRules{Gap: 7, Margin: 10}
		var before, after runtime.MemStats
		for _, f := range []struct {
			name string
			run  func() (Layout, verifier, error)
		}{
			{"free", func() (Layout, verifier, error) {
				l, err := Free(context.Background(), job, rules)
				return l, freeVerifier(&job, rules), err
			}},
			{"saw", func() (Layout, verifier, error) {
				l, err := Saw(context.Background(), job, SawRules{Kerf: 3})
				return l, verifier{job: &job, kerf: 3, sawn: true}, err
			}},
			{"lengths", func() (Layout, verifier, error) {
				j := job
				j.Stock = []Stock{{Length: 2400, Width: 200, End: 25}}
				l, err := Lengths(context.Background(), j, LengthRules{Kerf: 3})
				return l, verifier{job: &j, kerf: 3, sawn: true}, err
			}},
		} {
			runtime.GC()
			runtime.ReadMemStats(&before)
			start := cpuTime()
			l, v, err := f.run()
			cpu := cpuTime() - start
			runtime.ReadMemStats(&after)
			if err != nil {
				t.Fatal(n, f.name, err)
			}
			v.check(t, l)
			fmt.Printf("%3d boxes, %-7s %4d pieces of stock, yield %.1f %%, bound %d, %s; %.2fs, %.0f MB allocated\n", n, f.name, len(l.Pieces), 100*l.Report.Yield,
				l.Report.LeastBound, l.Report.Verdict(), cpu.Seconds(), float64(after.TotalAlloc-before.TotalAlloc)/1e6)
			if math.IsNaN(l.Report.Yield) || l.Report.Yield > 1 {
				t.Error("yield")
			}
		}
	}
}
