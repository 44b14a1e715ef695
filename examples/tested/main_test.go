package main

import (
	"testing"

	"holt.example/box"
	"holt.example/box/boxtest"
)

// What must hold of any box: it fits, can be drawn, is closed, goes together.
// And what must hold of this one: the room that the birds need.
func TestDesign(t *testing.T) {
	plan := boxtest.Resolve(t, Design)
	boxtest.Sound(t, plan)
	boxtest.Cavity(t, plan, 125, 125, 250)
}

// Nothing moves unnoticed: go test ./examples/tested -boxtest.update accepts a
// change that is meant.
func TestDrawing(t *testing.T) {
	boxtest.Golden(t, boxtest.Resolve(t, Design), "testdata/design.txt")
}

// The floor comes out downward with everything else in place, or the cleaning
// would begin with a saw.
func TestFloorDropsOut(t *testing.T) {
	plan := boxtest.Resolve(t, Design)
	if plan == nil {
		return
	}
	var rest []box.Part
	for _, p := range plan.Pieces() {
		if p.Part != box.Floor {
			rest = append(rest, p.Part)
		}
	}
	how, err := plan.Assembly(rest) // the rest is one piece
	if err != nil {
		t.Fatal(err)
	}
	if last := how.Steps[len(how.Steps)-1]; last.String() != "Add floor, moving it up" {
		t.Errorf("the floor does not drop out: %s", last)
	}
}

// Whatever the board: the cavity stays, and no wall is wider than the board.
func TestStock(t *testing.T) {
	boxtest.Each(t, Stock, func(t *testing.T, d box.Design) {
		plan := boxtest.Resolve(t, d)
		if plan == nil {
			return // Resolve has said why
		}
		boxtest.Sound(t, plan)
		boxtest.Cavity(t, plan, 125, 125, 250)
		for _, p := range plan.Pieces() {
			if p.Part != box.Roof && p.Width > d.Board.Width {
				t.Errorf("%s is %.1f wide and the board is %.1f", p.Part, p.Width, d.Board.Width)
			}
		}
	})
}
