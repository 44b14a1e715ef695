package box_test

import (
	"fmt"
	"testing"

	"holt.example/box"
	"holt.example/joints"
)

// bench is the orchard box with drains, vents and a rebated floor.
var bench = orchard.With(func(d *box.Design) {
	d.Floor = box.FloorBetween{Raise: 0, Joint: joints.Rebate{}}
	d.Features = append(d.Features, box.Vents{}, box.Drains{})
})

// BenchmarkDesign resolves and meshes whole designs: the time and the
// allocations of one should not grow with their number.
func BenchmarkDesign(b *testing.B) {
	for _, n := range []int{1, 10, 100, 1000} {
		b.Run(fmt.Sprintf("%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				for k := 0; k < n; k++ {
					d := bench
					d.Size = box.Cavity{Width: 120 + box.MM(k%7), Depth: 120, Height: 240}
					p, err := d.Resolve()
					if err != nil {
						b.Fatal(err)
					}
					for _, q := range p.Pieces() {
						if _, err := p.Mesh(q.Part); err != nil {
							b.Fatal(err)
						}
					}
				}
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*n), "us/design")
		})
	}
}

// BenchmarkOpenings resolves the orchard box with a roof on a strip and a side on
// two nails, their ways proved.
func BenchmarkOpenings(b *testing.B) {
	d := bench.With(func(d *box.Design) {
		d.Opens = []box.Opening{box.Hinged{Part: box.Roof}, box.Pivoted{Part: box.Left, Angle: 60}}
	})
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := d.Resolve(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkResolve is the same without the meshes.
func BenchmarkResolve(b *testing.B) {
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := bench.Resolve(); err != nil {
			b.Fatal(err)
		}
	}
}
