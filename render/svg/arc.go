package svg

import (
	"math"

	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// quarters are the places inside an arc that cut it into equal pieces of at
// most 90 degrees. Halving needs no angle: the middle of the arc from p to q
// lies bulge times half the chord to the right of the chord's middle, and the
// bulge of each half is tan(sweep/8) = b / (1 + sqrt(1 + b*b)).
func quarters(p, q outline.Point, bulge float64) []outline.Point {
	if math.Abs(bulge) <= quarter {
		return nil
	}
	k := bulge / 2
	m := outline.Point{
		X: (p.X+q.X)/2 + float64((q.Y-p.Y)*k),
		Y: (p.Y+q.Y)/2 - float64((q.X-p.X)*k),
	}
	half := bulge / (1 + math.Sqrt(1+float64(bulge*bulge)))
	left, right := quarters(p, m, half), quarters(m, q, half)
	return append(append(left, outline.Point{X: flat.Grid(m.X), Y: flat.Grid(m.Y)}), right...)
}

// quarter is the bulge of 90 degrees, tan 22.5 = sqrt 2 - 1, and a little more
// for one that was computed.
const quarter = math.Sqrt2 - 1 + 1e-9
