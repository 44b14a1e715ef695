package box

import (
	"fmt"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// entranceOf is the outline of the n-th entrance, from 0, in the feature frame of
// its wall.
func (s *shell) entranceOf(m *making, on Part, n int) (*part, outline.Contour, bool) {
	host := m.host(on)
	if host == nil {
		return nil, nil, false // the name is a problem already
	}
	by := map[Part]*part{on: host}
	var found []outline.Contour
	for i, f := range s.d.Features {
		path := fmt.Sprintf("Features[%d]", i)
		switch f := f.(type) {
		case Entrance:
			s.entrance(path+".Entrance", f, by, func(p Part, g feat) {
				found = append(found, g.outline)
			})
		case Cut:
			if f.On == on && f.Use == UseEntrance {
				for _, g := range s.plainCut(path+".Cut", f, host) {
					found = append(found, g.outline)
				}
			}
		}
	}
	if len(found) == 0 {
		s.c.addf(m.path+".On", "no-entrance", "%s has no entrance", on)
		return nil, nil, false
	}
	if !s.c.within(m.path+".Entrance", float64(n), 0, float64(len(found)-1), "", fmt.Sprintf("%s has %s, counted from 0", on, entrances(len(found)))) {
		return nil, nil, false
	}
	return host, settled(found[n]), true
}

func entrances(n int) string {
	if n == 1 {
		return "1 entrance"
	}
	return fmt.Sprintf("%d entrances", n)
}

// EntrancePlate lies on a wall over an entrance, with a hole of its own on the
// same axis: to make a hole smaller, to renew it when it has been pecked wide, or,
// of a thick board, to keep paws out. Among the Outer elements it lies outside,
// among the Inner ones inside.
type EntrancePlate struct {
	Name     string
	On       Part  // "" means the front (wall/1 on a polygon)
	Entrance int   // which of the wall's entrances, from 0
	Hole     Shape // nil is the entrance's own
	Width    MM
	Height   MM
	Board    Board // zero means the design's
	Screws   int   // 0, 2 (in the middle of the sides) or 4 (in the corners), 10 from the edges
}

func (EntrancePlate) inner() {}
func (EntrancePlate) outer() {}

func (f EntrancePlate) names(*Design) []made { return made1(f.Name) }

func (f EntrancePlate) on(s *shell) []onPart { return []onPart{{".On", s.frontOr(f.On)}} }

func (f EntrancePlate) check(_ *Design, c *collector, path string) {
	c.within(path+".Entrance", float64(f.Entrance), 0, 1000, "", "which entrance of the wall, from 0")
	c.length(path+".Width", f.Width, "width of a plate")
	c.length(path+".Height", f.Height, "height of a plate")
	if f.Hole != nil {
		shapeOutline(c, path+".Hole", f.Hole)
	}
	c.board(path+".Board", f.Board, false)
	if f.Screws != 0 && f.Screws != 2 && f.Screws != 4 {
		c.add(Problem{Path: path + ".Screws", Code: "unknown-value", Got: fmt.Sprint(f.Screws), Lo: 0, Hi: 4, Why: "a plate has no screws, 2 or 4"})
	}
}

func (f EntrancePlate) build(s *shell, m *making) {
	host, o, ok := s.entranceOf(m, s.frontOr(f.On), f.Entrance)
	if !ok {
		return
	}
	c := o.Extents().Centre()
	if f.Hole != nil {
		hole, _ := shapeOutline(s.c, m.path+".Hole", f.Hole)
		e := hole.Extents().Centre()
		o = hole.Transform(outline.Shift(c.X-e.X, c.Y-e.Y))
	}
	w, h := float64(f.Width)/2, float64(f.Height)/2
	rect := outline.Rectangle(c.X-w, c.Y-h, c.X+w, c.Y+h)
	if d := inside(rect, o); d < thinWeb {
		s.c.add(Problem{Path: m.path + ".Width", Code: "range", Got: num(float64(f.Width)), Lo: o.Extents().Width() + 2*thinWeb, Hi: maxLength, Unit: "mm",
			Why: "the hole leaves no wood beside itself: a wider or higher plate"})
		return
	}
	in, fr := host.face.onFace(m.side, s.thick(m.part(f.Name), f.Board))
	p := s.slab(m, f.Name, f.Board, in, fr)
	p.rect(rect.Extents())
	if !s.finishSlab(p) {
		return
	}
	p.hole(m.path, "entrance", UseEntrance, fr, o)
	const inset, drill = 10, 4.5
	var at []outline.Point
	switch f.Screws {
	case 2:
		at = []outline.Point{{X: c.X - w + inset, Y: c.Y}, {X: c.X + w - inset, Y: c.Y}}
	case 4:
		at = []outline.Point{{X: c.X - w + inset, Y: c.Y - h + inset}, {X: c.X + w - inset, Y: c.Y - h + inset},
			{X: c.X + w - inset, Y: c.Y + h - inset}, {X: c.X - w + inset, Y: c.Y + h - inset}}
	}
	for _, q := range at {
		p.hole(m.path, "screw hole", UseScrew, fr, outline.Circle(q, drill))
	}
	m.put(p)
	if len(at) > 0 {
		s.screws(len(at), p.face.t, host.face.least, []Part{p.face.part, host.face.part}, "the plate to the wall")
		s.lieOn(m.path, host, p, joints.Hold{Kind: "screw", Note: "through " + string(p.face.part)})
		return
	}
	s.lieOn(m.path, host, p, joints.Hold{Kind: "glue"})
}

// Tunnel is four boards around an entrance, square to its wall: outside against
// rain and paws, or inside, as a marten's arm is only so long. Its clear section
// lies around the entrance's middle; top and bottom lap over the sides. Its parts
// are "NAME top", "NAME bottom", "NAME left" and "NAME right", seen from outside.
// A drilled block is an EntrancePlate of a thick board.
type Tunnel struct {
	Name          string
	On            Part  // "" means the front (wall/1 on a polygon)
	Entrance      int   // which of the wall's entrances, from 0
	Width, Height MM    // clear; 0 means those of the entrance
	Long          MM    // from the wall
	Open          bool  // no bottom: it stands on the ground, or on the floor
	Board         Board // zero means the design's
}

func (Tunnel) inner() {}
func (Tunnel) outer() {}

func (f Tunnel) names(*Design) []made {
	ns := []made{{".Name", f.Name + " top"}, {".Name", f.Name + " left"}, {".Name", f.Name + " right"}}
	if !f.Open {
		ns = append(ns, made{".Name", f.Name + " bottom"})
	}
	return ns
}

func (f Tunnel) on(s *shell) []onPart { return []onPart{{".On", s.frontOr(f.On)}} }

func (f Tunnel) check(_ *Design, c *collector, path string) {
	if f.Name == "" {
		c.name(path+".Name", f.Name)
	}
	c.within(path+".Entrance", float64(f.Entrance), 0, 1000, "", "which entrance of the wall, from 0")
	if f.Width != 0 {
		c.length(path+".Width", f.Width, "clear width of a tunnel; 0 is that of the entrance")
	}
	if f.Height != 0 {
		c.length(path+".Height", f.Height, "clear height of a tunnel; 0 is that of the entrance")
	}
	c.length(path+".Long", f.Long, "length of a tunnel")
	c.board(path+".Board", f.Board, false)
}

func (f Tunnel) build(s *shell, m *making) {
	host, o, ok := s.entranceOf(m, s.frontOr(f.On), f.Entrance)
	if !ok {
		return
	}
	b := o.Extents()
	c := b.Centre()
	w, h := b.Width()/2, b.Height()/2
	if f.Width != 0 {
		w = float64(f.Width) / 2
	}
	if f.Height != 0 {
		h = float64(f.Height) / 2
	}
	if w < b.Width()/2-1e-9 || h < b.Height()/2-1e-9 {
		s.c.add(Problem{Path: m.path + ".Width", Code: "range", Got: num(2*w) + " x " + num(2*h), Why: fmt.Sprintf("the tunnel is narrower than the entrance, which is %s x %s", num(round1(b.Width())), num(round1(b.Height())))})
		return
	}
	face, fr := host.face.onFace(m.side, 0) // where the tunnel begins, w away from the cavity
	out := 1.0
	if m.side == FromInner {
		out = -1
	}
	u, v, n := fr.U, fr.V, fr.W
	long := float64(f.Long)
	board := func(word string, frame solid.Frame, at float64, near, far solid.Plane) {
		p := s.slab(m, f.Name+" "+word, f.Board, solid.NewPlane(frame.W, at+frame.W.Dot(fr.O)), frame)
		frame.O = fr.O.Add(frame.W.Scale(at))
		p.face.frame = frame
		start := face
		if out > 0 {
			start = face.Flip()
		}
		p.add(start, host.at)
		end := face.Shift(out * long)
		if out < 0 {
			end = end.Flip()
		}
		p.add(end, fromOutline)
		p.add(near, fromOutline)
		p.add(far, fromOutline)
		if s.finishSlab(p) {
			m.put(p)
			if m.side == FromInner {
				s.abut(m.path, host, p, joints.Hold{Kind: "screw", Note: "through " + string(host.face.part) + " into the end of " + string(p.face.part)})
				return
			}
			s.abut(m.path, host, p, joints.Hold{Kind: "glue"}, joints.Hold{Kind: "screw", Note: "from inside through " + string(host.face.part) + " into the end of " + string(p.face.part)})
			s.screws(2, host.face.t, long, []Part{host.face.part, p.face.part}, "from inside the wall into the end of the tunnel's board")
		}
	}
	limit := func(dir solid.Vec, at float64) solid.Plane { return solid.NewPlane(dir, at+dir.Dot(fr.O)) }
	t := s.thick(m.part(f.Name+" left"), f.Board)
	t2 := s.thick(m.part(f.Name+" right"), f.Board)
	minusN, minusU, minusV := n.Scale(-1), u.Scale(-1), v.Scale(-1)
	board("top", solid.Frame{U: u, V: minusN, W: v}, c.Y+h, limit(minusU, -(c.X-w-t)), limit(u, c.X+w+t2))
	if !f.Open {
		board("bottom", solid.Frame{U: u, V: n, W: minusV}, -(c.Y - h), limit(minusU, -(c.X-w-t)), limit(u, c.X+w+t2))
	}
	board("left", solid.Frame{U: n, V: v, W: minusU}, -(c.X - w), limit(minusV, -(c.Y-h)), limit(v, c.Y+h))
	board("right", solid.Frame{U: minusN, V: v, W: u}, c.X+w, limit(minusV, -(c.Y-h)), limit(v, c.Y+h))
}

// LandingBoard stands out from a wall below an entrance, or lies flat on it as a
// landing for bats.
type LandingBoard struct {
	Name     string
	On       Part // "" means the front (wall/1 on a polygon)
	Entrance int  // which of the wall's entrances, from 0
	Below    MM   // from the entrance's lowest point down to the board's upper side, along the wall
	Width    MM
	Deep     MM   // how far it stands out; of a flat one, its height
	Flat     bool // flat on the wall
	Slope    Deg  // of one that stands out, its outer edge the lower: 0 to 45
	// Grooves across its landing side, this far apart, 3 wide and 2 deep; 0 is none.
	Grooves MM
	Board   Board // zero means the design's
}

func (LandingBoard) outer() {}

func (f LandingBoard) names(*Design) []made { return made1(f.Name) }

func (f LandingBoard) on(s *shell) []onPart { return []onPart{{".On", s.frontOr(f.On)}} }

func (f LandingBoard) check(_ *Design, c *collector, path string) {
	c.within(path+".Entrance", float64(f.Entrance), 0, 1000, "", "which entrance of the wall, from 0")
	c.atLeast0(path+".Below", f.Below, "distance of the landing board below the entrance")
	c.length(path+".Width", f.Width, "width of a landing board")
	c.length(path+".Deep", f.Deep, "how far a landing board stands out")
	c.within(path+".Slope", float64(f.Slope), 0, 45, "deg", "slope of a landing board")
	if f.Flat && f.Slope != 0 {
		c.addf(path+".Slope", "contradiction", "a board that lies flat on the wall has the wall's slope")
	}
	if f.Grooves != 0 {
		c.within(path+".Grooves", float64(f.Grooves), 5, maxLength, "mm", "distance of grooves; 0 is none")
	}
	c.board(path+".Board", f.Board, false)
}

func (f LandingBoard) build(s *shell, m *making) {
	host, o, ok := s.entranceOf(m, s.frontOr(f.On), f.Entrance)
	if !ok {
		return
	}
	e := o.Extents()
	in, fr := host.face.onFace(FromOuter, 0)
	mid, top := e.Centre().X, e.Min.Y-float64(f.Below)
	half := float64(f.Width) / 2
	var p *part
	if f.Flat {
		p = s.slab(m, f.Name, f.Board, in, fr)
		p.rect(outline.Box{Min: outline.Point{X: mid - half, Y: top - float64(f.Deep)}, Max: outline.Point{X: mid + half, Y: top}})
	} else {
		// w up, v towards the wall.
		sn, cs := sincos(float64(f.Slope))
		nh := solid.Vec{X: host.face.nh[0], Y: host.face.nh[1]}
		up := solid.Vec{X: nh.X * sn, Y: nh.Y * sn, Z: cs}
		at := fr.Out(solid.Vec{X: mid, Y: top})
		t := s.thick(m.part(f.Name), f.Board)
		frame := solid.Frame{O: at.Sub(up.Scale(t)), U: fr.U, V: up.Cross(fr.U), W: up}
		p = s.slab(m, f.Name, f.Board, solid.NewPlane(up, up.Dot(at)-t), frame)
		p.add(in.Flip(), host.at)
		away := frame.V.Scale(-1)
		p.add(solid.NewPlane(away, away.Dot(at)+float64(f.Deep)), fromOutline)
		p.add(solid.NewPlane(fr.U, fr.U.Dot(at)+half), fromOutline)
		p.add(solid.NewPlane(fr.U.Scale(-1), -fr.U.Dot(at)+half), fromOutline)
	}
	if !s.finishSlab(p) {
		return
	}
	m.put(p)
	s.grooves(m.path+".Grooves", p, float64(f.Grooves))
	where := []Part{p.face.part, host.face.part}
	if f.Flat {
		s.screws(4, p.face.t, host.face.least, where, "the landing board to the wall")
		s.lieOn(m.path, host, p, joints.Hold{Kind: "screw", Note: "through " + string(p.face.part)})
		return
	}
	s.screws(2, host.face.t, float64(f.Deep), where, "from inside the wall into the edge of the landing board")
	s.abut(m.path, host, p, joints.Hold{Kind: "glue"}, joints.Hold{Kind: "screw", Note: "from inside through " + string(host.face.part) + " into its edge"})
}

// grooves engraves level lines over the outer face of a part.
func (s *shell) grooves(path string, p *part, step float64) {
	if step == 0 {
		return
	}
	const width, depth, ends = 3.0, 2.0, 5.0
	if !s.depthIn(path, depth, p) {
		return
	}
	top, _, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	if len(top) == 0 {
		return
	}
	e := top[0].Extents()
	l := line{path: path, source: "grip groove", use: UseGrip, tool: Tool{Diameter: width}, width: width, depth: depth, from: FromOuter}
	for v := e.Max.Y - step; v > e.Min.Y+ends; v -= step {
		lo, hi := spanAt(top[0], v)
		if hi-lo > 2*(ends+width) {
			l.strokes = append(l.strokes, outline.Line(outline.Point{X: lo + ends + width/2, Y: v}, outline.Point{X: hi - ends - width/2, Y: v}))
		}
	}
	if len(l.strokes) == 0 {
		s.c.addf(path, "no-room", "there is no room for grooves on %s", p.face.part)
		return
	}
	p.engraved = append(p.engraved, l)
}
