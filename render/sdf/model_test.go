package sdf

import (
	"math"
	"math/rand/v2"
	"runtime"
	"testing"

	"github.com/deadsy/sdfx/sdf"
	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/solid"
)

func sameBox(t *testing.T, want, got sdf.Box3) {
	t.Helper()
	assert.InDelta(t, 0, want.Min.Sub(got.Min).Length(), 1e-9)
	assert.InDelta(t, 0, want.Max.Sub(got.Max).Length(), 1e-9)
}

func at(m sdf.SDF3, x, y, z float64) float64 { return m.Evaluate(v3.Vec{X: x, Y: y, Z: z}) }

func TestPlateByHand(t *testing.T) {
	m, err := Body(plate())
	require.NoError(t, err)
	for _, c := range []struct {
		why        string
		x, y, z, d float64
	}{
		{"middle of the board's left end: 6 to either face", 12, 35, 6, -6},
		{"2 off the end", 2, 35, 6, -2},
		{"3 outside the end", -3, 35, 6, 3},
		{"axis of the hole: 10 to its wall", 30, 35, 6, 10},
		{"in the hole, 4 from its wall", 36, 35, 6, 4},
		{"in the wood, 1 from the hole's wall", 41, 35, 6, -1},
		{"over the slot's middle: 6 to its walls, 2 to its floor at 7", 70, 35, 9, 2},
		{"under the slot, 2 from its floor", 70, 35, 5, -2},
		{"beside the slot's round end, x = 79+6+2, 2 from it", 87, 35, 10, -2},
		{"in the rebate (y < 8, z > 6), 1 from its side", 50, 7, 9, 1},
		{"in the rebate, 2 from its floor", 50, 3, 8, 2},
		{"under the rebate, 2 from its floor", 50, 3, 4, -2},
	} {
		assert.InDelta(t, c.d, at(m, c.x, c.y, c.z), 1e-9, c.why)
	}
	sameBox(t, sdf.Box3{Max: v3.Vec{X: 100, Y: 60, Z: 12}}, m.BoundingBox())
}

// A cell of the grid is counted wrongly only near the surface: a face along
// the grid is off by half a cell at most, a slanted one by less.
func TestPlateVolume(t *testing.T) {
	m, err := Body(plate())
	require.NoError(t, err)
	mesh, err := plate().Mesh(0.01)
	require.NoError(t, err)
	v, area := meshFigures(mesh)
	const cell = 0.5
	assert.InDelta(t, plateVolume, v, 1e-3)
	assert.InDelta(t, v, sampled(m, cell), area*cell/2)
}

func TestPartsHaveThePlansVolume(t *testing.T) {
	plan := resolved(t)
	for _, q := range plan.Pieces() {
		m, err := PartModel(plan, q.Part)
		require.NoError(t, err)
		mesh, err := plan.Mesh(q.Part)
		require.NoError(t, err)
		v, area := meshFigures(mesh)
		const cell = 1.0
		got := sampled(m, cell)
		assert.InDelta(t, v, got, area*cell/2, q.Part)
		assert.InDelta(t, float64(q.Volume), got, area*cell/2, q.Part)
	}
}

// inside counts the triangles of a mesh that a ray from p crosses; it reports
// false for ok where the ray passes too near an edge to be sure.
func inside(m *solid.Mesh, p solid.Vec, dir solid.Vec) (in, ok bool) {
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		e1, e2 := b.Sub(a), c.Sub(a)
		h := dir.Cross(e2)
		det := e1.Dot(h)
		if math.Abs(det) < 1e-9 {
			continue
		}
		s := p.Sub(a)
		u := s.Dot(h) / det
		q := s.Cross(e1)
		v := dir.Dot(q) / det
		if d := e2.Dot(q) / det; d <= 0 {
			continue
		}
		if u < -1e-9 || v < -1e-9 || u+v > 1+1e-9 {
			continue
		}
		if u < 1e-9 || v < 1e-9 || u+v > 1-1e-9 {
			return false, false
		}
		in = !in
	}
	return in, true
}

