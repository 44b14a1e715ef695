package species

import (
	"fmt"

	"holt.example/box"
	"holt.example/box/forms"
	"holt.example/box/outline"
)

// Design is a ready form of the preset in the boards given: a plain design to
// resolve as it is or to change. The assumed sentences say what the form adds to
// what is published, which is not advice from any source.
//
// A hole, slot or lying tube becomes a box with a sloping roof that stands out,
// a raised floor with drains, a back that runs on above and below to hang it by,
// and a way in for cleaning. An open front becomes an open face with a lip before
// it, a shelf has an open face alone, a crevice has no floor, a grooved back to
// land on and chambers one behind another where several are meant, and a house on
// the ground has a lobby beside its chamber and a tunnel. The hole for a dormouse
// looks at the trunk, past two bars, and tubes for bees are bored in a block that
// slips out of its frame. Boards of a stated width are glued up where they are too
// narrow.
//
// The error is a *MissingError where a size that the form needs is 0.
func (p Preset) Design(board box.Board) (d box.Design, assumed []string, err error) {
	d, assumed, err = p.form(board)
	if err == nil && board.Grain == box.GrainAuto && p.lengthwise(&d, board) {
		assumed = append(assumed, "In parts much wider than they are high the grain runs lengthwise.")
	}
	if err != nil || !(board.Width > 0) || board.Grain == box.GrainNone {
		return d, assumed, err
	}
	d.MadeUp = []box.MadeUp{{Of: box.AllWalls}, {Of: box.AllRoof}}
	if _, none := d.Floor.(box.NoFloor); !none {
		d.MadeUp = append(d.MadeUp, box.MadeUp{Of: box.Floor})
	}
	return d, append(assumed, fmt.Sprintf("What is wider than the board of %s mm is glued up of strips.", num(float64(board.Width)))), nil
}

// lengthwise turns the grain of low wide parts, which would break along it.
func (p Preset) lengthwise(d *box.Design, board box.Board) bool {
	w, deep, h := p.Inside.Width, p.Inside.Depth, p.Inside.Height
	turned := board
	turned.Grain = box.GrainAcross
	turn := map[box.Part]bool{
		box.Front: w > 2*h, box.Back: w > 2*h, box.Left: deep > 2*h, box.Right: deep > 2*h,
		box.AllRoof: w > 2*deep || deep > 2*w,
	}
	boards := map[box.Part]box.Board{}
	for part, yes := range turn {
		if yes {
			boards[part] = turned
		}
	}
	if deep > 2*w {
		turned.Grain = box.GrainUp // front to back
		boards[box.Floor] = turned
	}
	if p.Group == Insect || len(boards) == 0 {
		return false
	}
	if _, none := d.Floor.(box.NoFloor); none {
		delete(boards, box.Floor)
	}
	if w, ok := openWall(d); ok {
		delete(boards, w)
	}
	d.Boards = boards
	return true
}

// openWall is the wall that a form leaves open.
func openWall(d *box.Design) (box.Part, bool) {
	for _, w := range d.Walls {
		if w.Open {
			return w.On, true
		}
	}
	return "", false
}

