package box_test

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// fullDesigns between them set every field that a design has.
func fullDesigns() map[string]box.Design {
	board := box.Board{Thickness: 15, Measured: 14.6, Least: 14.5, Most: 14.7, Width: 600, Density: 500}
	over := box.Overhangs{Front: 20, Back: 5, Left: 6, Right: 7, All: 4}
	ring := box.Overhangs{Front: 20, All: 4}
	rect := box.Design{Name: "full", Board: board, Boards: map[box.Part]box.Board{box.Front: board, box.AllRoof: board},
		Size: box.Cavity{Width: 150, Depth: 160, Height: 240}, Chord: 0.02,
		Corners:  box.Corners{Joint: joints.Rebate{Depth: 5, Width: 14}},
		Floor:    box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 4, Play: 0.3, Swell: 0.5, Stop: 5, StopFrom: 6, StopTo: 7}},
		Roof:     box.Pent{Pitch: 12, Over: over},
		Walls:    []box.Wall{{On: box.Front, Lean: 2, Below: 6}, {On: box.Back, Above: 70, Below: 60}},
		Joints:   []box.Between{{Over: box.Back, Under: box.Left, Joint: joints.Comb{Fingers: 5, Play: 0.1, First: joints.OwnerA}}},
		Inner:    []box.Inner{box.Partition{Name: "shelf", At: 5, Height: 60, Board: board, Joint: joints.Housing{Depth: 3}}},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150, Right: 5}, box.Vents{On: []box.Part{box.Right}, Diameter: 9, Count: 2, Below: 20, Spacing: 40}, box.Drains{Diameter: 7, Inset: 20, Count: 4}},
		Free: []box.Free{{Name: "batten", Board: board, Outline: outline.Slot(outline.Point{}, 200, 40), At: box.Place{X: 1, Y: 500, Z: 2},
			Facing: box.Direction{X: 0.1, Y: -1, Z: 0.1}, Up: box.Direction{X: 0.1, Y: 0.1, Z: 1},
			Cuts: []box.Cut{{At: box.Anchor{Right: 1, Up: 2}, Shape: box.Slot{Width: 20, Height: 5}, Depth: 4}}}},
	}
	hip := rect.With(func(d *box.Design) {
		d.Size = box.Outside{Width: 190, Depth: 200, Height: 280}
		d.Corners, d.Joints, d.Walls, d.Inner = box.Corners{Joint: joints.Mitre{}}, nil, nil, nil
		d.Floor = box.FloorUnder{Over: over}
		d.Roof = box.Hip{Pitch: 40, SidePitch: 42, Over: over, Hips: joints.Mitre{}}
		d.Features = []box.Feature{box.Entrance{Shape: box.Rect{Width: 30, Height: 40, Corner: 3}, Above: 100}, box.CornerCuts{Size: 9}}
	})
	one := rect.With(func(d *box.Design) {
		d.Size = box.BoardWidth{Width: 180, Sides: 190, Height: 240}
		d.Corners, d.Joints, d.Walls, d.Inner = box.Corners{Laps: box.Sides}, nil, nil, nil
		d.Roof = box.Gable{Rise: 60, Over: over, Run: box.LeftToRight, Tops: box.SquareTops, Ends: box.SquareEnds, Ridge: joints.Mitre{}}
		d.Features = []box.Feature{box.Cut{On: box.Front, At: box.Anchor{Right: 3, Up: 90}, Shape: box.Freeform{Outline: outline.Rectangle(-5, -5, 5, 5)}, Depth: 4, From: box.FromInner}}
	})
	poly := rect.With(func(d *box.Design) {
		d.Size, d.Footprint = box.Cavity{Height: 200}, box.Regular{Sides: 6, Across: 200}
		d.Corners, d.Joints, d.Walls, d.Inner = box.Corners{Joint: joints.Mitre{}}, nil, nil, nil
		d.Boards, d.Free, d.Features = nil, nil, nil
		d.Floor, d.Roof = box.FloorUnder{Over: ring}, box.Flat{Over: ring}
	})
	return map[string]box.Design{"rectangle": rect, "hip": hip, "one board": one, "regular": poly,
		"rises": rect.With(func(d *box.Design) {
			d.Roof, d.Walls, d.Joints = box.Pent{Rise: 30, Tops: box.SquareTops}, nil, nil
		}),
		"marked": markedDesign(rect, board),
		"opened": openedDesign(rect, board),
		"slid":   slidDesign(rect, board),
		"strips": stripsDesign(rect),
		"screwed": screwed().With(func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Holds: []joints.Hold{{Kind: "screw", Count: 2, Diameter: 3.5, Length: 40, Spacing: 100}}}}
			d.Features = []box.Feature{box.Hang{Heights: []box.MM{60, 180}, By: box.Hanger{Diameter: 5, Length: 80, Proud: 5}}}
			d.Fittings = []box.Fitting{{What: "felt", Count: 1, Size: "30 x 20", Length: 30, Width: 20, Proud: 1, Area: 600, Cut: outline.Region{outline.Rectangle(0, 0, 30, 20)}}}
		}),
		"hip rise": hip.With(func(d *box.Design) { d.Roof = box.Hip{Rise: 50, Level: true, Over: over}; d.Free = nil }),
		"polygon": poly.With(func(d *box.Design) {
			d.Footprint = box.Polygon{Points: []box.Point{{X: -80, Y: -70}, {X: 90, Y: -75}, {X: 85, Y: 80}, {X: -75, Y: 70}}}
		})}
}

