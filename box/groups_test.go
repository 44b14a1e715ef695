package box_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// groupOf is the group of a part.
func groupOf(t *testing.T, p *box.Plan, name box.Part) box.Group {
	t.Helper()
	for _, g := range p.Groups() {
		for _, q := range g.Parts {
			if q == name {
				return g
			}
		}
	}
	t.Fatalf("%s is in no group", name)
	return box.Group{}
}

var plainBox = box.Design{Name: "plain", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 140, Height: 200},
	Floor: box.FloorBetween{}, Roof: box.NoRoof{}}

// Left and right are cut from one drawing, one of them turned over, also under
// a pent: the bevel of the top runs through, so that either face may be inside.
func TestSidesAreEqualWhenTurnedOver(t *testing.T) {
	for _, roof := range []box.RoofForm{box.NoRoof{}, box.Flat{}, box.Pent{Pitch: 20}, box.Gable{}, box.Gable{Run: box.LeftToRight}} {
		p := resolve(t, plainBox.With(func(d *box.Design) { d.Roof = roof }))
		g := groupOf(t, p, box.Left)
		assert.Equal(t, []box.Part{box.Left, box.Right}, g.Parts, "%T", roof)
		assert.Zero(t, g.Mirror, "%T", roof)
		l, r := piece(t, p, box.Left), piece(t, p, box.Right)
		assert.Equal(t, l.Panel.Machined, r.Panel.Machined, "%T", roof)
	}
	// Front and back too, where nothing slopes.
	p := resolve(t, plainBox)
	assert.Equal(t, []box.Part{box.Front, box.Back}, groupOf(t, p, box.Front).Parts)
	assert.Len(t, p.Groups(), 3) // and the floor
	// Grain counts: a floor as large as a side and as thick is another item,
	// if its grain runs across. 120 x 120 x 15 with a side 120 wide and high.
	d := box.Design{Name: "cube", Board: thick(15), Size: box.Cavity{Width: 120, Depth: 120, Height: 105}, Floor: box.FloorBetween{}, Roof: box.NoRoof{}}
	p = resolve(t, d)
	assert.Equal(t, []box.Part{box.Left, box.Right, box.Floor}, groupOf(t, p, box.Left).Parts) // a square may be turned to suit
	p = resolve(t, d.With(func(d *box.Design) { d.Size = box.Cavity{Width: 120, Depth: 130, Height: 115} }))
	assert.Equal(t, []box.Part{box.Floor}, groupOf(t, p, box.Floor).Parts) // 120 along the grain x 130; sides 130 x 130
}