// offTriangle is the distance from a point to a triangle, by the nearest of
// the foot on its plane and its three sides.
func offTriangle(p, a, b, c solid.Vec) float64 {
	n := b.Sub(a).Cross(c.Sub(a)).Unit()
	foot := p.Sub(n.Scale(n.Dot(p.Sub(a))))
	in := true
	d := math.Inf(1)
	for _, e := range [3][2]solid.Vec{{a, b}, {b, c}, {c, a}} {
		w := e[1].Sub(e[0])
		if n.Dot(w.Cross(foot.Sub(e[0]))) < 0 {
			in = false
		}
		k := math.Max(0, math.Min(1, p.Sub(e[0]).Dot(w)/w.Dot(w)))
		d = math.Min(d, p.Sub(e[0].Lerp(e[1], k)).Len())
	}
	if in {
		d = math.Min(d, p.Sub(foot).Len())
	}
	return d
}

// Points agree with the mesh about inside and outside, and no value is farther
// from zero than the mesh is off, give or take the chord.
func TestAgreesWithTheMesh(t *testing.T) {
	plan := resolved(t)
	bodies := map[string]solid.Body{"plate": plate()}
	for _, q := range plan.Pieces() {
		bodies[string(q.Part)] = q.Body
	}
	for name, b := range bodies {
		const chord = 0.02
		m, err := Body(b)
		require.NoError(t, err)
		mesh, err := b.Mesh(chord)
		require.NoError(t, err)
		box := m.BoundingBox()
		size := box.Size()
		r := rand.New(rand.NewPCG(1, 2))
		dir := solid.Vec{X: 0.31, Y: 0.47, Z: 0.83}.Unit()
		asked, within := 0, 0
		for range 1500 {
			p := solid.Vec{
				X: box.Min.X + size.X*(1.2*r.Float64()-0.1),
				Y: box.Min.Y + size.Y*(1.2*r.Float64()-0.1),
				Z: box.Min.Z + size.Z*(1.2*r.Float64()-0.1),
			}
			f := m.Evaluate(v3.Vec(p))
			off := math.Inf(1)
			for _, q := range mesh.Triangles {
				off = math.Min(off, offTriangle(p, mesh.Vertices[q[0]], mesh.Vertices[q[1]], mesh.Vertices[q[2]]))
			}
			// The mesh is within the chord of the true surface.
			require.LessOrEqual(t, math.Abs(f), off+chord, "%s at %v", name, p)
			in, ok := inside(mesh, p, dir)
			if !ok || off < chord {
				continue
			}
			asked++
			if in {
				within++
			}
			require.Equal(t, in, f < 0, "%s at %v: %v", name, p, f)
		}
		assert.Greater(t, asked, 1300, name) // near the surface there are few
		assert.Greater(t, within, 100, name)
	}
}

// The value changes by at most the way gone: what sdfx's octree renderers
// count on when they leave out a cube.
func TestNeverOverstatesDistance(t *testing.T) {
	plan := resolved(t)
	m, err := Model(plan)
	require.NoError(t, err)
	front, err := PartModel(plan, box.Front)
	require.NoError(t, err)
	box := m.BoundingBox()
	size := box.Size()
	r := rand.New(rand.NewPCG(3, 4))
	place := func() v3.Vec {
		return v3.Vec{
			X: box.Min.X + size.X*(1.6*r.Float64()-0.3),
			Y: box.Min.Y + size.Y*(1.6*r.Float64()-0.3),
			Z: box.Min.Z + size.Z*(1.6*r.Float64()-0.3),
		}
	}
	met := 0
	for range 5000 {
		// Towards a point where the model changes its sign, |f| is at most the way.
		p, q := place(), place()
		fp, fq := m.Evaluate(p), m.Evaluate(q)
		if (fp < 0) != (fq < 0) {
			met++
			require.LessOrEqual(t, math.Abs(fp), p.Sub(q).Length())
			require.LessOrEqual(t, math.Abs(fq), p.Sub(q).Length())
		}
		// And step by step, in a single part (in the union, parts left out
		// may make a step that is on the safe side).
		near := p.Add(v3.Vec{X: r.Float64(), Y: r.Float64(), Z: r.Float64()})
		require.LessOrEqual(t, math.Abs(front.Evaluate(p)-front.Evaluate(near)), p.Sub(near).Length()*(1+1e-9)+1e-9)
	}
	assert.Greater(t, met, 100)
}

