package box_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// choices are all that may stand in a field of an interface, by its method.
var choices = map[string][]any{
	"size":      {box.Cavity{}, box.Outside{}, box.BoardWidth{}},
	"footprint": {box.Polygon{}, box.Regular{}},
	"shape":     {box.Freeform{}, box.Polygon{}, box.Round{}, box.Rect{}, box.Slot{}, box.Oval{}, box.Arch{}, box.Regular{}, box.Keyhole{}},
	"roof":      {box.Flat{}, box.Pent{}, box.Gable{}, box.Hip{}, box.NoRoof{}},
	"floor":     {box.FloorBetween{}, box.FloorUnder{}, box.NoFloor{}},
	"hinge":     {box.RubberStrip{}, box.Leather{}, box.Butts{}},
	"inner":     {box.Partition{}, box.Baffles{}, box.Lobby{}, box.BeeBlock{}, box.Shelf{}, box.FalseFloor{}, box.EntrancePlate{}, box.Tunnel{}},
	"outer": {box.Batten{}, box.SplitBatten{}, box.Strap{}, box.CoverStrip{}, box.RidgeCap{}, box.EntrancePlate{}, box.Tunnel{}, box.LandingBoard{},
		box.Felt{}, box.Feet{}, box.PoleSocket{}},
	"feature": {box.Entrance{}, box.Vents{}, box.Drains{}, box.CornerCuts{}, box.Cut{}, box.Hang{}, box.DripGroove{}, box.EavesVents{}, box.Edging{},
		box.Engrave{}, box.GripGrooves{}, box.PartMarks{}, box.Text{}, box.Pattern{}, box.Rail{}, box.RoundCorners{}, box.Scallops{}},
	"opening": {box.Hinged{}, box.Pivoted{}, box.Sliding{}, box.Removable{}, box.Inspection{}, box.Stopper{}, box.TurnButton{}, box.HookAndEye{}},
}

// TestChoicesAreAll: the table above has every type that the source has, so that
// what is added to the package is looked at too.
func TestChoicesAreAll(t *testing.T) {
	names, err := filepath.Glob("*.go")
	require.NoError(t, err)
	want := map[string]map[string]bool{}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Recv == nil || choices[fn.Name.Name] == nil || fn.Type.Results != nil || len(fn.Type.Params.List) > 0 {
				continue
			}
			if id, ok := fn.Recv.List[0].Type.(*ast.Ident); ok {
				if want[fn.Name.Name] == nil {
					want[fn.Name.Name] = map[string]bool{}
				}
				want[fn.Name.Name][id.Name] = true
			}
		}
	}
	got := map[string]map[string]bool{}
	for m, xs := range choices {
		got[m] = map[string]bool{}
		for _, x := range xs {
			got[m][reflect.TypeOf(x).Name()] = true
		}
	}
	assert.Equal(t, want, got)
}

// fill puts something into every field, slice and map of v. A list of an interface
// holds all that it can; a single value is the first that fits.
func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				fill(v.Field(i))
			}
		}
	case reflect.Slice:
		n := 2
		if v.Type().Elem().Kind() == reflect.Interface {
			n = len(fitting(v.Type().Elem()))
		}
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			if v.Index(i).Kind() == reflect.Interface {
				setTo(v.Index(i), fitting(v.Type().Elem())[i])
			} else {
				fill(v.Index(i))
			}
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		k, x := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		fill(k)
		fill(x)
		v.SetMapIndex(k, x)
	case reflect.Interface:
		if f := fitting(v.Type()); len(f) > 0 {
			setTo(v, f[0])
		}
	case reflect.Int:
		v.SetInt(1)
	case reflect.Float64:
		v.SetFloat(1)
	case reflect.String:
		v.SetString("x")
	}
}

func setTo(v reflect.Value, x any) {
	n := reflect.New(reflect.TypeOf(x)).Elem()
	fill(n)
	v.Set(n)
}

func fitting(t reflect.Type) []any {
	for i := range t.NumMethod() {
		if xs := choices[t.Method(i).Name]; xs != nil {
			return xs
		}
	}
	return nil
}

// sharesIn lists what two values share: slices and maps that are the same in both.
func sharesIn(path string, a, b reflect.Value, out *[]string, seen map[string]int) {
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			sharesIn(path+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i), out, seen)
		}
	case reflect.Slice:
		seen[a.Type().String()]++
		if a.Len() > 0 && a.Pointer() == b.Pointer() {
			*out = append(*out, path)
		}
		for i := range a.Len() {
			sharesIn(fmt.Sprintf("%s[%d]", path, i), a.Index(i), b.Index(i), out, seen)
		}
	case reflect.Map:
		seen[a.Type().String()]++
		if a.Len() > 0 && a.Pointer() == b.Pointer() {
			*out = append(*out, path)
		}
		for _, k := range a.MapKeys() {
			sharesIn(path+"[...]", a.MapIndex(k), b.MapIndex(k), out, seen)
		}
	case reflect.Interface:
		if !a.IsNil() {
			sharesIn(path+"."+a.Elem().Type().Name(), a.Elem(), b.Elem(), out, seen)
		}
	}
}

