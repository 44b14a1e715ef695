package box

import (
	"fmt"

	"holt.example/box/outline"
	"holt.example/joints"
)

// Baffles are partitions in a row with narrow crevices between them, as bats want
// them: 15 to 25 wide (common practice). They are housed into the two walls they
// meet and named NAME/1, NAME/2 ... from the front or the left.
type Baffles struct {
	Name  string
	Run   PartitionRun // RunLeftToRight makes crevices one behind another
	Count int          // 1 to 50; there is a crevice more
	// Crevice is the clear width of the crevices, counted from the front (or the
	// left); what is left over widens the last one. 0 makes all equally wide.
	Crevice MM
	Above   MM           // from the floor up to the lower edges
	Room    MM           // from the upper edges up to the lowest inner eaves, so that they can climb over; 0 is none: they go up to the roof
	Joint   joints.Joint // with the walls; nil means joints.Housing{}; a dry one has room to swell across the grain
	Board   Board        // zero means the design's
}

func (Baffles) inner() {}

func (f Baffles) names(*Design) []made {
	var ns []made
	for i := 1; i <= min(f.Count, 50); i++ {
		ns = append(ns, made{".Name", fmt.Sprintf("%s/%d", f.Name, i)})
	}
	return ns
}

func (f Baffles) on(*shell) []onPart { return nil }

func (f Baffles) check(d *Design, c *collector, path string) {
	c.enum(path+".Run", int(f.Run), int(RunLeftToRight), "box.RunLeftToRight")
	c.within(path+".Count", float64(f.Count), 1, 50, "", "baffles in a row")
	if f.Crevice != 0 {
		c.length(path+".Crevice", f.Crevice, "clear width of a crevice; 0 makes all equal")
	}
	c.atLeast0(path+".Above", f.Above, "height of the baffles' lower edges over the floor")
	c.atLeast0(path+".Room", f.Room, "room over the baffles")
	c.board(path+".Board", f.Board, false)
	c.rectangle(d, path, "baffles stand between opposite walls of a rectangle")
	c.finite(path+".Joint", f.Joint)
}

func (f Baffles) build(s *shell, m *making) {
	long := s.extent(1, 0)
	if f.Run == RunLeftToRight {
		long = s.extent(0, 1)
	}
	total := 0.0
	ts := make([]float64, f.Count)
	for i := range ts {
		ts[i] = s.thick(InnerPart(fmt.Sprintf("%s/%d", f.Name, i+1)), f.Board)
		total += ts[i]
	}
	gap := (long - total) / float64(f.Count+1)
	if f.Crevice != 0 {
		gap = float64(f.Crevice)
	}
	if most := (long - total - minLength) / float64(f.Count); !(gap >= minLength && gap <= most) {
		s.c.add(Problem{Path: m.path + ".Crevice", Code: "no-room", Got: num(gap), Lo: minLength, Hi: most, Unit: "mm",
			Why: fmt.Sprintf("%d baffles and their crevices do not fit into %s", f.Count, num(round1(long)))})
		return
	}
	height := MM(0)
	if f.Room > 0 {
		height = MM(s.height) - f.Room
		if !s.c.within(m.path+".Room", float64(f.Room), 0, s.height-float64(f.Above)-minLength, "mm", "room over the baffles") {
			return
		}
	}
	at := -long / 2
	for i, t := range ts {
		at += gap + t/2
		p := Partition{Name: fmt.Sprintf("%s/%d", f.Name, i+1), Across: f.Run, At: MM(at), Above: f.Above, Height: height, Joint: f.Joint, Board: f.Board}
		n := len(s.c.ps)
		if s.partition(m, p) == nil {
			s.renamed(n, m.path, map[string]string{".At": ".Crevice", ".Height": ".Room"})
			return
		}
		at += t / 2
	}
}

// Lobby is a partition behind the wall with the entrance, with a second opening
// in it: out of line with the first it keeps rain, light and paws out.
type Lobby struct {
	Name   string
	Behind Part         // the wall with the entrance, of a rectangle; "" means the front
	Deep   MM           // clear, from that wall to the partition
	Shape  Shape        // of the opening in the partition
	At     Anchor       // of it: as in a Cut
	Height MM           // of the partition from the floor; 0 means up to the roof
	Joint  joints.Joint // with the walls; nil means joints.Housing{}; a dry one has room to swell across the grain
	Board  Board        // zero means the design's
}

