package outline

import "math"

// ConvexPieces parts a simple polygon, given in either sense, into few convex
// anticlockwise polygons: triangles are cut off corner by corner and joined
// again wherever the joint stays convex, so there are at most four times as
// many pieces as the least possible (Hertel and Mehlhorn, 1983). Corners in a
// straight line are left out. Nil if nothing is enclosed; for a polygon that
// crosses itself the pieces are convex but may overlap.
func ConvexPieces(poly []Point) [][]Point {
	for _, p := range poly {
		if !finite(p.X, p.Y) || math.Abs(p.X) > 1e100 || math.Abs(p.Y) > 1e100 {
			return nil
		}
	}
	p := cleanPolygon(anticlockwise(poly))
	if len(p) < 3 {
		return nil
	}
	tris := clipEars(p)
	return joinConvex(p, tris)
}

// turnAt is twice the area of abc; sharp if it is a left turn beyond rounding.
func turnAt(a, b, c Point) (k float64, sharp bool) {
	d, e := sub(b, a), sub(c, b)
	k = cross(d, e)
	return k, k > 1e-12*(norm(d)*norm(e))
}

// convexAt reports whether abc turns left or goes straight on.
func convexAt(a, b, c Point) bool {
	d, e := sub(b, a), sub(c, b)
	return cross(d, e) >= -1e-12*(norm(d)*norm(e)) && dot(d, e) > -norm(d)*norm(e)*(1-1e-12)
}

// cleanPolygon leaves out doubled corners and those on the line between their
// neighbours.
func cleanPolygon(poly []Point) []Point {
	p := append([]Point(nil), poly...)
	for changed := true; changed && len(p) >= 3; {
		changed = false
		out := p[:0:0]
		n := len(p)
		for i := range p {
			a := p[(i+n-1)%n]
			if len(out) > 0 {
				a = out[len(out)-1]
			}
			b, c := p[i], p[(i+1)%n]
			d, e := sub(b, a), sub(c, b)
			if gap(a, b) <= 1e-9 || math.Abs(cross(d, e)) <= 1e-12*(norm(d)*norm(e)) {
				changed = true
				continue
			}
			out = append(out, b)
		}
		p = out
	}
	if len(p) < 3 {
		return nil
	}
	return p
}

// clipEars triangulates by cutting off corners that hold no other corner.
func clipEars(p []Point) [][3]int {
	n := len(p)
	prev, next := make([]int, n), make([]int, n)
	for i := range p {
		prev[i], next[i] = (i+n-1)%n, (i+1)%n
	}
	reflex := make([]bool, n)
	var bent []int // corners that may lie in an ear: not convex ones
	for i := range p {
		if _, sharp := turnAt(p[prev[i]], p[i], p[next[i]]); !sharp {
			reflex[i] = true
			bent = append(bent, i)
		}
	}
	ear := func(i int) bool {
		a, b, c := p[prev[i]], p[i], p[next[i]]
		if _, sharp := turnAt(a, b, c); !sharp {
			return false
		}
		for _, j := range bent {
			q := p[j]
			if !reflex[j] || j == prev[i] || j == i || j == next[i] || q == a || q == b || q == c {
				continue
			}
			if cross(sub(b, a), sub(q, a)) >= 0 && cross(sub(c, b), sub(q, b)) >= 0 && cross(sub(a, c), sub(q, c)) >= 0 {
				return false
			}
		}
		return true
	}
	var tris [][3]int
	at, left, missed := 0, n, 0
	// A simple polygon always has an ear. Where a whole round finds none it
	// crosses itself, or rounding has closed the gap between sides that touch:
	// then any convex corner will do, and looking on would take n^3 steps.
	loose := false
	for left > 3 {
		_, sharp := turnAt(p[prev[at]], p[at], p[next[at]])
		straight := false
		if k, _ := turnAt(p[prev[at]], p[at], p[next[at]]); !sharp {
			straight = math.Abs(k) <= 1e-12*(gap(p[prev[at]], p[at])*gap(p[at], p[next[at]]))
		}
		loose = loose || missed > left
		if straight || loose && sharp || !loose && ear(at) || missed > 2*left {
			a, c := prev[at], next[at]
			if sharp {
				tris = append(tris, [3]int{a, at, c})
			}
			next[a], prev[c] = c, a
			reflex[at] = false
			left--
			missed = 0
			for _, j := range [2]int{a, c} {
				if _, ok := turnAt(p[prev[j]], p[j], p[next[j]]); ok {
					reflex[j] = false
				} else if !reflex[j] {
					reflex[j] = true
					bent = append(bent, j)
				}
			}
			// Skip a corner, so that triangles do not all fan from one.
			at = next[c]
			if left%64 == 0 {
				kept := bent[:0]
				for _, j := range bent {
					if reflex[j] {
						kept = append(kept, j)
					}
				}
				bent = kept
			}
			continue
		}
		missed++
		at = next[at]
	}
	if _, sharp := turnAt(p[prev[at]], p[at], p[next[at]]); sharp {
		tris = append(tris, [3]int{prev[at], at, next[at]})
	}
	return tris
}

// joinConvex takes diagonals away in a fixed order where both ends stay convex.
func joinConvex(p []Point, tris [][3]int) [][]Point {
	type side struct{ a, b int }
	pieces := make([][]int, len(tris))
	owner := make(map[side]int, 3*len(tris))
	for i, t := range tris {
		pieces[i] = []int{t[0], t[1], t[2]}
		for k := range t {
			owner[side{t[k], t[(k+1)%3]}] = i
		}
	}
	find := func(piece []int, v int) int {
		for i, x := range piece {
			if x == v {
				return i
			}
		}
		return -1
	}
	for _, t := range tris {
		for k := range t {
			a, b := t[k], t[(k+1)%3]
			i, ok := owner[side{a, b}]
			j, ok2 := owner[side{b, a}]
			if !ok || !ok2 || i == j {
				continue
			}
			x, y := pieces[i], pieces[j]
			ia, jb := find(x, a), find(y, b)
			nx, ny := len(x), len(y)
			// x runs ... a b ..., y runs ... b a ...
			beforeA, afterB := x[(ia+nx-1)%nx], x[(ia+2)%nx]
			beforeB, afterA := y[(jb+ny-1)%ny], y[(jb+2)%ny]
			if !convexAt(p[beforeA], p[a], p[afterA]) || !convexAt(p[beforeB], p[b], p[afterB]) {
				continue
			}
			joined := make([]int, 0, nx+ny-2)
			for m := 1; m <= nx; m++ { // b ... a of x
				joined = append(joined, x[(ia+m)%nx])
			}
			for m := 2; m < ny; m++ { // after a, up to before b, of y
				joined = append(joined, y[(jb+m)%ny])
			}
			delete(owner, side{a, b})
			delete(owner, side{b, a})
			for m := range y {
				if s := (side{y[m], y[(m+1)%ny]}); owner[s] == j && s != (side{b, a}) {
					owner[s] = i
				}
			}
			pieces[i], pieces[j] = joined, nil
		}
	}
	var out [][]Point
	for _, piece := range pieces {
		if piece == nil {
			continue
		}
		q := make([]Point, len(piece))
		for i, v := range piece {
			q[i] = p[v]
		}
		if q = cleanPolygon(q); q != nil {
			out = append(out, q)
		}
	}
	return out
}
