package forms

import (
	"holt.example/box"
	"holt.example/joints"
)

// Hole is the sizes of a box with a round hole.
type Hole struct {
	Name   string
	Board  box.Board
	Inside box.Cavity
	Hole   box.MM // diameter
	Above  box.MM // from the floor up to the hole's lowest point
}

// HoleBox is the box most hung: a round hole, a pent roof, a long back with two
// screw holes, vents, drains, and grooves below the hole. The front turns out on two
// nails, by 60 degrees or more, to clean the box, and a hook near its lower end keeps
// it shut; the roof stays where it is, under its cover strip.
func HoleBox(a Hole) box.Design {
	return box.Design{
		Name: a.Name, Board: a.Board, Size: a.Inside,
		Walls: []box.Wall{longBack},
		Roof:  box.Pent{Pitch: 10, Over: box.Overhangs{Front: 50, Left: 25, Right: 25}},
		Floor: box.FloorBetween{Raise: 10, Dry: true},
		Outer: []box.Outer{box.CoverStrip{Name: "cover strip", Height: 30}},
		Features: []box.Feature{
			box.Entrance{Shape: box.Round{Diameter: a.Hole}, Above: a.Above},
			box.GripGrooves{},
			box.Vents{}, box.Drains{}, box.DripGroove{}, box.Hang{},
		},
		Opens: []box.Opening{box.Pivoted{Part: box.Front, Angle: 60}, box.HookAndEye{Part: box.Front, At: box.Left, Along: 50 - a.Inside.Height/2}},
	}
}

// Open is the sizes of a box with an open front.
type Open struct {
	Name   string
	Board  box.Board
	Inside box.Cavity // Depth is clear, behind the lip
	Lip    box.MM     // height of the board across the front, over the floor
}

// OpenFront is a box whose front is open above a lip that stands between the
// sides.
func OpenFront(a Open) box.Design {
	t := thick(a.Board)
	a.Inside.Depth += t // the lip stands inside
	at := (t - a.Inside.Depth) / 2
	return box.Design{
		Name: a.Name, Board: a.Board, Size: a.Inside,
		Walls:    []box.Wall{longBack, {On: box.Front, Open: true}},
		Roof:     box.Pent{Pitch: 10, Over: box.Overhangs{Front: 60, Left: 25, Right: 25}},
		Floor:    box.FloorBetween{Raise: 10, Dry: true},
		Inner:    []box.Inner{box.Partition{Name: "lip", Across: box.RunLeftToRight, At: at, Height: a.Lip, Joint: joints.Butt{}}},
		Outer:    []box.Outer{box.CoverStrip{Name: "cover strip", Height: 30}},
		Features: []box.Feature{box.Drains{Inset: 20}, box.DripGroove{}, box.Hang{}},
	}
}

// Row is the sizes of a terrace.
type Row struct {
	Name   string
	Board  box.Board
	Homes  int        // side by side
	Inside box.Cavity // of each
	Hole   box.MM     // diameter
	Above  box.MM     // from the floor up to the hole's lowest point
}

// Terrace is several homes side by side under one roof, with partitions housed
// into front and back, on a level batten. The roof turns up at the back, to clean all
// of them at once, and a hook keeps it shut.
func Terrace(a Row) box.Design {
	t, n := thick(a.Board), box.MM(a.Homes)
	d := box.Design{
		Name: a.Name, Board: a.Board,
		Size:  box.Cavity{Width: box.MM(n*a.Inside.Width) + box.MM((n-1)*t), Depth: a.Inside.Depth, Height: a.Inside.Height},
		Roof:  box.Pent{Pitch: 10, Over: box.Overhangs{Front: 50, Left: 25, Right: 25}},
		Floor: box.FloorBetween{Raise: 10, Dry: true},
		Outer: []box.Outer{box.Batten{Name: "batten", Above: a.Inside.Height / 2, Height: 45, Past: 60, Hole: box.Round{Diameter: 7}, Screws: 2 * a.Homes}},
		Opens: []box.Opening{box.Hinged{Part: box.Roof}, box.HookAndEye{Part: box.Roof, At: box.Left}},
	}
	for i := range a.Homes {
		x := box.MM((box.MM(i) - (n-1)/2) * (a.Inside.Width + t)) // of the home's middle
		d.Features = append(d.Features, box.Entrance{Shape: box.Round{Diameter: a.Hole}, Above: a.Above, Right: x},
			box.Cut{On: box.Floor, Shape: box.Round{Diameter: 8}, At: box.Anchor{Right: -x, Up: a.Inside.Depth / 2}, Use: box.UseDrain})
		if i > 0 {
			d.Inner = append(d.Inner, box.Partition{Name: "partition " + string(rune('0'+i)), At: x - (a.Inside.Width+t)/2})
		}
	}
	d.Features = append(d.Features, box.DripGroove{})
	return d
}

