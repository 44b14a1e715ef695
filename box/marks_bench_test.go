package box_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"holt.example/box"
	"holt.example/box/outline"
)

// BenchmarkGrowth resolves and meshes a wide front with 10 to 10,000 features and
// prints the exponent of the growth from each tenfold to the next; it should
// stay at 1.2 or below once the box itself is no longer most of the work.
func BenchmarkGrowth(b *testing.B) {
	board := func(n int, engraved bool) box.Design {
		side := int(math.Round(math.Sqrt(float64(n))))
		d := box.Design{Name: "growth", Board: box.Board{Thickness: 15},
			Size: box.Cavity{Width: box.MM(12*side + 60), Depth: 120, Height: box.MM(12*side + 60)},
			Roof: box.Flat{}, Floor: box.FloorBetween{}}
		grid := box.Repeat{Columns: side, Rows: (n + side - 1) / side, StepRight: 12, StepUp: 12, Centred: true}
		at := box.Anchor{Up: box.MM(6*side + 30)}
		d.Features = []box.Feature{box.Cut{On: box.Front, At: at, Shape: box.Round{Diameter: 8}, Repeat: grid}}
		if engraved {
			d.Features = []box.Feature{box.Engrave{On: box.Front, At: at, Lines: []outline.Path{outline.Circle(outline.Point{}, 8).Path()}, Repeat: grid}}
		}
		return d
	}
	for _, engraved := range []bool{false, true} {
		last := 0.0
		for _, n := range []int{10, 100, 1000, 10000} {
			name := fmt.Sprintf("holes/%d", n)
			if engraved {
				name = fmt.Sprintf("lines/%d", n)
			}
			d := board(n, engraved)
			b.Run(name, func(b *testing.B) {
				b.ReportAllocs()
				best := math.Inf(1)
				for i := 0; i < b.N; i++ {
					t0 := time.Now()
					p, err := d.Resolve()
					if err != nil {
						b.Fatal(err)
					}
					if _, err := p.Mesh(box.Front); err != nil {
						b.Fatal(err)
					}
					best = math.Min(best, time.Since(t0).Seconds())
				}
				if last > 0 {
					b.ReportMetric(math.Log10(best/last), "exponent")
				}
				b.ReportMetric(best*1e3, "ms")
				last = best
			})
		}
	}
}
