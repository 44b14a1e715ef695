package box_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"sort"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/outline"
	"holt.example/joints"
)

// everyKind are the exported types of the package that belong to one of its
// closed interfaces, read from the source, so that none can be forgotten.
func everyKind(t *testing.T) []string {
	t.Helper()
	marks := []string{"shape", "feature", "inner", "outer", "opening", "hinge", "profile", "roof", "floor", "size", "footprint"}
	seen := map[string]bool{}
	files, err := os.ReadDir(".")
	require.NoError(t, err)
	for _, e := range files {
		if name := e.Name(); !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, 0)
		require.NoError(t, err)
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Recv == nil || !slices.Contains(marks, fn.Name.Name) {
				continue
			}
			if id, ok := fn.Recv.List[0].Type.(*ast.Ident); ok && id.IsExported() {
				seen["box."+id.Name] = true
			}
		}
	}
	var out []string
	for k := range seen {
		out = append(out, k)
	}
	sort.Strings(out)
	return out
}

// kindsIn adds the types of all values in a design.
func kindsIn(v reflect.Value, seen map[string]bool) {
	switch v.Kind() {
	case reflect.Interface, reflect.Pointer:
		if !v.IsNil() {
			kindsIn(v.Elem(), seen)
		}
	case reflect.Slice:
		for i := range v.Len() {
			kindsIn(v.Index(i), seen)
		}
	case reflect.Struct:
		seen[v.Type().String()] = true
		for i := range v.NumField() {
			kindsIn(v.Field(i), seen)
		}
	}
}

// base draws a box of any size, footprint, roof and floor.
func (r dice) base() box.Design {
	d := box.Design{Name: "any", Board: box.Board{Thickness: 15, Width: 90},
		Size:  []box.Size{box.Cavity{Width: 150, Depth: 150, Height: 200}, box.Outside{Width: 180, Depth: 180, Height: 220}, box.BoardWidth{Width: 160, Height: 200}}[r.IntN(3)],
		Roof:  []box.RoofForm{box.Pent{Pitch: 12, Over: box.Overhangs{All: 30}}, box.Gable{Pitch: 40, Over: box.Overhangs{All: 30}}, box.Hip{Pitch: 35, Over: box.Overhangs{All: 30}}, box.Flat{Over: box.Overhangs{All: 20}}, box.NoRoof{}}[r.IntN(5)],
		Floor: []box.FloorForm{box.FloorBetween{Raise: 15}, box.FloorBetween{Dry: true}, box.FloorBetween{Raise: 15, Joint: joints.Housing{Dry: true}}, box.FloorUnder{}, box.NoFloor{}}[r.IntN(5)]}
	if r.IntN(5) == 0 {
		d.Size = box.Cavity{Height: 200}
		d.Footprint = []box.Footprint{box.Regular{Sides: 6, Across: 160}, box.Polygon{Points: []box.Point{{X: -80, Y: -70}, {X: 80, Y: -70}, {X: 80, Y: 60}, {X: 0, Y: 110}, {X: -80, Y: 60}}}}[r.IntN(2)]
	}
	if _, pent := d.Roof.(box.Pent); pent && d.Footprint == nil && r.IntN(2) == 0 {
		d.Walls = []box.Wall{{On: box.Back, Above: 80, Below: 60}}
	}
	front := box.Front
	if d.Footprint != nil {
		front = box.WallN(1)
	}
	d.Features = []box.Feature{box.Entrance{On: front, Shape: r.anyShape(30), Above: r.mm(80, 110)}}
	d.Free = []box.Free{{Name: "board", Outline: outline.Rectangle(-90, -50, 90, 150), At: box.Place{Y: -400}}}
	return d
}

func (r dice) anyShape(s float64) box.Shape {
	switch r.IntN(5) {
	case 0:
		return box.Rect{Width: r.mm(s/2, s), Height: r.mm(s/2, s), Corner: 2}
	case 1:
		return box.Keyhole{Head: r.mm(s/3, s/2), Slot: r.mm(s/6, s/4), Drop: r.mm(s/3, s/2)}
	case 2:
		return box.Freeform{Outline: outline.RegularPolygon(outline.Point{}, 5, s/2, 90)}
	}
	return r.shape(s)
}

