package layout

import (
	"math"
	"sort"
)

// rectType is a size of rectangle, in ticks with one gap: w across the bin
// (y), h along it (x). Equal rectangles share a type.
type rectType struct {
	w, h int64
	ways []uint8 // per kind of bin
}

// rectBin is a kind of bin for rectangles: width across, length along.
type rectBin struct{ w, h int64 }

// skyline lays rectangles down in an order: always into the lowest stretch of
// the skyline, the rectangle that fits it best, the first in order among
// equals (best fit after Burke, Kendall and Whitwell 2004, from memory).
type skyline struct {
	types []rectType
	of    []int32 // type of each rectangle
	area  float64 // of all
	order []int32

	queue [][]int32 // per type, in order
	head  []int32
	live  []liveType // types with rectangles left
	tall  []int32    // types by the length they take at least, the longest first

	x, y, w []int64 // the skyline: start across, height along, width

	at  []laid // per rectangle
	far int64
}

// liveType is a type with rectangles left, laid out flat for the scan.
type liveType struct {
	w, h int64
	pos  int32 // in the order, of its first rectangle left
	t    int32
	ways uint8
}

// laid is where a rectangle lies; bin -1 is nowhere.
type laid struct {
	bin  int32
	x, y int64 // across, along
	side bool
}

func newSkyline(types []rectType, of []int32) *skyline {
	s := &skyline{types: types, of: of, queue: make([][]int32, len(types)), head: make([]int32, len(types)), at: make([]laid, len(of))}
	for i, t := range of {
		s.order = append(s.order, int32(i))
		s.area += float64(float64(types[t].w) * float64(types[t].h))
	}
	for t := range types {
		s.tall = append(s.tall, int32(t))
	}
	sort.SliceStable(s.tall, func(a, b int) bool { return types[s.tall[a]].least(0) > types[s.tall[b]].least(0) })
	return s
}

// least is the shortest length a rectangle takes along the bin.
func (t *rectType) least(kind int) int64 {
	switch t.ways[kind] {
	case wayUp:
		return t.h
	case waySide:
		return t.w
	}
	return min(t.w, t.h)
}

// begin puts every rectangle back.
func (s *skyline) begin() {
	s.live = s.live[:0]
	for t := range s.queue {
		s.queue[t] = s.queue[t][:0]
		s.head[t] = 0
	}
	for p, i := range s.order {
		t := s.of[i]
		if len(s.queue[t]) == 0 {
			s.live = append(s.live, liveType{s.types[t].w, s.types[t].h, int32(p), t, 0})
		}
		s.queue[t] = append(s.queue[t], int32(p))
		s.at[i].bin = -1
	}
}

// fill lays what it can into one bin. In a strip (most > 0) it keeps below
// most, and stops as soon as the waste says that more than the area spare must
// be left out. It reports whether it went through.
func (s *skyline) fill(binNo int32, kind int, b rectBin, most int64, spare float64) bool {
	strip := most > 0
	limit := b.h
	slackArea := math.Inf(1)
	if strip {
		limit = most
		slackArea = float64(float64(most)*float64(b.w)) - s.area + spare
	}
	waste := 0.0
	s.x, s.y, s.w = append(s.x[:0], 0), append(s.y[:0], 0), append(s.w[:0], b.w)
	s.far = 0
	for a := range s.live {
		s.live[a].ways = s.types[s.live[a].t].ways[kind]
	}
	tall := 0
	for len(s.live) > 0 {
		k := 0
		for i := 1; i < len(s.y); i++ {
			if s.y[i] < s.y[k] {
				k = i
			}
		}
		y, gw := s.y[k], s.w[k]
		if y >= limit {
			return true
		}
		if strip && spare == 0 {
			// the longest left must still go in
			for int(s.head[s.tall[tall]]) == len(s.queue[s.tall[tall]]) {
				tall++
			}
			if y+s.types[s.tall[tall]].least(kind) > limit {
				return false
			}
		}
		left, right := int64(math.MaxInt64), int64(math.MaxInt64)
		if k > 0 {
			left = s.y[k-1] - y
		}
		if k+1 < len(s.y) {
			right = s.y[k+1] - y
		}
		best, bestPos, bestAt := -1, int32(0), 0
		side := false
		for a := range s.live {
			ty := &s.live[a]
			if ty.ways&wayUp != 0 && ty.w <= gw && y+ty.h <= limit {
				if c := fitClass(ty.w, ty.h, gw, left, right); c > best || c == best && ty.pos < bestPos {
					best, bestPos, bestAt, side = c, ty.pos, a, false
				}
			}
			if ty.ways&waySide != 0 && ty.h <= gw && y+ty.w <= limit {
				if c := fitClass(ty.h, ty.w, gw, left, right); c > best || c == best && ty.pos < bestPos {
					best, bestPos, bestAt, side = c, ty.pos, a, true
				}
			}
		}
		if best < 0 {
			// nothing fits: up to the lower neighbour
			up := min(left, right, limit-y)
			if strip {
				if waste += float64(float64(gw) * float64(up)); waste > slackArea {
					return false
				}
			}
			s.y[k] += up
			s.join(k)
			continue
		}
		t := s.live[bestAt].t
		w, h := s.types[t].w, s.types[t].h
		if side {
			w, h = h, w
		}
		i := s.order[bestPos]
		if s.head[t]++; int(s.head[t]) == len(s.queue[t]) {
			s.live[bestAt] = s.live[len(s.live)-1]
			s.live = s.live[:len(s.live)-1]
		} else {
			s.live[bestAt].pos = s.queue[t][s.head[t]]
		}
		x := s.x[k]
		atRight := w < gw && (h == right || h != left && right > left)
		if atRight {
			x += gw - w
		}
		s.at[i] = laid{binNo, x, y, side}
		s.far = max(s.far, y+h)
		s.put(k, w, h, atRight)
	}
	return true
}