// A leaf is one number of a design.
type leaf struct {
	path string
	kind reflect.Kind
	set  func(x float64) box.Design // a copy of the design with this number
}

// leaves walks through a design and finds every number in it, with its Go
// path: the type's name follows where a field is one of several sealed types.
func leaves(d box.Design) []leaf {
	var out []leaf
	var walk func(v reflect.Value, path string, rebuild func(reflect.Value) reflect.Value)
	walk = func(v reflect.Value, path string, rebuild func(reflect.Value) reflect.Value) {
		// changed is a copy of v after f.
		changed := func(f func(c reflect.Value)) reflect.Value {
			c := reflect.New(v.Type()).Elem()
			c.Set(v)
			f(c)
			return c
		}
		switch v.Kind() {
		case reflect.Float64, reflect.Int:
			out = append(out, leaf{path, v.Kind(), func(x float64) box.Design {
				return rebuild(changed(func(c reflect.Value) {
					if c.Kind() == reflect.Int {
						c.SetInt(int64(math.Max(-1<<40, math.Min(1<<40, x))))
					} else {
						c.SetFloat(x)
					}
				})).Interface().(box.Design)
			}})
		case reflect.Struct:
			for i := range v.NumField() {
				name := v.Type().Field(i).Name
				walk(v.Field(i), strings.TrimPrefix(path+"."+name, "."), func(n reflect.Value) reflect.Value {
					return rebuild(changed(func(c reflect.Value) { c.Field(i).Set(n) }))
				})
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i), func(n reflect.Value) reflect.Value {
					return rebuild(changed(func(c reflect.Value) {
						c.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
						reflect.Copy(c, v)
						c.Index(i).Set(n)
					}))
				})
			}
		case reflect.Map:
			for _, key := range v.MapKeys() {
				walk(v.MapIndex(key), fmt.Sprintf("%s[%q]", path, key.String()), func(n reflect.Value) reflect.Value {
					return rebuild(changed(func(c reflect.Value) {
						c.Set(reflect.MakeMap(v.Type()))
						for _, k := range v.MapKeys() {
							c.SetMapIndex(k, v.MapIndex(k))
						}
						c.SetMapIndex(key, n)
					}))
				})
			}
		case reflect.Interface:
			if v.IsNil() {
				return
			}
			if v.Elem().Type().PkgPath() == "holt.example/box" { // a sealed one
				path += "." + v.Elem().Type().Name()
			}
			walk(v.Elem(), path, rebuild)
		}
	}
	walk(reflect.ValueOf(d), "", func(v reflect.Value) reflect.Value { return v })
	return out
}

