package picture

import (
	"math"

	"holt.example/box/solid"
)

// away is the way out for a free part: along its main face's normal, to that side
// where nothing is in the way, or the farther off. A strip on the inner face of a
// long back so comes off to the front, where the rest of the box lies, and a batten
// behind it to the back. Where both sides are alike it goes away from the middle.
func away(solids []Solid, i int, mid solid.Vec) solid.Vec {
	out := solids[i].Out
	lo, hi := extent(solids[i : i+1])
	at := lo.Lerp(hi, 0.5)
	ahead, behind := clear(solids, i, at, out), clear(solids, i, at, out.Scale(-1))
	if ahead < behind || ahead == behind && out.Dot(at.Sub(mid)) < 0 {
		return out.Scale(-1)
	}
	return out
}

// clear is how far a ray goes before it meets another solid.
func clear(solids []Solid, i int, p, d solid.Vec) float64 {
	least := math.Inf(1)
	for k, s := range solids {
		if k == i || s.Mesh == nil {
			continue
		}
		for _, t := range s.Mesh.Triangles {
			a, b, c := s.Mesh.Vertices[t[0]], s.Mesh.Vertices[t[1]], s.Mesh.Vertices[t[2]]
			n := b.Sub(a).Cross(c.Sub(a))
			nd := n.Dot(d)
			if nd == 0 {
				continue
			}
			x := n.Dot(a.Sub(p)) / nd
			if x < 0 || x >= least {
				continue
			}
			q := p.Add(d.Scale(x))
			if n.Dot(b.Sub(a).Cross(q.Sub(a))) >= 0 && n.Dot(c.Sub(b).Cross(q.Sub(b))) >= 0 && n.Dot(a.Sub(c).Cross(q.Sub(c))) >= 0 {
				least = x
			}
		}
	}
	return least
}
