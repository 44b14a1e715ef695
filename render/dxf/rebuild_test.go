package dxf

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/render/internal/outside"
	"holt.example/render/internal/sample"
	"holt.example/render/stl"
)

// Every part is built again from its drawing alone: read by ezdxf, extruded and
// cut by a solid kernel by the layers' names, and laid over the part's mesh,
// which never saw the drawing. What is in one and not in the other is no more
// than the facets of its arcs and the grid explain.
func TestOutsideRebuild(t *testing.T) {
	type job struct {
		DXF json.RawMessage `json:"dxf"`
		STL string          `json:"stl"`
	}
	var jobs []job
	var names []string
	var pieces []box.Piece
	var drawings [][]byte
	for _, plan := range sample.Plans(t) {
		for _, p := range plan.Pieces() {
			var b bytes.Buffer
			if err := stl.WritePart(&b, plan, p.Part, stl.Options{Flat: true}); err != nil {
				t.Fatal(err)
			}
			jobs = append(jobs, job{STL: outside.File(t, "part.stl", b.Bytes())})
			names = append(names, fmt.Sprintf("%s, %s", plan.Name(), p.Part))
			pieces = append(pieces, p)
			drawings = append(drawings, mustWrite(t, plan, p.Part, Options{Bare: true}))
		}
	}
	for i, line := range outside.DXFJSON(t, drawings...) {
		jobs[i].DXF = line
	}
	list, err := json.Marshal(jobs)
	if err != nil {
		t.Fatal(err)
	}
	var got []struct {
		Error         string
		Rebuilt, Mesh float64
		OnlyRebuilt   float64 `json:"only_rebuilt"`
		OnlyMesh      float64 `json:"only_mesh"`
	}
	if err := json.Unmarshal(outside.Node(t, "rebuild.mjs", outside.File(t, "jobs.json", list)), &got); err != nil {
		t.Fatal(err)
	}
	for i, g := range got {
		most := allowed(pieces[i].Panel)
		t.Logf("%s: rebuilt %.2f, mesh %.2f, apart %.4f and %.4f, allowed %.2f", names[i], g.Rebuilt, g.Mesh, g.OnlyRebuilt, g.OnlyMesh, most)
		if g.Error != "" || g.OnlyRebuilt > most || g.OnlyMesh > most {
			t.Errorf("%s: %s", names[i], g.Error)
		}
	}
}

// allowed is the volume by which two forms of a panel may differ: the grid
// moves each wall by at most 0.7 of a step of 1e-4, and a facet lies within
// 0.01 of its arc, on both sides of it.
func allowed(p box.Panel) float64 {
	wall, arc := 0.0, 0.0
	add := func(r outline.Region, depth float64) {
		for _, c := range r {
			wall += c.Length() * depth
			for i, v := range c {
				if v.Bulge != 0 {
					w := c[(i+1)%len(c)]
					half := 2 * math.Abs(math.Atan(v.Bulge)) // of the sweep
					radius := math.Hypot(w.X-v.X, w.Y-v.Y) / 2 / math.Sin(half)
					arc += 2 * half * radius * depth
				}
			}
		}
	}
	t := float64(p.Thickness)
	add(p.Machined, t)
	for _, op := range p.Ops {
		add(op.Region, t)
	}
	return 0.7e-4*wall + 0.01*arc
}
