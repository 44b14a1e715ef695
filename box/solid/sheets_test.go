package solid

import (
	"testing"

	"holt.example/box/outline"
)

// onePerCorner checks that the triangles at every corner are one fan: with
// Check, that the mesh is a 2-manifold in its numbers.
func onePerCorner(t *testing.T, m *Mesh) {
	t.Helper()
	next := map[[2]int32]int32{} // by corner and a neighbour, the neighbour after it
	count := make([]int, len(m.Vertices))
	for _, k := range m.Triangles {
		for i, v := range k {
			next[[2]int32{v, k[(i+1)%3]}] = k[(i+2)%3]
			count[v]++
		}
	}
	seen := make([]bool, len(m.Vertices))
	for _, k := range m.Triangles {
		v, w := k[0], k[1]
		if seen[v] {
			continue
		}
		seen[v] = true
		n := 0
		for u := w; n == 0 || u != w && n <= count[v]; n++ {
			u = next[[2]int32{v, u}]
		}
		if n != count[v] {
			t.Errorf("corner %d at %v: %d triangles, a fan of %d", v, m.Vertices[v], count[v], n)
		}
	}
}

// TestMeshTouching: what touches along an edge only is parted there.
func TestMeshTouching(t *testing.T) {
	plate := cuboid(0, 0, 0, 100, 100, 15)
	wedge := Plane{Vec{0.6, 0, 0.8}, 0.8*15 + 0.6*50} // through x = 50 on the top
	for _, c := range []struct {
		name         string
		b            Body
		volume       float64
		pieces, hole int
	}{
		{"holes corner to corner", Body{Base: plate, Prisms: []Prism{through(rectOutline(20, 20, 40, 40)), through(rectOutline(40, 40, 60, 60))}},
			(1e4 - 800) * 15, 1, 1},
		{"hole with a corner in the edge", Body{Base: plate, Prisms: []Prism{
			through(outline.Polygon(outline.Point{X: 100, Y: 50}, outline.Point{X: 80, Y: 60}, outline.Point{X: 80, Y: 40}))}},
			(1e4 - 200) * 15, 1, 0},
		{"holes side by side", Body{Base: plate, Prisms: []Prism{through(rectOutline(20, 20, 40, 40)), through(rectOutline(40, 20, 60, 40))}},
			(1e4 - 800) * 15, 1, 1},
		// The cutter takes what is over z = 5, left of x = 50 and beyond the slope: the
		// top plane keeps what is left, which hangs on the line x = 50 only.
		{"loose wedge", Body{Base: append(cuboid(0, 0, 0, 100, 100, 99), wedge), Cutters: []Cutter{{NewPlane(Vec{1, 0, 0}, 100), NewPlane(Vec{-1, 0, 0}, -50), NewPlane(Vec{0, 0, 1}, 15)}}},
			// To the left of x = 50 a trapezium from 52.5 down to 15.
			(52.5 + 15) / 2 * 50 * 100, 1, 0},
		// A hollow in the middle that touches a through hole along 5 mm of a line: hole
		// and hollow become one, the material around is joined above and below.
		{"hollow against a hole", Body{Base: plate, Cutters: []Cutter{cuboid(20, 20, -1, 40, 40, 16), cuboid(40, 40, 5, 60, 60, 10)}},
			(1e4-400)*15 - 2000, 1, 1},
		// A hollow that touches the top with an edge in the middle of it, and with its
		// ends where two corners of the top are in line: the top is slit there.
		{"hollow under the top", Body{Base: plate, Cutters: []Cutter{append(cuboid(30, 30, 5, 70, 70, 99), Plane{Vec{0.6, 0, 0.8}, 0.6*30 + 0.8*15})}},
			150000 - 10*10/0.75/2*40, 1, 0},
		// The same from edge to edge: the top ends at it.
		{"slot under the top", Body{Base: plate, Cutters: []Cutter{{NewPlane(Vec{-1, 0, 0}, -30), NewPlane(Vec{0, 0, -1}, -5), {Vec{0.6, 0, 0.8}, 0.6*30 + 0.8*15}}}},
			150000 - 10*10/0.75/2*100, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := random(91)
			for turn := 0; turn < 8; turn++ {
				b := c.b
				if turn > 0 {
					b = turned(b, anyFrame(r))
				}
				m := mustMesh(t, b, 0.01)
				onePerCorner(t, m)
				near(t, "volume", m.Volume(), c.volume, 1e-3)
				if m.Components() != c.pieces || m.Genus() != c.hole {
					t.Errorf("%d pieces, want %d, %d holes, want %d", m.Components(), c.pieces, m.Genus(), c.hole)
				}
			}
		})
	}
}

// connected counts the connected sets among n things.
func connected(n int, joined func(i, j int) bool) int {
	up := make([]int, n)
	var find func(i int) int
	find = func(i int) int {
		if up[i] != i {
			up[i] = find(up[i])
		}
		return up[i]
	}
	for i := range up {
		up[i] = i
	}
	count := n
	for i := range n {
		for j := range i {
			if joined(i, j) && find(i) != find(j) {
				up[find(i)] = find(j)
				count--
			}
		}
	}
	return count
}

