package main

import (
	"holt.example/box"
	"holt.example/joints"
)

// seen is the look through the front and the roof.
var seen = look{off: []box.Part{box.Roof, box.Front}, round: 20, up: 35}

// above is the look from above through the roof.
var above = look{off: []box.Part{box.Roof}, round: 20, up: 50}

var inners = []element{
	{title: "Partition", says: "Stands across the cavity, housed into two walls; it may be open above or below.",
		what: box.Partition{Name: "partition", Across: box.RunFrontToBack, At: 20, Height: 110}, on: wide, look: above},
	{title: "Baffles", says: "Partitions in a row, with narrow crevices between them.",
		what: box.Baffles{Name: "baffle", Run: box.RunLeftToRight, Count: 4, Crevice: 20, Above: 20, Board: thin}, on: wide, look: above},
	{title: "Lobby", says: "A partition behind the entrance with a second opening, out of line with the first.",
		what: box.Lobby{Name: "lobby", Deep: 60, Shape: box.Rect{Width: 60, Height: 60}, At: box.Anchor{Right: 60, Up: 50}}, on: wide, look: seen},
	{title: "Shelf", says: "A level board, let into the walls that it reaches.",
		what: box.Shelf{Name: "shelf", Above: 70, Gaps: box.Gaps{Front: 90}, Board: thin}, on: wide, look: seen},
	{title: "FalseFloor", says: "A loose floor on two bearers: with a rim it is a tray.",
		what: box.FalseFloor{Name: "tray", Room: 30, Rim: 25, Board: thin}, on: wide, look: seen},
	{title: "BeeBlock", says: "A thick block with blind holes into its side grain, by diameter, depth and spacing.",
		what: box.BeeBlock{Name: "block", Board: box.Board{Thickness: 150}, Spacing: 30, Rows: []box.BeeRow{{Diameter: 10, Depth: 130}, {Diameter: 8, Depth: 130}, {Diameter: 6, Depth: 110}}},
		on: wide.With(func(d *box.Design) {
			d.Features, d.Walls = nil, []box.Wall{{On: box.Front, Open: true}}
		})},
	{title: "EntrancePlate, inside", says: "A thick block behind the entrance, on the same axis.",
		what: box.EntrancePlate{Name: "block", Width: 80, Height: 80, Board: box.Board{Thickness: 40}}, on: plain,
		look: look{off: []box.Part{box.Roof, box.Back}, round: 160, up: 25, inside: true}},
	{title: "Tunnel, inside", says: "Four boards around the entrance, inside: an arm is only so long.",
		what: box.Tunnel{Name: "tunnel", Long: 60, Board: thin}, on: plain,
		look: look{off: []box.Part{box.Roof, box.Back}, round: 160, up: 25, inside: true}},
}

