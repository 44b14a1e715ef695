package box_test

import (
	"errors"
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/joints"
)

// A first design: a cavity, a board, a roof, a way in. Everything else follows.
func Example() {
	design := box.Design{
		Name:     "row 3, tree 7",
		Board:    box.Board{Thickness: 15, Measured: 14.6},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
		Floor:    box.FloorBetween{Raise: 20},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}, box.Drains{}},
	}
	plan, err := design.Resolve()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range plan.Pieces() {
		fmt.Printf("%-6s %6.1f x %5.1f\n", p.Part, p.Length, p.Width)
	}
	// Output:
	// front   274.6 x 149.2
	// back    303.2 x 149.2
	// left    300.1 x 120.0
	// right   300.1 x 120.0
	// floor   120.0 x 120.0
	// roof    196.5 x 189.2
}

// Every problem is told at once, each with its place in the design, so that a
// program can point at the field.
func ExampleDesign_Resolve_problems() {
	_, err := box.Design{
		Name:     "wrong",
		Board:    box.Board{Thickness: 15},
		Size:     box.Cavity{Width: 120, Depth: box.MM(math.NaN()), Height: 240},
		Roof:     box.Pent{Pitch: 90},
		Floor:    box.NoFloor{},
		Features: []box.Feature{box.Entrance{On: "fornt", Shape: box.Round{Diameter: 32}, Above: 170}},
	}.Resolve()
	fmt.Println(err)

	var problems box.Problems
	if errors.As(err, &problems) {
		for _, p := range problems {
			fmt.Printf("%s is %s\n", p.Path, p.Code)
		}
	}
	// Output:
	// Features[0].Entrance.On: "fornt": this design has no such part; it has front right back left (try front)
	// Roof.Pent.Pitch: 90: pitch of the roof; a roof without slope is Flat{}; want 1 to 75 deg
	// Size.Cavity.Depth: NaN: depth of the cavity at the floor, from front to back; want 1 to 10000 mm
	// Features[0].Entrance.On is unknown-part
	// Roof.Pent.Pitch is range
	// Size.Cavity.Depth is range
}

// One design, several piles of boards: a variant is a changed copy. The cavity
// stays as it is; everything else follows the thickness.
func ExampleDesign_With() {
	design := box.Design{
		Name:    "box",
		Board:   box.Board{Thickness: 15, Measured: 14.6},
		Size:    box.Cavity{Width: 120, Depth: 120, Height: 240},
		Corners: box.Corners{Joint: joints.Rebate{}},
		Roof:    box.Flat{},
		Floor:   box.FloorBetween{},
	}
	thin := design.With(func(d *box.Design) { d.Board = box.Board{Thickness: 12, Measured: 12.2} })
	for _, d := range []box.Design{design, thin} {
		plan := d.MustResolve()
		front, _ := plan.Piece(box.Front)
		left, _ := plan.Piece(box.Left)
		w, _, _ := plan.Inside()
		fmt.Printf("%.1f thick: front %.1f wide, left %.1f, inside %.0f\n", front.Thickness, front.Width, left.Width, w)
	}
	// Output:
	// 14.6 thick: front 149.2 wide, left 134.0, inside 120
	// 12.2 thick: front 144.4 wide, left 132.0, inside 120
}

// A plan explains itself: why is the left wall narrower than the box is deep?
func ExamplePlan_Explain() {
	plan := box.Design{
		Name:    "box",
		Board:   box.Board{Thickness: 15, Measured: 14.6},
		Size:    box.Cavity{Width: 120, Depth: 120, Height: 240},
		Corners: box.Corners{Joint: joints.Rebate{}},
		Roof:    box.NoRoof{},
		Floor:   box.NoFloor{},
	}.MustResolve()
	for _, line := range plan.Explain(box.Left) {
		fmt.Println(line)
	}
	// Output:
	// left is 240.0 long and 134.0 wide, cut from board sold as 15 and measured 14.6 (grain up).
	// The face of the cavity that it covers is 120.0 across and 240.0 up.
	// It enters the rebate of back by 7: 7.0 added.
	// At its free end it ends at the open side.
	// It enters the rebate of front by 7: 7.0 added.
	// At its free end it ends at the open side.
	// Outside, the box measures 149.2 here; left is 15.2 narrower: back takes 7.6, front takes 7.6.
}

// A design under test: state what must hold, and let the test fail when a
// change breaks it. This is the body of a Test function; here it prints.
func ExamplePlan_findings() {
	plan, err := box.Design{
		Name:     "one board",
		Board:    box.Board{Thickness: 14.6, Width: 145},
		Size:     box.BoardWidth{Width: 145, Height: 240},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 30}},
		Floor:    box.FloorBetween{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}},
	}.Resolve()
	if err != nil {
		fmt.Println("broken:", err) // t.Fatal(err)
		return
	}
	for _, p := range plan.Pieces() {
		if math.Abs(float64(p.Width-145)) > 0.05 {
			fmt.Printf("%s is ripped to %.1f\n", p.Part, p.Width) // t.Errorf
		}
	}
	for _, f := range plan.Findings() {
		fmt.Println(f.Severity, f.Code, f.Why)
	}
	w, d, _ := plan.Inside()
	fmt.Printf("inside %.1f x %.1f\n", w, d)
	// Output:
	// inside 115.8 x 145.0
}

// Equal parts are one item, to be cut from one drawing.
func ExamplePlan_Groups() {
	plan := box.Design{
		Name:  "box",
		Board: box.Board{Thickness: 15},
		Size:  box.Cavity{Width: 120, Depth: 140, Height: 200},
		Roof:  box.Pent{Pitch: 20},
		Floor: box.FloorBetween{Raise: 20, Joint: joints.Housing{}},
	}.MustResolve()
	for _, g := range plan.Groups() {
		fmt.Print(g.Number, " ", g.Parts)
		if g.Mirror != 0 {
			fmt.Print(", mirror image of ", g.Mirror)
		}
		fmt.Println()
	}
	// Output:
	// 1 [front]
	// 2 [back]
	// 3 [left], mirror image of 4
	// 4 [right], mirror image of 3
	// 5 [floor]
	// 6 [roof]
}
