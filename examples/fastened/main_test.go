package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestRun: the folder has the screws, their holes and the bill, and what the shop
// does not sell is unpriced.
func TestRun(t *testing.T) {
	var b bytes.Buffer
	dir := t.TempDir()
	require.NoError(t, run(&b, dir))
	assert.Contains(t, b.String(), "unpriced")
	assert.Contains(t, b.String(), "It weighs ")
	for name, want := range map[string]string{
		"bom.md": "screw, stainless steel | 3.5 x 40", "bill.csv": "\"nail, aluminium\",\"6 x 100\"", "fittings.csv": "glue, class D4",
		"plan.md": "screws 3.5 × 25 through front into each", "parts/front.dxf": "FIXING_14.6", "parts/left.svg": "edge_fixing",
	} {
		data, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		assert.Contains(t, string(data), want, name)
	}
}
