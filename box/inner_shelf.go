package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// Gaps are the distances between an inner part and the walls, in mm, square to
// each wall. Zero reaches the wall. On a polygon Front belongs to wall/1 and All
// to the others; All also fills the sides that are left 0 on a rectangle.
type Gaps struct{ Front, Back, Left, Right, All MM }

// Shelf is a level board inside the cavity. It is let into every wall that it
// reaches; where Gaps keep it off a wall, it ends there: a shelf between two walls
// has gaps on the others, a ledge along the back has one in front.
type Shelf struct {
	Name  string
	Above MM           // from the cavity floor up to the shelf's underside
	Gaps  Gaps         // to the walls that it does not reach
	Joint joints.Joint // with the walls that it reaches; nil means joints.Housing{}; a dry one has room to swell across the grain
	Board Board        // zero means the design's
}

func (Shelf) inner() {}

func (f Shelf) names(*Design) []made { return made1(f.Name) }

func (f Shelf) on(*shell) []onPart { return nil }

func (f Shelf) check(d *Design, c *collector, path string) {
	c.atLeast0(path+".Above", f.Above, "height of the shelf's underside over the cavity floor")
	f.Gaps.check(d, c, path+".Gaps")
	c.board(path+".Board", f.Board, false)
	c.finite(path+".Joint", f.Joint)
}

func (g Gaps) check(d *Design, c *collector, path string) {
	for _, x := range []struct {
		field string
		x     MM
		rect  bool
	}{{"Front", g.Front, false}, {"Back", g.Back, true}, {"Left", g.Left, true}, {"Right", g.Right, true}, {"All", g.All, false}} {
		c.atLeast0(path+"."+x.field, x.x, "distance from a wall")
		if x.rect && x.x != 0 && d.Footprint != nil {
			c.addf(path+"."+x.field, "footprint", "a polygon has no %s: use Front for wall/1 and All for the others", x.field)
		}
	}
}

// to is the gap to wall i.
func (g Gaps) to(s *shell, i int) float64 {
	x := g.All
	own := MM(0)
	switch {
	case i == 0:
		own = g.Front
	case s.rect():
		own = [4]MM{g.Front, g.Right, g.Back, g.Left}[i]
	}
	if own != 0 {
		x = own
	}
	return float64(x)
}

func (f Shelf) build(s *shell, m *making) {
	if p := s.shelf(m, f.Name, f.Board, float64(f.Above), f.Gaps); p != nil && s.letInto(p, m, f.Joint, s.reached(f.Gaps), s.kept(f.Gaps)) {
		s.levelGrain(p)
		m.put(p)
	}
}

// shelf begins a level board in the cavity; its near face, the lower one, is
// where its joints are reckoned from.
func (s *shell) shelf(m *making, name string, b Board, above float64, g Gaps) *part {
	p := s.slab(m, name, b, solid.NewPlane(solid.Vec{Z: 1}, above), solid.Frame{})
	f := p.face
	cell := s.cav.Clip(f.in.Flip(), -20).Clip(f.in.Shift(f.t), -21)
	_, top := s.cav.Reach(solid.Vec{Z: 1})
	if !s.c.within(m.path+".Above", above, 0, top-f.t, "mm", "height of a shelf's underside: the shelf stands inside the cavity") {
		return nil
	}
	if cell.Empty() || s.loopOn(cell, f.in.Shift(f.t), -21, true) == nil {
		s.c.addf(m.path+".Above", "outside", "%s stands outside the cavity", f.part)
		return nil
	}
	for i := range s.faces[:s.walls] {
		if x := g.to(s, i); x > 0 {
			cell = cell.Clip(s.faces[i].in.Shift(-x), -22-i)
		}
	}
	f.loop = s.loopOn(cell, f.in, -20, true)
	if f.loop == nil || cell.Volume() < 1 {
		s.c.addf(m.path+".Gaps", "no-part", "the gaps leave nothing of %s", f.part)
		return nil
	}
	for i := s.floor + 1; i < len(s.faces); i++ {
		r := &s.faces[i]
		if r.open {
			continue
		}
		if lost, ok := cell.FaceOf(i); ok && lost.Area() > 1e-6 {
			s.c.add(Problem{Path: m.path + ".Above", Code: "outside", Got: num(above), Lo: 0, Hi: s.height - f.t, Unit: "mm", Why: fmt.Sprintf("%s runs into %s: a shelf lies below the eaves", f.part, r.part)})
			return nil
		}
	}
	f.frame = featureFrame(f)
	return p
}

// reached says which walls a part with such gaps is let into.
func (s *shell) reached(g Gaps) func(int) bool {
	return func(i int) bool { return i < s.walls && g.to(s, i) == 0 }
}

// kept says how far such a part is kept off a wall.
func (s *shell) kept(g Gaps) func(int) float64 {
	return func(i int) float64 {
		if i < s.walls {
			return g.to(s, i)
		}
		return 0
	}
}

// levelGrain lets the grain of a level board, if nothing is said, run along its
// longer side.
func (s *shell) levelGrain(p *part) {
	f := p.face
	if f.grain != GrainAuto {
		return
	}
	e := outline.Polygon(flat(f.loop, f.frame)...).Extents()
	f.grain = GrainUp
	if e.Width() > e.Height()-1e-9 {
		f.grain = GrainAcross
	}
}