// tryResolve sees that Resolve ends, in time, with a plan or with problems.
func tryResolve(t *testing.T, what string, d box.Design) (*box.Plan, box.Problems) {
	t.Helper()
	type answer struct {
		p     *box.Plan
		err   error
		panic any
	}
	done := make(chan answer, 1)
	go func() {
		var a answer
		defer func() { a.panic = recover(); done <- a }()
		a.p, a.err = d.Resolve()
	}()
	select {
	case a := <-done:
		require.Nil(t, a.panic, "%s: panic", what)
		require.NotEqual(t, a.p == nil, a.err == nil, "%s: a plan or problems", what)
		if a.err == nil {
			return a.p, nil
		}
		var ps box.Problems
		require.True(t, errors.As(a.err, &ps), "%s: %T", what, a.err)
		require.NotEmpty(t, ps, what)
		for i, p := range ps {
			require.NotEmpty(t, p.Code, what)
			require.NotEmpty(t, p.Why, what)
			require.NoError(t, goPath(p.Path), "%s: %v", what, p)
			if i > 0 {
				require.LessOrEqual(t, ps[i-1].Path, p.Path, "%s: sorted", what)
			}
			assert.NotContains(t, p.Error(), "\n", "%s: a line", what)
		}
		return nil, ps
	case <-time.After(20 * time.Second): // a hang, not a slow machine: a design takes milliseconds
		require.Fail(t, "hangs", what)
		return nil, nil
	}
}

// Every number of a design, spoilt in every way, is named in a problem.
func TestEveryNumberIsChecked(t *testing.T) {
	t.Parallel()
	covered := map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(fullDesigns())) {
		d := fullDesigns()[name]
		p, ps := tryResolve(t, name, d)
		require.NotNil(t, p, "%s: %v", name, ps)
		for _, l := range leaves(d) {
			field := regexp.MustCompile(`\[[^\]]*\]`).ReplaceAllString(l.path, "[]")
			if covered[field] {
				continue
			}
			covered[field] = true
			for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e308, -1e308} {
				if l.kind == reflect.Int && math.IsNaN(x) {
					continue
				}
				what := fmt.Sprintf("%s: %s = %v", name, l.path, x)
				_, ps := tryResolve(t, what, l.set(x))
				if !assert.NotEmpty(t, ps, "%s is accepted", what) {
					continue
				}
				assert.True(t, named(ps, l.path), "%s: not named in\n%v", what, ps)
			}
			for _, x := range []float64{0, -1, 1e-300, 1e5} { // many of these are legal
				tryResolve(t, fmt.Sprintf("%s: %s = %v", name, l.path, x), l.set(x))
			}
		}
	}
	assert.Greater(t, len(covered), 130, "fields covered")
}

// named reports whether a problem's path is the field's, or that of what the
// field is a part of.
func named(ps box.Problems, path string) bool {
	for _, p := range ps {
		rest, ok := strings.CutPrefix(path, p.Path)
		if ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return true
		}
	}
	return false
}

// late are the fields that are looked at only once the rest makes sense: what
// a joint may be depends on its boards, and on the corner.
var late = regexp.MustCompile(`Joint\.|Hips\.|Ridge\.|^Inner|\.Cuts\[|\.Up\.|Polygon\.Points`)

// Two faults anywhere are two problems.
func TestTwoFaultsAreTwoProblems(t *testing.T) {
	twoFaults(t, func(path string) bool { return !late.MatchString(path) })
}

func twoFaults(t *testing.T, want func(path string) bool) {
	for _, name := range slices.Sorted(maps.Keys(fullDesigns())) {
		d := fullDesigns()[name]
		var ls []leaf
		for _, l := range leaves(d) {
			if want(l.path) {
				ls = append(ls, l)
			}
		}
		for i, a := range ls {
			if a.kind == reflect.Int {
				continue
			}
			// Each with a later one, in turn.
			b := ls[(i+1+i*7%(len(ls)-1))%len(ls)]
			if b.kind == reflect.Int || b.path == a.path {
				continue
			}
			both := a.set(math.NaN())
			for _, l := range leaves(both) {
				if l.path == b.path {
					both = l.set(math.Inf(1))
				}
			}
			what := fmt.Sprintf("%s: %s and %s", name, a.path, b.path)
			_, ps := tryResolve(t, what, both)
			assert.True(t, named(ps, a.path) && named(ps, b.path), "%s:\n%v", what, ps)
		}
	}
}

