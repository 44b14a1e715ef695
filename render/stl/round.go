package stl

import (
	"errors"
	"math"

	"holt.example/box/solid"
)

// limit is the largest coordinate in mm: single-precision numbers get coarse,
// and designs end at ten metres.
const limit = 1e5

var (
	errOpen   = errors.New("the mesh is not closed")
	errRange  = errors.New("a corner is not a number within 100 m")
	errIndex  = errors.New("a triangle has a corner that is not there")
	errNoArea = errors.New("a triangle without area cannot be mended")
)

// written is a coordinate as the file holds it: in text the nearest with four
// decimals, in binary the single-precision number nearest to it after six,
// beyond which there is nothing but the noise of turning parts into place.
func written(x float64, single bool) float64 {
	if single {
		return float64(float32(math.Round(x*1e6)/1e6)) + 0
	}
	return math.Round(x*1e4)/1e4 + 0
}

// round puts a mesh on the numbers that a file can hold and keeps it closed
// and without triangles that have no area or have been turned over. Its volume
// changes by at most half a step of those numbers times its surface.
func round(m *solid.Mesh, single bool) ([]facet, error) {
	t, err := weld(m, single)
	if err != nil {
		return nil, err
	}
	if !t.closed() {
		return nil, errOpen
	}
	if err := t.unflatten(); err != nil {
		return nil, err
	}
	facets := make([]facet, 0, len(t.tri))
	for _, k := range t.tri {
		a, b, c := t.at[k.v[0]], t.at[k.v[1]], t.at[k.v[2]]
		facets = append(facets, facet{b.Sub(a).Cross(c.Sub(a)).Unit(), a, b, c})
	}
	return facets, nil
}

// triangle is one of a surface, with the direction in which it faced before
// its corners were rounded; a zero one did not face anywhere.
type triangle struct {
	v     [3]int32
	faced solid.Vec
	gone  bool
}

// surface is a triangle mesh on rounded corners.
type surface struct {
	at  []solid.Vec
	tri []triangle
}

// weld rounds the corners, joins those that become one and drops the triangles
// that thereby lose a side: where an edge vanishes, both its triangles do. Two
// triangles that come to lie back to back drop out together.
func weld(m *solid.Mesh, single bool) (*surface, error) {
	t := &surface{}
	first := make(map[solid.Vec]int32, len(m.Vertices))
	to := make([]int32, len(m.Vertices))
	for i, v := range m.Vertices {
		if !(math.Abs(v.X) <= limit && math.Abs(v.Y) <= limit && math.Abs(v.Z) <= limit) {
			return nil, errRange
		}
		w := solid.Vec{X: written(v.X, single), Y: written(v.Y, single), Z: written(v.Z, single)}
		k, ok := first[w]
		if !ok {
			k = int32(len(t.at))
			first[w] = k
			t.at = append(t.at, w)
		}
		to[i] = k
	}
	lost := len(t.at) < len(m.Vertices)
	t.tri = make([]triangle, 0, len(m.Triangles))
	for _, k := range m.Triangles {
		var n triangle
		for i, j := range k {
			if j < 0 || int(j) >= len(to) {
				return nil, errIndex
			}
			n.v[i] = to[j]
		}
		if n.v[0] == n.v[1] || n.v[1] == n.v[2] || n.v[2] == n.v[0] {
			continue
		}
		a, b, c := m.Vertices[k[0]], m.Vertices[k[1]], m.Vertices[k[2]]
		n.faced = b.Sub(a).Cross(c.Sub(a)).Unit()
		t.tri = append(t.tri, n)
	}
	if lost {
		t.cancel()
	}
	return t, nil
}

// cancel drops pairs of triangles that lie back to back.
func (t *surface) cancel() {
	at := map[[3]int32][]int{}
	gone := make([]bool, len(t.tri))
	for i, k := range t.tri {
		back := lowFirst([3]int32{k.v[0], k.v[2], k.v[1]})
		if l := at[back]; len(l) > 0 {
			gone[i], gone[l[len(l)-1]] = true, true
			at[back] = l[:len(l)-1]
			continue
		}
		own := lowFirst(k.v)
		at[own] = append(at[own], i)
	}
	kept := t.tri[:0]
	for i, k := range t.tri {
		if !gone[i] {
			kept = append(kept, k)
		}
	}
	t.tri = kept
}

// lowFirst turns k until its lowest corner is first.
func lowFirst(k [3]int32) [3]int32 {
	switch min(k[0], k[1], k[2]) {
	case k[1]:
		return [3]int32{k[1], k[2], k[0]}
	case k[2]:
		return [3]int32{k[2], k[0], k[1]}
	}
	return k
}

// closed reports whether every edge is used as often in one direction as in
// the other. Corners that rounding brought together are one corner here, so
// where surfaces touch that may be more than once.
func (t *surface) closed() bool {
	n := make(map[[2]int32]int, 3*len(t.tri)/2)
	for _, k := range t.tri {
		for i := range k.v {
			a, b := k.v[i], k.v[(i+1)%3]
			if a < b {
				n[[2]int32{a, b}]++
			} else {
				n[[2]int32{b, a}]--
			}
		}
	}
	for _, k := range n {
		if k != 0 {
			return false
		}
	}
	return true
}

// area is twice the area of a triangle as a vector, and the square of its
// longest side.
func (t *surface) area(k triangle) (solid.Vec, float64) {
	a, b, c := t.at[k.v[0]], t.at[k.v[1]], t.at[k.v[2]]
	p, q, r := b.Sub(a), c.Sub(a), c.Sub(b)
	return p.Cross(q), math.Max(p.Dot(p), math.Max(q.Dot(q), r.Dot(r)))
}

// nothing is the height of a triangle, as a part of its longest side, that
// cannot be told from zero: the rounding of the products is 2e-16 of the
// square of that side, and this leaves room for four thousand times as much.
const nothing = 1e-12

// fallen reports whether rounding left a triangle without area, or turned it
// over.
func (t *surface) fallen(k triangle) bool {
	n, l := t.area(k)
	if k.faced == (solid.Vec{}) {
		return n.Len() <= nothing*l
	}
	return n.Dot(k.faced) <= nothing*l
}
