package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/render/dxf"
	"holt.example/render/stl"
	"holt.example/render/svg"
)

// worked are the parts of the page's elements that have work on them.
func worked(t *testing.T) (plans []*box.Plan, pieces []box.Piece) {
	t.Helper()
	for _, c := range chapters {
		for _, e := range c.elements {
			p, err := e.design().Resolve()
			require.NoError(t, err, e.title)
			for _, q := range p.Pieces() {
				if len(q.Panel.Ops) > 0 {
					plans, pieces = append(plans, p), append(pieces, q)
				}
			}
		}
	}
	return plans, pieces
}

// outsider runs a reader written by others, by a script of .ci/readers; a test is
// skipped on a machine without it.
func outsider(t *testing.T, has, prog, script string, files []string) []byte {
	t.Helper()
	missing := func(err error) {
		if os.Getenv("HOLT_STRICT") != "" {
			t.Fatalf("the outside reader for %s is not installed: %v", script, err)
		}
		t.Skipf("the outside reader for %s is not installed: %v", script, err)
	}
	if _, err := exec.LookPath(prog); err != nil {
		missing(err)
	}
	root := filepath.Join("..", "..", ".ci")
	if strings.HasPrefix(has, "import ") {
		if err := exec.Command(prog, "-c", has).Run(); err != nil {
			missing(err)
		}
	} else if _, err := os.Stat(filepath.Join(root, has)); err != nil {
		missing(err)
	}
	out, err := exec.Command(prog, append([]string{filepath.Join(root, "readers", script)}, files...)...).Output()
	require.NoError(t, err)
	return out
}

// found is what there is on a layer: how many contours, their area and centre, and
// the length of strokes.
type found struct {
	n            int
	area, length float64
	x, y         float64 // area times place
	slack        float64 // of area and length, for places on a grid of 1e-4
}

func (s *found) add(c outline.Contour, area, length float64) {
	m := c.Centroid()
	s.n++
	s.area += area
	s.length += length
	s.x += m.X * area
	s.y += m.Y * area
	s.slack += 1e-4 * (length + float64(2*len(c)))
}

// layer is the documented name of an operation's layer in a DXF file.
func layer(op box.Op, t box.MM) string {
	from, to := op.From, op.To
	name := ""
	switch op.Side {
	case box.SideFar:
		name, from, to = "TURNED_", t-op.To, t-op.From
	case box.SideEdge:
		name = "EDGE_"
	}
	if op.Use == box.UseFixing {
		name += "FIXING"
	} else {
		name += strings.ToUpper(string(op.Kind))
	}
	num := func(x box.MM) string {
		s := strconv.FormatFloat(math.Round(float64(x)*1e4)/1e4, 'f', -1, 64)
		if !strings.Contains(s, ".") {
			s += ".0"
		}
		return "_" + s
	}
	if math.Round(float64(from)*1e4) != 0 {
		name += num(from)
	}
	return name + num(to)
}

// A reader written by others finds all work of all elements in their drawings: on
// each layer, which names kind, side and depth, as many contours as the plan says,
// of its area, where it says; and strokes of its length.
func TestReaderFindsEveryElement(t *testing.T) {
	plans, pieces := worked(t)
	dir := t.TempDir()
	var files []string
	for i, q := range pieces {
		var b bytes.Buffer
		require.NoError(t, dxf.WritePart(&b, plans[i], q.Part, dxf.Options{Bare: true}))
		files = append(files, filepath.Join(dir, fmt.Sprintf("%d.dxf", i)))
		require.NoError(t, os.WriteFile(files[i], b.Bytes(), 0o644))
	}
	lines := bytes.Split(bytes.TrimSpace(outsider(t, "import ezdxf", "/usr/bin/python3", "dxf.py", files)), []byte("\n"))
	require.Len(t, lines, len(pieces))
	kinds := map[box.OpKind]int{}
	for i, q := range pieces {
		want := map[string]*found{}
		for _, op := range q.Panel.Ops {
			if op.InOutline {
				continue // in the profile
			}
			kinds[op.Kind]++
			k := layer(op, q.Panel.Thickness)
			if want[k] == nil {
				want[k] = &found{}
			}
			for _, c := range op.Region {
				want[k].add(c, c.Area(), c.Length())
			}
			for _, s := range op.Strokes {
				want[k].n++
				want[k].length += s.Length()
				want[k].slack += 2e-4 * float64(len(s))
			}
		}
		var got struct {
			Errors, Fixes []string
			Layers        map[string]struct {
				Contours []struct {
					Vertices     [][3]float64
					Closed       bool
					Area, Length float64
				}
				Circles [][3]float64
				Lines   [][4]float64
			}
		}
		require.NoError(t, json.Unmarshal(lines[i], &got))
		name := plans[i].Name() + ", " + string(q.Part)
		assert.Empty(t, got.Errors, name)
		assert.Empty(t, got.Fixes, name)
		for k, w := range want {
			at, s := got.Layers[k], found{}
			for _, c := range at.Contours {
				var o outline.Contour
				for _, v := range c.Vertices {
					o = append(o, outline.Vertex{X: v[0], Y: v[1], Bulge: v[2]})
				}
				if w.area == 0 {
					s.n, s.length = s.n+1, s.length+c.Length
					continue
				}
				assert.True(t, c.Closed, "%s %s", name, k)
				s.add(o, c.Area, c.Length)
			}
			for _, c := range at.Circles {
				o := outline.Circle(outline.Point{X: c[0], Y: c[1]}, 2*c[2])
				s.add(o, math.Pi*c[2]*c[2], 2*math.Pi*c[2])
			}
			for _, l := range at.Lines {
				s.n, s.length = s.n+1, s.length+math.Hypot(l[2]-l[0], l[3]-l[1])
			}
			assert.Equal(t, w.n, s.n, "%s %s: contours", name, k)
			assert.InDelta(t, w.length, s.length, w.slack+1e-9, "%s %s: length", name, k)
			if w.area == 0 {
				continue
			}
			assert.InDelta(t, w.area, s.area, w.slack+1e-9, "%s %s: area", name, k)
			if !strings.HasPrefix(k, "TURNED_") { // that drawing lies beside
				// Each contour's centre moves by less than a step of the grid.
				assert.InDelta(t, w.x/w.area, s.x/s.area, 2e-4+w.slack*500/w.area, "%s %s: centre", name, k)
				assert.InDelta(t, w.y/w.area, s.y/s.area, 2e-4+w.slack*500/w.area, "%s %s: centre", name, k)
			}
		}
	}
	t.Logf("%d parts, operations %v", len(pieces), kinds)
	assert.GreaterOrEqual(t, len(kinds), 7)
}

