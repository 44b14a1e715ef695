package picture

import (
	"math"

	"holt.example/box/solid"
)

// target is what a view should show: a hole by its points, or only a side.
type target struct {
	out solid.Vec
	at  []solid.Vec
}

// targets are the entrances of the solids, and the sides in front of which
// there is none.
func targets(solids []Solid, fronts []solid.Vec) []target {
	var out []target
	for _, s := range solids {
		for _, h := range s.Holes {
			if !h.Entrance {
				continue
			}
			t := target{out: h.normal()}
			for _, p := range h.points() {
				t.at = append(t.at, p.Add(s.Shift))
			}
			out = append(out, t)
		}
	}
	for _, n := range fronts {
		known := false
		for _, t := range out {
			known = known || t.out.Dot(n) > 1-1e-6
		}
		if !known {
			out = append(out, target{out: n})
		}
	}
	return out
}

// inSight is the share of the targets that a view shows, 0 to 1. A target on a
// side that is turned away, or nearly edge-on, counts for nothing.
func inSight(v View, ts []target, solids []Solid) float64 {
	if len(ts) == 0 {
		return 1
	}
	d := v.axes().d
	sum := 0.0
	for _, t := range ts {
		if !(t.out.Dot(d) > EdgeOn) {
			continue
		}
		if len(t.at) == 0 {
			sum++
			continue
		}
		shown := 0
		for _, p := range t.at {
			if !shaded(solids, p, d) {
				shown++
			}
		}
		sum += float64(shown) / float64(len(t.at))
	}
	return sum / float64(len(ts))
}

// shaded reports whether some solid is met on the way from a point towards the
// viewer.
func shaded(solids []Solid, p, d solid.Vec) bool {
	for _, s := range solids {
		if s.Mesh == nil {
			continue
		}
		from := p.Sub(s.Shift)
		for _, t := range s.Mesh.Triangles {
			a, b, c := s.Mesh.Vertices[t[0]], s.Mesh.Vertices[t[1]], s.Mesh.Vertices[t[2]]
			if ahead(from, d, a, b, c) {
				return true
			}
		}
	}
	return false
}

// ahead reports whether a ray meets a triangle, from either side, more than a
// hair away. (The lines of sight from a corner to the ray's two ends, and the
// sides of the triangle, turn the same way round.)
func ahead(from, d, a, b, c solid.Vec) bool {
	ab, ac := b.Sub(a), c.Sub(a)
	n := ab.Cross(ac)
	nd := n.Dot(d)
	if math.Abs(nd) <= float64(1e-9*n.Len()) {
		return false
	}
	t := n.Dot(a.Sub(from)) / nd
	if !(t > 10*flat) {
		return false
	}
	q := from.Add(d.Scale(t))
	size := n.Dot(n)
	for _, e := range [3][2]solid.Vec{{a, b}, {b, c}, {c, a}} {
		if n.Dot(e[1].Sub(e[0]).Cross(q.Sub(e[0]))) < float64(-1e-9*size) {
			return false
		}
	}
	return true
}

// choose takes the view that shows the most of the entrances, in tenths; of
// several the first in which every main face has |n.d| > EdgeOn, and if there
// is none of those, the one that comes nearest.
func choose(list []View, main []solid.Vec, ts []target, solids []Solid) View {
	best, bestShown, bestLeast := list[0], -1.0, math.Inf(-1)
	for _, v := range list {
		shown := inSight(v, ts, solids)
		shown = math.Floor(float64(shown*10)+1e-9) / 10
		d := v.axes().d
		least := math.Inf(1)
		for _, n := range main {
			least = math.Min(least, math.Abs(n.Dot(d)))
		}
		// More than EdgeOn is no better than EdgeOn.
		least = math.Min(least, EdgeOn)
		if shown > bestShown || shown == bestShown && least > bestLeast {
			best, bestShown, bestLeast = v, shown, least
		}
		if bestShown == 1 && bestLeast == EdgeOn {
			break
		}
	}
	return best
}
