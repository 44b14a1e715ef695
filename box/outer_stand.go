package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// Feet are two runners, or four blocks, under a box that stands on the ground. It
// needs a rectangle. Walls that run on below the floor keep them inside. They are
// named NAME/1 ... in the order left, right, front ones first.
type Feet struct {
	Name   string
	Run    PartitionRun // of runners; of blocks, the way of their Length
	Width  MM
	Length MM    // of blocks; 0 makes two runners as long as the box
	Inset  MM    // from the box's outer faces
	Board  Board // its thickness is the feet's height; zero means the design's
}

func (Feet) outer() {}

func (f Feet) names(*Design) []made {
	n := 2
	if f.Length != 0 {
		n = 4
	}
	var ns []made
	for i := 1; i <= n; i++ {
		ns = append(ns, made{".Name", fmt.Sprintf("%s/%d", f.Name, i)})
	}
	return ns
}

func (f Feet) on(*shell) []onPart { return nil }

func (f Feet) check(d *Design, c *collector, path string) {
	c.enum(path+".Run", int(f.Run), int(RunLeftToRight), "box.RunFrontToBack")
	c.length(path+".Width", f.Width, "width of a foot")
	if f.Length != 0 {
		c.length(path+".Length", f.Length, "length of a foot; 0 makes runners")
	}
	c.atLeast0(path+".Inset", f.Inset, "distance of the feet from the outer faces")
	c.board(path+".Board", f.Board, false)
	c.rectangle(d, path, "feet need a rectangle")
}

// footing is the plane under the box, the frame in it (w down) and the rectangle
// that the box covers of it.
func (s *shell) footing(m *making) (solid.Plane, solid.Frame, outline.Box) {
	z := s.lower
	floor := m.host(Floor)
	if _, under := s.d.Floor.(FloorUnder); under {
		z = -s.faces[s.floor].t
	}
	b := outline.Box{Min: outline.Point{X: math.Inf(1), Y: math.Inf(1)}, Max: outline.Point{X: math.Inf(-1), Y: math.Inf(-1)}}
	fr := solid.Frame{O: solid.Vec{Z: z}, U: solid.Vec{X: -1}, V: solid.Vec{Y: 1}, W: solid.Vec{Z: -1}}
	grow := func(x, y float64) {
		b = b.Join(outline.Box{Min: outline.Point{X: -x, Y: y}, Max: outline.Point{X: -x, Y: y}})
	}
	if floor != nil && z < s.lower {
		lo, hi := floor.convex.Bounds()
		grow(lo.X, lo.Y)
		grow(hi.X, hi.Y)
	} else {
		for _, c := range s.outerCorners(s.lower) {
			grow(c[0], c[1])
		}
	}
	return solid.NewPlane(fr.W, -z), fr, b
}

// stands is the part of the shell that a foot stands under with most of its face.
func (m *making) stands(p *part) *part {
	var host *part
	most := 1e-6
	const skin = 0.01
	for _, q := range m.parts {
		if q.at < 0 {
			continue
		}
		c := q.convex
		c = c.Clip(p.face.in, -40).Clip(p.face.in.Shift(-skin).Flip(), -41)
		for k, h := range p.base {
			if p.from[k] == fromOutline {
				c = c.Clip(h, -42-k)
			}
		}
		if v := c.Volume(); v > most {
			most, host = v, q
		}
	}
	return host
}

func (f Feet) build(s *shell, m *making) {
	in, fr, b := s.footing(m)
	inset, w, l := float64(f.Inset), float64(f.Width), float64(f.Length)
	// x and y as seen from above, left and front first; u of the frame is -x.
	lo := outline.Point{X: -b.Max.X + inset, Y: b.Min.Y + inset}
	hi := outline.Point{X: -b.Min.X - inset, Y: b.Max.Y - inset}
	for i := range s.faces[:s.walls] {
		g := &s.faces[i]
		if g.below == 0 {
			continue
		}
		d := g.wallLine(fr.O.Z - s.thick(m.part(f.Name+"/1"), f.Board))
		d = math.Min(d, g.wallLine(fr.O.Z))
		switch g.part {
		case Front:
			lo.Y = math.Max(lo.Y, -d)
		case Back:
			hi.Y = math.Min(hi.Y, d)
		case Left:
			lo.X = math.Max(lo.X, -d)
		case Right:
			hi.X = math.Min(hi.X, d)
		}
	}
	across, along := hi.X-lo.X, hi.Y-lo.Y
	if f.Run == RunLeftToRight {
		across, along = along, across
	}
	if l == 0 {
		l = along
	}
	if !s.c.within(m.path+".Width", w, minLength, across/2, "mm", "width of a foot: two stand side by side") ||
		f.Length != 0 && !s.c.within(m.path+".Length", l, minLength, along/2, "mm", "length of a foot: two stand one behind the other") {
		return
	}
	dx, dy := w, l
	if f.Run == RunLeftToRight {
		dx, dy = l, w
	}
	var at []outline.Point
	switch {
	case f.Length != 0:
		at = []outline.Point{lo, {X: hi.X - dx, Y: lo.Y}, {X: lo.X, Y: hi.Y - dy}, {X: hi.X - dx, Y: hi.Y - dy}}
	case f.Run == RunLeftToRight:
		at = []outline.Point{lo, {X: lo.X, Y: hi.Y - dy}}
	default:
		at = []outline.Point{lo, {X: hi.X - dx, Y: lo.Y}}
	}
	for i, q := range at {
		p := s.slab(m, fmt.Sprintf("%s/%d", f.Name, i+1), f.Board, in, fr)
		p.rect(outline.Box{Min: outline.Point{X: -q.X - dx, Y: q.Y}, Max: outline.Point{X: -q.X, Y: q.Y + dy}})
		if !s.finishSlab(p) {
			return
		}
		m.put(p)
		if host := m.stands(p); host != nil {
			s.lieOn(m.path, host, p, joints.Hold{Kind: "screw", Note: "through " + string(p.face.part)})
			into := 40.0 // into the edges of walls
			if host.face.kind == floorFace {
				into = host.face.least
			}
			s.screws(2, p.face.t, into, []Part{p.face.part, host.face.part}, "the foot to the box")
		}
	}
}

