package box_test

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// Each with its path, its code and, where there is one, its range.
func TestElementsThatCannotBeMade(t *testing.T) {
	in := func(x box.Inner) func(*box.Design) { return func(d *box.Design) { d.Inner = []box.Inner{x} } }
	out := func(x box.Outer) func(*box.Design) { return func(d *box.Design) { d.Outer = []box.Outer{x} } }
	cut := func(x box.Feature) func(*box.Design) {
		return func(d *box.Design) { d.Features = append(d.Features, x) }
	}
	round := box.Round{Diameter: 6}
	checkRefusals(t, hung, []refusal{
		// The cavity is 200 high in front; under the pent's back end 200 + 150 tan 12.
		{"shelf through the roof", in(box.Shelf{Name: "s", Above: 190}), "Inner[0].Shelf.Above", "outside", "below the eaves", 0, 185},
		{"shelf over the roof", in(box.Shelf{Name: "s", Above: 500}), "Inner[0].Shelf.Above", "range", "inside the cavity", 0, 200 + 150*math.Tan(deg(12)) - 15},
		{"shelf of gaps", in(box.Shelf{Name: "s", Above: 50, Gaps: box.Gaps{Left: 80, Right: 80}}), "Inner[0].Shelf.Gaps", "no-part", "nothing", 0, 0},
		{"gap below", in(box.Shelf{Name: "s", Gaps: box.Gaps{Back: -1}}), "Inner[0].Shelf.Gaps.Back", "range", "-1", 0, 10000},
		{"shelf too deep in the wall", in(box.Shelf{Name: "s", Above: 50, Joint: joints.Housing{Depth: 14}}), "Inner[0].Shelf.Joint.Depth", "joint", "too deep", 0.4, 8.8},
		{"shelf in a rebate", in(box.Shelf{Name: "s", Above: 50, Joint: joints.Rebate{}}), "Inner[0].Shelf.Joint", "unbounded", "channel", 0, 0},
		{"shelves across", func(d *box.Design) {
			d.Inner = []box.Inner{box.Shelf{Name: "a", Above: 50}, box.Shelf{Name: "b", Above: 60}}
		}, "Joints", "overlap", "same place", 0, 0},
		{"no room below", in(box.FalseFloor{Name: "f"}), "Inner[0].FalseFloor.Room", "range", "0", 1, 10000},
		{"drains too large", in(box.FalseFloor{Name: "f", Room: 20, Hole: 60}), "Inner[0].FalseFloor.Hole", "range", "no room", 1, (146.0/2 - 15) / 1.5},
		// 150 less 3 x 15 and a last crevice of 1 leaves 34.67 each.
		{"baffles too far apart", in(box.Baffles{Name: "b", Count: 3, Crevice: 36}), "Inner[0].Baffles.Crevice", "no-room", "do not fit", 1, (150 - 45 - 1) / 3.0},
		{"too many baffles", in(box.Baffles{Name: "b", Count: 51}), "Inner[0].Baffles.Count", "range", "51", 1, 50},
		{"ten baffles", in(box.Baffles{Name: "b", Count: 10}), "Inner[0].Baffles.Crevice", "no-room", "10 baffles", 0, 0},
		{"baffles without height", in(box.Baffles{Name: "b", Count: 2, Above: 100, Room: 100}), "Inner[0].Baffles.Room", "range", "100", 0, 99},
		{"partition upside down", in(box.Partition{Name: "p", Above: 90, Height: 80}), "Inner[0].Partition.Above", "range", "90", 0, 79},
		{"lobby in the back", in(box.Lobby{Name: "l", Deep: 140, Shape: round, At: box.Anchor{Up: 50}}), "Inner[0].Lobby.Deep", "outside", "140", 1, 135},
		{"lobby without opening", in(box.Lobby{Name: "l", Deep: 40}), "Inner[0].Lobby.Shape", "missing", "shape", 0, 0},
		{"lobby behind the floor", in(box.Lobby{Name: "l", Deep: 40, Behind: box.Floor, Shape: round}), "Inner[0].Lobby.Behind", "no-wall", "floor", 0, 0},
		{"doorway off the lobby", in(box.Lobby{Name: "l", Deep: 40, Shape: round, At: box.Anchor{Right: 200, Up: 40}}), "Inner[0].Lobby", "off-part", "past the edge", 0, 0},
		{"bees through the block", in(box.BeeBlock{Name: "b", Rows: []box.BeeRow{{Diameter: 8, Depth: 20}}}), "Inner[0].BeeBlock.Rows[0].Depth", "range", "blind", 0.1, 14.5},
		{"bees too close", in(box.BeeBlock{Name: "b", Spacing: 8, Rows: []box.BeeRow{{Diameter: 8, Depth: 9}}}), "Inner[0].BeeBlock.Spacing", "range", "between them", 8.5, 10000},
		{"too many bees", in(box.BeeBlock{Name: "b", Rows: []box.BeeRow{{Diameter: 8, Depth: 9, Count: 8}}}), "Inner[0].BeeBlock.Rows[0].Count", "range", "room", 1, 7},
		{"bees over the top", in(box.BeeBlock{Name: "b", Height: 60, Rows: []box.BeeRow{{Diameter: 8, Depth: 9, Repeat: 9}}}), "Inner[0].BeeBlock.Rows[0]", "no-room", "upper edge", 0, 0},
		{"no bees", in(box.BeeBlock{Name: "b"}), "Inner[0].BeeBlock.Rows", "range", "0", 1, 1000},
		{"block too deep", in(box.BeeBlock{Name: "b", Board: thick(151), Rows: []box.BeeRow{{Diameter: 8, Depth: 9}}}), "Inner[0].BeeBlock.Board.Thickness", "range", "151", 0.5, 150},

		{"plate without an entrance", out(box.EntrancePlate{Name: "p", On: box.Left, Width: 60, Height: 60}), "Outer[0].EntrancePlate.On", "no-entrance", "left", 0, 0},
		{"plate over the second", out(box.EntrancePlate{Name: "p", Entrance: 1, Width: 60, Height: 60}), "Outer[0].EntrancePlate.Entrance", "range", "1", 0, 0},
		{"plate too small", out(box.EntrancePlate{Name: "p", Width: 30, Height: 60}), "Outer[0].EntrancePlate.Width", "range", "no wood", 33, 10000},
		{"plate with 3 screws", out(box.EntrancePlate{Name: "p", Width: 60, Height: 60, Screws: 3}), "Outer[0].EntrancePlate.Screws", "unknown-value", "3", 0, 4},
		{"plate on the lid", out(box.EntrancePlate{Name: "p", On: "lid", Width: 60, Height: 60}), "Outer[0].EntrancePlate.On", "unknown-part", "lid", 0, 0},
		{"narrow tunnel", out(box.Tunnel{Name: "t", Long: 50, Width: 30}), "Outer[0].Tunnel.Width", "range", "narrower", 0, 0},
		{"landing in the roof", out(box.LandingBoard{Name: "l", Width: 100, Deep: 60, Slope: 50}), "Outer[0].LandingBoard.Slope", "range", "50", 0, 45},
		{"flat and sloping", out(box.LandingBoard{Name: "l", Width: 100, Deep: 60, Slope: 5, Flat: true}), "Outer[0].LandingBoard.Slope", "contradiction", "flat", 0, 0},
		{"batten on a polygon's back", out(box.Batten{Name: "b", On: "wall/1"}), "Outer[0].Batten.On", "unknown-part", "wall/1", 0, 0},
		{"batten off the wall", out(box.Batten{Name: "b", Above: 900, Height: 40}), "Outer[0].Batten", "no-contact", "does not lie", 0, 0},
		// 150 wide less 2 x 15, 20 apart: 7.
		{"batten full of screws", out(box.Batten{Name: "b", Above: 50, Height: 40, Screws: 12}), "Outer[0].Batten.Screws", "range", "12", 0, 7},
		{"split batten too low", out(box.SplitBatten{Name: "s", Above: 50, Height: 14}), "Outer[0].SplitBatten.Board.Thickness", "range", "15", 0.5, 13},
		{"strap round the world", out(box.Strap{Trunk: 5000, Width: 20, Heights: []box.MM{50}}), "Outer[0].Strap.Trunk", "range", "5000", 10, 3000},
		{"strap beside the back", out(box.Strap{Trunk: 300, Width: 20, Heights: []box.MM{50}, Apart: 180}), "Outer[0].Strap", "off-part", "past the edge", 0, 0},
		{"feet too wide", out(box.Feet{Name: "f", Width: 91}), "Outer[0].Feet.Width", "range", "91", 1, 90},
		{"feet too long", out(box.Feet{Name: "f", Width: 30, Length: 90}), "Outer[0].Feet.Length", "range", "90", 1, 82.5}, // half of 90 + 75
		{"socket through its side", out(box.PoleSocket{Name: "s", Hole: box.Round{Diameter: 60}, Width: 60, Deep: 90}), "Outer[0].PoleSocket.Width", "range", "no wood", 61, 10000},
		{"socket without a floor", func(d *box.Design) {
			d.Floor = box.NoFloor{}
			d.Outer = []box.Outer{box.PoleSocket{Name: "s", Hole: round, Width: 60, Deep: 90}}
		}, "Outer[0].PoleSocket", "open", "floor", 0, 0},
		{"strip over the end", out(box.CoverStrip{Name: "s", Height: 81}), "Outer[0].CoverStrip.Height", "range", "over the end", 1, 80},
		{"strip on the front", out(box.CoverStrip{Name: "s", On: box.Front, Height: 30}), "Outer[0].CoverStrip.On", "not-up", "front", 0, 0},
		{"cap of a pent", out(box.RidgeCap{Name: "c", Width: 40}), "Outer[0].RidgeCap", "no-ridge", "gable", 0, 0},
		{"cap wider than the roof", func(d *box.Design) {
			d.Walls, d.Roof = nil, box.Gable{Pitch: 45}
			d.Outer = []box.Outer{box.RidgeCap{Name: "c", Width: 200}}
		}, "Outer[0].RidgeCap.Width", "range", "200", 1, 90 * math.Sqrt2},
		{"felt in the air", func(d *box.Design) {
			d.Walls, d.Roof = nil, box.NoRoof{}
			d.Outer = []box.Outer{box.Felt{}}
		}, "Outer[0].Felt", "no-roof", "no roof", 0, 0},

		{"hung nowhere", func(d *box.Design) {
			d.Walls = nil
			d.Features = append(d.Features, box.Hang{})
		}, "Features[1].Hang.Heights", "no-room", "neither", 0, 0},
		{"keyhole without a head", cut(box.Hang{Shape: box.Keyhole{Head: 6, Slot: 6, Drop: 9}}), "Features[1].Hang.Shape.Keyhole.Slot", "range", "slip through", 1, 5.7},
		{"drop too short", cut(box.Hang{Shape: box.Keyhole{Head: 12, Slot: 6, Drop: 5}}), "Features[1].Hang.Shape.Keyhole.Drop", "range", "5", 6, 10000},
		{"hung over the edge", cut(box.Hang{Heights: []box.MM{900}}), "Features[1].Hang", "off-part", "past the edge", 0, 0},
		{"drip as deep as the roof", cut(box.DripGroove{Depth: 15}), "Features[1].DripGroove.Depth", "range", "15", 0.1, 14.5},
		{"drip on the front", cut(box.DripGroove{On: []box.Part{box.Front}}), "Features[1].DripGroove.On[0]", "no-roof", "front", 0, 0},
		{"drip at the edge", cut(box.DripGroove{Inset: 2}), "Features[1].DripGroove.Inset", "range", "2", 2.5, 10000},
		{"slot wider than the wall", cut(box.EavesVents{Width: 149, Height: 10}), "Features[1].EavesVents.Width", "range", "149", 1, 148},
		{"slot down to the floor", cut(box.EavesVents{Width: 60, Height: 220}), "Features[1].EavesVents.Height", "range", "220", 0, 0},
		{"slot in the long back", cut(box.EavesVents{On: []box.Part{box.Back}, Width: 60, Height: 10}), "Features[1].EavesVents.On[0]", "no-eaves", "back", 0, 0},
		{"rounder than thick", cut(box.Edging{Round: 8}), "Features[1].Edging.Round", "range", "half the thickness", 0, 7.5},
		{"feathers of a square", cut(box.Edging{Blunt: 1, Feather: 90}), "Features[1].Edging.Feather", "range", "90", 5, 80},

		{"twice", func(d *box.Design) {
			d.Outer = []box.Outer{box.Batten{Name: "b"}}
			d.Free = []box.Free{{Name: "b", Outline: outline.Rectangle(0, 0, 9, 9), At: box.Place{Z: 900}}}
		}, "Outer[0].Batten.Name", "twice", "another part", 0, 0},
		{"the name of a cover", func(d *box.Design) {
			d.Outer = []box.Outer{box.Batten{Name: "cover"}}
			d.Opens = []box.Opening{box.Inspection{On: box.Left, Width: 60, Height: 60}}
		}, "Outer[0].Batten.Name", "twice", "another part", 0, 0},
		{"no name", out(box.Tunnel{Long: 20}), "Outer[0].Tunnel.Name", "no-name", "", 0, 0},
		{"nil", out(nil), "Outer[0]", "unknown-value", "outer element", 0, 0},
		{"pointer", out((*box.Feet)(nil)), "Outer[0]", "unknown-value", "outer element", 0, 0},
	})
	// Outer elements without a box.
	_, ps := tryResolve(t, "free", box.Design{Name: "free", Board: thick(10), Free: []box.Free{{Name: "f", Outline: outline.Rectangle(0, 0, 9, 9)}}, Outer: []box.Outer{box.Felt{}}})
	require.NotEmpty(t, ps)
	assert.Equal(t, "Outer", ps[0].Path)
	// On a footprint that is none for them.
	hexagon := box.Design{Name: "hexagon", Board: thick(15), Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 6, Across: 200}, Floor: box.FloorBetween{}, Roof: box.Flat{}}
	for path, change := range map[string]func(*box.Design){
		"Inner[0].Baffles":           in(box.Baffles{Name: "b", Count: 1}),
		"Inner[0].Lobby":             in(box.Lobby{Name: "b", Deep: 20, Shape: round}),
		"Inner[0].FalseFloor":        in(box.FalseFloor{Name: "b", Room: 20}),
		"Inner[0].BeeBlock":          in(box.BeeBlock{Name: "b", Rows: []box.BeeRow{{Diameter: 4, Depth: 5}}}),
		"Inner[0].Shelf.Gaps.Left":   in(box.Shelf{Name: "b", Gaps: box.Gaps{Left: 3}}),
		"Outer[0].Feet":              out(box.Feet{Name: "f", Width: 20}),
		"Outer[0].Batten.On":         out(box.Batten{Name: "f"}),
		"Outer[0].CoverStrip.On":     out(box.CoverStrip{Name: "f", Height: 20}),
		"Outer[0].SplitBatten.On":    out(box.SplitBatten{Name: "f", Height: 60}),
		"Outer[0].EntrancePlate.On":  out(box.EntrancePlate{Name: "f", Width: 60, Height: 60}),
		"Outer[0].LandingBoard.Deep": out(box.LandingBoard{Name: "f", Width: 60}),
	} {
		_, ps := tryResolve(t, path, hexagon.With(change))
		found := false
		for _, x := range ps {
			found = found || x.Path == path
		}
		assert.True(t, found, "%s: %v", path, ps)
	}
}

