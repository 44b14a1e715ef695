// Package forms holds the ready forms of boxes: functions that return a
// box.Design for given sizes. They know no animals; package species does.
//
//	d := forms.HoleBox(forms.Hole{
//		Name:   "orchard 12",
//		Board:  box.Board{Thickness: 15, Measured: 14.6},
//		Inside: box.Cavity{Width: 120, Depth: 120, Height: 240},
//		Hole:   32, Above: 170,
//	})
//
// What comes back is a plain design. Change it with With, as any other:
//
//	d = d.With(func(d *box.Design) { d.Roof = box.Gable{Pitch: 45, Over: box.Overhangs{All: 30}} })
//
// Floors between walls are dry: of solid wood they have room to swell.
//
// A form that is cleaned has a way in; set Opens to have another, or none.
//
// Sizes that are left zero have the defaults that their comments name, which are
// common practice; nothing is checked before Resolve.
package forms

import "holt.example/box"

// or is x, or the default where x is zero.
func or(x, dflt box.MM) box.MM {
	if x == 0 {
		return dflt
	}
	return x
}

// thick is what a board measures at most, as parts are cut for it.
func thick(b box.Board) box.MM {
	for _, x := range []box.MM{b.Most, b.Measured, b.Thickness} {
		if x != 0 {
			return x
		}
	}
	return 0
}

// longBack lets the back run on above the roof and below the floor, to hang the
// box by.
var longBack = box.Wall{On: box.Back, Above: 80, Below: 60}
