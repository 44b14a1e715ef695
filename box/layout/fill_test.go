package layout

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"holt.example/box/outline"
)

// TestPublishedFill: one sheet, any number of each piece; the values were
// computed by an exact program for the data (issue 5: never above, and equal
// for gcut1-12).
func TestPublishedFill(t *testing.T) {
	best := map[string]int{}
	for _, r := range rows(t, "best-known.csv") {
		if r["set"] != "guillotine" || !strings.Contains(r["problem"], "any number of each piece") {
			continue
		}
		best[r["instance"]+fmt.Sprint(strings.Contains(r["problem"], "turns allowed"))] = atoi(t, r["best_known"])
	}
	type inst struct {
		w, h  int
		parts []Part
	}
	list := map[string]*inst{}
	var names []string
	for _, r := range rows(t, "guillotine.csv") {
		n := r["instance"]
		if !strings.HasPrefix(n, "gcut") {
			continue
		}
		if list[n] == nil {
			list[n] = &inst{w: atoi(t, r["sheet_width"]), h: atoi(t, r["sheet_height"])}
			names = append(names, n)
		}
		list[n].parts = append(list[n].parts, Part{ID: r["item"], Worth: atof(t, r["value"]),
			Outline: outline.Region{outline.Rectangle(0, 0, atof(t, r["width"]), atof(t, r["height"]))}})
	}
	tried, equal := 0, 0
	for _, n := range names {
		if n == "gcut13" && os.Getenv("HOLT_LAYOUT_EVERY") != "1" {
			continue // 8 s; only in the whole run
		}
		for _, turn := range []bool{false, true} {
			want, ok := best[n+fmt.Sprint(turn)]
			if !ok {
				t.Fatal("no value for ", n)
			}
			in := list[n]
			job := Job{Stock: []Stock{{Length: float64(in.w), Width: float64(in.h)}}}
			for _, p := range in.parts {
				if !turn {
					p.Turns = []float64{0}
				}
				job.Parts = append(job.Parts, p)
			}
			start := cpuTime()
			l, err := Fill(context.Background(), job, SawRules{LeastRip: -1})
			if err != nil {
				t.Fatal(n, err)
			}
			cpu := cpuTime() - start
			if os.Getenv("HOLT_LAYOUT_LIST") != "" {
				fmt.Printf("%s turn %v: %v of %d, optimal %v, %.2fs\n", n, turn, l.Report.Worth, want, l.Report.Optimal, cpu.Seconds())
			}
			v := verifier{job: &Job{Parts: append([]Part(nil), job.Parts...), Stock: job.Stock}, sawn: true}
			for i := range v.job.Parts {
				v.job.Parts[i].Quantity = 0
				for _, q := range l.Pieces[0].Placements {
					if q.Part == i {
						v.job.Parts[i].Quantity = max(v.job.Parts[i].Quantity, q.Copy+1)
					}
				}
			}
			for i := range l.Pieces {
				for _, q := range l.Pieces[i].Placements {
					if err := v.place(&l.Pieces[i], q); err != nil {
						t.Error(n, err)
					}
				}
				if err := v.apart(&l.Pieces[i]); err != nil {
					t.Error(n, err)
				}
				if err := v.tree(&l.Pieces[i]); err != nil {
					t.Error(n, err)
				}
			}
			if tried++; int(l.Report.Worth) == want {
				equal++
			}
			if int(l.Report.Worth) > want || n != "gcut13" && int(l.Report.Worth) != want {
				t.Errorf("%s turn %v: %v, want %d", n, turn, l.Report.Worth, want)
			}
		}
	}
	fmt.Printf("one sheet, gcut: wanted values never above the exact ones, equal for gcut1-12; reached %d of %d equal\n", equal, tried)
}
