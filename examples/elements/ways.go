package main

import "holt.example/box"

var ways = []element{
	{title: "Hinged, rubber strip", says: "A roof on a strip of rubber, which is also the flashing.",
		what: box.Hinged{Part: box.Roof, Hinge: box.RubberStrip{Width: 80}, Angle: 75}, on: long, look: look{open: 0.9}},
	{title: "Hinged, leather", says: "A lid on pieces of leather or strap.",
		what: box.Hinged{Part: box.Roof, Hinge: box.Leather{}}, on: flush, look: look{open: 0.5}},
	{title: "Hinged, butts", says: "A side on butt hinges, let in, their screw holes drilled.",
		what: box.Hinged{Part: box.Right, Hinge: box.Butts{}, Headroom: 4}, on: flush, look: look{open: 0.7, round: 40, up: 20}},
	{title: "Pivoted", says: "A front on two nails through the sides: it opens for cleaning.",
		what: box.Pivoted{Part: box.Front, Angle: 60}, on: plain, look: look{open: 0.9, round: 50, up: 10}},
	{title: "Sliding", says: "A front in grooves of the sides, drawn upward or down.",
		what: box.Sliding{Part: box.Front}, on: plain.With(func(d *box.Design) { d.Roof = box.Pent{Over: box.Overhangs{Front: 60}} }), look: look{open: 1, round: 35, up: 20}},
	{title: "Removable", says: "A part on screws that comes straight off.",
		what: box.Removable{Part: box.Right}, on: flush, look: look{open: 1, round: 35, up: 20}},
	{title: "Inspection", says: "An opening with a cover, over a sill that holds the nest back.",
		what: box.Inspection{On: box.Right, Width: 80, Height: 80, Sill: 60}, on: plain, look: look{open: 0.5, round: 40, up: 15}},
	{title: "Stopper", says: "A plate on one screw that is turned over the entrance.",
		what: box.Stopper{}, on: plain.With(func(d *box.Design) { d.Board.Thickness, d.Board.Measured = 18, 0 })},
	{title: "TurnButton", says: "A small bar on a screw that keeps a part shut.",
		what: []box.Opening{box.Hinged{Part: box.Front, At: box.Left, Headroom: 12}, box.TurnButton{Part: box.Front, At: box.Right}}, on: flush, look: look{round: 40, up: 20}},
	{title: "HookAndEye", says: "Keeps a part shut; it is listed.",
		what: []box.Opening{box.Hinged{Part: box.Roof}, box.HookAndEye{Part: box.Roof, At: box.Right}}, on: flush},
}
