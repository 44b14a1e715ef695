package picture

import (
	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// Groove is a line that is engraved or sawn into a face of a solid: the points of
// its middle, on the face, where the solid is before any shift. Meshes do not show
// it.
type Groove struct {
	Line []solid.Vec
	Out  solid.Vec // outward normal of the face
}

// groovesOf are the engraved lines of a part in the pose that it has in the
// picture.
func groovesOf(q box.Piece) []Groove {
	var out []Groove
	for _, op := range q.Panel.Ops {
		if len(op.Strokes) == 0 {
			continue
		}
		w, n, face := 0.0, q.Pose.W, q.Panel.Machined
		if op.Side == box.SideFar {
			w, n, face = -float64(q.Panel.Thickness), n.Scale(-1), q.Panel.Far
		}
		for _, t := range op.Strokes {
			for _, t := range t.Within(face) { // some run out over the edge
				g := Groove{Out: n}
				for _, p := range polyline(t) {
					g.Line = append(g.Line, q.Pose.Out(solid.Vec{X: p.X, Y: p.Y, Z: w}))
				}
				out = append(out, g)
			}
		}
	}
	return out
}

// polyline is a path with its arcs as chords, within facets.
func polyline(t outline.Path) []outline.Point {
	var ps []outline.Point
	for i := range t[:len(t)-1] {
		a, b := t[i], t[i+1]
		if a.Bulge == 0 {
			ps = append(ps, a.At())
			continue
		}
		// As a contour that goes back along its chord.
		ps = append(ps, withoutLast(outline.Contour{a, {X: b.X, Y: b.Y}}.Flatten(facets))...)
	}
	return append(ps, t[len(t)-1].At())
}

func withoutLast(ps []outline.Point) []outline.Point {
	if len(ps) == 0 {
		return nil
	}
	return ps[:len(ps)-1]
}

// engraved cuts the engraved lines of all solids down to what is in sight. Those on
// faces that are turned away, and what lies behind something, are never drawn:
// dashed they could not be read.
func (s *scene) engraved() []piece {
	var out []piece
	for i := range s.solids {
		q := &s.solids[i]
		for _, g := range q.Grooves {
			if !(g.Out.Dot(s.ax.d) > 1e-6) {
				continue
			}
			for k := 1; k < len(g.Line); k++ {
				a, b := g.Line[k-1].Add(q.Shift), g.Line[k].Add(q.Shift)
				if !(b.Sub(a).Len() > 0) {
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
