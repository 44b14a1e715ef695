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
	n.index()
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

// index sorts pieces and boundary into a grid of cells, if there are enough of
// them: per cell the pieces that may hold a place in it (none if one of them
// holds all of it), and the runs that may be the nearest.
func (n *nofit) index() {
	k := len(n.first) - 1
	n.nx = 1
	switch {
	case len(n.edge) > 60:
		n.nx = 24
	case len(n.edge) > 20:
		n.nx = 16
	case len(n.edge) > 7:
		n.nx = 10
	}
	w, h := n.x1-n.x0, n.y1-n.y0
	n.kx, n.ky = float64(n.nx)/w, float64(n.nx)/h
	n.cells, n.near = append(n.cells, 0), append(n.near, 0)
	// half the diagonal of a cell and a little more
	reach := float64(math.Sqrt(float64(w*w)+float64(h*h)) * 0.501 / float64(n.nx))
	dist := make([]float64, len(n.edge))
	for cy := 0; cy < n.nx; cy++ {
		for cx := 0; cx < n.nx; cx++ {
			ax, bx := n.x0+float64(w*(float64(cx)-0.001))/float64(n.nx), n.x0+float64(w*(float64(cx)+1.001))/float64(n.nx)
			ay, by := n.y0+float64(h*(float64(cy)-0.001))/float64(n.nx), n.y0+float64(h*(float64(cy)+1.001))/float64(n.nx)
			start := len(n.list)
			held := false
		piece:
			for p := 0; p < k; p++ {
				all := true
				for _, s := range n.sides[n.first[p]:n.first[p+1]] {
					x, y, u, v := ax, ay, bx, by // the corners farthest in and out
					if s.nx < 0 {
						x, u = bx, ax
					}
					if s.ny < 0 {
						y, v = by, ay
					}
					if s.c-float64(s.nx*x)-float64(s.ny*y) <= 0 {
						continue piece
					}
					if s.c-float64(s.nx*u)-float64(s.ny*v) <= touch {
						all = false
					}
				}
				n.list = append(n.list, int32(p))
				held = held || all
			}
			if held {
				n.list = append(n.list[:start], -1)
			}
			n.cells = append(n.cells, int32(len(n.list)))
			if len(n.list) > start {
				mx, my := (ax+bx)/2, (ay+by)/2
				least := math.Inf(1)
				for i := range n.edge {
					dist[i] = math.Sqrt(n.edge[i].square(mx, my))
					least = math.Min(least, dist[i])
				}
				for i, d := range dist {
					if d <= least+2*reach {
						n.runs = append(n.runs, int32(i))
					}
				}
			}
			n.near = append(n.near, int32(len(n.runs)))
		}
	}
}

// depth is how deep a relative place lies, 0 if it is clear.
func (n *nofit) depth(x, y float64) float64 {
	if x <= n.x0 || x >= n.x1 || y <= n.y0 || y >= n.y1 {
		return 0
	}
	c := n.cell(x, y)
	inside := false
	for _, p := range n.list[n.cells[c]:n.cells[c+1]] {
		if p < 0 {
			inside = true
			break
		}
		in := true
		for i := n.first[p]; i < n.first[p+1]; i++ {
			s := &n.sides[i]
			if s.c-float64(s.nx*x)-float64(s.ny*y) <= touch {
				in = false
				break
			}
		}
		if in {
			inside = true
			break
		}
	}
	if !inside {
		return 0
	}
	best := math.Inf(1)
	for _, i := range n.runs[n.near[c]:n.near[c+1]] {
		if d := n.edge[i].square(x, y); d < best {
			best = d
		}
	}
	return math.Sqrt(best)
}

func (n *nofit) cell(x, y float64) int {
	if n.nx == 1 {
		return 0
	}
	return min(int((y-n.y0)*n.ky), n.nx-1)*n.nx + min(int((x-n.x0)*n.kx), n.nx-1)
}

