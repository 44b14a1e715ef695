package solid

import (
	"math"
	"slices"
)

// flipper makes a triangulation Delaunay within its outlines by flipping the
// diagonals of convex quadrilaterals (Lawson). That is not cosmetic: the sweep
// leaves needles that lose their area when a file rounds the corners.
type flipper struct {
	twin  []int32 // half-edge 3t+i runs from corner i of triangle t to the next
	from  []int32 // half-edges by their first corner
	list  []int32
	stack []int32
	held  []bool
	fixed [][2]int32 // diagonals that must stay, low corner first
}

// flatQuad is the height, mm, under which a triangle cannot be told from a line
// by the circle through its corners.
const flatQuad = 1e-9

// run improves tri in place; x and y are the corners, to true scale.
func (f *flipper) run(tri [][3]int32, x, y []float64) {
	f.pair(tri, len(x))
	m := 3 * len(tri)
	if len(f.fixed) > 0 {
		for h := range f.twin {
			a, b := tri[h/3][h%3], tri[h/3][(h+1)%3]
			if slices.Contains(f.fixed, [2]int32{min(a, b), max(a, b)}) {
				f.twin[h] = -1
			}
		}
	}
	f.held = resize(f.held, m)
	f.stack = f.stack[:0]
	for h := 0; h < m; h++ {
		f.held[h] = false
		if int(f.twin[h]) > h {
			f.held[h] = true
			f.stack = append(f.stack, int32(h))
		}
	}
	// Flips end by themselves; the bound is against rounding.
	for left := 40*m + 1000; len(f.stack) > 0 && left > 0; left-- {
		h := f.stack[len(f.stack)-1]
		f.stack = f.stack[:len(f.stack)-1]
		f.held[h] = false
		f.flip(tri, x, y, h)
	}
}

func after(h int32) int32 {
	if h%3 == 2 {
		return h - 2
	}
	return h + 1
}

func before(h int32) int32 {
	if h%3 == 0 {
		return h + 2
	}
	return h - 1
}

// pair finds the twin of every half-edge, -1 on an outline. It looks through
// the half-edges of that end which has fewer; for a plane graph that is linear.
func (f *flipper) pair(tri [][3]int32, n int) {
	m := 3 * len(tri)
	f.twin, f.list = resize(f.twin, m), resize(f.list, m)
	f.from = resize(f.from, n+1)
	clear(f.from)
	for _, t := range tri {
		for _, v := range t {
			f.from[v]++
		}
	}
	sum := int32(0)
	for v := range f.from {
		sum, f.from[v] = sum+f.from[v], sum
	}
	for t := range tri {
		for i, v := range tri[t] {
			f.list[f.from[v]] = int32(3*t + i)
			f.from[v]++
		}
	}
	begin := func(v int32) int32 {
		if v == 0 {
			return 0
		}
		return f.from[v-1]
	}
	for h := range f.twin {
		f.twin[h] = -1
	}
	for h := int32(0); int(h) < m; h++ {
		if f.twin[h] >= 0 {
			continue
		}
		t := tri[h/3]
		a, b := t[h%3], t[(h+1)%3]
		a0, b0 := begin(a), begin(b)
		if f.from[b]-b0 <= f.from[a]-a0 {
			for _, g := range f.list[b0:f.from[b]] {
				if tri[g/3][(g+1)%3] == a {
					f.twin[h], f.twin[g] = g, h
					break
				}
			}
			continue
		}
		// Every corner's triangles have one half-edge out of it and one into it.
		for _, o := range f.list[a0:f.from[a]] {
			g := before(o)
			if tri[g/3][g%3] == b {
				f.twin[h], f.twin[g] = g, h
				break
			}
		}
	}
}

