package box

import (
	"math"
	"sort"
	"strings"

	"holt.example/box/solid"
)

// bits is a set of nodes.
type bits []uint64

func newBits(n int) []bits {
	out, w := make([]bits, n), (n+63)/64
	all := make(bits, n*w)
	for i := range out {
		out[i] = all[i*w : (i+1)*w : (i+1)*w]
	}
	return out
}

func (b bits) has(i int) bool { return b[i/64]>>(i%64)&1 != 0 }
func (b bits) set(i int)      { b[i/64] |= 1 << (i % 64) }

// move is a direction, with the nodes that stop each node on it.
type move struct {
	d    solid.Vec
	stop []bits
}

// assembler takes a plan apart; the reverse puts it together.
type assembler struct {
	plan    *Plan
	nodes   [][]int // pieces of each node, in plan order
	nodeOf  []int   // of a piece
	lumps   []lump
	seams   []Seam
	ends    [][2]int // nodes of each seam: over, under; -1 if the plan lacks the part
	equal   []bool   // of each seam: neither part laps over the other
	near    []solid.Vec
	far     []solid.Vec
	moves   []move
	looked  int // directions of near, then of far, that moves holds
	done    bool
	wholes  [][]Part     // pieces of the made-up parts that are still to be put together
	make    map[int]Part // by node: its made-up part
	steps   []Step
	captive [][]Part
}

func newAssembler(p *Plan, made [][]Part) (*assembler, error) {
	made = p.spread(made)
	if err := unknownMade(p, made); err != nil {
		return nil, err
	}
	given := len(made)
	made = p.withWholes(made)
	a := &assembler{plan: p, wholes: made[given:], nodeOf: make([]int, len(p.pieces)), seams: p.seams}
	for i := range a.nodeOf {
		a.nodeOf[i] = -1
	}
	for i := range p.pieces {
		if a.nodeOf[i] >= 0 {
			continue
		}
		group := []int{i}
		for _, g := range made {
			for _, q := range g {
				if p.index[q] == i {
					group = group[:0]
					for _, q := range g {
						group = append(group, p.index[q])
					}
				}
			}
		}
		sort.Ints(group)
		for _, k := range group {
			a.nodeOf[k] = len(a.nodes)
		}
		a.nodes = append(a.nodes, group)
	}
	a.findLumps()
	for _, s := range a.seams {
		e := [2]int{-1, -1}
		if i, ok := p.index[s.Over]; ok {
			e[0] = a.nodeOf[i]
		}
		if i, ok := p.index[s.Under]; ok {
			e[1] = a.nodeOf[i]
		}
		if e[0] == e[1] { // within one piece
			e = [2]int{-1, -1}
		}
		a.ends = append(a.ends, e)
		a.equal = append(a.equal, strings.Contains(s.Joint, "mitre"))
	}
	a.findNear()
	return a, nil
}

// findLumps divides the parts into convex pieces. Openings are left out: no
// way home leads through one, unless another part stands in it.
func (a *assembler) findLumps() {
	ps := a.plan.pieces
	open := make([]bool, len(ps))
	for i := range ps {
		for j := range ps[:i] {
			if len(ps[i].Body.Prisms)+len(ps[j].Body.Prisms) == 0 || open[i] && open[j] {
				continue
			}
			if solid.VolumeOf(solid.Common(ps[i].Body, ps[j].Body)) > crumb {
				open[i], open[j] = true, true
			}
		}
	}
	for i := range ps {
		cells, gap := ps[i].Body.Pieces(), shadowGap
		if open[i] && len(ps[i].Body.Prisms) > 0 {
			cells, gap = ps[i].Body.Cells(roundGap/10), roundGap
		}
		for _, c := range cells {
			a.lumps = append(a.lumps, newLump(a.nodeOf[i], gap, c))
		}
	}
}

// outward is the direction away from the cavity, square to the part.
func (q *Piece) outward() solid.Vec {
	if q.Panel.Face == FromOuter {
		return q.Home.W
	}
	return q.Home.W.Scale(-1)
}

// addDir appends a direction unless it, or its opposite, is there.
func addDir(ds []solid.Vec, d solid.Vec, or []solid.Vec) []solid.Vec {
	l := d.Len()
	if !(l > 1e-9) {
		return ds
	}
	d = d.Scale(1 / l)
	for _, list := range [2][]solid.Vec{ds, or} {
		for _, e := range list {
			if e.Cross(d).Len() < 1e-9 {
				return ds
			}
		}
	}
	return append(ds, d)
}

// findNear lists the directions that are tried first: the six ways of the box
// (a part that touches nothing has no others), and those of the joints: square
// to both parts and along the edge.
func (a *assembler) findNear() {
	ds := []solid.Vec{{Z: 1}, {Y: 1}, {X: 1}}
	for i := range a.plan.pieces {
		ds = addDir(ds, a.plan.pieces[i].Home.W, nil)
	}
	for i := range a.plan.pieces {
		if q := &a.plan.pieces[i]; q.Nominal == [2]MM{} { // no face of the cavity
			ds = addDir(addDir(ds, q.Home.V, nil), q.Home.U, nil)
		}
	}
	for _, s := range a.seams {
		ds = addDir(ds, vecOf(s.To).Sub(vecOf(s.From)), nil)
	}
	a.near = ds
}