// elements are one of each, good in the worked example.
var elements = []any{
	box.Shelf{Name: "x", Above: 60, Gaps: box.Gaps{Front: 20}}, box.FalseFloor{Name: "x", Room: 20, Play: 2, Rim: 10, Hole: 8},
	box.Baffles{Name: "x", Run: box.RunLeftToRight, Count: 2, Crevice: 20, Above: 10, Room: 20}, box.Lobby{Name: "x", Behind: box.Left, Deep: 40, Shape: box.Round{Diameter: 30}, At: box.Anchor{Up: 60}, Height: 150},
	box.BeeBlock{Name: "x", Height: 100, Play: 1, Spacing: 20, Margin: 8, Rows: []box.BeeRow{{Diameter: 6, Depth: 12, Count: 3, Repeat: 2}}},
	box.Partition{Name: "x", At: 20, Above: 5, Height: 100},
	box.EntrancePlate{Name: "x", Hole: box.Round{Diameter: 28}, Width: 60, Height: 60, Screws: 4}, box.Tunnel{Name: "x", Width: 40, Height: 40, Long: 50},
	box.Batten{Name: "x", Right: 5, Above: 20, Width: 40, Height: 100, Past: 10, Hole: box.Round{Diameter: 6}, Inset: 20, Screws: 2},
	box.SplitBatten{Name: "x", Right: 5, Above: 20, Width: 100, Height: 80, Bevel: 40, Screws: 2, Hole: box.Round{Diameter: 5}},
	box.Strap{Trunk: 200, Width: 20, Heights: []box.MM{60}, Apart: 80, Spare: 100}, box.Feet{Name: "x", Width: 30, Length: 40, Inset: 10},
	box.PoleSocket{Name: "x", Hole: box.Round{Diameter: 30}, Width: 80, Deep: 80, Layers: 2}, box.CoverStrip{Name: "x", Height: 30},
	box.RidgeCap{Name: "x", Width: 50, Past: 5}, box.Felt{What: "felt", Turn: 30, Up: 20, Lap: 10},
	box.LandingBoard{Name: "x", Below: 30, Width: 80, Deep: 50, Slope: 5, Grooves: 15},
	box.Hang{Shape: box.Keyhole{Head: 12, Slot: 6, Drop: 14}, Heights: []box.MM{150}, Apart: 40},
	box.DripGroove{Width: 3, Depth: 4, Inset: 12}, box.EavesVents{Width: 50, Height: 10, Right: 5}, box.Edging{Round: 2, Blunt: 1, Feather: 40},
}

