package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/species"
)

// TestFastened: every form can be screwed together, its holes can be cut, and what is
// proposed keeps the rules; only an edge that is too thin for a load of over 10 kg is
// the box's own. Each kind of fixing hangs in a part that is there.
func TestFastened(t *testing.T) {
	unfixed := map[string]int{}
	for _, d := range Designs {
		out, fixings, err := species.Fasten(d, species.FixWith{})
		require.NoError(t, err, d.Name)
		require.NotEmpty(t, fixings, d.Name)
		plan, err := out.Resolve()
		require.NoError(t, err, d.Name)
		got, err := species.CheckFixings(plan, fixings)
		require.NoError(t, err, d.Name)
		for _, f := range got {
			// Two forms have seams with no room for a screw, and are told so.
			if f.Code == "seam-unfixed" {
				unfixed[d.Name]++
				continue
			}
			assert.Equal(t, "edge-pre", f.Code, "%s: %s", d.Name, f.Why)
		}
		for i, r := range out.Fixings {
			assert.True(t, r.Hole > 0 && r.Pilot > 0, "%s: %s has no holes", d.Name, fixings[i])
		}
		n := 0
		for _, p := range plan.Pieces() {
			for _, op := range p.Panel.Ops {
				if op.Use == box.UseFixing {
					n++
				}
			}
		}
		assert.Positive(t, n, d.Name)
	}
	assert.Equal(t, map[string]int{"shelf": 6, "swift box": 1}, unfixed)
}
