package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

var terrace = box.Design{
	Name: "terrace", Board: thick(15), Size: box.Cavity{Width: 300, Depth: 150, Height: 180},
	Floor: box.FloorBetween{Raise: 10}, Roof: box.Pent{Pitch: 10, Over: box.Overhangs{Front: 30}},
	Inner: []box.Inner{box.Partition{Name: "middle", Board: thick(12)}},
}

func TestPartitionHousedIntoTwoWalls(t *testing.T) {
	// Housed by a third of 15 = 5 into front and back: 150 + 2*5 = 160 along
	// y, up to the roof: 180 at the front end less 5 tan 10 = 179.118365 in the
	// housing, 180 + 155 tan 10 = 207.330682 at the back.
	p := resolve(t, terrace)
	q := piece(t, p, "inner/middle")
	rise := math.Tan(10 * math.Pi / 180)
	assert.InDelta(t, 160, float64(q.Width), 1e-6)
	assert.InDelta(t, 180+155*rise, float64(q.Length), 1e-6)
	// A trapezium 160 wide, 12 thick.
	assert.InDelta(t, 12*160*(180+75*rise), q.Volume, 1e-2)
	for _, w := range []box.Part{box.Front, box.Back} {
		var found *box.Op
		for _, o := range piece(t, p, w).Panel.Ops {
			if o.Guest == "inner/middle" {
				found = &o
			}
		}
		require.NotNil(t, found, "%s has no housing for the partition", w)
		// The grain runs up the wall and so does the channel.
		assert.Equal(t, box.OpGroove, found.Kind)
		assert.InDelta(t, 5.2, float64(found.To-found.From), 1e-6)
		assert.InDelta(t, 12.2, found.Region.Extents().Width(), 1e-6)
	}
	// Play: under the tongue 0.2 x 12.2 at a mean depth of 5.1, beside it 0.2 x
	// 5 at 2.5, each up to the roof's plane there.
	assert.InDelta(t, 2.44*(180-5.1*rise)+1*(180-2.5*rise), voidOf(p, "play", "front/inner/middle"), 1e-3)
	for _, e := range q.Panel.Edges {
		switch e.Neighbour {
		case box.Front, box.Back:
			assert.Equal(t, "housing", e.Joint)
			assert.InDelta(t, 5, float64(e.Adds), 1e-6)
			assert.Contains(t, e.Why, "enters the housing of "+string(e.Neighbour)+" by 5")
		}
	}
	var seams int
	for _, s := range p.Seams() {
		if s.Under == "inner/middle" {
			seams++
			assert.Greater(t, s.Contact, 5.0*175)
		}
	}
	assert.Equal(t, 2, seams)
}

func TestPartitionAcrossAndBelow(t *testing.T) {
	d := terrace.With(func(d *box.Design) {
		d.Inner = []box.Inner{
			box.Partition{Name: "shelf wall", Across: box.RunLeftToRight, At: 30, Height: 100, Joint: joints.Housing{Depth: 4, Tight: true}},
		}
	})
	p := resolve(t, d)
	q := piece(t, p, "inner/shelf wall")
	assert.InDelta(t, 308, float64(q.Width), 1e-6)
	assert.InDelta(t, 100, float64(q.Length), 1e-6)
	assert.InDelta(t, 308*100*15, q.Volume, 1e-2)
	m, err := p.Mesh("inner/shelf wall")
	require.NoError(t, err)
	lo, hi := m.Bounds()
	assert.InDelta(t, 22.5, lo.Y, 1e-6)
	assert.InDelta(t, 37.5, hi.Y, 1e-6)
}

func TestPartitionInTheWall(t *testing.T) {
	d := terrace.With(func(d *box.Design) { d.Inner = []box.Inner{box.Partition{Name: "out", At: 149}} })
	ps := problems(t, d)
	assert.Equal(t, "Inner[0].Partition.At", ps[0].Path)
}

