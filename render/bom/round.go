package bom

import (
	"math"

	"holt.example/box"
	"holt.example/box/solid"
)

// How the sizes of a list are rounded so that the rounded parts go together.
//
// An end of a dimension is a guest end where the part butts against or enters a
// neighbour: where it is the Under of a seam that is neither a mitre nor a
// comb. Every other end, a host's or a free one, may grow without touching
// anything.
//
//  1. A guest end that enters a cut follows the cut: the depth of the cut is
//     rounded down to 0.1, so that no lip gets thinner, and the guest gets as
//     much shorter.
//  2. A dimension with a guest end is rounded down, any other one up.
//  3. Equal parts, mirror images, and walls of one height all take the
//     smallest of their sizes.
//  4. What stands between walls (floor, partitions) is last, and takes what the
//     rounded walls leave: rounded down from the room between the two parts
//     that it meets, never more than its true size.
//
// With exact cuts rule 2 shrinks a part by less than a step and rule 4 by less
// than two. Nothing overlaps, whether parts stand where the plan has them or
// are pushed together, and no gap is wider than two steps.

// fine is the precision of what is set from tools and gauges.
const fine = 0.1

// cutSize is a rounded blank, and in words what its sizes were rounded for.
type cutSize struct {
	length, width       float64
	lengthWhy, widthWhy string
}

// end is one end of a dimension.
type end struct {
	guest      bool
	enter      float64 // how far a guest reaches into its neighbour, 0 or more
	neighbours []box.Part
}

func (e end) meets(p box.Part) bool {
	for _, n := range e.neighbours {
		if n == p {
			return true
		}
	}
	return false
}

// dim is one of the two dimensions of a part.
type dim struct {
	part      box.Part
	size, cut float64
	why       string    // what cut was rounded for
	dir       solid.Vec // in the world
	ends      [2]end
	height    bool // of a wall
	filler    bool // rule 4
}

func (d *dim) guest() bool { return d.ends[0].guest || d.ends[1].guest }

// entered is what the guest ends lose because the cuts that they enter are
// rounded down.
func (d *dim) entered() float64 {
	loss := 0.0
	for _, e := range d.ends {
		loss += e.enter - down(e.enter, fine)
	}
	return loss
}

// goesIn says what a guest is rounded down for.
func (d *dim) goesIn() string {
	if d.ends[0].guest && d.ends[1].guest {
		return "so that it goes between its neighbours"
	}
	e := d.ends[0]
	if !e.guest {
		e = d.ends[1]
	}
	switch n := once(e.neighbours); {
	case len(n) == 1 && e.enter > near:
		return "so that it goes into " + string(n[0])
	case len(n) == 1:
		return "so that it goes up to " + string(n[0]) + " and no further"
	}
	return "so that it goes up to its neighbours and no further"
}

// differs says why a size to cut to is more than half a step from the exact
// one; "" if it is not.
func (d *dim) differs(step float64) string {
	by, word := d.cut-d.size, " more"
	if by < 0 {
		by, word = -by, " less"
	}
	if !(by > step/2+near) {
		return ""
	}
	return num(nearest(by, math.Min(step, fine)/10)) + word + ": " + d.why
}

// round gives every piece its rounded blank.
func (s source) round(step float64) []cutSize {
	all := make([][2]dim, len(s.pieces))
	for i, p := range s.pieces {
		all[i] = s.dims(p)
		for k := range all[i] {
			d := &all[i][k]
			if d.guest() {
				d.cut, d.why = down(d.size-d.entered(), step), d.goesIn()
			} else {
				d.cut, d.why = up(d.size, step), "nothing stops it here, so it was rounded up"
			}
		}
	}
	// Sizes only shrink here, each by whole steps and by a bounded number of
	// them, so this comes to rest; the bound is for faulty plans.
	for n := 0; n < 16; n++ {
		changed := s.level(all)
		for i := range all {
			for k := range all[i] {
				if d := &all[i][k]; d.filler {
					if c := down(s.room(all, i, k), step); c < d.cut {
						d.cut, changed = c, true
						d.why = "so that it goes between the walls as they are rounded"
					}
				}
			}
		}
		if !changed {
			break
		}
	}
	out := make([]cutSize, len(all))
	for i, d := range all {
		out[i] = cutSize{d[0].cut, d[1].cut, d[0].differs(step), d[1].differs(step)}
	}
	return out
}

// level applies rule 3.
func (s source) level(all [][2]dim) (changed bool) {
	// Equal parts give each other their reason too, others only the size.
	take := func(a, b *dim, equal bool) {
		if b.cut > a.cut {
			a, b = b, a
		}
		if a.cut == b.cut {
			return
		}
		a.cut, a.why, changed = b.cut, b.why, true
		if !equal {
			a.why = "so that it matches " + string(b.part)
		}
	}
	at := make(map[box.Part]int, len(s.pieces))
	for i, p := range s.pieces {
		at[p.Part] = i
	}
	first := map[int]int{} // of each group, by number
	for _, g := range s.groups {
		for _, name := range g.Parts {
			j, ok := at[name]
			if !ok {
				continue
			}
			if _, ok := first[g.Number]; !ok {
				first[g.Number] = j
			}
			for _, number := range [2]int{g.Number, g.Mirror} {
				if i, ok := first[number]; ok && number > 0 {
					take(&all[i][0], &all[j][0], number == g.Number)
					take(&all[i][1], &all[j][1], number == g.Number)
				}
			}
		}
	}
	for i := range all {
		for j := 0; j < i; j++ {
			for k := 0; k < 4; k++ {
				a, b := &all[i][k&1], &all[j][k>>1]
				if a.height && b.height && math.Abs(a.size-b.size) < near {
					take(a, b, false)
				}
			}
		}
	}
	return changed
}

// room is what the rounded walls leave for dimension k of piece i: between the
// two parts that it meets, and into the cuts that it enters.
func (s source) room(all [][2]dim, i, k int) float64 {
	d := &all[i][k]
	most, slack := 0.0, 0.0
	found := false
	for j, p := range s.pieces {
		if j == i || !isWall(p.Part) {
			continue
		}
		for n := range all[j] {
			w := &all[j][n]
			if between(w, d) {
				found = true
				most = math.Min(most, w.grown())
			} else if !w.height && touches(s.pieces[i], p.Part) {
				// A convex polygon is as wide as half the sum of the shadows
				// that its sides throw.
				slack += float64(math.Abs(w.dir.Dot(d.dir)) * w.grown() / 2)
			}
		}
	}
	if !found {
		most = math.Min(0, slack)
	}
	return d.size - d.entered() + most
}

// grown is how much further apart a wall's rounding sets the inner faces of the
// parts at its two ends; negative: closer.
func (d *dim) grown() float64 { return d.cut - d.size + d.entered() }

// between reports whether w ends at the same two parts as d.
func between(w, d *dim) bool {
	for _, a := range d.ends[0].neighbours {
		for _, b := range d.ends[1].neighbours {
			if a != b && (w.ends[0].meets(a) && w.ends[1].meets(b) || w.ends[0].meets(b) && w.ends[1].meets(a)) {
				return true
			}
		}
	}
	return false
}

// touches reports whether a piece meets the wall.
func touches(p box.Piece, wall box.Part) bool {
	for _, e := range p.Panel.Edges {
		if e.Neighbour == wall {
			return true
		}
	}
	return false
}
