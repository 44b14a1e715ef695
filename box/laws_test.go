package box_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/outline"
	"holt.example/joints"
)

// someDesigns draws random designs of every kind, made so that nothing in them
// follows from a default that is a fixed number of millimetres: those do not
// scale.
func someDesigns(n int, seed uint64, use func(i int, k anybox.Kinds, d box.Design)) {
	r := rand.New(rand.NewPCG(seed, 77))
	pick := func(s []string) string { return s[r.IntN(len(s))] }
	for i := range n {
		k := anybox.Kinds{Footprint: pick(anybox.Footprints), Roof: pick(anybox.Roofs), Laps: pick(anybox.Laps), Corner: pick(anybox.Corners), Floor: pick(anybox.Floors)}
		d := anybox.Design(r, k)
		d.Chord = 0.02
		switch j := d.Corners.Joint.(type) {
		case joints.Rebate:
			j.Depth = 3
			d.Corners.Joint = j
		case joints.Comb:
			j.Fingers = 5
			d.Corners.Joint = j
		}
		if f, ok := d.Floor.(box.FloorBetween); ok {
			switch f.Joint.(type) {
			case joints.Rebate:
				f.Joint = joints.Rebate{Depth: 3}
			case joints.Housing:
				f.Joint = joints.Housing{Depth: 2.5, Play: 0.2}
			}
			d.Floor = f
		}
		for j, f := range d.Features {
			if _, ok := f.(box.Drains); ok {
				d.Features[j] = box.Drains{Diameter: 8, Inset: 16}
			}
		}
		use(i, k, d)
	}
}

// scaled multiplies every length of a design, wherever it stands.
func scaled(d box.Design, k box.MM) box.Design {
	return scale(reflect.ValueOf(d), float64(k)).Interface().(box.Design)
}

var mmType = reflect.TypeFor[box.MM]()

func scale(v reflect.Value, k float64) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.Float64:
		if v.Type() == mmType {
			out.SetFloat(v.Float() * k)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			out.Field(i).Set(scale(v.Field(i), k))
		}
	case reflect.Interface:
		if !v.IsNil() {
			out.Set(scale(v.Elem(), k))
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
			for i := range v.Len() {
				out.Index(i).Set(scale(v.Index(i), k))
			}
		}
	case reflect.Map:
		if !v.IsNil() {
			out.Set(reflect.MakeMap(v.Type()))
			for _, key := range v.MapKeys() {
				out.SetMapIndex(key, scale(v.MapIndex(key), k))
			}
		}
	}
	return out
}

// Twice as large in everything is eight times the wood. Planes are rounded by
// up to 2^-31 mm in place and 2^-41 of a turn, over parts 600 mm large: 1e-9
// mm times a surface of 600 x 600 x 2 is under 1e-3 mm3, before it is scaled.
func TestScaledBoxHasScaledVolumes(t *testing.T) {
	t.Parallel()
	accepted := 0
	someDesigns(300, 1, func(i int, k anybox.Kinds, d box.Design) {
		p, err := d.Resolve()
		if err != nil {
			return
		}
		by := 1 + float64(i%4)/2 // 1 (nothing moved), 1.5, 2, 2.5
		q, err := scaled(d, box.MM(by)).Resolve()
		if err != nil { // a lip of 6 mm does not scale, but grows with the part
			t.Errorf("%v times %v: %v", k, by, err)
			return
		}
		accepted++
		for _, a := range p.Pieces() {
			b := piece(t, q, a.Part)
			require.InDelta(t, a.Volume*by*by*by, b.Volume, 1e-3*by*by*by, "%v times %v: %s", k, by, a.Part)
			require.InDelta(t, float64(a.Length)*by, float64(b.Length), 1e-6, "%v: %s", k, a.Part)
		}
		for _, kind := range []string{"feature", "play", "square", "run-out"} {
			require.InDelta(t, voidOf(p, kind, "")*by*by*by, voidOf(q, kind, ""), 0.1, "%v: %s", k, kind)
		}
		require.Equal(t, len(p.Groups()), len(q.Groups()), "%v", k)
	})
	assert.Greater(t, accepted, 200)
}

// No thickness moves the cavity: its planes, found in the bodies of the parts,
// stay where they were, whatever the boards.
func TestThicknessLeavesTheCavity(t *testing.T) {
	t.Parallel()
	accepted := 0
	someDesigns(200, 2, func(i int, k anybox.Kinds, d box.Design) {
		p, err := d.Resolve()
		if err != nil {
			return
		}
		r := rand.New(rand.NewPCG(uint64(i), 3))
		q, err := d.With(func(d *box.Design) {
			grow := func(b box.Board) box.Board {
				b.Thickness += box.MM(math.Round(40*r.Float64()-10) / 10) // -1.0 to +3.0
				return b
			}
			d.Board = grow(d.Board)
			for name, b := range d.Boards {
				if k.Corner != "mitre" { // of unlike boards a mitre soon reverses
					d.Boards[name] = grow(b)
				}
			}
		}).Resolve()
		if err != nil {
			return
		}
		accepted++
		require.Equal(t, inside(p), inside(q), "%v", k)
		for _, a := range p.Pieces() {
			h, _ := facesOf(t, p, a.Part)
			g, _ := facesOf(t, q, a.Part)
			require.Equal(t, h, g, "%v: %s", k, a.Part) // to the last bit
			require.Equal(t, a.Nominal, piece(t, q, a.Part).Nominal, "%v: %s", k, a.Part)
		}
	})
	assert.Greater(t, accepted, 120)
}

