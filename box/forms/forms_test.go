package forms_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/forms"
)

var (
	larch = box.Board{Thickness: 18, Measured: 17.6}
	thin  = box.Board{Thickness: 15, Measured: 14.6}
	ply   = box.Board{Thickness: 12, Grain: box.GrainNone}
)

// form is a form at a size that makers use, and what its cavity should be.
type form struct {
	name   string
	design box.Design
	inside [3]box.MM
}

var all = []form{
	{"hole box", forms.HoleBox(forms.Hole{Name: "hole box", Board: thin, Inside: box.Cavity{Width: 120, Depth: 120, Height: 240}, Hole: 32, Above: 170}), [3]box.MM{120, 120, 240}},
	// 140 clear behind a lip of 14.6.
	{"open front", forms.OpenFront(forms.Open{Name: "open front", Board: thin, Inside: box.Cavity{Width: 140, Depth: 140, Height: 170}, Lip: 100}), [3]box.MM{140, 154.6, 170}},
	// The hatch of a box half as deep as 300 is 150 wide; its cover comes from a board.
	{"narrow owl box", forms.OwlBox(forms.Owl{Name: "narrow owl box", Board: box.Board{Thickness: 18, Width: 160}, Inside: box.Cavity{Width: 160, Depth: 300, Height: 800}, Width: 120, Height: 120, Above: 500}).With(func(d *box.Design) {
		d.MadeUp = []box.MadeUp{{Of: box.Left}, {Of: box.Right}, {Of: box.Front}, {Of: box.Back}, {Of: box.Roof}, {Of: box.Floor}}
	}), [3]box.MM{160, 300, 800}},
	// Three of 130 and two partitions of 17.6.
	{"terrace", forms.Terrace(forms.Row{Name: "terrace", Board: larch, Homes: 3, Inside: box.Cavity{Width: 130, Depth: 150, Height: 250}, Hole: 32, Above: 150}), [3]box.MM{425.2, 150, 250}},
	{"shelf", forms.Shelf(forms.Ledge{Name: "shelf", Board: larch, Inside: box.Cavity{Width: 203, Depth: 152, Height: 203}}), [3]box.MM{203, 169.6, 203}},
	{"owl box", forms.OwlBox(forms.Owl{Name: "owl box", Board: larch, Inside: box.Cavity{Width: 300, Depth: 300, Height: 800}, Width: 120, Height: 120, Above: 500}), [3]box.MM{300, 300, 800}},
	{"swift box", forms.SwiftBox(forms.Swift{Name: "swift box", Board: larch, Inside: box.Cavity{Width: 400, Depth: 210, Height: 120}, Slot: box.Slot{Width: 60, Height: 28}, Above: 30, Aside: 130}), [3]box.MM{400, 210, 120}},
	// Four crevices of 20 and three baffles of 12.
	{"bat box", forms.BatBox(forms.Bat{Name: "bat box", Board: larch, Baffle: ply, Width: 300, Height: 400, Crevices: 4, Crevice: 20}), [3]box.MM{300, 116, 400}},
	{"one crevice", forms.BatBox(forms.Bat{Name: "one crevice", Board: larch, Width: 210, Height: 330, Crevices: 1, Crevice: 20, Landing: 70}), [3]box.MM{210, 20, 330}},
	{"dormouse box", forms.DormouseBox(forms.Dormouse{Name: "dormouse box", Board: thin, Inside: box.Cavity{Width: 120, Depth: 120, Height: 210}, Hole: 32, Above: 130}), [3]box.MM{120, 120, 210}},
	{"hedgehog house", forms.HedgehogHouse(forms.Hedgehog{Name: "hedgehog house", Board: larch, Inside: box.Cavity{Width: 520, Depth: 400, Height: 300}, Doorway: 140, Lobby: 150}), [3]box.MM{520, 400, 300}},
	{"bee block", forms.BeeBlock(forms.Bees{Name: "bee block", Board: larch, Block: box.Board{Thickness: 160}, Width: 180, Height: 200,
		Rows: []box.BeeRow{{Diameter: 8, Depth: 150, Repeat: 3}, {Diameter: 6, Depth: 130, Repeat: 2}, {Diameter: 4, Depth: 120, Repeat: 2}}}), [3]box.MM{180, 160, 200}},
	{"planter", forms.Planter(forms.Trough{Name: "planter", Board: larch, Inside: box.Cavity{Width: 600, Depth: 220, Height: 220}, Lean: 8}), [3]box.MM{600, 220, 220}},
}

