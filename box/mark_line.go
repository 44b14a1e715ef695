package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// line is a feature brought down to strokes on a part, in the feature frame of
// its face. It is drawn and listed, and is no part of the solid.
type line struct {
	path, source string
	use          Use
	strokes      []outline.Path
	tool         Tool
	width, depth float64
	from         CutSide
	letters      float64 // height of the letters, 0 if it is no text
	open         bool    // it runs out at both ends, over the part's edge
	text         string  // that it writes
	turn         Deg     // of the text
	resize       func(height float64) (line, bool)
}

// band is half the width of a line at the surface.
func (l *line) band() float64 { return l.width / 2 }

// linesOf places strokes as often as Repeat and Mirror say.
func (s *shell) linesOf(path string, strokes []outline.Path, at Anchor, r Repeat, mirror bool, p *part) []outline.Path {
	shifts := r.shifts()
	turned := make([]outline.Path, len(strokes))
	var box outline.Box
	first := true
	for i, t := range strokes {
		turned[i] = t.Transform(outline.Turn(float64(at.Turn)))
	}
	for _, d := range shifts {
		for _, t := range turned {
			b := t.Extents()
			b = outline.Box{Min: outline.Point{X: b.Min.X + d.X, Y: b.Min.Y + d.Y}, Max: outline.Point{X: b.Max.X + d.X, Y: b.Max.Y + d.Y}}
			if first {
				box, first = b, false
			}
			box = box.Join(b)
		}
	}
	m, ok := s.settle(path+".At", at, p, box)
	if !ok {
		return nil
	}
	var out []outline.Path
	for _, d := range shifts {
		for _, t := range strokes {
			out = append(out, t.Transform(m.Then(outline.Shift(d.X, d.Y))))
		}
	}
	if mirror {
		mm := p.mirrored()
		boxes := make([]outline.Box, len(out))
		for i, t := range out {
			boxes[i] = t.Extents()
		}
		grid := newBins(boxes)
		for _, t := range out[:len(out):len(out)] {
			c, twice := t.Transform(mm), false
			grid.near(grow(c.Extents(), 1e-6), func(k int) { twice = twice || equalPath(out[k], c) })
			if !twice {
				out = append(out, c)
			}
		}
	}
	return out
}

// equalPath reports whether two paths are one, run either way.
func equalPath(p, q outline.Path) bool {
	return len(p) == len(q) && near(p.Extents(), q.Extents()) && (samePath(p, q) || samePath(p.Reverse(), q))
}

func near(a, b outline.Box) bool {
	return math.Abs(a.Min.X-b.Min.X) < 1e-6 && math.Abs(a.Min.Y-b.Min.Y) < 1e-6 && math.Abs(a.Max.X-b.Max.X) < 1e-6 && math.Abs(a.Max.Y-b.Max.Y) < 1e-6
}

func samePath(p, q outline.Path) bool {
	for i := range p {
		if math.Abs(p[i].X-q[i].X) > 1e-6 || math.Abs(p[i].Y-q[i].Y) > 1e-6 || i+1 < len(p) && math.Abs(p[i].Bulge-q[i].Bulge) > 1e-6 {
			return false
		}
	}
	return true
}

// depthIn sees that a line is not deeper than its board.
func (s *shell) depthIn(path string, d float64, p *part) bool {
	return s.c.within(path, d, 0.1, p.face.least-0.5, "mm", "depth of a line in "+string(p.face.part))
}

// checkLines sees that every line lies on its part, clear of joints and of
// openings.
func (s *shell) checkLines(p *part) {
	if len(p.engraved) == 0 {
		return
	}
	s.twiceCut(p)
	room := s.lineRoom(p)
	for i := range p.engraved {
		l := &p.engraved[i]
		ps := room.trouble(l)
		if len(ps) == 0 {
			continue
		}
		try := s.smaller(room, l)
		for _, q := range ps {
			q.Try = try
			s.c.add(q)
		}
	}
}

