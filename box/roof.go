package box

import "holt.example/joints"

type joint = joints.Joint

// RoofForm is the form of the roof: Flat, Pent, Gable, Hip or NoRoof.
type RoofForm interface{ roof() }

// Overhangs are horizontal, from the outer face of each wall to the roof's
// edge. Zero is flush. On a polygon Front belongs to wall/1 and All to the
// others; All also fills the sides that are left 0 on a rectangle.
type Overhangs struct{ Front, Back, Left, Right, All MM }

// Tops says how the upper edge of a wall under a slope is cut. Over a pitch of 60
// the bevels of tops and ends are steeper than can be sawn: then both are left square,
// and the roof overhangs.
type Tops int

// The ways to cut wall tops.
const (
	Bevelled   Tops = iota // to the slope: the roof lies on the whole edge
	SquareTops             // left square: a wedge stays open beside the roof
)

// RoofEnds says how the lower and upper ends of a roof board are cut.
type RoofEnds int

// The ways to cut the ends of roof boards.
const (
	Plumb      RoofEnds = iota // parallel to the wall: upright where the wall is
	SquareEnds                 // at right angles to the board
)

// Flat is a level roof.
type Flat struct {
	Over  Overhangs
	Joint joints.Joint // with the walls; nil means butt
}

// Pent is one slope, rising from the front to the back. Give Pitch or Rise.
type Pent struct {
	Pitch Deg // 1 to 60, to 75 with square tops and ends; 0 means 10, unless Rise is given
	Rise  MM  // over the inside depth at the floor
	Over  Overhangs
	Tops  Tops
	Ends  RoofEnds
	Joint joints.Joint // with the walls; nil means butt
}

// RidgeRun is the way the ridge of a gable runs.
type RidgeRun int

// The ways a ridge can run.
const (
	FrontToBack RidgeRun = iota // slopes to the left and right
	LeftToRight                 // slopes to the front and back
)

// Gable is two slopes with a ridge in the middle.
type Gable struct {
	Pitch Deg // 1 to 60, to 75 with square tops and ends; 0 means 45, unless Rise is given
	Rise  MM  // of the inner ridge over the inner eaves, half the inside width at the floor being the run
	Run   RidgeRun
	Ridge joints.Joint // nil means butt, the right or back slope lapping over, or the one that is Hinged; a mitre below 15 degrees, where a butt cannot be sawn
	Over  Overhangs
	Tops  Tops
	Ends  RoofEnds     // at the eaves
	Joint joints.Joint // with the walls; nil means butt
}

// Hip is a slope over every wall.
type Hip struct {
	Pitch Deg // 1 to 60, to 75 with square tops and ends; 0 means 45, unless Rise is given
	// SidePitch is the pitch of the left and right slopes of a rectangle; 0
	// means Pitch. Unequal pitches leave the eaves at different heights.
	SidePitch Deg
	// Level shortens the overhang of the steeper slopes until all eaves are level.
	Level bool
	Rise  MM           // of the inner apex or ridge over the inner eaves, half the smaller inside size at the floor being the run
	Hips  joints.Joint // between slopes; nil means mitre
	Over  Overhangs
	Tops  Tops
	Ends  RoofEnds
	Joint joints.Joint // with the walls; nil means butt
}

// NoRoof leaves the top open.
type NoRoof struct{}

func (Flat) roof()   {}
func (Pent) roof()   {}
func (Gable) roof()  {}
func (Hip) roof()    {}
func (NoRoof) roof() {}

// FloorForm is the form of the floor: FloorBetween, FloorUnder or NoFloor.
type FloorForm interface{ floor() }

// FloorBetween puts the floor between the walls.
type FloorBetween struct {
	// Raise is from the walls' lower edge to the floor's underside; 0 is flush.
	Raise MM
	// Joint with the walls: nil means butt; joints.Housing{} houses the floor
	// in all walls, joints.Rebate{} sets it in a rebate round the lower edge.
	Joint joints.Joint
	// Dry leaves out the glue, so that the floor may swell and shrink across its
	// grain; a housing may say the same by itself.
	Dry bool
	// Play is the gap between the floor and each wall: in a butt or a rebate it
	// falls short by so much, in a housing there is so much room under its edge. 0
	// means what is right: none for a floor that is held fast, none along the
	// grain and none for sheet stock, and on both sides across the grain of a dry
	// floor half of what solid wood swells over 6 % of moisture, at 0.25 % for 1 %
	// (EN 1313-1): 0.9 at each wall of a floor 120 deep. A Swell of the housing
	// beats it.
	Play MM
}

// FloorUnder puts the floor under the walls.
type FloorUnder struct {
	Over  Overhangs
	Joint joints.Joint // nil means butt
}

// NoFloor leaves the bottom open.
type NoFloor struct{}

func (FloorBetween) floor() {}
func (FloorUnder) floor()   {}
func (NoFloor) floor()      {}

// Between is the joint on one edge: Over laps over Under. Nil keeps the joint
// that the edge would have and only turns it round.
type Between struct {
	Over, Under Part
	Joint       joints.Joint
	// Holds say what keeps the edge together in place of what its joint says: glue,
	// screws, nails, or "dry" by itself for nothing. nil is as the joint says.
	Holds []joints.Hold
}