// concrete are the types that an interface field of a design may hold, by the
// name that follows in a path.
var concrete = map[reflect.Type][]any{
	reflect.TypeFor[box.Size]():      {box.Cavity{}, box.Outside{}, box.BoardWidth{}},
	reflect.TypeFor[box.Footprint](): {box.Polygon{}, box.Regular{}},
	reflect.TypeFor[box.RoofForm]():  {box.Flat{}, box.Pent{}, box.Gable{}, box.Hip{}, box.NoRoof{}},
	reflect.TypeFor[box.FloorForm](): {box.FloorBetween{}, box.FloorUnder{}, box.NoFloor{}},
	reflect.TypeFor[box.Inner]():     {box.Partition{}, box.Shelf{}, box.FalseFloor{}, box.Baffles{}, box.Lobby{}, box.BeeBlock{}, box.EntrancePlate{}, box.Tunnel{}},
	reflect.TypeFor[box.Outer]():     {box.Batten{}, box.SplitBatten{}, box.Strap{}, box.Feet{}, box.PoleSocket{}, box.CoverStrip{}, box.RidgeCap{}, box.Felt{}, box.EntrancePlate{}, box.Tunnel{}, box.LandingBoard{}},
	reflect.TypeFor[box.EdgeJoint](): {box.EdgeGlued{}, box.LooseTongue{}, box.TongueGroove{}, box.Shiplap{}},
	reflect.TypeFor[box.Feature](): {box.Entrance{}, box.Vents{}, box.Drains{}, box.CornerCuts{}, box.Cut{},
		box.Engrave{}, box.Text{}, box.PartMarks{}, box.GripGrooves{}, box.Pattern{}, box.Rail{}, box.RoundCorners{}, box.Scallops{},
		box.Hang{}, box.DripGroove{}, box.EavesVents{}, box.Edging{}},
	reflect.TypeFor[box.Opening](): {box.Hinged{}, box.Pivoted{}, box.Sliding{}, box.Removable{}, box.Inspection{}, box.Stopper{}, box.TurnButton{}, box.HookAndEye{}},
	reflect.TypeFor[box.Hinge]():   {box.RubberStrip{}, box.Leather{}, box.Butts{}},
	reflect.TypeFor[box.Shape]():   {box.Round{}, box.Rect{}, box.Slot{}, box.Oval{}, box.Arch{}, box.Keyhole{}, box.Regular{}, box.Polygon{}, box.Freeform{}},
}

// ofJoints are those whose fields follow without a type's name.
var ofJoints = []any{joints.Butt{}, joints.Mitre{}, joints.Rebate{}, joints.Housing{}, joints.Comb{}}

var segment = regexp.MustCompile(`^\.?([A-Za-z][A-Za-z0-9]*)|^\[("(?:[^"\\]|\\.)*"|[0-9]+)\]`)

// goPath sees that a problem's path is one that a Design has.
func goPath(path string) error {
	types := []reflect.Type{reflect.TypeFor[box.Design]()}
	rest := path
	if rest == "" {
		return errors.New("no path")
	}
	for rest != "" {
		m := segment.FindStringSubmatch(rest)
		if m == nil {
			return fmt.Errorf("%q: not a path at %q", path, rest)
		}
		rest = rest[len(m[0]):]
		var next []reflect.Type
		for _, ty := range types {
			switch {
			case m[2] != "" && (ty.Kind() == reflect.Slice || ty.Kind() == reflect.Map):
				if _, err := strconv.Atoi(m[2]); (err == nil) == (ty.Kind() == reflect.Slice) {
					next = append(next, ty.Elem())
				}
			case ty == reflect.TypeFor[joints.Joint]():
				for _, j := range ofJoints {
					if f, ok := reflect.TypeOf(j).FieldByName(m[1]); ok {
						next = append(next, f.Type)
					}
				}
			case ty.Kind() == reflect.Interface:
				for _, c := range concrete[ty] {
					if reflect.TypeOf(c).Name() == m[1] {
						next = append(next, reflect.TypeOf(c))
					}
				}
			case ty.Kind() == reflect.Struct && m[1] != "":
				if f, ok := ty.FieldByName(m[1]); ok {
					next = append(next, f.Type)
				}
			}
		}
		if types = next; len(types) == 0 {
			return fmt.Errorf("%q: a design has no %q there", path, m[0])
		}
	}
	return nil
}
