package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// Batten is a board behind the back, upright or level, by which the box is hung
// and kept off a wet trunk.
type Batten struct {
	Name   string
	On     Part  // "" means the back; on a polygon it must be said
	Right  MM    // of its middle from the middle of the wall's lower edge, seen from outside
	Above  MM    // from the cavity floor up to its lower edge, along the wall; not used where Height is 0
	Width  MM    // level; 0 means as wide as the wall
	Height MM    // upright; 0 means as high as the wall
	Past   MM    // runs on past the wall at both of its ends
	Hole   Shape // at both ends, to hang it by; nil is none
	Inset  MM    // from the ends to the middle of the holes; 0 means 25
	Screws int   // through the wall into the batten, 0 to 20, drilled and listed; clear of the joints of a made-up wall where there is room
	Board  Board // zero means the design's
	By     Hanger
}

func (Batten) outer() {}

func (f Batten) names(*Design) []made { return made1(f.Name) }

func (s *shell) backOr(p Part) Part {
	if p == "" {
		return Back
	}
	return p
}

func (f Batten) on(s *shell) []onPart { return []onPart{{".On", s.backOr(f.On)}} }

func (f Batten) check(_ *Design, c *collector, path string) {
	c.offset(path+".Right", f.Right, "place of the batten, from the middle of the wall")
	c.offset(path+".Above", f.Above, "height of the batten's lower edge over the cavity floor")
	if f.Width != 0 {
		c.length(path+".Width", f.Width, "width of a batten; 0 is that of the wall")
	}
	if f.Height != 0 {
		c.length(path+".Height", f.Height, "height of a batten; 0 is that of the wall")
	}
	c.atLeast0(path+".Past", f.Past, "how far a batten runs on past the wall")
	if f.Hole != nil {
		shapeOutline(c, path+".Hole", f.Hole)
		f.By.check(c, path+".By", narrowest(f.Hole))
	} else if f.By != (Hanger{}) {
		c.addf(path+".By", "contradiction", "there is no hole to hang it by")
	}
	if f.Inset != 0 {
		c.length(path+".Inset", f.Inset, "distance of a hole from the batten's end; 0 is 25")
	}
	c.within(path+".Screws", float64(f.Screws), 0, 20, "", "screws through the wall into the batten")
	c.board(path+".Board", f.Board, false)
}

// wallBox is the rectangle around the outer face of a part, in its feature frame.
func (p *part) wallBox() outline.Box {
	top, _, shadow := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	if len(top) == 0 {
		top = shadow
	}
	return top[0].Extents()
}

// battenBox is the rectangle of a batten on a wall.
func battenBox(wall outline.Box, right, above, width, height, past float64) (b outline.Box, upright bool) {
	b = wall
	upright = height == 0 || width != 0 && height >= width
	if width != 0 {
		b.Min.X, b.Max.X = right-width/2, right+width/2
	} else {
		b.Min.X, b.Max.X = b.Min.X+right, b.Max.X+right
	}
	if height != 0 {
		b.Min.Y, b.Max.Y = above, above+height
	}
	if upright {
		b.Min.Y, b.Max.Y = b.Min.Y-past, b.Max.Y+past
	} else {
		b.Min.X, b.Max.X = b.Min.X-past, b.Max.X+past
	}
	return b, upright
}

func (f Batten) build(s *shell, m *making) {
	host := m.host(s.backOr(f.On))
	if host == nil {
		return
	}
	in, fr := host.face.onFace(FromOuter, 0)
	p := s.slab(m, f.Name, f.Board, in, fr)
	b, upright := battenBox(host.wallBox(), float64(f.Right), float64(f.Above), float64(f.Width), float64(f.Height), float64(f.Past))
	p.rect(b)
	if !s.finishSlab(p) {
		return
	}
	m.put(p)
	if f.Hole != nil {
		o, _ := shapeOutline(s.c, m.path+".Hole", f.Hole)
		inset := float64(f.Inset)
		if inset == 0 {
			inset = 25
		}
		c := b.Centre()
		at := [2]outline.Point{{X: c.X, Y: b.Min.Y + inset}, {X: c.X, Y: b.Max.Y - inset}}
		if !upright {
			at = [2]outline.Point{{X: b.Min.X + inset, Y: c.Y}, {X: b.Max.X - inset, Y: c.Y}}
		}
		for _, q := range at {
			p.hole(m.path, "hanging hole", UseOpening, fr, o.Transform(outline.Shift(q.X, q.Y)))
		}
		s.hang(2, f.By, size(o), "screw or nail to hang the box by", []Part{p.face.part}, "through the batten into the tree or wall", "; of aluminium in a living tree")
	}
	s.fixBatten(m, host, p, b, upright, f.Screws)
}

