package layout

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"holt.example/box/outline"
)

// index sorts pieces and boundary into a grid of cells, if there are enough of
// them: per cell the pieces that may hold a place in it (none if one of them
// holds all of it), and the runs that may be the nearest. The boxes are those
// of the pieces.
func (n *nofit) index(boxes []outline.Box) {
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
				if q := &boxes[p]; ax >= q.Max.X || bx <= q.Min.X || ay >= q.Max.Y || by <= q.Min.Y {
					continue
				}
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
				if all {
					held = true
					break
				}
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
	x0, x1, y0, y1 := min(a.X, b.X), max(a.X, b.X), min(a.Y, b.Y), max(a.Y, b.Y)
	for p := 0; p+1 < len(n.first); p++ {
		q := &boxes[p]
		if p == i || x0 >= q.Max.X || x1 <= q.Min.X || y0 >= q.Max.Y || y1 <= q.Min.Y {
			continue
		}
		in, out := 0.0, l
		for _, s := range n.sides[n.first[p]:n.first[p+1]] {
			gap := s.c - touch/2 - float64(s.nx*a.X) - float64(s.ny*a.Y)
			v := float64(s.nx*ux) + float64(s.ny*uy)
			switch {
			case v > 1e-12:
				if t := gap / v; t < out {
					out = t
				}
			case v < -1e-12:
				if t := gap / v; t > in {
					in = t
				}
			case gap <= 0:
				in, out = 1, 0
			}
			if in >= out {
				break
			}
		}
		if in <= 0 && out >= l {
			return // all of it
		}
		if out-in > 1e-9 {
			gone = append(gone, span{in, out})
		}
	}
	slices.SortFunc(gone, func(a, b span) int {
		if c := cmp.Compare(a.from, b.from); c != 0 {
			return c
		}
		return cmp.Compare(a.to, b.to)
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
