package box

import (
	"fmt"
	"math"

	"holt.example/box/solid"
)

type faceKind int

const (
	wallFace faceKind = iota
	floorFace
	roofFace
	innerFace
)

// face is one face of the cavity and the slab that stands on it.
type face struct {
	part     Part
	kind     faceKind
	in       solid.Plane // the cavity is inside it
	t, least float64     // thickness to cut for, least thickness
	board    Board
	open     bool
	nh       [2]float64 // outward, horizontal
	d        float64    // of a wall's inner line at z = 0
	lean     float64    // of a wall, degrees
	pitch    float64    // of a roof slope, degrees
	over     float64    // of the roof past this wall, horizontal
	floorRun float64    // of a floor under the walls past this wall, horizontal
	above    float64
	below    float64
	rank     int
	loop     []solid.Vec // of the cavity face
	frame    solid.Frame // feature frame: origin, right, up, outward
	grain    Grain
}

// up reports whether the wall runs on above the roof.
func (f *face) up() bool { return f.kind == wallFace && f.above > 0 }

// shell is the cavity with all that stands on its faces.
type shell struct {
	d      *Design
	c      *collector
	faces  []face
	walls  int // faces[:walls] are the walls, anticlockwise seen from above
	floor  int
	height float64 // of the cavity
	lower  float64 // z of the walls' lower edge
	cav    solid.Convex
	edges  []*edge
	pair   map[[2]int]*edge
	inner  []*edge // of inner parts with their walls
	ways   []*way  // what opens
	// floorRoom is the gap between a floor with play and each wall.
	floorRoom map[int]float64
	laid      []laid // parts that lie on others
	fittings  []Fitting
	rows      []FixingRow
	edging    []edging
	verts     [][]int // faces at each vertex of the cavity
	vertAt    []solid.Vec
	made      []*whole // made-up parts
}

// wallNames are the walls of a rectangle in ring order.
var wallNames = [4]Part{Front, Right, Back, Left}

func (s *shell) rect() bool { return s.d.Footprint == nil }

// newShell works out the planes of the cavity. It returns nil when that cannot
// be done; names that are unknown are reported and left out.
func newShell(d *Design, c *collector) *shell {
	s := &shell{d: d, c: c}
	sound := len(c.ps) == 0
	if !c.footprintOK(d) {
		return nil
	}
	s.wallFaces()
	s.floorFace()
	s.roofFaces()
	s.checkParts()
	s.checkMade()
	if !sound {
		return nil
	}
	for i := range s.faces {
		s.setBoard(&s.faces[i])
	}
	s.readWays()
	if !s.solveSize() || !s.roofPlanes() {
		return nil
	}
	if !s.cavity() {
		return nil
	}
	return s
}

// wallFaces makes the walls, without sizes yet.
func (s *shell) wallFaces() {
	switch f := s.d.Footprint.(type) {
	case Regular:
		for k := 0; k < f.Sides; k++ {
			sn, cs := sincos(float64(360*k)/float64(f.Sides) - 90)
			s.faces = append(s.faces, face{part: WallN(k + 1), nh: [2]float64{cs, sn}, d: float64(f.Across) / 2})
		}
	case Polygon:
		n := len(f.Points)
		for k, p := range f.Points {
			q := f.Points[(k+1)%n]
			dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
			l := math.Hypot(dx, dy)
			nx, ny := dy/l, -dx/l
			s.faces = append(s.faces, face{part: WallN(k + 1), nh: [2]float64{nx, ny}, d: float64(nx*float64(p.X)) + float64(ny*float64(p.Y))})
		}
	default:
		for k, nh := range [4][2]float64{{0, -1}, {1, 0}, {0, 1}, {-1, 0}} {
			s.faces = append(s.faces, face{part: wallNames[k], nh: nh})
		}
	}
	s.walls = len(s.faces)
	for i := range s.faces {
		f := &s.faces[i]
		f.rank = 30
		if !s.laps(i) {
			f.rank = 20
		}
		for _, w := range s.d.Walls {
			if w.On == f.part {
				f.lean, f.open = float64(w.Lean), w.Open
				f.above, f.below = float64(w.Above), float64(w.Below)
			}
		}
		if f.above > 0 {
			f.rank = 50
		}
	}
}

// laps reports whether wall i laps over its neighbours as Corners says.
func (s *shell) laps(i int) bool {
	if s.d.Corners.Laps == Sides {
		return i%2 == 1
	}
	return i%2 == 0
}

func (s *shell) floorFace() {
	f := face{part: Floor, kind: floorFace, rank: 10}
	switch fl := s.d.Floor.(type) {
	case NoFloor:
		f.open = true
	case FloorUnder:
		f.rank = 35
		for i := range s.faces[:s.walls] {
			s.faces[i].floorRun = s.sideOf(i, fl.Over, "Floor.FloorUnder")
		}
	}
	s.floor = len(s.faces)
	s.faces = append(s.faces, f)
}

