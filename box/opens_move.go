package box

import (
	"fmt"
	"math"
	"slices"

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
			s.struck(w, x, against, parts)
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

// struck reports what an opening strikes, and what would do where that can be
// worked out.
func (s *shell) struck(w *way, x float64, against Part, parts []*part) {
	at := math.Floor(x*100) / 100 // one figure, on the safe side, for sentence and range
	p := Problem{Path: w.path, Code: "strikes", Got: num(at), Lo: 0, Hi: at, Unit: "mm"}
	turned, must := "drawn out by "+num(at), "come out by "+num(round1(w.most))
	if w.kind == turning {
		p.Unit = "deg"
		turned, must = "turned by "+num(at)+" degrees", "open to "+num(w.most)
		if w.face >= 0 {
			p.Path, p.Got = p.Path+".Angle", num(w.most)
		} else {
			must = "turn by " + num(w.most)
		}
	}
	p.Why = fmt.Sprintf("%s strikes %s when it is %s, and it must %s", w.part, against, turned, must)
	if at == 0 {
		lies := "against it"
		if s.shellFace(against) < 0 {
			lies = "on it"
		}
		p.Got, p.Why = "", fmt.Sprintf("%s cannot move at all: %s lies %s", w.part, against, lies)
	}
	p.Try = s.frees(w, against, parts)
	s.c.add(p)
}

// frees is what would let an opening open that strikes a part, "" if unknown.
func (s *shell) frees(w *way, against Part, parts []*part) string {
	if o, ok := w.of.(Sliding); ok {
		was := w.axis
		w.axis.d = was.d.Scale(-1)
		_, bar := s.goes(w, parts)
		if w.axis = was; bar == "" {
			return fmt.Sprintf("Up: %t, to draw it the other way", !o.Up)
		}
	}
	if i := s.shellFace(against); i >= 0 {
		roof := s.faces[i].kind == roofFace
		switch w.of.(type) {
		case Pivoted:
			if roof && w.needs > w.room[i] {
				return "Headroom: " + num(math.Ceil(w.needs*10)/10)
			}
		case Hinged:
			if w.hinge >= 0 && s.faces[w.face].kind == roofFace && s.faces[w.hinge].kind == roofFace {
				if e := s.pair[[2]int{min(w.face, w.hinge), max(w.face, w.hinge)}]; e != nil && e.over != w.face && !roof {
					return fmt.Sprintf("Joints: []box.Between{{Over: %q, Under: %q}}", w.part, s.faces[w.hinge].part)
				}
			}
			if roof && w.face < s.walls {
				return s.roomToTurn(w, i, parts)
			}
		}
		return ""
	}
	if w.face < 0 {
		return ""
	}
	// A part fixed to the box: it might be fixed to what opens instead, or be left
	// out.
	with := w.with
	w.with = append(with[:len(with):len(with)], against)
	_, bar := s.goes(w, parts)
	w.with = with
	if bar == "" && !s.madeToOpen(against) {
		return fmt.Sprintf("With: []box.Part{%q}, fixed to %s alone", against, w.part)
	}
	var rest []*part
	for _, p := range parts {
		if p.face.part != against {
			rest = append(rest, p)
		}
	}
	if _, bar := s.goes(w, rest); bar != "" {
		return ""
	}
	if o, ok := w.of.(Hinged); ok && s.isCover(against) {
		switch o.Hinge.(type) {
		case nil, RubberStrip:
			return fmt.Sprintf("to leave out %s: the rubber strip of the hinge covers the seam", against)
		}
	}
	return fmt.Sprintf("to leave out %s, or to place it elsewhere", against)
}

// madeToOpen reports whether an opening made the part: it is no other one's to take
// along.
func (s *shell) madeToOpen(p Part) bool {
	return slices.ContainsFunc(s.ways, func(w *way) bool { return w.part == p && w.plate != nil })
}

// isCover reports whether a part covers the seam between the roof and a wall.
func (s *shell) isCover(p Part) bool {
	for _, o := range s.d.Outer {
		if c, ok := o.(CoverStrip); ok && FreePart(c.Name) == p {
			return true
		}
	}
	return false
}

// roomToTurn is the headroom that lets a hinged wall out under the overhang of
// slope i: its top is lowered until it gets out, to 0.1 mm.
func (s *shell) roomToTurn(w *way, i int, parts []*part) string {
	const other = "less overhang on that side"
	p := atFace(parts, w.face)
	was := p.solid
	defer func() { p.solid = was }()
	gets := func(k int) bool { // with so many tenths of headroom
		b := solid.Body{Base: append([]solid.Plane(nil), was.Base...), Cutters: was.Cutters, Prisms: was.Prisms}
		for n, h := range p.base {
			if p.from[n] == i {
				b.Base = append(b.Base, h.Shift(w.room[i]-float64(k)/10))
			}
		}
		p.solid = b.Ready()
		_, bar := s.goes(w, parts)
		return bar == ""
	}
	lo, hi := int(w.room[i]*10), 3000 // the most that Headroom may be
	if lo >= hi || !gets(hi) {
		return other
	}
	for hi-lo > 1 {
		if m := (lo + hi) / 2; gets(m) {
			hi = m
		} else {
			lo = m
		}
	}
	return fmt.Sprintf("Headroom: %s, or %s", num(float64(hi)/10), other)
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
				Why: fmt.Sprintf("%s and %s are glued together in %s: %s cannot be freed", w.part, other.part, joints.Said(e.sec.Name), w.part), Try: "joints.Butt{}, or a dry housing"})
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
