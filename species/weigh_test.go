package species

import (
	"errors"
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/species/timber"
)

// A board of 200 x 150 x 15 mm at 526 kg/m3 weighs 0.2367 kg (geometry), with
// its centre in its middle: 100, 75 and half the thickness before the wall.
func TestWeighBoard(t *testing.T) {
	d := box.Design{Name: "board", Board: box.Board{Thickness: 15, Material: "Scots pine"},
		Free: []box.Free{{Name: "board", Outline: rectangle(0, 0, 200, 150)}}}
	w, err := Weigh(resolve(t, d))
	if err != nil || len(w.Parts) != 1 || math.Abs(w.Mass-0.2367) > 1e-9 || w.Parts[0].From != "fpl-gtr-282" {
		t.Fatalf("%+v, %v", w, err)
	}
	// u of a part that faces forward runs to the right, v up; it lies before its
	// inner face, at y = 0.
	if c := w.Centre; math.Abs(float64(c.X)-100) > 1e-6 || math.Abs(float64(c.Y)+7.5) > 1e-6 || math.Abs(float64(c.Z)-75) > 1e-6 {
		t.Errorf("%+v", c)
	}
	// Hung at 140 with the foot at 0: 0.2367 x 9.80665 x 7.5 / 140 = 0.1243 N.
	if p := w.Pull(0, 140, 0, 0); math.Abs(p-0.12435) > 5e-6 {
		t.Errorf("%v", p)
	}
	// As much again in the box doubles it.
	if a, b := w.Pull(0, 140, 0, 0), w.Pull(0, 140, 0, w.Mass); math.Abs(b-2*a) > 1e-12 {
		t.Errorf("%v and %v", a, b)
	}
	if !math.IsNaN(w.Pull(0, 0, 0, 0)) {
		t.Error("a fixing at the foot holds nothing")
	}
}

// The box as a whole: the parts add up, the mirror plane holds the centre, and
// the masses are those of the plan.
func TestWeighBox(t *testing.T) {
	d := sound().With(func(d *box.Design) { d.Boards = nil })
	plan := resolve(t, d)
	w, err := Weigh(plan)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, q := range plan.Pieces() {
		sum += q.Mass
	}
	if math.Abs(sum-w.Mass) > 1e-9 {
		t.Errorf("%v by the plan, %v weighed", sum, w.Mass)
	}
	if math.Abs(float64(w.Centre.X)) > 1e-6 {
		t.Errorf("the centre is off the mirror plane: %+v", w.Centre)
	}
	if w.Centre.Y < 0 { // the back is the larger board
		t.Errorf("the centre stands in front: %+v", w.Centre)
	}
}

func TestWeighBadInput(t *testing.T) {
	var p box.Problem
	if _, err := Weigh(nil); !errors.As(err, &p) || p.Code != "nil-plan" {
		t.Error(err)
	}
	d := sound().With(func(d *box.Design) { d.Boards = nil; d.Board = box.Board{Thickness: 20, Material: "unobtainable"} })
	if _, err := Weigh(resolve(t, d)); !errors.As(err, &p) || p.Code != "no-density" {
		t.Error(err)
	}
	if _, err := timber.Mass(1, -5); err == nil {
		t.Error("a negative density passes")
	}
}

// TestWeighAsks: "larch" is no wood, and no density is guessed for it; the woods that
// it may mean are named.
func TestWeighAsks(t *testing.T) {
	var p box.Problem
	for material, want := range map[string]string{"larch": "European larch", "spruce": "Norway spruce", "oak": "European oak", "douglas fir": "Douglas-fir", "unobtainable": ""} {
		_, err := Weigh(resolve(t, sound().With(func(d *box.Design) { d.Boards, d.Board = nil, box.Board{Thickness: 20, Material: material} })))
		if !errors.As(err, &p) || p.Code != "no-density" || !strings.Contains(p.Try, want) || (want == "") != (p.Try == "") {
			t.Errorf("%s: %v", material, err)
		}
		if _, known := timber.DensityOf(material); known {
			t.Errorf("%s has a density", material)
		}
	}
	if got := timber.NamesNear("European larch"); got != nil {
		t.Errorf("%q", got)
	}
}
