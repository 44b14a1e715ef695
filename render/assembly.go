package render

import (
	"fmt"
	"strings"

	"holt.example/box"
	"holt.example/render/bom"
)

// step is one step of putting a box together: parts that are added at once.
type step struct{ parts []box.Part }

// steps is an order in which a box goes together. A part that laps over others
// is added when those are in place: it then moves straight in along its own
// normal, because nothing of it is behind them. Parts that lap over each other
// in a ring, or meet in mitres, come together.
func steps(pieces []box.Piece, seams []box.Seam) []step {
	index := make(map[box.Part]int, len(pieces))
	for i, p := range pieces {
		index[p.Part] = i
	}
	under := make([][]int, len(pieces)) // what must be in place before
	for _, s := range seams {
		o, ok1 := index[s.Over]
		u, ok2 := index[s.Under]
		if ok1 && ok2 && o != u {
			under[o] = append(under[o], u)
			if strings.Contains(s.Joint, "mitre") {
				under[u] = append(under[u], o)
			}
		}
	}
	// reach[i] holds what i needs, directly or not. Parts that need each other
	// go in one step.
	reach := make([][]bool, len(pieces))
	for i := range pieces {
		reach[i] = make([]bool, len(pieces))
		todo := append([]int(nil), under[i]...)
		for len(todo) > 0 {
			k := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			if !reach[i][k] {
				reach[i][k] = true
				todo = append(todo, under[k]...)
			}
		}
	}
	placed := make([]bool, len(pieces))
	var out []step
	for {
		next := -1
		for i := range pieces {
			if placed[i] {
				continue
			}
			ready := true
			for k := range pieces {
				ready = ready && (!reach[i][k] || placed[k] || reach[k][i])
			}
			if ready {
				next = i
				break
			}
		}
		if next < 0 {
			return out
		}
		var s step
		for k := range pieces {
			if !placed[k] && (k == next || reach[next][k] && reach[k][next]) {
				placed[k] = true
				s.parts = append(s.parts, pieces[k].Part)
			}
		}
		out = append(out, s)
	}
}

// assembly says how the box goes together.
func assembly(b *strings.Builder, plan *box.Plan) {
	b.WriteString("\n## Putting it together\n\n")
	check, again := "", ""
	if d := plan.Diagonals().Outside; d[0] > 0 && figure(float64(d[0])) == figure(float64(d[1])) {
		check = ", check that both diagonals read the same"
		again = "Measure both diagonals again before the glue sets.\n"
	}
	fmt.Fprintf(b, "1. Put it together dry%s, and mark on every part which side is inside and which is up.\n", check)
	seams := plan.Seams()
	var placed []box.Part
	n := 1
	for _, s := range steps(plan.Pieces(), seams) {
		n++
		verb := "Add"
		if len(placed) == 0 {
			verb = "Begin with"
		}
		fmt.Fprintf(b, "%d. %s %s", n, verb, names(s.parts, ", "))
		if len(s.parts) > 1 {
			b.WriteString(" together: they hold each other")
		}
		var to []string
		for _, m := range seams {
			if has(s.parts, m.Over) && has(placed, m.Under) {
				to = append(to, bom.Escape(string(m.Under))+" ("+bom.Escape(m.Joint)+")")
			}
			if has(s.parts, m.Under) && has(placed, m.Over) {
				to = append(to, bom.Escape(string(m.Over))+" ("+bom.Escape(m.Joint)+")")
			}
		}
		if len(to) > 0 {
			fmt.Fprintf(b, ", on %s", strings.Join(to, ", "))
		}
		b.WriteString(".\n")
		placed = append(placed, s.parts...)
	}
	if again != "" {
		fmt.Fprintf(b, "%d. %s", n+1, again)
	}
}
