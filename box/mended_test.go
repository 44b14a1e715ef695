package box_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
	"holt.example/joints"
)

// Faults that were found and mended, each by its smallest case.

// The default count of fingers steps where the edge is an even multiple of one
// and a half thicknesses: 90 = 4 x 22.5 should be 5 fingers under every roof,
// and is 3 where the edge's end was reckoned at 89.9999999996. The front's
// notches are one for each of the other part's fingers: 2 at each corner.
func TestDefaultCombDoesNotHangOnTheLastDigit(t *testing.T) {
	for _, roof := range []box.RoofForm{box.Flat{}, box.Gable{}, box.Hip{Pitch: 30}} {
		p := resolve(t, box.Design{Name: "comb", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 120, Height: 90},
			Floor: box.NoFloor{}, Roof: roof, Corners: box.Corners{Joint: joints.Comb{}}})
		assert.Len(t, piece(t, p, box.Front).Panel.Ops, 4, "%T", roof)
	}
	// In one box: 280.8 = 18 x 15.6, and left and right come out unlike.
	p := resolve(t, box.Design{Name: "comb", Board: thick(10.4), Size: box.Cavity{Width: 285.4, Depth: 151.5, Height: 280.8},
		Floor: box.NoFloor{}, Roof: box.Hip{Pitch: 30.7, Over: box.Overhangs{All: 5.8}},
		Corners: box.Corners{Joint: joints.Comb{}, Laps: box.Sides}})
	assert.Len(t, piece(t, p, box.Left).Panel.Ops, len(piece(t, p, box.Right).Panel.Ops))
}

// "Each gives its own problem, all in one go": a joint's own fields, those of
// inner parts and of a free part's cuts are looked at only when all else is
// sound; of a free part's Facing and Up, and of a polygon's points, only the
// first fault is told. Smallest: Board.Width NaN and Corners.Joint.Depth NaN.
func TestTwoFaultsAreTwoProblemsEverywhere(t *testing.T) {
	twoFaults(t, func(string) bool { return true })
}

// 1e308 is printed as "1e+308", while joints say "above 1000000000000000":
// written numbers never have an exponent.
func TestProblemsHaveNoExponent(t *testing.T) {
	ps := problems(t, orchard.With(func(d *box.Design) { d.Chord = 1e308 }))
	assert.False(t, strings.Contains(ps.Error(), "e+"), "%v", ps)
}

// An error that unwraps to no errors at all is lost: the problem says that
// nothing is left of a wall, and of a partition nothing is said; the plan
// comes without it.
func TestEmptyErrorOfAJoint(t *testing.T) {
	nonsense(t, "an empty join", func(joints.Corner) (joints.Section, error) { return joints.Section{}, new(none) })
}

// A bevel that comes about between parts that are not neighbours is reported
// under the part's name, which is no path of a design: here the right wall
// leans in over the partition. Likewise "solid" and "outline" problems.
func TestBevelProblemsHaveAPath(t *testing.T) {
	_, ps := tryResolve(t, "partition under a leaning wall", box.Design{Name: "p", Board: thick(12), Size: box.Cavity{Width: 120, Depth: 120, Height: 300},
		Floor: box.FloorBetween{}, Roof: box.Flat{}, Walls: []box.Wall{{On: box.Right, Lean: -8}}, Inner: []box.Inner{box.Partition{Name: "p", At: 30}}})
	assert.NotEmpty(t, ps)
}

// A rebate for a partition takes all of the wall beyond it, since the wall runs
// on past it: it was a "leak" at Joints, "a hole is left where front meet".
func TestPartitionInARebate(t *testing.T) {
	_, ps := tryResolve(t, "rebate", box.Design{Name: "p", Board: thick(15), Size: box.Cavity{Width: 200, Depth: 200, Height: 150},
		Floor: box.FloorBetween{}, Roof: box.Flat{}, Inner: []box.Inner{box.Partition{Name: "p", Joint: joints.Rebate{}}}})
	for _, p := range ps {
		assert.Equal(t, "Inner[0].Partition.Joint", p.Path, "%v", p)
	}
	assert.NotEmpty(t, ps)
}

// "Slices and maps are copied too, so that the original never changes": the
// slices inside features, free parts and footprints are not.
func TestWithLeavesTheOriginalDeepDown(t *testing.T) {
	d, untouched := full(), full()
	d.Footprint, untouched.Footprint = triangle(), triangle()
	d.With(func(d *box.Design) {
		d.Free[0].Cuts[0].Depth = 3
		d.Free[0].Outline[0].X = 3
		d.Features[1].(box.Vents).On[0] = box.Right
		d.Footprint.(box.Polygon).Points[0].X = 3
	})
	assert.Equal(t, untouched, d)
}

func triangle() box.Polygon { return box.Polygon{Points: []box.Point{{X: 0}, {X: 90}, {X: 50, Y: 90}}} }

// Found by FuzzResolve: a comb of two under a gable whose walls have square
// tops, on seven sides: "wall/7: the outline could not be worked out: operand
// is not a region". And its path is the part's name.
func TestOutlineOfCombsUnderSquareTops(t *testing.T) {
	_, ps := tryResolve(t, "heptagon", box.Design{Name: "seven", Board: thick(10.51764705882353), Size: box.Cavity{Height: 126.58823529411765}, Footprint: box.Regular{Sides: 7, Across: 113.33333333333334},
		Floor: box.NoFloor{}, Roof: box.Gable{Rise: 48.23529411764706, Ridge: joints.Mitre{}, Joint: joints.Butt{LapSquare: true, EndSquare: true}, Over: box.Overhangs{Front: 9.411764705882353, All: 1.8823529411764706}},
		Corners: box.Corners{Joint: joints.Comb{Fingers: 2, First: joints.OwnerA}, Laps: box.Sides}})
	for _, p := range ps {
		assert.NotEqual(t, "outline", p.Code, "%v", p)
	}
}

