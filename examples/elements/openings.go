package main

import (
	"holt.example/box"
	"holt.example/box/outline"
)

// heart is a closed outline of four arcs.
var heart = outline.Contour{{X: 0, Y: -24, Bulge: 0.12}, {X: 24, Y: 10, Bulge: 0.9}, {X: 0, Y: 14, Bulge: 0.9}, {X: -24, Y: 10, Bulge: 0.12}}

var openings = []element{
	{title: "Entrance", says: "The way in, by the height of its lowest point over the cavity floor.",
		what: box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}, on: blind},
	{title: "Round", says: "A round hole; the diameter is always a diameter.",
		what: box.Round{Diameter: 45}, on: board},
	{title: "Rect", says: "A rectangle, its corners sharp or rounded.",
		what: box.Rect{Width: 90, Height: 50, Corner: 8}, on: board},
	{title: "Slot", says: "A slot with half-round ends.",
		what: box.Slot{Width: 90, Height: 28}, on: board},
	{title: "Oval", says: "A four-centred oval, as drawn with compasses.",
		what: box.Oval{Width: 90, Height: 55}, on: board},
	{title: "Arch, round-headed", says: "Upright, with half a circle on top.",
		what: box.Arch{Width: 50, Height: 80}, on: board},
	{title: "Arch, segmental", says: "With a flatter arch, by its rise.",
		what: box.Arch{Width: 80, Height: 60, Rise: 14}, on: board},
	{title: "Regular", says: "An equilateral polygon, by its size across flats.",
		what: box.Regular{Sides: 6, Across: 60}, on: board},
	{title: "Polygon", says: "Any polygon, convex or not.",
		what: box.Polygon{Points: []box.Point{{X: -40, Y: -25}, {X: 40, Y: -25}, {X: 25, Y: 0}, {X: 40, Y: 25}, {X: -40, Y: 25}, {X: -25, Y: 0}}}, on: board},
	{title: "Freeform", says: "Any outline of lines and arcs.",
		what: box.Freeform{Outline: heart}, on: board},
	{title: "Keyhole", says: "A hole to hang by: the head goes in below, the shank sits above.",
		what: box.Keyhole{Head: 20, Slot: 9, Drop: 30}, on: board},
	{title: "Cut, from an edge", says: "Any opening: here a slot 30 from the right edge, its middle 110 over the floor.",
		what: box.Cut{On: box.Right, Shape: box.Slot{Width: 20, Height: 50}, At: box.Anchor{Right: 30, Datum: box.FromRight, Up: 110, Level: box.CentreAbove}}, on: blind, look: look{round: 50, up: 20}},
	{title: "Cut, mirrored", says: "And its mirror image about the part's centre line.",
		what: box.Cut{On: box.FreePart("board"), Shape: box.Arch{Width: 24, Height: 50}, At: box.Anchor{Right: -35, Turn: 20}, Mirror: true}, on: board},
	{title: "Repeat", says: "Rows and grids; every second row may be half a step to the right.",
		what: box.Cut{On: box.FreePart("board"), Shape: box.Round{Diameter: 12}, Repeat: box.Repeat{Columns: 4, Rows: 3, StepRight: 30, StepUp: 26, Brick: true, Centred: true}}, on: board},
	{title: "Vents", says: "Round holes near the top of the side walls.",
		what: box.Vents{Diameter: 10, Count: 3}, on: plain, look: look{round: 45, up: 15}},
	{title: "EavesVents", says: "Open slots at the top of walls, under the roof.",
		what: box.EavesVents{Width: 80, Height: 10}, on: plain, look: look{round: 60, up: 3}},
	{title: "Drains", says: "Holes near the corners of the floor.",
		what: box.Drains{Diameter: 10}, on: plain, look: look{round: 30, up: -50}},
	{title: "CornerCuts", says: "The corners of the floor cut off, as drains.",
		what: box.CornerCuts{Size: 14}, on: plain, look: look{round: 30, up: -50}},
	{title: "Open front", says: "A wall may be left open; a free board is the lip.",
		what: box.Wall{On: box.Front, Open: true}, on: blind.With(func(d *box.Design) {
			d.Free = []box.Free{{Name: "lip", Outline: outline.Rectangle(-65, 0, 65, 80), At: box.Place{Y: -65}}}
			d.Roof = box.Pent{Over: box.Overhangs{Front: 40, Left: 15, Right: 15}}
		})},
	{title: "Letter-box", says: "A low, wide slot, as crevice dwellers like it, by its lowest point.",
		what: box.Entrance{Shape: box.Rect{Width: 110, Height: 20}, Above: 180}, on: blind},
	{title: "Through", says: "One axis through several parts: here a wall and a plate before it.",
		what: box.Cut{On: box.Front, Through: []box.Part{box.FreePart("plate")}, Shape: box.Oval{Width: 30, Height: 40}, At: box.Anchor{Up: 150}}, on: blind.With(func(d *box.Design) {
			d.Free = []box.Free{{Name: "plate", Board: box.Board{Thickness: 6}, Outline: outline.Rectangle(-40, 110, 40, 190), At: box.Place{Y: -65 - 17.6}}}
		})},
}

