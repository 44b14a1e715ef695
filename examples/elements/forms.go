package main

import (
	"holt.example/box"
	"holt.example/box/forms"
)

var (
	ply = box.Board{Thickness: 12, Material: "birch plywood", Grain: box.GrainNone}
	oak = box.Board{Thickness: 160, Material: "oak, dry"}
)

var ready = []element{
	{title: "Hole box", says: "The box most hung.",
		what: forms.HoleBox(forms.Hole{Name: "hole box", Board: larch, Inside: box.Cavity{Width: 120, Depth: 120, Height: 240}, Hole: 32, Above: 170})},
	{title: "Open-fronted box", says: "Open above a lip.",
		what: forms.OpenFront(forms.Open{Name: "open front", Board: larch, Inside: box.Cavity{Width: 140, Depth: 140, Height: 170}, Lip: 100})},
	{title: "Terrace", says: "Several homes under one roof.",
		what: forms.Terrace(forms.Row{Name: "terrace", Board: larch, Homes: 3, Inside: box.Cavity{Width: 130, Depth: 150, Height: 250}, Hole: 32, Above: 150})},
	{title: "Open shelf", says: "A ledge under a roof.",
		what: forms.Shelf(forms.Ledge{Name: "shelf", Board: larch, Inside: box.Cavity{Width: 200, Depth: 150, Height: 200}})},
	{title: "Owl box", says: "Long, with a ladder inside and battens behind.",
		what: forms.OwlBox(forms.Owl{Name: "owl box", Board: larch, Inside: box.Cavity{Width: 300, Depth: 300, Height: 800}, Width: 120, Height: 120, Above: 500})},
	{title: "Swift box", says: "A wedge that fits under eaves.",
		what: forms.SwiftBox(forms.Swift{Name: "swift box", Board: larch, Inside: box.Cavity{Width: 400, Depth: 210, Height: 120}, Slot: box.Slot{Width: 60, Height: 28}, Above: 30, Aside: 130})},
	{title: "Bat box", says: "Crevices one behind another, open below.",
		what: forms.BatBox(forms.Bat{Name: "bat box", Board: larch, Baffle: ply, Width: 300, Height: 400, Crevices: 4, Crevice: 20}), look: look{round: 30, up: -25}},
	{title: "Dormouse box", says: "Its hole faces the trunk, kept off by two bars.",
		what: forms.DormouseBox(forms.Dormouse{Name: "dormouse box", Board: larch, Inside: box.Cavity{Width: 120, Depth: 120, Height: 210}, Hole: 32, Above: 130}), look: look{round: 150, up: 15}},
	{title: "Hedgehog house", says: "A tunnel, a lobby and a chamber.",
		what: forms.HedgehogHouse(forms.Hedgehog{Name: "hedgehog house", Board: larch, Inside: box.Cavity{Width: 520, Depth: 400, Height: 300}, Doorway: 140, Lobby: 150})},
	{title: "Bee block", says: "A drilled block in a frame.",
		what: forms.BeeBlock(forms.Bees{Name: "bee block", Board: larch, Block: oak, Width: 180, Height: 200, Rows: []box.BeeRow{{Diameter: 8, Depth: 150, Repeat: 2}, {Diameter: 6, Depth: 130, Repeat: 2}}})},
	{title: "Planter", says: "A trough with leaning walls.",
		what: forms.Planter(forms.Trough{Name: "planter", Board: larch, Inside: box.Cavity{Width: 600, Depth: 220, Height: 220}, Lean: 8})},
}
