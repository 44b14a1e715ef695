package box

import (
	"fmt"
	"math"
	"sort"

	"holt.example/box/solid"
	"holt.example/joints"
)

// edge is an edge of the cavity at which two slabs meet: over laps over under.
type edge struct {
	i, j        int // faces, i < j
	over, under int
	a, b        solid.Vec // ends of the inner edge line
	dir         solid.Vec
	theta       float64
	joint       joint
	path        string
	run         float64 // how far over runs on past under's outer face
	free        bool    // over has no limit against under: it ends in a plane of its own
	sec         joints.Section
	z0          float64 // where z = 0 lies along dir, from a
	length      float64
	ok          bool
	guest       *face // the inner part, where under is -1
}

// second is the face that is lapped over.
func (e *edge) second(s *shell) *face {
	if e.guest != nil {
		return e.guest
	}
	return &s.faces[e.under]
}

// findEdges reads the edges off the faces of the cavity.
func (s *shell) findEdges() {
	s.pair = map[[2]int]*edge{}
	for i := range s.faces {
		f, _ := s.cav.FaceOf(i)
		n := len(f.Loop)
		for k, j := range f.Next {
			if j <= i {
				continue
			}
			p, q := f.Loop[k], f.Loop[(k+1)%n]
			if e := s.pair[[2]int{i, j}]; e != nil {
				if q.Sub(p).Len() <= e.b.Sub(e.a).Len() {
					continue
				}
				e.a, e.b = p, q
				continue
			}
			e := &edge{i: i, j: j, a: p, b: q}
			s.pair[[2]int{i, j}] = e
			s.edges = append(s.edges, e)
		}
	}
	sort.SliceStable(s.edges, func(x, y int) bool {
		if s.edges[x].i != s.edges[y].i {
			return s.edges[x].i < s.edges[y].i
		}
		return s.edges[x].j < s.edges[y].j
	})
	for _, e := range s.edges {
		if startsLater(e.a, e.b) {
			e.a, e.b = e.b, e.a
		}
		dot := s.faces[e.i].in.N.Dot(s.faces[e.j].in.N)
		e.theta = 90
		if math.Abs(dot) > 1e-11 {
			e.theta = math.Acos(math.Max(-1, math.Min(1, -dot))) * 180 / math.Pi
		}
		e.dir = s.faces[e.i].in.N.Cross(s.faces[e.j].in.N).Unit()
		if e.dir.Dot(e.b.Sub(e.a)) < 0 {
			e.dir = e.dir.Scale(-1)
		}
	}
}

// startsLater orders the ends of an edge: it starts at its lower end; a level
// one on the left, or in front.
func startsLater(a, b solid.Vec) bool {
	if math.Abs(a.Z-b.Z) > 1e-6 {
		return a.Z > b.Z
	}
	if math.Abs(a.X-b.X) > 1e-6 {
		return a.X > b.X
	}
	return a.Y > b.Y
}

// findVertices lists the faces that meet at each vertex of the cavity. Ends
// that are no farther apart than the side test are one vertex; short edges are
// not welded away, their joints count.
func (s *shell) findVertices() {
	type corner struct {
		at    solid.Vec
		faces map[int]bool
	}
	var cs []*corner
	for i := range s.faces {
		f, _ := s.cav.FaceOf(i)
		n := len(f.Loop)
		for k, p := range f.Loop {
			var c *corner
			for _, o := range cs {
				if o.at.Sub(p).Len() < 3*solid.SideTest {
					c = o
					break
				}
			}
			if c == nil {
				c = &corner{p, map[int]bool{}}
				cs = append(cs, c)
			}
			c.faces[i], c.faces[f.Next[k]], c.faces[f.Next[(k+n-1)%n]] = true, true, true
		}
	}
	for _, c := range cs {
		var v []int
		for i := range s.faces {
			if c.faces[i] && !s.faces[i].open {
				v = append(v, i)
			}
		}
		s.verts = append(s.verts, v)
		s.vertAt = append(s.vertAt, c.at)
	}
}

