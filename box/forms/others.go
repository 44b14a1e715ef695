package forms

import (
	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// Bat is the sizes of a box with crevices.
type Bat struct {
	Name          string
	Board         box.Board
	Baffle        box.Board // of the boards between crevices; zero means Board
	Width, Height box.MM    // inside
	Crevices      int       // one behind another
	Crevice       box.MM    // clear width of each
	Landing       box.MM    // how far the back runs on below; 0 means 100
}

// BatBox is open below, with crevices one behind another, a grooved back that
// runs on as a landing, and a roof against the long back.
func BatBox(a Bat) box.Design {
	if a.Baffle == (box.Board{}) {
		a.Baffle = a.Board
	}
	n, landing := box.MM(a.Crevices), or(a.Landing, 100)
	d := box.Design{
		Name: a.Name, Board: a.Board,
		Size:  box.Cavity{Width: a.Width, Depth: box.MM(n*a.Crevice) + box.MM((n-1)*thick(a.Baffle)), Height: a.Height},
		Walls: []box.Wall{{On: box.Back, Above: 60, Below: landing}},
		Roof:  box.Pent{Pitch: 15, Over: box.Overhangs{Front: 40, Left: 25, Right: 25}},
		Floor: box.NoFloor{},
		Outer: []box.Outer{box.CoverStrip{Name: "cover strip", Height: 30}},
		Features: []box.Feature{box.DripGroove{}, box.Hang{},
			box.Pattern{On: box.Back, Name: "grip grooves", From: box.FromInner, Use: box.UseGrip, Tool: box.Tool{Diameter: 2}, Depth: 1.5, Clear: 4, Margin: 5,
				Lines: []outline.Path{outline.Line(outline.Point{X: 10 - float64(a.Width)/2}, outline.Point{X: float64(a.Width)/2 - 10})},
				At:    box.Anchor{Up: 12 - landing}, Repeat: box.Repeat{Columns: 1, Rows: int((a.Height + landing - 24) / 12), StepUp: 12}},
		},
	}
	if a.Crevices > 1 {
		d.Inner = []box.Inner{box.Baffles{Name: "baffle", Run: box.RunLeftToRight, Count: a.Crevices - 1, Crevice: a.Crevice, Room: a.Crevice, Board: a.Baffle, Joint: joints.Housing{}}}
	}
	return d
}

// Dormouse is the sizes of a box whose hole faces the trunk.
type Dormouse struct {
	Name   string
	Board  box.Board
	Inside box.Cavity
	Hole   box.MM // diameter
	Above  box.MM // from the floor up to the hole's lowest point
	Gap    box.MM // between the back and the trunk: the thickness of the bars; 0 means 25
}

// DormouseBox has its hole in the back, kept off the trunk by two bars. The roof
// comes off.
func DormouseBox(a Dormouse) box.Design {
	x := a.Inside.Width/2 - 5
	bar := box.Batten{Name: "left bar", Right: x, Width: 25, Past: 60, Hole: box.Round{Diameter: 6}, Screws: 3, Board: box.Board{Thickness: or(a.Gap, 25)}}
	other := bar
	other.Name, other.Right = "right bar", -x
	return box.Design{
		Name: a.Name, Board: a.Board, Size: a.Inside,
		Roof:  box.Pent{Pitch: 10, Over: box.Overhangs{Front: 30, Left: 20, Right: 20}},
		Floor: box.FloorBetween{Raise: 10, Dry: true},
		Outer: []box.Outer{bar, other},
		Features: []box.Feature{
			box.Entrance{On: box.Back, Shape: box.Round{Diameter: a.Hole}, Above: a.Above},
			box.GripGrooves{On: box.Back, Spacing: 12}, box.Drains{}, box.DripGroove{},
		},
		Opens: []box.Opening{box.Removable{Part: box.Roof}},
	}
}

// Hedgehog is the sizes of a house on the ground.
type Hedgehog struct {
	Name    string
	Board   box.Board
	Inside  box.Cavity // of the chamber and the lobby together
	Doorway box.MM     // side of the square ways in
	Lobby   box.MM     // clear width of the lobby on the left
	Tunnel  box.MM     // length of the tunnel in front; 0 means 300
}

// HedgehogHouse stands on runners: a tunnel leads into a lobby on the left, and a
// second doorway at its far end, behind a sill, into the chamber. The roof comes off.
func HedgehogHouse(a Hedgehog) box.Design {
	door := box.Rect{Width: a.Doorway, Height: a.Doorway}
	return box.Design{
		Name: a.Name, Board: a.Board, Size: a.Inside,
		Roof:    box.Pent{Pitch: 8, Over: box.Overhangs{Front: 40, All: 25}},
		Floor:   box.FloorUnder{},
		Corners: box.Corners{Joint: joints.Rebate{}},
		Inner: []box.Inner{box.Lobby{Name: "lobby", Behind: box.Left, Deep: a.Lobby, Shape: door,
			At: box.Anchor{Datum: box.FromRight, Right: a.Doorway/2 + 20, Level: box.LowestAbove, Up: 20}}},
		Outer: []box.Outer{
			box.Tunnel{Name: "tunnel", Long: or(a.Tunnel, 300)},
			box.Feet{Name: "runner", Width: 40, Inset: 20}, box.Felt{Turn: 30},
		},
		Features: []box.Feature{
			box.Entrance{Shape: door, Above: 10, Right: (a.Lobby - a.Inside.Width) / 2},
			box.EavesVents{On: []box.Part{box.Right}, Width: 80, Height: 15}, box.Drains{}, box.DripGroove{},
		},
		Opens: []box.Opening{box.Removable{Part: box.Roof}},
	}
}

// Bees is the sizes of a block for bees in its frame.
type Bees struct {
	Name          string
	Board         box.Board // of the frame
	Block         box.Board // of the block: its thickness is how deep it is
	Width, Height box.MM    // of the room for the block
	Rows          []box.BeeRow
}

// BeeBlock is a frame with an open front that holds a block with blind holes,
// loose, so that it can be changed.
func BeeBlock(a Bees) box.Design {
	return box.Design{
		Name: a.Name, Board: a.Board,
		Size:     box.Cavity{Width: a.Width, Depth: thick(a.Block), Height: a.Height},
		Walls:    []box.Wall{longBack, {On: box.Front, Open: true}},
		Roof:     box.Pent{Pitch: 10, Over: box.Overhangs{Front: 60, Left: 20, Right: 20}},
		Floor:    box.FloorBetween{Dry: true},
		Inner:    []box.Inner{box.BeeBlock{Name: "block", Height: a.Height - 2, Rows: a.Rows, Board: a.Block}},
		Outer:    []box.Outer{box.CoverStrip{Name: "cover strip", Height: 30}},
		Features: []box.Feature{box.DripGroove{}, box.Hang{}},
	}
}

// Trough is the sizes of a planter.
type Trough struct {
	Name   string
	Board  box.Board
	Inside box.Cavity
	Lean   box.Deg // of the walls, opening upward
}

// Planter is a trough with leaning walls, comb joints or rebates, drains in the
// floor and runners under it.
func Planter(a Trough) box.Design {
	d := box.Design{
		Name: a.Name, Board: a.Board, Size: a.Inside,
		Roof:    box.NoRoof{},
		Floor:   box.FloorBetween{Raise: 15, Dry: true},
		Corners: box.Corners{Joint: joints.Rebate{}},
		Outer:   []box.Outer{box.Feet{Name: "runner", Run: box.RunLeftToRight, Width: 40, Inset: 15}},
		Features: []box.Feature{box.Drains{Diameter: 12, Inset: 40}, box.Drains{Diameter: 12, Count: 1},
			box.Edging{On: []box.Part{box.Front, box.Back, box.Left, box.Right}, Round: 4}},
	}
	for _, w := range []box.Part{box.Front, box.Back, box.Left, box.Right} {
		d.Walls = append(d.Walls, box.Wall{On: w, Lean: a.Lean})
	}
	return d
}
