package box_test

import (
	"fmt"
	"math"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/joints"
)

func boards(mm ...box.MM) box.Axis {
	a := box.Axis{Name: "board"}
	for _, t := range mm {
		a.Values = append(a.Values, box.Value{Name: fmt.Sprint(t), Set: func(d *box.Design) { d.Board.Thickness, d.Board.Measured = t, 0 }})
	}
	return a
}

var roofs = box.Axis{Name: "roof", Values: []box.Value{
	{Name: "pent", Set: func(d *box.Design) { d.Roof = box.Pent{} }},
	{Name: "gable", Set: func(d *box.Design) { d.Walls, d.Roof = nil, box.Gable{} }},
}}

// catalogue is ten boards by ten widths by ten heights: a thousand boxes.
func catalogue() box.Variants {
	v := box.Variants{Base: orchard, Axes: []box.Axis{boards(12, 13, 14, 15, 16, 17, 18, 19, 20, 21), {Name: "width"}, {Name: "height"}}}
	for i := range 10 {
		w, h := 100+box.MM(10*i), 220+box.MM(10*i)
		v.Axes[1].Values = append(v.Axes[1].Values, box.Value{Name: fmt.Sprint(w), Set: func(d *box.Design) {
			s := d.Size.(box.Cavity)
			s.Width = w
			d.Size = s
		}})
		v.Axes[2].Values = append(v.Axes[2].Values, box.Value{Name: fmt.Sprint(h), Set: func(d *box.Design) {
			s := d.Size.(box.Cavity)
			s.Height = h
			d.Size = s
		}})
	}
	return v
}

func TestVariantsInOrder(t *testing.T) {
	v := box.Variants{Base: orchard, Axes: []box.Axis{boards(12, 15, 18), roofs}}
	require.NoError(t, v.Check())
	var keys, names []string
	for k, d := range v.All() {
		keys, names = append(keys, string(k)), append(names, d.Name)
		p, err := d.Resolve()
		require.NoError(t, err, k)
		again, ok := v.Find(k)
		require.True(t, ok, k)
		assert.Equal(t, d.Name, again.Name)
		q := resolve(t, again)
		assert.Equal(t, p.Pieces(), q.Pieces(), "%s", k)
	}
	assert.Equal(t, []string{"board=12,roof=pent", "board=12,roof=gable", "board=15,roof=pent", "board=15,roof=gable", "board=18,roof=pent", "board=18,roof=gable"}, keys)
	assert.Equal(t, "orchard pent 12 pent", names[0])
	assert.Equal(t, 6, v.Len())
	assert.Equal(t, "orchard pent", orchard.Name)
	assert.Len(t, orchard.Walls, 1)
}

func TestVariantsStopEarly(t *testing.T) {
	made := 0
	v := catalogue()
	v.Axes[2].Values[0].Set = func(d *box.Design) { made++ }
	for k := range v.All() {
		if strings.Contains(string(k), "width=110") {
			break
		}
	}
	// 100 is the first width: ten heights, and the first of 110.
	assert.Equal(t, 2, made)
}

func TestVariantsWithoutAxes(t *testing.T) {
	v := box.Variants{Base: orchard}
	n := 0
	for k, d := range v.All() {
		n++
		assert.Equal(t, box.Key(""), k)
		assert.Equal(t, "orchard pent", d.Name)
	}
	assert.Equal(t, 1, n)
	assert.Equal(t, 1, v.Len())
	_, ok := v.Find("")
	assert.True(t, ok)
	v.Axes = []box.Axis{boards(12), {Name: "none"}}
	for range v.All() {
		t.Error("an axis without values leaves nothing")
	}
	assert.Zero(t, v.Len())
}

func TestVariantsCheck(t *testing.T) {
	v := box.Variants{Axes: []box.Axis{
		{Name: "board", Values: []box.Value{{Name: "12", Set: func(*box.Design) {}}, {Name: "12", Set: func(*box.Design) {}}, {}}},
		{Name: "board"}, {Values: []box.Value{{Name: "a\x00"}}}}}
	err := v.Check()
	for _, want := range []string{
		"Axes[0].Values[1].Name: another value of this axis has the name \"12\"", "Axes[0].Values[2].Name: a name is needed", "Axes[0].Values[2].Set: a value says",
		"Axes[1].Name: another axis", "Axes[1].Values: an axis without values", "Axes[2].Name: a name is needed", "Axes[2].Values[0].Name: \"a\\x00\"",
	} {
		assert.ErrorContains(t, err, want)
	}
	big := box.Variants{}
	for range 20 {
		big.Axes = append(big.Axes, boards(1, 2, 3, 4, 5, 6, 7, 8, 9, 10))
	}
	assert.Equal(t, math.MaxInt, big.Len(), "ten to the twentieth")
}

