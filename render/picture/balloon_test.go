package picture

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"holt.example/box"
)

// pageLaws are what a good page keeps, whatever is on it.
func pageLaws(t require.TestingT, p *Picture) {
	// The frame is the rectangle of the ruled lines; texts are within it.
	lo, hi := Point{p.Width, p.Height}, Point{}
	for _, l := range p.Lines {
		require.Greater(t, l.Length(), 0.0)
		if l.Class == Rule {
			lo = Point{math.Min(lo.X, l.From.X), math.Min(lo.Y, l.From.Y)}
			hi = Point{math.Max(hi.X, l.To.X), math.Max(hi.Y, l.To.Y)}
		}
	}
	require.Greater(t, lo.X, 0.0)
	require.Less(t, hi.X, p.Width)
	for i, a := range p.Texts {
		frameLo, frameHi := lo, hi
		lo, hi := a.Box()
		require.Greater(t, lo.X, frameLo.X, a.S)
		require.Greater(t, lo.Y, frameLo.Y, a.S)
		require.Less(t, hi.X, frameHi.X, a.S)
		require.Less(t, hi.Y, frameHi.Y, a.S)
		for _, b := range p.Texts[:i] {
			l, h := b.Box()
			require.False(t, lo.X < h.X && l.X < hi.X && lo.Y < h.Y && l.Y < hi.Y, "%q over %q", a.S, b.S)
		}
	}
	var rings, dots []Circle
	for _, c := range p.Circles {
		require.GreaterOrEqual(t, c.Centre.X-c.Radius, 0.0)
		require.LessOrEqual(t, c.Centre.X+c.Radius, p.Width)
		require.GreaterOrEqual(t, c.Centre.Y-c.Radius, 0.0)
		require.LessOrEqual(t, c.Centre.Y+c.Radius, p.Height)
		if c.Mark == Balloon {
			rings = append(rings, c)
		} else {
			dots = append(dots, c)
		}
	}
	require.Equal(t, len(rings), len(dots))
	for i, a := range rings {
		for _, b := range rings[:i] {
			require.Greater(t, dist(a.Centre, b.Centre), a.Radius+b.Radius)
		}
	}
	// Leaders: two lines each, from the ring to the dot; none crosses another,
	// or passes through a ring.
	var leaders []Line
	ends := map[box.Part][]Point{}
	for _, l := range p.Lines {
		if l.Class == Leader {
			leaders = append(leaders, l)
			ends[l.Part] = append(ends[l.Part], l.From, l.To)
		}
	}
	require.Equal(t, 2*len(dots), len(leaders))
	for i := range dots {
		e := ends[dots[i].Part]
		require.Len(t, e, 4, dots[i].Part)
		require.InDelta(t, rings[i].Radius, dist(e[0], rings[i].Centre), 1e-9)
		require.Equal(t, e[1], e[2])
		require.Equal(t, dots[i].Centre, e[3])
	}
	for i, a := range leaders {
		for _, b := range leaders[:i] {
			if a.Part != b.Part {
				require.False(t, crossing(a.From, a.To, b.From, b.To), "leaders of %v and %v cross", a.Part, b.Part)
			}
		}
		for _, r := range rings {
			if r.Part != a.Part {
				off := offSegment(pt{r.Centre.X, r.Centre.Y}, pt{a.From.X, a.From.Y}, pt{a.To.X, a.To.Y})
				require.Greater(t, off, r.Radius, "the leader of %v passes through the balloon of %v", a.Part, r.Part)
			}
		}
	}
}

// ends asserts that each dot lies on its own part: the line of sight through
// it meets that part first.
func ends(t require.TestingT, p *Picture, solids []Solid) {
	moved := append([]Solid(nil), solids...)
	for i := range moved {
		moved[i].Shift = p.Moved(moved[i].Part)
	}
	s := newScene(moved, p.View)
	for _, c := range p.Circles {
		if c.Mark == Dot {
			q := pt{(c.Centre.X - p.origin.X) / p.Scale, (p.origin.Y - c.Centre.Y) / p.Scale}
			owner, _ := depthAt(s, q)
			require.GreaterOrEqual(t, owner, 0, c.Part)
			require.Equal(t, c.Part, solids[owner].Part)
		}
	}
}

