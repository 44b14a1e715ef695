package box

import (
	"math"

	"holt.example/box/solid"
)

type wayKind int

const (
	turning wayKind = iota // about an axis
	sliding                // along its own face
	lifting                // straight off
)

// way is an opening part of the shell, or a free part that an opening makes, and
// how it moves.
type way struct {
	path  string
	of    opener
	kind  wayKind
	part  Part
	face  int       // of the shell, -1 for a free part
	hinge int       // the face at which it hangs, -1 for none
	sides [2]int    // the walls beside it, of a wall
	room  []float64 // the gap to each other face
	axis  motion
	most  float64 // how far it must go: degrees or mm
	needs float64 // headroom without which a pivoted top strikes
	with  []Part
	aside []*way // turn buttons that are turned away first
	pivot [2]solid.Vec
	// screwed are the faces to which a removable part is screwed.
	screwed [2]int
	plate   *Free // of a free part that an opening makes
	parent  *way  // the part that carries this one
}

// readWays lists the parts of the shell that open.
func (s *shell) readWays() {
	s.ways = nil
	s.d.eachOpening(func(path string, o opener) {
		p := movedPart(o)
		i := s.shellFace(p)
		if p == "" || i < 0 {
			return
		}
		w := &way{path: path, of: o, part: p, face: i, hinge: -1, sides: [2]int{-1, -1}, screwed: [2]int{-1, -1}, room: make([]float64, len(s.faces))}
		if i < s.walls {
			w.sides = [2]int{(i + s.walls - 1) % s.walls, (i + 1) % s.walls}
		}
		switch o := o.(type) {
		case Hinged:
			w.most, w.with = degOr(o.Angle, 90), o.With
			w.hinge = s.shellFace(s.hangsAt(o))
		case Pivoted:
			w.most, w.with = degOr(o.Angle, 90), o.With
			s.betweenWalls(path, i)
		case Sliding:
			w.kind, w.with = sliding, o.With
			s.betweenWalls(path, i)
		case Removable:
			w.kind, w.with = lifting, o.With
		}
		if s.faces[i].up() {
			s.c.addf(path+".Part", "runs-on", "%s runs on above the roof: it carries the box and cannot open", p)
		}
		s.ways = append(s.ways, w)
	})
}

// betweenWalls sees that a part stands between two walls that can hold it.
func (s *shell) betweenWalls(path string, i int) {
	if i < s.walls {
		for _, j := range [2]int{(i + s.walls - 1) % s.walls, (i + 1) % s.walls} {
			if s.faces[j].open {
				s.c.addf(path+".Part", "open", "%s is open: there is nothing beside %s to hold it", s.faces[j].part, s.faces[i].part)
			}
		}
	}
	if i >= s.walls {
		s.c.addf(path+".Part", "not-a-wall", "%s is no wall: only a wall stands between two others that can hold it", s.faces[i].part)
	}
}

// shellFace is the face of a part of the shell, -1 if there is none.
func (s *shell) shellFace(p Part) int {
	for i := range s.faces {
		if s.faces[i].part == p && !s.faces[i].open {
			return i
		}
	}
	return -1
}

func degOr(x Deg, dflt float64) float64 {
	if x == 0 {
		return dflt
	}
	return float64(x)
}

func mmOr(x MM, dflt float64) float64 {
	if x == 0 {
		return dflt
	}
	return float64(x)
}

func countOr(x, dflt int) int {
	if x == 0 {
		return dflt
	}
	return x
}

// wayOf is how the part of a face opens, nil if it does not.
func (s *shell) wayOf(i int) *way {
	for _, w := range s.ways {
		if w.face == i && i >= 0 {
			return w
		}
	}
	return nil
}

// holds reports whether the walls beside it hold the part, so that they lap over
// it.
func (w *way) holds(j int) bool {
	switch w.of.(type) {
	case Pivoted, Sliding:
		return j >= 0 && (j == w.sides[0] || j == w.sides[1])
	}
	return false
}

// openJoint is the joint on an edge of a part that opens: plain, unless the
// design's Joints says otherwise.
func (s *shell) openJoint(jt joint, path string, over, under int) (joint, string, int, int) {
	for _, i := range [2]int{over, under} {
		w := s.wayOf(i)
		if w == nil {
			continue
		}
		other := over + under - i
		if !plainJoint(jt) {
			jt = butt
		}
		if s.liftsAtRidge(w, other) {
			over, under = i, other
		}
		if w.holds(other) {
			over, under = other, i
			jt = butt
			if o, ok := w.of.(Sliding); ok {
				jt, path = s.slideJoint(o), w.path
			}
		}
	}
	return jt, path, over, under
}

// liftsAtRidge reports whether the part is a slope that hangs at the other one of
// a gable, which stays: then it laps over that at the ridge, because the end of a
// slope that is lapped over there goes down into the walls as it turns.
func (s *shell) liftsAtRidge(w *way, other int) bool {
	if _, gable := s.d.Roof.(Gable); !gable || w.hinge != other || s.faces[w.face].kind != roofFace || s.faces[other].kind != roofFace {
		return false
	}
	v := s.wayOf(other)
	return v == nil || v.hinge != w.face
}

// beyond is how far wall i runs on past wall j, which slides in it.
func (s *shell) beyond(i, j int) float64 {
	if w := s.wayOf(j); w != nil && w.holds(i) {
		if o, ok := w.of.(Sliding); ok {
			return mmOr(o.Beyond, s.faces[i].t+mmOr(o.Play, slidePlay))
		}
	}
	return 0
}