// wallLine is how far a wall's inner plane lies out at a height.
func (f *face) wallLine(z float64) float64 { return f.d + float64(z*tan(f.lean)) }

// PoleSocket is a block under the floor with a hole for a pole or a spigot, made
// of as many layers as it takes. Its parts are NAME/1 ... downwards.
type PoleSocket struct {
	Name        string
	Hole        Shape // round or square, usually; in the middle of the block
	Width, Deep MM    // of the block, side to side and front to back
	Layers      int   // 0 means 1; at most 20
	Floor       bool  // the hole goes through the floor too
	Board       Board // of the layers; zero means the design's
}

func (PoleSocket) outer() {}

func (f PoleSocket) names(*Design) []made {
	var ns []made
	for i := 1; i <= max(1, min(f.Layers, 20)); i++ {
		ns = append(ns, made{".Name", fmt.Sprintf("%s/%d", f.Name, i)})
	}
	return ns
}

func (f PoleSocket) on(*shell) []onPart { return []onPart{{"", Floor}} }

func (f PoleSocket) check(_ *Design, c *collector, path string) {
	shapeOutline(c, path+".Hole", f.Hole)
	c.length(path+".Width", f.Width, "width of a pole socket")
	c.length(path+".Deep", f.Deep, "depth of a pole socket, front to back")
	c.within(path+".Layers", float64(f.Layers), 0, 20, "", "layers of a pole socket; 0 is 1")
	c.board(path+".Board", f.Board, false)
}

func (f PoleSocket) build(s *shell, m *making) {
	host := m.host(Floor)
	if host == nil {
		return
	}
	o, ok := shapeOutline(s.c, m.path+".Hole", f.Hole)
	if !ok {
		return
	}
	c := host.cavityFace().Centroid()
	o = settled(o.Transform(outline.Shift(c.X, c.Y)))
	w, d := float64(f.Width)/2, float64(f.Deep)/2
	rect := outline.Box{Min: outline.Point{X: c.X - w, Y: c.Y - d}, Max: outline.Point{X: c.X + w, Y: c.Y + d}}
	if inside(outline.Rectangle(rect.Min.X, rect.Min.Y, rect.Max.X, rect.Max.Y), o) < thinWeb {
		s.c.add(Problem{Path: m.path + ".Width", Code: "range", Got: num(float64(f.Width)), Lo: o.Extents().Width() + 2*thinWeb, Hi: maxLength, Unit: "mm",
			Why: "the hole leaves no wood beside itself: a wider or deeper block"})
		return
	}
	if f.Floor {
		host.feats = append(host.feats, feat{path: m.path, source: "pole socket", use: UseOpening, outline: o})
	}
	above, in := host, host.face.in.Shift(host.face.t)
	fr := host.face.frame
	fr.O = fr.O.Add(fr.W.Scale(host.face.t))
	for i := range max(1, f.Layers) {
		p := s.slab(m, fmt.Sprintf("%s/%d", f.Name, i+1), f.Board, in, fr)
		p.rect(rect)
		if !s.finishSlab(p) {
			return
		}
		p.hole(m.path, "pole socket", UseOpening, fr, o)
		m.put(p)
		hold := []joints.Hold{{Kind: "glue"}}
		if i == 0 {
			hold = append(hold, joints.Hold{Kind: "screw", Note: "through the floor"})
			s.screws(4, host.face.t, p.face.least, []Part{host.face.part, p.face.part}, "through the floor into the socket")
		}
		s.lieOn(m.path, above, p, hold...)
		above, in = p, p.face.in.Shift(p.face.t)
		fr.O = fr.O.Add(fr.W.Scale(p.face.t))
	}
}
