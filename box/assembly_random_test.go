package box_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/solid"
	"holt.example/joints"
)

// moved is a body carried by v.
func moved(b solid.Body, v solid.Vec) solid.Body {
	shift := func(hs []solid.Plane) []solid.Plane {
		out := make([]solid.Plane, len(hs))
		for i, h := range hs {
			out[i] = solid.Plane{N: h.N, D: h.D + h.N.Dot(v)}
		}
		return out
	}
	out := solid.Body{Base: shift(b.Base)}
	for _, c := range b.Cutters {
		out.Cutters = append(out.Cutters, shift(c))
	}
	return out // without its prisms: openings let nothing through
}

// runsInto reports whether a, moving along d, runs into b somewhere up to far,
// looking at steps that grow from a twentieth of a millimetre.
func runsInto(a, b solid.Body, d solid.Vec, far float64) bool {
	for s := 0.05; s < far; s *= 1.25 {
		if solid.Overlap(moved(a, d.Scale(s)), moved(b, solid.Vec{})) > 0.05 {
			return true
		}
	}
	return false
}

// TestAssemblyOfRandomDesigns sees that every step of an assembly keeps its
// parts apart all the way home, and that parts called captive stop one another
// in every direction of a sample: two ways to the same answer, one by shadows
// and one by moving solids.
func TestAssemblyOfRandomDesigns(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 3))
	var singly, halves, captive, positions, directions int
	for n := 0; n < 60; n++ {
		k := anybox.Kinds{
			Footprint: anybox.Footprints[n%3], Roof: anybox.Roofs[r.IntN(len(anybox.Roofs))], Laps: anybox.Laps[r.IntN(3)],
			Corner: anybox.Corners[r.IntN(len(anybox.Corners))], Floor: anybox.Floors[r.IntN(len(anybox.Floors))]}
		d := anybox.Design(r, k)
		if n%3 == 0 && r.IntN(2) == 0 {
			d.Inner = append(d.Inner, box.Partition{Name: "p", Joint: joints.Housing{Stop: box.MM(5 * r.IntN(3))}})
		}
		if n%6 == 3 {
			d.Corners, d.Walls = box.Corners{Laps: box.Pinwheel, Joint: ringHousing{joints.Housing{Stop: 15}}}, nil
			if r.IntN(2) == 0 {
				d.Floor = box.FloorBetween{Raise: 25, Joint: joints.Housing{Stop: 10}}
			}
		}
		p, err := d.Resolve()
		if err != nil {
			continue
		}
		a, err := p.Assembly()
		body := map[box.Part]solid.Body{}
		for _, q := range p.Pieces() {
			body[q.Part] = q.Body
		}
		placed := map[box.Part]int{}
		for _, s := range a.Steps {
			home := solid.Vec(s.Move)
			for _, q := range s.Parts {
				if len(s.Onto) == 0 || len(s.Parts) == 1 {
					placed[q]++
				}
				for _, o := range s.Onto {
					positions++
					if runsInto(body[q], body[o], home.Scale(-1), 2000) {
						t.Errorf("%v: %s: %s runs into %s", k, s, q, o)
					}
				}
			}
			if len(s.Onto) > 0 && math.Abs(home.Len()-1) > 1e-9 {
				t.Errorf("%v: %s: the way is %v", k, s, s.Move)
			}
		}
		for _, q := range p.Pieces() {
			if placed[q.Part] != 1 {
				t.Errorf("%v: %s is placed %d times", k, q.Part, placed[q.Part])
			}
		}
		if last := a.Steps[len(a.Steps)-1]; len(last.Parts)+len(last.Onto) != len(p.Pieces()) {
			t.Errorf("%v: the last step leaves parts out: %s", k, last)
		}
		switch many := false; {
		case err != nil:
			captive++
			if captive <= 6 {
				for _, c := range a.Captive {
					directions += heldFast(t, r, body, c)
				}
			}
		default:
			for _, s := range a.Steps {
				many = many || len(s.Parts) > 1
			}
			if many {
				halves++
			} else {
				singly++
			}
		}
	}
	t.Logf("%d by single parts, %d with halves, %d captive; %d ways looked at, %d directions of captive sets", singly, halves, captive, positions, directions)
	if singly < 20 || halves < 1 || captive < 1 {
		t.Errorf("too few of a kind: %d by single parts, %d with halves, %d captive", singly, halves, captive)
	}
}

