package box

import (
	"holt.example/box/outline"
	"holt.example/joints"
)

// Shape is the form of an opening, around its own origin, u to the right and v
// up seen from outside: Round, Rect, Slot, Oval, Arch, Keyhole, Regular, Polygon
// or Freeform.
//
// Regular has a flat side below. A Polygon's points are around the origin,
// anticlockwise seen from outside, and need not be convex here.
type Shape interface{ shape() }

// Round is a round hole. The diameter is always a diameter.
type Round struct{ Diameter MM }

// Rect is a rectangle, its corners rounded by Corner (0: sharp).
type Rect struct{ Width, Height, Corner MM }

// Slot has half-round ends; the longer of its two sizes is its direction.
type Slot struct{ Width, Height MM }

// Oval is a four-centred oval, as drawn with compasses; its sizes are over all.
type Oval struct{ Width, Height MM }

// Arch stands upright and is arched on top; its origin is the middle of the
// rectangle Width by Height around it.
type Arch struct {
	Width, Height MM
	Rise          MM // of the arch over its springing, up to half the width; 0 means half: round-headed
}

// Freeform is any outline around its own origin, u to the right and v up seen
// from outside. outline.FitClosed makes one of a smooth curve through points.
type Freeform struct{ Outline outline.Contour }

func (Round) shape()    {}
func (Rect) shape()     {}
func (Slot) shape()     {}
func (Oval) shape()     {}
func (Arch) shape()     {}
func (Regular) shape()  {}
func (Polygon) shape()  {}
func (Freeform) shape() {}

// Feature is something cut into parts or drawn on them: Entrance, Vents, Drains,
// CornerCuts, EavesVents, DripGroove, Hang, Edging, RoundCorners, Scallops, Pattern,
// Rail, Engrave, Text, GripGrooves, PartMarks, or Cut, to which all openings and
// pockets come down.
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
	Below    MM     // from the lowest inner top of the wall down to the holes' centres; 0 means twice the diameter below the lower arris of the top
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
	UseGrip     Use = "grip"     // for claws: grooves below an entrance
	UseHinge    Use = "hinge"    // recesses and holes for hinges and pivots
	UseScrew    Use = "screw"    // for the screws of openings, catches, battens and plates
	UseFixing   Use = "fixing"   // for the screws and nails that hold parts together for good
	UseOrnament Use = "ornament" // patterns, rails, shaped corners
	UseDrip     Use = "drip"     // under a roof's edge, where water lets go
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
	// Through are further parts on the same axis, which is normal to On: a
	// plate and a tunnel behind the entrance. Each is cut through where the axis
	// meets it, and must be parallel to On. Only a cut without depth has any.
	Through []Part
	Repeat  Repeat // rows and grids
	// Mirror makes the mirror image about the part's upright centre line too: the
	// line through the middle of the lower edge of its face, or through the middle
	// of a free part's outline. An image that is the cut itself is made once.
	Mirror bool
	Tool   Tool // zero: any that fits
}

// Anchor places the origin of a shape, which is its middle, on the cavity face
// of a part, seen from outside. Of a free part, faces and edges are those of its
// outline.
type Anchor struct {
	Right MM // from Datum; without one, of the middle of the face
	Up    MM // from Level; without one, along the face from its lower edge
	Datum Datum
	Level Level
	Turn  Deg // of the shape, anticlockwise seen from outside, -360 to 360
}

// Datum says where Right counts from.
type Datum int

// The data for Right.
const (
	FromMiddle Datum = iota // the middle of the face's lower edge, to the right
	FromLeft                // the leftmost point of the face, to the right
	FromRight               // its rightmost point, to the left
)

// Level says where Up counts from.
type Level int

// The levels for Up.
const (
	AlongFace   Level = iota // along the face, from its lower edge up to the origin
	LowestAbove              // upright, from the cavity floor up to the lowest point of the shape on the face
	CentreAbove              // upright, from the cavity floor up to the origin
	BelowTop                 // along the face, from its upper edge there down to the origin
)

func (Entrance) feature()   {}
func (Vents) feature()      {}
func (Drains) feature()     {}
func (CornerCuts) feature() {}
func (Cut) feature()        {}

// Inner is something inside the cavity: Partition, Baffles, Lobby, Shelf,
// FalseFloor, BeeBlock, and EntrancePlate and Tunnel on the inside of a wall. Its
// parts are named inner/NAME.
type Inner interface{ inner() }

// Partition stands across the cavity from floor to Height, housed into the two
// walls it meets.
type Partition struct {
	Name   string
	Across PartitionRun
	At     MM           // of its middle plane from the cavity's middle: to the right, or to the back
	Above  MM           // from the floor up to its lower edge: open below
	Height MM           // from the floor up to its upper edge; 0 means up to the roof
	Joint  joints.Joint // with the walls; nil means joints.Housing{}; a dry one has room to swell across the grain
	Board  Board        // zero means the design's
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
//
// Its outline is drawn in u and v: v runs along Up, u along Up x Facing, which is
// to the right for somebody who sees the part's outer face. The thickness goes
// from At towards Facing.
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