func TestPageLaws(t *testing.T) {
	for _, v := range views {
		for _, width := range []float64{40, 90, 180, 400} {
			for _, height := range []float64{0, 120, 400} {
				for _, apart := range []bool{false, true} {
					s := gable()
					if apart {
						Explode(s, 1)
					}
					p, err := Draw("orchard gable", "sketch", s, nil, Options{Width: width, Height: height, Views: []View{v}})
					require.NoError(t, err)
					pageLaws(t, p)
					ends(t, p, s)
				}
			}
		}
	}
}

func TestHeapPage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := cells(t)
		for i := range s {
			s[i].Key = rapid.StringN(0, 60, -1).Draw(t, "key")
		}
		o := Options{
			Width:  rapid.Float64Range(60, 300).Draw(t, "width"),
			Height: rapid.Float64Range(100, 300).Draw(t, "height"),
		}
		p, err := Draw(rapid.String().Draw(t, "name"), "heap", s, nil, o)
		require.NoError(t, err)
		pageLaws(t, p)
		ends(t, p, s)
		// Every part has a balloon or is said to be out of sight.
		require.Equal(t, len(s), len(p.Circles)/2+len(p.Hidden))
	})
}

func TestSpread(t *testing.T) {
	// Room for all: nothing moves.
	assert.Equal(t, []float64{10, 30, 50}, spread([]float64{10, 30, 50}, 10, 0, 100))
	// Two that want the same place stand either side of it.
	assert.Equal(t, []float64{45, 55}, spread([]float64{50, 50}, 10, 0, 100))
	// At the end of the column they are pushed back.
	assert.Equal(t, []float64{90, 100}, spread([]float64{120, 130}, 10, 0, 100))
	// Three against one: 0, 10, 20 would be wanted at 15: mean of 15-0, 15-10, 15-20 is 5.
	assert.Equal(t, []float64{5, 15, 25}, spread([]float64{15, 15, 15}, 10, 0, 100))
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(-50, 150), 1, 11).Draw(t, "want")
		for i := 1; i < len(want); i++ {
			want[i] = math.Max(want[i], want[i-1])
		}
		got := spread(want, 9, 0, 100)
		require.Len(t, got, len(want))
		for i, y := range got {
			require.GreaterOrEqual(t, y, -1e-9)
			require.LessOrEqual(t, y, 100+1e-9)
			if i > 0 {
				require.GreaterOrEqual(t, y-got[i-1], 9-1e-9)
			}
		}
	})
}

func TestColumnsDoNotCross(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 20).Draw(t, "n")
		dots := make([]Point, n)
		for i := range dots {
			dots[i] = Point{rapid.Float64Range(30, 150).Draw(t, "x"), rapid.Float64Range(10, 200).Draw(t, "y")}
		}
		place := columns(dots, 10, 170, 10, 200, 9, 7)
		elbow := func(i int) Point {
			if place[i].X == 10 {
				return Point{17, place[i].Y}
			}
			require.Equal(t, 170.0, place[i].X)
			return Point{163, place[i].Y}
		}
		for i := range n {
			for j := range i {
				require.NotEqual(t, place[i], place[j])
				require.False(t, crossing(elbow(i), dots[i], elbow(j), dots[j]))
			}
		}
	})
}

// Forty parts on a page 60 high: twenty balloons a side need 54 mm at their
// usual size there, and key and title leave less. They get smaller.
func TestManyBalloonsGetSmaller(t *testing.T) {
	var s []Solid
	for i := range 40 {
		x := float64(i) * 30
		s = append(s, Solid{Part: box.WallN(i), Number: i + 1, Key: "strip", Mesh: block(x, 0, 0, x+15, 40, 200)})
	}
	p, err := Draw("fence", "x", s, nil, Options{Height: 60})
	require.NoError(t, err)
	require.Len(t, p.Circles, 80)
	pageLaws(t, p)
	ends(t, p, s)
}
