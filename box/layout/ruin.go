package layout

import (
	"context"
	"math"
	"sort"
)

// blank is a rectangle to saw, in ticks, with one kerf.
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
	found   option2
	upright bool // lay everything as drawn if it may be
}

type option2 struct {
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

// look finds the place of least loss for a piece. skip is the chance, in
// 1/1024, of passing over a place.
func (s *sawState) look(i int32, skip uint64) bool {
	p := &s.pieces[i]
	best := option2{bin: -1, loss: math.Inf(1)}
	var bits uint64
	left := 0
	mask := wayUp | waySide
	if s.upright {
		mask = wayUp
	}
	if skip > 0 {
		// now and then only one way to lie, or what fits a row would always be
		// turned for the sake of the rest
		switch s.rng.n(24) {
		case 0:
			mask = wayUp
		case 1:
			mask = waySide
		}
	}
	for b := range s.bins {
		bin := &s.bins[b]
		if !bin.open {
			continue
		}
		ways := p.ways[bin.kind] & mask
		if ways == 0 {
			ways = p.ways[bin.kind]
		}
		up := ways&wayUp != 0 && p.w <= bin.maxW && p.h <= bin.maxH
		side := ways&waySide != 0 && p.h <= bin.maxW && p.w <= bin.maxH
		if !up && !side {
			continue
		}
		for r := range bin.rooms {
			rm := &bin.rooms[r]
			fitsUp := up && p.w <= rm.w && p.h <= rm.h
			fitsSide := side && p.h <= rm.w && p.w <= rm.h
			if !fitsUp && !fitsSide {
				continue
			}
			if skip > 0 {
				if left == 0 {
					bits, left = s.rng.next(), 6
				}
				z := bits & 1023
				bits >>= 10
				left--
				if z < skip {
					continue
				}
			}
			if fitsUp {
				s.try(&best, b, rm, p.w, p.h, false)
			}
			if fitsSide {
				s.try(&best, b, rm, p.h, p.w, true)
			}
		}
	}
	s.found = best
	return best.bin >= 0
}

func (s *sawState) try(best *option2, b int, rm *room, w, h int64, turned bool) {
	if a := rm.val - worth(rm.w-w, rm.h) - worth(w, rm.h-h); a < best.loss && s.allowed(b, rm, w, h, true) {
		*best = option2{b, rm.at, turned, true, a}
	}
	if a := rm.val - worth(rm.w, rm.h-h) - worth(rm.w-w, h); a < best.loss && s.allowed(b, rm, w, h, false) {
		*best = option2{b, rm.at, turned, false, a}
	}
}

// allowed asks the rules about a way to cut: the least length of a rip and the
// number of stages.
func (s *sawState) allowed(b int, rm *room, w, h int64, across bool) bool {
	if s.least > 0 && rm.h > h {
		long := rm.w
		if across {
			long = w
		}
		if long < s.least {
			return false
		}
	}
	if s.stages > 0 {
		n := &s.bins[b].nodes[rm.at]
		parent := nodeNone
		if n.parent >= 0 {
			parent = s.bins[b].nodes[n.parent].kind
		}
		level := n.level
		one := func(kind uint8, cuts bool) {
			if !cuts {
				return
			}
			if parent != kind {
				level++
			}
			parent = kind
		}
		if across {
			one(nodeAcross, rm.w > w)
			one(nodeAlong, rm.h > h)
		} else {
			one(nodeAlong, rm.h > h)
			one(nodeAcross, rm.w > w)
		}
		if level > s.stages {
			return false
		}
	}
	return true
}

// opened starts a new bin for a piece if the budget allows, the kind that
// costs least for its area first, and reports whether it did.
func (s *sawState) opened(i int32, budget float64) bool {
	best, rate := -1, math.Inf(1)
	for _, k := range s.fits[i] {
		kd := &s.kinds[k]
		if s.left[k] == 0 || s.cost+kd.cost > budget {
			continue
		}
		if r := kd.cost / kd.area; r < rate {
			if s.rng.n(16) > 0 || best < 0 {
				best, rate = k, r
			}
		}
	}
	if best < 0 {
		return false
	}
	b := -1
	for j := range s.bins {
		if !s.bins[j].open {
			b = j
			break
		}
	}
	if b < 0 {
		s.bins = append(s.bins, slicing{})
		s.touched = append(s.touched, false)
		b = len(s.bins) - 1
	}
	s.touch(b)
	s.bins[b].reset(int32(best), s.kinds[best].roots)
	if s.left[best] > 0 {
		s.left[best]--
	}
	s.cost += s.kinds[best].cost
	return true
}

func (s *sawState) close(b int) {
	k := s.bins[b].kind
	s.bins[b].open = false
	if s.left[k] >= 0 {
		s.left[k]++
	}
	s.cost -= s.kinds[k].cost
}

// recreate places what it can of the pieces out, in the order given.
func (s *sawState) recreate(skip uint64, budget float64) {
	keep := s.out[:0]
	for _, i := range s.out {
		ok := s.look(i, skip)
		if !ok && s.opened(i, budget) {
			ok = s.look(i, 0)
		}
		if !ok {
			keep = append(keep, i)
			continue
		}
		f := s.found
		s.touch(f.bin)
		w, h := s.pieces[i].w, s.pieces[i].h
		if f.turned {
			w, h = h, w
		}
		s.bins[f.bin].insert(f.at, i, w, h, f.turned, f.across)
	}
	s.out = keep
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
var sawFree = 0.1

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

// construct lays everything out in each of the sort orders and takes the best.
func (p *sawing) construct() *sawBest {
	var best *sawBest
	for how := 0; how < 12; how++ {
		s := p.state(1)
		s.upright = how >= 6
		for i := range p.pieces {
			s.out = append(s.out, int32(i))
		}
		s.order(how % 6)
		s.openFirst()
		s.recreate(0, math.Inf(1))
		if r := s.snapshot(); r.better(best) {
			best = r
		}
	}
	return best
}

// openFirst opens the offcuts.
func (s *sawState) openFirst() {
	for k := range s.kinds {
		if !s.kinds[k].first {
			continue
		}
		for ; s.left[k] > 0; s.left[k]-- {
			s.bins = append(s.bins, slicing{})
			s.touched = append(s.touched, false)
			s.bins[len(s.bins)-1].reset(int32(k), s.kinds[k].roots)
		}
	}
}

// load continues from a finished layout.
func (s *sawState) load(r *sawBest) {
	s.bins = s.bins[:0]
	s.touched = s.touched[:0]
	s.cost = r.cost
	s.out = append(s.out[:0], r.out...)
	for k := range s.kinds {
		s.left[k] = s.kinds[k].count
		if s.left[k] == 0 {
			s.left[k] = -1
		}
	}
	for b := range r.bins {
		s.bins = append(s.bins, slicing{})
		s.touched = append(s.touched, false)
		s.bins[b].copyFrom(&r.bins[b])
		if k := r.bins[b].kind; s.left[k] > 0 {
			s.left[k]--
		}
	}
	s.openFirst()
}

const lateness = 300 // of the acceptance

// improve looks for a layout that costs less than best: pieces are taken out
// and put back within the budget until none is left out. It returns the best
// and the iterations done.
func (p *sawing) improve(ctx context.Context, best *sawBest, bound float64, unit float64, effort int, rng source) (*sawBest, int) {
	s := p.state(rng)
	s.load(best)
	done := 0
	var late [lateness]float64
	below := func(c float64) float64 {
		if unit > 0 {
			return c - unit + 1e-9
		}
		return c - 1e-6*c - 1e-9
	}
	budget := math.Inf(1)
	restart := func() {
		budget = below(best.cost)
		for s.cost > budget {
			worst := -1
			for b := range s.bins {
				if !s.bins[b].open || s.kinds[s.bins[b].kind].cost == 0 {
					continue
				}
				if worst < 0 || s.bins[b].used*s.kinds[s.bins[worst].kind].cost < s.bins[worst].used*s.kinds[s.bins[b].kind].cost {
					worst = b
				}
			}
			s.out = s.bins[worst].pieces(s.out)
			s.close(worst)
		}
		v := s.value()
		for i := range late {
			late[i] = v
		}
	}
	whole := best.lost == 0
	if whole {
		if best.cost <= bound+1e-9 {
			return best, 0
		}
		restart()
	} else {
		v := s.value()
		for i := range late {
			late[i] = v
		}
	}
	cur := s.value()
	var outWas []int32
	leftWas := make([]int, len(s.left))
	for ; done < effort; done++ {
		if done&63 == 0 && ctx.Err() != nil {
			break
		}
		for _, b := range s.savedAt {
			s.touched[b] = false
		}
		s.savedAt = s.savedAt[:0]
		outWas = append(outWas[:0], s.out...)
		copy(leftWas, s.left)
		costWas, nWas := s.cost, len(s.bins)
		s.ruin()
		s.shuffle()
		s.recreate(20, budget)
		v := s.value()
		if len(s.out) == 0 {
			if r := s.snapshot(); r.better(best) {
				best = r
			}
			if best.cost <= bound+1e-9 {
				done++
				break
			}
			for _, b := range s.savedAt {
				s.touched[b] = false
			}
			s.savedAt = s.savedAt[:0]
			restart()
			cur = s.value()
			continue
		}
		if !whole {
			if r := s.lost(); r < best.lost {
				best = s.snapshot()
			}
		}
		k := done % lateness
		if v <= cur || v <= late[k] {
			cur = v
		} else {
			for j, b := range s.savedAt {
				if b < nWas {
					s.bins[b], s.saved[j] = s.saved[j], s.bins[b]
				}
				s.touched[b] = false
			}
			s.savedAt = s.savedAt[:0]
			s.bins = s.bins[:nWas]
			s.touched = s.touched[:nWas]
			s.out = append(s.out[:0], outWas...)
			copy(s.left, leftWas)
			s.cost = costWas
		}
		late[k] = cur
	}
	return best, done
}

func (s *sawState) lost() float64 {
	v := 0.0
	for _, i := range s.out {
		v += s.pieces[i].worth
	}
	return v
}

// shuffle puts the pieces that are out in order: mostly by size, sometimes at
// random.
func (s *sawState) shuffle() {
	switch s.rng.n(8) {
	case 0:
		for i := len(s.out) - 1; i > 0; i-- {
			j := s.rng.n(i + 1)
			s.out[i], s.out[j] = s.out[j], s.out[i]
		}
	case 1:
		s.order(1)
	case 2:
		s.order(2)
	case 3:
		s.order(3)
	default:
		s.order(0)
	}
}
