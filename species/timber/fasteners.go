package timber

import (
	"math"
	"slices"

	"holt.example/joints"
)

// Nail is a bright common wire nail, named by the penny.
type Nail struct {
	Penny            int
	Length, Diameter joints.MM
}

// nails: Wood Handbook (FPL-GTR-282), Table 8-1, p. 8-2.
var nails = []Nail{
	{6, 50.8, 2.87}, {8, 63.5, 3.33}, {10, 76.2, 3.76}, {12, 82.6, 3.76}, {16, 88.9, 4.11}, {20, 101.6, 4.88},
	{30, 114.3, 5.26}, {40, 127.0, 5.72}, {50, 139.7, 6.20}, {60, 152.4, 6.65},
}

// Nails lists common wire nails with diameters, 6d to 60d (Wood Handbook,
// Table 8-1). The result is a copy.
func Nails() []Nail { return slices.Clone(nails) }

// PennyLength is the length of a nail of so many pence, 2 to 10: a quarter inch
// a penny and half an inch more. Above 10 the rule does not hold.
func PennyLength(penny int) (joints.MM, error) {
	if err := within("penny size", float64(penny), 2, 10, "d"); err != nil {
		return 0, err
	}
	return joints.Inch(float64(penny)/4 + 0.5), nil
}

// Screw is a wood screw by its number. Root, Clear, PilotSoft and PilotHard are
// drill sizes of a published table and 0 where it has no row.
type Screw struct {
	Gauge     int
	Shank     joints.MM
	Root      joints.MM // diameter at the bottom of the thread
	Clear     joints.MM // hole for the shank, in the part held
	PilotSoft joints.MM // pilot in softwood, 70 % of the root to a drill in 1/64 in
	PilotHard joints.MM // pilot in hardwood, 90 % of the root
}

// screws: shanks by the Wood Handbook (FPL-GTR-282), Table 8-9, p. 8-12; the
// rest by the pilot table of l36-pilot, in inches.
var screws = []Screw{
	{4, 2.84, in(0.075), in(7.0 / 64), in(3.0 / 64), in(1.0 / 16)},
	{5, 3.18, 0, 0, 0, 0},
	{6, 3.51, in(0.094), in(9.0 / 64), in(1.0 / 16), in(5.0 / 64)},
	{7, 3.84, 0, 0, 0, 0},
	{8, 4.17, in(0.112), in(11.0 / 64), in(5.0 / 64), in(3.0 / 32)},
	{9, 4.50, 0, 0, 0, 0},
	{10, 4.83, in(0.130), in(3.0 / 16), in(3.0 / 32), in(7.0 / 64)},
	{11, 5.16, 0, 0, 0, 0},
	{12, 5.49, in(0.148), in(7.0 / 32), in(7.0 / 64), in(1.0 / 8)},
	{14, 6.15, in(0.165), in(1.0 / 4), in(7.0 / 64), in(9.0 / 64)},
	{16, 6.81, in(0.184), in(17.0 / 64), in(9.0 / 64), in(5.0 / 32)},
	{18, 7.47, 0, 0, 0, 0},
	{20, 8.13, 0, 0, 0, 0},
	{24, 9.45, 0, 0, 0, 0},
}

// in converts inches in the table above.
func in(x float64) joints.MM { return joints.Inch(x) }

// Screws lists wood screws by number. The result is a copy.
func Screws() []Screw { return slices.Clone(screws) }

// Gauge is the shank diameter of a wood screw of a number from 0 to 30:
// 0.060 + 0.013 N inches.
func Gauge(number int) (joints.MM, error) {
	if err := within("screw number", float64(number), 0, 30, ""); err != nil {
		return 0, err
	}
	return joints.Inch(0.060 + float64(0.013*float64(number))), nil
}

// RootShare is the root diameter of a wood screw as a share of its shank: the
// mean over the seven screws of Screws that have both, 0.677, rounded.
const RootShare = 0.68

