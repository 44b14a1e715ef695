package layout

import (
	"math"
)

// look finds the place of least loss for a piece. skip is the chance, in
// 1/1024, of passing over a place.
func (s *sawState) look(i int32, skip uint64) bool {
	p := &s.pieces[i]
	best := foundRoom{bin: -1, loss: math.Inf(1)}
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

func (s *sawState) try(best *foundRoom, b int, rm *room, w, h int64, turned bool) {
	if a := rm.val - worth(rm.w-w, rm.h) - worth(w, rm.h-h); a < best.loss && s.allowed(b, rm, w, h, true) {
		*best = foundRoom{b, rm.at, turned, true, a}
	}
	if a := rm.val - worth(rm.w, rm.h-h) - worth(rm.w-w, h); a < best.loss && s.allowed(b, rm, w, h, false) {
		*best = foundRoom{b, rm.at, turned, false, a}
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