// What is worked on one face only, and unlike at its two ends, makes a left
// and a right part.
func TestMirrorPairs(t *testing.T) {
	type pair struct {
		name   string
		change func(*box.Design)
		a, b   box.Part
		mirror bool
	}
	pocket := func(on box.Part, right box.MM) box.Cut {
		return box.Cut{On: on, At: box.Anchor{Right: right, Up: 60}, Shape: box.Round{Diameter: 12}, Depth: 5, From: box.FromInner}
	}
	for _, x := range []pair{
		// A floor housed near the lower end grooves the inner face; with equal
		// vertical edges the side can still be turned about its own length.
		{"grooved", func(d *box.Design) { d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5}} }, box.Left, box.Right, false},
		// With a sloping top it cannot: the slope falls to the front on both.
		{"grooved under a pent", func(d *box.Design) {
			d.Floor, d.Roof = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5}}, box.Pent{Pitch: 20}
		}, box.Left, box.Right, true},
		// The leaning front gives the sides one slanting edge, square through.
		{"beside a leaning wall", func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Lean: 8}} }, box.Left, box.Right, false},
		// Between two leaning sides front and back are equal still; the sides
		// themselves, bevelled at both ends, are equal by a turn upright.
		{"leaning", func(d *box.Design) { d.Walls = []box.Wall{{On: box.Left, Lean: 8}, {On: box.Right, Lean: 8}} }, box.Left, box.Right, false},
		// Leaning sides under a pent: bevelled ends, unlike edges: a pair.
		{"leaning under a pent", func(d *box.Design) {
			d.Walls, d.Roof = []box.Wall{{On: box.Left, Lean: 8}, {On: box.Right, Lean: 8}}, box.Pent{Pitch: 20}
		}, box.Left, box.Right, true},
		// A pocket on the inner face, 30 towards the front of each: seen from
		// outside to the left on the right wall, to the right on the left one.
		{"pockets", func(d *box.Design) {
			d.Features = []box.Feature{pocket(box.Left, 30), pocket(box.Right, -30)}
		}, box.Left, box.Right, true},
		// Both 30 to the right seen from outside: turned by half a turn upright
		// one is the other.
		{"pockets turned", func(d *box.Design) {
			d.Features = []box.Feature{pocket(box.Left, 30), pocket(box.Right, 30)}
		}, box.Left, box.Right, false},
		// A through hole can be seen from either face.
		{"holes", func(d *box.Design) {
			d.Features = []box.Feature{
				box.Cut{On: box.Left, At: box.Anchor{Right: 30, Up: 60}, Shape: box.Round{Diameter: 12}},
				box.Cut{On: box.Right, At: box.Anchor{Right: -30, Up: 60}, Shape: box.Round{Diameter: 12}}}
		}, box.Left, box.Right, false},
	} {
		p := resolve(t, plainBox.With(x.change))
		a, b := groupOf(t, p, x.a), groupOf(t, p, x.b)
		if x.mirror {
			assert.NotEqual(t, a.Number, b.Number, x.name)
			assert.Equal(t, [2]int{b.Number, a.Number}, [2]int{a.Mirror, b.Mirror}, x.name)
			continue
		}
		assert.Equal(t, a.Number, b.Number, x.name)
		assert.Zero(t, a.Mirror, x.name)
	}
	// Neither equal nor mirrored: one has its hole 1 mm elsewhere.
	p := resolve(t, plainBox.With(func(d *box.Design) {
		d.Features = []box.Feature{pocket(box.Left, 30), pocket(box.Right, -31)}
	}))
	assert.NotEqual(t, groupOf(t, p, box.Left).Number, groupOf(t, p, box.Right).Number)
	assert.Zero(t, groupOf(t, p, box.Left).Mirror)
	// Other timber, other item.
	p = resolve(t, plainBox.With(func(d *box.Design) {
		d.Boards = map[box.Part]box.Board{box.Left: {Thickness: 15, Material: "larch"}}
	}))
	assert.NotEqual(t, groupOf(t, p, box.Left).Number, groupOf(t, p, box.Right).Number)
}

// holds reports whether a place lies in a body, and how near to its surface.
func holds(b solid.Body, v solid.Vec) (in bool, surface float64) {
	in, surface = true, math.Inf(1)
	for _, h := range b.Base {
		s := h.At(v)
		in, surface = in && s <= 0, math.Min(surface, math.Abs(s))
	}
	for _, c := range b.Cutters {
		cut := true
		for _, h := range c {
			s := h.At(v)
			cut, surface = cut && s < 0, math.Min(surface, math.Abs(s))
		}
		in = in && !cut
	}
	for _, pr := range b.Prisms {
		q := pr.Frame.In(v)
		at := outline.Point{X: q.X, Y: q.Y}
		surface = math.Min(surface, math.Min(pr.Outline.Distance(at), math.Min(math.Abs(q.Z-pr.From), math.Abs(q.Z-pr.To))))
		if q.Z > pr.From && q.Z < pr.To && pr.Outline.Contains(at, 0) == outline.Inside {
			in = false
		}
	}
	return in, surface
}

// Equal parts share a panel, and the drawing of the first, laid where the
// second's Home says, is the second's solid: place by place, for random boxes
// of every kind. Parts are equal within 1e-3 mm, so places nearer than 0.02 to
// a surface, where a taper of 1e-3 might be seen, are left out.
func TestPanelOfTheFirstIsTheSolidOfTheSecond(t *testing.T) {
	t.Parallel()
	equal, places := 0, 0
	r := rand.New(rand.NewPCG(10, 3))
	someDesigns(300, 5, func(i int, k anybox.Kinds, d box.Design) {
		if i%3 > 0 { // more alike
			d.Boards, d.Features = nil, nil
		}
		p, err := d.Resolve()
		if err != nil {
			return
		}
		seen := map[box.Part]int{}
		for n, g := range p.Groups() {
			require.Equal(t, n+1, g.Number)
			first := piece(t, p, g.Parts[0])
			if g.Mirror != 0 { // a pair points at one another
				require.Equal(t, g.Number, p.Groups()[g.Mirror-1].Mirror, "%v", k)
				require.NotEqual(t, g.Number, g.Mirror)
			}
			for _, name := range g.Parts {
				seen[name]++
				q := piece(t, p, name)
				require.Equal(t, first.Panel.Machined, q.Panel.Machined, "%v: %s", k, name)
				require.Equal(t, first.Panel.Silhouette, q.Panel.Silhouette, "%v: %s", k, name)
				require.Equal(t, len(first.Panel.Ops), len(q.Panel.Ops), "%v: %s", k, name)
				for _, f := range []solid.Frame{q.Home, q.Pose} {
					require.InDelta(t, 1, f.U.Cross(f.V).Dot(f.W), 1e-9, "%v: %s is left-handed", k, name)
				}
				if name == g.Parts[0] {
					continue
				}
				equal++
				e := q.Panel.Silhouette.Extents()
				for range 150 {
					at := solid.Vec{X: e.Min.X + e.Width()*(1.1*r.Float64()-0.05), Y: e.Min.Y + e.Height()*(1.1*r.Float64()-0.05),
						Z: -float64(q.Thickness) * (1.1*r.Float64() - 0.05)}
					a, da := holds(first.Body, first.Home.Out(at))
					b, db := holds(q.Body, q.Home.Out(at))
					if da > 0.02 && db > 0.02 {
						places++
						require.Equal(t, a, b, "%v: %v of %s as of %s", k, at, name, first.Part)
					}
				}
			}
		}
		for _, q := range p.Pieces() {
			require.Equal(t, 1, seen[q.Part], "%v: %s in the groups", k, q.Part)
		}
	})
	assert.Greater(t, equal, 200)
	assert.Greater(t, places, 20000)
}

