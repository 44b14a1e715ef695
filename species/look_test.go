package species

import (
	"math"
	"testing"

	"holt.example/box"
)

// surveyed resolves and measures a design.
func surveyed(t *testing.T, d box.Design) *look {
	t.Helper()
	l, err := survey(resolve(t, d), MustGet("great_tit"), Site{})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func near1e6(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// A regular hexagon 150 across has walls of 150 tan 30 = 86.6025 inside: beside
// a hole of 32 in their middle stay (86.6025 - 32)/2 = 27.3013, and 17.3013 when
// it stands 10 to the right.
func TestBesideOnHexagon(t *testing.T) {
	d := box.Design{Name: "hexagon", Board: box.Board{Thickness: 15}, Footprint: box.Regular{Sides: 6, Across: 150}, Size: box.Cavity{Height: 250},
		Floor: box.FloorUnder{}, Roof: box.Hip{Pitch: 30},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170, Right: 10}}}
	l := surveyed(t, d)
	if got, ok := l.beside(&l.ways[0]); !ok || !near1e6(got, 75*math.Tan(math.Pi/6)-16-10) {
		t.Errorf("%v, %v", got, ok)
	}
	if w := l.ways[0]; !near1e6(w.lowest, 170) || !near1e6(w.highest, 202) || !w.round || !near1e6(w.diameter, 32) {
		t.Errorf("%+v", w)
	}
	// The hip passes through the eaves at 250 and rises inwards: 250 - 202 = 48.
	if got, ok := l.over(&l.ways[0]); !ok || !near1e6(got, 48) {
		t.Errorf("%v, %v", got, ok)
	}
}

// Under a gable that slopes to the sides the ceiling over the edge of a hole is
// lower than at the ridge. At 45 degrees over a cavity of 150 it stands at
// 250 + 75 - |x|. A hole of 32, 30 to the right, has its rim nearest to it at
// 45 degrees: the vertical gap there is 325 - 30 - (z + 16 sqrt 2), z being the
// height of the middle, 216: 56.3726.
func TestOverUnderGable(t *testing.T) {
	d := sound().With(func(d *box.Design) {
		d.Boards, d.Walls = nil, nil
		d.Roof = box.Gable{Pitch: 45}
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 200, Right: 30}}
	})
	l := surveyed(t, d)
	if got, ok := l.over(&l.ways[0]); !ok || !near1e6(got, 325-30-216-16*math.Sqrt2) {
		t.Errorf("%v, %v", got, ok)
	}
}

// On a front that leans by 10 degrees the hole is an ellipse seen from the
// front; its lowest point on the inner face is at the height asked for.
func TestLowestOnLeaningFront(t *testing.T) {
	d := sound().With(func(d *box.Design) {
		d.Boards = nil
		d.Walls = []box.Wall{{On: box.Front, Lean: 10}}
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}}
	})
	l := surveyed(t, d)
	if w := l.ways[0]; !near1e6(w.lowest, 150) || !near1e6(w.highest, 150+32*math.Cos(10*math.Pi/180)) {
		t.Errorf("%v to %v", w.lowest, w.highest)
	}
	// The roof of 10 degrees and its slope as measured.
	for i := range l.pieces {
		if p := &l.pieces[i]; p.Part == box.Roof && !near1e6(math.Acos(p.outward.Z)*180/math.Pi, 10) {
			t.Errorf("%v", p.outward)
		}
	}
}

// Whatever the design, every animal can be asked about it: nothing panics.
func TestReviewOfOddities(t *testing.T) {
	odd := []box.Design{
		{Name: "board", Board: box.Board{Thickness: 15}, Free: []box.Free{{Name: "board", Outline: rectangle(0, 0, 200, 150)}}},
		{Name: "tube", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 100, Depth: 100, Height: 100}, Floor: box.NoFloor{}, Roof: box.NoRoof{}},
		{Name: "three", Board: box.Board{Thickness: 15}, Footprint: box.Regular{Sides: 3, Across: 200}, Size: box.Cavity{Height: 200}, Floor: box.FloorUnder{}, Roof: box.Flat{}},
	}
	for _, d := range odd {
		plan := resolve(t, d)
		for _, p := range All() {
			if _, err := Review(plan, p, Site{Place: OnTree, Above: 3, HotSummers: true}); err != nil {
				t.Errorf("%s, %s: %v", d.Name, p.Key, err)
			}
		}
	}
}