// add puts one thing of any kind into a design.
func (r dice) add(d *box.Design) {
	wall := func(p box.Part) box.Part {
		if d.Footprint == nil {
			return p
		}
		return map[box.Part]box.Part{box.Front: box.WallN(1), box.Right: box.WallN(2), box.Left: box.WallN(3), box.Back: box.WallN(4)}[p]
	}
	switch r.IntN(7) {
	case 0:
		d.Features = append(d.Features, r.feature())
	case 1:
		d.Features = append(d.Features, []box.Feature{box.Vents{On: []box.Part{wall(box.Left), wall(box.Right)}}, box.Drains{}, box.CornerCuts{}, box.PartMarks{Box: "7"},
			box.Cut{On: "free/board", Shape: r.anyShape(24)}}[r.IntN(5)])
	case 2, 5, 6:
		switch x := r.element().(type) {
		case box.Inner:
			d.Inner = append(d.Inner, x)
		case box.Outer:
			switch x.(type) { // on the roofs that they are for
			case box.RidgeCap:
				d.Walls, d.Roof = nil, box.Gable{Pitch: 40, Over: box.Overhangs{All: 30}}
			case box.CoverStrip:
				d.Walls, d.Roof, d.Footprint = []box.Wall{{On: box.Back, Above: 80}}, box.Pent{Pitch: 12, Over: box.Overhangs{All: 30}}, nil
				if d.Size == (box.Cavity{Height: 200}) {
					d.Size = box.Cavity{Width: 150, Depth: 150, Height: 200}
				}
				d.Features[0] = box.Entrance{Shape: box.Round{Diameter: 30}, Above: 90}
			}
			d.Outer = append(d.Outer, x)
		case box.Feature:
			d.Features = append(d.Features, x)
		}
		if r.IntN(4) == 0 {
			d.Inner = append(d.Inner, box.Partition{Name: "y", Across: box.PartitionRun(r.IntN(2)), At: r.mm(-20, 20), Height: r.mm(40, 80)})
		}
	case 3:
		hinged := box.Hinged{Part: wall(box.Front), At: wall(box.Right), Hinge: []box.Hinge{box.RubberStrip{}, box.Leather{}, box.Butts{}}[r.IntN(3)], Angle: 20, Headroom: 8}
		switch r.IntN(8) {
		case 0:
			d.Opens = append(d.Opens, hinged)
		case 1:
			d.Opens = append(d.Opens, hinged, box.TurnButton{Part: hinged.Part, At: wall(box.Left)})
		case 2:
			d.Opens = append(d.Opens, hinged, box.HookAndEye{Part: hinged.Part, At: wall(box.Left)})
		case 3:
			d.Opens = append(d.Opens, box.Stopper{Left: r.IntN(2) == 0, Board: box.Board{Thickness: 12}})
		case 4:
			d.Opens = append(d.Opens, box.Pivoted{Part: hinged.Part, Angle: 20})
		case 5, 7:
			d.Opens = append(d.Opens, []box.Opening{box.Sliding{Part: hinged.Part}, box.Removable{Part: wall(box.Right)}}[r.IntN(2)])
		case 6:
			d.Opens = append(d.Opens, box.Inspection{On: wall(box.Right), Width: 50, Height: 50, Sill: 30})
		}
	case 4:
		d.MadeUp = append(d.MadeUp, box.MadeUp{Of: []box.Part{wall(box.Left), wall(box.Right), box.Floor, box.AllRoof}[r.IntN(4)], Joint: edgeJoint(r.Rand, edgeJoints[r.IntN(4)])})
	}
}

// Things of every kind together, two or three at a time, on boxes of every size,
// footprint, roof and floor: a plan, or problems that are fair. Of a plan parts
// fit, outlines are sound, meshes closed and volumes those of the meshes. The
// table says how often each kind was in a design, and in one that was accepted;
// the kinds are read from the source.
func TestRandomOfEveryKind(t *testing.T) {
	each, least := 220, 5
	if testing.Short() {
		each, least = 90, 1
	}
	var mu sync.Mutex
	accepted, thrown := map[string]int{}, map[string]int{}
	all, made := 0, 0
	t.Run("all", func(t *testing.T) {
		for seed := range uint64(8) {
			t.Run("", func(t *testing.T) {
				t.Parallel()
				r := dice{rand.New(rand.NewPCG(seed, 2026))}
				for i := range each {
					d := r.base()
					for range 1 + r.IntN(2) {
						r.add(&d)
					}
					seen := map[string]bool{}
					kindsIn(reflect.ValueOf(d), seen)
					p, ps := tryResolve(t, fmt.Sprint(seed, " ", i), d)
					mu.Lock()
					all++
					for k := range seen {
						thrown[k]++
						if p != nil {
							accepted[k]++
						}
					}
					if p != nil {
						made++
					}
					mu.Unlock()
					if p == nil {
						for _, x := range ps {
							assert.NotContains(t, []string{"outline", "solid", "leak", "no-part"}, x.Code, "%d %d: %v\n%+v", seed, i, x, d)
						}
						continue
					}
					for _, check := range []func(*box.Plan) error{boxtest.CheckFits, boxtest.CheckMeshes, boxtest.CheckOutlines} {
						assert.NoError(t, check(p), "%d %d\n%+v", seed, i, d)
					}
					for _, q := range p.Pieces() {
						if m, err := p.Mesh(q.Part); assert.NoError(t, err) {
							assert.InDelta(t, q.Volume, m.Volume(), 1e-6*q.Volume, "%d %d %s", seed, i, q.Part)
						}
					}
				}
			})
		}
	})
	t.Logf("%d of %d designs accepted", made, all)
	for _, k := range everyKind(t) {
		t.Logf("%-20s %3d of %3d accepted", k, accepted[k], thrown[k])
		assert.GreaterOrEqual(t, accepted[k], least, "%s: never drawn, or too often refused", k)
	}
}