// farFrom is how far a path lies inside a region; minus how far it reaches out
// of it.
func farFrom(r outline.Region, t outline.Path) float64 {
	least := math.Inf(1)
	for _, c := range r {
		if c.IsConvex() && straight(c) && c.Area() > 0 {
			for i, a := range c {
				b := c[(i+1)%len(c)]
				x, y := b.Y-a.Y, a.X-b.X
				l := math.Sqrt(float64(x*x) + float64(y*y))
				x, y = x/l, y/l
				least = math.Min(least, float64(x*a.X)+float64(y*a.Y)-reachOf(t, x, y))
			}
			continue
		}
		least = math.Min(least, t.DistanceTo(c))
		for _, v := range t {
			if c.Contains(v.At(), 1e-6) == outline.Outside {
				least = math.Min(least, -c.Distance(v.At()))
			}
		}
	}
	return least
}

// reachOf is how far a path reaches in a direction of length 1: as a contour
// that runs there and back.
func reachOf(t outline.Path, x, y float64) float64 {
	c := outline.Contour(t[: len(t)-1 : len(t)-1])
	e := t[len(t)-1].At()
	return math.Max(append(c, outline.Vertex{X: e.X, Y: e.Y}).Support(x, y), float64(x*e.X)+float64(y*e.Y))
}

func grow(b outline.Box, d float64) outline.Box {
	return outline.Box{Min: outline.Point{X: b.Min.X - d, Y: b.Min.Y - d}, Max: outline.Point{X: b.Max.X + d, Y: b.Max.Y + d}}
}

// shadow is where a cutter of a joint lies in the plane of its part, and how
// much of the thickness it leaves over itself.
type shadow struct {
	c       *cutter
	outline outline.Contour
	deepest float64 // over the inner plane
}

// shadows are those of the part's joints, seen from outside.
func (p *part) shadows() []shadow {
	fr := p.face.panelFrame(FromOuter)
	var out []shadow
	for i := range p.cutters {
		c := &p.cutters[i]
		if c.edge == nil {
			continue
		}
		x := shadow{c: c, outline: cellShadow(c.cell, fr)[0]}
		for _, g := range c.cell.Faces {
			for _, q := range g.Loop {
				x.deepest = math.Max(x.deepest, p.face.in.At(q))
			}
		}
		out = append(out, x)
	}
	return out
}

// into is how far a stroke, half its width included, comes into an outline.
func (l *line) into(t outline.Path, c outline.Contour) float64 {
	d := -t.DistanceTo(c)
	for _, v := range t {
		if c.Contains(v.At(), 0) == outline.Inside {
			d = math.Max(d, c.Distance(v.At()))
		}
	}
	return l.band() + d
}

// lineOp is a line as an operation.
func (p *part) lineOp(l *line, side CutSide) Op {
	op := Op{Kind: OpEngrave, Use: l.use, Side: SideMachined, To: MM(l.depth), Source: l.source,
		Width: MM(l.width), Tool: l.tool, Removed: removed(l.strokes, l.tool, l.width, l.depth)}
	if l.from != side {
		op.Side, op.From, op.To = SideFar, MM(p.face.t-l.depth), MM(p.face.t)
	}
	if l.open { // without the round ends
		op.Removed = 0
		for _, t := range l.strokes {
			op.Removed += float64(float64(t.Length()*l.width) * l.depth)
		}
	}
	for _, t := range l.strokes {
		if side == FromInner {
			t = t.Transform(outline.MirrorX())
		}
		op.Strokes = append(op.Strokes, t)
	}
	return op
}

// letterHeight is what can be read from the ground, in mm.
const letterHeight = 25

// lineFindings are what should be known of lines.
func (p *part) lineFindings(add func(Finding)) {
	for i := range p.engraved {
		l := &p.engraved[i]
		if l.letters == 0 || l.letters >= letterHeight || l.from != FromOuter {
			continue
		}
		v := l.strokes[0][0]
		add(Finding{Code: "small-letters", Severity: Advice, Part: p.face.part, Where: place(p.face.frame.Out(solid.Vec{X: v.X, Y: v.Y, Z: p.face.t})), Got: l.letters, Lo: letterHeight, Unit: "mm",
			Why: fmt.Sprintf("letters %s high on %s cannot be read from the ground", num(l.letters), p.face.part), Sources: []string{"common practice"}})
	}
}