func vecOf(p Place) solid.Vec { return solid.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)} }

// findFar lists the directions that are tried when those do not do: square to
// all faces at which parts meet, and along two of them at once. Where a set of
// parts can leave at all it can leave along one of these, or between them.
func (a *assembler) findFar() {
	var faces []solid.Vec
	for i := range a.plan.pieces {
		for j := range a.plan.pieces[:i] {
			if a.nodeOf[i] == a.nodeOf[j] {
				continue
			}
			p, q := surfaces(&a.plan.pieces[i].Body), surfaces(&a.plan.pieces[j].Body)
			for _, g := range p {
				for _, h := range q {
					// Facing each other, apart by no more than play.
					if gap := -g.D - h.D; gap > -1e-3 && gap < 2 && g.N.Add(h.N).Len() < 1e-9 {
						faces = addDir(faces, g.N, nil)
					}
				}
			}
		}
	}
	var ds []solid.Vec
	for _, f := range faces {
		ds = addDir(ds, f, a.near)
	}
	for i, f := range faces {
		for _, g := range faces[:i] {
			ds = addDir(ds, f.Cross(g), a.near)
		}
	}
	a.far = ds
}

// surfaces are all planes of a body, outside being outside the material.
func surfaces(b *solid.Body) []solid.Plane {
	out := append([]solid.Plane(nil), b.Base...)
	for _, c := range b.Cutters {
		for _, h := range c {
			out = append(out, h.Flip())
		}
	}
	return out
}

// look works out the moves along one more direction; false when all are known.
func (a *assembler) look() bool {
	if a.looked == len(a.near) && a.far == nil && !a.done {
		a.findFar()
		a.done = true
	}
	k := a.looked
	var d solid.Vec
	switch {
	case k < len(a.near):
		d = a.near[k]
	case k-len(a.near) < len(a.far):
		d = a.far[k-len(a.near)]
	default:
		return false
	}
	a.looked++
	ahead, behind := a.graph(d)
	a.moves = append(a.moves, move{d, ahead}, move{d.Scale(-1), behind})
	return true
}

// leave is a set of nodes that can leave the others along a move.
type leave struct {
	set  []int
	move int
}

// build writes the steps that put the nodes together: it looks for what can
// leave, puts together what remains, then what left, then the two.
func (a *assembler) build(in []int) {
	if len(in) == 0 {
		return
	}
	if len(in) == 1 {
		if !a.makeUp(in[0]) {
			a.begin(in)
		}
		return
	}
	l, ok := a.single(in)
	if !ok {
		l, ok = a.several(in)
	}
	if !ok {
		a.captive = append(a.captive, a.parts(in))
		for _, i := range in {
			a.makeUp(i)
		}
		a.begin(in)
		return
	}
	var rest []int
	gone := a.mark(l.set)
	for _, i := range in {
		if !gone.has(i) {
			rest = append(rest, i)
		}
	}
	a.build(rest)
	if len(l.set) > 1 {
		a.build(l.set)
	}
	a.join(l, rest)
}

func (a *assembler) mark(in []int) bits {
	b := make(bits, (len(a.nodes)+63)/64)
	for _, i := range in {
		b.set(i)
	}
	return b
}

// parts are the parts of nodes, in plan order.
func (a *assembler) parts(in []int) []Part {
	var ks []int
	for _, i := range in {
		ks = append(ks, a.nodes[i]...)
	}
	sort.Ints(ks)
	out := make([]Part, len(ks))
	for i, k := range ks {
		out[i] = a.plan.pieces[k].Part
	}
	return out
}

func (a *assembler) begin(in []int) {
	s := Step{Parts: a.parts(in)}
	s.what, s.onto = a.short(s.Parts), nil
	a.steps = append(a.steps, s)
}

// join writes the step in which a set comes back to the rest.
func (a *assembler) join(l leave, rest []int) {
	if len(l.set) == 1 {
		a.makeUp(l.set[0])
	}
	d := a.moves[l.move].d.Scale(-1)
	s := Step{Parts: a.parts(l.set), Onto: a.parts(rest), Move: Direction{d.X + 0, d.Y + 0, d.Z + 0}, Way: wayWords(d)}
	s.what, s.onto = a.short(s.Parts), a.short(s.Onto)
	if len(s.what) == 1 && math.Abs(a.plan.pieces[a.plan.index[s.Parts[0]]].Home.W.Dot(d)) > 1-1e-9 && strings.Contains(s.Way, " and ") {
		s.Way += ", square to its face"
	}
	left, right := a.mark(l.set), a.mark(rest)
	for k, e := range a.ends {
		if e[0] < 0 || e[1] < 0 {
			continue
		}
		if left.has(e[0]) && right.has(e[1]) || left.has(e[1]) && right.has(e[0]) {
			s.Seams = append(s.Seams, a.seams[k])
		}
	}
	a.steps = append(a.steps, s)
}
