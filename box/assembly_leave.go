package box

import (
	"math"
	"slices"

	"holt.example/box/solid"
)

// single finds the node to take away first: one that leaves the others joined,
// a part rather than parts that are one piece already, one that no other laps
// over rather than one that is held, of those the last in plan order, and along
// its own outward direction rather than sideways.
func (a *assembler) single(in []int) (leave, bool) {
	among := a.mark(in)
	var best leave
	var score [4]int
	found := false
	parted, base := make([]int, len(in)), a.islands(in, -1)
	for x, i := range in {
		if a.joined(i, among) > 1 {
			parted[x] = a.islands(in, i) - base
		}
	}
	try := func(k int) {
		m := &a.moves[k]
		for x := len(in) - 1; x >= 0; x-- {
			i := in[x]
			if overlap(m.stop[i], among) {
				continue
			}
			s := [4]int{parted[x], a.size(i), a.lapped(i, among), len(a.nodes) - i}
			better := slices.Compare(s[:], score[:])
			if !found || better < 0 || better == 0 && a.sideways(i, m.d) < a.sideways(i, a.moves[best.move].d) {
				best, score, found = leave{[]int{i}, k}, s, true
			}
		}
	}
	for a.looked < len(a.near) {
		a.look()
	}
	k := 0
	for ; k < 2*len(a.near); k++ {
		try(k)
	}
	for !found {
		if k == len(a.moves) && !a.look() {
			return leave{}, false
		}
		for ; k < len(a.moves); k++ {
			try(k)
		}
	}
	return best, true
}

// joined counts the seams of i with nodes of the set.
func (a *assembler) joined(i int, among bits) int {
	n := 0
	for _, e := range a.ends {
		if e[0] >= 0 && e[1] >= 0 && (e[0] == i && among.has(e[1]) || e[1] == i && among.has(e[0])) {
			n++
		}
	}
	return n
}

// islands counts the groups that seams join when a node is left out.
func (a *assembler) islands(in []int, but int) int {
	n := 0
	group := a.tied(in, but)
	for _, i := range in {
		if group[i] == i && i != but {
			n++
		}
	}
	return n
}

// overlap reports whether two sets have a node in common.
func overlap(a, b bits) bool {
	for w := range a {
		if a[w]&b[w] != 0 {
			return true
		}
	}
	return false
}

// lapped counts the nodes of the set that lap over i.
func (a *assembler) lapped(i int, among bits) int {
	n := 0
	for k, e := range a.ends {
		if e[1] == i && e[0] >= 0 && e[0] != i && among.has(e[0]) && !a.equal[k] {
			n++
		}
	}
	return n
}

// sideways grades a direction for a node, from 0 for straight outward to 2000
// for straight inward; a node without an outward direction is content with any.
func (a *assembler) sideways(i int, d solid.Vec) int {
	if q := &a.plan.pieces[a.nodes[i][0]]; a.size(i) == 1 && q.Nominal != [2]MM{} {
		return int(math.Round(1000 * (1 - q.outward().Dot(d))))
	}
	return 0
}

// several finds the smallest set of nodes, not all, that leaves as one: closed,
// which is to say that whatever stops one of them is one of them.
func (a *assembler) several(in []int) (leave, bool) {
	for a.look() {
	}
	among := a.mark(in)
	var best leave
	for k := range a.moves {
		for _, i := range in {
			set := a.closed(i, a.moves[k].stop, among)
			if len(set) < len(in) && (best.set == nil || len(set) < len(best.set)) {
				best = leave{set, k}
			}
		}
	}
	return best, best.set != nil
}

// closed is i with all that must move with it, in order.
func (a *assembler) closed(i int, stop []bits, among bits) []int {
	seen := a.mark([]int{i})
	todo := []int{i}
	for len(todo) > 0 {
		k := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for j := range a.nodes {
			if stop[k].has(j) && among.has(j) && !seen.has(j) {
				seen.set(j)
				todo = append(todo, j)
			}
		}
	}
	var set []int
	for j := range a.nodes {
		if seen.has(j) {
			set = append(set, j)
		}
	}
	return set
}