// Every form resolves, fits, is drawn and closed, goes together, and has the
// cavity that was asked for.
func TestForms(t *testing.T) {
	for _, f := range all {
		t.Run(f.name, func(t *testing.T) {
			p := boxtest.Resolve(t, f.design)
			boxtest.Sound(t, p)
			boxtest.Cavity(t, p, f.inside[0], f.inside[1], f.inside[2])
			assert.Equal(t, f.name, p.Name())
			for _, x := range p.Findings() {
				assert.NotEqual(t, box.Fault, x.Severity, x.Why)
				assert.NotEqual(t, "wider-than-board", x.Code, x.Why)
			}
		})
	}
}

// What makes each form what it is.
func TestWhatFormsHave(t *testing.T) {
	plans := map[string]*box.Plan{}
	for _, f := range all {
		plans[f.name] = f.design.MustResolve()
	}
	has := func(name string, parts ...box.Part) {
		for _, q := range parts {
			_, ok := plans[name].Piece(q)
			assert.True(t, ok, "%s has no %s", name, q)
		}
	}
	count := func(name string, part box.Part, use box.Use) (n int) {
		q, ok := plans[name].Piece(part)
		require.True(t, ok, "%s has no %s", name, part)
		for _, op := range q.Panel.Ops {
			if op.Use == use && op.Kind != box.OpEngrave {
				n++
			}
		}
		return n
	}
	strokes := func(name string, part box.Part, use box.Use) (n int) {
		q, _ := plans[name].Piece(part)
		for _, op := range q.Panel.Ops {
			if op.Use == use {
				n += len(op.Strokes)
			}
		}
		return n
	}
	has("hole box", "free/cover strip")
	assert.Equal(t, 1, count("hole box", box.Front, box.UseEntrance))
	assert.Equal(t, 4, count("hole box", box.Floor, box.UseDrain))
	assert.Equal(t, 2, count("hole box", box.Back, box.UseOpening))
	assert.Equal(t, 1, strokes("hole box", box.Roof, box.UseDrip))
	assert.Positive(t, strokes("hole box", box.Front, box.UseGrip))
	// What is cleaned has a way in, which is proved; what is open anyway has none, nor
	// has the box of birds that keep their nest.
	ways := map[string]box.Part{"hole box": box.Front, "terrace": box.Roof, "owl box": "free/cover", "narrow owl box": "free/cover", "dormouse box": box.Roof, "hedgehog house": box.Roof}
	for name, p := range plans {
		var parts []box.Part
		for _, w := range p.Ways() {
			parts = append(parts, w.Part)
		}
		if part, opens := ways[name]; opens {
			assert.Equal(t, []box.Part{part}, parts, name)
		} else {
			assert.Empty(t, parts, name)
		}
	}
	has("open front", "inner/lip")
	_, ok := plans["open front"].Piece(box.Front)
	assert.False(t, ok)
	has("terrace", "inner/partition 1", "inner/partition 2", "free/batten")
	assert.Equal(t, 3, count("terrace", box.Front, box.UseEntrance))
	assert.Equal(t, 3, count("terrace", box.Floor, box.UseDrain))
	assert.Equal(t, 1, count("shelf", box.Left, box.UseOpening))
	has("owl box", "free/upper batten", "free/lower batten", "free/ledge")
	has("swift box", "free/split batten box", "free/split batten wall")
	has("bat box", "inner/baffle/1", "inner/baffle/3")
	// Rows every 12 from 88 below the floor's level to the top, less those by the hole
	// in the landing.
	assert.Greater(t, strokes("bat box", box.Back, box.UseGrip), 35)
	has("dormouse box", "free/left bar", "free/right bar")
	assert.Equal(t, 1, count("dormouse box", box.Back, box.UseEntrance))
	bar, _ := plans["dormouse box"].Piece("free/left bar")
	assert.EqualValues(t, 25, bar.Thickness)
	has("hedgehog house", "inner/lobby", "free/tunnel top", "free/tunnel bottom", "free/runner/1")
	felt := false
	for _, f := range plans["hedgehog house"].Fittings() {
		felt = felt || f.What == "roofing felt" && f.Area > 500*400
	}
	assert.True(t, felt)
	// 178 wide, 20 apart, 10 of wood: 8 in each of seven rows.
	assert.Equal(t, 56, count("bee block", "inner/block", box.UsePocket))
	assert.Equal(t, 5, count("planter", box.Floor, box.UseDrain))
}

