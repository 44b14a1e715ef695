package layout

import (
	"math"
	"sort"
	"sync"

	"holt.example/box/outline"
)

// side is a half-plane nx x + ny y <= c that bounds a convex piece.
type side struct{ nx, ny, c float64 }

// nofit holds the places of one shape, relative to another that stays, at
// which they come nearer than the gap: a union of convex pieces, each the
// Minkowski sum of a piece of the one and the mirrored piece of the other,
// grown by the gap. How deep a place lies in a piece is how far the shape must
// move to be clear of it.
type nofit struct {
	x0, y0, x1, y1 float64
	sides          []side
	first          []int32 // piece k has sides[first[k]:first[k+1]]
	cells          []int32 // cell c has list[cells[c]:cells[c+1]]
	list           []int32
	near           []int32 // cell c has runs[near[c]:near[c+1]]
	runs           []int32
	nx             int // cells along each side
	kx, ky         float64
	edge           []run // the boundary of the union
	corners        []outline.Point
}

// run is a stretch of the boundary: from a, l long in the direction u.
type run struct{ ax, ay, ux, uy, l float64 }

// touch is the depth, in mm, up to which shapes count as clear: half of what
// the exact check at the end lets pass, and more than rounding.
const touch = 5e-7

// roundSides is the number of extra directions in which a gap is measured
// round the corners: between two of them the gap is up to 3.5 % wider.
const roundSides = 12

// support is how far the sum of two convex pieces reaches in a direction.
func support(p []outline.Point, nx, ny float64) float64 {
	best := math.Inf(-1)
	for _, q := range p {
		if v := float64(nx*q.X) + float64(ny*q.Y); v > best {
			best = v
		}
	}
	return best
}

func newNofit(a, b *shape, gap float64) *nofit {
	n := &nofit{x0: inf, y0: inf, x1: -inf, y1: -inf}
	type piece struct {
		sides []side
		verts []outline.Point
		box   outline.Box
	}
	var ps []piece
	var neg []outline.Point
	for _, pb := range b.pieces {
		neg = neg[:0]
		for _, q := range pb {
			neg = append(neg, outline.Point{X: -q.X, Y: -q.Y})
		}
		for _, pa := range a.pieces {
			var ss []side
			dir := func(p []outline.Point) {
				for i := range p {
					j := (i + 1) % len(p)
					dx, dy := p[j].X-p[i].X, p[j].Y-p[i].Y
					if l := math.Sqrt(float64(dx*dx) + float64(dy*dy)); l > 1e-9 {
						ss = append(ss, side{nx: dy / l, ny: -dx / l})
					}
				}
			}
			dir(pa)
			dir(neg)
			if gap > 0 {
				for k := 0; k < roundSides; k++ {
					m := outline.Turn(360 / roundSides * float64(k))
					ss = append(ss, side{nx: m.XX, ny: m.YX})
				}
			}
			ps = append(ps, piece{sides: sumSides(ss, pa, neg, gap)})
			q := &ps[len(ps)-1]
			q.verts = cornersOf(q.sides)
			q.box = outline.Box{Min: outline.Point{X: inf, Y: inf}, Max: outline.Point{X: -inf, Y: -inf}}
			for _, v := range q.verts {
				q.box.Min.X, q.box.Max.X = math.Min(q.box.Min.X, v.X), math.Max(q.box.Max.X, v.X)
				q.box.Min.Y, q.box.Max.Y = math.Min(q.box.Min.Y, v.Y), math.Max(q.box.Max.Y, v.Y)
			}
		}
	}
	// the larger first; drop what lies in another
	sort.SliceStable(ps, func(i, j int) bool {
		return ps[i].box.Width()*ps[i].box.Height() > ps[j].box.Width()*ps[j].box.Height()
	})
	var kept []piece
next:
	for _, p := range ps {
		for k := range kept {
			q := &kept[k].box
			within := p.box.Min.X >= q.Min.X-1e-7 && p.box.Max.X <= q.Max.X+1e-7 && p.box.Min.Y >= q.Min.Y-1e-7 && p.box.Max.Y <= q.Max.Y+1e-7
			if !within {
				continue
			}
			for _, v := range p.verts {
				if depthIn(kept[k].sides, v.X, v.Y) < 1e-9 && !nearIn(kept[k].sides, v.X, v.Y) {
					within = false
					break
				}
			}
			if within {
				continue next
			}
		}
		kept = append(kept, p)
	}
	n.first = []int32{0}
	for _, p := range kept {
		n.sides = append(n.sides, p.sides...)
		n.first = append(n.first, int32(len(n.sides)))
		n.x0, n.x1 = math.Min(n.x0, p.box.Min.X), math.Max(n.x1, p.box.Max.X)
		n.y0, n.y1 = math.Min(n.y0, p.box.Min.Y), math.Max(n.y1, p.box.Max.Y)
	}
	boxes := make([]outline.Box, len(kept))
	for i := range kept {
		boxes[i] = kept[i].box
	}
	for i, p := range kept {
		for k := range p.verts {
			n.bare(p.verts[k], p.verts[(k+1)%len(p.verts)], i, boxes)
		}
	}
	n.findCorners()
	n.index(boxes)
	return n
}

