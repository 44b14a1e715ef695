package box_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/joints"
)

// FuzzResolve: whatever a design says, Resolve gives a plan or problems, never
// panics; and a plan has no overlap, finite volumes and closed meshes.
func FuzzResolve(f *testing.F) {
	f.Add([]byte{0, 0})
	f.Add([]byte("1 a first design in a dozen lines, and many letters for its numbers"))
	f.Add([]byte("\x01\xff\xff\xff\xff\xff\xff\xf0\x7f\x00\x00\x00\x00\x00\x00\xf8\x7f and nothing more to say, but for the rest of its numbers"))
	f.Add([]byte(strings.Repeat("\x7f\x03\x40\x11\x02", 40)))
	f.Add([]byte(strings.Repeat("\x80\x10\x05\x33\x0a\xc0\x21", 30)))
	f.Fuzz(func(t *testing.T, data []byte) {
		w := &wild{b: data}
		w.wide = w.byte()%2 == 1
		d := w.design()
		p, err := d.Resolve()
		if (p == nil) == (err == nil) {
			t.Fatalf("plan %v, error %v", p, err)
		}
		if err != nil {
			var ps box.Problems
			if !errors.As(err, &ps) || len(ps) == 0 {
				t.Fatalf("%T: %v", err, err)
			}
			for _, x := range ps {
				if e := goPath(x.Path); e != nil {
					t.Errorf("%v: %v", e, x)
				}
			}
			return
		}
		soundPlan(t, p)
	})
}

// TestWildDesigns is a walk of the same kind that every run of the tests takes:
// half-sensible designs from a fixed seed.
func TestWildDesigns(t *testing.T) {
	t.Parallel()
	accepted := 0
	wildDesigns(2500, func(seed uint64, d box.Design) {
		p, ps := tryResolve(t, fmt.Sprintf("seed %d", seed), d)
		for _, x := range ps {
			if x.Code == "overlap" || x.Code == "joint-panic" || x.Code == "solid" {
				t.Errorf("seed %d: %v", seed, x)
			}
		}
		if p != nil {
			accepted++
			soundPlan(t, p)
		}
	})
	if accepted < 300 {
		t.Errorf("only %d accepted", accepted)
	}
}

func wildDesigns(n uint64, use func(seed uint64, d box.Design)) {
	for seed := range n {
		r := rand.New(rand.NewPCG(seed, 1))
		data := make([]byte, 400)
		for i := range data {
			data[i] = byte(r.Uint32())
		}
		w := &wild{b: data, wide: seed%10 == 0}
		use(seed, w.design())
	}
}

// TestMaterialThatHangsTogetherByAnEdge: a comb whose upper half belongs to
// front and back, under square tops, leaves the sides' material touching along
// one edge. What is planned has a mesh all the same.
func TestMaterialThatHangsTogetherByAnEdge(t *testing.T) {
	ps := problems(t, box.Design{Name: "comb", Board: thick(15), Size: box.Cavity{Width: 200, Depth: 200, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Pent{Pitch: 30, Tops: box.SquareTops},
		Corners: box.Corners{Joint: joints.Comb{Fingers: 2, First: joints.OwnerB}}})
	if ps[0].Code != "falls-apart" {
		t.Errorf("%v", ps)
	}
}

// soundPlan checks a plan from outside.
func soundPlan(t *testing.T, p *box.Plan) {
	t.Helper()
	soundParts(t, p)
	soundMeshes(t, p)
}

// soundParts: finite sizes, and no place held twice.
func soundParts(t *testing.T, p *box.Plan) {
	t.Helper()
	qs := p.Pieces()
	for i, q := range qs {
		if !(q.Volume > 0 && q.Length > 0 && q.Width > 0 && q.Volume < 1e12) {
			t.Errorf("%s: %v mm3, %v x %v", q.Part, q.Volume, q.Length, q.Width)
		}
		for _, o := range qs[i+1:] {
			// As Resolve counts it: the side test of 1e-7 mm over a large face.
			if v := solid.Overlap(q.Body, o.Body); v > 1e-2 {
				t.Errorf("%s and %s share %v mm3", q.Part, o.Part, v)
			}
		}
	}
}

// soundMeshes: closed, and of the volume that the parts state.
func soundMeshes(t *testing.T, p *box.Plan) {
	t.Helper()
	for _, q := range p.Pieces() {
		m, err := p.Mesh(q.Part)
		if err != nil {
			t.Errorf("%s: %v", q.Part, err)
			continue
		}
		if err := m.Check(); err != nil {
			t.Errorf("%s: %v", q.Part, err)
		}
		if v := m.Volume(); !(math.Abs(v-q.Volume) <= 1e-9*q.Volume+1e-3) {
			t.Errorf("%s: mesh %v, part %v", q.Part, v, q.Volume)
		}
	}
}