var outers = []element{
	{title: "Long back", says: "A wall may run on above the roof and below the floor, to hang the box by.",
		what: box.Wall{On: box.Back, Above: 80, Below: 60}, on: plain},
	{title: "Hang", says: "Holes where the long back runs on.",
		what: box.Hang{Shape: box.Round{Diameter: 8}}, on: long},
	{title: "Hang, keyholes", says: "Or keyholes: the box lifts off.",
		what: box.Hang{Shape: box.Keyhole{Head: 14, Slot: 7, Drop: 18}, Heights: []box.MM{280}, Apart: 70}, on: long},
	{title: "Batten", says: "A board behind the back, upright or level.",
		what: box.Batten{Name: "batten", Width: 50, Past: 60, Hole: box.Round{Diameter: 8}, Screws: 2}, on: plain, look: look{round: 150, up: 15}},
	{title: "SplitBatten", says: "Two bevelled strips: the box lifts off, and its weight draws it to the wall.",
		what: box.SplitBatten{Name: "hanger", Above: 120, Height: 80, Screws: 2, Hole: box.Round{Diameter: 6}}, on: plain, look: look{round: 150, up: 15}},
	{title: "Strap", says: "A band around the trunk through slots in the back: no nail in the tree.",
		what: box.Strap{Trunk: 300, Width: 25, Heights: []box.MM{60, 160}, Spare: 200}, on: plain, look: look{round: 150, up: 15}},
	{title: "Feet, runners", says: "For a box that stands on the ground.",
		what: box.Feet{Name: "foot", Width: 30, Inset: 15, Board: box.Board{Thickness: 30}}, on: wide, look: look{round: 30, up: 12}},
	{title: "Feet, blocks", says: "Or four blocks.",
		what: box.Feet{Name: "foot", Width: 40, Length: 40, Inset: 10, Board: box.Board{Thickness: 30}}, on: wide, look: look{round: 30, up: 12}},
	{title: "PoleSocket", says: "A block under the floor for a pole, of as many layers as it takes.",
		what: box.PoleSocket{Name: "socket", Hole: box.Round{Diameter: 45}, Width: 100, Deep: 100, Layers: 2}, on: plain, look: look{round: 30, up: -30}},
	{title: "CoverStrip", says: "Over the joint where a roof meets a long back, bevelled to the roof.",
		what: box.CoverStrip{Name: "strip", Height: 35, Board: thin}, on: long, look: look{round: 30, up: 35}},
	{title: "RidgeCap", says: "Two boards over the ridge.",
		what: box.RidgeCap{Name: "cap", Width: 40, Board: thin}, on: gable},
	{title: "RidgeCap, sheet", says: "Or a strip of sheet, listed with its cut size.",
		what: box.RidgeCap{Width: 60, Sheet: "lead"}, on: gable},
	{title: "Felt", says: "Listed as the size to cut, with its turn-downs, or turned up at a wall.",
		what: box.Felt{Turn: 20, Up: 30}, on: long},
	{title: "LandingBoard", says: "Stands out below the entrance, level or sloping, smooth or grooved.",
		what: box.LandingBoard{Name: "landing", Below: 10, Width: 110, Deep: 45, Slope: 8, Grooves: 10, Board: thin}, on: plain},
	{title: "LandingBoard, flat", says: "Or lies on the wall, grooved for bats.",
		what: box.LandingBoard{Name: "landing", Below: 12, Width: 120, Deep: 110, Flat: true, Grooves: 12, Board: thin}, on: plain},
	{title: "EntrancePlate", says: "A plate with a hole of its own on the entrance's axis.",
		what: box.EntrancePlate{Name: "plate", Width: 76, Height: 76, Hole: box.Round{Diameter: 28}, Board: box.Board{Thickness: 5}, Screws: 4}, on: plain},
	{title: "Tunnel", says: "Four boards around the entrance, against rain and paws.",
		what: box.Tunnel{Name: "tunnel", Width: 50, Height: 50, Long: 70, Board: thin}, on: plain},
	{title: "DripGroove", says: "A kerf under the lower edge of the roof, where water lets go.",
		what: box.DripGroove{Sides: true}, on: plain, look: look{only: []box.Part{box.Roof}, round: 30, up: -45}},
}

var strips = []element{
	{title: "EdgeGlued", says: "Strips planed square and glued edge to edge, all of them equal.",
		what: box.MadeUp{Of: box.Front, Joint: box.EdgeGlued{}}, on: broad, look: look{apart: 0.15, round: 15, up: 60}},
	{title: "LooseTongue", says: "A strip of its own in grooves of both edges.",
		what: box.MadeUp{Of: box.Front, Joint: box.LooseTongue{Width: 16}}, on: broad, look: look{apart: 0.35, round: 15, up: 60}},
	{title: "TongueGroove", says: "Tongue and groove; a board covers its width less the tongue.",
		what: box.MadeUp{Of: box.Front, Joint: box.TongueGroove{Tongue: 8}}, on: broad, look: look{apart: 0.2, round: 15, up: 60}},
	{title: "Shiplap", says: "Lapped boarding, rebated to half its thickness; rain runs off.",
		what: box.MadeUp{Of: box.Front, Joint: box.Shiplap{Lap: 15}}, on: broad, look: look{apart: 0.25, round: 15, up: 60}},
}

