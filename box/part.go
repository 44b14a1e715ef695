package box

import (
	"fmt"

	"holt.example/joints"
)

// MM is a length in millimetres.
type MM = joints.MM

// Deg is an angle in degrees.
type Deg = joints.Deg

// Inch converts inches to millimetres: Inch(1.5) is 38.1.
func Inch(x float64) MM { return joints.Inch(x) }

// Part names a part of a box as it goes together. The names are public and
// stable:
//
//	front back left right     the walls of a rectangle
//	wall/1 ... wall/n         the walls of a polygon, anticlockwise seen from
//	                          above; wall/1 is the front
//	floor roof                the floor; a flat or pent roof
//	roof/front ... roof/n     a roof of several slopes, by the wall it slopes to
//	inner/NAME free/NAME      inner and free parts
//	front/1 ... front/n       the strips of a made-up part, see MadeUp
//	front/tongue/1 ...        its loose tongues
type Part string

// The parts of a rectangular box.
const (
	Front     Part = "front"
	Back      Part = "back"
	Left      Part = "left"
	Right     Part = "right"
	Floor     Part = "floor"
	Roof      Part = "roof"
	RoofFront Part = "roof/front"
	RoofBack  Part = "roof/back"
	RoofLeft  Part = "roof/left"
	RoofRight Part = "roof/right"
)

// Groups of parts, for Design.Boards: a single part's entry beats its group's.
const (
	AllWalls Part = "walls"
	AllRoof  Part = "roofs"
)

// WallN is the n-th wall of a polygon, counted from 1 at the front,
// anticlockwise seen from above.
func WallN(n int) Part { return Part(fmt.Sprintf("wall/%d", n)) }

// RoofN is the roof slope over the n-th wall of a polygon.
func RoofN(n int) Part { return Part(fmt.Sprintf("roof/%d", n)) }

// InnerPart is the inner part of the given name.
func InnerPart(name string) Part { return Part("inner/" + name) }

// FreePart is the free part of the given name.
func FreePart(name string) Part { return Part("free/" + name) }
