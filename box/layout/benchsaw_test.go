package layout

import (
	"context"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"
)

func readBins(t testing.TB, file string) (names []string, w, h map[string]int, items map[string][]blankSize) {
	w, h, items = map[string]int{}, map[string]int{}, map[string][]blankSize{}
	for _, r := range rows(t, file) {
		n := r["instance"]
		if _, ok := w[n]; !ok {
			names = append(names, n)
			w[n], h[n] = atoi(t, r["bin_width"]), atoi(t, r["bin_height"])
		}
		q := 1
		if r["qty"] != "" {
			q = atoi(t, r["qty"])
		}
		for ; q > 0; q-- {
			items[n] = append(items[n], blankSize{w: int64(atoi(t, r["width"])), h: int64(atoi(t, r["height"])), ways: []uint8{wayUp}})
		}
	}
	return
}

func effortOf(def int) int {
	var n int
	if _, err := fmt.Sscan(os.Getenv("HOLT_LAYOUT_EFFORT"), &n); err == nil && n > 0 {
		return n
	}
	return def
}

// TestPublishedSaw runs the 500 instances of classes 1 to 10; the effort is
// per instance.
func TestPublishedSaw(t *testing.T) {
	names, w, h, items := readBins(t, "bin2d.csv")
	for _, turn := range []bool{false, true} {
		total, area, bounds, iters := 0, 0, 0, 0
		var cpu time.Duration
		k := 0
		class := map[string]int{}
		var order []string
		for _, n := range names {
			if !strings.HasPrefix(n, "cl_") || !chosen(n) {
				continue
			}
			if k++; (k-1)%every() != 0 {
				continue
			}
			p := &sawing{pieces: append([]blankSize(nil), items[n]...), kinds: []sheetKind{{roots: [][2]int64{{int64(w[n]), int64(h[n])}}, cost: 1}}}
			a := 0.0
			for i := range p.pieces {
				if q := &p.pieces[i]; turn && q.h <= int64(w[n]) && q.w <= int64(h[n]) {
					q.ways = []uint8{wayUp | waySide}
					if q.w > int64(w[n]) || q.h > int64(h[n]) {
						q.ways = []uint8{waySide}
					}
				}
				a += float64(p.pieces[i].w * p.pieces[i].h)
			}
			p.prepare()
			start := cpuTime()
			best := p.construct()
			bound := p.bound()
			got, done := p.improve(context.Background(), best, bound, 1, effortOf(2000), stream(1, 0))
			cpu += cpuTime() - start
			iters += done
			total += int(got.cost)
			bounds += int(bound)
			area += int(math.Ceil(a/float64(w[n]*h[n]) - 1e-9))
			if class[n[:9]] == 0 {
				order = append(order, n[:9])
			}
			class[n[:9]] += int(got.cost)
			if int(bound) > int(got.cost) || len(got.out) > 0 {
				t.Errorf("%s: %v bins, bound %v, out %d", n, got.cost, bound, len(got.out))
			}
		}
		if os.Getenv("HOLT_LAYOUT_LIST") != "" {
			for _, o := range order {
				fmt.Print(o, " ", class[o], "; ")
			}
			fmt.Println()
		}
		fmt.Printf("saw, turn %v: every %d: bins %d, bound %d, area bound %d, iterations %d, %.1fs\n", turn, every(), total, bounds, area, iters, cpu.Seconds())
	}
}

// TestPublishedPanels: panel sets a01 to a43, quarter turns allowed, any
// number of stages; bins beside the bound by area (issue 5: within one of it
// on at least 35 of the sets).
func TestPublishedPanels(t *testing.T) {
	names, w, h, items := readBins(t, "bin2d-panels.csv")
	near, n, k := 0, 0, 0
	var cpu time.Duration
	for _, name := range names {
		if len(name) != 3 || name[0] != 'a' || !chosen(name) {
			continue
		}
		if k++; every() > 1 && (k-1)%10 != 0 {
			continue
		}
		p := &sawing{pieces: append([]blankSize(nil), items[name]...), kinds: []sheetKind{{roots: [][2]int64{{int64(w[name]), int64(h[name])}}, cost: 1}}}
		a := 0.0
		for i := range p.pieces {
			q := &p.pieces[i]
			q.ways = []uint8{0}
			if q.w <= int64(w[name]) && q.h <= int64(h[name]) {
				q.ways[0] |= wayUp
			}
			if q.h <= int64(w[name]) && q.w <= int64(h[name]) {
				q.ways[0] |= waySide
			}
			a += float64(q.w * q.h)
		}
		p.prepare()
		start := cpuTime()
		best := p.construct()
		got, done := p.improve(context.Background(), best, p.bound(), 1, effortOf(2000), stream(1, 0))
		cpu += cpuTime() - start
		area := int(math.Ceil(a/float64(w[name]*h[name]) - 1e-9))
		n++
		if int(got.cost) <= area+1 && len(got.out) == 0 {
			near++
		}
		if len(got.out) > 0 || int(got.cost) < area {
			t.Errorf("%s: %v bins of %d, out %d", name, got.cost, area, len(got.out))
		}
		fmt.Printf("%s %4d panels: %v bins, area bound %d, bound %v, %d iterations\n", name, len(p.pieces), got.cost, area, p.bound(), done)
	}
	fmt.Printf("panels: %d of %d within one of the area bound, %.1fs\n", near, n, cpu.Seconds())
}
