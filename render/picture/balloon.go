package picture

import (
	"math"
	"sort"

	"holt.example/box/solid"
)

// spot is where a part can be pointed at.
type spot struct {
	owner int
	at    pt
	room  float64 // distance to the nearest line in sight, in the world's scale
}

// spots finds for each solid a place in the middle of the largest area of it
// that can be seen: of points spread over its faces, those not hidden by
// anything, nor seen through a hole of another; of the face with most of those, the point farthest from any line.
func (s *scene) spots(lines []piece) map[int]spot {
	const across = 14
	type line2 struct{ a, b pt }
	near := make([]line2, 0, len(lines))
	for _, l := range lines {
		if l.class != Unseen {
			near = append(near, line2{s.ax.screen(l.a), s.ax.screen(l.b)})
		}
	}
	hs := s.hatches()
	out := map[int]spot{}
	byOwner := make([][]*face, len(s.solids))
	for _, i := range s.front {
		f := s.faces[i]
		byOwner[f.owner] = append(byOwner[f.owner], f)
	}
	for owner, fs := range byOwner {
		sort.SliceStable(fs, func(i, j int) bool {
			return float64(fs[i].area*fs[i].nd) > float64(fs[j].area*fs[j].nd)
		})
		most := 0.0
		for k, f := range fs {
			seenArea := float64(f.area * f.nd)
			if k > 0 && seenArea <= most {
				break // even all of it in sight would be less
			}
			inside, open := s.sample(f, across)
			if len(hs) > 0 {
				clear := open[:0]
				for _, q := range open {
					if !s.through(hs, owner, s.on(f, q)) {
						clear = append(clear, q)
					}
				}
				open = clear
			}
			if len(open) == 0 {
				continue
			}
			if a := float64(seenArea*float64(len(open))) / float64(inside); a > most {
				most = a
				best := spot{owner: owner, room: -1}
				for _, q := range open {
					room := math.Inf(1)
					for _, l := range near {
						if room = math.Min(room, offSegment(q, l.a, l.b)); room <= best.room {
							break
						}
					}
					if room > best.room {
						best.at, best.room = q, room
					}
				}
				out[owner] = best
			}
		}
	}
	return out
}

// on is the point of a face that shows at a place on the screen.
func (s *scene) on(f *face, q pt) solid.Vec {
	p := s.ax.r.Scale(q.x).Add(s.ax.u.Scale(q.y))
	return p.Add(s.ax.d.Scale(-f.height(p) / f.nd))
}

func offSegment(q, a, b pt) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := 0.0
	if n := float64(dx*dx) + float64(dy*dy); n > 0 {
		t = math.Max(0, math.Min(1, (float64((q.x-a.x)*dx)+float64((q.y-a.y)*dy))/n))
	}
	x, y := a.x+float64(t*dx)-q.x, a.y+float64(t*dy)-q.y
	return math.Sqrt(float64(x*x) + float64(y*y))
}

// columns sets balloons for the dots into a column on the left and one on the
// right. The result gives each dot its balloon's place. Leaders run level for
// a short way, shoulder, and then straight to the dot; no two of them cross.
func columns(dots []Point, left, right, top, bottom, gap, shoulder float64) []Point {
	n := len(dots)
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return dots[order[i]].X < dots[order[j]].X })
	// Each to the nearer column, as long as that has room.
	room := int((bottom-top)/gap+1e-9) + 1
	cut := sort.Search(n, func(k int) bool { return dots[order[k]].X >= (left+right)/2 })
	cut = min(max(cut, n-room), room, n)
	if cut < 0 || 2*room < n {
		cut = n / 2
	}
	place := make([]Point, n)
	for side, ids := range [2][]int{order[:cut], order[cut:]} {
		x := left
		if side == 1 {
			x = right
		}
		sort.SliceStable(ids, func(i, j int) bool { return dots[ids[i]].Y < dots[ids[j]].Y })
		want := make([]float64, len(ids))
		for k, i := range ids {
			want[k] = dots[i].Y
		}
		for k, y := range spread(want, gap, top, bottom) {
			place[ids[k]] = Point{x, y}
		}
	}
	elbow := func(i int) Point {
		if place[i].X == left {
			return Point{left + shoulder, place[i].Y}
		}
		return Point{right - shoulder, place[i].Y}
	}
	// Two crossing leaders that swap their balloons get shorter together, so
	// this comes to an end; the bound only guards against rounding.
	for round := 0; round < 4*n*n; round++ {
		swapped := false
		for i := range n {
			for j := i + 1; j < n; j++ {
				if crossing(elbow(i), dots[i], elbow(j), dots[j]) {
					place[i], place[j] = place[j], place[i]
					swapped = true
				}
			}
		}
		if !swapped {
			break
		}
	}
	return place
}

// crossing reports whether two segments cross.
func crossing(a, b, c, d Point) bool {
	side := func(p, q, r Point) float64 {
		return float64((q.X-p.X)*(r.Y-p.Y)) - float64((q.Y-p.Y)*(r.X-p.X))
	}
	return (side(a, b, c) > 0) != (side(a, b, d) > 0) && (side(c, d, a) > 0) != (side(c, d, b) > 0)
}

// spread gives places in the same order as wanted, at least gap apart and
// between lo and hi, as near to those wanted as can be: places that would come
// too near become a group around the mean of what they want.
func spread(want []float64, gap, lo, hi float64) []float64 {
	n := len(want)
	if n == 0 {
		return nil
	}
	if room := (hi - lo) / math.Max(1, float64(n-1)); gap > room {
		gap = room
	}
	type group struct {
		sum float64
		n   int
	}
	var gs []group
	for i, w := range want {
		gs = append(gs, group{w - float64(float64(i)*gap), 1})
		for k := len(gs) - 1; k > 0 && gs[k].sum/float64(gs[k].n) < gs[k-1].sum/float64(gs[k-1].n); k-- {
			gs[k-1].sum += gs[k].sum
			gs[k-1].n += gs[k].n
			gs = gs[:k]
		}
	}
	out := make([]float64, 0, n)
	for _, g := range gs {
		y := math.Max(lo, math.Min(g.sum/float64(g.n), hi-float64(float64(n-1)*gap)))
		for range g.n {
			out = append(out, y+float64(float64(len(out))*gap))
		}
	}
	return out
}