func (Lobby) inner() {}

func (f Lobby) names(*Design) []made { return made1(f.Name) }

func (f Lobby) behind() Part {
	if f.Behind == "" {
		return Front
	}
	return f.Behind
}

func (f Lobby) on(*shell) []onPart { return []onPart{{".Behind", f.behind()}} }

func (f Lobby) check(d *Design, c *collector, path string) {
	c.length(path+".Deep", f.Deep, "depth of the lobby")
	(&shell{d: d, c: c}).plainCut(path, f.cut(), nil)
	c.atLeast0(path+".Height", f.Height, "height of the partition; 0 is up to the roof")
	c.board(path+".Board", f.Board, false)
	c.rectangle(d, path, "a lobby's partition stands between opposite walls of a rectangle")
	c.finite(path+".Joint", f.Joint)
	switch f.behind() {
	case Front, Back, Left, Right:
	default:
		c.addf(path+".Behind", "no-wall", "a lobby lies behind a wall, not behind %.60q", string(f.Behind))
	}
}

func (f Lobby) cut() Cut {
	return Cut{Shape: f.Shape, At: f.At, Use: UseOpening, Name: "inner opening"}
}

func (f Lobby) build(s *shell, m *making) {
	t := s.thick(InnerPart(f.Name), f.Board)
	off := float64(f.Deep) + t/2
	p := Partition{Name: f.Name, Height: f.Height, Joint: f.Joint, Board: f.Board}
	switch f.behind() {
	case Front:
		p.Across, p.At = RunLeftToRight, MM(-s.extent(0, 1)/2+off)
	case Back:
		p.Across, p.At = RunLeftToRight, MM(s.extent(0, 1)/2-off)
	case Left:
		p.At = MM(-s.extent(1, 0)/2 + off)
	case Right:
		p.At = MM(s.extent(1, 0)/2 - off)
	}
	n := len(s.c.ps)
	q := s.partition(m, p)
	if q == nil {
		for i := n; i < len(s.c.ps); i++ {
			if x := &s.c.ps[i]; x.Path == m.path+".At" { // what was given is the depth
				x.Got, x.Lo, x.Hi = num(float64(f.Deep)), minLength, x.Hi-x.Lo
			}
		}
		s.renamed(n, m.path, map[string]string{".At": ".Deep", ".Above": ".Height"})
		return
	}
	for _, g := range s.plainCut(m.path, f.cut(), q) {
		g.outline = settled(g.outline)
		q.feats = append(q.feats, g)
	}
}

// BeeBlock is a thick block against the back wall with blind holes from its
// front, across the grain, in which solitary bees nest. It fills the cavity from
// side to side and slips out for cleaning; it needs a rectangle and, to be of
// use, an open front.
type BeeBlock struct {
	Name   string
	Height MM       // from the floor; 0 means up to the roof
	Play   MM       // at both sides and on top; 0 means 1
	Rows   []BeeRow // from below
	// Spacing between the centres of holes in a row and between rows; 0 means 20.
	Spacing MM
	Margin  MM    // from the block's edges to the holes' rims, at least; 0 means 10
	Board   Board // its thickness is the block's depth; zero means the design's
}

// BeeRow is a row of equal holes.
type BeeRow struct {
	Diameter MM
	Depth    MM  // blind: less than the block is thick
	Count    int // 0 means as many as there is room for
	Repeat   int // so many such rows over one another; 0 means 1
}

func (BeeBlock) inner() {}

func (f BeeBlock) names(*Design) []made { return made1(f.Name) }

func (f BeeBlock) on(*shell) []onPart { return []onPart{{"", Back}} }