// Ledge is the sizes of an open ledge.
type Ledge struct {
	Name   string
	Board  box.Board
	Inside box.Cavity
	Lip    box.MM // height of the rim in front; 0 means 25
	Rim    box.MM // of the sides, below their windows; 0 means 60
}

// Shelf is an open ledge under a roof: no front but a lip, and a window in each
// side.
func Shelf(a Ledge) box.Design {
	rim := or(a.Rim, 60)
	d := OpenFront(Open{a.Name, a.Board, a.Inside, or(a.Lip, 25)})
	for _, side := range []box.Part{box.Left, box.Right} {
		d.Features = append(d.Features, box.Cut{On: side, Name: "window", At: box.Anchor{Level: box.LowestAbove, Up: rim},
			Shape: box.Rect{Width: a.Inside.Depth - 2*thick(a.Board), Height: a.Inside.Height - rim - 30, Corner: 15}})
	}
	return d
}

// Owl is the sizes of a long box for owls.
type Owl struct {
	Name          string
	Board         box.Board
	Inside        box.Cavity
	Width, Height box.MM // of the rectangular entrance
	Above         box.MM // from the floor up to its lowest point
}

// OwlBox is a long box: a large entrance high up, a ladder of grooves below it, a
// ledge for the young outside, two battens behind, a felted roof, and an opening with
// a cover in the left side, half as wide as the box is deep if the board is, to clean
// it.
func OwlBox(a Owl) box.Design {
	batten := box.Batten{Name: "upper batten", Above: a.Inside.Height - 100, Height: 60, Past: 60, Hole: box.Round{Diameter: 9}, Screws: 3}
	lower := batten
	lower.Name, lower.Above = "lower batten", 60
	hatch := box.Inspection{On: box.Left, Width: a.Inside.Depth / 2, Height: a.Inside.Depth / 2}
	if w := a.Board.Width; w > 0 {
		hatch.Width = min(hatch.Width, w-30) // its cover laps 15 on either side
	}
	return box.Design{
		Name: a.Name, Board: a.Board, Size: a.Inside,
		Roof:    box.Pent{Pitch: 10, Over: box.Overhangs{Front: 80, All: 40}},
		Floor:   box.FloorBetween{Raise: 20, Dry: true, Joint: joints.Housing{}},
		Corners: box.Corners{Joint: joints.Rebate{}},
		Outer: []box.Outer{batten, lower, box.Felt{Turn: 40},
			box.LandingBoard{Name: "ledge", Below: 20, Width: a.Width + 60, Deep: 120, Slope: 5, Grooves: 20}},
		Features: []box.Feature{
			box.Entrance{Shape: box.Rect{Width: a.Width, Height: a.Height, Corner: 10}, Above: a.Above},
			box.GripGrooves{Spacing: 25, Length: 120}, box.Vents{Diameter: 15}, box.Drains{Diameter: 12}, box.DripGroove{}, box.Edging{Round: 3},
		},
		Opens: []box.Opening{hatch},
	}
}

// Swift is the sizes of a wedge-shaped box for swifts.
type Swift struct {
	Name   string
	Board  box.Board
	Inside box.Cavity // Height is at the front, the low end
	Pitch  box.Deg    // of the roof; 0 means 30
	Slot   box.Slot   // the way in
	Above  box.MM     // from the floor up to the slot's lowest point
	Aside  box.MM     // of the slot's middle from that of the front
}

// SwiftBox is a wedge that fits under eaves: a steep roof from a low front, the
// slot off to one side, a split batten behind. Nothing opens.
func SwiftBox(a Swift) box.Design {
	if a.Pitch == 0 {
		a.Pitch = 30
	}
	return box.Design{
		Name: a.Name, Board: a.Board, Size: a.Inside,
		Roof:    box.Pent{Pitch: a.Pitch, Over: box.Overhangs{Front: 25, Left: 15, Right: 15}},
		Floor:   box.FloorBetween{Dry: true},
		Corners: box.Corners{Laps: box.Sides},
		Outer:   []box.Outer{box.SplitBatten{Name: "split batten", Above: a.Inside.Height / 2, Height: 90, Hole: box.Round{Diameter: 6}, Screws: 4}},
		Features: []box.Feature{
			box.Entrance{Shape: a.Slot, Above: a.Above, Right: a.Aside},
			box.DripGroove{Inset: 8}, box.Edging{Blunt: 1},
		},
	}
}