func TestPartitionsThatCross(t *testing.T) {
	d := terrace.With(func(d *box.Design) {
		d.Inner = append(d.Inner, box.Partition{Name: "cross", Across: box.RunLeftToRight})
	})
	assert.Equal(t, "overlap", problems(t, d)[0].Code)
}

func TestCutInAPartition(t *testing.T) {
	d := terrace.With(func(d *box.Design) {
		d.Features = []box.Feature{box.Cut{On: "inner/middle", Shape: box.Round{Diameter: 50}, At: box.Anchor{Up: 60}}}
	})
	q := piece(t, resolve(t, d), "inner/middle")
	whole := piece(t, resolve(t, terrace), "inner/middle")
	assert.InDelta(t, math.Pi*25*25*12, whole.Volume-q.Volume, 1e-3)
}

// bracket is an L: 60 x 60 less a square of 40, its area 3600 - 1600 = 2000.
var bracket = outline.Polygon(
	outline.Point{X: 0, Y: 0}, outline.Point{X: 60, Y: 0}, outline.Point{X: 60, Y: 20},
	outline.Point{X: 20, Y: 20}, outline.Point{X: 20, Y: 60}, outline.Point{X: 0, Y: 60})

func TestFreePartAlone(t *testing.T) {
	d := box.Design{Name: "bracket", Board: thick(15), Free: []box.Free{{Name: "bracket", Outline: bracket,
		Cuts: []box.Cut{{Shape: box.Round{Diameter: 6}, At: box.Anchor{Right: 10, Up: 40}}}}}}
	p := resolve(t, d)
	q := piece(t, p, "free/bracket")
	assert.InDelta(t, (2000-math.Pi*9)*15, q.Volume, 1e-3)
	assert.InDelta(t, 2000, q.Panel.Silhouette.Area(), 1e-6)
	m, err := p.Mesh("free/bracket")
	require.NoError(t, err)
	require.NoError(t, m.Check())
	assert.InDelta(t, q.Volume, m.Volume(), 1e-6)
	assert.Equal(t, 1, m.Genus())
	// It faces the viewer: from y = 0 forward by its thickness, x to the right.
	lo, hi := m.Bounds()
	assert.InDelta(t, -15, lo.Y, 1e-6)
	assert.InDelta(t, 0, hi.Y, 1e-6)
	assert.InDelta(t, 60, hi.X, 1e-6)
	assert.InDelta(t, 0, lo.Z, 1e-6)
}

func TestFreePartWithArcs(t *testing.T) {
	// A plate 80 x 40 with a half-round end of radius 20 and a half-round bite
	// of radius 10: 80*40 + pi*400/2 - pi*100/2.
	o := outline.Contour{{X: 0, Y: 0}, {X: 30, Y: 0, Bulge: -1}, {X: 50, Y: 0}, {X: 80, Y: 0, Bulge: 1}, {X: 80, Y: 40}, {X: 0, Y: 40}}
	p := resolve(t, box.Design{Name: "plate", Board: thick(10), Free: []box.Free{{Name: "plate", Outline: o}}})
	q := piece(t, p, "free/plate")
	assert.InDelta(t, 10*(3200+200*math.Pi-50*math.Pi), q.Volume, 1e-3)
	m, err := p.Mesh("free/plate")
	require.NoError(t, err)
	require.NoError(t, m.Check())
	assert.InDelta(t, q.Volume, m.Volume(), 1e-6*q.Volume)
	assert.InDelta(t, q.Volume/10, q.Panel.Machined.Area(), 1e-6)
}

func TestFreePartInAWallIsAnOverlap(t *testing.T) {
	d := terrace.With(func(d *box.Design) {
		d.Free = []box.Free{{Name: "perch", Outline: outline.Rectangle(-5, -5, 5, 5), At: box.Place{Y: -80, Z: 60}}}
	})
	ps := problems(t, d)
	assert.Equal(t, "overlap", ps[0].Code)
	assert.Equal(t, "Free[0]", ps[0].Path)
	// On the face of the front, 90 out, it is clear of it and touches.
	d.Free[0].At.Y = -90
	resolve(t, d)
}