func (f BeeBlock) check(d *Design, c *collector, path string) {
	c.atLeast0(path+".Height", f.Height, "height of the block; 0 is up to the roof")
	c.within(path+".Play", float64(f.Play), 0, 100, "mm", "play beside the block; 0 is 1")
	if f.Spacing != 0 {
		c.length(path+".Spacing", f.Spacing, "distance of holes; 0 is 20")
	}
	c.within(path+".Margin", float64(f.Margin), 0, maxLength, "mm", "wood beside the holes; 0 is 10")
	c.board(path+".Board", f.Board, false)
	c.rectangle(d, path, "the block needs a rectangle")
	c.within(path+".Rows", float64(len(f.Rows)), 1, 1000, "", "rows of holes")
	rows := 0
	for i, r := range f.Rows {
		at := fmt.Sprintf("%s.Rows[%d]", path, i)
		c.length(at+".Diameter", r.Diameter, "diameter of a hole")
		c.length(at+".Depth", r.Depth, "depth of a hole")
		c.within(at+".Count", float64(r.Count), 0, 1000, "", "holes in a row; 0 is as many as there is room for")
		c.within(at+".Repeat", float64(r.Repeat), 0, 1000, "", "rows over one another; 0 is 1")
		if rows += max(1, r.Repeat); rows > 1000 {
			c.within(at+".Repeat", float64(rows), 0, 1000, "", "rows in all")
			break
		}
	}
}

func (f BeeBlock) build(s *shell, m *making) {
	play, step, margin := mmOr(f.Play, 1), mmOr(f.Spacing, 20), mmOr(f.Margin, 10)
	// The block faces forward, its back on the back wall's inner face.
	w := s.faceOf(Back)
	fr := turnedFrame(w)
	p := s.slab(m, f.Name, f.Board, w.in.Flip(), fr)
	for i := range s.faces {
		g := &s.faces[i]
		switch {
		case g == w:
		case g.kind == wallFace && g.part != Front:
			p.add(g.in.Shift(-play), fromOutline)
		case g.kind == roofFace:
			p.add(g.in.Shift(-play), fromOutline)
		default:
			p.add(g.in, fromOutline)
		}
	}
	if f.Height != 0 {
		p.add(levelPlane(float64(f.Height)), fromOutline)
	}
	depth := s.extent(0, 1)
	if !s.c.within(m.path+".Board.Thickness", p.face.t, minThickness, depth, "mm", "depth of the block: it stands inside the cavity") || !s.finishSlab(p) {
		return
	}
	m.put(p)
	if host := m.host(Back); host != nil {
		s.lieOn(m.path, host, p)
	}
	face := p.cavityFace()
	e := face.Extents()
	v, last := e.Min.Y+margin, 0.0
	for i, r := range f.Rows {
		at, d := fmt.Sprintf("%s.Rows[%d]", m.path, i), float64(r.Diameter)
		if !s.c.within(at+".Depth", float64(r.Depth), 0.1, p.face.least-0.5, "mm", "depth of a hole in "+string(p.face.part)+": blind") {
			return
		}
		if !s.c.within(m.path+".Spacing", step, d+thinWeb, maxLength, "mm", "distance of holes: there must be wood between them") {
			return
		}
		for range max(1, r.Repeat) {
			if last == 0 {
				v += d / 2
			} else {
				v += step
			}
			last = d
			room := e.Width() - 2*margin - d
			most := int(room/step+1e-9) + 1
			if room < 0 {
				most = 0
			}
			count := r.Count
			if count == 0 {
				count = max(1, most)
			}
			if !s.c.within(at+".Count", float64(count), 1, float64(most), "", "holes that a row has room for") {
				return
			}
			for k := range count {
				u := e.Centre().X + float64(step*(float64(k)-float64(count-1)/2))
				o := outline.Circle(outline.Point{X: u, Y: v}, d)
				if inside(face, o) < margin-1e-6 {
					s.c.add(Problem{Path: at, Code: "no-room", Got: num(round1(v)), Lo: e.Min.Y, Hi: e.Max.Y - margin - d/2, Unit: "mm",
						Why: "height of a row of holes: it comes too near the upper edge of the block"})
					return
				}
				p.feats = append(p.feats, feat{path: at, source: "nest hole", use: UsePocket, outline: settled(o), depth: float64(r.Depth), from: FromOuter, tool: Tool{Diameter: r.Diameter}})
			}
		}
	}
}
