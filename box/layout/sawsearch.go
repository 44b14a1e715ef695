package layout

import (
	"context"
	"math"
)

// construct lays everything out in each of the sort orders and takes the best;
// very many pieces in two orders only, and only in one when cancelled.
func (p *sawing) construct(ctx context.Context) *sawBest {
	var best *sawBest
	step := 1
	if len(p.pieces) > 4000 {
		step = 6
	}
	for how := 0; how < 12 && (how == 0 || ctx.Err() == nil); how += step {
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
		return c - float64(1e-6*c) - 1e-9
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
