package picture

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"holt.example/box/solid"
)

func TestTones(t *testing.T) {
	seenColours := map[Colour]bool{}
	for _, end := range []bool{false, true} {
		last := math.Inf(1)
		for i := range Shades {
			c := Tone{i, end}.Colour()
			light := 0.2126*float64(c.R) + 0.7152*float64(c.G) + 0.0722*float64(c.B)
			assert.Less(t, light, last)
			last = light
			seenColours[c] = true
			// Ink stays readable on every tint: contrast by WCAG of 4.5 or more.
			assert.Greater(t, contrast(c, Ink), 4.5)
		}
	}
	assert.Len(t, seenColours, 2*Shades)
	assert.Equal(t, Tone{Shade: 0}.Colour(), Tone{Shade: -3}.Colour())
}

// contrast is (L1+0.05)/(L2+0.05) of relative luminances, WCAG 2.2.
func contrast(a, b Colour) float64 {
	lum := func(c Colour) float64 {
		f := func(v uint8) float64 {
			x := float64(v) / 255
			if x <= 0.04045 {
				return x / 12.92
			}
			return math.Pow((x+0.055)/1.055, 2.4)
		}
		return 0.2126*f(c.R) + 0.7152*f(c.G) + 0.0722*f(c.B)
	}
	return (math.Max(lum(a), lum(b)) + 0.05) / (math.Min(lum(a), lum(b)) + 0.05)
}

func TestShorten(t *testing.T) {
	s, full := shorten("roof", 2.5, false, 100)
	assert.Equal(t, "roof", s)
	assert.Empty(t, full)
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		w := rapid.Float64Range(10, 60).Draw(t, "w")
		s, full := shorten(name, 2.5, true, w)
		require.LessOrEqual(t, TextWidth(s, 2.5, true), w)
		if full != "" {
			require.Equal(t, name, full)
			require.True(t, strings.HasSuffix(s, "…"))
		} else {
			require.Equal(t, name, s)
		}
	})
}

// TestSixtyDegreesIsNoEndGrain: the sides of a hexagon that stand at 60 degrees to the
// grain are tinted alike, whatever the last digits of their normals: cos 60 is 0.5.
// At 59 degrees it is end grain, at 61 it is not.
func TestSixtyDegreesIsNoEndGrain(t *testing.T) {
	s := &scene{solids: []Solid{{Grain: solid.Vec{Z: 1}}}}
	for _, c := range []struct {
		degrees float64
		end     bool
	}{{59, true}, {60 - 1e-9, false}, {60, false}, {60 + 1e-9, false}, {61, false}, {121, true}, {120 + 1e-9, false}} {
		sn, cs := math.Sincos(c.degrees * math.Pi / 180)
		assert.Equal(t, c.end, s.tone(&face{n: solid.Vec{X: sn, Z: cs}}, false).EndGrain, "%v", c.degrees)
	}
}
