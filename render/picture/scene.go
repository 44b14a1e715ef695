package picture

import (
	"math"

	"holt.example/box"
	"holt.example/box/solid"
)

// Tolerances in mm of the world. Mesh corners are right to 1e-4 (the weld
// radius), so what is nearer to a plane than flat lies on it.
const flat = 1e-3

// bend says what is known about an edge of a mesh: that it only lies between
// two facets of a curved surface, or nothing, and then it is a real one.
type bend int

const (
	unknown bend = iota
	smooth
)

// Solid is one thing to draw.
type Solid struct {
	Part   box.Part
	Of     box.Part // the made-up part that it moves with; "" if it is none of its pieces
	Number int      // in the balloon; 0 is none
	Mesh   *solid.Mesh
	Out    solid.Vec // outward normal of its main face; zero if it has none
	Grain  solid.Vec // unit vector along the grain; zero if it does not matter
	Shift  solid.Vec // how far it is moved out of its place
	Key    string    // what the key calls it; "" leaves it out
	Holes  []Hole    // right through it
	// Grooves are lines engraved in its faces.
	Grooves []Groove
}

// face is a planar face of a solid: all its triangles, and its rims on the
// screen.
type face struct {
	owner    int
	round    int32 // facets of one curved wall have the same number above 0
	n        solid.Vec
	d        float64 // n.p = d on the face
	nd       float64 // n.(direction to the viewer)
	area     float64
	tris     [][3]solid.Vec
	rims     []seg
	rimBands *bands
	lo, hi   pt
}

func (f *face) front() bool { return f.nd > 1e-6 }

// height of p above the face's plane.
func (f *face) height(p solid.Vec) float64 { return f.n.Dot(p) - f.d }

// seg is a segment on the screen.
type seg struct{ a, b pt }

// edge is an edge of a solid between two of its faces.
type edge struct {
	a, b   solid.Vec
	owner  int
	fa, fb int32
	bend   bend
}

// scene is everything to draw, in place.
type scene struct {
	ax     axes
	solids []Solid
	faces  []*face
	edges  []edge
	front  []int32 // the faces turned to the viewer
	index  *bands  // of front, over the height of the screen
	seen   seen
	lo, hi pt
}

func newScene(solids []Solid, v View) *scene {
	s := &scene{ax: v.axes(), solids: solids}
	s.lo, s.hi = pt{math.Inf(1), math.Inf(1)}, pt{math.Inf(-1), math.Inf(-1)}
	for i := range solids {
		s.add(i)
	}
	for i, f := range s.faces {
		if f.front() {
			s.front = append(s.front, int32(i))
		}
		s.lo, s.hi = lower(s.lo, f.lo), upper(s.hi, f.hi)
	}
	s.index = newBands(len(s.front), len(s.front)/4+1, func(i int) (float64, float64) {
		f := s.faces[s.front[i]]
		return f.lo.y, f.hi.y
	})
	return s
}

func lower(a, b pt) pt { return pt{math.Min(a.x, b.x), math.Min(a.y, b.y)} }
func upper(a, b pt) pt { return pt{math.Max(a.x, b.x), math.Max(a.y, b.y)} }

// tri is a triangle of a mesh while its faces are being found.
type tri struct {
	v      [3]solid.Vec
	cross  solid.Vec // twice the area along the normal
	height float64   // the least height: slivers have normals that mean nothing
	face   int32
}