// A form is a plain design: changed with With, it stays what it was.
func TestFormsCanBeChanged(t *testing.T) {
	d := all[0].design
	steep := d.With(func(d *box.Design) {
		d.Roof = box.Pent{Pitch: 25, Over: box.Overhangs{Front: 60, Left: 30, Right: 30}}
		d.Walls[0].Above = 120
		d.Name = "steep"
	})
	boxtest.Sound(t, boxtest.Resolve(t, steep))
	assert.EqualValues(t, 80, d.Walls[0].Above)
	again := forms.HoleBox(forms.Hole{Name: "hole box", Board: thin, Inside: box.Cavity{Width: 120, Depth: 120, Height: 240}, Hole: 32, Above: 170})
	assert.EqualValues(t, 80, again.Walls[0].Above, "forms share nothing")
	assert.Equal(t, d, again)
	boxtest.Sound(t, boxtest.Resolve(t, d.With(func(d *box.Design) { d.Roof = box.Gable{Pitch: 45, Over: box.Overhangs{All: 30}} }))) // as in doc.go
	plain := d.With(func(d *box.Design) {
		d.Walls, d.Outer, d.Roof = nil, nil, box.Gable{Pitch: 45, Over: box.Overhangs{All: 30}}
		d.Features = d.Features[:1]
	})
	boxtest.Sound(t, boxtest.Resolve(t, plain))
}

// Boards of many thicknesses and boxes of many sizes: every form takes them.
func TestFormsOfManySizes(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	mm := func(lo, hi float64) box.MM { return box.MM(int(10*(lo+(hi-lo)*r.Float64()))) / 10 }
	for i := range 40 {
		b := box.Board{Thickness: mm(12, 25)}
		in := box.Cavity{Width: mm(110, 260), Depth: mm(110, 260), Height: mm(200, 500)}
		n := fmt.Sprint(i)
		for k, d := range []box.Design{
			forms.HoleBox(forms.Hole{Name: n, Board: b, Inside: in, Hole: mm(25, 50), Above: in.Height - 70}),
			forms.OpenFront(forms.Open{Name: n, Board: b, Inside: in, Lip: mm(30, 120)}),
			forms.Terrace(forms.Row{Name: n, Board: b, Homes: 1 + r.IntN(5), Inside: in, Hole: mm(25, 50), Above: in.Height - 70}),
			forms.Shelf(forms.Ledge{Name: n, Board: b, Inside: in, Lip: mm(15, 50), Rim: mm(30, 80)}),
			forms.OwlBox(forms.Owl{Name: n, Board: b, Inside: box.Cavity{Width: in.Width + 100, Depth: in.Depth + 100, Height: in.Height + 300}, Width: mm(80, 140), Height: mm(80, 140), Above: in.Height}),
			forms.SwiftBox(forms.Swift{Name: n, Board: b, Inside: box.Cavity{Width: in.Width + 150, Depth: in.Depth, Height: mm(100, 160)}, Pitch: box.Deg(mm(15, 45)), Slot: box.Slot{Width: 60, Height: 28}, Above: mm(10, 40), Aside: mm(-60, 60)}),
			forms.BatBox(forms.Bat{Name: n, Board: b, Baffle: box.Board{}, Width: in.Width, Height: in.Height, Crevices: 1 + r.IntN(5), Crevice: mm(15, 25), Landing: mm(70, 150)}),
			forms.DormouseBox(forms.Dormouse{Name: n, Board: b, Inside: in, Hole: mm(25, 40), Above: in.Height - 90, Gap: mm(20, 40)}),
			forms.HedgehogHouse(forms.Hedgehog{Name: n, Board: b, Inside: box.Cavity{Width: mm(400, 600), Depth: mm(300, 500), Height: mm(250, 350)}, Doorway: mm(120, 140), Lobby: mm(145, 180), Tunnel: mm(200, 350)}),
			forms.BeeBlock(forms.Bees{Name: n, Board: b, Block: box.Board{Thickness: mm(100, 180)}, Width: in.Width, Height: in.Height, Rows: []box.BeeRow{{Diameter: mm(4, 9), Depth: 90, Repeat: 4}}}),
			forms.Planter(forms.Trough{Name: n, Board: b, Inside: box.Cavity{Width: mm(300, 800), Depth: in.Depth, Height: in.Depth}, Lean: box.Deg(mm(0, 10))}),
		} {
			p, err := d.Resolve()
			if !assert.NoError(t, err, "form %d of %+v and %+v", k, b, in) {
				continue
			}
			assert.NoError(t, boxtest.CheckFits(p), "form %d", k)
			assert.NoError(t, boxtest.CheckMeshes(p), "form %d", k)
		}
	}
}

