package species

import (
	"math"
	"testing"

	"holt.example/box"
	"holt.example/box/forms"
	"holt.example/box/solid"
	"holt.example/joints"
)

// TestFixingsInWood follows every fastener on its way through the solids
// themselves, which know nothing of how it was placed: first through the part
// held, then, to the point, in the part entered.
func TestFixingsInWood(t *testing.T) {
	larch := box.Board{Thickness: 18, Measured: 17.6, Material: "European larch"}
	slanting := 0
	for name, d := range map[string]box.Design{
		"thin":  thin(),
		"sound": sound(),
		"gable": thin().With(func(d *box.Design) {
			d.Roof, d.Walls = box.Gable{Pitch: 35, Over: box.Overhangs{All: 40}}, nil
		}),
		"steep":    thin().With(func(d *box.Design) { d.Roof = box.Pent{Pitch: 25, Over: box.Overhangs{Front: 60}} }),
		"leaning":  thin().With(func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Lean: 8}, {On: box.Left, Lean: 5}} }),
		"sides":    thin().With(func(d *box.Design) { d.Corners.Laps, d.Walls = box.Sides, nil }),
		"rebated":  thin().With(func(d *box.Design) { d.Corners.Joint, d.Walls = joints.Rebate{}, nil }),
		"landing":  fastenings()["landing"],
		"laid":     fastenings()["laid"],
		"terrace":  forms.Terrace(forms.Row{Name: "terrace", Board: larch, Homes: 3, Inside: box.Cavity{Width: 130, Depth: 150, Height: 250}, Hole: 32, Above: 150}),
		"owl":      forms.OwlBox(forms.Owl{Name: "owl", Board: larch, Inside: box.Cavity{Width: 300, Depth: 300, Height: 800}, Width: 120, Height: 120, Above: 500}),
		"swift":    forms.SwiftBox(forms.Swift{Name: "swift", Board: larch, Inside: box.Cavity{Width: 400, Depth: 210, Height: 120}, Slot: box.Slot{Width: 60, Height: 28}, Above: 30, Aside: 130}),
		"hedgehog": forms.HedgehogHouse(forms.Hedgehog{Name: "house", Board: larch, Inside: box.Cavity{Width: 520, Depth: 400, Height: 300}, Doorway: 140, Lobby: 150}),
		"under":    thin().With(func(d *box.Design) { d.Floor, d.Walls = box.FloorUnder{}, nil }),
		"octagon":  {Name: "octagon", Board: box.Board{Thickness: 15}, Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 8, Across: 200}, Floor: box.FloorBetween{}, Roof: box.NoRoof{}},
		"triangle": {Name: "triangle", Board: box.Board{Thickness: 15}, Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 3, Across: 200}, Floor: box.FloorBetween{}, Roof: box.NoRoof{}},
	} {
		plan, fs := fixings(t, d, FixWith{})
		for _, f := range fs {
			over, err := plan.Mesh(f.Over)
			if err != nil {
				t.Fatal(err)
			}
			under, err := plan.Mesh(f.Under)
			if err != nil {
				t.Fatal(err)
			}
			if f.Slant {
				slanting++
			}
			gap := 0.0
			for _, m := range plan.Seams() {
				if m.Over == f.Over && m.Under == f.Under {
					gap = float64(m.Greatest)
				}
			}
			for _, at := range f.Places {
				p, w := vecOf(at), dir(f.Into)
				if math.Abs(w.Len()-1) > 1e-3 {
					t.Errorf("%s: %v is no direction", name, w)
				}
				if within3(over, p.Sub(w.Scale(0.05))) || !within3(over, p.Add(w.Scale(0.05))) {
					t.Errorf("%s: %s does not start on the face of %s", name, f, f.Over)
				}
				for _, s := range []float64{0.2, 0.5, 0.8} {
					if !within3(over, p.Add(w.Scale(s*float64(f.Held)))) {
						t.Errorf("%s: %s leaves %s at %v of the way", name, f, f.Over, s)
					}
					in := float64(f.With.Length - f.Held)
					if !within3(under, p.Add(w.Scale(float64(f.Held)+s*in))) || !within3(under, p.Add(w.Scale(float64(f.With.Length)-0.5))) {
						t.Errorf("%s: %s misses %s at %v", name, f, f.Under, s)
					}
				}
				// At Held it passes from one to the other, over the play of a dry seam.
				if within3(under, p.Add(w.Scale(float64(f.Held)-0.3))) || !within3(under, p.Add(w.Scale(float64(f.Held)+gap+0.3))) {
					t.Errorf("%s: %s does not enter %s at %v", name, f, f.Under, f.Held)
				}
			}
		}
	}
	if slanting == 0 {
		t.Error("none is on the slant")
	}
}

// within3 counts how often a ray from p in an odd direction leaves a closed mesh.
func within3(m *solid.Mesh, p solid.Vec) bool {
	w := solid.Vec{X: 0.3712, Y: 0.5921, Z: 0.7153}
	n := 0
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		e, f := b.Sub(a), c.Sub(a)
		h := w.Cross(f)
		det := e.Dot(h)
		if math.Abs(det) < 1e-12 {
			continue
		}
		s := p.Sub(a)
		u := s.Dot(h) / det
		q := s.Cross(e)
		v := w.Dot(q) / det
		if u < 0 || v < 0 || u+v > 1 {
			continue
		}
		if f.Dot(q)/det > 0 {
			n++
		}
	}
	return n%2 == 1
}