// Pilot is the least and the largest pilot hole in mm for a screw of a root
// diameter: 70 to 85 % of it in softwood, 90 to 100 % in hardwood. The lower
// shares are the Wood Handbook's (p. 8-10), the higher those of a merchant.
func Pilot(root joints.MM, hardwood bool) (least, most joints.MM, err error) {
	if err := within("root diameter", float64(root), 0.5, 30, "mm"); err != nil {
		return 0, 0, err
	}
	lo, hi := 0.70, 0.85
	if hardwood {
		lo, hi = 0.90, 1.00
	}
	return joints.MM(float64(float64(root) * lo)), joints.MM(float64(float64(root) * hi)), nil
}

// PilotDrill is the drill nearest to a share of the root diameter, half
// upwards, as a number of 1/64 inch: joints.Inch(n / 64) is its size in mm.
func PilotDrill(root joints.MM, share float64) (n float64, err error) {
	if err := first(within("root diameter", float64(root), 0.5, 30, "mm"), within("share", share, 0.1, 1, "")); err != nil {
		return 0, err
	}
	return math.Floor(float64(float64(float64(root)*share)/25.4*64) + 0.5), nil
}

// FastenerLength is the length in mm that a nail or screw should have to hold a
// part of a thickness: 2.5 to 3 times it into side grain; into end grain 3
// times and more, half an inch longer, and at an angle. Sources disagree
// between 2.5 and 3.
func FastenerLength(held joints.MM, endGrain bool) (least, most joints.MM, err error) {
	if err := within("thickness held", float64(held), 0.5, 1000, "mm"); err != nil {
		return 0, 0, err
	}
	if endGrain {
		three := joints.MM(float64(3 * float64(held)))
		return three, three + joints.Inch(0.5), nil
	}
	return joints.MM(float64(2.5 * float64(held))), joints.MM(float64(3 * float64(held))), nil
}

// Distances are the least distances of a fastener, in its own diameters, to an
// unloaded end along the grain and to an unloaded edge across it.
type Distances struct{ End, Edge float64 }

// DistancesFor gives the distances for nails and screws under 12 mm: with a
// pilot hole, or without one into the face, or into the edge of a sheet (LVL
// Handbook, Table 5.1; the same as Eurocode 5 for timber up to 420 kg/m3).
// They are for loads: small boxes have SmallBox.
func DistancesFor(pilot, intoSheetEdge bool) Distances {
	switch {
	case pilot:
		return Distances{7, 3}
	case intoSheetEdge:
		return Distances{15, 7}
	}
	return Distances{10, 5}
}

// EdgeUse is how a fastener stands in the edge of a sheet.
type EdgeUse int

// The uses: nailed without a pilot hole, across the load with one, and along
// the load.
const (
	EdgeNail EdgeUse = iota
	EdgePilot
	EdgeAxial
)

// LargestInEdge is the largest fastener in mm for the edge of a sheet or board
// of a thickness: t/14 nailed, t/6 with a pilot hole, t/8 for a screw that is
// pulled (LVL Handbook, Table 5.2).
func LargestInEdge(thickness joints.MM, use EdgeUse) (joints.MM, error) {
	if err := first(within("thickness", float64(thickness), 0.5, 1000, "mm"), within("use", float64(use), 0, 2, "")); err != nil {
		return 0, err
	}
	return thickness / [...]joints.MM{14, 6, 8}[use], nil
}

// SmallBox is the rule for the edges of small boxes, up to 10 kg, where the
// structural distances ask for more wood than there is: a pilot hole, a
// diameter of at most a quarter of the thickness, centred within a millimetre
// (common practice). It is nil where the fastener keeps to it, else a
// *RangeError for the first thing that does not.
func SmallBox(diameter, thickness, offCentre joints.MM) error {
	return first(
		within("thickness", float64(thickness), 0.5, 1000, "mm"),
		within("fastener diameter", float64(diameter), 0.1, float64(thickness)/4, "mm"),
		within("distance from the middle of the edge", math.Abs(float64(offCentre)), 0, 1, "mm"),
	)
}
