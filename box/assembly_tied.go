package box

// apart lists the nodes by the things that they make: two or more parts that
// joints tie together, and that leave the others free, are a thing by themselves.
// Parts without joints go with the first.
func (a *assembler) apart() [][]int {
	all := make([]int, len(a.nodes))
	for i := range all {
		all[i] = i
	}
	group := a.tied(all, -1)
	var things [][]int
	for i, g := range group {
		if g == i {
			var in []int
			for k, h := range group {
				if h == g {
					in = append(in, k)
				}
			}
			if len(in) > 1 {
				things = append(things, in)
			}
		}
	}
	if len(things) < 2 {
		return [][]int{all}
	}
	first := a.mark(all)
	var out [][]int
	for _, in := range things[1:] {
		if a.free(in, all) {
			out = append(out, in)
			for _, i := range in {
				first[i/64] &^= 1 << (i % 64)
			}
		}
	}
	var rest []int
	for _, i := range all {
		if first.has(i) {
			rest = append(rest, i)
		}
	}
	return append([][]int{rest}, out...)
}

// free reports whether a set can leave the others along one of the near
// directions.
func (a *assembler) free(in, all []int) bool {
	for a.looked < len(a.near) {
		a.look()
	}
	others := a.mark(all)
	for _, i := range in {
		others[i/64] &^= 1 << (i % 64)
	}
next:
	for _, m := range a.moves {
		for _, i := range in {
			if overlap(m.stop[i], others) {
				continue next
			}
		}
		return true
	}
	return false
}

// tied numbers the groups that seams join among the nodes but one: each node
// gets the least node of its group, a node that is not in the set itself.
func (a *assembler) tied(in []int, but int) []int {
	group := make([]int, len(a.nodes))
	for i := range group {
		group[i] = i
	}
	find := func(i int) int {
		for group[i] != i {
			i = group[i]
		}
		return i
	}
	among := a.mark(in)
	for _, e := range a.ends {
		if e[0] < 0 || e[1] < 0 || e[0] == but || e[1] == but || !among.has(e[0]) || !among.has(e[1]) {
			continue
		}
		i, j := find(e[0]), find(e[1])
		group[max(i, j)] = min(i, j)
	}
	for i := range group {
		group[i] = find(i)
	}
	return group
}
