package render_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/render"
	"holt.example/render/bom"
	"holt.example/render/dxf"
	"holt.example/render/picture"
	"holt.example/render/stl"
	"holt.example/render/svg"
)

// A plan that is opened and shut again writes the same bytes; open, only its
// pictures and solids differ: no panel, no list and no page does.
func TestOpenAndShutIsTheSameFiles(t *testing.T) {
	shut := box.Design{
		Name: "opened", Board: box.Board{Thickness: 15, Measured: 14.6},
		Size: box.Cavity{Width: 120, Depth: 120, Height: 240}, Floor: box.FloorBetween{},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40}},
		Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}},
		Opens: []box.Opening{box.Hinged{Part: box.Roof, Hinge: box.Butts{}}, box.Pivoted{Part: box.Left}, box.Stopper{},
			box.HookAndEye{Part: box.Roof, At: box.Right}, box.Inspection{On: box.Right, Sill: 40}},
	}.MustResolve()
	open := shut
	for _, w := range shut.Ways() {
		var err error
		if w.Turns {
			open, err = open.Opened(w.Part, box.Deg(w.Most/2))
		} else {
			open, err = open.Drawn(w.Part, box.MM(w.Most/2))
		}
		require.NoError(t, err)
	}
	again := open
	for _, w := range shut.Ways() {
		var err error
		if w.Turns {
			again, err = again.Opened(w.Part, 0)
		} else {
			again, err = again.Drawn(w.Part, 0)
		}
		require.NoError(t, err)
	}
	write := func(p *box.Plan) map[string]string {
		out := map[string]string{}
		for name, f := range map[string]func(b *bytes.Buffer) error{
			"picture": func(b *bytes.Buffer) error { return picture.WriteSVG(b, p, picture.Options{}) },
			"stl":     func(b *bytes.Buffer) error { return stl.Write(b, p, stl.Options{}) },
			"dxf":     func(b *bytes.Buffer) error { return dxf.Write(b, p, dxf.Options{}) },
			"svg":     func(b *bytes.Buffer) error { return svg.Write(b, p, svg.Options{}) },
			"list":    func(b *bytes.Buffer) error { return bom.WriteMarkdown(b, p, bom.Options{}) },
			"json":    func(b *bytes.Buffer) error { return bom.WriteJSON(b, p, bom.Options{}) },
			"page":    func(b *bytes.Buffer) error { return render.WritePlan(b, p, bom.Options{}) },
		} {
			var b bytes.Buffer
			require.NoError(t, f(&b), name)
			out[name] = b.String()
		}
		return out
	}
	a, b, c := write(shut), write(open), write(again)
	assert.Equal(t, a, c)
	for name := range a {
		assert.Equal(t, name != "picture" && name != "stl", a[name] == b[name], name) // these show poses
	}
	page := a["page"]
	for _, s := range []string{"## Opening", "- roof turns by 90°", "- left turns by 90°", "- free/cover comes out by"} {
		assert.Contains(t, page, s)
	}
	// The pivots' pilots: 2.4 wide, 33 deep, 7.3 under either face.
	assert.Regexp(t, "hole 2.4, 33 deep into the left edge, pivot at (front|back), [0-9.]+ up, its middle 7.3 below the machined face \\(hinge\\)", a["list"])
	assert.Regexp(t, "hole 2.4, 33 deep into the right edge, pivot at", a["list"])
	assert.Equal(t, 1, strings.Count(page, "## Opening"))
}
