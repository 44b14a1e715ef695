package box

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box/outline"
)

// PartMarks engraves on the hidden, inner face of parts what the bench must
// know: the box, the part, the word INSIDE and an arrow that points up (on floors
// and roofs: to the back, or up the slope). The place is the lowest free one on
// the face of the cavity; where there is none the letters shrink to 3. Marked
// parts are equal no more to others, since their names differ.
type PartMarks struct {
	On     []Part // nil means walls, floor, roof, partitions and shelves
	Box    string // "" means the design's name
	Height MM     // of capitals, 3 to 100; 0 means 6
	Tool   Tool   // zero: a sharp V-cutter of 60 degrees; lines are a tenth of the height wide
}

func (PartMarks) feature() {}

func (f PartMarks) on(*shell) []onPart { return onParts(".On", f.On) }

func (f PartMarks) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	h := float64(f.Height)
	if h == 0 {
		h = 6
	}
	name, field := f.Box, path+".Box"
	if name == "" {
		name = s.d.Name
	} else {
		s.c.name(field, name)
	}
	_, _, unknown := lettering(name, 6)
	s.unknownLetters(field, unknown)
	if s.c.within(path+".Height", h, 3, 100, "mm", "height of part marks; 0 is 6") {
		s.c.groove(path, f.Tool, 0, 0, h/10)
	}
	if len(s.c.ps) > n || len(by) == 0 {
		return
	}
	var parts []*part
	for _, on := range f.On {
		if p := by[on]; p != nil {
			parts = append(parts, p)
		}
	}
	if f.On == nil {
		for i := range s.faces {
			if p := by[s.faces[i].part]; p != nil {
				parts = append(parts, p)
			}
		}
		s.eachMaker(FromInner, func(_ string, x maker) {
			switch x.(type) {
			case Partition, Baffles, Lobby, Shelf:
			default: // too small, or loose
				return
			}
			for _, n := range x.names(s.d) {
				if p := by[InnerPart(n.name)]; p != nil {
					parts = append(parts, p)
				}
			}
		})
	}
	for _, p := range parts {
		f.mark(s, path, p, name, h)
	}
}

// mark finds a place on the inner face and writes there.
func (f PartMarks) mark(s *shell, path string, p *part, name string, h float64) {
	part := strings.NewReplacer("_", "-").Replace(string(p.face.part))
	if _, _, unknown := lettering(part, 6); s.unknownLetters(path+".On", unknown) {
		return
	}
	grid := newBins(p.boxes())
	shadows := p.shadows()
	face := p.cavityFace()
	top, bottom, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	for k := 0; ; k++ {
		t, w, d, ok := s.c.groove(path, f.Tool, 0, 0, h/10)
		if !ok || !s.depthIn(path+".Height", d, p) {
			return
		}
		block, bw, bh := markBlock(name, part, h)
		fits := func(at outline.Point) bool {
			e := grow(outline.Box{Min: outline.Point{X: at.X - bw/2, Y: at.Y - bh/2}, Max: outline.Point{X: at.X + bw/2, Y: at.Y + bh/2}}, 2+w)
			r := outline.Rectangle(e.Min.X, e.Min.Y, e.Max.X, e.Max.Y)
			if inside(face, r) < 0 {
				return false
			}
			for _, o := range []outline.Region{top, bottom} {
				if len(o) > 0 && inside(o[0], r) < 0 {
					return false
				}
			}
			free := true
			grid.near(e, func(k int) {
				g := &p.feats[k]
				free = free && g.depth > 0 && g.from == FromOuter && g.depth+d < p.face.least
			})
			for _, x := range shadows {
				free = free && apart(x.outline.Extents(), e, 0)
			}
			for i := range p.engraved {
				if p.engraved[i].from == FromOuter && p.engraved[i].depth+d < p.face.least {
					continue
				}
				for _, t := range p.engraved[i].strokes {
					free = free && apart(t.Extents(), e, p.engraved[i].band())
				}
			}
			return free
		}
		if at, ok := firstPlace(face.Extents(), bw, bh, fits); ok {
			l := line{path: path, source: "part mark", use: UseMark, tool: t, width: w, depth: d, from: FromInner}
			for _, t := range turnedOver(block) {
				l.strokes = append(l.strokes, t.Transform(outline.Shift(at.X, at.Y)))
			}
			p.engraved = append(p.engraved, l)
			return
		}
		if h <= 3 {
			s.c.add(Problem{Path: path + ".On", Code: "no-room", Got: string(p.face.part), Why: fmt.Sprintf("no place on the inner face of %s takes a mark of %s x %s", p.face.part, num(round1(bw)), num(round1(bh)))})
			return
		}
		h = math.Max(3, h*0.8)
	}
}

// firstPlace looks from below, and from the middle outwards.
func firstPlace(e outline.Box, w, h float64, fits func(outline.Point) bool) (outline.Point, bool) {
	const steps = 24
	c := e.Centre()
	for j := 0; j <= steps; j++ {
		y := e.Min.Y + h/2 + 6 + float64((e.Height()-h-12)*float64(j)/steps)
		for i := 0; i <= steps; i++ {
			k := float64((i + 1) / 2)
			if i%2 != 0 {
				k = -k
			}
			x := c.X + float64((e.Width()-w)*k/steps)
			if at := (outline.Point{X: x, Y: y}); fits(at) {
				return at, true
			}
		}
	}
	return outline.Point{}, false
}

// markBlock is the mark around its middle, as it reads on the inner face.
func markBlock(name, part string, h float64) (strokes []outline.Path, width, height float64) {
	lines := []string{name, part, "inside ↑"}
	step := 1.6 * h
	for i, text := range lines {
		ps, w, _ := lettering(text, h)
		width = math.Max(width, w)
		for _, p := range ps {
			strokes = append(strokes, p.Transform(outline.Shift(0, float64((1-float64(i))*step))))
		}
	}
	return strokes, width, float64(2*step) + h
}