// none is an error that unwraps to nothing.
type none struct{}

func (*none) Error() string   { return "nothing in particular" }
func (*none) Unwrap() []error { return nil }

// A low gable whose ridge is not stated is mitred: butted, the end of one slope
// would be bevelled by 90 - 2 x 14 = 62 degrees.
func TestLowGableIsMitred(t *testing.T) {
	for _, x := range []struct {
		pitch box.Deg
		joint string
	}{{14, "mitre"}, {16, "butt"}} {
		p := resolve(t, box.Design{Name: "low", Board: thick(15), Size: box.Cavity{Width: 200, Depth: 150, Height: 150},
			Floor: box.FloorBetween{}, Roof: box.Gable{Pitch: x.pitch}})
		for _, s := range p.Seams() {
			if s.Over == box.RoofRight && s.Under == box.RoofLeft || s.Over == box.RoofLeft && s.Under == box.RoofRight {
				assert.Equal(t, x.joint, s.Joint, "%v", x.pitch)
			}
		}
	}
}

// The default vents stay clear of the bevelled top of the wall under a steep
// slope: at 45 degrees its outer arris lies a thickness lower.
func TestDefaultVentsUnderSteepRoofs(t *testing.T) {
	for _, roof := range []box.RoofForm{box.Gable{}, box.Hip{}, box.Pent{}, box.Flat{}, box.Gable{Pitch: 60}} {
		resolve(t, box.Design{Name: "vents", Board: thick(18), Size: box.Cavity{Width: 130, Depth: 130, Height: 200},
			Floor: box.FloorBetween{}, Roof: roof, Features: []box.Feature{box.Vents{}}})
	}
}

// What a problem with an opening proposes does.
func TestProposedPlacesDo(t *testing.T) {
	for _, x := range []box.Entrance{
		{Shape: box.Round{Diameter: 32}, Above: 230},
		{Shape: box.Round{Diameter: 32}, Above: 100, Right: 55},
		{Shape: box.Slot{Width: 40, Height: 30}, Above: 300},
	} {
		d := orchard.With(func(d *box.Design) { d.Features = []box.Feature{x} })
		p := problems(t, d)[0]
		var above, right float64
		if n, _ := fmt.Sscanf(p.Try, "Above: %g", &above); n == 1 {
			x.Above = box.MM(above)
		} else if n, _ := fmt.Sscanf(p.Try, "Right: %g", &right); n == 1 {
			x.Right = box.MM(right)
		} else {
			t.Fatalf("%v proposes nothing", p)
		}
		resolve(t, d.With(func(d *box.Design) { d.Features[0] = x }))
	}
}

// A regular footprint is as wide as it was asked to be, to the last digit.
func TestInsideIsWhatWasAsked(t *testing.T) {
	for sides := 3; sides <= 12; sides++ {
		p := resolve(t, box.Design{Name: "n", Board: thick(15), Size: box.Cavity{Height: 200},
			Footprint: box.Regular{Sides: sides, Across: 150}, Floor: box.FloorBetween{}, Roof: box.Flat{}, Corners: box.Corners{Joint: joints.Mitre{}}})
		_, d, h := p.Inside()
		assert.Equal(t, box.MM(200), h)
		if sides%2 == 0 {
			assert.Equal(t, box.MM(150), d)
		}
	}
}

// What was hardly meant is said: thickness in inches, an overhang where the
// wall runs on, a free part in the air, a housed floor at the walls' edge.
func TestDoubts(t *testing.T) {
	code := func(d box.Design) (codes []string) {
		for _, f := range resolve(t, d).Findings() {
			codes = append(codes, f.Code)
		}
		return codes
	}
	assert.Empty(t, code(orchard))
	assert.Contains(t, code(orchard.With(func(d *box.Design) {
		d.Board, d.Corners.Joint = box.Board{Thickness: 0.75}, nil
	})), "thickness-doubt")
	assert.Contains(t, code(orchard.With(func(d *box.Design) { d.Board = box.Board{Thickness: 18, Measured: 13} })), "thickness-doubt")
	assert.Contains(t, code(orchard.With(func(d *box.Design) {
		d.Roof = box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Back: 20}}
	})), "overhang-lost")
	assert.Contains(t, code(terrace.With(func(d *box.Design) {
		d.Free = []box.Free{{Name: "far", Outline: bracket, At: box.Place{X: 400}}}
	})), "stray")
	ps := problems(t, orchard.With(func(d *box.Design) { d.Floor = box.FloorBetween{Joint: joints.Housing{}} }))
	assert.Equal(t, "Floor.FloorBetween.Raise", ps[0].Path)
	ps = problems(t, box.Design{Name: "n", Board: thick(15), Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 6, Across: 150},
		Floor: box.FloorBetween{}, Roof: box.Flat{}, Features: []box.Feature{box.Entrance{On: box.Front, Shape: box.Round{Diameter: 32}, Above: 50}}})
	assert.Equal(t, "wall/1, the front", ps[0].Try)
}