// heldFast sees that in each of a sample of directions every part of the set
// stops, in the end, every other. It returns the number of directions.
func heldFast(t *testing.T, r *rand.Rand, body map[box.Part]solid.Body, set []box.Part) int {
	ds := []solid.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}}
	for len(ds) < 16 {
		if d := (solid.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}); d.Len() > 0.1 {
			ds = append(ds, d.Unit())
		}
	}
	for _, d := range ds {
		n := len(set)
		stops := make([][]bool, n)
		for i := range stops {
			stops[i] = make([]bool, n)
			for j := range stops {
				stops[i][j] = i != j && runsInto(body[set[i]], body[set[j]], d, 2000)
			}
		}
		for k := range n {
			for i := range n {
				for j := range n {
					stops[i][j] = stops[i][j] || stops[i][k] && stops[k][j]
				}
			}
		}
		for i := range n {
			for j := range n {
				if i != j && !stops[i][j] {
					t.Errorf("captive %v: along %v %s does not stop %s", set, d, set[j], set[i])
					return len(ds)
				}
			}
		}
	}
	return len(ds)
}

// BenchmarkAssembly puts a box of a dozen parts together: a hexagon with six
// slopes, mitred, and the orchard box with a partition.
func BenchmarkAssembly(b *testing.B) {
	hexagon := box.Design{Name: "hexagon", Board: thick(12), Footprint: box.Regular{Sides: 6, Across: 160}, Size: box.Cavity{Height: 220},
		Corners: box.Corners{Joint: joints.Mitre{}}, Floor: box.FloorBetween{Raise: 10}, Roof: box.Hip{Pitch: 30, Over: box.Overhangs{All: 25}}}
	for _, d := range []box.Design{orchard, hexagon} {
		p := d.MustResolve()
		b.Run(d.Name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				if _, err := p.Assembly(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(p.Pieces())), "parts")
		})
	}
}

// Half-sensible designs: whatever resolves has an assembly that loses no part,
// the same each time, and test pieces or a reason against them.
func TestAssemblyOfWildDesigns(t *testing.T) {
	t.Parallel()
	held, goes := 0, 0
	wildDesigns(600, func(seed uint64, d box.Design) {
		p, err := d.Resolve()
		if err != nil {
			return
		}
		a, err := p.Assembly()
		var ps box.Problems
		switch {
		case err == nil:
			goes++
		case errors.As(err, &ps) && ps[0].Code == "captive" && len(ps) == len(a.Captive):
			held++
		default:
			t.Errorf("seed %d: %v", seed, err)
		}
		begun := map[box.Part]bool{}
		for _, s := range a.Steps {
			for _, q := range append(append([]box.Part(nil), s.Parts...), s.Onto...) {
				begun[q] = true
			}
		}
		if len(begun) != len(p.Pieces()) {
			t.Errorf("seed %d: %d parts of %d", seed, len(begun), len(p.Pieces()))
		}
		again, _ := p.Assembly()
		if fmt.Sprint(again) != fmt.Sprint(a) {
			t.Errorf("seed %d: another assembly the second time", seed)
		}
		if q, err := d.TestPieces(); (q == nil) != (err != nil) {
			t.Errorf("seed %d: plan %v, error %v", seed, q, err)
		}
	})
	t.Logf("%d go together, %d have captive parts", goes, held)
	if goes < 50 {
		t.Errorf("only %d go together", goes)
	}
}
