package box_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
)

// row is one row of screws of 3.5 x 40 without holes, at places of Over.
func row(over, under box.Part, at ...box.Anchor) box.Fixing {
	return box.Fixing{Over: over, Under: under, What: "screw", Diameter: 3.5, Length: 40, At: at}
}

// rowsOf is the small screwed box with these rows in place of its own.
func rowsOf(fs ...box.Fixing) box.Design {
	return screwed().With(func(d *box.Design) { d.Fixings = fs })
}

// A screw does not fly through the cavity: between the inner faces of front and back
// there are 120. One into the floor goes from its end to its middle as well.
func TestFixingLiesOn(t *testing.T) {
	f := row(box.Front, box.Back, box.Anchor{Up: 100})
	f.Length = 170
	p := only(t, "through the cavity", rowsOf(f))
	assert.Equal(t, "Fixings[0].At[0]", p.Path)
	assert.Equal(t, "misses", p.Code)
	assert.Equal(t, "120 between them", p.Got)
	// A dry floor of solid wood, 120 across its grain, falls short of the front by half
	// of what it swells: 120 x 0.25 % x 6 / 2 = 0.9. The screw passes the front's 14.6
	// and no more, and 40 - 14.6 - 0.9 = 24.5 of it are in the floor.
	d := rowsOf(row(box.Front, box.Floor, box.Anchor{Up: -7.3}))
	d.Floor = box.FloorBetween{Dry: true}
	r := resolve(t, d).Fixings()[0]
	assert.InDelta(t, 14.6, float64(r.Held[0]), 1e-9)
	assert.InDelta(t, 24.5, float64(r.In[0]), 1e-9)
}

// The head is on Over, with a hole or without: a batten 40 wide ends at 20 from its
// middle, and a screw of 4 at 60 reaches 60 + 2 - 20 = 42 past that; one in the plate's
// hole of 28 holds nothing, nor does one that goes through the plate into the entrance.
func TestFixingHeadOnItsPart(t *testing.T) {
	d := screwed().With(func(d *box.Design) {
		d.Outer = []box.Outer{box.Batten{Name: "batten", Width: 40, Above: 40, Height: 300, Screws: 1}}
		d.Fixings = []box.Fixing{{Over: "free/batten", Under: box.Back, What: "screw", Diameter: 4, Length: 25, At: []box.Anchor{{Right: 60, Up: 100}}}}
	})
	p := only(t, "beside the batten", d)
	assert.Equal(t, "Fixings[0].At[0]", p.Path)
	assert.Equal(t, "off-part", p.Code)
	assert.Contains(t, p.Why, "reaches 42 past the edge of free/batten")
	resolve(t, d.With(func(d *box.Design) { d.Fixings[0].At[0].Right = 17.5 })) // 0.5 of wood beside it
	only(t, "over its edge", d.With(func(d *box.Design) { d.Fixings[0].At[0].Right = 18.5 }))

	d = screwed().With(func(d *box.Design) {
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 40}, Above: 130}}
		d.Outer = []box.Outer{box.EntrancePlate{Name: "plate", Hole: box.Round{Diameter: 28}, Width: 100, Height: 100}}
	})
	plate := piece(t, resolve(t, d.With(func(d *box.Design) { d.Fixings = nil })), "free/plate")
	d.Fixings = []box.Fixing{{Over: plate.Part, Under: box.Front, What: "screw", Diameter: 4, Length: 25, At: []box.Anchor{{Up: 50}}}}
	_, ps := tryResolve(t, "in both holes", d)
	require.Len(t, ps, 2)
	for k, of := range []string{"Outer[0].EntrancePlate", "Features[0].Entrance"} {
		assert.Equal(t, "Fixings[0].At[0]", ps[k].Path)
		assert.Equal(t, "feature-meets-feature", ps[k].Code)
		assert.Contains(t, ps[k].Why, "runs into the entrance of "+of)
	}
	// At 17 it is clear of the hole by 1, and all of it in the entrance of 40.
	p = only(t, "in the entrance", d.With(func(d *box.Design) { d.Fixings[0].At[0].Right = 17 }))
	assert.Contains(t, p.Why, "runs into the entrance of Features[0].Entrance")
	// A screw of 4 beside the hole of 28: 14 + 2 = 16 from its middle.
	_, ps = tryResolve(t, "at the edge of it", d.With(func(d *box.Design) { d.Fixings[0].At[0].Right = 15.9 }))
	require.NotEmpty(t, ps)
	assert.Contains(t, ps[0].Why, "by 0.1")
	d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 28}, Above: 130}
	resolve(t, d.With(func(d *box.Design) { d.Fixings[0].At[0].Right = 16.1 }))
}