// A form is at most 25 lines.
func TestFormsAreShort(t *testing.T) {
	fs := token.NewFileSet()
	entries, err := os.ReadDir(".")
	require.NoError(t, err)
	n := 0
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fs, e.Name(), nil, 0)
		require.NoError(t, err)
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Name.IsExported() {
				n++
				lines := fs.Position(fn.End()).Line - fs.Position(fn.Pos()).Line + 1
				assert.LessOrEqual(t, lines, 25, fn.Name.Name)
			}
		}
	}
	assert.Equal(t, 11, n)
}

func ExampleHoleBox() {
	d := forms.HoleBox(forms.Hole{
		Name:   "orchard 12",
		Board:  box.Board{Thickness: 15, Measured: 14.6},
		Inside: box.Cavity{Width: 120, Depth: 120, Height: 240},
		Hole:   32, Above: 170,
	})
	d = d.With(func(d *box.Design) { d.Walls[0].Above = 100 }) // a longer back
	p := d.MustResolve()
	back, _ := p.Piece(box.Back)
	fmt.Printf("back %.1f x %.1f\n", back.Length, back.Width)
	for _, f := range p.Fittings() {
		fmt.Println(f.Count, f.What, f.Size)
	}
	// Output:
	// back 450.6 x 149.2
	// 2 screw 4 x 25
	// 2 nail 3 x 50
	// 1 hook and eye 50
	// 2 screw or nail to hang the box by for a hole 6 across
}

// Floors between walls are dry, so that solid wood may swell: 1.5 % of what they are
// wide across the grain (EN 1313-1: 0.25 % for each of 6 per cent of moisture), in
// a gap or under their edges; floors of sheet stock fit.
func TestFloorsMaySwell(t *testing.T) {
	seen := 0
	for _, x := range all {
		d := x.design
		f, between := d.Floor.(box.FloorBetween)
		if !between || slices.ContainsFunc(d.Walls, func(w box.Wall) bool { return w.Open || w.Lean != 0 }) {
			continue
		}
		assert.True(t, f.Dry, d.Name)
		for _, grain := range []box.Grain{box.GrainAuto, box.GrainNone} {
			p, err := d.With(func(d *box.Design) {
				d.MadeUp = nil
				d.Boards = map[box.Part]box.Board{box.Floor: {Thickness: d.Board.Thickness, Width: d.Board.Width, Grain: grain}}
			}).Resolve()
			require.NoError(t, err, d.Name)
			floor, _ := p.Piece(box.Floor)
			seen++
			_, deep, _ := p.Inside()
			room := box.MM(0)
			for _, m := range p.Seams() {
				if m.Under == box.Floor {
					assert.False(t, m.Glued(), "%s: %s", d.Name, m.Over)
				}
			}
			for _, wall := range []box.Part{box.Front, box.Back} {
				q, ok := p.Piece(wall)
				if !ok {
					continue
				}
				for _, op := range q.Panel.Ops {
					if op.Guest == box.Floor {
						room += op.To - op.From
					}
				}
			}
			room += deep - box.MM(floor.Panel.Machined.Extents().Height())
			want := 0.015 * float64(deep)
			if grain == box.GrainNone {
				want = 0
			}
			if f.Joint != nil {
				want += 2 * 0.2 // the usual play of a housing
			}
			assert.InDelta(t, want, float64(room), 1e-6, "%s, grain %v", d.Name, grain)
		}
	}
	assert.GreaterOrEqual(t, seen, 8) // four forms, each twice
}
