package box_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
	"holt.example/box/outline"
)

// dice throws features of every kind that this page's neighbours bring.
type dice struct{ *rand.Rand }

func (r dice) mm(lo, hi float64) box.MM { return box.MM(math.Round(10*(lo+(hi-lo)*r.Float64())) / 10) }

func (r dice) part() box.Part {
	return []box.Part{box.Front, box.Back, box.Left, box.Right, box.Roof, box.Floor, "free/board"}[r.IntN(7)]
}

func (r dice) at() box.Anchor {
	return box.Anchor{Right: r.mm(-40, 40), Up: r.mm(20, 150), Datum: box.Datum(r.IntN(3)), Level: box.Level(r.IntN(4)), Turn: box.Deg(r.mm(-180, 180))}
}

func (r dice) repeat() box.Repeat {
	return box.Repeat{Columns: r.IntN(3), Rows: r.IntN(3), StepRight: r.mm(15, 40), StepUp: r.mm(15, 40), Brick: r.IntN(2) == 0, Centred: r.IntN(2) == 0}
}

func (r dice) shape(s float64) box.Shape {
	switch r.IntN(6) {
	case 0:
		return box.Oval{Width: r.mm(s/2, s), Height: r.mm(s/2, s)}
	case 1:
		return box.Arch{Width: r.mm(s/2, s), Height: r.mm(s/2, s)}
	case 2:
		return box.Regular{Sides: 3 + r.IntN(6), Across: r.mm(s/2, s)}
	case 3:
		return box.Polygon{Points: []box.Point{{X: -box.MM(s) / 2, Y: r.mm(-s/2, 0)}, {X: r.mm(0, s/2), Y: 0}, {X: box.MM(s) / 2, Y: r.mm(s/4, s/2)}, {X: 0, Y: box.MM(s) / 2}}}
	case 4:
		return box.Slot{Width: r.mm(s/2, s), Height: r.mm(s/4, s/2)}
	}
	return box.Round{Diameter: r.mm(s/2, s)}
}

func (r dice) lines() []outline.Path {
	return []outline.Path{{{X: -10, Bulge: r.Float64() - 0.5}, {X: 0, Y: 5, Bulge: r.Float64() - 0.5}, {X: 9, Y: -3}}}
}

func (r dice) feature() box.Feature {
	from, depth := box.CutSide(r.IntN(2)), []box.MM{0, 3, 5}[r.IntN(3)]
	switch r.IntN(9) {
	case 0:
		return box.Cut{On: r.part(), At: r.at(), Shape: r.shape(12), Repeat: r.repeat(), Mirror: r.IntN(2) == 0, Depth: depth, From: from}
	case 1:
		return box.Engrave{On: r.part(), At: r.at(), Lines: r.lines(), Repeat: r.repeat(), Mirror: r.IntN(2) == 0, From: from}
	case 2:
		return box.Text{On: r.part(), At: box.Anchor{Up: r.mm(20, 150)}, Text: fmt.Sprint(r.IntN(99)), From: from}
	case 3:
		return box.Pattern{On: r.part(), At: r.at(), Motif: r.shape(18), Repeat: box.Repeat{StepRight: 24, StepUp: 24, Brick: r.IntN(2) == 0}, Margin: r.mm(0, 12), Clear: r.mm(0.5, 4), Depth: r.mm(1, 4), From: box.FromOuter}
	case 4:
		return box.Pattern{On: r.part(), At: r.at(), Lines: r.lines(), Rings: box.Rings{Count: 1 + r.IntN(3), Each: 3 + r.IntN(9), First: r.mm(10, 20), Step: r.mm(10, 20), Face: r.IntN(2) == 0}, Margin: r.mm(0, 12), Clear: r.mm(0.5, 4), From: from}
	case 5:
		return box.Rail{On: r.part(), At: box.Anchor{Up: r.mm(30, 150)}, Width: r.mm(40, 100), Height: r.mm(10, 50), Balusters: 1 + r.IntN(3), Waist: r.mm(-3, 4), Depth: depth, From: from}
	case 6:
		return box.RoundCorners{On: []box.Part{box.Back, box.Roof, "free/board"}[r.IntN(3)], Corners: [][]box.Corner{nil, {box.UpperLeft}, {box.LowerLeft, box.LowerRight}, {box.UpperLeft, box.UpperRight}}[r.IntN(4)], Radius: r.mm(5, 30), Clip: r.IntN(2) == 0}
	case 7:
		return box.Scallops{On: []box.Part{box.Back, box.Roof, "free/board"}[r.IntN(3)], Edge: box.EdgeSide(r.IntN(4)), Count: 1 + r.IntN(7), Depth: r.mm(1, 9), Form: box.ScallopForm(r.IntN(3)), Inset: r.mm(0, 9)}
	}
	return box.GripGrooves{Spacing: r.mm(8, 20)}
}

