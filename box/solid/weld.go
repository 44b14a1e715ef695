package solid

import (
	"math"
	"slices"
)

// weldRadius is the largest distance, in mm, within which corners become one and
// a corner counts as lying on an edge. The two must be the same number: with a
// smaller one for either, an edge a little over it is left open. Flat forms, for
// drawings, always use it.
const weldRadius = 1e-4

// weldRadii are those tried for a mesh, one after the other until it closes.
var weldRadii = [...]float64{4e-6, 2e-5, weldRadius}

// welder joins points into connected clusters: not "the first point within r",
// which is not transitive. Each cluster is its earliest point.
type welder struct {
	r    float64 // the radius; neighbours are looked for in cells of 5000 r
	pts  []Vec
	up   []int32 // union-find
	head []int32 // hash table of cells
	next []int32
}

func newWelder(n int, r float64) *welder {
	size := 16
	for size < 2*n {
		size *= 2
	}
	w := &welder{
		r:    r,
		pts:  make([]Vec, 0, n),
		up:   make([]int32, 0, n),
		next: make([]int32, 0, n),
		head: make([]int32, size),
	}
	for i := range w.head {
		w.head[i] = -1
	}
	return w
}

func (w *welder) slot(x, y, z int64) int {
	h := uint64(x)*0x9E3779B97F4A7C15 ^ uint64(y)*0xC2B2AE3D27D4EB4F ^ uint64(z)*0x165667B19E3779F9
	h ^= h >> 29
	h *= 0xBF58476D1CE4E5B9
	return int(h>>32) & (len(w.head) - 1)
}

// add enters a point and returns its number; find it only when all are in.
func (w *welder) add(p Vec) int32 {
	// The grid is shifted: designs have corners at round numbers, and on a
	// border several cells would have to be looked at.
	cell := 5000 * w.r
	q := [3]float64{p.X/cell + 0.2718281, p.Y/cell + 0.3141592, p.Z/cell + 0.5772156}
	var c, lo, hi [3]int64
	for i, v := range q {
		f := math.Floor(v)
		c[i] = int64(f)
		lo[i], hi[i] = c[i], c[i]
		if v-f < 1.0/2500 {
			lo[i]--
		} else if f+1-v < 1.0/2500 {
			hi[i]++
		}
	}
	home := w.slot(c[0], c[1], c[2])
	for i := w.head[home]; i >= 0; i = w.next[i] {
		if w.pts[i] == p {
			return i
		}
	}
	id := int32(len(w.pts))
	w.pts = append(w.pts, p)
	w.up = append(w.up, id)
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for z := lo[2]; z <= hi[2]; z++ {
				for i := w.head[w.slot(x, y, z)]; i >= 0; i = w.next[i] {
					if d := w.pts[i].Sub(p); d.Dot(d) <= float64(w.r*w.r) {
						w.join(i, id)
					}
				}
			}
		}
	}
	w.next = append(w.next, w.head[home])
	w.head[home] = id
	return id
}

func (w *welder) find(i int32) int32 {
	for w.up[i] != i {
		w.up[i] = w.up[w.up[i]]
		i = w.up[i]
	}
	return i
}

func (w *welder) join(i, j int32) {
	i, j = w.find(i), w.find(j)
	if i < j {
		w.up[j] = i
	} else {
		w.up[i] = j
	}
}

// finish numbers the clusters in the order of their earliest points, and
// returns the number of each point's cluster and the clusters' places.
func (w *welder) finish() (of []int32, at []Vec) {
	of = make([]int32, len(w.pts))
	at = w.pts[:0]
	for i := range w.pts {
		if r := w.find(int32(i)); int(r) < i {
			of[i] = of[r]
			continue
		}
		of[i] = int32(len(at))
		at = append(at, w.pts[i])
	}
	return of, at
}

// liners finds the corners that lie on an edge.
type liners struct {
	at    []Vec
	key   []float64 // of the points in order, along a skew direction
	order []int32
	pos   []float64 // key by point
	hit   []lineHit
	// within is the distance within which a corner lies on an edge.
	within float64
}

type lineHit struct {
	t float64
	v int32
}

// skew is a direction in which few corners of a box have equal keys.
var skew = Vec{0.5773, 0.6421, 0.5043}

func newLiners(at []Vec, within float64) *liners {
	l := &liners{within: within, at: at, pos: make([]float64, len(at)), key: make([]float64, len(at)), order: make([]int32, len(at))}
	for i, p := range at {
		l.pos[i] = skew.Dot(p)
		l.order[i] = int32(i)
	}
	slices.SortFunc(l.order, func(i, j int32) int {
		switch a, b := l.pos[i], l.pos[j]; {
		case a < b:
			return -1
		case a > b:
			return 1
		}
		return int(i - j)
	})
	for i, v := range l.order {
		l.key[i] = l.pos[v]
	}
	return l
}

// between returns the corners strictly between a and b on their line, from the
// lower number of the two to the higher: both faces of an edge get the same.
func (l *liners) between(a, b int32) []lineHit {
	if a > b {
		a, b = b, a
	}
	l.hit = l.hit[:0]
	lo, hi := l.pos[a], l.pos[b]
	if lo > hi {
		lo, hi = hi, lo
	}
	p := l.at[a]
	d := l.at[b].Sub(p)
	dd := d.Dot(d)
	lo, hi = lo-l.within, hi+l.within
	i, n := 0, len(l.key)
	for j := n; i < j; {
		m := int(uint(i+j) >> 1)
		if l.key[m] < lo {
			i = m + 1
		} else {
			j = m
		}
	}
	for ; i < n && l.key[i] <= hi; i++ {
		v := l.order[i]
		if v == a || v == b {
			continue
		}
		q := l.at[v].Sub(p)
		t := q.Dot(d)
		if t <= 0 || t >= dd {
			continue
		}
		if x := d.Cross(q); x.Dot(x) <= float64(dd*(l.within*l.within)) {
			l.hit = append(l.hit, lineHit{t, v})
		}
	}
	if len(l.hit) > 1 {
		slices.SortFunc(l.hit, func(x, y lineHit) int {
			switch {
			case x.t < y.t:
				return -1
			case x.t > y.t:
				return 1
			}
			return int(x.v - y.v)
		})
	}
	return l.hit
}
