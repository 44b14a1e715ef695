package box_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"holt.example/box"
	"holt.example/box/outline"
)

// growing is a wide front that takes n things in a square, 12 apart.
func growing(n int) (d box.Design, grid box.Repeat, at box.Anchor) {
	side := int(math.Round(math.Sqrt(float64(n))))
	d = box.Design{Name: "growth", Board: box.Board{Thickness: 15},
		Size: box.Cavity{Width: box.MM(12*side + 60), Depth: 120, Height: box.MM(12*side + 60)},
		Roof: box.Flat{}, Floor: box.FloorBetween{}}
	grid = box.Repeat{Columns: side, Rows: (n + side - 1) / side, StepRight: 12, StepUp: 12, Centred: true}
	return d, grid, box.Anchor{Up: box.MM(6*side + 30)}
}

// one is the design with a single feature that is repeated.
func one(n int, f func(grid box.Repeat, at box.Anchor) box.Feature) box.Design {
	d, grid, at := growing(n)
	d.Features = []box.Feature{f(grid, at)}
	return d
}

// BenchmarkGrowth resolves and meshes boxes with 10 to 10,000 features on one part,
// of several kinds, and prints the exponent of the growth from each tenfold to the
// next; it should stay at 1.2 or below once the box itself is no longer most of the
// work. Elements that are parts by themselves are compared pair by pair, a
// look at their bounds each, and are there up to 1,000.
func BenchmarkGrowth(b *testing.B) {
	ring := []outline.Path{outline.Circle(outline.Point{}, 8).Path()}
	kinds := []struct {
		name string
		most int
		part box.Part
		make func(n int) box.Design
	}{
		{"holes", 10000, box.Front, func(n int) box.Design {
			return one(n, func(g box.Repeat, at box.Anchor) box.Feature {
				return box.Cut{On: box.Front, At: at, Shape: box.Round{Diameter: 8}, Repeat: g}
			})
		}},
		{"pockets", 10000, box.Front, func(n int) box.Design {
			return one(n, func(g box.Repeat, at box.Anchor) box.Feature {
				return box.Cut{On: box.Front, At: at, Shape: box.Rect{Width: 8, Height: 8}, Depth: 5, Repeat: g}
			})
		}},
		{"lines", 10000, box.Front, func(n int) box.Design {
			return one(n, func(g box.Repeat, at box.Anchor) box.Feature {
				return box.Engrave{On: box.Front, At: at, Lines: ring, Repeat: g}
			})
		}},
		{"pattern", 10000, box.Front, func(n int) box.Design {
			return one(n, func(g box.Repeat, at box.Anchor) box.Feature {
				return box.Pattern{On: box.Front, Motif: box.Regular{Sides: 6, Across: 8}, At: at, Repeat: box.Repeat{StepRight: 12, StepUp: 12}, Margin: 8}
			})
		}},
		{"features", 10000, box.Front, func(n int) box.Design { // each an entry of its own
			d, g, at := growing(n)
			for i := range n {
				x, y := i%g.Columns, i/g.Columns
				d.Features = append(d.Features, box.Cut{On: box.Front, Shape: box.Round{Diameter: 8},
					At: box.Anchor{Right: 12 * (box.MM(x) - box.MM(g.Columns-1)/2), Up: at.Up + 12*(box.MM(y)-box.MM(g.Rows-1)/2)}})
			}
			return d
		}},
		{"bee holes", 10000, box.InnerPart("block"), func(n int) box.Design {
			d, g, _ := growing(n)
			d.Size = box.Cavity{Width: box.MM(12*g.Columns + 22), Depth: 120, Height: box.MM(12*g.Rows + 62)}
			d.Inner = []box.Inner{box.BeeBlock{Name: "block", Board: box.Board{Thickness: 90}, Spacing: 12,
				Rows: []box.BeeRow{{Diameter: 8, Depth: 60, Count: g.Columns, Repeat: g.Rows}}}}
			return d
		}},
		{"battens", 1000, box.FreePart("b1"), func(n int) box.Design { // parts of their own
			d, _, _ := growing(100)
			d.Size = box.Cavity{Width: 180, Depth: 120, Height: box.MM(9*n + 60)}
			for i := range n {
				d.Outer = append(d.Outer, box.Batten{Name: fmt.Sprint("b", i), Above: box.MM(9 * i), Height: 8, Hole: box.Round{Diameter: 4}})
			}
			return d
		}},
	}
	for _, k := range kinds {
		last, before := 0.0, 0
		for n := 10; n <= k.most; n *= 10 {
			d, mine := k.make(n), math.Inf(1)
			b.Run(fmt.Sprintf("%s/%d", k.name, n), func(b *testing.B) {
				b.ReportAllocs()
				best := math.Inf(1)
				for i := 0; i < b.N; i++ {
					t0 := time.Now()
					p, err := d.Resolve()
					if err != nil {
						b.Fatal(err)
					}
					if _, err := p.Mesh(k.part); err != nil {
						b.Fatal(err)
					}
					best = math.Min(best, time.Since(t0).Seconds())
				}
				if last > 0 && !math.IsInf(last, 1) { // the one before was run too
					b.ReportMetric(math.Log(best/last)/math.Log(float64(n)/float64(before)), "exponent")
				}
				b.ReportMetric(best*1e3, "ms")
				mine = math.Min(mine, best)
			})
			last, before = mine, n
		}
	}
}