// fixBatten drills the wall for screws into a batten behind it.
func (s *shell) fixBatten(m *making, host, p *part, b outline.Box, upright bool, n int) {
	if n == 0 {
		s.lieOn(m.path, host, p, joints.Hold{Kind: "glue"})
		return
	}
	s.lieOn(m.path, host, p, joints.Hold{Kind: "screw", Note: "through " + string(host.face.part)})
	s.screws(n, host.face.t, p.face.least, []Part{host.face.part, p.face.part}, "through the wall into the batten")
	// On the face of the cavity if there is room, else wherever the wall is.
	const drill, inset = 4.5, 15.0
	lo, hi := meetBoxes(b, host.cavityFace().Extents())
	if long := hi.Y - lo.Y; !upright && hi.X-lo.X < 40 || upright && long < 40 || hi.X-lo.X < drill || hi.Y-lo.Y < drill {
		lo, hi = meetBoxes(b, host.wallBox())
	}
	room := hi.X - lo.X
	if upright {
		room = hi.Y - lo.Y
	}
	if !s.c.within(m.path+".Screws", float64(n), 0, math.Floor((room-2*inset)/20)+1, "", "screws that the batten has room for on the wall, 20 apart") {
		return
	}
	around := outline.Box{Min: outline.Point{X: lo.X + 8, Y: lo.Y + 8}, Max: outline.Point{X: hi.X - 8, Y: hi.Y - 8}}
	var taken []outline.Point
	for k := range n {
		q := outline.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
		x := 0.0
		if n > 1 {
			x = float64((room - 2*inset) * (float64(k)/float64(n-1) - 0.5))
		}
		if upright {
			q.Y += x
		} else {
			q.X += x
		}
		q = s.clearOfStrips(host, q, drill, around, taken)
		taken = append(taken, q)
		host.feats = append(host.feats, feat{path: m.path, source: "screw hole", use: UseScrew, outline: settled(outline.Circle(q, drill))})
	}
}

func meetBoxes(a, b outline.Box) (lo, hi outline.Point) {
	return outline.Point{X: math.Max(a.Min.X, b.Min.X), Y: math.Max(a.Min.Y, b.Min.Y)},
		outline.Point{X: math.Min(a.Max.X, b.Max.X), Y: math.Min(a.Max.Y, b.Max.Y)}
}

// SplitBatten is two bevelled strips behind the back: the upper, "NAME box", on the
// box, the lower, "NAME wall", on the wall or post. The bevel draws the box
// against the wall, and it lifts off.
type SplitBatten struct {
	Name          string
	On            Part  // "" means the back; on a polygon it must be said
	Right         MM    // of the middle, seen from outside
	Above         MM    // from the cavity floor up to the lower strip's lower edge, along the wall
	Width, Height MM    // of both together; Width 0 means as wide as the wall
	Bevel         Deg   // from square, 15 to 60; 0 means 45
	Screws        int   // through the wall into the upper strip, 0 to 20, drilled and listed
	Hole          Shape // through the lower strip, at both ends; nil is none
	Board         Board // zero means the design's
	By            Hanger
}

func (SplitBatten) outer() {}

func (f SplitBatten) names(*Design) []made {
	return []made{{".Name", f.Name + " box"}, {".Name", f.Name + " wall"}}
}

func (f SplitBatten) on(s *shell) []onPart { return []onPart{{".On", s.backOr(f.On)}} }

func (f SplitBatten) check(_ *Design, c *collector, path string) {
	if f.Name == "" {
		c.name(path+".Name", f.Name)
	}
	c.offset(path+".Right", f.Right, "place of the battens, from the middle of the wall")
	c.offset(path+".Above", f.Above, "height of the lower batten's lower edge over the cavity floor")
	if f.Width != 0 {
		c.length(path+".Width", f.Width, "width of a split batten; 0 is that of the wall")
	}
	c.length(path+".Height", f.Height, "height of a split batten, both strips together")
	if f.Bevel != 0 {
		c.within(path+".Bevel", float64(f.Bevel), 15, maxBevel, "deg", "bevel of a split batten; 0 is 45")
	}
	if f.Hole != nil {
		shapeOutline(c, path+".Hole", f.Hole)
		f.By.check(c, path+".By", narrowest(f.Hole))
	} else if f.By != (Hanger{}) {
		c.addf(path+".By", "contradiction", "there is no hole to hang it by")
	}
	c.within(path+".Screws", float64(f.Screws), 0, 20, "", "screws through the wall into the batten")
	c.board(path+".Board", f.Board, false)
}