// FalseFloor is a loose floor over the floor, on two bearers: what drips through
// stays below it, and the whole lifts out. With a rim it is a tray. It needs a
// rectangle. Its parts are NAME, "NAME bearer 1" on the left, "NAME bearer 2" on
// the right, and "NAME rim 1" to "NAME rim 4", anticlockwise seen from above,
// beginning in front.
type FalseFloor struct {
	Name string
	Room MM // from the cavity floor up to the loose floor's underside
	// Play is the gap to each wall, so that it lifts out when it has swollen. 0 means
	// 2, or half of what solid wood swells across the grain, as in FloorBetween,
	// where that is more: from a floor 267 wide across its grain.
	Play  MM
	Rim   MM    // height of the tray's rim over the floor's upper side; 0 is none
	Board Board // zero means the design's
	Hole  MM    // diameter of the drains near its corners; 0 means 8
}

func (FalseFloor) inner() {}

func (f FalseFloor) names(*Design) []made {
	ns := []made{{".Name", f.Name}, {".Name", f.Name + " bearer 1"}, {".Name", f.Name + " bearer 2"}}
	for i := 1; f.Rim != 0 && i <= 4; i++ {
		ns = append(ns, made{".Name", fmt.Sprintf("%s rim %d", f.Name, i)})
	}
	return ns
}

func (f FalseFloor) on(*shell) []onPart { return []onPart{{"", Floor}} }

func (f FalseFloor) check(d *Design, c *collector, path string) {
	c.length(path+".Room", f.Room, "room under a loose floor")
	if f.Play != 0 {
		c.within(path+".Play", float64(f.Play), 0.1, 100, "mm", "play of a loose floor; 0 is 2")
	}
	if f.Rim != 0 {
		c.length(path+".Rim", f.Rim, "height of a tray's rim; 0 is none")
	}
	if f.Hole != 0 {
		c.length(path+".Hole", f.Hole, "diameter of drains; 0 is 8")
	}
	c.board(path+".Board", f.Board, false)
	c.rectangle(d, path, "a loose floor needs a rectangle")
}

func (f FalseFloor) build(s *shell, m *making) {
	n := len(s.c.ps)
	play, dia := float64(f.Play), float64(f.Hole)
	if play == 0 { // the same on all sides
		l := s.slab(m, f.Name, f.Board, solid.Plane{}, solid.Frame{U: solid.Vec{X: 1}, V: solid.Vec{Y: 1}, W: solid.Vec{Z: 1}}).face
		swell := math.Max(s.innerSwelling(l, solid.Vec{X: 1}), s.innerSwelling(l, solid.Vec{Y: 1}))
		play = math.Max(2, math.Ceil(swell*5)/10)
	}
	if dia == 0 {
		dia = 8
	}
	t := s.thick(m.part(f.Name), f.Board)
	floor := s.shelf(m, f.Name, f.Board, float64(f.Room), Gaps{All: MM(play)})
	if floor == nil || !s.letInto(floor, m, joints.Butt{}, func(int) bool { return false }, s.kept(Gaps{All: MM(play)})) {
		return
	}
	s.levelGrain(floor)
	loop := floor.cavityFace()
	if k := float64(dia*1.5) + t; float64(2*k) > math.Min(loop.Extents().Width(), loop.Extents().Height()) {
		s.c.within(m.path+".Hole", dia, minLength, math.Max(minLength, (math.Min(loop.Extents().Width(), loop.Extents().Height())/2-t)/1.5), "mm", "diameter of drains: there is no room for them beside the bearers")
		return
	}
	for i := range loop {
		k := len(loop)
		at := insetCorner(loop[(i+k-1)%k].At(), loop[i].At(), loop[(i+1)%k].At(), t+dia)
		floor.feats = append(floor.feats, feat{path: m.path, source: "drain", use: UseDrain, outline: settled(outline.Circle(at, dia))})
	}
	// Bearers and rim stand just inside the loose floor's edges.
	up := func(name string, wall int, inset, ends, lo, hi float64) *part {
		w := &s.faces[wall]
		fr := w.frame
		p := s.slab(m, name, f.Board, w.in.Shift(-inset-t), fr)
		p.face.frame.O = fr.O.Sub(fr.W.Scale(inset + t))
		p.add(solid.NewPlane(solid.Vec{Z: -1}, -lo), fromOutline)
		p.add(solid.NewPlane(solid.Vec{Z: 1}, hi), fromOutline)
		for _, j := range []int{(wall + 1) % 4, (wall + 3) % 4} {
			p.add(s.faces[j].in.Shift(-ends), fromOutline)
		}
		if !s.finishSlab(p) {
			return nil
		}
		return m.put(p)
	}
	m.put(floor)
	host := m.host(Floor)
	for i, wall := range []int{3, 1} {
		p := up(fmt.Sprintf("%s bearer %d", f.Name, i+1), wall, play, play, 0, float64(f.Room))
		if p == nil || host == nil || len(s.c.ps) > n {
			return
		}
		s.lieOn(m.path, floor, p, joints.Hold{Kind: "screw", Note: "through the loose floor into the bearer"})
	}
	s.screws(4, t, float64(f.Room), []Part{floor.face.part}, "the loose floor to its bearers")
	if f.Rim == 0 {
		return
	}
	top := float64(f.Room) + t
	for i := range 4 {
		ends := play
		if i%2 != 0 {
			ends += t
		}
		p := up(fmt.Sprintf("%s rim %d", f.Name, i+1), i, play, ends, top, top+float64(f.Rim))
		if p == nil {
			return
		}
		s.lieOn(m.path, floor, p, joints.Hold{Kind: "glue"})
	}
}