// square is the square of the distance of a point from the run.
func (r *run) square(x, y float64) float64 {
	dx, dy := x-r.ax, y-r.ay
	t := float64(dx*r.ux) + float64(dy*r.uy)
	if t < 0 {
		t = 0
	} else if t > r.l {
		t = r.l
	}
	dx -= float64(t * r.ux)
	dy -= float64(t * r.uy)
	return float64(dx*dx) + float64(dy*dy)
}

// away is the shortest move that clears the union from a place within.
func (n *nofit) away(x, y float64) (dx, dy float64) {
	best := math.Inf(1)
	c := n.cell(x, y)
	for _, i := range n.runs[n.near[c]:n.near[c+1]] {
		r := &n.edge[i]
		if d := r.square(x, y); d < best {
			best = d
			t := float64((x-r.ax)*r.ux) + float64((y-r.ay)*r.uy)
			t = min(max(t, 0), r.l)
			dx, dy = r.ax+float64(t*r.ux)-x, r.ay+float64(t*r.uy)-y
		}
	}
	return dx, dy
}

// bare adds what no other piece covers of a side of piece i.
func (n *nofit) bare(a, b outline.Point, i int, boxes []outline.Box) {
	dx, dy := b.X-a.X, b.Y-a.Y
	l := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if l < 1e-9 {
		return
	}
	ux, uy := dx/l, dy/l
	type span struct{ from, to float64 }
	var gone []span
	for p := 0; p+1 < len(n.first); p++ {
		q := &boxes[p]
		if p == i || math.Min(a.X, b.X) >= q.Max.X || math.Max(a.X, b.X) <= q.Min.X || math.Min(a.Y, b.Y) >= q.Max.Y || math.Max(a.Y, b.Y) <= q.Min.Y {
			continue
		}
		in, out := 0.0, l
		for _, s := range n.sides[n.first[p]:n.first[p+1]] {
			gap := s.c - touch/2 - float64(s.nx*a.X) - float64(s.ny*a.Y)
			v := float64(s.nx*ux) + float64(s.ny*uy)
			switch {
			case v > 1e-12:
				out = math.Min(out, gap/v)
			case v < -1e-12:
				in = math.Max(in, gap/v)
			case gap <= 0:
				in, out = 1, 0
			}
			if in >= out {
				break
			}
		}
		if out-in > 1e-9 {
			gone = append(gone, span{in, out})
		}
	}
	sort.Slice(gone, func(i, j int) bool {
		if gone[i].from != gone[j].from {
			return gone[i].from < gone[j].from
		}
		return gone[i].to < gone[j].to
	})
	at := 0.0
	add := func(to float64) {
		if to-at > 1e-9 || to >= at && to == l && at == 0 {
			n.edge = append(n.edge, run{a.X + float64(at*ux), a.Y + float64(at*uy), ux, uy, to - at})
		}
	}
	for _, g := range gone {
		if g.from > at {
			add(g.from)
		}
		at = math.Max(at, g.to)
	}
	if at < l {
		add(l)
	}
}

// findCorners lists the ends of the runs, each place once.
func (n *nofit) findCorners() {
	var all []outline.Point
	for _, r := range n.edge {
		all = append(all, outline.Point{X: r.ax, Y: r.ay}, outline.Point{X: r.ax + float64(r.l*r.ux), Y: r.ay + float64(r.l*r.uy)})
	}
	sort.Slice(all, func(i, j int) bool {
		if all[i].X != all[j].X {
			return all[i].X < all[j].X
		}
		return all[i].Y < all[j].Y
	})
	for _, p := range all {
		dup := false
		for k := len(n.corners) - 1; k >= 0 && p.X-n.corners[k].X < 1e-7; k-- {
			if math.Abs(p.Y-n.corners[k].Y) < 1e-7 {
				dup = true
				break
			}
		}
		if !dup {
			n.corners = append(n.corners, p)
		}
	}
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