func (f SplitBatten) build(s *shell, m *making) {
	host := m.host(s.backOr(f.On))
	if host == nil {
		return
	}
	in, fr := host.face.onFace(FromOuter, 0)
	b, _ := battenBox(host.wallBox(), float64(f.Right), float64(f.Above), float64(f.Width), float64(f.Height), 0)
	bevel := float64(f.Bevel)
	if bevel == 0 {
		bevel = 45
	}
	sn, cs := sincos(bevel)
	n := fr.V.Scale(cs).Add(fr.W.Scale(sn)) // up and away from the box
	t := s.thick(m.part(f.Name+" box"), f.Board)
	if most := float64(f.Height) / 2 / (sn / cs) * 2; !s.c.within(m.path+".Board.Thickness", t, minThickness, most-minLength, "mm", "thickness of a split batten: its bevel needs height") {
		return
	}
	mid := fr.Out(solid.Vec{X: b.Centre().X, Y: b.Centre().Y, Z: t / 2})
	split := solid.NewPlane(n, n.Dot(mid))
	half := func(word string, h solid.Plane) *part {
		p := s.slab(m, f.Name+" "+word, f.Board, in, fr)
		p.rect(b)
		p.add(h, fromOutline)
		if !s.finishSlab(p) {
			return nil
		}
		return m.put(p)
	}
	box, wall := half("box", split.Flip()), half("wall", split)
	if box == nil || wall == nil {
		return
	}
	top := b
	top.Min.Y = b.Centre().Y + t/2*sn/cs
	s.fixBatten(m, host, box, top, false, f.Screws)
	s.abut(m.path, wall, box) // dry: it lifts off
	if f.Hole != nil {
		o, _ := shapeOutline(s.c, m.path+".Hole", f.Hole)
		y := (b.Min.Y + b.Centre().Y - t/2*sn/cs) / 2
		for _, x := range []float64{b.Min.X + 25, b.Max.X - 25} {
			wall.hole(m.path, "screw hole", UseScrew, fr, o.Transform(outline.Shift(x, y)))
		}
		s.hang(2, f.By, size(o), "screw", []Part{wall.face.part}, "the lower batten to the wall or post", "")
	}
}

// Strap is a band around the trunk through slots in the back: no nail in the
// tree. It is listed with its length, pi times the trunk's diameter and Spare; it
// has no part.
type Strap struct {
	On      Part // "" means the back; on a polygon it must be said
	Trunk   MM   // diameter of the trunk or pole
	Width   MM   // of the strap; the slots are 3 wider and 6 high
	Heights []MM // of the slots' middles over the cavity floor, along the wall: a strap each
	Apart   MM   // between the middles of the two slots of a strap; 0 means two thirds of the wall's width
	Spare   MM   // to fasten and for the tree to grow
}

func (Strap) outer() {}

func (f Strap) names(*Design) []made { return nil }

func (f Strap) on(s *shell) []onPart { return []onPart{{".On", s.backOr(f.On)}} }

func (f Strap) check(_ *Design, c *collector, path string) {
	c.within(path+".Trunk", float64(f.Trunk), 10, 3000, "mm", "diameter of a trunk")
	c.within(path+".Width", float64(f.Width), 5, 100, "mm", "width of a strap")
	c.within(path+".Heights", float64(len(f.Heights)), 1, 20, "", "straps")
	for i, h := range f.Heights {
		c.offset(fmt.Sprintf("%s.Heights[%d]", path, i), h, "height of a strap over the cavity floor")
	}
	c.atLeast0(path+".Apart", f.Apart, "distance of a strap's slots; 0 is two thirds of the wall")
	c.atLeast0(path+".Spare", f.Spare, "spare length of a strap")
}

func (f Strap) build(s *shell, m *making) {
	host := m.host(s.backOr(f.On))
	if host == nil {
		return
	}
	b := host.wallBox()
	apart := float64(f.Apart)
	if apart == 0 {
		apart = b.Width() * 2 / 3
	}
	for _, h := range f.Heights {
		for _, x := range []float64{-apart / 2, apart / 2} {
			o := outline.Slot(outline.Point{X: b.Centre().X + x, Y: float64(h)}, 6, float64(f.Width)+3)
			host.feats = append(host.feats, feat{path: m.path, source: "strap slot", use: UseOpening, outline: settled(o)})
		}
	}
	l := math.Ceil(float64(math.Pi*float64(f.Trunk)) + float64(f.Spare))
	s.fit(Fitting{What: "strap", Count: len(f.Heights), Size: fmt.Sprintf("%s x %s", num(float64(f.Width)), num(l)), Length: MM(l), Width: f.Width,
		Where: []Part{host.face.part}, Why: "around the trunk; loosen it as the tree grows"})
}