// TestMeshDice takes dice out of a cube of 3 x 3 x 3 at random: they touch along
// edges and in corners in every way. Material that does so is parted there: it
// hangs together by faces only, emptiness by edges too. As every surface parts
// one set of material from one of emptiness, there are as many as sets, less 1.
// Euler's number of the material without its surface is dice - faces between
// dice + edges and - corners all round which there are dice. That counts as a
// tunnel where emptiness touches in a corner only, which the mesh closes: there
// it is 1 more for every set of emptiness at the corner after the first.
func TestMeshDice(t *testing.T) {
	r := random(92)
	for run := 0; run < 400; run++ {
		const n = 5 // with a rim of emptiness
		var full [n][n][n]bool
		b := Body{Base: cuboid(0, 0, 0, 30, 30, 30)}
		var dice, gaps [][3]int
		p := 0.2 + 0.6*r.Float64()
		for x := range n {
			for y := range n {
				for z := range n {
					rim := x%4 == 0 || y%4 == 0 || z%4 == 0
					if !rim && r.Float64() < p {
						full[x][y][z] = true
						dice = append(dice, [3]int{x, y, z})
						continue
					}
					gaps = append(gaps, [3]int{x, y, z})
					if !rim {
						x, y, z := float64(x), float64(y), float64(z)
						b.Cutters = append(b.Cutters, cuboid(10*x-10, 10*y-10, 10*z-10, 10*x, 10*y, 10*z))
					}
				}
			}
		}
		if len(dice) == 0 {
			continue
		}
		steps := func(a, b [3]int) (far, sum int) {
			for i := range a {
				d := max(a[i]-b[i], b[i]-a[i])
				far, sum = max(far, d), sum+d
			}
			return far, sum
		}
		material := connected(len(dice), func(i, j int) bool { _, s := steps(dice[i], dice[j]); return s == 1 })
		empty := connected(len(gaps), func(i, j int) bool { f, s := steps(gaps[i], gaps[j]); return f == 1 && s <= 2 })
		euler := 0
		for x := range n - 1 {
			for y := range n - 1 {
				for z := range n - 1 {
					for dx := range 2 {
						for dy := range 2 {
							for dz := range 2 {
								all := true // of the dice x..x+dx and so on
								for k := range 8 {
									all = all && full[x+dx*(k&1)][y+dy*(k>>1&1)][z+dz*(k>>2)]
								}
								if all {
									euler += 1 - (dx+dy+dz)%2*2
								}
							}
						}
					}
					var around [][3]int // emptiness at the far corner of the die
					for k := range 8 {
						if q := [3]int{x + k&1, y + k>>1&1, z + k>>2}; !full[q[0]][q[1]][q[2]] {
							around = append(around, q)
						}
					}
					if len(around) < 8 {
						euler += max(1, connected(len(around), func(i, j int) bool { _, s := steps(around[i], around[j]); return s <= 2 })) - 1
					}
				}
			}
		}
		if run%2 == 1 {
			b = turned(b, anyFrame(r))
		}
		m := mustMesh(t, b, 0.01)
		onePerCorner(t, m)
		near(t, "volume", m.Volume(), 1000*float64(len(dice)), 1e-3)
		if got := b.Islands(); got != material {
			t.Errorf("run %d: %d islands, want %d", run, got, material)
		}
		if got, want := m.Components(), material+empty-1; got != want {
			t.Errorf("run %d: %d surfaces, want %d", run, got, want)
		}
		if got, want := m.Components()-m.Genus(), euler; got != want {
			t.Errorf("run %d: Euler's number %d, want %d", run, got, want)
		}
	}
}

// TestMeshMosaic takes triangles, halves of squares, out of a plate 4 x 4: now
// edges touch in the middle of faces too.
func TestMeshMosaic(t *testing.T) {
	r := random(93)
	for run := 0; run < 400; run++ {
		b := Body{Base: cuboid(0, 0, 0, 40, 7, 40)}
		var solid, empty [][3][2]int // triangles
		p := 0.3 + 0.6*r.Float64()
		for x := range 6 {
			for z := range 6 {
				q := [4][2]int{{x, z}, {x + 1, z}, {x + 1, z + 1}, {x, z + 1}}
				k := r.IntN(2)
				for h := range 2 {
					tri := [3][2]int{q[(k+2*h)%4], q[(k+2*h+1)%4], q[(k+2*h+2)%4]}
					rim := x%5 == 0 || z%5 == 0
					if !rim && r.Float64() < p {
						solid = append(solid, tri)
						continue
					}
					empty = append(empty, tri)
					if rim {
						continue
					}
					var c Cutter
					for i, u := range tri {
						v := tri[(i+1)%3]
						n := Vec{float64(v[1] - u[1]), 0, float64(u[0] - v[0])}
						c = append(c, NewPlane(n, n.Dot(Vec{float64(10*u[0] - 10), 0, float64(10*u[1] - 10)})))
					}
					b.Cutters = append(b.Cutters, c)
				}
			}
		}
		if len(solid) == 0 {
			continue
		}
		share := func(a, b [3][2]int) (n int) {
			for _, p := range a {
				for _, q := range b {
					if p == q {
						n++
					}
				}
			}
			return n
		}
		pieces := connected(len(solid), func(i, j int) bool { return share(solid[i], solid[j]) == 2 })
		holes := connected(len(empty), func(i, j int) bool { return share(empty[i], empty[j]) > 0 }) - 1
		if run%2 == 1 {
			b = turned(b, anyFrame(r))
		}
		m := mustMesh(t, b, 0.01)
		onePerCorner(t, m)
		near(t, "volume", m.Volume(), 350*float64(len(solid)), 1e-3)
		if got := b.Islands(); got != pieces {
			t.Errorf("run %d: %d islands, want %d", run, got, pieces)
		}
		if m.Components() != pieces || m.Genus() != holes {
			t.Errorf("run %d: %d pieces, want %d; %d holes, want %d", run, m.Components(), pieces, m.Genus(), holes)
		}
	}
}