// Random features of every kind on a box of random slopes, two or three at a
// time: a plan or problems with good paths; of a plan all meshes are closed,
// and of upright-edged boards the volume is the area of the panel less the cuts,
// the other way round.
func TestRandomMarks(t *testing.T) {
	r := dice{rand.New(rand.NewPCG(3, 14))}
	accepted, thrown := map[string]int{}, map[string]int{}
	for i := 0; i < 700; i++ {
		d := plain.With(func(d *box.Design) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 30}, Above: 180}}
			for range 1 + r.IntN(2) {
				d.Features = append(d.Features, r.feature())
			}
			if r.IntN(4) == 0 {
				d.Features = append(d.Features, box.PartMarks{Box: "17"})
			}
			d.Walls = []box.Wall{{On: box.Back, Above: 80, Below: 50}}
			if r.IntN(3) == 0 {
				d.Roof = box.Pent{Pitch: box.Deg(r.mm(5, 25)), Over: box.Overhangs{All: 35}}
				d.Walls = append(d.Walls, box.Wall{On: box.Left, Lean: box.Deg(r.mm(0, 9))})
			}
			d.Free = []box.Free{{Name: "board", Outline: outline.RoundedRectangle(-90, -50, 90, 150, float64(r.IntN(2)*25)), At: box.Place{Y: -400}}}
		})
		p, ps := tryResolve(t, fmt.Sprint(i), d)
		for _, f := range d.Features[1:] {
			thrown[fmt.Sprintf("%T", f)]++
			if p != nil {
				accepted[fmt.Sprintf("%T", f)]++
			}
		}
		if p == nil {
			for _, x := range ps {
				assert.NotContains(t, []string{"outline", "solid"}, x.Code, "%d: %v\n%+v", i, x, d.Features)
			}
			continue
		}
		for _, q := range p.Pieces() {
			m, err := p.Mesh(q.Part)
			if !assert.NoError(t, err, "%d %s\n%+v", i, q.Part, d.Features) {
				continue
			}
			assert.NoError(t, m.Check(), "%d %s\n%+v", i, q.Part, d.Features)
			assert.InDelta(t, q.Volume, m.Volume(), 1e-6*q.Volume, "%d %s", i, q.Part)
			if q.Part == "free/board" || q.Part == box.Back && len(d.Walls) == 1 {
				v := 15 * q.Panel.Machined.Area()
				for _, op := range q.Panel.Ops {
					if op.InSolid && !op.InOutline {
						v -= op.Region.Area() * float64(op.To-op.From)
					}
				}
				// The free board's own round corners are facets that enclose their
				// true area.
				assert.InDelta(t, v, q.Volume, 0.05, "%d %s\n%+v", i, q.Part, d.Features)
			}
		}
	}
	t.Logf("accepted %v of %v", accepted, thrown)
	for k := range thrown {
		assert.GreaterOrEqual(t, accepted[k], 20, "%s: too few are accepted", k)
	}
	assert.Len(t, thrown, 9)
}