// put adds an element where it belongs.
func put(d *box.Design, x any) {
	switch x := x.(type) {
	case box.Feature:
		d.Features = append(d.Features, x)
	case box.Outer:
		d.Outer = append(d.Outer, x)
	case box.Inner:
		d.Inner = append(d.Inner, x)
	}
	if _, ok := x.(box.RidgeCap); ok {
		d.Walls, d.Roof = nil, box.Gable{Pitch: 40, Over: box.Overhangs{All: 40}}
	}
}

// numbers calls do with the setter of every number in a value, slices and shapes
// included.
func numbers(v reflect.Value, path string, do func(path string, set func(float64))) {
	switch v.Kind() {
	case reflect.Float64:
		do(path, v.SetFloat)
	case reflect.Int:
		do(path, func(x float64) { v.SetInt(int64(math.Max(math.Min(x, 1e15), -1e15))) })
	case reflect.Struct:
		for i := range v.NumField() {
			numbers(v.Field(i), path+"."+v.Type().Field(i).Name, do)
		}
	case reflect.Slice:
		for i := range v.Len() {
			numbers(v.Index(i), fmt.Sprintf("%s[%d]", path, i), do)
		}
	case reflect.Interface:
		if !v.IsNil() {
			c := reflect.New(v.Elem().Type()).Elem()
			c.Set(v.Elem())
			numbers(c, path+"."+c.Type().Name(), func(p string, set func(float64)) {
				do(p, func(x float64) { set(x); v.Set(c) })
			})
		}
	}
}

