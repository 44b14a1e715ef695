package layout

import (
	"context"
	"math"
)

// used is the length taken from the near side of bin b.
func (f *field) used(b int32) float64 {
	x := f.bins[b].x0
	for _, i := range f.members[b] {
		p := &f.spots[i]
		if !p.fixed {
			x = math.Max(x, p.x+f.shapes[p.shape].x1)
		}
	}
	return x - f.bins[b].x0
}

// squeeze moves the far side of bin b to length and everything that stands out
// into it: what lies beyond a random line moves up. It reports whether
// everything fits in.
func (f *field) squeeze(b int32, length float64) bool {
	old := f.bins[b].x1
	f.bins[b].x1 = f.bins[b].x0 + length
	cut := f.bins[b].x0 + float64(length*f.rng.f())
	d := old - f.bins[b].x1
	for _, i := range f.members[b] {
		p := &f.spots[i]
		if p.fixed {
			continue
		}
		sh := f.shapes[p.shape]
		if p.x+(sh.x0+sh.x1)/2 > cut {
			p.x -= d
		}
		if x0, y0, x1, y1, ok := f.room(p.shape, b); ok {
			p.x, p.y = min(max(p.x, x0), x1), min(max(p.y, y0), y1)
			continue
		}
		fits := false
		for _, s := range f.choices[p.kind][f.bins[b].stock] {
			if x0, y0, x1, y1, ok := f.room(s, b); ok {
				p.shape = s
				p.x, p.y = min(max(p.x, x0), x1), min(max(p.y, y0), y1)
				fits = true
				break
			}
		}
		if !fits {
			return false
		}
	}
	return true
}

// Shares and steps of shortening: of the rounds, the first part explores with
// long steps and swaps, the rest compresses the best with ever shorter ones.
const (
	exploring  = 0.8
	firstLong  = 0.02
	longStep   = 0.001
	firstStep  = 0.0005
	lastStep   = 0.00001
	roundsIdle = 100
)

// shorten makes the used length of bin 0 as small as it can within rounds,
// starting from a clean layout, and leaves the shortest clean one. Lengths
// below floor are not tried.
func (f *field) shorten(ctx context.Context, floor float64, rounds int) {
	start := f.done
	best := append([]spot(nil), f.spots...)
	length := f.used(0)
	wall := f.bins[0].x1
	f.bins[0].x1 = f.bins[0].x0 + length
	clean := func() {
		f.slideAll(0)
		length = f.used(0)
		copy(best, f.spots)
		f.bins[0].x1 = f.bins[0].x0 + length
	}
	var pool []attempt // failures at the present length, the least overlap first
	explore := int(float64(exploring * float64(rounds)))
	next := 0.0
	step := float64(firstLong)
	for f.done-start < explore && length > floor+1e-9 && ctx.Err() == nil {
		if len(pool) == 0 {
			f.back(best)
			f.bins[0].x1 = f.bins[0].x0 + length
			next = math.Max(floor, float64(length*(1-step)))
			if !f.squeeze(0, next) {
				if step <= longStep {
					break
				}
				step = math.Max(longStep, step/2)
				f.done++
				continue
			}
			f.rest()
		}
		f.done++
		if f.separate(ctx, roundsIdle, 3, explore-(f.done-start)) {
			clean()
			pool = pool[:0]
			continue
		}
		if pool = remember(pool, f); len(pool) >= 3 && step > longStep {
			step = math.Max(longStep, step/2)
			pool = pool[:0]
			continue
		}
		// go on from one of the better failures, two large pieces changed over
		u := f.rng.f()
		f.back(pool[int(float64(float64(len(pool))*float64(u*u)))].spots)
		f.swapLarge()
		f.rest()
	}
	f.back(best)
	f.bins[0].x1 = f.bins[0].x0 + length
	for f.done-start < rounds && length > floor+1e-9 && ctx.Err() == nil {
		share := float64(f.done-start)/float64(rounds) - exploring
		step := firstStep + float64((lastStep-firstStep)*math.Min(1, math.Max(0, share/(1-exploring))))
		f.done++
		if !f.squeeze(0, math.Max(floor, float64(length*(1-step)))) {
			f.back(best)
			f.bins[0].x1 = f.bins[0].x0 + length
			continue
		}
		f.rest()
		if f.separate(ctx, 50, 2, rounds-(f.done-start)) {
			clean()
			continue
		}
		f.back(best)
		f.bins[0].x1 = f.bins[0].x0 + length
	}
	f.back(best)
	f.bins[0].x1 = wall
}

// attempt is a layout with some overlap left.
type attempt struct {
	total float64
	spots []spot
}

// remember keeps the layout among the best few failures.
func remember(pool []attempt, f *field) []attempt {
	a := attempt{f.measure(), append([]spot(nil), f.spots...)}
	k := len(pool)
	for k > 0 && pool[k-1].total > a.total {
		k--
	}
	pool = append(pool, attempt{})
	copy(pool[k+1:], pool[k:])
	pool[k] = a
	if len(pool) > 40 {
		pool = pool[:40]
	}
	return pool
}

// swapLarge changes two of the larger pieces over.
func (f *field) swapLarge() {
	var big []int32
	least := 0.0
	for i := range f.spots {
		least = math.Max(least, f.shapes[f.spots[i].shape].area)
	}
	for k := 0; k < 3 && len(big) < 4; k++ {
		least = float64(least * 0.4)
		big = big[:0]
		for i := range f.spots {
			if !f.spots[i].fixed && f.shapes[f.spots[i].shape].area >= least {
				big = append(big, int32(i))
			}
		}
	}
	if len(big) < 2 {
		return
	}
	for t := 0; t < 10; t++ {
		a, b := big[f.rng.n(len(big))], big[f.rng.n(len(big))]
		if f.spots[a].kind == f.spots[b].kind {
			continue
		}
		p, q := f.spots[a], f.spots[b]
		f.toMiddle(a, q)
		f.toMiddle(b, p)
		return
	}
}

// toMiddle puts piece i where the middle of another was.
func (f *field) toMiddle(i int32, at spot) {
	ch := f.choices[f.spots[i].kind][f.bins[at.bin].stock]
	if len(ch) == 0 {
		return
	}
	s := ch[f.rng.n(len(ch))]
	x0, y0, x1, y1, ok := f.room(s, at.bin)
	if !ok {
		return
	}
	sh, o := f.shapes[s], f.shapes[at.shape]
	x := at.x + (o.x0+o.x1)/2 - (sh.x0+sh.x1)/2
	y := at.y + (o.y0+o.y1)/2 - (sh.y0+sh.y1)/2
	f.move(i, s, at.bin, min(max(x, x0), x1), min(max(y, y0), y1))
}