// TestWithSharesNothing: "slices and maps are copied too, those inside features,
// openings and all other elements included". Of a design with everything in it the
// copy is equal and shares no slice and no map.
func TestWithSharesNothing(t *testing.T) {
	var d box.Design
	fill(reflect.ValueOf(&d).Elem())
	for _, n := range []int{len(d.Features), len(d.Inner), len(d.Outer), len(d.Opens), len(d.Free), len(d.Fittings), len(d.Boards)} {
		require.Positive(t, n)
	}
	c := d.With(func(*box.Design) {})
	assert.Equal(t, d, c)
	var same []string
	seen := map[string]int{}
	sharesIn("Design", reflect.ValueOf(d), reflect.ValueOf(c), &same, seen)
	assert.Empty(t, same)
	// The walk came to the deep ones.
	for _, typ := range []reflect.Type{reflect.TypeFor[outline.Contour](), reflect.TypeFor[outline.Region](), reflect.TypeFor[[]box.Part](), reflect.TypeFor[[]outline.Path]()} {
		assert.Positive(t, seen[typ.String()], "%v", typ)
	}
	// An empty slice stays one: On: []Part{} is not the same as nil.
	d = box.Design{Features: []box.Feature{box.Vents{On: []box.Part{}}, box.Vents{}}}
	assert.Equal(t, d, d.With(func(*box.Design) {}))
}

// selfish is a type of somebody else's that holds itself.
type selfish struct {
	box.EdgeJoint
	Again []any
}

// TestWithEnds: a value that holds itself is no reason to go on for ever.
func TestWithEnds(t *testing.T) {
	x := selfish{Again: make([]any, 1)}
	x.Again[0] = x
	d := box.Design{MadeUp: []box.MadeUp{{Of: box.Front, Joint: x}}}
	c := d.With(func(d *box.Design) { d.MadeUp[0].Of = box.Back })
	assert.Equal(t, box.Front, d.MadeUp[0].Of)
	assert.Equal(t, box.Back, c.MadeUp[0].Of)
}

// TestPlanSharesNothingWithTheDesign: whatever becomes of the slices of a design
// after Resolve, the plan stays as it was: also that of a free part which is machined
// from outside, whose outline is the panel's.
func TestPlanSharesNothingWithTheDesign(t *testing.T) {
	build := func() box.Design {
		d := full()
		o := outline.Rectangle(0, 0, 40, 40)
		d.Free = append(d.Free, box.Free{Name: "sign", Board: thick(20), Outline: o, At: box.Place{Y: 600},
			Cuts: []box.Cut{{At: box.Anchor{Right: 20, Up: 20}, Shape: box.Freeform{Outline: outline.Circle(outline.Point{}, 6)}, Depth: 5}}})
		d.Features = append(d.Features, box.Engrave{On: "free/sign", At: box.Anchor{Right: 20, Up: 30}, Tool: box.Tool{Diameter: 2}, Depth: 1,
			Lines: []outline.Path{outline.Line(outline.Point{X: -5}, outline.Point{X: 5})}})
		d.Fittings = []box.Fitting{{What: "felt", Count: 1, Where: []box.Part{box.Front}, Cut: outline.Region{outline.Rectangle(0, 0, 40, 40)}}}
		d.Joints[0].Joint = joints.Rebate{}
		return d
	}
	d := build()
	p, want := resolve(t, d), resolve(t, build())
	spoilt := 0
	spoil(reflect.ValueOf(d), &spoilt)
	require.Greater(t, spoilt, 20)
	assert.Equal(t, want.Pieces(), p.Pieces())
	assert.Equal(t, want.Fittings(), p.Fittings())
	for _, x := range want.Pieces() {
		assert.Equal(t, want.Explain(x.Part), p.Explain(x.Part))
	}
	// And what the plan hands out of its fittings is not the plan's either.
	fs := p.Fittings()
	last := fs[len(fs)-1]
	last.Where[0], last.Cut[0][0].X = "spoilt", 99
	assert.Equal(t, want.Fittings(), p.Fittings())
}

// spoil overwrites what slices hold, wherever they are.
func spoil(v reflect.Value, n *int) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			spoil(v.Field(i), n)
		}
	case reflect.Interface:
		if !v.IsNil() {
			spoil(v.Elem(), n)
		}
	case reflect.Slice:
		for i := range v.Len() {
			spoil(v.Index(i), n)
			if v.Index(i).CanSet() {
				v.Index(i).SetZero()
				*n++
			}
		}
	}
}