// No two screws share a place, in a row and between rows, with holes or without.
func TestFixingsClearOfOneAnother(t *testing.T) {
	a := box.Anchor{Right: -67.3, Up: 50}
	drilled := screwed().Fixings[0]
	drilled.At = []box.Anchor{a, a}
	nails := row(box.Front, box.Left, box.Anchor{Right: -67.3, Up: 90}, a)
	nails.What, nails.Diameter = "nail", 2.5
	for name, c := range map[string]struct {
		path, got string
		rows      []box.Fixing
	}{
		"twice in a row":       {"Fixings[0].At[1]", "0 apart", []box.Fixing{row(box.Front, box.Left, a, a)}},
		"drilled twice":        {"Fixings[0].At[1]", "0 apart", []box.Fixing{drilled}},
		"nails on screws":      {"Fixings[1].At[1]", "0 apart", []box.Fixing{row(box.Front, box.Left, a), nails}},
		"3 between two of 3.5": {"Fixings[0].At[1]", "3 apart", []box.Fixing{row(box.Front, box.Left, a, box.Anchor{Right: -67.3, Up: 53})}},
		// Square to one another in the floor, 25.4 deep in it each, at (-50, -50) both: one
		// 2 under its middle, one 1 over it.
		"crossing": {"Fixings[1].At[0]", "3 apart", []box.Fixing{row(box.Front, box.Floor, box.Anchor{Right: -50, Up: -9.3}), row(box.Left, box.Floor, box.Anchor{Right: 50, Up: -6.3})}},
	} {
		p := only(t, name, rowsOf(c.rows...))
		assert.Equal(t, "fixing-meets-fixing", p.Code, name)
		assert.Equal(t, c.path, p.Path, name)
		assert.Equal(t, c.got, p.Got, name)
	}
	// 4 apart there is room for two halves of 3.5.
	resolve(t, rowsOf(row(box.Front, box.Floor, box.Anchor{Right: -50, Up: -9.3}), row(box.Left, box.Floor, box.Anchor{Right: 50, Up: -5.3})))
	resolve(t, rowsOf(row(box.Front, box.Left, a, box.Anchor{Right: -67.3, Up: 54})))
}

// A row over strips holds each by the screws in it. The front, 149.2 wide, is made up
// of three strips of 49.7 from boards of 60: of screws at -50, -30, 0 two are in the
// first, 20 apart, one in the second, and none in the third.
func TestFixingsOfStrips(t *testing.T) {
	d := rowsOf(row(box.Front, box.Floor, box.Anchor{Right: -50, Up: -7.3}, box.Anchor{Right: -30, Up: -7.3}, box.Anchor{Up: -7.3}))
	d.MadeUp = []box.MadeUp{{Of: box.Front, Width: 60}}
	p := resolve(t, d)
	hold := joints.Hold{Kind: "screw", Note: "through front into floor", Diameter: 3.5, Length: 40}
	two, one := hold, hold
	two.Count, two.Spacing, one.Count = 2, 20, 1
	assert.Equal(t, []joints.Hold{two}, seamOf(t, p, "front/1", box.Floor).Holds)
	assert.Equal(t, []joints.Hold{one}, seamOf(t, p, "front/2", box.Floor).Holds)
	assert.Empty(t, seamOf(t, p, "front/3", box.Floor).Holds)
	// And where what they go into is strips: the floor's three, 40 each from the front
	// to the back, of boards of 50, each get one from the left side.
	d = rowsOf(row(box.Left, box.Floor, box.Anchor{Right: -40, Up: -7.3}, box.Anchor{Up: -7.3}, box.Anchor{Right: 40, Up: -7.3}))
	d.MadeUp = []box.MadeUp{{Of: box.Floor, Width: 50}}
	p = resolve(t, d)
	one.Note = "through left into floor"
	for _, q := range []box.Part{"floor/1", "floor/2", "floor/3"} {
		assert.Equal(t, []joints.Hold{one}, seamOf(t, p, box.Left, q).Holds)
	}
}
