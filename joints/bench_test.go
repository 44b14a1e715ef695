package joints

import "testing"

// BenchmarkCheck is asked for every edge of every design.
func BenchmarkCheck(b *testing.B) {
	flush, run := at(14.6, 12, 95, 0), at(14.6, 12, 95, 20)
	for _, x := range []struct {
		name string
		j    Joint
		c    Corner
	}{
		{"butt", Butt{}, flush},
		{"mitre", Mitre{}, flush},
		{"rebate", Rebate{}, flush},
		{"housing", Housing{}, run},
		{"stopped", Housing{Stop: 20}, run},
		{"comb", Comb{}, flush},
	} {
		s, err := x.j.Section(x.c)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(x.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := Check(x.c, s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
