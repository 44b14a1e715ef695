package box

import (
	"fmt"
	"math"
)

// Whole is a made-up part as a whole: its Piece is what one board of its size
// would be, for drawings and for work done once the strips are together.
type Whole struct {
	Piece
	Strips  []Part // from the left seen from outside, or from below
	Tongues []Part // loose ones
	Joint   string // "edge-glued", "loose tongue", "tongue and groove", "shiplap"
	Glued   bool
	Cover   MM // what shows of each strip
	Boards  MM // width of the boards
}

// Wholes are the made-up parts, in plan order.
func (p *Plan) Wholes() []Whole { return append([]Whole(nil), p.wholes...) }

// Parts are the parts as they stand in the box, in plan order: like Pieces, but
// with each made-up part as one.
func (p *Plan) Parts() []Piece {
	var out []Piece
	last := Part("")
	for _, q := range p.pieces {
		switch {
		case q.Of == "":
			out = append(out, q)
		case q.Of != last:
			w, _ := p.Piece(q.Of)
			out = append(out, w)
		}
		last = q.Of
	}
	return out
}

// shellPart is the name of the part, or of the made-up one that it belongs to.
func (p *part) shellPart() Part {
	if p.strip != nil {
		return p.strip.whole.part.face.part
	}
	return p.face.part
}

// ofPart is the made-up part that this one is a piece of, "" if none.
func (p *part) ofPart() Part {
	if p.strip == nil {
		return ""
	}
	return p.shellPart()
}

// pieces are the strips of a made-up part, and any other part itself.
func (p *part) pieces() []*part {
	if p.whole == nil {
		return []*part{p}
	}
	return p.whole.strips
}

// unmade has made-up parts as one again.
func unmade(parts []*part) []*part {
	var out []*part
	var last *whole
	for _, p := range parts {
		switch {
		case p.strip == nil:
			out, last = append(out, p), nil
		case p.strip.whole != last:
			last = p.strip.whole
			out = append(out, last.part)
		}
	}
	return out
}

// wholes are the made-up parts.
func (s *shell) wholes() []*part {
	var out []*part
	for _, w := range s.made {
		out = append(out, w.part)
	}
	return out
}

// planWholes adds the made-up parts to the plan, in its order.
func (s *shell) planWholes(p *Plan, parts []*part) {
	for _, q := range p.pieces {
		for _, w := range s.made {
			if w.strips[0].face.part != q.Part {
				continue
			}
			x := Whole{Piece: s.piece(w.part), Joint: w.joint.words(), Glued: w.prof.glued, Cover: MM(w.cover), Boards: MM(w.board)}
			s.arrises(w.part, &x.Panel, unmade(parts))
			for _, t := range w.strips {
				x.Strips = append(x.Strips, t.face.part)
			}
			for _, t := range w.tongues {
				x.Tongues = append(x.Tongues, t.face.part)
			}
			p.wholes = append(p.wholes, x)
			p.words[x.Part] = append(s.explain(p, &x.Piece, w.part), w.sentence())
		}
	}
	p.nameStrips()
}

// sentence says of what a part is made up.
func (w *whole) sentence() string {
	name := w.part.face.part
	line := fmt.Sprintf("It is made up of %d strips, %s to %s, from boards %s wide (%s): %s of each shows", len(w.strips),
		StripN(name, 1), StripN(name, len(w.strips)), num(w.board), w.joint.words(), mm(w.cover))
	if w.prof.gap > 0 {
		line += fmt.Sprintf(", with gaps of %s", mm(w.prof.gap))
	}
	return line + "."
}

// stripWords says which piece of its whole a part is.
func (p *part) stripWords() string {
	w := p.strip.whole
	name := w.part.face.part
	if p.strip.tongue {
		return fmt.Sprintf("It is the loose tongue between %s and %s.", StripN(name, p.strip.number+1), StripN(name, p.strip.number+2))
	}
	lo, hi := w.part.across()
	line := fmt.Sprintf("It is strip %d of %d of %s, which is %s wide: %s of it shows", p.strip.number+1, len(w.strips), name, mm(hi-lo), mm(w.cover))
	if p.strip.number+1 < len(w.strips) && w.prof.most > 0 {
		line += fmt.Sprintf(", and %s are its tongue", mm(w.prof.most))
		if _, ok := w.joint.(Shiplap); ok {
			line = line[:len(line)-len("are its tongue")] + "lie under the next"
		}
	}
	return line + "."
}

// nameStrips names the strip, where an edge or a cut of a piece meets a made-up
// part and only one strip of it. Where several meet, its own name stays.
func (p *Plan) nameStrips() {
	if len(p.wholes) == 0 {
		return
	}
	made := map[Part]bool{}
	for _, w := range p.wholes {
		made[w.Part] = true
	}
	touch := map[[2]Part][]Part{} // by piece and made-up part: the strips that meet it
	note := func(a, b Part) {
		if i, ok := p.index[b]; ok && p.pieces[i].Of != "" {
			key := [2]Part{a, p.pieces[i].Of}
			touch[key] = append(touch[key], b)
		}
	}
	for _, m := range p.seams {
		note(m.Over, m.Under)
		note(m.Under, m.Over)
	}
	for i := range p.pieces {
		q := &p.pieces[i]
		name := func(n *Part) {
			if !made[*n] {
				return
			}
			if ts := touch[[2]Part{q.Part, *n}]; len(ts) == 1 {
				*n = ts[0]
			}
		}
		for k := range q.Panel.Edges {
			name(&q.Panel.Edges[k].Neighbour)
		}
		for k := range q.Panel.Ops {
			name(&q.Panel.Ops[k].Guest)
		}
	}
}

// stripFindings are what should be known of the joints between strips: openings
// and pockets that cross them are cut when the part is together.
func (w *whole) stripFindings(add func(Finding)) {
	seen := map[[2]string]bool{}
	for k := range w.seams {
		x := w.his[k]
		for i := range w.part.feats {
			f := &w.part.feats[i]
			e := f.outline.Extents()
			lo, hi := e.Min.X, e.Max.X
			if w.part.grain(FromOuter)[0] != 0 {
				lo, hi = e.Min.Y, e.Max.Y
			}
			key := [2]string{f.path, num(x)}
			if hi <= x || lo >= x || seen[key] {
				continue
			}
			seen[key] = true
			c := f.outline.Centroid()
			add(Finding{Code: "crosses-strips", Severity: Advice, Part: w.part.face.part, Where: place(w.part.face.frame.Out(vec(c))), Got: math.Min(x-lo, hi-x), Lo: 0, Hi: 0, Unit: "mm",
				Why:     fmt.Sprintf("the %s crosses the joint between %s and %s: cut it once the strips are together", f.source, StripN(w.part.face.part, k+1), StripN(w.part.face.part, k+2)),
				Sources: []string{"common practice"}})
		}
	}
}