// Every part's panel, laid by its Home, is its solid: machined outline, far
// outline and operations agree with the body just below the machined face,
// just above the far one, and in the middle of each cut.
func TestPanelIsTheSolid(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(10, 4))
	places := 0
	someDesigns(150, 6, func(i int, k anybox.Kinds, d box.Design) {
		if i%2 > 0 { // alike, so that some are drawn turned over
			d.Boards, d.Features, d.Walls = nil, nil, nil
		}
		p, err := d.Resolve()
		if err != nil {
			return
		}
		for _, q := range p.Pieces() {
			// Home lies on the machined face, and looks out of it.
			inner, outer := facesOf(t, p, q.Part)
			machined := map[box.CutSide]solid.Plane{box.FromInner: inner, box.FromOuter: outer}[q.Panel.Face]
			require.InDelta(t, 1, machined.N.Dot(q.Home.W), 1e-9, "%v: %s", k, q.Part)
			require.InDelta(t, 0, machined.At(q.Home.O), 1e-6, "%v: %s", k, q.Part)
			e := q.Panel.Silhouette.Extents()
			for range 60 {
				at := outline.Point{X: e.Min.X + e.Width()*r.Float64(), Y: e.Min.Y + e.Height()*r.Float64()}
				for _, face := range []struct {
					region outline.Region
					depth  float64
				}{{q.Panel.Machined, 1e-4}, {q.Panel.Far, float64(q.Thickness) - 1e-4}} {
					in, far := face.region.Contains(at, 0) == outline.Inside, face.region.Distance(at)
					for _, op := range q.Panel.Ops {
						if op.InOutline || float64(op.From) > face.depth || float64(op.To) < face.depth {
							continue
						}
						region := op.Region
						if face.depth > 1 && op.Bottom != nil {
							region = op.Bottom
						}
						far = math.Min(far, region.Distance(at))
						in = in && region.Contains(at, 0) != outline.Inside
					}
					if far < 0.01 { // walls slope by up to 60 degrees: 2e-4 over 1e-4
						continue
					}
					places++
					got, _ := holds(q.Body, q.Home.Out(solid.Vec{X: at.X, Y: at.Y, Z: -face.depth}))
					require.Equal(t, in, got, "%v: %s at %v, %v deep", k, q.Part, at, face.depth)
				}
			}
		}
	})
	assert.Greater(t, places, 30000)
}

// swapped changes left and right in a name.
func swapped(p box.Part) box.Part {
	switch {
	case strings.Contains(string(p), "left"):
		return box.Part(strings.Replace(string(p), "left", "right", 1))
	case strings.Contains(string(p), "right"):
		return box.Part(strings.Replace(string(p), "right", "left", 1))
	}
	return p
}

