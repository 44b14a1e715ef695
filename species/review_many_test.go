package species

import (
	"errors"
	"slices"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// many are designs of every footprint, roof, floor, joint, way in and make-up that
// a review may meet.
func many() box.Variants {
	over := box.Overhangs{All: 40}
	set := func(name string, f func(*box.Design)) box.Value { return box.Value{Name: name, Set: f} }
	return box.Variants{
		Base: box.Design{Name: "many", Board: box.Board{Thickness: 18, Least: 17.4, Most: 18.2, Material: "white oak"}, Size: box.Cavity{Width: 160, Depth: 150, Height: 260},
			Features: []box.Feature{box.Drains{}}},
		Axes: []box.Axis{
			{Name: "plan", Values: []box.Value{
				set("rectangle", func(d *box.Design) {
					d.Features = append(d.Features, box.Entrance{Shape: box.Round{Diameter: 32}, Above: 160}, box.Vents{})
				}),
				set("hexagon", func(d *box.Design) {
					d.Size, d.Footprint, d.Corners.Joint = box.Cavity{Height: 260}, box.Regular{Sides: 6, Across: 170}, joints.Mitre{}
					d.Features = append(d.Features, box.Entrance{Shape: box.Round{Diameter: 32}, Above: 160})
				}),
				set("leaning", func(d *box.Design) {
					d.Walls = []box.Wall{{On: box.Front, Lean: 6}, {On: box.Left, Lean: -4}}
					d.Features = append(d.Features, box.Entrance{Shape: box.Slot{Width: 60, Height: 30}, Above: 150})
				}),
				set("open", func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Open: true}} }),
				set("outside", func(d *box.Design) { d.Size = box.Outside{Width: 200, Depth: 190, Height: 300} }),
				set("boards", func(d *box.Design) { d.Size = box.BoardWidth{Width: 180, Height: 240} }),
			}},
			{Name: "roof", Values: []box.Value{
				set("pent", func(d *box.Design) { d.Roof = box.Pent{Over: over} }),
				set("gable", func(d *box.Design) { d.Roof = box.Gable{Pitch: 30, Over: over} }),
				set("hip", func(d *box.Design) { d.Roof = box.Hip{Pitch: 25, Over: over} }),
				set("flat", func(d *box.Design) { d.Roof = box.Flat{Over: over}; d.Outer = []box.Outer{box.Felt{Turn: 20}} }),
				set("none", func(d *box.Design) { d.Roof = box.NoRoof{} }),
			}},
			{Name: "floor", Values: []box.Value{
				set("between", func(d *box.Design) { d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5}} }),
				set("under", func(d *box.Design) { d.Floor = box.FloorUnder{} }),
				set("none", func(d *box.Design) {
					d.Floor = box.NoFloor{}
					d.Features = slices.DeleteFunc(d.Features, func(f box.Feature) bool { _, ok := f.(box.Drains); return ok })
				}),
			}},
			{Name: "more", Values: []box.Value{
				set("plain", func(*box.Design) {}),
				set("strips", func(d *box.Design) {
					d.MadeUp = []box.MadeUp{{Of: box.AllWalls, Width: 90, Joint: box.Shiplap{Lap: 10, Gap: 1}}}
				}),
				set("opens", func(d *box.Design) {
					d.Opens = []box.Opening{box.Removable{Part: box.Floor}, box.Inspection{On: box.Left, Width: 60, Height: 60}}
				}),
				set("things", func(d *box.Design) {
					d.Inner = []box.Inner{box.Shelf{Name: "shelf", Above: 60, Gaps: box.Gaps{Front: 50}}}
					d.Free = []box.Free{{Name: "sign", Outline: outline.Polygon(outline.Point{}, outline.Point{X: 40}, outline.Point{X: 20, Y: 8}), At: box.Place{Y: -200, Z: 100}, Facing: box.Direction{Y: -1}, Up: box.Direction{Z: 1}}}
					d.Outer = append(d.Outer, box.Batten{Name: "batten", On: box.Back, Above: 80, Height: 40, Hole: box.Round{Diameter: 6}})
				}),
			}},
		},
	}
}

// TestReviewOfManyDesigns: whatever a plan is, its review ends, says why and where
// from, comes out the same again, and grades what it finds in order; and so for an
// animal of each form.
func TestReviewOfManyDesigns(t *testing.T) {
	var animals []Preset
	for _, key := range []string{"great_tit", "european_robin", "common_swift", "american_robin", "little_owl", "bat_multi_chamber", "hedgehog", "hazel_dormouse", "red_mason_bee", "wood_duck"} {
		animals = append(animals, MustGet(key))
	}
	sites := []Site{{}, {Place: OnPole, Above: 3, HotSummers: true, Planed: true, Martens: true, Peckers: true, Guard: 200, Glue: 2, Swing: 6, Lean: -5, Faces: West, Inside: Preservative, Outside: SolventBased, WetWall: true}}
	made, refused := 0, 0
	for key, d := range many().All() {
		plan, err := d.Resolve()
		if err != nil {
			var ps box.Problems
			if !errors.As(err, &ps) {
				t.Fatalf("%s: %v", key, err)
			}
			refused++
			continue
		}
		made++
		a := animals[made%len(animals)]
		for _, s := range sites[made%2:][:1] {
			fs, err := Review(plan, a, s)
			if err != nil {
				t.Fatalf("%s, %s: %v", key, a.Key, err)
			}
			again, _ := Review(plan, a, s)
			if len(again) != len(fs) {
				t.Fatalf("%s, %s: %d, then %d", key, a.Key, len(fs), len(again))
			}
			for i, f := range fs {
				if f.Why == "" || f.Code == "" || len(f.Sources) == 0 || f.Why != again[i].Why || i > 0 && f.Severity > fs[i-1].Severity {
					t.Errorf("%s, %s: %+v", key, a.Key, f)
				}
				if f.Part != "" {
					if _, ok := plan.Piece(f.Part); !ok {
						t.Errorf("%s, %s: %s is at %s, which the plan has not", key, a.Key, f.Code, f.Part)
					}
				}
			}
		}
	}
	if made < 200 || refused > made {
		t.Errorf("%d made, %d refused", made, refused)
	}
	t.Logf("%d plans reviewed, %d designs refused", made, refused)
}