// add finds the planar faces and the edges of a solid's mesh.
func (s *scene) add(owner int) {
	m := s.solids[owner].Mesh
	if m == nil || len(m.Triangles) == 0 {
		return
	}
	ts := make([]tri, len(m.Triangles))
	half := make(map[[2]int32]int32, 3*len(ts))
	for i, t := range m.Triangles {
		q := &ts[i]
		for k := range 3 {
			q.v[k] = m.Vertices[t[k]]
			half[[2]int32{t[k], t[(k+1)%3]}] = int32(i)
		}
		q.cross = q.v[1].Sub(q.v[0]).Cross(q.v[2].Sub(q.v[0]))
		longest := 0.0
		for k := range 3 {
			longest = math.Max(longest, q.v[k].Sub(q.v[(k+1)%3]).Len())
		}
		if longest > 0 {
			q.height = q.cross.Len() / longest
		}
		q.face = -1
	}
	// The mesh knows its flat surfaces; in one made by hand they are found as
	// triangles of one plane, from neighbour to neighbour.
	known := len(m.Surface) == len(m.Triangles)
	if known {
		number := map[int32]int32{}
		for i, k := range m.Surface {
			id, ok := number[k]
			if !ok {
				id = int32(len(s.faces))
				number[k] = id
				f := &face{owner: owner}
				if int(k) < len(m.Surfaces) {
					f.round = m.Surfaces[k].Smooth
				}
				s.faces = append(s.faces, f)
			}
			ts[i].face = id
		}
	}
	for i := range ts {
		if ts[i].face >= 0 {
			continue
		}
		id := int32(len(s.faces))
		s.faces = append(s.faces, &face{owner: owner})
		ts[i].face = id
		for stack := []int32{int32(i)}; len(stack) > 0; {
			at := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			t := m.Triangles[at]
			for k := range 3 {
				j, ok := half[[2]int32{t[(k+1)%3], t[k]}]
				if ok && ts[j].face < 0 && coplanar(&ts[at], &ts[j]) {
					ts[j].face = id
					stack = append(stack, j)
				}
			}
		}
	}
	shift := s.solids[owner].Shift
	for i, t := range ts {
		f := s.faces[t.face]
		f.n = f.n.Add(t.cross)
		f.tris = append(f.tris, [3]solid.Vec{t.v[0].Add(shift), t.v[1].Add(shift), t.v[2].Add(shift)})
		tv := m.Triangles[i]
		for k := range 3 {
			j, ok := half[[2]int32{tv[(k+1)%3], tv[k]}]
			if ok && ts[j].face == t.face {
				continue
			}
			a, b := t.v[k], t.v[(k+1)%3]
			f.rims = append(f.rims, seg{s.ax.screen(a.Add(shift)), s.ax.screen(b.Add(shift))})
			if ok && tv[k] < tv[(k+1)%3] {
				e := edge{a: a, b: b, owner: owner, fa: t.face, fb: ts[j].face}
				if k := s.faces[e.fa].round; k > 0 && k == s.faces[e.fb].round {
					e.bend = smooth
				}
				e.a, e.b = a.Add(shift), b.Add(shift)
				s.edges = append(s.edges, e)
			}
		}
	}
	for _, f := range s.faces {
		if f.owner == owner {
			f.finish(s.ax)
		}
	}
	s.bends(owner)
}

// coplanar reports whether two neighbouring triangles lie in one plane. The
// stouter one gives the plane.
func coplanar(a, b *tri) bool {
	if a.height < b.height {
		a, b = b, a
	}
	l := a.cross.Len()
	if l == 0 {
		return true
	}
	for _, p := range b.v {
		if math.Abs(a.cross.Dot(p.Sub(a.v[0]))) > float64(flat*l) {
			return false
		}
	}
	return true
}

func (f *face) finish(ax axes) {
	f.area = f.n.Len() / 2
	f.n = f.n.Unit()
	f.nd = f.n.Dot(ax.d)
	sum, n := 0.0, 0
	for _, t := range f.tris {
		for _, p := range t {
			sum += f.n.Dot(p)
			n++
		}
	}
	f.d = sum / float64(n)
	f.lo, f.hi = pt{math.Inf(1), math.Inf(1)}, pt{math.Inf(-1), math.Inf(-1)}
	for _, r := range f.rims {
		f.lo, f.hi = lower(f.lo, lower(r.a, r.b)), upper(f.hi, upper(r.a, r.b))
	}
	if len(f.rims) > 24 {
		f.rimBands = newBands(len(f.rims), len(f.rims)/4, func(i int) (float64, float64) {
			r := f.rims[i]
			return math.Min(r.a.y, r.b.y), math.Max(r.a.y, r.b.y)
		})
	}
}

// bends decides about the edges of which the mesh says nothing: between facets
// that turn by less than 20 degrees, with another edge beside that is parallel
// and turns alike, the surface is meant to be round. So is it where a curved
// wall runs on into a flat one, as in a slot.
func (s *scene) bends(owner int) {
	first := 0
	for first < len(s.edges) && s.edges[first].owner != owner {
		first++
	}
	type turn struct {
		dir  solid.Vec
		sine float64 // signed: + outward
	}
	turns := map[int32]turn{}
	of := map[int32][]int32{}
	for i := first; i < len(s.edges); i++ {
		e := &s.edges[i]
		na, nb := s.faces[e.fa].n, s.faces[e.fb].n
		if na.Dot(nb) < 0.94 || e.bend != unknown {
			continue
		}
		if s.faces[e.fa].round > 0 || s.faces[e.fb].round > 0 {
			e.bend = smooth
			continue
		}
		dir := e.b.Sub(e.a).Unit()
		turns[int32(i)] = turn{dir, na.Cross(nb).Dot(dir)}
		of[e.fa] = append(of[e.fa], int32(i))
		of[e.fb] = append(of[e.fb], int32(i))
	}
	for i := first; i < len(s.edges); i++ {
		e := &s.edges[i]
		t, ok := turns[int32(i)]
		if !ok {
			continue
		}
		for _, f := range [2]int32{e.fa, e.fb} {
			for _, j := range of[f] {
				q := turns[j]
				r := q.sine / t.sine
				if j != int32(i) && math.Abs(q.dir.Dot(t.dir)) > 1-1e-6 && r > 0.45 && r < 2.2 {
					e.bend = smooth
				}
			}
		}
	}
}
