package forms_test

import (
	"testing"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/forms"
)

var (
	larch = box.Board{Thickness: 18, Measured: 17.6}
	thin  = box.Board{Thickness: 15, Measured: 14.6}
	ply   = box.Board{Thickness: 12, Grain: box.GrainNone}
)

// all are the forms at sizes that makers use.
var all = map[string]box.Design{
	"hole box":       forms.HoleBox(forms.Hole{Name: "hole box", Board: thin, Inside: box.Cavity{Width: 120, Depth: 120, Height: 240}, Hole: 32, Above: 170}),
	"open front":     forms.OpenFront(forms.Open{Name: "open front", Board: thin, Inside: box.Cavity{Width: 140, Depth: 140, Height: 170}, Lip: 100}),
	"terrace":        forms.Terrace(forms.Row{Name: "terrace", Board: larch, Homes: 3, Inside: box.Cavity{Width: 130, Depth: 150, Height: 250}, Hole: 32, Above: 150}),
	"shelf":          forms.Shelf(forms.Ledge{Name: "shelf", Board: larch, Inside: box.Cavity{Width: 203, Depth: 152, Height: 203}}),
	"owl box":        forms.OwlBox(forms.Owl{Name: "owl box", Board: larch, Inside: box.Cavity{Width: 300, Depth: 300, Height: 800}, Width: 120, Height: 120, Above: 500}),
	"swift box":      forms.SwiftBox(forms.Swift{Name: "swift box", Board: larch, Inside: box.Cavity{Width: 400, Depth: 210, Height: 120}, Slot: box.Slot{Width: 60, Height: 28}, Above: 30, Aside: 130}),
	"bat box":        forms.BatBox(forms.Bat{Name: "bat box", Board: larch, Baffle: ply, Width: 300, Height: 400, Crevices: 4, Crevice: 20}),
	"one crevice":    forms.BatBox(forms.Bat{Name: "one crevice", Board: larch, Width: 210, Height: 330, Crevices: 1, Crevice: 20, Landing: 70}),
	"dormouse box":   forms.DormouseBox(forms.Dormouse{Name: "dormouse box", Board: thin, Inside: box.Cavity{Width: 120, Depth: 120, Height: 210}, Hole: 32, Above: 130}),
	"hedgehog house": forms.HedgehogHouse(forms.Hedgehog{Name: "hedgehog house", Board: larch, Inside: box.Cavity{Width: 520, Depth: 400, Height: 300}, Doorway: 140, Lobby: 150}),
	"bee block": forms.BeeBlock(forms.Bees{Name: "bee block", Board: larch, Block: box.Board{Thickness: 160}, Width: 180, Height: 200,
		Rows: []box.BeeRow{{Diameter: 8, Depth: 150, Repeat: 3}, {Diameter: 6, Depth: 130, Repeat: 2}, {Diameter: 4, Depth: 120, Repeat: 2}}}),
	"planter": forms.Planter(forms.Trough{Name: "planter", Board: larch, Inside: box.Cavity{Width: 600, Depth: 220, Height: 220}, Lean: 8}),
}

// Every form resolves, fits, is drawn and closed, and goes together.
func TestForms(t *testing.T) {
	for name, d := range all {
		t.Run(name, func(t *testing.T) {
			p := boxtest.Resolve(t, d)
			boxtest.Sound(t, p)
		})
	}
}