// sumSides orders the directions, drops equal ones, and moves each side out to
// the sum of the pieces and the gap.
func sumSides(ss []side, a, b []outline.Point, gap float64) []side {
	sort.Slice(ss, func(i, j int) bool {
		if hi, hj := half(ss[i]), half(ss[j]); hi != hj {
			return hi < hj
		}
		return float64(ss[i].nx*ss[j].ny)-float64(ss[i].ny*ss[j].nx) > 0
	})
	out := ss[:0]
	for _, s := range ss {
		if k := len(out); k > 0 && math.Abs(s.nx-out[k-1].nx) < 1e-9 && math.Abs(s.ny-out[k-1].ny) < 1e-9 {
			continue
		}
		out = append(out, s)
	}
	if k := len(out); k > 1 && math.Abs(out[0].nx-out[k-1].nx) < 1e-9 && math.Abs(out[0].ny-out[k-1].ny) < 1e-9 {
		out = out[:k-1]
	}
	for i := range out {
		out[i].c = support(a, out[i].nx, out[i].ny) + support(b, out[i].nx, out[i].ny) + gap
	}
	return out
}

func half(s side) int {
	if s.ny > 0 || s.ny == 0 && s.nx > 0 {
		return 0
	}
	return 1
}

// cornersOf are the corners between neighbouring sides.
func cornersOf(ss []side) []outline.Point {
	out := make([]outline.Point, 0, len(ss))
	for i := range ss {
		s, t := ss[i], ss[(i+1)%len(ss)]
		d := float64(s.nx*t.ny) - float64(s.ny*t.nx)
		if d < 1e-12 {
			continue
		}
		out = append(out, outline.Point{X: (float64(s.c*t.ny) - float64(t.c*s.ny)) / d, Y: (float64(s.nx*t.c) - float64(t.nx*s.c)) / d})
	}
	return out
}

// depthIn is how deep a point lies in a convex piece, 0 outside.
func depthIn(ss []side, x, y float64) float64 {
	d := math.Inf(1)
	for i := range ss {
		s := &ss[i]
		e := s.c - float64(s.nx*x) - float64(s.ny*y)
		if e <= 0 {
			return 0
		}
		if e < d {
			d = e
		}
	}
	return d
}

// nearIn allows a hair outside.
func nearIn(ss []side, x, y float64) bool {
	for i := range ss {
		if ss[i].c-float64(ss[i].nx*x)-float64(ss[i].ny*y) < -1e-7 {
			return false
		}
	}
	return true
}

// nofits computes the no-fit places of pairs of shapes as they are needed.
type nofits struct {
	mu     sync.Mutex
	shapes []*shape
	gap    float64
	known  map[[2]int32]*nofit
	clear  func(a, b *shape) bool // pairs that may overlap
}

func (n *nofits) get(a, b int32) *nofit {
	n.mu.Lock()
	defer n.mu.Unlock()
	k := [2]int32{a, b}
	if f := n.known[k]; f != nil {
		return f
	}
	sa, sb := n.shapes[a], n.shapes[b]
	f := &nofit{x0: inf, y0: inf, x1: -inf, y1: -inf}
	if n.clear == nil || !n.clear(sa, sb) {
		gap := n.gap
		if sa.defect != nil || sb.defect != nil {
			gap = 0
		}
		f = newNofit(sa, sb, gap+sa.allow+sb.allow)
	}
	n.known[k] = f
	return f
}