// form is the ready form, each part of one board.
func (p Preset) form(board box.Board) (d box.Design, assumed []string, err error) {
	if p.Group == Insect {
		return p.block(board)
	}
	if p.Form == OpenFront && p.Inside.Height == 0 && p.Entry.Above > 0 {
		p.Inside.Height = p.Entry.Above + openAbove
		assumed = append(assumed, fmt.Sprintf("No height is published: the cavity is %s mm high, %d more than the front.", num(float64(p.Inside.Height)), openAbove))
	}
	for _, s := range []struct {
		field string
		size  box.MM
	}{{"Inside.Width", p.Inside.Width}, {"Inside.Depth", p.Inside.Depth}, {"Inside.Height", p.Inside.Height}} {
		if !(s.size > 0) {
			return d, nil, &MissingError{p.Key, s.field, "the sources used give no size: set one"}
		}
	}
	switch {
	case p.Form == Crevice:
		return p.crevice(board)
	case p.Form == Tunnel:
		return p.house(board)
	case p.Key == dormouse:
		return p.trunk(board)
	}
	d = box.Design{
		Name:     p.Common,
		Board:    board,
		Size:     p.Inside,
		Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Roof:     box.Pent{Pitch: 10, Over: overhangs},
		Floor:    box.FloorBetween{Raise: 10, Dry: true},
		Features: []box.Feature{box.Drains{}, box.DripGroove{}, box.Hang{}},
	}
	assumed = append(assumed, "A pent roof of 10 degrees stands out 60 mm in front and 50 at the sides, with a drip groove under its edge.", "The back runs on 80 mm above the roof and 60 below the floor, with a hole at each end.", "The floor is raised 10 mm, has four drains, and stays dry, with room to swell.")
	switch p.Form {
	case Tube:
		d.Walls, d.Features = nil, d.Features[:2]
		over := overhangs
		over.Back = 50
		d.Roof = box.Gable{Pitch: 20, Over: over}
		d.Opens = []box.Opening{box.Removable{Part: box.Back}}
		assumed = []string{"A gable of 20 degrees runs along the tube and stands out 60 mm in front and 50 at the sides and behind, with a drip groove under its edges.", "The floor is raised 10 mm, has four drains, and stays dry, with room to swell.", "The back comes off for cleaning and is held by four screws."}
	case Shelf:
		d.Walls = append(d.Walls, box.Wall{On: box.Front, Open: true})
		return d, append(assumed, "Only the front is open; more sides may be."), nil
	case OpenFront:
		d.Walls = append(d.Walls, box.Wall{On: box.Front, Open: true})
		lip, err := p.lip(board)
		if err != nil {
			return box.Design{}, nil, err
		}
		d.Free = []box.Free{lip}
		return d, append(assumed, "The lip is a board across the open front, from the lower edge of the sides."), nil
	default:
		d.Opens = []box.Opening{box.Hinged{Part: box.Roof}, box.HookAndEye{Part: box.Roof, At: box.Left}}
		assumed = append(assumed, "The roof opens: it hangs on a rubber strip along the back, and a hook on the left side keeps it shut.")
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
		way.Above = p.Inside.Height - p.Entry.Height - below
		assumed = append(assumed, belowCeiling)
	}
	d.Features = append([]box.Feature{way}, d.Features...)
	if p.Key == barnOwl {
		d.Outer = []box.Outer{box.LandingBoard{Name: "ledge", Below: 30, Width: p.Entry.Width + 120, Deep: 150, Slope: 5}}
		assumed = append(assumed, "The ledge outside lies 30 mm below the hole, stands out by 150 and slopes by 5 degrees.")
	}
	return d, assumed, nil
}

const (
	dormouse     = "hazel_dormouse"
	barnOwl      = "western_barn_owl"
	openAbove    = 60 // mm of opening over the front of an open box without a height
	below        = 80 // mm from the ceiling down to a hole without a height
	belowCeiling = "The hole ends 80 mm below the ceiling, as no height is published."
)

// crevice is a box open below, of one chamber or of three.
func (p Preset) crevice(board box.Board) (box.Design, []string, error) {
	n := 1
	assumed := []string{"A pent roof of 15 degrees stands out 40 mm in front and 25 at the sides, with a drip groove under its edge and a cover strip of 30 mm over its joint with the back.",
		"The back runs on 60 mm above the roof, and 100 below the front to land on, with a hole at each end; inside it is grooved every 12 mm.", "It is open below; nothing else opens."}
	if p.Key == "bat_multi_chamber" {
		n = 3
		assumed = append(assumed, "There are three chambers one behind another, with plywood for outdoors between them; a gap on top lets bats climb over.")
	}
	return forms.BatBox(forms.Bat{Name: p.Common, Board: board, Width: p.Inside.Width, Height: p.Inside.Height, Crevices: n, Crevice: p.Inside.Depth, Baffle: plywood(board)}), assumed, nil
}

// plywood is for partitions that no board is wide enough for.
func plywood(board box.Board) box.Board {
	return box.Board{Thickness: thickest(board), Material: "exterior plywood", Grain: box.GrainNone}
}

