package species

import (
	"holt.example/box"
	"holt.example/box/outline"
)

// Design is a ready form of the preset in the boards given: a plain design to
// resolve as it is or to change. The assumed sentences say what the form adds to
// what is published, which is not advice from any source.
//
// A hole, slot or lying tube becomes a box with a sloping roof that stands out,
// a raised floor with drains, and a back that runs on above and below to hang it
// by. An open front becomes an open face with a lip before it, a shelf has an
// open face alone, a crevice has no floor and a longer back, and a tunnel house
// stands on the ground without a floor, its tunnel left out.
//
// The error is a *MissingError where a size was not published (set it in the
// preset first) or where the dwelling is no box, as bored tubes for bees.
func (p Preset) Design(board box.Board) (d box.Design, assumed []string, err error) {
	if p.Group == Insect {
		return d, nil, &MissingError{p.Key, "Inside", "tubes are bored in a block or bundled: this is no box of boards"}
	}
	for _, s := range []struct {
		field string
		size  box.MM
	}{{"Inside.Width", p.Inside.Width}, {"Inside.Depth", p.Inside.Depth}, {"Inside.Height", p.Inside.Height}} {
		if !(s.size > 0) {
			return d, nil, &MissingError{p.Key, s.field, "the sources used give no size: set one"}
		}
	}
	d = box.Design{
		Name:  p.Common,
		Board: board,
		Size:  p.Inside,
		Walls: []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Roof:  box.Pent{Pitch: 10, Over: overhangs},
		Floor: box.FloorBetween{Raise: 10},
	}
	assumed = []string{"A pent roof of 10 degrees stands out 60 mm in front and 50 at the sides.", "The back runs on 80 mm above the roof and 60 below the floor.", "The floor is raised 10 mm and has four drains."}
	switch p.Form {
	case Tube:
		d.Walls = nil
		d.Roof = box.Gable{Pitch: 20, Over: overhangs}
		assumed = []string{"A gable of 20 degrees runs along the tube and stands out 60 mm in front and 50 at the sides.", "The floor is raised 10 mm and has four drains."}
	case Crevice:
		// A cavity narrower than two boards takes no roof that laps over both
		// walls, so a level lid lies on top.
		d.Floor, d.Roof = box.NoFloor{}, box.NoRoof{}
		d.Walls = []box.Wall{{On: box.Back, Below: 100}}
		t := float64(thickest(board))
		x, y := float64(p.Inside.Width/2)+t+20, float64(p.Inside.Depth/2)+t
		d.Free = []box.Free{{Name: "lid", Outline: outline.Rectangle(-x, -y-20, x, y), At: box.Place{Z: p.Inside.Height}, Facing: box.Direction{Z: 1}, Up: box.Direction{Y: 1}}}
		return d, []string{"A level lid stands out 20 mm in front and at the sides: it needs a roof or a felt over it.", "The back runs on 100 mm below the front, to land on."}, nil
	case Shelf:
		d.Walls = append(d.Walls, box.Wall{On: box.Front, Open: true})
		d.Features = []box.Feature{box.Drains{}}
		return d, append(assumed, "Only the front is open; more sides may be."), nil
	case OpenFront:
		d.Walls = append(d.Walls, box.Wall{On: box.Front, Open: true})
		d.Features = []box.Feature{box.Drains{}}
		lip, err := p.lip(board)
		if err != nil {
			return box.Design{}, nil, err
		}
		d.Free = []box.Free{lip}
		return d, append(assumed, "The lip is a board across the open front, from the lower edge of the sides."), nil
	case Tunnel:
		d.Floor = box.NoFloor{}
		d.Walls = nil
		assumed = []string{"A pent roof of 10 degrees stands out 60 mm in front and 50 at the sides.", "There is no floor, and the tunnel before the entrance is left out."}
	}
	if p.Form != Tunnel {
		d.Features = append(d.Features, box.Drains{})
	}
	cut := p.Entry.Cut()
	if cut == nil {
		return box.Design{}, nil, &MissingError{p.Key, "Entry.Height", "the sources used give no size: set one"}
	}
	way := box.Entrance{Shape: cut}
	if low, ok := p.Entry.Lowest(); ok {
		way.Above = low
	} else if p.Form == SlotForm {
		// Near the floor and to one side, as is remembered of swift boxes.
		way.Above, way.Right = 20, p.Inside.Width/2-p.Entry.Width/2-40
		assumed = append(assumed, "The slot stands 20 mm above the floor and 40 mm from one side.")
	} else {
		way.Above = p.Inside.Height - p.Entry.Height - 80
		assumed = append(assumed, "The hole ends 80 mm below the ceiling, as no height is published.")
	}
	d.Features = append([]box.Feature{way}, d.Features...)
	return d, assumed, nil
}

// overhangs of the ready forms keep the rules on roofs.
var overhangs = box.Overhangs{Front: 60, Left: 50, Right: 50}

// lip is the low front board of an open front: as wide as the box outside,
// from the lower edge of the sides to the published height above the floor.
func (p Preset) lip(board box.Board) (box.Free, error) {
	high, ok := p.Entry.Lowest()
	if !ok {
		return box.Free{}, &MissingError{p.Key, "Entry.Above", "the sources used give no height of the front: set one"}
	}
	t := thickest(board)
	half := float64(p.Inside.Width/2 + t)
	below := float64(t + 10)
	return box.Free{
		Name:    "lip",
		Outline: outline.Rectangle(-half, -below, half, float64(high)),
		At:      box.Place{Y: -p.Inside.Depth / 2},
		Up:      box.Direction{Z: 1},
	}, nil
}

// thickest is the thickness that parts of a board are cut for.
func thickest(b box.Board) box.MM {
	t := b.Thickness
	for _, m := range []box.MM{b.Measured, b.Most} {
		if m > 0 {
			t = m
		}
	}
	return t
}
