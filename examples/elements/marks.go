package main

import (
	"holt.example/box"
	"holt.example/box/outline"
)

// sprig is a stalk with two leaves, in lines and arcs.
var sprig = []outline.Path{
	{{X: 0, Y: -12}, {X: 0, Y: 12}},
	{{X: 0, Y: -4, Bulge: -0.5}, {X: 9, Y: 6, Bulge: -0.5}, {X: 0, Y: -4}},
	{{X: 0, Y: -4, Bulge: 0.5}, {X: -9, Y: 6, Bulge: 0.5}, {X: 0, Y: -4}},
}

// branch is the sprig two and a half times as large.
var branch = func() (out []outline.Path) {
	for _, p := range sprig {
		out = append(out, p.Transform(outline.Scale(2.5)))
	}
	return out
}()

var marks = []element{
	{title: "Engrave", says: "Lines and arcs cut with a V-cutter: the depth follows from the width, and back.",
		what: box.Engrave{On: box.Front, Lines: branch, At: box.Anchor{Up: 70}, Width: 2}, on: plain},
	{title: "Text", says: "Single-stroke letters and figures, to be read from the ground.",
		what: box.Text{On: box.Front, Text: "R 47", Height: 30, At: box.Anchor{Up: 70}}, on: plain},
	{title: "PartMarks", says: "On the hidden face of each part: the box, the part, the inside and which way is up.",
		what: box.PartMarks{Box: "R 47", Height: 9}, on: plain, look: look{off: []box.Part{box.Front, box.Roof}, round: 20, up: 35}},
	{title: "Pocket", says: "A cut to a depth.",
		what: box.Cut{On: box.FreePart("board"), Shape: box.Rect{Width: 110, Height: 60, Corner: 10}, Depth: 6}, on: board},
	{title: "Pattern, clipped", says: "A motif repeated over a part, in brick bond, and clipped to the part and a margin.",
		what: box.Pattern{On: box.RoofFront, Lines: sprig, Repeat: box.Repeat{StepRight: 26, StepUp: 30, Brick: true}, Margin: 8}, on: plain.With(func(d *box.Design) {
			d.Roof = box.Gable{Pitch: 40, Run: box.LeftToRight, Over: box.Overhangs{All: 25}}
		}), look: look{round: 15, up: 30}},
	{title: "Pattern, pierced", says: "Or of shapes cut through, those near the entrance left out.",
		what: box.Pattern{On: box.Front, Motif: box.Regular{Sides: 4, Across: 9}, At: box.Anchor{Turn: 45}, Repeat: box.Repeat{StepRight: 20, StepUp: 20}, Margin: 16, Clear: 8, Whole: true}, on: plain},
	{title: "Pattern, pocketed", says: "Or pocketed; what the margin cuts is clipped.",
		what: box.Pattern{On: box.FreePart("board"), Motif: box.Regular{Sides: 6, Across: 24}, Repeat: box.Repeat{StepRight: 28, StepUp: 25, Brick: true}, Margin: 8, Depth: 4}, on: board},
	{title: "Rings", says: "Motifs in rings round a place.",
		what: box.Pattern{On: box.FreePart("board"), Lines: []outline.Path{{{X: 0, Y: -4}, {X: 0, Y: 4}}}, Rings: box.Rings{Count: 3, Each: 18, First: 14, Step: 14, Face: true, Brick: true}, Margin: 4}, on: board},
	{title: "Rail", says: "Balusters between two rails, pierced through.",
		what: box.Rail{On: box.FreePart("board"), Width: 130, Height: 80, Balusters: 6, Waist: 4}, on: board},
	{title: "Rail, pocketed", says: "Or let in to a depth.",
		what: box.Rail{On: box.Front, At: box.Anchor{Up: 70}, Width: 110, Height: 70, Balusters: 5, Baluster: 10, Corner: 4, Depth: 4}, on: plain},
	{title: "GripGrooves", says: "Level grooves on the inner face below the entrance, for claws.",
		what: box.GripGrooves{Count: 6}, on: plain, look: look{off: []box.Part{box.Back, box.Roof}, round: 160, up: 25}},
}
