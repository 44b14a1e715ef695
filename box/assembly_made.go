package box

import "slices"

// spread puts the pieces of made-up parts in the places of their names.
func (p *Plan) spread(made [][]Part) [][]Part {
	var out [][]Part
	for _, g := range made {
		var h []Part
		for _, q := range g {
			if i := p.wholeAt(q); i >= 0 {
				h = append(append(h, p.wholes[i].Strips...), p.wholes[i].Tongues...)
			} else {
				h = append(h, q)
			}
		}
		out = append(out, h)
	}
	return out
}

func (p *Plan) wholeAt(name Part) int {
	return slices.IndexFunc(p.wholes, func(w Whole) bool { return w.Part == name })
}

// withWholes adds made-up parts as pieces of their own, or to the piece that
// holds a part of them.
func (p *Plan) withWholes(made [][]Part) [][]Part {
	made = slices.Clone(made)
next:
	for _, w := range p.wholes {
		pieces := slices.Concat(w.Strips, w.Tongues)
		for i, g := range made {
			if !slices.ContainsFunc(g, func(q Part) bool { return slices.Contains(pieces, q) }) {
				continue
			}
			for _, q := range pieces {
				if !slices.Contains(g, q) {
					g = append(g[:len(g):len(g)], q)
				}
			}
			made[i] = g
			continue next
		}
		made = append(made, pieces)
	}
	return made
}

// findWhole notes the nodes that have to be put together of strips.
func (a *assembler) findWhole() {
	a.make = map[int]Part{}
	for _, g := range a.wholes {
		i := a.plan.index[g[0]]
		a.make[a.nodeOf[i]] = a.plan.pieces[i].Of
	}
}

// makeUp writes the step that puts a made-up part together; false where the node
// is none.
func (a *assembler) makeUp(i int) bool {
	name, ok := a.make[i]
	if !ok {
		return false
	}
	s := Step{Parts: a.parts([]int{i}), Made: name}
	for _, m := range a.seams {
		if slices.Contains(s.Parts, m.Over) && slices.Contains(s.Parts, m.Under) {
			s.Seams = append(s.Seams, m)
		}
	}
	a.steps = append(a.steps, s)
	return true
}

// size counts the parts of a node, a made-up one as one.
func (a *assembler) size(i int) int {
	n, last := 0, Part("")
	for _, k := range a.nodes[i] {
		if of := a.plan.pieces[k].Of; of == "" || of != last {
			n++
			last = of
		}
	}
	return n
}

// short lists parts with made-up ones as one.
func (a *assembler) short(ps []Part) []Part {
	var out []Part
	for _, q := range ps {
		if of := a.plan.pieces[a.plan.index[q]].Of; of != "" {
			q = of
		}
		if !slices.Contains(out, q) {
			out = append(out, q)
		}
	}
	return out
}
