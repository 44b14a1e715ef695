package outline

import (
	"cmp"
	"math"
	"slices"
)

// Clip is the part of the contour within the half-plane, its cut edges straight
// and its sense kept. Boundaries within SideTest of the line count as on it; a
// contour that only touches the line from outside is gone. A half-plane with A
// and B zero is everything (C >= 0) or nothing.
func (c Contour) Clip(h HalfPlane) Region {
	if c.Area() < 0 {
		return Region{c.Reverse()}.Clip(h).Reverse()
	}
	return Region{c}.Clip(h)
}

// run is a part of a boundary within the half-plane.
type run struct {
	verts []Vertex // the bulge of the last is not set
	enter float64  // place on the line, along it with the material on the left
	leave float64
}

// Clip is the part of the region within the half-plane: holes that the line
// meets become part of the outer boundary. See Contour.Clip.
func (r Region) Clip(h HalfPlane) Region {
	l := math.Sqrt(float64(h.A*h.A) + float64(h.B*h.B))
	if !finite(l, h.C) {
		return nil
	}
	if l == 0 {
		if h.C >= 0 {
			return slices.Clone(r)
		}
		return nil
	}
	n := Point{h.A / l, h.B / l}
	line := cutLine{n: n, at: h.C / l, along: left(n)}
	var out Region
	var runs []run
	for _, c := range r {
		whole, parts := line.cut(c)
		if whole {
			out = append(out, c)
		}
		runs = append(runs, parts...)
	}
	// With the material below on the left, the line alternates between leaving
	// a run and entering the next.
	leave := make([]int, len(runs))
	for i := range leave {
		leave[i] = i
	}
	enter := slices.Clone(leave)
	slices.SortStableFunc(leave, func(i, j int) int { return cmp.Compare(runs[i].leave, runs[j].leave) })
	slices.SortStableFunc(enter, func(i, j int) int { return cmp.Compare(runs[i].enter, runs[j].enter) })
	next := make([]int, len(runs))
	for k, i := range leave {
		next[i] = enter[k]
	}
	used := make([]bool, len(runs))
	for i := range runs {
		var c Contour
		for k := i; !used[k]; k = next[k] {
			used[k] = true
			v := runs[k].verts
			v[len(v)-1].Bulge = 0 // along the line to the next run
			c = append(c, v...)
		}
		c = c.dropShort(SideTest)
		if len(c) > 1 && math.Abs(c.Area()) > float64(SideTest*c.Length()) {
			out = append(out, c)
		}
	}
	return out
}

type cutLine struct {
	n     Point
	at    float64
	along Point
}

func (k cutLine) height(p Point) float64 { return dot(k.n, p) - k.at }

// put moves a crossing onto an upright or level line exactly.
func (k cutLine) put(p Point) Point {
	if k.n.Y == 0 {
		p.X = float64(k.at * k.n.X)
	}
	if k.n.X == 0 {
		p.Y = float64(k.at * k.n.Y)
	}
	return p
}

// below reports whether a side that does not cross the line counts as within.
// One that lies on it does if the material is on the inner side.
func (k cutLine) below(s seg) bool {
	a, m, b := k.height(s.a), k.height(s.mid()), k.height(s.b)
	if math.Abs(a) <= SideTest && math.Abs(b) <= SideTest && math.Abs(m) <= SideTest {
		return dot(sub(s.b, s.a), k.along) > 0
	}
	// The end farthest off decides: the others may lie on the line.
	f := a
	for _, x := range [2]float64{m, b} {
		if math.Abs(x) > math.Abs(f) {
			f = x
		}
	}
	return f < 0
}

// parts splits a side where it crosses the line.
func (k cutLine) parts(dst []seg, s seg) []seg {
	a, b := k.height(s.a), k.height(s.b)
	if s.r == 0 {
		if math.Abs(a) <= SideTest || math.Abs(b) <= SideTest || (a < 0) == (b < 0) {
			return append(dst, s)
		}
		p := k.put(along(s.a, sub(s.b, s.a), a/(a-b)))
		return append(dst, newSeg(s.a, p, 0), newSeg(p, s.b, 0))
	}
	h := k.height(s.c)
	if math.Abs(h) >= s.r-SideTest {
		return append(dst, s)
	}
	foot := along(s.c, k.n, -h)
	w := math.Sqrt(float64((s.r - h) * (s.r + h)))
	var cuts []Point
	for _, t := range [2]float64{-w, w} {
		p := k.put(along(foot, k.along, t))
		if s.faces(p) && gap(p, s.a) > SideTest && gap(p, s.b) > SideTest {
			cuts = append(cuts, p)
		}
	}
	if len(cuts) == 2 && math.Abs(s.bulgeTo(s.a, cuts[0])) > math.Abs(s.bulgeTo(s.a, cuts[1])) {
		cuts[0], cuts[1] = cuts[1], cuts[0]
	}
	if len(cuts) == 0 {
		return append(dst, s)
	}
	last := s.a
	for _, p := range append(cuts, s.b) {
		dst = append(dst, newSeg(last, p, s.bulgeTo(last, p)))
		last = p
	}
	return dst
}

// cut finds the runs of a contour, or reports that it is within as a whole.
func (k cutLine) cut(c Contour) (whole bool, runs []run) {
	var parts []seg
	for _, s := range c.sides() {
		parts = k.parts(parts, s)
	}
	in := make([]bool, len(parts))
	start := -1
	for i, s := range parts {
		in[i] = k.below(s)
		if i > 0 && in[i] && !in[i-1] {
			start = i
		}
	}
	if start < 0 {
		switch {
		case len(parts) == 0 || !in[len(in)-1] && !in[0]:
			return false, nil
		case in[0] && in[len(in)-1]:
			// Within from first to last, or a gap in between that a start would
			// have followed.
			return true, nil
		}
		start = 0
	}
	for j := 0; j < len(parts); {
		i := (start + j) % len(parts)
		if !in[i] {
			j++
			continue
		}
		r := run{enter: dot(k.along, parts[i].a)}
		for ; j < len(parts) && in[(start+j)%len(parts)]; j++ {
			s := parts[(start+j)%len(parts)]
			r.verts = append(r.verts, Vertex{s.a.X, s.a.Y, s.bulge})
			i = (start + j) % len(parts)
		}
		e := parts[i].b
		r.leave = dot(k.along, e)
		r.verts = append(r.verts, Vertex{e.X, e.Y, 0})
		runs = append(runs, r)
	}
	return false, runs
}