// sideOf picks the overhang past wall i.
func (s *shell) sideOf(i int, o Overhangs, path string) float64 {
	all := func(x MM) float64 {
		if x == 0 {
			x = o.All
		}
		return float64(x)
	}
	if !s.rect() {
		for _, e := range []struct {
			field string
			x     MM
		}{{"Back", o.Back}, {"Left", o.Left}, {"Right", o.Right}} {
			if e.x != 0 {
				s.c.addf(path+".Over."+e.field, "footprint", "a polygon has no %s: use Front for wall/1 and All for the others", e.field)
			}
		}
		if i == 0 {
			return all(o.Front)
		}
		return float64(o.All)
	}
	return all([4]MM{o.Front, o.Right, o.Back, o.Left}[i])
}

// setBoard gives a face its board: the part's own, its group's, the design's.
func (s *shell) setBoard(f *face) {
	b := s.d.Board
	if g, ok := s.d.Boards[f.group()]; ok && f.group() != "" {
		b = g
	}
	if g, ok := s.d.Boards[f.part]; ok {
		b = g
	}
	f.board, f.grain = b, b.Grain
	if f.open {
		return
	}
	f.t, f.least = b.most(), b.least()
}

// group is the group of parts that a face belongs to, "" for none.
func (f *face) group() Part {
	switch f.kind {
	case wallFace:
		return AllWalls
	case roofFace:
		return AllRoof
	}
	return ""
}

// wallPlane is the inner plane of a wall.
func (f *face) wallPlane() solid.Plane {
	sn, cs := sincos(f.lean)
	return solid.NewPlane(solid.Vec{X: f.nh[0] * cs, Y: f.nh[1] * cs, Z: -sn}, f.d*cs)
}

// cavity cuts the cavity out and finds its edges and vertices.
func (s *shell) cavity() bool {
	planes := make([]solid.Plane, len(s.faces))
	for i := range s.faces {
		planes[i] = s.faces[i].in
	}
	s.cav = solid.Intersect(planes)
	n := len(s.c.ps)
	if s.cav.Empty() {
		s.c.addf("Size", "no-cavity", "nothing is left inside: the walls or the roof close before the cavity begins")
		return false
	}
	for _, f := range s.cav.Faces {
		if f.ID < 0 {
			s.c.addf("Size", "open-cavity", "the cavity does not close: a wall leans, or the roof rises, away from all others")
			return false
		}
	}
	for i := range s.faces {
		f := &s.faces[i]
		g, ok := s.cav.FaceOf(i)
		if !ok || !(g.Area() > 1e-3) {
			s.c.add(Problem{Path: s.facePath(i), Code: "lost-face", Got: string(f.part), Why: "the cavity does not show this face: the others close before they reach it"})
			continue
		}
		f.loop = g.Loop
		f.frame = featureFrame(f)
	}
	if len(s.c.ps) > n {
		return false
	}
	s.findEdges()
	s.findVertices()
	return true
}

// facePath is the place in the design that made face i.
func (s *shell) facePath(i int) string {
	f := &s.faces[i]
	switch f.kind {
	case floorFace:
		return "Floor"
	case roofFace:
		return "Roof"
	}
	for k, w := range s.d.Walls {
		if w.On == f.part {
			return fmt.Sprintf("Walls[%d]", k)
		}
	}
	return "Size"
}

// featureFrame is the outside view of the face: right, up and outward from the
// middle of its lower edge.
func featureFrame(f *face) solid.Frame {
	n := f.in.N
	var up solid.Vec
	switch {
	case f.kind == floorFace || f.nh == [2]float64{}:
		up = solid.Vec{Y: 1}
	case f.kind == roofFace:
		sn, cs := sincos(f.pitch)
		up = solid.Vec{X: -f.nh[0] * cs, Y: -f.nh[1] * cs, Z: sn}
	default:
		sn, cs := sincos(f.lean)
		up = solid.Vec{X: f.nh[0] * sn, Y: f.nh[1] * sn, Z: cs}
	}
	right := up.Cross(n).Unit()
	up = n.Cross(right)
	low := math.Inf(1)
	for _, p := range f.loop {
		low = math.Min(low, up.Dot(p))
	}
	l, r := math.Inf(1), math.Inf(-1)
	for _, p := range f.loop {
		if up.Dot(p) < low+1e-6 {
			l, r = math.Min(l, right.Dot(p)), math.Max(r, right.Dot(p))
		}
	}
	o := right.Scale((l + r) / 2).Add(up.Scale(low)).Add(n.Scale(f.in.D))
	return solid.Frame{O: o, U: right, V: up, W: n}
}
