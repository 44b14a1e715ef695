package picture

import (
	"math"
	"strings"

	"holt.example/box/solid"
)

// Explode sets the solids' shifts so that a picture shows the parts apart.
// Spread 1 is ordinary.
func Explode(solids []Solid, spread float64) {
	lo, hi := extent(solids)
	mid := lo.Lerp(hi, 0.5)
	d := hi.Sub(lo)
	gap := float64(spread*(d.X+d.Y+d.Z)) / 3 * 0.3
	up := solid.Vec{Z: 1}
	for i := range solids {
		s := &solids[i]
		name := string(s.Part)
		switch {
		case name == "roof" || strings.HasPrefix(name, "roof/"):
			level := solid.Vec{X: s.Out.X, Y: s.Out.Y}
			s.Shift = level.Scale(0.9 * gap).Add(up.Scale(1.3 * gap))
		case strings.HasPrefix(name, "inner/"):
			s.Shift = solid.Vec{}
		case strings.HasPrefix(name, "free/"):
			a, b := extent(solids[i : i+1])
			out := s.Out
			if out.Dot(a.Lerp(b, 0.5).Sub(mid)) < 0 {
				out = out.Scale(-1)
			}
			s.Shift = out.Scale(1.8 * gap)
		default:
			s.Shift = s.Out.Scale(gap)
		}
	}
}

// extent is the upright box round the solids in place.
func extent(solids []Solid) (lo, hi solid.Vec) {
	lo = solid.Vec{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	hi = lo.Scale(-1)
	for _, s := range solids {
		if s.Mesh == nil {
			continue
		}
		for _, v := range s.Mesh.Vertices {
			lo = solid.Vec{X: math.Min(lo.X, v.X), Y: math.Min(lo.Y, v.Y), Z: math.Min(lo.Z, v.Z)}
			hi = solid.Vec{X: math.Max(hi.X, v.X), Y: math.Max(hi.Y, v.Y), Z: math.Max(hi.Z, v.Z)}
		}
	}
	if lo.X > hi.X {
		return solid.Vec{}, solid.Vec{}
	}
	return lo, hi
}
