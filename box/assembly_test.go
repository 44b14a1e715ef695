package box_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// square is a box 150 square of boards 15 thick, its walls in a ring of laps.
func square(corner joints.Joint, floor box.FloorForm, roof box.RoofForm) box.Design {
	return box.Design{Name: "square", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
		Corners: box.Corners{Joint: corner, Laps: box.Pinwheel}, Floor: floor, Roof: roof}
}

// steps are the steps of an assembly in words, a line each.
func steps(a box.Assembly) string {
	lines := make([]string, len(a.Steps))
	for i, s := range a.Steps {
		lines[i] = s.String()
	}
	return strings.Join(lines, "\n")
}

// The verdicts of geometry-2.md, section 7.
func TestAssemblyVerdicts(t *testing.T) {
	// Through, a housing is open at the walls' ends; stopped, at neither.
	stopped := ringHousing{joints.Housing{Stop: 15}}
	through := ringHousing{joints.Housing{}}
	between := box.FloorBetween{Raise: 20}
	housed := box.FloorBetween{Raise: 20, Joint: joints.Housing{}}
	for _, tt := range []struct {
		name    string
		d       box.Design
		want    string
		captive string
	}{
		// The rebates in the back end on the slope of the roof, so that they are 1.5
		// deeper where they are deepest: a side cannot go straight into them, it
		// slides along them. Those in the front narrow the other way.
		{"pent with long back", orchard, `
Begin with floor
Add left, moving it to the right
Add back, moving it to the left
Add right, moving it to the left
Add front, moving it to the back
Add roof, moving it down and a little to the back, square to its face`, ""},
		{"gable, floor housed in four walls", box.Design{Name: "gable", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
			Floor: housed, Roof: box.Gable{}}, `
Begin with floor
Add left, moving it to the right
Add right, moving it to the left
Add front, moving it to the back
Add back, moving it to the front
Add roof/left, moving it down and to the right, square to its face
Add roof/right, moving it down and to the left, square to its face`, ""},
		{"pinwheel of through housings", square(through, between, box.NoRoof{}), `
Begin with floor
Add front, moving it to the back
Add left, moving it to the right
Add back, moving it to the front
Add right, moving it down`, ""},
		{"pinwheel of stopped housings", square(stopped, box.NoFloor{}, box.NoRoof{}), `
Begin with front
Add left, moving it to the right
Begin with back
Add right, moving it to the left
Join back and right as one piece to front and left, moving them to the front`, ""},
		{"the same, floor between", square(stopped, between, box.Flat{}), `
Begin with front
Add left, moving it to the right
Begin with back
Add right, moving it to the left
Join back and right as one piece to front and left, moving them to the front
Add floor, moving it up
Add roof, moving it down`, ""},
		{"the same, floor in stopped housings", square(stopped, box.FloorBetween{Raise: 20, Joint: joints.Housing{Stop: 15}}, box.Flat{}), `
Begin with front, back, left, right and floor as one piece
Add roof, moving it down`,
			"front, back, left, right, floor"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			a, err := resolve(t, tt.d).Assembly()
			assert.Equal(t, strings.TrimSpace(tt.want), steps(a))
			if tt.captive == "" {
				require.NoError(t, err)
				assert.Empty(t, a.Captive)
				return
			}
			var p box.Problem
			require.True(t, errors.As(err, &p))
			assert.Equal(t, "captive", p.Code)
			assert.Equal(t, tt.captive, p.Got)
		})
	}
}

// ringHousing lets a wall run on past its neighbour by 15, so that a housing at
// the corner has wood beyond it.
type ringHousing struct{ joints.Housing }

func (j ringHousing) Section(c joints.Corner) (joints.Section, error) {
	c.RunOn += 15
	return j.Housing.Section(c)
}