var shaped = []element{
	{title: "Smooth curve", says: "A curve through points, fitted with arcs to a tolerance, so that cutters get arcs.",
		what: box.Freeform{Outline: must(outline.FitClosed([]outline.Point{{X: 50, Y: 0}, {X: 20, Y: 30}, {X: -40, Y: 25}, {X: -50, Y: -15}, {X: 10, Y: -20}}, 0.05))}, on: board},
	{title: "Scallops, hollows", says: "A shaped edge where no other part touches it: arcs into the part.",
		what: box.Scallops{On: box.FreePart("board"), Count: 7, Depth: 8, Inset: 6}, on: board},
	{title: "Scallops, lobes", says: "Arcs out of it, with sharp cuts between them: here along the upper edge.",
		what: box.Scallops{On: box.FreePart("board"), Edge: box.UpperEdge, Count: 6, Depth: 10, Form: box.Lobes}, on: board},
	{title: "Scallops, steps", says: "Square notches as wide as what stays between them.",
		what: box.Scallops{On: box.FreePart("board"), Count: 5, Depth: 10, Form: box.Steps}, on: board},
	{title: "RoundCorners", says: "Corners of a part rounded, of a long back for one.",
		what: box.RoundCorners{On: box.Back, Radius: 40}, on: long, look: look{round: -35, up: 15}},
	{title: "RoundCorners, clipped", says: "Or cut straight off.",
		what: box.RoundCorners{On: box.FreePart("board"), Corners: []box.Corner{box.UpperLeft, box.UpperRight}, Radius: 30, Clip: true}, on: board},
	{title: "Free", says: "A part of any outline at any place: u runs along Up x Facing, v along Up, and the thickness from At towards Facing.",
		what: box.Free{Name: "perch", Board: thin, Outline: outline.Contour{{X: 0, Y: 0}, {X: 45, Y: 0}, {X: 45, Y: 8, Bulge: 0.3}, {X: 0, Y: 60}},
			At: box.Place{X: 6, Y: -65 - 17.6, Z: 60}, Facing: box.Direction{X: -1}}, on: plain},
	{title: "Free, a spout", says: "Brackets, finials and spouts are outlines too, here with a hole of its own.",
		what: box.Free{Name: "finial", Board: thin, Outline: outline.Contour{{X: -60, Y: 0}, {X: 60, Y: 0}, {X: 14, Y: 50, Bulge: -0.4}, {X: 12, Y: 66, Bulge: 0.95}, {X: -12, Y: 66, Bulge: -0.4}, {X: -14, Y: 50}},
			At: box.Place{Y: -90.6 - 17.6, Z: 240}, Facing: box.Direction{Y: -1},
			Cuts: []box.Cut{{Shape: box.Round{Diameter: 20}, At: box.Anchor{Up: 22}}}}, on: gable},
	{title: "Edging", says: "Free arrises rounded over and feather edges blunted, never the lower arris of a roof; listed at each edge, and no part of the solid.",
		what: box.Edging{Round: 3, Blunt: 2, Feather: 55}, on: gable},
}

// must is for outlines that are right as they stand here.
func must(c outline.Contour, err error) outline.Contour {
	if err != nil {
		panic(err)
	}
	return c
}
