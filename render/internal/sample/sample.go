// Package sample has the boxes that the tests of the writers share: between
// them every kind of cut, bevels, tilted and through notches, work on both
// faces, arcs, and parts of a shape of their own.
package sample

import (
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// board is 15 nominal and 14.6 by the gauge.
func board() box.Board { return box.Board{Thickness: 15, Measured: 14.6, Density: 480} }

// Orchard is a pent box with a long back, rebated corners and a housed floor.
func Orchard() box.Design {
	return box.Design{
		Name:     "orchard pent",
		Board:    board(),
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
		Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Corners:  box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
		Floor:    box.FloorBetween{Raise: 20, Joint: joints.Housing{}},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170, Right: 7}, box.Drains{}, box.Vents{}},
	}
}

// Gable has mitred corners, a leaning front, a pocket in an outer face whose
// inner one is worked too, and an opening of lines and arcs.
func Gable() box.Design {
	return box.Design{
		Name:    "ringers' gable",
		Board:   board(),
		Size:    box.Cavity{Width: 140, Depth: 160, Height: 250},
		Roof:    box.Gable{Pitch: 40, Over: box.Overhangs{All: 30}},
		Walls:   []box.Wall{{On: box.Front, Lean: 6}},
		Corners: box.Corners{Joint: joints.Mitre{}},
		Floor:   box.FloorBetween{Raise: 15, Joint: joints.Housing{}},
		Features: []box.Feature{
			box.Entrance{Shape: box.Slot{Width: 60, Height: 34}, Above: 150, Right: -5},
			box.Cut{On: box.Left, At: box.Anchor{Right: 11, Up: 120}, Shape: box.Rect{Width: 50, Height: 20, Corner: 4}, Depth: 4, Use: box.UsePocket, Name: "number plate"},
			box.Cut{On: box.Back, At: box.Anchor{Right: 20, Up: 150}, Shape: box.Freeform{Outline: outline.Contour{
				{X: -20, Y: -15, Bulge: 0.3}, {X: 22, Y: -10}, {X: 18, Y: 12, Bulge: -0.2}, {X: -12, Y: 14, Bulge: 0.9},
			}}},
		},
	}
}

// Hip has comb joints and a slope over every wall.
func Hip() box.Design {
	return box.Design{
		Name:     "hip & comb <oak>",
		Board:    box.Board{Thickness: 12, Measured: 12.3},
		Size:     box.Cavity{Width: 150, Depth: 120, Height: 180},
		Roof:     box.Hip{Pitch: 35, Over: box.Overhangs{All: 25}},
		Corners:  box.Corners{Joint: joints.Comb{}},
		Floor:    box.FloorUnder{},
		Features: []box.Feature{box.Entrance{Shape: box.Rect{Width: 40, Height: 50, Corner: 6}, Above: 90}},
	}
}

// Hexagon is a flat-roofed box on six walls.
func Hexagon() box.Design {
	return box.Design{
		Name:      "hexagon",
		Board:     board(),
		Footprint: box.Regular{Sides: 6, Across: 150},
		Size:      box.Cavity{Height: 200},
		Roof:      box.Flat{Over: box.Overhangs{All: 20}},
		Floor:     box.FloorBetween{},
		Features:  []box.Feature{box.Entrance{Shape: box.Round{Diameter: 28}, Above: 140}},
	}
}

// Bracket is a free part alone, with arcs in its outline.
func Bracket() box.Design {
	return box.Design{
		Name:  "bracket",
		Board: board(),
		Roof:  box.NoRoof{},
		Floor: box.NoFloor{},
		Free: []box.Free{{
			Name:    "hanger",
			Outline: outline.Contour{{X: -30, Y: 0}, {X: 30, Y: 0, Bulge: 0.4}, {X: 20, Y: 70, Bulge: 1}, {X: -20, Y: 70, Bulge: -0.15}},
			Cuts: []box.Cut{
				{At: box.Anchor{Right: 0, Up: 72}, Shape: box.Round{Diameter: 9}},
				{At: box.Anchor{Right: 3, Up: 30}, Shape: box.Slot{Width: 12, Height: 30}, Depth: 5, Use: box.UsePocket},
			},
		}},
	}
}