// swelling is how much wider a part gets than it was cut, in the direction of the
// edge at face j.
func (s *shell) swelling(i, j int) float64 {
	f := &s.faces[i]
	if f.grain == GrainNone {
		return 0
	}
	out := s.faces[j].in.N
	u, v := math.Abs(out.Dot(f.frame.U)), math.Abs(out.Dot(f.frame.V))
	up := f.grain == GrainUp || f.grain == GrainAuto && f.kind != floorFace
	if up && v > u || !up && u > v {
		return 0 // the edge lies across the ends of the grain
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range f.loop {
		x := out.Dot(p)
		lo, hi = math.Min(lo, x), math.Max(hi, x)
	}
	return (hi - lo) * swells
}

// swells is what solid wood swells across the grain, by its width, between the
// bench at about 12 % of moisture and a wet autumn at 18: 0.25 % for each (EN
// 1313-1).
const swells = 0.0025 * 6

// The gap round an inset door (common practice), and what a strip needs to bend.
const (
	doorGap  = 1.5
	stripGap = 0.5
	// slidePlay is what a board needs to slide in grooves (common practice).
	slidePlay = 0.5
)

// makeRoom moves the limits of parts that open inward by their play.
func (s *shell) makeRoom(r order, lim [][][]solid.Plane) {
	s.makeFloorRoom(lim)
	for _, w := range s.ways {
		for j := range s.faces {
			if j == w.face || s.faces[j].open || r.say(w.face, j) == over || len(lim[w.face][j]) == 0 {
				continue
			}
			if _, ok := w.of.(Sliding); ok && w.holds(j) {
				continue // the joint has its own play
			}
			w.room[j] = s.roomAt(w, j)
		}
		if o, ok := w.of.(Pivoted); ok {
			s.headroom(w, o, r, lim)
		}
		for j, room := range w.room {
			if room > 0 {
				for k := range lim[w.face][j] {
					lim[w.face][j][k] = lim[w.face][j][k].Shift(-room)
				}
			}
		}
	}
}

// roomAt is the gap to face j, at which the part ends.
func (s *shell) roomAt(w *way, j int) float64 {
	play, head, share := 0.0, 0.0, 0.5
	switch o := w.of.(type) {
	case Hinged:
		play, head = float64(o.Play), float64(o.Headroom)
		if w.hinge >= 0 {
			// What swells moves away from the hinge.
			d := s.faces[j].in.N.Dot(s.faces[w.hinge].in.N)
			if share = 0; d < -0.5 {
				share = 1
			}
		}
	case Pivoted:
		play, head = float64(o.Play), float64(o.Headroom)
	case Removable:
		play = float64(o.Play)
	}
	if play == 0 {
		play = doorGap + float64(share*s.swelling(w.face, j))
	}
	if j == w.hinge {
		if h, ok := w.of.(Hinged); ok {
			if _, metal := h.Hinge.(Butts); !metal {
				play = math.Min(play, stripGap)
			}
		}
	}
	if head > 0 && s.faces[j].kind == roofFace {
		play = head
	}
	return play
}

// setWays finds the axes of what opens, once the parts stand.
func (s *shell) setWays(parts []*part) {
	s.takeAlong()
	for _, w := range s.ways {
		p := atFace(parts, w.face)
		if p == nil {
			continue
		}
		f := p.face
		switch o := w.of.(type) {
		case Hinged:
			s.hingeAxis(w, p)
		case Pivoted:
			s.pivotAxis(w, o, p)
		case Sliding:
			d := f.frame.V
			if !o.Up {
				d = d.Scale(-1)
			}
			lo, hi := p.convex.Reach(d)
			w.axis, w.most = motion{d: d}, hi-lo
		case Removable:
			lo, hi := p.convex.Reach(f.in.N)
			w.axis, w.most = motion{d: f.in.N}, hi-lo+100
		}
	}
}

func atFace(parts []*part, i int) *part {
	for _, p := range parts {
		if p.at == i && i >= 0 {
			return p
		}
	}
	return nil
}

// hingeAxis is the line where the seam shows outside.
func (s *shell) hingeAxis(w *way, p *part) {
	if w.hinge < 0 {
		return
	}
	n := &s.faces[w.hinge]
	e := s.pair[[2]int{min(w.face, w.hinge), max(w.face, w.hinge)}]
	if e == nil || !e.ok {
		s.c.addf(w.path+".At", "no-edge", "%s and %s do not meet in an edge", w.part, n.part)
		return
	}
	own, other := p.face.in.Shift(p.face.t), n.in.Shift(n.t)
	switch {
	case e.relation(0) == mitred:
	case e.over == w.face:
		own = p.face.in
	default:
		other = n.in.Shift(-w.room[w.hinge] / 2)
	}
	d := own.N.Cross(other.N).Unit()
	o := e.a.Add(e.b).Scale(0.5)
	// The place on both planes, in the plane through the middle of the seam.
	c := own.N.Dot(other.N)
	x, y := own.D-own.N.Dot(o), other.D-other.N.Dot(o)
	det := 1 - float64(c*c)
	o = o.Add(own.N.Scale((x - float64(c*y)) / det)).Add(other.N.Scale((y - float64(c*x)) / det))
	w.axis = opensOutward(motion{o: o, d: d, turn: true}, p)
}

// opensOutward turns an axis so that the middle of the part moves outward.
func opensOutward(m motion, p *part) motion {
	c := p.convex.Centroid()
	if m.d.Cross(c.Sub(m.o)).Dot(p.face.in.N) < 0 {
		m.d = m.d.Scale(-1)
	}
	return m
}
