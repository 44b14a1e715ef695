package bom

import (
	"math"
	"strconv"
	"strings"

	"holt.example/box"
)

// near is the distance, in mm, within which two lengths of a panel count as
// one: far above the noise of resolved planes, far below any tool.
const near = 1e-6

// outward is the unit vector square to an edge, away from the part, which lies
// on the edge's left.
func outward(e box.PanelEdge) (u, v float64) {
	dx, dy := e.To.X-e.From.X, e.To.Y-e.From.Y
	l := math.Hypot(dx, dy)
	if !(l > 0) {
		return 0, 0
	}
	return dy / l, -dx / l
}

// edgeNames calls each edge by the side of the panel that it faces, seen on the
// machined face: "lower", "right", "upper", "left" within 22.5 degrees of
// those, "upper right" and so on between. A second edge of the same name gets
// a 2.
func edgeNames(p box.Panel) []string {
	names := make([]string, len(p.Edges))
	used := map[string]int{}
	for k, e := range p.Edges {
		n := sideWord(outward(e))
		used[n]++
		if used[n] > 1 {
			n += " " + strconv.Itoa(used[n])
		}
		names[k] = n
	}
	return names
}

// sideWord names the direction (u, v).
func sideWord(u, v float64) string {
	// tan(22.5) = sqrt(2) - 1 separates the four sides from the four corners.
	const t = math.Sqrt2 - 1
	w := ""
	if math.Abs(v) > float64(t*math.Abs(u)) {
		w = "upper"
		if v < 0 {
			w = "lower"
		}
	}
	if math.Abs(u) > float64(t*math.Abs(v)) {
		if w != "" {
			w += " "
		}
		if u < 0 {
			w += "left"
		} else {
			w += "right"
		}
	}
	if w == "" {
		return "edge"
	}
	return w
}

// upWords says which edge of the panel is up in the box; of a level part, which
// one looks to the front. A part without straight edges says which side.
func upWords(p box.Piece, names []string) string {
	// A sine of 0.1: flatter than 6 degrees is level.
	const level = 0.1
	z := make([]float64, len(p.Panel.Edges))
	front := make([]float64, len(p.Panel.Edges))
	for k, e := range p.Panel.Edges {
		u, v := outward(e)
		d := p.Home.U.Scale(u).Add(p.Home.V.Scale(v))
		z[k], front[k] = d.Z, -d.Y
	}
	upright := math.Hypot(p.Home.U.Z, p.Home.V.Z) > level
	switch {
	case len(z) == 0 && upright:
		return sideWord(p.Home.U.Z, p.Home.V.Z) + " side"
	case len(z) == 0:
		return "level"
	case upright:
		return foremost(z, names)
	}
	return "level, " + foremost(front, names) + " to the front"
}

// foremost names the edge with the greatest value, or both of two that share
// it.
func foremost(x []float64, names []string) string {
	most := math.Inf(-1)
	for _, a := range x {
		most = math.Max(most, a)
	}
	var out []string
	for k, a := range x {
		if a > most-near {
			out = append(out, names[k])
		}
	}
	if len(out) == 1 {
		return out[0] + " edge"
	}
	return strings.Join(out, " and ") + " edges"
}

// faceEdge is the edge to plane first and to measure from: along the grain,
// square, the longest, the first of equals. Without grain any direction will
// do.
func faceEdge(p box.Piece, names []string) string {
	best, length := -1, 0.0
	gu, gv := p.Panel.Grain[0], p.Panel.Grain[1]
	for k, e := range p.Panel.Edges {
		u, v := outward(e)
		if math.Abs(float64(u*gu)+float64(v*gv)) > near || math.Abs(float64(e.Bevel)) > near {
			continue
		}
		if float64(e.Length) > length+near {
			best, length = k, float64(e.Length)
		}
	}
	if best < 0 {
		return ""
	}
	return names[best] + " edge"
}

// grainWords says how the grain runs in the panel.
func grainWords(g [2]float64) string {
	u, v := math.Abs(g[0]), math.Abs(g[1])
	switch {
	case u < near && v < near:
		return "none"
	case u < near:
		return "up"
	case v < near:
		return "across"
	}
	a := math.Atan2(g[1], g[0]) * 180 / math.Pi
	if a < 0 {
		a += 180
	}
	return num(math.Round(a*10)/10) + " deg from across"
}

func faceWord(f box.CutSide) string {
	if f == box.FromInner {
		return "inside"
	}
	return "outside"
}

// hands tells mirror images apart. Of two such items the left one holds a part
// that is called left, or stands further to the left in the box, or has the
// lower number.
func (l *List) hands(s source, at map[box.Part]int) {
	place := map[int]int{}
	for i, it := range l.Items {
		place[it.Number] = i
	}
	for i := range l.Items {
		a := &l.Items[i]
		j, ok := place[a.MirrorOf]
		if a.MirrorOf == 0 || !ok || j <= i {
			continue
		}
		b := &l.Items[j]
		a.Hand, b.Hand = LeftHand, RightHand
		if s.leftness(b, at) < s.leftness(a, at)-near {
			a.Hand, b.Hand = RightHand, LeftHand
		}
	}
}

// leftness orders items from left to right: the mean place of their parts.
func (s source) leftness(it *Item, at map[box.Part]int) float64 {
	sum, n := 0.0, 0
	for _, name := range it.Parts {
		switch name {
		case box.Left, box.RoofLeft:
			return math.Inf(-1)
		case box.Right, box.RoofRight:
			return math.Inf(1)
		}
		sum += s.pieces[at[name]].Home.O.X
		n++
	}
	if n == 0 {
		return 0
	}
	return sum / float64(n)
}
