package box

import "holt.example/box/outline"

// Shape is the form of an opening: Round, Rect, Slot or Freeform.
type Shape interface{ shape() }

// Round is a round hole. The diameter is always a diameter.
type Round struct{ Diameter MM }

// Rect is a rectangle, its corners rounded by Corner (0: sharp).
type Rect struct{ Width, Height, Corner MM }

// Slot has half-round ends; the longer of its two sizes is its direction.
type Slot struct{ Width, Height MM }

// Freeform is any outline around its own origin, u to the right and v up seen
// from outside.
type Freeform struct{ Outline outline.Contour }

func (Round) shape()    {}
func (Rect) shape()     {}
func (Slot) shape()     {}
func (Freeform) shape() {}

// Feature is something cut into parts: Entrance, Vents, Drains, CornerCuts or
// Cut, to which all others come down.
type Feature interface{ feature() }

// Entrance is the way in.
type Entrance struct {
	On    Part // "" means the front (wall/1 on a polygon)
	Shape Shape
	Above MM // from the cavity floor up to the lowest point of the opening on the inner face, vertical
	Right MM // of the middle of the wall, seen from outside
}

// Vents are round holes near the top of walls.
type Vents struct {
	On       []Part // nil means the two side walls
	Diameter MM     // 0 means 8
	Count    int    // in each wall; 0 means 2
	Below    MM     // from the lowest inner top of the wall down to the holes' centres; 0 means twice the diameter
	Spacing  MM     // between centres; 0 spreads them evenly
}

// Drains are round holes in the floor, near its corners.
type Drains struct {
	Diameter MM  // 0 means 8
	Inset    MM  // from the walls to the holes' centres; 0 means twice the diameter
	Count    int // 0 means one in each corner; 1 is in the middle
}

// CornerCuts take the corners off the floor, as drains.
type CornerCuts struct {
	Size MM // along each edge; 0 means 8
}

// Use says what a cut is for.
type Use string

// The uses of cuts.
const (
	UseEntrance Use = "entrance"
	UseVent     Use = "vent"
	UseDrain    Use = "drain"
	UseOpening  Use = "opening"
	UsePocket   Use = "pocket"
	UseMark     Use = "mark"
)

// CutSide is the face that a cut starts from.
type CutSide int

// The faces of a part: Outer is the one away from the cavity.
const (
	FromOuter CutSide = iota
	FromInner
)

// Cut is the one kind of cut to which every feature comes down: an outline
// taken out of a part, through or to a depth.
type Cut struct {
	On    Part
	At    Anchor
	Shape Shape
	Depth MM      // 0 is through
	From  CutSide // of a cut with a depth
	Use   Use     // "" means opening
	Name  string  // for lists; "" means the use
}

// Anchor places the middle of a shape on the cavity face of a part, seen from
// outside.
type Anchor struct {
	Right MM // of the middle of the face
	Up    MM // along the face from its lower edge
}

func (Entrance) feature()   {}
func (Vents) feature()      {}
func (Drains) feature()     {}
func (CornerCuts) feature() {}
func (Cut) feature()        {}

// Inner is a part inside the cavity: Partition.
type Inner interface{ inner() }

// Partition stands across the cavity from floor to Height, housed into the two
// walls it meets.
type Partition struct {
	Name   string
	Across PartitionRun
	At     MM    // of its middle plane from the cavity's middle: to the right, or to the back
	Height MM    // from the floor; 0 means up to the roof
	Joint  joint // with the walls; nil means joints.Housing{}
	Board  Board // zero means the design's
}

// PartitionRun is the way a partition runs.
type PartitionRun int

// The ways a partition can run.
const (
	RunFrontToBack PartitionRun = iota // between front and back
	RunLeftToRight                     // between left and right
)

func (Partition) inner() {}

// Free is a part of any outline at any place: a bracket, a batten, a perch for
// the ringer's number plate.
type Free struct {
	Name    string
	Board   Board           // zero means the design's
	Outline outline.Contour // anticlockwise, in u and v
	// At is where the origin of the outline lies in the world, on the inner face; Facing is where the
	// part's w axis (its outer face's normal) points, Up its v axis.
	At     Place
	Facing Direction
	Up     Direction
	Cuts   []Cut // On is ignored; Right and Up count from the outline's origin
}

// Place is a point of the world: x to the right seen from the front, y away
// from the viewer, z up, from the middle of the cavity floor.
type Place struct{ X, Y, Z MM }

// Direction is any vector above zero; the zero value means forward (towards
// the viewer) for Facing and upward for Up.
type Direction struct{ X, Y, Z float64 }