// Strips has walls of tongue and groove, the front leaning, a roof of shiplap
// and a floor with a loose tongue; a round hole and a pocket cross their
// joints.
func Strips() box.Design {
	return box.Design{
		Name:   "made up",
		Board:  box.Board{Thickness: 15, Measured: 14.6, Width: 95},
		Boards: map[box.Part]box.Board{box.Roof: {Thickness: 16, Width: 120, Grain: box.GrainAcross}},
		Size:   box.Cavity{Width: 230, Depth: 160, Height: 220},
		Roof:   box.Pent{Pitch: 12, Over: box.Overhangs{Front: 30, All: 20}},
		Walls:  []box.Wall{{On: box.Front, Lean: 4}},
		Floor:  box.FloorBetween{Raise: 15, Joint: joints.Housing{}},
		MadeUp: []box.MadeUp{
			{Of: box.AllWalls, Joint: box.TongueGroove{Tongue: 7, Gap: 1}},
			{Of: box.AllRoof, Joint: box.Shiplap{Lap: 14}},
			{Of: box.Floor, Joint: box.LooseTongue{}},
		},
		Features: []box.Feature{
			box.Entrance{Shape: box.Round{Diameter: 45}, Above: 120, Right: 6},
			box.Cut{On: box.Back, At: box.Anchor{Right: 9, Up: 100}, Shape: box.Rect{Width: 50, Height: 20, Corner: 4}, Depth: 4, Use: box.UsePocket},
			box.Drains{},
		},
	}
}

// Screwed has rows of screws and nails: through the lip of a rebate into an edge,
// outward, in line with a wall at a slope, and into a face.
func Screwed() box.Design {
	row := func(over, under box.Part, at ...box.Anchor) box.Fixing {
		return box.Fixing{Over: over, Under: under, What: "screw", Diameter: 3.5, Length: 40, Hole: 4, Pilot: 2.5, At: at}
	}
	batten := row(box.Back, box.FreePart("batten"), box.Anchor{Right: -20, Up: 130}, box.Anchor{Right: 20, Up: 130})
	batten.Length, batten.From = 25, box.FromInner
	landing := row(box.Front, box.FreePart("landing"), box.Anchor{Right: -30, Up: 92.7}, box.Anchor{Right: 30, Up: 92.7})
	landing.From = box.FromInner
	roof := row(box.Roof, box.Right, box.Anchor{Right: 67.3, Up: 40}, box.Anchor{Right: 67.3, Up: 90})
	roof.What, roof.Hole = "nail", 2.5
	return box.Design{
		Name: "screwed", Board: board(), Size: box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof: box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}}, Corners: box.Corners{Joint: joints.Rebate{}}, Floor: box.FloorBetween{},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 120}},
		Outer:    []box.Outer{box.LandingBoard{Name: "landing", Below: 20, Width: 80, Deep: 60}, box.Batten{Name: "batten", Above: 100, Height: 60}},
		Fixings: []box.Fixing{
			row(box.Front, box.Left, box.Anchor{Right: -67.3, Up: 40}, box.Anchor{Right: -67.3, Up: 180}),
			row(box.Left, box.Floor, box.Anchor{Right: -30, Up: -7.3}, box.Anchor{Right: 30, Up: -7.3}), landing, batten, roof,
		},
	}
}

// Plans are all of them, resolved.
func Plans(t testing.TB) []*box.Plan {
	t.Helper()
	var ps []*box.Plan
	for _, d := range []box.Design{Orchard(), Gable(), Hip(), Hexagon(), Bracket(), Strips(), Screwed()} {
		p, err := d.Resolve()
		if err != nil {
			t.Fatalf("%s: %v", d.Name, err)
		}
		ps = append(ps, p)
	}
	return ps
}
