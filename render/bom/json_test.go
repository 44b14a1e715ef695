package bom

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"holt.example/box/solid"
)

func TestJSON(t *testing.T) {
	for _, name := range append([]string{"plain"}, hostile...) {
		l := fullList(name)
		var b bytes.Buffer
		if err := l.writeJSON(&b); err != nil {
			t.Fatalf("%q: %v", name, err)
		}
		if strings.ContainsAny(b.String(), "<>") {
			t.Errorf("%q: not safe inside HTML", name)
		}
		var got struct {
			Schema, Name string
			Items        []struct {
				Item, Quantity int
				Length, Width  float64
				CutLength      float64 `json:"cut_length"`
				Mass           *float64
				MirrorOf       int `json:"mirror_of"`
				Parts          []struct {
					Name  string
					Frame struct{ Origin, U, V, W [3]float64 }
				}
				Edges []struct{ Bevel, Run, Length float64 }
				Work  []struct {
					Kind   string
					To     float64
					Region [][][3]float64
				}
				Machined [][][3]float64
			}
			Totals   struct{ Mass *float64 }
			Voids    []struct{ Volume float64 }
			Findings []struct {
				Code, Severity string
				Got, Lo, Hi    *float64
			}
		}
		if err := json.Unmarshal(b.Bytes(), &got); err != nil {
			t.Fatalf("%q: %v", name, err)
		}
		if got.Schema != "holt.example/bom/1" || got.Name != string([]rune(name)) {
			t.Errorf("%q: schema %q, name %q", name, got.Schema, got.Name)
		}
		if f := got.Findings[0]; f.Code != "steep-bevel" || f.Severity != "warning" || *f.Got != 50 || f.Lo != nil || f.Hi != nil {
			t.Errorf("finding %+v", f)
		}
		if got.Voids[0].Volume != 1 {
			t.Errorf("void of %v, want four decimals", got.Voids[0].Volume)
		}
		if got.Totals.Mass != nil {
			t.Error("a mass is given in total though one part's is not known")
		}
		for i, it := range l.Items {
			g := got.Items[i]
			if g.Item != it.Number || g.Quantity != it.Quantity || math.Abs(g.Length-float64(it.Length)) > 0.00005 || g.CutLength != float64(it.CutLength) || g.MirrorOf != it.MirrorOf {
				t.Errorf("item %+v, want %+v", g, it)
			}
			if (g.Mass == nil) != (it.Mass == 0) {
				t.Errorf("item %d: mass %v, want %v", it.Number, g.Mass, it.Mass)
			}
			for k, p := range it.Places {
				f := g.Parts[k].Frame
				// To the last bit: what was written reads back as it was.
				if back := (solid.Frame{O: vec(f.Origin), U: vec(f.U), V: vec(f.V), W: vec(f.W)}); back != p.Home {
					t.Errorf("%s: frame %v, want %v", p.Part, back, p.Home)
				}
			}
			if g.Work[0].Kind != "bore" || g.Work[0].To != 14.6 || g.Work[0].Region[0][0] != [3]float64{16, 100, 1} {
				t.Errorf("work %+v", g.Work[0])
			}
			if len(g.Machined[0]) != 4 || len(g.Edges) != 4 {
				t.Errorf("item %d: contour %v, %d edges", it.Number, g.Machined, len(g.Edges))
			}
		}
		if e := got.Items[0].Edges[1]; e.Bevel != 45 || e.Run != 14.6 {
			t.Errorf("mitred edge %+v", e)
		}
	}
}

func vec(v [3]float64) solid.Vec { return solid.Vec{X: v[0], Y: v[1], Z: v[2]} }

// Spreading over lines changes nothing but white space.
func TestIndent(t *testing.T) {
	in := `{"a":[1,-2.5,null],"b":[[[1,2,0],[3,4,1]]],"c":"[1, {\\\"2, \\\\","d":[],"e":{},"f":[{"g":["x",":"]}],"h":true}`
	out := indent([]byte(in))
	var back bytes.Buffer
	if err := json.Compact(&back, out); err != nil || back.String() != in {
		t.Errorf("%v\n%s\n%s", err, back.String(), in)
	}
	for _, want := range []string{"\n\t\"a\": [1, -2.5, null],\n", "\n\t\"b\": [[[1, 2, 0], [3, 4, 1]]],\n"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

// An empty list has lists, not null.
func TestJSONOfNothing(t *testing.T) {
	var b bytes.Buffer
	if err := (List{}).writeJSON(&b); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"items": []`, `"voids": []`, `"findings": []`, `"boards": []`} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %s in\n%s", want, b.String())
		}
	}
}