// The drawings of all worked parts and the page's pictures are sound XML to a reader
// written by others, and in each drawing there is a group for every kind and depth
// of work, with a shape for every contour.
func TestDrawingsOfEveryElement(t *testing.T) {
	plans, pieces := worked(t)
	dir := t.TempDir()
	files, err := filepath.Glob("*.svg")
	require.NoError(t, err)
	for i, q := range pieces {
		var b bytes.Buffer
		require.NoError(t, svg.WritePart(&b, plans[i], q.Part, svg.Options{Bare: true}))
		name := filepath.Join(dir, fmt.Sprintf("%d.svg", i))
		require.NoError(t, os.WriteFile(name, b.Bytes(), 0o644))
		files = append(files, name)
		want := map[string]int{}
		for _, op := range q.Panel.Ops {
			if !op.InOutline {
				want[strings.ToLower(layer(op, q.Panel.Thickness))] += len(op.Region) + len(op.Strokes)
			}
		}
		got := shapes(t, b.Bytes())
		for k, n := range want {
			assert.Equal(t, n, got[k], "%s, %s: %s", plans[i].Name(), q.Part, k)
		}
	}
	if _, err := exec.LookPath("xmllint"); err != nil {
		if os.Getenv("HOLT_STRICT") != "" {
			t.Fatal("the outside reader xmllint is not installed")
		}
		t.Skip("the outside reader xmllint is not installed")
	}
	out, err := exec.Command("xmllint", append([]string{"--noout", "--nonet"}, files...)...).CombinedOutput()
	assert.NoError(t, err, "%.500s", out)
}

// shapes counts the shapes in the group of each layer, by the standard library's
// reader of XML: a circle is one, a path as many as it has starts.
func shapes(t *testing.T, b []byte) map[string]int {
	t.Helper()
	out := map[string]int{}
	d := xml.NewDecoder(bytes.NewReader(b))
	var in []string
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return out
		}
		require.NoError(t, err)
		switch e := tok.(type) {
		case xml.StartElement:
			at := ""
			if len(in) > 0 {
				at = in[len(in)-1]
			}
			path := ""
			for _, a := range e.Attr {
				switch a.Name.Local {
				case "data-layer":
					at = a.Value
				case "d":
					path = a.Value
				}
			}
			in = append(in, at)
			switch e.Name.Local {
			case "circle", "line", "polyline", "rect":
				out[at]++
			case "path":
				out[at] += strings.Count(path, "M")
			}
		case xml.EndElement:
			in = in[:len(in)-1]
		}
	}
}

// A solid kernel written by others takes every worked part for a closed solid of one
// piece, with the plan's volume, and as many handles as it has openings.
func TestKernelTakesEveryElement(t *testing.T) {
	plans, pieces := worked(t)
	dir := t.TempDir()
	const each = 24
	for lo := 0; lo < len(pieces); lo += each {
		hi := min(lo+each, len(pieces))
		var files []string
		for i := lo; i < hi; i++ {
			var b bytes.Buffer
			require.NoError(t, stl.WritePart(&b, plans[i], pieces[i].Part, stl.Options{}))
			files = append(files, filepath.Join(dir, fmt.Sprintf("%d.stl", i)))
			require.NoError(t, os.WriteFile(files[i-lo], b.Bytes(), 0o644))
		}
		var got struct {
			Parts []struct {
				Status              string
				Open, Genus, Pieces int
				Volume              float64
			}
		}
		require.NoError(t, json.Unmarshal(outsider(t, "node/node_modules/manifold-3d", "node", "mesh.mjs", files), &got))
		require.Len(t, got.Parts, hi-lo)
		for k, m := range got.Parts {
			q, name := pieces[lo+k], plans[lo+k].Name()+", "+string(pieces[lo+k].Part)
			holes := 0
			for _, op := range q.Panel.Ops {
				if op.Side == box.SideThrough && op.InSolid && !op.InOutline {
					holes++
				}
			}
			assert.Equal(t, "NoError", m.Status, name)
			assert.Zero(t, m.Open, name)
			assert.Equal(t, 1, m.Pieces, name)
			assert.Equal(t, holes, m.Genus, "%s: handles", name)
			assert.InDelta(t, q.Volume, m.Volume, 1e-6*q.Volume+0.5, name) // places on steps of 3e-5
		}
	}
}
