package boxtest

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// Drawing is a plan as text, for a golden file: the inside, then every part with
// its size, outlines, edges and cuts, in mm to a hundredth. Equal parts are drawn
// once. Contours and edges begin at their lowest point, so that the text changes when the
// drawing does and not otherwise. An arc is told by its bulge, as in
// outline.Vertex; lines that are engraved by their number, length, extents, middle
// and beginning. It is "" for nil.
func Drawing(p *box.Plan) string {
	if p == nil {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%q\n", p.Name())
	if w, d, h := p.Inside(); w != 0 || d != 0 || h != 0 {
		ow, od, oh := p.Outside()
		fmt.Fprintf(&b, "inside %s x %s x %s, outside %s x %s x %s\n", mm(w), mm(d), mm(h), mm(ow), mm(od), mm(oh))
	}
	for _, g := range p.Groups() {
		q, ok := p.Piece(g.Parts[0])
		if !ok {
			continue
		}
		names := make([]string, len(g.Parts))
		for i, n := range g.Parts {
			names[i] = fmt.Sprintf("%q", string(n))
			names[i] = names[i][1 : len(names[i])-1]
		}
		fmt.Fprintf(&b, "\n%s\n", strings.Join(names, ", "))
		panel(&b, &q)
	}
	return b.String()
}

func panel(b *strings.Builder, q *box.Piece) {
	pn := &q.Panel
	face := "outer"
	if pn.Face == box.FromInner {
		face = "inner"
	}
	grain := "no grain"
	switch {
	case pn.Grain[0] != 0:
		grain = "grain across"
	case pn.Grain[1] != 0:
		grain = "grain up"
	}
	fmt.Fprintf(b, "  %s x %s x %s, %s, %s face machined\n", mm(q.Length), mm(q.Width), mm(q.Thickness), grain, face)
	region(b, "cut", pn.Machined)
	if far := points(pn.Far); far != points(pn.Machined) {
		region(b, "far", pn.Far)
	}
	first := 0
	for i, e := range pn.Edges {
		if lower(e.From, pn.Edges[first].From) {
			first = i
		}
	}
	for i := range pn.Edges {
		e := &pn.Edges[(first+i)%len(pn.Edges)]
		fmt.Fprintf(b, "  edge %s %s long", at(e.From), mm(e.Length))
		if e.Neighbour != "" {
			fmt.Fprintf(b, ", %q", string(e.Neighbour))
		}
		if e.Joint != "" {
			fmt.Fprintf(b, " in a %q", e.Joint)
		}
		if bevel := number(float64(e.Bevel), 2); bevel != "0" {
			fmt.Fprintf(b, ", bevel %s", bevel)
		}
		b.WriteString("\n")
	}
	for i := range pn.Ops {
		o := &pn.Ops[i]
		fmt.Fprintf(b, "  %s %s, %s from %s to %s", o.Kind, strconv.Quote(o.Source), o.Side, mm(o.From), mm(o.To))
		if c, d, ok := circle(o.Region); ok {
			fmt.Fprintf(b, ", %s across at %s\n", number(d, 2), at(c))
			continue
		}
		if len(o.Strokes) > 0 {
			fmt.Fprintf(b, ", %s wide: %s\n", mm(o.Width), strokes(o.Strokes))
			continue
		}
		fmt.Fprintf(b, ", %s\n", points(o.Region))
	}
}

// strokes tells lines by their number, their length, their extents, the middle of
// all that is drawn, and where the first begins, so that no shift, turn, mirror,
// change of size or other letter leaves the text as it was.
func strokes(ps []outline.Path) string {
	e := ps[0].Extents()
	length, x, y := 0.0, 0.0, 0.0
	for _, p := range ps {
		e = e.Join(p.Extents())
		for i := range p[:len(p)-1] {
			l := p[i : i+2].Length()
			length += l
			x += float64(l * (p[i].X + p[i+1].X) / 2)
			y += float64(l * (p[i].Y + p[i+1].Y) / 2)
		}
	}
	middle := outline.Point{X: x / length, Y: y / length}
	word := "strokes"
	if len(ps) == 1 {
		word = "stroke"
	}
	return fmt.Sprintf("%d %s, %s long, from %s to %s, middle %s, first at %s", len(ps), word, number(length, 2), at(e.Min), at(e.Max), at(middle), at(ps[0][0].At()))
}

func region(b *strings.Builder, what string, r outline.Region) {
	fmt.Fprintf(b, "  %s %s\n", what, points(r))
}

// points lists the corners of a region.
func points(r outline.Region) string {
	cs := make([]string, len(r))
	for i, c := range r {
		cs[i] = contour(c)
	}
	return strings.Join(cs, " less ")
}

func contour(c outline.Contour) string {
	vs := make([]string, len(c))
	first := 0
	for i, v := range c {
		if lower(v.At(), c[first].At()) {
			first = i
		}
	}
	for i := range c {
		v := c[(first+i)%len(c)]
		vs[i] = at(v.At())
		if bulge := number(v.Bulge, 4); bulge != "0" {
			vs[i] += " arc " + bulge
		}
	}
	return strings.Join(vs, " ")
}

// lower tells which of two places comes first: the lower, then the one farther
// left, as written, so that what is the same on paper stays.
func lower(p, q outline.Point) bool {
	py, qy := math.Round(p.Y*100), math.Round(q.Y*100)
	return py < qy || py == qy && math.Round(p.X*100) < math.Round(q.X*100)
}

func at(p outline.Point) string { return "(" + number(p.X, 2) + "," + number(p.Y, 2) + ")" }

func mm(x box.MM) string { return number(float64(x), 2) }

// number has so many decimals at most, no "-0" and no exponent.
func number(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// circle tells a region that is one round hole.
func circle(r outline.Region) (outline.Point, float64, bool) {
	if len(r) != 1 {
		return outline.Point{}, 0, false
	}
	return r[0].IsCircle(1e-6)
}
