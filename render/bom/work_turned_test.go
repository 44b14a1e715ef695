package bom_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
	"holt.example/render/bom"
	"holt.example/render/svg"
)

// TestTurnedOverAsDrawn: the places of work on the other face are those that the drawing
// of the part gives, digit by digit; the top of the back is bevelled and its face that
// is up then is not as high as the machined one.
func TestTurnedOverAsDrawn(t *testing.T) {
	plan, err := box.Design{
		Name: "two faces", Board: box.Board{Thickness: 18}, Size: box.Cavity{Width: 130, Depth: 120, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Pent{Pitch: 12}, Corners: box.Corners{Joint: joints.Rebate{}}, Walls: []box.Wall{{On: box.Back, Lean: 5}},
		Features: []box.Feature{
			box.Cut{On: box.Back, At: box.Anchor{Right: 31.3, Up: 60.2}, Shape: box.Round{Diameter: 9}, Depth: 6, From: box.FromOuter, Name: "round"},
			box.Cut{On: box.Back, At: box.Anchor{Right: -12.4, Up: 120}, Shape: box.Rect{Width: 20, Height: 12}, Depth: 4, From: box.FromOuter, Name: "square"},
		},
	}.Resolve()
	require.NoError(t, err)
	var md, drawn bytes.Buffer
	require.NoError(t, bom.WriteMarkdown(&md, plan, bom.Options{}))
	require.NoError(t, svg.WritePart(&drawn, plan, box.Back, svg.Options{}))
	assert.Contains(t, md.String(), "turned the part over like the page of a book.")
	place := regexp.MustCompile(`([0-9.]+) up, ([0-9.]+) from the left, on the other face, turned over`)
	found := place.FindAllStringSubmatch(md.String(), -1)
	require.Len(t, found, 2, md.String())
	for _, f := range found {
		assert.True(t, strings.Contains(drawn.String(), "at "+f[2]+", "+f[1]), "%q is not drawn", f[0])
	}
}