// fitClass grades how well w x h fills a stretch gw wide between two walls.
func fitClass(w, h, gw, left, right int64) int {
	wall := h == left || h == right
	switch {
	case w == gw && wall:
		return 4
	case w == gw:
		return 3
	case wall:
		return 2
	}
	return 1
}

// put raises part of stretch k.
func (s *skyline) put(k int, w, h int64, atRight bool) {
	if w == s.w[k] {
		s.y[k] += h
		s.join(k)
		return
	}
	s.x, s.y, s.w = append(s.x, 0), append(s.y, 0), append(s.w, 0)
	copy(s.x[k+1:], s.x[k:])
	copy(s.y[k+1:], s.y[k:])
	copy(s.w[k+1:], s.w[k:])
	if atRight {
		s.w[k] -= w
		s.x[k+1] = s.x[k] + s.w[k]
		s.w[k+1] = w
		s.y[k+1] += h
		s.join(k + 1)
		return
	}
	s.w[k] = w
	s.y[k] += h
	s.x[k+1] += w
	s.w[k+1] -= w
	s.join(k)
}

// join merges stretch k with neighbours of its height.
func (s *skyline) join(k int) {
	if k+1 < len(s.y) && s.y[k+1] == s.y[k] {
		s.w[k] += s.w[k+1]
		s.x, s.y, s.w = append(s.x[:k+1], s.x[k+2:]...), append(s.y[:k+1], s.y[k+2:]...), append(s.w[:k+1], s.w[k+2:]...)
	}
	if k > 0 && s.y[k-1] == s.y[k] {
		s.w[k-1] += s.w[k]
		s.x, s.y, s.w = append(s.x[:k], s.x[k+1:]...), append(s.y[:k], s.y[k+1:]...), append(s.w[:k], s.w[k+1:]...)
	}
}

// sortBy puts the rectangles in one of several orders of size.
func (s *skyline) sortBy(how int) {
	key := func(i int32) float64 {
		t := &s.types[s.of[i]]
		switch how {
		case 1:
			return float64(t.h)
		case 2:
			return float64(float64(t.w) * float64(t.h))
		case 3:
			return float64(t.w + t.h)
		case 4:
			return float64(max(t.w, t.h))
		}
		return float64(t.w)
	}
	sort.SliceStable(s.order, func(a, b int) bool { return key(s.order[a]) > key(s.order[b]) })
}

const sortOrders = 5

// strip searches for the shortest strip of a width: two rectangles change
// places in the order, and the change stays if the strip is no longer for it.
// It returns the length; the places of the shortest are in at.
func (s *skyline) strip(b rectBin, floor int64, effort, patience int, rng *source, stop func() bool) (int64, int) {
	best := int64(math.MaxInt64)
	bestAt := make([]laid, len(s.at))
	var starts [sortOrders][]int32
	first := int64(0)
	for t := range s.types {
		first += int64(s.countOf(t)) * max(s.types[t].w, s.types[t].h)
	}
	lens := make([]int64, sortOrders)
	for how := 0; how < sortOrders; how++ {
		s.sortBy(how)
		starts[how] = append([]int32(nil), s.order...)
		s.begin()
		lens[how] = math.MaxInt64
		if !s.fill(0, 0, b, first, 0) {
			continue
		}
		if lens[how] = s.far; s.far < best {
			best = s.far
			copy(bestAt, s.at)
		}
	}
	done := 0
	n := len(s.order)
	ranks := make([]int, sortOrders)
	for i := range ranks {
		ranks[i] = i
	}
	sort.SliceStable(ranks, func(i, j int) bool { return lens[ranks[i]] < lens[ranks[j]] })
	// from here on the aim is one less than the best, and what counts is the
	// area left out
	for run := 0; done < effort && best > floor && n > 1; run++ {
		copy(s.order, starts[ranks[run%sortOrders]])
		cur := s.area
		for idle := 0; idle < patience && done < effort && best > floor; idle++ {
			if done&7 == 7 && stop() {
				effort = done
				break
			}
			done++
			i, j := rng.n(n), rng.n(n)
			if s.of[s.order[i]] == s.of[s.order[j]] {
				continue
			}
			s.order[i], s.order[j] = s.order[j], s.order[i]
			s.begin()
			if ok := s.fill(0, 0, b, best-1, cur); !ok || s.leftOut() > cur {
				s.order[i], s.order[j] = s.order[j], s.order[i]
				continue
			}
			v := s.leftOut()
			if v < cur {
				cur = v
				idle = 0
			}
			if len(s.live) == 0 {
				best = s.far
				copy(bestAt, s.at)
				cur = s.area
			}
		}
	}
	copy(s.at, bestAt)
	return best, done
}

// leftOut is the area of what no bin took.
func (s *skyline) leftOut() float64 {
	v := 0.0
	for a := range s.live {
		t := s.live[a].t
		k := len(s.queue[t]) - int(s.head[t])
		v += float64(float64(k) * float64(float64(s.types[t].w)*float64(s.types[t].h)))
	}
	return v
}

func (s *skyline) countOf(t int) int {
	n := 0
	for _, k := range s.of {
		if int(k) == t {
			n++
		}
	}
	return n
}
