// Package box turns a design into a plan: it is the heart of holt.
//
// A Design is a plain value that says what to make: the cavity (or the outside,
// or the width of the boards), the boards as they were measured, who laps over
// whom and with which joints, floor, roof, inner and free parts, and features.
// Resolve returns a Plan, or every problem that can be seen, each with its
// place in the design, what it got and what would do.
//
// The inside is a solid with named faces. Each face carries one part: a slab
// that starts on the face and goes outward by its measured thickness, so that
// no thickness ever moves the cavity. A joint divides the corner where two
// slabs meet, at any angle; see package joints. The plan proves that no place
// is held by two parts and that every void has an owner.
//
//	d := box.Design{
//		Name:     "first box",
//		Board:    box.Board{Thickness: 18, Measured: 17.8},
//		Size:     box.Cavity{Width: 120, Depth: 120, Height: 220},
//		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}},
//		Floor:    box.FloorBetween{Raise: 10},
//		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}},
//	}
//	plan, err := d.Resolve()
//
// # The world
//
// Lengths are millimetres and angles degrees; Inch converts. x runs to the right
// seen from the front, y away from the viewer, z up; the origin is the middle of
// the cavity floor. Features are placed as seen from outside.
//
// # What there is
//
// Sizes: Cavity, Outside, BoardWidth. Footprints: a rectangle, Regular, Polygon.
// Roofs: Flat, Pent, Gable, Hip, NoRoof. Floors: FloorBetween, FloorUnder,
// NoFloor. Walls lean, stay open, run on above and below; where the boards are
// too narrow, MadeUp makes a part up of strips.
//
// Features are openings (Entrance, Vents, EavesVents, Drains, CornerCuts, Hang),
// edges (Edging, RoundCorners, Scallops, DripGroove), marks (Engrave, Text,
// PartMarks, GripGrooves), patterns (Pattern, Rail) and Cut, to which they come
// down. Opens are the ways in: Hinged, Pivoted, Sliding, Removable, Inspection,
// Stopper, and what keeps them shut. Inner parts are partitions, shelves and
// their like; Outer ones are what a box is hung by and what keeps the weather
// off; Free parts are any outline anywhere. Fixings are rows of screws and nails
// with their holes, Fittings whatever else is to be listed.
//
// The page examples/elements/README.md shows each with its picture.
//
// # Problems and findings
//
// What cannot be made is a Problem, and there is no plan. What can be made and
// should be known is a Finding of the plan. Codes and paths are stable.
package box
