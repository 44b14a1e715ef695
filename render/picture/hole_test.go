package picture

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/solid"
)

// eaves are boxes whose roof hides the entrance from above: the deeper the
// eaves, the lower one must look.
func eaves() []box.Design {
	low := pent()
	low.Roof = box.Pent{Pitch: 30, Over: box.Overhangs{Front: 60, Left: 20, Right: 20}}
	low.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}}
	side := hexagon()
	side.Features = []box.Feature{box.Entrance{On: box.WallN(3), Shape: box.Round{Diameter: 28}, Above: 120}}
	twin := pent()
	twin.Features = []box.Feature{
		box.Entrance{Shape: box.Round{Diameter: 28}, Above: 170},
		box.Entrance{On: box.Left, Shape: box.Round{Diameter: 28}, Above: 120},
	}
	return append(designs(), low, side, twin)
}

// The share of the entrances in sight is asked a second way, of the scene that
// the lines are drawn from, and no view of the list shows a tenth more of them
// than the one that is taken.
func TestViewsShowTheEntrance(t *testing.T) {
	lower := 0
	for _, d := range eaves() {
		plan := resolve(t, d)
		solids, _, err := Solids(plan)
		require.NoError(t, err)
		share := func(v View) float64 {
			s := newScene(solids, v)
			sum, n := 0.0, 0.0
			for i := range solids {
				for _, h := range solids[i].Holes {
					if !h.Entrance {
						continue
					}
					n++
					ps := h.points()
					require.Greater(t, len(ps), 20)
					if h.normal().Dot(s.ax.d) <= EdgeOn {
						continue
					}
					for _, p := range ps {
						if !s.behind(p) {
							sum += 1 / float64(len(ps))
						}
					}
				}
			}
			require.Positive(t, n, d.Name)
			return sum / n
		}
		p, err := Assembled(plan, Options{})
		require.NoError(t, err)
		got := share(p.View)
		assert.InDelta(t, got, inSight(p.View, targets(solids, nil), solids), 1e-9, d.Name)
		for _, v := range views {
			assert.LessOrEqual(t, share(v), got+0.1, "%s: %s shows more than %s", d.Name, v.Name, p.View.Name)
		}
		assert.Greater(t, got, 0.4, d.Name)
		if p.View.Up < 30 {
			lower++
		}
	}
	assert.Greater(t, lower, 1, "no entrance here needs a lower view")
}

// The rim of a hole lies in the outer face and goes round it anticlockwise:
// its normal is the part's, whichever face is machined.
func TestRimsLieOutside(t *testing.T) {
	faces := map[box.CutSide]int{}
	for _, d := range eaves() {
		plan := resolve(t, d)
		solids, _, err := Solids(plan)
		require.NoError(t, err)
		for i, q := range plan.Pieces() {
			for _, h := range solids[i].Holes {
				faces[q.Panel.Face]++
				assert.InDelta(t, 1, h.normal().Dot(solids[i].Out), 1e-9, "%s: %s", d.Name, q.Part)
				most := math.Inf(-1)
				for _, v := range solids[i].Mesh.Vertices {
					most = math.Max(most, v.Dot(solids[i].Out))
				}
				for _, v := range h.Rim {
					assert.InDelta(t, most, v.Dot(solids[i].Out), 1e-3, "%s: %s", d.Name, q.Part)
				}
			}
		}
	}
	assert.Positive(t, faces[box.FromInner])
	assert.Positive(t, faces[box.FromOuter])
}

// From straight in front the back shows through the entrance alone: it counts
// as out of sight. Without the hole's help it would have a balloon.
func TestNoBalloonThroughAHole(t *testing.T) {
	d := pent()
	d.Walls = nil
	solids, _, err := Solids(resolve(t, d))
	require.NoError(t, err)
	o := Options{Views: []View{{Name: "front"}}}
	p, err := Draw("x", "y", solids, nil, o)
	require.NoError(t, err)
	assert.Contains(t, p.Hidden, box.Back)
	for i := range solids {
		solids[i].Holes = nil
	}
	p, err = Draw("x", "y", solids, nil, o)
	require.NoError(t, err)
	assert.NotContains(t, p.Hidden, box.Back)
}

// No dot lies in a hole of another part.
func TestDotsKeepOutOfHoles(t *testing.T) {
	looked := 0
	for _, d := range eaves() {
		plan := resolve(t, d)
		solids, _, err := Solids(plan)
		require.NoError(t, err)
		for _, v := range views {
			p, err := Assembled(plan, Options{Views: []View{v}})
			require.NoError(t, err)
			for _, c := range p.Circles {
				if c.Mark != Dot {
					continue
				}
				for _, s := range solids {
					for _, h := range s.Holes {
						if s.Part == c.Part || h.normal().Dot(p.ax.d) < 0.1 {
							continue
						}
						looked++
						assert.False(t, within(p, s.Part, h.Rim, c.Centre) && inFront(p, solids, s.Part, h), "%s, %s: %s is pointed at through %s", d.Name, v.Name, c.Part, s.Part)
					}
				}
			}
		}
	}
	assert.Greater(t, looked, 100)
}

// within asks by the angles that the rim is seen under: they add up to a turn.
func within(p *Picture, part box.Part, rim []solid.Vec, q Point) bool {
	sum := 0.0
	for i := range rim {
		a, b := p.At(part, rim[i]), p.At(part, rim[(i+1)%len(rim)])
		x0, y0, x1, y1 := a.X-q.X, a.Y-q.Y, b.X-q.X, b.Y-q.Y
		sum += math.Atan2(x0*y1-y0*x1, x0*x1+y0*y1)
	}
	return math.Abs(sum) > math.Pi
}

// inFront reports whether nothing hides the hole's middle.
func inFront(p *Picture, solids []Solid, part box.Part, h Hole) bool {
	mid := solid.Vec{}
	for _, v := range h.Rim {
		mid = mid.Add(v.Scale(1 / float64(len(h.Rim))))
	}
	return !shaded(solids, mid, p.ax.d)
}