// wallOrder says which of two neighbouring walls laps over the other, j being
// the next after i, anticlockwise.
func (s *shell) wallOrder(i, j int) (over, under int) {
	if s.d.Corners.Laps == Pinwheel {
		return i, j
	}
	if s.laps(i) == s.laps(j) {
		return i, j // an odd polygon: only where first meets last
	}
	if s.laps(j) {
		return j, i
	}
	return i, j
}

// leastButtRidge is the pitch, in degrees, under which the end of a slope
// butted at the ridge would be bevelled by more than 60: 90 - 2 x 15.
const leastButtRidge = (90 - maxBevel) / 2

// jointOf finds the joint on the edge of two faces, and turns the edge round
// where an exception says so.
func (s *shell) jointOf(over, under int) (jt joint, path string, o, u int) {
	a, b := &s.faces[over], &s.faces[under]
	jt, path = joints.Butt{}, ""
	use := func(j joint, p string) {
		path = p
		if !isNil(j) {
			jt = j
		}
	}
	switch {
	case a.kind == wallFace && b.kind == wallFace:
		use(s.d.Corners.Joint, "Corners.Joint")
	case a.kind == floorFace || b.kind == floorFace:
		switch f := s.d.Floor.(type) {
		case FloorBetween:
			use(f.Joint, "Floor.FloorBetween.Joint")
		case FloorUnder:
			use(f.Joint, "Floor.FloorUnder.Joint")
		}
	default:
		ridge := a.kind == roofFace && b.kind == roofFace
		switch r := s.d.Roof.(type) {
		case Flat:
			use(r.Joint, "Roof.Flat.Joint")
		case Pent:
			use(s.roofJoint(r.Joint, r.Tops, r.Ends, a, b), "Roof.Pent.Joint")
		case Gable:
			if ridge {
				if a.pitch < leastButtRidge {
					jt = joints.Mitre{}
				}
				use(r.Ridge, "Roof.Gable.Ridge")
			} else {
				use(s.roofJoint(r.Joint, r.Tops, r.Ends, a, b), "Roof.Gable.Joint")
			}
		case Hip:
			if ridge {
				jt = joints.Mitre{}
				use(r.Hips, "Roof.Hip.Hips")
			} else {
				use(s.roofJoint(r.Joint, r.Tops, r.Ends, a, b), "Roof.Hip.Joint")
			}
		}
	}
	first, second := over, under
	jt, path, over, under = s.openJoint(jt, path, over, under)
	for k, x := range s.d.Joints {
		same := x.Over == a.part && x.Under == b.part
		if turned := x.Over == b.part && x.Under == a.part; same || turned {
			if over, under = first, second; turned {
				over, under = second, first
			}
			if !isNil(x.Joint) {
				jt = x.Joint
			}
			path = fmt.Sprintf("Joints[%d].Joint", k)
		}
	}
	return jt, path, over, under
}

// roofJoint is the joint of a roof with a wall: a butt joint takes over what
// the roof says of its tops and ends.
func (s *shell) roofJoint(j joint, t Tops, e RoofEnds, a, b *face) joint {
	if !isNil(j) {
		return j
	}
	if a.kind != roofFace { // the wall runs on: the roof butts against it
		return nil
	}
	return joints.Butt{EndSquare: t == SquareTops, LapSquare: e == SquareEnds && float64(a.nh[0]*b.nh[0])+float64(a.nh[1]*b.nh[1]) > 1-1e-9 || e == SquareEnds && s.upper(a, b)}
}

// upper reports whether wall b stands at the upper end of a single slope.
func (s *shell) upper(a, b *face) bool {
	_, pent := s.d.Roof.(Pent)
	return pent && float64(a.nh[0]*b.nh[0])+float64(a.nh[1]*b.nh[1]) < -1+1e-9
}

