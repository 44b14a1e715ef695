package box_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
)

// randomDesign draws a design of the given kinds.
func randomDesign(r *rand.Rand, k kinds) box.Design { return anybox.Design(r, k) }

type kinds = anybox.Kinds

// TestRandomDesigns resolves designs of every kind: no overlap, no void
// without an owner (Resolve reports both), every mesh closed and of the volume
// that the decomposition gives, few refused. Each footprint with each roof,
// lap and corner joint is accepted at least wanted times.
func TestRandomDesigns(t *testing.T) {
	wanted := 20
	if testing.Short() { // race detector, seeded faults
		wanted = 2
	}
	tries := 2 * wanted
	var mu sync.Mutex
	var total, refused int
	floorsSeen := map[string]int{}
	t.Run("product", func(t *testing.T) {
		for i, foot := range anybox.Footprints {
			for j, roof := range anybox.Roofs {
				t.Run(foot+" "+roof, func(t *testing.T) {
					t.Parallel()
					r := rand.New(rand.NewPCG(uint64(i), uint64(j)))
					for _, laps := range anybox.Laps {
						for _, corner := range anybox.Corners {
							got, n := 0, 0
							for ; got < wanted && n < tries; n++ {
								k := kinds{Footprint: foot, Roof: roof, Laps: laps, Corner: corner, Floor: anybox.Floors[r.IntN(len(anybox.Floors))]}
								if tryDesign(t, randomDesign(r, k), k) {
									got++
									mu.Lock()
									floorsSeen[k.Floor]++
									mu.Unlock()
								}
							}
							mu.Lock()
							total, refused = total+n, refused+n-got
							mu.Unlock()
							if got < wanted {
								t.Errorf("%s, %s: %d of %d accepted", laps, corner, got, n)
							}
						}
					}
				})
			}
		}
	})
	t.Logf("%d designs, %d refused, every footprint x roof x laps x joint accepted %d times; floors %v", total, refused, wanted, floorsSeen)
	if refused*5 > total {
		t.Errorf("%d of %d refused: more than a fifth", refused, total)
	}
}

// tryDesign resolves and checks one design; it reports whether it was accepted.
func tryDesign(t *testing.T, d box.Design, k kinds) bool {
	p, err := d.Resolve()
	if err != nil {
		var ps box.Problems
		if !errors.As(err, &ps) {
			t.Fatalf("%v: %v", k, err)
		}
		for _, x := range ps {
			switch x.Code {
			case "overlap", "leak", "solid", "outline", "no-contact":
				t.Errorf("%v: %.300v", k, x)
			}
		}
		return false
	}
	for _, q := range p.Pieces() {
		m, err := p.Mesh(q.Part)
		if err != nil {
			t.Errorf("%v %s: %v", k, q.Part, err)
			continue
		}
		if err := m.Check(); err != nil {
			t.Errorf("%v %s: %v", k, q.Part, err)
		}
		if v := m.Volume(); math.Abs(v-q.Volume) > 1e-9*q.Volume+1e-3 {
			t.Errorf("%v %s: mesh %.6f, decomposition %.6f", k, q.Part, v, q.Volume)
		}
	}
	return true
}
