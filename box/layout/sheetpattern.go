package layout

// sheetPattern is a sheet divided into strips.
type sheetPattern struct {
	sheet  int
	strips []stripCut
	r      *raster
}

type stripCut struct {
	height int64
	segs   []segCut
}

type segCut struct {
	a      int64
	items  []int32
	pieces []int32 // one for each item, once they are dealt
}

// count adds how many of each kind the pattern yields.
func (p *sheetPattern) count(sum []int) {
	for _, s := range p.strips {
		for _, g := range s.segs {
			for _, k := range g.items {
				sum[p.r.items[k].kind]++
			}
		}
	}
}

// deal is the pattern with a piece for each item; take hands out a piece of a
// kind, or -1 if none is left.
func (p *sheetPattern) deal(take func(kind int) int32) *sheetPattern {
	q := *p
	q.strips = nil
	for _, s := range p.strips {
		n := stripCut{height: s.height}
		for _, g := range s.segs {
			h := segCut{a: g.a}
			for _, k := range g.items {
				if piece := take(p.r.items[k].kind); piece >= 0 {
					h.items = append(h.items, k)
					h.pieces = append(h.pieces, piece)
				}
			}
			if len(h.items) > 0 {
				n.segs = append(n.segs, h)
			}
		}
		if len(n.segs) > 0 {
			q.strips = append(q.strips, n)
		}
	}
	return &q
}

// sawn cuts the dealt pattern out of a fresh sheet.
func (p *sheetPattern) sawn(s *slicing) {
	rest := int32(0)
	strip, seg := nodeAlong, nodeAcross
	if !p.r.along {
		strip, seg = seg, strip
	}
	for i := range p.strips {
		var row, col, one int32
		row, rest = s.cutOff(rest, strip, p.strips[i].height)
		for _, g := range p.strips[i].segs {
			col, row = s.cutOff(row, seg, g.a)
			for k, item := range g.items {
				it := &p.r.items[item]
				one, col = s.cutOff(col, strip, it.b)
				one = s.cut(one, seg, it.a)
				n := &s.nodes[one]
				n.kind, n.piece, n.turned = nodePiece, g.pieces[k], it.turned
				s.used += float64(float64(n.w) * float64(n.h))
			}
		}
	}
	s.join()
	s.scan()
}

// cutOff is cut, and the free node that is left, -1 if there is none.
func (s *slicing) cutOff(i int32, kind uint8, size int64) (part, rest int32) {
	part = s.cut(i, kind, size)
	switch {
	case part == i:
		return part, -1
	case s.nodes[i].kind == nodeFree:
		return part, i
	}
	return part, s.nodes[part].next
}

// join makes one of the free children of each divided node.
func (s *slicing) join() {
	for i := range s.nodes {
		if k := s.nodes[i].kind; k != nodeAcross && k != nodeAlong {
			continue
		}
		free := int32(-1)
		for j := s.nodes[i].first; j >= 0; {
			next := s.nodes[j].next
			switch {
			case s.nodes[j].kind != nodeFree:
			case free < 0:
				free = j
			default:
				if s.nodes[i].kind == nodeAcross {
					s.nodes[free].w += s.nodes[j].w
				} else {
					s.nodes[free].h += s.nodes[j].h
				}
				s.unlink(int32(i), j)
			}
			j = next
		}
	}
}
