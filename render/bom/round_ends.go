package bom

import (
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// Which ends of a part are guests, and how far they go in.

// isWall reports whether a part is a wall of the box.
func isWall(p box.Part) bool {
	switch p {
	case box.Front, box.Back, box.Left, box.Right:
		return true
	}
	return strings.HasPrefix(string(p), "wall/") || strings.HasPrefix(string(p), "front/") ||
		strings.HasPrefix(string(p), "back/") || strings.HasPrefix(string(p), "left/") || strings.HasPrefix(string(p), "right/")
}

// guests says for each edge of a part whether it is a guest's.
func (s source) guests(p box.Piece) []bool {
	out := make([]bool, len(p.Panel.Edges))
	for k, e := range p.Panel.Edges {
		out[k] = e.Neighbour != "" && s.guest(p, e)
	}
	return out
}

// of is the made-up part that a strip belongs to, "" for any other part.
func (s source) of(name box.Part) box.Part {
	for i := range s.pieces {
		if s.pieces[i].Part == name {
			return s.pieces[i].Of
		}
	}
	return ""
}

// is reports whether a name means a piece: its own, or that of the part it makes
// up.
func (s source) is(piece, name box.Part) bool {
	return piece == name || name != "" && s.of(piece) == name
}

func (s source) guest(p box.Piece, e box.PanelEdge) bool {
	known, under, joint := false, false, e.Joint
	if p.Of != "" && s.of(e.Neighbour) == p.Of {
		return false // strips grow with the part they make up, and that is trimmed
	}
	for _, m := range s.seams {
		if m.Over == p.Part && s.is(m.Under, e.Neighbour) || m.Under == p.Part && s.is(m.Over, e.Neighbour) {
			known, under = true, m.Under == p.Part
			if m.Joint != "" {
				joint = m.Joint
			}
			break
		}
	}
	if strings.Contains(joint, "mitre") || known && !under {
		return false
	}
	// A part that reaches right across its neighbour, as the second part of a
	// comb does, ends flush with it and is no guest.
	for _, q := range s.pieces {
		if s.is(q.Part, e.Neighbour) {
			return float64(e.Adds) < float64(q.Thickness)-near
		}
	}
	return under
}

// along is the direction in which Length is measured in the panel.
func along(p box.Piece) (u, v float64) {
	if g := p.Panel.Grain; math.Abs(g[0]) > near || math.Abs(g[1]) > near {
		return g[0], g[1]
	}
	lu, hu := reach(p.Panel.Silhouette, 1, 0)
	lv, hv := reach(p.Panel.Silhouette, 0, 1)
	if hv-lv > hu-lu {
		return 0, 1
	}
	return 1, 0
}

// dims are the length and the width of a part with their ends.
func (s source) dims(p box.Piece) [2]dim {
	guests := s.guests(p)
	u, v := along(p)
	var out [2]dim
	for k, size := range [2]box.MM{p.Length, p.Width} {
		d := dim{part: p.Part, size: float64(size), dir: p.Home.U.Scale(u).Add(p.Home.V.Scale(v))}
		lo, hi := reach(p.Panel.Machined, u, v)
		d.ends[0] = s.endAt(p, guests, -u, -v, -lo)
		d.ends[1] = s.endAt(p, guests, u, v, hi)
		d.height = isWall(p.Part) && math.Abs(d.dir.Z) > 0.5
		d.filler = !isWall(p.Part) && d.ends[0].guest && d.ends[1].guest
		out[k] = d
		u, v = -v, u
	}
	return out
}

// endAt gathers the edges that make the end of a panel in the direction (u, v):
// those that lie on the outermost line, else those that touch it.
func (s source) endAt(p box.Piece, guests []bool, u, v, most float64) end {
	height := func(q outline.Point) float64 { return most - (float64(q.X*u) + float64(q.Y*v)) }
	var e end
	for _, both := range [2]bool{true, false} {
		found := false
		for k, pe := range p.Panel.Edges {
			from, to := height(pe.From) < 1e-3, height(pe.To) < 1e-3
			if !from && !to || both && !(from && to) {
				continue
			}
			found = true
			if pe.Neighbour != "" {
				e.neighbours = append(e.neighbours, pe.Neighbour)
			}
			if guests[k] {
				e.guest = true
				e.enter = math.Max(e.enter, s.enters(p, pe))
			}
		}
		if found {
			break
		}
	}
	return e
}

// enters is how far a guest reaches into its neighbour. Where the edge does not
// say, it is the depth of the cut that takes it.
func (s source) enters(p box.Piece, e box.PanelEdge) float64 {
	if e.Joint != "" || e.Adds != 0 {
		return float64(e.Adds)
	}
	depth := 0.0
	for _, q := range s.pieces {
		if !s.is(q.Part, e.Neighbour) {
			continue
		}
		for _, op := range q.Panel.Ops {
			if s.is(p.Part, op.Guest) {
				depth = math.Max(depth, float64(op.To-op.From))
			}
		}
	}
	return depth
}