func inside(p *box.Plan) [3]box.MM {
	w, d, h := p.Inside()
	return [3]box.MM{w, d, h}
}

// The same design gives the same plan, to the last bit, also when its map was
// filled the other way round, and the same meshes.
func TestSamePlanTwice(t *testing.T) {
	t.Parallel()
	accepted := 0
	someDesigns(150, 3, func(i int, k anybox.Kinds, d box.Design) {
		for _, w := range d.Walls { // many entries, so that their order could matter
			d.Boards[w.On] = thick(12)
		}
		d.Boards[box.AllWalls], d.Boards[box.AllRoof] = thick(14), thick(13)
		names := make([]box.Part, 0, len(d.Boards))
		for name := range d.Boards {
			names = append(names, name)
		}
		p, err := d.Resolve()
		again := d.With(func(e *box.Design) {
			e.Boards = map[box.Part]box.Board{}
			for i := range names {
				name := names[len(names)-1-i]
				e.Boards[name] = d.Boards[name]
			}
		})
		q, err2 := again.Resolve()
		require.Equal(t, err, err2, "%v", k)
		if err != nil {
			return
		}
		accepted++
		require.True(t, reflect.DeepEqual(p, q), "%v", k)
		a := p.Pieces()[i%len(p.Pieces())].Part
		m, err := p.Mesh(a)
		n, err2 := q.Mesh(a)
		require.Equal(t, err, err2)
		require.True(t, reflect.DeepEqual(m, n), "%v: %s", k, a)
	})
	assert.Greater(t, accepted, 80)
}

// A design may be resolved, and a plan read, by many at once.
func TestManyAtOnce(t *testing.T) {
	want := resolve(t, orchard)
	mesh, err := want.Mesh(box.Front)
	require.NoError(t, err)
	var wg sync.WaitGroup
	for range 8 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for range 3 {
				p, err := orchard.Resolve()
				assert.NoError(t, err)
				assert.True(t, reflect.DeepEqual(want, p))
				m, err := want.Mesh(box.Front)
				assert.NoError(t, err)
				assert.True(t, reflect.DeepEqual(mesh, m))
				for _, q := range want.Pieces() {
					assert.NotEmpty(t, want.Explain(q.Part))
				}
			}
		}()
	}
	wg.Wait()
}

// full says a little of everything.
func full() box.Design {
	return orchard.With(func(d *box.Design) {
		d.Boards = map[box.Part]box.Board{box.Roof: thick(18)}
		d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Joint: joints.Rebate{Depth: 6}}}
		d.Inner = []box.Inner{box.Partition{Name: "shelf", Height: 60}}
		d.Free = []box.Free{{Name: "batten", Board: thick(20), Outline: outline.Rectangle(0, 0, 40, 40), At: box.Place{Y: 500},
			Cuts: []box.Cut{{At: box.Anchor{Right: 20, Up: 20}, Shape: box.Round{Diameter: 5}}}}}
		d.Features = append(d.Features, box.Vents{On: []box.Part{box.Left}, Diameter: 10})
	})
}

// With leaves the original alone, whatever is done to the copy's slices and
// its map.
func TestWithLeavesTheOriginal(t *testing.T) {
	d, untouched := full(), full()
	e := d.With(func(d *box.Design) {
		d.Name, d.Board.Thickness, d.Chord = "other", 99, 1
		d.Boards[box.Roof], d.Boards[box.Left] = thick(5), thick(5)
		d.Walls[0].Above = 1
		d.Joints[0].Over = box.Back
		d.Inner[0] = nil
		d.Free[0].Name = "other"
		d.Features[0] = box.Drains{}
		d.Walls = append(d.Walls, box.Wall{On: box.Left})
	})
	assert.Equal(t, untouched, d)
	assert.NotEqual(t, d, e)
	assert.Equal(t, "other", e.Name)
	// What With adds to a copy's slice never shows in another copy's.
	one := d.With(func(d *box.Design) { d.Walls = append(d.Walls, box.Wall{On: box.Left}) })
	two := d.With(func(d *box.Design) { d.Walls = append(d.Walls, box.Wall{On: box.Right}) })
	assert.Equal(t, box.Left, one.Walls[1].On)
	assert.Equal(t, box.Right, two.Walls[1].On)
	// A design without a map may be given one.
	assert.Nil(t, orchard.Boards)
	orchard.With(func(d *box.Design) { d.Boards = map[box.Part]box.Board{box.Roof: thick(20)} })
	assert.Nil(t, orchard.Boards)
}

// Resolve leaves the design alone too.
func TestResolveLeavesTheDesign(t *testing.T) {
	d := full()
	resolve(t, d)
	assert.Equal(t, full(), d)
}

// What a plan hands out is a copy: nothing done to it shows in the plan.
func TestPlanHandsOutCopies(t *testing.T) {
	d := full()
	p, untouched := resolve(t, d), resolve(t, d)
	spoil := func(list any) {
		v := reflect.ValueOf(list)
		require.Positive(t, v.Len(), "%T", list)
		v.Index(0).SetZero()
	}
	spoil(p.Pieces())
	spoil(p.Seams())
	spoil(p.Voids())
	spoil(p.Groups())
	spoil(p.Explain(box.Front))
	if fs := p.Findings(); len(fs) > 0 {
		fs[0] = box.Finding{}
	}
	m, err := p.Mesh(box.Front)
	require.NoError(t, err)
	m.Vertices[0].X = 1e6
	n, err := p.Mesh(box.Front)
	require.NoError(t, err)
	assert.NotEqual(t, 1e6, n.Vertices[0].X)
	assert.True(t, reflect.DeepEqual(untouched, p))
}
