package box

import (
	"math"

	"holt.example/box/solid"
	"holt.example/joints"
)

// between is the floor that stands between the walls, false if another does, or
// if it opens and so has a play of its own.
func (s *shell) between() (FloorBetween, bool) {
	f, ok := s.d.Floor.(FloorBetween)
	return f, ok && s.floor >= 0 && !s.faces[s.floor].open && s.wayOf(s.floor) == nil
}

// floorPlay gives a floor its play at one wall: in a housing as room under its
// edge, else as a gap.
func (s *shell) floorPlay(e *edge) {
	f, ok := s.between()
	if !ok || e.under != s.floor || e.over >= s.walls {
		return
	}
	h, housed := e.joint.(joints.Housing)
	if p, ok := e.joint.(*joints.Housing); ok && p != nil {
		h, housed = *p, true
	}
	dry := f.Dry || housed && h.Dry
	play := float64(f.Play)
	if play == 0 && dry {
		play = s.swelling(s.floor, e.over) / 2
	}
	switch {
	case housed:
		h.Dry = dry
		if h.Swell == 0 {
			h.Swell = MM(play)
		}
		e.joint = h
	case play == 0:
	case gapes(e.joint):
		if s.floorRoom == nil {
			s.floorRoom = map[int]float64{}
		}
		s.floorRoom[e.over] = play
	default:
		field := ".Play"
		if f.Play == 0 {
			field = ".Dry"
		}
		s.c.addf("Floor.FloorBetween"+field, "play", "the joint of %s with %s takes no play: a butt, a rebate and a housing do", s.faces[e.under].part, s.faces[e.over].part)
	}
}

// roomy is the joint of an inner part with a wall: a dry housing that does not
// say its own gets room for what the part swells, half at each side.
func (s *shell) roomy(jt joint, f *face, wall int) joint {
	h, ok := jt.(joints.Housing)
	if p, is := jt.(*joints.Housing); is && p != nil {
		h, ok = *p, true
	}
	if !ok || !h.Dry || h.Swell != 0 {
		return jt
	}
	h.Swell = MM(s.innerSwelling(f, s.faces[wall].in.N) / 2)
	return h
}

// innerSwelling is how much wider an inner part gets than it was cut, along a
// level direction across the cavity.
func (s *shell) innerSwelling(f *face, n solid.Vec) float64 {
	size := func(d solid.Vec) float64 {
		lo, hi := s.cav.Reach(d)
		return hi - lo
	}
	along := f.frame.V
	switch {
	case f.grain == GrainNone:
		return 0
	case f.grain == GrainAcross, f.grain == GrainAuto && f.level() && size(f.frame.U) > size(f.frame.V)-1e-9:
		along = f.frame.U
	}
	if math.Abs(n.Dot(along)) > math.Sqrt2/2 {
		return 0 // the ends of the grain
	}
	return size(n) * swells
}

// level reports whether the part lies.
func (f *face) level() bool { return math.Abs(f.frame.W.Z) > math.Sqrt2/2 }

// gapes reports whether the end of the part that is lapped over may fall short in
// such a joint.
func gapes(j joint) bool {
	switch j.(type) {
	case joints.Butt, *joints.Butt, joints.Rebate, *joints.Rebate:
		return true
	}
	return false
}

// floorHolds leaves out the glue round a floor that is to move, and the screws and
// nails at the walls that it has room to move to: those at the ends of its grain
// hold it.
func (s *shell) floorHolds(e *edge, holds []joints.Hold) []joints.Hold {
	f, ok := s.between()
	if !ok || !f.Dry || e.under != s.floor {
		return holds
	}
	var out []joints.Hold
	moves := f.Play == 0 && s.floorRoom[e.over] > 0
	for _, h := range holds {
		if h.Kind != "glue" && !moves {
			out = append(out, h)
		}
	}
	return out
}

// makeFloorRoom moves the limits of the floor inward by its play.
func (s *shell) makeFloorRoom(lim [][][]solid.Plane) {
	for j, room := range s.floorRoom {
		for k := range lim[s.floor][j] {
			lim[s.floor][j][k] = lim[s.floor][j][k].Shift(-room)
		}
	}
}

// floorZones are the voids round a floor that has play.
func (s *shell) floorZones(parts []*part) []zone {
	p := atFace(parts, s.floor)
	if p == nil || s.floor < 0 {
		return nil
	}
	var out []zone
	for k, h := range p.base {
		if j := p.from[k]; j >= 0 && s.floorRoom[j] > 0 {
			out = append(out, zone{string(s.faces[j].part) + "/" + string(p.face.part), "play",
				[]solid.Plane{p.face.in.Flip(), p.face.in.Shift(p.face.t), h.Flip(), h.Shift(s.floorRoom[j])}})
		}
	}
	return out
}

// floorWords says why a floor falls short at a wall, or how much room it has in
// its housing.
func (s *shell) floorWords(e *edge) string {
	if room := s.floorRoom[e.over]; room > 0 && e.under == s.floor {
		return ", less " + num(math.Round(room*100)/100) + " so that it can swell"
	}
	if f, ok := s.between(); ok && e.under == s.floor && f.Play == 0 {
		if h, ok := e.joint.(joints.Housing); ok && h.Swell > 0 && h.Dry {
			return ", with " + num(math.Round(float64(h.Swell)*100)/100) + " under its edge so that it can swell"
		}
	}
	return ""
}
