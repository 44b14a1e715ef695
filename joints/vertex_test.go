package joints

import "testing"

// triple is a square corner of three boards, made of unit cells, with the
// section of each pair. Whole-millimetre joints divide it without remainder.
type triple struct {
	thick [3]int
	pairs []struct {
		a, b int
		s    Section
	}
}

func (v *triple) join(t *testing.T, j Joint, a, b int, runOn MM) {
	t.Helper()
	c := at(MM(v.thick[a]), MM(v.thick[b]), 90, runOn)
	v.pairs = append(v.pairs, struct {
		a, b int
		s    Section
	}{a, b, section(t, j, c)})
}

// empty counts the cells that no board has; none may have two.
func (v *triple) empty(t *testing.T) int {
	t.Helper()
	void := 0
	for x := range v.thick[0] {
		for y := range v.thick[1] {
			for z := range v.thick[2] {
				p := [3]float64{float64(x) + 0.5, float64(y) + 0.5, float64(z) + 0.5}
				has := [3]bool{true, true, true}
				for _, pair := range v.pairs {
					inA, inB, _ := owners(pair.s, p[pair.a], p[pair.b], 100)
					has[pair.a] = has[pair.a] && inA
					has[pair.b] = has[pair.b] && inB
				}
				n := 0
				for _, h := range has {
					if h {
						n++
					}
				}
				switch {
				case n == 0:
					void++
				case n > 1:
					t.Fatalf("cell %v has %d boards", p, n)
				}
			}
		}
	}
	return void
}

// geometry.md section 3, V4: boards 10, 12, 15. Laps that run in a ring leave
// the whole corner, 1800, empty; one mitre in the ring half of it; a true order
// nothing.
func TestRingOfLaps(t *testing.T) {
	for _, x := range []struct {
		ab, bc, ca Joint
		turned     bool // A laps over C
		void       int
	}{
		{Butt{}, Butt{}, Butt{}, false, 1800},
		{Butt{}, Butt{}, Mitre{}, false, 900},
		{Butt{}, Butt{}, Butt{}, true, 0},
	} {
		v := triple{thick: [3]int{10, 12, 15}}
		v.join(t, x.ab, 0, 1, 0)
		v.join(t, x.bc, 1, 2, 0)
		if x.turned {
			v.join(t, x.ca, 0, 2, 0)
		} else {
			v.join(t, x.ca, 2, 0, 0)
		}
		if got := v.empty(t); got != x.void {
			t.Errorf("%T %T %T: void %d, want %d", x.ab, x.bc, x.ca, got, x.void)
		}
	}
}

// V5: rebates A over B, A over C, B over C. Both depths into one board must be
// equal or a rebate runs out: 150 = 2 x 5 x 15, 210 = 2 x (12-5) x 15.
func TestRebatesAtAVertex(t *testing.T) {
	for _, x := range []struct {
		ab, ac, bc MM
		void       int
	}{
		{5, 5, 5, 0},
		{5, 5, 3, 0},
		{5, 3, 5, 150},
		{3, 5, 5, 210},
	} {
		v := triple{thick: [3]int{10, 12, 15}}
		v.join(t, Rebate{Depth: x.ab}, 0, 1, 0)
		v.join(t, Rebate{Depth: x.ac}, 0, 2, 0)
		v.join(t, Rebate{Depth: x.bc}, 1, 2, 0)
		if got := v.empty(t); got != x.void {
			t.Errorf("%+v: void %d", x, got)
		}
	}
}

// V6: front and side 15, rebated 6, and a floor of 12 housed 5 in both: a
// closed pocket 1 x 5 x 12 stays empty at each corner.
func TestHousingMeetsRebate(t *testing.T) {
	v := triple{thick: [3]int{15, 15, 12}}
	v.join(t, Rebate{Depth: 6}, 0, 1, 0)
	v.join(t, Housing{Depth: 5, Tight: true}, 0, 2, 6)
	v.join(t, Housing{Depth: 5, Tight: true}, 1, 2, 6)
	if got := v.empty(t); got != 60 {
		t.Errorf("void %d, want 60", got)
	}
}