// mirrored is the design seen in a mirror, for rectangles.
func mirrored(d box.Design) box.Design {
	return d.With(func(m *box.Design) {
		for name := range m.Boards {
			delete(m.Boards, name)
		}
		for name, b := range d.Boards {
			m.Boards[swapped(name)] = b
		}
		for i := range m.Walls {
			m.Walls[i].On = swapped(m.Walls[i].On)
		}
		sides := func(o box.Overhangs) box.Overhangs { o.Left, o.Right = o.Right, o.Left; return o }
		switch f := m.Floor.(type) {
		case box.FloorUnder:
			f.Over = sides(f.Over)
			m.Floor = f
		}
		turn := func(over, under box.Part) { m.Joints = append(m.Joints, box.Between{Over: over, Under: under}) }
		switch r := m.Roof.(type) {
		case box.Flat:
			r.Over = sides(r.Over)
			m.Roof = r
		case box.Pent:
			r.Over = sides(r.Over)
			m.Roof = r
		case box.Gable:
			r.Over = sides(r.Over)
			m.Roof = r
			if r.Run == box.FrontToBack { // the right slope laps over
				turn(box.RoofLeft, box.RoofRight)
			}
		case box.Hip:
			r.Over = sides(r.Over)
			m.Roof = r
		}
		if m.Corners.Laps == box.Pinwheel { // each laps over the next one, the other way round
			for i, w := range fourWalls {
				turn(fourWalls[(i+1)%4], w)
			}
		}
		for i, f := range m.Features {
			switch f := f.(type) {
			case box.Entrance:
				f.On, f.Right = swapped(f.On), -f.Right
				m.Features[i] = f
			case box.Cut:
				f.On, f.At.Right = swapped(f.On), -f.At.Right
				m.Features[i] = f
			}
		}
	})
}

// A box and its mirror image have mirrored parts: volumes, sizes, voids, and
// who is equal or mirrored to whom. Combs too, odd and even: they are counted
// from the lower end, which a mirror leaves where it is (counted along nA x nB
// parts came out wrong by up to 24 %: geometry, F1).
func TestMirroredBox(t *testing.T) {
	t.Parallel()
	accepted, kindsSeen := 0, map[string]int{}
	r := rand.New(rand.NewPCG(10, 5))
	pick := func(s []string) string { return s[r.IntN(len(s))] }
	for range 300 {
		k := anybox.Kinds{Footprint: "rectangle", Roof: pick(anybox.Roofs), Laps: pick(anybox.Laps), Corner: pick(anybox.Corners), Floor: pick(anybox.Floors)}
		d := anybox.Design(r, k)
		for i, f := range d.Features {
			if f, ok := f.(box.Entrance); ok {
				f.Right = 15
				d.Features[i] = f
			}
		}
		d.Features = append(d.Features, box.Cut{On: box.Left, At: box.Anchor{Right: 20, Up: 45}, Shape: box.Round{Diameter: 10}, Depth: 2, From: box.CutSide(r.IntN(2))})
		if k.Corner == "comb" {
			d.Corners.Joint = []joints.Joint{joints.Comb{Fingers: 5}, joints.Comb{Fingers: 4, First: joints.OwnerB}}[r.IntN(2)]
		}
		p, err := d.Resolve()
		q, err2 := mirrored(d).Resolve()
		require.Equal(t, err == nil, err2 == nil, "%v: %v, mirrored %v", k, err, err2)
		if err != nil {
			continue
		}
		accepted++
		kindsSeen[k.Roof]++
		require.Equal(t, inside(p), inside(q), "%v", k)
		for _, a := range p.Pieces() {
			b := piece(t, q, swapped(a.Part))
			require.InDelta(t, a.Volume, b.Volume, 1e-3, "%v: %s", k, a.Part)
			require.InDelta(t, float64(a.Length), float64(b.Length), 1e-7, "%v: %s", k, a.Part)
			require.InDelta(t, float64(a.Width), float64(b.Width), 1e-7, "%v: %s", k, a.Part)
			require.Equal(t, len(a.Panel.Ops), len(b.Panel.Ops), "%v: %s", k, a.Part)
		}
		for _, kind := range []string{"feature", "play", "square", "run-out"} {
			require.InDelta(t, voidOf(p, kind, ""), voidOf(q, kind, ""), 1e-2, "%v: %s", k, kind)
		}
		require.Equal(t, partition(p, func(n box.Part) box.Part { return n }), partition(q, swapped), "%v", k)
	}
	assert.Greater(t, accepted, 200)
	assert.Len(t, kindsSeen, len(anybox.Roofs))
}

// partition writes down who is equal and who is mirrored to whom.
func partition(p *box.Plan, name func(box.Part) box.Part) []string {
	say := func(g box.Group) string {
		var ns []string
		for _, n := range g.Parts {
			ns = append(ns, string(name(n)))
		}
		sort.Strings(ns)
		return strings.Join(ns, " ")
	}
	var out []string
	for _, g := range p.Groups() {
		s := say(g)
		if g.Mirror != 0 {
			s += fmt.Sprintf(" mirrors %s", say(p.Groups()[g.Mirror-1]))
		}
		out = append(out, s)
	}
	sort.Strings(out)
	return out
}
