package box

// Opening is a way into the box, or what shuts or holds one: Hinged, Pivoted,
// Sliding, Removable, Inspection, Stopper; TurnButton, HookAndEye.
//
// A part that opens is made to open: it meets its neighbours in butts and mitres
// whatever the corners, the floor and the roof say of the others (an entry in
// Joints still beats that), it has play where it ends at a neighbour, and its
// way is proved: a swing that fouls another part is a problem with the angle at
// which it strikes. The plan shows the box shut; Plan.Opened and Plan.Drawn open
// it.
type Opening interface{ opening() }

// Hinged is a roof, a lid, a wall or a floor that turns about a hinge along one
// of its edges. The axis lies where the seam shows outside.
type Hinged struct {
	Part Part
	// At is the neighbour at which it hangs. "" means the back, for a roof of one
	// slope, a floor or a side wall; the other slope, for one of a gable; the left
	// wall, for the front and the back. Other parts must say it.
	At    Part
	Hinge Hinge // nil means RubberStrip{}
	Angle Deg   // it must open so far; 1 to 270, 0 means 90
	// Play is the gap to every neighbour that it ends at; up to 20. 0 means 1.5
	// (the usual gap round an inset door), and across the grain what solid wood
	// swells over 6 % of moisture besides, at 0.25 % for 1 % (EN 1313-1). At the
	// hinge it is at most 0.5 under a strip or leather, which need none.
	Play MM
	// Headroom is the gap to the roof; 0 means Play. A wall that swings out under
	// the overhang of a slope needs more.
	Headroom MM
	With     []Part // inner and free parts that move with it
}

// Pivoted is a wall that turns on two nails or screws, driven through its two
// neighbours into the middle of its thickness. The neighbours lap over it
// whatever Corners says.
type Pivoted struct {
	Part  Part
	Below MM  // of the nails, from its top where they enter; 0 means 25
	Angle Deg // it must open so far; 1 to 270, 0 means 90
	Play  MM  // as in Hinged
	// Headroom is the gap to the roof; 0 means what the turning top needs, half a
	// millimetre more, and at least Play.
	Headroom MM
	Screws   bool // screws instead of nails
	Diameter MM   // of the nails or screws, 1 to 12; 0 means 3
	Length   MM   // of them; 0 means that they hold 30 in the part
	With     []Part
}

// Sliding is a wall that slides in grooves of its two neighbours, which lap over
// it and run on past it.
type Sliding struct {
	Part   Part
	Up     bool // it is drawn upward; else downward
	Depth  MM   // of its edges in the grooves; 0 means a third of the neighbours' thickness
	Play   MM   // in thickness and at the bottom of the grooves, besides what the wood swells; 0 means 0.5
	Beyond MM   // how far the neighbours run on past its outer face; 0 means their thickness and the play
	With   []Part
}

// Removable is a part that is held by screws and comes straight off, square to its
// face or, where the slope of the roof bars that, along the slope. Screws go
// through it into the ends of what it laps over, or through what laps over it
// into its edges: at its two longest edges that are square to it.
type Removable struct {
	Part     Part
	Screws   int // along each of two edges, 1 to 20; 0 means 2
	Diameter MM  // of the screws, 1 to 12; 0 means 4
	Play     MM  // as in Hinged
	With     []Part
}

// Inspection is an opening with a cover plate, held by two screws above and below
// it. The wall under the opening is the sill that holds the nest back.
type Inspection struct {
	Name          string // of the cover, free/NAME; "" means "cover"
	On            Part   // a wall
	Width, Height MM     // of the opening; 0 means 100
	Right         MM     // of the middle of the wall, seen from outside
	Sill          MM     // from the cavity floor up to the opening, upright; 10 or more, 0 means 50
	Lap           MM     // of the cover over the wall on all sides, 8 or more; 0 means 15
	Board         Board  // of the cover; zero means the design's
}

// Stopper shuts an entrance: a plate that hangs beside it on one screw. Turned up
// by 90 degrees it covers the opening. It shuts the first Entrance on the wall.
type Stopper struct {
	Name  string // free/NAME; "" means "stopper"
	On    Part   // the wall with the entrance; "" means the front (wall/1 on a polygon)
	Left  bool   // it hangs to the left of the entrance; else to the right
	Lap   MM     // over the edge of the entrance, 2 or more; 0 means 6
	Board Board  // zero means the design's
}

// TurnButton is a small bar on one screw beside a seam that keeps a part shut. It
// needs a seam that is flush outside.
type TurnButton struct {
	Name          string // free/NAME; "" means "button"
	Part          Part   // that it keeps shut
	At            Part   // the neighbour on which it turns
	Along         MM     // from the middle of the seam: to the right, or upward on an upright seam
	Length, Width MM     // 0 means 50 and 16
	Board         Board  // zero means the design's
}

// HookAndEye keeps a part shut: an eye in the part, a hook in its neighbour.
type HookAndEye struct {
	Part  Part
	At    Part // the neighbour that carries the hook
	Along MM   // from the middle of the seam: to the right, or upward on an upright seam
}

func (Hinged) opening()     {}
func (Pivoted) opening()    {}
func (Sliding) opening()    {}
func (Removable) opening()  {}
func (Inspection) opening() {}
func (Stopper) opening()    {}
func (TurnButton) opening() {}
func (HookAndEye) opening() {}

// Hinge is what a part hangs by: RubberStrip, Leather or Butts.
type Hinge interface{ hinge() }

// RubberStrip runs along the whole seam, nailed down on both sides of it: the
// hinge is also the flashing.
type RubberStrip struct {
	Width     MM // across the seam, 20 to 300; 0 means 60
	Thickness MM // 0.5 to 10; 0 means 3
}

// Leather is pieces of leather or strap across the seam.
type Leather struct {
	Width     MM  // of a piece, along the seam, 10 to 300; 0 means 40
	Length    MM  // of a piece, across the seam, 20 to 300; 0 means 80
	Thickness MM  // 0.5 to 10; 0 means 3
	Count     int // 1 to 20; 0 means 2
}

// Butts are butt hinges. What is thicker in the two leaves than the gap is let
// into the part that offers its face: the neighbour that the opening part ends
// at, or the opening part where that laps over.
type Butts struct {
	Height    MM     // of a leaf, along the pin, 10 to 300; 0 means 40
	Width     MM     // of a leaf, from the pin, 5 or more; 0 means 2 less than the thinner board, at most 20
	Thickness MM     // of a leaf, 0.3 to 5; 0 means 1.2
	Count     int    // 2 to 10; 0 means 2
	Screws    int    // in each leaf, 1 to 6; 0 means 2
	Metal     string // "" means "brass or stainless steel"
}

func (RubberStrip) hinge() {}
func (Leather) hinge()     {}
func (Butts) hinge()       {}