// A number that is none, or is absurd, in any field of any element: never a plan of
// nonsense, never a panic, and always a place in the design that starts with the
// element's own path.
func TestElementsWithBadNumbers(t *testing.T) {
	tried := 0
	for _, x := range elements {
		good := hung.With(func(d *box.Design) { put(d, x) })
		resolve(t, good)
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e9, 1e9, 1e-300} {
			count := 0
			numbers(clone(x), "", func(string, func(float64)) { count++ })
			for i := range count {
				c, k, name := clone(x), 0, ""
				numbers(c, "", func(path string, set func(float64)) {
					if k == i {
						set(bad)
						name = path
					}
					k++
				})
				what := fmt.Sprintf("%T%s = %g", x, name, bad)
				d := hung.With(func(d *box.Design) { put(d, c.Interface()) })
				p, ps := tryResolve(t, what, d)
				tried++
				integer := strings.HasSuffix(name, "Count") || strings.HasSuffix(name, "Screws") || strings.HasSuffix(name, "Layers") || strings.HasSuffix(name, "Repeat") ||
					strings.HasSuffix(name, "Entrance") || strings.HasSuffix(name, "Run") || strings.HasSuffix(name, "Grain") || strings.HasSuffix(name, "Datum") || strings.HasSuffix(name, "Level")
				if bad == 1e-300 || integer && math.IsNaN(bad) {
					continue // may be legal: an offset, a gap
				}
				if !assert.Nil(t, p, what) {
					continue
				}
				in := false
				for _, y := range ps {
					in = in || strings.Contains(y.Path, reflect.TypeOf(x).Name())
				}
				assert.True(t, in, "%s: %v", what, ps)
			}
		}
	}
	t.Logf("%d bad numbers in %d elements", tried, len(elements))
}

func clone(x any) reflect.Value {
	v := reflect.New(reflect.TypeOf(x)).Elem()
	v.Set(reflect.ValueOf(x))
	for i := range v.NumField() { // slices are shared else
		if f := v.Field(i); f.Kind() == reflect.Slice {
			s := reflect.MakeSlice(f.Type(), f.Len(), f.Len())
			reflect.Copy(s, f)
			f.Set(s)
		}
	}
	return v
}
