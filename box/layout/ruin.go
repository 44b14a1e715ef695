package layout

import (
	"math"
	"sort"
)

// blankSize is a rectangle to saw, in ticks, with one kerf.
type blankSize struct {
	w, h  int64
	ways  []uint8 // per kind of sheet: wayUp, waySide or both
	prio  int
	worth float64 // of placing it: its area unless said
}

// The ways a blank may lie: w x h, or turned by a quarter.
const (
	wayUp   uint8 = 1
	waySide uint8 = 2
)

// sheetKind is a kind of sheet to saw.
type sheetKind struct {
	roots [][2]int64 // its clear rectangles, in ticks, with one kerf
	cost  float64
	count int // 0: as many as wanted
	first bool
	area  float64
}

// sawing is the problem of a saw layout.
type sawing struct {
	pieces []blankSize
	kinds  []sheetKind
	least  int64 // a rip needs this length, kerf included
	stages int16
	fits   [][]int // per piece: the kinds of sheets it suits, in order
}

// sawState is one layout under way.
type sawState struct {
	*sawing
	bins    []slicing
	out     []int32 // pieces not placed
	left    []int   // sheets left of each kind, -1 without limit
	cost    float64
	saved   []slicing
	savedAt []int
	touched []bool
	rng     source
	found   foundRoom
	upright bool // lay everything as drawn if it may be
}

// foundRoom is where a piece may go, and what it wastes there.
type foundRoom struct {
	bin    int
	at     int32
	turned bool
	across bool
	loss   float64
}

// sawBest is a finished layout.
type sawBest struct {
	bins []slicing
	out  []int32
	cost float64
	lost float64 // area of what is not placed
	free float64 // the largest free rectangle
}

func (p *sawing) prepare() {
	p.fits = make([][]int, len(p.pieces))
	for i := range p.pieces {
		q := &p.pieces[i]
		for k, w := range q.ways {
			if w != 0 {
				p.fits[i] = append(p.fits[i], k)
			}
		}
		if q.worth == 0 {
			q.worth = float64(float64(q.w) * float64(q.h))
		}
	}
	for k := range p.kinds {
		for _, r := range p.kinds[k].roots {
			p.kinds[k].area += float64(float64(r[0]) * float64(r[1]))
		}
	}
}

func (p *sawing) state(rng source) *sawState {
	s := &sawState{sawing: p, rng: rng}
	for _, k := range p.kinds {
		n := k.count
		if n == 0 {
			n = -1
		}
		s.left = append(s.left, n)
	}
	return s
}

// touch keeps a copy of a bin before it changes.
func (s *sawState) touch(b int) {
	if s.touched[b] {
		return
	}
	s.touched[b] = true
	s.savedAt = append(s.savedAt, b)
	k := len(s.savedAt)
	if len(s.saved) < k {
		s.saved = append(s.saved, slicing{})
	}
	s.saved[k-1].copyFrom(&s.bins[b])
}

// ruin takes some subtrees out of the bins.
func (s *sawState) ruin() {
	open := 0
	for b := range s.bins {
		if s.bins[b].open {
			open++
		}
	}
	if open == 0 {
		return
	}
	pick := func() int {
		for {
			if b := s.rng.n(len(s.bins)); s.bins[b].open {
				return b
			}
		}
	}
	for k := 1 + s.rng.n(8); k > 0; k-- {
		b := pick()
		for t := s.rng.n(3); t > 0; t-- {
			c := pick()
			if s.bins[c].used*s.kinds[s.bins[b].kind].area < s.bins[b].used*s.kinds[s.bins[c].kind].area {
				b = c
			}
		}
		bin := &s.bins[b]
		s.touch(b)
		// a random node that holds something
		at := int32(-1)
		seen := 0
		for i := range bin.nodes {
			n := &bin.nodes[i]
			if n.kind >= nodePiece {
				seen++
				if s.rng.n(seen) == 0 {
					at = int32(i)
				}
			}
		}
		if at < 0 {
			continue
		}
		s.out = bin.drop(at, s.out)
		bin.scan()
	}
	for b := range s.bins {
		if s.bins[b].open && s.touched[b] && s.bins[b].used < 0.5 && s.kinds[s.bins[b].kind].cost > 0 {
			s.close(b)
		}
	}
}

// value is what the search makes small: the area of what is out, and a little
// less for large free rectangles.
func (s *sawState) value() float64 {
	v := 0.0
	for _, i := range s.out {
		v += s.pieces[i].worth
	}
	f := 0.0
	for b := range s.bins {
		if !s.bins[b].open {
			continue
		}
		norm := math.Sqrt(math.Sqrt(s.kinds[s.bins[b].kind].area))
		for r := range s.bins[b].rooms {
			f += s.bins[b].rooms[r].val / norm
		}
	}
	return v - float64(sawFree*f)
}

// sawFree weighs the free rectangles against the area of what is out.
const sawFree = 0.1

func (s *sawState) order(how int) {
	out := s.out
	key := func(i int32) float64 {
		p := &s.pieces[i]
		switch how {
		case 1:
			return float64(max(p.w, p.h))
		case 2:
			return float64(p.h)
		case 3:
			return float64(p.w)
		case 4:
			return float64(min(p.w, p.h))
		case 5:
			return float64(p.w + p.h)
		}
		return float64(float64(p.w) * float64(p.h))
	}
	sort.SliceStable(out, func(a, b int) bool {
		if pa, pb := s.pieces[out[a]].prio, s.pieces[out[b]].prio; pa != pb {
			return pa > pb
		}
		return key(out[a]) > key(out[b])
	})
}

func (s *sawState) snapshot() *sawBest {
	r := &sawBest{cost: s.cost, out: append([]int32(nil), s.out...)}
	for b := range s.bins {
		if !s.bins[b].open || s.bins[b].used < 0.5 {
			continue
		}
		var c slicing
		c.copyFrom(&s.bins[b])
		r.bins = append(r.bins, c)
		for i := range c.rooms {
			r.free = max(r.free, c.rooms[i].val)
		}
	}
	for _, i := range s.out {
		r.lost += s.pieces[i].worth
	}
	return r
}

func (r *sawBest) better(o *sawBest) bool {
	if o == nil || r.lost != o.lost {
		return o == nil || r.lost < o.lost
	}
	if d := r.cost - o.cost; d < -1e-9 || d > 1e-9 {
		return d < 0
	}
	return r.free > o.free
}