var corners = []element{
	{title: "Butt", says: "One board ends against the other.",
		what: joints.Butt{}, on: corner, look: look{apart: 0.3, round: 30, up: 40}},
	{title: "Mitre", says: "Both bevelled.",
		what: joints.Mitre{}, on: corner, look: look{apart: 0.3, round: 30, up: 40}},
	{title: "Rebate", says: "A step that takes the other board; the depth is into the thickness.",
		what: joints.Rebate{Depth: 10}, on: corner, look: look{apart: 0.3, round: 30, up: 40}},
	{title: "Housing", says: "A channel that takes the other board, with or without stops.",
		what: joints.Housing{Depth: 6}, on: corner.With(func(d *box.Design) {
			d.Floor, d.Walls = box.FloorBetween{Raise: 25}, append(d.Walls, box.Wall{On: box.Right, Open: true})
		}), look: look{apart: 0.3, round: 30, up: 40}},
	{title: "Comb", says: "Interlocking fingers.",
		what: joints.Comb{Fingers: 5}, on: corner, look: look{apart: 0.3, round: 30, up: 40}},
	{title: "Fixing", says: "A row of screws or nails through one part into another, their holes drilled and listed; package species proposes rows.",
		what: box.Fixing{Over: box.Front, Under: box.Right, What: "screw", Metal: "stainless steel", Diameter: 4, Length: 45, Hole: 4.5, Pilot: 2.5,
			At: []box.Anchor{{Right: 53.8, Up: 20}, {Right: 53.8, Up: 70}}}, on: corner, look: look{apart: 0.3, round: 30, up: 40}},
}

var shells = []element{
	{title: "Flat roof", says: "Level.", what: box.Flat{Over: box.Overhangs{All: 20}}, on: plain},
	{title: "Pent roof", says: "One slope, to the front.", what: box.Pent{Pitch: 20, Over: box.Overhangs{Front: 40, Left: 15, Right: 15}}, on: plain},
	{title: "Gable roof", says: "Two slopes, their ridge from front to back or from left to right.", what: box.Gable{Pitch: 45, Over: box.Overhangs{All: 25}}, on: plain},
	{title: "Hip roof", says: "A slope over every wall.", what: box.Hip{Pitch: 40, Over: box.Overhangs{All: 25}}, on: plain},
	{title: "No roof", says: "Said, never left out by mistake.", what: box.NoRoof{}, on: plain, look: look{round: 25, up: 40}},
	{title: "Floor between the walls", says: "Flush or raised, butted, housed or in a rebate.", what: box.FloorBetween{Raise: 25}, on: plain, look: look{off: []box.Part{box.Front, box.Roof}, round: 25, up: 15}},
	{title: "Floor under the walls", says: "It may run on past them.", what: box.FloorUnder{Over: box.Overhangs{All: 15}}, on: plain},
	{title: "No floor", says: "Open below.", what: box.NoFloor{}, on: plain, look: look{round: 25, up: -40}},
	{title: "Polygon footprint", says: "Regular, or any convex polygon of points.", what: box.Regular{Sides: 6, Across: 170}, on: plain.With(func(d *box.Design) {
		d.Size, d.Roof, d.Corners.Joint = box.Cavity{Height: 200}, box.Hip{Pitch: 35, Over: box.Overhangs{Front: 25, All: 25}}, joints.Mitre{}
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 130}}
	})},
	{title: "Leaning walls", says: "Walls may lean, each by itself; compound angles come out by themselves.", what: []box.Wall{{On: box.Front, Lean: 12}, {On: box.Left, Lean: 8}, {On: box.Right, Lean: 8}}, on: plain},
	{title: "Cavity", says: "The usual size: what the animal needs, moved by no thickness.", what: box.Cavity{Width: 110, Depth: 150, Height: 190}, on: plain},
	{title: "Outside", says: "Or the planes of the outer faces.", what: box.Outside{Width: 165, Depth: 165, Height: 240}, on: plain},
	{title: "BoardWidth", says: "Or the width of the boards, so that no wall is ripped.", what: box.BoardWidth{Width: 145, Height: 220}, on: plain},
}
