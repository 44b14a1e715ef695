package picture

import (
	"math"
	"sort"

	"holt.example/box/solid"
)

// shard is a convex piece of a face while the faces are put in order of depth.
type shard struct {
	face    int32
	loop    []solid.Vec
	indoors bool
}

// node of a tree that divides space: what lies in its plane, behind and in
// front of it. All shards face the viewer, so back to front is always behind,
// in the plane, in front.
type node struct {
	in            []shard
	behind, ahead *node
}

// painted gives the shards of all faces turned to the viewer so that none is
// painted over by one that lies behind it.
func (s *scene) painted() []shard {
	var all []shard
	for _, i := range s.front {
		for _, t := range s.faces[i].tris {
			all = append(all, shard{face: i, loop: []solid.Vec{t[0], t[1], t[2]}})
		}
	}
	all = s.darken(all)
	// Large faces first: they are good to divide by.
	sort.SliceStable(all, func(i, j int) bool {
		a, b := s.faces[all[i].face], s.faces[all[j].face]
		if a.area != b.area {
			return a.area > b.area
		}
		return all[i].face < all[j].face
	})
	out := make([]shard, 0, len(all))
	var walk func(*node)
	walk = func(n *node) {
		if n == nil {
			return
		}
		walk(n.behind)
		out = append(out, n.in...)
		walk(n.ahead)
	}
	walk(s.divide(all))
	return out
}

// divide builds the tree. Of a dozen candidates the plane that cuts fewest
// shards is taken, among equals the one that balances best.
func (s *scene) divide(all []shard) *node {
	if len(all) == 0 {
		return nil
	}
	const candidates = 12
	best, cost := int32(-1), math.MaxInt
	last := int32(-1)
	for k := range candidates {
		id := all[k*len(all)/candidates].face
		if id == last {
			continue
		}
		last = id
		cuts, back, ahead := 0, 0, 0
		for _, h := range all {
			if h.face == id {
				continue
			}
			switch lo, hi := s.reach(id, h.loop); {
			case lo < -flat && hi > flat:
				cuts++
			case lo < -flat:
				back++
			case hi > flat:
				ahead++
			}
		}
		if c := 8*cuts + max(back-ahead, ahead-back); c < cost {
			best, cost = id, c
		}
	}
	n := &node{}
	var behind, ahead []shard
	for _, h := range all {
		if h.face == best {
			n.in = append(n.in, h)
			continue
		}
		switch lo, hi := s.reach(best, h.loop); {
		case lo < -flat && hi > flat:
			b, a := s.split(best, h)
			behind, ahead = append(behind, b), append(ahead, a)
		case lo < -flat:
			behind = append(behind, h)
		case hi > flat:
			ahead = append(ahead, h)
		default:
			n.in = append(n.in, h)
		}
	}
	n.behind, n.ahead = s.divide(behind), s.divide(ahead)
	return n
}

// reach is the least and greatest height of a loop over a face's plane.
func (s *scene) reach(id int32, loop []solid.Vec) (lo, hi float64) {
	f := s.faces[id]
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range loop {
		h := f.height(p)
		lo, hi = math.Min(lo, h), math.Max(hi, h)
	}
	return lo, hi
}

// split cuts a shard along the plane of a face. The place where an edge is cut
// is always reckoned from the end behind, so the neighbour beyond that edge
// gets the same bits.
func (s *scene) split(id int32, h shard) (behind, ahead shard) {
	f := s.faces[id]
	behind, ahead = shard{face: h.face, indoors: h.indoors}, shard{face: h.face, indoors: h.indoors}
	n := len(h.loop)
	for k, p := range h.loop {
		q := h.loop[(k+1)%n]
		hp, hq := f.height(p), f.height(q)
		if hp <= flat {
			behind.loop = append(behind.loop, p)
		}
		if hp >= -flat {
			ahead.loop = append(ahead.loop, p)
		}
		switch {
		case hp < -flat && hq > flat:
			x := p.Lerp(q, hp/(hp-hq))
			behind.loop, ahead.loop = append(behind.loop, x), append(ahead.loop, x)
		case hp > flat && hq < -flat:
			x := q.Lerp(p, hq/(hq-hp))
			behind.loop, ahead.loop = append(behind.loop, x), append(ahead.loop, x)
		}
	}
	return behind, ahead
}

// rimLoops gives the loops round shards of one face: an edge that two of them
// share has one on either side and falls away.
func rimLoops(ax axes, hs []shard) [][]pt {
	type way struct{ a, b solid.Vec }
	count := map[way]int{}
	var order []way
	for _, h := range hs {
		for k, a := range h.loop {
			w := way{a, h.loop[(k+1)%len(h.loop)]}
			if r := (way{w.b, w.a}); count[r] > 0 {
				count[r]--
				continue
			}
			count[w]++
			order = append(order, w)
		}
	}
	next := map[solid.Vec][]solid.Vec{}
	var starts []solid.Vec
	for _, w := range order {
		if count[w] > 0 {
			count[w]--
			next[w.a] = append(next[w.a], w.b)
			starts = append(starts, w.a)
		}
	}
	var out [][]pt
	for _, a := range starts {
		var loop []pt
		for at := a; len(next[at]) > 0; {
			loop = append(loop, ax.screen(at))
			to := next[at][0]
			next[at] = next[at][1:]
			at = to
		}
		if len(loop) > 2 {
			out = append(out, loop)
		}
	}
	return out
}
