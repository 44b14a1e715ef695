package box_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
)

// hungBy are boxes that hang in each of the ways.
func hungBy(h box.Hanger) map[string]box.Design {
	back := screwed().With(func(d *box.Design) {
		d.Fixings, d.Walls = nil, []box.Wall{{On: box.Back, Above: 70, Below: 60}}
	})
	return map[string]box.Design{
		"hang": back.With(func(d *box.Design) { d.Features = []box.Feature{box.Hang{By: h}} }),
		"keyhole": back.With(func(d *box.Design) {
			d.Features = []box.Feature{box.Hang{By: h, Shape: box.Keyhole{Head: 12, Slot: 6, Drop: 14}}}
		}),
		"batten": back.With(func(d *box.Design) {
			d.Outer = []box.Outer{box.Batten{Name: "b", Width: 60, Past: 90, Hole: box.Round{Diameter: 6}, By: h}}
		}),
		"split batten": back.With(func(d *box.Design) {
			d.Outer = []box.Outer{box.SplitBatten{Name: "b", Above: 40, Height: 120, Hole: box.Round{Diameter: 6}, By: h}}
		}),
	}
}

// TestHanger: what a box hangs by is listed as it is said, once for each hole.
func TestHanger(t *testing.T) {
	for name, d := range hungBy(box.Hanger{What: "nail, aluminium", Diameter: 6, Length: 100, Proud: 20}) {
		fs := d.MustResolve().Fittings()
		require.Len(t, fs, 1, name)
		f := fs[0]
		assert.Contains(t, f.Why, "; left 20 proud", name)
		f.Why, f.Where = "", nil
		assert.Equal(t, box.Fitting{What: "nail, aluminium", Count: 2, Size: "6 x 100", Length: 100, Width: 6, Proud: 20, Hangs: true}, f, name)
	}
	for name, d := range hungBy(box.Hanger{}) {
		f := d.MustResolve().Fittings()[0]
		assert.True(t, f.Hangs && f.Length == 0 && f.Width == 0, name)
	}
	for name, d := range hungBy(box.Hanger{Length: 80}) {
		f := d.MustResolve().Fittings()[0]
		assert.Equal(t, "screw", f.What, name)
		assert.Contains(t, f.Size, ", 80 long", name)
	}
	assert.Equal(t, "5 thick", hungBy(box.Hanger{Diameter: 5})["hang"].MustResolve().Fittings()[0].Size)
}

func TestHangerRefused(t *testing.T) {
	for path, h := range map[string]box.Hanger{
		".By.Diameter": {Diameter: 6.1}, // the holes are 6 wide
		".By.Length":   {Length: -100},
		".By.Proud":    {Proud: box.MM(math.NaN())},
		".By.What":     {What: "a\tb"},
	} {
		for name, d := range hungBy(h) {
			_, err := d.Resolve()
			var ps box.Problems
			require.True(t, errors.As(err, &ps), "%s %s", name, path)
			assert.True(t, strings.HasSuffix(ps[0].Path, path), "%s: %s", name, ps[0].Path)
		}
	}
	for _, o := range []box.Outer{box.Batten{Name: "b", By: box.Hanger{Length: 50}}, box.SplitBatten{Name: "b", Height: 100, By: box.Hanger{Length: 50}}} {
		_, err := screwed().With(func(d *box.Design) { d.Outer = []box.Outer{o} }).Resolve()
		var ps box.Problems
		require.True(t, errors.As(err, &ps))
		assert.Equal(t, "contradiction", ps[0].Code)
	}
}

// TestOpeningsAreListed: every way in and every catch lists what is bought for it,
// with its screws or nails.
func TestOpeningsAreListed(t *testing.T) {
	front := func(h box.Hinge) []box.Opening {
		return []box.Opening{box.Hinged{Part: box.Roof, Hinge: h}}
	}
	for name, c := range map[string]struct {
		opens []box.Opening
		want  []string
	}{
		"rubber strip": {front(box.RubberStrip{}), []string{"rubber strip, 3 thick", "clout nail"}},
		"leather":      {front(box.Leather{}), []string{"leather, 3 thick", "clout nail"}},
		"butts":        {front(box.Butts{}), []string{"butt hinge, brass or stainless steel", "screw"}},
		"removable":    {[]box.Opening{box.Removable{Part: box.Front}}, []string{"screw"}},
		"pivoted":      {[]box.Opening{box.Pivoted{Part: box.Front}}, []string{"nail"}},
		"hook and eye": {append(front(nil), box.HookAndEye{Part: box.Roof, At: box.Front}), []string{"rubber strip, 3 thick", "clout nail", "hook and eye"}},
		"turn button":  {[]box.Opening{box.Hinged{Part: box.Front}, box.TurnButton{Part: box.Front, At: box.Right, Length: 60}}, []string{"rubber strip, 3 thick", "clout nail", "screw"}},
		"inspection":   {[]box.Opening{box.Inspection{On: box.Left}}, []string{"screw"}},
	} {
		plan := opened(t, func(d *box.Design) { d.Corners.Laps = box.Sides }, c.opens...)
		var got []string
		for _, f := range plan.Fittings() {
			got = append(got, f.What)
			assert.True(t, f.Count > 0 && f.Size != "" && f.Why != "" && len(f.Where) > 0, "%s: %+v", name, f)
		}
		assert.ElementsMatch(t, c.want, got, name)
	}
}
