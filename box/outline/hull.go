package outline

import "slices"

// hullOrder is the convex hull as indices, anticlockwise from the lowest of the
// leftmost points. Points on its sides are kept if edge is set. Doubles count
// once.
func hullOrder(p []Point, edge bool) []int {
	order := make([]int, len(p))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		a, b := p[i], p[j]
		switch {
		case a.X < b.X || a.X == b.X && a.Y < b.Y:
			return -1
		case a == b:
			return i - j
		}
		return 1
	})
	order = slices.CompactFunc(order, func(i, j int) bool { return p[i] == p[j] })
	if len(order) < 3 {
		return order
	}
	half := func(order []int) []int {
		var h []int
		for _, i := range order {
			for len(h) > 1 {
				a, b := p[h[len(h)-2]], p[h[len(h)-1]]
				d, e := sub(b, a), sub(p[i], a)
				k := cross(d, e)
				// Without a tolerance where sides are straightened afterwards: of points
				// on one upright line but for rounding, b may lie beyond the next.
				if edge && k >= -1e-12*norm(d)*norm(e) || !edge && k > 0 {
					break
				}
				h = h[:len(h)-1]
			}
			h = append(h, i)
		}
		return h[:len(h)-1]
	}
	h := half(order)
	back := slices.Clone(order)
	slices.Reverse(back)
	up := half(back)
	if edge && len(h)+1 == len(order) && len(up)+1 == len(order) {
		return h // all on one line
	}
	h = append(h, up...)
	for i := 0; !edge && len(h) > 2 && i < len(h); i++ {
		n := len(h)
		d, e := sub(p[h[i]], p[h[(i+n-1)%n]]), sub(p[h[(i+1)%n]], p[h[i]])
		if cross(d, e) <= 1e-12*norm(d)*norm(e) && dot(d, e) > 0 {
			h = slices.Delete(h, i, i+1)
			i = max(i-2, -1)
		}
	}
	return h
}

// Hull is the convex hull of the points: anticlockwise from the lowest of the
// leftmost, points within it or on its sides left out. Points on one line give
// its two ends, which is no contour that Check accepts. Points must be finite.
func Hull(points []Point) Contour {
	h := hullOrder(points, false)
	c := make(Contour, len(h))
	for i, k := range h {
		c[i] = Vertex{points[k].X, points[k].Y, 0}
	}
	return c
}

// IsConvex reports whether the contour is convex, in either sense: it turns one
// way at every vertex and along every arc, once round in all. Vertices in a
// straight line do no harm.
func (c Contour) IsConvex() bool {
	sign := 1.0
	if c.Area() < 0 {
		sign = -1
	}
	var d []Point // directions, at both ends of every side
	for i := range c {
		s := c.side(i)
		if s.a == s.b {
			continue
		}
		if float64(sign*s.bulge) < 0 && s.r > 0 {
			return false
		}
		a, b := s.tangents()
		d = append(d, a, b)
	}
	if len(d) < 4 {
		return false
	}
	turn := 0.0
	for i := range d {
		a, b := d[i], d[(i+1)%len(d)]
		x, y := float64(sign*cross(a, b)), dot(a, b)
		if i%2 == 1 && x < -1e-12*norm(a)*norm(b) {
			return false
		}
		if i%2 == 1 { // along a side the bulge says more than its ends
			turn += atan2(x, y)
		}
	}
	for i := range c {
		turn += float64(4 * atan(float64(sign*c[i].Bulge)))
	}
	return turn > 6 && turn < 6.6 // one turn is 6.28, two are 12.57
}

// Pockets is what the convex hull of a simple polygon holds beside the polygon:
// anticlockwise simple polygons, in the order of the outline. The polygon may
// be given in either sense; a convex one has none.
func Pockets(poly []Point) [][]Point {
	poly = anticlockwise(poly)
	n := len(poly)
	on := make([]bool, n)
	first := -1
	for _, i := range hullOrder(poly, true) {
		on[i] = true
		if first < 0 || i < first {
			first = i
		}
	}
	var out [][]Point
	for j := 0; j < n && first >= 0; {
		i := (first + j) % n
		k := j + 1
		for k < n && !on[(first+k)%n] {
			k++
		}
		if k > j+1 {
			p := []Point{poly[i]}
			for m := k; m > j; m-- {
				p = append(p, poly[(first+m)%n])
			}
			if Polygon(p...).Area() > 0 {
				out = append(out, p)
			}
		}
		j = k
	}
	return out
}

// anticlockwise is the polygon run anticlockwise; a copy if it was not.
func anticlockwise(poly []Point) []Point {
	if Polygon(poly...).Area() < 0 {
		poly = slices.Clone(poly)
		slices.Reverse(poly)
	}
	return poly
}
