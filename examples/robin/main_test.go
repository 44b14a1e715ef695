package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestRun: no fault is found, and the care sheet and the sources follow.
func TestRun(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, run(&b))
	assert.NotContains(t, b.String(), "error [")
	for _, want := range []string{"advice [", "# Care of a box for ", "## Law", "### Sources"} {
		assert.Contains(t, b.String(), want)
	}
}
