package layout

import "math"

// The kinds of nodes of a slicing tree.
const (
	nodeNone uint8 = iota
	nodeFree
	nodePiece
	nodeAcross // divided at some x: crosscuts
	nodeAlong  // divided at some y: rips
)

// node is a rectangle of a slicing tree; sizes in ticks, each with one kerf.
// The children of a divided node may change places, so at most one is free.
type node struct {
	w, h                int64
	parent, first, next int32
	piece               int32
	level               int16 // divided nodes above
	kind                uint8
	turned              bool
}

// room is a free node, laid out flat for the scan.
type room struct {
	w, h int64
	val  float64
	at   int32
}

// slicing is the tree of one piece of stock; it has several roots if defects
// cut the stock into several clear rectangles.
type slicing struct {
	nodes      []node
	rooms      []room
	idle       []int32 // nodes to use again
	roots      int32
	kind       int32
	used       float64 // area of the pieces
	maxW, maxH int64
	open       bool
}

// worth is what a free rectangle is worth: area to the power 1.25, so that one
// large rectangle beats two small ones. Square roots are exact everywhere.
func worth(w, h int64) float64 {
	if w <= 0 || h <= 0 {
		return 0
	}
	a := float64(float64(w) * float64(h))
	return float64(a * math.Sqrt(math.Sqrt(a)))
}

func (s *slicing) reset(kind int32, roots [][2]int64) {
	s.nodes = s.nodes[:0]
	s.idle = s.idle[:0]
	s.kind = kind
	s.roots = int32(len(roots))
	s.used = 0
	s.open = true
	for _, r := range roots {
		s.nodes = append(s.nodes, node{w: r[0], h: r[1], parent: -1, first: -1, next: -1, kind: nodeFree})
	}
	s.scan()
}

// scan lists the free nodes anew.
func (s *slicing) scan() {
	s.rooms = s.rooms[:0]
	s.maxW, s.maxH = 0, 0
	for i := range s.nodes {
		n := &s.nodes[i]
		if n.kind == nodeFree {
			s.rooms = append(s.rooms, room{n.w, n.h, worth(n.w, n.h), int32(i)})
			s.maxW = max(s.maxW, n.w)
			s.maxH = max(s.maxH, n.h)
		}
	}
}

func (s *slicing) copyFrom(o *slicing) {
	nodes, rooms, idle := s.nodes, s.rooms, s.idle
	*s = *o
	s.nodes = append(nodes[:0], o.nodes...)
	s.rooms = append(rooms[:0], o.rooms...)
	s.idle = append(idle[:0], o.idle...)
}

func (s *slicing) add(n node) int32 {
	if k := len(s.idle); k > 0 {
		i := s.idle[k-1]
		s.idle = s.idle[:k-1]
		s.nodes[i] = n
		return i
	}
	s.nodes = append(s.nodes, n)
	return int32(len(s.nodes) - 1)
}

// cut divides node i, free, so that a child of size w across or h along comes
// first, and returns that child; the rest stays free.
func (s *slicing) cut(i int32, kind uint8, size int64) int32 {
	n := s.nodes[i]
	full := n.w
	if kind == nodeAlong {
		full = n.h
	}
	if size == full {
		return i
	}
	part, rest := n, n
	part.first, rest.first = -1, -1
	if kind == nodeAcross {
		part.w, rest.w = size, n.w-size
	} else {
		part.h, rest.h = size, n.h-size
	}
	if n.parent >= 0 && s.nodes[n.parent].kind == kind {
		// a further child of the parent; i keeps the rest
		part.next = s.nodes[n.parent].first
		p := s.add(part)
		s.nodes[n.parent].first = p
		s.nodes[i].w, s.nodes[i].h = rest.w, rest.h
		return p
	}
	part.parent, rest.parent = i, i
	part.level, rest.level = n.level+1, n.level+1
	rest.next = -1
	r := s.add(rest)
	part.next = r
	p := s.add(part)
	s.nodes[i].kind, s.nodes[i].first = kind, p
	return p
}

// insert puts a piece into the free node i, the first cut across or along.
func (s *slicing) insert(i int32, piece int32, w, h int64, turned, across bool) {
	if across {
		i = s.cut(i, nodeAcross, w)
		i = s.cut(i, nodeAlong, h)
	} else {
		i = s.cut(i, nodeAlong, h)
		i = s.cut(i, nodeAcross, w)
	}
	n := &s.nodes[i]
	n.kind, n.piece, n.turned = nodePiece, piece, turned
	s.used += float64(float64(w) * float64(h))
	s.scan()
}

// drop frees the subtree at i, appends its pieces to out, and joins the free
// rectangle with a free neighbour, upwards as far as that goes.
func (s *slicing) drop(i int32, out []int32) []int32 {
	out = s.clear(i, out)
	for {
		n := &s.nodes[i]
		n.kind, n.first = nodeFree, -1
		p := n.parent
		if p < 0 {
			break
		}
		other := int32(-1)
		for j := s.nodes[p].first; j >= 0; j = s.nodes[j].next {
			if j != i && s.nodes[j].kind == nodeFree {
				other = j
			}
		}
		if other >= 0 {
			o := &s.nodes[other]
			if s.nodes[p].kind == nodeAcross {
				n.w += o.w
			} else {
				n.h += o.h
			}
			s.unlink(p, other)
		}
		if s.nodes[s.nodes[p].first].next >= 0 {
			break
		}
		// the only child is free: so is the parent
		s.unlink(p, i)
		i = p
	}
	return out
}

func (s *slicing) unlink(p, i int32) {
	if s.nodes[p].first == i {
		s.nodes[p].first = s.nodes[i].next
	} else {
		j := s.nodes[p].first
		for s.nodes[j].next != i {
			j = s.nodes[j].next
		}
		s.nodes[j].next = s.nodes[i].next
	}
	s.nodes[i].kind = nodeNone
	s.idle = append(s.idle, i)
}

// clear gives up everything below i.
func (s *slicing) clear(i int32, out []int32) []int32 {
	n := s.nodes[i]
	if n.kind == nodePiece {
		s.used -= float64(float64(n.w) * float64(n.h))
		return append(out, n.piece)
	}
	if n.kind == nodeFree {
		return out
	}
	for j := n.first; j >= 0; {
		next := s.nodes[j].next
		out = s.clear(j, out)
		s.nodes[j].kind = nodeNone
		s.idle = append(s.idle, j)
		j = next
	}
	return out
}

// pieces appends all pieces of the tree.
func (s *slicing) pieces(out []int32) []int32 {
	for i := range s.nodes {
		if s.nodes[i].kind == nodePiece {
			out = append(out, s.nodes[i].piece)
		}
	}
	return out
}
