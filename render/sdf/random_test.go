package sdf

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/solid"
)

// someDesigns resolves n random designs of every footprint, roof, lap, corner
// and floor in turn.
func someDesigns(t *testing.T, n int, do func(*box.Plan, *rand.Rand)) {
	r := rand.New(rand.NewPCG(11, 26))
	for i, done := 0, 0; done < n; i++ {
		require.Less(t, i, 2*n, "half of the designs refused")
		k := anybox.Kinds{
			Footprint: anybox.Footprints[i%3], Roof: anybox.Roofs[i/3%5], Laps: anybox.Laps[i/15%3],
			Corner: anybox.Corners[i/45%4], Floor: anybox.Floors[i%5],
		}
		if p, err := anybox.Design(r, k).Resolve(); err == nil {
			do(p, r)
			done++
		}
	}
}

// holds is the third opinion: whether a place lies in the wood, from the
// half-spaces of the body; sure is false within 1e-6 of a plane.
func holds(b solid.Body, p solid.Vec) (in, sure bool) {
	sure = true
	all := func(hs []solid.Plane) bool {
		ok := true
		for _, h := range hs {
			s := h.At(p)
			sure = sure && (s > 1e-6 || s < -1e-6)
			ok = ok && s < 0
		}
		return ok
	}
	in = all(b.Base)
	for _, c := range b.Cutters {
		if all(c) {
			in = false
		}
	}
	return in, sure
}

// Points all over every design lie inside the distance model exactly where
// they lie inside the half-spaces, and never inside two parts.
func TestRandomDesignsInsideAndOutside(t *testing.T) {
	points, inWood := 0, 0
	n := 1000
	if testing.Short() {
		n = 100
	}
	someDesigns(t, n, func(p *box.Plan, r *rand.Rand) {
		var models []func(v3.Vec) float64
		var bodies []solid.Body
		lo, hi := v3.Vec{X: 1e9, Y: 1e9, Z: 1e9}, v3.Vec{X: -1e9, Y: -1e9, Z: -1e9}
		for _, q := range p.Pieces() {
			q.Body.Prisms = nil // their outlines are proved in prism_test.go
			m, err := Body(q.Body)
			require.NoError(t, err)
			models, bodies = append(models, m.Evaluate), append(bodies, q.Body)
			lo, hi = lo.Min(m.BoundingBox().Min), hi.Max(m.BoundingBox().Max)
		}
		for k := 0; k < 40; k++ {
			x := v3.Vec{X: lo.X + r.Float64()*(hi.X-lo.X), Y: lo.Y + r.Float64()*(hi.Y-lo.Y), Z: lo.Z + r.Float64()*(hi.Z-lo.Z)}
			owners := 0
			for i, b := range bodies {
				in, sure := holds(b, solid.Vec(x))
				if !sure {
					continue
				}
				if in {
					owners++
					inWood++
				}
				if got := models[i](x) < 0; got != in {
					t.Fatalf("%s at %v: model %v, half-spaces %v", p.Name(), x, got, in)
				}
				points++
			}
			if owners > 1 {
				t.Fatalf("%d parts hold %v", owners, x)
			}
		}
	})
	assert.Greater(t, inWood, points/50, "the points hardly met wood")
}

// The volume counted on a grid through the distance model is the mesh's, to
// half a cell over its surface.
func TestRandomDesignsVolume(t *testing.T) {
	someDesigns(t, 12, func(p *box.Plan, _ *rand.Rand) {
		for _, q := range p.Pieces() {
			m, err := PartModel(p, q.Part)
			require.NoError(t, err)
			mesh, err := p.Mesh(q.Part)
			require.NoError(t, err)
			const cell = 2.5
			assert.InDelta(t, mesh.Volume(), sampled(m, cell), mesh.Area()*cell/2, "%s", q.Part)
		}
	})
}