// A shelf, which is a partition lying down, in stopped housings of two sides:
// fine until the second side is on. With the carcass glued it never goes in.
func TestAssemblyShelf(t *testing.T) {
	d := box.Design{Name: "shelf", Board: thick(15), Size: box.Cavity{Width: 200, Depth: 150, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{}, Walls: []box.Wall{{On: box.Front, Open: true}},
		Inner: []box.Inner{box.Partition{Name: "shelf", Across: box.RunLeftToRight, Height: 120, Joint: joints.Housing{Stop: 10}}}}
	p := resolve(t, d)
	a, err := p.Assembly()
	require.NoError(t, err)
	assert.Equal(t, strings.TrimSpace(`
Begin with floor
Add left, moving it to the right
Add inner/shelf, moving it to the left
Add right, moving it to the left
Add back, moving it to the front
Add roof, moving it down`), steps(a))

	carcass := []box.Part{box.Back, box.Left, box.Right, box.Floor}
	a, err = p.Assembly(carcass)
	assert.Error(t, err)
	assert.Equal(t, [][]box.Part{{box.Back, box.Left, box.Right, box.Floor, "inner/shelf"}}, a.Captive)

	// With housings that run out at the top it drops in.
	d.Inner = []box.Inner{box.Partition{Name: "shelf", Across: box.RunLeftToRight, Joint: joints.Housing{}}}
	a, err = resolve(t, d).Assembly(carcass)
	require.NoError(t, err, "%v", a)

	_, err = p.Assembly([]box.Part{box.Left, "lid"}, []box.Part{box.Left})
	assert.ErrorContains(t, err, `made[0][1]: "lid": the plan has no such part`)
	assert.ErrorContains(t, err, "made[1][0]: left: the part is in one piece already")
}

// A tunnel stands in the entrance: it goes through the hole, and nowhere else.
// The hole counts because it does; facets are no hindrance to a round one.
func TestAssemblyOfATunnel(t *testing.T) {
	for name, shapes := range map[string]struct {
		hole  box.Shape
		plug  outline.Contour
		wants string
	}{
		"square":           {box.Rect{Width: 30.4, Height: 30.4}, outline.Rectangle(-15, -15, 15, 15), ""},
		"round":            {box.Round{Diameter: 30.4}, outline.Circle(outline.Point{}, 30), ""},
		"round, no play":   {box.Round{Diameter: 30}, outline.Circle(outline.Point{}, 30), ""},
		"round in a slot":  {box.Slot{Width: 60, Height: 30.4}, outline.Circle(outline.Point{}, 30), ""},
		"square, no room":  {box.Rect{Width: 30, Height: 30}, outline.Rectangle(-15, -15, 15, 15), ""},
		"waisted, captive": {box.Rect{Width: 20, Height: 30.4}, waisted, "captive"},
	} {
		t.Run(name, func(t *testing.T) {
			d := box.Design{Name: "tunnel", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 120, Height: 240},
				Floor: box.FloorBetween{}, Roof: box.Flat{},
				Features: []box.Feature{box.Cut{On: box.Front, Shape: shapes.hole, At: box.Anchor{Up: 100}}},
			}
			// The middle of the front, 100 over the floor, from 20 before its face to 15
			// inside the box: 50 long.
			d.Free = []box.Free{{Name: "tunnel", Board: thick(50), Outline: shapes.plug, At: box.Place{X: 0, Y: -45, Z: 100}}}
			if shapes.wants != "" { // the same lying across, as wide before and behind as the hole is not
				d.Free[0] = box.Free{Name: "tunnel", Board: thick(30), Outline: waisted, At: box.Place{X: 0, Y: -67.5, Z: 85}, Facing: box.Direction{Z: 1}, Up: box.Direction{Y: 1}}
			}
			p := resolve(t, d)
			a, err := p.Assembly()
			if shapes.wants != "" {
				require.Error(t, err)
				assert.Equal(t, [][]box.Part{{box.Front, "free/tunnel"}}, a.Captive)
				return
			}
			require.NoError(t, err)
			found := false
			for _, s := range a.Steps {
				if len(s.Parts) == 1 && s.Parts[0] == "free/tunnel" && len(s.Onto) > 0 {
					found = true
					assert.Contains(t, []string{"to the front", "to the back"}, s.Way)
				}
			}
			assert.True(t, found, "%s", steps(a))
		})
	}
}

// waisted is 19.6 wide where the wall, 15 thick, is, and 40 on both sides of it.
var waisted = outline.Polygon(
	outline.Point{X: -20, Y: -30}, outline.Point{X: 20, Y: -30}, outline.Point{X: 20, Y: -8}, outline.Point{X: 9.8, Y: -8},
	outline.Point{X: 9.8, Y: 8}, outline.Point{X: 20, Y: 8}, outline.Point{X: 20, Y: 30}, outline.Point{X: -20, Y: 30},
	outline.Point{X: -20, Y: 8}, outline.Point{X: -9.8, Y: 8}, outline.Point{X: -9.8, Y: -8}, outline.Point{X: -20, Y: -8})