// Keys do for file names, and no two names give one key.
func TestKeysOfHostileNames(t *testing.T) {
	names := []string{"a,b=c", "a", "../x", "con:|?*", "%2C", ",", "é", ""}
	v := box.Variants{Base: orchard, Axes: []box.Axis{{Name: "x=,/"}}}
	for _, n := range names {
		v.Axes[0].Values = append(v.Axes[0].Values, box.Value{Name: n})
	}
	seen := map[box.Key]bool{}
	for k := range v.All() {
		assert.False(t, seen[k], k)
		seen[k] = true
		assert.NotContains(t, string(k), "/")
		assert.False(t, strings.ContainsAny(string(k), `\:|?*"<>`), "%s", k)
		_, ok := v.Find(k)
		assert.True(t, ok, k)
	}
	assert.Len(t, seen, len(names))
	assert.True(t, seen["x%3D%2C%2F=..%2Fx"])
	_, ok := v.Find("x=a")
	assert.False(t, ok)
}

// A catalogue streams: after nine hundred more boxes no more memory is held
// than after the first hundred, within what a single plan takes.
func TestCatalogueStreams(t *testing.T) {
	held := func() uint64 {
		runtime.GC()
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	n, parts := 0, 0
	var first, last uint64
	for k, d := range catalogue().All() {
		p, err := d.Resolve()
		require.NoError(t, err, k)
		parts += len(p.Pieces())
		if n++; n == 100 {
			first = held()
		}
		if n == 1000 {
			last = held()
		}
	}
	assert.Equal(t, 1000, n)
	assert.Equal(t, 6000, parts)
	// A plan of six parts takes some 100 kB; nine hundred of them 90 MB.
	assert.Less(t, float64(last), float64(first)+1e6)
}

// BenchmarkVariants walks a catalogue without resolving it, and with.
func BenchmarkVariants(b *testing.B) {
	for _, resolve := range []bool{false, true} {
		b.Run(fmt.Sprintf("resolve=%t", resolve), func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				for _, d := range catalogue().All() {
					if resolve {
						if _, err := d.Resolve(); err != nil {
							b.Fatal(err)
						}
					}
				}
			}
		})
	}
}

// Every board that the group has in store, under both roofs.
func ExampleVariants() {
	v := box.Variants{
		Base: box.Design{
			Name: "orchard", Size: box.Cavity{Width: 120, Depth: 120, Height: 240}, Floor: box.FloorBetween{Raise: 10},
			Corners: box.Corners{Joint: joints.Rebate{}},
		},
		Axes: []box.Axis{
			{Name: "board", Values: []box.Value{
				{Name: "15", Set: func(d *box.Design) { d.Board = box.Board{Thickness: 15, Measured: 14.6} }},
				{Name: "18", Set: func(d *box.Design) { d.Board = box.Board{Thickness: 18} }},
			}},
			{Name: "roof", Values: []box.Value{
				{Name: "flat", Set: func(d *box.Design) { d.Roof = box.Flat{} }},
				{Name: "pent", Set: func(d *box.Design) { d.Roof = box.Pent{Pitch: 12} }},
			}},
		},
	}
	for key, design := range v.All() {
		q, _ := design.MustResolve().Piece(box.Left)
		fmt.Printf("%s: left %.1f x %.1f\n", key, q.Length, q.Width)
	}
	// The sides reach to the end of the rebate in the back, and so rise on by
	// (120 + 7) tan 12 = 27.0, or (120 + 9) tan 12 = 27.4.

	// Output:
	// board=15,roof=flat: left 264.6 x 134.0
	// board=15,roof=pent: left 291.6 x 134.0
	// board=18,roof=flat: left 268.0 x 138.0
	// board=18,roof=pent: left 295.4 x 138.0
}
