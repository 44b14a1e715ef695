package solid

import (
	"math"

	"holt.example/box/outline"
)

// columnGap is the clearance, mm, that a prism must keep from everything it
// does not pass through cleanly to be taken as a column: well over the weld.
const columnGap = 2 * weldRadius

// column is a prism that is tried as a whole: where each of its lines along W
// goes in and out through the same surfaces, clear of their edges, the holes in
// these surfaces are simply its outline. All other prisms become cutters.
type column struct {
	p      *Prism
	pts    []outline.Point // the outline, flattened, anticlockwise
	foot   []Vec           // its corners in the plane w = 0
	smooth []int32         // smoothing group of the wall from corner i to the next
	lo, hi Vec             // bounds of all it may reach
	wlo    float64         // its reach along W
	whi    float64

	slow    bool
	group   int32   // union-find over columns that touch
	covers  []int32 // columns whose outline surrounds this one's
	spans   []span
	capFrom int32 // surfaces of its ends, -1 until needed
	capTo   int32
}

// span is a stretch of material that a column takes out, from a surface below
// to a surface above.
type span struct {
	bottom, top int32
	lo, hi      []float64 // along W, per corner
}

// labels of surfaces that are not in the shell: the ends of column k.
func fromLabel(k int32) int32 { return -2 - 2*k }
func toLabel(k int32) int32   { return -3 - 2*k }

// newColumns flattens the prisms; groups counts the smoothing groups used.
func (s *shell) newColumns(prisms []Prism, chord float64, groups *int32) []column {
	cols := make([]column, 0, len(prisms))
	for i := range prisms {
		p := &prisms[i]
		pts := p.flatten(chord)
		smooth := smoothRuns(p.Outline, pts, groups)
		if area2(pts) < 0 {
			pts = anticlockwise(pts)
			for a, b := 0, len(smooth)-2; a < b; a, b = a+1, b-1 {
				smooth[a], smooth[b] = smooth[b], smooth[a]
			}
		}
		c := column{p: p, pts: pts, smooth: smooth, capFrom: -1, capTo: -1, foot: make([]Vec, len(pts))}
		for k, q := range pts {
			c.foot[k] = p.Frame.Out(Vec{q.X, q.Y, 0})
		}
		rlo, rhi := s.base.Reach(p.Frame.W)
		o := p.Frame.W.Dot(p.Frame.O)
		c.wlo, c.whi = math.Max(rlo-o, p.From), math.Min(rhi-o, p.To)
		c.bounds()
		cols = append(cols, c)
	}
	return cols
}

// empty reports whether the column reaches nothing at all.
func (c *column) empty() bool { return !(c.wlo < c.whi) || len(c.foot) < 3 }

func (c *column) bounds() {
	inf := math.Inf(1)
	c.lo, c.hi = Vec{inf, inf, inf}, Vec{-inf, -inf, -inf}
	for _, q := range c.foot {
		for _, w := range [2]float64{c.wlo, c.whi} {
			p := q.Add(c.p.Frame.W.Scale(w))
			c.lo = Vec{min(c.lo.X, p.X), min(c.lo.Y, p.Y), min(c.lo.Z, p.Z)}
			c.hi = Vec{max(c.hi.X, p.X), max(c.hi.Y, p.Y), max(c.hi.Z, p.Z)}
		}
	}
}

// smoothRuns gives every side of a flattened contour its smoothing group: a new
// one begins at each corner of the contour that is sharp. Contours without arcs
// have none.
func smoothRuns(c outline.Contour, pts []outline.Point, groups *int32) []int32 {
	out := make([]int32, len(pts))
	curved := false
	for _, v := range c {
		curved = curved || v.Bulge != 0
	}
	if !curved || len(pts) == 0 {
		return out
	}
	// The contour's corners are points of the polygon, in order; of a circle,
	// which has none, no point is one, or a smooth one.
	sharp := make([]bool, len(pts))
	k, any := 0, -1
	for i := range c {
		prev := c[(i+len(c)-1)%len(c)]
		if !sharpCorner(prev, c[i], c[(i+1)%len(c)]) {
			continue
		}
		for k < len(pts) && pts[k] != c[i].At() {
			k++
		}
		if k < len(pts) {
			sharp[k], any = true, k
		}
	}
	*groups++
	if any < 0 {
		any = 0
	}
	for i := range pts {
		j := (any + i) % len(pts)
		if i > 0 && sharp[j] {
			*groups++
		}
		out[j] = *groups
	}
	return out
}

// sharpCorner tells whether a contour turns by more than about a degree at b.
func sharpCorner(a, b, c outline.Vertex) bool {
	// The tangent at an arc's end is the chord turned by half the sweep, whose
	// tangent is 2k/(1-k*k) for the bulge k.
	turn := func(x, y, k float64) (float64, float64) {
		co, si := 1-float64(k*k), 2*k
		return float64(x*co) - float64(y*si), float64(x*si) + float64(y*co)
	}
	ix, iy := turn(b.X-a.X, b.Y-a.Y, a.Bulge)
	ox, oy := turn(c.X-b.X, c.Y-b.Y, -b.Bulge)
	dot := float64(ix*ox) + float64(iy*oy)
	cross := float64(ix*oy) - float64(ox*iy)
	return !(dot > 0 && math.Abs(cross) < 0.02*dot)
}

// slant is how a half-space meets the lines along a direction: at w it is
// at + w*rate high.
type slant struct {
	h    Plane
	rate float64
	surf int32
}

func slants(out []slant, planes []Plane, w Vec) []slant {
	out = out[:0]
	for i, h := range planes {
		out = append(out, slant{h, h.N.Dot(w), int32(i)})
	}
	return out
}

// steep is the rate below which a plane runs along the lines.
const steep = 1e-12

// crossing finds where the line through p enters and leaves the half-spaces:
// nothing there when lo >= hi. The surf fields of the two planes come with it,
// -1 for none. clear is false when the line comes near another plane there, or
// runs along one.
func crossing(sl []slant, p Vec) (lo, hi float64, ilo, ihi int32, clear bool) {
	var buf [40]float64
	at := buf[:0]
	lo, hi = math.Inf(-1), math.Inf(1)
	ilo, ihi = -1, -1
	for k := range sl {
		a := sl[k].h.At(p)
		at = append(at, a)
		switch r := sl[k].rate; {
		case r > steep:
			if w := -a / r; w < hi {
				hi, ihi = w, int32(k)
			}
		case r < -steep:
			if w := -a / r; w > lo {
				lo, ilo = w, int32(k)
			}
		case a > -columnGap:
			return 0, 0, -1, -1, false
		}
	}
	if lo >= hi {
		return lo, hi, -1, -1, false
	}
	for k := range sl {
		r := sl[k].rate
		if ilo >= 0 && int32(k) != ilo && at[k]+float64(lo*r) > -columnGap ||
			ihi >= 0 && int32(k) != ihi && at[k]+float64(hi*r) > -columnGap {
			return lo, hi, -1, -1, false
		}
	}
	return lo, hi, ilo, ihi, true
}
