package box

import "holt.example/joints"

// Design says what to make. It is a plain value: write it as a literal, copy
// it, change a copy with With, and turn it into a Plan with Resolve. Nothing
// is checked until then.
//
// One rule holds for zero values throughout: a field has a default other than
// zero only where zero is not legal.
type Design struct {
	// Name stands in lists, file headers and drawings. Required.
	Name string
	// Board is the board that parts are cut from, unless Boards says otherwise.
	Board Board
	// Boards holds exceptions, by part or by group (AllWalls, AllRoof). A
	// single part's entry beats its group's, which beats Board. The Board that an
	// inner, outer or free part states itself beats them all.
	Boards map[Part]Board
	// Size fixes the cavity, the outside, or the width of the boards. It may be
	// missing only when every part is free; features then go onto free parts.
	Size Size
	// Footprint is the shape of the cavity floor; nil is the rectangle that
	// Size gives.
	Footprint Footprint
	// Walls holds what is special about single walls.
	Walls []Wall
	// Corners says how walls meet. The zero value is butted corners with the
	// front and back lapping over the sides.
	Corners Corners
	// Floor and Roof are required; say NoFloor{} or NoRoof{} for none.
	Floor FloorForm
	Roof  RoofForm
	// Joints holds exceptions for single edges.
	Joints []Between
	// Inner parts stand inside the cavity, Outer ones are fixed to the outside,
	// Free parts are anywhere.
	Inner []Inner
	Outer []Outer
	Free  []Free
	// MadeUp says which parts are made up of strips where the board is too narrow.
	MadeUp []MadeUp
	// Features are openings, vents, drains and other cuts.
	Features []Feature
	// Opens are the ways in, and what keeps them shut.
	Opens []Opening
	// Fixings are rows of screws and nails that hold parts together: their holes are
	// cut and they are listed. species.Fasten proposes them.
	Fixings []Fixing
	// Glue is what glued seams are glued with, "class D4" or a kind of glue: it is
	// listed with the area of their faces. "" is not said, and not listed.
	Glue string
	// Fittings are what else the box needs, listed as given after those that its
	// elements ask for: a finish, the screws of a bracket.
	Fittings []Fitting
	// Chord is the largest distance, in mm, between a round feature and its
	// flat facets in meshes; 0 means 0.01. Drawings keep true arcs.
	Chord MM
}

// Board is stock as it is: say what was sold and what was measured.
type Board struct {
	// Thickness is the nominal thickness in mm, 0.5 or more. Required.
	Thickness MM
	// Measured is the thickness found with a gauge; 0 means nominal.
	Measured MM
	// Least and Most are the smallest and largest thickness found where boards
	// differ. Parts are cut for Most, so that they always go together, and
	// what remains beside a rebate is reckoned with Least. 0 means Measured.
	Least, Most MM
	// Width of the board, 0 if it does not matter.
	Width MM
	// Material names the timber, for the list.
	Material string
	// Density in kg/m3, for the mass; 0 leaves the mass out.
	Density float64
	// Grain says how the grain runs in parts cut from this board. The zero
	// value is along the part's usual direction.
	Grain Grain
}

// Grain is the direction of the grain in a part.
type Grain int

// Grain directions. GrainAuto runs up a wall, up a roof slope from eaves to
// ridge, and from side to side in a floor.
const (
	GrainAuto   Grain = iota
	GrainUp           // along the part's v axis: up a wall, up a slope, front to back in a floor
	GrainAcross       // along the part's u axis: side to side
	GrainNone         // sheet stock without a direction that matters
)

// Size says which sizes are fixed: Cavity, Outside or BoardWidth.
type Size interface{ size() }

// Cavity fixes the inside: the usual choice, because it is what the animal
// needs. No thickness ever moves it.
type Cavity struct {
	Width, Depth MM // at the floor; leave both 0 with a Footprint
	Height       MM // from the floor to the lowest inner eaves
}

// Outside fixes the planes of the outer faces: Width and Depth at the walls'
// lower edge, Height from there to the lowest outer eaves line. With a
// Footprint its points are the outer ones and Width and Depth stay 0.
type Outside struct{ Width, Depth, Height MM }

// BoardWidth fixes the width of the boards, so that no wall is ripped: every
// wall of an upright rectangle is exactly Width wide. Another width for the
// sides may be given.
type BoardWidth struct {
	Width  MM // of the front and back, and of the sides unless Sides says otherwise
	Sides  MM // 0 means Width
	Height MM // of the cavity, as in Cavity
}

func (Cavity) size()     {}
func (Outside) size()    {}
func (BoardWidth) size() {}

// Footprint is the shape of the cavity floor: Polygon or Regular.
type Footprint interface{ footprint() }

// Point is a place in the plane: x to the right seen from the front, y away
// from the viewer.
type Point struct{ X, Y MM }

// Polygon is a convex footprint through points, anticlockwise seen from above.
// The wall from the first point to the second is wall/1, the front.
type Polygon struct{ Points []Point }

// Regular is a regular polygon with one side in front. Across is the distance
// from the middle of a side to the opposite side (or corner, if Sides is odd:
// twice the inradius).
type Regular struct {
	Sides  int // 3 to 24
	Across MM
}

func (Polygon) footprint() {}
func (Regular) footprint() {}

// Wall says what is special about one wall.
type Wall struct {
	On    Part
	Lean  Deg  // + opens upward; -60 to 60
	Open  bool // no part here
	Above MM   // runs on above the roof: from the roof's upper face at the wall's inner plane, vertical
	Below MM   // runs on below the floor's underside
}

// Corners says how walls meet.
type Corners struct {
	Joint joints.Joint // nil means joints.Butt{}
	Laps  Laps
}

// Laps says which walls lap over their neighbours.
type Laps int

// The ways in which walls lap.
const (
	FrontBack Laps = iota // front and back lap over the sides; every other wall of a polygon
	Sides                 // the sides lap over the front and back
	Pinwheel              // each wall laps over the next one, anticlockwise seen from above
)