// setJoints decides, for every edge, who laps over whom, with which joint and
// how far it runs on, and asks the joint for its relation.
func (s *shell) setJoints() bool {
	used := map[int]bool{}
	n := len(s.c.ps)
	for _, e := range s.edges {
		a, b := &s.faces[e.i], &s.faces[e.j]
		if a.open || b.open {
			continue
		}
		over, under := e.i, e.j
		switch {
		case a.kind == wallFace && b.kind == wallFace:
			if e.j == e.i+1 {
				over, under = s.wallOrder(e.i, e.j)
			} else { // the last wall and the first
				over, under = s.wallOrder(e.j, e.i)
			}
			if a.up() != b.up() {
				over, under = e.i, e.j
				if b.up() {
					over, under = e.j, e.i
				}
			}
		case a.kind == wallFace && b.kind == roofFace:
			if !a.up() {
				over, under = e.j, e.i
			}
		case a.kind == wallFace && b.kind == floorFace:
			if _, u := s.d.Floor.(FloorUnder); u && a.below == 0 {
				over, under = e.j, e.i
			}
		default:
			if b.rank > a.rank {
				over, under = e.j, e.i
			}
		}
		e.joint, e.path, e.over, e.under = s.jointOf(over, under)
		s.floorPlay(e)
		for k, x := range s.d.Joints {
			if x.Over == s.faces[e.over].part && x.Under == s.faces[e.under].part {
				used[k] = true
			}
		}
		e.run = s.runOn(e.over, e.under)
		e.free = s.faces[e.over].up() && s.faces[e.under].kind == roofFace
		e.length = e.b.Sub(e.a).Len()
		if e.ok = true; s.tooSteep(e) {
			continue
		}
		e.sec, _ = s.section(e.joint, e.path, s.corner(e))
		for _, x := range s.d.Joints {
			if x.Holds != nil && x.Over == s.faces[e.over].part && x.Under == s.faces[e.under].part {
				e.sec.Holds = stated(x.Holds)
			}
		}
	}
	for k, x := range s.d.Joints {
		if !used[k] && !s.c.under(fmt.Sprintf("Joints[%d]", k)) {
			s.c.addf(fmt.Sprintf("Joints[%d]", k), "no-edge", "%s and %s do not meet in an edge", x.Over, x.Under)
		}
	}
	s.checkUp()
	return len(s.c.ps) == n
}

// checkUp sees that a wall that runs on above the roof laps over both its
// neighbours: else each top corner is a ring and stays open.
func (s *shell) checkUp() {
	for _, e := range s.edges {
		if !e.ok || s.faces[e.i].kind != wallFace || s.faces[e.j].kind != wallFace {
			continue
		}
		u := &s.faces[e.under]
		if u.up() && !s.faces[e.over].up() {
			s.c.addf(s.facePath(e.under)+".Above", "up-under", "%s runs on above the roof, so it laps over both its neighbours; %s laps over it", u.part, s.faces[e.over].part)
		}
	}
}

// runOn is how far face i runs on past the outer face of j.
func (s *shell) runOn(i, j int) float64 {
	a, b := &s.faces[i], &s.faces[j]
	switch {
	case a.kind == wallFace && b.kind == floorFace:
		if a.below > 0 {
			return a.below
		}
		if f, ok := s.d.Floor.(FloorBetween); ok {
			return float64(f.Raise)
		}
	case a.kind == floorFace && b.kind == wallFace:
		_, cl := sincos(b.lean)
		return b.floorRun * cl
	case a.kind == wallFace && b.kind == wallFace:
		return s.beyond(i, j)
	case a.kind == roofFace && b.kind == wallFace:
		return b.overNormal()
	}
	return 0
}

// corner describes the edge to its joint.
func (s *shell) corner(e *edge) joints.Corner {
	a, b := &s.faces[e.over], &s.faces[e.under]
	run := e.run
	if e.free {
		run = a.above
	}
	return joints.Corner{
		NameA: string(a.part), NameB: string(b.part),
		TA: MM(a.t), TB: MM(b.t), LeastA: MM(a.least), LeastB: MM(b.least),
		Theta: Deg(e.theta), Length: MM(e.length), RunOn: MM(run),
		// What a part laps over at both ends belongs to its size.
		ReachA: MM(s.reach(e, e.over) + 2*b.t), ReachB: MM(s.reach(e, e.under)),
	}
}

// reach is the size of a face away from the edge.
func (s *shell) reach(e *edge, i int) float64 {
	m := e.dir.Cross(s.faces[i].in.N)
	r := 0.0
	for _, p := range s.faces[i].loop {
		r = math.Max(r, math.Abs(m.Dot(p.Sub(e.a))))
	}
	return r
}