// Far outside and deep inside, the union is that of its parts.
func TestUnion(t *testing.T) {
	plan := resolved(t)
	all, err := Model(plan)
	require.NoError(t, err)
	var parts []sdf.SDF3
	for _, q := range plan.Pieces() {
		m, err := PartModel(plan, q.Part)
		require.NoError(t, err)
		parts = append(parts, m)
	}
	r := rand.New(rand.NewPCG(5, 6))
	for range 3000 {
		p := v3.Vec{X: 400*r.Float64() - 200, Y: 400*r.Float64() - 200, Z: 500*r.Float64() - 100}
		least := math.Inf(1)
		for _, m := range parts {
			least = math.Min(least, m.Evaluate(p))
		}
		f := all.Evaluate(p)
		require.Equal(t, least < 0, f < 0)
		// Leaving out far parts can only bring the value nearer to the truth.
		require.GreaterOrEqual(t, f, least)
		if least < 0 {
			require.Equal(t, least, f)
		}
	}
	// The cavity is empty: its middle is 60 from the walls.
	assert.InDelta(t, 60, at(all, 0, 0, 100), 1e-6)
	two, err := Model(plan, box.Front, box.Back)
	require.NoError(t, err)
	// The right side is there or not.
	assert.Greater(t, at(two, 67, 0, 100), 0.0)
	assert.Less(t, at(all, 67, 0, 100), 0.0)
}

func TestPose(t *testing.T) {
	m, err := Body(plate())
	require.NoError(t, err)
	from := solid.World()
	// Turned a quarter about z and lifted by 5: (x, y, z) goes to (-y, x, z+5).
	to := solid.Frame{O: solid.Vec{Z: 5}, U: solid.Vec{Y: 1}, V: solid.Vec{X: -1}, W: solid.Vec{Z: 1}}
	q := moved(m, from, to)
	assert.InDelta(t, at(m, 30, 35, 6), at(q, -35, 30, 11), 1e-12)
	sameBox(t, sdf.Box3{Min: v3.Vec{X: -60, Z: 5}, Max: v3.Vec{Y: 100, Z: 17}}, q.BoundingBox())
}

func TestErrors(t *testing.T) {
	plan := resolved(t)
	_, err := Model(nil)
	assert.Error(t, err)
	_, err = PartModel(nil, box.Front)
	assert.Error(t, err)
	_, err = PartModel(plan, "lid")
	assert.ErrorContains(t, err, `"lid"`)
	_, err = Model(plan, box.Front, "lid")
	assert.ErrorContains(t, err, `"lid"`)
	_, err = Body(solid.Body{Base: cuboid(1, 1, 1)[:5]})
	assert.ErrorContains(t, err, "do not bound")
	_, err = Body(solid.Body{Base: cuboid(1, -1, 1)})
	assert.ErrorContains(t, err, "nothing")
	_, err = Body(solid.Body{Base: cuboid(1, 1, 1), Prisms: []solid.Prism{{Frame: solid.World(), Outline: slot(), From: 1, To: 1}}})
	assert.ErrorContains(t, err, "no height")
	_, err = Body(solid.Body{Base: cuboid(1, 1, 1), Prisms: []solid.Prism{{Frame: solid.World(), From: 0, To: 1}}})
	assert.ErrorContains(t, err, "outline")
}

func TestNoGoroutines(t *testing.T) {
	plan := resolved(t)
	before := runtime.NumGoroutine()
	m, err := Model(plan)
	require.NoError(t, err)
	m.Evaluate(v3.Vec{})
	assert.Equal(t, before, runtime.NumGoroutine())
}

func BenchmarkEvaluate(b *testing.B) {
	m, err := Model(resolved(b))
	require.NoError(b, err)
	box := m.BoundingBox()
	size := box.Size()
	r := rand.New(rand.NewPCG(7, 8))
	ps := make([]v3.Vec, 1024)
	for i := range ps {
		ps[i] = v3.Vec{X: box.Min.X + size.X*r.Float64(), Y: box.Min.Y + size.Y*r.Float64(), Z: box.Min.Z + size.Z*r.Float64()}
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		m.Evaluate(ps[i%len(ps)])
	}
}