// house is a chamber on the ground, with a lobby beside it and a tunnel to that.
func (p Preset) house(board box.Board) (box.Design, []string, error) {
	if !(p.Entry.Width > 0) {
		return box.Design{}, nil, &MissingError{p.Key, "Entry.Width", "the sources used give no size: set one"}
	}
	lobby := p.Entry.Width + 10
	in := p.Inside
	in.Width += lobby + thickest(board)
	d := forms.HedgehogHouse(forms.Hedgehog{Name: p.Common, Board: board, Inside: in, Doorway: p.Entry.Width, Lobby: lobby})
	for i := range d.Inner {
		if x, ok := d.Inner[i].(box.Lobby); ok {
			x.Board = plywood(board)
			d.Inner[i] = x
		}
	}
	return d, []string{
		fmt.Sprintf("Beside the chamber, on the left, lies a lobby %s mm wide, behind a partition of plywood for outdoors, and a tunnel of 300 mm leads into it; the way on into the chamber is at its far end, 20 mm above the floor.", num(float64(lobby))),
		"A pent roof of 8 degrees stands out 40 mm in front and 25 elsewhere, under felt, with a drip groove under its edge; it comes off, held by four screws.",
		"The corners are rebated. It stands on two runners, on a floor under the walls with four drains, and has a vent under the eaves on the right."}, nil
}

// trunk is the box whose hole looks at the trunk.
func (p Preset) trunk(board box.Board) (box.Design, []string, error) {
	if !(p.Entry.Width > 0) {
		return box.Design{}, nil, &MissingError{p.Key, "Entry.Width", "the sources used give no size: set one"}
	}
	above, ok := p.Entry.Lowest()
	assumed := []string{"A pent roof of 10 degrees stands out 30 mm in front and 20 at the sides, with a drip groove under its edge.", "The floor is raised 10 mm, has four drains, and stays dry, with room to swell.",
		"Two bars of 25 mm hold the back off the trunk and run on 60 mm past it, with a hole at each end; inside the back is grooved every 12 mm.",
		"The roof comes off, held by four screws: leave it shut unless you hold the licence that the law asks for."}
	if !ok {
		above = p.Inside.Height - p.Entry.Height - below
		assumed = append(assumed, belowCeiling)
	}
	return forms.DormouseBox(forms.Dormouse{Name: p.Common, Board: board, Inside: p.Inside, Hole: p.Entry.Width, Above: above}), assumed, nil
}

// block is a frame with a block of blind bores.
func (p Preset) block(board box.Board) (box.Design, []string, error) {
	if !(p.Entry.Width > 0) {
		return box.Design{}, nil, &MissingError{p.Key, "Entry.Width", "the sources used give no size: set one"}
	}
	deep := p.Inside.Depth
	assumed := []string{"The block is 178 mm wide and 198 high, in a frame that is open in front; it slips out.",
		"A pent roof of 10 degrees stands out 60 mm in front and 20 at the sides, with a drip groove under its edge and a cover strip of 30 mm over its joint with the back.",
		"The back runs on 80 mm above the roof and 60 below the floor, with a hole at each end; the floor stays dry.", "Bores stand 20 mm apart, from middle to middle."}
	if deep == 0 {
		deep = 140
		assumed = append(assumed, "No depth is published for it: bores are 140 mm deep, between the 120 and 150 of all tubes.")
	}
	rows := []box.BeeRow{{Diameter: p.Entry.Width, Depth: deep, Repeat: 8}}
	if p.Hole.Hi-p.Hole.Lo > 2 { // a mixture is wanted
		rows = nil
		for _, d := range []box.MM{4, 6, 8, 9} {
			if p.Hole.Has(float64(d)) {
				rows = append(rows, box.BeeRow{Diameter: d, Depth: deep, Repeat: 2})
			}
		}
		assumed = append(assumed, "The mixture is two rows each of 4, 6, 8 and 9 mm.")
	}
	wood := board
	wood.Thickness, wood.Measured, wood.Least, wood.Most, wood.Width = deep+10, 0, 0, 0, 0
	return forms.BeeBlock(forms.Bees{Name: p.Common, Board: board, Block: wood, Width: 180, Height: 200, Rows: rows}), assumed, nil
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
	if board.Grain != box.GrainNone {
		board.Grain = box.GrainAcross // long enough at any width
	}
	return box.Free{
		Name:    "lip",
		Board:   board,
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