// flip looks at one diagonal.
func (f *flipper) flip(tri [][3]int32, x, y []float64, h int32) {
	g := f.twin[h]
	if g < 0 {
		return
	}
	h2, g2 := before(h), before(g)
	a, b := tri[h/3][h%3], tri[g/3][g%3]
	c, d := tri[h2/3][h2%3], tri[g2/3][g2%3]
	// Seen from c and from d the diagonal a b; more than half a turn together
	// means that the other diagonal is better.
	cax, cay, cbx, cby := x[a]-x[c], y[a]-y[c], x[b]-x[c], y[b]-y[c]
	dax, day, dbx, dby := x[a]-x[d], y[a]-y[d], x[b]-x[d], y[b]-y[d]
	cosC := float64(cax*cbx) + float64(cay*cby)
	cosD := float64(dax*dbx) + float64(day*dby)
	if cosC >= 0 && cosD >= 0 {
		return
	}
	sinC := float64(cax*cby) - float64(cbx*cay)
	sinD := float64(dbx*day) - float64(dax*dby)
	lc := float64(cax*cax) + float64(cay*cay) + float64(cbx*cbx) + float64(cby*cby)
	ld := float64(dax*dax) + float64(day*day) + float64(dbx*dbx) + float64(dby*dby)
	if float64(sinC*sinC) <= flatQuad*flatQuad*lc && float64(sinD*sinD) <= flatQuad*flatQuad*ld {
		// Four corners in line, as the shoulders of fingers opposite each other:
		// no circle tells which diagonal is better, and neither gives an area. The
		// shorter one frees the corners on the longer for the neighbours.
		abx, aby, cdx, cdy := x[b]-x[a], y[b]-y[a], x[d]-x[c], y[d]-y[c]
		if float64(cdx*cdx)+float64(cdy*cdy) < float64(abx*abx)+float64(aby*aby) {
			f.swap(tri, h, g)
		}
		return
	}
	// Less than what rounding can be, in proportion to what is summed: needles have
	// long sides, and nothing may be hidden under the squares of those.
	sum := float64(mag(cax, cby, cbx, cay)*math.Abs(cosD)) + float64(math.Abs(cosC)*mag(dbx, day, dax, dby))
	if !(float64(sinC*cosD)+float64(cosC*sinD) < -1e-12*sum) {
		return
	}
	// Strictly convex at a and at b: both new triangles have an area.
	ta := float64(dax*cay) - float64(cax*day)
	tb := float64(cbx*dby) - float64(dbx*cby)
	if !(ta > 1e-14*(lc+ld) && tb > 1e-14*(lc+ld)) {
		return
	}
	f.swap(tri, h, g)
}

// mag is the size of the products that a cross product is the difference of.
func mag(a, b, c, d float64) float64 { return math.Abs(float64(a*b)) + math.Abs(float64(c*d)) }

// swap puts the other diagonal in the place of h and its twin g.
func (f *flipper) swap(tri [][3]int32, h, g int32) {
	h1, h2, g1, g2 := after(h), before(h), after(g), before(g)
	a, b := tri[h/3][h%3], tri[g/3][g%3]
	c, d := tri[h2/3][h2%3], tri[g2/3][g2%3]
	th, tg := h/3, g/3
	nh1, nh2, ng1, ng2 := f.twin[h1], f.twin[h2], f.twin[g1], f.twin[g2]
	// h becomes d -> c in the triangle d c a, g becomes c -> d in c d b.
	tri[th] = [3]int32{d, c, a}
	tri[tg] = [3]int32{c, d, b}
	f.link(3*th, 3*tg)
	f.link(3*th+1, nh2)
	f.link(3*th+2, ng1)
	f.link(3*tg+1, ng2)
	f.link(3*tg+2, nh1)
	for _, e := range [4]int32{3*th + 1, 3*th + 2, 3*tg + 1, 3*tg + 2} {
		f.push(e)
	}
}

func (f *flipper) link(h, g int32) {
	f.twin[h] = g
	if g >= 0 {
		f.twin[g] = h
	}
}

// push puts an edge on the stack unless it is there.
func (f *flipper) push(h int32) {
	g := f.twin[h]
	if g < 0 {
		return
	}
	if f.held[h] || f.held[g] {
		return
	}
	f.held[h] = true
	f.stack = append(f.stack, h)
}

// needle reports whether a triangle is lower than flatHeight.
func (f *flipper) needle(tri [][3]int32, x, y []float64) bool {
	for _, t := range tri {
		a, b, c := t[0], t[1], t[2]
		ux, uy, vx, vy := x[b]-x[a], y[b]-y[a], x[c]-x[a], y[c]-y[a]
		wx, wy := vx-ux, vy-uy
		l := max(float64(ux*ux)+float64(uy*uy), float64(vx*vx)+float64(vy*vy), float64(wx*wx)+float64(wy*wy))
		s := float64(ux*vy) - float64(vx*uy)
		if !(s > 0 && float64(s*s) > l*(flatHeight*flatHeight)) {
			return true
		}
	}
	return false
}
