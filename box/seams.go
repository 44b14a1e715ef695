package box

import (
	"math"

	"holt.example/box/solid"
	"holt.example/joints"
)

// seams are the edges at which parts meet: those of the cavity, of inner parts,
// and between strips. Where a made-up part meets another, each of its strips that
// touches it has a seam.
func (s *shell) seams(p *Plan, parts []*part) {
	by := map[*face][]*part{}
	for _, q := range parts {
		switch {
		case q.strip == nil:
			by[q.face] = append(by[q.face], q)
		case !q.strip.tongue:
			f := q.strip.whole.part.face
			by[f] = append(by[f], q)
		}
	}
	for _, e := range append(append([]*edge(nil), s.edges...), s.inner...) {
		if e.ok {
			s.edgeSeams(p, e, by[&s.faces[e.over]], by[e.second(s)])
		}
	}
	for _, w := range s.made {
		w.planSeams(p)
	}
}

// seamOf is the seam of an edge, without contact.
func (s *shell) seamOf(e *edge) Seam {
	m := Seam{Over: s.faces[e.over].part, Under: e.second(s).part, Joint: e.sec.Name, From: place(e.a), To: place(e.b),
		Theta: plainAngle(e.theta), Least: e.sec.Least, Greatest: e.sec.Greatest, Holds: append([]joints.Hold(nil), e.sec.Holds...)}
	if e.guest == nil {
		room := MM(s.roomBetween(e.over, e.under))
		m.Least, m.Greatest = m.Least+room, m.Greatest+room
		m.Holds = s.openHolds(e, s.floorHolds(e, m.Holds))
	}
	return m
}

// edgeSeams are the seams between the pieces of two parts.
func (s *shell) edgeSeams(p *Plan, e *edge, over, under []*part) {
	var touching, beside []Seam
	gap := float64(e.sec.Play)
	if e.guest == nil {
		gap += s.roomBetween(e.over, e.under)
	}
	for _, q := range over {
		for _, r := range under {
			m := s.seamOf(e)
			m.Over, m.Under = q.face.part, r.face.part
			a, b, along := q.stretch(e.a, e.b)
			if along {
				a, b, along = r.stretch(a, b)
			}
			if along {
				m.From, m.To = place(a), place(b)
			}
			m.Contact = solid.Contact(q.solid, r.solid, gap)
			switch {
			case m.Contact > 0:
				touching = append(touching, m)
			case along:
				beside = append(beside, m)
			}
		}
	}
	if len(touching) > 0 {
		p.seams = append(p.seams, touching...)
		return
	}
	if !squareEnded(e.sec) && e.b.Sub(e.a).Len() > 1 {
		s.c.addf(e.path, "no-contact", "%s and %s do not touch along their edge", s.faces[e.over].part, e.second(s).part)
	}
	if len(beside) == 0 { // one of the parts is missing
		beside = append(beside, s.seamOf(e))
	}
	p.seams = append(p.seams, beside...)
}

// stretch is what of a line runs along a strip; all of it along any other part.
func (p *part) stretch(a, b solid.Vec) (from, to solid.Vec, ok bool) {
	if p.strip == nil {
		return a, b, true
	}
	w, k := p.strip.whole, p.strip.number
	d, o := w.part.acrossAxis(), w.part.face.frame.O
	x, y := d.Dot(a.Sub(o)), d.Dot(b.Sub(o))
	lo, hi := math.Inf(-1), math.Inf(1)
	if k > 0 {
		lo = w.los[k]
	}
	if k < len(w.los)-1 {
		hi = w.los[k+1]
	}
	if math.Abs(y-x) < 1e-6 {
		return a, b, x >= lo && x < hi
	}
	if x > y {
		lo, hi = hi, lo
	}
	at := func(z float64) solid.Vec { return a.Lerp(b, math.Max(0, math.Min(1, (z-x)/(y-x)))) }
	if from, to = a, b; !math.IsInf(lo, 0) {
		from = at(lo)
	}
	if !math.IsInf(hi, 0) {
		to = at(hi)
	}
	return from, to, to.Sub(from).Len() > 1e-6
}

// planSeams are the seams between strips, and those with loose tongues.
func (w *whole) planSeams(p *Plan) {
	for k, e := range w.seams {
		seam := func(a, b *part) {
			p.seams = append(p.seams, Seam{Over: a.face.part, Under: b.face.part, Joint: e.sec.Name, From: place(e.a), To: place(e.b),
				Theta: 180, Least: e.sec.Least, Greatest: e.sec.Greatest, Holds: append([]joints.Hold(nil), e.sec.Holds...),
				Contact: solid.Contact(a.solid, b.solid, w.prof.play)})
		}
		seam(w.strips[k], w.strips[k+1])
		for _, t := range w.tongues {
			if t.strip.number == k {
				seam(w.strips[k], t)
				seam(w.strips[k+1], t)
			}
		}
	}
}

// squareEnded reports whether the parts touch along an arris only.
func squareEnded(x joints.Section) bool {
	for _, z := range x.Void {
		if z.Work == joints.SquareEnd {
			return true
		}
	}
	return false
}
