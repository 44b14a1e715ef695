package box

import (
	"fmt"
	"math"

	"holt.example/box/solid"
	"holt.example/joints"
)

// moved are the parts that move with an opening: its own, what it takes along,
// and what other openings have fixed to it.
func (s *shell) moved(w *way) map[Part]bool {
	in := map[Part]bool{w.part: true}
	for _, p := range w.with {
		in[p] = true
	}
	for _, v := range s.ways {
		if v.parent == w {
			in[v.part] = true
		}
	}
	return in
}

// checkMoves sees that what opens can open.
func (s *shell) checkMoves(parts []*part) {
	for _, w := range s.ways {
		if w.axis.none() || s.captive(w) {
			continue
		}
		x, against := s.goes(w, parts)
		if against != "" && w.kind == lifting {
			// Straight off is barred: along what bars it, perhaps.
			straight := w.axis
			for j := range s.faces {
				if j == w.face || s.faces[j].open || w.face < 0 {
					continue
				}
				n, out := s.faces[j].in.N, straight.d
				if d := out.Sub(n.Scale(out.Dot(n))); d.Len() > 0.5 && math.Abs(out.Dot(n)) > 1e-9 {
					w.axis.d = d.Unit()
					if _, bar := s.goes(w, parts); bar == "" {
						against = ""
						break
					}
				}
			}
			if against != "" {
				w.axis = straight
			}
		}
		if against != "" {
			s.struck(w, x, against)
		}
	}
}

// goes is how far an opening gets, and what stops it before it is open.
func (s *shell) goes(w *way, parts []*part) (float64, Part) {
	in := s.moved(w)
	for _, a := range w.aside {
		in[a.part] = true // turned away first
	}
	best, against := w.most, Part("")
	for _, p := range parts {
		if !in[p.face.part] || w.isAside(p.face.part) {
			continue
		}
		for _, q := range parts {
			if in[q.face.part] {
				continue
			}
			if x, hit := strike(w.axis, p.solid, q.solid, best); hit && (x < best || against == "") {
				best, against = x, q.face.part
			}
		}
	}
	return best, against
}

func (w *way) isAside(p Part) bool {
	for _, a := range w.aside {
		if a.part == p {
			return true
		}
	}
	return false
}

func (s *shell) struck(w *way, x float64, against Part) {
	p := Problem{Path: w.path, Code: "strikes", Got: num(round1(x)), Lo: 0, Hi: x, Unit: "deg"}
	switch w.of.(type) {
	case Hinged, Pivoted:
		p.Path += ".Angle"
		p.Why = fmt.Sprintf("%s strikes %s when it is turned by %s degrees, and it must open to %s", w.part, against, num(round1(x)), num(w.most))
	case Stopper, TurnButton:
		p.Why = fmt.Sprintf("%s strikes %s when it is turned by %s degrees", w.part, against, num(round1(x)))
	default:
		p.Unit = "mm"
		p.Why = fmt.Sprintf("%s strikes %s when it is drawn out by %s, and it must come out by %s", w.part, against, num(round1(x)), num(round1(w.most)))
	}
	if i := s.shellFace(against); i >= 0 && s.faces[i].kind == roofFace {
		switch o := w.of.(type) {
		case Pivoted:
			if w.needs > w.room[i] {
				p.Try = "Headroom: " + num(math.Ceil(w.needs*10)/10)
			}
		case Hinged:
			if s.shellFace(o.Part) < s.walls {
				p.Try = "more Headroom, or less overhang on that side"
			}
		}
	}
	s.c.add(p)
}

// captive reports a part that its joints hold, whichever way it would go.
func (s *shell) captive(w *way) bool {
	if w.face < 0 {
		return false
	}
	for _, e := range append(append([]*edge(nil), s.edges...), s.inner...) {
		if !e.ok || e.over != w.face && e.under != w.face {
			continue
		}
		other := &s.faces[e.over]
		if e.over == w.face {
			other = e.second(s)
		}
		if _, slide := w.of.(Sliding); slide && other.kind == wallFace {
			continue
		}
		glued := false
		for _, h := range e.sec.Holds {
			glued = glued || h.Kind == "glue"
		}
		held := false
		for _, z := range append(append([]joints.Zone(nil), e.sec.A.Lose...), e.sec.B.Lose...) {
			held = held || z.Work == joints.Housed || z.Work == joints.Notching
		}
		if held && glued {
			s.c.add(Problem{Path: w.path + ".Part", Code: "captive", Got: string(w.part),
				Why: fmt.Sprintf("%s and %s are glued together in a %s: %s cannot be freed", w.part, other.part, e.sec.Name, w.part), Try: "joints.Butt{}, or a dry housing"})
			return true
		}
	}
	return false
}

// openHolds is what keeps a seam together where one of its parts opens: no glue,
// and no screws of the kinds that are there to stay.
func (s *shell) openHolds(e *edge, holds []joints.Hold) []joints.Hold {
	for _, w := range s.ways {
		if w.face < 0 || w.face != e.over && w.face != e.under {
			continue
		}
		other := e.over + e.under - w.face
		holds = nil
		switch w.of.(type) {
		case Hinged:
			if other == w.hinge {
				return []joints.Hold{{Kind: "hinge", Note: "at which " + string(w.part) + " turns"}}
			}
		case Pivoted:
			if w.holds(other) {
				return []joints.Hold{{Kind: "pivot", Note: "on which " + string(w.part) + " turns"}}
			}
		case Removable:
			if other == w.screwed[0] || other == w.screwed[1] {
				return []joints.Hold{{Kind: "loose screw", Note: "to be taken out again"}}
			}
		}
	}
	return holds
}

// roomZones are the voids beside what opens.
func (s *shell) roomZones(parts []*part) []zone {
	var out []zone
	for _, w := range s.ways {
		p := atFace(parts, w.face)
		if p == nil {
			continue
		}
		for k, h := range p.base {
			j := p.from[k]
			if j < 0 || j >= len(w.room) || w.room[j] == 0 {
				continue
			}
			out = append(out, zone{"opening " + string(w.part), "play",
				[]solid.Plane{p.face.in.Flip(), p.face.in.Shift(p.face.t), h.Flip(), h.Shift(w.room[j])}})
		}
	}
	return out
}

// roomBetween is the gap that an opening, or a floor that may swell, leaves
// between two parts.
func (s *shell) roomBetween(i, j int) float64 {
	room := 0.0
	if i == s.floor {
		room = s.floorRoom[j]
	} else if j == s.floor {
		room = s.floorRoom[i]
	}
	for _, w := range s.ways {
		switch {
		case w.face < 0:
		case w.face == i && j >= 0 && j < len(w.room):
			room = math.Max(room, w.room[j])
		case w.face == j && i >= 0 && i < len(w.room):
			room = math.Max(room, w.room[i])
		}
	}
	return room
}
