package picture

import (
	"math"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// engravedOn are the engraved lines of a part, in the pose that it has in the
// picture: their middles, on the face that they are cut into.
func engravedOn(q box.Piece) [][]solid.Vec {
	var out [][]solid.Vec
	for _, op := range q.Panel.Ops {
		w := 0.0
		if op.Side == box.SideFar {
			w = -float64(q.Panel.Thickness)
		}
		for _, s := range op.Strokes {
			var run []solid.Vec
			for _, p := range flattened(s) {
				run = append(run, q.Pose.Out(solid.Vec{X: p.X, Y: p.Y, Z: w}))
			}
			out = append(out, run)
		}
	}
	return out
}

// flattened is a path with its arcs halved until no chord is farther than facets
// from its arc.
func flattened(p outline.Path) []outline.Point {
	if len(p) == 0 {
		return nil
	}
	out := []outline.Point{p[0].At()}
	var halve func(a, b outline.Point, bulge float64)
	halve = func(a, b outline.Point, bulge float64) {
		dx, dy := b.X-a.X, b.Y-a.Y
		// The height of an arc over its chord is half the chord times the bulge.
		if math.Abs(bulge)*math.Sqrt(float64(dx*dx)+float64(dy*dy)) <= 2*facets {
			out = append(out, b)
			return
		}
		mid := outline.Point{
			X: (a.X+b.X)/2 + float64(dy*bulge)/2,
			Y: (a.Y+b.Y)/2 - float64(dx*bulge)/2,
		}
		half := bulge / (1 + math.Sqrt(1+float64(bulge*bulge))) // tan(x/2) from tan(x)
		halve(a, mid, half)
		halve(mid, b, half)
	}
	for i := 0; i+1 < len(p); i++ {
		halve(p[i].At(), p[i+1].At(), p[i].Bulge)
	}
	return out
}

// engraved are the engraved lines in sight. A line lies on its own face, which
// so does not hide it; what is on the far side of its part is hidden by the part.
func (s *scene) engraved() []piece {
	var out []piece
	for i, q := range s.solids {
		for _, run := range q.Engraved {
			for k := 0; k+1 < len(run); k++ {
				a, b := run[k].Add(q.Shift), run[k+1].Add(q.Shift)
				if a.Sub(b).Len() == 0 {
					continue
				}
				for _, v := range without(span{0, 1}, s.hidden(a, b)) {
					out = append(out, piece{Engraved, i, a.Lerp(b, v.a), a.Lerp(b, v.b)})
				}
			}
		}
	}
	return out
}
