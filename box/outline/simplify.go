package outline

import "math"

// Simplify is the contour with fewer vertices: sides no longer than tol are
// dropped, vertices within tol of the straight line that replaces them too, and
// neighbouring arcs of one circle (centre and radius within tol) are joined up
// to half circles; a full circle becomes two half circles from its first
// vertex. The sense stays; the first vertex does if it is kept. Spikes are not
// touched. A tol that is not positive counts as 0.
func (c Contour) Simplify(tol float64) Contour {
	if !(tol > 0) {
		tol = 0
	}
	c = c.dropShort(tol)
	if centre, _, ok := c.IsCircle(tol); ok && len(c) > 2 {
		p := c[0].At()
		b := math.Copysign(1, c[0].Bulge)
		return Contour{{p.X, p.Y, b}, {2*centre.X - p.X, 2*centre.Y - p.Y, b}}
	}
	n := len(c)
	if n < 3 {
		return c
	}
	// Begin where two sides do not join, so that no run is cut in two.
	start := 0
	for i := range c {
		if _, ok := join(c.side((i+n-1)%n), c.side(i), tol); !ok {
			start = i
			break
		}
	}
	var out Contour
	first := 0 // position in out of the vertex that came earliest in c
	firstAt := n
	for i := 0; i < n; {
		at := (start + i) % n
		run := c.side(at)
		j := i + 1
		for j < n {
			s, ok := join(run, c.side((start+j)%n), tol)
			if !ok || !c.near(start+i+1, start+j, s, tol) {
				break
			}
			run = s
			j++
		}
		if at < firstAt {
			first, firstAt = len(out), at
		}
		out = append(out, Vertex{run.a.X, run.a.Y, run.bulge})
		i = j
	}
	return append(append(make(Contour, 0, len(out)), out[first:]...), out[:first]...)
}

// dropShort leaves out sides no longer than tol, keeping the earlier vertex.
func (c Contour) dropShort(tol float64) Contour {
	var out Contour
	for i, v := range c {
		if k := len(out); k > 0 && gap(out[k-1].At(), v.At()) <= tol {
			out[k-1].Bulge = v.Bulge
			continue
		}
		out = append(out, c[i])
	}
	for k := len(out); k > 1 && gap(out[k-1].At(), out[0].At()) <= tol; k = len(out) {
		out = out[:k-1]
	}
	return out
}

// join is the one segment that replaces two neighbours.
func join(s, t seg, tol float64) (seg, bool) {
	if s.r == 0 && t.r == 0 {
		if math.Abs(s.bulge) > 0 || math.Abs(t.bulge) > 0 {
			return seg{}, false
		}
		if !(dot(sub(s.b, s.a), sub(t.b, t.a)) > 0) {
			return seg{}, false
		}
		j := newSeg(s.a, t.b, 0)
		return j, j.distance(s.b) <= tol
	}
	if s.r == 0 || t.r == 0 || !(float64(s.bulge*t.bulge) > 0) || !(float64(s.bulge*t.bulge) < 1) {
		return seg{}, false
	}
	// tan(x+y): bulges are tangents of quarter sweeps.
	b := (s.bulge + t.bulge) / (1 - float64(s.bulge*t.bulge))
	if !(math.Abs(b) <= 1+1e-9) || gap(s.c, t.c) > tol || math.Abs(s.r-t.r) > tol {
		return seg{}, false
	}
	if math.Abs(b) > 1-1e-12 {
		b = math.Copysign(1, b)
	}
	return newSeg(s.a, t.b, b), true
}

// near reports whether the vertices from i to before j lie within tol of s.
func (c Contour) near(i, j int, s seg, tol float64) bool {
	for ; i < j; i++ {
		if !(s.distance(c[i%len(c)].At()) <= tol) {
			return false
		}
	}
	return true
}
